package placement_test

import (
	"errors"
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A job that was laid out in November must come out the same in December, on any machine. So these are
// digests of many layouts: slim and wide trees, part of the way round and all of it, few pieces and
// many, of one kind and of many, from loose to so crowded that some do not fit. That a layout is a
// good one is for the other tests; here one nanometer anywhere changes a digest.
func TestSameLayouts(t *testing.T) {
	for _, group := range []struct {
		name   string
		seed   uint64
		trees  int
		most   int // pieces of a kind
		kinds  int
		size   units.Length // of the largest
		points bool         // every third kind has no size
		want   uint64
	}{
		{name: "a few", seed: 7, trees: 10, most: 5, kinds: 4, size: 4 * units.Inch, want: 0xb92246d940f9cf1e},
		{name: "loose, of many kinds", seed: 1, trees: 30, most: 9, kinds: 7, size: 3 * units.Inch, want: 0xba5a508cbf05b79b},
		{name: "few of each", seed: 2, trees: 100, most: 3, kinds: 6, size: 3 * units.Inch, want: 0xe363e9a1ded6de85},
		{name: "two kinds", seed: 3, trees: 40, most: 30, kinds: 2, size: 4 * units.Inch, want: 0x28f643ba68d37769},
		{name: "crowded", seed: 4, trees: 6, most: 12, kinds: 5, size: 12 * units.Inch, want: 0x42f9775309113b1d},
		{name: "so large that some do not fit", seed: 5, trees: 20, most: 4, kinds: 4, size: 36 * units.Inch, want: 0x7209c4f8824eaa06},
		{name: "many", seed: 8, trees: 2, most: 1500, kinds: 3, size: 3 * units.Inch / 4, want: 0x1fa1a340d62407f0},
		{name: "points and balls", seed: 9, trees: 12, most: 8, kinds: 6, size: 4 * units.Inch, points: true, want: 0xdd2f557c3498e09c},
		{name: "points", seed: 6, trees: 30, most: 25, kinds: 3, size: 0, want: 0xf140b43825464cd1},
	} {
		t.Run(group.name, func(t *testing.T) {
			if some := []uint64{7, 4, 1, 9}; testing.Short() && !slices.Contains(some, group.seed) {
				t.Skip("takes long")
			}
			t.Parallel()
			r := rand.New(rand.NewPCG(group.seed, 0))
			h := fnv.New64a()
			refused := 0
			for range group.trees {
				l := anyLayout(r)
				var pieces []shopping.Lot
				for i := range 1 + r.IntN(group.kinds) {
					p := shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: fmt.Sprint(i)}, Quantity: shopping.Quantity{Pieces: r.IntN(group.most + 1)}}
					if group.size > 0 && !(group.points && i%3 == 2) {
						p.Item.Size = units.Length(1 + r.Int64N(int64(group.size)))
					}
					if i > 0 {
						p.Item.Color = fmt.Sprint(i % 3)
					}
					pieces = append(pieces, p)
				}
				places, err := l.Places(pieces)
				if errors.Is(err, units.ErrFit) {
					refused++
				} else if err != nil {
					t.Fatal(err)
				}
				for _, p := range places {
					at := slices.IndexFunc(pieces, func(q shopping.Lot) bool { return q.Item == p.Item })
					fmt.Fprintln(h, at, int64(p.Height), int32(p.Azimuth), int64(p.Depth), int64(p.At.X), int64(p.At.Y), int64(p.At.Z))
				}
				fmt.Fprintln(h, err)
			}
			if got := h.Sum64(); got != group.want {
				t.Errorf("digest %#016x, want %#016x; %d of %d do not fit", got, group.want, refused, group.trees)
			}
		})
	}
}

func anyLayout(r *rand.Rand) placement.Layout {
	height := units.Length(36+r.IntN(120)) * units.Inch
	return placement.Layout{
		Tree: sizing.Tree{
			Height:   height,
			Base:     height * units.Length(25+r.IntN(60)) / 100,
			BareTip:  height * units.Length(r.IntN(20)) / 100,
			Exposure: []sizing.Exposure{sizing.AllRound, sizing.AgainstWall, sizing.InCorner, 60_000}[r.IntN(4)],
		},
		Facing: placement.Angle(r.IntN(360_000)),
		Mirror: r.IntN(2) == 0,
	}
}

// The same for garlands, straight and draped.
func TestSameWindings(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 0))
	h := fnv.New64a()
	points := 0
	for range 60 {
		w := placement.Winding{
			Spacing: units.Length(4+r.IntN(20)) * units.Inch,
			Step:    units.Length(2+r.IntN(10)) * units.Inch,
		}
		if r.IntN(2) == 0 {
			w.Drape = sizing.Drape{Span: units.Length(6+r.IntN(20)) * units.Inch, Sag: units.Length(r.IntN(6)) * units.Inch}
		}
		for _, p := range wind(t, anyLayout(r), w) {
			fmt.Fprintln(h, int64(p.X), int64(p.Y), int64(p.Z))
			points++
		}
	}
	if got := h.Sum64(); got != 0xf9d5c4fec2220f21 || points < 1000 {
		t.Errorf("digest %#016x of %d points, want %#016x", got, points, uint64(0xf9d5c4fec2220f21))
	}
}

// The same for the order of hanging.
func TestSameStations(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 0))
	h := fnv.New64a()
	stations := 0
	for range 40 {
		l := anyLayout(r)
		places, err := l.Places([]shopping.Lot{
			{Item: shopping.Item{Kind: shopping.Ornament, Size: 2 * units.Inch}, Quantity: shopping.Quantity{Pieces: 1 + r.IntN(40)}},
			{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: r.IntN(12)}},
		})
		if err != nil {
			t.Fatal(err)
		}
		order := placement.Order{Ladder: units.Length(r.IntN(3)) * 4 * units.Foot, Side: []units.Length{0, units.Foot, 3 * units.Foot}[r.IntN(3)]}
		list, err := order.Stations(places)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range list {
			fmt.Fprintln(h, s.First, s.Clock, s.Ladder.Size, s.Ladder.Lift, int64(s.From), int64(s.To))
			for _, p := range s.Places {
				fmt.Fprintln(h, int64(p.Height), int32(p.Azimuth), int64(p.Left))
			}
		}
		stations += len(list)
	}
	if got := h.Sum64(); got != 0x23e1afacf19e32a9 || stations < 100 {
		t.Errorf("digest %#016x of %d stations", got, stations)
	}
}

// A text of 64 bytes is read, space and all, and a longer one is not, and is shown cut.
func TestLongAngles(t *testing.T) {
	pad := func(n int) string { return strings.Repeat(" ", n-len("37.5°")) + "37.5°" }
	if a, err := readAngle(pad(64)); err != nil || a != 37_500 {
		t.Errorf("%v, %v", a, err)
	}
	if _, err := readAngle(pad(65)); !errors.Is(err, units.ErrSyntax) || !strings.Contains(err.Error(), `37.5..."`) {
		t.Errorf("65 bytes: %v", err)
	}
	if _, err := readAngle(strings.Repeat("x", 64)); err == nil || strings.Contains(err.Error(), "...") {
		t.Errorf("a refused text of 64 bytes is cut: %v", err)
	}
}
