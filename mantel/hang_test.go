package mantel_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

var tearoom = mantel.Mantel{
	Length: 64 * in, Height: 54 * in, Depth: 8 * in,
	Opening: mantel.Opening{Width: 36 * in, Height: 30 * in, Below: 16 * in},
}

func TestFindDrops(t *testing.T) {
	const L, R = mantel.Left, mantel.Right
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
		{"4 ft more, all at the heavy side", 112 * in, mantel.Asymmetrical, mantel.Hanging{Heavy: L}, 4 * ft, 0},
		{"4 ft more, all at the heavy side", 112 * in, mantel.Asymmetrical, mantel.Hanging{Heavy: R}, 0, 4 * ft},
		{"the light end falls as it is told", 112 * in, mantel.Asymmetrical, mantel.Hanging{Heavy: L, Left: ft, Right: 6 * in}, 42 * in, 6 * in},
		{"the light end falls as it is told", 112 * in, mantel.Asymmetrical, mantel.Hanging{Heavy: R, Left: 6 * in, Right: ft}, 6 * in, 42 * in},
		{"all that is left is for the light end", 70 * in, mantel.Asymmetrical, mantel.Hanging{Heavy: R, Left: 6 * in}, 6 * in, 0},
	} {
		want := test.h
		want.Look = test.look
		want.Left, want.Right = test.left, test.right
		got, err := tearoom.FindDrops(test.garland, test.look, test.h)
		if err != nil || got != want {
			t.Errorf("%s: got %v, %v, want %v", test.reason, got, err, want)
		}
		if back, err := tearoom.Garland(got); err != nil || back != test.garland {
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
	if got, err := m.Garland(h); err != nil || math.Abs(got.In(units.Foot)-want) > 1e-8 {
		t.Errorf("got %.12f ft, %v, want %.12f", got.In(units.Foot), err, want)
	}
	garland, _ := m.Garland(h)
	flat := h
	flat.Sag = 0
	if got, err := m.FindSag(garland, flat); err != nil || got.Sag < 9*in-1 || got.Sag > 9*in+1 {
		t.Errorf("sag %v, %v, want 9 in", got.Sag, err)
	}
	flat.Sag = 7 * in // is not looked at
	if got, err := m.FindSag(18*ft, flat); err != nil || got.Sag != 0 {
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
		{mantel.Hanging{Swags: 2, Left: ft}, 76 * in, "5 ft 4 in in 2 swags 0 ft deep, 1 ft falling at the left, 0 ft at the right; by rule 7 ft 4 in, 1 ft less"},
	} {
		d, err := mantel.CommonPractice().Needs(tearoom, test.h)
		garland, _ := tearoom.Garland(test.h)
		if err != nil || d.Garland != garland || d.ByRule != 88*in || d.Needs[0].Basis != test.basis || d.Needs[0].Quantity != (shopping.Quantity{Length: test.whole}) {
			t.Errorf("got %+v, %v, want %v, %s", d, err, test.whole, test.basis)
		}
	}
	if got := (mantel.Dressing{Garland: 5 * ft, ByRule: 5 * ft}).String(); got != "garland 5 ft as it hangs, 5 ft by rule: the same" {
		t.Error(got)
	}
}

func TestHangingErrors(t *testing.T) {
	const fn = "Mantel.Garland"
	rangeOf := func(field, want string) *units.Error {
		return &units.Error{Func: fn, Field: field, Want: want, Err: units.ErrRange}
	}
	fitOf := func(field, want string) *units.Error {
		return &units.Error{Func: fn, Field: field, Want: want, Err: units.ErrFit}
	}
	m := tearoom
	open := mantel.Opening{Width: in, Height: in, Below: in}
	sized := func(o mantel.Opening) mantel.Mantel { return mantel.Mantel{Length: 5 * ft, Height: 5 * ft, Opening: o} }
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
		{sized(mantel.Opening{Width: in - 1, Height: in, Below: in}), none, rangeOf("/opening/width", wantOpening)},
		{sized(mantel.Opening{Width: in, Height: in - 1, Below: in}), none, rangeOf("/opening/height", wantOpening)},
		{sized(mantel.Opening{Width: in, Height: in, Below: in - 1}), none, rangeOf("/opening/below", wantOpening)},
		{sized(mantel.Opening{Below: in}), none, rangeOf("/opening/width", wantOpening)},
		{sized(mantel.Opening{Width: 50*ft + 1, Height: in, Below: in}), none, rangeOf("/opening/width", wantOpening)},
		{mantel.Mantel{Length: 50 * ft, Opening: mantel.Opening{Width: 50 * ft, Height: 50 * ft, Below: 50 * ft}}, none, nil},
		{sized(mantel.Opening{Width: 5 * ft, Height: in, Below: in}), none, nil},
		{sized(mantel.Opening{Width: 9 * ft, Height: in, Below: in, Offset: -50 * ft}), none, nil}, // wider than the shelf, and beside it
		{sized(mantel.Opening{Width: ft, Height: in, Below: in, Offset: 50*ft + 1}), none, rangeOf("/opening/offset", "-50 ft to 50 ft")},
		{sized(mantel.Opening{Width: ft, Height: 4 * ft, Below: ft}), none, nil},
		{sized(mantel.Opening{Width: ft, Height: 4*ft + 1, Below: ft}), none, fitOf("/opening/height", "at most 5 ft together with the 1 ft below the shelf, from the shelf to the hearth")},

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
		{m, mantel.Hanging{Look: 2}, &units.Error{Func: fn, Field: "/hanging/look", Want: "traditional or asymmetrical", Err: units.ErrName}},
		{m, mantel.Hanging{Heavy: 2}, &units.Error{Func: fn, Field: "/hanging/heavy", Want: "left or right", Err: units.ErrName}},
	} {
		got, err := test.m.Garland(test.h)
		checkError(t, i, err, test.want)
		if err != nil && got != 0 {
			t.Errorf("row %d: %v with an error", i, got)
		}
	}
}

// A length in an error is given in feet and inches to the nanometer, unless it is a
// whole number of millimeters, so that it never reads like the limit it is past.
func TestErrorsInInches(t *testing.T) {
	swags := mantel.Hanging{Swags: 2, Sag: in / 10}
	for want, call := range map[string]func() error{
		`mantel.Mantel.Loads: /hanging/sag "0.1 in": out of range: want a hundredth of the span or more, 0.3 in: a taut garland pulls without limit`: func() error {
			_, err := mantel.Mantel{Length: 60 * in}.Loads(swags, units.Pound, mantel.Hook{Rating: units.Pound})
			return err
		},
		`mantel.Mantel.Garland: /opening/below "0.9 in": out of range: want 1 in to 50 ft, or no opening at all`: func() error {
			_, err := mantel.Mantel{Length: 5 * ft, Opening: mantel.Opening{Width: ft, Height: ft, Below: 9 * in / 10}}.Garland(mantel.Hanging{})
			return err
		},
		`mantel.Mantel.Garland: /hanging/left "4 ft 6.00000004 in": does not fit: want at most 4 ft 6 in, from the shelf to the hearth`: func() error {
			_, err := tearoom.Garland(mantel.Hanging{Left: 54*in + 1})
			return err
		},
		`mantel.Mantel.Garland: /hanging/left "1.371 m": does not fit: want at most 1.37 m, from the shelf to the hearth`: func() error {
			_, err := mantel.Mantel{Length: 2 * units.Meter, Height: 137 * units.Centimeter}.Garland(mantel.Hanging{Left: 1371 * units.Millimeter})
			return err
		},
		`mantel.Mantel.Below: along "5 ft 10.1 in": out of range: want 0 ft to the length of the shelf, 5 ft 10.05 in`: func() error {
			_, err := mantel.Mantel{Length: 7005 * in / 100}.Below(mantel.Hanging{}, 701*in/10)
			return err
		},
		`mantel.Mantel.FindSag: garland "5 ft 10 in": does not fit: want at least 5 ft 10.05 in to reach along the shelf`: func() error {
			_, err := mantel.Mantel{Length: 7005 * in / 100}.FindSag(70*in, mantel.Hanging{Swags: 1})
			return err
		},
		`mantel.Swag.FindSag: length "1 ft 0.1 in": does not fit: want at least the span, 1 ft 0.2 in`: func() error {
			_, err := mantel.Swag{Span: 122 * in / 10}.FindSag(121 * in / 10)
			return err
		},
	} {
		if err := call(); err == nil || err.Error() != want {
			t.Errorf("got  %v\nwant %s", err, want)
		}
	}
}

// Every method that takes a hanging checks it, names itself and returns nothing.
func TestEveryMethodChecks(t *testing.T) {
	bad := mantel.Mantel{}
	hook := mantel.Hook{Rating: units.Pound}
	dst := []mantel.Point{{1, 2}}
	for fn, call := range map[string]func() (any, any, error){
		"Mantel.Garland": func() (any, any, error) { v, err := bad.Garland(mantel.Hanging{}); return v, units.Length(0), err },
		"Mantel.Lights": func() (any, any, error) {
			v, err := bad.Lights(mantel.Hanging{}, mantel.LightString{})
			return v.Needs == nil, true, err
		},
		"Mantel.Stockings": func() (any, any, error) {
			v, err := bad.Stockings(mantel.Stockings{}, hook)
			return v.Needs == nil, true, err
		},
		"Mantel.FindDrops": func() (any, any, error) {
			v, err := bad.FindDrops(6*ft, 0, mantel.Hanging{})
			return v, mantel.Hanging{}, err
		},
		"Mantel.FindSag": func() (any, any, error) {
			v, err := bad.FindSag(6*ft, mantel.Hanging{Swags: 1})
			return v, mantel.Hanging{}, err
		},
		"Mantel.Hooks": func() (any, any, error) { v, err := bad.Hooks(mantel.Hanging{}); return v == nil, true, err },
		"Mantel.Below": func() (any, any, error) { v, err := bad.Below(mantel.Hanging{}, 0); return v, units.Length(0), err },
		"Mantel.AppendPath": func() (any, any, error) {
			v, err := bad.AppendPath(dst, mantel.Hanging{}, 1)
			return slices.Equal(v, dst), true, err
		},
		"Mantel.Loads": func() (any, any, error) {
			v, err := bad.Loads(mantel.Hanging{}, units.Pound, hook)
			return v.Hooks == nil && v.Cautions == nil && v.Weight == 0, true, err
		},
		"Mantel.Clearances": func() (any, any, error) {
			v, err := bad.Clearances(mantel.Hanging{})
			return v.Places == nil && v.Violations == nil && v.Cautions == nil, true, err
		},
	} {
		got, zero, err := call()
		checkError(t, fn, err, &units.Error{Func: fn, Field: "/length", Want: "1 ft to 50 ft", Err: units.ErrRange})
		if !reflect.DeepEqual(got, zero) {
			t.Errorf("%s: %v with an error", fn, got)
		}
	}
}

func TestFindErrors(t *testing.T) {
	fitOf := func(fn, field, want string) *units.Error {
		return &units.Error{Func: fn, Field: field, Want: want, Err: units.ErrFit}
	}
	drops := func(g units.Length, look mantel.Look, h mantel.Hanging) error {
		got, err := tearoom.FindDrops(g, look, h)
		if err != nil && got != (mantel.Hanging{}) {
			t.Errorf("%v with an error", got)
		}
		return err
	}
	sag := func(m mantel.Mantel, g units.Length, h mantel.Hanging) error {
		got, err := m.FindSag(g, h)
		if err != nil && got != (mantel.Hanging{}) {
			t.Errorf("%v with an error", got)
		}
		return err
	}
	const D, S = "Mantel.FindDrops", "Mantel.FindSag"
	asym, trad := mantel.Asymmetrical, mantel.Traditional
	long := mantel.Mantel{Length: 5 * ft}
	longest := func(m mantel.Mantel, h mantel.Hanging) string {
		garland, err := m.Garland(h)
		if err != nil {
			t.Fatal(err)
		}
		text := garland.String()
		if garland%(in/64) != 0 && garland%units.Millimeter != 0 {
			text = garland.Format(units.InFeetInches, 1)
		}
		return "at most " + text + ", which hangs " + h.Sag.String() + " deep"
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
		{drops(64*in+54*in, asym, mantel.Hanging{Heavy: mantel.Right}), nil},
		{drops(64*in+54*in+1, asym, mantel.Hanging{Heavy: mantel.Right}), fitOf(D, "garland", "at most 9 ft 10 in, so that no end passes the hearth, a wall or 50 ft")},
		{drops(7*ft, 2, mantel.Hanging{}), &units.Error{Func: D, Field: "look", Want: "traditional or asymmetrical", Err: units.ErrName}},
		{drops(9*ft, asym, mantel.Hanging{Right: 5 * ft}), fitOf(D, "/hanging/right", "at most 4 ft 6 in, from the shelf to the hearth")},
		{drops(-1<<63, asym, mantel.Hanging{Right: ft}), fitOf(D, "garland", "at least 6 ft 4 in to reach along the shelf")},
		{drops(1<<63-1, asym, mantel.Hanging{}), fitOf(D, "garland", "at most 9 ft 10 in, so that no end passes the hearth, a wall or 50 ft")},

		{sag(long, 6*ft, mantel.Hanging{}), &units.Error{Func: S, Field: "/hanging/swags", Want: "1 to 100", Err: units.ErrRange}},
		{sag(long, 6*ft, mantel.Hanging{Swags: 101}), &units.Error{Func: S, Field: "/hanging/swags", Want: "1 to 100", Err: units.ErrRange}},
		{sag(long, 7*ft, mantel.Hanging{Swags: 1, Left: ft, Right: ft}), nil},
		{sag(long, 7*ft-1, mantel.Hanging{Swags: 1, Left: ft, Right: ft}), fitOf(S, "garland", "at least 7 ft to reach along the shelf")},
		{sag(long, 203*ft, mantel.Hanging{Swags: 2, Left: 2 * ft, Right: ft}), nil},
		{sag(long, 303*ft, mantel.Hanging{Swags: 2, Left: 2 * ft, Right: ft}), fitOf(S, "garland", longest(long, mantel.Hanging{Swags: 2, Sag: 50 * ft, Left: 2 * ft, Right: ft}))},
		{sag(long, 303*ft+1, mantel.Hanging{Swags: 2, Left: 2 * ft, Right: ft}), fitOf(S, "garland", longest(long, mantel.Hanging{Swags: 2, Sag: 50 * ft, Left: 2 * ft, Right: ft}))},
		{sag(tearoom, 20*ft, mantel.Hanging{Swags: 1}), fitOf(S, "garland", longest(tearoom, mantel.Hanging{Swags: 1, Sag: 54 * in}))},
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
		got, err := tearoom.Hooks(mantel.Hanging{Swags: test.swags})
		if err != nil || !slices.Equal(got, test.want) {
			t.Errorf("%d swags: hooks at %v, %v, want %v", test.swags, got, err, test.want)
		}
	}
}

func TestBelowAlongTheShelf(t *testing.T) {
	h := mantel.Hanging{Swags: 2, Sag: 9 * in}
	swag := mantel.Swag{Span: 32 * in, Sag: 9 * in}
	at10, _ := swag.Below(10 * in)
	for along, want := range map[units.Length]units.Length{
		0: 0, 10 * in: at10, 16 * in: 9 * in, 32 * in: 0, 42 * in: at10, 48 * in: 9 * in, 54 * in: at10, 64 * in: 0,
	} {
		if got, err := tearoom.Below(h, along); err != nil || got != want {
			t.Errorf("at %v: %v below, %v, want %v", along, got, err, want)
		}
		if got, err := tearoom.Below(mantel.Hanging{}, along); err != nil || got != 0 {
			t.Errorf("straight, at %v: %v below, %v, want 0", along, got, err)
		}
	}
	for _, along := range []units.Length{-1, 64*in + 1} {
		_, err := tearoom.Below(h, along)
		checkError(t, along, err, &units.Error{Func: "mantel.Mantel.Below", Field: "along", Want: "0 ft to the length of the shelf, 5 ft 4 in", Err: units.ErrRange})
	}
}

func TestAppendPath(t *testing.T) {
	swag := mantel.Swag{Span: 32 * in, Sag: 9 * in}
	at8, _ := swag.Below(8 * in)
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
		got, err := tearoom.AppendPath(slices.Clone(prefix), test.h, test.pieces)
		if err != nil || !slices.Equal(got, test.want) {
			t.Errorf("%s: got %v, %v, want %v", test.reason, got, err, test.want)
		}
	}
	for _, pieces := range []int{0, 1001} {
		got, err := tearoom.AppendPath(prefix, mantel.Hanging{}, pieces)
		checkError(t, pieces, err, &units.Error{Func: "mantel.Mantel.AppendPath", Field: "pieces", Want: "1 to 1000", Err: units.ErrRange})
		if !slices.Equal(got, prefix) {
			t.Errorf("%v with an error", got)
		}
	}
	room := make([]mantel.Point, 0, 1000)
	if n := testing.AllocsPerRun(10, func() { _, _ = tearoom.AppendPath(room, mantel.Hanging{Swags: 3, Sag: ft}, 100) }); n != 0 {
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
		path, err := tearoom.AppendPath(nil, h, 1000)
		if err != nil {
			t.Fatal(err)
		}
		length := 0.
		for i, p := range path[1:] {
			length += math.Hypot(float64(p.Along-path[i].Along), float64(p.Below-path[i].Below))
		}
		garland, err := tearoom.Garland(h)
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
			Look:      mantel.Look(rapid.IntRange(0, 1).Draw(t, "look")),
			Heavy:     mantel.Side(rapid.IntRange(0, 1).Draw(t, "heavy")),
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
			m.Opening.Below = lengths(in, ft-in).Draw(t, "below")
			m.Opening.Height = in
		}
		return m
	})
}

func TestHangingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mantels().Draw(t, "m")
		h := hangings(m).Draw(t, "h")
		garland, err := m.Garland(h)
		if err != nil {
			t.Fatal(err)
		}
		if garland < m.Length+h.Left+h.Right {
			t.Fatalf("%v: garland %v is shorter than the shelf and the drops", h, garland)
		}
		// The mirror image takes the same.
		mirror := h
		mirror.Left, mirror.Right = h.Right, h.Left
		if got, _ := m.Garland(mirror); got != garland {
			t.Fatalf("%v: %v, mirror image %v", h, garland, got)
		}
		// Drops found from this garland use it up, and fall the same in all.
		for _, look := range []mantel.Look{mantel.Traditional, mantel.Asymmetrical} {
			found, err := m.FindDrops(garland, look, h)
			if err != nil {
				continue // too long for one side
			}
			if got, _ := m.Garland(found); got != garland || found.Left+found.Right != h.Left+h.Right {
				t.Fatalf("%v: found %v, which takes %v", h, found, got)
			}
			same := h
			same.Look = look
			if look == mantel.Asymmetrical && found != same {
				t.Fatalf("%v: found %v", h, found)
			}
		}
		if h.Swags == 0 {
			return
		}
		found, err := m.FindSag(garland, h)
		if err != nil {
			t.Fatal(err)
		}
		again, err := m.Garland(found)
		if slack := units.Length(h.Swags + 1); err != nil || again-garland > slack || garland-again > slack {
			t.Fatalf("%v: sag found %v takes %v, want %v", h, found.Sag, again, garland)
		}
	})
}

func TestPathProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mantels().Draw(t, "m")
		h := hangings(m).Draw(t, "h")
		pieces := rapid.IntRange(1, 20).Draw(t, "pieces")
		path, err := m.AppendPath(nil, h, pieces)
		if err != nil {
			t.Fatal(err)
		}
		mirror := h
		mirror.Left, mirror.Right = h.Right, h.Left
		other, err := m.AppendPath(nil, mirror, pieces)
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
		hooks, err := m.Hooks(h)
		if err != nil || len(hooks) != max(1, h.Swags)+1 {
			t.Fatal(hooks, err)
		}
		for _, along := range hooks {
			if !slices.ContainsFunc(path, func(p mantel.Point) bool {
				return p.Below == 0 && p.Along-along <= 1 && along-p.Along <= 1
			}) {
				t.Fatalf("%v: no point at the hook at %v", h, along)
			}
		}
	})
}

func TestHangingText(t *testing.T) {
	for want, h := range map[string]mantel.Hanging{
		"straight along the shelf, falling 1 ft at the left and 0 ft at the right": {Left: ft},
		"1 swag 9 in deep, falling 0 ft at the left and 1 ft at the right":         {Swags: 1, Sag: 9 * in, Right: ft},
		"3 swags 20 cm deep, falling 0 ft at the left and 0 ft at the right, with ribbon falling 2 ft 3 in at the right": {
			Swags: 3, Sag: 20 * units.Centimeter, Look: mantel.Asymmetrical, Heavy: mantel.Right, Fall: 27 * in,
		},
		"straight along the shelf, falling 0 ft at the left and 0 ft at the right, with ribbon falling 2 ft 3 in in the middle": {
			Heavy: mantel.Right, Fall: 27 * in,
		},
		"2 swags 5 9/16 in deep, falling 0 ft at the left and 0 ft at the right": {Swags: 2, Sag: 5*in + 9*in/16 + 1},
	} {
		if got := h.String(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

func TestMantelText(t *testing.T) {
	for want, m := range map[string]mantel.Mantel{
		"mantel 5 ft long": {Length: 5 * ft},
		"mantel 5 ft 4 in long, 4 ft 6 in above the hearth, 8 in deep, opening 3 ft wide and 2 ft 6 in high, 1 ft 4 in below the shelf": tearoom,
	} {
		if got := m.String(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
	if got := (mantel.Opening{}).String(); got != "no opening" {
		t.Error(got)
	}
}
