package elem

import (
	"math"
	"math/bits"
)

// Sin returns the sine of the radian argument x. Its error is under 0.9 ulp,
// whatever the size of x.
//
// Special cases are those of [math.Sin]: ±0 for ±0, NaN for ±Inf and NaN.
func Sin(x float64) float64 {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return math.NaN()
	case x == 0: // keeps its sign
		return x
	}
	r, rl, q := reduceTrig(x)
	switch q {
	case 0:
		return sinKernel(r, rl)
	case 1:
		return cosKernel(r, rl)
	case 2:
		return -sinKernel(r, rl)
	default:
		return -cosKernel(r, rl)
	}
}

// Sincos returns the sine and the cosine of the radian argument x. The error of each is under 0.9 ulp,
// whatever the size of x.
//
// Special cases are those of [math.Sincos]: NaN for ±Inf and NaN.
func Sincos(x float64) (sin, cos float64) {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return math.NaN(), math.NaN()
	case x == 0:
		return x, 1
	}
	r, rl, q := reduceTrig(x)
	s, c := sinKernel(r, rl), cosKernel(r, rl)
	switch q {
	case 0:
		return s, c
	case 1:
		return c, -s
	case 2:
		return -s, -c
	default:
		return -c, s
	}
}

// sinKernel returns the sine of r+rl for |r| ≤ π/4 and |rl| at most an ulp of
// r. The terms left out are under 2**-66 of the sum.
func sinKernel(r, rl float64) float64 {
	const (
		c3  = -1.0 / (2 * 3)
		c5  = -c3 / (4 * 5)
		c7  = -c5 / (6 * 7)
		c9  = -c7 / (8 * 9)
		c11 = -c9 / (10 * 11)
		c13 = -c11 / (12 * 13)
		c15 = -c13 / (14 * 15)
		c17 = -c15 / (16 * 17)
		c19 = -c17 / (18 * 19)
	)
	z := float64(r * r)
	z2 := float64(z * z)
	z4 := float64(z2 * z2)
	a := (c3 + float64(c5*z)) + float64(z2*(c7+float64(c9*z)))
	b := (c11 + float64(c13*z)) + float64(z2*(c15+float64(c17*z)))
	p := a + float64(z4*(b+float64(z4*c19)))
	// sin(r+rl) = sin r + rl·cos r
	return r + (float64(float64(r*z)*p) + float64(rl*(1-float64(z/2))))
}

// cosKernel returns the cosine of r+rl for |r| ≤ π/4 and |rl| at most an ulp of
// r. The terms left out are under 2**-66.
func cosKernel(r, rl float64) float64 {
	const (
		c4  = 1.0 / (2 * 3 * 4)
		c6  = -c4 / (5 * 6)
		c8  = -c6 / (7 * 8)
		c10 = -c8 / (9 * 10)
		c12 = -c10 / (11 * 12)
		c14 = -c12 / (13 * 14)
		c16 = -c14 / (15 * 16)
		c18 = -c16 / (17 * 18)
	)
	z := float64(r * r)
	z2 := float64(z * z)
	z4 := float64(z2 * z2)
	a := (c4 + float64(c6*z)) + float64(z2*(c8+float64(c10*z)))
	b := (c12 + float64(c14*z)) + float64(z2*(c16+float64(c18*z)))
	p := a + float64(z4*b)
	// cos(r+rl) = cos r - rl·sin r; 1 - z/2 is carried in two parts.
	h := float64(z / 2)
	hi, lo := fastTwoSum(1, -h)
	return hi + (lo + (float64(z2*p) - float64(r*rl)))
}

// reduceTrig returns r+rl in [-π/4, π/4], or a hair outside, and q in 0..3 with
// x = (4n+q)·π/2 + r + rl for some integer n; x must be finite. The relative
// error of r+rl is under 2**-60.
func reduceTrig(x float64) (r, rl float64, q int) {
	if math.Abs(x) <= math.Pi/4 {
		return x, 0, 0
	}
	if math.Abs(x) < 1<<20 {
		// π/2 in three parts. The first two have 33 bits, so that their products
		// with t are exact.
		const (
			p1 = 0x1.921fb544p+00
			p2 = 0x1.0b4611a6p-34
			p3 = math.Pi/2 - p1 - p2
		)
		t := math.Floor(float64(x*(2/math.Pi)) + 0.5)
		h, l := twoSum(x-float64(t*p1), -float64(t*p2))
		l -= float64(t * p3)
		r, rl = fastTwoSum(h, l)
		if math.Abs(r) > 0x1p-30 {
			return r, rl, int(int64(t) & 3)
		}
	}
	// x is large, or so near a multiple of π/2 that more digits are needed.
	return reduceWide(x)
}

// reduceWide is reduceTrig for any x from 2**-8 up, by an integer product of
// x's digits with those of 2/π that matter.
// Source: M. Payne and R. Hanek, SIGNUM Newsletter 18 (1983) 19-24.
func reduceWide(x float64) (r, rl float64, q int) {
	b := math.Float64bits(x)
	m := b&(1<<52-1) | 1<<52
	e := int(b>>52&0x7ff) - 1075 // |x| = m·2**e
	// The digits of 2/π before this one make multiples of 4 with m·2**e. After
	// the 192 from it on, the rest is less than 2**-137 of a quadrant.
	s := uint(e - 2 + 64)
	w, n := s/64, s%64
	word := func(i uint) uint64 {
		return twoOverPi[w+i]<<n | twoOverPi[w+i+1]>>(64-n)
	}
	// The low 192 bits of the product, as the fraction of a whole turn.
	h2, p2 := bits.Mul64(m, word(2))
	h1, p1 := bits.Mul64(m, word(1))
	p0 := m * word(0)
	p1, carry := bits.Add64(p1, h2, 0)
	p0, _ = bits.Add64(p0, h1, carry)
	// To the nearest quadrant, then as a fraction of a quadrant and its sign.
	quad := (p0>>61 + 1) >> 1
	p0 -= quad << 62
	neg := p0>>63 == 1
	if neg {
		var borrow uint64
		p2, borrow = bits.Sub64(0, p2, 0)
		p1, borrow = bits.Sub64(0, p1, borrow)
		p0, _ = bits.Sub64(0, p0, borrow)
	}
	// No double is so near a multiple of π/2 that p0 is zero. The nearest is
	// 6381956970095103·2**797, off by 4.69e-19: J.-M. Muller, Elementary
	// Functions, in the chapter on range reduction.
	const k = -62
	z := bits.LeadingZeros64(p0)
	p0 = p0<<z | p1>>(64-z)
	p1 = p1<<z | p2>>(64-z)
	// 53 and 53 bits: both conversions are exact.
	hi := scale(float64(p0>>11), k-z+11)
	lo := scale(float64(p0&(1<<11-1)<<42|p1>>22), k-z-42)
	r, rl = mulPair(hi, lo, math.Pi/2, pio2Lo)
	r, rl = fastTwoSum(r, rl)
	q = int(quad & 3)
	if neg {
		r, rl = -r, -rl
	}
	if x < 0 {
		r, rl, q = -r, -rl, -q&3
	}
	return r, rl, q
}

// twoOverPi has the binary digits of 2/π after 64 zeros.
// The tests compute them anew.
var twoOverPi = [...]uint64{
	0x0000000000000000, 0xa2f9836e4e441529, 0xfc2757d1f534ddc0, 0xdb6295993c439041,
	0xfe5163abdebbc561, 0xb7246e3a424dd2e0, 0x06492eea09d1921c, 0xfe1deb1cb129a73e,
	0xe88235f52ebb4484, 0xe99c7026b45f7e41, 0x3991d639835339f4, 0x9c845f8bbdf9283b,
	0x1ff897ffde05980f, 0xef2f118b5a0a6d1f, 0x6d367ecf27cb09b7, 0x4f463f669e5fea2d,
	0x7527bac7ebe5f17b, 0x3d0739f78a5292ea, 0x6bfb5fb11f8d5d08, 0x56033046fc7b6bab,
}
