package sizing

import (
	"math"
	"math/bits"
	"strconv"
	"strings"

	"example.com/fircone/internal/elem"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Look is how densely a tree is dressed, whatever its size: how far apart the
// wraps of garland are, how much surface there is to each piece, and how much of it
// the ornaments cover. A value of zero is for a kind that the look does without.
//
// [Rules.Look] takes the look from a tree that the rules suit; [CommonLook] is
// the usual one.
type Look struct {
	// Spacing is the distance from wrap to wrap along the slope of what is wound,
	// 1/4 in to 100 ft.
	Spacing shopping.ByKind[units.Length] `json:"spacing"`

	// Each is the surface to each piece, 1/100 sq in to 10,000 m²: units.SquareFoot
	// for one to the square foot. It has no ornaments, which go by Cover.
	Each shopping.ByKind[units.Area] `json:"each"`

	// Cover is what part of the surface the ornaments cover, seen straight on, 0 to
	// 1. Their number follows from their sizes.
	Cover float64 `json:"cover"`
}

const (
	minEach = units.SquareInch / 100
	maxEach = 10_000 * units.SquareMeter
)

// CommonLook returns the look of the reference tree: one 7 ft tall, full, seen
// from every side and dressed by [CommonPractice]. In round figures its wraps
// are 10 in apart (10.16 in), there are 0.40 picks and 13 lights to the square foot,
// and ornaments cover 4.1 % of it.
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

	balls balls // with which it is dressed, if that is asked
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
	return surface{cone: c, arc: arc, area: units.Area(share(int64(c.area()), arc, maxArc))}, nil
}

// DressedArea returns the area of the branches that are dressed: the surface of
// [Tree.Cone] between handle and bare tip, as much of it as is seen. It is
// rounded up to a square micrometer, and within two parts in 10¹⁵. Its errors
// are those of [Tree.Cone] and [Exposure.Degrees].
func (t Tree) DressedArea() (units.Area, error) {
	s, err := t.surface("Tree.DressedArea", "/")
	return s.area, err
}

// Seen returns how much of the way round a tree is seen by people who look at it from
// directions that spread over so many degrees, 0 to 360, and from no nearer than a
// distance to the trunk:
//
//	arc = spread + 2·acos(radius / distance)
//
// up to 360 degrees, rounded to the nearest thousandth. The radius is half the base, and
// the distance at least an inch more and at most 1000 ft. A line of sight from the
// distance D touches a circle of radius R where R/D is the cosine of the angle at the
// trunk, so each person sees that angle to both sides of their own direction:
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
// A 7½ ft tree in a corner, where the spread is 90 degrees, seen from 10 ft off shows
// about 240. The widest branches decide; above them more is seen. Its errors are those
// of [Tree.Cone], and one wrapping [units.ErrRange] for the spread or the distance.
//
// Source: geometry. The named exposures are common practice.
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

// SpiralLength returns the length of garland wound on what is dressed of t, from the
// lowest branches to the bare tip, its wraps one spacing apart along the slope, 1/4 in
// to 100 ft. Where only part of the way round is dressed the garland goes back and
// forth across it, one spacing lower each time; that is [Cone.SpiralLength] with the
// dressed part of a turn in place of the whole one, π·d·degrees/360 for π·d.
//
// It follows the branch tips; for a garland that sags between them see
// [Drape.Length]. The result is within 1 nm. [Tree.Spacing] is the inverse.
func (t Tree) SpiralLength(spacing units.Length) (units.Length, error) {
	const fn = "Tree.SpiralLength"
	s, err := t.surface(fn, "/")
	if err != nil {
		return 0, err
	}
	if err := checkSpacing(fn, spacing); err != nil {
		return 0, err
	}
	return s.cone.spiralLength(spacing, s.turn()), nil
}

// Spacing returns how far apart along the slope the wraps come of a garland of this
// length on what is dressed of t, from the lowest branches to the bare tip: the
// inverse of [Tree.SpiralLength]. All round the result is that of [Cone.Spacing] for the
// shape of t.
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
// garland that is just as long as the rule has it, the surface to each piece where
// there are as many, and what part of it the ornaments cover, in the sizes and shares
// of [Rules.Mix]. On the same tree the look gives the same counts.
//
// Garland or ribbon that by rule is too short to reach from the base to the tip,
// or so long that it would be wound less than 1/4 in apart, leaves its spacing
// zero; [Comparison.String] says which. A cover over 1 asks for more ornaments than
// there is room for, and is no look for another tree. Its errors are those of
// [Tree.DressedArea], [Rules.Amounts] and [Rules.Mix].
//
// Source: common practice for the rules; the geometry is computed.
func (r Rules) Look(tree Tree) (Look, error) {
	const fn = "Rules.Look"
	s, err := r.surface(fn, tree)
	if err != nil {
		return Look{}, err
	}
	a, err := r.amounts(fn, tree)
	if err != nil {
		return Look{}, err
	}
	return s.look(a), nil
}

// surface returns what of t is dressed, and with which ornaments.
func (r Rules) surface(fn string, t Tree) (s surface, err error) {
	if s, err = t.surface(fn, "/tree/"); err != nil {
		return surface{}, err
	}
	if s.balls, err = r.balls(fn, t, s.cone.BaseDiameter); err != nil {
		return surface{}, err
	}
	return s, nil
}

// look returns the look of what is dressed with amounts.
func (s surface) look(amounts Amounts) (l Look) {
	for kind, q := range amounts {
		switch {
		case kind == int(shopping.Ornament):
			l.Cover = float64(float64(q.Pieces)*s.balls.disc()) / s.nm2()
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

// nm2 returns the area in square nanometers.
func (s surface) nm2() float64 { return float64(float64(s.area) * 1e6) }

// Match returns what a tree takes to match a look, by its shape: the garland and
// ribbon that go round with wraps so far apart, as many pieces as have so much surface
// each, and as many ornaments as cover so much of it in the sizes of [Rules.Mix]:
//
//	garland     Tree.SpiralLength of the spacing           rounded up to a whole inch
//	pieces      dressed area / surface to each             rounded up; lights to 50
//	ornaments   cover · dressed area / mean of the discs   rounded to the nearest
//
// There are never fewer ornaments than the types of [Rules.Types]. A pre-lit or a
// metal tree takes no lights. Apart from that the ornaments cover what the look says,
// within one of the largest.
//
// Its errors are those of [Tree.DressedArea], [Rules.Types] and [Rules.Mix], and one
// wrapping [units.ErrRange] if a field of the look is out of its range.
//
// Source: geometry; common practice for the look.
func (r Rules) Match(look Look, tree Tree) (Amounts, error) {
	const fn = "Rules.Match"
	s, err := r.surface(fn, tree)
	if err != nil {
		return Amounts{}, err
	}
	return r.match(fn, look, tree, s)
}

func (r Rules) match(fn string, l Look, t Tree, s surface) (a Amounts, err error) {
	if t.Kind >= numKinds {
		return Amounts{}, nameError(fn, "/tree/kind", t.Kind.String(), kindNames[:])
	}
	types, err := r.types(fn, "/tree/height", t.Height)
	if err != nil {
		return Amounts{}, err
	}
	if !(l.Cover >= 0 && l.Cover <= 1) {
		return Amounts{}, rangeError(fn, "/look/cover", strconv.FormatFloat(l.Cover, 'g', -1, 64), "0 to 1")
	}
	if l.Cover != 0 {
		n := int(float64(float64(l.Cover*s.nm2())/s.balls.disc()) + 0.5)
		a[shopping.Ornament].Pieces = max(n, types)
	}
	for kind := range a {
		running := shopping.Kind(kind).Running()
		spacing, each := l.Spacing[kind], l.Each[kind]
		if spacing != 0 {
			if !running || spacing < MinSpacing || spacing > MaxSpacing {
				return Amounts{}, rangeError(fn, "/look/spacing/"+shopping.Kind(kind).String(), spacing.String(), wantEach(running, "1/4 in to 100 ft"))
			}
			if kind > 0 && spacing == l.Spacing[kind-1] { // ribbon, as a rule: half the work
				a[kind] = a[kind-1]
			} else {
				a[kind] = t.supplied(shopping.Kind(kind), shopping.Quantity{Length: s.cone.spiralLength(spacing, s.turn())})
			}
		}
		if each != 0 {
			counted := !running && kind != int(shopping.Ornament)
			if !counted || each < minEach || each > maxEach {
				return Amounts{}, rangeError(fn, "/look/each/"+shopping.Kind(kind).String(), each.String(), wantEach(counted, "1/100 sq in to 10000 m²"))
			}
			a[kind] = t.supplied(shopping.Kind(kind), shopping.Quantity{Pieces: int((s.area + each - 1) / each)})
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

// String returns [Look.Format] in feet and inches.
func (l Look) String() string { return l.Format(units.InFeetInches) }

// Format returns one line in a style, such as "garland 10 1/4 in apart, ribbon 10 1/4 in
// apart; 4.1 % covered by ornaments; to the square foot 0.40 picks, 13 lights",
// without what is zero. Spacings are rounded up to a quarter inch, so that a garland
// that is wound by them does not run out.
func (l Look) Format(style units.Style) string {
	var wraps, pieces, parts []string
	for k := range l.Each {
		kind := shopping.Kind(k)
		if l.Spacing[kind] != 0 {
			wraps = append(wraps, kind.String()+" "+apart(l.Spacing[kind], style)+" apart")
		}
		if l.Each[kind] != 0 {
			pieces = append(pieces, dense(l.Each[kind], style)+" "+kind.String())
		}
	}
	if wraps != nil {
		parts = append(parts, strings.Join(wraps, ", "))
	}
	if l.Cover != 0 {
		parts = append(parts, percent(l.Cover)+" covered by "+shopping.Ornament.String())
	}
	if pieces != nil {
		parts = append(parts, square(style)[1:]+" "+strings.Join(pieces, ", "))
	}
	if parts == nil {
		return "nothing"
	}
	return strings.Join(parts, "; ")
}
