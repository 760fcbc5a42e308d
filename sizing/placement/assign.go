package placement

import (
	"cmp"
	"math"
	"slices"
)

// A kind is what the assignment has to know of a [Piece], lengths in units of
// the height of the tree.
type kind struct {
	class  [2]int32 // by type and by swatch, from 0; -1 is none
	count  int
	radius float64
	rank   float64 // of its size, from -1 for the smallest to 1 for the largest
	deep   float64 // how far it is set back, as a share of the way to the trunk
}

const (
	tilt     = 0.35  // how much denser than even the largest pieces begin at the base
	keep     = 0.5   // the share of that which exchanges leave
	ownReach = 0.505 // of the bound of a class: nearer than that, two of it are too near
	neighbor = 1.25  // of the bound of all places: nearer than that, two are neighbors
	within   = 2     // of the bound of all places, from which to take a piece in exchange
	touch    = 1000  // what touching another piece counts

	// The exchanges end after so many passes, or after so many trials for each
	// place; then come a few that are for the better only.
	passes = 240
	cycle  = 60 // in which the loss falls
	trials = 60
	last   = 5

	// What an exchange may add, as a share of the strain where it starts.
	firstLoss = 2.0
	lastLoss  = 0.6

	few = 8 // places where something is wrong; so few would go in circles

	starts = 6    // how often it begins where a class stays uneven
	most   = 3000 // places; of more, the first start holds
	apart  = 0.5  // of the bound of a class of five or more: nearer than that, it is uneven
)

// assign returns which kind goes to each spot. Where a type or a swatch stays
// uneven it begins anew from another order, unless there are over 3,000 places or
// pieces can touch; if none helps, the first one holds.
// ok is false if pieces would not fit between the edges at the top and base.
func (f surface) assign(spots []spot, kinds []kind) (who []int32, ok bool) {
	for start := range starts {
		a := newAssignment(f, spots, kinds, start)
		if !a.fit() {
			return who, who != nil
		}
		a.run()
		even := a.even()
		if who == nil || even {
			who = a.who
		}
		if even || a.crowded || len(spots) > most {
			break
		}
	}
	return who, true
}

// run begins with each kind spread evenly over the height, the larger ones a little
// lower, and then exchanges neighbors as long as that keeps two of a type or a
// swatch farther apart.
func (a *assignment) run() {
	n := len(a.spots)
	slant := 0.0
	for _, p := range a.spots {
		slant += p.slant / float64(n)
	}
	for i, k := range a.who {
		a.lead += float64(a.kinds[k].rank * (a.spots[i].slant - slant))
	}
	a.least = a.lead * keep
	pass := int32(0)
	for pass < passes && a.tried < trials*n {
		done := max(float64(pass%cycle)/cycle, float64(a.tried)/float64(trials*n))
		pass++
		if !a.improve(pass, firstLoss+float64((lastLoss-firstLoss)*done)) {
			return
		}
	}
	for range last {
		pass++
		if !a.improve(pass, 0) {
			return
		}
	}
}

// even reports whether no two of a type or a swatch of five or more are nearer than
// they should be.
func (a *assignment) even() bool {
	for i, k := range a.who {
		for l, c := range a.kinds[k].class {
			if c < 0 || a.layers[l].classes[c].count < 5 {
				continue
			}
			class := &a.layers[l].classes[c]
			least := float64(apart * a.bound(class.count))
			a.cells = class.around(a.cells[:0], a.spots[i])
			for _, cell := range a.cells {
				for j := class.head[cell]; j >= 0; j = a.layers[l].next[j] {
					if int(j) != i && dist2(a.at[i], a.at[j]) < float64(least*least) {
						return false
					}
				}
			}
		}
	}
	return true
}

// An assignment is what is being improved.
type assignment struct {
	surface
	spots []spot
	at    []vec
	kinds []kind
	who   []int32 // the kind at each spot
	*index
	crowded bool // pieces can touch
	layers  [2]layer
	near    []int32
	moved   []int32 // the pass of the last exchange, from 1
	wrong   int     // places in the last pass
	tried   int     // exchanges
	lead    float64 // the sum of rank times slant: how much larger pieces are lower
	least   float64 // what exchanges must leave of it
}

// A layer has the members of each class, by type or by swatch, in cells of its own.
type layer struct {
	classes []class
	next    []int32 // of a spot, the next in its cell, or -1
}

type class struct {
	count int
	reach float64 // below which two of it repel
	grid
	head []int32 // of a cell, a spot in it, or -1
}

func newAssignment(f surface, spots []spot, kinds []kind, start int) *assignment {
	n := len(spots)
	d := f.bound(n)
	a := &assignment{surface: f, spots: spots, kinds: kinds, at: make([]vec, n), wrong: n, moved: make([]int32, n)}
	for i, p := range spots {
		a.at[i] = f.at(p)
	}
	largest := 0.0
	for _, k := range kinds {
		largest = max(largest, k.radius)
	}
	a.crowded = 2*largest > 0.7*d
	a.index = newIndex(f, max(within*d, 2*largest))
	a.index.fill(spots)
	a.order(start)
	for l := range a.layers {
		layer := &a.layers[l]
		for _, k := range kinds {
			if c := k.class[l]; c >= 0 {
				for int(c) >= len(layer.classes) {
					layer.classes = append(layer.classes, class{})
				}
				layer.classes[c].count += k.count
			}
		}
		for i := range layer.classes {
			c := &layer.classes[i]
			c.reach = float64(ownReach * f.bound(max(c.count, 1)))
			if l == 0 && 3*c.count <= n { // as many as can be apart in a hexagonal pattern
				c.reach = max(c.reach, float64(neighbor*d))
			}
			c.grid = newGrid(f, c.reach)
			c.head = slices.Repeat([]int32{-1}, c.grid.cells())
		}
		layer.next = make([]int32, n)
	}
	return a
}

// order gives each spot its first kind. In each start the kinds take their turns
// at other heights.
func (a *assignment) order(start int) {
	type turn struct {
		when float64
		kind int32
	}
	turns := make([]turn, 0, len(a.spots))
	for i, k := range a.kinds {
		phase := 0.5 + float64(0.618*float64(start*i))
		phase -= math.Floor(phase)
		for j := range k.count {
			t := (float64(j) + phase) / float64(k.count)
			turns = append(turns, turn{t + float64(tilt*k.rank*t*(1-t)), int32(i)})
		}
	}
	slices.SortStableFunc(turns, func(s, t turn) int { return cmp.Compare(s.when, t.when) })
	a.who = make([]int32, len(turns))
	for i, t := range turns {
		a.who[i] = t.kind
	}
}

// room returns how far spot i is from the nearer edge, up or down.
func (a *assignment) room(i int32) float64 {
	return float64(a.cos * min(a.spots[i].slant-a.top, a.bottom-a.spots[i].slant))
}

// fits reports whether a piece of kind k at spot i stays between the edges.
func (a *assignment) fits(i, k int32) bool { return a.kinds[k].radius <= a.room(i) }

// fit exchanges what does not fit where it is for the nearest in order that goes
// both ways, and then puts the members of classes in their cells. It reports
// whether everything fits.
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
	for i := range int32(n) {
		a.add(i)
	}
	return true
}

// add puts spot i in the cells of its classes, remove takes it out.
func (a *assignment) add(i int32) {
	for l, c := range a.kinds[a.who[i]].class {
		if c >= 0 {
			head := a.layers[l].classes[c].at(a.spots[i])
			a.layers[l].next[i], *head = *head, i
		}
	}
}

func (a *assignment) remove(i int32) {
	for l, c := range a.kinds[a.who[i]].class {
		if c >= 0 {
			p := a.layers[l].classes[c].at(a.spots[i])
			for *p != i {
				p = &a.layers[l].next[*p]
			}
			*p = a.layers[l].next[i]
		}
	}
}

func (c *class) at(p spot) *int32 { return &c.head[c.cell(p)] }

// strain returns how much is wrong with a piece of kind k at spot i, leaving out
// what spot except does to it: for each other piece of its type or swatch that is
// too near, at a share u of what is near enough, 1/u², and far more for each piece
// that it touches.
func (a *assignment) strain(i, k, except int32) float64 {
	sum := 0.0
	for l, c := range a.kinds[k].class {
		if c < 0 {
			continue
		}
		class := &a.layers[l].classes[c]
		if class.count < 2 {
			continue
		}
		square := float64(class.reach * class.reach)
		a.cells = class.around(a.cells[:0], a.spots[i])
		for _, cell := range a.cells {
			for j := class.head[cell]; j >= 0; j = a.layers[l].next[j] {
				if d := dist2(a.at[i], a.at[j]); d < square && j != i && j != except {
					sum += square / d
				}
			}
		}
	}
	if a.crowded {
		a.cells = a.around(a.cells[:0], a.spots[i])
		for _, cell := range a.cells {
			for _, j := range a.items[a.start[cell]:a.start[cell+1]] {
				if j == i || j == except {
					continue
				}
				r := a.kinds[k].radius + a.kinds[a.who[j]].radius
				if d := dist2(a.at[i], a.at[j]); d < r*r {
					sum += touch * r * r / d
				}
			}
		}
	}
	return sum
}

// improve visits each spot where something is wrong and exchanges its piece for
// the one nearby with which least is wrong afterwards, even if that is somewhat
// more than before: so that what is wrong moves about until it finds a way out.
// It reports whether anything was wrong.
//
// This is the method of minimal conflicts, with a loss that falls from pass to
// pass as the temperature does in annealing, though nothing is left to chance.
// What has been exchanged stays put for the rest of the pass, and where few are
// left, for up to four more.
func (a *assignment) improve(pass int32, loss float64) bool {
	stay := int32(0)
	if a.wrong <= few {
		stay = pass % 5
	}
	a.wrong = 0
	for i := range int32(len(a.spots)) {
		k := a.who[i]
		here := a.strain(i, k, -1)
		if here == 0 {
			continue
		}
		a.wrong++
		best, partner, gained := 1e-9-float64(loss*here), int32(-1), 0.0
		a.near = a.index.near(a.near[:0], a.spots[i])
		for _, j := range a.near {
			o := a.who[j]
			if o == k || a.moved[j] > 0 && a.moved[j]+stay >= pass || !a.fits(i, o) || !a.fits(j, k) {
				continue
			}
			lead := float64((a.kinds[k].rank - a.kinds[o].rank) * (a.spots[j].slant - a.spots[i].slant))
			if lead < 0 && a.lead+lead < a.least {
				continue
			}
			a.tried++
			// What the two do to each other is left out, since it stays.
			gain := a.strain(i, k, j) + a.strain(j, o, i) - a.strain(i, o, j) - a.strain(j, k, i)
			if gain > best {
				best, partner, gained = gain, j, lead
			}
		}
		if partner >= 0 {
			a.swap(i, partner)
			a.lead += gained
			a.moved[i], a.moved[partner] = pass, pass
		}
	}
	return a.wrong > 0
}

func (a *assignment) swap(i, j int32) {
	a.remove(i)
	a.remove(j)
	a.who[i], a.who[j] = a.who[j], a.who[i]
	a.add(i)
	a.add(j)
}
