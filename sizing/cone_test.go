package sizing

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.com/fircone/units"
)

// The slow, readable reference: the textbook formula in 400 binary digits.

func bigOf(x float64) *big.Float          { return new(big.Float).SetPrec(400).SetFloat64(x) }
func bigAdd(x, y *big.Float) *big.Float   { return bigOf(0).Add(x, y) }
func bigSub(x, y *big.Float) *big.Float   { return bigOf(0).Sub(x, y) }
func bigMul(x, y *big.Float) *big.Float   { return bigOf(0).Mul(x, y) }
func bigQuo(x, y *big.Float) *big.Float   { return bigOf(0).Quo(x, y) }
func bigSqrt(x *big.Float) *big.Float     { return bigOf(0).Sqrt(x) }
func bigHypot(x, y *big.Float) *big.Float { return bigSqrt(bigAdd(bigMul(x, x), bigMul(y, y))) }
func bigLength(l units.Length) *big.Float { return bigOf(0).SetInt64(int64(l)) }

// artanh is s + s³/3 + s⁵/5 + …
func artanh(s *big.Float) *big.Float {
	sum, power, z := bigOf(0), s, bigMul(s, s)
	for k := 1.0; power.Sign() != 0 && power.MantExp(nil) > sum.MantExp(nil)-400; k += 2 {
		sum = bigAdd(sum, bigQuo(power, bigOf(k)))
		power = bigMul(power, z)
	}
	return sum
}

// bigLog is log x = k·log 2 + log m, with log m = 2·artanh((m-1)/(m+1)).
func bigLog(x *big.Float) *big.Float {
	m := bigOf(0)
	k := x.MantExp(m)
	l := artanh(bigQuo(bigSub(m, bigOf(1)), bigAdd(m, bigOf(1))))
	ln2 := artanh(bigQuo(bigOf(1), bigOf(3)))
	return bigMul(bigOf(2), bigAdd(l, bigMul(ln2, bigOf(float64(k)))))
}

// bigPi is 16·arctan(1/5) - 4·arctan(1/239), J. Machin's formula.
var bigPi = func() *big.Float {
	arctan := func(n float64) *big.Float {
		sum, power, z := bigOf(0), bigQuo(bigOf(1), bigOf(n)), bigOf(-n*n)
		for k := 1.0; power.MantExp(nil) > -420; k += 2 {
			sum = bigAdd(sum, bigQuo(power, bigOf(k)))
			power = bigQuo(power, z)
		}
		return sum
	}
	return bigSub(bigMul(bigOf(16), arctan(5)), bigMul(bigOf(4), arctan(239)))
}()

// bigSlant is √(r² + h²).
func bigSlant(c Cone) *big.Float {
	return bigHypot(bigQuo(bigLength(c.BaseDiameter), bigOf(2)), bigLength(c.Height))
}

// bigArea is π·(r₁+r₂)·slope, in square nanometers.
func bigArea(c Cone) *big.Float {
	r := bigQuo(bigLength(c.BaseDiameter), bigOf(2))
	f1, f2 := bigDepths(c)
	return bigMul(bigMul(bigPi, bigMul(r, bigAdd(f1, f2))), bigMul(bigSlant(c), bigSub(f2, f1)))
}

// bigDepths are the depths of the two edges below the tip, as parts of the height.
func bigDepths(c Cone) (f1, f2 *big.Float) {
	h := bigLength(c.Height)
	return bigQuo(bigLength(c.BareTip), h), bigQuo(bigLength(c.Height-c.BareBase), h)
}

// bigSpiral is (c/2)·[U√(1+U²) + arsinh U] between the edges, with N = S/p turns
// on the whole cone, U = 2πNR/S at the base and c = S²/(2πNR).
func bigSpiral(c Cone, p *big.Float) *big.Float {
	s := bigSlant(c)
	n := bigQuo(s, p)
	m := bigMul(bigMul(bigPi, n), bigLength(c.BaseDiameter)) // 2πNR
	f := func(part *big.Float) *big.Float {
		if part.Sign() == 0 {
			return bigOf(0)
		}
		u := bigQuo(bigMul(m, part), s)
		w := bigHypot(u, bigOf(1))
		return bigAdd(bigMul(u, w), bigLog(bigAdd(u, w)))
	}
	f1, f2 := bigDepths(c)
	return bigMul(bigQuo(bigMul(s, s), bigMul(bigOf(2), m)), bigSub(f(f2), f(f1)))
}

// anyCone draws a cone from the whole allowed range, its corners included often.
func anyCone(r *rand.Rand) Cone {
	between := func(lo, hi units.Length) units.Length {
		switch r.IntN(6) {
		case 0:
			return lo
		case 1:
			return hi
		}
		return lo + units.Length(r.Int64N(int64(hi-lo)+1))
	}
	var c Cone
	c.Height = between(6*in, 100*ft)
	if r.IntN(2) == 0 {
		c.Height = between(6*in, 16*ft)
	}
	c.BaseDiameter = between(minBase(c.Height), maxBase(c.Height))
	if r.IntN(2) == 0 {
		c.BareTip = between(0, c.Height-minDressed)
	}
	if r.IntN(2) == 0 {
		c.BareBase = between(0, c.Height-c.BareTip-minDressed)
	}
	return c
}

// anySpacing draws a spacing evenly by size.
func anySpacing(r *rand.Rand) units.Length {
	switch r.IntN(8) {
	case 0:
		return MinSpacing
	case 1:
		return MaxSpacing
	}
	x := math.Exp(math.Log(float64(MinSpacing)) + r.Float64()*math.Log(float64(MaxSpacing)/float64(MinSpacing)))
	return min(max(units.Length(x), MinSpacing), MaxSpacing)
}

// TestSpiralLengthAccuracy holds SpiralLength to the bound in its doc: within
// 1 nm of the exact length, everywhere.
func TestSpiralLengthAccuracy(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	worst := 0.0
	for range trials(t, 4000) {
		c, p := anyCone(r), anySpacing(r)
		got, err := c.SpiralLength(p)
		if err != nil {
			t.Fatal(err)
		}
		off, _ := bigSub(bigLength(got), bigSpiral(c, bigLength(p))).Float64()
		worst = max(worst, math.Abs(off))
		if !(math.Abs(off) <= 1) {
			t.Errorf("%+v at %v: %d nm is off by %.3f nm", c, p, got, off)
		}
	}
	t.Logf("worst: %.3f nm", worst)
}

func TestSpacingAccuracy(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	worst, worstLoose := 0.0, 0.0
	for range trials(t, 2000) {
		c, p := anyCone(r), anySpacing(r)
		length, _ := c.SpiralLength(p)
		got, err := c.Spacing(length)
		if err != nil {
			t.Fatal(c, p, length, err)
		}
		// One step of Newton's rule from the result, in 400 digits.
		h := bigOf(1e-9)
		x := bigLength(got)
		l := bigSpiral(c, x)
		slope := bigQuo(bigSub(bigSpiral(c, bigAdd(x, h)), l), h)
		off, _ := bigQuo(bigSub(l, bigLength(length)), slope).Float64()
		slant, _ := c.Slant()
		if p <= slant {
			worst = max(worst, math.Abs(off))
			if math.Abs(off) > 1.01 {
				t.Errorf("%+v at %v, %d: off %.3f", c, p, length, off)
			}
		} else {
			if math.Abs(off) > worstLoose {
				worstLoose = math.Abs(off)
				t.Log(c, p, slant, off)
			}
		}
	}
	t.Logf("worst: %.3f nm %.3f nm", worst, worstLoose)
}

func trials(t *testing.T, n int) int {
	t.Helper()
	if testing.Short() {
		return n / 10
	}
	return n
}
