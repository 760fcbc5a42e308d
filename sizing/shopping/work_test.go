package shopping

import (
	"errors"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"example.com/fircone/internal/cover"
	"example.com/fircone/internal/tally"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// someRuns returns a shop of strands that overlap, and needs for several runs.
func someRuns(r *rand.Rand) (Shop, []Need) {
	s := Shop{Joins: map[Item]Join{{Kind: Garland}: {Overlap: units.Length(r.IntN(5)) * units.Inch}}}
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
			o.Shelf = onShelf(r.IntN(4))
		}
		s.Offers = append(s.Offers, o)
	}
	for range r.IntN(3) {
		s.Owned = append(s.Owned, Lot{Item: Item{Kind: Garland}, Quantity: Quantity{Pieces: r.IntN(3), Length: units.Length(1+r.IntN(20)) * units.Inch}})
	}
	var needs []Need
	for range 1 + r.IntN(4) {
		needs = append(needs, Need{Item: Item{Kind: Garland}, Quantity: Quantity{Length: units.Length(3+r.IntN(60)) * units.Inch}})
	}
	return s, needs
}

// purchaseWork makes a purchase and counts it.
func purchaseWork(c *tally.Tally, s Shop, needs []Need, work, items int64) (Purchase, error) {
	check := &checker{method: "Shop.List", work: work, items: items}
	p, err := s.cheapest(check, needs)
	c.Add(work-check.work, price(p.Cost), price(p.Bound), int64(Surplus(p.Left).Length), tally.Bit(List{Purchases: []Purchase{p}}.Short() != nil), tally.Bit(errors.Is(err, units.ErrLimit)))
	for _, b := range p.Buys {
		c.Add(int64(b.Packs), price(b.Offer.Price))
	}
	for _, cut := range p.Cuts {
		c.Add(int64(cut.Rolls), int64(cut.left()), int64(len(cut.Pieces)))
	}
	return p, err
}

func TestRunsWork(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	c := tally.New()
	for range 120 {
		s, needs := someRuns(r)
		p, err := purchaseWork(c, s, needs, maxWork, 1)
		if err == nil && !p.Bound.Equal(p.Cost) {
			t.Errorf("%+v, %v: between %v and %v", s, needs, p.Bound, p.Cost)
		}
	}
	c.Check(t, counted[t.Name()])
}

// Fewer steps never make it better, nor the bound higher than the least.
func TestRunsAtEveryWork(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 1))
	c := tally.New()
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
	c.Check(t, counted[t.Name()])
}

// Whole pieces of one or several lengths, mostly beside a running length.
func TestPiecesAndLengthWork(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 1))
	c := tally.New()
	for range 80 {
		s, needs := someRuns(r)
		s.Joins[Item{Kind: Garland}] = Join{Overlap: s.Joins[Item{Kind: Garland}].Overlap * units.Length(r.IntN(2))}
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
	c.Check(t, counted[t.Name()])
}

// The items of a list share the work of one call.
func TestListWork(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	c := tally.New()
	for range 20 {
		var all Shop
		var needs []Need
		for i := range 3 {
			s, some := someRuns(r)
			item := Item{Kind: Garland, Type: strconv.Itoa(i)}
			for _, o := range s.Offers {
				o.Item, o.Shelf = item, 0
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
			l, err := all.list(check, wishes(needs))
			c.Add(work-check.work, price(l.Total), tally.Bit(errors.Is(err, units.ErrLimit)))
			for _, p := range l.Purchases {
				c.Add(0, price(p.Cost), price(p.Bound))
			}
		}
	}
	c.Check(t, counted[t.Name()])
}

// The counts of open choices, and what they take.
func TestFullestWork(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 1))
	c := tally.New()
	for range 60 {
		var f filling
		for range 1 + r.IntN(6) {
			choice := Need{Item: Item{Kind: Ornament}, Quantity: Quantity{Pieces: r.IntN(6)}}
			choice.Open = units.Range[int]{Min: choice.Quantity.Pieces, Max: choice.Quantity.Pieces + 1 + r.IntN(9)}
			s := Shop{Owned: []Lot{{Item: Item{Kind: Ornament}, Quantity: Quantity{Pieces: r.IntN(5)}}}}
			for i, p := range somePacks(r, 1+r.IntN(3), 4) {
				s.Offers = append(s.Offers, Offer{Item: Item{Kind: Ornament}, Name: strconv.Itoa(i), Pack: Quantity{Pieces: int(p.Size)}, Price: decimal.NewFromInt(p.Cost)})
			}
			check := newChecker("Shop.Fullest")
			o, err := s.filling(check, []Need{choice})
			if err != nil {
				t.Fatal(err)
			}
			groups, err := s.groups(check, o.all)
			if err != nil {
				t.Fatal(err)
			}
			steps, _, err := o.steps(check, groups[0], []int{0}, o.least(), []int64{o.lines[0].most}, false)
			if err != nil {
				t.Fatal(err)
			}
			least := steps[0].cost
			c.Add(maxWork-check.work, least)
			f.items = append(f.items, steps)
			f.budget += least + unit*r.Int64N(6)
		}
		cost := int64(0)
		for i, n := range f.fill() {
			c.Add(int64(n))
			k := slices.IndexFunc(f.items[i], func(s step) bool { return s.count == n })
			cost += f.items[i][k].cost
		}
		if cost > f.budget {
			t.Errorf("%+v: %d", f, cost)
		}
	}
	c.Check(t, counted[t.Name()])
}

// Which columns rows are matched with, against all ways.
func TestMatchWork(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 1))
	c := tally.New()
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
			c.Add(int64(k))
		}
		if want := most(0, make([]bool, columns)); got != want {
			t.Errorf("%v: got %d, want %d", gain, got, want)
		}
	}
	c.Check(t, counted[t.Name()])
}

// counted was recorded on amd64 and is the same on arm64, arm, riscv64, s390x and wasm.
var counted = map[string]string{
	"TestRunsWork":            "80876 311bbbb33ac484c1",
	"TestRunsAtEveryWork":     "1149557 59544db8066ac66e",
	"TestPiecesAndLengthWork": "5966084 e33ecdc0f54cb9ed",
	"TestListWork":            "1375668 69fb281584346d08",
	"TestFullestWork":         "2821 d36c51023c0d482d",
	"TestMatchWork":           "1132 7521a96086a19b53",
	"TestStepsSpent":          "15279573 b02dba48158b321d",
	"TestBoxesAtEveryWork":    "2886340 fefd5159f5de56a7",
}

// somePacks returns kinds of packs of up to most, at any price, at one price a
// piece, or nearly at one, some of them limited.
func somePacks(r *rand.Rand, kinds int, most int64) []cover.Pack {
	packs := make([]cover.Pack, kinds)
	way := r.IntN(3)
	for i := range packs {
		p := &packs[i]
		p.Size = 1 + r.Int64N(most)
		switch p.Cost = 3 * p.Size; way {
		case 0:
			p.Cost = r.Int64N(9)
		case 1:
			p.Cost += r.Int64N(4)
		}
		p.Bulk = p.Size + r.Int64N(2)*r.Int64N(3)
		p.Limit = 1 << 50
		if r.IntN(2) == 0 {
			p.Limit = 1 + r.Int64N(7)
		}
	}
	return packs
}
