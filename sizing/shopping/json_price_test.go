package shopping_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A price that takes a million digits to write out is refused before it is written.
func TestPricesTooLongToWrite(t *testing.T) {
	huge := decimal.New(1, 2_000_000_000)
	for _, v := range []any{shopping.Offer{Price: huge}, shopping.Offer{Price: decimal.NewFromInt(1), Deals: []shopping.Deal{{Packs: 3, Price: huge}}}} {
		text, err := json.Marshal(v)
		if text != nil || !errors.Is(err, units.ErrRange) {
			t.Errorf("%T: %s, %v", v, text, err)
		}
	}
}
