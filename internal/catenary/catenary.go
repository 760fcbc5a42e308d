// Package catenary solves the curve of a hanging chain between two ends, level or
// not, in floating point: any one unit of length serves, and spans, sags and
// lengths are in it. It knows nothing of what hangs.
//
// With L the level distance of the ends, k the rise over L, a the parameter of the
// curve, and
//
//	u = L/2a
//	m = asinh(k·u/sinh u), 0 where the ends are level
//
// the curve is y = a·cosh(x/a) from x/a = m - u to m + u, and
//
//	length = √(rise² + (L·sinh u/u)²)
//	sag    = L·(cosh u - 1)/2u · cosh m
//
// where sag is measured straight down, from the middle of the straight line between
// the ends to the curve. Results are within a few parts in 1e16 of the exact ones, or 4 in
// 1e14 where the sag or the slack is 0.7 to 2 of the span; and the same bits on every
// machine: only + - * / √ and package elem.
//
// Source: statics; OpenStax, Calculus Volume 1, section Calculus of the Hyperbolic
// Functions, for level ends.
package catenary

import (
	"math"
	"math/bits"

	"example.com/fircone/internal/elem"
)

// A Curve is a chain that hangs. A straight line has u = 0.
type Curve struct {
	span, rise float64
	u, w       float64 // u and u²
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

// Sag returns the sag of a level chain whose length is the span and slack. With h
// half the length,
//
//	h² = sag² + 2a·sag, so sag = 2u·h²/(span + √(span² + (2u·h)²))
func Sag(span, slack float64) float64 {
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
	w := 6 * q * square(q, 1, 4519./7810, 2057./74550) / square(q, 1, 3431./3905, 63158./410025)
	p, slope := sinhcSeries(w)
	second := float64(w*square(w, 1./840, 1./30240, 1./1995840)) + 1./60
	return math.Sqrt(w - toRoot(float64(w*p)-q, slope, second, 0)) // the third is too small to tell
}

// Level returns the chain of this sag between level ends.
func Level(span, sag float64) Curve {
	r := sag / span // (cosh u - 1)/2u
	if r > deepestSag {
		// cosh u - 1 - 2r·u = 0. The start is a polynomial in ln(1 + 2(cosh u - 1)/u),
		// fitted as above, and is within 0.001; then e^u follows from cosh u.
		u := near(r)
		c := 1 + float64(2*r*u)
		e := c + math.Sqrt(float64(c*c)-1)
		u = elem.Log(e)
		sinh, cosh := sinhCosh(e)
		u -= toRoot(cosh-1-float64(2*r*u), sinh-float64(2*r), cosh, sinh)
		return Curve{span: span, u: u, w: float64(u * u)}
	}
	// In z = (4r)² the inverse series has a Padé approximant within 0.02;
	// then u·C(u²) = 4r, where C(w) = 2(cosh √w - 1)/w, by Newton's steps.
	u := near(r)
	for range 3 {
		p, slope := coshcSeries(float64(u * u))
		u -= (float64(u*p) - float64(4*r)) / (p + float64(2*u*u*slope))
	}
	return Curve{span: span, u: u, w: float64(u * u)}
}

// near returns u of a level chain from its sag as a part r of the span, within 0.02.
func near(r float64) float64 {
	if r > deepestSag {
		log := elem.Log(float64(4*r) + 1)
		return log + horner(log, -0.5816039, 1.237294, -0.2349991, 0.004917863, 0.007558158, -0.001548673, 0.0001294905, -0.000004108681)
	}
	z := float64(16 * r * r)
	return float64(4 * r * math.Sqrt(square(z, 1, 1322./3939, 7723./827190)/square(z, 1, 1319./2626, 110281./2205840)))
}

// Sloped returns the chain of this sag whose right end is rise above the left one; a
// negative rise is below it.
//
// It solves r·√(s² + k²)/s = sag/span for u, where r = (cosh u - 1)/2u and s =
// sinh u/u, by Newton's method with the bend of r. The left side grows with u. The start
// is the second order of its series for a flat chain, a level chain of nearly the same u
// for a deep one, and the smaller of both for a deep one that is steeper still. On a grid
// of 60,000 chains, slopes from 1/1000 to 600 and sags from a hundredth to 600 of the
// span, 85 % take one or two steps, and none more than 7.
func Sloped(span, rise, sag float64) Curve {
	c, _ := sloped(span, rise, sag)
	return c
}

// sloped also returns how many steps it took.
func sloped(span, rise, sag float64) (c Curve, steps int) {
	k, g := rise/span, sag/span
	k2 := float64(k * k)
	if g == 0 {
		return slopedOf(span, rise, 0), 0
	}
	z := 16 * float64(g*g) / (1 + k2)
	d := 1 + float64(z*(1./6-k2/(3*(1+k2))))
	u := math.Sqrt(z / max(d, 0.2))
	if z > 1 {
		if t := float64(2*g) + 1; math.Abs(k) < t { // s is about t
			u = near(g / math.Sqrt(1+k2/float64(t*t)))
		} else {
			u = min(u, near(g))
		}
	}
	for done := false; !done && steps < maxSteps; steps++ {
		r, slopeR, s, slopeS := parts(u)
		p := math.Sqrt(float64(s*s) + k2)
		value := r * p / s
		slope := float64(slopeR*p/s) - r*slopeS*k2/float64(p*float64(s*s))
		step := (value - g) / slope
		if math.Abs(step) < u/8 {
			bend := (float64(u*r) + 0.5 - float64(2*slopeR)) / u // the second derivative of r
			step = float64(step * (1 + float64(step*bend/(2*slopeR))))
		}
		// No step to a quarter or to more than twice: there Newton's method may wander.
		next := min(max(u-step, u/4), float64(2*u)+1)
		done = math.Abs(step) < 1e-8*u
		u = next
	}
	return slopedOf(span, rise, u), steps
}

const maxSteps = 40

// parts returns r = (cosh u - 1)/2u and s = sinh u/u, with their slopes, for u above 0.
// Up to u = 2 they come from q = sinh(u/2)/(u/2), as u·q²/4 and q·cosh(u/2).
func parts(u float64) (r, slopeR, s, slopeS float64) {
	if u <= 2 {
		v := u / 2
		q := halfSinhc(float64(v * v))
		sinh := float64(v * q)
		cosh := math.Sqrt(1 + float64(sinh*sinh))
		r, s = u*q*q/4, float64(q*cosh)
		return r, (float64(q*q) + float64(2*q*(cosh-q))) / 4, s, (1 + float64(2*sinh*sinh) - s) / u
	}
	sinh, cosh := sinhCosh(elem.Exp(u))
	r, s = (cosh-1)/(2*u), sinh/u
	return r, (sinh/2 - r) / u, s, (cosh - s) / u
}

// 1, 1/3!, 1/5!, ...; the term left out is below 1e-17 of the sum up to x = 1.
var halfTerms = [9]float64{
	1, 1. / 6, 1. / 120, 1. / 5040, 1. / 362880, 1. / 39916800, 1. / 6227020800,
	1. / 1307674368000, 1. / 355687428096000,
}

// halfSinhc returns sinh(√x)/√x by the series of halfTerms, for x up to 1.
func halfSinhc(x float64) float64 {
	sum := halfTerms[8]
	for i := 7; i >= 0; i-- {
		sum = float64(sum*x) + halfTerms[i]
	}
	return sum
}

func slopedOf(span, rise, u float64) Curve {
	return Curve{span: span, rise: rise, u: u, w: float64(u * u)}
}

// tilt returns m.
func (c Curve) tilt() float64 { return elem.Asinh(c.rise / (c.span * c.sinhc(1))) }

// Fit returns the chain of this length between ends that are span apart and rise one
// above the other, all in whole numbers below 2⁵³, and whether it is long enough. The
// squares are taken in 128 bits, so that a taut chain is as exact as a slack one.
func Fit(span, rise, length int64) (c Curve, ok bool) {
	up := max(rise, -rise)
	if length < up {
		return Curve{}, false
	}
	// length² - rise² - span²
	hi, lo := bits.Mul64(uint64(length-up), uint64(length+up))
	h, l := bits.Mul64(uint64(span), uint64(span))
	lo, borrow := bits.Sub64(lo, l, 0)
	hi, borrow = bits.Sub64(hi, h, borrow)
	if borrow != 0 {
		return Curve{}, false
	}
	excess := float64(float64(hi)*(1<<64)) + float64(lo)
	L := float64(span)
	level := math.Sqrt(float64(L*L) + excess) // the length of the level chain with the same u
	q := excess / (L * (level + L))
	return slopedOf(L, float64(rise), bow(q)), true
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

// Slack returns the length of a level chain less its span.
func (c Curve) Slack() float64 {
	if c.w > deepest {
		return float64(c.span * (elem.Sinh(c.u)/c.u - 1))
	}
	p, _ := sinhcSeries(c.w)
	return float64(c.span * c.w * p)
}

// Length returns the length of the chain.
func (c Curve) Length() float64 {
	level := float64(c.span * c.sinhc(1))
	return math.Sqrt(float64(level*level) + float64(c.rise*c.rise))
}

// Sag returns how far the chain hangs below the middle of the line between its ends,
// for ends that are not level.
func (c Curve) Sag() float64 {
	if c.u == 0 {
		return 0
	}
	r, _, s, _ := parts(c.u)
	k := c.rise / c.span
	return c.span * r * math.Sqrt(float64(s*s)+float64(k*k)) / s
}

// Below returns how far the chain is below its left end, at a level distance from it:
// span/u · sinh(u·part) · sinh(u·rest - m), with part and rest the two parts of the
// span.
func (c Curve) Below(at float64) float64 {
	left := at / c.span
	right := (c.span - at) / c.span
	if c.rise == 0 {
		return float64(c.span * c.u * (left * right) * (c.sinhc(left) * c.sinhc(right)))
	}
	if c.u == 0 {
		return -float64(c.rise * left)
	}
	return float64(at * c.sinhc(left) * elem.Sinh(float64(c.u*right)-c.tilt()))
}

// Lowest returns where the chain is lowest: how far along from the left end, and how
// far below it.
func (c Curve) Lowest() (at, below float64) {
	m := c.tilt()
	switch {
	case c.u == 0 && c.rise == 0:
		return c.span / 2, 0
	case c.u+m <= 0: // it falls all the way to the right
		return c.span, -c.rise
	case c.u-m <= 0:
		return 0, 0
	}
	s := elem.Sinh((c.u - m) / 2)
	return float64(c.span * ((c.u - m) / (2 * c.u))), float64(c.span / c.u * float64(s*s))
}

// Pull returns the length of chain that weighs as much as the level pull of its ends:
// the parameter a, infinite for a straight line.
func (c Curve) Pull() float64 { return c.span / (2 * c.u) }

// Ends returns the lengths of chain that hang from the left end and from the right
// one. They add up to the length; one is negative where the chain lifts its end:
//
//	(length ∓ rise·cosh u/sinh u)/2
//
// It means nothing for a straight line.
func (c Curve) Ends() (left, right float64) {
	s := float64(c.u * c.sinhc(1))
	half, lean := c.Length()/2, float64(c.rise/2*(math.Sqrt(1+float64(s*s))/s))
	return half - lean, half + lean
}

// sinhc returns sinh(x)/x for x = part·u.
func (c Curve) sinhc(part float64) float64 {
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
	p = sinhcTerms[len(sinhcTerms)-1]
	for i := len(sinhcTerms) - 2; i >= 0; i-- {
		slope = float64(slope*w) + p
		p = float64(p*w) + sinhcTerms[i]
	}
	return p, float64(slope*w) + p
}

// coshcSeries returns C(w) = 2(cosh √w - 1)/w, and its slope, for w from 0 to 4;
// the term left out is below 1e-18 of the sum.
func coshcSeries(w float64) (p, slope float64) {
	p = coshcTerms[len(coshcTerms)-1]
	for i := len(coshcTerms) - 2; i >= 0; i-- {
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

// square returns a + b·x + c·x².
func square(x, a, b, c float64) float64 { return float64((float64(c*x)+b)*x) + a }

// horner returns the polynomial a + b·x + c·x² + ...
func horner(x float64, coefficients ...float64) float64 {
	sum := 0.0
	for i := len(coefficients) - 1; i >= 0; i-- {
		sum = float64(sum*x) + coefficients[i]
	}
	return sum
}
