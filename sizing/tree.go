package sizing

import (
	"math"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// A Tree is what a tape measure says of a tree, what it is made of and who uses the
// room. Only Height is required.
type Tree struct {
	// Height is from the floor to the tip as the tree stands, 1 ft to 100 ft. For a
	// tree that was measured before it was set up, see Room.Stand.
	Height units.Length `json:"height"`

	// Base is the widest diameter across the branches, as measured, from an
	// eighth of the height above the handle to one and a half times that.
	// Zero takes the default of Taper, a part of Height, see Taper.Base.
	Base units.Length `json:"base"`

	// Taper is the class of shape, used where Base is zero.
	Taper Taper `json:"taper"`

	// BareTip is the height at the top that is left undressed, for a topper. At
	// least 1 in below it is dressed. How far the topper stands above the tip is
	// another measure, see Room.Topper.
	BareTip units.Length `json:"bareTip"`

	// Handle is the bare height from the floor to the lowest branches, up to half
	// of Height. Zero is for branches that reach the floor. Grading rules for cut
	// trees have it at least 6 in, and at most 1 1/2 in for each foot of height
	// (Ontario R.R.O. 1990, Reg. 377, revoked 2009); a stand takes up most of it.
	Handle units.Length `json:"handle"`

	// Exposure is how much of the way round is seen and dressed.
	Exposure Exposure `json:"exposure"`

	// Kind is what it is made of. A pre-lit and a metal tree take no lights.
	Kind TreeKind `json:"kind"`

	// Setting is who uses the room. It decides on the largest ornaments, see
	// Rules.HomeLargest, and on the cautions.
	Setting Setting `json:"setting"`
}

// A Taper is a class of tree shape: how wide the base is for the height.
type Taper uint8

// The classes of taper, widest first.
const (
	Full   Taper = iota // a full tree
	Slim                // a slim tree
	Pencil              // a pencil tree
)

var taperNames = [...]string{Full: "full", Slim: "slim", Pencil: "pencil"}

// ParseTaper returns the class of taper of a name: full, slim or pencil. Upper
// case is read as lower case. Any other text is an [units.Error] wrapping [units.ErrName].
func ParseTaper(taper string) (Taper, error) {
	i, err := parseName("ParseTaper", "taper", taper, taperNames[:])
	return Taper(i), err
}

// String returns the name that [ParseTaper] reads.
func (t Taper) String() string { return nameOf("Taper", int(t), taperNames[:]) }

// MarshalText returns the name that [ParseTaper] reads. A value that is none of
// the classes is an [units.Error] wrapping [units.ErrName].
func (t Taper) MarshalText() ([]byte, error) {
	return marshalName("Taper.MarshalText", "taper", int(t), t.String(), taperNames[:])
}

// UnmarshalText sets t to what [ParseTaper] reads.
func (t *Taper) UnmarshalText(text []byte) error {
	v, err := ParseTaper(string(text))
	if err == nil {
		*t = v
	}
	return err
}

// Base returns the base diameter that stands in for one that was not measured:
// 65 % of the height for a full tree, 45 % for a slim one, 30 % for a pencil
// tree. The height is the whole one, [Tree.Height], handle included; the result is
// rounded to the nearest nanometer. They are defaults in the middle of
// what is sold under these names (60 to 70, 40 to 50 and 25 to 33 %), no
// standard: measure the tree where it matters. It returns an [units.Error] wrapping
// [units.ErrRange] if the height is not from 1 ft to 100 ft, and one wrapping
// [units.ErrName] if t is none of the classes.
//
// Source: common practice, from memory.
func (t Taper) Base(height units.Length) (units.Length, error) {
	return t.base("Taper.Base", "", height)
}

// taperPercent is base diameter over height.
var taperPercent = [...]units.Length{Full: 65, Slim: 45, Pencil: 30}

// base is Base for the function fn, of which taper and height are arguments if at is
// empty, and fields inside the value at otherwise.
func (t Taper) base(fn, at string, height units.Length) (units.Length, error) {
	if err := checkHeight(fn, "height", height); err != nil {
		return 0, within(err, at)
	}
	if int(t) >= len(taperNames) {
		return 0, nameError(fn, at+"taper", t.String(), taperNames[:])
	}
	return (height*taperPercent[t] + 50) / 100, nil
}

// Cone returns the shape that t is dressed on: as high as t above its handle, as
// wide as Base or the default of Taper, with the tip left bare. It does not tell
// how much of the way round is dressed.
//
// It returns an [units.Error] wrapping [units.ErrRange] if a length of t is out of its range,
// and one wrapping [units.ErrName] if Taper is none of the classes.
func (t Tree) Cone() (Cone, error) { return t.cone("Tree.Cone", "/") }

// cone returns the shape of t. Fields of t are named after at, "/" or "/tree/".
func (t Tree) cone(fn, at string) (Cone, error) {
	base, err := t.Taper.base(fn, at, t.Height)
	if err != nil {
		return Cone{}, err
	}
	if t.Base != 0 {
		base = t.Base
	}
	if t.Handle < 0 || t.Handle > t.Height/2 {
		return Cone{}, rangeError(fn, at+"handle", t.Handle.String(), "0 ft to "+(t.Height/2).String())
	}
	c := Cone{Height: t.Height - t.Handle, BaseDiameter: base, BareTip: t.BareTip}
	if base < minBase(c.Height) || base > maxBase(c.Height) {
		return Cone{}, rangeError(fn, at+"base", base.String(), wantBase(c.Height))
	}
	if err := c.check(fn, at); err != nil {
		return Cone{}, err
	}
	return c, nil
}

// An Exposure is how much of the way round a tree is seen and so dressed: one
// of the named situations, or an arc made by [ArcDegrees].
// Exposures are comparable with ==.
type Exposure int32

// The named exposures. How many degrees each one dresses is common practice,
// from memory; where the room says otherwise, give the arc.
const (
	AllRound    Exposure = iota // free-standing, seen from every side: 360 degrees
	AgainstWall                 // its back to a wall: 240 degrees, two thirds
	InCorner                    // in a corner of the room: 180 degrees, a half
	HalfTree                    // a half tree, flat at the back: 180 degrees, a half
)

var exposureNames = [...]string{AllRound: "all round", AgainstWall: "wall", InCorner: "corner", HalfTree: "half"}

// An arc is held as thousandths of a degree, from minArc to maxArc.
const (
	minArc Exposure = 1 * degree
	maxArc Exposure = 360 * degree
)

const wantArc = "1 to 360 degrees"

// ArcDegrees returns the exposure of a tree of which so many degrees are seen,
// 1 to 360, rounded to the nearest thousandth of a degree. Anything else, NaN
// included, is an [units.Error] wrapping [units.ErrRange].
func ArcDegrees(degrees float64) (Exposure, error) {
	if !(degrees >= 1 && degrees <= 360) {
		return 0, rangeError("ArcDegrees", "degrees", strconv.FormatFloat(degrees, 'g', -1, 64), wantArc)
	}
	return Exposure(math.Round(degrees * 1000)), nil
}

// Degrees returns how many degrees of the way round are dressed, to a thousandth:
// 360, 240, 180 and 180 for the named exposures. A value that is no exposure is
// an [units.Error] wrapping [units.ErrRange].
func (e Exposure) Degrees() (float64, error) {
	arc, err := e.arc("Exposure.Degrees", "")
	return float64(arc) / float64(degree), err
}

// degree is how an arc of one degree is held.
const degree Exposure = 1000

// arc returns e in thousandths of a degree.
func (e Exposure) arc(fn, at string) (Exposure, error) {
	switch {
	case e == AllRound:
		return 360 * degree, nil
	case e == AgainstWall:
		return 240 * degree, nil
	case e == InCorner, e == HalfTree:
		return 180 * degree, nil
	case minArc <= e && e <= maxArc:
		return e, nil
	}
	return 0, rangeError(fn, at+"exposure", e.String(), listOf(exposureNames[:])+", or "+wantArc)
}

// ParseExposure returns the exposure of a text: all round, wall, corner or half,
// or an arc such as "200 degrees", "200 deg" or "200°", with up to three decimal
// places. Upper case is read as lower case. An unknown name is an [units.Error]
// wrapping [units.ErrName], an arc that is not from 1 to 360 degrees one wrapping
// [units.ErrRange].
func ParseExposure(exposure string) (Exposure, error) {
	i, err := parseName("ParseExposure", "exposure", exposure, exposureNames[:])
	if err == nil {
		return Exposure(i), nil
	}
	e, isArc := parseArc(exposure)
	switch {
	case !isArc:
		return 0, &units.Error{
			Func: "sizing.ParseExposure", Field: "exposure", Value: clip(exposure),
			Want: listOf(exposureNames[:]) + ", or an arc such as 200 degrees", Err: units.ErrName,
		}
	case e < minArc || e > maxArc:
		return 0, rangeError("ParseExposure", "exposure", exposure, wantArc)
	}
	return e, nil
}

// parseArc reads digits with up to three decimal places and the word or sign
// for degrees. An arc beyond any range comes back as maxArc+1.
func parseArc(s string) (Exposure, bool) {
	if len(s) > maxText {
		return 0, false
	}
	t := strings.ToLower(strings.TrimSpace(s))
	number, found := "", false
	for _, unit := range [...]string{"degrees", "degree", "deg", "°"} {
		if number, found = strings.CutSuffix(t, unit); found {
			break
		}
	}
	whole, frac, dotted := strings.Cut(strings.TrimSpace(number), ".")
	if !found || whole == "" || dotted && frac == "" || len(frac) > 3 {
		return 0, false
	}
	arc := Exposure(0)
	for _, c := range whole + frac + "000"[len(frac):] {
		if c < '0' || c > '9' {
			return 0, false
		}
		arc = min(arc*10+Exposure(c-'0'), maxArc+1)
	}
	return arc, true
}

// String returns the text that [ParseExposure] reads: "all round", "wall",
// "corner", "half", or an arc such as "200 degrees".
func (e Exposure) String() string {
	if minArc <= e && e <= maxArc {
		text := strconv.Itoa(int(e / 1000))
		if part := int(e % 1000); part != 0 {
			text += "." + strings.TrimRight(strconv.Itoa(1000 + part)[1:], "0")
		}
		if text == "1" {
			return "1 degree"
		}
		return text + " degrees"
	}
	return nameOf("Exposure", int(e), exposureNames[:])
}

// MarshalText returns the text that [ParseExposure] reads. A value that is no
// exposure is an [units.Error] wrapping [units.ErrRange].
func (e Exposure) MarshalText() ([]byte, error) {
	if _, err := e.Degrees(); err != nil {
		return nil, rangeError("Exposure.MarshalText", "exposure", e.String(), listOf(exposureNames[:])+", or "+wantArc)
	}
	return []byte(e.String()), nil
}

// UnmarshalText sets e to what [ParseExposure] reads.
func (e *Exposure) UnmarshalText(text []byte) error {
	v, err := ParseExposure(string(text))
	if err == nil {
		*e = v
	}
	return err
}
