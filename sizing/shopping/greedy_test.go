package shopping

import (
	"testing"

	"github.com/shopspring/decimal"
)

// A search that has no steps left returns the packs that it began with: one after another, each time the one that costs least for a
// piece that is missing, and as many of it in a row as are worth the same. By hand.
func TestBeginsWithTheCheapestPiece(t *testing.T) {
	ball := func(color string) Item { return Item{Kind: Ornament, Color: color} }
	for _, row := range []struct {
		reason               string
		crimson, gold, owned int
		sixes                Shelf
		cents                int64
	}{
		// 6 crimson at 50 cents each; 5 gold at 70; a crimson one at 90, since a six or a mixed box would be 3.00 or 5.00 for it.
		{"a single fills up", 7, 5, 0, 0, 300 + 350 + 90},
		{"three sixes in a row", 20, 5, 0, 0, 3*300 + 350 + 2*90},
		// 8 crimson and 5 gold are missing then: a mixed box at 62.5 brings 4 and 4, four singles the crimson ones, a five the last gold one.
		{"two sixes on the shelf", 20, 5, 0, 2, 2*300 + 500 + 4*90 + 350},
		{"six there already", 7, 5, 6, 0, 350 + 90},
		{"more there than is needed", 7, 5, 9, 0, 350},
	} {
		s := Shop{Offers: []Offer{
			{Item: ball("crimson"), Name: "single", Pack: Quantity{Pieces: 1}, Price: decimal.New(90, -2)},
			{Item: ball("crimson"), Name: "six", Pack: Quantity{Pieces: 6}, Price: decimal.New(300, -2), Shelf: row.sixes},
			{Name: "mixed", Contents: []Lot{{ball("crimson"), Quantity{Pieces: 4}}, {ball("gold"), Quantity{Pieces: 4}}}, Price: decimal.New(500, -2)},
			{Item: ball("gold"), Name: "five", Pack: Quantity{Pieces: 5}, Price: decimal.New(350, -2)},
		}}
		if row.owned > 0 {
			s.Owned = []Lot{{ball("crimson"), Quantity{Pieces: row.owned}}}
		}
		needs := []Need{{Item: ball("crimson"), Quantity: Quantity{Pieces: row.crimson}}, {Item: ball("gold"), Quantity: Quantity{Pieces: row.gold}}}
		for work := int64(0); ; work += 10 {
			c := newChecker("Shop.List")
			c.work = work
			l, err := s.list(c, wishes(needs))
			if err != nil && work < 10_000 {
				continue
			}
			if err != nil || !l.Total.Equal(decimal.New(row.cents, -2)) || !l.Bound.LessThan(l.Total) && row.owned < 7 {
				t.Errorf("%s: %v, %v with %d steps, want %d cents", row.reason, l.Total, err, work, row.cents)
			}
			break
		}
	}
}
