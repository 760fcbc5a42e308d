package sizing

import (
	"math"
	"strings"
	"testing"

	"example.com/fircone/sizing/lights"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

func TestMix(t *testing.T) {
	half := in / 2
	for _, row := range []struct {
		reason string
		height units.Length
		count  int
		want   Mix
	}{
		{"4.2, 3.15 and 2.1 in; 9.8, 14.7 and the rest", 7 * ft, 49, Mix{Size{4 * in, 10}, Size{3 * in, 15}, Size{2 * in, 24}}},
		{"5.4, 4.05 and 2.7 in; 16.2, 24.3 and the rest", 9 * ft, 81, Mix{Size{5*in + half, 16}, Size{4 * in, 24}, Size{2*in + half, 41}}},
		{"2.7 and 1.35 in; 6.4 and the rest", 4*ft + 6*in, 16, Mix{Large: Size{2*in + half, 6}, Small: Size{1*in + half, 10}}},
		{"three sizes from 5 ft: 3, 2.25 and 1.5 in", 5 * ft, 10, Mix{Size{3 * in, 2}, Size{2*in + half, 3}, Size{1*in + half, 5}}},
		{"two below", 5*ft - 1, 10, Mix{Large: Size{3 * in, 4}, Small: Size{1*in + half, 6}}},
		{"the smallest diameter: 0.6 and 0.3 in, all one size", 1 * ft, 10, Mix{Small: Size{1 * in, 10}}},
		{"1.249 and 0.625 in, still one size", 25*in - 1, 10, Mix{Small: Size{1 * in, 10}}},
		{"1.25 and 0.625 in", 25 * in, 10, Mix{Large: Size{1*in + half, 4}, Small: Size{1 * in, 6}}},
		{"12, 9 and 6 in", 20 * ft, 10, Mix{Size{12 * in, 2}, Size{9 * in, 3}, Size{6 * in, 5}}},
		{"the largest diameter, and three quarters and half of it", 100 * ft, 1_000_000, Mix{Size{12 * in, 200_000}, Size{9 * in, 300_000}, Size{6 * in, 500_000}}},
		{"one goes to the small: 0.2 and 0.3", 7 * ft, 1, Mix{Small: Size{2 * in, 1}}},
		{"two: 0.4 and 0.6", 7 * ft, 2, Mix{Medium: Size{3 * in, 1}, Small: Size{2 * in, 1}}},
		{"three: 0.6 and 0.9", 7 * ft, 3, Mix{Size{4 * in, 1}, Size{3 * in, 1}, Size{2 * in, 1}}},
		{"none", 7 * ft, 0, Mix{}},
	} {
		got, err := MixOf(row.height, row.count)
		if got != row.want || err != nil {
			t.Errorf("%s: %+v, %v; want %+v", row.reason, got, err, row.want)
		}
	}
	for _, row := range []struct {
		field  string
		height units.Length
		count  int
	}{{"height", 1*ft - 1, 1}, {"height", 100*ft + 1, 1}, {"count", 7 * ft, -1}, {"count", 7 * ft, 1_000_001}} {
		got, err := MixOf(row.height, row.count)
		refused(t, err, units.ErrRange, "MixOf", row.field)
		if got != (Mix{}) {
			t.Errorf("%+v with an error", got)
		}
	}
}

func TestMixProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height := units.Length(rapid.Int64Range(int64(MinHeight), int64(MaxHeight)).Draw(t, "height"))
		count := rapid.IntRange(0, 999_990).Draw(t, "count")
		m, err := MixOf(height, count)
		if err != nil || m.Large.Count+m.Medium.Count+m.Small.Count != count {
			t.Fatalf("%d ornaments: %v, %v", count, m, err)
		}
		more, err := MixOf(height, count+rapid.IntRange(1, 10).Draw(t, "more"))
		if err != nil || more.Large.Count < m.Large.Count || more.Medium.Count < m.Medium.Count || more.Small.Count < m.Small.Count {
			t.Fatalf("%v, but %v of more", m, more)
		}
		if count < 10 {
			return
		}
		taller, err := MixOf(min(MaxHeight, height+units.Length(rapid.Int64Range(0, int64(ft)).Draw(t, "taller"))), count)
		if err != nil || taller.Large.Diameter < m.Large.Diameter || taller.Medium.Diameter < m.Medium.Diameter || taller.Small.Diameter < m.Small.Diameter {
			t.Fatalf("%v, but %v on a taller tree", m, taller)
		}
		last := units.Length(math.MaxInt64)
		for _, s := range [...]Size{m.Large, m.Medium, m.Small} {
			if s.Count > 0 && s.Diameter >= last {
				t.Fatalf("%v: a size twice, or out of order", m)
			}
			if s.Count > 0 {
				last = s.Diameter
			}
		}
	})
}

func TestCover(t *testing.T) {
	// By hand: 10 discs of 12.566 sq in, 15 of 7.069 and 24 of 3.142 are
	// 97.75 pi = 307.09 sq in, of 52.606 sq ft.
	m := Mix{Size{4 * in, 10}, Size{3 * in, 15}, Size{2 * in, 24}}
	got, err := m.Cover(50 * units.SquareFoot)
	if want := 97.75 * math.Pi / 7200; err != nil || math.Abs(got/want-1) > 4e-15 {
		t.Errorf("cover %v, %v; want %v", got, err, want)
	}
	if got, err := (Mix{}).Cover(1); got != 0 || err != nil {
		t.Errorf("nothing covers %v, %v", got, err)
	}
	for _, row := range []struct {
		field string
		m     Mix
		area  units.Area
	}{
		{"surface", m, 0},
		{"surface", m, -1},
		{"large/count", Mix{Large: Size{in, -1}}, 1},
		{"medium/count", Mix{Medium: Size{in, 1_000_001}}, 1},
		{"small/count", Mix{Small: Size{in, -1}}, 1},
		{"large/diameter", Mix{Large: Size{in/4 - 1, 1}}, 1},
		{"medium/diameter", Mix{Medium: Size{3*ft + 1, 1}}, 1},
		{"small/diameter", Mix{Small: Size{-in, 1}}, 1},
	} {
		got, err := row.m.Cover(row.area)
		refused(t, err, units.ErrRange, "Mix.Cover", row.field)
		if got != 0 {
			t.Errorf("%v with an error", got)
		}
	}
	for _, s := range []Size{{in / 4, 1}, {3 * ft, 1_000_000}, {0, 0}} {
		if _, err := (Mix{Large: s, Medium: s, Small: s}).Cover(1); err != nil {
			t.Errorf("%+v: %v", s, err)
		}
	}
	for _, row := range []struct {
		m    Mix
		want string
	}{{Mix{}, "none"}, {Mix{Small: Size{2 * in, 1}}, "1 of 2 in"}, {Mix{Large: Size{4 * in, 3}, Small: Size{2 * in, 1}}, "3 of 4 in, 1 of 2 in"}} {
		if got := row.m.String(); got != row.want {
			t.Errorf("%+v prints %q", row.m, got)
		}
	}
}

func TestTopperAndSkirt(t *testing.T) {
	for _, row := range []struct {
		height units.Length
		want   lengthRange
	}{
		{7*ft + 6*in, lengthRange{Min: 9 * in, Max: 11*in + in/4}},
		{9 * ft, lengthRange{Min: 108 * in / 10, Max: 13*in + in/2}},
		{1*ft + 4, lengthRange{Min: 30_480_000, Max: 38_100_001}},
		{1*ft + 5, lengthRange{Min: 30_480_001, Max: 38_100_001}},
		{1*ft + 3, lengthRange{Min: 30_480_000, Max: 38_100_000}},
	} {
		if got, err := Topper(row.height); got != row.want || err != nil {
			t.Errorf("topper for %v: %+v, %v; want %+v", row.height, got, err, row.want)
		}
	}
	got, err := Topper(0)
	refused(t, err, units.ErrRange, "Topper", "height")
	if got != (lengthRange{}) {
		t.Error(got)
	}
	for _, row := range []struct {
		t    Tree
		want lengthRange
	}{
		{Tree{Height: 9 * ft, Base: 6 * ft}, lengthRange{Min: 5 * ft, Max: 6 * ft}},
		{Tree{Height: 9 * ft, Base: 2 * ft}, lengthRange{Min: 1 * ft, Max: 2 * ft}},
		{Tree{Height: 2 * ft, Base: 1 * ft}, lengthRange{Min: 6 * in, Max: 1 * ft}},
	} {
		if got, err := row.t.Skirt(); got != row.want || err != nil {
			t.Errorf("skirt for %+v: %v, %v", row.t, got, err)
		}
	}
}

func TestFit(t *testing.T) {
	tree := Tree{Height: 9 * ft}
	for _, row := range []struct {
		reason string
		r      Room
		t      Tree
		want   Fit
	}{
		{"Clemson: 1 ft shorter than the ceiling", Room{Ceiling: 10 * ft}, tree, Fit{9 * ft, 1 * ft, true, ""}},
		{"a nanometer too low", Room{Ceiling: 10*ft - 1}, tree, Fit{9*ft - 1, 1*ft - 1, false, ""}},
		{"a topper in the clearance", Room{Ceiling: 10 * ft, Topper: 10 * in}, tree, Fit{9 * ft, 2 * in, true, ""}},
		{"a topper that leaves less than 2 in of it", Room{Ceiling: 10 * ft, Topper: 10*in + 1}, tree, Fit{9*ft - 1, 2*in - 1, false, ""}},
		{"a topper that touches the ceiling", Room{Ceiling: 10 * ft, Topper: 1 * ft}, tree, Fit{8*ft + 10*in, 0, false, ""}},
		{"a topper over it", Room{Ceiling: 10 * ft, Topper: 14 * in}, tree, Fit{8*ft + 8*in, -2 * in, false, ""}},
		{"a topper and a clearance of one's own", Room{Ceiling: 10 * ft, Topper: 10 * in, Clearance: 1}, tree, Fit{9 * ft, 2 * in, true, ""}},
		{"a stand", Room{Ceiling: 11 * ft, Stand: 6 * in}, tree, Fit{9*ft + 6*in, 1*ft + 6*in, true, ""}},
		{"a clearance of one's own", Room{Ceiling: 10 * ft, Clearance: 1}, Tree{Height: 10*ft - 1}, Fit{10*ft - 1, 1, true, ""}},
		{"taller than the room", Room{Ceiling: 8 * ft}, tree, Fit{7 * ft, -1 * ft, false, ""}},
		{"the least room", Room{Ceiling: 3 * ft, Clearance: 2 * ft}, Tree{Height: 1 * ft}, Fit{1 * ft, 2 * ft, true, ""}},
		{"the most room", Room{Ceiling: 150 * ft, Clearance: 50 * ft, Topper: 10 * ft, Stand: 5 * ft}, Tree{Height: 95 * ft}, Fit{95 * ft, 40 * ft, true, ""}},
	} {
		got, err := row.r.Fit(row.t)
		if got.Caution == "" {
			t.Errorf("%s: no caution", row.reason)
		}
		got.Caution = ""
		if got != row.want || err != nil {
			t.Errorf("%s: %+v, %v; want %+v", row.reason, got, err, row.want)
		}
	}
	for _, row := range []struct {
		field string
		r     Room
		t     Tree
	}{
		{"ceiling", Room{}, tree},
		{"ceiling", Room{Ceiling: 3*ft - 1}, tree},
		{"ceiling", Room{Ceiling: 150*ft + 1}, tree},
		{"clearance", Room{Ceiling: 100 * ft, Clearance: -1}, tree},
		{"clearance", Room{Ceiling: 100 * ft, Clearance: 50*ft + 1}, tree},
		{"topper", Room{Ceiling: 100 * ft, Topper: -1}, tree},
		{"topper", Room{Ceiling: 100 * ft, Topper: 10*ft + 1}, tree},
		{"stand", Room{Ceiling: 100 * ft, Stand: -1}, tree},
		{"stand", Room{Ceiling: 100 * ft, Stand: 5*ft + 1}, tree},
		{"height", Room{Ceiling: 10 * ft}, Tree{}},
		{"ceiling", Room{Ceiling: 3 * ft, Clearance: 2*ft + 1}, tree},
	} {
		got, err := row.r.Fit(row.t)
		refused(t, err, units.ErrRange, "Room.Fit", row.field)
		if got != (Fit{}) {
			t.Errorf("%+v with an error", got)
		}
	}
}

// Rounding is on the safe side: what is to spare and the tallest down, what is
// past the ceiling up.
func TestFitText(t *testing.T) {
	tree := Tree{Height: 9 * ft}
	for _, row := range []struct {
		reason string
		r      Room
		want   string
	}{
		{"as it is", Room{Ceiling: 10 * ft}, "fits: 1 ft to spare, 9 ft is the tallest"},
		{"0.05 in too low", Room{Ceiling: 10*ft - in/20}, "does not fit: only 11 3/4 in to spare, 8 ft 11 3/4 in is the tallest"},
		{"0.05 in more", Room{Ceiling: 10*ft + in/20}, "fits: 1 ft to spare, 9 ft is the tallest"},
		{"nearly a quarter more", Room{Ceiling: 10*ft + in/4 - 1}, "fits: 1 ft to spare, 9 ft is the tallest"},
		{"touches", Room{Ceiling: 10 * ft, Topper: 1 * ft}, "does not fit: nothing to spare, 8 ft 10 in is the tallest"},
		{"nearly touches", Room{Ceiling: 10 * ft, Topper: 1*ft - 1}, "does not fit: nothing to spare, 8 ft 10 in is the tallest"},
		{"0.1 in too high", Room{Ceiling: 10 * ft, Topper: 1*ft + in/10}, "does not fit: 1/4 in past the ceiling, 8 ft 9 3/4 in is the tallest"},
		{"just so much too high", Room{Ceiling: 10 * ft, Topper: 1*ft + in/4}, "does not fit: 1/4 in past the ceiling, 8 ft 9 3/4 in is the tallest"},
		{"a nanometer more", Room{Ceiling: 10 * ft, Topper: 1*ft + in/4 + 1}, "does not fit: 1/2 in past the ceiling, 8 ft 9 1/2 in is the tallest"},
	} {
		f, err := row.r.Fit(tree)
		f.Caution = "care"
		if got := f.String(); got != row.want+"; care" || err != nil {
			t.Errorf("%s: prints %q, %v; want %q", row.reason, got, err, row.want)
		}
	}
}

// What is printed never contradicts itself: a tree of the tallest height that is
// printed fits, and one that does not fit is taller than what is printed.
func TestFitProperties(t *testing.T) {
	length := func(t *rapid.T, what string, lo, hi units.Length) units.Length {
		return units.Length(rapid.Int64Range(int64(lo), int64(hi)).Draw(t, what))
	}
	rapid.Check(t, func(t *rapid.T) {
		r := Room{Ceiling: length(t, "ceiling", 8*ft, 14*ft), Topper: length(t, "topper", 0, 2*ft), Stand: length(t, "stand", 0, 6*in)}
		tree := Tree{Height: length(t, "height", 4*ft, 14*ft)}
		f, err := r.Fit(tree)
		if err != nil || f.Fits != (tree.Height <= f.Tallest) || f.Fits && f.Spare < 2*in {
			t.Fatalf("%+v, %v", f, err)
		}
		verdict, rest, _ := strings.Cut(f.String(), ": ")
		room, rest, _ := strings.Cut(rest, ", ")
		tallest, _, _ := strings.Cut(rest, " is the tallest")
		printed, err := units.ParseLength(tallest)
		if err != nil || printed > f.Tallest || printed <= f.Tallest-in/4 || f.Fits != (verdict == "fits") {
			t.Fatalf("%+v prints %q, %v", f, f, err)
		}
		if g, err := r.Fit(Tree{Height: printed}); !g.Fits || err != nil {
			t.Fatalf("the tallest printed, %v: %+v, %v", printed, g, err)
		}
		if spare, found := strings.CutSuffix(room, " to spare"); found && f.Fits {
			if l, err := units.ParseLength(spare); err != nil || l > f.Spare {
				t.Fatalf("%+v prints %q, %v", f, f, err)
			}
		} else if f.Fits {
			t.Fatalf("%+v prints %q", f, f)
		}
	})
}

func TestLadder(t *testing.T) {
	for _, row := range []struct {
		height, size units.Length
		lift         bool
		text         string
	}{
		{1 * ft, 0, false, "from the floor; no ladder"},
		{6 * ft, 0, false, "from the floor; no ladder"},
		{6*ft + 1, 4 * ft, false, "4 ft stepladder; set it"},
		{8 * ft, 4 * ft, false, "4 ft stepladder; set it"},
		{8*ft + 1, 6 * ft, false, "6 ft stepladder; set it"},
		{9 * ft, 6 * ft, false, "6 ft stepladder; set it"},
		{12 * ft, 8 * ft, false, "8 ft stepladder; set it"},
		{20 * ft, 16 * ft, false, "16 ft stepladder; set it"},
		{20*ft + 1, 0, true, "no stepladder reaches; work"},
		{100 * ft, 0, true, "no stepladder reaches; work"},
	} {
		got, err := Room{}.Ladder(Tree{Height: row.height})
		if got.Size != row.size || got.Lift != row.lift || err != nil || got.Caution == "" || !strings.HasPrefix(got.String(), row.text) {
			t.Errorf("%v: %v, %v; want %v, %v", row.height, got, err, row.size, row.lift)
		}
	}
	got, err := Room{}.Ladder(Tree{Height: 100*ft + 1})
	refused(t, err, units.ErrRange, "Room.Ladder", "height")
	if got != (Ladder{}) {
		t.Error(got)
	}
	for _, row := range []struct {
		reason string
		r      Room
		t      Tree
		size   units.Length
		lift   bool
	}{
		{"the tip", Room{}, Tree{Height: 9*ft + 10*in}, 6 * ft, false},
		{"10 ft 10 in with a topper", Room{Topper: 1 * ft}, Tree{Height: 9*ft + 10*in}, 8 * ft, false},
		{"just 10 ft", Room{Topper: 1 * ft}, Tree{Height: 9 * ft}, 6 * ft, false},
		{"a nanometer more", Room{Topper: 1*ft + 1}, Tree{Height: 9 * ft}, 8 * ft, false},
		{"a stand lifts it", Room{Topper: 1 * ft, Stand: 1}, Tree{Height: 9 * ft}, 8 * ft, false},
		{"from the floor", Room{Topper: 6 * in, Stand: 6 * in}, Tree{Height: 5 * ft}, 0, false},
		{"over 100 ft in all", Room{Topper: 10 * ft, Stand: 5 * ft}, Tree{Height: 100 * ft}, 0, true},
	} {
		got, err := row.r.Ladder(row.t)
		if got.Size != row.size || got.Lift != row.lift || err != nil || got.Caution == "" {
			t.Errorf("%s: %v, %v; want %v, %v", row.reason, got, err, row.size, row.lift)
		}
	}
	for _, row := range []struct {
		field string
		r     Room
		t     Tree
	}{
		{"height", Room{}, Tree{}},
		{"topper", Room{Topper: -1}, Tree{Height: 9 * ft}},
		{"topper", Room{Topper: 10*ft + 1}, Tree{Height: 9 * ft}},
		{"stand", Room{Stand: -1}, Tree{Height: 9 * ft}},
		{"stand", Room{Stand: 5*ft + 1}, Tree{Height: 9 * ft}},
	} {
		got, err := row.r.Ladder(row.t)
		refused(t, err, units.ErrRange, "Room.Ladder", row.field)
		if got != (Ladder{}) {
			t.Errorf("%+v with an error", got)
		}
	}
}

// What comes with an error does not read as if it were safe, nor does a fit that is none.
func TestUncheckedText(t *testing.T) {
	load, err1 := lights.Strings{}.Load(lights.Circuit{})
	fit, err2 := Room{}.Fit(Tree{})
	ladder, err3 := Room{}.Ladder(Tree{})
	for _, text := range []string{load.String(), fit.String(), ladder.String()} {
		if text != "nothing was checked" || err1 == nil || err2 == nil || err3 == nil {
			t.Errorf("%q with the errors %v, %v, %v", text, err1, err2, err3)
		}
	}
	if text := (lights.Load{Power: units.Watt}).String(); text != "nothing was checked" {
		t.Errorf("a load without a limit: %q", text)
	}
}
