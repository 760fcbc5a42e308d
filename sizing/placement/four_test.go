package placement

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A dressed is a tree and what hangs on it.
type dressed struct {
	name   string
	layout Layout
	pieces []shopping.Lot
}

// trees are 72: four heights, three shapes, three ways to stand, and two or three sizes
// of ball in as many types as the tree has feet and in four colors.
func trees() (all []dressed) {
	for _, height := range []units.Length{90 * units.Inch, 9 * units.Foot, 12 * units.Foot, 15 * units.Foot} {
		for _, base := range []units.Length{40, 52, 65} { // % of the height
			for _, e := range []sizing.Exposure{sizing.AllRound, sizing.AgainstWall, sizing.InCorner} {
				for _, sizes := range [][]units.Length{{4 * units.Inch, 5 * units.Inch / 2}, {11 * units.Inch / 2, 4 * units.Inch, 5 * units.Inch / 2}} {
					degrees, err := e.Degrees()
					if err != nil {
						panic(err)
					}
					types := int(height / units.Foot)
					each := int(math.Round(float64(types) * degrees / 360))
					// Of three sizes a fifth, three tenths and a half; of two a third and two thirds.
					var pieces []shopping.Lot
					left := []float64{1. / 3, 2. / 3}
					if len(sizes) == 3 {
						left = []float64{0.2, 0.3, 0.5}
					}
					for i := range types {
						k := 0
						for j := range left {
							if left[j] > left[k] {
								k = j
							}
						}
						left[k] -= 1 / float64(types)
						pieces = append(pieces, shopping.Lot{Item: shopping.Item{
							Kind: shopping.Ornament, Type: fmt.Sprint("type ", i), Size: sizes[k], Color: fmt.Sprint("color ", i%4),
						}, Quantity: shopping.Quantity{Pieces: each}})
					}
					all = append(all, dressed{
						fmt.Sprintf("%v, base %d %%, %v, %d sizes, %d x %d", height, base, e, len(sizes), types, each),
						Layout{Tree: sizing.Tree{Height: height, Base: height * base / 100, BareTip: height / 12, Handle: height / 12, Exposure: e}},
						pieces,
					})
				}
			}
		}
	}
	return all
}

// nearest returns the mean and the least distance to the nearest other one, as shares of the
// hexagonal bound for so many on f.
func nearest(f surface, at []vec) (mean, least float64) {
	least = math.Inf(1)
	for i, u := range at {
		d := math.Inf(1)
		for j, v := range at {
			if i != j {
				d = min(d, dist2(u, v))
			}
		}
		d = math.Sqrt(d) / f.bound(len(at))
		mean += d / float64(len(at))
		least = min(least, d)
	}
	return mean, least
}

// A figure is how even a tree is.
type figure struct {
	mean, least           float64    // of the whole
	classMean, classLeast [3]float64 // the worst of types, colors and sizes, of five or more
	eighthLow, eighthHigh float64    // the least and the most in an eighth of the surface, as a share of what it should be
	row                   int        // the most whose heights are within an inch
	line                  int        // the most in a row that is seen as one: side by side, within an inch of one height
	sorted                bool       // larger ones are lower, on average
}

func measure(t testing.TB, d dressed) figure {
	s, err := d.layout.stand("")
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.layout.arrange("", d.pieces)
	if err != nil {
		t.Fatal(d.name, err)
	}
	var fig figure
	at := make([]vec, len(a.spots))
	var eighths [8]float64
	heights := make([]float64, len(a.spots)) // in inches
	height := map[units.Length][2]float64{}
	classes := [3]map[any][]vec{{}, {}, {}}
	for i, p := range a.spots {
		at[i] = s.at(p)
		share := (p.slant*p.slant - s.top*s.top) / (s.bottom*s.bottom - s.top*s.top)
		eighths[min(int(share*8), 7)]++
		heights[i] = p.slant * s.cos * d.layout.Tree.Height.In(units.Inch)
		item := d.pieces[a.who[i]].Item
		h := height[item.Size]
		height[item.Size] = [2]float64{h[0] + heights[i], h[1] + 1}
		for l, key := range []any{item.Type, item.Color, item.Size} {
			classes[l][key] = append(classes[l][key], at[i])
		}
	}
	fig.mean, fig.least = nearest(s.surface, at)
	for l := range classes {
		fig.classMean[l], fig.classLeast[l] = 9, 9
		for _, at := range classes[l] {
			if len(at) >= 5 {
				mean, least := nearest(s.surface, at)
				fig.classMean[l] = min(fig.classMean[l], mean)
				fig.classLeast[l] = min(fig.classLeast[l], least)
			}
		}
	}
	fig.eighthLow = slices.Min(eighths[:]) / float64(len(at)) * 8
	fig.eighthHigh = slices.Max(eighths[:]) / float64(len(at)) * 8
	slices.Sort(heights)
	for i := range heights {
		n := 0
		for i+n < len(heights) && heights[i+n]-heights[i] <= 1 {
			n++
		}
		fig.row = max(fig.row, n)
	}
	fig.line = line(at, d.layout.Tree.Height.In(units.Inch), s.bound(len(at)))
	fig.sorted = true
	for s, x := range height {
		for t, y := range height {
			if s > t && x[0]/x[1] <= y[0]/y[1] {
				fig.sorted = false
			}
		}
	}
	return fig
}

// line returns the most of at, on a tree so many inches high, that are side by side, each within
// 1.3 times the bound of the last, and within an inch of one height. From 30 ft an inch is a
// sixth of a degree: what is farther up or down, beside the next, is seen to be.
func line(at []vec, inches, bound float64) (most int) {
	for _, u := range at {
		// Those no more than an inch below u, and of them the largest group that hangs together.
		var left []vec
		for _, v := range at {
			if down := (u.z - v.z) * inches; down >= 0 && down <= 1 {
				left = append(left, v)
			}
		}
		for len(left) > 0 {
			group := left[:1:1]
			left = left[1:]
			for i := 0; i < len(group); i++ {
				left = slices.DeleteFunc(left, func(v vec) bool {
					next := dist2(group[i], v) < 1.69*bound*bound
					if next {
						group = append(group, v)
					}
					return next
				})
			}
			most = max(most, len(group))
		}
	}
	return most
}

// The bars: the whole as even as it was before sizes were, each type, color and size at
// least 0.65 of its own hexagonal bound on average and no two nearer than half of it, no
// eighth of the surface under 0.6 or over 1.4 of its share, on a 9 ft tree no more than four
// within an inch of one height, no row that is seen from 30 ft, and larger ones lower.
func TestFourTimesEven(t *testing.T) {
	t.Parallel()
	// Of the 72, the least even by each bar.
	some := []int{0, 18, 19, 31, 36, 37, 54, 55, 59, 60, 61}
	if testing.Short() {
		some = some[:1]
	}
	for i, d := range trees() {
		if !Every && !slices.Contains(some, i) {
			continue
		}
		fig := measure(t, d)
		bad := fig.mean < 0.958 || fig.least < 0.926 || fig.eighthLow < 0.6 || fig.eighthHigh > 1.4 || !fig.sorted
		for l := range fig.classMean {
			bad = bad || fig.classMean[l] < 0.65 || fig.classLeast[l] < 0.5
		}
		bad = bad || fig.line > 4 || fig.row > 4 && d.layout.Tree.Height == 9*units.Foot
		if bad {
			t.Errorf("%s: %+v", d.name, fig)
		}
	}
}
