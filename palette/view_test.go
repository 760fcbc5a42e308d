package palette

import (
	"math"
	"strings"
	"testing"

	"example.com/fircone/units"

	"github.com/lucasb-eyer/go-colorful"
	"pgregory.net/rapid"
)

func near(a, b matrix, tolerance float64) bool {
	for i := range a {
		for j := range a[i] {
			if !(math.Abs(a[i][j]-b[i][j]) <= tolerance) {
				return false
			}
		}
	}
	return true
}

var identity = matrix{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}

func TestMatrix(t *testing.T) {
	m := matrix{{2, 1, 0}, {0, 3, 1}, {1, 0, 4}} // determinant 25
	want := matrix{{12.0 / 25, -4.0 / 25, 1.0 / 25}, {1.0 / 25, 8.0 / 25, -2.0 / 25}, {-3.0 / 25, 1.0 / 25, 6.0 / 25}}
	if got := m.inverse(); !near(got, want, 1e-16) {
		t.Errorf("inverse %v, want %v", got, want)
	}
	if got := m.times(m); got != (matrix{{4, 5, 1}, {1, 9, 7}, {6, 1, 16}}) {
		t.Errorf("square %v", got)
	}
	if got := m.apply(vector{1, 2, 3}); got != (vector{4, 9, 13}) {
		t.Errorf("m·v = %v", got)
	}
	// The published inverse of CAT16, as color libraries carry it (8 decimals, some of them cut).
	published := matrix{
		{1.86206786, -1.01125463, 0.14918677},
		{0.38752654, 0.62144744, -0.00897398},
		{-0.01584150, -0.03412294, 1.04996444},
	}
	if got := cat16.inverse(); !near(got, published, 1e-8) {
		t.Errorf("inverse of CAT16 %v, published %v", got, published)
	}
}

// The worked example of C. Li, M. R. Luo, B. Rigg and R. W. G. Hunt, "CMC 2000
// chromatic adaptation transform: CMCCAT2000", Color Research and Application 27(1),
// 2002, 49-58: a sample under illuminant A as it looks under D65, in two decimals.
// It is the same construction with another matrix and another rule for D.
func TestVonKriesPublished(t *testing.T) {
	m := matrix{{0.7982, 0.3389, -0.1371}, {-0.5918, 1.5512, 0.0406}, {0.0008, 0.0239, 0.9753}}
	degree := 0.08*math.Log10(0.5*(200+200)) + 0.76
	got := vonKries(m, vector{111.15, 100, 35.20}, vector{94.81, 100, 107.30}, degree).apply(vector{22.48, 22.74, 8.54})
	for i, want := range (vector{19.53, 23.07, 24.97}) {
		if math.Abs(got[i]-want) > 0.005 {
			t.Errorf("component %d: %v, published %v", i, got[i], want)
		}
	}
}

func TestVonKries(t *testing.T) {
	d65, a := vector{whiteX, 1, whiteZ}, vector{0.44757 / 0.40745, 1, 0.14498 / 0.40745}
	if got := vonKries(cat16, d65, a, 0); !near(got, identity, 1e-15) {
		t.Errorf("degree 0 is %v, want the identity", got)
	}
	got := vonKries(cat16, d65, a, 1).apply(d65)
	for i := range got {
		if math.Abs(got[i]-a[i]) > 1e-15 {
			t.Errorf("degree 1 takes white to %v, want %v", got, a)
		}
	}
	// CIE 15 gives illuminant A as 109.850, 100, 35.585.
	if math.Abs(a[0]-1.09850) > 5e-5 || math.Abs(a[2]-0.35585) > 5e-5 {
		t.Errorf("illuminant A is %v", a)
	}
}

// White by warm light is what is left of the lamp's own color. By hand: of Y = 100,
// CAT16 gives D65 97.554, 101.648, 108.499 and A 107.266, 94.582, 38.581; D =
// 0.9·(1 - exp(-0.5)/3.6) = 0.748367; so the responses scale by 1.02505, 0.98251 and
// 0.83784, and white comes back as X 98.775, Y 100.001, Z 90.455: yellowish.
func TestWarmLight(t *testing.T) {
	x := warmLight.apply(vector{1, 1, 1})
	for i, want := range (vector{98.775, 100.001, 90.455}) {
		if got := 100 * x[i] * (vector{whiteX, 1, whiteZ})[i]; math.Abs(got-want) > 0.01 {
			t.Errorf("white by warm light: component %d is %v, want %v", i, got, want)
		}
	}
	if l := WarmLight.lab(Color{255, 255, 255}); l.B < 5 || l.B > 15 || math.Abs(l.A) > 8 {
		t.Errorf("white by warm light is %v, want a little yellow", l)
	}
	blue := Color{0, 0, 255}
	if warm, day := WarmLight.lab(blue), blue.lab(); warm.chroma() >= 0.95*day.chroma() {
		t.Errorf("blue by warm light is %v, want it duller than %v", warm, day)
	}
	if b := WarmLight.lab(Color{}); b != (cielab{}) {
		t.Errorf("black by warm light is %v", b)
	}
}

// The matrices that the public domain library libDaltonLens publishes for Brettel,
// Viénot and Mollon's model with Smith and Pokorny's cones, sRGB and white as the
// neutral, in five decimals: for each kind the two half-planes and the plane between.
var published = [3]struct {
	plane [2]matrix
	half  vector
}{
	{
		[2]matrix{
			{{0.14980, 1.19548, -0.34528}, {0.10764, 0.84864, 0.04372}, {0.00384, -0.00540, 1.00156}},
			{{0.14570, 1.16172, -0.30742}, {0.10816, 0.85291, 0.03892}, {0.00386, -0.00524, 1.00139}},
		},
		vector{0.00048, 0.00393, -0.00441},
	},
	{
		[2]matrix{
			{{0.36477, 0.86381, -0.22858}, {0.26294, 0.64245, 0.09462}, {-0.02006, 0.02728, 0.99278}},
			{{0.37298, 0.88166, -0.25464}, {0.25954, 0.63506, 0.10540}, {-0.01980, 0.02784, 0.99196}},
		},
		vector{-0.00281, -0.00611, 0.00892},
	},
	{
		[2]matrix{
			{{1.01277, 0.13548, -0.14826}, {-0.01243, 0.86812, 0.14431}, {0.07589, 0.80500, 0.11911}},
			{{0.93678, 0.18979, -0.12657}, {0.06154, 0.81526, 0.12320}, {-0.37562, 1.12767, 0.24796}},
		},
		vector{0.03901, -0.02788, -0.01113},
	},
}

func TestDichromatsPublished(t *testing.T) {
	for i, want := range published {
		d := dichromats[i]
		for k := range want.plane {
			var got matrix
			for row := range got {
				got[row] = d.correction[k].scale(d.confusion[row])
				got[row][row]++
			}
			if !near(got, want.plane[k], 5.1e-6) {
				t.Errorf("%v, half-plane %d: %v, published %v", Protan+View(i), k+1, got, want.plane[k])
			}
		}
		for k := range want.half {
			if math.Abs(d.half[k]-want.half[k]) > 5.1e-6 {
				t.Errorf("%v: plane between %v, published %v", Protan+View(i), d.half, want.half)
			}
		}
	}
}

// slowSight is how c is seen, by the published five-decimal matrices, or by CAT16 step
// by step with its published inverse, and the color library's L*a*b*.
func slowSight(c Color, v View) cielab {
	white := [3]float64{0.3127 / 0.3290, 1, 0.3583 / 0.3290}
	r, g, b := rival(c).LinearRgb()
	rgb := vector{r, g, b}
	x, y, z := colorful.LinearRgbToXyz(r, g, b)
	if v >= WarmLight {
		inverse := matrix{
			{1.86206786, -1.01125463, 0.14918677},
			{0.38752654, 0.62144744, -0.00897398},
			{-0.01584150, -0.03412294, 1.04996444},
		}
		cones, d65, a := cat16.apply(vector{x, y, z}), cat16.apply(white), cat16.apply(vector{1.09850, 1, 0.35585})
		d := 0.9 * (1 - math.Exp(-46.0/92)/3.6)
		for i := range cones {
			cones[i] *= d + (1-d)*a[i]/d65[i]
		}
		seen := inverse.apply(cones)
		x, y, z = seen[0], seen[1], seen[2]
		rgb[0], rgb[1], rgb[2] = colorful.XyzToLinearRgb(x, y, z)
	}
	if v %= WarmLight; v != Daylight {
		m := published[v-Protan]
		plane := m.plane[0]
		if m.half.dot(rgb) < 0 {
			plane = m.plane[1]
		}
		seen := plane.apply(rgb)
		x, y, z = colorful.LinearRgbToXyz(seen[0], seen[1], seen[2])
	}
	l, la, lb := colorful.XyzToLabWhiteRef(x, y, z, white)
	return cielab{100 * l, 100 * la, 100 * lb}
}

// Every named color in every view. Five decimals in the matrices are up to 0.02 in
// L*a*b* of a dark color.
func TestViewsSlow(t *testing.T) {
	for _, css := range cssColors {
		for v := Daylight; v < views; v++ {
			if got, want := v.lab(css.color), slowSight(css.color, v); farthest(got, want) > 0.02 {
				t.Errorf("%s in %v is %v, want %v (off by %g)", css.name, v, got, want, farthest(got, want))
			}
		}
	}
}

// What defines the model: greys unchanged, lines of confusion collapsed to a point,
// and what is seen once is seen the same again.
func TestDichromatsDefining(t *testing.T) {
	for i := range 256 {
		c := Color{uint8(i), uint8(i), uint8(i)}
		for v := Protan; v <= Tritan; v++ {
			if got := v.lab(c); got != c.lab() {
				t.Errorf("%v: %s is %v, want it unchanged, %v", v, c, got, c.lab())
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		c := colors().Draw(t, "c").light()
		step := rapid.Float64Range(-1, 1).Draw(t, "step")
		for i := range dichromats {
			d := &dichromats[i]
			// A step of up to the size of the RGB cube along the line of confusion.
			size := math.Sqrt(d.confusion.dot(d.confusion))
			moved := c
			for k := range moved {
				moved[k] += step / size * d.confusion[k]
			}
			once, other, twice := d.see(c), d.see(moved), d.see(d.see(c))
			for k := range once {
				if math.Abs(once[k]-other[k]) > 1e-12 {
					t.Fatalf("%v: %v and %v lie on one line and are seen as %v and %v", Protan+View(i), c, moved, once, other)
				}
				if math.Abs(once[k]-twice[k]) > 1e-12 {
					t.Fatalf("%v: %v is seen as %v, and that as %v", Protan+View(i), c, once, twice)
				}
			}
		}
	})
	// The lights of the model keep their cones' ratio: a light on the plane stays.
	toRGB := juddVos.inverse()
	for i, lights := range [3][2]vector{{nm475, nm575}, {nm475, nm575}, {nm485, nm660}} {
		for _, light := range lights {
			rgb := toRGB.apply(light)
			got := dichromats[i].see(rgb)
			for k := range got {
				if math.Abs(got[k]-rgb[k]) > 1e-12 {
					t.Errorf("%v: the light %v is seen as %v", Protan+View(i), rgb, got)
				}
			}
		}
	}
	// What lies on a line of confusion differs only in the cones that are missing.
	cones := toCones.times(juddVos)
	for i := range dichromats {
		moved := cones.apply(dichromats[i].confusion)
		for k := range moved {
			if k != i && math.Abs(moved[k]) > 1e-15 || k == i && moved[k] == 0 {
				t.Errorf("%v: the line of confusion moves the cones by %v", Protan+View(i), moved)
			}
		}
	}
}

// What holds in daylight and in Protan need not hold between: the figures that View.Lab
// gives. Mixing in linear light is one way to a milder form, and the plainest.
func TestMilderFormCanBeWorse(t *testing.T) {
	milder := func(c Color, part float64) cielab {
		v := c.light()
		seen := dichromats[0].see(v)
		for i := range v {
			v[i] += float64(part * (seen[i] - v[i]))
		}
		return daylight(v)
	}
	c, d := mustColor("#3c90f6"), mustColor("#1d96c0")
	for _, test := range []struct {
		part float64
		want string
	}{{0, "13.0"}, {0.6, "5.5"}, {1, "10.0"}} {
		got := labDifference(milder(c, test.part), milder(d, test.part))
		if cut(got, 1) != test.want {
			t.Errorf("%v of the way: %v, want %s", test.part, got, test.want)
		}
	}
	if got := labDifference(milder(c, 1), milder(d, 1)); got < 10 {
		t.Errorf("in Protan: %v, want it to hold", got)
	}
}

func TestViewLab(t *testing.T) {
	c := Color{220, 20, 60}
	seen := map[[3]float64]bool{}
	for v := Daylight; v < views; v++ {
		got, err := v.Lab(c)
		if err != nil || (cielab{got[0], got[1], got[2]}) != v.lab(c) || seen[got] {
			t.Errorf("%v.Lab(%s) = %v, %v", v, c, got, err)
		}
		seen[got] = true
	}
	got, err := View(8).Lab(c)
	checkError(t, err, units.ErrName, `palette.View.Lab: view "View(8)": unknown name: want daylight, protan, deutan, tritan, warm light, warm protan, warm deutan or warm tritan`)
	if got != ([3]float64{}) {
		t.Errorf("%v beside an error", got)
	}
}

func TestViewText(t *testing.T) {
	for v, want := range []string{"daylight", "protan", "deutan", "tritan", "warm light", "warm protan", "warm deutan", "warm tritan"} {
		text, err := View(v).MarshalText()
		if err != nil || string(text) != want || View(v).String() != want {
			t.Errorf("View(%d) is %q, %q, %v, want %q", v, View(v), text, err, want)
		}
		var back View
		if err := back.UnmarshalText([]byte(strings.ToUpper(want) + " ")); err != nil || back != View(v) {
			t.Errorf("%q reads as %v, %v", want, back, err)
		}
	}
	if got := View(8).String(); got != "View(8)" {
		t.Errorf("View(8).String() = %q", got)
	}
	_, err := View(8).MarshalText()
	checkError(t, err, units.ErrName, `palette.View.MarshalText: view "View(8)": unknown name: want daylight, protan, deutan, tritan, warm light, warm protan, warm deutan or warm tritan`)
	v := Deutan
	checkError(t, v.UnmarshalText([]byte("dusk")), units.ErrName, `palette.View.UnmarshalText: text "dusk": unknown name: want daylight, protan, deutan, tritan, warm light, warm protan, warm deutan or warm tritan`)
	if v != Deutan {
		t.Errorf("a failed UnmarshalText left %v", v)
	}
}
