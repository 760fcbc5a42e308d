package palette

import (
	"strconv"

	"example.com/fircone/internal/elem"
)

// A View is who looks at a palette and by what light. The zero value is Daylight.
// Red-weak and green-weak are the mild forms of Protan and Deutan; see [View.Lab].
type View uint8

// The views in which a palette is read.
const (
	Daylight  View = iota // usual color vision, by daylight (D65)
	WarmLight             // usual color vision, by warm-white tree lights (illuminant A)
	Protan                // red-blind, the strong form of red-weak: by daylight, without the long-wave cones
	Deutan                // green-blind, the strong form of green-weak: by daylight, without the middle-wave cones
	Tritan                // blue-blind: by daylight, without the short-wave cones
)

var viewNames = [...]string{"daylight", "warm light", "protan", "deutan", "tritan"}

// String returns the name of v: daylight, warm light, protan, deutan or tritan.
func (v View) String() string {
	if int(v) < len(viewNames) {
		return viewNames[v]
	}
	return "View(" + strconv.Itoa(int(v)) + ")"
}

// MarshalText returns v.String(), or an [Error] wrapping [ErrRange] if v is not one
// of the views above.
func (v View) MarshalText() ([]byte, error) {
	if int(v) >= len(viewNames) {
		return nil, rangeError("View.MarshalText", "view", int(v), "Daylight to Tritan")
	}
	return []byte(v.String()), nil
}

// UnmarshalText reads the name of a view, daylight, warm light, protan, deutan or tritan,
// with upper case and space around it as [ParseFinish] has them. It returns an [Error]
// wrapping [ErrName] for anything else, and leaves v as it was.
func (v *View) UnmarshalText(text []byte) error {
	i, err := parseWord("View.UnmarshalText", "view", string(text), viewNames[:])
	if err != nil {
		return err
	}
	*v = View(i)
	return nil
}

// Lab returns the daylight color that looks to usual eyes as c looks in view v. It
// returns an [Error] wrapping [ErrRange] if v is not one of the views above.
//
// Daylight is c.Lab().
//
// WarmLight is CIE standard illuminant A, 2856 K: the lamp that miniature
// incandescent lights are, and near the 2700 K that warm-white LED strings are sold
// as. The light is taken to scale the three sharpened cone responses of CAT16, the
// eye to take back all but a part of that, D being the degree of adaptation:
//
//	R' = R·(D + (1 - D)·Rw(A)/Rw(D65))
//	D  = F·(1 - exp(-(LA + 42)/92)/3.6) = 0.748
//
// for a room lit by the tree, F = 0.9 (dim surround), LA = 4 cd/m². White comes out
// a little yellow, and blues duller.
//
// Protan, Deutan and Tritan are the dichromats of Brettel, Viénot and Mollon: each
// color moves along its line of confusion to where a dichromat and everybody else
// agree, greys and, by kind, the hues of 475 and 575 or 485 and 660 nm. It is the
// strong form of the deficiency, and most of those who have it have a milder one,
// somewhere between daylight and this. It is not covered, and need not fall between
// the two in difference either: a pair that is near the threshold in a view may be one
// color to them. #3c90f6 and #1d96c0 differ by 13.0 by daylight and 10.0 in Protan, and
// by 5.5 if each color goes six tenths of the way, in linear light, from one to the other.
//
// Limits: one color code cannot tell two dyes that match by day and part by
// lamplight, and a simulation is of the average eye.
//
// Sources: C. Li et al., "Comprehensive color solutions: CAM16, CAT16, and
// CAM16-UCS", Color Research and Application 42(6), 2017, 703-718 (also CIE 248);
// H. Brettel, F. Viénot and J. D. Mollon, "Computerized simulation of color
// appearance for dichromats", J. Opt. Soc. Am. A 14(10), 1997, 2647-2655.
func (v View) Lab(c Color) (Lab, error) {
	if int(v) >= len(viewNames) {
		return Lab{}, rangeError("View.Lab", "view", int(v), "Daylight to Tritan")
	}
	return v.lab(c), nil
}

// lab is Lab for a view that is known to be one.
func (v View) lab(c Color) Lab {
	switch v {
	case WarmLight:
		return toLab(warmLight.apply(c.light()))
	case Protan, Deutan, Tritan:
		return daylight(dichromats[v-Protan].see(c.light()))
	}
	return c.Lab()
}

// cat16 takes XYZ to the sharpened cone responses of CAT16.
//
// Source: Li et al. 2017, as View.Lab names it.
var cat16 = matrix{
	{0.401288, 0.650173, -0.051461},
	{-0.250268, 1.204414, 0.045854},
	{-0.002079, 0.048952, 0.953127},
}

// warmLight takes linear sRGB by daylight to X/Xw, Y, Z/Zw under illuminant A.
// The whites are D65 as above and A by its chromaticity, x = 0.44757, y = 0.40745.
//
// Source: CIE 15 (illuminant A).
var warmLight = func() matrix {
	d65 := vector{whiteX, 1, whiteZ}
	a := vector{0.44757 / 0.40745, 1, (1 - 0.44757 - 0.40745) / 0.40745}
	degree := float64(0.9 * (1 - elem.Exp(-(4.0+42)/92)/3.6))
	seen := vonKries(cat16, d65, a, 1-degree).times(fromRGB)
	return matrix{seen[0].scale(1 / whiteX), seen[1], seen[2].scale(1 / whiteZ)}
}()

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

// A dichromat is blind to one direction of linear sRGB, the line of confusion.
type dichromat struct {
	confusion  vector    // that direction
	half       vector    // the sign of half·rgb says in which half-plane a color ends
	correction [2]vector // correction·rgb is how far it goes along confusion to get there
}

// see returns what the dichromat sees of linear sRGB v. All the functionals are zero
// for a grey, so that a grey stays exactly as it is.
func (d *dichromat) see(v vector) vector {
	w := vector{v[0] - v[1], 0, v[2] - v[1]}
	i := 0
	if d.half.dot(w) < 0 {
		i = 1
	}
	t := d.correction[i].dot(w)
	for k := range v {
		v[k] += float64(t * d.confusion[k])
	}
	return v
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

var dichromats = [...]dichromat{
	newDichromat(0, nm475, nm575),
	newDichromat(1, nm475, nm575),
	newDichromat(2, nm485, nm660),
}

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
