package sizing

import (
	"strconv"

	"example.com/fircone/units"
)

// A Span is a length from Min to Max. Spans are equal if == says so.
type Span struct {
	Min units.Length `json:"min"`
	Max units.Length `json:"max"`
}

// String returns "8 in to 10 in", rounded to a quarter inch.
func (s Span) String() string {
	return s.Min.Format(units.InFeetInches, units.Inch/4) + " to " + s.Max.Format(units.InFeetInches, units.Inch/4)
}

// Topper returns how high above the tip of a tree of this height a topper may
// stand: a tenth to an eighth of the height, rounded to the nearest nanometer.
// It returns an [Error] wrapping [ErrRange] if the height is not from 1 ft to
// 100 ft.
//
// Source: common practice, from memory.
func Topper(height units.Length) (Span, error) {
	if err := checkHeight("Topper", height); err != nil {
		return Span{}, err
	}
	return Span{Min: (height + 5) / 10, Max: (height + 4) / 8}, nil
}

// Skirt returns how wide a skirt or collar under a tree may be: from a foot less
// than the base, or half the base if that is more, to as wide as the base. Its
// errors are those of [Tree.Cone].
//
// Source: common practice, from memory.
func (t Tree) Skirt() (Span, error) {
	c, err := t.cone("Tree.Skirt")
	if err != nil {
		return Span{}, err
	}
	return Span{Min: max(c.BaseDiameter-units.Foot, c.BaseDiameter/2), Max: c.BaseDiameter}, nil
}

// A Room is where a tree is to stand. Rooms are equal if == says so.
type Room struct {
	// Ceiling is its height, 3 ft to 150 ft.
	Ceiling units.Length

	// Clearance is what is left between tip and ceiling, up to 50 ft, for the
	// topper and for setting it on. Zero is the usual 1 ft.
	Clearance units.Length

	// Topper is how high the topper stands above the tip, up to 10 ft.
	Topper units.Length

	// Stand is by how much the stand lifts the tree, if its height was measured
	// without: up to 5 ft.
	Stand units.Length
}

// A Fit is how a tree and its topper go under a ceiling.
// Fits are equal if == says so.
type Fit struct {
	Tallest units.Length // the tallest tree that fits with this stand and topper
	Spare   units.Length // from the top of the topper to the ceiling; negative if it does not go
	Fits    bool         // the tree is no taller than Tallest
	Caution string       // what to see to, and whom to ask
}

// Fit returns whether a tree goes under the ceiling, and the tallest that does:
//
//	tallest = ceiling - stand - clearance
//
// where the topper may take up the clearance, and a topper higher than that takes
// its own height. A tree that is too tall is reported as it is.
//
// It returns an [Error] wrapping [ErrRange] if a field of r or the height of t is
// out of its range, or if what is left under the ceiling is less than 1 ft.
//
// Source: a tree at least 1 ft shorter than the ceiling, Clemson Cooperative
// Extension, Home & Garden Information Center, Selecting a Christmas Tree.
func (r Room) Fit(t Tree) (Fit, error) {
	const fn = "Room.Fit"
	for _, f := range [...]struct {
		field     string
		l, lo, hi units.Length
	}{
		{"Ceiling", r.Ceiling, 3 * units.Foot, 150 * units.Foot},
		{"Clearance", r.Clearance, 0, 50 * units.Foot},
		{"Topper", r.Topper, 0, 10 * units.Foot},
		{"Stand", r.Stand, 0, 5 * units.Foot},
	} {
		if f.l < f.lo || f.l > f.hi {
			return Fit{}, rangeError(fn, f.field, f.l.String(), f.lo.String()+" to "+f.hi.String())
		}
	}
	if err := checkHeight(fn, t.Height); err != nil {
		return Fit{}, err
	}
	clearance := r.Clearance
	if clearance == 0 {
		clearance = 1 * units.Foot
	}
	need := r.Stand + max(clearance, r.Topper)
	if r.Ceiling-need < MinHeight {
		return Fit{}, rangeError(fn, "Ceiling", r.Ceiling.String(), (need+MinHeight).String()+" at least, for this stand, topper and clearance")
	}
	f := Fit{
		Tallest: r.Ceiling - need,
		Spare:   r.Ceiling - r.Stand - t.Height - r.Topper,
		Caution: "keep tip and topper clear of lamps, sprinkler heads, fans and heat",
	}
	f.Fits = t.Height <= f.Tallest
	return f, nil
}

// String returns one line such as "fits: 1 ft to spare, 9 ft is the tallest".
func (f Fit) String() string {
	room := f.Spare.Format(units.InFeetInches, units.Inch/4) + " to spare"
	if f.Spare < 0 {
		room = (-f.Spare).Format(units.InFeetInches, units.Inch/4) + " too high"
	}
	verdict := "fits: "
	if !f.Fits {
		verdict = "does not fit: "
	}
	return verdict + room + ", " + f.Tallest.Format(units.InFeetInches, units.Inch/4) + " is the tallest; " + f.Caution
}

// A Ladder is what it takes to reach the tip of a tree.
// Ladders are equal if == says so.
type Ladder struct {
	// Size is the stepladder, by its nominal height. It is 0 where a person
	// reaches from the floor, and where no stepladder does.
	Size units.Length

	// Lift says that no stepladder reaches.
	Lift bool

	Caution string // how to use it safely, and whom to ask
}

// stepladders are common nominal sizes in feet.
var stepladders = [...]units.Length{4, 6, 8, 10, 12, 14, 16}

// LadderFor returns the smallest stepladder from which the tip of a tree of this
// height can be dressed. From the floor a person reaches 6 ft; from a stepladder,
// standing two steps below its top, 4 ft above its nominal height. Sizes are 4 to
// 16 ft in steps of 2 ft. Above 20 ft no stepladder will do.
//
// It returns an [Error] wrapping [ErrRange] if the height is not from 1 ft to
// 100 ft.
//
// Source: the reach is what makers print on stepladders, from memory; the label on
// the ladder decides. Falls are the risk here, not the sums.
func LadderFor(height units.Length) (Ladder, error) {
	if err := checkHeight("LadderFor", height); err != nil {
		return Ladder{}, err
	}
	if height <= 6*units.Foot {
		return Ladder{Caution: "no ladder needed: do not stand on chairs"}, nil
	}
	for _, size := range stepladders {
		if height <= (size+4)*units.Foot {
			return Ladder{
				Size: size * units.Foot,
				Caution: "set it open and locked on level ground, never stand on the top two steps, do not lean out: " +
					"climb down and move it; have somebody hold it; follow its label",
			}, nil
		}
	}
	return Ladder{Lift: true, Caution: "work at this height is for trained people with a platform or scaffold: ask a licensed firm"}, nil
}

// String returns one line such as "6 ft stepladder; set it open and locked ...".
func (l Ladder) String() string {
	switch {
	case l.Lift:
		return "no stepladder reaches; " + l.Caution
	case l.Size == 0:
		return "from the floor; " + l.Caution
	}
	return strconv.Itoa(int(l.Size/units.Foot)) + " ft stepladder; " + l.Caution
}
