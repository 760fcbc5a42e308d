package mantel_test

import (
	"slices"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// The items of a mantel.
var (
	picks     = shopping.Item{Kind: shopping.Pick, Type: "mantel"}
	ornaments = shopping.Item{Kind: shopping.Ornament, Type: "mantel"}
	ribbon    = shopping.Item{Kind: shopping.Ribbon, Type: "mantel"}
	bells     = shopping.Item{Kind: shopping.Bell}
)

func alongs(spots []mantel.Spot, item string) (along []units.Length, layers []int) {
	for _, s := range spots {
		if s.Item.String() == item {
			along = append(along, s.Along)
			layers = append(layers, s.Layer)
		}
	}
	return along, layers
}

// Places in eighths of an inch.
func eighths(n ...int) (l []units.Length) {
	for _, n := range n {
		l = append(l, units.Length(n)*in/8)
	}
	return l
}

// The spacings are common practice; the places are worked out by hand from what the
// documentation of Spots says.
func TestSpots(t *testing.T) {
	r := mantel.CommonPractice()
	for _, test := range []struct {
		reason    string
		rules     mantel.Rules
		length    units.Length
		look      mantel.Look
		picks     []units.Length
		layers    []int
		ornaments []units.Length
		ribbon    []units.Length
	}{
		{
			"64 in divides by 8: half a spacing at each end", r, 64 * in, mantel.Traditional,
			eighths(32, 96, 160, 224, 288, 352, 416, 480),
			[]int{1, 1, 1, 1, 1, 1, 1, 1},
			eighths(64, 128, 192, 256, 320, 384, 448), nil,
		},
		{
			"60 in leaves 4: 8 picks take 56", r, 60 * in, mantel.Traditional,
			eighths(16, 80, 144, 208, 272, 336, 400, 464),
			[]int{1, 1, 1, 1, 1, 1, 1, 1},
			eighths(48, 112, 176, 240, 304, 368, 432), nil,
		},
		{
			"an odd number: one in the middle", r, 17 * in, mantel.Traditional,
			eighths(4, 68, 132),
			[]int{1, 1, 1},
			eighths(36, 100), nil,
		},
		{
			"1 ft, heavy at the left: thirds of 4 in", r, 12 * in, mantel.AsymmetricalLeft,
			eighths(0, 24, 48, 72),
			[]int{3, 3, 2, 1},
			eighths(12), eighths(0),
		},
		{
			"its mirror image", r, 12 * in, mantel.AsymmetricalRight,
			eighths(24, 48, 72, 96),
			[]int{1, 2, 3, 3},
			eighths(84), eighths(96),
		},
		{
			"13 in: an inch is left at the light end", r, 13 * in, mantel.AsymmetricalRight,
			eighths(8, 32, 56, 80, 104),
			[]int{1, 1, 2, 3, 3},
			eighths(92), eighths(104),
		},
		{
			"two in each gap", custom(func(l *mantel.LookRules) { l.OrnamentsPerGap = 2 }), 17 * in, mantel.Traditional,
			eighths(4, 68, 132),
			[]int{1, 1, 1},
			[]units.Length{in/2 + 8*in/3, in/2 + 16*in/3, 17*in - (in/2 + 16*in/3), 17*in - (in/2 + 8*in/3)},
			nil,
		},
		{
			"a traditional mantel is one layer", custom(func(l *mantel.LookRules) { l.Layers = 3 }), 17 * in, mantel.Traditional,
			eighths(4, 68, 132),
			[]int{1, 1, 1},
			eighths(36, 100), nil,
		},
		{
			"no layers is one", custom(func(l *mantel.LookRules) { l.Layers = 0; l.PickSpacing = 6 * in }), 12 * in, mantel.AsymmetricalLeft,
			eighths(0, 48),
			[]int{1, 1},
			eighths(24), eighths(0),
		},
		{
			"one pick, a bow and no ornament", custom(func(l *mantel.LookRules) { l.PickSpacing = ft; l.Ribbon = ft }), 12 * in, mantel.Traditional,
			eighths(48),
			[]int{1},
			nil, eighths(48),
		},
		{"nothing", mantel.Rules{}, 12 * in, mantel.Traditional, nil, nil, nil, nil},
	} {
		spots, err := test.rules.Spots(mantel.Mantel{Length: test.length}, test.look)
		if err != nil {
			t.Errorf("%s: %v", test.reason, err)
		}
		picks, layers := alongs(spots, "picks, mantel")
		if !slices.Equal(picks, test.picks) || !slices.Equal(layers, test.layers) {
			t.Errorf("%s: picks at %v in layers %v, want %v in %v", test.reason, picks, layers, test.picks, test.layers)
		}
		ornaments, _ := alongs(spots, "ornaments, mantel")
		if !slices.Equal(ornaments, test.ornaments) {
			t.Errorf("%s: ornaments at %v, want %v", test.reason, ornaments, test.ornaments)
		}
		if ribbon, _ := alongs(spots, "ribbon, mantel"); !slices.Equal(ribbon, test.ribbon) {
			t.Errorf("%s: ribbon at %v, want %v", test.reason, ribbon, test.ribbon)
		}
	}
}

// The order, and the layers above the picks.
func TestSpotsInOrder(t *testing.T) {
	got, err := mantel.CommonPractice().Spots(mantel.Mantel{Length: ft}, mantel.AsymmetricalRight)
	want := []mantel.Spot{
		{picks, 3 * in, 1},
		{picks, 6 * in, 2},
		{picks, 9 * in, 3},
		{picks, 12 * in, 3},
		{ornaments, 21 * in / 2, 4},
		{ribbon, 12 * in, 5},
		{bells, 12 * in, 5},
		{bells, 12 * in, 5},
		{bells, 12 * in, 5},
	}
	if err != nil || !slices.Equal(got, want) {
		t.Errorf("got %v, %v, want %v", got, err, want)
	}
	r := mantel.CommonPractice()
	r.Traditional.Ribbon, r.Traditional.Bells = ft, 1
	got, err = r.Spots(mantel.Mantel{Length: ft}, mantel.Traditional)
	want = []mantel.Spot{
		{picks, 2 * in, 1},
		{picks, 10 * in, 1},
		{ornaments, 6 * in, 2},
		{ribbon, 6 * in, 3},
		{bells, 6 * in, 3},
	}
	if err != nil || !slices.Equal(got, want) {
		t.Errorf("got %v, %v, want %v", got, err, want)
	}
}

func TestSpotsErrors(t *testing.T) {
	for i, test := range []struct {
		change func(*mantel.LookRules)
		length units.Length
		look   mantel.Look
		want   *units.Error
	}{
		{func(*mantel.LookRules) {}, ft - 1, 0, &units.Error{Func: "mantel.Rules.Spots", Field: "/mantel/length", Want: "1 ft to 50 ft", Err: units.ErrRange}},
		{func(*mantel.LookRules) {}, ft, 3, &units.Error{Func: "mantel.Rules.Spots", Field: "look", Want: wantLook, Err: units.ErrName}},
		{func(l *mantel.LookRules) { l.PickSpacing = 1 }, ft, 0, &units.Error{Func: "mantel.Rules.Spots", Field: "/traditional/pickSpacing", Want: "1/2 in to 50 ft, or 0", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Layers = 11 }, ft, 1, &units.Error{Func: "mantel.Rules.Spots", Field: "/asymmetrical/layers", Want: "0 to 10", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Ribbon = -1 }, ft, 1, &units.Error{Func: "mantel.Rules.Spots", Field: "/asymmetrical/ribbon", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Bells = -1 }, ft, 1, &units.Error{Func: "mantel.Rules.Spots", Field: "/asymmetrical/bells", Want: "0 to 100", Err: units.ErrRange}},
	} {
		got, err := custom(test.change).Spots(mantel.Mantel{Length: test.length}, test.look)
		checkError(t, i, err, test.want)
		if got != nil {
			t.Errorf("row %d: %v with an error", i, got)
		}
	}
}

func TestSpotsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mantel.Mantel{Length: lengths(ft, 50*ft).Draw(t, "length")}
		look := rapid.SampledFrom([]mantel.Look{mantel.Traditional, mantel.AsymmetricalLeft}).Draw(t, "look")
		spacing := lengths(in/2, 2*ft).Draw(t, "spacing")
		count := rapid.IntRange(0, 10).Draw(t, "layers")
		perGap := rapid.IntRange(0, 4).Draw(t, "per gap")
		r := custom(func(l *mantel.LookRules) { l.PickSpacing, l.Layers, l.OrnamentsPerGap = spacing, count, perGap })
		left, err := r.Spots(m, look)
		if err != nil {
			t.Fatal(err)
		}
		right, err := r.Spots(m, 2*look) // the mirror image
		if err != nil {
			t.Fatal(err)
		}
		// The mirror image of a look has the mirror image of its places.
		for _, item := range []string{"picks, mantel", "ornaments, mantel", "ribbon, mantel", "bells"} {
			a, la := alongs(left, item)
			b, lb := alongs(right, item)
			slices.Reverse(b)
			slices.Reverse(lb)
			if len(a) != len(b) || !slices.Equal(la, lb) {
				t.Fatalf("%s: layers %v and %v", item, la, lb)
			}
			for i := range a {
				// The middle of an odd length is rounded down.
				if sum := a[i] + b[i]; sum != m.Length && !(sum == m.Length-1 && look == mantel.Traditional) {
					t.Fatalf("%s: %v and %v do not mirror", item, a[i], b[i])
				}
			}
			if !slices.IsSorted(a) || !slices.IsSorted(b) && item != "bells" && !slices.IsSortedFunc(b, func(x, y units.Length) int { return int(y - x) }) {
				t.Fatalf("%s: not in order: %v", item, a)
			}
		}
		// As many as the rules say, on the shelf, a spacing apart.
		picks, layers := alongs(left, "picks, mantel")
		needs, err := r.Needs(m, mantel.Hanging{Look: look}, units.InFeetInches)
		if err != nil {
			t.Fatal(err)
		}
		if n := pieces(needs, shopping.Pick); len(picks) != n {
			t.Fatalf("%d picks, want %d", len(picks), n)
		}
		ornaments, _ := alongs(left, "ornaments, mantel")
		if n := pieces(needs, shopping.Ornament); len(ornaments) != n {
			t.Fatalf("%d ornaments, want %d", len(ornaments), n)
		}
		for i, p := range picks {
			if p < 0 || p > m.Length {
				t.Fatalf("pick at %v", p)
			}
			if i > 0 && (p-picks[i-1] < spacing || p-picks[i-1] > spacing+1) {
				t.Fatalf("picks at %v and %v", picks[i-1], p)
			}
			if i > 0 && layers[i] > layers[i-1] {
				t.Fatalf("layers %v fall from the heavy end", layers)
			}
		}
		if top := layers[0]; look == mantel.AsymmetricalLeft && top != max(1, r.Asymmetrical.Layers) {
			t.Fatalf("top layer %d", top)
		}
		if last := layers[len(layers)-1]; last < 1 {
			t.Fatalf("layer %d", last)
		}
		// Each ornament is between two picks of the top layer, on neither.
		for _, o := range ornaments {
			i, on := slices.BinarySearch(picks, o)
			if on || i == 0 || i == len(picks) || layers[i] != layers[0] || layers[i-1] != layers[0] {
				t.Fatalf("ornament at %v among picks at %v, layers %v", o, picks, layers)
			}
		}
	})
}
