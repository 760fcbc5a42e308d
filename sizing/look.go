package sizing

import (
	"math/bits"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Look is how densely a tree is dressed, whatever its size: how far apart the
// wraps of garland are, and how much surface there is to each piece. Two trees
// dressed to one look are a match side by side. A field of zero is for what the
// look does without. Looks are equal if == says so.
//
// [Rules.Look] takes the look from a tree that the rules suit; [CommonLook] is
// the usual one. Its methods check the fields they use.
type Look struct {
	// Garland and Ribbon are the distances from wrap to wrap along the slope,
	// 1/4 in to 100 ft.
	Garland units.Length `json:"garland"`
	Ribbon  units.Length `json:"ribbon"`

	// Ornament, Pick and Light are the surface to each one, 1/100 sq in to
	// 10,000 m²: units.SquareFoot for one to the square foot.
	Ornament units.Area `json:"ornament"`
	Pick     units.Area `json:"pick"`
	Light    units.Area `json:"light"`
}

const (
	minEach = units.SquareInch / 100
	maxEach = 10_000 * units.SquareMeter
)

// CommonLook returns the look of the reference tree: one 7 ft tall, full, seen
// from every side and dressed by [CommonPractice]. In round figures its wraps
// are 10 in apart (10.16 in), and there are 0.93 ornaments, 0.40 picks and 13 lights to
// the square foot.
//
// Source: common practice; the geometry is computed.
func CommonLook() Look {
	look, _ := CommonPractice().Look(Tree{Height: 7 * units.Foot}) // in range
	return look
}

// Amounts are how much of each thing a tree takes. Garland, ribbon and picks are
// alternatives: each is what the tree takes if it is the one [Accent]. [Both] takes
// all of Garland and all of Picks. [Rules.Needs] and [Look.Needs] list just what an
// accent takes. Amounts are equal if == says so.
type Amounts struct {
	Ornaments int          `json:"ornaments"` // of all types
	Garland   units.Length `json:"garland"`   // wound on the tree, end to end, from branch tip to branch tip
	Ribbon    units.Length `json:"ribbon"`    // the same, of ribbon
	Picks     int          `json:"picks"`     // stems of berries, leaves or flowers
	Lights    int          `json:"lights"`    // miniature lamps, on strings of any length
}

// String returns one line, "49 ornaments, 63 ft of garland or ribbon or 21 picks,
// 700 lights", without what is zero. Lengths are rounded to an inch; where garland
// and ribbon are not the same each has its own.
func (a Amounts) String() string {
	length := func(l units.Length, what string) string {
		return l.Format(units.InFeetInches, units.Inch) + " of " + what
	}
	var accents, parts []string
	garland := "garland"
	if a.Ribbon == a.Garland {
		garland = "garland or ribbon"
	}
	if a.Garland != 0 {
		accents = append(accents, length(a.Garland, garland))
	}
	if a.Ribbon != 0 && a.Ribbon != a.Garland {
		accents = append(accents, length(a.Ribbon, "ribbon"))
	}
	if a.Picks != 0 {
		accents = append(accents, plural(a.Picks, "pick"))
	}
	if a.Ornaments != 0 {
		parts = append(parts, plural(a.Ornaments, "ornament"))
	}
	if accents != nil {
		parts = append(parts, strings.Join(accents, " or "))
	}
	if a.Lights != 0 {
		parts = append(parts, plural(a.Lights, "light"))
	}
	if parts == nil {
		return "nothing"
	}
	return strings.Join(parts, ", ")
}

// Amounts returns what a tree takes by rule. The ornaments are as many of each
// type as the tree has whole feet, the middle of the band of [Rules.Each].
// Its errors are those of the other methods of r.
//
// Source: common practice.
func (r Rules) Amounts(t Tree) (Amounts, error) {
	var a Amounts
	types, err := r.Types(t.Height)
	if err != nil {
		return Amounts{}, err
	}
	a.Ornaments = types * wholeFeet(t.Height)
	if a.Garland, err = r.Garland(t.Height); err != nil {
		return Amounts{}, err
	}
	if a.Ribbon, err = r.Ribbon(t.Height); err != nil {
		return Amounts{}, err
	}
	if a.Picks, err = r.Picks(t.Height); err != nil {
		return Amounts{}, err
	}
	if a.Lights, err = r.Lights(t.Height); err != nil {
		return Amounts{}, err
	}
	return a, nil
}

// A surface is what of a tree is dressed.
type surface struct {
	cone Cone
	arc  Exposure // of the way round, in thousandths of a degree
	area units.Area
}

func (t Tree) surface(fn string) (surface, error) {
	c, err := t.cone(fn)
	if err != nil {
		return surface{}, err
	}
	arc, err := t.Exposure.arc(fn)
	if err != nil {
		return surface{}, err
	}
	return surface{c, arc, units.Area(share(int64(c.area()), arc, maxArc))}, nil
}

// DressedArea returns the area of the branches that are dressed: the surface of
// [Tree.Cone] between handle and bare tip, as much of it as is seen. It is
// rounded up to a square micrometer, and within two parts in 10¹⁵. Its errors
// are those of [Tree.Cone] and [Exposure.Degrees].
func (t Tree) DressedArea() (units.Area, error) {
	s, err := t.surface("Tree.DressedArea")
	return s.area, err
}

// Spacing returns how far apart along the slope the wraps come of a garland of this
// length on what is dressed of t, from the lowest branches to the bare tip: the
// inverse of the garland of [Look.Amounts], before that is rounded. Where only part
// of the way round is dressed the garland goes to and fro across it; all round the
// result is that of [Cone.Spacing] for the shape of t.
//
// It is rounded up to a nanometer, so that the garland suffices. Where the wraps
// together make a whole round it is less than 1.01 nm over the exact spacing; where
// they do not, it is one of many that come to this length, within 1 nm.
//
// Its errors are those of [Tree.DressedArea], and one wrapping [units.ErrRange] if garland
// is a length that no spacing from 1/4 in to 100 ft comes to.
func (t Tree) Spacing(garland units.Length) (units.Length, error) {
	const fn = "Tree.Spacing"
	s, err := t.surface(fn)
	if err != nil {
		return 0, err
	}
	return s.cone.spacingOf(fn, "garland", garland, s.turn())
}

// turn returns what part of the way round is dressed.
func (s surface) turn() float64 { return float64(s.arc) / float64(maxArc) }

// share returns n·part/whole rounded up, for positive numbers.
func share(n int64, part, whole Exposure) int64 {
	hi, lo := bits.Mul64(uint64(n), uint64(part))
	quo, rem := bits.Div64(hi, lo, uint64(whole))
	if rem != 0 {
		quo++
	}
	return int64(quo)
}

// Look returns the look that the rules give on this tree: the spacing of a
// garland that is just as long as the rule has it, and the surface to each piece
// where there are as many. On the same tree the look gives the same counts.
//
// Where less than the whole way round is dressed, the garland goes to and fro on
// the part that is, as densely as it would go round.
//
// Garland or ribbon that by rule is too short to reach from the base to the tip,
// or so long that it would be wound less than 1/4 in apart, leaves its spacing
// zero; [Comparison.String] says which. Its errors are those of
// [Tree.DressedArea] and of [Rules.Amounts].
//
// Source: common practice for the rules; the geometry is computed.
func (r Rules) Look(t Tree) (Look, error) {
	s, err := t.surface("Rules.Look")
	if err != nil {
		return Look{}, err
	}
	a, err := r.Amounts(t)
	if err != nil {
		return Look{}, err
	}
	return s.look(a), nil
}

// look returns the look of what is dressed with amounts.
func (s surface) look(a Amounts) Look {
	spacing := func(length units.Length) units.Length {
		if length == 0 {
			return 0
		}
		p := s.cone.spacing(length, s.turn())
		if p < MinSpacing || p > MaxSpacing {
			return 0
		}
		return p
	}
	each := func(n int) units.Area {
		if n == 0 {
			return 0
		}
		return (s.area + units.Area(n) - 1) / units.Area(n)
	}
	l := Look{
		Garland:  spacing(a.Garland),
		Ornament: each(a.Ornaments),
		Pick:     each(a.Picks),
		Light:    each(a.Lights),
	}
	l.Ribbon = l.Garland // as a rule, and half the work
	if a.Ribbon != a.Garland {
		l.Ribbon = spacing(a.Ribbon)
	}
	return l
}

// Amounts returns what a tree takes to match the look, by its shape: the garland
// and ribbon that go round with wraps so far apart, and for each piece its
// surface,
//
//	garland = spiral length      pieces = dressed area / surface to each
//
// both rounded up, to a whole inch and to a whole piece. Where only part of the way
// round is dressed, the garland goes to and fro across it, one spacing lower each
// time; that is [Cone.SpiralLength] with the dressed part of a turn in place of the
// whole one, π·d·degrees/360 for π·d. It follows the branch tips; for one that sags
// between them see [Drape.Length]. Its errors are those of
// [Tree.DressedArea], and one wrapping [units.ErrRange] if a field of l is out of its
// range.
func (l Look) Amounts(t Tree) (Amounts, error) {
	const fn = "Look.Amounts"
	s, err := t.surface(fn)
	if err != nil {
		return Amounts{}, err
	}
	return l.amounts(fn, s)
}

func (l Look) amounts(fn string, s surface) (a Amounts, err error) {
	wound := func(field string, spacing units.Length) units.Length {
		if spacing == 0 || err != nil {
			return 0
		}
		if spacing < MinSpacing || spacing > MaxSpacing {
			err = rangeError(fn, field, spacing.String(), "0 ft, or 1/4 in to 100 ft")
			return 0
		}
		return (s.cone.spiralLength(spacing, s.turn()) + units.Inch - 1) / units.Inch * units.Inch
	}
	pieces := func(field string, each units.Area) int {
		if each == 0 || err != nil {
			return 0
		}
		if each < minEach || each > maxEach {
			err = rangeError(fn, field, each.String(), "0 sq ft, or 1/100 sq in to 10000 m²")
			return 0
		}
		return int((s.area + each - 1) / each)
	}
	a = Amounts{
		Ornaments: pieces("Ornament", l.Ornament),
		Garland:   wound("Garland", l.Garland),
		Picks:     pieces("Pick", l.Pick),
		Lights:    pieces("Light", l.Light),
	}
	a.Ribbon = a.Garland
	if l.Ribbon != l.Garland {
		a.Ribbon = wound("Ribbon", l.Ribbon)
	}
	if err != nil {
		return Amounts{}, err
	}
	return a, nil
}

// Needs returns what a tree takes to match the look, each with its basis:
// ornaments, the accent, and lights, in that order and by the names that
// [Rules.Needs] has for them. A field of zero adds no need. The room is left empty for
// the caller to fill. Its errors are those of
// [Look.Amounts], and one wrapping [units.ErrName] if a is none of the accents.
func (l Look) Needs(t Tree, a Accent) ([]shopping.Need, error) {
	const fn = "Look.Needs"
	if int(a) >= len(accentNames) {
		return nil, &units.Error{Func: "sizing." + fn, Field: "accent", Value: a.String(), Want: listOf(accentNames[:]), Err: units.ErrName}
	}
	s, err := t.surface(fn)
	if err != nil {
		return nil, err
	}
	amounts, err := l.amounts(fn, s)
	if err != nil {
		return nil, err
	}
	over := " over " + squareFeet(s.area)
	needs := make([]shopping.Need, 0, 4)
	add := func(kind shopping.Kind, q shopping.Quantity, basis string) {
		if q != (shopping.Quantity{}) {
			needs = append(needs, shopping.Need{Item: shopping.Item{Kind: kind}, Quantity: q, Basis: basis + over, Source: bySurface})
		}
	}
	pieces := func(kind shopping.Kind, n int, each units.Area) {
		add(kind, shopping.Quantity{Pieces: n}, toSquareFoot(each)+" to the square foot")
	}
	pieces(shopping.Ornament, amounts.Ornaments, l.Ornament)
	if a == Garland || a == Both {
		add(shopping.Garland, shopping.Quantity{Length: amounts.Garland}, "wraps "+inches(l.Garland)+" apart")
	}
	if a == Ribbon {
		add(shopping.Ribbon, shopping.Quantity{Length: amounts.Ribbon}, "wraps "+inches(l.Ribbon)+" apart")
	}
	if a == Picks || a == Both {
		pieces(shopping.Pick, amounts.Picks, l.Pick)
	}
	pieces(shopping.Light, amounts.Lights, l.Light)
	return needs, nil
}

// bySurface is the source of what is sized by shape.
const bySurface = "geometry; common practice for the look"

// String returns one line such as "garland 10 in apart, ribbon 10 in apart; to
// the square foot 0.93 ornaments, 0.40 picks, 13 lights", without what is zero.
func (l Look) String() string {
	var wraps, pieces []string
	wrap := func(spacing units.Length, what string) {
		if spacing != 0 {
			wraps = append(wraps, what+" "+inches(spacing)+" apart")
		}
	}
	piece := func(each units.Area, what string) {
		if each != 0 {
			pieces = append(pieces, toSquareFoot(each)+" "+what)
		}
	}
	wrap(l.Garland, "garland")
	wrap(l.Ribbon, "ribbon")
	piece(l.Ornament, "ornaments")
	piece(l.Pick, "picks")
	piece(l.Light, "lights")
	switch {
	case pieces != nil && wraps != nil:
		return strings.Join(wraps, ", ") + "; to the square foot " + strings.Join(pieces, ", ")
	case pieces != nil:
		return "to the square foot " + strings.Join(pieces, ", ")
	case wraps != nil:
		return strings.Join(wraps, ", ")
	}
	return "nothing"
}

// plural returns "1 pick" or "2 picks".
func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}

// PerSquareFoot returns how many pieces there are to the square foot where each
// has so much surface: 1 for units.SquareFoot, and 0 for none.
func PerSquareFoot(each units.Area) float64 {
	if each == 0 {
		return 0
	}
	return float64(units.SquareFoot) / float64(each)
}

// toSquareFoot writes PerSquareFoot in two digits or three.
func toSquareFoot(each units.Area) string {
	n := PerSquareFoot(each)
	if n < 9.995 {
		return strconv.FormatFloat(n, 'f', 2, 64)
	}
	return strconv.FormatFloat(n, 'f', 0, 64)
}

// inches writes a spacing to the inch, or a narrow one to the quarter.
func inches(spacing units.Length) string {
	if spacing < 4*units.Inch {
		return spacing.Format(units.InInches, units.Inch/4)
	}
	return spacing.Format(units.InInches, units.Inch)
}

func squareFeet(a units.Area) string { return a.Format(units.InFeet, units.SquareFoot/10) }
