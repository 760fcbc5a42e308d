package placement

import (
	"math"
	"math/rand/v2"
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

// By hand: nothing from the reach on, the square of what is left of it below, and so much more below what is far too near.
func TestPush(t *testing.T) {
	c := class{weight: 2, hard: 3, reach: 4, near: 1}
	for square, want := range map[float64]float64{5: 0, 4: 0, 2: 2, 1: 18, 0.5: 2 * (49 + 6)} {
		if got := c.push(square); got != want {
			t.Errorf("%v apart, squared: %v, want %v", square, got, want)
		}
	}
}

// Of many classes the largest have fields, and no more than there is room for: of 2,000 places 2,000 classes.
func TestMaxFields(t *testing.T) {
	const n = 2000
	f := shape(0.65, 0.05, 1)
	spots := make([]spot, n)
	for i := range spots {
		spots[i] = f.spiral(i, n)
	}
	kinds := make([]kind, n)
	for i := range kinds {
		c := int32(i / 2)
		kinds[i] = kind{class: [layers]int32{c, c, none}, count: 1}
	}
	a := newAssignment(f, spots, kinds)
	a.prepare()
	with := 0
	for l := range a.layers {
		for _, c := range a.layers[l] {
			if c.field != nil {
				with++
			}
		}
	}
	if with != 2000 {
		t.Errorf("%d classes have fields", with)
	}
	// One pair more in a third layer is past the room.
	kinds[0].class[bySize], kinds[1].class[bySize] = 0, 0
	a = newAssignment(f, spots, kinds)
	a.prepare()
	if a.layers[bySize][0].field != nil || a.layers[0][0].field == nil {
		t.Error("one more class has a field")
	}
}

// Of two that are as near the lower number comes first, in whatever order they were found.
func TestNearer(t *testing.T) {
	want := []neighbor{{3, 1}, {0, 2}, {1, 2}, {2, 2}, {4, 3}}
	for k := range want {
		got := slices.Concat(want[k:], want[:k])
		slices.SortFunc(got, nearer)
		if !slices.Equal(got, want) {
			t.Errorf("%v, want %v", got, want)
		}
		for _, o := range want[:k] {
			if nearer(o, want[k]) >= 0 || nearer(want[k], o) <= 0 {
				t.Errorf("%v is not before %v", o, want[k])
			}
		}
	}
}

// wrong returns what is wrong with an assignment, of all pairs of pieces: what exchanges make less.
func (a *assignment) wrong() (sum float64) {
	for i := range a.at {
		for j := range i {
			d := dist2(a.at[i], a.at[j])
			k, o := &a.kinds[a.who[i]], &a.kinds[a.who[j]]
			for l := range a.layers {
				if c := k.class[l]; c >= 0 && c == o.class[l] && a.layers[l][c].field != nil {
					sum += a.layers[l][c].push(d)
				}
			}
			if r := k.radius + o.radius; a.crowded && d < r*r {
				sum += touch * r * r / d
			}
		}
	}
	return sum
}

// lower returns by how much each size is lower than the next smaller one, on average.
func (a *assignment) lower() (by []float64) {
	sizes := a.layers[bySize]
	mean := make([]float64, len(sizes))
	for i, k := range a.who {
		if c := a.kinds[k].class[bySize]; c >= 0 {
			mean[c] += a.spots[i].slant / float64(sizes[c].count)
		}
	}
	for c := range mean {
		by = append(by, mean[c]-mean[max(c-1, 0)])
	}
	return by
}

// about reports whether numbers are the same but for their rounding.
func about(x, y float64) bool { return math.Abs(x-y) <= 1e-7*(1+math.Abs(x)+math.Abs(y)) }

// check compares the fields with what they are when put together anew.
func (a *assignment) check(t *testing.T) {
	t.Helper()
	for l := range a.layers {
		for c := range a.layers[l] {
			class := &a.layers[l][c]
			for p, got := range class.field {
				want := 0.0
				for q, k := range a.who {
					if q != p && a.kinds[k].class[l] == int32(c) {
						want += class.push(dist2(a.at[p], a.at[q]))
					}
				}
				if !about(got, want) {
					t.Fatalf("%d places: at %d the field of class %d of layer %d is %v, want %v", len(a.at), p, c, l, got, want)
				}
			}
		}
	}
}

// someAssignment returns places with pieces in their first order, of two to five kinds; some touch.
func someAssignment(r *rand.Rand) *assignment {
	n := 10 + r.IntN(60)
	f := shape(0.3+0.5*r.Float64(), 0.1*r.Float64(), []float64{1, 0.5, 0.25}[r.IntN(3)])
	var kinds []kind
	left := n
	for i := range int32(2 + r.IntN(4)) {
		k := kind{class: [layers]int32{i, i % 2, i % 3}, rank: float64(i%3) - 1, count: 1 + r.IntN(left/3)}
		k.radius = []float64{0.01, 0.03, 0.06}[i%3] * float64(r.IntN(2))
		if i > 2 && r.IntN(3) == 0 {
			k.class[1], k.class[2] = -1, -1
		}
		left -= k.count
		kinds = append(kinds, k)
	}
	kinds[1].count += left
	a := newAssignment(f, f.even(n, 0), kinds)
	a.prepare()
	return a
}

// What an exchange gains is what is less wrong after it, over all pairs; what is kept of the fields and heights is as if it were
// put together anew; and larger pieces stay as much lower as they must.
func TestExchange(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 0))
	refused, allowed := 0, 0
	some := 40
	if testing.Short() {
		some = 20
	}
	for range some {
		a := someAssignment(r)
		n := len(a.spots)
		for range 40 {
			i, j := int32(r.IntN(n)), int32(r.IntN(n))
			if i == j || a.who[i] == a.who[j] {
				continue
			}
			before, stood := a.wrong(), a.lower()
			gain, ordered := a.gain(i, j, dist2(a.at[i], a.at[j])), a.ordered(i, j)
			k, o := a.who[i], a.who[j]
			a.swap(i, j)
			if a.who[i] != o || a.who[j] != k {
				t.Fatalf("not exchanged")
			}
			if after := a.wrong(); !about(before-gain, after) {
				t.Errorf("%d places: %v wrong, gains %v, %v wrong", n, before, gain, after)
			}
			stands, keeps := a.lower(), true
			for s := range stands {
				if s > 0 && stands[s] < stood[s]-1e-12 && stands[s] < a.need[s] {
					keeps = false
				}
			}
			if keeps != ordered {
				t.Errorf("%d places: in order %v, but lower by %v and then %v, at least %v", n, ordered, stood, stands, a.need)
			}
			if ordered {
				allowed++
			} else {
				refused++
			}
			// As if put together anew.
			low := make([]float64, len(a.low))
			for p, k := range a.who {
				if c := a.kinds[k].class[bySize]; c >= 0 {
					low[c] += a.spots[p].slant
				}
			}
			if !slices.EqualFunc(low, a.low, about) {
				t.Errorf("%d places: low %v, want %v", n, a.low, low)
			}
			a.check(t)
		}
	}
	if refused < some || allowed < 2*some {
		t.Errorf("%d refused, %d allowed", refused, allowed)
	}
}

// What is asked of a class is looked at again over all pairs; a class that falls short counts for a quarter more, and one with two that
// are far too near for twice as much as to that.
func TestFault(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 0))
	shorts, closes := 0, 0
	some := 50
	if testing.Short() {
		some = 10
	}
	for range some {
		a := someAssignment(r)
		type ask struct{ weight, hard float64 }
		var want [layers][]ask
		total := 0.0
		for i := range a.at {
			for j := range a.at {
				radius := a.kinds[a.who[i]].radius + a.kinds[a.who[j]].radius
				if d := dist2(a.at[i], a.at[j]); i != j && a.crowded && d < radius*radius {
					total += 1000 * radius * radius / d
				}
			}
		}
		for l := range a.layers {
			for c, class := range a.layers[l] {
				next := ask{class.weight, class.hard}
				if class.count >= 5 {
					var nearest []float64
					for i, k := range a.who {
						if a.kinds[k].class[l] != int32(c) {
							continue
						}
						near := a.bound(class.count)
						for j, o := range a.who {
							if i != j && a.kinds[o].class[l] == int32(c) {
								near = min(near, math.Sqrt(dist2(a.at[i], a.at[j])))
							}
						}
						nearest = append(nearest, near/a.bound(class.count))
					}
					sum := 0.0
					for _, d := range nearest {
						sum += d
					}
					if short := 0.66 - sum/float64(len(nearest)); short > 0 {
						total += short
						next.weight *= 1.25
						shorts++
					}
					if near := 0.504 - slices.Min(nearest); near > 0 {
						total += 3 * near
						next.hard *= 2
						closes++
					}
				}
				want[l] = append(want[l], next)
			}
		}
		got := a.fault()
		if math.Abs(got-total) > 1e-9*(1+total) {
			t.Errorf("%d places: fault %v, want %v", len(a.spots), got, total)
		}
		for l := range a.layers {
			for c := range a.layers[l] {
				class := &a.layers[l][c]
				if (ask{class.weight, class.hard}) != want[l][c] {
					t.Errorf("%d places: class %d of layer %d counts for %v and %v, want %v", len(a.spots), c, l, class.weight, class.hard, want[l][c])
				}
			}
		}
		a.check(t)
		if again := a.fault(); math.Abs(got-again) > 1e-9*(1+got) {
			t.Errorf("%d places: fault %v, and then %v", len(a.spots), got, again)
		}
	}
	if shorts < some/3 || closes < some/3 {
		t.Errorf("%d fall short, %d too near", shorts, closes)
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
