package elem

import "math"

// Atan2 returns the angle of the point (x, y) from the x axis, in radians from
// -π to π. Its error is under 0.6 ulp.
//
// Special cases are those of [math.Atan2]: NaN if x or y is NaN, and for zeros
// and infinities the limit from their quadrant, signed zeros included.
func Atan2(y, x float64) float64 {
	if math.IsNaN(x) || math.IsNaN(y) {
		return math.NaN()
	}
	a, b := math.Abs(y), math.Abs(x)
	steep := a > b
	if steep {
		a, b = b, a
	}
	hi, lo := octant(a, b)
	if steep { // π/2 less the angle from the y axis
		s, e := fastTwoSum(math.Pi/2, -hi)
		hi, lo = s, e+(pio2Lo-lo)
	}
	if math.Signbit(x) { // π less the angle from the negative x axis
		s, e := fastTwoSum(math.Pi, -hi)
		hi, lo = s, e+(piLo-lo)
	}
	return math.Copysign(hi+lo, y)
}

// octant returns the arc tangent of a/b as hi+lo, for 0 ≤ a ≤ b; 0/0 counts as
// 0 and ∞/∞ as 1.
func octant(a, b float64) (hi, lo float64) {
	switch {
	case a == 0 || math.IsInf(b, 0) && !math.IsInf(a, 0):
		return 0, 0
	case a == b:
		return atan8[8][0], atan8[8][1]
	case a < b*0x1p-60:
		return a / b, 0
	}
	// Scale both so that nothing below overflows or loses digits.
	b, k := exponent(b)
	a = scale(a, -k)
	// The nearest eighth c to a/b; atan(a/b) = atan c + atan t with
	// t = (a - c·b)/(b + c·a), |t| ≤ 1/16, or 1/8 for the last. c·bh and c·ah are
	// exact; so is the numerator, for what remains of a is at most 1/8, in steps of
	// 2**-56 or more. The denominator is in two parts.
	i := int(float64(8*a/b) + 0.5)
	c := float64(i) / 8
	ah, al := split(a)
	bh, bl := split(b)
	n := (a - float64(c*bh)) - float64(c*bl)
	d, dl := fastTwoSum(b, float64(c*ah))
	d, dl = fastTwoSum(d, dl+float64(c*al))
	t := n / d
	p, e := twoProd(t, d)
	tl := (((n - p) - e) - float64(t*dl)) / d
	// The arc tangent's series. The terms left out are under 2**-59 of the sum.
	const (
		c3  = -1.0 / 3
		c5  = 1.0 / 5
		c7  = -1.0 / 7
		c9  = 1.0 / 9
		c11 = -1.0 / 11
		c13 = 1.0 / 13
	)
	z := float64(t * t)
	z2 := float64(z * z)
	r := (c3 + float64(c5*z)) + float64(z2*((c7+float64(c9*z))+float64(z2*(c11+float64(c13*z)))))
	hi, lo = twoSum(atan8[i][0], t)
	return hi, lo + (float64(float64(t*z)*r) + (tl + atan8[i][1]))
}

// atan8 has the arc tangents of 0/8 to 8/8 in two parts each.
// The tests compute them anew.
var atan8 = [...][2]float64{
	{0, 0},
	{0x1.fd5ba9aac2f6ep-04, -0x1.cd37686760c17p-59},
	{0x1.f5b75f92c80ddp-03, 0x1.8ab6e3cf7afbdp-57},
	{0x1.6f61941e4def1p-02, -0x1.c63aae6f6e918p-56},
	{0x1.dac670561bb4fp-02, 0x1.a2b7f222f65e2p-56},
	{0x1.1e00babdefeb4p-01, -0x1.928df287a668fp-58},
	{0x1.4978fa3269ee1p-01, 0x1.2419a87f2a458p-56},
	{0x1.700a7c5784634p-01, -0x1.8c34d25aadef6p-56},
	{0x1.921fb54442d18p-01, 0x1.1a62633145c07p-55},
}
