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
	m.Above = mantel.Above{Width: ft, Height: ft, Up: in}
	h := mantel.Hanging{Swags: 3, Sag: 6 * in, Left: ft, Right: ft, Fall: ft, Thickness: in}
	hook := mantel.Hook{Rating: 5 * lb, Factor: 5}
	r := mantel.CommonPractice()
	s := mantel.Stockings{Count: 3, Spacing: 9 * in, Length: 18 * in, Width: 8 * in, Thick: 4 * in, Weight: lb}
	each := mantel.LightString{Lamps: 100, Length: 25 * ft}
	swag := mantel.Swag{Span: 20 * in, Rise: 14 * in, Sag: 4 * in}
	run := mantel.Run{Hooks: []mantel.Point{{}, {Along: 2 * ft, Below: -ft}}, Sag: 6 * in}
	stairs := mantel.Banister{Across: 10 * ft, Rise: 7 * ft, Balusters: 15, Each: 4, Sag: 6 * in}
	door := mantel.Frame{Width: 3 * ft, Height: 80 * in, Swags: 1, Sag: in, Corner: in}
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
		"Mantel.Garland":    {values{"": &m, "hanging": &h}, func() error { return second(m.Garland(h)) }},
		"Mantel.Clearances": {values{"": &m, "hanging": &h}, func() error { return second(m.Clearances(h)) }},
		"Mantel.Lights":     {values{"": &m, "hanging": &h, "each": &each}, func() error { return second(m.Lights(h, each)) }},
		"Mantel.Loads":      {values{"": &m, "hanging": &h, "hook": &hook}, func() error { return second(m.Loads(h, oz, hook)) }},
		"Mantel.Stockings":  {values{"": &m, "stockings": &s, "hook": &hook}, func() error { return second(m.Stockings(s, hook)) }},
		"Rules.Needs":       {values{"": &r.Traditional, "mantel": &m, "hanging": &h}, func() error { return second(r.Needs(m, h)) }},
		"Rules.Hang":        {values{"mantel": &m, "hanging": &h}, func() error { _, _, err := r.Hang(m, h); return err }},
		"Swag.Length":       {values{"": &swag}, func() error { return second(swag.Length()) }},
		"Swag.Lowest":       {values{"": &swag}, func() error { return second(swag.Lowest()) }},
		"Swag.Pull":         {values{"": &swag}, func() error { return second(swag.Pull(oz)) }},
		"Run.Garland":       {values{"": &run}, func() error { return second(run.Garland()) }},
		"Run.Needs":         {values{"": &run}, func() error { return second(run.Needs(0)) }},
		"Run.Loads":         {values{"": &run, "hook": &hook}, func() error { return second(run.Loads(oz, hook)) }},
		"Run.AppendPath":    {values{"": &run}, func() error { return ours(run.AppendPath(nil, 3)) }},
		"Banister.Hang":     {values{"": &stairs}, func() error { return second(stairs.Hang()) }},
		"Frame.Hang":        {values{"": &door}, func() error { return second(door.Hang()) }},
		"Hook.WorkingLoad":  {values{"": &hook}, func() error { return second(hook.WorkingLoad()) }},
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
			if fn == "Rules.Needs" && name == "" {
				prefix = "/traditional"
			}
			outside(reflect.ValueOf(v).Elem(), "", func(pointer string) {
				err := call.try()
				var got *units.Error
				if !errors.As(err, &got) {
					// Hang replaces what falls; a traditional mantel has no layers to check less.
					if fn != "Rules.Hang" || pointer != "/left" && pointer != "/right" {
						t.Errorf("%s: %s%s out of range, but %v", fn, prefix, pointer, err)
					}
					return
				}
				want := prefix + pointer
				if got.Field != want && !strings.HasPrefix(want, "/hooks/0") || got.Func != "mantel."+fn {
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
	for field, err := range map[string]error{
		"distance":          second(mantel.StandOut(-1, true)),
		"perFoot":           second(mantel.Swag{Span: ft, Sag: ft}.Pull(0)),
		"/sag":              second(mantel.Swag{Span: 10 * ft, Sag: in}.Pull(oz)),
		"length":            second(mantel.Swag{Span: ft, Rise: ft}.FindSag(16 * in)),
		"/hooks":            second(mantel.Run{}.Garland()),
		"/hooks/1/along":    second(mantel.Run{Hooks: []mantel.Point{{}, {}}}.Garland()),
		"/hooks/1/below":    second(mantel.Run{Hooks: []mantel.Point{{}, {Along: ft, Below: 51 * ft}}}.Garland()),
		"pickSpacing":       second(run.Needs(1)),
		"pieces":            second(run.AppendPath(nil, 0)),
		"/balusters":        second(mantel.Banister{Across: ft, Balusters: 20, Each: 1}.Hang()),
		"/swags":            second(mantel.Frame{Width: ft, Swags: 20}.Hang()),
		"/hook/factor":      second(run.Loads(oz, mantel.Hook{Rating: lb, Working: true, Factor: 5})),
		"/stockings/count":  second(tearoom.Stockings(mantel.Stockings{Count: 9, Length: ft, Weight: lb}, hook)),
		"/stockings/length": second(tearoom.Stockings(mantel.Stockings{Length: 5 * ft, Weight: lb}, hook)),
		"/hanging/left":     second(corner.Garland(mantel.Hanging{Left: 1})),
		"garland":           second(corner.FindDrops(64*in+55*in, mantel.Traditional, mantel.Hanging{})),
		"/asymmetrical/extra": func() error {
			_, _, err := mantel.Rules{Asymmetrical: mantel.LookRules{Extra: -1}}.Hang(tearoom, mantel.Hanging{Look: mantel.Asymmetrical})
			return err
		}(),
	} {
		var got *units.Error
		if !errors.As(err, &got) || got.Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	for i, err := range []error{
		second(run.Loads(0, hook)),
		second(mantel.Run{Hooks: []mantel.Point{{}, {Along: 10 * ft}}, Sag: in}.Loads(oz, hook)),
		second(mantel.Hook{}.Count(ft, oz)),
		second(hook.Count(0, oz)),
		second(mantel.Hook{Rating: oz}.Count(ft, 20*lb)),
		second(mantel.Frame{Width: ft, Sag: in}.Hang()),
	} {
		if err == nil {
			t.Errorf("row %d: no error", i)
		}
	}
	if run, err := (mantel.Banister{Across: ft}).Hang(); err != nil || len(run.Hooks) != 2 {
		t.Error(run, err)
	}
	if h, _, err := mantel.CommonPractice().Hang(tearoom, mantel.Hanging{Look: mantel.Asymmetrical, Heavy: mantel.Right}); err != nil || h.Right != 4*ft || h.Left != 0 {
		t.Error(h, err)
	}
	right := tearoom
	right.RightWall = true
	for _, m := range []mantel.Mantel{corner, right} {
		h, err := m.FindDrops(70*in, mantel.Traditional, mantel.Hanging{})
		if err != nil || h.Left+h.Right != 6*in || h.Left != 0 && m.LeftWall || h.Right != 0 && m.RightWall {
			t.Errorf("%v: %v, %v", m, h, err)
		}
		h, cautions, err := mantel.CommonPractice().Hang(m, mantel.Hanging{})
		if err != nil || h.Left+h.Right != ft || len(cautions) != 1 || cautions[0].Code != "wall" {
			t.Errorf("%v: %v, %v, %v", m, h, cautions, err)
		}
	}
	for want, got := range map[string]string{
		"mantel 1 ft long, between two walls":  mantel.Mantel{Length: ft, LeftWall: true, RightWall: true}.String(),
		"mantel 1 ft long, a wall at the left": mantel.Mantel{Length: ft, LeftWall: true}.String(),
		"mantel 1 ft long, a wall at the right, mirror or picture 1 ft wide and 1 ft high, 0 ft above the shelf": mantel.Mantel{Length: ft, RightWall: true, Above: mantel.Above{Width: ft, Height: ft}}.String(),
		"nothing above": mantel.Above{}.String(),
		"opening 1 ft wide and 1 ft high, 1 ft below the shelf, 2 in right of the middle": mantel.Opening{Width: ft, Height: ft, Below: ft, Offset: 2 * in}.String(),
		"opening 1 ft wide and 1 ft high, 1 ft below the shelf, 2 in left of the middle":  mantel.Opening{Width: ft, Height: ft, Below: ft, Offset: -2 * in}.String(),
		"swag 1 ft wide, rising 2 in, 3 in deep":                                          mantel.Swag{Span: ft, Rise: 2 * in, Sag: 3 * in}.String(),
		"swag 1 ft wide, falling 2 in, 3 in deep":                                         mantel.Swag{Span: ft, Rise: -2 * in, Sag: 3 * in}.String(),
		"hook with a working load of 1 lb":                                                mantel.Hook{Rating: lb, Working: true}.String(),
		"at 1 ft: 1 oz up":                                                                mantel.HookLoad{Along: ft, Down: -oz}.String(),
	} {
		if got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
	if l, err := tearoom.Lights(mantel.Hanging{}, mantel.LightString{Lamps: 1, Length: ft, Outlet: mantel.Point{Along: 70 * in}}); err != nil || l.At != mantel.Right || l.Cord != ft {
		t.Error(l, err)
	}
	if row, err := tearoom.Stockings(mantel.Stockings{Count: 1, Length: ft, Weight: 2 * lb}, hook); err != nil || row.Loads.Remedy != "hooks with a breaking load of 10 lb or more, or no more than 3.2 oz on each" {
		t.Error(row, err)
	}
	path, err := mantel.Run{Hooks: []mantel.Point{{}, {Along: ft}}, Left: in, Right: 2 * in}.AppendPath(nil, 1)
	if err != nil || !slices.Equal(path, []mantel.Point{{0, in}, {}, {ft, 0}, {ft, 2 * in}}) {
		t.Error(path, err)
	}
}

// A swag at two heights: worked out in 50 digits with mpmath from length² = rise² + (2a·sinh
// u)² and the sag as the middle of the chord above the curve, by root finding.
func TestSwagAtTwoHeights(t *testing.T) {
	s := mantel.Swag{Span: 20 * in, Rise: 14 * in, Sag: 4 * in}
	length, err := s.Length()
	if want := 25.592782305994334 * float64(in); err != nil || math.Abs(float64(length)-want) > 1 {
		t.Errorf("%v, want %v: %v", int64(length), want, err)
	}
	back, err := s.FindSag(length)
	if err != nil || back.Sag-s.Sag > 2 || s.Sag-back.Sag > 2 {
		t.Errorf("%v: %v, %v", s, back, err)
	}
	p, err := s.Pull(lb)
	if share := float64(p.Right) / float64(p.Left+p.Right); err != nil || math.Abs(share-0.980248711220364) > 1e-12 {
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
		got, err := r.Loads(oz, mantel.Hook{Rating: 5 * lb})
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
		other, err := mirror.Loads(oz, mantel.Hook{Rating: 5 * lb})
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
		m := mantel.Mantel{Length: lengths(ft, 8*ft).Draw(t, "length"), Opening: mantel.Opening{Width: lengths(in, 10*ft).Draw(t, "width"), Height: in, Below: lengths(in, 2*ft).Draw(t, "below"), Offset: lengths(-4*ft, 4*ft).Draw(t, "offset")}}
		h := mantel.Hanging{Swags: rapid.IntRange(0, 4).Draw(t, "swags"), Left: in, Right: 2 * ft}
		if h.Swags > 0 {
			h.Sag = lengths(0, 2*ft).Draw(t, "sag")
		}
		mirror, back := m, h
		mirror.Opening.Offset, back.Left, back.Right = -m.Opening.Offset, h.Right, h.Left
		a, err1 := m.Clearances(h)
		b, err2 := mirror.Clearances(back)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		slices.Reverse(b.Places)
		for i, p := range a.Places {
			if d := p.FromOpening - b.Places[i].FromOpening; d > 1 || d < -1 {
				t.Fatalf("%v, in the mirror %v", p, b.Places[i])
			}
		}
	})
}
