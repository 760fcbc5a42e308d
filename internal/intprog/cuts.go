package intprog

import (
	"cmp"
	"math"
	"slices"
)

// cuts returns rows that follow from single rows for whole numbers, and that the values
// of the tableau break. With u = x - lo, or hi - x where that is nearer, a row says
// Σ a·u ≥ b, and with a divisor d and r = b mod d > 0 it follows that
//
//	Σ (⌊a/d⌋·r + min(r, a mod d))·u ≥ r·⌈b/d⌉
func (s *search) cuts() []Row {
	var more []Row
	*s.effort -= int64(len(s.t.col) / 2)
	type entry struct {
		a    int64
		flip bool
		u    float64
	}
	var entries []entry
	var divisors []int64
	for i := range s.rows {
		r := &s.rows[i]
		if s.t.slack[i] > float64(1e-6*(1+math.Abs(float64(r.Least)))) {
			continue // it does not bind
		}
		entries, divisors = entries[:0], divisors[:0]
		b := r.Least
		for k, j := range r.Col {
			v := s.t.at[j]
			e := entry{a: r.Coef[k]}
			if e.flip = float64(s.hi[j])-v < v-float64(s.lo[j]); e.flip {
				b -= e.a * s.hi[j]
				e.a, e.u = -e.a, float64(s.hi[j])-v
			} else {
				b -= e.a * s.lo[j]
				e.u = v - float64(s.lo[j])
			}
			entries = append(entries, e)
			if d := abs(e.a); d != 0 && split(v, 1e-4) && len(divisors) != 8 && !slices.Contains(divisors, d) {
				divisors = append(divisors, d)
			}
		}
		best, far := int64(0), 1e-4 // the divisor whose row is broken most
		for _, d := range divisors {
			rest := mod(b, d)
			if rest == 0 {
				continue
			}
			lhs, norm := 0.0, 0.0
			least := rest * ((b-rest)/d + 1)
			large := abs(least)
			for _, e := range entries {
				g := round(e.a, d, rest)
				large = max(large, abs(g))
				lhs += float64(float64(g) * e.u)
				norm += float64(float64(g) * float64(g))
			}
			if large > largest || norm == 0 {
				continue
			}
			if v := (float64(least) - lhs) / math.Sqrt(norm); v > far {
				best, far = d, v
			}
		}
		if best == 0 {
			continue
		}
		rest, common := mod(b, best), int64(0)
		made := Row{Least: rest * ((b-rest)/best + 1)}
		for k, e := range entries {
			g := round(e.a, best, rest)
			if g == 0 {
				continue
			}
			common = gcd(common, abs(g))
			j := r.Col[k]
			if e.flip { // g·(hi - x)
				made.Least -= g * s.hi[j]
				g = -g
			} else {
				made.Least += g * s.lo[j]
			}
			made.Col, made.Coef = append(made.Col, j), append(made.Coef, g)
		}
		for k := range made.Coef {
			made.Coef[k] /= common
		}
		made.Least /= common // without a rest: the column that the divisor is of has rest or -rest
		more = append(more, made)
	}
	more = append(more, s.gomory()...)
	return s.fit(more)
}

// fit returns as many of more rows as there is room for.
func (s *search) fit(more []Row) []Row {
	room := MaxCells/len(s.Cost) - len(s.rows)
	return more[:max(0, min(len(more), room))]
}

// round returns ⌊a/d⌋·rest + min(rest, a mod d).
func round(a, d, rest int64) int64 {
	m := mod(a, d)
	return (a-m)/d*rest + min(rest, m)
}

// split reports whether a value is further than that from whole.
func split(v, from float64) bool { return math.Abs(v-math.Round(v)) > from }

// mod returns a mod d, from 0 to d-1.
func mod(a, d int64) int64 {
	if a %= d; a < 0 {
		a += d
	}
	return a
}

const (
	largest = 1 << 30 // the largest number in a row that follows
	fine    = 1 << 14 // the divisor of sums of rows
	wide    = 1 << 16 // how much larger than the least of its coefficients a row may be
)

// gomory returns rows that follow from sums of the tight rows, one for each basic column that is not
// whole. Weighted by its entries of the inverse, times fine and rounded to whole numbers, the rows and their
// slacks come to an equation with the column times fine in it; with fine for the divisor
// it is rounded as a single row is, and the slacks are replaced by their rows.
func (s *search) gomory() []Row {
	t := s.t
	*s.effort -= int64(len(t.basic)) * int64(len(s.Cost)+len(t.col)) / 8
	type found struct {
		row Row
		far float64
	}
	var all []found
	sum := make([]int64, len(s.Cost))
	weights := make([]int64, len(t.tight))
	far := make([]bool, len(s.Cost)) // which columns are nearer to their upper bound
	for j := range s.Cost {
		far[j] = float64(s.hi[j])-t.at[j] < t.at[j]-float64(s.lo[j])
	}
	for c, j := range t.basic {
		if !split(t.at[j], 0.01) {
			continue
		}
		clear(sum)
		b, size := int64(0), 0.0 // none of the sums below is more than twice the size and fine
		for r, w := range t.line(c) {
			i := t.tight[r]
			weight := math.Round(float64(float64(w*t.unit[i]) * fine))
			size += math.Abs(float64(weight * t.reach[i]))
			weights[r] = int64(weight)
		}
		if size > maxSum {
			continue
		}
		for r, w := range weights {
			b += s.rows[t.tight[r]].addTo(sum, w)
		}
		// From the nearer bound of each column.
		for col, a := range sum {
			if far[col] {
				b -= a * s.hi[col]
				sum[col] = -a
			} else {
				b -= a * s.lo[col]
			}
		}
		rest := mod(b, fine)
		if rest < fine/64 || rest > fine-fine/64 {
			continue
		}
		least := rest * ((b-rest)/fine + 1)
		for col, a := range sum {
			if a == 0 {
				continue
			}
			g := round(a, fine, rest)
			if far[col] {
				least -= g * s.hi[col]
				g = -g
			} else {
				least += g * s.lo[col]
			}
			sum[col] = g
		}
		for r, w := range weights {
			least += s.rows[t.tight[r]].addTo(sum, round(-w, fine, rest))
		}
		lhs, norm, smallest, entries := 0.0, 0.0, int64(largest), 0
		large := abs(least)
		for col, g := range sum {
			if g == 0 {
				continue
			}
			entries++
			large, smallest = max(large, abs(g)), min(smallest, abs(g))
			lhs += float64(float64(g) * t.at[col])
			norm += float64(float64(g) * float64(g))
		}
		if large > largest || norm == 0 || math.Sqrt(norm) > float64(wide*float64(smallest)) {
			continue
		}
		v := (float64(least) - lhs) / math.Sqrt(norm)
		if v <= 1e-3 {
			continue
		}
		r := Row{Col: make([]int, 0, entries), Coef: make([]int64, 0, entries), Least: least}
		for col, g := range sum {
			if g != 0 {
				r.Col, r.Coef = append(r.Col, col), append(r.Coef, g)
			}
		}
		all = append(all, found{r, v})
	}
	slices.SortStableFunc(all, func(a, b found) int { return cmp.Compare(b.far, a.far) })
	var rows []Row
	for _, f := range all[:min(len(all), 10)] {
		rows = append(rows, f.row)
	}
	return rows
}

// addTo adds a row so many times to the sum of others, and returns what it adds to their least.
func (r *Row) addTo(sum []int64, times int64) int64 {
	if times != 0 {
		for k, col := range r.Col {
			sum[col] += times * r.Coef[k]
		}
	}
	return times * r.Least
}
