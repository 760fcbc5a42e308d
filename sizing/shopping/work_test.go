package shopping

import (
	"encoding/binary"
	"errors"
	"fmt"
	"hash"
	"hash/fnv"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// The tests of this file hold the steps that the searches count. A search gives up
// when its steps are spent, so a count that changes is an answer that changes for some
// problem past the bounds, and it must be the same on every machine. That
// answers are right is for the oracles, here and in the other files; a count that
// is meant to change is recorded anew in counted.
type count struct {
	hash  hash.Hash64
	steps int64
}

func newCount() *count { return &count{hash: fnv.New64a()} }

// add adds the steps of one problem and what they came to.
func (c *count) add(steps int64, results ...int64) {
	c.steps += steps
	binary.Write(c.hash, binary.BigEndian, steps)
	binary.Write(c.hash, binary.BigEndian, results)
}

// check compares the count with that recorded for the test.
func (c *count) check(t *testing.T) {
	t.Helper()
	got := fmt.Sprintf("%d %016x", c.steps, c.hash.Sum64())
	if want := counted[t.Name()]; got != want {
		t.Errorf("counted %q, want %q", got, want)
	}
}

// bit returns 1 for true.
func bit(b bool) int64 {
	if b {
		return 1
	}
	return 0
}

// somePacks returns kinds of packs of up to most, at any price, at one price a
// piece, or nearly at one, some of them limited.
func somePacks(r *rand.Rand, kinds int, most int64) []pack {
	packs := make([]pack, kinds)
	way := r.IntN(3)
	for i := range packs {
		p := &packs[i]
		p.size = 1 + r.Int64N(most)
		switch p.cost = 3 * p.size; way {
		case 0:
			p.cost = r.Int64N(9)
		case 1:
			p.cost += r.Int64N(4)
		}
		p.bulk = p.size + r.Int64N(2)*r.Int64N(3)
		p.limit = 1 << 50
		if r.IntN(2) == 0 {
			p.limit = 1 + r.Int64N(7)
		}
	}
	return packs
}

func TestCoverWork(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	c := newCount()
	for range 400 {
		scale := []int64{1, 1, 6, 100_000_007}[r.IntN(4)]
		packs := somePacks(r, 1+r.IntN(4), 12)
		need := 1 + r.Int64N(24)
		for i := range packs {
			packs[i].size *= scale
		}
		need = need*scale - r.Int64N(scale)
		want := bruteCover(need, packs)
		if want == nil {
			continue
		}
		work := int64(maxWork)
		got, ok := coverCounts(need, packs, &work)
		if !ok || !slices.Equal(got, want) {
			t.Errorf("need %d of %+v: got %v, want %v", need, packs, got, want)
		}
		c.add(maxWork - work)
		// So many steps are enough, and one less is not.
		steps := maxWork - work
		for _, spare := range []int64{0, -1} {
			work := steps + spare
			if _, ok := coverCounts(need, packs, &work); ok != (spare == 0) && steps > 0 {
				t.Errorf("need %d of %+v: %t with %d of %d steps", need, packs, ok, steps+spare, steps)
			}
		}
	}
	c.check(t)
}

// Against the search with nothing settled beforehand.
func TestLargeCoverWork(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	c := newCount()
	for range 60 {
		packs := somePacks(r, 2+r.IntN(8), 60)
		for i := range packs {
			packs[i].limit = min(packs[i].limit, 1<<(40*r.Int64N(2))*(1+r.Int64N(60)))
		}
		all, need := int64(0), 1+r.Int64N(2_000)
		for _, p := range packs {
			all += p.size * min(p.limit, need)
		}
		if all < need {
			continue
		}
		work := int64(maxWork)
		plain, _ := newCover(need, packs, &work)
		want, _ := plain.counts(&work)
		c.add(maxWork - work)
		work = maxWork
		got, ok := coverCounts(need, packs, &work)
		if !ok || !slices.Equal(got, want) {
			t.Errorf("need %d of %+v: got %v, want %v", need, packs, got, want)
		}
		c.add(maxWork - work)
	}
	c.check(t)
}

// Sizes without a useful common measure.
func TestSparseWork(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	c := newCount()
	for range 60 {
		packs := make([]pack, 1+r.IntN(3))
		for i := range packs {
			size := 1_000_000 + r.Int64N(9_000_000)
			packs[i] = pack{size: size, bulk: size, cost: size / 1_000_000, limit: 1 + r.Int64N(4)}
			if r.IntN(3) == 0 {
				packs[i].limit = 1 << 50
			}
		}
		need := 2_000_000 + r.Int64N(20_000_000)
		if r.IntN(4) == 0 {
			need = packs[0].size * (2 + r.Int64N(3))
		}
		want := bruteCover(need, packs)
		if want == nil {
			continue
		}
		work := int64(maxWork)
		cover, ok := newCover(need, packs, &work)
		if !ok {
			t.Fatal("too large")
		}
		steps := maxWork - work
		if got, _ := cover.counts(&work); !slices.Equal(got, want) {
			t.Errorf("need %d of %+v: got %v, want %v", need, packs, got, want)
		}
		c.add(maxWork-work, int64(cover.top))
		if cover.amounts == nil {
			continue
		}
		for _, spare := range []int64{0, -1} {
			work := steps + spare
			if _, ok := newCover(need, packs, &work); ok != (spare == 0) {
				t.Errorf("need %d of %+v: %t with %d of %d steps", need, packs, ok, steps+spare, steps)
			}
		}
	}
	c.check(t)
}

// someRolls returns pieces of some lengths up to longest, up to most of each, and rolls.
func someRolls(r *rand.Rand, kinds, most int, longest int64, rolls int) (lengths, demand []int64, all []roll) {
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
		o := roll{length: longest/2 + 1 + r.Int64N(2*longest), strands: 1 + r.Int64N(3)*r.Int64N(2), limit: 1 << 50}
		o.bulk = o.length * o.strands
		switch o.cost = o.bulk / 2; {
		case free:
			o.cost = 0
		case r.IntN(3) == 0:
			o.cost += r.Int64N(4)
		}
		if r.IntN(3) == 0 {
			o.limit = 1 + r.Int64N(3)
		}
		if r.IntN(6) == 0 {
			o = roll{length: o.length, strands: 1, limit: 1 + r.Int64N(2), owned: true}
		}
		all = append(all, o)
	}
	return lengths, demand, all
}

// cuttingWork solves a problem and counts it.
func cuttingWork(c *count, lengths, demand []int64, rolls []roll, change func(*cutter)) (*cutter, int64) {
	solver, _ := newCutter(lengths, demand, rolls)
	if change != nil {
		change(solver)
	}
	began := solver.effort
	bound := solver.solve()
	c.add(began-solver.effort, bound, solver.best, bit(solver.short))
	c.add(0, solver.packs...)
	for _, p := range solver.patterns {
		c.add(0, append(p.take, int64(p.roll), p.rolls)...)
	}
	return solver, bound
}

// checkBest compares a cutting with the least there is.
func checkBest(t *testing.T, lengths, demand []int64, rolls []roll, c *cutter, bound int64) {
	t.Helper()
	want, ok := bruteCut(lengths, demand, rolls)
	if ok == c.short {
		t.Fatalf("%v of %v from %+v: short %t", demand, lengths, rolls, c.short)
	}
	if !ok {
		return
	}
	var got [3]int64
	for i, n := range c.packs {
		if r := rolls[i]; !r.owned {
			got = [3]int64{got[0] + n*r.cost, got[1] + n*r.bulk, got[2] + n}
		}
	}
	if got != want || c.best != bound {
		t.Errorf("%v of %v from %+v: got %v for %v, bound %d of %d, want %v", demand, lengths, rolls, c.packs, got, bound, c.best, want)
	}
}

func TestCuttingWork(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	c := newCount()
	for range 250 {
		lengths, demand, rolls := someRolls(r, 2+r.IntN(2), 2, 12, 1+r.IntN(3))
		solver, bound := cuttingWork(c, lengths, demand, rolls, nil)
		checkBest(t, lengths, demand, rolls, solver, bound)
	}
	c.check(t)
}

// More pieces than can be tried one by one: what is proved is compared with what
// the search finds with the rolls in reverse.
func TestLargeCuttingWork(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	c := newCount()
	for range 25 {
		lengths, demand, rolls := someRolls(r, 3+r.IntN(4), 6, 40, 2+r.IntN(3))
		solver, bound := cuttingWork(c, lengths, demand, rolls, func(c *cutter) { c.effort = 400_000 })
		slices.Reverse(rolls)
		again, other := cuttingWork(c, lengths, demand, rolls, func(c *cutter) { c.effort = 400_000 })
		if solver.short != again.short || bound > again.best || other > solver.best {
			t.Errorf("%v of %v from %+v: %d to %d, reversed %d to %d", demand, lengths, rolls, bound, solver.best, other, again.best)
		}
	}
	c.check(t)
}

// Any number of steps gives a bound that holds, and an answer no better than the
// best; here those about a point on the way.
func TestCuttingAtEveryEffort(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	c := newCount()
	for range 10 {
		lengths, demand, rolls := someRolls(r, 3, 3, 12, 3)
		solver, _ := cuttingWork(c, lengths, demand, rolls, nil)
		if solver.short {
			continue
		}
		from := r.Int64N(maxWork - solver.effort)
		for effort := from; effort < from+60; effort++ {
			hasty, bound := cuttingWork(c, lengths, demand, rolls, func(c *cutter) { c.effort = effort })
			if bound > solver.best || hasty.best < solver.best || hasty.short {
				t.Fatalf("%v of %v from %+v with %d: between %d and %d, not %d", demand, lengths, rolls, effort, bound, hasty.best, solver.best)
			}
		}
	}
	c.check(t)
}

// And here all, of problems that take few.
func TestCuttingAtEachEffort(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 1))
	c := newCount()
	for range 30 {
		lengths, demand, rolls := someRolls(r, 2, 2, 9, 2)
		solver, _ := cuttingWork(c, lengths, demand, rolls, nil)
		if steps := maxWork - solver.effort; steps < 1000 {
			for effort := range steps {
				hasty, bound := cuttingWork(c, lengths, demand, rolls, func(c *cutter) { c.effort = effort })
				if bound > solver.best || hasty.best < solver.best || hasty.short && !solver.short {
					t.Fatalf("%v of %v from %+v with %d: between %d and %d, not %d", demand, lengths, rolls, effort, bound, hasty.best, solver.best)
				}
			}
		}
	}
	c.check(t)
}

// So does any patience.
func TestCuttingAtEveryPatience(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	c := newCount()
	for range 6 {
		lengths, demand, rolls := someRolls(r, 4, 3, 20, 3)
		solver, _ := cuttingWork(c, lengths, demand, rolls, nil)
		for patience := range 20 {
			hasty, bound := cuttingWork(c, lengths, demand, rolls, func(c *cutter) { c.patience = patience * (1 + patience/10*10) })
			if bound > solver.best || hasty.best < solver.best || hasty.short && !solver.short {
				t.Fatalf("%v of %v from %+v with %d: between %d and %d, not %d", demand, lengths, rolls, patience, bound, hasty.best, solver.best)
			}
		}
	}
	c.check(t)
}

// Both searches for a packing, of pieces that fill their rolls entirely, or would by
// their sum: with one of them longer and one shorter there may be no way.
func TestPackingWork(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	c := newCount()
	for i := range 120 {
		pieces := map[int64]int64{}
		var rolls []roll
		var packs []int64
		for range 1 + r.IntN(2) {
			o := roll{length: 20 + r.Int64N(20), strands: 1, limit: 1 + r.Int64N(3), owned: true}
			for range o.limit {
				for left := o.length; left > 0; {
					l := min(left, 3+r.Int64N(9))
					pieces[l]++
					left -= l
				}
			}
			rolls, packs = append(rolls, o), append(packs, o.limit)
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
			c.add(int64(s.steps), bit(found[k]), maxWork-s.effort)
			if s.tired() {
				t.Fatal("tired")
			}
		}
		if found[0] != found[1] || i%2 == 0 && !found[0] {
			t.Errorf("%v of %v from %+v: %v", demand, lengths, rolls, found)
		}
	}
	c.check(t)
}

// someRuns returns a shop of strands that overlap, and needs for several runs.
func someRuns(r *rand.Rand) (Shop, []Need) {
	s := Shop{Overlap: map[Item]units.Length{{Kind: Garland}: units.Length(r.IntN(5)) * units.Inch}}
	way := r.IntN(3)
	for i := range 1 + r.IntN(3) {
		inches := 6 + r.Int64N(30)
		o := Offer{Item: Item{Kind: Garland}, Name: strconv.Itoa(i), Pack: Quantity{Pieces: r.IntN(3), Length: units.Length(inches) * units.Inch}}
		switch way {
		case 0:
			o.Price = decimal.NewFromInt(r.Int64N(9))
		case 1:
			o.Price = decimal.NewFromInt(inches - 4)
		case 2:
			o.Price = decimal.NewFromInt(5)
		}
		if r.IntN(3) == 0 {
			o.Shelf = Left(r.IntN(4))
		}
		s.Offers = append(s.Offers, o)
	}
	for range r.IntN(3) {
		s.Owned = append(s.Owned, Owned{Item: Item{Kind: Garland}, Quantity: Quantity{Pieces: r.IntN(3), Length: units.Length(1+r.IntN(20)) * units.Inch}})
	}
	var needs []Need
	for range 1 + r.IntN(4) {
		needs = append(needs, Need{Item: Item{Kind: Garland}, Quantity: Quantity{Length: units.Length(3+r.IntN(60)) * units.Inch}})
	}
	return s, needs
}

// purchaseWork makes a purchase and counts it.
func purchaseWork(c *count, s Shop, needs []Need, work, items int64) (Purchase, error) {
	check := &checker{method: "Shop.List", work: work, items: items}
	p, err := s.cheapest(check, needs)
	c.add(work-check.work, price(p.Cost), price(p.Bound), int64(p.Surplus.Length), bit(errors.Is(err, units.ErrShort)), bit(errors.Is(err, units.ErrLimit)))
	for _, b := range p.Buys {
		c.add(int64(b.Packs), price(b.Offer.Price))
	}
	for _, cut := range p.Cuts {
		c.add(int64(cut.Rolls), int64(cut.Left), int64(len(cut.Pieces)))
	}
	return p, err
}

func TestRunsWork(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	c := newCount()
	for range 120 {
		s, needs := someRuns(r)
		p, err := purchaseWork(c, s, needs, maxWork, 1)
		if err == nil && !p.Bound.Equal(p.Cost) {
			t.Errorf("%+v, %v: between %v and %v", s, needs, p.Bound, p.Cost)
		}
	}
	c.check(t)
}

// Fewer steps never make it better, nor the bound higher than the least.
func TestRunsAtEveryWork(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 1))
	c := newCount()
	for range 25 {
		s, needs := someRuns(r)
		best, err := purchaseWork(c, s, needs, maxWork, 1)
		if err != nil {
			continue
		}
		for work := int64(0); work < 2_000; work += 1 + work/50 {
			p, err := purchaseWork(c, s, needs, work, 1+work%3)
			if err == nil && (p.Cost.LessThan(best.Cost) || p.Bound.GreaterThan(best.Cost)) {
				t.Fatalf("%+v, %v with %d: between %v and %v, not %v", s, needs, work, p.Bound, p.Cost, best.Cost)
			}
		}
	}
	c.check(t)
}

// Whole pieces of one or several lengths, mostly beside a running length.
func TestPiecesAndLengthWork(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 1))
	c := newCount()
	for range 80 {
		s, needs := someRuns(r)
		s.Overlap[Item{Kind: Garland}] *= units.Length(r.IntN(2))
		if r.IntN(4) == 0 {
			needs = nil
		}
		for range 1 + r.IntN(3) {
			needs = append(needs, Need{Item: Item{Kind: Garland}, Quantity: Quantity{Pieces: 1 + r.IntN(4), Length: units.Length(3+r.IntN(8)) * units.Inch}})
		}
		p, err := purchaseWork(c, s, needs, maxWork, 1)
		if err == nil && p.Bound.GreaterThan(p.Cost) {
			t.Errorf("%+v, %v: between %v and %v", s, needs, p.Bound, p.Cost)
		}
		for _, work := range []int64{0, 100, 300, 1000, 3000, 10_000} {
			for items := range int64(3) {
				q, qerr := purchaseWork(c, s, needs, work, 1+items)
				if err == nil && qerr == nil && q.Bound.GreaterThan(p.Cost) {
					t.Errorf("%+v, %v with %d: between %v and %v, not %v", s, needs, work, q.Bound, q.Cost, p.Cost)
				}
			}
		}
	}
	c.check(t)
}

// The items of a list share the work of one call.
func TestListWork(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	c := newCount()
	for range 20 {
		var all Shop
		var needs []Need
		for i := range 3 {
			s, some := someRuns(r)
			item := Item{Kind: Garland, Type: strconv.Itoa(i)}
			for _, o := range s.Offers {
				o.Item, o.Shelf = item, Shelf{}
				all.Offers = append(all.Offers, o)
			}
			for _, n := range some {
				n.Item = item
				needs = append(needs, n)
			}
			for _, l := range []units.Length{5, 4, 3} {
				needs = append(needs, Need{Item: item, Quantity: Quantity{Pieces: 1 + r.IntN(4), Length: l * units.Inch}})
			}
		}
		for _, work := range []int64{maxWork, 9000, 3000, 1000} {
			check := &checker{method: "Shop.List", work: work, items: 1}
			l, err := all.list(check, needs)
			c.add(work-check.work, price(l.Total), bit(errors.Is(err, units.ErrLimit)))
			for _, p := range l.Purchases {
				c.add(0, price(p.Cost), price(p.Bound))
			}
		}
	}
	c.check(t)
}

// The counts of open choices, and what they take.
func TestFullestWork(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 1))
	c := newCount()
	for range 60 {
		var f filling
		for range 1 + r.IntN(6) {
			choice := Need{Item: Item{Kind: Ornament}, Quantity: Quantity{Pieces: r.IntN(6)}}
			choice.Most = choice.Quantity.Pieces + 1 + r.IntN(9)
			s := Shop{Owned: []Owned{{Item: Item{Kind: Ornament}, Quantity: Quantity{Pieces: r.IntN(5)}}}}
			for i, p := range somePacks(r, 1+r.IntN(3), 4) {
				s.Offers = append(s.Offers, Offer{Item: Item{Kind: Ornament}, Name: strconv.Itoa(i), Pack: Quantity{Pieces: int(p.size)}, Price: decimal.NewFromInt(p.cost)})
			}
			check := newChecker("Shop.Fullest")
			steps, least, err := s.steps(check, choice)
			if err != nil {
				t.Fatal(err)
			}
			c.add(maxWork-check.work, least)
			f.items = append(f.items, steps)
			f.budget += least + unit*r.Int64N(6)
		}
		cost := int64(0)
		for i, n := range f.fill() {
			c.add(int64(n))
			k := slices.IndexFunc(f.items[i], func(s step) bool { return s.count == n })
			cost += f.items[i][k].cost
		}
		if cost > f.budget {
			t.Errorf("%+v: %d", f, cost)
		}
	}
	c.check(t)
}

// Which columns rows are matched with, against all ways.
func TestMatchWork(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 1))
	c := newCount()
	for range 300 {
		rows := 1 + r.IntN(4)
		columns := rows + r.IntN(3)
		gain := make([][]int64, rows)
		for i := range gain {
			for range columns {
				gain[i] = append(gain[i], r.Int64N(8))
			}
		}
		var most func(i int, taken []bool) int64
		most = func(i int, taken []bool) int64 {
			if i == rows {
				return 0
			}
			best := int64(0)
			for k := range columns {
				if !taken[k] {
					taken[k] = true
					best = max(best, gain[i][k]+most(i+1, taken))
					taken[k] = false
				}
			}
			return best
		}
		got, taken := int64(0), make([]bool, columns)
		for i, k := range match(gain) {
			if taken[k] {
				t.Errorf("%v: column %d twice", gain, k)
			}
			taken[k] = true
			got += gain[i][k]
			c.add(int64(k))
		}
		if want := most(0, make([]bool, columns)); got != want {
			t.Errorf("%v: got %d, want %d", gain, got, want)
		}
	}
	c.check(t)
}

// counted was recorded on amd64 and is the same on arm64, arm, riscv64, s390x and wasm.
var counted = map[string]string{
	"TestCoverWork":              "6841 f7c07b64715d6de0",
	"TestLargeCoverWork":         "1196889 9f216f960fdb1955",
	"TestSparseWork":             "926305 6783b5d70c3e09a9",
	"TestCuttingWork":            "734134 5fe028086fb3dd57",
	"TestLargeCuttingWork":       "7018159 519df63f5fda0fc0",
	"TestCuttingAtEveryEffort":   "2447957 9a36827f27717044",
	"TestCuttingAtEveryPatience": "17567221 bd2ac2efc6a2e204",
	"TestPackingWork":            "35119 9d5f55a438542d14",
	"TestRunsWork":               "51958 32a19b8f6e2c04f7",
	"TestRunsAtEveryWork":        "531280 72f6398e6c87ad9b",
	"TestPiecesAndLengthWork":    "1715857 1f93c459a0f0f36e",
	"TestListWork":               "937925 be53050e1671c094",
	"TestFullestWork":            "3476 e1989c755427eb66",
	"TestMatchWork":              "1132 7521a96086a19b53",
	"TestCuttingAtEachEffort":    "3988375 b9419ced91d73d8c",
}
