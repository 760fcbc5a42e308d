package placement

import (
	"math"
	"slices"
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

const (
	many  = 1000 // pieces, of which a hundredth is what room at an edge is worth
	aMany = 7000 // of which a layout takes little time
)

// deepest is how far the largest pieces are set back, as a share of the way from
// the tips to the trunk.
const deepest = 1.0 / 3

// An arrangement is what [Layout.Places] hands out.
type arrangement struct {
	stand
	spots []spot
	who   []int32   // the kind at each spot
	depth []float64 // of each spot
}

// arrange finds the places of pieces, or the most of them that fit.
func (l Layout) arrange(fn string, pieces []shopping.Lot) (arrangement, error) {
	s, err := l.stand(fn)
	if err != nil {
		return arrangement{}, err
	}
	kinds, total, err := s.kinds(fn, pieces)
	if err != nil {
		return arrangement{}, err
	}
	if a, ok := s.arrange(kinds, total, false); ok {
		return a, nil
	}
	return arrangement{}, &units.Error{
		Func: "placement." + fn, Field: "pieces", Value: strconv.Itoa(total),
		Want: "at most " + strconv.Itoa(s.most(kinds, total)) + " in these proportions", Err: units.ErrFit,
	}
}

// most returns how many of total pieces fit, in the proportions of kinds. It takes less
// trouble than a layout does, which may fit a few more of several sizes.
func (s stand) most(kinds []kind, total int) int {
	return most(kinds, total, s.area(), func(kinds []kind, n int) bool {
		_, ok := s.arrange(kinds, n, true)
		return ok
	})
}

// most searches with a function that reports whether n pieces fit on an area.
func most(kinds []kind, total int, area float64, fits func(kinds []kind, n int) bool) (fit int) {
	// More than would cover the surface need not be tried.
	over := min(total, int(float64(total)*min(area/cover(kinds), 1))+1)
	if over > many {
		kinds = bySizes(kinds)
	}
	next, step, near := 0, over, over
	if over > 2*aMany {
		// Fewer larger ones are tried sooner, and about as many fit in proportion: the first
		// try that comes near that will do.
		scale := float64(over) / aMany
		fewer := int(float64(total) / scale)
		larger := share(kinds, fewer, total)
		for i := range larger {
			larger[i].radius = float64(larger[i].radius * math.Sqrt(scale))
		}
		next = int(float64(most(larger, fewer, area, fits)) * scale * 63 / 64)
		step, near = 1+next/128, next-next/32
	}
	for over-fit > 1+fit/128 && fit < near {
		if next <= fit || next >= over {
			next = (fit + over) / 2
		}
		if fits(share(kinds, next, total), next) {
			fit, next = next, next+step
		} else {
			over, next = next, next-step
		}
		step *= 2
	}
	return fit
}

// cover returns the least area that disks of the sizes of kinds need, if all were
// packed as equal ones are at best: they cover π/√12 of it.
func cover(kinds []kind) float64 {
	sum := 0.0
	for _, k := range kinds {
		sum += float64(2 * math.Sqrt(3) * float64(k.count) * k.radius * k.radius)
	}
	return sum
}

// share returns kinds with their counts brought down in proportion from total to n.
func share(kinds []kind, n, total int) []kind {
	shared := slices.Clone(kinds)
	sum, given := 0, 0
	for i, k := range kinds {
		sum += k.count
		upto := int(int64(sum) * int64(n) / int64(total))
		shared[i].count = upto - given
		given = upto
	}
	return shared
}

// kinds returns what is to be known of the pieces, and how many there are.
func (s stand) kinds(fn string, pieces []shopping.Lot) (kinds []kind, total int, err error) {
	var classes [2]map[shopping.Item]int32
	for l := range classes {
		classes[l] = make(map[shopping.Item]int32)
	}
	class := func(l int, what shopping.Item) int32 {
		c, ok := classes[l][what]
		if !ok {
			c = int32(len(classes[l]))
			classes[l][what] = c
		}
		return c
	}
	var sizes []units.Length
	for i, p := range pieces {
		at := "/pieces/" + strconv.Itoa(i)
		if _, err := p.Item.MarshalText(); err != nil {
			return nil, 0, inside(fn, at+"/item", err)
		}
		size := p.Item.Size
		switch {
		case size > maxSize:
			return nil, 0, rangeError(fn, at+"/item", size.String(), "a size of 0 ft to 10 ft")
		case p.Quantity.Length != 0 || p.Quantity.Pieces < 0 || p.Quantity.Pieces > maxPieces-total:
			return nil, 0, rangeError(fn, at+"/quantity", p.Quantity.String(), "0 or more pieces, "+strconv.Itoa(maxPieces)+" in all, and no length")
		}
		k := kind{
			class:  [layers]int32{class(0, shopping.Item{Kind: p.Item.Kind, Type: p.Item.Type}), none, none},
			count:  p.Quantity.Pieces,
			radius: float64(size) / 2 / s.height,
		}
		if p.Item.Color != "" {
			k.class[1] = class(1, shopping.Item{Color: p.Item.Color})
		}
		if p.Quantity.Pieces > 0 && size > 0 {
			sizes = append(sizes, size)
		}
		total += p.Quantity.Pieces
		kinds = append(kinds, k)
	}
	slices.Sort(sizes)
	sizes = slices.Compact(sizes)
	for i, p := range pieces {
		c, ok := slices.BinarySearch(sizes, p.Item.Size)
		if !ok {
			continue
		}
		kinds[i].class[bySize] = int32(c)
		if smallest, largest := sizes[0], sizes[len(sizes)-1]; smallest < largest {
			kinds[i].rank = float64(2*p.Item.Size-smallest-largest) / float64(largest-smallest)
			kinds[i].deep = deepest * float64(p.Item.Size-smallest) / float64(largest-smallest)
		}
	}
	return kinds, total, nil
}

// arrange finds the places of n pieces of these kinds, if they fit. It leaves as
// much room at the edges as the smallest needs, and the largest go elsewhere; if
// that does not do, as much as the largest needs.
func (s stand) arrange(kinds []kind, n int, quick bool) (a arrangement, ok bool) {
	if n == 0 {
		return arrangement{stand: s}, true
	}
	smallest, largest := math.Inf(1), 0.0
	for _, k := range kinds {
		if k.count > 0 {
			smallest, largest = min(smallest, k.radius), max(largest, k.radius)
		}
	}
	if cover(kinds) > s.area() {
		return arrangement{}, false
	}
	// Among many that makes no difference.
	if a, ok = s.within(smallest, kinds, n, quick); !ok && smallest != largest && !(quick && n > many) {
		a, ok = s.within(largest, kinds, n, quick)
	}
	return a, ok
}

// within arranges with room for a radius at the edges.
func (s stand) within(radius float64, kinds []kind, n int, quick bool) (a arrangement, ok bool) {
	// A little more, so that no rounding makes it less.
	margin := float64(radius / s.cos * (1 + 1e-12))
	a.stand = s
	a.spots = s.even(n, margin)
	a.depth = make([]float64, n)
	if one := alike(kinds); one >= 0 {
		// Whatever hangs where, the places are too near one another or they are not.
		if a.who = slices.Repeat([]int32{one}, n); !a.clear(kinds) {
			return a, false
		}
	}
	if a.who, ok = s.assign(a.spots, kinds, quick); !ok {
		return arrangement{}, false
	}
	for i, p := range a.spots {
		k, r := kinds[a.who[i]], float64(p.slant*s.sin)
		a.depth[i] = max(min(float64(k.deep*r), r-k.radius), 0) // clear of the trunk
	}
	return a, a.clear(kinds)
}

// alike returns one of kinds if all pieces have its size, or else none.
func alike(kinds []kind) int32 {
	one := int32(none)
	for i, k := range kinds {
		switch {
		case k.count == 0:
		case one < 0:
			one = int32(i)
		case k.radius != kinds[one].radius:
			return none
		}
	}
	return one
}

// bySizes returns kinds without types and colors, which have no say in whether they fit.
func bySizes(kinds []kind) (sizes []kind) {
	for _, k := range kinds {
		if k.count == 0 {
			continue
		}
		k.class[0], k.class[1] = none, none
		at := slices.IndexFunc(sizes, func(s kind) bool { return s.class == k.class })
		if at < 0 {
			at = len(sizes)
			sizes = append(sizes, kind{class: k.class, radius: k.radius, rank: k.rank, deep: k.deep})
		}
		sizes[at].count += k.count
	}
	return sizes
}

// clear brings pieces that would touch others back to the tips, and reports
// whether that is enough.
func (a arrangement) clear(kinds []kind) bool {
	largest := 0.0
	for _, k := range kinds {
		largest = max(largest, k.radius)
	}
	if largest == 0 {
		return true
	}
	at := make([]vec, len(a.spots))
	for i := range at {
		at[i] = a.set(i)
	}
	// A piece that is set back is no nearer than 1 - deepest of the way to the trunk, and the
	// slope is steep enough, so that no others can touch.
	near := a.pairs(kinds, 1/(1-deepest))
	for touched := true; touched; {
		touched = false
		for _, p := range near {
			i, j := p[0], p[1]
			r := kinds[a.who[i]].radius + kinds[a.who[j]].radius
			if dist2(at[i], at[j]) >= r*r {
				continue
			}
			if a.depth[i] == 0 && a.depth[j] == 0 {
				return false
			}
			a.depth[i], a.depth[j] = 0, 0
			at[i], at[j] = a.set(int(i)), a.set(int(j))
			touched = true
		}
	}
	return true
}

// pairs returns each two pieces that are, at the tips, nearer than reach times the distance at
// which they touch. It looks around each for those that are no larger, so that a few large ones
// among many small ones take little time.
func (a arrangement) pairs(kinds []kind, reach float64) (pairs [][2]int32) {
	at := make([]vec, len(a.spots))
	for i, p := range a.spots {
		at[i] = a.at(p)
	}
	cells := newIndex(a.surface, a.bound(len(a.spots)))
	cells.fill(a.spots)
	var near []int32
	for i, p := range a.spots {
		i, large := int32(i), kinds[a.who[i]].radius
		near = cells.inside(near[:0], p, float64(2*reach*large))
		for _, j := range near {
			small := kinds[a.who[j]].radius
			if small > large || small == large && j >= i {
				continue
			}
			if r := float64(reach * (large + small)); dist2(at[i], at[j]) < r*r {
				pairs = append(pairs, [2]int32{i, j})
			}
		}
	}
	return pairs
}

// set returns where the piece at spot i is.
func (a arrangement) set(i int) vec {
	p := a.spots[i]
	v := a.at(p)
	in := 1 - a.depth[i]/(p.slant*a.sin)
	return vec{float64(v.x * in), float64(v.y * in), v.z}
}
