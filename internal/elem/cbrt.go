package elem

import "math"

// Cbrt returns the cube root of x. Its error is under 0.51 ulp.
//
// Special cases are those of [math.Cbrt]: ±0, ±Inf and NaN are returned as they
// are.
func Cbrt(x float64) float64 {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return x
	}
	m, k := exponent(x)
	// x = m·2**k with k a multiple of 3 and 1 ≤ |m| < 8.
	j := (k + 3*400) / 3
	k -= 3 * (j - 400)
	m = scale(m, k)
	a := math.Abs(m)
	// A line through (1, 1) and (8, 2), a little raised, is within 8 %; Halley's
	// rule then triples the digits each time.
	y := 0.93 + float64(a/7)
	for range 3 {
		c := float64(y * float64(y*y))
		y = float64(y * ((c + 2*a) / (float64(2*c) + a)))
	}
	// One step of Newton's rule with the remainder a - y³ in two parts.
	s, sl := twoProd(y, y)
	c, cl := twoProd(s, y)
	cl += float64(sl * y)
	y += ((a - c) - cl) / float64(3*s)
	return scale(math.Copysign(y, x), j-400)
}
