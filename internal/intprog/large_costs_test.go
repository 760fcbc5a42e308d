package intprog

import (
	"math/rand/v2"
	"testing"
)

// Costs so large that the bound of the root does not fit are still compared with every x,
// and what is said to be proved is the least.
func TestSolveLargeCosts(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 3))
	bad := 0
	rounds := 20_000
	if testing.Short() {
		rounds = 2_000
	}
	for range rounds {
		p := &Problem{Cost: []int64{1<<54 + r.Int64N(1<<57)}, Lo: []int64{0}, Hi: []int64{4}}
		heavy := 3 + r.Int64N(2000)
		fill, few := Row{Col: []int{0}, Coef: []int64{1 + r.Int64N(3)}}, Row{Least: -1 - r.Int64N(3)}
		for j := 1; j < 5; j++ {
			c := r.Int64N(9)
			if r.IntN(3) == 0 {
				c = r.Int64N(1 << 56)
			}
			p.Cost, p.Lo, p.Hi = append(p.Cost, c), append(p.Lo, 0), append(p.Hi, 1+r.Int64N(2))
			fill.Col, fill.Coef = append(fill.Col, j), append(fill.Coef, heavy-r.Int64N(2))
			few.Col, few.Coef = append(few.Col, j), append(few.Coef, -1)
		}
		fill.Least = -few.Least*heavy*r.Int64N(2) + heavy*r.Int64N(3) + r.Int64N(5) - 1
		p.Rows = []Row{fill, few}
		if !p.fits() {
			continue
		}
		want, ok := brute(p)
		effort := int64(1_000_000)
		got := Solve(p, nil, &effort)
		if got.None == ok || ok && (got.X == nil || got.Cost != want || got.Bound != want) {
			bad++
		}
	}
	if bad > 0 {
		t.Errorf("%d of 20,000 wrong", bad)
	}
}
