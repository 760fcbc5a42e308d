package placement_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// hall is a tree with all that a layout looks at.
var hall = placement.Layout{Tree: sizing.Tree{Height: 9 * units.Foot, Handle: 9 * units.Inch, BareTip: 9 * units.Inch}}

// dressing is n types in three sizes and four colors, so many of each.
func dressing(n, each int) []shopping.Lot {
	var pieces []shopping.Lot
	for i := range n {
		pieces = append(pieces, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: fmt.Sprint("type ", i), Size: units.Length(4-i%3) * units.Inch, Color: fmt.Sprint("color ", i%4)}, Quantity: shopping.Quantity{Pieces: each}})
	}
	return pieces
}

func places(t testing.TB, l placement.Layout, pieces []shopping.Lot) []placement.Place {
	t.Helper()
	got, err := l.Places(pieces)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func layouts() *rapid.Generator[placement.Layout] {
	return rapid.Custom(func(t *rapid.T) placement.Layout {
		height := units.Length(rapid.IntRange(12, 240).Draw(t, "height, in")) * units.Inch
		l := placement.Layout{
			Tree: sizing.Tree{
				Height:   height,
				Base:     height * units.Length(rapid.IntRange(25, 75).Draw(t, "base, %")) / 100,
				BareTip:  height * units.Length(rapid.IntRange(0, 30).Draw(t, "bare tip, %")) / 100,
				Handle:   height * units.Length(rapid.IntRange(0, 30).Draw(t, "handle, %")) / 100,
				Exposure: rapid.SampledFrom([]sizing.Exposure{sizing.AllRound, sizing.AgainstWall, sizing.InCorner, 60_000}).Draw(t, "exposure"),
			},
			Facing: placement.Angle(rapid.IntRange(-360_000, 360_000).Draw(t, "facing")),
			Mirror: rapid.Bool().Draw(t, "mirror"),
		}
		return l
	})
}

// What holds of every layout and every dressing that fits: as many places of each
// piece as were asked for, all on what is dressed and between its edges with their
// whole size, no two touching, and no deeper than the trunk.
func TestPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := layouts().Draw(t, "layout")
		var pieces []shopping.Lot
		for i := range rapid.IntRange(0, 6).Draw(t, "kinds") {
			pieces = append(pieces, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: rapid.SampledFrom([]string{"", "ball", "star"}).Draw(t, "type"), Color: rapid.SampledFrom([]string{"", "red", "cream"}).Draw(t, "swatch"), Size: l.Tree.Height / 100 * units.Length(rapid.IntRange(0, 4).Draw(t, "size, %"))}, Quantity: shopping.Quantity{Pieces: rapid.IntRange(0, 12).Draw(t, fmt.Sprint("count ", i))}})
		}
		got, err := l.Places(pieces)
		if errors.Is(err, units.ErrFit) {
			t.Skip(err)
		}
		if err != nil {
			t.Fatal(err)
		}
		tree, err := l.Tree.Measured()
		if err != nil {
			t.Fatal(err)
		}
		degrees, err := l.Tree.Exposure.Degrees()
		if err != nil {
			t.Fatal(err)
		}
		counts := make(map[shopping.Item]int)
		for i, p := range got {
			counts[p.Item]++
			r := p.Item.Size / 2
			if p.Height-r < l.Tree.Handle-1 || p.Height+r > l.Tree.Height-l.Tree.BareTip+1 {
				t.Fatalf("%v, %v across, is not between the lowest branches and the bare tip", p, 2*r)
			}
			facing := l.Facing
			if l.Mirror {
				facing = -facing
			}
			off := math.Abs(math.Remainder((p.Azimuth - facing).Degrees(), 360))
			if off > degrees/2+0.001 {
				t.Fatalf("%v is %v° off the middle of %v°", p.Azimuth, off, degrees)
			}
			surface := float64(tree.Base) / 2 * float64(l.Tree.Height-p.Height) / float64(tree.Height-tree.Handle)
			radius := math.Hypot(float64(p.At.X), float64(p.At.Y))
			if math.Abs(surface-float64(p.Depth)-radius) > 4 || p.At.Z != p.Height {
				t.Fatalf("%v at %v: %v from the trunk, the tips are %v", p, p.At, radius, surface)
			}
			if p.Depth < 0 || float64(p.Depth) > surface/3+1 {
				t.Fatalf("%v deep of %v", p.Depth, surface)
			}
			if p.Depth > 0 && radius < float64(r)-4 {
				t.Fatalf("%v across, %v from the middle of the trunk", 2*r, radius)
			}
			// The azimuth is rounded, the point is not.
			if turn := math.Atan2(float64(p.At.X), -float64(p.At.Y)) / math.Pi * 180; radius > 1e6 &&
				math.Abs(math.Remainder(turn-p.Azimuth.Degrees(), 360)) > 0.0006 {
				t.Fatalf("%v at %v, which is at %v°", p, p.At, turn)
			}
			for j, q := range got[:i] {
				x, y, z := float64(p.At.X-q.At.X), float64(p.At.Y-q.At.Y), float64(p.At.Z-q.At.Z)
				if d := math.Sqrt(x*x + y*y + z*z); d < float64(r+q.Item.Size/2)-4 {
					t.Fatalf("%d and %d are %v apart, and touch", i, j, d)
				}
			}
		}
		for _, p := range pieces {
			counts[p.Item] -= p.Quantity.Pieces
		}
		for item, n := range counts {
			if n != 0 {
				t.Fatalf("%v: %d too many", item, n)
			}
		}
	})
}

// Turning the tree turns the picture, and a mirror mirrors it: in azimuth to the
// bit, in space to the nanometer.
func TestTurnMirror(t *testing.T) {
	pieces := dressing(5, 5)
	for _, e := range []sizing.Exposure{sizing.AllRound, sizing.InCorner} {
		l := hall
		l.Tree.Exposure = e
		still := places(t, l, pieces)
		for _, facing := range []placement.Angle{0, 90 * placement.Degree, -37_501, 360 * placement.Degree} {
			l.Facing, l.Mirror = facing, false
			turned := places(t, l, pieces)
			l.Mirror = true
			mirrored := places(t, l, pieces)
			sin, cos := math.Sincos(facing.Degrees() / 180 * math.Pi)
			for i, p := range still {
				q, m := turned[i], mirrored[i]
				x, y := float64(p.At.X), float64(p.At.Y)
				if off := math.Remainder((q.Azimuth - p.Azimuth - facing).Degrees(), 360); off != 0 {
					t.Fatalf("turned by %v: %v is at %v, %v off", facing, p, q, off)
				}
				if math.Abs(x*cos-y*sin-float64(q.At.X)) > 2 || math.Abs(x*sin+y*cos-float64(q.At.Y)) > 2 || p.At.Z != q.At.Z {
					t.Fatalf("turned by %v: %v is at %v", facing, p.At, q.At)
				}
				if m.At != (placement.Position{X: -q.At.X, Y: q.At.Y, Z: q.At.Z}) || m.Azimuth != -q.Azimuth && m.Azimuth != 180*placement.Degree {
					t.Fatalf("mirrored: %v is at %v", q, m)
				}
				if q.Item != p.Item || q.Depth != p.Depth || m.Item != p.Item || m.Depth != p.Depth {
					t.Fatal("another piece or depth")
				}
			}
		}
	}
}

// A tree k times as large has the same places k times as far apart.
func TestScale(t *testing.T) {
	small := placement.Layout{Tree: sizing.Tree{Height: 6 * units.Foot, Base: 50 * units.Inch, Handle: 6 * units.Inch, BareTip: 5 * units.Inch}}
	pieces := dressing(7, 7)
	want := places(t, small, pieces)
	for _, k := range []units.Length{2, 3, 7} {
		large := placement.Layout{Tree: sizing.Tree{Height: k * 6 * units.Foot, Base: k * 50 * units.Inch, Handle: k * 6 * units.Inch, BareTip: k * 5 * units.Inch}}
		scaled := dressing(7, 7)
		for i := range scaled {
			scaled[i].Item.Size *= k
		}
		for i, p := range places(t, large, scaled) {
			q := want[i]
			near := func(x, y units.Length) bool { return max(x-y*k, y*k-x) <= k } // both are rounded
			if p.Item.Type != q.Item.Type || p.Azimuth != q.Azimuth || !near(p.Height, q.Height) || !near(p.Depth, q.Depth) || !near(p.At.X, q.At.X) || !near(p.At.Y, q.At.Y) {
				t.Fatalf("%d times as large: %v is at %v", k, q, p)
			}
		}
	}
}

// Larger pieces hang lower and deeper, the smallest at the tips; one size is all at
// the tips; and another type leaves the bars true, sizes and all.
func TestSizes(t *testing.T) {
	d := func(n int) float64 {
		round := hall.Tree
		round.Exposure = sizing.AllRound
		area, err := round.DressedArea()
		if err != nil {
			t.Fatal(err)
		}
		return math.Sqrt(2 * float64(area) * 1e6 / (math.Sqrt(3) * float64(n))) // nm
	}
	for kinds := 5; kinds <= 10; kinds++ {
		if !placement.Every && (kinds != 5 && kinds != 9 || kinds != 5 && testing.Short()) {
			continue
		}
		pieces := dressing(kinds, 9)
		got := places(t, hall, pieces)
		var height, depth, count [5]float64 // by inches across
		for _, p := range got {
			inches := int(p.Item.Size / units.Inch)
			height[inches] += float64(p.Height)
			depth[inches] += float64(p.Depth)
			count[inches]++
		}
		if height[4]/count[4] >= height[2]/count[2] || depth[2] != 0 || depth[3]/count[3] <= 0 || depth[4]/count[4] <= depth[3]/count[3] {
			t.Errorf("%d types: heights %v, depths %v of %v", kinds, height, depth, count)
		}
		// On the surface again: out to the tips.
		mean, least := 0.0, math.Inf(1)
		for i, p := range got {
			nearest := math.Inf(1)
			for j, q := range got {
				if i != j {
					nearest = min(nearest, apart(tip(p), tip(q)))
				}
			}
			mean += nearest / float64(len(got)) / d(len(got))
			least = min(least, nearest/d(len(got)))
		}
		if mean < 0.93 || least < 0.78 {
			t.Errorf("%d types: mean %.3f, least %.3f", kinds, mean, least)
		}
	}
	for _, p := range places(t, hall, []shopping.Lot{{Item: shopping.Item{Kind: shopping.Ornament, Type: "ball", Size: 3 * units.Inch}, Quantity: shopping.Quantity{Pieces: 40}}, {Item: shopping.Item{Kind: shopping.Ornament, Type: "none", Size: units.Foot}}}) {
		if p.Depth != 0 {
			t.Errorf("one size: %v", p)
		}
	}
}

// tip returns where the tip of the branch is, in nanometers.
func tip(p placement.Place) [3]float64 {
	sin, cos := math.Sincos(p.Azimuth.Degrees() / 180 * math.Pi)
	depth := float64(p.Depth)
	return [3]float64{float64(p.At.X) + depth*sin, float64(p.At.Y) - depth*cos, float64(p.At.Z)}
}

func apart(p, q [3]float64) float64 {
	return math.Sqrt((p[0]-q[0])*(p[0]-q[0]) + (p[1]-q[1])*(p[1]-q[1]) + (p[2]-q[2])*(p[2]-q[2]))
}

// Where it does not all fit, the error says how many do: that many fit, and they
// are at least half of what disks of that size could cover of the surface.
func TestNoRoom(t *testing.T) {
	tree := placement.Layout{Tree: sizing.Tree{Height: 4*units.Foot + 6*units.Inch}}
	area, err := tree.Tree.DressedArea()
	if err != nil {
		t.Fatal(err)
	}
	for _, sizes := range [][2]units.Length{{12 * units.Inch, 12 * units.Inch}, {14 * units.Inch, 8 * units.Inch}} {
		if sizes[0] != sizes[1] && testing.Short() {
			continue
		}
		pieces := []shopping.Lot{{Item: shopping.Item{Kind: shopping.Ornament, Type: "a", Size: sizes[0]}, Quantity: shopping.Quantity{Pieces: 50}}, {Item: shopping.Item{Kind: shopping.Ornament, Type: "b", Size: sizes[1]}, Quantity: shopping.Quantity{Pieces: 50}}}
		got, err := tree.Places(pieces)
		var e *units.Error
		if got != nil || !errors.As(err, &e) || !errors.Is(err, units.ErrFit) || e.Field != "pieces" || e.Value != "100" {
			t.Fatalf("%v, %v", len(got), err)
		}
		var fit int
		if _, err := fmt.Sscanf(e.Want, "at most %d in these proportions", &fit); err != nil {
			t.Fatal(err)
		}
		pieces[0].Quantity.Pieces, pieces[1].Quantity.Pieces = fit/2, fit-fit/2
		if n := len(places(t, tree, pieces)); n != fit {
			t.Errorf("%d placed, %d fit", n, fit)
		}
		disks := math.Pi / 4 * (math.Pow(sizes[0].In(units.Meter), 2) + math.Pow(sizes[1].In(units.Meter), 2)) / 2 * float64(fit)
		if share := disks / (float64(area) * 1e-12); share < 0.3 || share > 0.91 {
			t.Errorf("%v: %d fit, which cover %.2f of the surface", sizes, fit, share)
		}
	}
	if _, err := tree.Places([]shopping.Lot{{Item: shopping.Item{Kind: shopping.Ornament, Size: 5 * units.Foot}, Quantity: shopping.Quantity{Pieces: 1}}}); err == nil || !strings.HasSuffix(err.Error(), "want at most 0 in these proportions") {
		t.Error(err)
	}
}

// Where a large piece fits at one height only, all go there; and one that is taller
// than what is dressed does not fit.
func TestBand(t *testing.T) {
	for _, band := range []struct {
		tree   sizing.Tree
		middle units.Length
	}{
		{sizing.Tree{Height: 6 * units.Foot, BareTip: 66 * units.Inch}, 3 * units.Inch},
		{sizing.Tree{Height: 6 * units.Foot, BareTip: 36 * units.Inch, BareBase: 24 * units.Inch, Handle: 6 * units.Inch}, 33 * units.Inch}, // 30 to 36 in up
	} {
		l := placement.Layout{Tree: band.tree}
		pieces := []shopping.Lot{{Item: shopping.Item{Kind: shopping.Ornament, Type: "a", Size: 6*units.Inch - 2}, Quantity: shopping.Quantity{Pieces: 1}}, {Item: shopping.Item{Kind: shopping.Ornament, Type: "b", Size: units.Inch}, Quantity: shopping.Quantity{Pieces: 5}}}
		got := places(t, l, pieces)
		for _, p := range got {
			if p.Item == pieces[0].Item && max(p.Height-band.middle, band.middle-p.Height) > 1 {
				t.Errorf("%v, where there is room only at %v", p, band.middle)
			}
		}
		pieces[0].Item.Size = 6*units.Inch + 2
		if _, err := l.Places(pieces); !errors.Is(err, units.ErrFit) {
			t.Error(err)
		}
	}
}

func TestLayoutErrors(t *testing.T) {
	ball := shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: "ball", Size: units.Inch}, Quantity: shopping.Quantity{Pieces: 1}}
	for _, tc := range []struct {
		reason string
		change func(*placement.Layout, *shopping.Lot)
		want   string
	}{
		{"a tree of no height", func(l *placement.Layout, _ *shopping.Lot) { l.Tree.Height = 0 }, `placement.Layout.Places: /tree/height "0 ft": out of range: want 1 ft to 100 ft`},
		{"no exposure", func(l *placement.Layout, _ *shopping.Lot) { l.Tree.Exposure = -1 }, "placement.Layout.Places: /tree/exposure "},
		{"beyond a full turn", func(l *placement.Layout, _ *shopping.Lot) { l.Facing = 360_001 }, `placement.Layout.Places: /facing "360.001°": out of range: want -360° to 360°`},
		{"beyond a full turn back", func(l *placement.Layout, _ *shopping.Lot) { l.Facing = -360_001 }, `placement.Layout.Places: /facing "-360.001°": `},
		{"a negative size", func(_ *placement.Layout, p *shopping.Lot) { p.Item.Size = -1 }, `placement.Layout.Places: /pieces/1/item "-0.000001 mm": out of range: want a size that is 0 ft to 100 ft`},
		{"a size over 10 ft", func(_ *placement.Layout, p *shopping.Lot) { p.Item.Size = 10*units.Foot + 1 }, `placement.Layout.Places: /pieces/1/item "`},
		{"a negative count", func(_ *placement.Layout, p *shopping.Lot) { p.Quantity.Pieces = -1 }, `placement.Layout.Places: /pieces/1/quantity "-1": out of range: want 0 or more pieces, 100000 in all, and no length`},
		{"a length", func(_ *placement.Layout, p *shopping.Lot) { p.Quantity.Length = units.Foot }, `placement.Layout.Places: /pieces/1/quantity "1 of 1 ft": out of range: want 0 or more pieces, 100000 in all, and no length`},
		{"too many", func(_ *placement.Layout, p *shopping.Lot) { p.Quantity.Pieces = 100_000 }, `placement.Layout.Places: /pieces/1/quantity "100000": `},
	} {
		l, p := hall, ball
		tc.change(&l, &p)
		seq, err := l.Places([]shopping.Lot{ball, p})
		if seq != nil || err == nil || !strings.HasPrefix(err.Error(), tc.want) {
			t.Errorf("%s: %v, want %s", tc.reason, err, tc.want)
		}
		if strings.HasPrefix(tc.want, "placement") && !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: not ErrRange", tc.reason)
		}
	}
	// The bounds themselves are taken, a size with no count included.
	l := hall
	l.Facing = -360_000
	if got := places(t, l, []shopping.Lot{{Item: shopping.Item{Kind: shopping.Ornament, Size: 10 * units.Foot}}, ball}); len(got) != 1 || got[0].Item != ball.Item {
		t.Error(got)
	}
}

func TestAngle(t *testing.T) {
	for _, tc := range []struct {
		angle placement.Angle
		text  string
		clock int
	}{
		{0, "0°", 6},
		{90 * placement.Degree, "90°", 3},
		{-90 * placement.Degree, "-90°", 9},
		{180 * placement.Degree, "180°", 12},
		{-180 * placement.Degree, "-180°", 12},
		{37_500, "37.5°", 5},
		{14_999, "14.999°", 6},
		{15_000, "15°", 6}, // a half goes to the later hour
		{15_001, "15.001°", 5},
		{-14_999, "-14.999°", 6},
		{-15_000, "-15°", 7},
		{165_000, "165°", 1},
		{165_001, "165.001°", 12},
		{-165_000, "-165°", 12},
		{-164_999, "-164.999°", 11},
		{135_000, "135°", 2},
		{450 * placement.Degree, "450°", 3},
		{-450 * placement.Degree, "-450°", 9},
		{540 * placement.Degree, "540°", 12},
	} {
		if got := tc.angle.String(); got != tc.text {
			t.Errorf("%d: %s, want %s", tc.angle, got, tc.text)
		}
		if got := tc.angle.Clock(); got != tc.clock {
			t.Errorf("%v: %d o'clock, want %d", tc.angle, got, tc.clock)
		}
	}
	if got := (placement.Place{Height: 50*units.Inch + units.Inch/2}).String(); got != "4 ft 2 1/2 in up at 6 o'clock" {
		t.Error(got)
	}
}

// A path costs the same few allocations for any number of points.
func TestAllocations(t *testing.T) {
	path, err := hall.Wind(placement.Winding{Spacing: units.Foot, Step: units.Inch})
	if err != nil {
		t.Fatal(err)
	}
	if got := testing.AllocsPerRun(5, func() {
		for range path {
		}
	}); got > 3 {
		t.Errorf("%v allocations to hand out a path", got)
	}
}

// BenchmarkGrowth prints the time for each place, which stays about the same from
// a thousand to a hundred thousand of them.
func BenchmarkGrowth(b *testing.B) {
	for _, n := range []int{1_000, 10_000, 100_000} {
		b.Run(fmt.Sprint("places/", n), func(b *testing.B) {
			var pieces []shopping.Lot
			for i := range 10 {
				pieces = append(pieces, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: fmt.Sprint(i), Color: fmt.Sprint(i % 3)}, Quantity: shopping.Quantity{Pieces: n / 10}})
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := hall.Places(pieces); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/place")
		})
	}
}

// What is said to fit does, of many in types and colors too, and 5 % more does not; of one
// size and up to 14,000, not even 2 %.
func TestHowMany(t *testing.T) {
	for _, c := range []struct{ n, sizes int }{{20, 1}, {2_000, 1}, {40_000, 1}, {96, 1}, {99_000, 1}, {1_500, 3}, {10_000, 2}, {40_000, 3}} {
		if !placement.Every && (c.sizes > 1 || c.n == 96 || c.n == 99_000) || c.n > 20 && testing.Short() {
			continue
		}
		pieces := tooMany(c.n, c.sizes)
		if c.sizes == 1 && c.n > 96 {
			pieces = tooMany(c.n, 1)[:1] // types and colors take long
			pieces[0].Quantity.Pieces = c.n
		}
		_, err := hall.Places(pieces)
		var fit int
		if err == nil {
			t.Fatalf("%d fit", c.n)
		}
		if _, err := fmt.Sscanf(err.(*units.Error).Want, "at most %d in these proportions", &fit); err != nil {
			t.Fatal(err)
		}
		if got := places(t, hall, less(pieces, fit)); len(got) != fit {
			t.Errorf("%d placed, %d fit", len(got), fit)
		}
		more := fit / 20
		if c.sizes == 1 && c.n < 14_000 {
			more = max(fit/50, 1)
		}
		if _, err := hall.Places(less(pieces, fit+more)); !errors.Is(err, units.ErrFit) {
			t.Errorf("%d fit, and %d more: %v", fit, more, err)
		}
	}
}

// Of 2,000 pieces one is too large for the tree, and as many as have none of it fit.
func TestHowManySmall(t *testing.T) {
	lot := func(typ string, size units.Length, n int) shopping.Lot {
		return shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: typ, Size: size}, Quantity: shopping.Quantity{Pieces: n}}
	}
	_, err := hall.Places([]shopping.Lot{lot("huge", 9*units.Foot, 10), lot("none", units.Inch, 0), lot("small", units.Inch/4, 19_990)})
	var fit int
	if err == nil {
		t.Fatal("a ball of 9 ft fits a tree of 9 ft")
	}
	if _, err := fmt.Sscanf(err.(*units.Error).Want, "at most %d in these proportions", &fit); err != nil || fit < 1984 || fit > 1999 {
		t.Errorf("%d fit: %v", fit, err)
	}
}

// less returns pieces with their counts brought down in proportion to n.
func less(pieces []shopping.Lot, n int) []shopping.Lot {
	total, sum, given := 0, 0, 0
	for _, p := range pieces {
		total += p.Quantity.Pieces
	}
	pieces = slices.Clone(pieces)
	for i, p := range pieces {
		sum += p.Quantity.Pieces
		pieces[i].Quantity.Pieces = sum*n/total - given
		given = sum * n / total
	}
	return pieces
}

// How many fit, told of more than fit, takes a second or two; of a few large ones among many
// small ones, some seconds.
func BenchmarkHowMany(b *testing.B) {
	for _, n := range []int{1_000, 27_000, 99_000} {
		for sizes := 1; sizes <= 3; sizes++ {
			b.Run(fmt.Sprintf("pieces/%d/sizes/%d", n, sizes), func(b *testing.B) {
				pieces := tooMany(n, sizes)
				for b.Loop() {
					if _, err := hall.Places(pieces); !errors.Is(err, units.ErrFit) {
						b.Fatal(err)
					}
				}
			})
		}
	}
	b.Run("large among small", func(b *testing.B) {
		lot := func(size units.Length, n int) shopping.Lot {
			return shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Size: size}, Quantity: shopping.Quantity{Pieces: n}}
		}
		pieces := []shopping.Lot{lot(3*units.Foot, 10), lot(units.Inch/3, 98_990)}
		for b.Loop() {
			if _, err := hall.Places(pieces); !errors.Is(err, units.ErrFit) {
				b.Fatal(err)
			}
		}
	})
}

// tooMany returns n pieces of so many sizes, each in four types and colors, a quarter more
// than would cover the tree of the hall.
func tooMany(n, sizes int) (pieces []shopping.Lot) {
	area, err := hall.Tree.DressedArea()
	if err != nil {
		panic(err)
	}
	squares := 0 // of the sizes, in tenths of the largest
	for i := range sizes {
		squares += (10 - 2*i) * (10 - 2*i)
	}
	largest := math.Sqrt(1.25 * float64(area) / float64(n) * float64(100*sizes) / float64(squares)) // in micrometers
	for i := range sizes {
		for color := range 4 {
			pieces = append(pieces, shopping.Lot{
				Item:     shopping.Item{Kind: shopping.Ornament, Type: fmt.Sprint(4*i + color), Color: fmt.Sprint("color ", color), Size: units.Length(largest * float64(100*(10-2*i)))},
				Quantity: shopping.Quantity{Pieces: n / sizes / 4},
			})
		}
	}
	return pieces
}
