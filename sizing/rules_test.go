package sizing

import (
	"errors"
	"math"
	"math/big"
	"strings"
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
	each    Band
	all     Band
	picks   int
	garland units.Length
	lights  int
}{
	{"an ordinary tree", 7 * ft, 7, Band{5, 9}, Band{35, 63}, 21, 63 * ft, 700},
	{"the ticket hall", 9 * ft, 9, Band{7, 11}, Band{63, 99}, 27, 81 * ft, 900},
	{"under a vault", 12 * ft, 12, Band{10, 14}, Band{120, 168}, 36, 108 * ft, 1200},
	{"a part foot adds no kind, but supplies go by it", 7*ft + 6*in, 7, Band{5, 9}, Band{35, 63}, 23, 67*ft + 6*in, 750},
	{"the waiting room", 4*ft + 6*in, 4, Band{2, 6}, Band{8, 24}, 14, 40*ft + 6*in, 450},
	{"a table tree gets one of each at least", 2 * ft, 2, Band{1, 4}, Band{2, 8}, 6, 18 * ft, 200},
	{"one below: not clipped any more", 3 * ft, 3, Band{1, 5}, Band{3, 15}, 9, 27 * ft, 300},
	{"the lowest", 1 * ft, 1, Band{1, 3}, Band{1, 3}, 3, 9 * ft, 100},
	{"the highest", 100 * ft, 100, Band{98, 102}, Band{9800, 10200}, 300, 900 * ft, 10_000},
	{"a nanometer short of a foot more", 8*ft - 1, 7, Band{5, 9}, Band{35, 63}, 24, 72*ft - 9, 800},
	{"a nanometer over", 7*ft + 1, 7, Band{5, 9}, Band{35, 63}, 22, 63*ft + 9, 701},
	{"in meters: 2.3 m is 7.545... ft", 2300 * units.Millimeter, 7, Band{5, 9}, Band{35, 63}, 23, 20_700 * units.Millimeter, 755},
}

func TestCommonPractice(t *testing.T) {
	r := CommonPractice()
	for _, row := range ruleRows {
		types, err1 := r.Types(row.height)
		each, err2 := r.Each(row.height)
		all, err3 := r.Ornaments(row.height)
		picks, err4 := r.Picks(row.height)
		garland, err5 := r.Garland(row.height)
		ribbon, err6 := r.Ribbon(row.height)
		lights, err7 := r.Lights(row.height)
		if err := errors.Join(err1, err2, err3, err4, err5, err6, err7); err != nil {
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

func TestStrands(t *testing.T) {
	for _, row := range []struct {
		reason string
		s      Strands
		want   int
	}{
		{"67 ft 6 in in strands of 6 ft", Strands{67*ft + 6*in, 6 * ft}, 12},
		{"it divides", Strands{63 * ft, 9 * ft}, 7},
		{"a nanometer more takes one more", Strands{63*ft + 1, 9 * ft}, 8},
		{"a nanometer less does not save one", Strands{63*ft - 1, 9 * ft}, 7},
		{"nothing needed", Strands{0, 6 * ft}, 0},
		{"the least strand", Strands{ft, in}, 12},
		{"the longest strand", Strands{1000*ft + 1, 1000 * ft}, 2},
		{"the most: 100 km is 3,937,007.87 in", Strands{100_000 * units.Meter, in}, 3_937_008},
	} {
		if n, err := row.s.Count(); n != row.want || err != nil {
			t.Errorf("%s: %d, %v; want %d", row.reason, n, err, row.want)
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
			"Types", "TypesPerFoot", func(r Rules, h units.Length) (any, error) { return wrap(r.Types(h)) }, 0,
			with(func(r *Rules) { r.TypesPerFoot = -1 }), with(func(r *Rules) { r.TypesPerFoot = 101 }), with(func(r *Rules) { r.TypesPerFoot = 100 }),
		},
		{
			"Each", "EachSpread", func(r Rules, h units.Length) (any, error) { return wrap(r.Each(h)) },
			Band{},
			with(func(r *Rules) { r.EachSpread = -1 }), with(func(r *Rules) { r.EachSpread = 101 }), with(func(r *Rules) { r.EachSpread = 100 }),
		},
		{
			"Picks", "PicksPerFoot", func(r Rules, h units.Length) (any, error) { return wrap(r.Picks(h)) }, 0,
			with(func(r *Rules) { r.PicksPerFoot = -1 }), with(func(r *Rules) { r.PicksPerFoot = 1001 }), with(func(r *Rules) { r.PicksPerFoot = 1000 }),
		},
		{
			"Lights", "LightsPerFoot", func(r Rules, h units.Length) (any, error) { return wrap(r.Lights(h)) }, 0,
			with(func(r *Rules) { r.LightsPerFoot = -1 }), with(func(r *Rules) { r.LightsPerFoot = 10_001 }), with(func(r *Rules) { r.LightsPerFoot = 10_000 }),
		},
		{
			"Garland", "GarlandPerFoot", func(r Rules, h units.Length) (any, error) { return wrap(r.Garland(h)) }, units.Length(0),
			with(func(r *Rules) { r.GarlandPerFoot = -1 }), with(func(r *Rules) { r.GarlandPerFoot = 100*ft + 1 }), with(func(r *Rules) { r.GarlandPerFoot = 100 * ft }),
		},
		{
			"Ribbon", "RibbonPerFoot", func(r Rules, h units.Length) (any, error) { return wrap(r.Ribbon(h)) }, units.Length(0),
			with(func(r *Rules) { r.RibbonPerFoot = -1 }), with(func(r *Rules) { r.RibbonPerFoot = 100*ft + 1 }), with(func(r *Rules) { r.RibbonPerFoot = 100 * ft }),
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
		} else if want := map[string]any{"Each": Band{7, 7}}[m.name]; got != m.zero && got != want {
			t.Errorf("Rules{}.%s: %v; a zero field asks for none", m.name, got)
		}
	}
	for _, row := range []struct {
		r     Rules
		field string
	}{{with(func(r *Rules) { r.TypesPerFoot = -1 }), "TypesPerFoot"}, {with(func(r *Rules) { r.EachSpread = -1 }), "EachSpread"}} {
		var e *units.Error
		if got, err := row.r.Ornaments(7 * ft); !errors.As(err, &e) || e.Field != row.field || got != (Band{}) {
			t.Errorf("Ornaments: %v, %v; want an error naming %s", got, err, row.field)
		}
	}
	for _, row := range []struct {
		s     Strands
		field string
	}{
		{Strands{-1, ft}, "Total"},
		{Strands{100_000*units.Meter + 1, ft}, "Total"},
		{Strands{ft, 0}, "Each"},
		{Strands{ft, in - 1}, "Each"},
		{Strands{ft, 1000*ft + 1}, "Each"},
		{Strands{ft, -ft}, "Each"},
	} {
		var e *units.Error
		if got, err := row.s.Count(); !errors.As(err, &e) || !errors.Is(err, units.ErrRange) || e.Field != row.field || got != 0 {
			t.Errorf("%+v.Count() = %d, %v; want an error naming %s", row.s, got, err, row.field)
		}
	}
	_, err := common.Picks(6 * in)
	if got, want := err.Error(), `sizing.Rules.Picks: height "6 in": out of range: want 1 ft to 100 ft`; got != want {
		t.Errorf("error text %q, want %q", got, want)
	}
}

// wrap makes one result of two, so that one table can hold methods of several types.
func wrap[T any](v T, err error) (any, error) { return v, err }

// Every rule grows with height, supplies are never short of the exact product
// and never a whole piece over, and the band keeps its width where it is not cut.
func TestRuleProperties(t *testing.T) {
	r := CommonPractice()
	heights := rapid.Int64Range(int64(MinHeight), int64(MaxHeight))
	rapid.Check(t, func(t *rapid.T) {
		low, high := units.Length(heights.Draw(t, "a")), units.Length(heights.Draw(t, "b"))
		if low > high {
			low, high = high, low
		}
		r.TypesPerFoot = rapid.IntRange(0, 100).Draw(t, "types per foot")
		r.EachSpread = rapid.IntRange(0, 100).Draw(t, "spread")
		r.PicksPerFoot = rapid.IntRange(0, 1000).Draw(t, "picks per foot")
		r.LightsPerFoot = rapid.IntRange(0, 10_000).Draw(t, "lights per foot")
		r.GarlandPerFoot = units.Length(rapid.Int64Range(0, int64(100*ft)).Draw(t, "garland per foot"))
		r.RibbonPerFoot = r.GarlandPerFoot

		types, _ := r.Types(low)
		types2, _ := r.Types(high)
		each, _ := r.Each(low)
		each2, _ := r.Each(high)
		all, _ := r.Ornaments(low)
		all2, _ := r.Ornaments(high)
		picks, _ := r.Picks(low)
		picks2, _ := r.Picks(high)
		lights, _ := r.Lights(low)
		lights2, _ := r.Lights(high)
		garland, _ := r.Garland(low)
		garland2, _ := r.Garland(high)
		ribbon, _ := r.Ribbon(low)
		if types > types2 || each.Min > each2.Min || each.Max > each2.Max || all.Min > all2.Min || all.Max > all2.Max ||
			picks > picks2 || lights > lights2 || garland > garland2 {
			t.Fatalf("%v takes more than %v", low, high)
		}
		if each.Min < 1 || each.Min > each.Max || each.Min > 1 && each.Max-each.Min != 2*r.EachSpread {
			t.Fatalf("band %v for a spread of %d at %v", each, r.EachSpread, low)
		}
		if all != (Band{types * each.Min, types * each.Max}) {
			t.Fatalf("all %v is not %d of %v", all, types, each)
		}
		if ribbon != garland {
			t.Fatalf("ribbon %v, garland %v", ribbon, garland)
		}
		for _, s := range []struct {
			got, perFoot int64
		}{{int64(picks), int64(r.PicksPerFoot)}, {int64(lights), int64(r.LightsPerFoot)}, {int64(garland), int64(r.GarlandPerFoot)}} {
			exact := new(big.Rat).Mul(big.NewRat(s.perFoot, 1), big.NewRat(int64(low), int64(ft)))
			over := new(big.Rat).Sub(big.NewRat(s.got, 1), exact)
			if over.Sign() < 0 || over.Cmp(big.NewRat(1, 1)) >= 0 {
				t.Fatalf("%d for each foot of %v gives %d, exactly %s", s.perFoot, low, s.got, exact.FloatString(9))
			}
		}
	})
}

func TestStrandsProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Strands{
			Total: units.Length(rapid.Int64Range(0, int64(1000*ft)).Draw(t, "total")),
			Each:  units.Length(rapid.Int64Range(int64(in), int64(1000*ft)).Draw(t, "each")),
		}
		n, err := s.Count()
		if err != nil || units.Length(n)*s.Each < s.Total || n > 0 && units.Length(n-1)*s.Each >= s.Total {
			t.Fatalf("%d strands for %+v: %v", n, s, err)
		}
	})
}

func TestNeeds(t *testing.T) {
	const common = "common practice"
	ornaments := shopping.Need{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: 81}, Basis: "9 types, 1 for each whole foot of 9 ft; 9 of each, and 7 to 11 will do", Source: common}
	garland := shopping.Need{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Length: 81 * ft}, Basis: "9 ft for each foot of 9 ft", Source: common}
	ribbon := shopping.Need{Item: shopping.Item{Kind: shopping.Ribbon}, Quantity: shopping.Quantity{Length: 81 * ft}, Basis: "9 ft for each foot of 9 ft", Source: common}
	picks := shopping.Need{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 27}, Basis: "3 for each foot of 9 ft", Source: common}
	lights := shopping.Need{Item: shopping.Item{Kind: shopping.Light}, Quantity: shopping.Quantity{Pieces: 900}, Basis: "100 for each foot of 9 ft", Source: common}
	for a, want := range map[Accent][]shopping.Need{
		Garland: {ornaments, garland, lights},
		Picks:   {ornaments, picks, lights},
		Ribbon:  {ornaments, ribbon, lights},
		Both:    {ornaments, garland, picks, lights},
	} {
		got, err := CommonPractice().Needs(Tree{Height: 9 * ft}, a)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%v: -want +got\n%s", a, diff)
		}
	}

	if one, err := CommonPractice().Needs(Tree{Height: ft}, Picks); err != nil || one[0].Basis != "1 type, 1 for each whole foot of 1 ft; 1 of each, and 1 to 3 will do" {
		t.Errorf("a 1 ft tree: %v, %v", one, err)
	}
	none, err := Rules{}.Needs(Tree{Height: 9 * ft}, Both)
	if err != nil || len(none) != 0 {
		t.Errorf("rules of zero ask for %v, %v", none, err)
	}
	for field, change := range map[string]func(*Rules, *Tree, *Accent){
		"accent":         func(_ *Rules, _ *Tree, a *Accent) { *a = Both + 1 },
		"height":         func(_ *Rules, t *Tree, _ *Accent) { t.Height = 0 },
		"EachSpread":     func(r *Rules, _ *Tree, _ *Accent) { r.EachSpread = -1 },
		"GarlandPerFoot": func(r *Rules, _ *Tree, _ *Accent) { r.GarlandPerFoot = -1 },
		"RibbonPerFoot":  func(r *Rules, _ *Tree, a *Accent) { r.RibbonPerFoot = -1; *a = Ribbon },
		"PicksPerFoot":   func(r *Rules, _ *Tree, _ *Accent) { r.PicksPerFoot = -1 },
		"LightsPerFoot":  func(r *Rules, _ *Tree, _ *Accent) { r.LightsPerFoot = -1 },
	} {
		r, tree, a := CommonPractice(), Tree{Height: 9 * ft}, Both
		change(&r, &tree, &a)
		var e *units.Error
		if got, err := r.Needs(tree, a); !errors.As(err, &e) || e.Field != field || got != nil {
			t.Errorf("Needs with a wrong %s: %v, %v", field, got, err)
		}
	}
}

func TestPlainSizingDoesNotAllocate(t *testing.T) {
	r := CommonPractice()
	if n := testing.AllocsPerRun(100, func() {
		for h := 4 * ft; h < 16*ft; h += 3 * in {
			all, _ := r.Ornaments(h)
			picks, _ := r.Picks(h)
			lights, _ := r.Lights(h)
			garland, _ := r.Garland(h)
			ribbon, _ := r.Ribbon(h)
			strands, _ := Strands{garland, 6 * ft}.Count()
			if all.Min+picks+lights+strands == 0 || ribbon == 0 {
				t.Error("nothing sized")
			}
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func TestNames(t *testing.T) {
	for i, want := range []string{"garland", "picks", "ribbon", "both"} {
		a := Accent(i)
		if got, err := ParseAccent(" " + strings.ToUpper(want) + "\t"); got != a || err != nil || a.String() != want {
			t.Errorf("accent %d: read %v, %v; prints %q, want %q", i, got, err, a.String(), want)
		}
		var back Accent
		text, err := a.MarshalText()
		if err != nil || string(text) != want || back.UnmarshalText(text) != nil || back != a {
			t.Errorf("accent %d: text %q, %v, back %v", i, text, err, back)
		}
	}
	for i, want := range []string{"full", "slim", "pencil"} {
		p := Taper(i)
		if got, err := ParseTaper(strings.ToUpper(want)); got != p || err != nil || p.String() != want {
			t.Errorf("taper %d: read %v, %v; prints %q, want %q", i, got, err, p.String(), want)
		}
		var back Taper
		text, err := p.MarshalText()
		if err != nil || string(text) != want || back.UnmarshalText(text) != nil || back != p {
			t.Errorf("taper %d: text %q, %v, back %v", i, text, err, back)
		}
	}
	for i, want := range []string{"candlestick", "normal", "flared"} {
		g := TaperGrade(i)
		if got, err := ParseTaperGrade(" " + strings.ToUpper(want)); got != g || err != nil || g.String() != want {
			t.Errorf("grade %d: read %v, %v; prints %q, want %q", i, got, err, g.String(), want)
		}
		var back TaperGrade
		text, err := g.MarshalText()
		if err != nil || string(text) != want || back.UnmarshalText(text) != nil || back != g {
			t.Errorf("grade %d: text %q, %v, back %v", i, text, err, back)
		}
	}
	if got := Accent(9).String() + Taper(3).String() + Exposure(4).String() + Exposure(-1).String() + Exposure(999).String(); got != "Accent(9)Taper(3)Exposure(4)Exposure(-1)Exposure(999)" {
		t.Errorf("values with no name print %s", got)
	}

	accent, taper, grade, exposure := Picks, Slim, Flared, InCorner
	long := strings.Repeat("é", 40)
	for _, text := range []string{"", "garlands", "picks and garland", "\x00", long, strings.Repeat("g", 1<<20), "garland" + strings.Repeat(" ", 64)} {
		for _, err := range []error{accent.UnmarshalText([]byte(text)), taper.UnmarshalText([]byte(text)), grade.UnmarshalText([]byte(text)), exposure.UnmarshalText([]byte(text))} {
			var e *units.Error
			if !errors.As(err, &e) || !errors.Is(err, units.ErrName) || len(e.Value) > maxText+3 || len(text) > maxText != strings.HasSuffix(e.Value, "...") {
				t.Errorf("%.20q read: %v", text, err)
			}
		}
	}
	if accent != Picks || taper != Slim || grade != Flared || exposure != InCorner {
		t.Error("a failed read changed the value")
	}
	if e, ok := accent.UnmarshalText([]byte(long)).(*units.Error); !ok || e.Value != strings.Repeat("é", 32)+"..." || e.Want != "garland, picks, ribbon or both" {
		t.Errorf("refused text is shown as %q, want list %q", e.Value, e.Want)
	}
	for _, marshal := range []func() ([]byte, error){Accent(4).MarshalText, Taper(3).MarshalText, TaperGrade(3).MarshalText, Exposure(4).MarshalText, Exposure(-1).MarshalText} {
		if text, err := marshal(); text != nil || err == nil {
			t.Errorf("a value with no name gives %q, %v", text, err)
		}
	}
}

func TestExposure(t *testing.T) {
	for _, row := range []struct {
		text    string
		e       Exposure
		degrees float64
		back    string
	}{
		{"all round", AllRound, 360, "all round"},
		{"Wall", AgainstWall, 240, "wall"},
		{"corner", InCorner, 180, "corner"},
		{"half", HalfTree, 180, "half"},
		{"200 degrees", 200_000, 200, "200 degrees"},
		{"200°", 200_000, 200, "200 degrees"},
		{" 200 DEG ", 200_000, 200, "200 degrees"},
		{"1 degree", 1_000, 1, "1 degree"},
		{"360deg", 360_000, 360, "360 degrees"},
		{"200.5 deg", 200_500, 200.5, "200.5 degrees"},
		{"200.050 deg", 200_050, 200.05, "200.05 degrees"},
		{"200.005 deg", 200_005, 200.005, "200.005 degrees"},
		{"0000200 deg", 200_000, 200, "200 degrees"},
	} {
		e, err := ParseExposure(row.text)
		degrees, err2 := e.Degrees()
		if e != row.e || err != nil || degrees != row.degrees || err2 != nil || e.String() != row.back {
			t.Errorf("%q: %d, %v, %v degrees, %v, prints %q", row.text, e, err, degrees, err2, e)
		}
		var back Exposure
		text, err := e.MarshalText()
		if err != nil || string(text) != row.back || back.UnmarshalText(text) != nil || back != e {
			t.Errorf("%q: text %q, %v, back %v", row.text, text, err, back)
		}
	}
	for _, row := range []struct {
		text string
		want error
	}{
		{"0 deg", units.ErrRange},
		{"0.999 deg", units.ErrRange},
		{"360.001 deg", units.ErrRange},
		{"99999999999999999999 deg", units.ErrRange},
		{"200", units.ErrName},
		{"-200 deg", units.ErrName},
		{"deg", units.ErrName},
		{".5 deg", units.ErrName},
		{"5. deg", units.ErrName},
		{"5.0000 deg", units.ErrName},
		{"5.5.5 deg", units.ErrName},
		{"2:0 deg", units.ErrName},
		{"2/0 deg", units.ErrName},
		{"1e2 deg", units.ErrName},
		{"NaN deg", units.ErrName},
	} {
		if e, err := ParseExposure(row.text); e != 0 || !errors.Is(err, row.want) {
			t.Errorf("%q: %v, %v; want %v", row.text, e, err, row.want)
		}
	}
	for _, row := range []struct {
		degrees float64
		want    Exposure
	}{{1, 1_000}, {360, 360_000}, {200.0004, 200_000}, {200.0006, 200_001}} {
		if e, err := ArcDegrees(row.degrees); e != row.want || err != nil {
			t.Errorf("ArcDegrees(%v) = %d, %v", row.degrees, e, err)
		}
	}
	for _, degrees := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 0.9999, 360.0001} {
		if e, err := ArcDegrees(degrees); e != 0 || !errors.Is(err, units.ErrRange) {
			t.Errorf("ArcDegrees(%v) = %d, %v", degrees, e, err)
		}
	}
	for _, e := range []Exposure{-1, 4, 999, 360_001, math.MinInt32, math.MaxInt32} {
		if degrees, err := e.Degrees(); degrees != 0 || !errors.Is(err, units.ErrRange) {
			t.Errorf("Exposure(%d).Degrees() = %v, %v", e, degrees, err)
		}
	}
}

func FuzzParseExposure(f *testing.F) {
	for _, s := range []string{"all round", "wall", "200 degrees", "200.005°", "0 deg", "360.001 deg", "1e2 deg", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		e, err := ParseExposure(s)
		if err != nil {
			if e != 0 {
				t.Errorf("%q: %v with %v", s, e, err)
			}
			return
		}
		if back, err := ParseExposure(e.String()); back != e || err != nil {
			t.Errorf("%q: %d prints %q, read as %d, %v", s, e, e, back, err)
		}
	})
}

func FuzzParseTaperGrade(f *testing.F) {
	for _, s := range []string{"candlestick", "Normal", " FLARED\t", "wide", "", "TaperGrade(3)", strings.Repeat("n", 65)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		g, err := ParseTaperGrade(s)
		if err != nil {
			if g != 0 || !errors.Is(err, units.ErrName) {
				t.Errorf("%q: %v with %v", s, g, err)
			}
			return
		}
		if !strings.EqualFold(strings.TrimSpace(s), g.String()) {
			t.Errorf("%q is read as %v", s, g)
		}
		if text, err := g.MarshalText(); string(text) != g.String() || err != nil {
			t.Errorf("%q: text %q, %v", s, text, err)
		}
	})
}

func TestBand(t *testing.T) {
	b := Band{5, 9}
	for n, want := range map[int]bool{4: false, 5: true, 7: true, 9: true, 10: false} {
		if b.Contains(n) != want {
			t.Errorf("%v contains %d: %v", b, n, !want)
		}
	}
	if b.String() != "5 to 9" || (Band{3, 3}).String() != "3" {
		t.Errorf("bands print %v, %v", b, Band{3, 3})
	}
}
