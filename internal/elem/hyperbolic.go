package elem

import "math"

// Sinh returns the hyperbolic sine of x. Its error is under 0.9 ulp.
//
// Special cases are those of [math.Sinh]: ±0, ±Inf and NaN are returned as they
// are. Past ±710.47 the result is ±Inf.
func Sinh(x float64) float64 {
	a := math.Abs(x)
	if a < 1 {
		const (
			c3  = 1.0 / (2 * 3)
			c5  = c3 / (4 * 5)
			c7  = c5 / (6 * 7)
			c9  = c7 / (8 * 9)
			c11 = c9 / (10 * 11)
			c13 = c11 / (12 * 13)
			c15 = c13 / (14 * 15)
			c17 = c15 / (16 * 17)
			c19 = c17 / (18 * 19)
		)
		z := float64(x * x)
		z2 := float64(z * z)
		z4 := float64(z2 * z2)
		p := (c3 + float64(c5*z)) + float64(z2*(c7+float64(c9*z)))
		q := (c11 + float64(c13*z)) + float64(z2*(c15+float64(c17*z)))
		return x + float64(float64(x*z)*(p+float64(z4*(q+float64(z4*c19)))))
	}
	hi, lo, k := halfExp(a)
	return math.Copysign(evenOdd(hi, lo, k, -1), x)
}

// Cosh returns the hyperbolic cosine of x. Its error is under 0.75 ulp.
//
// Special cases are those of [math.Cosh]: 1 for ±0, +Inf for ±Inf and past
// ±710.47, NaN for NaN.
func Cosh(x float64) float64 {
	hi, lo, k := halfExp(math.Abs(x))
	return evenOdd(hi, lo, k, 1)
}

// halfExp returns hi, lo and k with (hi+lo)·2**k = e**a/2, for a ≥ 0.
func halfExp(a float64) (hi, lo float64, k int) {
	if !(a < 711) { // overflows, or is NaN
		return a + math.Inf(1), 0, 0
	}
	hi, lo, k = expPair(a, 0)
	return hi, lo, k - 1
}

// evenOdd returns e**a/2 + sign·e**-a/2, given e**a/2 as (hi+lo)·2**k.
func evenOdd(hi, lo float64, k int, sign float64) float64 {
	if k > 60 || math.IsInf(hi, 0) || math.IsNaN(hi) { // e**-a is less than half an ulp
		return scale(hi+lo, k)
	}
	hi, lo = scale(hi, k), scale(lo, k)
	s, e := fastTwoSum(hi, sign*0.25/(hi+lo))
	return s + (e + lo)
}

// Asinh returns the inverse hyperbolic sine of x. Its error is under 1.1 ulp.
//
// Special cases are those of [math.Asinh]: ±0, ±Inf and NaN are returned as
// they are.
func Asinh(x float64) float64 {
	a := math.Abs(x)
	var hi, lo float64
	switch {
	case !(a <= math.MaxFloat64) || a < 0x1p-28:
		return x
	case a > 0x1p28: // log(2a), near enough
		m, k := reduceLog(a)
		hi, lo = logPair(m-1, 0, k+1)
	default:
		// log(1 + (a + a²/(1+√(1+a²)))), the sum in two parts.
		z := float64(a * a)
		w := math.Sqrt(1 + z)
		u, ul := fastTwoSum(a, z/(1+w))
		hi, lo = log1pPair(u)
		lo += ul / (1 + u)
	}
	return math.Copysign(hi+lo, x)
}
