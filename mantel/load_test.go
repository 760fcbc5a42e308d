package mantel_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

const (
	oz = units.Ounce
	lb = units.Pound
)

// A garland that lies on the shelf, by hand: 8 oz a foot, drops of 1 ft and 2 ft.
func TestLoadsStraight(t *testing.T) {
	m := mantel.Mantel{Length: 6 * ft}
	got, err := m.Loads(mantel.Hanging{Left: ft, Right: 2 * ft}, 8*oz, mantel.Hook{Rating: 5 * lb})
	if err != nil {
		t.Fatal(err)
	}
	want := mantel.Loads{
		Weight: 72 * oz, Shelf: 48 * oz, Spacing: 6 * ft, Working: lb, Heaviest: 1,
		Hooks: []mantel.HookLoad{
			{Along: 0, Down: 8 * oz, Total: 8 * oz},
			{Along: 6 * ft, Down: 16 * oz, Total: 16 * oz},
		},
	}
	equalLoads(t, got, want)
	if len(got.Cautions) != 3 || !strings.Contains(got.Cautions[1].Text, "heat") {
		t.Errorf("cautions %q", got.Cautions)
	}
}

func equalLoads(t *testing.T, got, want mantel.Loads) {
	t.Helper()
	if got.Weight != want.Weight || got.Shelf != want.Shelf || got.Spacing != want.Spacing || got.Working != want.Working ||
		got.Heaviest != want.Heaviest || got.Overloaded != want.Overloaded || !slices.Equal(got.Hooks, want.Hooks) {
		t.Errorf("got %+v\nwant %+v", got, want)
	}
}

// The cable of OpenStax Calculus Vol. 1, y = 10 cosh(x/10) from -15 to 15 ft, is 42.586 ft
// long. By the statics of a catenary its level pull is the weight of a = 10 ft of it,
// and its pull at a hook the weight of a + sag.
// Half a foot of an ounce a foot is 14,174,761,562½ ng. The half goes up at the first hook, and the
// last has what is left.
func TestLoadsHalfUp(t *testing.T) {
	m := mantel.Mantel{Length: 60 * in}
	got, err := m.Loads(mantel.Hanging{Left: 6 * in, Right: 6 * in}, oz, mantel.Hook{Rating: lb})
	if err != nil || got.Weight != 6*oz || got.Hooks[0].Down != 14_174_761_563 || got.Hooks[1].Down != 14_174_761_562 {
		t.Errorf("got %v, %v", got, err)
	}
}

func TestLoadsOfAPublishedCable(t *testing.T) {
	m := mantel.Mantel{Length: 30 * ft}
	sag := 10 * (math.Cosh(1.5) - 1)
	got, err := m.Loads(mantel.Hanging{Swags: 1, Sag: feet(sag)}, lb, mantel.Hook{Rating: 100 * lb})
	if err != nil {
		t.Fatal(err)
	}
	near := func(what string, got units.Mass, want, tolerance float64) {
		t.Helper()
		if math.Abs(got.In(lb)-want) > tolerance {
			t.Errorf("%s %.9f lb, want %.9f", what, got.In(lb), want)
		}
	}
	near("weight", got.Weight, 42.586, 0.0005) // as published
	near("weight", got.Weight, 42.5855891018963, 1e-8)
	near("left hook, down", got.Hooks[0].Down, 42.5855891018963/2, 1e-8)
	near("left hook, to the right", got.Hooks[0].Right, 10, 1e-7) // the sag is rounded to a nanometer
	near("left hook", got.Hooks[0].Total, 10+sag, 1e-7)
	near("right hook", got.Hooks[1].Total, 10+sag, 1e-7)
	if got.Hooks[0].Right != got.Hooks[1].Left || got.Hooks[0].Left != 0 || got.Hooks[1].Right != 0 {
		t.Errorf("pulls %+v", got.Hooks)
	}
}

func TestLoadsOfSwags(t *testing.T) {
	m := mantel.Mantel{Length: 9 * ft}
	h := mantel.Hanging{Swags: 3, Sag: 9 * in, Left: ft, Right: 2 * ft}
	got, err := m.Loads(h, 12*oz, mantel.Hook{Rating: 6 * lb, Factor: 6})
	if err != nil {
		t.Fatal(err)
	}
	swag, _ := mantel.Swag{Span: 3 * ft, Sag: 9 * in}.Length()
	half := swag.In(units.Foot) / 2 * 12 * float64(oz)
	wants := []float64{12*float64(oz) + half, 2 * half, 2 * half, 24*float64(oz) + half}
	for i, want := range wants {
		if h := got.Hooks[i]; math.Abs(float64(h.Down)-want) > 2000 { // a nanometer weighs 1116 ng
			t.Errorf("hook %d: %v down, want %v ng", i, h.Down, want)
		}
		if got.Hooks[i].Along != units.Length(i)*3*ft {
			t.Errorf("hook %d at %v", i, got.Hooks[i].Along)
		}
	}
	// In the middle the pulls cancel, so the total is the weight.
	for _, h := range got.Hooks[1:3] {
		if h.Left != h.Right || h.Left == 0 || h.Total != h.Down {
			t.Errorf("middle hook %+v", h)
		}
	}
	if got.Heaviest != 3 || got.Spacing != 3*ft || got.Working != lb {
		t.Errorf("got %+v", got)
	}
	// In ounces, √(32.7² + 19.3²) = 38.0 at the first, 41.4 in the middle and
	// √(44.7² + 19.3²) = 48.7 at the last: all more than a pound.
	if got.Overloaded != 4 || len(got.Cautions) != 5 {
		t.Errorf("%d overloaded, cautions %q", got.Overloaded, got.Cautions)
	}
}

// A hook is overloaded above its working load, not at it: 5 lb at a factor of 5 is 1 lb.
func TestOverloaded(t *testing.T) {
	m := mantel.Mantel{Length: 5 * ft}
	hook := mantel.Hook{Rating: 5 * lb}
	at, err := m.Loads(mantel.Hanging{Left: ft}, lb, hook)
	if err != nil || at.Overloaded != 0 || at.Hooks[0].Overloaded {
		t.Errorf("at the working load: %+v, %v", at, err)
	}
	above, err := m.Loads(mantel.Hanging{Left: ft + 1}, lb, hook)
	if err != nil || above.Overloaded != 1 || !above.Hooks[0].Overloaded || above.Hooks[1].Overloaded {
		t.Errorf("above the working load: %+v, %v", above, err)
	}
	two, err := m.Loads(mantel.Hanging{Left: 2 * ft}, lb, hook)
	if err != nil || two.Overloaded != 1 {
		t.Errorf("at twice the working load: %+v, %v", two, err)
	}
	const source = "statics; design factor by analogy, 29 CFR 1919.33"
	for _, test := range []struct {
		loads mantel.Loads
		want  shopping.Need
	}{
		{at, shopping.Need{
			Item: shopping.Item{Kind: shopping.Hook}, Quantity: shopping.Quantity{Pieces: 2}, Source: source,
			Basis: "1 at each of 2 places, up to 1 lb on a working load of 1 lb",
		}},
		{two, shopping.Need{
			Item: shopping.Item{Kind: shopping.Hook}, Quantity: shopping.Quantity{Pieces: 2}, Source: source,
			Basis: "1 at each of 2 places, up to 2 lb on a working load of 1 lb: overloaded at 1; to hold it, hooks with a breaking load of 10 lb or more; or garland of 8 oz a foot or less; or these hooks 1 ft apart or closer along an edge, with no more than 6 in falling at an end",
		}},
	} {
		if got := test.loads.Need(); !reflect.DeepEqual(got, test.want) {
			t.Errorf("got %+v, want %+v", got, test.want)
		}
	}
}

func TestWorkingLoad(t *testing.T) {
	rangeOf := func(fn, field, want string) *units.Error {
		return &units.Error{Func: fn, Field: field, Want: want, Err: units.ErrRange}
	}
	const wantRating = "1 oz to 1000 lb"
	for i, test := range []struct {
		hook mantel.Hook
		want units.Mass
		err  *units.Error
	}{
		{mantel.Hook{Rating: 5 * lb}, lb, nil},
		{mantel.Hook{Rating: 5 * lb, Factor: 5}, lb, nil},
		{mantel.Hook{Rating: 5 * lb, Factor: 20}, 4 * oz, nil},
		{mantel.Hook{Rating: oz + 1, Factor: 5}, oz / 5, nil}, // rounded down
		{mantel.Hook{Rating: oz}, oz / 5, nil},
		{mantel.Hook{Rating: 1000 * lb}, 200 * lb, nil},
		{mantel.Hook{}, 0, rangeOf("Hook.WorkingLoad", "/rating", wantRating)},
		{mantel.Hook{Rating: oz - 1}, 0, rangeOf("Hook.WorkingLoad", "/rating", wantRating)},
		{mantel.Hook{Rating: 1000*lb + 1}, 0, rangeOf("Hook.WorkingLoad", "/rating", wantRating)},
		{mantel.Hook{Rating: lb, Factor: 4}, 0, rangeOf("Hook.WorkingLoad", "/factor", "5 to 20")},
		{mantel.Hook{Rating: lb, Factor: -5}, 0, rangeOf("Hook.WorkingLoad", "/factor", "5 to 20")},
		{mantel.Hook{Rating: lb, Factor: 21}, 0, rangeOf("Hook.WorkingLoad", "/factor", "5 to 20")},
	} {
		got, err := test.hook.WorkingLoad()
		checkError(t, i, err, test.err)
		if got != test.want {
			t.Errorf("%v: %v, want %v", test.hook, got, test.want)
		}
	}
}

func TestSpacing(t *testing.T) {
	hook := mantel.Hook{Rating: 5 * lb}
	for perFoot, want := range map[units.Mass]units.Length{
		8 * oz:  2 * ft,
		3 * oz:  64 * in,         // 16/3 ft
		7 * oz:  16 * ft / 7,     // rounded down
		20 * lb: ft / 20,         //
		1e9:     138_254_954_376, // 453.59237 g at 1 g a foot
	} {
		if got, err := hook.Spacing(perFoot); err != nil || got != want {
			t.Errorf("%v a foot: %v, %v, want %v", perFoot, got, err, want)
		}
	}
	for _, perFoot := range []units.Mass{0, units.Gram - 1, 20*lb + 1, -lb} {
		got, err := hook.Spacing(perFoot)
		checkError(t, perFoot, err, &units.Error{Func: "mantel.Hook.Spacing", Field: "perFoot", Want: "1 g to 20 lb", Err: units.ErrRange})
		if got != 0 {
			t.Errorf("%v with an error", got)
		}
	}
	_, err := mantel.Hook{}.Spacing(lb)
	checkError(t, "no rating", err, &units.Error{Func: "mantel.Hook.Spacing", Field: "/rating", Want: "1 oz to 1000 lb", Err: units.ErrRange})
}

func TestLoadsErrors(t *testing.T) {
	m, hook := mantel.Mantel{Length: 100 * in}, mantel.Hook{Rating: lb}
	rangeOf := func(field, want string) *units.Error {
		return &units.Error{Func: "mantel.Mantel.Loads", Field: field, Want: want, Err: units.ErrRange}
	}
	const taut = "a hundredth of the span or more, 1/2 in: a taut garland pulls without limit"
	for i, test := range []struct {
		h       mantel.Hanging
		perFoot units.Mass
		hook    mantel.Hook
		want    *units.Error
	}{
		{mantel.Hanging{}, units.Gram, hook, nil},
		{mantel.Hanging{}, 20 * lb, hook, nil},
		{mantel.Hanging{}, units.Gram - 1, hook, rangeOf("perFoot", "1 g to 20 lb")},
		{mantel.Hanging{}, 20*lb + 1, hook, rangeOf("perFoot", "1 g to 20 lb")},
		{mantel.Hanging{}, lb, mantel.Hook{}, rangeOf("/hook/rating", "1 oz to 1000 lb")},
		{mantel.Hanging{}, lb, mantel.Hook{Rating: lb, Factor: 1}, rangeOf("/hook/factor", "5 to 20")},
		{mantel.Hanging{Swags: 2, Sag: in / 2}, lb, hook, nil},
		{mantel.Hanging{Swags: 2, Sag: in/2 - 1}, lb, hook, rangeOf("/hanging/sag", taut)},
		{mantel.Hanging{Swags: 2}, lb, hook, rangeOf("/hanging/sag", taut)},
	} {
		got, err := m.Loads(test.h, test.perFoot, test.hook)
		checkError(t, i, err, test.want)
		if err != nil && got.Hooks != nil {
			t.Errorf("row %d: loads with an error", i)
		}
	}
}

func TestLoadsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mantels().Draw(t, "m")
		h := hangings(m).Draw(t, "h")
		if h.Swags > 0 {
			h.Sag = max(h.Sag, m.Length/units.Length(100*h.Swags)+1)
		}
		perFoot := units.Mass(rapid.Int64Range(int64(units.Gram), int64(20*lb)).Draw(t, "per foot"))
		hook := mantel.Hook{
			Rating: units.Mass(rapid.Int64Range(int64(oz), int64(1000*lb)).Draw(t, "rating")),
			Factor: rapid.IntRange(5, 20).Draw(t, "factor"),
		}
		got, err := m.Loads(h, perFoot, hook)
		if err != nil {
			t.Fatal(err)
		}
		garland, _ := m.Garland(h)
		// The weight is that of the length, to half a nanogram, here to a double's digits.
		if want := garland.In(units.Foot) * float64(perFoot); math.Abs(float64(got.Weight)-want) > 0.5+1e-15*want {
			t.Fatalf("weight %v, want %v ng", got.Weight, want)
		}
		sum, sideways, overloaded := got.Shelf, units.Mass(0), 0
		for i, l := range got.Hooks {
			sum += l.Down
			sideways += l.Right - l.Left
			if l.Down < 0 || l.Total < l.Down || l.Total > got.Hooks[got.Heaviest].Total {
				t.Fatalf("hook %+v", l)
			}
			// Level pulls are equal on both sides of a free span.
			if i > 0 && l.Left != got.Hooks[i-1].Right {
				t.Fatalf("pulls %v and %v", got.Hooks[i-1].Right, l.Left)
			}
			// Pythagoras, to a double's digits, and rounded up.
			want := math.Hypot(float64(l.Down), float64(l.Right-l.Left))
			if over := float64(l.Total) - want; over < -1e-15*want || over > 1+1e-15*want {
				t.Fatalf("total %v, want %v ng", l.Total, want)
			}
			if l.Overloaded != (l.Total > got.Working) {
				t.Fatalf("hook %+v, working load %v", l, got.Working)
			}
			if l.Overloaded {
				overloaded++
			}
		}
		if sum != got.Weight || sideways != 0 || overloaded != got.Overloaded {
			t.Fatalf("loads add up to %v of %v, pulls to %v, %d of %d overloaded", sum, got.Weight, sideways, overloaded, got.Overloaded)
		}
		if (got.Shelf == 0) != (h.Swags > 0) {
			t.Fatalf("%v on the shelf", got.Shelf)
		}
		if slices.IndexFunc(got.Hooks, func(l mantel.HookLoad) bool { return l.Total == got.Hooks[got.Heaviest].Total }) != got.Heaviest {
			t.Fatal("the heaviest is not the first of equals")
		}
		if h.Swags == 0 {
			return
		}
		// Statics: the pull at the foot of half a swag, whose weight V hangs sag below
		// the hook, is w·a with a = (s² - sag²)/2sag for s half its length.
		run := (garland - h.Left - h.Right).In(units.Foot) / float64(h.Swags)
		s, sag := run/2, h.Sag.In(units.Foot)
		want := float64(perFoot) * (s*s - sag*sag) / (2 * sag)
		// s² - sag² loses digits where a swag is deep, for s is rounded by a nanometer.
		tolerance := 2 + want*1e-9 + float64(perFoot)*4e-9*s/sag
		if got := float64(got.Hooks[0].Right); math.Abs(got-want) > tolerance {
			t.Fatalf("pull %v, want %v ± %v", got, want, tolerance)
		}
	})
}

func TestLoadsText(t *testing.T) {
	l := mantel.Loads{
		Weight: 4*lb + 8*oz, Spacing: 32 * in, Working: lb,
		Hooks: []mantel.HookLoad{
			{Along: 0, Down: 12 * oz, Right: 4 * oz, Total: 13 * oz},
			{Along: 32 * in, Down: 24 * oz, Left: 4 * oz, Right: 4 * oz, Total: 24 * oz, Overloaded: true},
			{Along: 64 * in, Down: 100*units.Gram + 1, Left: 250 * units.Gram, Total: 13 * oz},
		},
	}
	want := `weight 4 lb 8 oz, hooks at most 2 ft 8 in apart, each good for 1 lb
at 0 ft: 12 oz down, 4 oz to the right
at 2 ft 8 in: 1 lb 8 oz down, OVERLOADED
at 5 ft 4 in: 3.5 oz down, 250 g to the left`
	if got := l.String(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if got, want := (mantel.Hook{Rating: 5 * lb}).String(), "hook rated 5 lb, design factor 5"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got, want := (mantel.Hook{Rating: 2 * units.Kilogram, Factor: 8}).String(), "hook rated 2 kg, design factor 8"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}
