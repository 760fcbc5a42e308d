package catenary_test

import (
	"math"
	"math/big"
)

// The slow reference: chains in 256 bits, by exponentials alone.

func bigOf(x float64) *big.Float { return new(big.Float).SetPrec(256).SetFloat64(x) }

func add(a, b *big.Float) *big.Float { return new(big.Float).SetPrec(256).Add(a, b) }
func sub(a, b *big.Float) *big.Float { return new(big.Float).SetPrec(256).Sub(a, b) }
func mul(a, b *big.Float) *big.Float { return new(big.Float).SetPrec(256).Mul(a, b) }
func quo(a, b *big.Float) *big.Float { return new(big.Float).SetPrec(256).Quo(a, b) }
func root(a *big.Float) *big.Float   { return new(big.Float).SetPrec(256).Sqrt(a) }

// bigExp returns e^x by the Taylor series of x/2^16, squared 16 times.
func bigExp(x *big.Float) *big.Float {
	x = mul(x, bigOf(1./65536))
	sum, term := bigOf(1), bigOf(1)
	for k := 1.; k <= 24; k++ {
		term = quo(mul(term, x), bigOf(k))
		sum = add(sum, term)
	}
	for range 16 {
		sum = mul(sum, sum)
	}
	return sum
}

// bigLog returns ln x by Halley's method on bigExp.
func bigLog(x *big.Float) *big.Float {
	f, _ := x.Float64()
	y := bigOf(math.Log(f))
	for range 4 {
		e := bigExp(y)
		y = add(y, mul(bigOf(2), quo(sub(x, e), add(x, e))))
	}
	return y
}

func bigSinhCosh(x *big.Float) (sinh, cosh *big.Float) {
	e := bigExp(x)
	return quo(sub(e, quo(bigOf(1), e)), bigOf(2)), quo(add(e, quo(bigOf(1), e)), bigOf(2))
}

// secant returns the root of f near x, in 256 bits.
func secant(f func(*big.Float) *big.Float, x float64) *big.Float {
	a, b := bigOf(x), bigOf(x*(1+1e-6))
	fa := f(a)
	for range 6 {
		fb := f(b)
		d := sub(fb, fa)
		if d.Sign() == 0 {
			break
		}
		a, b, fa = b, sub(b, quo(mul(fb, sub(b, a)), d)), fb
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

// An exact chain.
type exact struct{ span, rise, u, a, m *big.Float }

func exactOf(span, rise float64, u *big.Float) exact {
	e := exact{span: bigOf(span), rise: bigOf(rise), u: u}
	e.a = quo(e.span, mul(bigOf(2), u))
	sinh, _ := bigSinhCosh(u)
	// asinh t = ln(t + √(t² + 1))
	t := quo(e.rise, mul(mul(bigOf(2), e.a), sinh))
	e.m = bigLog(add(t, root(add(mul(t, t), bigOf(1)))))
	return e
}

// exactSloped returns the chain of a sag: the difference of the mean height of the
// ends and the height in the middle, a·cosh m·(cosh u - 1), with both m and u from the
// textbook's y = a·cosh(x/a).
func exactSloped(span, rise, sag float64) exact {
	near := bisect(func(u float64) float64 {
		// sag² = e² + (rise/2 · tanh(u/2))², e the sag of the level chain of the same u
		e := span * math.Sinh(u/2) * math.Sinh(u/2) / u
		return math.Hypot(e, rise/2*math.Tanh(u/2)) - sag
	})
	return exactOf(span, rise, secant(func(u *big.Float) *big.Float {
		e := exactOf(span, rise, u)
		_, coshM := bigSinhCosh(e.m)
		_, coshU := bigSinhCosh(u)
		return sub(mul(e.a, mul(coshM, sub(coshU, bigOf(1)))), bigOf(sag))
	}, near))
}

// exactFit returns the chain of a length, from the textbook's length² = rise² + (2a·sinh u)².
func exactFit(span, rise, length float64) exact {
	near := bisect(func(u float64) float64 {
		return span*math.Sinh(u)/u - math.Sqrt((length-rise)*(length+rise))
	})
	return exactOf(span, rise, secant(func(u *big.Float) *big.Float {
		sinh, _ := bigSinhCosh(u)
		level := quo(mul(bigOf(span), sinh), u)
		return sub(add(mul(level, level), mul(bigOf(rise), bigOf(rise))), mul(bigOf(length), bigOf(length)))
	}, near))
}

// y returns the height of the curve over its parameter, at x/a = p.
func (e exact) height(p *big.Float) *big.Float {
	_, cosh := bigSinhCosh(p)
	return mul(e.a, cosh)
}

// below is the difference of two heights.
func (e exact) below(at float64) *big.Float {
	left := sub(e.m, e.u)
	return sub(e.height(left), e.height(add(left, mul(mul(bigOf(2), e.u), quo(bigOf(at), e.span)))))
}

func (e exact) sag() *big.Float {
	_, coshM := bigSinhCosh(e.m)
	_, coshU := bigSinhCosh(e.u)
	return mul(e.a, mul(coshM, sub(coshU, bigOf(1))))
}

// ends are the arcs from the lowest point of the curve to its ends, a·sinh.
func (e exact) ends() (left, right *big.Float) {
	l, _ := bigSinhCosh(sub(e.u, e.m))
	r, _ := bigSinhCosh(add(e.u, e.m))
	return mul(e.a, l), mul(e.a, r)
}

func (e exact) length() *big.Float { l, r := e.ends(); return add(l, r) }
