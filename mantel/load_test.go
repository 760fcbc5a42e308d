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
	got, err := loads(m, mantel.Hanging{Left: ft, Right: 2 * ft}, 8*oz, mantel.Hook{Rating: 5 * lb})
	if err != nil {
		t.Fatal(err)
	}
	want := mantel.Loads{
		Weight: 72 * oz, Working: lb,
		Hooks: []mantel.HookLoad{
			{Down: 8 * oz, Total: 8 * oz},
			{At: mantel.Point{Along: 6 * ft}, Down: 16 * oz, Total: 16 * oz},
		},
	}
	equalLoads(t, got, want)
	if len(got.Cautions) != 3 || !strings.Contains(got.Cautions[1].Text, "heat") {
		t.Errorf("cautions %q", got.Cautions)
	}
}

func equalLoads(t *testing.T, got, want mantel.Loads) {
	t.Helper()
	if got.Weight != want.Weight || got.Working != want.Working || remedy(got) != remedy(want) || !slices.Equal(got.Hooks, want.Hooks) {
		t.Errorf("got %+v\nwant %+v", got, want)
	}
}

// remedy returns the caution that says what would hold an overload.
func remedy(l mantel.Loads) string {
	for _, c := range l.Cautions {
		if strings.HasSuffix(c.Code, " overload") && c.Code != "half hung overload" {
			return c.Text
		}
	}
	return ""
}

// loads returns the loads of a garland that hangs so on a mantel.
func loads(m mantel.Mantel, h mantel.Hanging, perFoot units.Mass, hook mantel.Hook) (mantel.Loads, error) {
	run, err := m.Hang(h)
	if err != nil {
		return mantel.Loads{}, err
	}
	return run.Loads(perFoot, hook, units.InFeetInches)
}

// garland returns the length of a garland that hangs so on a mantel.
func garland(m mantel.Mantel, h mantel.Hanging) (units.Length, error) {
	run, err := m.Hang(h)
	if err != nil {
		return 0, err
	}
	return run.Garland()
}

// swag returns a run of one swag.
func swag(span, rise, sag units.Length) mantel.Run {
	return mantel.Run{Hooks: []mantel.Point{{}, {Along: span, Below: -rise}}, Sag: sag}
}

// overloaded returns how many hooks carry too much.
func overloaded(l mantel.Loads) (n int) {
	for _, h := range l.Hooks {
		if h.Total > l.Working {
			n++
		}
	}
	return n
}

// The cable of OpenStax Calculus Vol. 1, y = 10 cosh(x/10) from -15 to 15 ft, is 42.586 ft
// long. By the statics of a catenary its level pull is the weight of a = 10 ft of it,
// and its pull at a hook the weight of a + sag.
// Half a foot of an ounce a foot is 14,174,761,562½ ng. The half goes up at the first hook, and the
// last has what is left.
func TestLoadsHalfUp(t *testing.T) {
	m := mantel.Mantel{Length: 60 * in}
	got, err := loads(m, mantel.Hanging{Left: 6 * in, Right: 6 * in}, oz, mantel.Hook{Rating: lb})
	if err != nil || got.Weight != 6*oz || got.Hooks[0].Down != 14_174_761_563 || got.Hooks[1].Down != 14_174_761_562 {
		t.Errorf("got %v, %v", got, err)
	}
}

func TestLoadsOfAPublishedCable(t *testing.T) {
	m := mantel.Mantel{Length: 30 * ft}
	sag := 10 * (math.Cosh(1.5) - 1)
	got, err := loads(m, mantel.Hanging{Swags: 1, Sag: feet(sag)}, lb, mantel.Hook{Rating: 100 * lb})
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
	got, err := loads(m, h, 12*oz, mantel.Hook{Rating: 6 * lb, Factor: 6})
	if err != nil {
		t.Fatal(err)
	}
	length, _ := swag(3*ft, 0, 9*in).Garland()
	half := length.In(units.Foot) / 2 * 12 * float64(oz)
	wants := []float64{12*float64(oz) + half, 2 * half, 2 * half, 24*float64(oz) + half}
	for i, want := range wants {
		if h := got.Hooks[i]; math.Abs(float64(h.Down)-want) > 2000 { // a nanometer weighs 1116 ng
			t.Errorf("hook %d: %v down, want %v ng", i, h.Down, want)
		}
		if got.Hooks[i].At != (mantel.Point{Along: units.Length(i) * 3 * ft}) {
			t.Errorf("hook %d at %v", i, got.Hooks[i].At)
		}
	}
	// In the middle the pulls cancel, so the total is the weight.
	for _, h := range got.Hooks[1:3] {
		if h.Left != h.Right || h.Left == 0 || h.Total != h.Down {
			t.Errorf("middle hook %+v", h)
		}
	}
	if got.Working != lb {
		t.Errorf("got %+v", got)
	}
	// In ounces, √(32.7² + 19.3²) = 38.0 at the first, 41.4 in the middle and
	// √(44.7² + 19.3²) = 48.7 at the last: all more than a pound.
	if overloaded(got) != 4 || len(got.Cautions) != 6 {
		t.Errorf("%d overloaded, cautions %q", overloaded(got), got.Cautions)
	}
}

// A hook is overloaded above its working load, not at it: 5 lb at a factor of 5 is 1 lb.
func TestOverloaded(t *testing.T) {
	m := mantel.Mantel{Length: 5 * ft}
	hook := mantel.Hook{Rating: 5 * lb}
	at, err := loads(m, mantel.Hanging{Left: ft}, lb, hook)
	if err != nil || overloaded(at) != 0 || remedy(at) != "" {
		t.Errorf("at the working load: %+v, %v", at, err)
	}
	above, err := loads(m, mantel.Hanging{Left: ft + 1}, lb, hook)
	if err != nil || overloaded(above) != 1 || above.Hooks[0].Total <= above.Working || remedy(above) == "" {
		t.Errorf("above the working load: %+v, %v", above, err)
	}
	two, err := loads(m, mantel.Hanging{Left: 2 * ft}, lb, hook)
	if err != nil || overloaded(two) != 1 {
		t.Errorf("at twice the working load: %+v, %v", two, err)
	}
	const source = "statics; design factor by analogy, 29 CFR 1919.33"
	label, err := loads(m, mantel.Hanging{Left: 2 * ft}, lb, mantel.Hook{Rating: lb, Factor: 1})
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		loads  mantel.Loads
		remedy string
		want   shopping.Need
	}{
		{label, "more than a hook may carry at 1 place: use hooks with a working load of 2 lb or more; or garland of 8 oz a foot or less; or these hooks 1 ft apart or closer along an edge, with no more than 6 in falling at an end", shopping.Need{
			Item: shopping.Item{Kind: shopping.Hook}, Quantity: shopping.Quantity{Pieces: 2}, Source: source,
			Basis: "1 at each of 2 places, up to 2 lb on a working load of 1 lb: overloaded at 1",
		}},
		{at, "", shopping.Need{
			Item: shopping.Item{Kind: shopping.Hook}, Quantity: shopping.Quantity{Pieces: 2}, Source: source,
			Basis: "1 at each of 2 places, up to 1 lb on a working load of 1 lb",
		}},
		{two, "more than a hook may carry at 1 place: use hooks with a breaking load of 10 lb or more; or garland of 8 oz a foot or less; or these hooks 1 ft apart or closer along an edge, with no more than 6 in falling at an end", shopping.Need{
			Item: shopping.Item{Kind: shopping.Hook}, Quantity: shopping.Quantity{Pieces: 2}, Source: source,
			Basis: "1 at each of 2 places, up to 2 lb on a working load of 1 lb: overloaded at 1",
		}},
	} {
		if got := test.loads.Needs; !reflect.DeepEqual(got, []shopping.Need{test.want}) {
			t.Errorf("got %+v, want %+v", got, test.want)
		}
		if got := remedy(test.loads); got != test.remedy {
			t.Errorf("%q, want %q", got, test.remedy)
		}
	}
}

func TestWorkingLoad(t *testing.T) {
	rangeOf := func(fn, field, want string) *units.Error {
		return &units.Error{Func: fn, Field: field, Want: want, Err: units.ErrRange}
	}
	const wantRating, wantFactor = "1 oz to 1000 lb", "5 to 20, or 1 for a label that states a working load"
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
		{mantel.Hook{Rating: lb, Factor: 1}, lb, nil}, // the label states a working load
		{mantel.Hook{}, 0, rangeOf("Hook.WorkingLoad", "/rating", wantRating)},
		{mantel.Hook{Rating: oz - 1}, 0, rangeOf("Hook.WorkingLoad", "/rating", wantRating)},
		{mantel.Hook{Rating: 1000*lb + 1}, 0, rangeOf("Hook.WorkingLoad", "/rating", wantRating)},
		{mantel.Hook{Rating: lb, Factor: 4}, 0, rangeOf("Hook.WorkingLoad", "/factor", wantFactor)},
		{mantel.Hook{Rating: lb, Factor: -5}, 0, rangeOf("Hook.WorkingLoad", "/factor", wantFactor)},
		{mantel.Hook{Rating: lb, Factor: 21}, 0, rangeOf("Hook.WorkingLoad", "/factor", wantFactor)},
	} {
		got, err := test.hook.WorkingLoad()
		checkError(t, i, err, test.err)
		if got != test.want {
			t.Errorf("%v: %v, want %v", test.hook, got, test.want)
		}
	}
}

func TestCount(t *testing.T) {
	hook := mantel.Hook{Rating: 5 * lb}
	for _, test := range []struct {
		perFoot units.Mass
		spacing units.Length
		length  units.Length
		hooks   int
	}{
		{8 * oz, 2 * ft, 10 * ft, 6},
		{8 * oz, 2 * ft, 10*ft + 1, 7}, // rounded up
		{8 * oz, 2 * ft, in, 2},
		{8 * oz, 2 * ft, 150 * ft, 76},
		{3 * oz, 64 * in, ft, 2},          // 16/3 ft
		{7 * oz, 16 * ft / 7, 16 * ft, 9}, // rounded down, and so 7 hooks are too few by a nanometer
		{20 * lb, ft / 20, ft, 21},
		{1e9, 138_254_954_376, ft, 2}, // 453.59237 g at 1 g a foot
	} {
		if hooks, spacing, err := hook.Count(test.length, test.perFoot); err != nil || hooks != test.hooks || spacing != test.spacing {
			t.Errorf("%v a foot: %v, %v, %v, want %+v", test.perFoot, hooks, spacing, err, test)
		}
	}
	errOf := func(hook mantel.Hook, length units.Length, perFoot units.Mass) error {
		hooks, spacing, err := hook.Count(length, perFoot)
		if hooks != 0 || spacing != 0 {
			t.Errorf("%v, %v with an error", hooks, spacing)
		}
		return err
	}
	for _, perFoot := range []units.Mass{0, units.Gram - 1, 20*lb + 1, -lb} {
		checkError(t, perFoot, errOf(hook, ft, perFoot), &units.Error{Func: "mantel.Hook.Count", Field: "perFoot", Want: "1 g to 20 lb", Err: units.ErrRange})
	}
	for _, length := range []units.Length{in - 1, 150*ft + 1} {
		checkError(t, length, errOf(hook, length, lb), &units.Error{Func: "mantel.Hook.Count", Field: "length", Want: "1 in to 150 ft", Err: units.ErrRange})
	}
	checkError(t, "no rating", errOf(mantel.Hook{}, ft, lb), &units.Error{Func: "mantel.Hook.Count", Field: "/rating", Want: "1 oz to 1000 lb", Err: units.ErrRange})
}

func TestLoadsErrors(t *testing.T) {
	m, hook := mantel.Mantel{Length: 100 * in}, mantel.Hook{Rating: lb}
	rangeOf := func(field, want string) *units.Error {
		return &units.Error{Func: "mantel.Run.Loads", Field: field, Want: want, Err: units.ErrRange}
	}
	const taut = "0 ft, or a hundredth of the span or more, 1/2 in: a taut garland pulls without limit"
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
		{mantel.Hanging{}, lb, mantel.Hook{Rating: lb, Factor: 2}, rangeOf("/hook/factor", "5 to 20, or 1 for a label that states a working load")},
		{mantel.Hanging{Swags: 2, Sag: in / 2}, lb, hook, nil},
		{mantel.Hanging{Swags: 2, Sag: in/2 - 1}, lb, hook, rangeOf("/sag", taut)},
		{mantel.Hanging{Swags: 2, Sag: 1}, lb, hook, rangeOf("/sag", taut)},
		{mantel.Hanging{Swags: 2}, lb, hook, nil}, // close along the edge
	} {
		got, err := loads(m, test.h, test.perFoot, test.hook)
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
		got, err := loads(m, h, perFoot, hook)
		if err != nil {
			t.Fatal(err)
		}
		garland, _ := garland(m, h)
		// The weight is that of the length, which is rounded to a nanometer; here to a double's digits.
		nanometer := 0.0
		if h.Swags > 0 {
			nanometer = float64(perFoot) / float64(ft)
		}
		if want := garland.In(units.Foot) * float64(perFoot); math.Abs(float64(got.Weight)-want) > 0.5+nanometer/2+1e-15*want {
			t.Fatalf("weight %v, want %v ng", got.Weight, want)
		}
		sum, sideways := units.Mass(0), units.Mass(0)
		for i, l := range got.Hooks {
			sum += l.Down
			sideways += l.Right - l.Left
			if l.Down < 0 || l.Total < l.Down {
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
		}
		// What no hook carries lies on the shelf: 64 in of it, to half a nanogram and the rounding of the ends.
		shelf := got.Weight - sum
		want := 0.0
		if h.Swags == 0 {
			want = m.Length.In(units.Foot) * float64(perFoot)
		}
		if sideways != 0 || math.Abs(float64(shelf)-want) > 1.5+1e-15*want || h.Swags > 0 && shelf != 0 {
			t.Fatalf("loads add up to %v of %v, pulls to %v", sum, got.Weight, sideways)
		}
		if (remedy(got) != "") != (overloaded(got) > 0) {
			t.Fatalf("%d overloaded, but %q", overloaded(got), remedy(got))
		}
		if h.Swags == 0 {
			return
		}
		// Statics: the pull at the foot of half a swag, whose weight V hangs sag below
		// the hook, is w·a with a = (s² - sag²)/2sag for s half its length.
		run := (garland - h.Left - h.Right).In(units.Foot) / float64(h.Swags)
		s, sag := run/2, h.Sag.In(units.Foot)
		want = float64(perFoot) * (s*s - sag*sag) / (2 * sag)
		// s² - sag² loses digits where a swag is deep, for s is rounded by a nanometer.
		tolerance := 2 + want*1e-9 + float64(perFoot)*4e-9*s/sag
		if got := float64(got.Hooks[0].Right); math.Abs(got-want) > tolerance {
			t.Fatalf("pull %v, want %v ± %v", got, want, tolerance)
		}
	})
}

func TestLoadsText(t *testing.T) {
	l := mantel.Loads{
		Weight: 4*lb + 8*oz, Working: lb,
		Hooks: []mantel.HookLoad{
			{Down: 12 * oz, Right: 4 * oz, Total: 13 * oz},
			{At: mantel.Point{Along: 32 * in}, Down: 24 * oz, Left: 4 * oz, Right: 4 * oz, Total: 24 * oz},
			{At: mantel.Point{Along: 64 * in}, Down: 100*units.Gram + 1, Left: 250 * units.Gram, Total: 13 * oz},
		},
	}
	want := `weight 4 lb 8 oz, hooks up to 2 ft 8 in apart, each good for 1 lb
at 0 ft: 12 oz down, 4 oz to the right
at 2 ft 8 in: 1 lb 8 oz down, OVERLOADED
at 5 ft 4 in: 3.5 oz down, 250 g to the left`
	if got := l.String(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	one := mantel.Loads{Weight: lb, Working: lb, Hooks: []mantel.HookLoad{{Down: lb, Total: lb}}}
	if got, want := one.String(), "weight 1 lb, each good for 1 lb\nat 0 ft: 1 lb down"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	for down, want := range map[units.Mass]string{
		-oz: "at 1 ft: 1 oz up, LIFTED: tie it down",
		0:   "at 1 ft: 0 lb down", // nothing falls from a shelf
	} {
		if got := (mantel.HookLoad{At: mantel.Point{Along: ft}, Down: down}).String(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

// Only a hook between two swags is ever half hung, and one that carries nothing is not lifted.
func TestLoadsCautions(t *testing.T) {
	always := []string{"hook label", "hook heat", "weigh yours"}
	// By hand, as parabolas, 32 in wide and 6 in deep, of 2.9 ft each, at 8 oz a foot: the middle hook carries 23 oz, and a pull of 14 oz while only
	// one of them hangs, 27 oz in all.
	for _, row := range []struct {
		h      mantel.Hanging
		weight units.Mass
		hook   mantel.Hook
		want   []string
	}{
		{mantel.Hanging{}, oz, mantel.Hook{Rating: 20 * lb}, always},
		{mantel.Hanging{Swags: 1, Sag: 6 * in}, oz, mantel.Hook{Rating: 20 * lb}, always},
		{mantel.Hanging{Swags: 2, Sag: 6 * in}, oz, mantel.Hook{Rating: 20 * lb}, append(always, "half hung")},
		{mantel.Hanging{Swags: 2, Sag: 6 * in}, 8 * oz, mantel.Hook{Rating: 25 * oz, Factor: 1}, append(always, "half hung overload")},
		{mantel.Hanging{Swags: 2, Sag: 6 * in}, 8 * oz, mantel.Hook{Rating: 29 * oz, Factor: 1}, append(always, "half hung")},
	} {
		l, err := loads(mantel.Mantel{Length: 64 * in}, row.h, row.weight, row.hook)
		var got []string
		for _, c := range l.Cautions {
			got = append(got, c.Code)
		}
		if err != nil || !slices.Equal(got, row.want) {
			t.Errorf("%v: %q, %v, want %q", row.h, got, err, row.want)
		}
	}
}

// By hand: 20 in wide, rising 14 in with 1 in of sag, a garland is all but straight, and pulls harder than it weighs;
// its lower end lifts the hook where the catenary leaves it upwards. A level one lifts none.
func TestLifted(t *testing.T) {
	for _, row := range []struct {
		rise units.Length
		want []string
	}{{14 * in, []string{"a steep garland lifts its lower hook: tie it down there, or it comes off: here 0 ft from the left"}}, {-14 * in, []string{"a steep garland lifts its lower hook: tie it down there, or it comes off: here 50.8 cm from the left"}}, {0, nil}} {
		run := mantel.Run{Hooks: []mantel.Point{{}, {Along: 20 * in, Below: -row.rise}}, Sag: 1 * in}
		style := units.InFeetInches
		if row.rise < 0 {
			style = units.InMetric
		}
		l, err := run.Loads(8*oz, mantel.Hook{Rating: 20 * lb}, style)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, c := range l.Cautions {
			if c.Code == "lifted" {
				got = append(got, c.Text)
			}
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("rising %v: %q, want %q", row.rise, got, row.want)
		}
	}
}
