package palette

import (
	"testing"

	"example.com/fircone/internal/elem"
)

// The tables of view.go are derived here, from published figures, with the same
// operations on every machine; so they are equal to the bit.
func TestViewsDerived(t *testing.T) {
	if got := deriveWarmLight(); got != warmLight {
		t.Errorf("warm light: %v, want %v", warmLight, got)
	}
	if got := deriveWarmRGB(); got != warmRGB {
		t.Errorf("warm light in sRGB: %v, want %v", warmRGB, got)
	}
	for i, got := range [...]dichromat{newDichromat(0, nm475, nm575), newDichromat(1, nm475, nm575), newDichromat(2, nm485, nm660)} {
		if got != dichromats[i] {
			t.Errorf("dichromat %d: %v, want %v", i, dichromats[i], got)
		}
	}
}

// cat16 takes XYZ to the sharpened cone responses of CAT16.
//
// Source: Li et al. 2017, as View.Lab names it.
var cat16 = matrix{
	{0.401288, 0.650173, -0.051461},
	{-0.250268, 1.204414, 0.045854},
	{-0.002079, 0.048952, 0.953127},
}

// deriveWarmLight returns what takes linear sRGB by daylight to X/Xw, Y, Z/Zw under illuminant
// A. The whites are D65 and A by its chromaticity, x = 0.44757, y = 0.40745.
//
// Source: CIE 15 (illuminant A).
func deriveWarmLight() matrix {
	d65 := vector{whiteX, 1, whiteZ}
	a := vector{0.44757 / 0.40745, 1, (1 - 0.44757 - 0.40745) / 0.40745}
	degree := float64(0.9 * (1 - elem.Exp(-(4.0+42)/92)/3.6))
	seen := vonKries(cat16, d65, a, 1-degree).times(fromRGB)
	return matrix{seen[0].scale(1 / whiteX), seen[1], seen[2].scale(1 / whiteZ)}
}

// deriveWarmRGB returns what takes linear sRGB by daylight to the linear sRGB of what is seen by
// warm light: the same, with the XYZ taken back by the inverse of fromRGB.
func deriveWarmRGB() matrix {
	w := deriveWarmLight()
	return fromRGB.inverse().times(matrix{w[0].scale(whiteX), w[1], w[2].scale(whiteZ)})
}

// vonKries returns the matrix on XYZ that scales each response under the sharpening
// matrix m by the ratio of the whites, to over from, in the part that degree says.
func vonKries(m matrix, from, to vector, degree float64) matrix {
	w, x := m.apply(from), m.apply(to)
	var scaled matrix
	for i := range m {
		scaled[i] = m[i].scale(float64(degree*(x[i]/w[i])) + 1 - degree)
	}
	return m.inverse().times(scaled)
}

// juddVos takes linear sRGB to the XYZ of Judd as Vos amended it, in which the cones
// are given.
//
// Source: F. Viénot, H. Brettel and J. D. Mollon, "Digital video colourmaps for checking
// the legibility of displays by dichromats", Color Research and Application 24(4),
// 1999, 243-252, for the primaries of ITU-R BT.709, which are those of sRGB.
var juddVos = matrix{
	{0.409568, 0.355041, 0.179167},
	{0.213389, 0.706743, 0.079868},
	{0.0186297, 0.114620, 0.912367},
}

// toCones takes that XYZ to the long-, middle- and short-wave cones.
//
// Source: V. C. Smith and J. Pokorny, Vision Research 15, 1975, 161-171, as quoted
// by Viénot, Brettel and Mollon 1999.
var toCones = matrix{
	{0.15514, 0.54312, -0.03286},
	{-0.15514, 0.45684, 0.03286},
	{0, 0, 0.01608},
}

// The lights that a dichromat sees as everybody does, in that XYZ.
//
// Source: J. J. Vos, "Colorimetric and photometric properties of a 2° fundamental
// observer", Color Research and Application 3, 1978, 125-128, as quoted in libDaltonLens.
var (
	nm475 = vector{0.13287, 0.11284, 0.94220}
	nm485 = vector{0.05699, 0.16987, 0.58640}
	nm575 = vector{0.84394, 0.91558, 0.00197}
	nm660 = vector{0.16161, 0.06100, 0.00001}
)

// newDichromat returns the dichromat without the given cones, who sees white and the
// two lights as everybody does.
func newDichromat(cone int, light1, light2 vector) dichromat {
	cones := toCones.times(juddVos)
	rows := cones.transpose() // of linear sRGB: toRGB(f)·rgb is f·(cones of rgb)
	toRGB := func(f vector) vector { return rows.apply(f) }
	white := cones.apply(vector{1, 1, 1})

	// Along the line of confusion the two other cones do not change.
	d := dichromat{confusion: cones[(cone+1)%3].cross(cones[(cone+2)%3])}
	var axis vector
	axis[cone] = 1
	half := white.cross(axis)
	d.half = toRGB(half)
	lights := [2]vector{toCones.apply(light1), toCones.apply(light2)}
	if half.dot(lights[0]) < 0 {
		lights[0], lights[1] = lights[1], lights[0]
	}
	for i, light := range lights {
		plane := toRGB(white.cross(light)) // the plane through black, white and the light
		d.correction[i] = plane.scale(-1 / plane.dot(d.confusion))
	}
	return d
}

func (v vector) cross(w vector) vector {
	return vector{
		float64(v[1]*w[2]) - float64(v[2]*w[1]),
		float64(v[2]*w[0]) - float64(v[0]*w[2]),
		float64(v[0]*w[1]) - float64(v[1]*w[0]),
	}
}

func (v vector) scale(f float64) vector {
	return vector{float64(f * v[0]), float64(f * v[1]), float64(f * v[2])}
}

func (m matrix) transpose() matrix {
	return matrix{
		{m[0][0], m[1][0], m[2][0]},
		{m[0][1], m[1][1], m[2][1]},
		{m[0][2], m[1][2], m[2][2]},
	}
}

// times returns m·n.
func (m matrix) times(n matrix) matrix {
	t := n.transpose()
	return matrix{t.apply(m[0]), t.apply(m[1]), t.apply(m[2])}
}

// inverse returns the inverse of m by its cofactors.
func (m matrix) inverse() matrix {
	cofactors := matrix{m[1].cross(m[2]), m[2].cross(m[0]), m[0].cross(m[1])}
	f := 1 / m[0].dot(cofactors[0])
	return matrix{cofactors[0].scale(f), cofactors[1].scale(f), cofactors[2].scale(f)}.transpose()
}
