package job_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
)

func mustParse(t *testing.T, text string) job.Request {
	t.Helper()
	r, err := job.ParseRequest([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// A set for 60 and a delivery of 41 are one more than the budget: nothing is bought, and what hangs are the 20 that are owned.
func TestBudgetBelowADelivery(t *testing.T) {
	r := mustParse(t, `{"trees":[{"room":"hall","height":"7 ft","accents":[]}],"shop":{"offers":[{"item":"ornaments","name":"set","pack":49,"price":"60","store":"far"}],"stores":[{"name":"far","delivery":"41"}],"owned":[{"item":"ornaments","quantity":20}],"budget":"100"}}`)
	p := mustMake(t, r)
	hang := 0
	for _, l := range p.Trees[0].Pieces {
		hang += l.Quantity.Pieces
	}
	if hang != 20 || !p.Basket.Total.IsZero() || p.Basket.Least.String() != "101" {
		t.Errorf("%d hang for %v, least %v", hang, p.Basket.Total, p.Basket.Least)
	}
	for _, s := range p.Trees[0].Shares {
		if s.Item.Kind == shopping.Light && s.Gets.Pieces != 0 {
			t.Errorf("%v", s)
		}
	}
}

// A request of many trees, types and colors is planned within an ample budget, each room as full as can be to a few pieces.
func TestBudgetOfManyTrees(t *testing.T) {
	if testing.Short() {
		t.Skip("takes long")
	}
	for _, n := range []int{5, 100} {
		var trees, offers []string
		for i := range n {
			trees = append(trees, `{"room":"r`+strconv.Itoa(i)+`","height":"7 ft","accents":[]}`)
		}
		for _, color := range []string{"crimson", "forestgreen", "gold"} {
			for k := range 5 {
				offers = append(offers, fmt.Sprintf(`{"item":"%s ornaments, t%d","name":"%s %d","pack":6,"price":"4.00"}`, color, k, color, k))
			}
		}
		p := mustMake(t, mustParse(t, `{"trees":[`+strings.Join(trees, ",")+`],"colors":"crimson,forestgreen,gold:metal","shop":{"budget":"5000","offers":[`+strings.Join(offers, ",")+`]}}`))
		for _, tree := range p.Trees {
			hang := 0
			for _, l := range tree.Pieces {
				hang += l.Quantity.Pieces
			}
			if hang < 60 || hang > 63 { // of 35 to 63
				t.Errorf("%d trees: %d hang in %s", n, hang, tree.Room)
			}
		}
		if p.Basket.Total.GreaterThan(p.Basket.Bound.Add(p.Basket.Bound)) || p.Basket.Total.IntPart() > 5000 {
			t.Errorf("%d trees: between %v and %v", n, p.Basket.Bound, p.Basket.Total)
		}
	}
}

// However few types are sold, money that is there makes the fullest tree: 63 pieces.
func TestFewTypesOnAFullTree(t *testing.T) {
	for types := range 9 {
		var offers []string
		for k := range types + 1 {
			offers = append(offers, fmt.Sprintf(`{"item":"ornaments, t%d","name":"t%d","pack":1,"price":"1.00"}`, k, k))
		}
		p := mustMake(t, mustParse(t, `{"trees":[{"room":"hall","height":"7 ft","accents":[]}],"shop":{"budget":"5000","offers":[`+strings.Join(offers, ",")+`]}}`))
		if got := p.Trees[0].Shares[0].Gets.Pieces; got != 63 {
			t.Errorf("%d types: %d hang", types+1, got)
		}
	}
}
