package cutting

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/fircone/internal/tally"
)

// someRolls returns pieces of some lengths up to longest, up to most of each, and rolls.
func someRolls(r *rand.Rand, kinds, most int, longest int64, rolls int) (lengths, demand []int64, all []Roll) {
	for len(lengths) < kinds {
		if l := 1 + r.Int64N(longest); !slices.Contains(lengths, l) {
			lengths = append(lengths, l)
			demand = append(demand, 1+r.Int64N(int64(most)))
		}
	}
	slices.Sort(lengths)
	slices.Reverse(lengths)
	free := r.IntN(8) == 0
	for range rolls {
		o := Roll{Length: longest/2 + 1 + r.Int64N(2*longest), Strands: 1 + r.Int64N(3)*r.Int64N(2), Limit: 1 << 50}
		o.Bulk = o.Length * o.Strands
		switch o.Cost = o.Bulk / 2; {
		case free:
			o.Cost = 0
		case r.IntN(3) == 0:
			o.Cost += r.Int64N(4)
		}
		if r.IntN(3) == 0 {
			o.Limit = 1 + r.Int64N(3)
		}
		if r.IntN(6) == 0 {
			o = Roll{Length: o.Length, Strands: 1, Limit: 1 + r.Int64N(2), Owned: true}
		}
		all = append(all, o)
	}
	return lengths, demand, all
}

// cuttingWork solves a problem and counts it.
func cuttingWork(c *tally.Tally, lengths, demand []int64, rolls []Roll, change func(*Cutter)) (*Cutter, int64) {
	solver, _ := newCutter(lengths, demand, rolls)
	if change != nil {
		change(solver)
	}
	began := solver.Effort
	bound := solver.Solve()
	c.Add(began-solver.Effort, bound, solver.Best, tally.Bit(solver.Short))
	c.Add(0, solver.Packs...)
	for _, p := range solver.Patterns {
		c.Add(0, append(p.Take, int64(p.Roll), p.Rolls)...)
	}
	return solver, bound
}

// checkBest compares a cutting with the least there is.
func checkBest(t *testing.T, lengths, demand []int64, rolls []Roll, c *Cutter, bound int64) {
	t.Helper()
	want, ok := bruteCut(lengths, demand, rolls)
	if ok == c.Short {
		t.Fatalf("%v of %v from %+v: short %t", demand, lengths, rolls, c.Short)
	}
	if !ok {
		return
	}
	var got [3]int64
	for i, n := range c.Packs {
		if r := rolls[i]; !r.Owned {
			got = [3]int64{got[0] + n*r.Cost, got[1] + n*r.Bulk, got[2] + n}
		}
	}
	if got != want || c.Best != bound {
		t.Errorf("%v of %v from %+v: got %v for %v, bound %d of %d, want %v", demand, lengths, rolls, c.Packs, got, bound, c.Best, want)
	}
}

func TestCuttingWork(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	c := tally.New()
	for range 250 {
		lengths, demand, rolls := someRolls(r, 2+r.IntN(2), 2, 12, 1+r.IntN(3))
		solver, bound := cuttingWork(c, lengths, demand, rolls, nil)
		checkBest(t, lengths, demand, rolls, solver, bound)
	}
	c.Check(t, counted[t.Name()])
}

// More pieces than can be tried one by one: what is proved is compared with what
// the search finds with the rolls in reverse.
func TestLargeCuttingWork(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	c := tally.New()
	for range 25 {
		lengths, demand, rolls := someRolls(r, 3+r.IntN(4), 6, 40, 2+r.IntN(3))
		solver, bound := cuttingWork(c, lengths, demand, rolls, func(c *Cutter) { c.Effort = 400_000 })
		slices.Reverse(rolls)
		again, other := cuttingWork(c, lengths, demand, rolls, func(c *Cutter) { c.Effort = 400_000 })
		if solver.Short != again.Short || bound > again.Best || other > solver.Best {
			t.Errorf("%v of %v from %+v: %d to %d, reversed %d to %d", demand, lengths, rolls, bound, solver.Best, other, again.Best)
		}
	}
	c.Check(t, counted[t.Name()])
}

// Any number of steps gives a bound that holds, and an answer no better than the
// best; here those about a point on the way.
func TestCuttingAtEveryEffort(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	c := tally.New()
	for range 10 {
		lengths, demand, rolls := someRolls(r, 3, 3, 12, 3)
		solver, _ := cuttingWork(c, lengths, demand, rolls, nil)
		if solver.Short {
			continue
		}
		from := r.Int64N(testWork - solver.Effort)
		for effort := from; effort < from+60; effort++ {
			hasty, bound := cuttingWork(c, lengths, demand, rolls, func(c *Cutter) { c.Effort = effort })
			if bound > solver.Best || hasty.Best < solver.Best || hasty.Short {
				t.Fatalf("%v of %v from %+v with %d: between %d and %d, not %d", demand, lengths, rolls, effort, bound, hasty.Best, solver.Best)
			}
		}
	}
	c.Check(t, counted[t.Name()])
}

// And here all, of problems that take few.
func TestCuttingAtEachEffort(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 1))
	c := tally.New()
	for range 30 {
		lengths, demand, rolls := someRolls(r, 2, 2, 9, 2)
		solver, _ := cuttingWork(c, lengths, demand, rolls, nil)
		if steps := testWork - solver.Effort; steps < 1000 {
			for effort := range steps {
				hasty, bound := cuttingWork(c, lengths, demand, rolls, func(c *Cutter) { c.Effort = effort })
				if bound > solver.Best || hasty.Best < solver.Best || hasty.Short && !solver.Short {
					t.Fatalf("%v of %v from %+v with %d: between %d and %d, not %d", demand, lengths, rolls, effort, bound, hasty.Best, solver.Best)
				}
			}
		}
	}
	c.Check(t, counted[t.Name()])
}

// So does any patience.
func TestCuttingAtEveryPatience(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	c := tally.New()
	for range 6 {
		lengths, demand, rolls := someRolls(r, 4, 3, 20, 3)
		solver, _ := cuttingWork(c, lengths, demand, rolls, nil)
		for patience := range 20 {
			hasty, bound := cuttingWork(c, lengths, demand, rolls, func(c *Cutter) { c.patience = patience * (1 + patience/10*10) })
			if bound > solver.Best || hasty.Best < solver.Best || hasty.Short && !solver.Short {
				t.Fatalf("%v of %v from %+v with %d: between %d and %d, not %d", demand, lengths, rolls, patience, bound, hasty.Best, solver.Best)
			}
		}
	}
	c.Check(t, counted[t.Name()])
}

// Both searches for a packing, of pieces that fill their rolls entirely, or would by
// their sum: with one of them longer and one shorter there may be no way.
func TestPackingWork(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	c := tally.New()
	for i := range 120 {
		pieces := map[int64]int64{}
		var rolls []Roll
		var packs []int64
		for range 1 + r.IntN(2) {
			o := Roll{Length: 20 + r.Int64N(20), Strands: 1, Limit: 1 + r.Int64N(3), Owned: true}
			for range o.Limit {
				for left := o.Length; left > 0; {
					l := min(left, 3+r.Int64N(9))
					pieces[l]++
					left -= l
				}
			}
			rolls, packs = append(rolls, o), append(packs, o.Limit)
		}
		if long, short := 3+r.Int64N(9), 3+r.Int64N(9); i%2 == 1 && pieces[long] > 0 && pieces[short] > 0 {
			pieces[long]--
			pieces[long+1]++
			pieces[short]--
			pieces[short-1]++
		}
		var lengths, demand []int64
		for l := int64(40); l > 0; l-- {
			if pieces[l] > 0 {
				lengths, demand = append(lengths, l), append(demand, pieces[l])
			}
		}
		solver, _ := newCutter(lengths, demand, rolls)
		var found [2]bool
		for k, guided := range []bool{false, true} {
			s := solver.packing(packs)
			s.failed = make(map[string]bool)
			found[k] = s.fill(guided)
			c.Add(int64(s.steps), tally.Bit(found[k]), testWork-s.Effort)
			if s.tired() {
				t.Fatal("tired")
			}
		}
		if found[0] != found[1] || i%2 == 0 && !found[0] {
			t.Errorf("%v of %v from %+v: %v", demand, lengths, rolls, found)
		}
	}
	c.Check(t, counted[t.Name()])
}

// counted was recorded on amd64 and is the same on arm64, arm, riscv64, s390x and wasm.
var counted = map[string]string{
	"TestCuttingWork":            "734134 5fe028086fb3dd57",
	"TestLargeCuttingWork":       "7018159 519df63f5fda0fc0",
	"TestCuttingAtEveryEffort":   "2447957 9a36827f27717044",
	"TestCuttingAtEachEffort":    "3988375 b9419ced91d73d8c",
	"TestCuttingAtEveryPatience": "17567221 bd2ac2efc6a2e204",
	"TestPackingWork":            "35119 9d5f55a438542d14",
}
