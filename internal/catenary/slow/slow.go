// Package slow is the reference for tests of catenaries: chains in 256 bits, by exponentials
// and root finding, without a line of the code that it checks.
package slow

import (
	"math"
	"math/big"
)

// Big returns x in 256 bits.
func Big(x float64) *big.Float { return new(big.Float).SetPrec(256).SetFloat64(x) }

// Add returns a + b in 256 bits, as all of these.
func Add(a, b *big.Float) *big.Float { return Big(0).Add(a, b) }

// Sub returns a - b.
func Sub(a, b *big.Float) *big.Float { return Big(0).Sub(a, b) }

// Mul returns a·b.
func Mul(a, b *big.Float) *big.Float { return Big(0).Mul(a, b) }

// Quo returns a/b.
func Quo(a, b *big.Float) *big.Float { return Big(0).Quo(a, b) }

func root(a *big.Float) *big.Float { return Big(0).Sqrt(a) }

// exp returns e^x by the Taylor series of x/2^16, squared 16 times.
func exp(x *big.Float) *big.Float {
	x = Mul(x, Big(1./65536))
	sum, term := Big(1), Big(1)
	for k := 1.; k <= 24; k++ {
		term = Quo(Mul(term, x), Big(k))
		sum = Add(sum, term)
	}
	for range 16 {
		sum = Mul(sum, sum)
	}
	return sum
}

// log returns ln x by Halley's method on exp.
func log(x *big.Float) *big.Float {
	f, _ := x.Float64()
	y := Big(math.Log(f))
	for range 4 {
		e := exp(y)
		y = Add(y, Mul(Big(2), Quo(Sub(x, e), Add(x, e))))
	}
	return y
}

func sinhCosh(x *big.Float) (sinh, cosh *big.Float) {
	e := exp(x)
	return Quo(Sub(e, Quo(Big(1), e)), Big(2)), Quo(Add(e, Quo(Big(1), e)), Big(2))
}

// secant returns the root of f near x, in 256 bits.
func secant(f func(*big.Float) *big.Float, x float64) *big.Float {
	a, b := Big(x), Big(x*(1+1e-6))
	fa := f(a)
	for range 8 {
		fb := f(b)
		d := Sub(fb, fa)
		if d.Sign() == 0 {
			break
		}
		a, b, fa = b, Sub(b, Quo(Mul(fb, Sub(b, a)), d)), fb
	}
	return b
}

// bisect returns the root of a growing function, to a double's digits.
func bisect(f func(float64) float64) float64 {
	low, high := 1e-12, 30.
	for range 200 {
		if mid := (low + high) / 2; f(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// A Chain is exact to some 70 digits.
type Chain struct{ span, rise, u, a, m *big.Float }

func chain(span, rise float64, u *big.Float) Chain {
	c := Chain{span: Big(span), rise: Big(rise), u: u}
	c.a = Quo(c.span, Mul(Big(2), u))
	sinh, _ := sinhCosh(u)
	// asinh t = ln(t + √(t² + 1))
	t := Quo(c.rise, Mul(Mul(Big(2), c.a), sinh))
	c.m = log(Add(t, root(Add(Mul(t, t), Big(1)))))
	return c
}

// OfSag returns the chain of a sag above 0: the difference of the mean height of the ends
// and the height in the middle, a·cosh m·(cosh u - 1), with both m and u from the
// textbook's y = a·cosh(x/a).
func OfSag(span, rise, sag float64) Chain {
	near := bisect(func(u float64) float64 {
		// sag² = e² + (rise/2 · tanh(u/2))², e the sag of the level chain of the same u
		e := span * math.Sinh(u/2) * math.Sinh(u/2) / u
		return math.Hypot(e, rise/2*math.Tanh(u/2)) - sag
	})
	return chain(span, rise, secant(func(u *big.Float) *big.Float {
		return Sub(chain(span, rise, u).Sag(), Big(sag))
	}, near))
}

// OfLength returns the chain of a length, from the textbook's length² = rise² + (2a·sinh u)².
func OfLength(span, rise, length float64) Chain {
	near := bisect(func(u float64) float64 {
		return span*math.Sinh(u)/u - math.Sqrt((length-rise)*(length+rise))
	})
	return chain(span, rise, secant(func(u *big.Float) *big.Float {
		sinh, _ := sinhCosh(u)
		level := Quo(Mul(Big(span), sinh), u)
		return Sub(Add(Mul(level, level), Mul(Big(rise), Big(rise))), Mul(Big(length), Big(length)))
	}, near))
}

// height returns that of the curve at x/a = p.
func (c Chain) height(p *big.Float) *big.Float {
	_, cosh := sinhCosh(p)
	return Mul(c.a, cosh)
}

// Below returns how far the chain is below its left end, at a level distance from it.
func (c Chain) Below(at float64) *big.Float {
	left := Sub(c.m, c.u)
	return Sub(c.height(left), c.height(Add(left, Mul(Mul(Big(2), c.u), Quo(Big(at), c.span)))))
}

// Sag returns how far the chain hangs below the middle of the line between its ends.
func (c Chain) Sag() *big.Float {
	_, coshM := sinhCosh(c.m)
	_, coshU := sinhCosh(c.u)
	return Mul(c.a, Mul(coshM, Sub(coshU, Big(1))))
}

// Pull returns the parameter a, the length of chain that weighs as much as its level pull.
func (c Chain) Pull() *big.Float { return c.a }

// Ends returns the arcs from the lowest point of the curve to its ends, a·sinh.
func (c Chain) Ends() (left, right *big.Float) {
	l, _ := sinhCosh(Sub(c.u, c.m))
	r, _ := sinhCosh(Add(c.u, c.m))
	return Mul(c.a, l), Mul(c.a, r)
}

// Length returns that of the chain.
func (c Chain) Length() *big.Float { l, r := c.Ends(); return Add(l, r) }

// LevelSpan returns the span of a level chain of this length and sag, which needs no
// equation solved: with h half the length,
//
//	span = (h² - sag²)/sag · ln((h + sag)/(h - sag))
//
// for tanh(u/2) = sag/h and sinh u = h/a.
func LevelSpan(length, sag float64) *big.Float {
	h, s := Mul(Big(length), Big(0.5)), Big(sag)
	a := Quo(Sub(Mul(h, h), Mul(s, s)), s)
	return Mul(a, log(Quo(Add(h, s), Sub(h, s))))
}
