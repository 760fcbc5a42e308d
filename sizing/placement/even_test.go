package placement

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"
)

// shape returns a tree of a height of 1 with its base so wide, its tip bare so
// far down, and so much of the way round dressed.
func shape(ratio, bare, arc float64) surface {
	s := math.Sqrt(1 + ratio*ratio/4)
	return surface{sin: ratio / 2 / s, cos: 1 / s, top: bare * s, bottom: s, arc: arc * 2 * math.Pi, round: arc == 1}
}

// evenness returns the mean and the least distance of spots to the nearest other
// one, as shares of the hexagonal bound. It compares each with all that are not
// farther along the slope than the nearest so far, and uses no grid.
func evenness(f surface, spots []spot) (mean, least float64) {
	at := make([]vec, len(spots))
	sorted := slices.SortedFunc(slices.Values(spots), func(p, q spot) int {
		if p.slant < q.slant {
			return -1
		}
		return 1
	})
	for i, p := range sorted {
		at[i] = f.at(p)
	}
	least = math.Inf(1)
	for i, p := range sorted {
		nearest := math.Inf(1)
		for _, way := range []int{-1, 1} {
			for j := i + way; j >= 0 && j < len(at) && math.Abs(sorted[j].slant-p.slant) < nearest; j += way {
				nearest = min(nearest, math.Sqrt(dist2(at[i], at[j])))
			}
		}
		mean += nearest
		least = min(least, nearest)
	}
	d := math.Sqrt(2 * f.area() / (math.Sqrt(3) * float64(len(spots))))
	return mean / float64(len(spots)) / d, least / d
}

// kolmogorov returns the statistic of the Kolmogorov-Smirnov test that spots are
// evenly spread over the heights of f, in the form of Stephens: the test rejects
// at a level of 5 % from 1.358 on, for any number of spots.
//
// Source: M. A. Stephens, Journal of the American Statistical Association 69
// (1974) 730-737, Table 1A, case 0; from memory.
func kolmogorov(f surface, spots []spot) float64 {
	var above []float64 // the share of the surface above each
	for _, p := range spots {
		above = append(above, (p.slant*p.slant-f.top*f.top)/(f.bottom*f.bottom-f.top*f.top))
	}
	slices.Sort(above)
	d, n := 0.0, float64(len(spots))
	for i, u := range above {
		d = max(d, u-float64(i)/n, float64(i+1)/n-u)
	}
	return d * (math.Sqrt(n) + 0.12 + 0.11/math.Sqrt(n))
}

const kolmogorovAt5 = 1.358

// around returns the chi-square of the counts in eight equal sectors of the arc,
// and Rayleigh's 2·n·R² of the azimuths, stretched to the whole way round. At a
// level of 5 % the tests reject from 14.067 (7 degrees of freedom) and 5.991 on.
//
// Source: chi-square distribution, any table; 2·n·R² has two degrees of freedom
// for many points (Mardia and Jupp, Directional Statistics, 2000, from memory).
func around(f surface, spots []spot) (chi2, rayleigh float64) {
	var counts [8]float64
	var x, y float64
	for _, p := range spots {
		turn := p.azimuth/f.arc + 0.5
		counts[min(int(turn*8), 7)]++
		x += math.Cos(2 * math.Pi * turn)
		y += math.Sin(2 * math.Pi * turn)
	}
	n := float64(len(spots))
	for _, c := range counts {
		chi2 += (c - n/8) * (c - n/8) / (n / 8)
	}
	return chi2, 2 * (x*x + y*y) / n
}

// shapes calls f with over 200 shapes and counts: from narrower than pencil (a
// quarter of the height) to flared (over nine tenths), tips bare and not.
func shapes(arcs []float64, f func(ratio, bare, arc float64, n int)) {
	for _, ratio := range []float64{0.2, 0.25, 0.3, 0.45, 0.65, 0.9, 1.2} {
		for _, bare := range []float64{0, 0.05, 0.15} {
			for _, n := range []int{30, 31, 36, 41, 50, 75, 110, 250, 600, 1200} {
				for _, arc := range arcs {
					f(ratio, bare, arc, n)
				}
			}
		}
		f(ratio, 0.1, arcs[0], 3000)
	}
}

// The bars: all round, a mean of 0.94 of the bound and a least of 0.90; where only
// part is dressed, 0.96 and 0.95. (Narrower than a pencil tree the mean is 0.935: there
// are five places or fewer to a turn, and a chord through so thin a tree is up to a
// sixth shorter than the way round it, which the bound goes by.) And the heights and azimuths pass for random
// draws from an even spread, which is a weak test of something that is far more
// even than that, but catches a drift up, down or to a side.
func TestEven(t *testing.T) {
	count := 0
	check := func(ratio, bare, arc float64, n int) {
		count++
		f := shape(ratio, bare, arc)
		spots := even(f, n)
		wantMean, wantLeast := 0.94, 0.90
		if ratio < 0.25 { // narrower than a pencil tree
			wantMean = 0.935
		}
		if arc < 1 {
			wantMean, wantLeast = 0.96, 0.95
		}
		if mean, least := evenness(f, spots); mean < wantMean || least < wantLeast {
			t.Errorf("base %v, bare %v, arc %v, n %d: mean %.4f, least %.4f; want %v and %v", ratio, bare, arc, n, mean, least, wantMean, wantLeast)
		}
		if k := kolmogorov(f, spots); k >= kolmogorovAt5 {
			t.Errorf("base %v, bare %v, arc %v, n %d: Kolmogorov-Smirnov %.3f", ratio, bare, arc, n, k)
		}
		if chi2, rayleigh := around(f, spots); f.arc*f.sin*f.bottom > 8*f.bound(n) && (chi2 >= 14.067 || rayleigh >= 5.991) {
			t.Errorf("base %v, bare %v, arc %v, n %d: chi-square %.2f, Rayleigh %.2f", ratio, bare, arc, n, chi2, rayleigh)
		}
	}
	check(0.65, 0.05, 1, 41)
	check(0.65, 0.05, 2./3, 55)
	if testing.Short() {
		return
	}
	check(0.65, 0.1, 1, 5000) // large honeycombs
	if !Every {
		// The least even by each bar, and some others.
		for _, c := range []struct {
			ratio, bare, arc float64
			n                int
		}{
			{0.2, 0.15, 1, 31},
			{0.2, 0.15, 1, 30},
			{0.2, 0, 1, 30},
			{0.2, 0.15, 1, 41},
			{0.2, 0.05, 1, 600},
			{0.25, 0.05, 1, 250},
			{0.3, 0.15, 1, 41},
			{0.45, 0.05, 1, 1200},
			{0.9, 0.15, 1, 75},
			{1.2, 0, 1, 110},
			{0.25, 0.05, 2. / 3, 30},
			{0.25, 0.05, 2. / 3, 120},
			{0.65, 0.05, 0.5, 55},
			{1.2, 0.05, 0.2, 120},
		} {
			check(c.ratio, c.bare, c.arc, c.n)
		}
		return
	}
	shapes([]float64{1}, check)
	for _, ratio := range []float64{0.25, 0.65, 1.2} {
		for _, n := range []int{30, 55, 120, 500} {
			for _, arc := range []float64{2. / 3, 0.5, 0.2} {
				check(ratio, 0.05, arc, n)
			}
		}
	}
	if count < 200 {
		t.Errorf("only %d shapes and counts", count)
	}
}

// The tests of evenness can fail: random placing does not pass the bars, and
// points drawn to one side or downward do not pass the others.
func TestEvennessCanFail(t *testing.T) {
	f := shape(0.65, 0.05, 1)
	spots := random(f, 300)
	if mean, least := evenness(f, spots); mean > 0.65 || least > 0.3 {
		t.Errorf("random placing: mean %.3f, least %.3f", mean, least)
	}
	for i := range spots {
		spots[i].azimuth *= 0.8
		spots[i].slant = f.bottom - (f.bottom-spots[i].slant)*0.85
	}
	chi2, rayleigh := around(f, spots)
	if k := kolmogorov(f, spots); k < kolmogorovAt5 || chi2 < 14.067 || rayleigh < 5.991 {
		t.Errorf("drawn down and to the front: %.2f, %.2f, %.2f", k, chi2, rayleigh)
	}
	// A ring of 16 at the hem is one row; every other one raised by 2 in, it is none.
	ring := make([]vec, 16)
	for i := range ring {
		ring[i] = f.at(spot{f.bottom, 2 * math.Pi * float64(i) / 16})
	}
	if n := line(ring, 108, 0.15); n != 16 {
		t.Errorf("a ring of 16 is a row of %d", n)
	}
	for i := range ring {
		ring[i].z += float64(i%2) * 2 / 108
	}
	if n := line(ring, 108, 0.15); n != 1 {
		t.Errorf("a ring of 16, up and down, is a row of %d", n)
	}
	// Four corners of a square on a nearly flat, nearly full disk: each is √2·r
	// from two others.
	flat := surface{sin: 1, cos: 1e-9, bottom: 1, arc: 2 * math.Pi, round: true}
	square := []spot{{1, 0}, {1, math.Pi / 2}, {1, math.Pi}, {1, -math.Pi / 2}}
	want := math.Sqrt2 / math.Sqrt(2*math.Pi/(math.Sqrt(3)*4))
	if mean, least := evenness(flat, square); math.Abs(mean-want) > 1e-12 || math.Abs(least-want) > 1e-12 {
		t.Errorf("square: %v %v, want %v", mean, least, want)
	}
}

// Vogel's property: the share of places above any height is that of the surface,
// within 1/n. It holds for the spiral by construction.
//
// Source: H. Vogel, Mathematical Biosciences 44 (1979) 179-189.
func TestVogel(t *testing.T) {
	shapes([]float64{1, 0.4}, func(ratio, bare, arc float64, n int) {
		f := shape(ratio, bare, arc)
		for k := range n {
			p := f.spiral(k, n)
			share := (p.slant*p.slant - f.top*f.top) / (f.bottom*f.bottom - f.top*f.top)
			if math.Abs(share-(float64(k)+0.5)/float64(n)) > 1e-12 {
				t.Fatalf("place %d of %d has %v of the surface above it", k, n, share)
			}
			if math.Abs(p.azimuth) > f.arc/2 {
				t.Fatalf("place %d of %d is at %v of %v", k, n, p.azimuth, f.arc)
			}
		}
	})
}

// The table in the package documentation: the methods beside ours, and with all shapes ours.
func TestTable(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range methods {
		if m.name == "even" && !Every {
			continue
		}
		c := m.compare()
		row := fmt.Sprintf("//	%-34s %.2f %12.2f %7.2f %13.2f\n", m.title, c.mean, c.worstMean, c.least, c.worstLeast)
		if !strings.Contains(string(doc), row) {
			t.Errorf("the documentation does not have this row of %d shapes:\n%s", c.shapes, row)
		}
		if c.shapes < 200 {
			t.Errorf("only %d shapes", c.shapes)
		}
	}
}

// The grid finds everything that is nearer than its cells are wide, or than it is asked
// for, in every shape, the tip and the seam at the back included; and nothing far away.
func TestGrid(t *testing.T) {
	for _, f := range []surface{shape(0.125, 0, 1), shape(0.3, 0.2, 1), shape(1.5, 0, 1), shape(0.65, 0, 0.3)} {
		for _, n := range []int{2, 40, 300} {
			if n == 300 && testing.Short() {
				break
			}
			spots := random(f, n)
			for _, size := range []float64{0.01, 0.1, 0.5, 3} {
				x := newIndex(f, size)
				x.fill(spots)
				for i, p := range spots {
					near := x.near(nil, p)
					slices.Sort(near)
					if len(slices.Compact(slices.Clone(near))) != len(near) {
						t.Fatal("found twice")
					}
					for j, q := range spots {
						if _, found := slices.BinarySearch(near, int32(j)); !found && dist2(f.at(p), f.at(q)) < size*size {
							t.Fatalf("%v does not find %v, %v away, in cells of %v", spots[i], q, math.Sqrt(dist2(f.at(p), f.at(q))), size)
						}
					}
					for _, reach := range []float64{size / 3, size, 4 * size} {
						inside := x.inside(nil, p, reach)
						slices.Sort(inside)
						if len(slices.Compact(slices.Clone(inside))) != len(inside) {
							t.Fatal("found twice")
						}
						for j, q := range spots {
							d := math.Sqrt(dist2(f.at(p), f.at(q)))
							if _, found := slices.BinarySearch(inside, int32(j)); !found && d < reach || found && d > 2*reach+3*size {
								t.Fatalf("%v, asked for %v, finds %v: %v, %v away, in cells of %v", spots[i], reach, q, found, d, size)
							}
						}
					}
				}
			}
		}
	}
}

// The seam at the back, half a turn to the left or right, belongs to the first column and to the last.
func TestGridSeam(t *testing.T) {
	g := newGrid(shape(0.65, 0, 1), 0.05)
	row := g.row(spot{0.9, 0})
	columns := int(g.first[row+1] - g.first[row])
	if left, right := g.column(row, spot{0.9, -math.Pi}.turn()), g.column(row, spot{0.9, math.Pi}.turn()); columns < 5 || left != 0 || right != columns-1 {
		t.Errorf("columns %d and %d of %d", left, right, columns)
	}
}

// Everything stays on the surface, and clear of its edges by the margin.
func TestMargin(t *testing.T) {
	for _, f := range []surface{shape(0.25, 0, 1), shape(0.65, 0.1, 1), shape(1.2, 0, 0.25), shape(0.65, 0.99, 1)} {
		for _, n := range []int{1, 2, 3, 10, 80} {
			for _, margin := range []float64{0, 0.004, 0.2} {
				if n > 10 && !Every && (testing.Short() || margin != 0.004) {
					continue
				}
				margin := min(margin, (f.bottom-f.top)/2)
				for _, p := range f.even(n, margin) {
					if p.slant < f.top+margin-1e-15 || p.slant > f.bottom-margin+1e-15 || math.Abs(p.azimuth) > f.arc/2 {
						t.Fatalf("%d places with a margin of %v: one at %v", n, margin, p)
					}
				}
			}
		}
	}
	// At the very tip there is no way round.
	for _, ratio := range []float64{0.2, 0.65, 1.5} {
		for _, n := range []int{5, 40, 300} {
			if n > 5 && !Every && (testing.Short() || ratio != 0.65) {
				continue
			}
			f := shape(ratio, 0, 1)
			for _, p := range even(f, n) {
				if p.slant < f.bound(n)/4 {
					t.Errorf("base %v: one of %d is %v from the tip, and %v from the others", ratio, n, p.slant, f.bound(n))
				}
			}
		}
	}
	// No room at all: halfway.
	if p := shape(0.65, 0.9, 1).even(1, 1)[0]; math.Abs(p.slant-0.95*math.Sqrt(1+0.325*0.325)) > 1e-12 {
		t.Errorf("%v", p)
	}
}

// The rivals, in a few lines each.

func random(f surface, n int) []spot {
	r := rand.New(rand.NewPCG(1, uint64(n)))
	spots := make([]spot, n)
	for i := range spots {
		u := r.Float64()
		spots[i] = spot{math.Sqrt(f.top*f.top + u*(f.bottom*f.bottom-f.top*f.top)), f.arc * (r.Float64() - 0.5)}
	}
	return spots
}

func golden(f surface, n int) []spot {
	spots := make([]spot, n)
	for k := range spots {
		turn := float64(k) * (3 - math.Sqrt(5)) / 2
		spots[k] = spot{f.spiral(k, n).slant, f.arc * (turn - math.Floor(turn) - 0.5)}
	}
	return spots
}

func plain(f surface, n int) []spot {
	spots := make([]spot, n)
	for k := range spots {
		spots[k] = f.spiral(k, n)
	}
	return spots
}

func even(f surface, n int) []spot {
	type key struct {
		f surface
		n int
	}
	spots, ok := evens.Load(key{f, n})
	if !ok {
		spots = f.even(n, 0)
		evens.Store(key{f, n}, spots)
	}
	return spots.([]spot)
}

// evens are for all tests: they take a while.
var evens sync.Map

type method struct {
	name, title string
	place       func(surface, int) []spot
}

var methods = []method{
	{"random", "at random", random},
	{"golden", "golden angle", golden},
	{"spiral", "an even spiral", plain},
	{"even", "Layout.Places", even},
}

// A comparison is how even a method is over many shapes and counts.
type comparison struct {
	shapes                             int
	mean, worstMean, least, worstLeast float64
}

func (m method) compare() comparison {
	c := comparison{worstMean: 1, worstLeast: 1}
	shapes([]float64{1}, func(ratio, bare, arc float64, n int) {
		f := shape(ratio, bare, arc)
		mean, least := evenness(f, m.place(f, n))
		c.shapes++
		c.mean, c.worstMean = c.mean+mean, min(c.worstMean, mean)
		c.least, c.worstLeast = c.least+least, min(c.worstLeast, least)
	})
	c.mean /= float64(c.shapes)
	c.least /= float64(c.shapes)
	return c
}

// BenchmarkTable prints how even each method is over 217 shapes and counts: the
// mean distance to the nearest neighbor over them all and for the worst of them,
// and the least distance likewise, as shares of the hexagonal bound.
func BenchmarkTable(b *testing.B) {
	for _, m := range methods {
		b.Run(m.name, func(b *testing.B) {
			var c comparison
			for b.Loop() {
				c = m.compare()
			}
			b.ReportMetric(float64(c.shapes), "shapes")
			b.ReportMetric(c.mean, "mean")
			b.ReportMetric(c.worstMean, "mean-worst")
			b.ReportMetric(c.least, "least")
			b.ReportMetric(c.worstLeast, "least-worst")
		})
	}
}
