package mantel

import (
	"regexp"
	"slices"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// 3 ft are 91.44 cm, 8 in 20.32 cm, 16 oz 453.59 g: by 25.4 mm an inch and 28.349523125 g an ounce.
func TestShow(t *testing.T) {
	const in, ft, mm, g, oz = units.Inch, units.Foot, units.Millimeter, units.Gram, units.Ounce
	for _, row := range []struct {
		length            units.Length
		style             units.Style
		nearest, down, up string
	}{
		{3 * ft, units.InMetric, "91.5 cm", "91 cm", "91.5 cm"},
		{8 * in, units.InMetric, "20.5 cm", "20 cm", "20.5 cm"},
		{-8 * in, units.InMetric, "-20.5 cm", "-20.5 cm", "-20 cm"},
		{64 * in, units.InMetric, "1.63 m", "1.62 m", "1.63 m"},
		{in / 8, units.InMetric, "3 mm", "3 mm", "4 mm"},
		{1635 * mm, units.InMetric, "1.635 m", "1.635 m", "1.635 m"},
		{135 * mm, units.InMetric, "13.5 cm", "13.5 cm", "13.5 cm"},
		{64 * in, units.InFeet, "5.33 ft", "5.33 ft", "5.34 ft"},
		{64 * in, units.InYards, "1.78 yd", "1.77 yd", "1.78 yd"},
		{2 * in, units.InFeet, "2 in", "2 in", "2 in"},
		{2*ft + in/3, units.InYards, "24 5/16 in", "24 5/16 in", "24 3/8 in"},
		{64 * in, units.InInches, "64 in", "64 in", "64 in"},
		{64*in + in/3, units.InFeetInches, "5 ft 4 5/16 in", "5 ft 4 5/16 in", "5 ft 4 3/8 in"},
		{64*in + in/64, units.InFeetInches, "5 ft 4 1/64 in", "5 ft 4 1/64 in", "5 ft 4 1/64 in"},
		{64*in + in/3, 99, "5 ft 4 5/16 in", "5 ft 4 5/16 in", "5 ft 4 3/8 in"},
	} {
		if a, b, c := show(row.length, row.style), showDown(row.length, row.style), showUp(row.length, row.style); a != row.nearest || b != row.down || c != row.up {
			t.Errorf("%v, %v: %s, down %s, up %s", row.length, row.style, a, b, c)
		}
	}
	for _, row := range []struct {
		mass              units.Mass
		style             units.Style
		nearest, down, up string
	}{
		{900 * g, units.InMetric, "900 g", "900 g", "900 g"},
		{2500 * g / 5, units.InMetric, "500 g", "500 g", "500 g"},
		{4500 * g, units.InMetric, "4.5 kg", "4.5 kg", "4.5 kg"},
		{16 * oz, units.InMetric, "455 g", "450 g", "455 g"},
		{80 * oz, units.InMetric, "2.27 kg", "2.26 kg", "2.27 kg"},
		{16*oz + oz/3, units.InFeetInches, "1 lb 0.3 oz", "1 lb 0.3 oz", "1 lb 0.4 oz"},
		{16 * oz, units.InYards, "1 lb", "1 lb", "1 lb"},
	} {
		if a, b, c := showMass(row.mass, row.style), massDown(row.mass, row.style), massUp(row.mass, row.style); a != row.nearest || b != row.down || c != row.up {
			t.Errorf("%v, %v: %s, down %s, up %s", row.mass, row.style, a, b, c)
		}
	}
	// 8 oz a foot are 226.796 g on 30.48 cm, 744.08 g a meter.
	if a, b := perFootDown(8*oz, units.InFeet), perFootDown(8*oz, units.InMetric); a != "8 oz a foot" || b != "740 g a meter" {
		t.Error(a, b)
	}
}

// All texts of a metric house are metric.
func TestMetric(t *testing.T) {
	const in = units.Inch
	m := Mantel{Length: 64 * in, Height: 20 * in, Depth: 8 * in, LeftWall: true, Opening: Rectangle{Width: 36 * in, Height: 4 * in, Gap: 14 * in}}
	h, cautions, err := CommonPractice().Hang(m, Hanging{Swags: 3, Sag: 5 * in, Look: AsymmetricalRight}, units.InMetric)
	texts := []string{}
	if err != nil {
		t.Fatal(err)
	}
	needs, err := CommonPractice().Needs(m, h, units.InMetric)
	if err != nil {
		t.Fatal(err)
	}
	run, err := m.Hang(h)
	if err != nil {
		t.Fatal(err)
	}
	more, err := run.Needs(8*in, units.InMetric)
	if err != nil {
		t.Fatal(err)
	}
	loads, err := run.Loads(8*units.Ounce, Hook{Rating: units.Pound}, units.InMetric)
	if err != nil {
		t.Fatal(err)
	}
	lights, _, _, err := run.Lights(100, 25*units.Foot, Point{}, units.InMetric)
	if err != nil {
		t.Fatal(err)
	}
	stockings, near, err := m.Stockings(Stockings{Length: 12 * in, Weight: units.Pound}, Hook{Rating: units.Pound}, Clearances{}, units.InMetric)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range slices.Concat(needs, more, loads.Needs, []shopping.Need{lights}, stockings.Needs) {
		texts = append(texts, n.Basis)
	}
	for _, c := range slices.Concat(cautions, loads.Cautions, stockings.Cautions, near.Cautions) {
		texts = append(texts, c.Text)
	}
	imperial := regexp.MustCompile(`\d (ft|oz|lb)\b|\d in\b( [^e]|,|$)|foot`)
	for _, text := range texts {
		if imperial.MatchString(text) {
			t.Error(text)
		}
	}
	if len(texts) < 20 {
		t.Error(len(texts), "texts")
	}
}
