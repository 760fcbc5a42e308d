package mantel_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// irc and nfpa keep the violations of one source.
func from(c mantel.Clearances, source string) (found []mantel.Clearance) {
	for _, v := range append(c.Violations, c.Fire) {
		if strings.HasPrefix(v.Source, source) {
			found = append(found, v)
		}
	}
	return found
}

// The table of IRC R1001.11 exception 4, 2018: nothing within 6 in; an eighth of an
// inch out for each inch away, so 0.75 in at 6, 1.0 at 8, 1.25 at 10 and 1.5 at 12.
// And ANSI/NFPA 211, 2016, 11.2.5.4: nothing within 6 in, and nothing standing out
// over 1½ in within 12 in. A garland that lies along the shelf is as far from the
// opening as the shelf is, and stands out as far as the shelf is deep.
func TestClearanceTable(t *testing.T) {
	const near, out = "distance from the opening", "standing out from the wall"
	irc := func(measure string, measured, allowed units.Length) mantel.Clearance {
		return mantel.Clearance{"along the shelf", measure, measured, allowed, measure == near, "IRC R1001.11 exception 4, 2018"}
	}
	nfpa := func(measure string, measured, allowed units.Length) mantel.Clearance {
		return mantel.Clearance{"along the shelf", measure, measured, allowed, measure == near, "ANSI/NFPA 211, 11.2.5.4, 2016"}
	}
	tips := func(measured units.Length) mantel.Clearance {
		return mantel.Clearance{"along the shelf", "distance from an open fire", measured, 3 * ft, true, "NFPA and ESFI holiday safety tips, undated"}
	}
	type list = []mantel.Clearance
	for _, test := range []struct {
		below, depth units.Length
		want         list
	}{
		{6*in - 1, in / 2, list{irc(near, 6*in-1, 6*in), nfpa(near, 6*in-1, 6*in), tips(6*in - 1)}},
		{6 * in, 3 * in / 4, list{tips(6 * in)}},
		{6 * in, 3*in/4 + 1, list{irc(out, 3*in/4+1, 3*in/4), tips(6 * in)}},
		{8 * in, in, list{tips(8 * in)}},
		{8 * in, in + 1, list{irc(out, in+1, in), tips(8 * in)}},
		{10 * in, 5 * in / 4, list{tips(10 * in)}},
		{10 * in, 5*in/4 + 1, list{irc(out, 5*in/4+1, 5*in/4), tips(10 * in)}},
		{12 * in, 3 * in / 2, list{tips(12 * in)}},
		{12 * in, 3*in/2 + 1, list{irc(out, 3*in/2+1, 3*in/2), nfpa(out, 3*in/2+1, 3*in/2), tips(12 * in)}},
		{12*in + 1, 10 * ft, list{tips(12*in + 1)}},
		{4 * in, 2 * in, list{irc(near, 4*in, 6*in), nfpa(near, 4*in, 6*in), tips(4 * in)}},
		{3*ft - 1, 8 * in, list{tips(3*ft - 1)}},
		{3 * ft, 8 * in, nil},
		{8 * in, 0, list{tips(8 * in)}}, // depth not measured
	} {
		m := mantel.Mantel{Length: 5 * ft, Depth: test.depth, Opening: mantel.Rectangle{Width: 3 * ft, Height: 2 * ft, Gap: test.below}}
		got, err := m.Clearances(mantel.Hanging{}, units.InFeetInches)
		all := got.Violations
		if got.Fire != (mantel.Clearance{}) {
			all = append(all, got.Fire)
		}
		if err != nil || !slices.Equal(all, test.want) {
			t.Errorf("%v below, %v deep: got %v, %v, want %v", test.below, test.depth, got.Violations, err, test.want)
		}
		if want := irc(near, test.below, 6*in); !slices.Equal(got.Places, list{want}) {
			t.Errorf("got %v, want %v", got.Places, want)
		}
	}
}

// Half of the thickness brings a garland nearer, lower, and further out.
func TestThickness(t *testing.T) {
	m := mantel.Mantel{Length: 5 * ft, Height: 5 * ft, Depth: in, Opening: mantel.Rectangle{Width: 3 * ft, Height: 2 * ft, Gap: 10 * in}}
	got, err := m.Clearances(mantel.Hanging{Thickness: 2 * in, Left: 58 * in}, units.InFeetInches)
	if err != nil {
		t.Fatal(err)
	}
	if want := []nearness{{"left drop", 11 * in, in}, {"along the shelf", 9 * in, 59 * in}}; !slices.Equal(places(got), want) {
		t.Errorf("got %v, want %v", got.Places, want)
	}
	if v := from(got, "IRC"); len(v) != 1 || v[0].Measured != 2*in || v[0].Allowed != 9*in/8 { // the drop is beside the opening
		t.Errorf("got %v", v)
	}

	// On the hearth, and just above it.
	got, err = m.Clearances(mantel.Hanging{Thickness: 2 * in, Right: 59 * in}, units.InFeetInches)
	if err != nil || places(got)[1].hearth != 0 || len(from(got, "common practice")) != 0 {
		t.Errorf("got %v, %v", got, err)
	}
	got, err = m.Clearances(mantel.Hanging{Thickness: 2 * in, Right: 59*in + 1}, units.InFeetInches)
	hearth := mantel.Clearance{"right drop", "height above the hearth", -1, 0, true, "common practice"}
	if err != nil || places(got)[1].hearth != -1 || !slices.Equal(from(got, "common practice"), []mantel.Clearance{hearth}) {
		t.Errorf("got %v, %v", got, err)
	}

	// So thick that it reaches the opening from the shelf.
	got, err = m.Clearances(mantel.Hanging{Thickness: 3 * ft}, units.InFeetInches)
	if err != nil || places(got)[0].opening != 0 {
		t.Errorf("got %v, %v", got, err)
	}
}

// An opening 36 in wide under a shelf of 60 in: 12 in from the shelf's ends, 9 in below it.
func TestDistances(t *testing.T) {
	m := mantel.Mantel{Length: 60 * in, Opening: mantel.Rectangle{Width: 36 * in, Height: 30 * in, Gap: 9 * in}}
	for _, test := range []struct {
		reason string
		h      mantel.Hanging
		want   map[string]units.Length
	}{
		{
			"a 3-4-5 triangle: nothing falls, 12 in across and 9 down; but a drop of 0 is none",
			mantel.Hanging{},
			map[string]units.Length{"along the shelf": 9 * in},
		},
		{
			"a drop of 4 in ends 5 in above the top: 5-12-13",
			mantel.Hanging{Left: 4 * in, Right: 9 * in, Look: mantel.AsymmetricalLeft, Fall: 40 * in},
			map[string]units.Length{"left drop": 13 * in, "along the shelf": 9 * in, "right drop": 12 * in, "ribbon": 12 * in},
		},
		{
			"an asymmetrical ribbon at either end",
			mantel.Hanging{Look: mantel.AsymmetricalRight, Fall: 4 * in},
			map[string]units.Length{"ribbon": 13 * in},
		},
		{
			"a traditional ribbon in the middle, over the opening",
			mantel.Hanging{Fall: 4 * in},
			map[string]units.Length{"ribbon": 5 * in},
		},
		{
			"a traditional ribbon just above the opening",
			mantel.Hanging{Fall: 9*in - 1},
			map[string]units.Length{"ribbon": 1},
		},
		{
			"in front of the opening",
			mantel.Hanging{Fall: 9 * in},
			map[string]units.Length{"ribbon": 0},
		},
		{
			"one swag, lowest over the opening",
			mantel.Hanging{Swags: 1, Sag: 4 * in},
			map[string]units.Length{"swag 1": 5 * in},
		},
		{
			"one swag in front of the opening",
			mantel.Hanging{Swags: 1, Sag: 10 * in},
			map[string]units.Length{"swag 1": 0},
		},
		{
			"three swags, the middle one lowest over it, the others' middles 2 in outside it: see TestSwagDistance",
			mantel.Hanging{Swags: 3, Sag: 9*in - 1},
			map[string]units.Length{"swag 2": 1},
		},
	} {
		got, err := m.Clearances(test.h, units.InFeetInches)
		if err != nil {
			t.Errorf("%s: %v", test.reason, err)
		}
		for place, want := range test.want {
			i := slices.IndexFunc(got.Places, func(c mantel.Clearance) bool { return c.Place == place })
			if i < 0 || got.Places[i].Measured != want || got.Places[i].Measure != "distance from the opening" {
				t.Errorf("%s: %s: got %v, want %v", test.reason, place, got.Places, want)
			}
		}
	}
	// Every part is there, from the left, the ribbon last.
	got, err := m.Clearances(mantel.Hanging{Swags: 2, Sag: in, Left: in, Right: in, Fall: in}, units.InFeetInches)
	var parts []string
	for _, c := range got.Places {
		parts = append(parts, c.Place)
	}
	if err != nil || !slices.Equal(parts, []string{"left drop", "swag 1", "swag 2", "right drop", "ribbon"}) {
		t.Errorf("got %q, %v", parts, err)
	}
}

// By hand: an opening 25 in wide under the left end of a shelf of 60 in, 12 in below it, and in a mirror; and one 36 in wide
// whose left side is 12 in to the right of the shelf, 9 in below it. The triangles are 5-12-13 and 9-12-15.
func TestDistancesToTheSide(t *testing.T) {
	aside := mantel.Rectangle{Width: 25 * in, Height: 30 * in, Gap: 12 * in, Offset: -35 * in / 2}
	mirrored := aside
	mirrored.Offset = 35 * in / 2
	type list = []units.Length
	for _, test := range []struct {
		opening mantel.Rectangle
		h       mantel.Hanging
		want    list
	}{
		{aside, mantel.Hanging{}, list{12 * in}},
		{mirrored, mantel.Hanging{}, list{12 * in}},
		{mantel.Rectangle{Width: 36 * in, Height: 30 * in, Gap: 9 * in, Offset: 60 * in}, mantel.Hanging{}, list{15 * in}},
		{aside, mantel.Hanging{Left: 12 * in, Right: 12 * in}, list{0, 12 * in, 35 * in}},
		{mirrored, mantel.Hanging{Left: 12 * in, Right: 12 * in}, list{35 * in, 12 * in, 0}},
		{aside, mantel.Hanging{Swags: 2}, list{12 * in, 13 * in}}, // from the hook at 30 in
		{mirrored, mantel.Hanging{Swags: 2}, list{13 * in, 12 * in}},
	} {
		c, err := mantel.Mantel{Length: 60 * in, Opening: test.opening}.Clearances(test.h, units.InFeetInches)
		var got list
		for _, p := range c.Places {
			got = append(got, p.Measured)
		}
		if err != nil || !slices.Equal(got, test.want) {
			t.Errorf("%+v, %v: %v, %v, want %v", test.opening, test.h, got, err, test.want)
		}
	}
}

// Where Spots puts the ribbon is where its fall is measured. 1½ yd hung by the middle
// falls 27 in: 13 in deep in front of an opening that is 14 in below the shelf.
func TestFallWhereSpotsHasIt(t *testing.T) {
	m := mantel.Mantel{Length: 64 * in, Opening: mantel.Rectangle{Width: 36 * in, Height: 30 * in, Gap: 14 * in}}
	rules := custom(func(l *mantel.LookRules) { l.Ribbon = 54 * in })
	for _, look := range []mantel.Look{mantel.Traditional, mantel.AsymmetricalLeft, mantel.AsymmetricalRight} {
		spots, err := rules.Spots(m, look)
		if err != nil {
			t.Fatal(err)
		}
		at, _ := alongs(spots, "ribbon, mantel")
		want := max(0, 14*in-at[0], at[0]-50*in) // how far it is beside the opening
		got, err := m.Clearances(mantel.Hanging{Look: look, Fall: 27 * in}, units.InFeetInches)
		if err != nil || got.Places[1].Place != "ribbon" || got.Places[1].Measured != want {
			t.Errorf("%v: got %v, %v, want the ribbon %v from the opening", look, got.Places, err, want)
		}
	}
}

// nearestByLooking returns the least distance of swag i from the opening and what is
// under it, by looking at points of the curve, ever closer about the nearest.
func nearestByLooking(t *rapid.T, m mantel.Mantel, h mantel.Hanging, i int) float64 {
	span := float64(m.Length) / float64(h.Swags)
	low, high := span*float64(i), span*float64(i+1)
	side := float64(m.Length-m.Opening.Width) / 2
	run, err := m.Hang(h)
	if err != nil {
		t.Fatal(err)
	}
	best, at := math.Inf(1), 0.
	const steps = 200
	for range 6 {
		step := (high - low) / steps
		for k := range steps + 1 {
			x := low + step*float64(k)
			along := min(m.Length, units.Length(math.Round(x)))
			below, err := run.Below(along)
			if err != nil {
				t.Fatal(err)
			}
			dx := max(0, side-float64(along), float64(along)-(float64(m.Length)-side))
			dy := max(0, float64(m.Opening.Gap-below))
			if d := math.Hypot(dx, dy); d < best {
				best, at = d, x
			}
		}
		low, high = max(low, at-2*step), min(high, at+2*step)
	}
	return best
}

func TestSwagDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mantel.Mantel{Length: lengths(ft, 10*ft).Draw(t, "length")}
		m.Opening.Width = lengths(in, m.Length).Draw(t, "width")
		m.Opening.Gap = lengths(in, 2*ft).Draw(t, "below")
		m.Opening.Height = in
		h := mantel.Hanging{Swags: rapid.IntRange(1, 8).Draw(t, "swags")}
		h.Sag = lengths(0, 3*ft).Draw(t, "sag")
		got, err := m.Clearances(h, units.InFeetInches)
		if err != nil || len(got.Places) != h.Swags {
			t.Fatal(got, err)
		}
		for i, c := range got.Places {
			want := nearestByLooking(t, m, h, i)
			// Both are rounded, the points that were looked at in two directions; and where
			// the curve is steep a nanometer along is many below.
			tolerance := 3 + 4*float64(h.Sag)/float64(m.Length)*float64(h.Swags)
			if math.Abs(float64(c.Measured)-want) > tolerance {
				t.Fatalf("%v, by looking %v nm", c, want)
			}
			if other := got.Places[h.Swags-1-i]; other.Measured != c.Measured {
				t.Fatalf("%v, but %v", c, other)
			}
		}
	})
}

func TestClearanceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mantels().Draw(t, "m")
		h := hangings(m).Draw(t, "h")
		got, err := m.Clearances(h, units.InFeetInches)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range got.Places {
			switch c.Measure {
			case "distance from the opening":
				if m.Opening.Width == 0 || c.Measured < 0 || c.Measured > 50*ft {
					t.Fatalf("%+v", c)
				}
			case "height above the hearth":
				if m.Height == 0 || c.Measured < -3*ft || c.Measured > m.Height {
					t.Fatalf("%+v", c)
				}
			default:
				t.Fatalf("%+v", c)
			}
		}
		for _, v := range got.Violations {
			text := strings.TrimPrefix(v.String(), v.Place+": "+v.Measure+" ")
			measured, rest, _ := strings.Cut(text, ", at ")
			if strings.HasPrefix(rest, "least "+measured+" (") || strings.HasPrefix(rest, "most "+measured+" (") {
				t.Fatalf("%v: as much as is allowed, of %+v", v, v)
			}
			if v.AtLeast != (v.Measured < v.Allowed) || v.Measured == v.Allowed || v.Source == "" || v.Place == "" || v.Measure == "" {
				t.Fatalf("%+v", v)
			}
		}
		if m.Opening.Width == 0 && len(got.Violations) > len(from(got, "common practice")) {
			t.Fatalf("no opening, but %v", got.Violations)
		}
		// Moving the opening down never adds a violation of the fire's rules.
		if m.Opening.Width != 0 && m.Opening.Gap < 40*ft {
			m.Height = 0
			got, err := m.Clearances(h, units.InFeetInches)
			if err != nil {
				t.Fatal(err)
			}
			deeper := m
			deeper.Opening.Gap += lengths(0, 10*ft).Draw(t, "further")
			less, err := deeper.Clearances(h, units.InFeetInches)
			if err != nil {
				t.Fatal(err)
			}
			for i, c := range less.Places {
				if c.Measured < got.Places[i].Measured-2 {
					t.Fatalf("%v, further down %v", got.Places[i], c)
				}
			}
		}
	})
}

func TestCautions(t *testing.T) {
	opening := mantel.Rectangle{Width: ft, Height: ft, Gap: ft}
	for _, test := range []struct {
		m    mantel.Mantel
		h    mantel.Hanging
		want []string // words of the cautions after the eight that are always there
	}{
		{mantel.Mantel{Length: 5 * ft, Height: 5 * ft, Depth: ft, Opening: opening}, mantel.Hanging{Thickness: in}, nil},
		{mantel.Mantel{Length: 5 * ft, Height: 5 * ft, Depth: ft, Opening: opening}, mantel.Hanging{}, []string{"thickness"}},
		{mantel.Mantel{Length: 5 * ft, Height: 5 * ft, Opening: opening}, mantel.Hanging{Thickness: in}, []string{"depth"}},
		{mantel.Mantel{Length: 5 * ft, Depth: ft, Opening: opening}, mantel.Hanging{Thickness: in}, []string{"height of the shelf"}},
		{mantel.Mantel{Length: 5 * ft, Height: 5 * ft, Depth: ft, Opening: opening, Above: mantel.Rectangle{Width: ft, Height: ft, Gap: in}}, mantel.Hanging{Thickness: 2 * in}, []string{"screen"}},
		{mantel.Mantel{Length: 5 * ft, Height: 5 * ft, Depth: ft, Opening: opening, Above: mantel.Rectangle{Width: ft, Height: ft}}, mantel.Hanging{Thickness: in}, []string{"a mirror", "covers"}},
		{mantel.Mantel{Length: 5 * ft}, mantel.Hanging{}, []string{"no opening", "height of the shelf", "thickness"}},
	} {
		got, err := test.m.Clearances(test.h, units.InFeetInches)
		if err != nil || len(got.Cautions) != 8+len(test.want) {
			t.Errorf("%v: cautions %q, %v", test.m, got.Cautions, err)
			continue
		}
		for i, words := range append([]string{"before a fire is lit", "not trim", "local code", "battery", "dry out", "poisonous", "children", "picks, ornaments, bells"}, test.want...) {
			if !strings.Contains(got.Cautions[i].Text, words) {
				t.Errorf("%v: caution %q, want one with %q", test.m, got.Cautions[i], words)
			}
		}
	}
}

func TestClearanceText(t *testing.T) {
	for want, v := range map[string]mantel.Clearance{
		"p: m 5 15/16 in, at least 6 in (s)": {"p", "m", 597 * in / 100, 6 * in, true, "s"},
		"p: m 5 15/16 in, at least 6 in (t)": {"p", "m", 6*in - 1, 6 * in, true, "t"},
		"p: m 13/16 in, at most 3/4 in (s)":  {"p", "m", 78 * in / 100, 3 * in / 4, false, "s"},
		"p: m 7/8 in, at most 13/16 in (s)":  {"p", "m", 13*in/16 + 2, 13*in/16 + 1, false, "s"},
		"p: m 13/16 in, at least 7/8 in (s)": {"p", "m", 13*in/16 + 1, 13*in/16 + 2, true, "s"},
		"p: m 15.2 cm, at most 15.1 cm (s)":  {"p", "m", 152 * units.Millimeter, 151 * units.Millimeter, false, "s"},
		"p: m -1/16 in, at least 0 ft (s)":   {"p", "m", -1, 0, true, "s"},
		"p: m 7 1/64 in, at most 7 in (s)":   {"p", "m", 7*in + in/64, 7 * in, false, "s"},
		"p: m 1 in, nothing (s)":             {"p", "m", in, 0, false, "s"},
		// Of no place: the figure alone, as from StandOut.
		"nothing was checked":  {},
		"nothing (s)":          {Source: "s"},
		"at most 7/8 in (s)":   {Allowed: 7 * in / 8, Source: "s"},
		"at least 6 in (s)":    {Allowed: 6 * in, AtLeast: true, Source: "s"},
		"at most 13/16 in (s)": {Allowed: 13*in/16 + 1, Source: "s"},
	} {
		if got := v.String(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
	short := mantel.Clearance{"swag 2", "distance from the opening", 4 * in, 6 * in, true, "IRC R1001.11 exception 4, 2018"}
	fire := mantel.Clearance{"ribbon", "distance from an open fire", 2 * in, 3 * ft, true, "tips"}
	place := []mantel.Clearance{{Place: "swag 1", Measure: "distance from the opening"}}
	for want, c := range map[string]mantel.Clearances{
		"no fire while this hangs: ribbon: distance from an open fire 2 in, at least 3 ft (tips)\nworst: swag 2: distance from the opening 4 in, at least 6 in (IRC R1001.11 exception 4, 2018); 1 more": {
			Places: place, Violations: []mantel.Clearance{short, short}, Fire: fire,
		},
		"no fire while this hangs: ribbon: distance from an open fire 2 in, at least 3 ft (tips)\nswag 2: distance from the opening 4 in, at least 6 in (IRC R1001.11 exception 4, 2018)": {
			Places: place, Violations: []mantel.Clearance{short}, Fire: fire,
		},
		"3 ft or more from the opening; still, take it down before a fire is lit\nno other figure falls short": {Places: place},
		"no opening was given: nothing was checked against a fire\nno other figure falls short":                {Places: []mantel.Clearance{{Place: "swag 1", Measure: "height above the hearth"}}},
	} {
		if got := c.String(); got != want {
			t.Errorf("got\n%s\nwant\n%s", got, want)
		}
	}
}

// nearness is how near a part comes to the opening and the hearth.
type nearness struct {
	place           string
	opening, hearth units.Length
}

// places returns the parts of a mantel that has both.
func places(c mantel.Clearances) (parts []nearness) {
	for i := 0; i < len(c.Places); i += 2 {
		parts = append(parts, nearness{c.Places[i].Place, c.Places[i].Measured, c.Places[i+1].Measured})
	}
	return parts
}

// What comes with an error, or was not measured, does not read as if it were safe.
func TestUncheckedText(t *testing.T) {
	c, err1 := mantel.Mantel{}.Clearances(mantel.Hanging{}, units.InFeetInches)
	l, err2 := mantel.Run{}.Loads(lb, mantel.Hook{}, units.InFeetInches)
	bare, err3 := mantel.Mantel{Length: 5 * ft}.Clearances(mantel.Hanging{}, units.InFeetInches)
	if err1 == nil || err2 == nil || err3 != nil {
		t.Error(err1, err2, err3)
	}
	for _, text := range []string{c.String(), l.String(), bare.String()} {
		if text != "nothing was checked" {
			t.Errorf("%q", text)
		}
	}
}

// Of garland and stockings the worst of both comes first, and a caution once.
func TestClearancesOfBoth(t *testing.T) {
	m := mantel.Mantel{Length: 64 * in, Height: 54 * in, Depth: 7 * in, Opening: mantel.Rectangle{Width: 36 * in, Height: 30 * in, Gap: 14 * in}}
	garland, err := m.Clearances(mantel.Hanging{Swags: 2, Sag: 4 * in, Thickness: 8 * in}, units.InFeetInches)
	if err != nil {
		t.Fatal(err)
	}
	hung := func(length units.Length, with mantel.Clearances) mantel.Clearances {
		_, c, err := m.Stockings(mantel.Stockings{Count: 3, Length: length, Weight: lb}, mantel.Hook{Rating: 10 * lb}, with, units.InFeetInches)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	// By hand: a toe 18 in below the shelf is in front of an opening 14 in below it; one of 2 in is farther than the garland.
	stockings, both := hung(18*in, mantel.Clearances{}), hung(18*in, garland)
	if first := both.Violations[0]; !strings.HasPrefix(first.Place, "stocking") || first.Measured != 0 || both.Fire.Measured != 0 || both.Fire != stockings.Fire {
		t.Errorf("first %v, fire %v", first, both.Fire)
	}
	if n := len(garland.Violations) + len(stockings.Violations); len(both.Violations) != n || len(both.Places) != len(garland.Places)+len(stockings.Places) {
		t.Errorf("%d violations, want %d", len(both.Violations), n)
	}
	for i, c := range both.Cautions {
		if slices.Contains(both.Cautions[i+1:], c) {
			t.Errorf("twice: %v", c)
		}
	}
	if !slices.IsSortedFunc(both.Violations, func(a, b mantel.Clearance) int { return strings.Compare(a.Measure[:1], b.Measure[:1]) }) { // distance before standing
		t.Errorf("%v", both.Violations)
	}
	if short := hung(2*in, garland); short.Fire != garland.Fire || short.Violations[0] != garland.Violations[0] {
		t.Errorf("first %v, fire %v", short.Violations[0], short.Fire)
	}
	front, err := m.Clearances(mantel.Hanging{Swags: 1, Sag: 20 * in}, units.InFeetInches)
	if both := hung(18*in, front); err != nil || both.Fire.Measured != 0 || both.Fire != front.Fire {
		t.Errorf("of two in front of the opening the garland's comes first: %v, %v", both.Fire, err)
	}
}
