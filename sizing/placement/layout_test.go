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
	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// hall is a tree with all that a layout looks at.
var hall = placement.Layout{Tree: sizing.Tree{Height: 9 * units.Foot, Handle: 9 * units.Inch, BareTip: 9 * units.Inch}}

// dressing is n types in three sizes and four colors, so many of each.
func dressing(n, each int) []placement.Piece {
	var pieces []placement.Piece
	for i := range n {
		pieces = append(pieces, placement.Piece{
			Type:   fmt.Sprint("type ", i),
			Size:   units.Length(4-i%3) * units.Inch,
			Swatch: fmt.Sprint("color ", i%4),
			Count:  each,
		})
	}
	return pieces
}

func places(t testing.TB, l placement.Layout, pieces []placement.Piece) []placement.Place {
	t.Helper()
	got, err := l.AppendPlaces(nil, pieces)
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
		var pieces []placement.Piece
		for i := range rapid.IntRange(0, 6).Draw(t, "kinds") {
			pieces = append(pieces, placement.Piece{
				Type:   rapid.SampledFrom([]string{"", "ball", "star"}).Draw(t, "type"),
				Swatch: rapid.SampledFrom([]string{"", "red", "cream"}).Draw(t, "swatch"),
				Size:   l.Tree.Height / 100 * units.Length(rapid.IntRange(0, 4).Draw(t, "size, %")),
				Count:  rapid.IntRange(0, 12).Draw(t, fmt.Sprint("count ", i)),
			})
		}
		got, err := l.AppendPlaces(nil, pieces)
		if errors.Is(err, units.ErrFit) {
			t.Skip(err)
		}
		if err != nil {
			t.Fatal(err)
		}
		cone, err := l.Tree.Cone()
		if err != nil {
			t.Fatal(err)
		}
		degrees, err := l.Tree.Exposure.Degrees()
		if err != nil {
			t.Fatal(err)
		}
		counts := make([]int, len(pieces))
		for i, p := range got {
			counts[p.Piece]++
			r := pieces[p.Piece].Size / 2
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
			surface := float64(cone.BaseDiameter) / 2 * float64(l.Tree.Height-p.Height) / float64(cone.Height)
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
				if d := math.Sqrt(x*x + y*y + z*z); d < float64(r+pieces[q.Piece].Size/2)-4 {
					t.Fatalf("%d and %d are %v apart, and touch", i, j, d)
				}
			}
		}
		for i, p := range pieces {
			if counts[i] != p.Count {
				t.Fatalf("%d of piece %d, want %d", counts[i], i, p.Count)
			}
		}

		// The iterator hands out the same, and stops when told to.
		seq, err := l.Places(pieces)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(slices.Collect(seq), got) {
			t.Fatal("Places and AppendPlaces differ")
		}
		for range seq {
			break
		}
		if twice := places2(t, l, got[:min(1, len(got))], pieces); !slices.Equal(twice[min(1, len(got)):], got) {
			t.Fatal("AppendPlaces does not append the same")
		}
	})
}

func places2(t *rapid.T, l placement.Layout, dst []placement.Place, pieces []placement.Piece) []placement.Place {
	got, err := l.AppendPlaces(slices.Clone(dst), pieces)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// Turning the tree turns the picture, and a mirror mirrors it: in azimuth to the
// bit, in space to the nanometer.
func TestTurnMirror(t *testing.T) {
	pieces := dressing(9, 9)
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
				if m.At != (placement.Point{X: -q.At.X, Y: q.At.Y, Z: q.At.Z}) || m.Azimuth != -q.Azimuth && m.Azimuth != 180*placement.Degree {
					t.Fatalf("mirrored: %v is at %v", q, m)
				}
				if q.Piece != p.Piece || q.Depth != p.Depth || m.Piece != p.Piece || m.Depth != p.Depth {
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
			scaled[i].Size *= k
		}
		for i, p := range places(t, large, scaled) {
			q := want[i]
			near := func(x, y units.Length) bool { return max(x-y*k, y*k-x) <= k } // both are rounded
			if p.Piece != q.Piece || p.Azimuth != q.Azimuth || !near(p.Height, q.Height) || !near(p.Depth, q.Depth) || !near(p.At.X, q.At.X) || !near(p.At.Y, q.At.Y) {
				t.Fatalf("%d times as large: %v is at %v", k, q, p)
			}
		}
	}
}

// Larger pieces hang lower and deeper, the smallest at the tips; one size is all at
// the tips; and another type leaves the bars true, sizes and all.
func TestSizes(t *testing.T) {
	d := func(n int) float64 {
		cone, err := hall.Tree.Cone()
		if err != nil {
			t.Fatal(err)
		}
		area, err := cone.LateralArea()
		if err != nil {
			t.Fatal(err)
		}
		return math.Sqrt(2 * float64(area) * 1e6 / (math.Sqrt(3) * float64(n))) // nm
	}
	for kinds := 5; kinds <= 10; kinds++ {
		pieces := dressing(kinds, 9)
		got := places(t, hall, pieces)
		var height, depth, count [5]float64 // by inches across
		for _, p := range got {
			inches := int(pieces[p.Piece].Size / units.Inch)
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
	for _, p := range places(t, hall, []placement.Piece{{Type: "ball", Size: 3 * units.Inch, Count: 40}, {Type: "none", Size: units.Foot}}) {
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
	for _, sizes := range [][2]units.Length{{4 * units.Inch, 4 * units.Inch}, {5 * units.Inch, 2 * units.Inch}} {
		pieces := []placement.Piece{{Type: "a", Size: sizes[0], Count: 250}, {Type: "b", Size: sizes[1], Count: 250}}
		got, err := tree.AppendPlaces(make([]placement.Place, 2, 9), pieces)
		var e *units.Error
		if len(got) != 2 || cap(got) != 9 || !errors.As(err, &e) || !errors.Is(err, units.ErrFit) || e.Field != "pieces" || e.Value != "500" {
			t.Fatalf("%v, %v", len(got), err)
		}
		var fit int
		if _, err := fmt.Sscanf(e.Want, "at most %d in these proportions", &fit); err != nil {
			t.Fatal(err)
		}
		pieces[0].Count, pieces[1].Count = fit/2, fit-fit/2
		if n := len(places(t, tree, pieces)); n != fit {
			t.Errorf("%d placed, %d fit", n, fit)
		}
		disks := math.Pi / 4 * (math.Pow(sizes[0].Meters(), 2) + math.Pow(sizes[1].Meters(), 2)) / 2 * float64(fit)
		if share := disks / (float64(area) * 1e-12); share < 0.3 || share > 0.91 {
			t.Errorf("%v: %d fit, which cover %.2f of the surface", sizes, fit, share)
		}
	}
	if _, err := tree.Places([]placement.Piece{{Size: 5 * units.Foot, Count: 1}}); err == nil || !strings.HasSuffix(err.Error(), "want at most 0 in these proportions") {
		t.Error(err)
	}
}

// Where a large piece fits at one height only, all go there; and one that is taller
// than what is dressed does not fit.
func TestBand(t *testing.T) {
	l := placement.Layout{Tree: sizing.Tree{Height: 6 * units.Foot, BareTip: 66 * units.Inch}}
	pieces := []placement.Piece{{Type: "a", Size: 6*units.Inch - 2, Count: 1}, {Type: "b", Size: units.Inch, Count: 5}}
	got := places(t, l, pieces)
	for _, p := range got {
		if p.Piece == 0 && max(p.Height-3*units.Inch, 3*units.Inch-p.Height) > 1 {
			t.Errorf("%v, where there is room only at 3 in", p)
		}
	}
	pieces[0].Size = 6*units.Inch + 2
	if _, err := l.Places(pieces); !errors.Is(err, units.ErrFit) {
		t.Error(err)
	}
}

func TestLayoutErrors(t *testing.T) {
	ball := placement.Piece{Type: "ball", Size: units.Inch, Count: 1}
	for _, tc := range []struct {
		reason string
		change func(*placement.Layout, *placement.Piece)
		want   string
	}{
		{"a tree of no height", func(l *placement.Layout, _ *placement.Piece) { l.Tree.Height = 0 }, `sizing.Tree.Cone: height "0 ft": out of range: want 1 ft to 100 ft`},
		{"no exposure", func(l *placement.Layout, _ *placement.Piece) { l.Tree.Exposure = -1 }, "sizing.Exposure.Degrees: "},
		{"beyond a full turn", func(l *placement.Layout, _ *placement.Piece) { l.Facing = 360_001 }, `placement.Layout.Places: Facing "360.001°": out of range: want -360° to 360°`},
		{"beyond a full turn back", func(l *placement.Layout, _ *placement.Piece) { l.Facing = -360_001 }, `placement.Layout.Places: Facing "-360.001°": `},
		{"a negative size", func(_ *placement.Layout, p *placement.Piece) { p.Size = -1 }, `placement.Layout.Places: Piece.Size "-0.000001 mm": out of range: want 0 ft to 10 ft`},
		{"a size over 10 ft", func(_ *placement.Layout, p *placement.Piece) { p.Size = 10*units.Foot + 1 }, `placement.Layout.Places: Piece.Size "`},
		{"a negative count", func(_ *placement.Layout, p *placement.Piece) { p.Count = -1 }, `placement.Layout.Places: Piece.Count "-1": out of range: want 0 or more, 100000 pieces in all`},
		{"too many", func(_ *placement.Layout, p *placement.Piece) { p.Count = placement.MaxPieces }, `placement.Layout.Places: Piece.Count "100000": `},
	} {
		l, p := hall, ball
		tc.change(&l, &p)
		seq, err := l.Places([]placement.Piece{ball, p})
		if seq != nil || err == nil || !strings.HasPrefix(err.Error(), tc.want) {
			t.Errorf("%s: %v, want %s", tc.reason, err, tc.want)
		}
		if strings.HasPrefix(tc.want, "placement") && !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: not ErrRange", tc.reason)
		}
	}
	l := hall
	l.Facing = 360_000
	for _, n := range []int{-1, placement.MaxSpiral + 1} {
		if seq, err := l.Spiral(n); seq != nil || !errors.Is(err, units.ErrRange) {
			t.Errorf("Spiral(%d): %v", n, err)
		}
	}
	for _, n := range []int{0, placement.MaxSpiral} {
		if _, err := l.Spiral(n); err != nil {
			t.Errorf("Spiral(%d): %v", n, err)
		}
	}
	one, err := l.Spiral(10)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for range one {
		n++
		break
	}
	if n != 1 {
		t.Errorf("%d places before the break", n)
	}
	l.Tree.Height = 0
	if _, err := l.Spiral(1); err == nil {
		t.Error("Spiral on no tree")
	}
	// The bounds themselves are taken, a size with no count included.
	l = hall
	l.Facing = -360_000
	if got := places(t, l, []placement.Piece{{Size: 10 * units.Foot}, ball}); len(got) != 1 || got[0].Piece != 1 {
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

// A spiral costs the same few allocations for any number of places, and so does
// handing out an arrangement once it is found.
func TestAllocations(t *testing.T) {
	spiral := func(n int) float64 {
		return testing.AllocsPerRun(5, func() {
			seq, err := hall.Spiral(n)
			if err != nil {
				t.Fatal(err)
			}
			for range seq {
			}
		})
	}
	if few, many := spiral(10), spiral(10_000); few != many || many > 4 {
		t.Errorf("Spiral: %v allocations for 10, %v for 10,000", few, many)
	}
	// A loop over a function takes a few by itself.
	for _, n := range []int{100, 2000} {
		seq, err := hall.Places([]placement.Piece{{Count: n}})
		if err != nil {
			t.Fatal(err)
		}
		if got := testing.AllocsPerRun(5, func() {
			for range seq {
			}
		}); got > 3 {
			t.Errorf("%v allocations to hand out %d places", got, n)
		}
	}
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
// a thousand to a million of them.
func BenchmarkGrowth(b *testing.B) {
	for _, n := range []int{1_000, 10_000, 100_000, 1_000_000} {
		b.Run(fmt.Sprint("spiral/", n), func(b *testing.B) {
			for b.Loop() {
				seq, err := hall.Spiral(n)
				if err != nil {
					b.Fatal(err)
				}
				for range seq {
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/place")
		})
	}
	for _, n := range []int{1_000, 10_000, 100_000} {
		b.Run(fmt.Sprint("places/", n), func(b *testing.B) {
			var pieces []placement.Piece
			for i := range 10 {
				pieces = append(pieces, placement.Piece{Type: fmt.Sprint(i), Swatch: fmt.Sprint(i % 3), Count: n / 10})
			}
			var buf []placement.Place
			b.ReportAllocs()
			for b.Loop() {
				var err error
				if buf, err = hall.AppendPlaces(buf[:0], pieces); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/place")
		})
	}
}
