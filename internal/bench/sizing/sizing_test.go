// Package sizing measures example.com/fircone/sizing beside numerical
// quadrature by gonum, in the same run:
//
//	go test -run Rival -bench . ./sizing
package sizing

import (
	"fmt"
	"math"
	"sync"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

const (
	ft = units.Foot
	in = units.Inch
)

// tree is the reference tree, with and without a bare tip.
func tree(bareTip units.Length) sizing.Tree {
	return sizing.Tree{Height: 7 * ft, Base: 7 * ft * 65 / 100, BareTip: bareTip}
}

// Both rivals call gonum's quad.Fixed as its users do: with a closure to integrate,
// n nodes, no rule, which is the one of Gauss and Legendre with its nodes worked out
// anew in each call, and no goroutines. The closed form is called as ours do, its
// checks of the cone and the spacing included.

// quadrature is the leaner rival: the length of the curve, ∫√(1 + u²) over the slope,
// for one who has unrolled the cone and so is half way to the closed form.
func quadrature(c sizing.Tree, spacing units.Length, n int) float64 {
	h, r := float64(c.Height), float64(c.Base)/2
	s := math.Hypot(h, r)
	k := 2 * math.Pi * r / (float64(spacing) * s)
	return quad.Fixed(func(x float64) float64 {
		return math.Sqrt(1 + k*k*x*x)
	}, s*float64(c.BareTip)/h, s, n, nil, 0)
}

// inSpace is the rival for one who has not unrolled the cone, but takes the curve in
// space as it is: its speed, by the angle.
func inSpace(c sizing.Tree, spacing units.Length, n int) float64 {
	h, r := float64(c.Height), float64(c.Base)/2
	s := math.Hypot(h, r)
	per := float64(spacing) / (2 * math.Pi)
	return quad.Fixed(func(x float64) float64 {
		sin, cos := math.Sincos(x)
		dx, dy, dz := per*r/s*(cos-x*sin), per*r/s*(sin+x*cos), per*h/s
		return math.Sqrt(dx*dx + dy*dy + dz*dz)
	}, s*float64(c.BareTip)/h/per, s/per, n, nil, 0)
}

// fewest returns the fewest nodes from which on the rival stays within 1e-12.
func fewest(c sizing.Tree, spacing units.Length) int {
	want := quadrature(c, spacing, 1000)
	n := 600
	for ; n > 1 && math.Abs(quadrature(c, spacing, n-1)/want-1) <= 1e-12; n-- {
	}
	return n
}

var cases = []struct {
	name    string
	cone    sizing.Tree
	spacing units.Length
}{
	{"garland 10 in", tree(0), 10 * in},
	{"lights 4 in", tree(0), 4 * in},
	{"lights 1 in", tree(0), 1 * in},
	{"lights half in", tree(0), in / 2},
	{"bare tip, garland 10 in", tree(1 * ft), 10 * in},
	{"bare tip, lights 1 in", tree(1 * ft), 1 * in},
}

// The rival is also a check from outside.
func TestRivalAgrees(t *testing.T) {
	for _, c := range cases {
		got, err := c.cone.SpiralLength(c.spacing)
		want := quadrature(c.cone, c.spacing, fewest(c.cone, c.spacing))
		space := inSpace(c.cone, c.spacing, fewest(c.cone, c.spacing))
		if err != nil || math.Abs(float64(got)-want) > 1+2e-12*want || math.Abs(float64(got)-space) > 1+2e-12*want {
			t.Errorf("%s: %d nm, %v; quadrature %.1f nm and %.1f nm", c.name, got, err, want, space)
		}
	}
}

func BenchmarkSpiralLength(b *testing.B) {
	for _, c := range cases {
		n := fewest(c.cone, c.spacing)
		b.Run(fmt.Sprintf("%s/quadrature with %d nodes", c.name, n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				quadrature(c.cone, c.spacing, n)
			}
		})
		b.Run(fmt.Sprintf("%s/quadrature in space with %d nodes", c.name, n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				inSpace(c.cone, c.spacing, n)
			}
		})
		b.Run(c.name+"/closed form", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := c.cone.SpiralLength(c.spacing); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkSpacing(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tree(0).Spacing(63 * ft); err != nil {
			b.Fatal(err)
		}
	}
}

// sized is a whole tree: by rule and by shape, ornaments, lights and room. The
// season's cost is left out, since decimals allocate.
type sized struct {
	comparison sizing.Comparison
	mix        []shopping.Lot
	cover      float64
	load       lights.Load
	runs       int
	fit        sizing.Fit
	ladder     sizing.Ladder
}

var (
	rules = sizing.CommonPractice()
	look  = sizing.CommonLook()
	label = lights.Label{Lamps: 100, Length: 25 * ft, Power: 4800 * units.Milliwatt, EndToEnd: 8}
)

func size(t sizing.Tree) (s sized, err error) {
	if s.comparison, err = rules.Compare(look, t); err != nil {
		return s, err
	}
	if s.mix, err = rules.Mix(t, s.comparison.Shape[shopping.Ornament].Pieces); err != nil {
		return s, err
	}
	area, err := t.DressedArea()
	if err != nil {
		return s, err
	}
	if s.cover, err = sizing.Cover(s.mix, area); err != nil {
		return s, err
	}
	strings, err := label.For(s.comparison.Shape[shopping.Light])
	if err != nil {
		return s, err
	}
	if s.runs, err = strings.Runs(); err != nil {
		return s, err
	}
	if s.load, err = strings.Load(lights.Circuit{Volts: 120, Amperes: 15}); err != nil {
		return s, err
	}
	if s.fit, err = (sizing.Room{Ceiling: t.Height + 2*ft}).Fit(t); err != nil {
		return s, err
	}
	s.ladder, err = sizing.Room{Topper: 1 * ft}.Ladder(t)
	return s, err
}

// BenchmarkWholeTree is to be set against BenchmarkSpiralLength's closed form: a
// whole tree in less than the time of 50. Its two allocations are the lists that it returns.
func BenchmarkWholeTree(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := size(sizing.Tree{Height: 9 * ft, BareTip: 10 * in, Exposure: sizing.InCorner}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkTrees sizes a slice of trees, shared out to one goroutine or to two. The
// time for each tree is to be the same whatever the length of the slice, and on two
// processors nearly half of what it is on one.
func BenchmarkTrees(b *testing.B) {
	for _, n := range []int{10_000, 100_000, 1_000_000} {
		trees := make([]sizing.Tree, n)
		for i := range trees {
			trees[i] = sizing.Tree{Height: 5*ft + units.Length(i%120)*in, Taper: sizing.Taper(i % 2)}
		}
		lengths := make([]units.Length, n)
		for _, workers := range []int{1, 2} {
			b.Run(fmt.Sprintf("trees=%d/workers=%d", n, workers), func(b *testing.B) {
				for b.Loop() {
					var wg sync.WaitGroup
					for w := range workers {
						lo, hi := n*w/workers, n*(w+1)/workers
						wg.Go(func() {
							for i := lo; i < hi; i++ {
								s, err := size(trees[i])
								if err != nil {
									panic(err)
								}
								lengths[i] = s.comparison.Shape[shopping.Garland].Length
							}
						})
					}
					wg.Wait()
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/tree")
			})
		}
	}
}
