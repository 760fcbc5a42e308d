package sizing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// By hand: half of what touches a circle is acos(R/D) to each side.
func TestSeen(t *testing.T) {
	for _, row := range []struct {
		reason   string
		t        Tree
		spread   float64
		distance units.Length
		want     Exposure
	}{
		{"R is half of D: 60 degrees to each side", Tree{Height: 9 * ft, Base: 6 * ft}, 0, 6 * ft, 120_000},
		{"and a corner on top", Tree{Height: 9 * ft, Base: 6 * ft}, 90, 6 * ft, 210_000},
		{"the issue's: acos(2.4375/10) is 75.892 degrees", Tree{Height: 7*ft + 6*in}, 90, 10 * ft, 241_784},
		{"from all sides", Tree{Height: 9 * ft, Base: 6 * ft}, 360, 6 * ft, 360_000},
		{"no more than all of it", Tree{Height: 9 * ft, Base: 6 * ft}, 300, 6 * ft, 360_000},
		{"the nearest: acos(36/37) is 13.351 degrees", Tree{Height: 9 * ft, Base: 6 * ft}, 0, 37 * in, 26_702},
		{"the farthest: acos(0.003) is 89.828 degrees", Tree{Height: 9 * ft, Base: 6 * ft}, 0, 1000 * ft, 179_656},
	} {
		if got, err := row.t.Seen(row.spread, row.distance); got < row.want-1 || got > row.want+1 || err != nil {
			t.Errorf("%s: %v, %v; want %v", row.reason, got, err, row.want)
		}
	}
	tree := Tree{Height: 9 * ft, Base: 6 * ft}
	for _, row := range []struct {
		field    string
		spread   float64
		distance units.Length
	}{
		{"spread", -1e-9, 10 * ft},
		{"spread", 360.0001, 10 * ft},
		{"spread", math.NaN(), 10 * ft},
		{"distance", 90, 37*in - 1},
		{"distance", 90, 1000*ft + 1},
		{"distance", 90, math.MinInt64},
	} {
		got, err := tree.Seen(row.spread, row.distance)
		refused(t, err, units.ErrRange, "Tree.Seen", row.field)
		if got != 0 {
			t.Errorf("%v with an error", got)
		}
	}
	_, err := tree.Seen(360.0001, 10*ft)
	if want := `sizing.Tree.Seen: spread "360.0001": out of range: want 0 to 360 degrees`; err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
	rapid.Check(t, func(t *rapid.T) {
		tree := Tree{Height: units.Length(rapid.Int64Range(int64(ft), int64(100*ft)).Draw(t, "height")), Taper: Taper(rapid.IntRange(0, 2).Draw(t, "taper"))}
		c, _ := tree.cone("", "/")
		spread := rapid.Float64Range(0, 360).Draw(t, "spread")
		distance := units.Length(rapid.Int64Range(int64(c.BaseDiameter/2+in), int64(1000*ft)).Draw(t, "distance"))
		a, err1 := tree.Seen(spread, distance)
		b, err2 := tree.Seen(min(360, spread+rapid.Float64Range(0, 60).Draw(t, "wider")), min(1000*ft, distance+units.Length(rapid.Int64Range(0, int64(10*ft)).Draw(t, "farther"))))
		if err1 != nil || err2 != nil || b < a {
			t.Fatalf("%v of %+v from %v: %v, wider and farther %v; %v, %v", spread, tree, distance, a, b, err1, err2)
		}
		// The law of the tangent, by the standard library's arc cosine.
		if want := min(360, spread+2*math.Acos(float64(c.BaseDiameter)/2/float64(distance))*180/math.Pi) * 1000; math.Abs(float64(a)-want) > 0.51 {
			t.Fatalf("%v; want %v thousandths", a, want)
		}
		tree.Exposure = a // what is seen is an exposure
		if _, err := tree.DressedArea(); err != nil {
			t.Fatal(err)
		}
	})
}

// The trade's names for metric heights, from memory: handbook, section 11.
func TestTradeHeight(t *testing.T) {
	for cm, feet := range map[units.Length]units.Length{120: 4, 150: 5, 180: 6, 210: 7, 240: 8, 300: 10} {
		if got, err := TradeHeight(cm * units.Centimeter); got != feet*ft || err != nil {
			t.Errorf("%d cm is a tree of %v, %v; want %d ft", cm, got, err, feet)
		}
	}
	for _, row := range []struct{ height, want units.Length }{
		{7 * ft, 7 * ft},
		{7*ft - 2*in, 7 * ft},
		{7*ft - 2*in - 1, 6 * ft},
		{7*ft - in/16, 7 * ft},
		{7*ft + 6*in, 7 * ft},
		{1 * ft, 1 * ft},
		{100 * ft, 100 * ft},
		{100*ft - 1, 100 * ft},
	} {
		if got, err := TradeHeight(row.height); got != row.want || err != nil {
			t.Errorf("%v is a tree of %v, %v; want %v", row.height, got, err, row.want)
		}
	}
	for _, h := range []units.Length{1*ft - 1, 100*ft + 1} {
		got, err := TradeHeight(h)
		refused(t, err, units.ErrRange, "TradeHeight", "height")
		if got != 0 {
			t.Error(got)
		}
	}
}

// Whole feet are said, and the figure of the next foot within 2 in below it. By hand:
// 210 cm are 82.677 in, 1.323 in short of 84.
func TestWholeFeetAreSaid(t *testing.T) {
	for _, row := range []struct {
		height units.Length
		style  units.Style
		want   string
	}{
		{210 * units.Centimeter, units.InFeetInches, "6 types, 1 for each of 6 whole feet (6 ft 10 5/8 in); 6 of each, and 4 to 8 will do; 1 3/8 in short of 7 ft, which has 7 types and 7 of each"},
		{210 * units.Centimeter, units.InMetric, "6 types, 1 for each of 6 whole feet (2.1 m); 6 of each, and 4 to 8 will do; 4 cm short of 2.13 m, which has 7 types and 7 of each"},
		{7*ft - in/16, units.InFeetInches, "6 types, 1 for each of 6 whole feet (6 ft 11 7/8 in); 6 of each, and 4 to 8 will do; 1/8 in short of 7 ft, which has 7 types and 7 of each"},
		{7*ft + 6*in, units.InFeetInches, "7 types, 1 for each of 7 whole feet (7 ft 6 in); 7 of each, and 5 to 9 will do"},
		{9 * ft, units.InMetric, "9 types, 1 for each whole foot of 2.74 m; 9 of each, and 7 to 11 will do"},
	} {
		c, err := CommonPractice().Compare(CommonLook(), Tree{Height: row.height})
		if err != nil {
			t.Fatal(err)
		}
		needs, err := c.Needs(row.style)
		if err != nil || needs[0].Basis != row.want {
			t.Errorf("%v: %q, %v; want %q", row.height, needs[0].Basis, err, row.want)
		}
	}
}

// A length is rounded up to an inch or, in metric, to a centimeter; what somebody made up stays as it is.
func TestLengthInMetric(t *testing.T) {
	look := Look{Spacing: shopping.ByKind[units.Length]{shopping.Garland: 25 * units.Centimeter}}
	tree := Tree{Height: 360 * units.Centimeter}
	c, err := CommonPractice().Compare(look, tree)
	if err != nil {
		t.Fatal(err)
	}
	made, unknown := c, c
	made.Rule[shopping.Garland].Length = 12_345_678
	unknown.ByShape, unknown.Look = true, Look{}
	shape := c
	shape.ByShape = true
	exact, err := tree.SpiralLength(25 * units.Centimeter)
	if err != nil || exact%units.Centimeter == 0 {
		t.Fatal(exact, err)
	}
	tight, err := CommonPractice().Compare(Look{Spacing: shopping.ByKind[units.Length]{shopping.Garland: minSpacing}}, tree)
	closest, err2 := tree.SpiralLength(minSpacing)
	if err != nil || err2 != nil || closest%units.Centimeter == 0 {
		t.Fatal(closest, err, err2)
	}
	tight.ByShape = true
	for _, row := range []struct {
		of     Comparison
		style  units.Style
		want   units.Length
		reason string
	}{
		{c, units.InMetric, 3240 * units.Centimeter, "9 m for each of 3.6 m"},
		{c, units.InFeetInches, 1276 * in, "32.4 m are 1275.6 in"},
		{shape, units.InMetric, (exact/units.Centimeter + 1) * units.Centimeter, "up to a centimeter"},
		{shape, units.InFeetInches, (exact/in + 1) * in, "up to an inch"},
		{tight, units.InMetric, (closest/units.Centimeter + 1) * units.Centimeter, "the closest wraps, up to a centimeter"},
		{made, units.InMetric, 12_345_678, "as it was set"},
		{unknown, units.InMetric, (exact/in + 1) * in, "without the spacing it was counted by"},
	} {
		needs, err := row.of.Needs(row.style, shopping.Garland)
		at := slices.IndexFunc(needs, func(n shopping.Need) bool { return n.Item.Kind == shopping.Garland })
		if err != nil || needs[at].Quantity.Length != row.want {
			t.Errorf("%s: %v, %v, want %v", row.reason, needs, err, row.want)
		}
	}
}

// In metric no text of the package has a length in feet or inches, but for whole feet
// and the sizes of shops' names.
func TestMetricReachesEveryText(t *testing.T) {
	tree := Tree{Height: 15 * ft, Exposure: InCorner, Public: true}
	c, err1 := CommonPractice().Compare(CommonLook(), tree)
	needs, err2 := c.Needs(units.InMetric, shopping.Garland, shopping.Pick)
	fit, err4 := Room{Ceiling: 16 * ft}.Fit(tree)
	ladder, err5 := Room{}.Ladder(tree)
	cautions, err6 := tree.Cautions(units.InMetric)
	tree.Public = false
	home, err7 := tree.Cautions(units.InMetric)
	c.ByShape = false
	byRule, err8 := c.Needs(units.InMetric, shopping.Garland, shopping.Pick)
	for _, err := range []error{err1, err2, err4, err5, err6, err7, err8} {
		if err != nil {
			t.Fatal(err)
		}
	}
	texts := []string{Format(c, units.InMetric), Format(c.Look, units.InMetric), Format(fit, units.InMetric), Format(ladder, units.InMetric)}
	for _, n := range slices.Concat(needs, byRule[1:]) {
		texts = append(texts, n.Basis)
	}
	for _, c := range slices.Concat(cautions, home) {
		texts = append(texts, c.Text)
	}
	for _, text := range texts {
		for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == ';' }) {
			if word == "ft" || word == "foot" || word == "inch" || word == "gallon" || word == "gallons" || word == "quart" {
				t.Errorf("%q in %q", word, text)
			}
		}
	}
}

// Handbook, section 12: which cautions a tree calls for.
func TestCautions(t *testing.T) {
	for _, row := range []struct {
		reason string
		t      Tree
		want   string
	}{
		{"a cut tree at home", Tree{Height: 7 * ft}, "heat trunk water"},
		{"a tall one is tied", Tree{Height: 8 * ft}, "heat trunk water tie"},
		{"just under 8 ft", Tree{Height: 8*ft - 1}, "heat trunk water"},
		{"an artificial one is not watered", Tree{Height: 7 * ft, Kind: Artificial}, "heat"},
		{"a pre-lit one", Tree{Height: 7 * ft, Kind: PreLit}, "heat prelit"},
		{"a metal one", Tree{Height: 7 * ft, Kind: Metal}, "heat metal"},
		{"a cut tree in a hall", Tree{Height: 9 * ft, Public: true}, "cut exits own height trunk water tie marshal"},
		{"the station's", Tree{Height: 9 * ft, Kind: Artificial, Public: true}, "exits label heat tie marshal"},
		{"pre-lit in a shop", Tree{Height: 4 * ft, Kind: PreLit, Public: true}, "exits label heat prelit marshal"},
		{"metal in a shop", Tree{Height: 4 * ft, Kind: Metal, Public: true}, "exits label heat metal marshal"},
	} {
		list, err := row.t.Cautions(units.InFeetInches)
		var codes []string
		for _, c := range list {
			codes = append(codes, c.Code)
			if c.Text == "" || c.Source == "" || strings.HasSuffix(c.Text, ".") {
				t.Errorf("%s: %+v", row.reason, c)
			}
		}
		if strings.Join(codes, " ") != row.want || err != nil {
			t.Errorf("%s: %v, %v; want %s", row.reason, codes, err, row.want)
		}
	}
	// In public the distance from heat is the tree's height, at home 3 ft.
	for _, row := range []struct {
		public bool
		style  units.Style
		code   string
		want   string
	}{
		{true, units.InFeetInches, "own height", "at least 9 ft, its own height"},
		{true, units.InMetric, "own height", "at least 2.74 m, its own height"},
		{false, units.InFeetInches, "heat", "at least 3 ft from fire"},
		{false, units.InMetric, "heat", "at least 91.5 cm from fire"},
	} {
		list, _ := Tree{Height: 9 * ft, Public: row.public}.Cautions(row.style)
		if !slices.ContainsFunc(list, func(c units.Caution) bool { return c.Code == row.code && strings.Contains(c.Text, row.want) }) {
			t.Errorf("no %q in %v", row.want, list)
		}
	}
	for _, row := range []struct {
		field string
		want  error
		t     Tree
	}{
		{"/height", units.ErrRange, Tree{}},
		{"/kind", units.ErrName, Tree{Height: 9 * ft, Kind: numKinds}},
	} {
		list, err := row.t.Cautions(units.InFeetInches)
		refused(t, err, row.want, "Tree.Cautions", row.field)
		if list != nil {
			t.Errorf("%v with an error", list)
		}
	}
}
