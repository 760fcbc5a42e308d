package demo

import "testing"

// The station can be read.
func TestStation(t *testing.T) {
	if r := Station(); len(r.Trees) != 2 || len(r.Mantels) != 1 || len(r.Shop.Offers) < 10 {
		t.Errorf("%d trees, %d mantels, %d offers", len(r.Trees), len(r.Mantels), len(r.Shop.Offers))
	}
}
