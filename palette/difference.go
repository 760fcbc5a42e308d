package palette

import (
	"math"

	"example.com/fircone/internal/elem"
)

// Difference returns the color difference ΔE00 of CIEDE2000 between c and d by daylight: 0 for
// equal colors only, 100 from black to white, about 119 for the strongest. It is
//
//	ΔE00 = √((ΔL'/SL)² + (ΔC'/SC)² + (ΔH'/SH)² + RT·(ΔC'/SC)·(ΔH'/SH))
//
// with the differences of lightness L' = L*, chroma C' = √(a'² + b*²) and hue h', the
// angle of (a', b*); C*ab is the chroma in L*a*b*:
//
//	a'  = a*·(1 + G), G = (1 - √(m⁷/(m⁷ + 25⁷)))/2, m the mean of the two C*ab
//	ΔH' = 2·√(C'1·C'2)·sin(Δh'/2)
//
// and with the means L, C and h of the two L', C' and h'
//
//	SL = 1 + 0.015·(L - 50)²/√(20 + (L - 50)²)
//	SC = 1 + 0.045·C
//	SH = 1 + 0.015·C·T
//	T  = 1 - 0.17·cos(h - 30°) + 0.24·cos 2h + 0.32·cos(3h + 6°) - 0.20·cos(4h - 63°)
//	RT = -2·√(C⁷/(C⁷ + 25⁷))·sin(60°·exp(-((h - 275°)/25°)²))
//
// Over about 20 it tells far from near and little more.
//
// Source: G. Sharma, W. Wu and E. N. Dalal, "The CIEDE2000 color-difference formula", Color
// Research and Application 30(1), 2005, 21-30; ISO/CIE 11664-6.
func (c Color) Difference(d Color) float64 {
	return difference(c.point(), d.point(), anyFar)
}

// anyFar is the limit that no difference is over.
const anyFar = math.MaxFloat64

// A point is a color in L*a*b* with its chroma beside it: what difference needs of one color alone.
type point struct {
	l, a, b float64
	chroma  float64
}

func pointOf(l cielab) point { return point{l.L, l.A, l.B, l.chroma()} }

// point returns c as a point, by daylight.
func (c Color) point() point { return pointOf(daylight(c.light())) }

// lightnessTerm returns (ΔL'/SL)².
func lightnessTerm(p, q point) float64 {
	m := (p.l+q.l)/2 - 50
	m2 := float64(m * m)
	sl := 1 + float64(0.015*m2)/math.Sqrt(20+m2)
	t := (p.l - q.l) / sl
	return float64(t * t)
}

// weight7 returns √(c⁷/(c⁷ + 25⁷)).
func weight7(c float64) float64 {
	c2 := float64(c * c)
	c7 := float64(c2 * c2 * c2 * c)
	return math.Sqrt(c7 / (c7 + 6103515625))
}

// Sines and cosines of the angles in the formula, to the nearest float64.
const (
	cos30 = 0.86602540378443864676372317075293618
	sin60 = cos30
	cos6  = 0.99452189536827333692269194498057038
	sin6  = 0.10452846326765347139983415480249812
	cos63 = 0.45399049973954679156040836635787120
	sin63 = 0.89100652418836786235970957141362632
)

// difference is CIEDE2000, with hues kept as directions and not as angles.
//
// The published formula takes two hue angles h1, h2 and asks of their difference
// whether it exceeds 180°. Where the hues are exactly opposite, an angle that is off
// by its last bit answers wrongly, and ΔE00 jumps (pairs 10 and 14 of the published
// ones). Here that question is the sign of a cross product, which is exact enough to
// be zero when it should be, and the tie then goes as the paper's angles have it.
//
// Where the difference is over the limit it may return anyFar for it, which is quicker.
func difference(p, q point, limit float64) float64 { return weighed(p, q, limit, 1) }

// weighed is difference with (ΔL'/SL)² times light: 1, or 1/4 for kL = 2.
func weighed(p, q point, limit, light float64) float64 {
	const slack = 1 + 1e-9 // for rounding, so that nothing at the limit is lost
	limit = float64(limit * limit * slack)
	// The other terms are u² + v² + RT·u·v with |RT| < 2: never negative.
	sum := float64(lightnessTerm(p, q) * light)
	if sum > limit {
		return anyFar
	}
	g := 1 + (1-weight7((p.chroma+q.chroma)/2))/2
	a1, a2 := float64(g*p.a), float64(g*q.a)
	c1 := math.Sqrt(float64(a1*a1) + float64(p.b*p.b))
	c2 := math.Sqrt(float64(a2*a2) + float64(q.b*q.b))

	cm := (c1 + c2) / 2
	u := (c2 - c1) / (1 + float64(0.045*cm)) // ΔC'/SC
	sum += float64(u * u)
	if min(c1, c2) < 1e-100 {
		return math.Sqrt(sum) // a grey has no hue to differ in
	}

	// sin and cos of h2-h1, times c1·c2.
	cross := float64(a1*q.b) - float64(a2*p.b)
	dot := float64(a1*a2) + float64(p.b*q.b)
	// The turn from h1 to h2 is to the left (+1) or to the right (-1) by the
	// shorter way; from opposite to opposite, towards the one in [180°, 360°).
	turn := 1.0
	if cross < 0 || cross == 0 && !(p.b > 0 || p.b == 0 && a1 > 0) {
		turn = -1
	}
	// ΔH' = 2·√(c1·c2)·sin(Δh/2), so ΔH'² = 2·(c1·c2 - dot), and
	// c1·c2 - dot = cross²/(c1·c2 + dot) where that does not cancel.
	cc := float64(c1 * c2)
	half := cc - dot
	if dot > 0 {
		half = float64(cross*cross) / (cc + dot)
	}
	dh := float64(turn * math.Sqrt(2*half))

	// The mean hue bisects the two directions: along their sum, or, where
	// that is short, square to their difference.
	x1, y1 := a1/c1, p.b/c1
	x2, y2 := a2/c2, q.b/c2
	mx, my := x1+x2, y1+y2
	if dot < 0 {
		mx, my = float64(turn*(y2-y1)), float64(turn*(x1-x2))
	}
	m := math.Sqrt(float64(mx*mx) + float64(my*my))
	c, s := mx/m, my/m
	// Twice, three and four times the mean hue.
	cos2, sin2 := float64(c*c)-float64(s*s), 2*float64(s*c)
	cos3, sin3 := float64(c*cos2)-float64(s*sin2), float64(s*cos2)+float64(c*sin2)
	cos4, sin4 := float64(cos2*cos2)-float64(sin2*sin2), 2*float64(sin2*cos2)
	t := 1 - float64(0.17*(float64(c*cos30)+float64(s*0.5))) +
		float64(0.24*cos2) +
		float64(0.32*(float64(cos3*cos6)-float64(sin3*sin6))) -
		float64(0.20*(float64(cos4*cos63)+float64(sin4*sin63)))
	v := dh / (1 + float64(0.015*float64(cm*t))) // ΔH'/SH

	sum += float64(v * v)
	// RT = -sin(2Δθ)·RC, Δθ = 30°·exp(-e²), RC = 2·√(cm⁷/(cm⁷ + 25⁷)):
	// between -sin 60°·RC and 0.
	rc := 2 * weight7(cm)
	if sum-float64(sin60*rc*max(float64(u*v), 0)) > limit {
		return anyFar
	}
	hue := float64(elem.Atan2(s, c) * (180 / math.Pi))
	if hue < 0 {
		hue += 360
	}
	e := (hue - 275) / 25
	rt := -float64(elem.Sin(float64(math.Pi/3*elem.Exp(-float64(e*e)))) * rc)
	return math.Sqrt(sum + float64(float64(rt*u)*v))
}
