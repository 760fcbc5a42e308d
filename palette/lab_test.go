package palette

import (
	"math"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"pgregory.net/rapid"
)

// The colors of testdata/srgb_lab.csv, computed in 50 digits by the constants of CSS
// Color Module Level 4 with the white x = 0.3127, y = 0.3290, and some of a general
// color library's test data.
func TestLab(t *testing.T) {
	published := 0
	for _, row := range readCSV(t, "srgb_lab.csv") {
		c := mustColor(row["hex"])
		got := c.lab()
		want := cielab{number(t, row["L_A"]), number(t, row["a_A"]), number(t, row["b_A"])}
		if d := farthest(got, want); d > 1e-12 {
			t.Errorf("%s: Lab() = %v, want %v (off by %g)", row["name"], got, want, d)
		}
		if row["published_L"] != "" {
			published++
			want := cielab{number(t, row["published_L"]), number(t, row["published_a"]), number(t, row["published_b"])}
			// Another white: the two differ by 0.0078 at most over the colors here.
			if d := farthest(got, want); d > 0.008 {
				t.Errorf("%s: Lab() = %v, published %v (off by %g)", row["name"], got, want, d)
			}
		}
	}
	if published == 0 {
		t.Error("no published value was compared")
	}
}

func farthest(x, y cielab) float64 {
	return max(math.Abs(x.L-y.L), math.Abs(x.A-y.A), math.Abs(x.B-y.B))
}

// A general color library, which takes the same matrix and the rounded white; over the
// named colors that is 0.0140 at most, for blue.
func TestLabAgainstLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := colors().Draw(t, "c")
		l, a, b := rival(c).Lab()
		want := cielab{100 * l, 100 * a, 100 * b}
		if d := farthest(c.lab(), want); d > 0.0145 {
			t.Fatalf("%s: %v, library %v", c, c.lab(), want)
		}
	})
}

func rival(c Color) colorful.Color {
	return colorful.Color{R: float64(c[0]) / 255, G: float64(c[1]) / 255, B: float64(c[2]) / 255}
}

func TestLinear(t *testing.T) {
	for i, got := range linear {
		v := float64(i) / 255
		want := v / 12.92
		if v > 0.04045 {
			want = math.Pow((v+0.055)/1.055, 2.4)
		}
		// The standard library's Pow is good to an ulp or so, its argument to one more,
		// times 2.4.
		if math.Abs(got-want) > 1e-15*want {
			t.Errorf("linear[%d] = %v, want %v", i, got, want)
		}
	}
}

func TestGreysAreNeutral(t *testing.T) {
	for i := range 256 {
		c := Color{uint8(i), uint8(i), uint8(i)}
		l := c.lab()
		if l.A != 0 || l.B != 0 || l.chroma() != 0 {
			t.Errorf("%s: %v, chroma %v", c, l, l.chroma())
		}
	}
	if l := (Color{255, 255, 255}).lab(); l != (cielab{100, 0, 0}) {
		t.Errorf("white is %v", l)
	}
	if l := (Color{}).lab(); l != (cielab{}) {
		t.Errorf("black is %v", l)
	}
}

func TestLabCurve(t *testing.T) {
	// The two branches meet at (6/29)³, where f is 6/29 with slope 29²/108 on both
	// sides (CIE 15).
	const at = 216.0 / 24389
	if got := labCurve(at); math.Abs(got-6.0/29) > 1e-15 {
		t.Errorf("f(%v) = %v, want 6/29", at, got)
	}
	above := labCurve(at * (1 + 1e-9))
	if math.Abs(above-6.0/29-at*1e-9*841/108) > 1e-15 {
		t.Errorf("f just above (6/29)³ = %v", above)
	}
	// Below, the chord and not the root: f(0.001) = 7.787037·0.001 + 16/116.
	if got, want := labCurve(0.001), 841.0/108*0.001+4.0/29; math.Abs(got-want) > 1e-15 {
		t.Errorf("f(0.001) = %v, want %v", got, want)
	}
	if got, want := labCurve(0.008), 841.0/108*0.008+4.0/29; math.Abs(got-want) > 1e-15 {
		t.Errorf("f(0.008) = %v, want %v", got, want)
	}
	if got := labCurve(0.01); math.Abs(got-math.Cbrt(0.01)) > 1e-15 {
		t.Errorf("f(0.01) = %v, want its cube root", got)
	}
}
