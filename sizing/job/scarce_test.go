package job_test

import (
	"strconv"
	"testing"

	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Ten trees from a shelf nearly sold out, of many types and sizes: too much for the best way to be found, and something is
// bought all the same, no more than is there and for most of the budget, and all of it hangs or is left over.
func TestTenTreesOfAScarceShelf(t *testing.T) {
	if testing.Short() {
		t.Skip("takes a second")
	}
	colors, err := palette.CommonPractice().ParsePalette("navy,silver:metal,ivory")
	if err != nil {
		t.Fatal(err)
	}
	r := job.Request{Colors: colors}
	for i := range 10 {
		r.Trees = append(r.Trees, job.Tree{Tree: sizing.Tree{Height: units.Length(4+i) * units.Foot}, Room: "r" + strconv.Itoa(i)})
	}
	for i := range 60 {
		r.Shop.Offers = append(r.Shop.Offers, shopping.Offer{
			Item: shopping.Item{Kind: shopping.Ornament, Color: colors[i%3].Name, Type: "t" + strconv.Itoa(i), Size: units.Length(1+i%12) * units.Inch / 2},
			Name: "p" + strconv.Itoa(i), Pack: shopping.Quantity{Pieces: 1 + i%12}, Price: decimal.NewFromInt(int64(1 + i%17)), Shelf: shopping.Shelf(1 + i%3),
		})
	}
	for _, budget := range []int64{0, 300} {
		r.Shop.Budget = decimal.NewFromInt(budget)
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		pieces := 0
		for _, purchase := range p.Basket.Purchases {
			there := 0
			for _, b := range purchase.Buys {
				if b.Packs > int(b.Offer.Shelf) {
					t.Errorf("%d of %d %v", b.Packs, b.Offer.Shelf, b.Offer)
				}
				there += b.Packs * b.Offer.Pack.Pieces
			}
			pieces += there
			for _, s := range purchase.Shares {
				there -= s.Gets.Pieces
			}
			for _, l := range purchase.Left {
				there -= l.Quantity.Pieces
			}
			if there != 0 {
				t.Errorf("%d more than hang and are left:\n%v", there, purchase)
			}
		}
		if total := p.Basket.Total.IntPart(); pieces < 100 || budget != 0 && (total < budget*9/10 || total > budget) {
			t.Errorf("%d pieces for %v of %v", pieces, p.Basket.Total, budget)
		}
	}
}
