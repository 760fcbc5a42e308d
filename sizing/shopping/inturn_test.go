package shopping

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/shopspring/decimal"
)

// Demands that are served in turn get what there is and no more, as many types as they are left with, and what all cost is no less
// than the exact search says, where that serves everything.
func TestInTurn(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 2))
	served, dearer := 0, 0
	for i := range 600 {
		s, needs := someBoxes(r, i%2 == 0)
		if i%3 == 0 {
			s, needs = someLights(r)
		}
		program := func() *coupling {
			m := &coupling{shop: s, lines: lines(s.withSpares(wishes(needs)))}
			if i%3 == 0 {
				m.lights()
			} else {
				m.boxes()
			}
			return m
		}
		exact, turn := program(), program()
		effort := int64(2_000_000)
		best := exact.solve(&effort)
		effort = 2_000_000
		got := turn.inTurn(&effort)
		if best.Packs == nil || got.Packs == nil {
			t.Fatalf("%+v, %+v: nothing found", s, needs)
		}
		g := &program().program // as it was
		have, cost := g.Have, int64(0)
		for j, n := range got.Packs {
			if n < 0 || n > g.Packs[j].Limit {
				t.Fatalf("%d packs of %d", n, g.Packs[j].Limit)
			}
			cost += n * g.Packs[j].Cost
			for _, h := range g.Packs[j].Holds {
				have[h.Thing] += n * h.N
			}
		}
		for _, row := range g.Rows {
			sum := int64(0)
			for k, j := range row.Col {
				sum += row.Coef[k] * got.Packs[j]
			}
			if sum < row.Least {
				t.Fatalf("%+v: %d", row, sum)
			}
		}
		all := true
		for d, demand := range turn.program.Demands {
			sum, kinds := int64(0), 0
			for _, things := range demand.Kinds {
				n := int64(0)
				for _, thing := range things {
					n += got.Gets[d][thing]
					have[thing] -= got.Gets[d][thing]
				}
				if sum += n; n != 0 {
					kinds++
				}
				if demand.Take > 0 && n != 0 && (n < demand.Least || n > demand.Most) {
					t.Fatalf("%d of a kind, want %d to %d", n, demand.Least, demand.Most)
				}
			}
			if sum != demand.N || demand.Take > 0 && kinds != demand.Take || sum > g.Demands[d].N {
				t.Fatalf("%d in %d kinds, want %d in %d of at most %d", sum, kinds, demand.N, demand.Take, g.Demands[d].N)
			}
			all = all && sum == g.Demands[d].N && demand.Take == g.Demands[d].Take && exact.program.Demands[d].N == sum && exact.program.Demands[d].Take == demand.Take
		}
		for thing, n := range have {
			if n < 0 {
				t.Fatalf("%d too many of thing %d", -n, thing)
			}
		}
		if all {
			served++
			if cost < best.Cost {
				t.Fatalf("%+v, %+v: %d, under the least of %d", s, needs, cost, best.Cost)
			}
			if cost > best.Cost {
				dearer++
			}
		}
	}
	if served < 200 || dearer == 0 {
		t.Errorf("%d served, %d of them at more than the least", served, dearer)
	}
}

// someLights returns a shop of strings of lights with deals, shelves and what is owned, and rooms that need some.
func someLights(r *rand.Rand) (s Shop, needs []Need) {
	light := Item{Kind: Light}
	for i := range 1 + r.IntN(3) {
		cents := 100 + r.Int64N(900)
		o := Offer{Item: light, Name: strconv.Itoa(i), Pack: Quantity{Pieces: 10 * (1 + r.IntN(5))}, Price: decimal.New(cents, -2)}
		if r.IntN(2) == 0 {
			o.Deals = []Deal{{Packs: 3, Price: decimal.New(2*cents, -2)}}
		}
		if r.IntN(2) == 0 {
			o.Shelf = Shelf(1 + r.IntN(5))
		}
		s.Offers = append(s.Offers, o)
	}
	for range r.IntN(3) {
		s.Owned = append(s.Owned, Lot{light, Quantity{Pieces: 10 * (1 + r.IntN(5))}})
	}
	for i := range 1 + r.IntN(4) {
		needs = append(needs, Need{Item: light, Room: strconv.Itoa(i), Quantity: Quantity{Pieces: 10 * r.IntN(12)}})
	}
	return s, needs
}
