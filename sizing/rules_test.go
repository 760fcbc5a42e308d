package sizing

import (
	"errors"
	"math"
	"math/big"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const (
	ft = units.Foot
	in = units.Inch
)

// The trade's own figures: common practice, worked by hand from the rules.
var ruleRows = []struct {
	reason  string
	height  units.Length
	types   int
	each    counts
	all     counts
	picks   int
	garland units.Length
	lights  int
}{
	{"an ordinary tree", 7 * ft, 7, counts{Min: 5, Max: 9}, counts{Min: 35, Max: 63}, 21, 63 * ft, 700},
	{"the ticket hall", 9 * ft, 9, counts{Min: 7, Max: 11}, counts{Min: 63, Max: 99}, 27, 81 * ft, 900},
	{"under a vault", 12 * ft, 12, counts{Min: 10, Max: 14}, counts{Min: 120, Max: 168}, 36, 108 * ft, 1200},
	{"a part foot adds no kind, but supplies go by it", 7*ft + 6*in, 7, counts{Min: 5, Max: 9}, counts{Min: 35, Max: 63}, 23, 67*ft + 6*in, 750},
	{"the waiting room", 4*ft + 6*in, 4, counts{Min: 2, Max: 6}, counts{Min: 8, Max: 24}, 14, 40*ft + 6*in, 450},
	{"a table tree gets one of each at least", 2 * ft, 2, counts{Min: 1, Max: 4}, counts{Min: 2, Max: 8}, 6, 18 * ft, 200},
	{"one below: not clipped any more", 3 * ft, 3, counts{Min: 1, Max: 5}, counts{Min: 3, Max: 15}, 9, 27 * ft, 300},
	{"the lowest", 1 * ft, 1, counts{Min: 1, Max: 3}, counts{Min: 1, Max: 3}, 3, 9 * ft, 100},
	{"the highest", 100 * ft, 100, counts{Min: 98, Max: 102}, counts{Min: 9800, Max: 10200}, 300, 900 * ft, 10_000},
	{"a nanometer short of a foot more", 8*ft - 1, 7, counts{Min: 5, Max: 9}, counts{Min: 35, Max: 63}, 24, 72*ft - 9, 800},
	{"a nanometer over", 7*ft + 1, 7, counts{Min: 5, Max: 9}, counts{Min: 35, Max: 63}, 22, 63*ft + 9, 701},
	{"in meters: 2.3 m is 7.545... ft", 2300 * units.Millimeter, 7, counts{Min: 5, Max: 9}, counts{Min: 35, Max: 63}, 23, 20_700 * units.Millimeter, 755},
}

func TestCommonPractice(t *testing.T) {
	r := CommonPractice()
	if r.HomeLargest != 6*in || r.HallLargest != 12*in {
		t.Errorf("the largest ornaments %v and %v, want 6 in at home and 12 in in a hall", r.HomeLargest, r.HallLargest)
	}
	for _, row := range ruleRows {
		types, err1 := r.Types(row.height)
		each, err2 := r.Each(row.height)
		all := counts{Min: types * each.Min, Max: types * each.Max}
		picks, err4 := piecesOf(r, shopping.Pick, row.height)
		garland, err5 := lengthOf(r, shopping.Garland, row.height)
		ribbon, err6 := lengthOf(r, shopping.Ribbon, row.height)
		lights, err7 := piecesOf(r, shopping.Light, row.height)
		if err := errors.Join(err1, err2, err4, err5, err6, err7); err != nil {
			t.Errorf("%s: %v", row.reason, err)
		}
		if types != row.types || each != row.each || all != row.all {
			t.Errorf("%s: kinds %d, %v, %v; want %d, %v, %v", row.reason, types, each, all, row.types, row.each, row.all)
		}
		if picks != row.picks || garland != row.garland || ribbon != row.garland || lights != row.lights {
			t.Errorf("%s: supplies %d, %v, %v, %d; want %d, %v twice, %d", row.reason, picks, garland, ribbon, lights, row.picks, row.garland, row.lights)
		}
	}
}

func TestRuleErrors(t *testing.T) {
	common := CommonPractice()
	with := func(change func(*Rules)) Rules {
		r := common
		change(&r)
		return r
	}
	type method struct {
		name  string
		field string
		call  func(Rules, units.Length) (any, error)
		zero  any
		low   Rules
		high  Rules
		most  Rules
	}
	methods := []method{
		{
			"Types", "/typesPerFoot", func(r Rules, h units.Length) (any, error) { return wrap(r.Types(h)) }, 0,
			with(func(r *Rules) { r.TypesPerFoot = -1 }), with(func(r *Rules) { r.TypesPerFoot = 101 }), with(func(r *Rules) { r.TypesPerFoot = 100 }),
		},
		{
			"Each", "/eachSpread", func(r Rules, h units.Length) (any, error) { return wrap(r.Each(h)) },
			counts{},
			with(func(r *Rules) { r.EachSpread = -1 }), with(func(r *Rules) { r.EachSpread = 101 }), with(func(r *Rules) { r.EachSpread = 100 }),
		},
		{
			"Supply", "/perFoot/picks", func(r Rules, h units.Length) (any, error) { return wrap(piecesOf(r, shopping.Pick, h)) }, 0,
			with(func(r *Rules) { r.PerFoot[shopping.Pick].Pieces = -1 }), with(func(r *Rules) { r.PerFoot[shopping.Pick].Pieces = 10_001 }), with(func(r *Rules) { r.PerFoot[shopping.Pick].Pieces = 10_000 }),
		},
		{
			"Supply", "/perFoot/lights", func(r Rules, h units.Length) (any, error) { return wrap(piecesOf(r, shopping.Light, h)) }, 0,
			with(func(r *Rules) { r.PerFoot[shopping.Light].Pieces = -1 }), with(func(r *Rules) { r.PerFoot[shopping.Light].Pieces = 10_001 }), with(func(r *Rules) { r.PerFoot[shopping.Light].Pieces = 10_000 }),
		},
		{
			"Supply", "/perFoot/garland", func(r Rules, h units.Length) (any, error) { return wrap(lengthOf(r, shopping.Garland, h)) }, units.Length(0),
			with(func(r *Rules) { r.PerFoot[shopping.Garland].Length = -1 }), with(func(r *Rules) { r.PerFoot[shopping.Garland].Length = 100*ft + 1 }), with(func(r *Rules) { r.PerFoot[shopping.Garland].Length = 100 * ft }),
		},
		{
			"Supply", "/perFoot/ribbon", func(r Rules, h units.Length) (any, error) { return wrap(lengthOf(r, shopping.Ribbon, h)) }, units.Length(0),
			with(func(r *Rules) { r.PerFoot[shopping.Ribbon].Length = -1 }), with(func(r *Rules) { r.PerFoot[shopping.Ribbon].Length = 100*ft + 1 }), with(func(r *Rules) { r.PerFoot[shopping.Ribbon].Length = 100 * ft }),
		},
	}
	refused := func(m method, r Rules, h units.Length, field string) {
		t.Helper()
		got, err := m.call(r, h)
		var e *units.Error
		if !errors.As(err, &e) || !errors.Is(err, units.ErrRange) || e.Func != "sizing.Rules."+m.name || e.Field != field {
			t.Errorf("Rules.%s(%v): error %v; want one naming %s", m.name, h, err, field)
		}
		if got != m.zero {
			t.Errorf("Rules.%s(%v): %v with an error", m.name, h, got)
		}
	}
	for _, m := range methods {
		for _, h := range []units.Length{math.MinInt64, -7 * ft, 0, ft - 1, 100*ft + 1, math.MaxInt64} {
			refused(m, common, h, "height")
		}
		refused(m, m.low, 7*ft, m.field)
		refused(m, m.high, 7*ft, m.field)
		if _, err := m.call(m.most, 100*ft); err != nil {
			t.Errorf("Rules.%s at its most: %v", m.name, err)
		}
		if got, err := m.call(Rules{}, 7*ft); err != nil {
			t.Errorf("Rules{}.%s: %v", m.name, err)
		} else if want := map[string]any{"Each": counts{Min: 7, Max: 7}}[m.name]; got != m.zero && got != want {
			t.Errorf("Rules{}.%s: %v; a zero field asks for none", m.name, got)
		}
	}
	for _, kind := range []shopping.Kind{shopping.Ornament, shopping.Topper, 0, 200} {
		q, err := common.Supply(kind, 7*ft)
		var e *units.Error
		if !errors.As(err, &e) || !errors.Is(err, units.ErrName) || e.Field != "kind" || e.Want != "garland, ribbon, picks or lights" || q != (shopping.Quantity{}) {
			t.Errorf("Supply of %v: %v, %v", kind, q, err)
		}
	}
	_, err := piecesOf(common, shopping.Pick, 6*in)
	if got, want := err.Error(), `sizing.Rules.Supply: height "6 in": out of range: want 1 ft to 100 ft`; got != want {
		t.Errorf("error text %q, want %q", got, want)
	}
}

// wrap makes one result of two, so that one table can hold methods of several types.
func wrap[T any](v T, err error) (any, error) { return v, err }

// Every rule grows with height, supplies are never short of the exact product
// and never a whole piece over, and the band keeps its width where it is not cut.
func TestRuleProperties(t *testing.T) {
	r := CommonPractice()
	heights := rapid.Int64Range(int64(minHeight), int64(maxHeight))
	rapid.Check(t, func(t *rapid.T) {
		low, high := units.Length(heights.Draw(t, "a")), units.Length(heights.Draw(t, "b"))
		if low > high {
			low, high = high, low
		}
		r.TypesPerFoot = rapid.IntRange(0, 100).Draw(t, "types per foot")
		r.EachSpread = rapid.IntRange(0, 100).Draw(t, "spread")
		r.PerFoot[shopping.Pick].Pieces = rapid.IntRange(0, 10_000).Draw(t, "picks per foot")
		r.PerFoot[shopping.Light].Pieces = rapid.IntRange(0, 10_000).Draw(t, "lights per foot")
		r.PerFoot[shopping.Garland].Length = units.Length(rapid.Int64Range(0, int64(100*ft)).Draw(t, "garland per foot"))
		r.PerFoot[shopping.Ribbon].Length = r.PerFoot[shopping.Garland].Length

		types, _ := r.Types(low)
		types2, _ := r.Types(high)
		each, _ := r.Each(low)
		each2, _ := r.Each(high)
		picks, _ := piecesOf(r, shopping.Pick, low)
		picks2, _ := piecesOf(r, shopping.Pick, high)
		lights, _ := piecesOf(r, shopping.Light, low)
		lights2, _ := piecesOf(r, shopping.Light, high)
		garland, _ := lengthOf(r, shopping.Garland, low)
		garland2, _ := lengthOf(r, shopping.Garland, high)
		ribbon, _ := lengthOf(r, shopping.Ribbon, low)
		if types > types2 || each.Min > each2.Min || each.Max > each2.Max ||
			picks > picks2 || lights > lights2 || garland > garland2 {
			t.Fatalf("%v takes more than %v", low, high)
		}
		if each.Min < 1 || each.Min > each.Max || each.Min > 1 && each.Max-each.Min != 2*r.EachSpread {
			t.Fatalf("band %v for a spread of %d at %v", each, r.EachSpread, low)
		}
		if ribbon != garland {
			t.Fatalf("ribbon %v, garland %v", ribbon, garland)
		}
		for _, s := range []struct {
			got, perFoot int64
		}{{int64(picks), int64(r.PerFoot[shopping.Pick].Pieces)}, {int64(lights), int64(r.PerFoot[shopping.Light].Pieces)}, {int64(garland), int64(r.PerFoot[shopping.Garland].Length)}} {
			exact := new(big.Rat).Mul(big.NewRat(s.perFoot, 1), big.NewRat(int64(low), int64(ft)))
			over := new(big.Rat).Sub(big.NewRat(s.got, 1), exact)
			if over.Sign() < 0 || over.Cmp(big.NewRat(1, 1)) >= 0 {
				t.Fatalf("%d for each foot of %v gives %d, exactly %s", s.perFoot, low, s.got, exact.FloatString(9))
			}
		}
	})
}

// needsByRule returns the needs of a tree by rule, and those that were asked for badly.
func needsByRule(r Rules, t Tree, accents ...shopping.Kind) ([]shopping.Need, error) {
	c, err := r.Compare(CommonLook(), t)
	if err != nil {
		return nil, err
	}
	c.ByShape = false
	return c.Needs(units.InFeetInches, accents...)
}

func TestNeeds(t *testing.T) {
	const common = "common practice"
	ornaments := shopping.Need{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: 81}, Basis: "9 types, 1 for each whole foot of 9 ft; 9 of each, and 7 to 11 will do", Source: common}
	garland := shopping.Need{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Length: 81 * ft}, Basis: "9 ft for each foot of 9 ft", Source: common}
	ribbon := shopping.Need{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: shopping.Quantity{Length: 81 * ft}, Basis: "9 ft for each foot of 9 ft", Source: common}
	picks := shopping.Need{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 27}, Basis: "3 for each foot of 9 ft", Source: common}
	lights := shopping.Need{Item: shopping.Item{Kind: shopping.Light}, Quantity: shopping.Quantity{Pieces: 900}, Basis: "100 for each foot of 9 ft", Source: common}
	for _, row := range []struct {
		accents []shopping.Kind
		want    []shopping.Need
	}{
		{nil, []shopping.Need{ornaments, lights}},
		{[]shopping.Kind{shopping.Garland}, []shopping.Need{ornaments, garland, lights}},
		{[]shopping.Kind{shopping.Pick}, []shopping.Need{ornaments, picks, lights}},
		{[]shopping.Kind{shopping.Ribbon}, []shopping.Need{ornaments, ribbon, lights}},
		{[]shopping.Kind{shopping.Pick, shopping.Garland, shopping.Pick}, []shopping.Need{ornaments, garland, picks, lights}},
	} {
		got, err := needsByRule(CommonPractice(), Tree{Height: 9 * ft}, row.accents...)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(row.want, got); diff != "" {
			t.Errorf("%v: -want +got\n%s", row.accents, diff)
		}
	}

	if one, err := needsByRule(CommonPractice(), Tree{Height: ft}, shopping.Pick); err != nil || one[0].Basis != "1 type, 1 for each whole foot of 1 ft; 1 of each, and 1 to 3 will do" {
		t.Errorf("a 1 ft tree: %v, %v", one, err)
	}
	none, err := needsByRule(Rules{}, Tree{Height: 9 * ft}, shopping.Garland, shopping.Pick)
	if err != nil || len(none) != 0 {
		t.Errorf("rules of zero ask for %v, %v", none, err)
	}
	for field, change := range map[string]func(*Rules, *Tree, *shopping.Kind){
		"accents":           func(_ *Rules, _ *Tree, a *shopping.Kind) { *a = shopping.Light },
		"/tree/height":      func(_ *Rules, t *Tree, _ *shopping.Kind) { t.Height = 0 },
		"/rules/eachSpread": func(r *Rules, _ *Tree, _ *shopping.Kind) { r.EachSpread = -1 },
		"/perFoot/garland":  func(r *Rules, _ *Tree, _ *shopping.Kind) { r.PerFoot[shopping.Garland].Length = -1 },
		"/perFoot/ribbon": func(r *Rules, _ *Tree, a *shopping.Kind) {
			r.PerFoot[shopping.Ribbon].Length = -1
			*a = shopping.Ribbon
		},
		"/perFoot/picks":   func(r *Rules, _ *Tree, _ *shopping.Kind) { r.PerFoot[shopping.Pick].Pieces = -1 },
		"/perFoot/lights":  func(r *Rules, _ *Tree, _ *shopping.Kind) { r.PerFoot[shopping.Light].Length = ft },
		"/perFoot/toppers": func(r *Rules, _ *Tree, _ *shopping.Kind) { r.PerFoot[shopping.Topper].Pieces = 1 },
	} {
		r, tree, a := CommonPractice(), Tree{Height: 9 * ft}, shopping.Garland
		change(&r, &tree, &a)
		var e *units.Error
		if got, err := needsByRule(r, tree, shopping.Pick, a); !errors.As(err, &e) || e.Field != field || got != nil {
			t.Errorf("Needs with a wrong %s: %v, %v", field, got, err)
		}
	}
}
