package mantel_test

import (
	"math"
	"slices"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

var tearoom = mantel.Mantel{
	Length: 64 * in, Height: 54 * in, Depth: 8 * in,
	Opening: mantel.Rectangle{Width: 36 * in, Height: 30 * in, Gap: 16 * in},
}

func TestFindDrops(t *testing.T) {
	const L, R = mantel.AsymmetricalLeft, mantel.AsymmetricalRight
	for _, test := range []struct {
		reason      string
		garland     units.Length
		look        mantel.Look
		h           mantel.Hanging
		left, right units.Length
	}{
		{"2 ft more than the shelf, half at each end", 88 * in, mantel.Traditional, mantel.Hanging{}, ft, ft},
		{"the drops that h had are not looked at", 88 * in, mantel.Traditional, mantel.Hanging{Left: in, Right: 2 * in}, ft, ft},
		{"an odd nanometer falls at the right", 88*in + 1, mantel.Traditional, mantel.Hanging{}, ft, ft + 1},
		{"nothing to fall", 64 * in, mantel.Traditional, mantel.Hanging{}, 0, 0},
		{"4 ft more, all at the heavy end", 112 * in, L, mantel.Hanging{}, 4 * ft, 0},
		{"4 ft more, all at the heavy end", 112 * in, R, mantel.Hanging{}, 0, 4 * ft},
		{"the light end falls as it is told", 112 * in, L, mantel.Hanging{Left: ft, Right: 6 * in}, 42 * in, 6 * in},
		{"the light end falls as it is told", 112 * in, R, mantel.Hanging{Left: 6 * in, Right: ft}, 6 * in, 42 * in},
		{"all that is left is for the light end", 70 * in, R, mantel.Hanging{Left: 6 * in}, 6 * in, 0},
	} {
		h := test.h
		h.Look = test.look
		want := h
		want.Left, want.Right = test.left, test.right
		got, err := tearoom.FindDrops(test.garland, h)
		if err != nil || got != want {
			t.Errorf("%s: got %v, %v, want %v", test.reason, got, err, want)
		}
		if back, err := garland(tearoom, got); err != nil || back != test.garland {
			t.Errorf("%s: takes %v, %v, want %v", test.reason, back, err, test.garland)
		}
	}
}

func TestGarlandOfSwags(t *testing.T) {
	m := mantel.Mantel{Length: 15 * ft}
	h := mantel.Hanging{Swags: 3, Sag: 9 * in, Left: 2 * ft, Right: ft}
	// Three of the 5 ft swag 0.75 ft deep, and 3 ft of drops. The reference table
	// has 15 digits.
	want := 3*5.28836997429725 + 3
	if got, err := garland(m, h); err != nil || math.Abs(got.In(units.Foot)-want) > 1e-8 {
		t.Errorf("got %.12f ft, %v, want %.12f", got.In(units.Foot), err, want)
	}
	length, _ := garland(m, h)
	flat, err := m.Hang(mantel.Hanging{Swags: 3, Left: 2 * ft, Right: ft})
	if err != nil {
		t.Fatal(err)
	}
	if got, err := flat.FindSag(length); err != nil || got.Sag < 9*in-1 || got.Sag > 9*in+1 {
		t.Errorf("sag %v, %v, want 9 in", got.Sag, err)
	}
	flat.Sag = 7 * in // is not looked at
	if got, err := flat.FindSag(18 * ft); err != nil || got.Sag != 0 {
		t.Errorf("garland that just reaches: sag %v, %v, want 0", got.Sag, err)
	}
}

// The garland of the needs is that of the hanging, rounded up to the inch, with the rule
// beside it: 64 in and 2 ft.
func TestNeedsFollowTheHanging(t *testing.T) {
	for _, test := range []struct {
		h     mantel.Hanging
		whole units.Length
		basis string
	}{
		{mantel.Hanging{Left: ft, Right: ft}, 88 * in, "shelf of 5 ft 4 in and 2 ft more"},
		{mantel.Hanging{Left: ft, Right: 2 * ft}, 100 * in, "5 ft 4 in along the shelf, 1 ft falling at the left, 2 ft at the right; by rule 7 ft 4 in, 1 ft more"},
		{mantel.Hanging{Left: ft + 1, Right: 2 * ft}, 101 * in, "5 ft 4 in along the shelf, 1 ft falling at the left, 2 ft at the right; by rule 7 ft 4 in, 1 ft 1/16 in more"},
		{mantel.Hanging{Swags: 2, Left: ft}, 76 * in, "5 ft 4 in close along 3 hooks, 1 ft falling at the left, 0 ft at the right; by rule 7 ft 4 in, 1 ft less"},
	} {
		needs, err := mantel.CommonPractice().Needs(tearoom, test.h, units.InFeetInches)
		if err != nil || needs[0].Basis != test.basis || needs[0].Quantity != (shopping.Quantity{Length: test.whole}) {
			t.Errorf("got %+v, %v, want %v, %s", needs[0], err, test.whole, test.basis)
		}
	}
}

func TestHangingErrors(t *testing.T) {
	const fn = "Mantel.Hang"
	rangeOf := func(field, want string) *units.Error {
		return &units.Error{Func: fn, Field: field, Want: want, Err: units.ErrRange}
	}
	fitOf := func(field, want string) *units.Error {
		return &units.Error{Func: fn, Field: field, Want: want, Err: units.ErrFit}
	}
	m := tearoom
	open := mantel.Rectangle{Width: in, Height: in, Gap: in}
	sized := func(o mantel.Rectangle) mantel.Mantel {
		return mantel.Mantel{Length: 5 * ft, Height: 5 * ft, Opening: o}
	}
	none := mantel.Hanging{}
	const wantOpening = "1 in to 50 ft, or no opening at all"

	for i, test := range []struct {
		m    mantel.Mantel
		h    mantel.Hanging
		want *units.Error
	}{
		{mantel.Mantel{Length: ft}, none, nil},
		{mantel.Mantel{Length: ft - 1}, none, rangeOf("/length", "1 ft to 50 ft")},
		{mantel.Mantel{Length: 50*ft + 1}, none, rangeOf("/length", "1 ft to 50 ft")},
		{mantel.Mantel{Length: 50 * ft, Height: 50 * ft, Depth: 10 * ft}, none, nil},
		{mantel.Mantel{Length: ft, Height: ft, Depth: in / 8}, none, nil},
		{mantel.Mantel{Length: ft, Height: ft - 1}, none, rangeOf("/height", "1 ft to 50 ft, or 0 ft if not measured")},
		{mantel.Mantel{Length: ft, Height: -1}, none, rangeOf("/height", "1 ft to 50 ft, or 0 ft if not measured")},
		{mantel.Mantel{Length: ft, Height: 50*ft + 1}, none, rangeOf("/height", "1 ft to 50 ft, or 0 ft if not measured")},
		{mantel.Mantel{Length: ft, Depth: in/8 - 1}, none, rangeOf("/depth", "1/8 in to 10 ft, or 0 ft if not measured")},
		{mantel.Mantel{Length: ft, Depth: 10*ft + 1}, none, rangeOf("/depth", "1/8 in to 10 ft, or 0 ft if not measured")},
		{sized(open), none, nil},
		{sized(mantel.Rectangle{Width: in - 1, Height: in, Gap: in}), none, rangeOf("/opening/width", wantOpening)},
		{sized(mantel.Rectangle{Width: in, Height: in - 1, Gap: in}), none, rangeOf("/opening/height", wantOpening)},
		{sized(mantel.Rectangle{Width: in, Height: in, Gap: in - 1}), none, rangeOf("/opening/gap", wantOpening)},
		{sized(mantel.Rectangle{Gap: in}), none, rangeOf("/opening/width", wantOpening)},
		{sized(mantel.Rectangle{Width: 50*ft + 1, Height: in, Gap: in}), none, rangeOf("/opening/width", wantOpening)},
		{mantel.Mantel{Length: 50 * ft, Opening: mantel.Rectangle{Width: 50 * ft, Height: 50 * ft, Gap: 50 * ft}}, none, nil},
		{sized(mantel.Rectangle{Width: 5 * ft, Height: in, Gap: in}), none, nil},
		{sized(mantel.Rectangle{Width: 9 * ft, Height: in, Gap: in, Offset: -50 * ft}), none, nil}, // wider than the shelf, and beside it
		{sized(mantel.Rectangle{Width: ft, Height: in, Gap: in, Offset: 50*ft + 1}), none, rangeOf("/opening/offset", "-50 ft to 50 ft")},
		{sized(mantel.Rectangle{Width: ft, Height: 4 * ft, Gap: ft}), none, nil},
		{sized(mantel.Rectangle{Width: ft, Height: 4*ft + 1, Gap: ft}), none, fitOf("/opening/height", "at most 5 ft together with the 1 ft below the shelf, from the shelf to the hearth")},

		{m, mantel.Hanging{Swags: -1}, rangeOf("/hanging/swags", "0 to 100")},
		{m, mantel.Hanging{Swags: 101}, rangeOf("/hanging/swags", "0 to 100")},
		{mantel.Mantel{Length: 100 * in}, mantel.Hanging{Swags: 100}, nil},
		{m, mantel.Hanging{Swags: 64}, nil},
		{m, mantel.Hanging{Swags: 65}, fitOf("/hanging/swags", "at most 64, an inch or more each on a shelf of 5 ft 4 in")},
		{m, mantel.Hanging{Sag: 1}, fitOf("/hanging/sag", "0 ft where there are no swags")},
		{m, mantel.Hanging{Swags: 2, Sag: -1}, rangeOf("/hanging/sag", "0 ft to 50 ft")},
		{m, mantel.Hanging{Swags: 2, Sag: 54 * in}, nil},
		{m, mantel.Hanging{Swags: 2, Sag: 54*in + 1}, fitOf("/hanging/sag", "at most 4 ft 6 in, from the shelf to the hearth")},
		{mantel.Mantel{Length: ft}, mantel.Hanging{Swags: 2, Sag: 50 * ft}, nil},
		{mantel.Mantel{Length: ft}, mantel.Hanging{Swags: 2, Sag: 50*ft + 1}, rangeOf("/hanging/sag", "0 ft to 50 ft")},
		{m, mantel.Hanging{Left: -1}, rangeOf("/hanging/left", "0 ft to 50 ft")},
		{m, mantel.Hanging{Right: -1}, rangeOf("/hanging/right", "0 ft to 50 ft")},
		{m, mantel.Hanging{Fall: -1}, rangeOf("/hanging/fall", "0 ft to 50 ft")},
		{mantel.Mantel{Length: ft}, mantel.Hanging{Left: 50 * ft, Right: 50 * ft, Fall: 50 * ft}, nil},
		{mantel.Mantel{Length: ft}, mantel.Hanging{Right: 50*ft + 1}, rangeOf("/hanging/right", "0 ft to 50 ft")},
		{m, mantel.Hanging{Left: 54 * in, Right: 54 * in, Fall: 54 * in}, nil},
		{m, mantel.Hanging{Left: 54*in + 1}, fitOf("/hanging/left", "at most 4 ft 6 in, from the shelf to the hearth")},
		{m, mantel.Hanging{Right: 54*in + 1}, fitOf("/hanging/right", "at most 4 ft 6 in, from the shelf to the hearth")},
		{m, mantel.Hanging{Fall: 54*in + 1}, fitOf("/hanging/fall", "at most 4 ft 6 in, from the shelf to the hearth")},
		{m, mantel.Hanging{Thickness: 3 * ft}, nil},
		{m, mantel.Hanging{Thickness: -1}, rangeOf("/hanging/thickness", "0 ft to 3 ft")},
		{m, mantel.Hanging{Thickness: 3*ft + 1}, rangeOf("/hanging/thickness", "0 ft to 3 ft")},
		{m, mantel.Hanging{Look: 3}, &units.Error{Func: fn, Field: "/hanging/look", Want: wantLook, Err: units.ErrName}},
	} {
		got, err := test.m.Hang(test.h)
		checkError(t, i, err, test.want)
		if err != nil && got.Hooks != nil {
			t.Errorf("row %d: %v with an error", i, got)
		}
	}
}

// A length in an error is given in feet and inches to the nanometer, unless it is a
// whole number of millimeters, so that it never reads like the limit it is past.
func TestErrorsInInches(t *testing.T) {
	swags := mantel.Hanging{Swags: 2, Sag: in / 10}
	for want, call := range map[string]func() error{
		`mantel.Run.Loads: /sag "0.1 in": out of range: want 0 ft, or a hundredth of the span or more, 0.3 in: a taut garland pulls without limit`: func() error {
			_, err := loads(mantel.Mantel{Length: 60 * in}, swags, units.Pound, mantel.Hook{Rating: units.Pound})
			return err
		},
		`mantel.Mantel.Hang: /opening/gap "0.9 in": out of range: want 1 in to 50 ft, or no opening at all`: func() error {
			_, err := mantel.Mantel{Length: 5 * ft, Opening: mantel.Rectangle{Width: ft, Height: ft, Gap: 9 * in / 10}}.Hang(mantel.Hanging{})
			return err
		},
		`mantel.Mantel.Hang: /hanging/left "4 ft 6.00000004 in": does not fit: want at most 4 ft 6 in, from the shelf to the hearth`: func() error {
			_, err := tearoom.Hang(mantel.Hanging{Left: 54*in + 1})
			return err
		},
		`mantel.Mantel.Hang: /hanging/left "1.371 m": does not fit: want at most 1.37 m, from the shelf to the hearth`: func() error {
			_, err := mantel.Mantel{Length: 2 * units.Meter, Height: 137 * units.Centimeter}.Hang(mantel.Hanging{Left: 1371 * units.Millimeter})
			return err
		},
		`mantel.Run.Below: along "5 ft 10.1 in": out of range: want 0 ft to 5 ft 10.05 in, from the first hook to the last`: func() error {
			_, err := swag(7005*in/100, 0, 0).Below(701 * in / 10)
			return err
		},
		`mantel.Run.FindSag: garland "5 ft 10 in": does not fit: want at least 5 ft 10.05 in to reach from hook to hook`: func() error {
			_, err := swag(7005*in/100, 0, 0).FindSag(70 * in)
			return err
		},
	} {
		if err := call(); err == nil || err.Error() != want {
			t.Errorf("got  %v\nwant %s", err, want)
		}
	}
}

// Every method of a mantel and a run checks it, names itself and returns nothing.
func TestEveryMethodChecks(t *testing.T) {
	bad, none := mantel.Mantel{}, mantel.Run{}
	hook := mantel.Hook{Rating: units.Pound}
	dst := []mantel.Point{{1, 2}}
	length := &units.Error{Field: "/length", Want: "1 ft to 50 ft", Err: units.ErrRange}
	hooks := &units.Error{Field: "/hooks", Want: "2 to 101 hooks", Err: units.ErrRange}
	for fn, test := range map[string]struct {
		call func() (got any, isZero bool, err error)
		want *units.Error
	}{
		"Mantel.Hang": {func() (any, bool, error) { v, err := bad.Hang(mantel.Hanging{}); return v, v.Hooks == nil, err }, length},
		"Mantel.FindDrops": {func() (any, bool, error) {
			v, err := bad.FindDrops(6*ft, mantel.Hanging{})
			return v, v == mantel.Hanging{}, err
		}, length},
		"Mantel.Clearances": {func() (any, bool, error) {
			v, err := bad.Clearances(mantel.Hanging{}, units.InFeetInches)
			return v, v.Places == nil && v.Violations == nil && v.Cautions == nil, err
		}, length},
		"Mantel.Stockings": {func() (any, bool, error) {
			v, c, err := bad.Stockings(mantel.Stockings{}, hook, mantel.Clearances{}, units.InFeetInches)
			return v, v.Needs == nil && v.Hooks == nil && c.Places == nil && c.Cautions == nil, err
		}, length},
		"Run.Garland": {func() (any, bool, error) { v, err := none.Garland(); return v, v == 0, err }, hooks},
		"Run.FindSag": {func() (any, bool, error) { v, err := none.FindSag(ft); return v, v.Hooks == nil, err }, hooks},
		"Run.Below":   {func() (any, bool, error) { v, err := none.Below(0); return v, v == 0, err }, hooks},
		"Run.Needs":   {func() (any, bool, error) { v, err := none.Needs(0, units.InFeetInches); return v, v == nil, err }, hooks},
		"Run.Lights": {func() (any, bool, error) {
			v, cord, cautions, err := none.Lights(1, ft, mantel.Point{}, units.InFeetInches)
			return v, v.Basis == "" && cord == 0 && cautions == nil, err
		}, hooks},
		"Run.AppendPath": {func() (any, bool, error) { v, err := none.AppendPath(dst, 1); return v, slices.Equal(v, dst), err }, hooks},
		"Run.Loads": {func() (any, bool, error) {
			v, err := none.Loads(units.Pound, hook, units.InFeetInches)
			return v, v.Hooks == nil && v.Cautions == nil && v.Weight == 0, err
		}, hooks},
	} {
		got, isZero, err := test.call()
		want := *test.want
		want.Func = fn
		checkError(t, fn, err, &want)
		if !isZero {
			t.Errorf("%s: %v with an error", fn, got)
		}
	}
}

func TestFindErrors(t *testing.T) {
	fitOf := func(fn, field, want string) *units.Error {
		return &units.Error{Func: fn, Field: field, Want: want, Err: units.ErrFit}
	}
	drops := func(g units.Length, look mantel.Look, h mantel.Hanging) error {
		h.Look = look
		got, err := tearoom.FindDrops(g, h)
		if err != nil && got != (mantel.Hanging{}) {
			t.Errorf("%v with an error", got)
		}
		return err
	}
	sag := func(m mantel.Mantel, g units.Length, h mantel.Hanging) error {
		run, err := m.Hang(h)
		if err != nil {
			t.Fatal(err)
		}
		got, err := run.FindSag(g)
		if err != nil && got.Hooks != nil {
			t.Errorf("%v with an error", got)
		}
		return err
	}
	const D, S = "Mantel.FindDrops", "Run.FindSag"
	asym, right, trad := mantel.AsymmetricalLeft, mantel.AsymmetricalRight, mantel.Traditional
	long := mantel.Mantel{Length: 5 * ft}
	longest := func(m mantel.Mantel, h mantel.Hanging) *units.Error {
		most, err := garland(m, h)
		if err != nil {
			t.Fatal(err)
		}
		text := most.String()
		if most%(in/64) != 0 && most%units.Millimeter != 0 {
			text = most.Format(units.InFeetInches, 1)
		}
		return &units.Error{Func: S, Field: "garland", Want: "at most " + text + ", which hangs 50 ft deep", Err: units.ErrRange}
	}
	for i, test := range []struct {
		err  error
		want *units.Error
	}{
		{drops(64*in, trad, mantel.Hanging{}), nil},
		{drops(64*in-1, trad, mantel.Hanging{}), fitOf(D, "garland", "at least 5 ft 4 in to reach along the shelf")},
		{drops(70*in-1, asym, mantel.Hanging{Right: 6 * in}), fitOf(D, "garland", "at least 5 ft 10 in to reach along the shelf")},
		{drops(64*in+9*ft, trad, mantel.Hanging{}), nil},
		{drops(64*in+9*ft+2, trad, mantel.Hanging{}), fitOf(D, "garland", "at most 14 ft 4 in, so that no end passes the hearth, a wall or 50 ft")},
		{drops(64*in+54*in, right, mantel.Hanging{}), nil},
		{drops(64*in+54*in+1, right, mantel.Hanging{}), fitOf(D, "garland", "at most 9 ft 10 in, so that no end passes the hearth, a wall or 50 ft")},
		{drops(7*ft, 3, mantel.Hanging{}), &units.Error{Func: D, Field: "/hanging/look", Want: wantLook, Err: units.ErrName}},
		{drops(9*ft, asym, mantel.Hanging{Right: 5 * ft}), fitOf(D, "/hanging/right", "at most 4 ft 6 in, from the shelf to the hearth")},
		{drops(-1<<63, asym, mantel.Hanging{Right: ft}), fitOf(D, "garland", "at least 6 ft 4 in to reach along the shelf")},
		{drops(1<<63-1, asym, mantel.Hanging{}), fitOf(D, "garland", "at most 9 ft 10 in, so that no end passes the hearth, a wall or 50 ft")},

		{sag(long, 6*ft, mantel.Hanging{}), &units.Error{Func: S, Field: "/lying", Want: "false: a garland that lies on a shelf has no sag", Err: units.ErrRange}},
		{sag(long, 7*ft, mantel.Hanging{Swags: 1, Left: ft, Right: ft}), nil},
		{sag(long, 7*ft-1, mantel.Hanging{Swags: 1, Left: ft, Right: ft}), fitOf(S, "garland", "at least 7 ft to reach from hook to hook")},
		{sag(long, -1<<63, mantel.Hanging{Swags: 1, Left: ft, Right: ft}), fitOf(S, "garland", "at least 7 ft to reach from hook to hook")},
		{sag(long, 203*ft, mantel.Hanging{Swags: 2, Left: 2 * ft, Right: ft}), nil},
		{sag(long, 303*ft, mantel.Hanging{Swags: 2, Left: 2 * ft, Right: ft}), longest(long, mantel.Hanging{Swags: 2, Sag: 50 * ft, Left: 2 * ft, Right: ft})},
		{sag(long, 1<<63-1, mantel.Hanging{Swags: 2, Left: 2 * ft, Right: ft}), longest(long, mantel.Hanging{Swags: 2, Sag: 50 * ft, Left: 2 * ft, Right: ft})},
	} {
		checkError(t, i, test.err, test.want)
	}
}

func TestHooks(t *testing.T) {
	for _, test := range []struct {
		swags int
		want  []units.Length
	}{
		{0, []units.Length{0, 64 * in}},
		{1, []units.Length{0, 64 * in}},
		{2, []units.Length{0, 32 * in, 64 * in}},
		{3, []units.Length{0, 541866666, 64*in - 541866666, 64 * in}}, // 64 in is 1,625,600,000 nm
		{4, []units.Length{0, 16 * in, 32 * in, 48 * in, 64 * in}},
	} {
		run, err := tearoom.Hang(mantel.Hanging{Swags: test.swags, Left: in, Right: ft})
		var got []units.Length
		for _, p := range run.Hooks {
			if p.Below != 0 {
				t.Errorf("a hook %v below the shelf", p.Below)
			}
			got = append(got, p.Along)
		}
		if err != nil || !slices.Equal(got, test.want) || run.Lying != (test.swags == 0) || run.Left != in || run.Right != ft {
			t.Errorf("%d swags: %v, %v, want hooks at %v", test.swags, run, err, test.want)
		}
	}
}

func TestBelowAlongTheShelf(t *testing.T) {
	hung, err := tearoom.Hang(mantel.Hanging{Swags: 2, Sag: 9 * in})
	if err != nil {
		t.Fatal(err)
	}
	lying, err := tearoom.Hang(mantel.Hanging{})
	if err != nil {
		t.Fatal(err)
	}
	at10, _ := swag(32*in, 0, 9*in).Below(10 * in)
	for along, want := range map[units.Length]units.Length{
		0: 0, 10 * in: at10, 16 * in: 9 * in, 32 * in: 0, 42 * in: at10, 48 * in: 9 * in, 54 * in: at10, 64 * in: 0,
	} {
		if got, err := hung.Below(along); err != nil || got != want {
			t.Errorf("at %v: %v below, %v, want %v", along, got, err, want)
		}
		if got, err := lying.Below(along); err != nil || got != 0 {
			t.Errorf("straight, at %v: %v below, %v, want 0", along, got, err)
		}
	}
	for _, along := range []units.Length{-1, 64*in + 1} {
		_, err := hung.Below(along)
		checkError(t, along, err, &units.Error{Func: "mantel.Run.Below", Field: "along", Want: "0 ft to 5 ft 4 in, from the first hook to the last", Err: units.ErrRange})
	}
}

func TestAppendPath(t *testing.T) {
	at8, _ := swag(32*in, 0, 9*in).Below(8 * in)
	prefix := []mantel.Point{{1, 2}}
	for _, test := range []struct {
		reason string
		h      mantel.Hanging
		pieces int
		want   []mantel.Point
	}{
		{"straight", mantel.Hanging{}, 1, []mantel.Point{{1, 2}, {0, 0}, {64 * in, 0}}},
		{"with drops", mantel.Hanging{Left: ft, Right: 2 * ft}, 1000, []mantel.Point{{1, 2}, {0, ft}, {0, 0}, {64 * in, 0}, {64 * in, 2 * ft}}},
		{"swags in one piece", mantel.Hanging{Swags: 2, Sag: 9 * in, Right: ft}, 1, []mantel.Point{{1, 2}, {0, 0}, {32 * in, 0}, {64 * in, 0}, {64 * in, ft}}},
		{"swags", mantel.Hanging{Swags: 2, Sag: 9 * in}, 4, []mantel.Point{
			{1, 2},
			{0, 0},
			{8 * in, at8},
			{16 * in, 9 * in},
			{24 * in, at8},
			{32 * in, 0},
			{40 * in, at8},
			{48 * in, 9 * in},
			{56 * in, at8},
			{64 * in, 0},
		}},
	} {
		run, err := tearoom.Hang(test.h)
		if err != nil {
			t.Fatal(err)
		}
		got, err := run.AppendPath(slices.Clone(prefix), test.pieces)
		if err != nil || !slices.Equal(got, test.want) {
			t.Errorf("%s: got %v, %v, want %v", test.reason, got, err, test.want)
		}
	}
	for _, pieces := range []int{0, 1001} {
		got, err := swag(ft, 0, 0).AppendPath(prefix, pieces)
		checkError(t, pieces, err, &units.Error{Func: "mantel.Run.AppendPath", Field: "pieces", Want: "1 to 1000", Err: units.ErrRange})
		if !slices.Equal(got, prefix) {
			t.Errorf("%v with an error", got)
		}
	}
	room := make([]mantel.Point, 0, 1000)
	run := swag(5*ft, 0, ft)
	if n := testing.AllocsPerRun(10, func() { _, _ = run.AppendPath(room, 100) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

// A path of straight pieces is a little shorter than the garland, and nearly as long:
// each piece of a smooth curve falls short by its own length times the square of its
// bend, over 24; a thousand pieces bend by less than 0.02 each here.
func TestPathIsAsLongAsTheGarland(t *testing.T) {
	for _, h := range []mantel.Hanging{
		{Left: ft, Right: 2 * ft},
		{Swags: 1, Sag: 4 * ft},
		{Swags: 3, Sag: 9 * in, Left: ft, Right: 3 * ft},
		{Swags: 7, Sag: 54 * in},
	} {
		run, err := tearoom.Hang(h)
		if err != nil {
			t.Fatal(err)
		}
		path, err := run.AppendPath(nil, 1000)
		if err != nil {
			t.Fatal(err)
		}
		length := 0.
		for i, p := range path[1:] {
			length += math.Hypot(float64(p.Along-path[i].Along), float64(p.Below-path[i].Below))
		}
		garland, err := run.Garland()
		if err != nil || length > float64(garland)+10 || length < float64(garland)*(1-0.02*0.02/24) {
			t.Errorf("%v: path %v, garland %v, %v", h, units.Length(length), garland, err)
		}
	}
}

func hangings(m mantel.Mantel) *rapid.Generator[mantel.Hanging] {
	return rapid.Custom(func(t *rapid.T) mantel.Hanging {
		most := 50 * ft
		if m.Height != 0 {
			most = m.Height
		}
		h := mantel.Hanging{
			Swags:     rapid.IntRange(0, min(100, int(m.Length/in))).Draw(t, "swags"),
			Left:      lengths(0, most).Draw(t, "left"),
			Right:     lengths(0, most).Draw(t, "right"),
			Look:      looks().Draw(t, "look"),
			Fall:      lengths(0, most).Draw(t, "fall"),
			Thickness: lengths(0, 3*ft).Draw(t, "thickness"),
		}
		if h.Swags > 0 {
			h.Sag = lengths(0, most).Draw(t, "sag")
		}
		return h
	})
}

func mantels() *rapid.Generator[mantel.Mantel] {
	return rapid.Custom(func(t *rapid.T) mantel.Mantel {
		m := mantel.Mantel{Length: lengths(ft, 50*ft).Draw(t, "length")}
		if rapid.Bool().Draw(t, "measured") {
			m.Height = lengths(ft, 50*ft).Draw(t, "height")
			m.Depth = lengths(in, 2*ft).Draw(t, "depth")
		}
		if rapid.Bool().Draw(t, "opening") {
			m.Opening.Width = lengths(in, m.Length).Draw(t, "width")
			m.Opening.Gap = lengths(in, ft-in).Draw(t, "below")
			m.Opening.Height = in
		}
		return m
	})
}

func TestHangingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mantels().Draw(t, "m")
		h := hangings(m).Draw(t, "h")
		length, err := garland(m, h)
		if err != nil {
			t.Fatal(err)
		}
		if length < m.Length+h.Left+h.Right {
			t.Fatalf("%v: garland %v is shorter than the shelf and the drops", h, length)
		}
		// The mirror image takes the same.
		mirror := h
		mirror.Left, mirror.Right = h.Right, h.Left
		if got, _ := garland(m, mirror); got != length {
			t.Fatalf("%v: %v, mirror image %v", h, length, got)
		}
		// Drops found from this garland use it up, and fall the same in all.
		for _, look := range []mantel.Look{mantel.Traditional, mantel.AsymmetricalLeft, mantel.AsymmetricalRight} {
			same := h
			same.Look = look
			found, err := m.FindDrops(length, same)
			if err != nil {
				continue // too long for one side
			}
			if got, _ := garland(m, found); got != length || found.Left+found.Right != h.Left+h.Right {
				t.Fatalf("%v: found %v, which takes %v", h, found, got)
			}
			if look != mantel.Traditional && found != same {
				t.Fatalf("%v: found %v", h, found)
			}
		}
		if h.Swags == 0 {
			return
		}
		run, err := m.Hang(h)
		if err != nil {
			t.Fatal(err)
		}
		found, err := run.FindSag(length)
		if err != nil {
			t.Fatal(err)
		}
		again, err := found.Garland()
		if slack := units.Length(h.Swags + 1); err != nil || again-length > slack || length-again > slack {
			t.Fatalf("%v: sag found %v takes %v, want %v", h, found.Sag, again, length)
		}
	})
}

func TestPathProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mantels().Draw(t, "m")
		h := hangings(m).Draw(t, "h")
		pieces := rapid.IntRange(1, 20).Draw(t, "pieces")
		run, err := m.Hang(h)
		if err != nil {
			t.Fatal(err)
		}
		path, err := run.AppendPath(nil, pieces)
		if err != nil {
			t.Fatal(err)
		}
		mirror := run
		mirror.Left, mirror.Right = h.Right, h.Left
		other, err := mirror.AppendPath(nil, pieces)
		if err != nil || len(other) != len(path) {
			t.Fatal(err)
		}
		for i, p := range path {
			q := other[len(other)-1-i]
			if p.Along+q.Along != m.Length && p.Along+q.Along != m.Length-1 || p.Below-q.Below > 1 || q.Below-p.Below > 1 {
				t.Fatalf("%v: %v, in the mirror image %v", h, p, q)
			}
			if p.Below > max(h.Sag, h.Left, h.Right) || p.Below < 0 {
				t.Fatalf("%v: %v", h, p)
			}
		}
		// The path goes through every hook.
		if len(run.Hooks) != max(1, h.Swags)+1 {
			t.Fatal(run)
		}
		for _, p := range run.Hooks {
			if !slices.Contains(path, p) {
				t.Fatalf("%v: no point at the hook at %v", h, p)
			}
		}
	})
}

func TestHangingText(t *testing.T) {
	for want, h := range map[string]mantel.Hanging{
		"straight along the shelf, falling 1 ft at the left and 0 ft at the right": {Left: ft},
		"1 swag 9 in deep, falling 0 ft at the left and 1 ft at the right":         {Swags: 1, Sag: 9 * in, Right: ft},
		"3 swags 20 cm deep, falling 0 ft at the left and 0 ft at the right, with ribbon falling 2 ft 3 in at the right": {
			Swags: 3, Sag: 20 * units.Centimeter, Look: mantel.AsymmetricalRight, Fall: 27 * in,
		},
		"straight along the shelf, falling 0 ft at the left and 0 ft at the right, with ribbon falling 2 ft 3 in in the middle": {
			Fall: 27 * in,
		},
		"straight along the shelf, falling 0 ft at the left and 0 ft at the right, with ribbon falling 1 ft at the left": {
			Look: mantel.AsymmetricalLeft, Fall: ft,
		},
		"2 swags 5 9/16 in deep, falling 0 ft at the left and 0 ft at the right": {Swags: 2, Sag: 5*in + 9*in/16 + 1},
	} {
		if got := h.String(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}
