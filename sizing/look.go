package sizing

import (
	"math/bits"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Look is how densely a tree is dressed, whatever its size; zero is for a kind left out.
// [CommonLook] is the usual one.
type Look struct {
	// Spacing is how far apart the wraps are along the slope, 1/4 in to 100 ft.
	Spacing shopping.ByKind[units.Length] `json:"spacing"`

	// Each is the surface to each piece, 1/100 sq in to 10,000 m². Ornaments go by Cover.
	Each shopping.ByKind[units.Area] `json:"each"`

	// Cover is the part of the surface that ornaments cover, seen straight on, 0 to 1.
	Cover float64 `json:"cover"`
}

const (
	minEach = units.SquareInch / 100
	maxEach = 10_000 * units.SquareMeter
)

// CommonLook returns the look of a full 7 ft tree seen from every side and dressed by
// [CommonPractice]: wraps 10.16 in apart, 0.399 picks and 13.3 lights to the square foot, and 4.1 %
// covered by ornaments.
//
// Source: common practice; the geometry is computed.
func CommonLook() Look {
	c, _ := CommonPractice().Compare(Look{}, Tree{Height: 7 * units.Foot}) // in range
	return c.RuleLook
}

// share returns n·part/whole rounded up, for positive numbers.
func share(n int64, part, whole Exposure) int64 {
	hi, lo := bits.Mul64(uint64(n), uint64(part))
	quo, rem := bits.Div64(hi, lo, uint64(whole))
	if rem != 0 {
		quo++
	}
	return int64(quo)
}

// surface returns what of t is dressed, and with which ornaments.
func (r *Rules) surface(fn string, t *Tree) (s surface, err error) {
	if s, err = t.surface(fn, "/tree/"); err != nil {
		return surface{}, err
	}
	if s.balls, err = r.balls(fn, t, s.cone.BaseDiameter); err != nil {
		return surface{}, err
	}
	return s, nil
}

// look returns the look of what is dressed with amounts.
func (s *surface) look(amounts *shopping.ByKind[shopping.Quantity]) (l Look) {
	for kind, q := range amounts {
		switch {
		case kind == int(shopping.Ornament):
			l.Cover = float64(float64(q.Pieces)*s.balls.disc()) / s.nm2()
		case q.Pieces != 0:
			l.Each[kind] = (s.area + units.Area(q.Pieces) - 1) / units.Area(q.Pieces)
		case kind > 0 && q.Length == amounts[kind-1].Length: // ribbon, as a rule: half the work
			l.Spacing[kind] = l.Spacing[kind-1]
		case q.Length != 0:
			if p := s.cone.spacing(q.Length, s.turn()); minSpacing <= p && p <= maxSpacing {
				l.Spacing[kind] = p
			}
		}
	}
	return l
}

// match returns what it takes to match a look, for rules and a tree that amounts has passed.
func (r *Rules) match(fn string, l *Look, t *Tree, s *surface) (a shopping.ByKind[shopping.Quantity], err error) {
	if !(l.Cover >= 0 && l.Cover <= 1) {
		return shopping.ByKind[shopping.Quantity]{}, rangeError(fn, "/look/cover", strconv.FormatFloat(l.Cover, 'g', -1, 64), "0 to 1")
	}
	if l.Cover != 0 {
		n := int(float64(float64(l.Cover*s.nm2())/s.balls.disc()) + 0.5)
		a[shopping.Ornament].Pieces = max(n, r.TypesPerFoot*wholeFeet(t.Height))
	}
	for kind := range a {
		running := shopping.Kind(kind).Running()
		spacing, each := l.Spacing[kind], l.Each[kind]
		if spacing != 0 {
			if !running || spacing < minSpacing || spacing > maxSpacing {
				return shopping.ByKind[shopping.Quantity]{}, rangeError(fn, "/look/spacing/"+shopping.Kind(kind).String(), spacing.String(), wantEach(running, "1/4 in to 100 ft"))
			}
			if spacing == l.Spacing[kind-1] { // ribbon, as a rule: half the work
				a[kind] = a[kind-1]
			} else {
				a[kind] = t.supplied(shopping.Kind(kind), shopping.Quantity{Length: s.cone.spiralLength(spacing, s.turn())})
			}
		}
		if each != 0 {
			counted := !running && kind != int(shopping.Ornament)
			if !counted || each < minEach || each > maxEach {
				return shopping.ByKind[shopping.Quantity]{}, rangeError(fn, "/look/each/"+shopping.Kind(kind).String(), each.String(), wantEach(counted, "1/100 sq in to 10000 m²"))
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

// String returns one line such as "garland 10 1/4 in apart; 4.1 % covered by ornaments; to the
// square foot 0.399 picks, 13.3 lights". Spacings are rounded up.
func (l Look) String() string { return l.text(units.InFeetInches) }

func (l Look) text(style units.Style) string {
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
