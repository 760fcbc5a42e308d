package sizing

import (
	"database/sql/driver"
	"math"
	"strconv"

	"example.com/fircone/internal/elem"
	"example.com/fircone/internal/sqltext"
	"example.com/fircone/units"
)

// A Tree is what a tape measure says about a tree, what it is made of, and who uses the room.
// Only Height is required.
type Tree struct {
	// Height is from the floor to the tip as the tree stands, 1 ft to 100 ft.
	Height units.Length `json:"height"`

	// Base is the widest diameter across the branches, 1/8 to 3/2 of the height above the
	// handle. Zero is the usual one of Taper.
	Base units.Length `json:"base"`

	// Taper is the class of shape. Ignored if Base is not zero.
	Taper Taper `json:"taper"`

	// Undressed parts. At least 1 in must remain dressed.
	BareTip  units.Length `json:"bareTip"`  // height at the top, for a topper
	BareBase units.Length `json:"bareBase"` // height at the bottom of the branches

	// Handle is from the floor to the lowest branches, up to half of Height. Grading rules
	// ask for at least 6 in, and at most 1 1/2 in for each foot of height.
	//
	// Source: Ontario R.R.O. 1990, Reg. 377 (revoked 2009), read.
	Handle units.Length `json:"handle"`

	Exposure Exposure `json:"exposure"` // how much is seen and dressed
	Kind     TreeKind `json:"kind"`     // what it is made of

	// Public is for a room that the public uses, such as a shop or a church. It allows
	// larger ornaments and adds cautions.
	Public bool `json:"public"`
}

// A Taper is a class of tree shape. Its text is "full", "slim" or "pencil".
type Taper uint8

// The usual base, in percent of the whole height, and what is sold under the name.
//
// Source: common practice, from memory.
const (
	Full   Taper = iota // 65 %; 60 to 70 %
	Slim                // 45 %; 40 to 50 %
	Pencil              // 30 %; 25 to 33 %
)

var taperNames = [...]string{Full: "full", Slim: "slim", Pencil: "pencil"}

// taperPercent is base diameter over height.
var taperPercent = [...]units.Length{Full: 65, Slim: 45, Pencil: 30}

// String returns the text of t.
func (t Taper) String() string { return nameOf("Taper", int(t), taperNames[:]) }

// MarshalText returns the text of t.
func (t Taper) MarshalText() ([]byte, error) {
	return marshalName("Taper.MarshalText", "taper", int(t), t.String(), taperNames[:])
}

// UnmarshalText sets *t from its text, in upper or lower case.
func (t *Taper) UnmarshalText(text []byte) error {
	return readName(t, "Taper.UnmarshalText", string(text), taperNames[:])
}

// Value returns the text of t for a database column.
func (t Taper) Value() (driver.Value, error) { return sqltext.Value(t) }

// Scan sets *t from a database column of text.
func (t *Taper) Scan(src any) error { return sqltext.Scan("sizing.Taper.Scan", src, t) }

// A TreeKind is what a tree is made of. Its text is "cut", "artificial", "pre-lit" or
// "metal".
type TreeKind uint8

// The kinds of tree.
const (
	Cut        TreeKind = iota // cut, and watered
	Artificial                 // artificial, without lights of its own
	PreLit                     // artificial, with its own lights: it takes no others
	Metal                      // metal or foil: no electric lights
	numKinds
)

var kindNames = [numKinds]string{"cut", "artificial", "pre-lit", "metal"}

// String returns the text of k.
func (k TreeKind) String() string { return nameOf("TreeKind", int(k), kindNames[:]) }

// MarshalText returns the text of k.
func (k TreeKind) MarshalText() ([]byte, error) {
	return marshalName("TreeKind.MarshalText", "kind", int(k), k.String(), kindNames[:])
}

// UnmarshalText sets *k from its text, in upper or lower case.
func (k *TreeKind) UnmarshalText(text []byte) error {
	return readName(k, "TreeKind.UnmarshalText", string(text), kindNames[:])
}

// Value returns the text of k for a database column.
func (k TreeKind) Value() (driver.Value, error) { return sqltext.Value(k) }

// Scan sets *k from a database column of text.
func (k *TreeKind) Scan(src any) error { return sqltext.Scan("sizing.TreeKind.Scan", src, k) }

// lit reports whether the trees of a kind are given lights.
func (k TreeKind) lit() bool { return k == Cut || k == Artificial }

// Measured returns t with its lengths checked, and with the usual base of its Taper if Base is
// zero.
func (t Tree) Measured() (Tree, error) {
	c, err := t.cone("Tree.Measured", "/")
	if err != nil {
		return Tree{}, err
	}
	t.Base = c.BaseDiameter
	return t, nil
}

// cone returns the shape that t is dressed on. Fields of t are named after at, "/" or
// "/tree/".
func (t *Tree) cone(fn, at string) (cone, error) {
	if t.Height < minHeight || t.Height > maxHeight {
		return cone{}, checkHeight(fn, at+"height", t.Height) // the text of the field takes memory
	}
	if int(t.Taper) >= len(taperNames) {
		return cone{}, nameError(fn, at+"taper", t.Taper.String(), taperNames[:])
	}
	base := t.Base
	if base == 0 {
		base = (t.Height*taperPercent[t.Taper] + 50) / 100
	}
	if t.Handle < 0 || t.Handle > t.Height/2 {
		return cone{}, rangeError(fn, at+"handle", t.Handle.String(), "0 ft to "+(t.Height/2).String())
	}
	h := t.Height - t.Handle
	switch {
	case base < minBase(h) || base > maxBase(h):
		return cone{}, rangeError(fn, at+"base", base.String(), wantBase(h))
	case t.BareTip < 0 || t.BareTip > h-minDressed:
		return cone{}, rangeError(fn, at+"bareTip", t.BareTip.String(), "0 ft to "+(h-minDressed).String())
	case t.BareBase < 0 || t.BareBase > h-t.BareTip-minDressed:
		return cone{}, rangeError(fn, at+"bareBase", t.BareBase.String(), "0 ft to "+(h-t.BareTip-minDressed).String())
	}
	return cone{h, base, t.BareTip, t.BareBase}, nil
}

// A surface is what of a tree is dressed.
type surface struct {
	cone cone
	arc  Exposure // of the way round, in thousandths of a degree
	area units.Area

	balls balls // with which it is dressed, if that is asked
}

// surface returns what of t is dressed. Fields of t are named after at, "/" or "/tree/".
func (t *Tree) surface(fn, at string) (s surface, err error) {
	if s.cone, s.arc, err = t.wound(fn, at); err != nil {
		return surface{}, err
	}
	s.area = units.Area(share(int64(s.cone.area()), s.arc, maxArc))
	return s, nil
}

// wound returns what of a surface a garland goes round, for which the area is not needed.
func (t *Tree) wound(fn, at string) (c cone, arc Exposure, err error) {
	if c, err = t.cone(fn, at); err != nil {
		return cone{}, 0, err
	}
	arc, err = t.Exposure.arc(fn, at)
	return c, arc, err
}

// turn returns what part of the way round is dressed.
func (s *surface) turn() float64 { return turn(s.arc) }

func turn(arc Exposure) float64 { return float64(arc) / float64(maxArc) }

// nm2 returns the area in square nanometers.
func (s *surface) nm2() float64 { return float64(float64(s.area) * 1e6) }

// DressedArea returns the sloped surface between the bare parts, as much of it as is seen. With
// radii r₁ and r₂ at the edges and the slope s between them, it is
//
//	π·(r₁ + r₂)·s · degrees/360
//
// rounded up to a square micrometer.
func (t Tree) DressedArea() (units.Area, error) {
	s, err := t.surface("Tree.DressedArea", "/")
	return s.area, err
}

// Slant returns the length of the dressed slope, to the nearest nanometer. A garland goes around
// slant.In(spacing) times.
func (t Tree) Slant() (units.Length, error) {
	c, err := t.cone("Tree.Slant", "/")
	if err != nil {
		return 0, err
	}
	return units.Length(math.Round(c.slant())), nil
}

// Grade returns what grading rules call the shape, by base over height above the handle:
// "candlestick" under 40 %, "normal" up to 90 %, "flared" above.
//
// Source: Ontario R.R.O. 1990, Reg. 377, s. 1 (revoked 2009), for 40 %; U.S. Standards for
// Grades of Christmas Trees, 1989, for 90 %, from memory.
func (t Tree) Grade() (string, error) {
	c, err := t.cone("Tree.Grade", "/")
	switch {
	case err != nil:
		return "", err
	case 100*c.BaseDiameter < 40*c.Height:
		return "candlestick", nil
	case 100*c.BaseDiameter <= 90*c.Height:
		return "normal", nil
	}
	return "flared", nil
}

// SpiralLength returns the length of garland wound on the dressed part of t, with wraps this
// spacing apart along the slope, 1/4 in to 100 ft. It is within 1 nm. Where only part of the way
// around is dressed, the garland goes back and forth, one spacing lower each time. If it sags, see
// [Drape.Stretch].
//
// Unrolled flat, the cone is a sector and the garland a spiral of Archimedes. The formula is in
// the package documentation; use only the dressed part of its π·d. With small spacings the
// length tends to area over spacing, with very wide ones to the slope.
//
// Source: OpenStax, Calculus Volume 3, section 3.3, has a spiral on a cone.
func (t Tree) SpiralLength(spacing units.Length) (units.Length, error) {
	const fn = "Tree.SpiralLength"
	c, arc, err := t.wound(fn, "/")
	if err != nil {
		return 0, err
	}
	if err := checkSpacing(fn, spacing); err != nil {
		return 0, err
	}
	return c.spiralLength(spacing, turn(arc)), nil
}

// Spacing returns how far apart along the slope the wraps of this much garland come: the inverse
// of [Tree.SpiralLength], rounded up to a nanometer, so that the garland suffices. It is less
// than 1.01 nm too wide. Below one turn several spacings take this length; the result is one of
// them. By hand,
//
//	area/√(length² - slant²) ≤ spacing ≤ area/(length - slant)
//
// and the first is close.
func (t Tree) Spacing(garland units.Length) (units.Length, error) {
	const fn = "Tree.Spacing"
	c, arc, err := t.wound(fn, "/")
	if err != nil {
		return 0, err
	}
	return c.spacingOf(fn, garland, turn(arc))
}

// Seen returns how much of the way around is seen by people who look from directions spanning
// spread degrees, 0 to 360, from no nearer to the trunk than distance:
//
//	spread + 2·acos(radius / distance)
//
// up to 360 degrees, to three decimal places. InCorner is always 180. The radius is half the base;
// the distance is at least 1 in more, and at most 1000 ft. A line of sight touches the circle of
// the branches:
//
//	   . - .
//	 /       \
//	|    R    |\
//	|    o----| -\
//	|     \  |    \
//	 \     \/       \   line of sight
//	   ` - ' ` .     \
//	        D     ` .  o person
//
// A 7½ ft tree in a corner, spread 90 degrees, shows about 240 degrees from 10 ft off.
func (t Tree) Seen(spread float64, distance units.Length) (Exposure, error) {
	const fn = "Tree.Seen"
	c, err := t.cone(fn, "/")
	if err != nil {
		return 0, err
	}
	if !(spread >= 0 && spread <= 360) {
		return 0, rangeError(fn, "spread", strconv.FormatFloat(spread, 'g', -1, 64), "0 to 360 degrees")
	}
	radius := c.BaseDiameter / 2
	if distance < radius+units.Inch || distance > 1000*units.Foot {
		return 0, rangeError(fn, "distance", distance.String(), (radius+units.Inch).String()+" to 1000 ft")
	}
	r, d := float64(c.BaseDiameter)/2, float64(distance)
	side := elem.Atan2(math.Sqrt(float64((d-r)*(d+r))), r)
	return Exposure(math.Round(min(float64(1000*spread)+float64(side*(360_000/math.Pi)), float64(maxArc)))), nil
}

// Skirt returns how wide a skirt may be: from a foot less than the base, or half the base if
// that is more, to 6 in beyond the branches on each side. A collar goes by the stand: measure
// across its feet.
//
// Source: common practice, from memory.
func (t Tree) Skirt() (units.Range[units.Length], error) {
	c, err := t.cone("Tree.Skirt", "/")
	if err != nil {
		return units.Range[units.Length]{}, err
	}
	return units.Range[units.Length]{Min: max(c.BaseDiameter-units.Foot, c.BaseDiameter/2), Max: c.BaseDiameter + units.Foot}, nil
}
