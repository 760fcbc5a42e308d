package mantel_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// outside calls try with v and one number in it out of its range at a time, and the
// pointer of that number.
func outside(v reflect.Value, pointer string, try func(pointer string)) {
	switch v.Kind() {
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[units.Caution]() {
			return
		}
		for i := range v.NumField() {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			outside(v.Field(i), pointer+"/"+name, try)
		}
	case reflect.Slice:
		for i := range v.Len() {
			outside(v.Index(i), pointer+"/"+string(rune('0'+i)), try)
		}
	case reflect.Int, reflect.Int64:
		was := v.Int()
		values := []int64{math.MinInt64, -1 << 50, 1 << 50, math.MaxInt64}
		if v.Kind() == reflect.Int { // it may have 32 bits
			values = []int64{math.MinInt, math.MinInt32, math.MaxInt32, math.MaxInt}
		}
		for _, x := range values {
			v.SetInt(x)
			try(pointer)
		}
		v.SetInt(was)
	case reflect.Uint8:
		was := v.Uint()
		v.SetUint(200)
		try(pointer)
		v.SetUint(was)
	}
}

// An error names the value that is out of range: in the receiver by a JSON Pointer from
// it, in an argument by one that begins with the argument's name. Every number of every
// value is put out of range in turn, and the pointer is looked up in the value's JSON.
func TestFieldsAreJSONPointers(t *testing.T) {
	m := tearoom
	m.Above = mantel.Rectangle{Width: ft, Height: ft, Gap: in}
	h := mantel.Hanging{Swags: 3, Sag: 6 * in, Left: ft, Right: ft, Fall: ft, Thickness: in}
	hook := mantel.Hook{Rating: 5 * lb, Factor: 5}
	r := mantel.CommonPractice()
	s := mantel.Stockings{Count: 3, Spacing: 9 * in, Length: 18 * in, Thickness: 8 * in, Weight: lb}
	run := mantel.Run{Hooks: []mantel.Point{{}, {Along: 2 * ft, Below: -ft}}, Sag: 6 * in}
	newel, post, outlet, corner := mantel.Point{}, mantel.Point{Along: 10 * ft, Below: -7 * ft}, mantel.Point{}, mantel.Point{Along: 3 * ft, Below: 80 * in}
	second := func(_ any, err error) error { return err }
	ours := func(path []mantel.Point, err error) error {
		if path != nil {
			t.Error("a path with an error")
		}
		return err
	}
	type values = map[string]any // by argument; the receiver is ""
	for fn, call := range map[string]struct {
		of  values
		try func() error
	}{
		"Mantel.Hang":       {values{"": &m, "hanging": &h}, func() error { return second(m.Hang(h)) }},
		"Mantel.FindDrops":  {values{"": &m, "hanging": &h}, func() error { return second(m.FindDrops(9*ft, h)) }},
		"Mantel.Clearances": {values{"": &m, "hanging": &h}, func() error { return second(m.Clearances(h, units.InFeetInches)) }},
		"Mantel.Stockings":  {values{"": &m, "stockings": &s, "hook": &hook}, func() error { _, _, err := m.Stockings(s, hook, mantel.Clearances{}, units.InFeetInches); return err }},
		"Rules.Needs":       {values{"": &r.Traditional, "mantel": &m, "hanging": &h}, func() error { return second(r.Needs(m, h, units.InFeetInches)) }},
		"Rules.Hang":        {values{"": &r.Traditional, "mantel": &m, "hanging": &h}, func() error { _, _, err := r.Hang(m, h, units.InFeetInches); return err }},
		"Run.Garland":       {values{"": &run}, func() error { return second(run.Garland()) }},
		"Run.FindSag":       {values{"": &run}, func() error { return second(run.FindSag(4 * ft)) }},
		"Run.Below":         {values{"": &run}, func() error { return second(run.Below(ft)) }},
		"Run.Needs":         {values{"": &run}, func() error { return second(run.Needs(0, units.InFeetInches)) }},
		"Run.Lights":        {values{"": &run, "outlet": &outlet}, func() error { _, _, _, err := run.Lights(50, ft, outlet, units.InFeetInches); return err }},
		"Run.Loads":         {values{"": &run, "hook": &hook}, func() error { return second(run.Loads(oz, hook, units.InFeetInches)) }},
		"Run.AppendPath":    {values{"": &run}, func() error { return ours(run.AppendPath(nil, 3)) }},
		"Stairs":            {values{"newel": &newel, "post": &post}, func() error { _, _, err := mantel.Stairs(newel, post, 15, 4); return err }},
		"Door":              {values{"corner": &corner}, func() error { _, _, err := mantel.Door(corner, 1); return err }},
		"Hook.WorkingLoad":  {values{"": &hook}, func() error { return second(hook.WorkingLoad()) }},
		"Hook.Count":        {values{"": &hook}, func() error { _, _, err := hook.Count(ft, oz); return err }},
	} {
		if fn != "Run.AppendPath" {
			if err := call.try(); err != nil {
				t.Errorf("%s refuses an ordinary call: %v", fn, err)
			}
		}
		for name, v := range call.of {
			prefix := ""
			if name != "" {
				prefix = "/" + name
			}
			if strings.HasPrefix(fn, "Rules.") && name == "" {
				prefix = "/traditional"
			}
			outside(reflect.ValueOf(v).Elem(), "", func(pointer string) {
				err := call.try()
				var got *units.Error
				if !errors.As(err, &got) {
					// What is found anew is ignored.
					ignored := map[string]string{"Rules.Hang": "/left /right", "Mantel.FindDrops": "/left /right", "Run.FindSag": "/sag"}[fn]
					if !slices.Contains(strings.Fields(ignored), pointer) {
						t.Errorf("%s: %s%s out of range, but %v", fn, prefix, pointer, err)
					}
					return
				}
				want := prefix + pointer
				if got.Field != want && !strings.HasPrefix(want, "/hooks/0") && !strings.HasPrefix(want, "/newel") || got.Func != "mantel."+fn {
					t.Errorf("%s: %s out of range, but the error is %v", fn, want, got)
				}
				// It is there in JSON.
				text, _ := json.Marshal(v)
				var doc any
				if json.Unmarshal(text, &doc) == nil {
					for _, key := range strings.Split(strings.TrimPrefix(got.Field, prefix+"/"), "/") {
						switch x := doc.(type) {
						case map[string]any:
							doc = x[key]
						case []any:
							doc = x[key[0]-'0']
						}
						if doc == nil {
							t.Errorf("%s: no %s in %s", fn, got.Field, text)
						}
					}
				}
			})
		}
	}
}

// What does not fit, and what is taken.
func TestMoreErrors(t *testing.T) {
	second := func(_ any, err error) error { return err }
	run := mantel.Run{Hooks: []mantel.Point{{}, {Along: 2 * ft, Below: -ft}}, Sag: 6 * in}
	hook := mantel.Hook{Rating: lb}
	corner := tearoom
	corner.LeftWall = true
	third := func(_, _ any, err error) error { return err }
	lights := func(lamps int, length units.Length) error {
		need, cord, cautions, err := run.Lights(lamps, length, mantel.Point{}, units.InFeetInches)
		if err != nil && (need.Basis != "" || cord != 0 || cautions != nil) {
			t.Error(need, cord, cautions, err)
		}
		return err
	}
	for field, err := range map[string]error{
		"distance":            second(mantel.StandOut(-1, true)),
		"perFoot":             second(run.Loads(0, hook, units.InFeetInches)),
		"/sag":                second(swag(10*ft, 1, in).Loads(oz, hook, units.InFeetInches)),
		"garland":             second(swag(ft, ft, 0).FindSag(16 * in)),
		"pickSpacing":         second(run.Needs(1, units.InFeetInches)),
		"pieces":              second(run.AppendPath(nil, 0)),
		"lamps":               lights(0, ft),
		"length":              lights(1, 1001*ft),
		"balusters":           third(mantel.Stairs(mantel.Point{}, mantel.Point{Along: ft}, 20, 1)),
		"each":                third(mantel.Stairs(mantel.Point{}, mantel.Point{Along: ft}, 3, 5)),
		"/post/along":         third(mantel.Stairs(mantel.Point{}, mantel.Point{Along: ft - 1}, 3, 4)),
		"/newel/along":        third(mantel.Stairs(mantel.Point{Along: 1001 * ft}, mantel.Point{Along: ft}, 3, 4)),
		"swags":               third(mantel.Door(mantel.Point{Along: ft}, 20)),
		"/corner/along":       third(mantel.Door(mantel.Point{Along: ft - 1}, 2)),
		"/hook/factor":        second(run.Loads(oz, mantel.Hook{Rating: lb, Factor: 3}, units.InFeetInches)),
		"/stockings/count":    third(tearoom.Stockings(mantel.Stockings{Count: 9, Length: ft, Weight: lb}, hook, mantel.Clearances{}, units.InFeetInches)),
		"/stockings/length":   third(tearoom.Stockings(mantel.Stockings{Length: 5 * ft, Weight: lb}, hook, mantel.Clearances{}, units.InFeetInches)),
		"/stockings/weight":   third(tearoom.Stockings(mantel.Stockings{Length: ft}, hook, mantel.Clearances{}, units.InFeetInches)),
		"/hanging/left":       second(corner.Hang(mantel.Hanging{Left: 1})),
		"/asymmetrical/extra": third(mantel.Rules{Asymmetrical: mantel.LookRules{Extra: -1}}.Hang(tearoom, mantel.Hanging{Look: mantel.AsymmetricalLeft}, units.InFeetInches)),
	} {
		var got *units.Error
		if !errors.As(err, &got) || got.Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	for i, err := range []error{
		third(mantel.Stairs(mantel.Point{}, mantel.Point{Along: ft}, -1, 1)),
		third(mantel.Stairs(mantel.Point{}, mantel.Point{Along: 10 * ft}, 100, 1)),
		second(run.Needs(in/2-1, units.InFeetInches)),
		third(mantel.Stairs(mantel.Point{}, mantel.Point{Along: ft}, 3, 0)),
		third(mantel.Door(mantel.Point{Along: ft}, -1)),
		third(mantel.Door(mantel.Point{Along: ft}, 101)),
		second(corner.FindDrops(64*in+55*in, mantel.Hanging{})),
		second(mantel.StandOut(100*ft+1, true)),
		third(tearoom.Stockings(mantel.Stockings{Length: ft, Weight: lb}, mantel.Hook{}, mantel.Clearances{}, units.InFeetInches)),
		third(mantel.Mantel{Length: ft}.Stockings(mantel.Stockings{Count: 2, Length: ft, Weight: lb}, hook, mantel.Clearances{}, units.InFeetInches)),
	} {
		if err == nil {
			t.Errorf("row %d: no error", i)
		}
	}
	if run, cautions, err := mantel.Stairs(mantel.Point{}, mantel.Point{Along: ft}, 50, 51); err != nil || len(run.Hooks) != 2 || len(cautions) != 1 {
		t.Error(run, cautions, err)
	}
	for i, err := range []error{ // an inch is wide enough, a toe may touch the hearth
		third(mantel.Stairs(mantel.Point{}, mantel.Point{Along: ft}, 11, 1)),
		third(mantel.Stairs(mantel.Point{}, mantel.Point{Along: 10 * ft}, 99, 1)),
		third(mantel.Door(mantel.Point{Along: ft}, 12)),
		second(run.Needs(in/2, units.InFeetInches)),
		third(tearoom.Stockings(mantel.Stockings{Length: 54 * in, Weight: lb}, hook, mantel.Clearances{}, units.InFeetInches)),
	} {
		if err != nil {
			t.Errorf("row %d: %v", i, err)
		}
	}
	if run, _, err := mantel.Stairs(mantel.Point{2 * ft, 5 * ft}, mantel.Point{12 * ft, 0}, 9, 5); err != nil || !slices.Equal(run.Hooks, []mantel.Point{{2 * ft, 5 * ft}, {7 * ft, 5 * ft / 2}, {12 * ft, 0}}) {
		t.Error(run, err) // by hand
	}
	if h, _, err := mantel.CommonPractice().Hang(tearoom, mantel.Hanging{Look: mantel.AsymmetricalRight}, units.InFeetInches); err != nil || h.Right != 4*ft || h.Left != 0 {
		t.Error(h, err)
	}
	right := tearoom
	right.RightWall = true
	for _, m := range []mantel.Mantel{corner, right} {
		h, err := m.FindDrops(70*in, mantel.Hanging{})
		if err != nil || h.Left+h.Right != 6*in || h.Left != 0 && m.LeftWall || h.Right != 0 && m.RightWall {
			t.Errorf("%v: %v, %v", m, h, err)
		}
		h, cautions, err := mantel.CommonPractice().Hang(m, mantel.Hanging{}, units.InFeetInches)
		if err != nil || h.Left+h.Right != ft || len(cautions) != 1 || cautions[0].Code != map[bool]string{true: "wall left", false: "wall right"}[m.LeftWall] {
			t.Errorf("%v: %v, %v, %v", m, h, cautions, err)
		}
	}
	hung, err := tearoom.Hang(mantel.Hanging{})
	if err != nil {
		t.Fatal(err)
	}
	if need, cord, cautions, err := hung.Lights(3, ft, mantel.Point{Along: 70 * in}, units.InFeetInches); err != nil || cord != ft || need.Quantity.Pieces != 18 || len(cautions) != 1 {
		t.Error(need, cord, err)
	}
	// An outlet as far from both ends: 32 in along and 24 in down.
	if need, cord, _, err := hung.Lights(3, ft, mantel.Point{Along: 32 * in, Below: 2 * ft}, units.InFeetInches); err != nil || cord != 5*ft {
		t.Error(need, cord, err)
	}
	if l, _, err := tearoom.Stockings(mantel.Stockings{Count: 3, Length: ft, Weight: 2 * lb}, hook, mantel.Clearances{}, units.InFeetInches); err != nil || l.Weight != 6*lb {
		t.Error(l.Weight, err)
	}
	if l, c, err := tearoom.Stockings(mantel.Stockings{Count: 1, Length: ft, Weight: 2 * lb}, hook, mantel.Clearances{}, units.InFeetInches); err != nil || len(c.Places) != 2 || remedy(l) != "more than a hook may carry at 1 place: use hooks with a breaking load of 10 lb or more, or no more than 3.2 oz on each" || len(l.Needs) != 2 {
		t.Error(l, err)
	}
	path, err := mantel.Run{Hooks: []mantel.Point{{}, {Along: ft}}, Left: in, Right: 2 * in}.AppendPath(nil, 1)
	if err != nil || !slices.Equal(path, []mantel.Point{{0, in}, {}, {ft, 0}, {ft, 2 * in}}) {
		t.Error(path, err)
	}
}

// A swag at two heights: worked out in 50 digits with mpmath from length² = rise² + (2a·sinh
// u)² and the sag as the middle of the chord above the curve, by root finding.
func TestSwagAtTwoHeights(t *testing.T) {
	s := swag(20*in, 14*in, 4*in)
	length, err := s.Garland()
	if want := 25.592782305994334 * float64(in); err != nil || math.Abs(float64(length)-want) > 1 {
		t.Errorf("%v, want %v: %v", int64(length), want, err)
	}
	back, err := s.FindSag(length)
	if err != nil || back.Sag-s.Sag > 2 || s.Sag-back.Sag > 2 {
		t.Errorf("%v: %v, %v", s, back, err)
	}
	l, err := s.Loads(lb, mantel.Hook{Rating: 5 * lb}, units.InFeetInches)
	if share := float64(l.Hooks[1].Down) / float64(l.Weight); err != nil || math.Abs(share-0.980248711220364) > 1e-12 {
		t.Errorf("%v of the weight on the upper hook, %v", share, err)
	}
}

// Loads add up to the weight, level pulls are equal at both ends of every swag, the mirror
// image has the mirror image of the loads, and a deeper swag is longer.
func TestRunProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := mantel.Run{Hooks: []mantel.Point{{}}, Sag: lengths(2*in, 4*ft).Draw(t, "sag"), Left: lengths(0, 3*ft).Draw(t, "left"), Right: lengths(0, 3*ft).Draw(t, "right")}
		for range rapid.IntRange(1, 6).Draw(t, "swags") {
			last := r.Hooks[len(r.Hooks)-1]
			r.Hooks = append(r.Hooks, mantel.Point{Along: last.Along + lengths(2*in, 10*ft).Draw(t, "span"), Below: last.Below + lengths(-6*ft, 6*ft).Draw(t, "rise")})
		}
		got, err := r.Loads(oz, mantel.Hook{Rating: 5 * lb}, units.InFeetInches)
		if err != nil {
			t.Fatal(err)
		}
		garland, _ := r.Garland()
		sum := units.Mass(0)
		for i, h := range got.Hooks {
			sum += h.Down
			if i > 0 && h.Left != got.Hooks[i-1].Right {
				t.Fatalf("%v and %v", h.Left, got.Hooks[i-1].Right)
			}
		}
		// A nanometer of garland weighs 93 ng.
		if off := float64(got.Weight) - garland.In(ft)*float64(oz); sum != got.Weight || math.Abs(off) > 93*float64(len(r.Hooks)) {
			t.Fatalf("%v of %v, off by %v", sum, got.Weight, off)
		}
		mirror := mantel.Run{Sag: r.Sag, Left: r.Right, Right: r.Left}
		for _, p := range slices.Backward(r.Hooks) {
			mirror.Hooks = append(mirror.Hooks, mantel.Point{Along: -p.Along, Below: p.Below})
		}
		other, err := mirror.Loads(oz, mantel.Hook{Rating: 5 * lb}, units.InFeetInches)
		if err != nil {
			t.Fatal(err)
		}
		for i, h := range got.Hooks {
			if d := h.Down - other.Hooks[len(other.Hooks)-1-i].Down; d > 2 || d < -2 {
				t.Fatalf("hook %d: %v, in the mirror %v", i, h, other.Hooks[len(other.Hooks)-1-i])
			}
		}
		deeper := r
		deeper.Sag += lengths(0, ft).Draw(t, "deeper")
		if more, _ := deeper.Garland(); more < garland {
			t.Fatalf("%v, deeper %v", garland, more)
		}
	})
}

// The opening moved to one side, seen in a mirror, is the opening moved to the other.
func TestOffsetMirrors(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mantel.Mantel{Length: lengths(ft, 8*ft).Draw(t, "length"), Opening: mantel.Rectangle{Width: lengths(in, 10*ft).Draw(t, "width"), Height: in, Gap: lengths(in, 2*ft).Draw(t, "below"), Offset: lengths(-4*ft, 4*ft).Draw(t, "offset")}}
		h := mantel.Hanging{Swags: rapid.IntRange(0, 4).Draw(t, "swags"), Left: in, Right: 2 * ft}
		if h.Swags > 0 {
			h.Sag = lengths(0, 2*ft).Draw(t, "sag")
		}
		mirror, back := m, h
		mirror.Opening.Offset, back.Left, back.Right = -m.Opening.Offset, h.Right, h.Left
		a, err1 := m.Clearances(h, units.InFeetInches)
		b, err2 := mirror.Clearances(back, units.InFeetInches)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		slices.Reverse(b.Places)
		for i, p := range a.Places {
			if d := p.Measured - b.Places[i].Measured; d > 1 || d < -1 {
				t.Fatalf("%v, in the mirror %v", p, b.Places[i])
			}
		}
	})
}
