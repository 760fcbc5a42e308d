package mantel

import (
	"math"

	"example.com/fircone/internal/catenary"
	"example.com/fircone/units"
)

// The bounds of a swag.
const (
	minSpan       units.Length = units.Inch
	maxSpan       units.Length = 50 * units.Foot
	maxSag        units.Length = 50 * units.Foot
	maxRise       units.Length = 50 * units.Foot
	maxSwagLength units.Length = 150 * units.Foot

	wantSpan = "1 in to 50 ft"
	wantSag  = "0 ft to 50 ft"
	wantRise = "-50 ft to 50 ft"

	wantSwagLength = "at most 150 ft, with a sag of at most 50 ft"
)

// A Swag is a garland that hangs free between two hooks, at one height or at two.
// It hangs in a catenary, the curve of a chain:
//
//	          span                    u      = half the span, in units of the
//	o - - - - - - - - - - o                    curve's parameter a = span/2u
//	*          |          *           sag    = span · (cosh u - 1)/2u · cosh m
//	 *         | sag     *            length = √(rise² + (span · sinh u/u)²)
//	   *       |       *              m      = asinh(rise/span · u/sinh u)
//	      *  * * *  *
//
// A garland with stiff wire in it hangs a little otherwise; bend it to the sag and
// the length is still right.
//
// Source: OpenStax, Calculus Volume 1, section Calculus of the Hyperbolic
// Functions, for level hooks; statics for the others.
type Swag struct {
	Span units.Length `json:"span"` // level, from the left hook to the right one, 1 in to 50 ft
	Rise units.Length `json:"rise"` // how far the right hook is above the left one, -50 to 50 ft; negative if below
	Sag  units.Length `json:"sag"`  // from the middle of the straight line between the hooks straight down to the garland, 0 to 50 ft
}

// FindSag returns s with the sag that a garland of this length has between its
// hooks, to the nearest nanometer and less than one from the exact sag. Sag is
// ignored. It takes as long for a flat swag as for a deep one.
//
// It returns an error wrapping [units.ErrRange] if a field of s is out of its range,
// length is over 150 ft or the sag over 50 ft, and one wrapping [units.ErrFit] if
// length does not reach from hook to hook.
//
// Source: as for [Swag].
func (s Swag) FindSag(length units.Length) (Swag, error) {
	const fn = "Swag.FindSag"
	s.Sag = 0
	if err := s.check(fn, ""); err != nil {
		return Swag{}, err
	}
	if length > maxSwagLength {
		return Swag{}, rangeError(fn, "length", exact(length), wantSwagLength)
	}
	if s.Rise == 0 {
		if length < s.Span {
			return Swag{}, fitError(fn, "length", exact(length), "at least the span, "+exact(s.Span))
		}
		s.Sag = nearest(catenary.Sag(float64(s.Span), float64(length-s.Span)))
	} else {
		curve, ok := catenary.Fit(int64(s.Span), int64(s.Rise), int64(length))
		if !ok {
			least := units.Length(math.Ceil(catenary.Sloped(float64(s.Span), float64(s.Rise), 0).Length()))
			return Swag{}, fitError(fn, "length", exact(length), "at least "+showUp(least)+", straight from hook to hook")
		}
		s.Sag = nearest(curve.Sag())
	}
	if s.Sag > maxSag {
		return Swag{}, rangeError(fn, "length", exact(length), wantSwagLength)
	}
	return s, nil
}

// Length returns the garland that the swag takes, from hook to hook: less than a
// nanometer from the exact length, and rounded to the nearest. It returns an error
// wrapping [units.ErrRange] if a field of s is out of its range.
//
// Source: as for [Swag].
func (s Swag) Length() (units.Length, error) {
	if err := s.check("Swag.Length", ""); err != nil {
		return 0, err
	}
	return s.length(), nil
}

// Below returns how far the garland is below the left hook, at a level distance
// from it; negative where it is above. It is 0 at the left hook, and less than a
// nanometer from the exact depth, rounded to the nearest. It returns an error
// wrapping [units.ErrRange] if a field of s is out of its range, or at is not from 0
// to the span.
//
// Source: as for [Swag], by the addition theorems.
func (s Swag) Below(at units.Length) (units.Length, error) {
	const fn = "Swag.Below"
	if err := s.check(fn, ""); err != nil {
		return 0, err
	}
	if at < 0 || at > s.Span {
		return 0, rangeError(fn, "at", exact(at), "0 ft to the span, "+exact(s.Span))
	}
	return nearest(s.curve().Below(float64(at))), nil
}

// Lowest returns the lowest point of the garland: Along from the left hook, Below it.
// A steep swag is lowest at its lower hook. It returns an error wrapping
// [units.ErrRange] if a field of s is out of its range.
//
// Source: as for [Swag].
func (s Swag) Lowest() (Point, error) {
	if err := s.check("Swag.Lowest", ""); err != nil {
		return Point{}, err
	}
	at, below := s.curve().Lowest()
	return Point{nearest(at), nearest(below)}, nil
}

// A Pull is what a swag does to its two hooks. A force is given as the weight that
// pulls as hard.
type Pull struct {
	Left  units.Mass `json:"left"`  // the weight on the left hook; negative if the garland lifts it
	Right units.Mass `json:"right"` // the weight on the right hook; negative if the garland lifts it
	Level units.Mass `json:"level"` // how hard each hook is pulled level towards the other
}

// String returns a text such as "8 oz on the left, 6 lb on the right, 2 lb level".
func (p Pull) String() string {
	return showMass(p.Left) + " on the left, " + showMass(p.Right) + " on the right, " + showMass(p.Level) + " level"
}

// Pull returns what a swag that weighs perFoot for each foot does to its hooks:
//
//	level       = perFoot · a
//	left, right = perFoot · (length ∓ rise · cosh u/sinh u)/2
//
// Left and Right add up to the weight, within a nanogram. The steeper the swag, the
// more of it the upper hook carries: 20 in wide, rising 14 in, with 4 in of sag, it
// is 98 % of the weight. Each is within a nanogram of the exact pull up to 1 lb, and
// within a part in 1e12 beyond.
//
// It returns an error wrapping [units.ErrRange] if perFoot is not from 1 g to 20 lb, a
// field of s is out of its range, or the sag is less than a hundredth of the span: a
// taut garland pulls without limit.
//
// Source: statics of the catenary.
func (s Swag) Pull(perFoot units.Mass) (Pull, error) {
	const fn = "Swag.Pull"
	if err := s.check(fn, ""); err != nil {
		return Pull{}, err
	}
	if err := checkPerFoot(fn, perFoot); err != nil {
		return Pull{}, err
	}
	if err := s.checkTaut(fn, "/sag"); err != nil {
		return Pull{}, err
	}
	c := s.curve()
	left, right := c.Ends()
	weigh := func(length float64) units.Mass {
		return units.Mass(math.Round(float64(perFoot) * length / float64(units.Foot)))
	}
	return Pull{Left: weigh(left), Right: weigh(right), Level: weigh(c.Pull())}, nil
}

// String returns a text such as "swag 5 ft wide, 9 in deep", and for hooks that are
// not level "swag 5 ft wide, rising 2 ft, 9 in deep".
func (s Swag) String() string {
	rise := ""
	if s.Rise > 0 {
		rise = ", rising " + show(s.Rise)
	} else if s.Rise < 0 {
		rise = ", falling " + show(-s.Rise)
	}
	return "swag " + show(s.Span) + " wide" + rise + ", " + show(s.Sag) + " deep"
}

// check checks the fields of s, which is at a pointer.
func (s Swag) check(fn, at string) error {
	if err := checkLength(fn, at+"/span", s.Span, minSpan, maxSpan, wantSpan); err != nil {
		return err
	}
	if err := checkLength(fn, at+"/rise", s.Rise, -maxRise, maxRise, wantRise); err != nil {
		return err
	}
	return checkLength(fn, at+"/sag", s.Sag, 0, maxSag, wantSag)
}

// checkTaut checks that s sags enough for its pulls to be known.
func (s Swag) checkTaut(fn, field string) error {
	if 100*s.Sag < s.Span {
		return rangeError(fn, field, exact(s.Sag), wantTaut(units.Length(divideUp(s.Span, 100))))
	}
	return nil
}

func wantTaut(least units.Length) string {
	return "a hundredth of the span or more, " + exact(least) + ": a taut garland pulls without limit"
}

func (s Swag) curve() catenary.Curve {
	if s.Rise == 0 {
		return catenary.Level(float64(s.Span), float64(s.Sag))
	}
	return catenary.Sloped(float64(s.Span), float64(s.Rise), float64(s.Sag))
}

func (s Swag) length() units.Length {
	if s.Rise == 0 {
		return s.Span + nearest(s.curve().Slack())
	}
	return nearest(s.curve().Length())
}

func nearest(nm float64) units.Length { return units.Length(math.Round(nm)) }
