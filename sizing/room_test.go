package sizing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

func TestMix(t *testing.T) {
	half, eighth, common := in/2, in/8, CommonPractice()
	with := func(change func(*Rules)) Rules {
		r := CommonPractice()
		change(&r)
		return r
	}
	for _, row := range []struct {
		reason string
		r      Rules
		t      Tree
		count  int
		want   []shopping.Lot
	}{
		{"4, 3 and 2 in, the nearest that shops stock; 9.8, 14.7 and the rest", common, Tree{Height: 7 * ft}, 49, lots(ball{4 * in, 10}, ball{3*in + eighth, 15}, ball{2 * in, 24})},
		{"the same balls on a taller tree; 16.2, 24.3 and the rest", common, Tree{Height: 9 * ft}, 81, lots(ball{4 * in, 16}, ball{3*in + eighth, 24}, ball{2 * in, 41})},
		{"2.7 and 1.35 in; 6.4 and the rest", common, Tree{Height: 4*ft + 6*in}, 16, lots(ball{2*in + 6*eighth, 6}, ball{1*in + half, 10})},
		{"three sizes from 5 ft: 3, 2.25 and 1.5 in", common, Tree{Height: 5 * ft}, 10, lots(ball{3*in + eighth, 2}, ball{2*in + 3*eighth, 3}, ball{1*in + half, 5})},
		{"two below", common, Tree{Height: 5*ft - 1}, 10, lots(ball{3*in + eighth, 4}, ball{1*in + half, 6})},
		{"0.6 and 0.3 in, all of the smallest", common, Tree{Height: 1 * ft}, 10, lots(ball{6 * eighth, 10})},
		{"0.85 and 0.43 in: minis alone", common, Tree{Height: 3 * ft, Taper: Pencil}, 10, lots(ball{6 * eighth, 10})},
		{"0.9 and 0.45 in: minis and the next", common, Tree{Height: 18 * in}, 10, lots(ball{1 * in, 4}, ball{6 * eighth, 6})},
		{"1 and 0.5 in: no minis from there on", common, Tree{Height: 20 * in}, 10, lots(ball{1 * in, 10})},
		{"minis where there is no other", with(func(r *Rules) { r.Sizes = []units.Length{in / 2, 6 * eighth, 6 * in} }), Tree{Height: 2 * ft}, 10, lots(ball{6 * eighth, 10})},
		{"1.2 and 0.6 in, still one size", common, Tree{Height: 2 * ft}, 32, lots(ball{1 * in, 32})},
		{"up to 4 in at 16 ft", common, Tree{Height: 16 * ft}, 10, lots(ball{4 * in, 2}, ball{3*in + eighth, 3}, ball{2 * in, 5})},
		{"then 1/4 in a foot: 5, 3.75 and 2.5 in", common, Tree{Height: 20 * ft}, 10, lots(ball{4*in + 6*eighth, 2}, ball{4 * in, 3}, ball{2*in + 3*eighth, 5})},
		{"12, 9 and 6 in in a hall, the larger of 8 and 10", common, Tree{Height: 48 * ft, Public: true}, 10, lots(ball{12 * in, 2}, ball{10 * in, 3}, ball{6 * in, 5})},
		{"12 in is the largest of a hall", common, Tree{Height: 100 * ft, Public: true}, 10, lots(ball{12 * in, 2}, ball{10 * in, 3}, ball{6 * in, 5})},
		{"6 in of a home, 4.5 and 3 in", common, Tree{Height: 48 * ft}, 10, lots(ball{6 * in, 2}, ball{4*in + 6*eighth, 3}, ball{3*in + eighth, 5})},
		{"a pencil 9 ft tall is as wide as a full tree of 4.15 ft: 2.49 and 1.246 in", common, Tree{Height: 9 * ft, Taper: Pencil}, 10, lots(ball{2*in + 3*eighth, 4}, ball{1 * in, 6})},
		{"wider than full counts no more", common, Tree{Height: 4 * ft, Base: 6 * ft}, 10, lots(ball{2*in + 3*eighth, 4}, ball{1 * in, 6})},
		{"a shop with two sizes: 3 in is as near to both", with(func(r *Rules) { r.Sizes = []units.Length{2 * in, 4 * in} }), Tree{Height: 7 * ft}, 49, lots(ball{4 * in, 25}, ball{2 * in, 24})},
		{"a house that hangs nothing over 3 in", with(func(r *Rules) { r.HomeLargest = 3 * in }), Tree{Height: 7 * ft}, 10, lots(ball{2*in + 6*eighth, 2}, ball{2*in + 3*eighth, 3}, ball{1*in + half, 5})},
		{"a hall that does", with(func(r *Rules) { r.HomeLargest = 3 * in }), Tree{Height: 7 * ft, Public: true}, 10, lots(ball{4 * in, 2}, ball{3*in + eighth, 3}, ball{2 * in, 5})},
		{"no list is the usual one", Rules{}, Tree{Height: 7 * ft}, 49, lots(ball{4 * in, 10}, ball{3*in + eighth, 15}, ball{2 * in, 24})},
		{"a shop with minis alone", Rules{Sizes: []units.Length{half}}, Tree{Height: 7 * ft}, 10, lots(ball{half, 10})},
		{"the smallest and the largest size: 12, 9 and 6 in are nearer to the smallest", Rules{Sizes: []units.Length{in / 4, 3 * ft}, HallLargest: 3 * ft}, Tree{Height: 48 * ft, Public: true}, 10, lots(ball{in / 4, 10})},
		{"a house that hangs only the smallest", with(func(r *Rules) { r.HomeLargest = 6 * eighth }), Tree{Height: 7 * ft}, 10, lots(ball{6 * eighth, 10})},
		{"12 in is the largest of a hall unless it says otherwise", with(func(r *Rules) { r.HallLargest = 0 }), Tree{Height: 100 * ft, Public: true}, 10, lots(ball{12 * in, 2}, ball{10 * in, 3}, ball{6 * in, 5})},
		{"one goes to the small: 0.2 and 0.3", common, Tree{Height: 7 * ft}, 1, lots(ball{2 * in, 1})},
		{"two: 0.4 and 0.6", common, Tree{Height: 7 * ft}, 2, lots(ball{3*in + eighth, 1}, ball{2 * in, 1})},
		{"none", common, Tree{Height: 7 * ft}, 0, nil},
	} {
		got, err := row.r.Mix(row.t, row.count)
		if !slices.Equal(got, row.want) || err != nil {
			t.Errorf("%s: %+v, %v; want %+v", row.reason, got, err, row.want)
		}
	}
	many := make([]units.Length, 101)
	for i := range many {
		many[i] = in + units.Length(i)
	}
	for _, row := range []struct {
		field string
		want  error
		r     Rules
		t     Tree
		count int
	}{
		{"/tree/height", units.ErrRange, common, Tree{Height: 1*ft - 1}, 1},
		{"count", units.ErrRange, common, Tree{Height: 7 * ft}, -1},
		{"count", units.ErrRange, common, Tree{Height: 7 * ft}, 100_000_001},
		{"/sizes/0", units.ErrRange, Rules{Sizes: []units.Length{in/4 - 1}}, Tree{Height: 7 * ft}, 1},
		{"/sizes/1", units.ErrRange, Rules{Sizes: []units.Length{in, 3*ft + 1}}, Tree{Height: 7 * ft}, 1},
		{"/sizes/1", units.ErrRange, Rules{Sizes: []units.Length{in, in}}, Tree{Height: 7 * ft}, 1},
		{"/sizes", units.ErrRange, Rules{Sizes: many}, Tree{Height: 7 * ft}, 1},
		{"/homeLargest", units.ErrRange, Rules{HomeLargest: 6*eighth - 1}, Tree{Height: 7 * ft}, 1},
		{"/homeLargest", units.ErrRange, Rules{HomeLargest: -in}, Tree{Height: 7 * ft}, 1},
		{"/hallLargest", units.ErrRange, Rules{HallLargest: 3*ft + 1}, Tree{Height: 7 * ft, Public: true}, 1},
	} {
		got, err := row.r.Mix(row.t, row.count)
		refused(t, err, row.want, "Rules.Mix", row.field)
		if got != nil {
			t.Errorf("%+v with an error", got)
		}
	}
}

func TestMixProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := CommonPractice()
		tree := Tree{
			Height: units.Length(rapid.Int64Range(int64(minHeight), int64(maxHeight)).Draw(t, "height")),
			Taper:  Taper(rapid.IntRange(0, int(Pencil)).Draw(t, "taper")),
			Public: rapid.Bool().Draw(t, "public"),
		}
		count := rapid.IntRange(0, 999_990).Draw(t, "count")
		mix := func(tree Tree, count int) []shopping.Lot {
			m, err := r.Mix(tree, count)
			if err != nil {
				t.Fatal(err)
			}
			return m
		}
		of := func(m []shopping.Lot, d units.Length) int {
			for _, s := range m {
				if s.Item.Size == d {
					return s.Quantity.Pieces
				}
			}
			return 0
		}
		m, more := mix(tree, count), mix(tree, count+rapid.IntRange(1, 10).Draw(t, "more"))
		total, last := 0, units.Length(math.MaxInt64)
		for _, s := range m {
			if s.Quantity.Pieces < 1 || s.Item.Size >= last || !slices.Contains(r.Sizes, s.Item.Size) || !tree.Public && s.Item.Size > r.HomeLargest {
				t.Fatalf("%v: a size twice, out of order, of nothing, not to be had or too large", m)
			}
			if of(more, s.Item.Size) < s.Quantity.Pieces {
				t.Fatalf("%v, but %v of more", m, more)
			}
			total, last = total+s.Quantity.Pieces, s.Item.Size
		}
		if total != count || len(m) > 3 {
			t.Fatalf("%d ornaments: %v", count, m)
		}
		if count < 10 {
			return
		}
		taller := tree
		taller.Height = min(maxHeight, tree.Height+units.Length(rapid.Int64Range(0, int64(ft)).Draw(t, "taller")))
		if n := mix(taller, count); n[0].Item.Size < m[0].Item.Size || n[len(n)-1].Item.Size < m[len(m)-1].Item.Size {
			t.Fatalf("%v, but %v on a taller tree", m, n)
		}
	})
}

// Two trees that are dressed to one look are a match: from 1 to 30 ft, of every taper
// and exposure, at home and in a hall, the ornaments in the sizes of Mix cover what
// the look says within one of them, unless each type is to be there once. By hand:
// rounding moves no more than half a piece of each of two sizes to the small one, and
// half a mean disc.
func TestCoverIsKept(t *testing.T) {
	r, look := CommonPractice(), CommonLook()
	const wide = 300 * Degree
	typed := 0
	for height := minHeight; height <= 30*ft; height += 3 * in {
		for _, tree := range []Tree{
			{Taper: Full},
			{Taper: Slim},
			{Taper: Pencil},
			{Taper: Full, Exposure: InCorner},
			{Taper: Pencil, Exposure: InCorner},
			{Taper: Slim, Exposure: AgainstWall},
			{Taper: Full, Exposure: wide},
			{Taper: Full, Public: true},
			{Taper: Slim, Exposure: HalfTree, Public: true},
		} {
			tree.Height = height
			a, err1 := matched(r, look, tree)
			n := a[shopping.Ornament].Pieces
			m, err2 := r.Mix(tree, n)
			area, err3 := tree.DressedArea()
			cover, err4 := Cover(m, area)
			if err1 != nil || err2 != nil || err3 != nil || err4 != nil {
				t.Fatal(err1, err2, err3, err4)
			}
			disc, _ := Cover(lots(ball{m[0].Item.Size, 1}), area)
			if n == wholeFeet(height) && cover > look.Cover {
				typed++
				continue
			}
			if math.Abs(cover-look.Cover) > disc {
				t.Errorf("%+v: %d ornaments, %v, cover %.3f %%, the look %.3f %%, one %.3f %%", tree, n, m, 100*cover, 100*look.Cover, 100*disc)
			}
		}
	}
	if typed > 5 {
		t.Errorf("%d trees take more than the look, for a type each", typed)
	}
}

func TestCover(t *testing.T) {
	// By hand: 10 discs of 12.566 sq in, 15 of 7.069 and 24 of 3.142 are
	// 97.75 pi = 307.09 sq in, of 52.606 sq ft.
	m := lots(ball{4 * in, 10}, ball{3 * in, 15}, ball{2 * in, 24})
	got, err := Cover(m, 50*units.SquareFoot)
	if want := 97.75 * math.Pi / 7200; err != nil || math.Abs(got/want-1) > 4e-15 {
		t.Errorf("cover %v, %v; want %v", got, err, want)
	}
	if got, err := Cover(nil, 1); got != 0 || err != nil {
		t.Errorf("nothing covers %v, %v", got, err)
	}
	for _, row := range []struct {
		field string
		m     []shopping.Lot
		area  units.Area
	}{
		{"surface", m, 0},
		{"surface", m, -1},
		{"/ornaments/0", lots(ball{in, -1}), 1},
		{"/ornaments/1", lots(ball{in, 1}, ball{in, 100_000_001}), 1},
		{"/ornaments/0/item", lots(ball{in/4 - 1, 1}), 1},
		{"/ornaments/1/item", lots(ball{in, 1}, ball{3*ft + 1, 1}), 1},
		{"/ornaments/2/item", lots(ball{in, 1}, ball{in, 1}, ball{-in, 1}), 1},
	} {
		got, err := Cover(row.m, row.area)
		refused(t, err, units.ErrRange, "Cover", row.field)
		if got != 0 {
			t.Errorf("%v with an error", got)
		}
	}
	for _, s := range []ball{{in / 4, 1}, {3 * ft, 100_000_000}, {0, 0}} {
		if _, err := Cover(lots(s, s, s), 1); err != nil {
			t.Errorf("%+v: %v", s, err)
		}
	}
	for _, lot := range []shopping.Lot{
		{Item: shopping.Item{Kind: shopping.Pick, Size: in}, Quantity: shopping.Quantity{Pieces: 1}},
		{Item: shopping.Item{Kind: shopping.Ornament, Size: in}, Quantity: shopping.Quantity{Length: in}},
	} {
		_, err := Cover([]shopping.Lot{lot}, 1)
		refused(t, err, units.ErrRange, "Cover", "/ornaments/0")
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
		{Tree{Height: 9 * ft, Base: 6 * ft}, lengthRange{Min: 5 * ft, Max: 7 * ft}},
		{Tree{Height: 9 * ft, Base: 2 * ft}, lengthRange{Min: 1 * ft, Max: 3 * ft}},
		{Tree{Height: 2 * ft, Base: 1 * ft}, lengthRange{Min: 6 * in, Max: 2 * ft}},
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
		{"Clemson: 1 ft shorter than the ceiling", Room{Ceiling: 10 * ft}, tree, Fit{"fits", 9 * ft, 1 * ft, 10 * in, units.Caution{}}},
		{"a nanometer too low", Room{Ceiling: 10*ft - 1}, tree, Fit{"tight", 9*ft - 1, 1*ft - 1, 10*in - 1, units.Caution{}}},
		{"7 ft 6 in under 8 ft: 6 in are left", Room{Ceiling: 8 * ft}, Tree{Height: 7*ft + 6*in}, Fit{"tight", 7 * ft, 6 * in, 4 * in, units.Caution{}}},
		{"with a topper of 6 in it touches", Room{Ceiling: 8 * ft, Topper: 6 * in}, Tree{Height: 7*ft + 6*in}, Fit{"tight", 7 * ft, 0, 4 * in, units.Caution{}}},
		{"with a larger one it is past the ceiling", Room{Ceiling: 8 * ft, Topper: 6*in + 1}, Tree{Height: 7*ft + 6*in}, Fit{"does not fit", 7 * ft, -1, 4 * in, units.Caution{}}},
		{"no clearance is asked for", Room{Ceiling: 8 * ft, NoClearance: true}, Tree{Height: 8 * ft}, Fit{"fits", 8 * ft, 0, 0, units.Caution{}}},
		{"nor with a topper", Room{Ceiling: 8 * ft, NoClearance: true, Topper: 6 * in}, Tree{Height: 7*ft + 6*in}, Fit{"fits", 7*ft + 6*in, 0, 6 * in, units.Caution{}}},
		{"no topper", Room{Ceiling: 10 * ft, NoTopper: true}, tree, Fit{"fits", 9 * ft, 1 * ft, 10 * in, units.Caution{}}},
		{"a topper in the clearance", Room{Ceiling: 10 * ft, Topper: 10 * in}, tree, Fit{"fits", 9 * ft, 2 * in, 10 * in, units.Caution{}}},
		{"a topper that leaves less than 2 in of it", Room{Ceiling: 10 * ft, Topper: 10*in + 1}, tree, Fit{"tight", 9*ft - 1, 2*in - 1, 10 * in, units.Caution{}}},
		{"a topper that touches the ceiling", Room{Ceiling: 10 * ft, Topper: 1 * ft}, tree, Fit{"tight", 8*ft + 10*in, 0, 10 * in, units.Caution{}}},
		{"a topper over it", Room{Ceiling: 10 * ft, Topper: 14 * in}, tree, Fit{"does not fit", 8*ft + 8*in, -2 * in, 10 * in, units.Caution{}}},
		{"a topper and a clearance of one's own", Room{Ceiling: 10 * ft, Topper: 10 * in, Clearance: 1}, tree, Fit{"fits", 9 * ft, 2 * in, 10 * in, units.Caution{}}},
		{"a stand", Room{Ceiling: 11 * ft, Stand: 6 * in}, tree, Fit{"fits", 9*ft + 6*in, 1*ft + 6*in, 16 * in, units.Caution{}}},
		{"a clearance of one's own", Room{Ceiling: 10 * ft, Clearance: 1}, Tree{Height: 10*ft - 1}, Fit{"fits", 10*ft - 1, 1, 0, units.Caution{}}},
		{"taller than the room", Room{Ceiling: 8 * ft}, tree, Fit{"does not fit", 7 * ft, -1 * ft, 0, units.Caution{}}},
		{"a tree that touches is tight", Room{Ceiling: 9 * ft}, tree, Fit{"tight", 8 * ft, 0, 0, units.Caution{}}},
		// By hand: the ceiling falls 6 in a foot, 3 in at the edge of a star 1 ft across.
		{"a vault", Room{Ceiling: 12 * ft, Fall: 6 * in, Topper: 10 * in, TopperWidth: 1 * ft}, tree, Fit{"fits", 10*ft + 9*in, 23 * in, 31 * in, units.Caution{}}},
		{"a vault, and a star as wide as high", Room{Ceiling: 10 * ft, Fall: 6 * in, Topper: 1 * ft}, tree, Fit{"does not fit", 8*ft + 7*in, -3 * in, 8 * in, units.Caution{}}},
		{"a vault does not touch a bare tip", Room{Ceiling: 10 * ft, Fall: 1 * ft, NoTopper: true}, tree, Fit{"fits", 9 * ft, 1 * ft, 10 * in, units.Caution{}}},
		{"the least room", Room{Ceiling: 3 * ft, Clearance: 2 * ft}, Tree{Height: 1 * ft}, Fit{"fits", 1 * ft, 2 * ft, 22 * in, units.Caution{}}},
		{"the most room", Room{Ceiling: 150 * ft, Clearance: 50 * ft, Topper: 10 * ft, Stand: 5 * ft}, Tree{Height: 95 * ft}, Fit{"fits", 95 * ft, 40 * ft, 50*ft - 2*in, units.Caution{}}},
	} {
		got, err := row.r.Fit(row.t)
		if got.Caution.Code != "clear" || got.Caution.Text == "" {
			t.Errorf("%s: no caution", row.reason)
		}
		got.Caution = units.Caution{}
		if got != row.want || err != nil {
			t.Errorf("%s: %+v, %v; want %+v", row.reason, got, err, row.want)
		}
	}
	for _, row := range []struct {
		field string
		want  error
		r     Room
		t     Tree
	}{
		{"/ceiling", units.ErrRange, Room{}, tree},
		{"/ceiling", units.ErrRange, Room{Ceiling: 3*ft - 1}, tree},
		{"/ceiling", units.ErrRange, Room{Ceiling: 150*ft + 1}, tree},
		{"/fall", units.ErrRange, Room{Ceiling: 100 * ft, Fall: -1}, tree},
		{"/fall", units.ErrRange, Room{Ceiling: 100 * ft, Fall: 1*ft + 1}, tree},
		{"/clearance", units.ErrRange, Room{Ceiling: 100 * ft, Clearance: -1}, tree},
		{"/clearance", units.ErrRange, Room{Ceiling: 100 * ft, Clearance: 50*ft + 1}, tree},
		{"/clearance", units.ErrFit, Room{Ceiling: 100 * ft, Clearance: 1 * ft, NoClearance: true}, tree},
		{"/topper", units.ErrRange, Room{Ceiling: 100 * ft, Topper: -1}, tree},
		{"/topper", units.ErrRange, Room{Ceiling: 100 * ft, Topper: 10*ft + 1}, tree},
		{"/topper", units.ErrFit, Room{Ceiling: 100 * ft, Topper: 1, NoTopper: true}, tree},
		{"/topperWidth", units.ErrRange, Room{Ceiling: 100 * ft, TopperWidth: -1}, tree},
		{"/topperWidth", units.ErrRange, Room{Ceiling: 100 * ft, TopperWidth: 10*ft + 1}, tree},
		{"/stand", units.ErrRange, Room{Ceiling: 100 * ft, Stand: -1}, tree},
		{"/stand", units.ErrRange, Room{Ceiling: 100 * ft, Stand: 5*ft + 1}, tree},
		{"/tree/height", units.ErrRange, Room{Ceiling: 10 * ft}, Tree{}},
		{"/ceiling", units.ErrRange, Room{Ceiling: 3 * ft, Clearance: 2*ft + 1}, tree},
	} {
		got, err := row.r.Fit(row.t)
		refused(t, err, row.want, "Room.Fit", row.field)
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
		{"0.05 in too low", Room{Ceiling: 10*ft - in/20}, "tight: 11 3/4 in to spare, 8 ft 11 3/4 in is the tallest"},
		{"0.05 in more", Room{Ceiling: 10*ft + in/20}, "fits: 1 ft to spare, 9 ft is the tallest"},
		{"nearly a quarter more", Room{Ceiling: 10*ft + in/4 - 1}, "fits: 1 ft to spare, 9 ft is the tallest"},
		{"touches", Room{Ceiling: 10 * ft, Topper: 1 * ft}, "tight: nothing to spare, 8 ft 10 in is the tallest"},
		{"nearly touches", Room{Ceiling: 10 * ft, Topper: 1*ft - 1}, "tight: nothing to spare, 8 ft 10 in is the tallest"},
		{"0.1 in too high", Room{Ceiling: 10 * ft, Topper: 1*ft + in/10}, "does not fit: 1/4 in past the ceiling, 8 ft 9 3/4 in is the tallest"},
		{"just so much too high", Room{Ceiling: 10 * ft, Topper: 1*ft + in/4}, "does not fit: 1/4 in past the ceiling, 8 ft 9 3/4 in is the tallest"},
		{"a nanometer more", Room{Ceiling: 10 * ft, Topper: 1*ft + in/4 + 1}, "does not fit: 1/2 in past the ceiling, 8 ft 9 1/2 in is the tallest"},
	} {
		f, err := row.r.Fit(tree)
		f.Caution.Text = "care"
		if got := f.String(); got != row.want+"; care" || err != nil {
			t.Errorf("%s: prints %q, %v; want %q", row.reason, got, err, row.want)
		}
	}
	// By hand: 30.48 and 274.32 cm, down to half a centimeter.
	f, err := Room{Ceiling: 10 * ft}.Fit(tree)
	f.Caution.Text = "care"
	if got, want := Format(f, units.InMetric), "fits: 30 cm to spare, 2.74 m is the tallest; care"; got != want || err != nil {
		t.Errorf("in metric: %q, %v; want %q", got, err, want)
	}
}

// What is printed never contradicts itself: a tree of the tallest height that is
// printed fits, one that is tight goes under, and one that does not fit does not.
func TestFitProperties(t *testing.T) {
	length := func(t *rapid.T, what string, lo, hi units.Length) units.Length {
		return units.Length(rapid.Int64Range(int64(lo), int64(hi)).Draw(t, what))
	}
	rapid.Check(t, func(t *rapid.T) {
		r := Room{
			Ceiling: length(t, "ceiling", 8*ft, 14*ft), Topper: length(t, "topper", 0, 2*ft), Stand: length(t, "stand", 0, 6*in),
			Fall: length(t, "fall", 0, 1*ft), TopperWidth: length(t, "width", 0, 3*ft),
		}
		tree := Tree{Height: length(t, "height", 4*ft, 14*ft)}
		f, err := r.Fit(tree)
		if err != nil || (f.Verdict == "fits") != (tree.Height <= f.Tallest) || (f.Verdict == "does not fit") != (f.Spare < 0) || f.Verdict == "fits" && f.Spare < 2*in {
			t.Fatalf("%+v, %v", f, err)
		}
		verdict, rest, _ := strings.Cut(f.String(), ": ")
		room, rest, _ := strings.Cut(rest, ", ")
		tallest, _, _ := strings.Cut(rest, " is the tallest")
		printed, err := units.ParseLength(tallest)
		if err != nil || printed > f.Tallest || printed <= f.Tallest-in/4 || verdict != f.Verdict {
			t.Fatalf("%+v prints %q, %v", f, f, err)
		}
		if g, err := r.Fit(Tree{Height: printed}); g.Verdict != "fits" || err != nil {
			t.Fatalf("the tallest printed, %v: %+v, %v", printed, g, err)
		}
		if spare, found := strings.CutSuffix(room, " to spare"); found && spare != "nothing" {
			if l, err := units.ParseLength(spare); err != nil || l > f.Spare {
				t.Fatalf("%+v prints %q, %v", f, f, err)
			}
		} else if f.Verdict == "fits" {
			t.Fatalf("%+v prints %q", f, f)
		}
		// The topper that there is room for goes in, and one an inch higher does not fit well.
		if r.TopperWidth != 0 && f.Topper > 0 && f.Topper < 9*ft {
			r.Topper = f.Topper
			if g, err := r.Fit(tree); err != nil || g.Spare < 2*in || g.Spare > 2*in {
				t.Fatalf("with the topper there is room for: %+v, %v", g, err)
			}
		}
	})
}

func TestLadder(t *testing.T) {
	for _, row := range []struct {
		height, size units.Length
		code         string
	}{
		{0, 0, "floor"},
		{6 * ft, 0, "floor"},
		{6*ft + 1, 4 * ft, "ladder"},
		{8 * ft, 4 * ft, "ladder"},
		{8*ft + 1, 6 * ft, "ladder"},
		{9 * ft, 6 * ft, "ladder"},
		{12 * ft, 8 * ft, "ladder"},
		{14 * ft, 10 * ft, "ladder"},
		{16 * ft, 12 * ft, "ladder"},
		{18 * ft, 14 * ft, "ladder"},
		{20 * ft, 16 * ft, "ladder"},
		{20*ft + 1, 0, "lift"},
		{150 * ft, 0, "lift"},
	} {
		got, err := LadderFor(row.height)
		if err != nil || got.Size != row.size || got.Lift != (row.code == "lift") || got.In != 0 || row.height < got.Reach().Min || row.height > got.Reach().Max || len(got.Cautions) != 1 || got.Cautions[0].Code != row.code || got.Cautions[0].Text == "" {
			t.Errorf("%v: %v, %v; want %v, %s", row.height, got, err, row.size, row.code)
		}
	}
	for _, height := range []units.Length{-1, 150*ft + 1} {
		got, err := LadderFor(height)
		refused(t, err, units.ErrRange, "LadderFor", "height")
		if got.String() != unchecked {
			t.Error(got)
		}
	}
	for _, row := range []struct {
		reason string
		r      Room
		t      Tree
		size   units.Length
		codes  string
		in     units.Length
	}{
		{"the tip", Room{NoTopper: true}, Tree{Height: 9*ft + 10*in, Base: 4 * ft}, 6 * ft, "ladder", 2 * ft},
		{"a usual topper, an eighth: 11 ft 3/4 in", Room{}, Tree{Height: 9*ft + 10*in, Base: 4 * ft}, 8 * ft, "ladder", 2 * ft},
		{"the safe side of 8 ft 10.9 in and a topper", Room{}, Tree{Height: 8*ft + 11*in, Base: 4 * ft}, 8 * ft, "ladder", 2 * ft},
		{"10 ft 10 in with a topper", Room{Topper: 1 * ft}, Tree{Height: 9*ft + 10*in, Base: 4 * ft}, 8 * ft, "ladder", 2 * ft},
		{"just 10 ft", Room{Topper: 1 * ft}, Tree{Height: 9 * ft, Base: 6 * ft}, 6 * ft, "ladder", 3 * ft},
		{"a nanometer more", Room{Topper: 1*ft + 1}, Tree{Height: 9 * ft, Base: 6 * ft}, 8 * ft, "ladder", 3 * ft},
		{"a stand lifts it", Room{Topper: 1 * ft, Stand: 1}, Tree{Height: 9 * ft, Base: 6 * ft}, 8 * ft, "ladder", 3 * ft},
		{"farther in than 3 ft", Room{Topper: 1 * ft}, Tree{Height: 9 * ft, Base: 6*ft + 2}, 6 * ft, "ladder deep", 3*ft + 1},
		{"65 % of 15 ft is 9.75 ft, half of it 4 ft 10.5 in", Room{}, Tree{Height: 15 * ft}, 14 * ft, "ladder deep", 4*ft + 10*in + in/2},
		{"from the floor", Room{Topper: 6 * in, Stand: 6 * in}, Tree{Height: 5 * ft}, 0, "floor", 39 * in / 2},
		{"from the floor nobody leans in", Room{Topper: 6 * in}, Tree{Height: 5 * ft, Base: 7 * ft}, 0, "floor", 42 * in},
		{"no higher than the ceiling, 9 ft 6 in", Room{Ceiling: 9*ft + 6*in}, Tree{Height: 9 * ft, Base: 4 * ft}, 6 * ft, "ladder", 2 * ft},
		{"room for the usual topper, 10 ft 1 1/2 in", Room{Ceiling: 11 * ft}, Tree{Height: 9 * ft, Base: 4 * ft}, 8 * ft, "ladder", 2 * ft},
		{"10 ft 1 1/2 in is past a ceiling of 10 ft 1 in, but the tallest topper there is room for ends 2 in below", Room{Ceiling: 10*ft + in}, Tree{Height: 9 * ft, Base: 4 * ft}, 6 * ft, "ladder", 2 * ft},
		{"a usual topper, an eighth to the nearest nanometer: 2,709,333,334 and 338,666,667 nm are 10 ft and a nanometer", Room{}, Tree{Height: 2_709_333_334, Base: 4 * ft}, 8 * ft, "ladder", 2 * ft},
		{"no room for a topper", Room{Ceiling: 8 * ft}, Tree{Height: 8 * ft, Base: 4 * ft}, 4 * ft, "ladder", 2 * ft},
		{"nobody goes through the ceiling", Room{Ceiling: 14 * ft}, Tree{Height: 15 * ft, Base: 4 * ft}, 10 * ft, "ladder", 2 * ft},
		{"nor with a topper that does not fit", Room{Ceiling: 8 * ft, Topper: 2 * ft}, Tree{Height: 7 * ft, Base: 4 * ft}, 4 * ft, "ladder", 2 * ft},
		{"over 100 ft in all", Room{Topper: 10 * ft, Stand: 5 * ft}, Tree{Height: 100 * ft}, 0, "lift deep", 32*ft + 6*in},
		{"a usual topper is up to 10 ft", Room{Stand: 5 * ft}, Tree{Height: 100 * ft}, 0, "lift deep", 32*ft + 6*in},
	} {
		got, err := row.r.Ladder(row.t)
		var codes []string
		for _, c := range got.Cautions {
			codes = append(codes, c.Code)
		}
		if got.Size != row.size || got.Lift != strings.Contains(row.codes, "lift") || got.In != row.in || strings.Join(codes, " ") != row.codes || err != nil {
			t.Errorf("%s: %v, %v; want %v, %s", row.reason, got, err, row.size, row.codes)
		}
	}
	for _, row := range []struct {
		field string
		want  error
		r     Room
		t     Tree
	}{
		{"/tree/height", units.ErrRange, Room{}, Tree{}},
		{"/tree/height", units.ErrRange, Room{}, Tree{Height: 100*ft + 1}},
		{"/tree/height", units.ErrRange, Room{}, Tree{Height: math.MinInt64}},
		{"/tree/base", units.ErrRange, Room{}, Tree{Height: 9 * ft, Base: -1}},
		{"/topper", units.ErrRange, Room{Topper: -1}, Tree{Height: 9 * ft}},
		{"/topper", units.ErrRange, Room{Topper: 10*ft + 1}, Tree{Height: 9 * ft}},
		{"/topper", units.ErrFit, Room{Topper: 1, NoTopper: true}, Tree{Height: 9 * ft}},
		{"/stand", units.ErrRange, Room{Stand: -1}, Tree{Height: 9 * ft}},
		{"/stand", units.ErrRange, Room{Stand: 5*ft + 1}, Tree{Height: 9 * ft}},
		{"/ceiling", units.ErrRange, Room{Ceiling: 3*ft - 1}, Tree{Height: 9 * ft}},
	} {
		got, err := row.r.Ladder(row.t)
		refused(t, err, row.want, "Room.Ladder", row.field)
		if got.String() != unchecked {
			t.Errorf("%+v with an error", got)
		}
	}
	if l, err := LadderFor(30 * ft); err != nil || !strings.HasPrefix(l.String(), "a platform or a lift; no stepladder reaches") {
		t.Errorf("at 30 ft: %v, %v", l, err)
	}
	l, err := Room{}.Ladder(Tree{Height: 15 * ft})
	if got, want := Format(l, units.InMetric), "4.27 m stepladder, the tip 1.49 m in from the branch line; set it"; !strings.HasPrefix(got, want) || err != nil {
		t.Errorf("in metric: %q, %v", got, err)
	}
	if got, want := Format(l, units.InYards), "14 ft stepladder, the tip 1.63 yd in"; !strings.HasPrefix(got, want) { // 4 ft 10 1/2 in
		t.Errorf("in yards: %q", got)
	}
}

// From the floor, from a stepladder of any size, with a lift, and of what is none.
func TestReach(t *testing.T) {
	for _, row := range []struct {
		l    Ladder
		want lengthRange
	}{
		{Ladder{}, lengthRange{Max: 6 * ft}},
		{Ladder{Size: 1 * ft}, lengthRange{Max: 5 * ft}},
		{Ladder{Size: 4 * ft}, lengthRange{Min: 2 * ft, Max: 8 * ft}},
		{Ladder{Size: 16 * ft}, lengthRange{Min: 14 * ft, Max: 20 * ft}},
		{Ladder{Lift: true}, lengthRange{Min: 20 * ft, Max: 150 * ft}},
		{Ladder{Size: 16*ft + 1}, lengthRange{}},
		{Ladder{Size: -1}, lengthRange{}},
		{Ladder{Size: math.MaxInt64}, lengthRange{}},
	} {
		if got := row.l.Reach(); got != row.want {
			t.Errorf("%v: %v, want %v", row.l.Size, got, row.want)
		}
	}
}

// A taller tree never takes a smaller ladder, and the ladder reaches what it is for.
func TestLadderReaches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := units.Length(rapid.Int64Range(0, int64(30*ft)).Draw(t, "low"))
		a, err1 := LadderFor(low)
		b, err2 := LadderFor(low + units.Length(rapid.Int64Range(0, int64(3*ft)).Draw(t, "more")))
		if err1 != nil || err2 != nil || a.Lift && !b.Lift || !b.Lift && b.Size < a.Size {
			t.Fatalf("%v takes %v, more %v", low, a, b)
		}
		if !a.Lift && low > 6*ft && (a.Size+4*ft < low || a.Size > 4*ft && a.Size+2*ft >= low) || !a.Lift && a.Size == 0 && low > 6*ft {
			t.Fatalf("%v takes %v", low, a)
		}
	})
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

// A topper as tall as there is room for fits, and one a nanometer taller does not, whatever the ceiling does.
func TestFitTopper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(what string, lo, hi units.Length) units.Length {
			return units.Length(rapid.Int64Range(int64(lo), int64(hi)).Draw(t, what))
		}
		tree := Tree{Height: length("height", 3*units.Foot, 20*units.Foot)}
		r := Room{Ceiling: tree.Height + length("more", units.Foot, 4*units.Foot), Fall: length("fall", 0, units.Foot), Stand: length("stand", 0, units.Foot/2)}
		if rapid.Bool().Draw(t, "width") {
			r.TopperWidth = length("topperWidth", 1, 2*units.Foot)
		}
		bare, err := r.Fit(tree)
		if err != nil {
			t.Fatal(err)
		}
		for more, want := range []units.Length{0, 1} {
			with := r
			if with.Topper = bare.Topper + want; with.Topper == 0 {
				continue
			}
			f, err := with.Fit(tree)
			if err != nil {
				t.Fatal(err)
			}
			// All but the 2 in for fingers.
			if left := f.Spare - 2*units.Inch; more == 0 && left < 0 || more == 1 && left >= 0 {
				t.Fatalf("%v of topper in %+v: %v to spare", with.Topper, r, f.Spare)
			}
		}
	})
}
