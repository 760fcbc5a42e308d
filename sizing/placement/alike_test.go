package placement

import (
	"encoding/binary"
	"hash/fnv"
	"math"
	"testing"
)

// A digest tells whether floating-point numbers are the same bits as when it was taken. That they are good ones is for the
// other tests.
func digest(spots []spot) uint64 {
	h := fnv.New64a()
	for _, p := range spots {
		for _, x := range []float64{p.slant, p.azimuth} {
			_ = binary.Write(h, binary.LittleEndian, math.Float64bits(x)) // a hash takes all it is given
		}
	}
	return h.Sum64()
}

// The places of a tree are the same bits on every machine: of few on a spiral, of more that are cut out of honeycombs, and of so
// many that fewer honeycombs are tried; slim and wide, part of the way round and all of it, with and without room at the edges.
func TestSameSpots(t *testing.T) {
	for i, c := range []struct {
		ratio, bare, arc, margin float64
		counts                   []int
		want                     uint64
	}{
		{.65, .1, 1, .02, []int{1, 9, 23, 24, 40, 60, 120}, 0x5467b11cedef924c},
		{.65, .05, 1, 0, []int{1, 2, 3, 5, 11, 23, 24, 25, 33, 47, 59, 60, 61, 62, 63, 87, 140, 187, 188, 250, 700}, 0xc63065e1b5a3b010},
		{.25, .15, 1, .01, []int{4, 30, 59, 80, 300}, 0xc0ca39f0d3d750ef},
		{1.2, 0, 1, .7, []int{2, 7, 26, 63}, 0x82b713f844369719},
		{.9, 0, .5, 0, []int{1, 6, 24, 41, 64, 222}, 0xfc3428f3bb4762e2},
		{.4, .05, .25, .015, []int{3, 8, 25, 61, 150}, 0xd0d1f58ba542c76d},
		{.65, .05, 1, 0, []int{1400, 3999, 4000, 4001}, 0xa2bdc37b2725b5db},
	} {
		if i > 0 && testing.Short() {
			break
		}
		var all []spot
		for _, n := range c.counts {
			spots := shape(c.ratio, c.bare, c.arc).even(n, c.margin)
			if len(spots) != n {
				t.Errorf("%d places, want %d", len(spots), n)
			}
			all = append(all, spots...)
		}
		if got := digest(all); got != c.want {
			t.Errorf("base %v, bare %v, arc %v, margin %v: digest %#016x, want %#016x", c.ratio, c.bare, c.arc, c.margin, got, c.want)
		}
	}
}

// What an index finds near a place is all there is, as TestGrid has it, and no more than it was: a cell too many costs time.
func TestSameNeighbors(t *testing.T) {
	h := fnv.New64a()
	found, within := 0, 0
	for _, c := range []struct{ ratio, bare, arc float64 }{{.65, .05, 1}, {.25, .15, 1}, {1.2, 0, 1}, {.9, 0, .5}, {.4, .05, .25}} {
		f := shape(c.ratio, c.bare, c.arc)
		for _, n := range []int{1, 7, 60, 400} {
			d := f.bound(n)
			spots := f.wound(n, 0).spots
			x := newIndex(f, d)
			x.fill(spots)
			_ = binary.Write(h, binary.LittleEndian, x.first)
			for _, p := range spots {
				for _, reach := range []float64{0, d / 2, d, 2.5 * d, 6 * d} {
					near := x.inside(nil, p, reach)
					if reach == 0 {
						near = x.near(nil, p)
					}
					found += len(near)
					for _, j := range near {
						if dist2(f.at(p), f.at(spots[j])) <= max(reach, d)*max(reach, d) {
							within++
						}
					}
					_ = binary.Write(h, binary.LittleEndian, append(near, -1))
				}
			}
		}
	}
	if got := h.Sum64(); got != 0xee5df24a77791237 || 2*found > 5*within {
		t.Errorf("digest %#016x of %d found, %d of them near", got, found, within)
	}
}

// Pieces can touch where the largest are wider than seven tenths of the distance between places.
func TestCanTouch(t *testing.T) {
	f := shape(.65, .05, 1)
	spots := f.even(40, 0)
	for share, want := range map[float64]bool{.1: false, .34: false, .36: true, 2: true} {
		if a := newAssignment(f, spots, []kind{{class: [layers]int32{none, none, none}, count: 40, radius: share * f.bound(40)}}); a.crowded != want {
			t.Errorf("a radius of %v of the distance: crowded %v", share, a.crowded)
		}
	}
}
