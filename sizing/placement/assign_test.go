package placement

import (
	"math"
	"slices"
	"testing"
)

// alone returns the least distance within a class of layer l, as a share of its
// own bound, over the classes of five or more; and how many pairs are neighbors.
func alone(f surface, spots []spot, who []int32, kinds []kind, l int) (least float64, neighbors int) {
	least = math.Inf(1)
	bound := func(n int) float64 { return math.Sqrt(2 * f.area() / (math.Sqrt(3) * float64(n))) }
	d := bound(len(spots))
	classes := make([][]vec, len(kinds)+1)
	for i, k := range who {
		c := kinds[k].class[l] + 1
		classes[c] = append(classes[c], f.at(spots[i]))
	}
	for _, at := range classes[1:] {
		for i, u := range at {
			for _, v := range at[:i] {
				x := math.Sqrt(dist2(u, v))
				if len(at) >= 5 {
					least = min(least, x/bound(len(at)))
				}
				if x < 1.25*d {
					neighbors++
				}
			}
		}
	}
	return least, neighbors
}

// mix returns n pieces of so many types and colors, the last type as much more
// numerous than the first as skew says, in three sizes.
func mix(n, types, colors int, skew float64) []kind {
	var kinds []kind
	sum, given := 0.0, 0
	whole := float64(types) * (1 + skew*float64(types-1)/2)
	for i := range types {
		sum += 1 + skew*float64(i)
		upto := int(math.Round(sum / whole * float64(n)))
		kinds = append(kinds, kind{class: [layers]int32{int32(i), int32(i % colors), int32(2 - i%3)}, count: upto - given, rank: 1 - float64(i%3)})
		given = upto
	}
	return kinds
}

// Each type and each color is even by itself, no two of a type are neighbors where
// there are more than four types, larger pieces are lower, and every piece has a
// place.
func TestAssign(t *testing.T) {
	t.Parallel()
	for _, ratio := range []float64{.25, .65, 1.2} {
		for _, arc := range []float64{1, .5} {
			for _, n := range []int{30, 63, 81, 120, 400, 1000} {
				for _, m := range []struct {
					types, colors int
					skew          float64
				}{{3, 2, 0}, {4, 3, 0}, {7, 4, 0}, {7, 4, .5}, {9, 4, .1}, {12, 4, 0}, {20, 3, .3}} {
					// All counts on the usual tree, some on the others, the long ones once.
					if usual := ratio == .65 && arc == 1; !usual && (n == 63 || n == 120 || n == 400 && m.types != 7) || n == 1000 && (!usual || m.types != 7) {
						continue
					}
					// Some of up to 81 take most of the time; of 400, those whose types are the least even.
					long := n == 81 && (m.types == 12 || m.types == 9 && ratio == .25)
					if !Every && (n == 120 || n == 1000 || n == 400 && m.types != 4 || long) || testing.Short() && (n > 30 || arc < 1) {
						continue
					}
					f := shape(ratio, .05, arc)
					spots := even(f, n)
					kinds := mix(n, m.types, m.colors, m.skew)
					who, ok := f.assign(spots, kinds, false)
					if !ok {
						t.Fatal("no room for pieces without a size")
					}
					counts := make([]int, len(kinds))
					for _, k := range who {
						counts[k]++
					}
					for i, k := range kinds {
						if counts[i] != k.count {
							t.Errorf("%d of kind %d, want %d", counts[i], i, k.count)
						}
					}
					types, neighbors := alone(f, spots, who, kinds, 0)
					colors, _ := alone(f, spots, who, kinds, 1)
					// Of 30 pieces on a pencil tree, five to a turn, one pair of a type may be neighbors:
					// colors and sizes are to be even as well.
					most := 0
					if n == 30 && ratio == .25 {
						most = 1
					}
					if types < 0.5 || colors < 0.5 || neighbors > most && m.types > 4 {
						t.Errorf("base %v, arc %v, n %v, %+v: types %.3f, %d neighbors, colors %.3f", ratio, arc, n, m, types, neighbors, colors)
					}
					var down, count [3]float64 // by rank
					for i, k := range who {
						down[int(1+kinds[k].rank)] += spots[i].slant
						count[int(1+kinds[k].rank)]++
					}
					if down[2]/count[2] <= down[0]/count[0] {
						t.Errorf("base %v, arc %v, n %v, %+v: the largest are on average %.3f from the tip, the smallest %.3f", ratio, arc, n, m, down[2]/count[2], down[0]/count[0])
					}
				}
			}
		}
	}
}

// The pieces of one kind, and those of two, which cannot but be neighbors.
func TestAssignFew(t *testing.T) {
	f := shape(0.65, 0.1, 1)
	for _, kinds := range [][]kind{
		{{count: 20, class: [layers]int32{0, -1, -1}}},
		{{count: 12, class: [layers]int32{0, -1, -1}}, {count: 8, class: [layers]int32{1, -1, -1}}},
		{{count: 19, class: [layers]int32{0, 0, 0}}, {count: 1, class: [layers]int32{1, 1, -1}}},
		{{count: 0, class: [layers]int32{0, -1, -1}}, {count: 20, class: [layers]int32{1, 0, -1}}},
	} {
		who, ok := f.assign(f.even(20, 0), kinds, false)
		if !ok || len(who) != 20 {
			t.Errorf("%v: %v %v", kinds, who, ok)
		}
		for i, k := range kinds {
			n := 0
			for _, w := range who {
				if int(w) == i {
					n++
				}
			}
			if n != k.count {
				t.Errorf("%v: %d of kind %d", kinds, n, i)
			}
		}
	}
}

// What does not fit at an edge goes elsewhere, and nothing fits nowhere.
func TestFit(t *testing.T) {
	f := shape(0.65, 0.1, 1)
	n := 60
	spots := f.even(n, 0.01)
	kinds := []kind{{count: 6, class: [layers]int32{0, -1, -1}, radius: 0.04}, {count: n - 6, class: [layers]int32{1, -1, -1}, radius: 0.005}}
	who, ok := f.assign(spots, kinds, false)
	if !ok {
		t.Fatal("no room")
	}
	for i, k := range who {
		room := min(spots[i].slant-f.top, f.bottom-spots[i].slant) * f.cos
		if kinds[k].radius > room {
			t.Errorf("a radius of %v where there is room for %v", kinds[k].radius, room)
		}
	}
	kinds[0].radius = 0.5 // more than half of the height
	if _, ok := f.assign(spots, kinds, false); ok {
		t.Error("room for what is taller than the tree")
	}
	// As many large ones as there are places off the edges, and one more.
	inner := 0
	for _, p := range spots {
		if min(p.slant-f.top, f.bottom-p.slant)*f.cos >= 0.04 {
			inner++
		}
	}
	for _, more := range []int{0, 1} {
		kinds := []kind{{count: inner + more, class: [layers]int32{0, -1, -1}, radius: 0.04}, {count: n - inner - more, class: [layers]int32{1, -1, -1}}}
		if _, ok := f.assign(spots, kinds, false); ok != (more == 0) {
			t.Errorf("%d of %d places, ok %v", inner+more, inner, ok)
		}
	}
}

// Pieces that could touch are kept from it by exchanges: the large ones among
// small ones, each with room.
func TestCrowded(t *testing.T) {
	f := shape(0.65, 0.1, 1)
	n := 200
	spots := f.even(n, 0)
	d := f.bound(n)
	kinds := []kind{{count: 50, class: [layers]int32{0, -1, -1}, radius: 0.55 * d}, {count: 150, class: [layers]int32{0, -1, -1}, radius: 0.2 * d}}
	a := newAssignment(f, spots, kinds)
	if !a.crowded {
		t.Fatal("not crowded")
	}
	touching := func(who []int32) (pairs int) {
		for i, k := range who {
			for j := range i {
				r := kinds[k].radius + kinds[who[j]].radius
				if dist2(f.at(spots[i]), f.at(spots[j])) < r*r {
					pairs++
				}
			}
		}
		return pairs
	}
	before := touching(a.who)
	who, ok := f.assign(spots, kinds, false)
	if after := touching(who); !ok && before == 0 || ok && after > 0 && after >= before {
		t.Errorf("%d pairs touch, before %d", after, before)
	} else if after > 0 {
		t.Logf("%d of %d", after, before)
	}
	if !slices.Equal(who, func() []int32 { w, _ := f.assign(spots, kinds, false); return w }()) {
		t.Error("not the same twice")
	}
}

// Around pieces that are each the only one of its type nothing is listed; that they touch is found all the same.
func TestTouchingAlone(t *testing.T) {
	f := shape(0.65, 0.1, 1)
	const n = 24
	kinds := make([]kind, n)
	for i := range kinds {
		kinds[i] = kind{count: 1, class: [layers]int32{int32(i), -1, -1}, radius: f.bound(n) * float64(1+i%3) / 4}
	}
	spots := even(f, n)
	a := newAssignment(f, spots, kinds)
	a.prepare()
	pairs := 0
	for i := range int32(n) {
		want := 0.0
		for j := range int32(n) {
			r := kinds[a.who[i]].radius + kinds[a.who[j]].radius
			if d := dist2(f.at(spots[i]), f.at(spots[j])); i != j && d < r*r {
				want += touch * r * r / d
				pairs++
			}
		}
		if got := a.touching(i, kinds[a.who[i]].radius, -1); math.Abs(got-want) > 1e-9*want {
			t.Errorf("%d: %v, want %v", i, got, want)
		}
	}
	if pairs == 0 {
		t.Error("none touch")
	}
}

// Two that touch when they are set back both stay at the tips, a third does not
// have to; and two that touch at the tips do not fit.
func TestClear(t *testing.T) {
	f := shape(0.65, 0, 1)
	s := stand{surface: f, height: 1e9}
	a := arrangement{
		stand: s,
		spots: []spot{{0.6, 0}, {0.6, 0.3}, {0.6, 2}},
		who:   []int32{0, 0, 0},
		depth: []float64{0.06, 0.06, 0.06},
	}
	at := func(depth float64) float64 { // how far apart the first two are
		return 2 * (0.6*f.sin - depth) * math.Sin(0.15)
	}
	kinds := []kind{{count: 3, radius: at(0.03) / 2}}
	if !a.clear(kinds) || !slices.Equal(a.depth, []float64{0, 0, 0.06}) {
		t.Errorf("depths %v", a.depth)
	}
	a.depth = []float64{0.06, 0.06, 0.06}
	kinds[0].radius = at(0.0601) / 2
	if !a.clear(kinds) || !slices.Equal(a.depth, []float64{0.06, 0.06, 0.06}) {
		t.Errorf("depths %v, where none touch", a.depth)
	}
	kinds[0].radius = at(-0.0001) / 2
	if a.clear(kinds) {
		t.Error("two touch at the tips")
	}

	// Two that are just as far apart as they are large, on either side of the trunk, do not overlap.
	a.spots, a.who, a.depth = []spot{{0.6, 0}, {0.6, math.Pi}}, []int32{0, 0}, []float64{0, 0}
	kinds[0].radius = float64(0.6 * f.sin)
	if !a.clear(kinds) {
		t.Error("two that meet are taken to overlap")
	}
}
