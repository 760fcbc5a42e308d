package elem

import (
	"math"
	"math/big"
)

// The slow, readable reference: the same functions in 300 binary digits, from
// the defining series.

const prec = 300

func bigFloat(x float64) *big.Float  { return newBig().SetFloat64(x) }
func newBig() *big.Float             { return new(big.Float).SetPrec(prec) }
func add(a, b *big.Float) *big.Float { return newBig().Add(a, b) }
func sub(a, b *big.Float) *big.Float { return newBig().Sub(a, b) }
func mul(a, b *big.Float) *big.Float { return newBig().Mul(a, b) }
func quo(a, b *big.Float) *big.Float { return newBig().Quo(a, b) }
func shift(a *big.Float, n int) *big.Float {
	return newBig().SetMantExp(a, n)
}

// series returns Σ term(k) until the terms no longer count.
func series(term func(k int64) *big.Float) *big.Float {
	sum := newBig()
	for k := int64(0); ; k++ {
		t := term(k)
		sum.Add(sum, t)
		if t.Sign() == 0 || t.MantExp(nil) < sum.MantExp(nil)-prec {
			return sum
		}
	}
}

// bigExpm1 is x + x²/2! + x³/3! + …, after halving x as often as needed:
// e**2x - 1 = (e**x - 1)·(e**x + 1).
func bigExpm1(x *big.Float) *big.Float {
	if limit := bigFloat(2000); x.Cmp(limit) > 0 { // far past the largest double
		x = limit
	}
	n := max(0, x.MantExp(nil)+8)
	r := shift(x, -n)
	t := bigFloat(1)
	s := series(func(k int64) *big.Float {
		t = quo(mul(t, r), bigFloat(float64(k+1)))
		return t
	})
	for range n {
		s = mul(s, add(s, bigFloat(2)))
	}
	return s
}

func bigExp(x *big.Float) *big.Float {
	if x.Sign() < 0 {
		return quo(bigFloat(1), bigExp(newBig().Neg(x)))
	}
	return add(bigExpm1(x), bigFloat(1))
}

// artanh2 is 2·artanh(s) = 2(s + s³/3 + s⁵/5 + …).
func artanh2(s *big.Float) *big.Float {
	z, t := mul(s, s), newBig()
	return series(func(k int64) *big.Float {
		if k == 0 {
			t = shift(s, 1)
			return t
		}
		t = mul(t, z)
		return quo(t, bigFloat(float64(2*k+1)))
	})
}

var bigLn2 = artanh2(quo(bigFloat(1), bigFloat(3)))

// bigLog1p halves through log(1+x) = 2·log(√(1+x)) first where x is not small.
func bigLog1p(x *big.Float) *big.Float {
	if x.Sign() == 0 {
		return newBig()
	}
	if x.MantExp(nil) < -6 {
		return artanh2(quo(x, add(x, bigFloat(2))))
	}
	return bigLog(add(x, bigFloat(1)))
}

func bigLog(x *big.Float) *big.Float {
	m := newBig()
	k := x.MantExp(m) // x = m·2**k, ½ ≤ m < 1
	if m.Cmp(bigFloat(0.75)) < 0 {
		m, k = shift(m, 1), k-1
	}
	l := artanh2(quo(sub(m, bigFloat(1)), add(m, bigFloat(1))))
	return add(l, mul(bigLn2, bigFloat(float64(k))))
}

// bigAtan halves the angle first: atan x = 2·atan(x/(1+√(1+x²))).
func bigAtan(x *big.Float) *big.Float {
	n := 0
	for x.Sign() != 0 && x.MantExp(nil) > -8 {
		w := newBig().Sqrt(add(mul(x, x), bigFloat(1)))
		x, n = quo(x, add(w, bigFloat(1))), n+1
	}
	z, t := mul(x, x), newBig()
	s := series(func(k int64) *big.Float {
		if k == 0 {
			t = x
		} else {
			t = newBig().Neg(mul(t, z))
		}
		return quo(t, bigFloat(float64(2*k+1)))
	})
	return shift(s, n)
}

// widePi is π by J. Machin's formula, 16·atan(1/5) - 4·atan(1/239), in digits
// enough to reduce the largest double.
var widePi = func() *big.Int {
	const digits = 1500
	inv := func(n int64) *big.Int {
		t := new(big.Int).Lsh(big.NewInt(1), digits+32)
		t.Quo(t, big.NewInt(n))
		s := new(big.Int)
		for k := int64(1); t.Sign() != 0; k += 2 {
			q := new(big.Int).Quo(t, big.NewInt(k))
			if k%4 == 1 {
				s.Add(s, q)
			} else {
				s.Sub(s, q)
			}
			t.Quo(t, big.NewInt(n*n))
		}
		return s
	}
	pi := new(big.Int).Mul(inv(5), big.NewInt(16))
	pi.Sub(pi, new(big.Int).Mul(inv(239), big.NewInt(4)))
	return pi.Rsh(pi, 32) // π·2**1500
}()

var bigPi = shift(newBig().SetInt(widePi), -1500)

// bigSincos reduces x by a whole number of turns in integers, exactly enough,
// and sums the two series.
func bigSincos(x float64) (sin, cos *big.Float) {
	f := new(big.Float).SetPrec(3000).SetFloat64(x)
	i, _ := f.SetMantExp(f, 1500).Int(nil)
	turn := new(big.Int).Lsh(widePi, 1)
	// x·2**1500 mod 2π·2**1500; π's last digit costs 2**(1024-1500) at most.
	i.Mod(i, turn)
	r := shift(newBig().SetInt(i), -1500)
	z := mul(r, r)
	t := newBig()
	half := func(first *big.Float, odd int64) *big.Float {
		return series(func(k int64) *big.Float {
			if k == 0 {
				t = first
				return t
			}
			n := 2*k + odd
			t = newBig().Neg(quo(mul(t, z), bigFloat(float64(n*(n-1)))))
			return t
		})
	}
	return half(r, 1), half(bigFloat(1), 0)
}

// ulps returns |got - want| in units of the last place of want.
func ulps(got float64, want *big.Float) float64 {
	w, _ := want.Float64()
	switch {
	case math.IsInf(w, 0) || w == 0:
		if got == w {
			return 0
		}
		return math.Inf(1)
	case math.IsNaN(got) || math.IsInf(got, 0):
		return math.Inf(1)
	}
	e := want.MantExp(nil) // ½ ≤ mantissa < 1
	d := sub(bigFloat(got), want)
	u, _ := shift(d, -max(e-53, -1074)).Float64()
	return math.Abs(u)
}
