package elem

import "math"

// Pow returns x**y. Its error is under 1 ulp.
//
// Special cases are those of [math.Pow], all twenty of them.
func Pow(x, y float64) float64 {
	switch {
	case y == 0 || x == 1:
		return 1
	case math.IsNaN(x) || math.IsNaN(y):
		return math.NaN()
	case x == 0:
		return powZero(x, y)
	case math.IsInf(y, 0):
		switch {
		case x == -1:
			return 1
		case (math.Abs(x) < 1) == (y > 0):
			return 0
		}
		return math.Inf(1)
	case math.IsInf(x, 1):
		if y < 0 {
			return 0
		}
		return x
	case math.IsInf(x, -1):
		return powZero(math.Copysign(0, -1), -y)
	}
	sign := 1.0
	if x < 0 {
		if y != math.Floor(y) {
			return math.NaN()
		}
		if isOdd(y) {
			sign = -1
		}
		x = -x
		if x == 1 {
			return sign
		}
	}
	// |log x| is at least 2**-53, so such a y overflows or underflows.
	if math.Abs(y) > 0x1p64 {
		if (x > 1) == (y > 0) {
			return math.Inf(int(sign))
		}
		return math.Copysign(0, sign)
	}
	hi, lo := logWide(x)
	p, e := twoProd(hi, y)
	e += float64(lo * y)
	p, e = fastTwoSum(p, e)
	switch {
	case p > maxExp:
		return math.Inf(int(sign))
	case p < minExp:
		return math.Copysign(0, sign)
	}
	h, l, k := expPair(p, e)
	return scale(math.Copysign(h+l, sign), k)
}

// powZero is Pow for x = ±0 and finite or infinite y ≠ 0.
func powZero(x, y float64) float64 {
	r := 0.0
	if y < 0 {
		r = math.Inf(1)
	}
	if isOdd(y) {
		return math.Copysign(r, x)
	}
	return r
}

// isOdd reports whether y is an odd integer.
func isOdd(y float64) bool {
	y = math.Abs(y)
	return y < 0x1p53 && y == math.Floor(y) && int64(y)&1 == 1
}

// logWide returns the logarithm of x as hi+lo with a relative error under
// 2**-63, for finite x > 0.
func logWide(x float64) (hi, lo float64) {
	// As logPair, but with s = f/(2+f), its cube and the first coefficient of
	// the series in two parts each.
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
		c11 = 2.0 / 23
		c12 = 2.0 / 25
	)
	m, k := reduceLog(x)
	f := m - 1 // exact
	d, dl := fastTwoSum(2, f)
	s := f / d
	p, e := twoProd(s, d)
	sl := (((f - p) - e) - float64(s*dl)) / d
	z, zl := twoProd(s, s)
	zl += float64(2 * s * sl)
	z2 := float64(z * z)
	z4 := float64(z2 * z2)
	a := (c2 + float64(c3*z)) + float64(z2*(c4+float64(c5*z)))
	b := (c6 + float64(c7*z)) + float64(z2*(c8+float64(c9*z)))
	c := c10 + float64(z*(c11+float64(c12*z)))
	q := float64(z * (a + float64(z4*(b+float64(z4*c)))))
	q, ql := fastTwoSum(c1, q)
	ql += twoThirdsLo
	t, tl := mulPair(z, zl, q, ql)
	t, tl = mulPair(t, tl, s, sl) // s·r
	n := float64(k)
	hi, lo = twoSum(float64(n*ln2Hi), 2*s)
	hi, t = twoSum(hi, t)
	lo += t
	lo += (float64(2*sl) + tl) + float64(n*ln2Lo)
	return fastTwoSum(hi, lo)
}

// mulPair returns the product of two numbers of two parts each.
func mulPair(a, al, b, bl float64) (hi, lo float64) {
	hi, lo = twoProd(a, b)
	return hi, lo + (float64(a*bl) + float64(al*b))
}

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
