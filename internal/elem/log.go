package elem

import "math"

// Log returns the natural logarithm of x. Its error is under 0.95 ulp.
//
// Special cases are those of [math.Log]: NaN for NaN and below zero, -Inf for
// ±0, +Inf for +Inf.
func Log(x float64) float64 {
	switch {
	case math.IsNaN(x) || x < 0:
		return math.NaN()
	case x == 0:
		return math.Inf(-1)
	case x > math.MaxFloat64:
		return x
	}
	m, k := reduceLog(x)
	hi, lo := logPair(m-1, 0, k)
	return hi + lo
}

// Log1p returns the natural logarithm of 1 plus x, accurate also where x is
// near zero. Its error is under 0.95 ulp.
//
// Special cases are those of [math.Log1p]: NaN for NaN and below -1, -Inf for
// -1, +Inf for +Inf, ±0 for ±0.
func Log1p(x float64) float64 {
	switch {
	case math.IsNaN(x) || x < -1:
		return math.NaN()
	case x == -1:
		return math.Inf(-1)
	case x > math.MaxFloat64:
		return x
	case math.Abs(x) < 0x1p-54: // also keeps the sign of zero
		return x
	}
	hi, lo := log1pPair(x)
	return hi + lo
}

// log1pPair returns the logarithm of 1+x in two parts, for finite x > -1.
func log1pPair(x float64) (hi, lo float64) {
	if -0.29 < x && x < 0.41 {
		return logPair(x, 0, 0)
	}
	u, c := twoSum(1, x)
	m, k := reduceLog(u)
	return logPair(m-1, c/u, k)
}

// reduceLog returns m and k with x = m·2**k and √½ ≤ m < √2, near enough, for
// finite x > 0.
func reduceLog(x float64) (m float64, k int) {
	m, k = exponent(x)
	if m > math.Sqrt2 {
		m, k = m/2, k+1
	}
	return m, k
}

// logPair returns the logarithm of (1+f)·2**k·e**c, where √½ ≤ 1+f < √2 and c
// is small, as hi+lo.
func logPair(f, c float64, k int) (hi, lo float64) {
	// With s = f/(2+f), log(1+f) = 2·artanh(s) = 2s + s·r, where
	// r = 2s²/3 + 2s⁴/5 + …; and 2s = f - f²/2 + s·f²/2, so that what is added to
	// f is small. |s| ≤ 0.172; the terms left out are under 2**-59 of the sum.
	const (
		c1  = 2.0 / 3
		c2  = 2.0 / 5
		c3  = 2.0 / 7
		c4  = 2.0 / 9
		c5  = 2.0 / 11
		c6  = 2.0 / 13
		c7  = 2.0 / 15
		c8  = 2.0 / 17
		c9  = 2.0 / 19
		c10 = 2.0 / 21
	)
	s := f / (2 + f)
	z := float64(s * s)
	z2 := float64(z * z)
	z4 := float64(z2 * z2)
	a := (c1 + float64(c2*z)) + float64(z2*(c3+float64(c4*z)))
	b := (c5 + float64(c6*z)) + float64(z2*(c7+float64(c8*z)))
	r := float64(z * (a + float64(z4*(b+float64(z4*(c9+float64(c10*z)))))))
	h := float64(float64(f*f) / 2)
	t := float64(k)
	hi, lo = fastTwoSum(float64(t*ln2Hi), f)
	lo -= h - (float64(s*(h+r)) + (float64(t*ln2Lo) + c))
	return hi, lo
}
