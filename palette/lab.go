package palette

import (
	"math"

	"example.com/fircone/internal/elem"
)

// A cielab is a color in CIE 1976 L*a*b*, relative to the white below.
type cielab struct{ L, A, B float64 }

// chroma returns C*ab = √(a*² + b*²).
func (l cielab) chroma() float64 { return math.Sqrt(float64(l.A*l.A) + float64(l.B*l.B)) }

// The white point of sRGB, relative to Y = 1.
//
// Source: IEC 61966-2-1; CSS Color Module Level 4, section 10.
const (
	whiteX = 0.3127 / 0.3290
	whiteZ = (1 - 0.3127 - 0.3290) / 0.3290
)

// fromRGB takes linear sRGB to CIE XYZ with the white above.
//
// Source: CSS Color Module Level 4, section 18 (the matrix lin_sRGB_to_XYZ, as fractions).
var fromRGB = matrix{
	{506752.0 / 1228815, 87881.0 / 245763, 12673.0 / 70218},
	{87098.0 / 409605, 175762.0 / 245763, 12673.0 / 175545},
	{7918.0 / 409605, 87881.0 / 737289, 1001167.0 / 1053270},
}

// overWhite is the first and the last column of fromRGB, relative to the white.
var overWhite = [3][2]float64{
	{fromRGB[0][0] / whiteX, fromRGB[0][2] / whiteX},
	{fromRGB[1][0], fromRGB[1][2]},
	{fromRGB[2][0] / whiteZ, fromRGB[2][2] / whiteZ},
}

// light returns the linear light of c.
func (c Color) light() vector { return vector{linear[c[0]], linear[c[1]], linear[c[2]]} }

// daylight returns the L*a*b* of linear sRGB.
func daylight(v vector) cielab { return toLab(byDaylight(v)) }

// byDaylight returns the X/Xw, Y, Z/Zw of linear sRGB. Each row of fromRGB adds up to the
// white, so X/Xw is g + m0·(r-g) + m2·(b-g): a grey keeps X/Xw = Y = Z/Zw exactly.
func byDaylight(v vector) vector {
	rg, bg := v[0]-v[1], v[2]-v[1]
	row := func(m [2]float64) float64 { return v[1] + float64(m[0]*rg) + float64(m[1]*bg) }
	return vector{row(overWhite[0]), row(overWhite[1]), row(overWhite[2])}
}

// toLab returns the L*a*b* of X/Xw, Y, Z/Zw.
func toLab(v vector) cielab {
	fx, fy, fz := labCurve(v[0]), labCurve(v[1]), labCurve(v[2])
	return cielab{float64(116*fy) - 16, float64(500 * (fx - fy)), float64(200 * (fy - fz))}
}

// labCurve is the function f of CIE L*a*b*, with the constants as fractions (CIE 15).
func labCurve(t float64) float64 {
	if t > 216.0/24389 {
		return elem.Cbrt(t)
	}
	return (float64(24389.0/27*t) + 16) / 116
}
