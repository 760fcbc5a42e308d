package placement

import (
	"math"

	"example.com/fircone/internal/elem"
)

// A surface is the dressed part of a cone, tip up, in units of the height of the
// tree, so that trees of one shape are computed with the same bits.
type surface struct {
	sin, cos    float64 // of the angle between the axis and the slope
	top, bottom float64 // the edges, as distances from the tip along the slope
	arc         float64 // how much of the way round is dressed, in radians
	round       bool    // all of it
}

// A spot is a point of a surface: its distance from the tip along the slope, and
// its azimuth in radians from the middle of the dressed arc.
type spot struct{ slant, azimuth float64 }

// A vec is a point in space. The tip is the origin, x points right, y away from
// the viewer, z up.
type vec struct{ x, y, z float64 }

// area returns the area of f.
func (f surface) area() float64 {
	return f.arc * f.sin * (f.bottom - f.top) * (f.bottom + f.top) / 2
}

// bound returns how far apart n points of f would be if each had six neighbors
// around it at that distance, the most that is possible.
func (f surface) bound(n int) float64 {
	return math.Sqrt(2 / math.Sqrt(3) * f.area() / float64(n))
}

// at returns where p is in space.
func (f surface) at(p spot) vec { return f.turnedAt(p.slant, turnTo(p.azimuth)) }

// A turn is the sine and the cosine of an azimuth.
type turn struct{ sin, cos float64 }

func turnTo(azimuth float64) turn {
	sin, cos := elem.Sincos(azimuth)
	return turn{sin, cos}
}

// turnedAt returns where the spot at a slant is in space, with the turn of its azimuth.
func (f surface) turnedAt(slant float64, t turn) vec {
	r := float64(slant * f.sin)
	return vec{float64(r * t.sin), float64(-r * t.cos), float64(-slant * f.cos)}
}

// dist2 returns the square of the distance from u to v.
func dist2(u, v vec) float64 {
	x, y, z := u.x-v.x, u.y-v.y, u.z-v.z
	return float64(x*x) + float64(y*y) + float64(z*z)
}

// spiral returns place k of n on a spiral with as much room from each turn to
// the next as from each place to the next. The places share the surface
// equally, as in Vogel's construction; what differs is that their azimuth
// follows the spiral, where Vogel turns by the golden angle.
//
// Where not all the way round is dressed, the turns are rows across the part
// that is.
func (f surface) spiral(k, n int) spot {
	slant := f.share(float64(k)+0.5, n)
	turns := (slant - f.top) / math.Sqrt(f.area()/float64(n))
	return spot{slant, float64(f.arc * (turns - math.Floor(turns) - 0.5))}
}

// share returns the slant above which the share k/n of the surface lies.
func (f surface) share(k float64, n int) float64 {
	return math.Sqrt(float64(f.top*f.top) + float64(k/float64(n)*(f.bottom-f.top)*(f.bottom+f.top)))
}

// A grid finds the points near a point. Its cells are at least a given size
// both ways, in rows round the surface, so that what is nearer than that is in
// the cell itself or in one of those that touch it.
type grid struct {
	surface
	size  float64
	first []int32 // the first cell of each row, and an end
}

func newGrid(f surface, size float64) grid {
	// More rows than the slope has sizes would be of no use, and fewer than a
	// million are enough for as many points.
	rows := int(math.Min((f.bottom-f.top)/size, 1e6)) + 1
	g := grid{f, size, make([]int32, 1, rows+1)}
	for row := range rows {
		// The least distance from a point of this row to the half-plane one
		// column away, across the axis, is lo·sin(2π/columns).
		lo := float64((f.top + float64(float64(row)*size)) * f.sin)
		columns := int32(2 * math.Pi * lo / size)
		for columns >= 5 && lo*elem.Sin(2*math.Pi/float64(columns)) < size {
			columns--
		}
		if columns < 5 {
			columns = 1
		}
		g.first = append(g.first, g.first[row]+columns)
	}
	return g
}

func (g grid) cells() int { return int(g.first[len(g.first)-1]) }

func (g grid) row(p spot) int {
	return min(max(int((p.slant-g.top)/g.size), 0), len(g.first)-2)
}

// turn returns how far round p is, from 0 to 1 with the seam at both.
func (p spot) turn() float64 { return p.azimuth/(2*math.Pi) + 0.5 }

// column returns the column of a row in which a turn is.
func (g grid) column(row int, turn float64) int {
	columns := int(g.first[row+1] - g.first[row])
	return min(max(int(turn*float64(columns)), 0), columns-1)
}

// An index is a grid with points in its cells.
type index struct {
	grid
	start []int32 // of each cell in items, and an end
	items []int32

	// Of each item, by its number.
	cells, rows []int32
	turns       []float64
}

func newIndex(f surface, size float64) *index {
	g := newGrid(f, size)
	return &index{grid: g, start: make([]int32, g.cells()+1)}
}

// fill puts the points of spots in their cells.
func (x *index) fill(spots []spot) {
	if len(x.items) != len(spots) {
		n := len(spots)
		x.items, x.cells, x.rows, x.turns = make([]int32, n), make([]int32, n), make([]int32, n), make([]float64, n)
	}
	clear(x.start)
	for i, p := range spots {
		row, turn := x.row(p), p.turn()
		c := x.first[row] + int32(x.column(row, turn))
		x.rows[i], x.turns[i], x.cells[i] = int32(row), turn, c
		x.start[c]++
	}
	sum := int32(0)
	for i := range x.start {
		sum += x.start[i]
		x.start[i] = sum // the end of the cell
	}
	for i := len(spots) - 1; i >= 0; i-- {
		c := x.cells[i]
		x.start[c]--
		x.items[x.start[c]] = int32(i)
	}
}

// A span is a part of the items of an index.
type span struct{ from, to int32 }

// spans returns where the points are that can be nearer to one in a row, so far round, than
// the size of the cells, as the first n of dst: those of its cell and of the ones around it.
func (x *index) spans(dst *[9]span, row int, turn float64) (n int) {
	for r := max(row-1, 0); r <= min(row+1, len(x.first)-2); r++ {
		first, columns := x.first[r], x.first[r+1]-x.first[r]
		if columns == 1 {
			dst[n] = span{x.start[first], x.start[first+1]}
			n++
			continue
		}
		c := min(max(int32(turn*float64(columns)), 0), columns-1)
		if c > 0 && c < columns-1 { // one after the other
			dst[n] = span{x.start[first+c-1], x.start[first+c+2]}
			n++
			continue
		}
		for _, k := range [...]int32{(c + columns - 1) % columns, c, (c + 1) % columns} {
			dst[n] = span{x.start[first+k], x.start[first+k+1]}
			n++
		}
	}
	return n
}

// near appends to dst the points that can be nearer to p than the size of the cells.
func (x *index) near(dst []int32, p spot) []int32 {
	var spans [9]span
	n := x.spans(&spans, x.row(p), p.turn())
	for _, s := range spans[:n] {
		dst = append(dst, x.items[s.from:s.to]...)
	}
	return dst
}

// inside appends to dst the points that can be nearer to p than reach.
func (x *index) inside(dst []int32, p spot, reach float64) []int32 {
	last := len(x.first) - 2
	from, to := x.row(spot{p.slant - reach, 0}), x.row(spot{p.slant + reach, 0})
	for row := max(from, 0); row <= min(to, last); row++ {
		first, columns := x.first[row], x.first[row+1]-x.first[row]
		// A chord is at least 2/π of its arc.
		r := float64(min(x.top+float64(float64(row)*x.size), p.slant) * x.sin)
		wide := columns
		if arc := float64(reach * math.Pi / 2); arc < float64(r*math.Pi) {
			wide = int32(float64(arc/r/(2*math.Pi)*float64(columns))) + 1
		}
		if 2*wide+1 >= columns {
			dst = append(dst, x.items[x.start[first]:x.start[first+columns]]...)
			continue
		}
		c := int32(x.column(row, p.turn()))
		for k := c - wide; k <= c+wide; k++ {
			cell := first + (k+columns)%columns
			dst = append(dst, x.items[x.start[cell]:x.start[cell+1]]...)
		}
	}
	return dst
}
