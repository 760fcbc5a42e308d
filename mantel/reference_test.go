package mantel_test

import (
	"math"
	"math/big"

	"example.com/fircone/units"
)

// The slow reference: catenaries in 256 bits.

func bigOf(x float64) *big.Float { return new(big.Float).SetPrec(256).SetFloat64(x) }

func add(a, b *big.Float) *big.Float { return new(big.Float).SetPrec(256).Add(a, b) }
func sub(a, b *big.Float) *big.Float { return new(big.Float).SetPrec(256).Sub(a, b) }
func mul(a, b *big.Float) *big.Float { return new(big.Float).SetPrec(256).Mul(a, b) }
func quo(a, b *big.Float) *big.Float { return new(big.Float).SetPrec(256).Quo(a, b) }

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

// exactSpan returns the span of a catenary of this length and sag, which needs no
// equation solved: with h half the length,
//
//	span = (h² - sag²)/sag · ln((h + sag)/(h - sag))
//
// for tanh(u/2) = sag/h and sinh u = h/a. Unlike the code it goes by logarithms.
func exactSpan(length, sag float64) *big.Float {
	h, s := mul(bigOf(length), bigOf(0.5)), bigOf(sag)
	a := quo(sub(mul(h, h), mul(s, s)), s)
	return mul(a, bigLog(quo(add(h, s), sub(h, s))))
}

// exactBelow returns how deep a catenary of this span and sag is at a distance
// from its left hook. It solves cosh u - 1 = 2u·sag/span by Newton's method in
// 256 bits, and then takes sag - a(cosh((at - span/2)/a) - 1), the textbook form.
func exactBelow(span, sag, at float64) *big.Float {
	cosh := func(x *big.Float) *big.Float {
		e := bigExp(x)
		return mul(bigOf(0.5), add(e, quo(bigOf(1), e)))
	}
	sinh := func(x *big.Float) *big.Float {
		e := bigExp(x)
		return mul(bigOf(0.5), sub(e, quo(bigOf(1), e)))
	}
	r := quo(bigOf(sag), bigOf(span))
	f, _ := r.Float64()
	// From above, Newton's method on a convex function goes down to the root.
	u := bigOf(min(4*f, math.Log(8*f+8)+math.Log(math.Log(8*f+8)+1)+1))
	for range 60 {
		value := sub(sub(cosh(u), bigOf(1)), mul(bigOf(2), mul(u, r)))
		slope := sub(sinh(u), mul(bigOf(2), r))
		step := quo(value, slope)
		u = sub(u, step)
		if s, _ := step.Float64(); math.Abs(s) < 1e-60 {
			break
		}
	}
	a := quo(bigOf(span), mul(bigOf(2), u))
	x := sub(bigOf(at), mul(bigOf(span), bigOf(0.5)))
	return sub(bigOf(sag), mul(a, sub(cosh(quo(x, a)), bigOf(1))))
}

// parabola returns the length of a parabola of this span and sag, the usual
// stand-in for a catenary: with k = 4·sag/span,
//
//	length = span/2 · (√(1 + k²) + asinh(k)/k)
func parabola(span, sag units.Length) float64 {
	if sag == 0 {
		return float64(span)
	}
	k := 4 * float64(sag) / float64(span)
	return float64(span) / 2 * (math.Sqrt(1+k*k) + math.Asinh(k)/k)
}
