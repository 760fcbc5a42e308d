package main

import (
	"encoding/json"
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"

	"github.com/shopspring/decimal"
)

// post sends a job, and returns the status and the answer.
func post(t *testing.T, body string) (int, map[string]json.RawMessage) {
	t.Helper()
	db, err := open()
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	var rows int
	if err := db.QueryRow(`SELECT COUNT(*) FROM unit`).Scan(&rows); err != nil || rows != 60 {
		t.Fatalf("%d units, %v", rows, err)
	}
	w := httptest.NewRecorder()
	basket(db)(w, httptest.NewRequest("POST", "/basket", strings.NewReader(body)))
	var got map[string]json.RawMessage
	if err := json.Unmarshal(w.Body.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	return w.Code, got
}

// The basket keeps to the budget, and buys crimson and ivory only, of sizes that the catalog has.
func TestBasket(t *testing.T) {
	status, got := post(t, `{"trees":[{"height":"7 ft","room":"hall"}],"colors":"crimson,ivory","shop":{"budget":"250.00"}}`)
	var list shopping.List
	if err := json.Unmarshal(got["basket"], &list); err != nil || status != 200 {
		t.Fatalf("status %d, %v: %s", status, err, got)
	}
	if list.Total.GreaterThan(decimal.NewFromInt(250)) || list.Total.IsZero() || string(got["short"]) != "null" && len(list.Short()) == 0 {
		t.Errorf("total %v, short %s", list.Total, got["short"])
	}
	balls := 0
	for _, p := range list.Purchases {
		for _, b := range p.Buys {
			if i := b.Offer.Item; i.Kind == shopping.Ornament && (i.Color != "crimson" && i.Color != "ivory" || i.Size == 0) {
				t.Errorf("buys %v", i)
			}
		}
		for _, s := range p.Shares {
			if s.Item.Kind == shopping.Ornament {
				balls += s.Gets.Pieces
			}
		}
	}
	// Seven types, 5 to 9 of each: common practice.
	if balls < 35 || balls > 63 {
		t.Errorf("%d ornaments", balls)
	}
}

// A wrong job comes back with the place of each value, and the program is short.
func TestFaults(t *testing.T) {
	status, got := post(t, `{"trees":[{"height":"7"}],"mantels":[{"length":"2 in"}]}`)
	if text := string(got["faults"]); status != 422 || !strings.Contains(text, "/trees/0/height") || !strings.Contains(text, "/mantels/0/length") {
		t.Errorf("status %d: %s", status, text)
	}
	source, err := os.ReadFile("main.go")
	if err != nil || strings.Count(string(source), "\n") > 150 {
		t.Errorf("%d lines, %v", strings.Count(string(source), "\n"), err)
	}
}
