package job_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/fircone/examples/plan/job"
	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// The station in plain sizes: the figures are common practice, worked by hand.
func TestStation(t *testing.T) {
	p, err := job.Make(job.Station())
	if err != nil {
		t.Fatal(err)
	}
	hall := p.Trees[0]
	if hall.OrnamentTypes != 9 || hall.OrnamentsPerType != (units.Range[int]{Min: 7, Max: 11}) || hall.Garland != 81*units.Foot || hall.Picks != 27 {
		t.Errorf("ticket hall: %d types, %v of each, %v, %d picks", hall.OrnamentTypes, hall.OrnamentsPerType, hall.Garland, hall.Picks)
	}
	// By hand: 12 ft less 1 ft is 11 ft; 9 strings of 5 W; 81 shared 40/30/20/10.
	if hall.Fit == nil || hall.Fit.Tallest != 11*units.Foot || hall.Strings == nil || hall.Strings.Count != 9 || hall.Strings.Load.Power != 45*units.Watt {
		t.Errorf("ticket hall: fit %v, strings %v", hall.Fit, hall.Strings)
	}
	tea := p.Mantels[0]
	if tea.BaseGarland != 88*units.Inch || tea.Picks != 8 || tea.Hanging.Left != units.Foot || tea.Hanging.Right != units.Foot {
		t.Errorf("tea room: %v, %d picks, %v", tea.BaseGarland, tea.Picks, tea.Hanging)
	}
}

// Ornaments are shared over the colors without losing one, in every room.
func TestColorsAddUp(t *testing.T) {
	r := job.Station()
	r.Stock = job.Stock{}
	colored, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	r.Colors = palette.Palette{}
	plain, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	count := func(p job.Plan) map[string]int {
		rooms := map[string]int{}
		for _, n := range p.Needs {
			if n.Item.Kind == shopping.Ornament {
				rooms[n.Room] += n.Quantity.Pieces
			}
		}
		return rooms
	}
	if diff := cmp.Diff(count(plain), count(colored)); diff != "" || len(count(plain)) != 3 {
		t.Errorf("ornaments by room, -plain +colored:\n%s", diff)
	}
}

// What is bought and owned covers each room's share, the shares lie in their
// bands, the budget is kept, and the costs add up to the total.
func TestBasketAddsUp(t *testing.T) {
	for _, budget := range []string{"", "290", "300", "345.50", "1000"} {
		r := job.Station()
		r.Stock.Budget = decimal.Decimal{}
		if budget != "" {
			r.Stock.Budget = decimal.RequireFromString(budget)
		}
		p, err := job.Make(r)
		if err != nil {
			t.Fatalf("budget %q: %v", budget, err)
		}
		total := decimal.Zero
		for _, buy := range p.Basket.List.Purchases {
			total = total.Add(buy.Cost)
			need, have := shopping.Quantity{}, buy.Owned
			for _, n := range buy.Shares {
				if n.Room == "" {
					t.Errorf("budget %q: a share of %s is in no room", budget, buy.Items[0])
				}
				need.Pieces += n.Gets.Pieces
				need.Length += n.Gets.Length
			}
			for _, b := range buy.Buys {
				have.Pieces += b.Packs * b.Offer.Pack.Pieces
			}
			if need.Length == 0 && have.Pieces-need.Pieces != buy.Surplus.Pieces {
				t.Errorf("budget %q: %s: %d there, %d needed, %v left over", budget, buy.Items[0], have.Pieces, need.Pieces, buy.Surplus)
			}
		}
		if !total.Equal(p.Basket.List.Total) || budget != "" && total.GreaterThan(r.Stock.Budget) {
			t.Errorf("budget %q: total %v, costs %v", budget, p.Basket.List.Total, total)
		}
	}
}

// The balls of all sizes are as many as the ornaments of all colors, also where a budget
// makes them more than the rule has.
func TestSizesAreOfWhatIsBought(t *testing.T) {
	p, err := job.Make(job.Station())
	if err != nil {
		t.Fatal(err)
	}
	for _, tree := range p.Trees {
		want := 0
		for _, n := range tree.Needs() {
			if n.Item.Kind == shopping.Ornament {
				want += n.Quantity.Pieces
			}
		}
		got := 0
		for _, s := range tree.Sizes {
			got += s.Count
		}
		if got != want {
			t.Errorf("%v: balls of all sizes are %d, ornaments %d", tree.Height, got, want)
		}
	}
}

// A budget that does not do buys what it does, and the list says what would.
func TestBudgetTooSmall(t *testing.T) {
	r := job.Station()
	r.Stock.Budget = decimal.NewFromInt(20)
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	if l := p.Basket.List; l.Total.GreaterThan(r.Stock.Budget) || !l.Least.GreaterThan(r.Stock.Budget) || p.Basket.Missing == nil {
		t.Errorf("%v for %v, the least costs %v", l.Total, r.Stock.Budget, l.Least)
	}
	least := p.Basket.List.Least
	r.Stock.Budget = least
	if p, err = job.Make(r); err != nil || p.Basket.List.Least.GreaterThan(least) || len(p.Basket.Missing) > 0 && p.Basket.List.Total.GreaterThan(least) {
		t.Errorf("the budget %v that was asked for: %v", least, err)
	}
	r.Stock.Budget = least.Sub(decimal.New(1, -2))
	if p, err = job.Make(r); err != nil || !p.Basket.List.Least.Equal(least) {
		t.Errorf("a cent less than %v: %v", least, err)
	}
}

// What the offers do not cover is listed with how far they go, and not dropped.
func TestMissing(t *testing.T) {
	r := job.Request{Trees: []job.Tree{{Room: "hall", Height: 7 * units.Foot}}}
	nine := decimal.NewFromInt(9)
	r.Stock.Offers = []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.Light}, Name: "string", Pack: shopping.Quantity{Pieces: 100}, Price: nine},
		{Item: shopping.Item{Kind: shopping.Garland}, Name: "strand", Pack: shopping.Quantity{Length: 9 * units.Foot}, Price: nine, Shelf: shopping.Left(3)},
	}
	r.Stock.Owned = []shopping.Lot{{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: 30}}}
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	// By hand: 49 ornaments of which 30 are owned, 63 ft of garland of which 27 ft are left.
	got := map[string]string{}
	for _, m := range p.Basket.Missing {
		got[m.Needs[0].Item.String()] = m.Why
	}
	if len(got) != 2 || !strings.Contains(got["ornaments"], "19 short") || !strings.Contains(got["garland"], "36 ft short") {
		t.Errorf("missing: %v", got)
	}
	if got := p.Basket.List.Total.String(); got != "90" {
		t.Errorf("7 strings of 100 and 3 strands at 9: %s", got)
	}
}

// The trees and mantels, the plan and the basket say the same, also where two of them
// stand in one room.
func TestRoomsAndBasketAgree(t *testing.T) {
	apart, together := job.Station(), job.Station()
	for i := range together.Trees {
		together.Trees[i].Room = "hall"
	}
	for _, r := range []job.Request{apart, together} {
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		var all []shopping.Need
		for _, tree := range p.Trees {
			all = append(all, tree.Needs()...)
		}
		for _, m := range p.Mantels {
			all = append(all, m.Needs()...)
		}
		if diff := cmp.Diff(p.Needs, all); diff != "" {
			t.Errorf("-plan +trees and mantels:\n%s", diff)
		}
		for _, buy := range p.Basket.List.Purchases {
			var shares []shopping.Need
			for _, item := range buy.Items {
				for _, n := range all {
					if n.Item == item {
						shares = append(shares, n)
					}
				}
			}
			var needs []shopping.Need
			for _, s := range buy.Shares {
				n := s.Need
				n.Quantity, n.Least, n.Most = s.Gets, 0, 0
				needs = append(needs, n)
			}
			if diff := cmp.Diff(needs, shares); diff != "" {
				t.Errorf("%s, -basket +trees and mantels:\n%s", buy.Items[0], diff)
			}
		}
	}
}

// What the other way of sizing would take is told for the accent that was asked for:
// all of the garland and all of the picks for both.
func TestOtherWayByAccent(t *testing.T) {
	// By hand: a 9 ft tree takes 81/49 of the 21 picks and 700 lights of 7 ft.
	for accent, want := range map[job.Accent]string{
		job.Garland: "ornaments 81, garland 103 ft 8 in, lights 1200",
		job.Ribbon:  "ornaments 81, ribbon 103 ft 8 in, lights 1200",
		job.Picks:   "ornaments 81, picks 35, lights 1200",
		job.Both:    "ornaments 81, garland 103 ft 8 in, picks 35, lights",
	} {
		p, err := job.Make(job.Request{Trees: []job.Tree{{Height: 9 * units.Foot, Accent: accent}}})
		if err != nil || !strings.Contains(p.String(), want) {
			t.Errorf("%v: no %q in\n%v, %v", accent, want, p, err)
		}
	}
}

// A refusal names the place in the request.
func TestRefusals(t *testing.T) {
	for path, change := range map[string]func(*job.Request){
		"trees/1/height":          func(r *job.Request) { r.Trees[1].Height = 0 },
		"trees/0/width":           func(r *job.Request) { r.Trees[0].Width = 100 * units.Foot },
		"trees/0/taper":           func(r *job.Request) { r.Trees[0].Taper = 9 },
		"trees/0/where":           func(r *job.Request) { r.Trees[0].Where = 9 },
		"trees/0/accent":          func(r *job.Request) { r.Trees[0].Accent = 9 },
		"trees/0/ceiling":         func(r *job.Request) { r.Trees[0].Ceiling = 1 },
		"trees/0/string/lamps":    func(r *job.Request) { r.Trees[0].Label.Lamps = -1 },
		"mantels/0/length":        func(r *job.Request) { r.Mantels[0].Length = 0 },
		"mantels/0/look":          func(r *job.Request) { r.Mantels[0].Look = 9 },
		"mantels/0/heavySide":     func(r *job.Request) { r.Mantels[0].Heavy = 9 },
		"mantels/0/depth":         func(r *job.Request) { r.Mantels[0].Depth = -1 },
		"mantels/0/opening/width": func(r *job.Request) { r.Mantels[0].Opening.Width = 60 * units.Foot },
		"mantels/0/swags":         func(r *job.Request) { r.Mantels[0].Swags = -1 },
		"mantels/0/hookRating":    func(r *job.Request) { r.Mantels[0].Hooks = -1 },
		"mantels/0/garlandWeight": func(r *job.Request) { r.Mantels[0].Weight = -1 },
		"stock/offers/0/price":    func(r *job.Request) { r.Stock.Offers[0].Price = decimal.NewFromInt(-1) },
	} {
		r := job.Station()
		change(&r)
		_, err := job.Make(r)
		var refusal *job.Refusal
		if !errors.As(err, &refusal) {
			t.Errorf("%s: %v", path, err)
			continue
		}
		if got := strings.Join(refusal.Path, "/"); got != path || refusal.Want == "" || refusal.Unwrap() == nil {
			t.Errorf("%s: refused at %s: %v", path, got, err)
		}
	}
}

// A request goes through JSON and comes back, and the plan is the same.
func TestRequestJSON(t *testing.T) {
	r := job.Station()
	data, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	var back job.Request
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatalf("%v\n%s", err, data)
	}
	p1, err1 := job.Make(r)
	p2, err2 := job.Make(back)
	if err1 != nil || err2 != nil || p1.String() != p2.String() {
		t.Errorf("%v, %v: the plans differ:\n%s", err1, err2, cmp.Diff(p1.String(), p2.String()))
	}
}

func TestReadStock(t *testing.T) {
	for text, want := range map[string]string{
		`{"offers": []}`:                  "",
		`{"ofers": []}`:                   "ofers",
		`{"offers": [{"price": "x"}]}`:    "decimal",
		`{"offers": []} {}`:               "more after",
		`{"box": [{"color": "greyish"}]}`: "greyish",
		``:                                "EOF",
	} {
		_, err := job.ReadStock(strings.NewReader(text))
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", text, err, want)
		}
	}
}
