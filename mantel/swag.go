package mantel

import (
	"math"

	"example.com/fircone/internal/elem"
	"example.com/fircone/units"
)

// The bounds of a swag.
const (
	minSpan       units.Length = units.Inch
	maxSpan       units.Length = 50 * units.Foot
	maxSag        units.Length = 50 * units.Foot
	maxSwagLength units.Length = 150 * units.Foot

	wantSpan = "1 in to 50 ft"
	wantSag  = "0 ft to 50 ft"

	wantSwagLength = "the span to 150 ft, with a sag of at most 50 ft"
)

// A Swag is a garland that hangs free between two hooks at one height. It hangs
// in a catenary, the curve of a chain:
//
//	u      = half the span, in units of the curve's parameter a = span/2u
//	sag    = span · (cosh u - 1)/2u
//	length = span · sinh u/u
//
// A garland with stiff wire in it hangs a little otherwise; bend it to the sag
// and the length is still right. Swags are equal if == says so.
//
// Source: OpenStax, Calculus Volume 1, section Calculus of the Hyperbolic
// Functions.
type Swag struct {
	Span units.Length `json:"span"` // from hook to hook, 1 in to 50 ft
	Sag  units.Length `json:"sag"`  // from the line between the hooks down to the lowest point, 0 to 50 ft
}

// SwagOf returns the swag that a garland of this length makes between hooks that
// are span apart: it finds the sag. The sag is rounded to the nearest nanometer
// and is less than a nanometer from the exact one. It is found by a fixed number
// of steps from a close start, so that it takes as long for a flat swag as for a
// deep one, and cannot wander.
//
// It returns an [units.Error] wrapping [units.ErrRange] if span is not from 1 in to 50 ft,
// length is over 150 ft or the sag over 50 ft, and one wrapping [units.ErrFit] if length
// is less than span.
//
// Source: as for [Swag].
func SwagOf(span, length units.Length) (Swag, error) {
	const fn = "SwagOf"
	if err := checkLength(fn, "span", span, minSpan, maxSpan, wantSpan); err != nil {
		return Swag{}, err
	}
	if length < span {
		return Swag{}, fitError(fn, "length", exact(length), "at least the span, "+exact(span))
	}
	if length > maxSwagLength {
		return Swag{}, rangeError(fn, "length", exact(length), wantSwagLength)
	}
	sag := nearest(sagOf(float64(span), float64(length-span)))
	if sag > maxSag {
		return Swag{}, rangeError(fn, "length", exact(length), wantSwagLength)
	}
	return Swag{Span: span, Sag: sag}, nil
}

// Length returns the garland that the swag takes, from hook to hook: less than a
// nanometer from the exact length, and rounded to the nearest. It is never less
// than the span. It returns an [units.Error] wrapping [units.ErrRange] if a field of s is
// out of its range.
//
// Source: as for [Swag].
func (s Swag) Length() (units.Length, error) {
	if err := s.check("Swag.Length"); err != nil {
		return 0, err
	}
	return s.Span + nearest(s.catenary().slack()), nil
}

// Below returns how far below the hooks the garland is, at a distance from the
// left hook measured level:
//
//	below = span/u · sinh(u · at/span) · sinh(u · (span-at)/span)
//
// which is 0 at the hooks and the sag half way. It is less than a nanometer from
// the exact depth of a swag with this sag, and rounded to the nearest. It returns
// an [units.Error] wrapping [units.ErrRange] if a field of s is out of its range, or at is
// not from 0 to the span.
//
// Source: as for [Swag], by the addition theorems.
func (s Swag) Below(at units.Length) (units.Length, error) {
	const fn = "Swag.Below"
	if err := s.check(fn); err != nil {
		return 0, err
	}
	if at < 0 || at > s.Span {
		return 0, rangeError(fn, "at", exact(at), "0 ft to the span, "+exact(s.Span))
	}
	return nearest(s.catenary().below(float64(at))), nil
}

// String returns a text such as "swag 5 ft wide, 9 in deep".
func (s Swag) String() string { return "swag " + show(s.Span) + " wide, " + show(s.Sag) + " deep" }

func (s Swag) check(fn string) error {
	if err := checkLength(fn, "Span", s.Span, minSpan, maxSpan, wantSpan); err != nil {
		return err
	}
	return checkLength(fn, "Sag", s.Sag, 0, maxSag, wantSag)
}

func (s Swag) catenary() catenary { return catenaryOfSag(float64(s.Span), float64(s.Sag)) }

func nearest(nm float64) units.Length { return units.Length(math.Round(nm)) }

// A catenary is a swag in floating point: its span in nanometers, u and u².
// A straight line has u = 0.
type catenary struct {
	span, u, w float64
}

// deepest is the u² up to which power series serve, and starts are close: a
// swag 0.69 times as deep as wide. Beyond it the exponential function is used.
const deepest = 4

// The slack of the deepest swag for power series, as a part of the span, and
// its sag: sinh 2/2 - 1 and (cosh 2 - 1)/4.
const (
	deepestSlack = 0.8134302039235095
	deepestSag   = 0.6905489227709079
)

// sagOf returns the sag of the catenary whose length is the span and slack. With h
// half the length,
//
//	h² = sag² + 2a·sag, so sag = 2u·h²/(span + √(span² + (2u·h)²))
func sagOf(span, slack float64) float64 {
	h := (span + slack) / 2
	t := float64(2 * bow(slack/span) * h)
	return t * h / (span + math.Sqrt(float64(span*span)+float64(t*t)))
}

// bow returns u of a catenary from its slack as a part q of the span, which is
// sinh u/u - 1.
func bow(q float64) float64 {
	if q > deepestSlack {
		// sinh u - f·u = 0. The start is a polynomial in ln(2·sinh u/u) that was fitted
		// by Chebyshev interpolation for u from 2 to 10.6, and is within 0.0006; then
		// e^u follows from sinh u, and u from that.
		f := 1 + q
		log := elem.Log(2 * f)
		u := log + horner(log, -2.12132323, 4.78111692, -3.44582685, 1.61826936, -0.498200095,
			0.101784285, -0.0136745910, 0.00116065600, -5.64019978e-5, 1.19548667e-6)
		twice := float64(2 * f * u)
		e := twice + 1/twice
		u = elem.Log(e)
		sinh, cosh := sinhCosh(e)
		return u - toRoot(sinh-float64(f*u), cosh-f, sinh, cosh)
	}
	// w/3! + w²/5! + ... = q in w = u². The start is the Padé approximant of the inverse
	// series, within 5e-5 of w.
	w := 6 * q * horner(q, 1, 4519./7810, 2057./74550) / horner(q, 1, 3431./3905, 63158./410025)
	p, slope := sinhcSeries(w)
	second := horner(w, 1./60, 1./840, 1./30240, 1./1995840)
	return math.Sqrt(w - toRoot(float64(w*p)-q, slope, second, 0)) // the third is too small to tell
}

// catenaryOfSag returns the catenary of this sag.
func catenaryOfSag(span, sag float64) catenary {
	r := sag / span // (cosh u - 1)/2u
	if r > deepestSag {
		// cosh u - 1 - 2r·u = 0. The start is a polynomial in ln(1 + 2(cosh u - 1)/u),
		// fitted as above, and is within 0.001; then e^u follows from cosh u.
		log := elem.Log(float64(4*r) + 1)
		u := log + horner(log, -0.5816039, 1.237294, -0.2349991, 0.004917863, 0.007558158, -0.001548673, 0.0001294905, -0.000004108681)
		c := 1 + float64(2*r*u)
		e := c + math.Sqrt(float64(c*c)-1)
		u = elem.Log(e)
		sinh, cosh := sinhCosh(e)
		u -= toRoot(cosh-1-float64(2*r*u), sinh-float64(2*r), cosh, sinh)
		return catenary{span, u, float64(u * u)}
	}
	// In z = (4r)² the inverse series has a Padé approximant within 0.02;
	// then u·C(u²) = 4r, where C(w) = 2(cosh √w - 1)/w, by Newton's steps.
	z := float64(16 * r * r)
	u := float64(4 * r * math.Sqrt(horner(z, 1, 1322./3939, 7723./827190)/horner(z, 1, 1319./2626, 110281./2205840)))
	for range 3 {
		p, slope := coshcSeries(float64(u * u))
		u -= (float64(u*p) - float64(4*r)) / (p + float64(2*u*u*slope))
	}
	return catenary{span, u, float64(u * u)}
}

// toRoot returns how far a root of a function is from a point near it, from the value
// there and the first three derivatives, by the inverse of its Taylor series to the
// third order.
func toRoot(value, first, second, third float64) float64 {
	newton := value / first
	a := second / (2 * first)
	b := float64(2*a*a) - third/(6*first)
	return float64(newton * (1 + float64(newton*(a+float64(newton*b)))))
}

// sinhCosh returns sinh u and cosh u from e^u.
func sinhCosh(e float64) (sinh, cosh float64) {
	inverse := 1 / e
	return (e - inverse) / 2, (e + inverse) / 2
}

// slack returns the length less the span.
func (c catenary) slack() float64 {
	if c.w > deepest {
		return float64(c.span * (elem.Sinh(c.u)/c.u - 1))
	}
	p, _ := sinhcSeries(c.w)
	return float64(c.span * c.w * p)
}

// below returns how deep the curve is at this distance from the left hook.
func (c catenary) below(at float64) float64 {
	left := at / c.span
	right := (c.span - at) / c.span
	return float64(c.span * c.u * (left * right) * (c.sinhc(left) * c.sinhc(right)))
}

// sinhc returns sinh(x)/x for x = part·u.
func (c catenary) sinhc(part float64) float64 {
	if w := float64(c.w * part * part); w <= deepest {
		p, _ := sinhcSeries(w)
		return 1 + float64(w*p)
	}
	x := float64(c.u * part)
	return elem.Sinh(x) / x
}

// sinhcSeries returns p(w) = (sinh √w/√w - 1)/w, and the slope of w·p(w), for w
// from 0 to 4; the term left out is below 1e-19 of the sum.
func sinhcSeries(w float64) (p, slope float64) {
	for i := len(sinhcTerms) - 1; i >= 0; i-- {
		slope = float64(slope*w) + p
		p = float64(p*w) + sinhcTerms[i]
	}
	return p, float64(slope*w) + p
}

// coshcSeries returns C(w) = 2(cosh √w - 1)/w, and its slope, for w from 0 to 4;
// the term left out is below 1e-18 of the sum.
func coshcSeries(w float64) (p, slope float64) {
	for i := len(coshcTerms) - 1; i >= 0; i-- {
		slope = float64(slope*w) + p
		p = float64(p*w) + coshcTerms[i]
	}
	return p, slope
}

// 1/3!, 1/5!, 1/7!, ...
var sinhcTerms = [...]float64{
	1. / 6, 1. / 120, 1. / 5040, 1. / 362880, 1. / 39916800, 1. / 6227020800,
	1. / 1307674368000, 1. / 355687428096000, 1. / 121645100408832000,
	1. / 51090942171709440000, 1. / 25852016738884976640000,
}

// 2/2!, 2/4!, 2/6!, ...
var coshcTerms = [...]float64{
	1, 1. / 12, 1. / 360, 1. / 20160, 1. / 1814400, 1. / 239500800,
	1. / 43589145600, 1. / 10461394944000, 1. / 3201186852864000,
	1. / 1216451004088320000, 1. / 562000363888803840000,
}

// horner returns the polynomial a + b·x + c·x² + ...
func horner(x float64, coefficients ...float64) float64 {
	sum := 0.0
	for i := len(coefficients) - 1; i >= 0; i-- {
		sum = float64(sum*x) + coefficients[i]
	}
	return sum
}
