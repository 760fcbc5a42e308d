package palette

import (
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// A View is who looks at a palette, and by what light.
type View uint8

// The views in which a palette is read. Cool-white lights, near 6500 K, count as daylight.
const (
	Daylight   View = iota // usual color vision, by daylight (D65)
	Protan                 // red-blind, by daylight
	Deutan                 // green-blind, by daylight
	Tritan                 // blue-blind, by daylight
	WarmLight              // usual color vision, by warm-white tree lights (illuminant A)
	WarmProtan             // red-blind, by warm-white tree lights
	WarmDeutan             // green-blind, by warm-white tree lights
	WarmTritan             // blue-blind, by warm-white tree lights

	views = WarmTritan + 1 // how many there are
)

var viewNames = [...]string{"daylight", "protan", "deutan", "tritan", "warm light", "warm protan", "warm deutan", "warm tritan"}

// String returns the name of v: daylight, protan, deutan, tritan, warm light, warm protan, warm
// deutan or warm tritan.
func (v View) String() string {
	if int(v) < len(viewNames) {
		return viewNames[v]
	}
	return "View(" + strconv.Itoa(int(v)) + ")"
}

// MarshalText returns the text of String.
func (v View) MarshalText() ([]byte, error) {
	if err := v.check("View.MarshalText"); err != nil {
		return nil, err
	}
	return []byte(v.String()), nil
}

// UnmarshalText reads what String returns; case and space around it do not count.
func (v *View) UnmarshalText(text []byte) error {
	i := slices.Index(viewNames[:], strings.ToLower(strings.TrimSpace(string(text))))
	if i < 0 || len(text) > maxColorText {
		return refuse("View.UnmarshalText", "text", string(text), oneOf(viewNames[:]), units.ErrName)
	}
	*v = View(i)
	return nil
}

// Lab returns L*, a* and b* (CIE 1976, D65) of the daylight color that looks to usual eyes as c
// looks in view v. L* is 0 for black to 100 for white; a* runs from green to red, b* from blue to
// yellow.
//
// WarmLight is CIE standard illuminant A, 2856 K: incandescent lights, and nearly the 2700 K of
// warm-white LED strings. It scales the three cone responses of CAT16, and the eye adapts to
// most of that:
//
//	R' = R·(D + (1 - D)·Rw(A)/Rw(D65))
//	D  = F·(1 - exp(-(LA + 42)/92)/3.6) = 0.748
//
// for a dim room, F = 0.9, LA = 4 cd/m².
//
// For Protan, Deutan and Tritan a color moves along its line of confusion to where that viewer
// and everybody else agree. The warm ones do that to the color of WarmLight.
//
// A milder form of color blindness can be worse: #3c90f6 and #1d96c0 differ by 13.0 by
// daylight, 10.0 in Protan, but 5.5 at six tenths toward Protan, in linear light.
//
// Sources: C. Li et al., "Comprehensive color solutions: CAM16, CAT16, and CAM16-UCS", Color Research
// and Application 42(6), 2017; H. Brettel, F. Viénot and J. D. Mollon, "Computerized simulation of
// color appearance for dichromats", J. Opt. Soc. Am. A 14(10), 1997.
func (v View) Lab(c Color) (lab [3]float64, err error) {
	if err := v.check("View.Lab"); err != nil {
		return lab, err
	}
	l := v.lab(c)
	return [3]float64{l.L, l.A, l.B}, nil
}

// check reports a view that is none.
func (v View) check(fn string) error {
	if int(v) >= len(viewNames) {
		return refuse(fn, "view", v.String(), oneOf(viewNames[:]), units.ErrName)
	}
	return nil
}

// lab is Lab for a view that is known to be one.
func (v View) lab(c Color) cielab { return toLab(v.stimulus(c)) }

// stimulus returns the X/Xw, Y, Z/Zw of c as it is seen.
func (v View) stimulus(c Color) vector {
	switch v {
	case Daylight:
		return byDaylight(c.light())
	case WarmLight:
		return warmLight.apply(c.light())
	case Protan, Deutan, Tritan:
		return byDaylight(dichromats[v-Protan].see(c.light()))
	}
	return byDaylight(dichromats[v-WarmProtan].see(warmRGB.apply(c.light())))
}

// warmLight takes linear sRGB by daylight to X/Xw, Y, Z/Zw under illuminant A. The
// tests derive it anew, from the sources that View.Lab names.
var warmLight = matrix{
	{0.4508971089586433, 0.41649283311319135, 0.1717956587642016},
	{0.2139472447201428, 0.7127815529999831, 0.07327120227987384},
	{0.013350345955055536, 0.08653664615639445, 0.7306951193854131},
}

// warmRGB takes linear sRGB by daylight to the linear sRGB that warmLight comes to, which may
// leave 0 to 1. The tests derive it anew.
var warmRGB = matrix{
	{1.052774699206874, 0.1401549996018915, 0.019774199796881664},
	{-0.013414689731013084, 0.9573883925546269, 0.01226045456018536},
	{-0.004431978573874644, -0.023756802169223365, 0.835243234726024},
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

// The dichromats without long-, middle- and short-wave cones, who see white and two lights as everybody does. The
// tests derive them anew, from the sources that View.Lab names.
var dichromats = [...]dichromat{
	{
		confusion: vector{0.003912653825934231, -0.000495387900837075, -1.7657593695367537e-05},
		half:      vector{0.0004777303071417076, 0.003930311419629599, -0.004408041726771306},
		correction: [2]vector{
			{-217.29412892881982, 305.5414351371594, -88.24730620833988},
			{-218.34290350463394, 296.91311361282084, -78.57021010818677},
		},
	},
	{
		confusion: vector{-0.006308262011055852, 0.002611162563498744, -0.0001992295033038885},
		half:      vector{-0.0028103920668026325, -0.006109032507751964, 0.008919424574554595},
		correction: [2]vector{
			{100.69745135583987, -136.93320614060372, 36.235754784763785},
			{99.39588569808772, -139.7624579763547, 40.36657227826712},
		},
	},
	{
		confusion: vector{0.005641989934091136, -0.005491859729755547, 0.03352274792083001},
		half:      vector{0.039014607650585564, -0.027880757986738863, -0.01113384966384668},
		correction: [2]vector{
			{2.263858618955981, 24.013618543069825, -26.27747716202581},
			{-11.205044287987246, 33.638813948302406, -22.43376966031516},
		},
	},
}
