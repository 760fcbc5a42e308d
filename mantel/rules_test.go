package mantel_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

const (
	in = units.Inch
	ft = units.Foot
)

// A formula of the trade is common practice and has no published source; these
// rows are its usual figures, and the rest is worked out by hand.
func TestRules(t *testing.T) {
	tests := []struct {
		length           units.Length
		look             mantel.Look
		garland          units.Length
		picks, ornaments int
		reason           string
	}{
		{5 * ft, mantel.Traditional, 7 * ft, 8, 7, "the usual figures; 60/8 is 7.5, rounded up"},
		{5 * ft, mantel.Asymmetrical, 9 * ft, 20, 6, "the usual figures; 60/3; 60/(3·3) is 6.7, so 7 in the top layer"},
		{64 * in, mantel.Traditional, 88 * in, 8, 7, "64/8 divides"},
		{64*in + 1, mantel.Traditional, 88*in + 1, 9, 8, "a nanometer more is one pick more"},
		{64 * in, mantel.Asymmetrical, 112 * in, 22, 7, "64/3 is 21.3; 64/9 is 7.1"},
		{63 * in, mantel.Asymmetrical, 111 * in, 21, 6, "63/3 and 63/9 divide"},
		{1 * ft, mantel.Traditional, 3 * ft, 2, 1, "the least shelf"},
		{1 * ft, mantel.Asymmetrical, 5 * ft, 4, 1, "the least shelf"},
		{50 * ft, mantel.Traditional, 52 * ft, 75, 74, "the longest shelf"},
		{50 * ft, mantel.Asymmetrical, 54 * ft, 200, 66, "the longest shelf; 600/9 is 66.7"},
	}
	r := mantel.CommonPractice()
	for _, test := range tests {
		garland, err := r.BaseGarland(test.length, test.look)
		if err != nil || garland != test.garland {
			t.Errorf("BaseGarland(%v, %v) = %v, %v, want %v: %s", test.length, test.look, garland, err, test.garland, test.reason)
		}
		picks, err := r.Picks(test.length, test.look)
		if err != nil || picks != test.picks {
			t.Errorf("Picks(%v, %v) = %v, %v, want %v: %s", test.length, test.look, picks, err, test.picks, test.reason)
		}
		ornaments, err := r.Ornaments(test.length, test.look)
		if err != nil || ornaments != test.ornaments {
			t.Errorf("Ornaments(%v, %v) = %v, %v, want %v: %s", test.length, test.look, ornaments, err, test.ornaments, test.reason)
		}
	}
}

// The heavy side of an asymmetrical mantel takes 1½ yd of ribbon, with bells:
// common practice.
func TestRibbonAndBells(t *testing.T) {
	r := mantel.CommonPractice()
	for _, test := range []struct {
		look   mantel.Look
		ribbon units.Length
		bells  int
	}{
		{mantel.Traditional, 0, 0},
		{mantel.Asymmetrical, 3 * units.Yard / 2, 3},
	} {
		if got, err := r.Ribbon(test.look); err != nil || got != test.ribbon {
			t.Errorf("Ribbon(%v) = %v, %v, want %v", test.look, got, err, test.ribbon)
		}
		if got, err := r.Bells(test.look); err != nil || got != test.bells {
			t.Errorf("Bells(%v) = %v, %v, want %v", test.look, got, err, test.bells)
		}
	}
}

// custom returns common practice with both looks changed alike.
func custom(change func(*mantel.LookRules)) mantel.Rules {
	r := mantel.CommonPractice()
	change(&r.Traditional)
	change(&r.Asymmetrical)
	return r
}

func TestHouseRules(t *testing.T) {
	m := mantel.Mantel{Length: 5 * ft}
	for _, test := range []struct {
		reason    string
		change    func(*mantel.LookRules)
		look      mantel.Look
		ornaments int
	}{
		{"no layers is one layer", func(l *mantel.LookRules) { l.Layers = 0 }, mantel.Asymmetrical, 19},
		{"one layer", func(l *mantel.LookRules) { l.Layers = 1 }, mantel.Asymmetrical, 19},
		{"two layers: 60/6 is 10 picks on top", func(l *mantel.LookRules) { l.Layers = 2 }, mantel.Asymmetrical, 9},
		{"two in each gap", func(l *mantel.LookRules) { l.OrnamentsPerGap = 2 }, mantel.Traditional, 14},
		{"no picks, no gaps", func(l *mantel.LookRules) { l.PickSpacing = 0 }, mantel.Traditional, 0},
		{"one pick, no gap", func(l *mantel.LookRules) { l.PickSpacing = 5 * ft }, mantel.Traditional, 0},
		{"none wanted", func(l *mantel.LookRules) { l.OrnamentsPerGap = 0 }, mantel.Traditional, 0},
	} {
		got, err := custom(test.change).Ornaments(m.Length, test.look)
		if err != nil || got != test.ornaments {
			t.Errorf("%s: got %d, %v, want %d", test.reason, got, err, test.ornaments)
		}
	}
}

func TestRulesErrors(t *testing.T) {
	const good = 5 * ft
	garland := func(r mantel.Rules, l units.Length, k mantel.Look) error { _, err := r.BaseGarland(l, k); return err }
	picks := func(r mantel.Rules, l units.Length, k mantel.Look) error { _, err := r.Picks(l, k); return err }
	ornaments := func(r mantel.Rules, l units.Length, k mantel.Look) error { _, err := r.Ornaments(l, k); return err }
	ribbon := func(r mantel.Rules, _ units.Length, k mantel.Look) error { _, err := r.Ribbon(k); return err }
	bells := func(r mantel.Rules, _ units.Length, k mantel.Look) error { _, err := r.Bells(k); return err }
	needs := func(r mantel.Rules, l units.Length, k mantel.Look) error {
		got, err := r.Needs(mantel.Mantel{Length: l}, mantel.Hanging{Look: k})
		if err != nil && got.Needs != nil {
			t.Error("Needs returned needs and an error")
		}
		return err
	}
	same := func(*mantel.LookRules) {}

	tests := []struct {
		call   func(mantel.Rules, units.Length, mantel.Look) error
		change func(*mantel.LookRules)
		length units.Length
		look   mantel.Look
		want   *units.Error // nil if the call must succeed
	}{
		{garland, same, ft, 0, nil},
		{garland, same, 50 * ft, 0, nil},
		{garland, same, ft - 1, 0, &units.Error{Func: "mantel.Rules.BaseGarland", Field: "length", Want: "1 ft to 50 ft", Err: units.ErrRange}},
		{garland, same, 50*ft + 1, 0, &units.Error{Func: "mantel.Rules.BaseGarland", Field: "length", Want: "1 ft to 50 ft", Err: units.ErrRange}},
		{garland, same, -5 * ft, 0, &units.Error{Func: "mantel.Rules.BaseGarland", Field: "length", Want: "1 ft to 50 ft", Err: units.ErrRange}},
		{garland, same, good, 2, &units.Error{Func: "mantel.Rules.BaseGarland", Field: "look", Want: "traditional or asymmetrical", Err: units.ErrName}},
		{garland, func(l *mantel.LookRules) { l.Extra = 0 }, good, 0, nil},
		{garland, func(l *mantel.LookRules) { l.Extra = 50 * ft }, good, 0, nil},
		{garland, func(l *mantel.LookRules) { l.Extra = -1 }, good, 0, &units.Error{Func: "mantel.Rules.BaseGarland", Field: "/traditional/extra", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{garland, func(l *mantel.LookRules) { l.Extra = 50*ft + 1 }, good, 0, &units.Error{Func: "mantel.Rules.BaseGarland", Field: "/traditional/extra", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{picks, same, ft - 1, 0, &units.Error{Func: "mantel.Rules.Picks", Field: "length", Want: "1 ft to 50 ft", Err: units.ErrRange}},
		{picks, func(l *mantel.LookRules) { l.PickSpacing = in / 2 }, good, 0, nil},
		{picks, func(l *mantel.LookRules) { l.PickSpacing = 50 * ft }, good, 0, nil},
		{picks, func(l *mantel.LookRules) { l.PickSpacing = in/2 - 1 }, good, 0, &units.Error{Func: "mantel.Rules.Picks", Field: "/traditional/pickSpacing", Want: "1/2 in to 50 ft, or 0", Err: units.ErrRange}},
		{picks, func(l *mantel.LookRules) { l.PickSpacing = 50*ft + 1 }, good, 0, &units.Error{Func: "mantel.Rules.Picks", Field: "/traditional/pickSpacing", Want: "1/2 in to 50 ft, or 0", Err: units.ErrRange}},
		{ornaments, same, good, 9, &units.Error{Func: "mantel.Rules.Ornaments", Field: "look", Want: "traditional or asymmetrical", Err: units.ErrName}},
		{ornaments, func(l *mantel.LookRules) { l.PickSpacing = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Ornaments", Field: "/traditional/pickSpacing", Want: "1/2 in to 50 ft, or 0", Err: units.ErrRange}},
		{ornaments, func(l *mantel.LookRules) { l.Layers = 10 }, good, 0, nil},
		{ornaments, func(l *mantel.LookRules) { l.Layers = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Ornaments", Field: "/traditional/layers", Want: "0 to 10", Err: units.ErrRange}},
		{ornaments, func(l *mantel.LookRules) { l.Layers = 11 }, good, 0, &units.Error{Func: "mantel.Rules.Ornaments", Field: "/traditional/layers", Want: "0 to 10", Err: units.ErrRange}},
		{ornaments, func(l *mantel.LookRules) { l.OrnamentsPerGap = 10 }, good, 0, nil},
		{ornaments, func(l *mantel.LookRules) { l.OrnamentsPerGap = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Ornaments", Field: "/traditional/ornamentsPerGap", Want: "0 to 10", Err: units.ErrRange}},
		{ornaments, func(l *mantel.LookRules) { l.OrnamentsPerGap = 11 }, good, 0, &units.Error{Func: "mantel.Rules.Ornaments", Field: "/traditional/ornamentsPerGap", Want: "0 to 10", Err: units.ErrRange}},
		{ribbon, same, 0, 2, &units.Error{Func: "mantel.Rules.Ribbon", Field: "look", Want: "traditional or asymmetrical", Err: units.ErrName}},
		{ribbon, func(l *mantel.LookRules) { l.Ribbon = 50 * ft }, 0, 0, nil},
		{ribbon, func(l *mantel.LookRules) { l.Ribbon = 50*ft + 1 }, 0, 1, &units.Error{Func: "mantel.Rules.Ribbon", Field: "/asymmetrical/ribbon", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{ribbon, func(l *mantel.LookRules) { l.Ribbon = -1 }, 0, 1, &units.Error{Func: "mantel.Rules.Ribbon", Field: "/asymmetrical/ribbon", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{bells, same, 0, 2, &units.Error{Func: "mantel.Rules.Bells", Field: "look", Want: "traditional or asymmetrical", Err: units.ErrName}},
		{bells, func(l *mantel.LookRules) { l.Bells = 100 }, 0, 1, nil},
		{bells, func(l *mantel.LookRules) { l.Bells = 101 }, 0, 1, &units.Error{Func: "mantel.Rules.Bells", Field: "/asymmetrical/bells", Want: "0 to 100", Err: units.ErrRange}},
		{bells, func(l *mantel.LookRules) { l.Bells = -1 }, 0, 1, &units.Error{Func: "mantel.Rules.Bells", Field: "/asymmetrical/bells", Want: "0 to 100", Err: units.ErrRange}},
		{needs, same, ft - 1, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/mantel/length", Want: "1 ft to 50 ft", Err: units.ErrRange}},
		{needs, same, good, 2, &units.Error{Func: "mantel.Rules.Needs", Field: "/hanging/look", Want: "traditional or asymmetrical", Err: units.ErrName}},
		{needs, func(l *mantel.LookRules) { l.Extra = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/extra", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{needs, func(l *mantel.LookRules) { l.PickSpacing = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/pickSpacing", Want: "1/2 in to 50 ft, or 0", Err: units.ErrRange}},
		{needs, func(l *mantel.LookRules) { l.Layers = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/layers", Want: "0 to 10", Err: units.ErrRange}},
		{needs, func(l *mantel.LookRules) { l.Ribbon = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/ribbon", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{needs, func(l *mantel.LookRules) { l.Bells = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/bells", Want: "0 to 100", Err: units.ErrRange}},
	}
	for i, test := range tests {
		checkError(t, i, test.call(custom(test.change), test.length, test.look), test.want)
	}
}

// checkError checks that err is want, its Value aside, or nil if want is nil.
func checkError(t *testing.T, row any, err error, want *units.Error) {
	t.Helper()
	if want == nil {
		if err != nil {
			t.Errorf("row %v: %v, want no error", row, err)
		}
		return
	}
	var got *units.Error
	if !errors.As(err, &got) || !errors.Is(err, want.Err) {
		t.Errorf("row %v: %v, want %v", row, err, want)
		return
	}
	if got.Value == "" {
		t.Errorf("row %v: %v names no value", row, err)
	}
	cleared, wanted := *got, *want
	cleared.Value = ""
	wanted.Func = "mantel." + strings.TrimPrefix(want.Func, "mantel.")
	if cleared != wanted {
		t.Errorf("row %v: got %+v, want %+v", row, cleared, wanted)
	}
}

func TestErrorText(t *testing.T) {
	err := &units.Error{Func: "mantel.Rules.Picks", Field: "length", Value: "6 in", Want: "1 ft to 50 ft", Err: units.ErrRange}
	const want = `mantel.Rules.Picks: length "6 in": out of range: want 1 ft to 50 ft`
	if err.Error() != want {
		t.Errorf("got %s, want %s", err, want)
	}
}

func TestNeeds(t *testing.T) {
	const own = "a starting figure of our own"
	type needs = []shopping.Need
	piece := func(n int) shopping.Quantity { return shopping.Quantity{Pieces: n} }
	length := func(l units.Length) shopping.Quantity { return shopping.Quantity{Length: l} }
	text := func(l units.Length) string { return l.String() }

	for _, test := range []struct {
		reason string
		rules  mantel.Rules
		look   mantel.Look
		want   needs
	}{
		{"traditional", mantel.CommonPractice(), mantel.Traditional, needs{
			{Item: shopping.Item{Kind: shopping.BaseGarland}, Quantity: length(7 * ft), Basis: "shelf of " + text(5*ft) + " and " + text(2*ft) + " more", Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Pick, Type: "mantel"}, Quantity: piece(8), Basis: "1 for each " + text(8*in) + " of " + text(5*ft), Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "mantel"}, Quantity: piece(7), Basis: "1 in each of 7 gaps between picks", Source: own},
			{Item: shopping.Item{Kind: shopping.Tie}, Quantity: piece(15), Basis: "1 for each of 8 picks and 7 ornaments", Source: own},
		}},
		{"asymmetrical", mantel.CommonPractice(), mantel.Asymmetrical, needs{
			{Item: shopping.Item{Kind: shopping.BaseGarland}, Quantity: length(9 * ft), Basis: "shelf of " + text(5*ft) + " and " + text(4*ft) + " more", Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Pick, Type: "mantel"}, Quantity: piece(20), Basis: "1 for each " + text(3*in) + " of " + text(5*ft), Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "mantel"}, Quantity: piece(6), Basis: "1 in each of 6 gaps between picks of the top layer", Source: own},
			{Item: shopping.Item{Kind: shopping.Ribbon, Type: "mantel"}, Quantity: shopping.Quantity{Pieces: 1, Length: 54 * in}, Basis: "one bow or fall at the heavy side", Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Bell}, Quantity: piece(3), Basis: "hung with the ribbon", Source: own},
			{Item: shopping.Item{Kind: shopping.Tie}, Quantity: piece(27), Basis: "1 for each of 20 picks and 6 ornaments, 1 for the ribbon", Source: own},
		}},
		{"asymmetrical in one layer, two in each gap", mantel.Rules{Asymmetrical: mantel.LookRules{PickSpacing: 20 * in, Layers: 1, OrnamentsPerGap: 2}}, mantel.Asymmetrical, needs{
			{Item: shopping.Item{Kind: shopping.BaseGarland}, Quantity: length(5 * ft), Basis: "shelf of " + text(5*ft) + " and " + text(0) + " more", Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Pick, Type: "mantel"}, Quantity: piece(3), Basis: "1 for each " + text(20*in) + " of " + text(5*ft), Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "mantel"}, Quantity: piece(4), Basis: "2 in each of 2 gaps between picks", Source: own},
			{Item: shopping.Item{Kind: shopping.Tie}, Quantity: piece(7), Basis: "1 for each of 3 picks and 4 ornaments", Source: own},
		}},
		{"nothing but garland", mantel.Rules{}, mantel.Traditional, needs{
			{Item: shopping.Item{Kind: shopping.BaseGarland}, Quantity: length(5 * ft), Basis: "shelf of " + text(5*ft) + " and " + text(0) + " more", Source: "common practice"},
		}},
		{"garland and one bow", mantel.Rules{Traditional: mantel.LookRules{Ribbon: ft}}, mantel.Traditional, needs{
			{Item: shopping.Item{Kind: shopping.BaseGarland}, Quantity: length(5 * ft), Basis: "shelf of " + text(5*ft) + " and " + text(0) + " more", Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Ribbon, Type: "mantel"}, Quantity: shopping.Quantity{Pieces: 1, Length: ft}, Basis: "one bow or fall in the middle", Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Tie}, Quantity: piece(1), Basis: "1 for each of 0 picks and 0 ornaments, 1 for the ribbon", Source: own},
		}},
	} {
		m := mantel.Mantel{Length: 5 * ft}
		h, cautions, err := test.rules.Hang(m, mantel.Hanging{Look: test.look})
		if err != nil || cautions != nil {
			t.Errorf("%s: %v, %v", test.reason, cautions, err)
		}
		d, err := test.rules.Needs(m, h)
		got := d.Needs
		if err != nil {
			t.Errorf("%s: %v", test.reason, err)
		}
		if diff := cmp.Diff(test.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", test.reason, diff)
		}
	}
}

func looks() *rapid.Generator[mantel.Look] {
	return rapid.SampledFrom([]mantel.Look{mantel.Traditional, mantel.Asymmetrical})
}

func lengths(least, most units.Length) *rapid.Generator[units.Length] {
	return rapid.Custom(func(t *rapid.T) units.Length {
		return units.Length(rapid.Int64Range(int64(least), int64(most)).Draw(t, "nm"))
	})
}

func TestRulesAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, look := mantel.CommonPractice(), looks().Draw(t, "look")
		a := lengths(mantel.MinLength, mantel.MaxLength).Draw(t, "a")
		b := lengths(a, mantel.MaxLength).Draw(t, "b")
		ga, _ := r.BaseGarland(a, look)
		gb, err := r.BaseGarland(b, look)
		if err != nil || gb-ga != b-a {
			t.Errorf("garland for %v is %v, for %v %v, %v", a, ga, b, gb, err)
		}
		na, _ := r.Picks(a, look)
		nb, err := r.Picks(b, look)
		if err != nil || na > nb {
			t.Errorf("picks for %v are %v, for %v %v, %v", a, na, b, nb, err)
		}
		oa, _ := r.Ornaments(a, look)
		ob, err := r.Ornaments(b, look)
		if err != nil || oa > ob {
			t.Errorf("ornaments for %v are %v, for %v %v, %v", a, oa, b, ob, err)
		}
		// Rounding is up, and by less than a pick: (n-1)·spacing < length ≤ n·spacing.
		spacing := map[mantel.Look]units.Length{mantel.Traditional: 8 * in, mantel.Asymmetrical: 3 * in}[look]
		if n := units.Length(na); n*spacing < a || (n-1)*spacing >= a {
			t.Errorf("%d picks for %v", na, a)
		}
	})
}

// A longer shelf never costs less, whatever packs there are.
func TestCostIsMonotone(t *testing.T) {
	price := func(p string) decimal.Decimal { return decimal.RequireFromString(p) }
	pieces := func(n int) shopping.Quantity { return shopping.Quantity{Pieces: n} }
	length := func(l units.Length) shopping.Quantity { return shopping.Quantity{Length: l} }
	shop := shopping.Shop{Offers: []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.BaseGarland}, Name: "6 ft", Pack: length(6 * ft), Price: price("14.00")},
		{Item: shopping.Item{Kind: shopping.BaseGarland}, Name: "9 ft", Pack: length(9 * ft), Price: price("19.00")},
		{Item: shopping.Item{Kind: shopping.Pick, Type: "mantel"}, Name: "box of 6", Pack: pieces(6), Price: price("5.00")},
		{Item: shopping.Item{Kind: shopping.Pick, Type: "mantel"}, Name: "box of 24", Pack: pieces(24), Price: price("16.00")},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "mantel"}, Name: "box of 9", Pack: pieces(9), Price: price("11.00")},
		{Item: shopping.Item{Kind: shopping.Ribbon, Type: "mantel"}, Name: "5 yd", Pack: length(15 * ft), Price: price("8.00")},
		{Item: shopping.Item{Kind: shopping.Bell}, Name: "set of 3", Pack: pieces(3), Price: price("4.50")},
		{Item: shopping.Item{Kind: shopping.Tie}, Name: "pack of 25", Pack: pieces(25), Price: price("3.00")},
	}}
	rapid.Check(t, func(t *rapid.T) {
		look := looks().Draw(t, "look")
		a := lengths(mantel.MinLength, 12*ft).Draw(t, "a")
		b := lengths(a, 12*ft).Draw(t, "b")
		cost := func(l units.Length) decimal.Decimal {
			h, _, err := mantel.CommonPractice().Hang(mantel.Mantel{Length: l}, mantel.Hanging{Look: look})
			if err != nil {
				t.Fatal(err)
			}
			d, err := mantel.CommonPractice().Needs(mantel.Mantel{Length: l}, h)
			if err != nil {
				t.Fatal(err)
			}
			list, err := shop.List(d.Needs)
			if err != nil {
				t.Fatal(err)
			}
			return list.Total
		}
		if short, long := cost(a), cost(b); long.LessThan(short) || !short.IsPositive() {
			t.Fatalf("%v costs %v, %v costs %v", a, short, b, long)
		}
	})
}
