package sizing

import "example.com/fircone/units"

// aboveTopper is left between a topper and the ceiling: room for the fingers that
// set it on. A figure of this package.
const aboveTopper = 2 * units.Inch

// Topper returns how high a topper usually stands above the tip of a tree of this height,
// 1 ft to 100 ft: a tenth to an eighth of it.
//
// Source: common practice, from memory.
func Topper(height units.Length) (units.Range[units.Length], error) {
	if err := checkHeight("Topper", "height", height); err != nil {
		return units.Range[units.Length]{}, err
	}
	return units.Range[units.Length]{Min: (height + 5) / 10, Max: (height + 4) / 8}, nil
}

// A Room is where a tree is to stand.
type Room struct {
	// Ceiling is the height of the ceiling over the tip, from the floor, 3 ft to 150 ft.
	Ceiling units.Length `json:"ceiling"`

	// Fall is for a vault: how much lower the ceiling is 1 ft to the side of the tip, up
	// to 1 ft. Zero is level.
	Fall units.Length `json:"fall"`

	// Clearance is what should be left between tip and ceiling, up to 50 ft. Zero is the
	// usual 1 ft; NoClearance asks for none.
	Clearance   units.Length `json:"clearance"`
	NoClearance bool         `json:"noClearance"`

	// Topper is how high the topper stands above the tip, up to 10 ft. Zero is one not
	// chosen yet; NoTopper is none.
	Topper   units.Length `json:"topper"`
	NoTopper bool         `json:"noTopper"`

	// TopperWidth is across the topper, up to 10 ft; it counts under a vault. Zero is as
	// wide as high.
	TopperWidth units.Length `json:"topperWidth"`

	// Stand is how much the stand lifts a tree measured from the foot of its trunk, up to
	// 5 ft. Zero is for a tree measured as it stands.
	Stand units.Length `json:"stand"`
}

// A Fit is how a tree and its topper go under a ceiling.
type Fit struct {
	// Verdict is "fits", "tight" or "does not fit".
	Verdict string `json:"verdict"`

	Tallest units.Length `json:"tallest"` // the tallest tree that fits
	Spare   units.Length `json:"spare"`   // from topper or tip to the ceiling; negative past it
	Topper  units.Length `json:"topper"`  // the tallest topper there is room for

	Caution units.Caution `json:"caution"` // what to watch for
}

// Fit returns how a tree goes under the ceiling, and the tallest that fits:
//
//	fits           no taller than the tallest, ceiling - stand - clearance
//	tight          taller, but it goes under with its topper
//	does not fit   the tree or its topper is past the ceiling
//
// The topper may use the clearance except 2 in for the fingers that set it. A taller one needs
// its height and 2 in. NoClearance leaves out both. Under a vault the ceiling counts as low as
// at the edge of the topper, Fall · TopperWidth / 2 lower:
//
//	    /\
//	   /  \      ceiling
//	  / /\ \     topper
//	 /  ||  \
//	/  /  \  \
//
// At least 1 ft must be left for a tree.
//
// Source: 1 ft, Clemson Cooperative Extension, Selecting a Christmas Tree (read); the 2 in are
// this package's.
func (r Room) Fit(tree Tree) (Fit, error) { return r.fit("Room.Fit", tree) }

func (r Room) fit(fn string, tree Tree) (Fit, error) {
	switch {
	case r.Ceiling < 3*units.Foot || r.Ceiling > 150*units.Foot:
		return Fit{}, rangeError(fn, "/ceiling", r.Ceiling.String(), "3 ft to 150 ft")
	case r.Fall < 0 || r.Fall > units.Foot:
		return Fit{}, rangeError(fn, "/fall", r.Fall.String(), "0 ft to 1 ft")
	case r.Clearance < 0 || r.Clearance > 50*units.Foot:
		return Fit{}, rangeError(fn, "/clearance", r.Clearance.String(), "0 ft to 50 ft")
	case r.NoClearance && r.Clearance != 0:
		return Fit{}, &units.Error{Func: "sizing." + fn, Field: "/clearance", Value: r.Clearance.String(), Want: "0 ft with noClearance", Err: units.ErrFit}
	case r.TopperWidth < 0 || r.TopperWidth > 10*units.Foot:
		return Fit{}, rangeError(fn, "/topperWidth", r.TopperWidth.String(), "0 ft to 10 ft")
	}
	top, err := r.top(fn, tree, r.Topper)
	if err != nil {
		return Fit{}, err
	}
	clearance, fingers := r.Clearance, aboveTopper
	switch {
	case r.NoClearance:
		fingers = 0
	case clearance == 0:
		clearance = 1 * units.Foot
	}
	width := r.TopperWidth
	if width == 0 {
		width = r.Topper
	}
	if r.NoTopper {
		width = 0
	}
	// Half the width times Fall for each foot, rounded up: at most 5 ft · 1 ft / 1 ft.
	edge := r.Ceiling - units.Length((int64(width)*int64(r.Fall)/2+int64(units.Foot)-1)/int64(units.Foot))
	need := clearance
	if r.Topper != 0 {
		need = max(need, r.Ceiling-edge+r.Topper+fingers)
	}
	need += r.Stand
	if r.Ceiling-need < minHeight {
		return Fit{}, rangeError(fn, "/ceiling", r.Ceiling.String(), (need+minHeight).String()+" at least, for this stand, topper and clearance")
	}
	f := Fit{
		Verdict: "fits",
		Tallest: r.Ceiling - need,
		Spare:   r.Ceiling - top,
		Topper:  max(0, edge-fingers-(r.Stand+tree.Height)),
		Caution: units.Caution{Code: "clear", Text: "keep tip and topper clear of lamps, sprinkler heads, fans and heat", Source: commonPractice},
	}
	if r.TopperWidth == 0 && !r.NoTopper {
		// It is as wide as high: x + x·Fall/2 ft is what there is.
		there, part := int64(max(0, r.Ceiling-fingers-r.Stand-tree.Height)), int64(2*units.Foot+r.Fall)
		f.Topper = units.Length(there/part*int64(2*units.Foot) + there%part*int64(2*units.Foot)/part)
	}
	if r.Topper != 0 {
		f.Spare = edge - top
	}
	switch {
	case f.Spare < 0:
		f.Verdict = "does not fit"
	case tree.Height > f.Tallest:
		f.Verdict = "tight"
	}
	return f, nil
}

// top returns how high above the floor the top of a topper is, or the tip where there
// is none.
func (r Room) top(fn string, t Tree, topper units.Length) (units.Length, error) {
	switch {
	case r.Topper < 0 || r.Topper > maxTopper:
		return 0, rangeError(fn, "/topper", r.Topper.String(), "0 ft to 10 ft")
	case r.NoTopper && r.Topper != 0:
		return 0, &units.Error{Func: "sizing." + fn, Field: "/topper", Value: r.Topper.String(), Want: "0 ft with noTopper", Err: units.ErrFit}
	case r.Stand < 0 || r.Stand > 5*units.Foot:
		return 0, rangeError(fn, "/stand", r.Stand.String(), "0 ft to 5 ft")
	}
	return r.Stand + t.Height + topper, checkHeight(fn, "/tree/height", t.Height)
}

// String returns one line such as "fits: 1 ft to spare, 9 ft is the tallest; keep tip and
// topper clear ...", rounded to a quarter inch on the safe side. The zero Fit is "nothing was
// checked".
func (f Fit) String() string { return f.text(units.InFeetInches) }

func (f Fit) text(style units.Style) string {
	if f == (Fit{}) {
		return unchecked
	}
	room := left(f.Spare, style) + " to spare"
	switch {
	case f.Spare < 0:
		room = over(-f.Spare, style) + " past the ceiling"
	case f.Spare < units.Inch/4:
		room = "nothing to spare"
	}
	return f.Verdict + ": " + room + ", " + left(f.Tallest, style) + " is the tallest; " + f.Caution.Text
}

// A Ladder is what it takes to reach a height.
type Ladder struct {
	Size units.Length `json:"size"` // nominal height of the stepladder; zero from the floor or with a lift
	Lift bool         `json:"lift"` // no stepladder reaches
	In   units.Length `json:"in"`   // from the branch line to the tip: half the base

	// Cautions have the codes "floor", "ladder" or "lift", and "deep" where the tip is out
	// of a safe reach.
	Cautions []units.Caution `json:"cautions"`
}

// What stepladders there are, and how high a person works from one.
//
// Source: makers' labels, from memory; the label on the ladder decides.
const (
	smallestLadder = 4 * units.Foot // in steps of 2 ft
	tallestLadder  = 16 * units.Foot
	fromFloor      = 6 * units.Foot
	aboveLadder    = 4 * units.Foot // standing two steps below its top
	belowTop       = 2 * units.Foot // where one stands
)

const (
	maxTopper  = 10 * units.Foot
	maxReach   = 150 * units.Foot
	safeInward = 3 * units.Foot
)

// LadderFor returns the smallest stepladder to work from at a height above the floor, up to
// 150 ft.
//
//	height    ladder
//	to 6 ft   none
//	8 ft      4 ft
//	10 ft     6 ft
//	12 ft     8 ft
//	14 ft     10 ft
//	16 ft     12 ft
//	18 ft     14 ft
//	20 ft     16 ft
//	above     a lift
//
// Source: makers' labels, from memory; the label on the ladder decides.
func LadderFor(height units.Length) (Ladder, error) {
	switch {
	case height < 0 || height > maxReach:
		return Ladder{}, rangeError("LadderFor", "height", height.String(), "0 ft to 150 ft")
	case height <= fromFloor:
		return Ladder{Cautions: []units.Caution{{Code: "floor", Text: "no ladder needed: do not stand on chairs", Source: commonPractice}}}, nil
	case height > tallestLadder+aboveLadder:
		return Ladder{Lift: true, Cautions: []units.Caution{{
			Code:   "lift",
			Text:   "no stepladder reaches: work at this height is for trained people with a platform, a scaffold or a lift; ask a licensed firm",
			Source: commonPractice,
		}}}, nil
	}
	return Ladder{Size: max(smallestLadder, up(height-aboveLadder, 2*units.Foot)), Cautions: []units.Caution{{
		Code: "ladder",
		Text: "set it open and locked on level ground, never stand on its top or the step below, do not lean out: " +
			"climb down and move it; have somebody within call; follow its label",
		Source: "29 CFR 1926.1053(b) for the top step and level ground, from memory; makers' labels",
	}}}, nil
}

// Reach returns the heights that one works at: up to 6 ft from the floor; on a stepladder from 2 ft
// below its top to 4 ft above; with a lift 20 ft to 150 ft. Zero for a
// size over 16 ft.
func (l Ladder) Reach() units.Range[units.Length] {
	switch {
	case l.Lift:
		return units.Range[units.Length]{Min: tallestLadder + aboveLadder, Max: maxReach}
	case l.Size == 0:
		return units.Range[units.Length]{Max: fromFloor}
	case l.Size < 0 || l.Size > tallestLadder:
		return units.Range[units.Length]{}
	}
	return units.Range[units.Length]{Min: max(0, l.Size-belowTop), Max: l.Size + aboveLadder}
}

// Ladder returns the smallest stepladder that reaches the top of the topper, stand + tree +
// topper above the floor, or the ceiling if that is given and lower. A topper not chosen yet
// counts as the tallest usual one, see [Topper], or the tallest there is room for, see [Fit]. A 9
// ft tree takes an 8 ft ladder, or a 6 ft one under a 9 ft 6 in ceiling. Where In is over 3 ft, a
// caution says what to do instead:
//
//	     |
//	    /|\
//	   / | \        ladder
//	  /  |  \        /\
//	 /   |   \      /  \
//	/    |<-In->|  /    \
//
// Source: see [LadderFor]; the 3 ft are a figure of this package.
func (r Room) Ladder(tree Tree) (Ladder, error) {
	const fn = "Room.Ladder"
	topper, highest := r.Topper, maxReach
	if topper == 0 && !r.NoTopper {
		topper = min(max(0, tree.Height+4)/8, maxTopper)
	}
	if r.Ceiling != 0 {
		fit, err := r.fit(fn, tree)
		if err != nil {
			return Ladder{}, err
		}
		highest = r.Ceiling
		if r.Topper == 0 {
			topper = min(topper, fit.Topper)
		}
	}
	top, err := r.top(fn, tree, topper)
	if err != nil {
		return Ladder{}, err
	}
	c, err := tree.cone(fn, "/tree/")
	if err != nil {
		return Ladder{}, err
	}
	l, _ := LadderFor(min(top, highest))
	l.In = c.BaseDiameter / 2
	if l.In > safeInward && (l.Lift || l.Size != 0) {
		l.Cautions = append(l.Cautions, units.Caution{
			Code:   "deep",
			Text:   "the tip stands farther in than a safe reach: dress the top section before it is raised, or work from a platform or a lift",
			Source: "a figure of this package: 3 ft",
		})
	}
	return l, nil
}

// String returns one line such as "6 ft stepladder, the tip 2 ft 11 in in from the branch line;
// ...". The zero Ladder is "nothing was checked".
func (l Ladder) String() string { return l.text(units.InFeetInches) }

func (l Ladder) text(style units.Style) string {
	if len(l.Cautions) == 0 {
		return unchecked
	}
	text := "from the floor"
	switch {
	case l.Lift:
		text = "a platform or a lift"
	case l.Size != 0:
		text = nominal(l.Size, style) + " stepladder"
	}
	if l.In != 0 && text != "from the floor" {
		text += ", the tip " + over(l.In, style) + " in from the branch line"
	}
	for _, c := range l.Cautions {
		text += "; " + c.Text
	}
	return text
}

// unchecked is the text of a result that came with an error, where any other would
// read as safe.
const unchecked = "nothing was checked"
