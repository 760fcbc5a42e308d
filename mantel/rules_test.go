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
		{5 * ft, mantel.AsymmetricalLeft, 9 * ft, 20, 6, "the usual figures; 60/3; 60/(3·3) is 6.7, so 7 in the top layer"},
		{64 * in, mantel.Traditional, 88 * in, 8, 7, "64/8 divides"},
		{64*in + 1, mantel.Traditional, 88*in + 1, 9, 8, "a nanometer more is one pick more"},
		{64 * in, mantel.AsymmetricalLeft, 112 * in, 22, 7, "64/3 is 21.3; 64/9 is 7.1"},
		{63 * in, mantel.AsymmetricalLeft, 111 * in, 21, 6, "63/3 and 63/9 divide"},
		{1 * ft, mantel.Traditional, 3 * ft, 2, 1, "the least shelf"},
		{1 * ft, mantel.AsymmetricalLeft, 5 * ft, 4, 1, "the least shelf"},
		{50 * ft, mantel.Traditional, 52 * ft, 75, 74, "the longest shelf"},
		{50 * ft, mantel.AsymmetricalLeft, 54 * ft, 200, 66, "the longest shelf; 600/9 is 66.7"},
	}
	r := mantel.CommonPractice()
	for _, test := range tests {
		m := mantel.Mantel{Length: test.length}
		h, cautions, err := r.Hang(m, mantel.Hanging{Look: test.look}, units.InFeetInches)
		if err != nil || len(cautions) > 0 {
			t.Errorf("%s: %v, %v", test.reason, cautions, err)
		}
		needs, err := r.Needs(m, h, units.InFeetInches)
		if err != nil || needs[0].Quantity.Length != test.garland || needs[0].Source != "common practice" {
			t.Errorf("garland of %v, %v: %v, %v, want %v: %s", test.length, test.look, needs[0], err, test.garland, test.reason)
		}
		if got := pieces(needs, shopping.Pick); got != test.picks {
			t.Errorf("picks of %v, %v: %d, want %d: %s", test.length, test.look, got, test.picks, test.reason)
		}
		if got := pieces(needs, shopping.Ornament); got != test.ornaments {
			t.Errorf("ornaments of %v, %v: %d, want %d: %s", test.length, test.look, got, test.ornaments, test.reason)
		}
	}
}

// pieces returns how many of a kind there are among needs.
func pieces(needs []shopping.Need, kind shopping.Kind) (n int) {
	for _, need := range needs {
		if need.Item.Kind == kind {
			n += need.Quantity.Pieces
		}
	}
	return n
}

// The heavy end of an asymmetrical mantel takes one piece of ribbon of 1½ yd, with
// bells: common practice.
func TestRibbonAndBells(t *testing.T) {
	r := mantel.CommonPractice()
	for _, look := range []mantel.Look{mantel.Traditional, mantel.AsymmetricalLeft, mantel.AsymmetricalRight} {
		needs, err := r.Needs(mantel.Mantel{Length: 5 * ft}, mantel.Hanging{Look: look}, units.InFeetInches)
		if err != nil {
			t.Fatal(err)
		}
		want := min(int(look), 1)
		if got := pieces(needs, shopping.Ribbon); got != want {
			t.Errorf("%v: %d ribbons, want %d", look, got, want)
		}
		if got := pieces(needs, shopping.Bell); got != 3*want {
			t.Errorf("%v: %d bells, want %d", look, got, 3*want)
		}
		for _, n := range needs {
			if n.Item.Kind == shopping.Ribbon && n.Quantity.Length != 3*units.Yard/2 {
				t.Errorf("%v", n)
			}
		}
	}
}

// An end stops 6 in and half of the thickness above the hearth: 10 in below a shelf of 18 in; a foot below one of 20 in, as the
// rule has it.
func TestLowShelf(t *testing.T) {
	for height, want := range map[units.Length]units.Length{18 * in: 10 * in, 20 * in: ft, 21 * in: ft} {
		h, cautions, err := mantel.CommonPractice().Hang(mantel.Mantel{Length: 5 * ft, Height: height}, mantel.Hanging{Thickness: 4 * in}, units.InFeetInches)
		if err != nil || h.Left != want || h.Right != want || (len(cautions) > 0) != (want < ft) {
			t.Errorf("%v high: %v, %v, %v, want %v at each end", height, h, cautions, err, want)
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
		{"no layers is one layer", func(l *mantel.LookRules) { l.Layers = 0 }, mantel.AsymmetricalLeft, 19},
		{"one layer", func(l *mantel.LookRules) { l.Layers = 1 }, mantel.AsymmetricalLeft, 19},
		{"two layers: 60/6 is 10 picks on top", func(l *mantel.LookRules) { l.Layers = 2 }, mantel.AsymmetricalLeft, 9},
		{"two in each gap", func(l *mantel.LookRules) { l.OrnamentsPerGap = 2 }, mantel.Traditional, 14},
		{"no picks, no gaps", func(l *mantel.LookRules) { l.PickSpacing = 0 }, mantel.Traditional, 0},
		{"one pick, no gap", func(l *mantel.LookRules) { l.PickSpacing = 5 * ft }, mantel.Traditional, 0},
		{"none wanted", func(l *mantel.LookRules) { l.OrnamentsPerGap = 0 }, mantel.Traditional, 0},
	} {
		needs, err := custom(test.change).Needs(m, mantel.Hanging{Look: test.look}, units.InFeetInches)
		if got := pieces(needs, shopping.Ornament); err != nil || got != test.ornaments {
			t.Errorf("%s: got %d, %v, want %d", test.reason, got, err, test.ornaments)
		}
	}
}

func TestRulesErrors(t *testing.T) {
	const good = 5 * ft
	needs := func(r mantel.Rules, l units.Length, k mantel.Look) error {
		got, err := r.Needs(mantel.Mantel{Length: l}, mantel.Hanging{Look: k}, units.InFeetInches)
		if err != nil && got != nil {
			t.Error("Needs returned needs and an error")
		}
		return err
	}
	same := func(*mantel.LookRules) {}

	tests := []struct {
		change func(*mantel.LookRules)
		length units.Length
		look   mantel.Look
		want   *units.Error // nil if the call must succeed
	}{
		{same, ft, 0, nil},
		{same, 50 * ft, 0, nil},
		{same, ft - 1, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/mantel/length", Want: "1 ft to 50 ft", Err: units.ErrRange}},
		{same, 50*ft + 1, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/mantel/length", Want: "1 ft to 50 ft", Err: units.ErrRange}},
		{same, -5 * ft, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/mantel/length", Want: "1 ft to 50 ft", Err: units.ErrRange}},
		{same, good, 3, &units.Error{Func: "mantel.Rules.Needs", Field: "/hanging/look", Want: wantLook, Err: units.ErrName}},
		{func(l *mantel.LookRules) { l.Extra = 0 }, good, 0, nil},
		{func(l *mantel.LookRules) { l.Extra = 50 * ft }, good, 0, nil},
		{func(l *mantel.LookRules) { l.Extra = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/extra", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Extra = 50*ft + 1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/extra", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.PickSpacing = in / 2 }, good, 0, nil},
		{func(l *mantel.LookRules) { l.PickSpacing = 50 * ft }, good, 0, nil},
		{func(l *mantel.LookRules) { l.PickSpacing = in/2 - 1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/pickSpacing", Want: "1/2 in to 50 ft, or 0", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.PickSpacing = 50*ft + 1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/pickSpacing", Want: "1/2 in to 50 ft, or 0", Err: units.ErrRange}},
		{same, good, 9, &units.Error{Func: "mantel.Rules.Needs", Field: "/hanging/look", Want: wantLook, Err: units.ErrName}},
		{func(l *mantel.LookRules) { l.PickSpacing = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/pickSpacing", Want: "1/2 in to 50 ft, or 0", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Layers = 10 }, good, 0, nil},
		{func(l *mantel.LookRules) { l.Layers = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/layers", Want: "0 to 10", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Layers = 11 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/layers", Want: "0 to 10", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.OrnamentsPerGap = 10 }, good, 0, nil},
		{func(l *mantel.LookRules) { l.OrnamentsPerGap = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/ornamentsPerGap", Want: "0 to 10", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.OrnamentsPerGap = 11 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/ornamentsPerGap", Want: "0 to 10", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Ribbon = 50 * ft }, good, 0, nil},
		{func(l *mantel.LookRules) { l.Ribbon = 50*ft + 1 }, good, 1, &units.Error{Func: "mantel.Rules.Needs", Field: "/asymmetrical/ribbon", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Ribbon = -1 }, good, 1, &units.Error{Func: "mantel.Rules.Needs", Field: "/asymmetrical/ribbon", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Bells = 100 }, good, 1, nil},
		{func(l *mantel.LookRules) { l.Bells = 101 }, good, 1, &units.Error{Func: "mantel.Rules.Needs", Field: "/asymmetrical/bells", Want: "0 to 100", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Bells = -1 }, good, 1, &units.Error{Func: "mantel.Rules.Needs", Field: "/asymmetrical/bells", Want: "0 to 100", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Ribbon = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/ribbon", Want: "0 ft to 50 ft", Err: units.ErrRange}},
		{func(l *mantel.LookRules) { l.Bells = -1 }, good, 0, &units.Error{Func: "mantel.Rules.Needs", Field: "/traditional/bells", Want: "0 to 100", Err: units.ErrRange}},
	}
	for i, test := range tests {
		checkError(t, i, needs(custom(test.change), test.length, test.look), test.want)
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
	_, err := mantel.Mantel{Length: 6 * in}.Hang(mantel.Hanging{})
	const want = `mantel.Mantel.Hang: /length "6 in": out of range: want 1 ft to 50 ft`
	if err == nil || err.Error() != want {
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
		{"asymmetrical", mantel.CommonPractice(), mantel.AsymmetricalLeft, needs{
			{Item: shopping.Item{Kind: shopping.BaseGarland}, Quantity: length(9 * ft), Basis: "shelf of " + text(5*ft) + " and " + text(4*ft) + " more", Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Pick, Type: "mantel"}, Quantity: piece(20), Basis: "1 for each " + text(3*in) + " of " + text(5*ft), Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "mantel"}, Quantity: piece(6), Basis: "1 in each of 6 gaps between picks of the top layer", Source: own},
			{Item: shopping.Item{Kind: shopping.Ribbon, Type: "mantel"}, Quantity: shopping.Quantity{Pieces: 1, Length: 54 * in}, Basis: "one bow or fall at the heavy end", Source: "common practice"},
			{Item: shopping.Item{Kind: shopping.Bell}, Quantity: piece(3), Basis: "hung with the ribbon", Source: own},
			{Item: shopping.Item{Kind: shopping.Tie}, Quantity: piece(27), Basis: "1 for each of 20 picks and 6 ornaments, 1 for the ribbon", Source: own},
		}},
		{"asymmetrical in one layer, two in each gap", mantel.Rules{Asymmetrical: mantel.LookRules{PickSpacing: 20 * in, Layers: 1, OrnamentsPerGap: 2}}, mantel.AsymmetricalLeft, needs{
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
		h, cautions, err := test.rules.Hang(m, mantel.Hanging{Look: test.look}, units.InFeetInches)
		if err != nil || cautions != nil {
			t.Errorf("%s: %v, %v", test.reason, cautions, err)
		}
		got, err := test.rules.Needs(m, h, units.InFeetInches)
		if err != nil {
			t.Errorf("%s: %v", test.reason, err)
		}
		if diff := cmp.Diff(test.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", test.reason, diff)
		}
	}
}

func looks() *rapid.Generator[mantel.Look] {
	return rapid.SampledFrom([]mantel.Look{mantel.Traditional, mantel.AsymmetricalLeft, mantel.AsymmetricalRight})
}

func lengths(least, most units.Length) *rapid.Generator[units.Length] {
	return rapid.Custom(func(t *rapid.T) units.Length {
		return units.Length(rapid.Int64Range(int64(least), int64(most)).Draw(t, "nm"))
	})
}

func TestRulesAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, look := mantel.CommonPractice(), looks().Draw(t, "look")
		a := lengths(ft, 50*ft).Draw(t, "a")
		b := lengths(a, 50*ft).Draw(t, "b")
		needs := func(l units.Length) []shopping.Need {
			h, _, err := r.Hang(mantel.Mantel{Length: l}, mantel.Hanging{Look: look}, units.InFeetInches)
			if err != nil {
				t.Fatal(err)
			}
			needs, err := r.Needs(mantel.Mantel{Length: l}, h, units.InFeetInches)
			if err != nil {
				t.Fatal(err)
			}
			return needs
		}
		na, nb := needs(a), needs(b)
		if ga, gb := na[0].Quantity.Length, nb[0].Quantity.Length; gb-ga != b-a {
			t.Errorf("garland for %v is %v, for %v %v", a, ga, b, gb)
		}
		for _, kind := range []shopping.Kind{shopping.Pick, shopping.Ornament, shopping.Tie} {
			if pa, pb := pieces(na, kind), pieces(nb, kind); pa > pb {
				t.Errorf("%v for %v are %v, for %v %v", kind, a, pa, b, pb)
			}
		}
		// Rounding is up, and by less than a pick: (n-1)·spacing < length ≤ n·spacing.
		spacing := 3 * in
		if look == mantel.Traditional {
			spacing = 8 * in
		}
		if n := units.Length(pieces(na, shopping.Pick)); n*spacing < a || (n-1)*spacing >= a {
			t.Errorf("%d picks for %v", n, a)
		}
	})
}

// A longer shelf never costs less, whatever packs there are.
func TestCostIsMonotone(t *testing.T) {
	price := func(p string) decimal.Decimal { return decimal.RequireFromString(p) }
	piece := func(n int) shopping.Quantity { return shopping.Quantity{Pieces: n} }
	length := func(l units.Length) shopping.Quantity { return shopping.Quantity{Length: l} }
	shop := shopping.Shop{Offers: []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.BaseGarland}, Name: "6 ft", Pack: length(6 * ft), Price: price("14.00")},
		{Item: shopping.Item{Kind: shopping.BaseGarland}, Name: "9 ft", Pack: length(9 * ft), Price: price("19.00")},
		{Item: shopping.Item{Kind: shopping.Pick, Type: "mantel"}, Name: "box of 6", Pack: piece(6), Price: price("5.00")},
		{Item: shopping.Item{Kind: shopping.Pick, Type: "mantel"}, Name: "box of 24", Pack: piece(24), Price: price("16.00")},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "mantel"}, Name: "box of 9", Pack: piece(9), Price: price("11.00")},
		{Item: shopping.Item{Kind: shopping.Ribbon, Type: "mantel"}, Name: "5 yd", Pack: length(15 * ft), Price: price("8.00")},
		{Item: shopping.Item{Kind: shopping.Bell}, Name: "set of 3", Pack: piece(3), Price: price("4.50")},
		{Item: shopping.Item{Kind: shopping.Tie}, Name: "pack of 25", Pack: piece(25), Price: price("3.00")},
	}}
	rapid.Check(t, func(t *rapid.T) {
		look := looks().Draw(t, "look")
		a := lengths(ft, 12*ft).Draw(t, "a")
		b := lengths(a, 12*ft).Draw(t, "b")
		cost := func(l units.Length) decimal.Decimal {
			h, _, err := mantel.CommonPractice().Hang(mantel.Mantel{Length: l}, mantel.Hanging{Look: look}, units.InFeetInches)
			if err != nil {
				t.Fatal(err)
			}
			needs, err := mantel.CommonPractice().Needs(mantel.Mantel{Length: l}, h, units.InFeetInches)
			if err != nil {
				t.Fatal(err)
			}
			list, err := shop.List(needs)
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
