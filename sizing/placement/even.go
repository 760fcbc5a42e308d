package placement

import (
	"cmp"
	"math"
	"slices"

	"example.com/fircone/internal/elem"
)

// The relaxation pushes apart what is closer than a target, which is a share of
// the hexagonal bound. It begins above what can be reached, so that the pattern
// gives way as a whole, and ends at what can.
const (
	firstTarget = 0.985
	lastTarget  = 0.96
	sweeps      = 60
	manySweeps  = 30     // where honeycombs are so large that few places are near a cut
	push        = 0.8    // of the overlap, by each of the two in turn
	from, until = 10, 40 // the sweeps that also draw places out of rows
	beyond      = 2      // of the bound: how far past the edges a pattern goes on

	fewest    = 24     // places; fewer begin on a spiral between the edges
	spirals   = 60     // fewer are tried on one as well
	patterns  = 64     // which are cut out of a honeycomb at the most,
	relaxed   = 14     // and of which so many are relaxed, and more while none is fair,
	effort    = 12_000 // but so many places of all patterns together at the most;
	batches   = 3      // and where that leaves none fair, so many times over
	manySpots = 4_000
)

// levelings are how much the places are drawn toward even heights, in turn; and where
// there are many.
var levelings = [...]float64{0.3, 0.05}

const manyLeveling = 0.02

// A pattern is places that are being pushed apart: those of a surface, and those past
// its upper and lower edge, which keep the others from lining up there.
type pattern struct {
	spots    []spot
	own      []bool // on the surface
	spacing  float64
	leveling float64 // how far toward its height each place moves in one sweep
}

// even returns n places of f, as far apart as they go, none of them within
// margin of the edges at the top and the bottom.
//
// Laid flat, a cone is a sector of a disk, and the best pattern on a plane is a
// honeycomb. So honeycombs, turned and shifted this way and that, are cut to the
// sector with just n points on it, as sparse as that can be; those with the widest
// spacing are relaxed, mostly where the two sides of the cut meet; and the best of
// them is taken, by the bars that the tests hold. While it is not fair, more are tried.
func (f surface) even(n int, margin float64) []spot {
	var cuts []pattern
	var best []spot
	least := math.Inf(1)
	if n < spirals {
		best = f.relax(f.wound(n, margin), n, margin, f.inset(n, f.bound(n)))
		if n < fewest {
			return best
		}
		least = f.fault(best)
	}
	for batch := range batches {
		cuts = cuts[:0]
		for k := 0; k < patterns && (k < effort/n || len(cuts) == 0); k++ {
			if p, ok := f.cut(n, batch*patterns+k); ok {
				cuts = append(cuts, p)
			}
		}
		slices.SortStableFunc(cuts, func(p, q pattern) int { return cmp.Compare(q.spacing, p.spacing) })
		cuts = cuts[:min(len(cuts), max(effort/3/n, 1))]
		for i, p := range cuts {
			if i >= relaxed && least <= f.fair(n) {
				break
			}
			p.leveling = levelings[i%len(levelings)]
			if n > manySpots {
				p.leveling = manyLeveling
			}
			spots := f.relax(p, n, margin, 0)
			if fault := f.fault(spots); fault < least {
				best, least = spots, fault
			}
		}
		if least <= f.fair(n) || n > effort/3/patterns {
			break
		}
	}
	if best == nil {
		return f.relax(f.wound(n, margin), n, margin, f.inset(n, f.bound(n)))
	}
	return best
}

// higher puts what is higher up first, and what is as high by azimuth.
func higher(p, q spot) int {
	if p.slant != q.slant {
		return cmp.Compare(p.slant, q.slant)
	}
	return cmp.Compare(p.azimuth, q.azimuth)
}

// fair returns the fault of n places up to which no further patterns are tried. Few
// places are never without fault: each is a large share of its eighth.
func (f surface) fair(n int) float64 { return max(0.04, 4/float64(n)) }

// wound returns n places on the even spiral, none past the edges.
func (f surface) wound(n int, margin float64) pattern {
	p := pattern{spots: make([]spot, n), own: slices.Repeat([]bool{true}, n)}
	for k := range n {
		p.spots[k] = f.spiral(k, n)
		p.spots[k].slant = min(max(p.spots[k].slant, f.top+margin), f.bottom-margin)
	}
	return p
}

// cut returns honeycomb k with n points on f and some past its edges, if there is one.
func (f surface) cut(n, k int) (pattern, bool) {
	// The golden ratio and two that go with it keep the turns and shifts apart.
	part := func(x float64) float64 {
		x = float64(float64(k) * x)
		return x - math.Floor(x)
	}
	sin, cos := elem.Sincos(float64(part(0.6180339887498949) * math.Pi / 3))
	right, down := part(0.7548776662466927), part(0.5698402909980532)

	// In units of the spacing, which is within a quarter of the bound.
	d := f.bound(n)
	closest, widest := float64(0.8*d), float64(1.25*d)
	reach := (f.bottom + float64(beyond*d)) / closest
	half := float64(f.arc * f.sin / 2)
	const row = 0.8660254037844386 // √3/2
	var points []spot              // slant, and angle on the flat sector
	rows := int(reach/row) + 2
	for j := -rows; j <= rows; j++ {
		b := float64((float64(j) + down) * row)
		wide := math.Sqrt(max(float64(reach*reach)-float64(b*b), 0))
		shift := right + float64(0.5*float64(j&1))
		for i := int(math.Floor(-wide - shift)); i <= int(wide-shift)+1; i++ {
			a := float64(i) + shift
			x, y := float64(a*cos)-float64(b*sin), float64(a*sin)+float64(b*cos)
			if half < math.Pi/2 && y < 0 {
				continue
			}
			if angle := elem.Atan2(x, y); -half <= angle && angle <= half {
				points = append(points, spot{math.Sqrt(float64(x*x) + float64(y*y)), angle})
			}
		}
	}
	slices.SortFunc(points, higher)
	before := func(slant float64) int {
		i, _ := slices.BinarySearchFunc(points, slant, func(p spot, slant float64) int { return cmp.Compare(p.slant, slant) })
		return i
	}
	count := func(spacing float64) int { return before(f.bottom/spacing) - before(f.top/spacing) }
	for range 50 {
		if middle := (closest + widest) / 2; count(middle) >= n {
			closest = middle
		} else {
			widest = middle
		}
	}
	p := pattern{spacing: closest}
	from, to := before(f.top/closest), before(f.bottom/closest)
	if to-from != n {
		return pattern{}, false
	}
	for i, q := range points {
		slant := float64(q.slant * closest)
		if slant < f.top-float64(beyond*d) || slant > f.bottom+float64(beyond*d) {
			continue
		}
		p.spots = append(p.spots, spot{slant, q.azimuth / f.sin})
		p.own = append(p.own, from <= i && i < to)
	}
	return p, true
}

// relax returns the n places of p that are on f, pushed apart, with margin to the
// edges at the top and the bottom, or inset if that is more.
//
// Each sweep visits the places in order and moves each along the surface, out of
// reach of those that are nearer than the target. It is the projection method
// for packing disks, with the disks growing at first; a fixed number of sweeps
// over a grid takes time proportional to n.
func (f surface) relax(p pattern, n int, margin, inset float64) []spot {
	d := f.bound(n)
	half := (f.bottom - f.top) / 2
	lo, hi := f.top+min(max(inset, margin), half), f.bottom-min(max(inset, margin), half)
	lo = max(lo, min(d/4, hi)) // at the very tip there is no way round
	side := min(f.inset(n, d), half)
	wide := f
	wide.top, wide.bottom = max(f.top-float64(beyond*d), 0), f.bottom+float64(beyond*d)
	spots := p.spots
	at, turned := make([]vec, len(spots)), make([]turn, len(spots))
	for i := range spots {
		spots[i].slant = max(spots[i].slant, d/8)
		turned[i] = turnTo(spots[i].azimuth)
		at[i] = f.turnedAt(spots[i].slant, turned[i])
	}
	cells := newIndex(wide, float64(firstTarget*d))
	var spans [9]span
	placed := make([]vec, len(spots)) // at, in the order of the cells
	slot := make([]int32, len(spots)) // of each place in that
	own := make([]spot, 0, n)         // with numbers as azimuths
	level := make([]float64, n)       // the height at which each has its share of the surface, from the top
	for k := range level {
		level[k] = f.share(float64(k)+0.5, n)
	}
	sweeps := sweeps
	if n > manySpots {
		sweeps = manySweeps
	}
	for sweep := range sweeps {
		if from <= sweep && sweep < until {
			own = own[:0]
			for i, s := range spots {
				if p.own[i] {
					own = append(own, spot{s.slant, float64(i)})
				}
			}
			slices.SortFunc(own, higher)
			// A little toward those heights: out of the rows that lie along the edges.
			for k, h := range own {
				slant := h.slant + float64(p.leveling*(level[k]-h.slant))
				slant = min(max(slant, lo), hi)
				i := int(h.azimuth)
				spots[i].slant, at[i] = slant, f.turnedAt(slant, turned[i])
			}
		}
		cells.fill(spots)
		for k, i := range cells.items {
			placed[k], slot[i] = at[i], int32(k)
		}
		target := float64(d * (firstTarget + float64((lastTarget-firstTarget)*float64(sweep)/float64(sweeps-1))))
		near := float64(target * target)
		for i, s := range spots {
			u := at[i]
			var x, y, z float64 // the sum of pushes
			k := cells.spans(&spans, int(cells.rows[i]), cells.turns[i])
			for _, span := range spans[:k] {
				for _, v := range placed[span.from:span.to] {
					square := dist2(u, v)
					if square >= near || square == 0 { // itself, for one
						continue
					}
					dist := math.Sqrt(square)
					w := (target - dist) / dist
					x += float64(w * (u.x - v.x))
					y += float64(w * (u.y - v.y))
					z += float64(w * (u.z - v.z))
				}
			}
			if x == 0 && y == 0 && z == 0 && sweep > 0 {
				continue
			}
			s = f.move(s, u, vec{x, y, z})
			switch {
			case p.own[i]:
				s.slant = min(max(s.slant, lo), hi)
			case spots[i].slant > hi:
				s.slant = min(max(s.slant, hi), wide.bottom)
			default:
				s.slant = max(min(s.slant, lo), wide.top, d/8)
			}
			if !f.round {
				half := max(f.arc/2-side/(s.slant*f.sin), 0)
				s.azimuth = min(max(s.azimuth, -half), half)
			}
			turned[i] = turnTo(s.azimuth)
			spots[i], at[i] = s, f.turnedAt(s.slant, turned[i])
			placed[slot[i]] = at[i]
		}
	}
	found := make([]spot, 0, n)
	for i, s := range spots {
		if p.own[i] {
			found = append(found, s)
		}
	}
	return found
}

// fault returns what is wrong with spots: how far the distances to the nearest other
// one fall short, on average and at the least; how many are in a row; and how uneven
// the eighths of the surface are from the top down.
func (f surface) fault(spots []spot) float64 {
	n := float64(len(spots))
	d := f.bound(len(spots))
	cells := newIndex(f, float64(1.3*d))
	cells.fill(spots)
	at := make([]vec, len(spots))
	for i, p := range spots {
		at[i] = f.at(p)
	}
	var near []int32
	var eighths [8]float64
	slants := make([]float64, len(spots))
	sum, least := 0.0, math.Inf(1)
	for i, p := range spots {
		nearest := float64(1.69 * d * d)
		near = cells.near(near[:0], p)
		for _, j := range near {
			if int(j) != i {
				nearest = min(nearest, dist2(at[i], at[j]))
			}
		}
		dist := math.Sqrt(nearest) / d
		sum += dist
		least = min(least, dist)
		share := (p.slant - f.top) * (p.slant + f.top) / ((f.bottom - f.top) * (f.bottom + f.top))
		eighths[min(int(share*8), 7)]++
		slants[i] = p.slant
	}
	slices.Sort(slants)
	row := 0
	for i := range slants {
		k := i
		for k < len(slants) && slants[k]-slants[i] <= 0.15*d { // 2 in on a 9 ft tree
			k++
		}
		row = max(row, k-i)
	}
	fault := float64(30*max(0.945-sum/n, 0)) + float64(10*max(0.960-sum/n, 0)) + float64(0.2*max(1.02-sum/n, 0)) + float64(5*max(0.93-least, 0)) + float64(0.05*max(float64(row)*d/(f.arc*f.sin*f.bottom)/.173-1.45, 0))
	for _, e := range eighths {
		fault += max(math.Abs(float64(e/n*8)-1)-0.3, 0)
	}
	return fault
}

// move returns p, which is at u, moved along f by push times what of v lies in the
// surface.
func (f surface) move(p spot, u, v vec) spot {
	r := float64(p.slant * f.sin)
	sin, cos := u.x/r, -u.y/r
	down := float64(f.sin*(float64(v.x*sin)-float64(v.y*cos))) - float64(f.cos*v.z)
	side := float64(v.x*cos) + float64(v.y*sin)
	p.slant += float64(push * down)
	p.azimuth += float64(push * side / r)
	switch {
	case p.azimuth > math.Pi:
		p.azimuth -= 2 * math.Pi
	case p.azimuth < -math.Pi:
		p.azimuth += 2 * math.Pi
	}
	return p
}

// inset returns how far n places, about d apart, stay off the edges. Points that
// push each other end up in rows along the edges, and a row on the very edge has
// twice its share of the surface. So the rows there are drawn in, half a row at
// the most, where there are so many points to a row that it would show. The row
// at the base, m of n points, puts the share of the places below it and the
// share of the surface there up to m/n apart, and the Kolmogorov-Smirnov test
// rejects at 1.36/√n (a level of 5 %); with what follows the places pass it.
func (f surface) inset(n int, d float64) float64 {
	const row = 0.8660254037844386 // of d, √3/2
	m := f.arc * f.sin * f.bottom / d
	return float64(row * d * min(max(1-(float64(1.15*math.Sqrt(float64(n)))+1.4)/m, 0), 0.5))
}
