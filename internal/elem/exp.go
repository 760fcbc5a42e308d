package elem

import "math"

// Exp returns e**x, the base-e exponential of x.
// Its error is under 0.75 ulp.
//
// Special cases are those of [math.Exp]: NaN for NaN, +Inf for +Inf and from
// 709.78 up, 0 for -Inf and below -745.13.
func Exp(x float64) float64 {
	switch {
	case math.IsNaN(x) || x > maxExp:
		return x + math.Inf(1)
	case x < minExp:
		return 0
	}
	hi, lo, k := expPair(x, 0)
	return scale(hi+lo, k)
}

// Beyond these the result overflows, or rounds to zero.
const (
	maxExp = 1024 * math.Ln2
	minExp = -1075 * math.Ln2
)

// expPair returns hi, lo and k with e**(x+xl) = (hi+lo)·2**k for |x| up to 746
// and |xl| at most an ulp of x. The sum hi+lo is between 0.7 and 1.42 and its
// error is under 2**-56.
func expPair(x, xl float64) (hi, lo float64, k int) {
	// x = k·ln 2 + r with |r| ≤ (ln 2)/2.
	t := math.Floor(float64(x*(1/math.Ln2)) + 0.5)
	h := x - float64(t*ln2Hi) // exact
	l := xl - float64(t*ln2Lo)
	r, rl := twoSum(h, l)
	// e**(r+rl) = (1 + r) + (r²/2 + r³·tail(r)) + rl·e**r
	hi, lo = fastTwoSum(1, r)
	z := float64(r * r)
	lo += float64(z/2) + (float64(z*float64(r*expTail(r, z))) + float64(rl*hi))
	return hi, lo, int(t)
}

// expTail returns (e**r - 1 - r - r²/2)/r³ for |r| ≤ 1/2, where z is r². The
// terms left out are under 2**-62.
func expTail(r, z float64) float64 {
	const (
		c3  = 1.0 / (1 * 2 * 3)
		c4  = c3 / 4
		c5  = c4 / 5
		c6  = c5 / 6
		c7  = c6 / 7
		c8  = c7 / 8
		c9  = c8 / 9
		c10 = c9 / 10
		c11 = c10 / 11
		c12 = c11 / 12
		c13 = c12 / 13
		c14 = c13 / 14
		c15 = c14 / 15
		c16 = c15 / 16
	)
	z2 := float64(z * z)
	a := (c3 + float64(c4*r)) + float64(z*(c5+float64(c6*r)))
	b := (c7 + float64(c8*r)) + float64(z*(c9+float64(c10*r)))
	c := (c11 + float64(c12*r)) + float64(z*(c13+float64(c14*r)))
	d := c15 + float64(c16*r)
	return a + float64(z2*(b+float64(z2*(c+float64(z2*d)))))
}
