package intprog

import "math"

// cuts returns rows that follow from single rows for whole numbers, and that the values
// of the tableau break. With u = x - lo, or hi - x where that is nearer, a row says
// Σ a·u ≥ b, and with a divisor d and r = b mod d > 0 it follows that
//
//	Σ (⌊a/d⌋·r + min(r, a mod d))·u ≥ r·⌈b/d⌉
func (s *search) cuts() []Row {
	var more []Row
	type entry struct {
		a    int64
		flip bool
		u    float64
	}
	const most = 1 << 30
	for i := range s.rows {
		r := &s.rows[i]
		if s.t.place[s.t.n+i] < 0 && s.t.at[s.t.n+i] > float64(1e-6*(1+math.Abs(float64(r.Least)))) {
			continue // it does not bind
		}
		entries := make([]entry, len(r.Col))
		b := r.Least
		var divisors []int64
		for k, j := range r.Col {
			v := s.t.value(j)
			e := entry{a: r.Coef[k]}
			if e.flip = float64(s.hi[j])-v < v-float64(s.lo[j]); e.flip {
				b -= e.a * s.hi[j]
				e.a, e.u = -e.a, float64(s.hi[j])-v
			} else {
				b -= e.a * s.lo[j]
				e.u = v - float64(s.lo[j])
			}
			entries[k] = e
			if f := v - math.Floor(v); f > 1e-4 && f < 1-1e-4 && e.a != 0 {
				d := max(e.a, -e.a)
				known := d < 2
				for _, o := range divisors {
					known = known || o == d
				}
				if !known && len(divisors) < 8 {
					divisors = append(divisors, d)
				}
			}
		}
		var best Row
		far := 1e-4
		for _, d := range divisors {
			rest := mod(b, d)
			if rest == 0 {
				continue
			}
			round := func(a int64) int64 { return (a-mod(a, d))/d*rest + min(rest, mod(a, d)) }
			lhs, norm := 0.0, 0.0
			least := rest * ((b-rest)/d + 1)
			large := least > most || least < -most
			for _, e := range entries {
				g := round(e.a)
				large = large || g > most || g < -most
				lhs += float64(float64(g) * e.u)
				norm += float64(float64(g) * float64(g))
			}
			if large || norm == 0 {
				continue
			}
			if v := (float64(least) - lhs) / math.Sqrt(norm); v > far {
				far = v
				best = Row{Least: least}
				common := int64(0)
				for k, e := range entries {
					g := round(e.a)
					if g == 0 {
						continue
					}
					common = gcd(common, max(g, -g))
					j := r.Col[k]
					if e.flip { // g·(hi - x)
						best.Least -= g * s.hi[j]
						g = -g
					} else {
						best.Least += g * s.lo[j]
					}
					best.Col, best.Coef = append(best.Col, j), append(best.Coef, g)
				}
				if common > 1 {
					for k := range best.Coef {
						best.Coef[k] /= common
					}
					best.Least /= common // without a rest: the column that d is of has rest or -rest
				}
			}
		}
		if best.Col != nil {
			more = append(more, best)
		}
	}
	if room := MaxCells/len(s.Cost) - len(s.rows); len(more) > room {
		more = more[:max(0, room)]
	}
	return more
}

// mod returns a mod d, from 0 to d-1.
func mod(a, d int64) int64 {
	if a %= d; a < 0 {
		a += d
	}
	return a
}
