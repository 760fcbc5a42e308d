package solver

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"strconv"
	"testing"
	"time"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// orders is how many coupled orders are tried. The 2,000 of a proof take about 8 minutes.
var orders = flag.Int("orders", 60, "coupled orders to try")

// An order is lines that have to be bought together, since boxes hold several of them.
type order struct {
	shop  shopping.Shop
	needs []shopping.Need
}

// coupled draws an order of 12 lines from 60 offers, in four colors and four types: boxes of one thing, of
// one type in several colors, and of any; half of them with a shelf that ends. A line names a color, and a type
// or none; of those without, some ask for an assortment.
func coupled(n int) order {
	r := rand.New(rand.NewPCG(99, uint64(n)))
	var o order
	colors, types := []string{"crimson", "gold", "green", "ivory"}, []string{"ball", "star", "bird", "cone"}
	thing := func(c, t int) shopping.Item {
		return shopping.Item{Kind: shopping.Ornament, Color: colors[c], Type: types[t]}
	}
	for i := range 60 {
		offer := shopping.Offer{Name: strconv.Itoa(i)}
		pieces := 0
		add := func(item shopping.Item, n int) {
			offer.Contents = append(offer.Contents, shopping.Lot{Item: item, Quantity: shopping.Quantity{Pieces: n}})
			pieces += n
		}
		switch r.IntN(4) {
		case 0, 1:
			add(thing(r.IntN(4), r.IntN(4)), []int{1, 4, 6, 8, 12, 24}[r.IntN(6)])
		case 2:
			t, n := r.IntN(4), []int{2, 3, 4, 6, 8}[r.IntN(5)]
			for c := range colors {
				if c == 0 || r.IntN(3) > 0 {
					add(thing(c, t), n)
				}
			}
		case 3:
			for range 2 + r.IntN(3) {
				add(thing(r.IntN(4), r.IntN(4)), 1+r.IntN(8))
			}
		}
		offer.Price = price(r, 60*pieces, 180*pieces+100)
		if r.IntN(2) == 0 {
			offer.Shelf = shopping.Shelf(1 + r.IntN(8))
		}
		o.shop.Offers = append(o.shop.Offers, offer)
	}
	for i := range 12 {
		need := shopping.Need{Item: shopping.Item{Kind: shopping.Ornament, Color: colors[i%4]}, Room: strconv.Itoa(i), Quantity: shopping.Quantity{Pieces: 5 + r.IntN(40)}}
		switch r.IntN(4) {
		case 0:
			each := 2 + r.IntN(6)
			need.Types, need.Each = 2+r.IntN(2), units.Range[int]{Min: each, Max: each + 4}
			need.Quantity.Pieces = need.Types * (each + 1 + r.IntN(3))
		default:
			need.Item.Type = types[r.IntN(4)]
		}
		o.needs = append(o.needs, need)
	}
	return o
}

// program writes o as an integer program with its cost in cents, straight from the rules and not from what the
// library does: a variable for the packs of each offer, for the pieces of each thing that each need gets, and
// for each type of an assortment, whether it is one of those.
func (o order) program() string {
	m := &model{}
	var cost row
	supply := map[shopping.Item]*row{}
	for i, offer := range o.shop.Offers {
		n := "n" + strconv.Itoa(i)
		m.integers = append(m.integers, n)
		if offer.Shelf > 0 {
			m.bounds = append(m.bounds, fmt.Sprintf("%s <= %d", n, offer.Shelf))
		}
		cost.add(offer.Price.Shift(2).IntPart(), n)
		held := map[shopping.Item]int{}
		var items []shopping.Item
		for _, l := range offer.Contents {
			if held[l.Item] == 0 {
				items = append(items, l.Item)
			}
			held[l.Item] += l.Quantity.Pieces
		}
		for _, item := range items {
			if supply[item] == nil {
				supply[item] = &row{}
			}
			supply[item].add(int64(held[item]), n)
		}
	}
	for k, need := range o.needs {
		var gets, kinds row
		for _, t := range []string{"ball", "star", "bird", "cone"} {
			item := need.Item
			if item.Type != "" && item.Type != t {
				continue
			}
			item.Type = t
			if supply[item] == nil {
				continue
			}
			x := fmt.Sprintf("x%d_%s", k, t)
			m.integers = append(m.integers, x)
			gets.add(1, x)
			supply[item].add(-1, x)
			if need.Types > 0 {
				y := fmt.Sprintf("y%d_%s", k, t)
				m.integers = append(m.integers, y)
				m.bounds = append(m.bounds, y+" <= 1")
				kinds.add(1, y)
				m.rows = append(m.rows, fmt.Sprintf("%s - %d %s >= 0", x, need.Each.Min, y), fmt.Sprintf("%s - %d %s <= 0", x, need.Each.Max, y))
			}
		}
		if gets == nil {
			return "" // nothing at all serves it
		}
		m.rows = append(m.rows, fmt.Sprintf("%s = %d", gets, need.Quantity.Pieces))
		if kinds != nil {
			m.rows = append(m.rows, fmt.Sprintf("%s = %d", kinds, need.Types))
		}
	}
	for _, t := range []string{"ball", "star", "bird", "cone"} {
		for _, c := range []string{"crimson", "gold", "green", "ivory"} {
			if s := supply[shopping.Item{Kind: shopping.Ornament, Color: c, Type: t}]; s != nil {
				m.rows = append(m.rows, s.String()+" >= 0")
			}
		}
	}
	m.objective = cost
	return m.String()
}

// TestCoupledOrders compares the cost of orders wherever it is proved, and the time of both. The time of
// glpsol is that of the whole command, less what one with hardly anything to solve takes.
func TestCoupledOrders(t *testing.T) {
	find(t)
	count := *orders
	dir := t.TempDir()
	began := time.Now()
	for range 20 {
		glpsol(t, dir, "Minimize\n cost: x\nSubject To\n x >= 1\nGeneral\n x\nEnd\n")
	}
	nothing := time.Since(began) / 20
	proved, solved, short := 0, 0, 0
	var ours, theirs time.Duration
	for n := range count {
		o := coupled(n)
		program := o.program()
		began := time.Now()
		list, err := o.shop.List(o.needs)
		took := time.Since(began)
		if err != nil {
			t.Fatal(n, err)
		}
		var want int64
		ok := false
		began = time.Now()
		if program != "" {
			want, ok = glpsol(t, dir, program)
		}
		if !ok {
			if list.Short() == nil {
				t.Fatalf("%d: got %v, and there is no way", n, list.Total)
			}
			short++
			continue
		}
		ours += took
		theirs += time.Since(began) - nothing
		solved++
		best := decimal.New(want, -2)
		if list.Short() != nil || list.Total.LessThan(best) || list.Bound.GreaterThan(best) {
			t.Fatalf("%d: between %v and %v, %v is the least; short %v\n%s", n, list.Bound, list.Total, best, list.Short(), program)
		}
		if list.Bound.Equal(list.Total) {
			proved++
		}
	}
	t.Logf("%d orders, %d proved, all with the same optimum; %d more that cannot be served; %v here, %v in glpsol: %.1f times as fast", solved, proved, short, ours, theirs, float64(theirs)/float64(ours))
	if proved*100 < 95*solved {
		t.Errorf("%d of %d proved", proved, solved)
	}
}
