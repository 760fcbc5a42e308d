package sizing

import (
	"math/bits"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Look is how densely a tree is dressed, whatever its size: how far apart the
// wraps of garland are, and how much surface there is to each piece. A value of
// zero is for a kind that the look does without.
//
// [Rules.Look] takes the look from a tree that the rules suit; [CommonLook] is
// the usual one.
type Look struct {
	// Spacing is the distance from wrap to wrap along the slope of what is wound,
	// 1/4 in to 100 ft.
	Spacing shopping.ByKind[units.Length] `json:"spacing"`

	// Each is the surface to each piece, 1/100 sq in to 10,000 m²: units.SquareFoot
	// for one to the square foot.
	Each shopping.ByKind[units.Area] `json:"each"`
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

// A surface is what of a tree is dressed.
type surface struct {
	cone Cone
	arc  Exposure // of the way round, in thousandths of a degree
	area units.Area
}

// surface returns what of t is dressed. Fields of t are named after at, "/" or "/tree/".
func (t Tree) surface(fn, at string) (surface, error) {
	c, err := t.cone(fn, at)
	if err != nil {
		return surface{}, err
	}
	arc, err := t.Exposure.arc(fn, at)
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
	s, err := t.surface("Tree.DressedArea", "/")
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
	s, err := t.surface(fn, "/")
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
	const fn = "Rules.Look"
	s, err := t.surface(fn, "/tree/")
	if err != nil {
		return Look{}, err
	}
	a, err := r.amounts(fn, t)
	if err != nil {
		return Look{}, err
	}
	return s.look(a), nil
}

// look returns the look of what is dressed with amounts.
func (s surface) look(amounts Amounts) (l Look) {
	for kind, q := range amounts {
		switch {
		case q.Pieces != 0:
			l.Each[kind] = (s.area + units.Area(q.Pieces) - 1) / units.Area(q.Pieces)
		case kind > 0 && q.Length == amounts[kind-1].Length: // ribbon, as a rule: half the work
			l.Spacing[kind] = l.Spacing[kind-1]
		case q.Length != 0:
			if p := s.cone.spacing(q.Length, s.turn()); MinSpacing <= p && p <= MaxSpacing {
				l.Spacing[kind] = p
			}
		}
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
	s, err := t.surface(fn, "/tree/")
	if err != nil {
		return Amounts{}, err
	}
	return l.amounts(fn, s)
}

func (l Look) amounts(fn string, s surface) (a Amounts, err error) {
	for kind := range a {
		running := shopping.Kind(kind).Running()
		spacing, each := l.Spacing[kind], l.Each[kind]
		if spacing != 0 {
			if !running || spacing < MinSpacing || spacing > MaxSpacing {
				return Amounts{}, rangeError(fn, "/spacing/"+shopping.Kind(kind).String(), spacing.String(), wantEach(running, "1/4 in to 100 ft"))
			}
			if kind > 0 && spacing == l.Spacing[kind-1] { // ribbon, as a rule: half the work
				a[kind] = a[kind-1]
				continue
			}
			a[kind].Length = (s.cone.spiralLength(spacing, s.turn()) + units.Inch - 1) / units.Inch * units.Inch
		}
		if each != 0 {
			if running || each < minEach || each > maxEach {
				return Amounts{}, rangeError(fn, "/each/"+shopping.Kind(kind).String(), each.String(), wantEach(!running, "1/100 sq in to 10000 m²"))
			}
			a[kind].Pieces = int((s.area + each - 1) / each)
		}
	}
	return a, nil
}

// wantEach says what is accepted for a kind that has the figure or has not.
func wantEach(has bool, want string) string {
	if has {
		return "0, or " + want
	}
	return "0"
}

// String returns one line such as "garland 10 in apart, ribbon 10 in apart; to
// the square foot 0.93 ornaments, 0.40 picks, 13 lights", without what is zero.
func (l Look) String() string {
	var wraps, pieces []string
	for k := range l.Each {
		kind := shopping.Kind(k)
		if l.Spacing[kind] != 0 {
			wraps = append(wraps, kind.String()+" "+inches(l.Spacing[kind])+" apart")
		}
		if l.Each[kind] != 0 {
			pieces = append(pieces, toSquareFoot(l.Each[kind])+" "+kind.String())
		}
	}
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

// toSquareFoot writes how many pieces there are to the square foot, in two digits
// or three, where each has so much surface.
func toSquareFoot(each units.Area) string {
	n := units.SquareFoot.In(each)
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
