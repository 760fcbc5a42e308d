package elem

import "math"

// twoSum returns s and e with s = a+b rounded and s+e = a+b exactly.
// Source: D. Knuth, The Art of Computer Programming, vol. 2, §4.2.2.
func twoSum(a, b float64) (s, e float64) {
	s = a + b
	t := s - a
	return s, (a - (s - t)) + (b - t)
}

// fastTwoSum is twoSum for |a| ≥ |b| or a = 0.
// Source: T. J. Dekker, Numer. Math. 18 (1971) 224-242.
func fastTwoSum(a, b float64) (s, e float64) {
	s = a + b
	return s, b - (s - a)
}

// twoProd returns p and e with p = a·b rounded and p+e = a·b exactly, as long
// as neither |a| nor |b| exceeds 2**996 and a·b stays above 2**-968.
// Source: T. J. Dekker, Numer. Math. 18 (1971) 224-242.
func twoProd(a, b float64) (p, e float64) {
	p = float64(a * b)
	ah, al := split(a)
	bh, bl := split(b)
	e = float64(ah*bh) - p
	e += float64(ah * bl)
	e += float64(al * bh)
	return p, e + float64(al*bl)
}

// mulPair returns the product of two numbers of two parts each.
func mulPair(a, al, b, bl float64) (hi, lo float64) {
	hi, lo = twoProd(a, b)
	return hi, lo + (float64(a*bl) + float64(al*b))
}

// split returns the upper 26 bits of a, rounded, and what they leave.
func split(a float64) (hi, lo float64) {
	c := float64(a * (1<<27 + 1))
	hi = c - (c - a)
	return hi, a - hi
}

// scale returns x·2**k, rounded once if the result is subnormal. Unlike a
// single product it allows any k that a function here comes to.
func scale(x float64, k int) float64 {
	for k > 1023 {
		x, k = x*0x1p1023, k-1023
	}
	if k < -1022 {
		// An exact step first, so that only the last one rounds: x is near 1 and k
		// above -1922 wherever this is called.
		x, k = x*0x1p-900, k+900
	}
	return float64(x * math.Float64frombits(uint64(k+1023)<<52))
}

// exponent returns k and m with x = m·2**k and 1 ≤ |m| < 2, for finite x ≠ 0.
func exponent(x float64) (m float64, k int) {
	if math.Abs(x) < 0x1p-1022 {
		x, k = x*0x1p52, -52
	}
	b := math.Float64bits(x)
	k += int(b>>52&0x7ff) - 1023
	return math.Float64frombits(b&^(0x7ff<<52) | 1023<<52), k
}

// The natural logarithm of 2 in two parts. The first has 40 bits, so that its
// product with an exponent is exact; the second is rounded from the rest.
const (
	ln2Hi = 0x1.62e42fefa2p-1
	ln2Lo = math.Ln2 - ln2Hi
)

// What the nearest float64 leaves of π/2 and π.
const (
	pio2Lo = math.Pi/2 - 0x1.921fb54442d18p0
	piLo   = 2 * pio2Lo
)
