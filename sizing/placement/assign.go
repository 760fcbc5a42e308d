package placement

import (
	"cmp"
	"math"
	"slices"
)

// A kind is what the assignment has to know of a [shopping.Lot], lengths in units of
// the height of the tree.
type kind struct {
	class  [layers]int32 // by type, by color and by size from the smallest, from 0, or none
	count  int
	radius float64
	rank   float64 // of its size, from -1 for the smallest to 1 for the largest
	deep   float64 // how far it is set back, as a share of the way to the trunk
}

const (
	none      = -1    // class, kind or spot
	layers    = 3     // by type, by color and by size
	bySize    = 2     // the layer
	tilt      = 0.35  // how much denser than even the largest pieces begin at the base
	keep      = 0.5   // the share of that which exchanges leave
	ownReach  = 0.9   // of the bound of a class: nearer than that, two of it repel
	tooNear   = 0.505 // of the bound of a class: nearer than that, they do so far more
	farthest  = 4     // of the bound of all places, up to which neighbors are listed
	exchanges = 16    // of the nearest, with which to exchange
	touch     = 1000  // what touching another piece counts
	few       = 5     // pieces; of fewer, none are uneven
	loss      = 10    // what an exchange may add at first
	grow      = 1.25  // how much more an uneven class counts in the next round

	mostSweeps  = 120
	leastSweeps = 6
	firstVisits = 120_000   // to places in the first round, between these sweeps
	allVisits   = 1_500_000 // in all rounds together, once the first is over

	// What is asked of a class of few or more, as shares of its own bound.
	enough = 0.66  // the mean distance to the nearest other one
	apart  = 0.504 // the least

	maxFields = 4_000_000 // places times classes: of more, the smallest classes go anywhere
)

// assign returns which kind goes to each spot. ok is false if pieces would not fit
// between the edges at the top and base.
// With quick it looks no further than whether pieces touch.
func (f surface) assign(spots []spot, kinds []kind, quick bool) (who []int32, ok bool) {
	a := newAssignment(f, spots, kinds)
	if !a.fit() {
		return nil, false
	}
	a.run(quick)
	return a.who, true
}

// An assignment is what is being improved.
type assignment struct {
	surface
	spots   []spot
	at      []vec
	kinds   []kind
	who     []int32 // the kind at each spot
	largest float64 // radius
	crowded bool    // pieces can touch
	index   *index
	layers  [layers][]class
	around  [][]neighbor // of each spot, the nearest first
	listed  float64      // the square of the distance up to which they are
	low     []float64    // the sum of the slants of each size, from the smallest
	need    []float64    // how much lower than the next smaller size each must stay on average
	found   []int32
	beyond  []neighbor // than those that are listed
}

// A class is all pieces of a type, of a color or of a size.
type class struct {
	count  int
	weight float64   // of what is wrong with it
	hard   float64   // and of what is far too near, beside that
	reach  float64   // the square of the distance below which two of it repel
	near   float64   // the square of that below which they do so far more
	field  []float64 // what is wrong with one of it at each spot; none where nobody looks
}

// push returns what two of c that are so far apart, squared, do to each other.
func (c *class) push(d float64) float64 {
	x := max(c.reach/d-1, 0)
	x = float64(x * x)
	if d < c.near {
		x += float64(c.hard * c.near / d)
	}
	return float64(c.weight * x)
}

// A neighbor is another spot, and how far away, squared.
type neighbor struct {
	spot   int32
	square float64
}

// nearer puts the nearest first, and of two spots that are as near the one with the lower number.
func nearer(p, q neighbor) int {
	switch {
	case p.square < q.square:
		return -1
	case p.square > q.square:
		return 1
	}
	return int(p.spot - q.spot)
}

func newAssignment(f surface, spots []spot, kinds []kind) *assignment {
	n := len(spots)
	d := f.bound(n)
	a := &assignment{surface: f, spots: spots, kinds: kinds, at: make([]vec, n)}
	for i, p := range spots {
		a.at[i] = f.at(p)
	}
	for _, k := range kinds {
		a.largest = max(a.largest, k.radius)
	}
	a.crowded = a.largest > 0.35*d
	a.index = newIndex(f, d)
	a.index.fill(spots)
	a.order()
	for l := range a.layers {
		for _, k := range kinds {
			if c := k.class[l]; c >= 0 {
				for int(c) >= len(a.layers[l]) {
					a.layers[l] = append(a.layers[l], class{weight: 1, hard: 20})
				}
				a.layers[l][c].count += k.count
			}
		}
	}
	return a
}

// order gives each spot its first kind.
func (a *assignment) order() {
	type turn struct {
		when float64
		kind int32
	}
	turns := make([]turn, 0, len(a.spots))
	for i, k := range a.kinds {
		for j := range k.count {
			t := (float64(j) + 0.5) / float64(k.count)
			turns = append(turns, turn{t + float64(tilt*k.rank*t*(1-t)), int32(i)})
		}
	}
	slices.SortStableFunc(turns, func(s, t turn) int { return cmp.Compare(s.when, t.when) })
	byHeight := make([]int32, len(a.spots))
	for i := range byHeight {
		byHeight[i] = int32(i)
	}
	slices.SortStableFunc(byHeight, func(i, j int32) int { return cmp.Compare(a.spots[i].slant, a.spots[j].slant) })
	a.who = make([]int32, len(turns))
	for i, t := range turns {
		a.who[byHeight[i]] = t.kind
	}
}

// room returns how far spot i is from the nearer edge, up or down.
func (a *assignment) room(i int32) float64 {
	return float64(a.cos * min(a.spots[i].slant-a.top, a.bottom-a.spots[i].slant))
}

// fits reports whether a piece of kind k at spot i stays between the edges.
func (a *assignment) fits(i, k int32) bool { return a.kinds[k].radius <= a.room(i) }

// fit exchanges what does not fit where it is for the nearest in order that goes
// both ways. It reports whether everything fits.
func (a *assignment) fit() bool {
	n := len(a.spots)
	for i := range int32(n) {
		for step := 1; !a.fits(i, a.who[i]); step++ {
			if step == n {
				return false
			}
			for _, j := range [...]int{int(i) - step, int(i) + step} {
				if 0 <= j && j < n && a.fits(i, a.who[j]) && a.fits(int32(j), a.who[i]) {
					a.who[i], a.who[j] = a.who[j], a.who[i]
					break
				}
			}
		}
	}
	return true
}

// prepare finds the partners of each spot and the fields of the classes.
func (a *assignment) prepare() {
	n := len(a.spots)
	var largest []*class
	for l := range a.layers {
		for c := range a.layers[l] {
			class := &a.layers[l][c]
			bound := a.bound(max(class.count, 1))
			class.reach = float64(ownReach * ownReach * bound * bound)
			class.near = float64(tooNear * tooNear * bound * bound)
			if class.count > 1 {
				largest = append(largest, class)
			}
		}
	}
	slices.SortStableFunc(largest, func(c, d *class) int { return cmp.Compare(d.count, c.count) })
	reach := 0.0
	for i, class := range largest {
		if (i+1)*n <= maxFields {
			class.field = make([]float64, n)
			reach = max(reach, class.reach)
		}
	}
	d := a.bound(n)
	reach = min(reach, float64(farthest*farthest*d*d))
	a.around = make([][]neighbor, n)
	for i := range a.around {
		around := slices.Clone(a.within(int32(i), reach))
		slices.SortFunc(around, nearer)
		a.around[i] = around
	}
	a.listed = reach
	for i, k := range a.who {
		for l, c := range a.kinds[k].class {
			if c >= 0 {
				a.spread(&a.layers[l][c], int32(i), 1)
			}
		}
	}
	sizes := a.layers[bySize]
	a.low, a.need = make([]float64, len(sizes)), make([]float64, len(sizes))
	for i, k := range a.who {
		if c := a.kinds[k].class[bySize]; c >= 0 {
			a.low[c] += a.spots[i].slant
		}
	}
	for c := 1; c < len(sizes); c++ {
		a.need[c] = float64(keep * (a.low[c]/float64(sizes[c].count) - a.low[c-1]/float64(sizes[c-1].count)))
	}
}

// spread adds to the field of c what one of it at spot i does to others, or takes it
// off.
func (a *assignment) spread(c *class, i int32, sign float64) {
	if c.field == nil {
		return
	}
	for _, p := range a.within(i, c.reach) {
		c.field[p.spot] += float64(sign * c.push(p.square))
	}
}

// within returns the other spots that are nearer to spot i than a distance, which is squared. They
// are good until the next call.
func (a *assignment) within(i int32, reach float64) []neighbor {
	if reach <= a.listed {
		n, _ := slices.BinarySearchFunc(a.around[i], reach, func(p neighbor, reach float64) int { return cmp.Compare(p.square, reach) })
		return a.around[i][:n]
	}
	a.found, a.beyond = a.index.inside(a.found[:0], a.spots[i], math.Sqrt(reach)), a.beyond[:0]
	for _, j := range a.found {
		if d := dist2(a.at[i], a.at[j]); d < reach && j != i {
			a.beyond = append(a.beyond, neighbor{j, d})
		}
	}
	return a.beyond
}

// gain returns by how much less is wrong when spots i and j, so far apart, squared,
// exchange their pieces.
func (a *assignment) gain(i, j int32, square float64) float64 {
	k, o := &a.kinds[a.who[i]], &a.kinds[a.who[j]]
	sum := 0.0
	for l := range a.layers {
		c, d := k.class[l], o.class[l]
		if c == d {
			continue
		}
		// What the two do to each other stays.
		if c >= 0 && a.layers[l][c].field != nil {
			class := &a.layers[l][c]
			sum += class.field[i] - class.field[j] + class.push(square)
		}
		if d >= 0 && a.layers[l][d].field != nil {
			class := &a.layers[l][d]
			sum += class.field[j] - class.field[i] + class.push(square)
		}
	}
	if a.crowded && k.radius != o.radius {
		sum += a.touching(i, k.radius, j) + a.touching(j, o.radius, i) - a.touching(i, o.radius, j) - a.touching(j, k.radius, i)
	}
	return sum
}

// touching returns how much a piece of a radius at spot i touches others than that at
// except.
func (a *assignment) touching(i int32, radius float64, except int32) float64 {
	sum := 0.0
	reach := radius + a.largest
	for _, p := range a.within(i, float64(reach*reach)) {
		if r := radius + a.kinds[a.who[p.spot]].radius; p.square < r*r && p.spot != except {
			sum += touch * r * r / p.square
		}
	}
	return sum
}

// ordered reports whether larger pieces stay lower when i and j exchange theirs.
func (a *assignment) ordered(i, j int32) bool {
	c, d := a.kinds[a.who[i]].class[bySize], a.kinds[a.who[j]].class[bySize]
	if c == d {
		return true
	}
	down := a.spots[j].slant - a.spots[i].slant
	sizes := a.layers[bySize]
	// By how much the mean of a size falls.
	falls := func(s int32) float64 {
		switch s {
		case c:
			return down / float64(sizes[s].count)
		case d:
			return -down / float64(sizes[s].count)
		}
		return 0
	}
	for s := int32(1); int(s) < len(sizes); s++ {
		if more := falls(s) - falls(s-1); more < 0 {
			if a.low[s]/float64(sizes[s].count)-a.low[s-1]/float64(sizes[s-1].count)+more < a.need[s] {
				return false
			}
		}
	}
	return true
}

func (a *assignment) swap(i, j int32) {
	k, o := &a.kinds[a.who[i]], &a.kinds[a.who[j]]
	for l := range a.layers {
		c, d := k.class[l], o.class[l]
		if c == d {
			continue
		}
		if c >= 0 {
			a.spread(&a.layers[l][c], i, -1)
			a.spread(&a.layers[l][c], j, 1)
		}
		if d >= 0 {
			a.spread(&a.layers[l][d], j, -1)
			a.spread(&a.layers[l][d], i, 1)
		}
	}
	down := a.spots[j].slant - a.spots[i].slant
	if c := k.class[bySize]; c >= 0 {
		a.low[c] += down
	}
	if c := o.class[bySize]; c >= 0 {
		a.low[c] -= down
	}
	a.who[i], a.who[j] = a.who[j], a.who[i]
}

// run exchanges pieces until each class is even, or it has tried for long enough.
//
// An exchange may be for the worse, by less and less: threshold accepting, G. Dueck and
// T. Scheuer, Journal of Computational Physics 90 (1990) 161-175, from memory; with a
// sequence of its own in place of chance. What stays uneven counts for more in the next
// round.
func (a *assignment) run(quick bool) {
	n := len(a.spots)
	if len(a.kinds) < 2 {
		return
	}
	a.prepare()
	best, least := slices.Clone(a.who), math.Inf(1)
	// In visits to a place.
	sweeps, left := min(max(firstVisits/n, leastSweeps), mostSweeps), allVisits
	for {
		heat := min(float64(2*sweeps)/mostSweeps, 1) // few sweeps could not make up for much
		a.anneal(sweeps, float64(loss*heat*heat))
		if quick {
			return
		}
		left -= n * sweeps
		fault := a.fault()
		if fault < least {
			least = fault
			copy(best, a.who)
		}
		sweeps = mostSweeps / 2
		if fault == 0 || left < n*sweeps {
			break
		}
	}
	copy(a.who, best)
}

func (a *assignment) anneal(sweeps int, start float64) {
	seed := uint64(1)
	for sweep := range sweeps {
		x := 1 - float64(sweep+1)/float64(sweeps)
		loss := float64(start * x * x * x)
		for i := range int32(len(a.spots)) {
			partners := a.around[i][:min(len(a.around[i]), exchanges)]
			for range partners {
				seed = seed*6364136223846793005 + 1442695040888963407
				p := partners[int((seed>>33)%uint64(len(partners)))]
				k, o := a.who[i], a.who[p.spot]
				if k != o && a.gain(i, p.spot, p.square) > -loss+1e-9 && a.fits(i, o) && a.fits(p.spot, k) && a.ordered(i, p.spot) {
					a.swap(i, p.spot)
				}
			}
		}
	}
}

// fault returns how far the classes are from what is asked of them, and makes those that
// are count for more.
func (a *assignment) fault() float64 {
	total := 0.0
	if a.crowded {
		for i, k := range a.who {
			total += a.touching(int32(i), a.kinds[k].radius, none)
		}
	}
	for l := range a.layers {
		for c := range a.layers[l] {
			class := &a.layers[l][c]
			if class.count < few || class.field == nil {
				continue
			}
			// near a piece of the class
			bound := a.bound(class.count)
			sum, least := 0.0, math.Inf(1)
			for i, k := range a.who {
				if a.kinds[k].class[l] != int32(c) {
					continue
				}
				nearest := math.Inf(1)
				a.found = a.index.inside(a.found[:0], a.spots[i], bound)
				for _, j := range a.found {
					if int(j) != i && a.kinds[a.who[j]].class[l] == int32(c) {
						nearest = min(nearest, dist2(a.at[i], a.at[j]))
					}
				}
				dist := min(math.Sqrt(nearest)/bound, 1)
				sum += dist
				least = min(least, dist)
			}
			short, close := max(enough-sum/float64(class.count), 0), max(apart-least, 0)
			total += short + float64(3*close)
			if short > 0 {
				class.weight = float64(class.weight * grow)
			}
			if close > 0 {
				class.hard *= 2
			}
			clear(class.field)
			for i, k := range a.who {
				if a.kinds[k].class[l] == int32(c) {
					a.spread(class, int32(i), 1)
				}
			}
		}
	}
	return total
}
