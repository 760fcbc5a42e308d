package palette

import (
	"math"

	"example.com/fircone/internal/elem"
)

// A Lab is a color in CIE 1976 L*a*b*, relative to the white D65: L is lightness,
// 0 for black to 100 for white; A runs from green (negative) to red, B from blue
// (negative) to yellow. The zero value is black, and == is equality.
//
// The white is x = 0.3127, y = 0.3290, as the sRGB standard has it. Tables for the rounded white
// 0.95047, 1, 1.08883 differ by up to 0.008 (0.014 where they mix the two); CSS lab() is relative to D50.
type Lab struct {
	L float64 `json:"l"` // L*
	A float64 `json:"a"` // a*
	B float64 `json:"b"` // b*
}

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

// Lab returns c in CIE L*a*b* under D65; see [Lab] for the white.
// A grey has A and B of exactly zero.
//
// Accuracy: within 1e-12 of the exact value. The bits are the same on every architecture.
//
// Source: IEC 61966-2-1 and CSS Color Module Level 4 (sRGB to XYZ); CIE 15 (XYZ to L*a*b*).
func (c Color) Lab() Lab { return daylight(c.light()) }

// light returns the linear light of c.
func (c Color) light() vector { return vector{linear[c.R], linear[c.G], linear[c.B]} }

// daylight returns the L*a*b* of linear sRGB. Each row of fromRGB adds up to the
// white, so X/Xw is g + m0·(r-g) + m2·(b-g): a grey keeps X/Xw = Y = Z/Zw exactly.
func daylight(v vector) Lab {
	rg, bg := v[0]-v[1], v[2]-v[1]
	row := func(m vector, white float64) float64 {
		return v[1] + float64(float64(m[0]/white)*rg) + float64(float64(m[2]/white)*bg)
	}
	return toLab(vector{row(fromRGB[0], whiteX), row(fromRGB[1], 1), row(fromRGB[2], whiteZ)})
}

// toLab returns the L*a*b* of X/Xw, Y, Z/Zw.
func toLab(v vector) Lab {
	fx, fy, fz := labCurve(v[0]), labCurve(v[1]), labCurve(v[2])
	return Lab{float64(116*fy) - 16, float64(500 * (fx - fy)), float64(200 * (fy - fz))}
}

// labCurve is the function f of CIE L*a*b*, with the constants as fractions (CIE 15).
func labCurve(t float64) float64 {
	if t > 216.0/24389 {
		return elem.Cbrt(t)
	}
	return (float64(24389.0/27*t) + 16) / 116
}

// Chroma returns C*ab = √(A² + B²): 0 for a grey, about 30 for a soft color, over
// 100 for the strongest of sRGB.
//
// Source: CIE 15.
func (l Lab) Chroma() float64 { return math.Sqrt(float64(l.A*l.A) + float64(l.B*l.B)) }

// Hue returns the hue angle hab in degrees, from 0 up to but not 360: pinkish red is
// near 0, yellow near 90, green near 150, blue near 280. A grey has none, and
// Hue returns 0.
//
// Source: CIE 15.
func (l Lab) Hue() float64 {
	h := float64(elem.Atan2(l.B, l.A) * (180 / math.Pi))
	if h < 0 {
		h += 360
	}
	if h >= 360 { // -1e-300 + 360 is 360
		h = 0
	}
	return h
}
