package sizing

import (
	"strconv"

	"example.com/fircone/units"
)

// aboveTopper is left between a topper and the ceiling: room for the fingers that
// set it on. A figure of this package.
const aboveTopper = 2 * units.Inch

// Topper returns how high above the tip of a tree of this height a topper may
// stand, see [Room.Topper]: a tenth to an eighth of the height, rounded to the nearest
// nanometer. It returns an [units.Error] wrapping [units.ErrRange] if the height is not from 1 ft to
// 100 ft.
//
// Source: common practice, from memory.
func Topper(height units.Length) (units.Range[units.Length], error) {
	if err := checkHeight("Topper", "height", height); err != nil {
		return units.Range[units.Length]{}, err
	}
	return units.Range[units.Length]{Min: (height + 5) / 10, Max: (height + 4) / 8}, nil
}

// Skirt returns how wide a skirt or collar under a tree may be: from a foot less
// than the base, or half the base if that is more, to as wide as the base. Its
// errors are those of [Tree.Cone].
//
// Source: common practice, from memory.
func (t Tree) Skirt() (units.Range[units.Length], error) {
	c, err := t.cone("Tree.Skirt", "/")
	if err != nil {
		return units.Range[units.Length]{}, err
	}
	return units.Range[units.Length]{Min: max(c.BaseDiameter-units.Foot, c.BaseDiameter/2), Max: c.BaseDiameter}, nil
}

// A Room is where a tree is to stand. Rooms are equal if == says so.
type Room struct {
	// Ceiling is its height, 3 ft to 150 ft.
	Ceiling units.Length `json:"ceiling"`

	// Clearance is what is left between tip and ceiling, up to 50 ft, for the
	// topper and for setting it on. Zero is the usual 1 ft.
	Clearance units.Length `json:"clearance"`

	// Topper is how high the topper stands above the tip, up to 10 ft. The function
	// of that name says what is usual. What it hides of the branches is Tree.BareTip.
	Topper units.Length `json:"topper"`

	// Stand is by how much the stand lifts the tree, if Tree.Height was measured
	// from the foot of the trunk and not from the floor: up to 5 ft. Zero is for a
	// tree that was measured as it stands.
	Stand units.Length `json:"stand"`
}

// A Fit is how a tree and its topper go under a ceiling.
// Fits are equal if == says so.
type Fit struct {
	Tallest units.Length `json:"tallest"` // the tallest tree that fits with this stand and topper
	Spare   units.Length `json:"spare"`   // from the top of the topper, or the tip, to the ceiling; negative past it
	Fits    bool         `json:"fits"`    // the tree is no taller than Tallest
	Caution string       `json:"caution"` // what to see to, and whom to ask
}

// Fit returns whether a tree goes under the ceiling, and the tallest that does:
//
//	tallest = ceiling - stand - clearance
//
// where the topper may take up the clearance, all but 2 in above it for the
// fingers that set it on; a topper that needs more than the clearance takes its own
// height and those 2 in. A tree that is too tall is reported as it is.
//
// It returns an [units.Error] wrapping [units.ErrRange] if a field of r or the height of t is
// out of its range, or if what is left under the ceiling is less than 1 ft.
//
// Source: a tree at least 1 ft shorter than the ceiling, Clemson Cooperative
// Extension, Home & Garden Information Center, Selecting a Christmas Tree; the
// 2 in above a topper are a figure of this package.
func (r Room) Fit(t Tree) (Fit, error) {
	const fn = "Room.Fit"
	switch {
	case r.Ceiling < 3*units.Foot || r.Ceiling > 150*units.Foot:
		return Fit{}, rangeError(fn, "/ceiling", r.Ceiling.String(), "3 ft to 150 ft")
	case r.Clearance < 0 || r.Clearance > 50*units.Foot:
		return Fit{}, rangeError(fn, "/clearance", r.Clearance.String(), "0 ft to 50 ft")
	}
	top, err := r.top(fn, t)
	if err != nil {
		return Fit{}, err
	}
	clearance := r.Clearance
	if clearance == 0 {
		clearance = 1 * units.Foot
	}
	if r.Topper != 0 {
		clearance = max(clearance, r.Topper+aboveTopper)
	}
	need := r.Stand + clearance
	if r.Ceiling-need < MinHeight {
		return Fit{}, rangeError(fn, "/ceiling", r.Ceiling.String(), (need+MinHeight).String()+" at least, for this stand, topper and clearance")
	}
	f := Fit{
		Tallest: r.Ceiling - need,
		Spare:   r.Ceiling - top,
		Caution: "keep tip and topper clear of lamps, sprinkler heads, fans and heat",
	}
	f.Fits = t.Height <= f.Tallest
	return f, nil
}

// top returns how high above the floor the top of the topper is, or the tip where
// there is none.
func (r Room) top(fn string, t Tree) (units.Length, error) {
	switch {
	case r.Topper < 0 || r.Topper > 10*units.Foot:
		return 0, rangeError(fn, "/topper", r.Topper.String(), "0 ft to 10 ft")
	case r.Stand < 0 || r.Stand > 5*units.Foot:
		return 0, rangeError(fn, "/stand", r.Stand.String(), "0 ft to 5 ft")
	}
	return r.Stand + t.Height + r.Topper, checkHeight(fn, "/tree/height", t.Height)
}

// String returns one line such as "fits: 1 ft to spare, 9 ft is the tallest; keep tip
// and topper clear ...", or "does not fit: only 11 in to spare, ...", or "does not fit:
// 3 in past the ceiling, ...". Each length is rounded to a quarter inch on the safe
// side: what is to spare and the tallest down, what is past the ceiling up. The zero
// Fit, which comes with an error, is "nothing was checked".
func (f Fit) String() string {
	if f == (Fit{}) {
		return unchecked
	}
	// A multiple of a quarter inch prints exactly.
	const quarter = units.Inch / 4
	down := func(l units.Length) string { return (l / quarter * quarter).Format(units.InFeetInches, quarter) }
	room := down(f.Spare) + " to spare"
	switch {
	case f.Spare < 0:
		room = down(quarter-1-f.Spare) + " past the ceiling"
	case !f.Fits && f.Spare < quarter:
		room = "nothing to spare"
	case !f.Fits:
		room = "only " + room
	}
	verdict := "fits: "
	if !f.Fits {
		verdict = "does not fit: "
	}
	return verdict + room + ", " + down(f.Tallest) + " is the tallest; " + f.Caution
}

// A Ladder is what it takes to reach the top of a tree.
// Ladders are equal if == says so.
type Ladder struct {
	// Size is the stepladder, by its nominal height. It is 0 where a person
	// reaches from the floor, and where no stepladder does.
	Size units.Length `json:"size"`

	// Lift says that no stepladder reaches.
	Lift bool `json:"lift"`

	Caution string `json:"caution"` // how to use it safely, and whom to ask
}

// stepladders are common nominal sizes in feet.
var stepladders = [...]units.Length{4, 6, 8, 10, 12, 14, 16}

// Ladder returns the smallest stepladder for setting the topper on a tree: one from
// which to reach the height of the topper's top above the floor,
//
//	height = stand + tree + topper
//
// From the floor a person reaches 6 ft; from a stepladder, standing two steps below
// its top, 4 ft above its nominal height. Sizes are 4 to 16 ft in steps of 2 ft.
// Above 20 ft no stepladder will do. A topper is held lower than its top, but it has
// to be lifted over the tip and set straight without stretching. Ceiling and
// Clearance do not matter.
//
// Source: the reach is what makers print on stepladders, from memory; the label on
// the ladder decides. That it goes by the top of the topper is a choice of this
// package, on the safe side. Falls are the risk here, not the sums.
func (r Room) Ladder(t Tree) (Ladder, error) {
	top, err := r.top("Room.Ladder", t)
	if err != nil {
		return Ladder{}, err
	}
	return ladder(top), nil
}

func ladder(height units.Length) Ladder {
	if height <= 6*units.Foot {
		return Ladder{Caution: "no ladder needed: do not stand on chairs"}
	}
	for _, size := range stepladders {
		if height <= (size+4)*units.Foot {
			return Ladder{
				Size: size * units.Foot,
				Caution: "set it open and locked on level ground, never stand on the top two steps, do not lean out: " +
					"climb down and move it; have somebody hold it; follow its label",
			}
		}
	}
	return Ladder{Lift: true, Caution: "work at this height is for trained people with a platform or scaffold: ask a licensed firm"}
}

// String returns one line such as "6 ft stepladder; set it open and locked ...". The
// zero Ladder, which comes with an error, is "nothing was checked".
func (l Ladder) String() string {
	switch {
	case l == Ladder{}:
		return unchecked
	case l.Lift:
		return "no stepladder reaches; " + l.Caution
	case l.Size == 0:
		return "from the floor; " + l.Caution
	}
	return strconv.Itoa(int(l.Size/units.Foot)) + " ft stepladder; " + l.Caution
}

// unchecked is the text of a result that came with an error, where any other would
// read as safe.
const unchecked = "nothing was checked"
