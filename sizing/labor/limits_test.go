package labor_test

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A limit includes its own value: what stands at it is taken. TestRefused has what is beyond.
func TestAtTheLimits(t *testing.T) {
	star := shopping.Item{Kind: shopping.Ornament, Type: "star"}
	garland := shopping.Item{Kind: shopping.Garland}
	n := decimal.NewFromInt
	for _, row := range []struct {
		reason, method string
		put            func(*call)
	}{
		{"500 works", "Rates.Tasks", func(c *call) { c.Work = slices.Repeat(c.Work[:1], 500) }},
		{"5,000 needs", "Rates.Tasks", func(c *call) {
			c.Work[1].Needs, c.Rates.Minutes["picks"] = slices.Repeat(c.Work[1].Needs, 2500), n(0)
		}},
		{"64 bytes", "Rates.Tasks", func(c *call) { c.Work[1].Room = strings.Repeat("x", 64) }},
		{"no room", "Rates.Tasks", func(c *call) { c.Work[1].Room = "" }},
		{"a work up to its own foot", "Rates.Tasks", func(c *call) { c.Work[1].From = c.Work[1].Height }},
		{"100 ft high", "Rates.Tasks", func(c *call) { c.Work[1].Height = 100 * units.Foot }},
		{"a size of 100 ft", "Rates.Tasks", func(c *call) { c.Work[1].Needs[0].Item.Size = 100 * units.Foot }},
		{"a million pieces, and 100,000 minutes", "Rates.Tasks", func(c *call) {
			c.Rates.Pair = 100 * units.Foot
			c.Work[1].Needs, c.Rates.Minutes["picks"] = []shopping.Need{pieces(shopping.Pick, 1_000_000)}, decimal.New(1, -1)
		}},
		{"1,000 km in two strands", "Rates.Tasks", func(c *call) {
			c.Rates.Pair, c.Rates.Minutes["garland"] = 100*units.Foot, decimal.Zero
			c.Work[1].Needs = []shopping.Need{{Item: garland, Quantity: shopping.Quantity{Pieces: 2, Length: 500_000 * units.Meter}}}
		}},
		{"1,000 km in one", "Rates.Tasks", func(c *call) {
			c.Rates.Pair, c.Rates.Minutes["garland"] = 100*units.Foot, decimal.Zero
			c.Work[1].Needs = []shopping.Need{{Item: garland, Quantity: shopping.Quantity{Length: 1_000_000 * units.Meter}}}
		}},
		{"a thousand minutes, four places", "Rates.Tasks", func(c *call) {
			c.Rates.Minutes["artificial tree"], c.Rates.Minutes["mantel"], c.Rates.Minutes["picks"] = n(1000), n(0), decimal.New(12345, -4)
		}},
		{"1,000 percent, and 100", "Rates.Tasks", func(c *call) {
			c.Rates.Percent["above"], c.Rates.Percent["markup"], c.Rates.Percent["down"], c.Rates.Percent["discount"] = n(1000), n(1000), n(100), n(100)
		}},
		{"reach as high as two people's work", "Rates.Tasks", func(c *call) { c.Rates.Reach = c.Rates.Pair }},
		{"a reach and a pair of 100 ft", "Rates.Tasks", func(c *call) { c.Rates.Reach, c.Rates.Pair = 100*units.Foot, 100*units.Foot }},
		{"5,000 tasks", "Rates.Quote", func(c *call) { c.Up = slices.Repeat(c.Up[:1], 5000) }},
		{"a billion person-minutes", "Rates.Quote", func(c *call) {
			c.Up = slices.Repeat([]labor.Task{{Minutes: 100_000, People: 50, Height: 100 * units.Foot, Work: 1_000_000}}, 200)
		}},
		{"a tree of 100 ft to shape", "Rates.Quote", func(c *call) { c.Up[0].Quantity.Length = 100 * units.Foot }},
		{"a thousand visits", "Rates.Quote", func(c *call) { c.Visits = 1000 }},
		{"no visit", "Rates.Quote", func(c *call) { c.Visits = 0 }},
		{"an hour at a million", "Rates.Quote", func(c *call) { c.Rates.Price["hour"] = n(1_000_000) }},
		{"four places", "Rates.Quote", func(c *call) { c.Rates.Places = 4 }},
		{"whole amounts", "Rates.Quote", func(c *call) { c.Rates.Places = 0 }},
		{"goods of a billion, a million packs", "Rates.Quote", func(c *call) {
			c.Goods.Total, c.Goods.Purchases[0].Cost, c.Goods.Purchases[0].Buys[0].Packs = n(1_000_000_000), n(1_000_000_000), 1_000_000
		}},
		{"5,000 purchases", "Rates.Quote", func(c *call) {
			c.Goods.Purchases[0].Cost, c.Goods.Total = n(1), n(5000)
			c.Goods.Purchases = slices.Repeat(c.Goods.Purchases, 5000)
		}},
		{"a crew of 50", "Rates.Schedule", func(c *call) { c.Rates.Crew, c.Tasks[1].People = 50, 50 }},
		{"all of the crew", "Rates.Schedule", func(c *call) { c.Rates.Crew, c.Tasks[1].People = 3, 3 }},
		{"10,000 things", "Rates.Pack", func(c *call) { c.Things = slices.Repeat(c.Things[:1], 10_000) }},
		{"100,000 pieces", "Rates.Pack", func(c *call) { c.Things[1].Quantity.Pieces = 99_999 }},
		{"a piece of 200 lb", "Rates.Pack", func(c *call) { c.Things[1].Weight = 200 * units.Pound }},
		{"20 boxes", "Rates.Pack", func(c *call) {
			c.Boxes = nil
			for i := range 20 {
				c.Boxes = append(c.Boxes, labor.Box{Name: strconv.Itoa(i), Cells: 1 + i})
			}
		}},
		{"what two people lift", "Rates.Pack", func(c *call) { c.Boxes[1].Limit = 80 * units.Pound }},
		{"10,000 cells of 100 ft", "Rates.Pack", func(c *call) { c.Boxes[0].Cells, c.Boxes[0].Cell = 10_000, 100*units.Foot }},
		{"one person lifts 100 lb", "Rates.Pack", func(c *call) { c.Rates.Lift = 100 * units.Pound }},
		{"500 works to take down", "Rates.Dates", func(c *call) { c.Work = slices.Repeat(c.Work[:1], 500) }},
		{"it comes down on the day", "Rates.Dates", func(c *call) { c.Down = c.Stand }},
		{"it stands 3,650 days", "Rates.Dates", func(c *call) { c.Down = c.Stand + 3650 }},
		{"a day of 1,440 minutes", "Rates.Dates", func(c *call) { c.Rates.Minutes["day"] = n(1440) }},
		{"a day of a minute", "Rates.Dates", func(c *call) { c.Rates.Minutes["day"] = n(1) }},
		{"a million minutes", "Rates.Dates", func(c *call) { c.Minute = 1_000_000 }},
		{"5,000 needs to order", "Rates.Dates", func(c *call) { c.Needs = slices.Repeat(c.Needs, 2500) }},
		{"a lead of a year, and of none", "Rates.Dates", func(c *call) {
			c.Rates.Days["picks"], c.Rates.Days["lights"], c.Rates.Days["cut tree"] = 365, 0, 365
		}},
		{"a cut tree of a day", "Rates.Dates", func(c *call) { c.Rates.Days["cut tree"] = 1 }},
		{"5,000 entries", "NextStock", func(c *call) {
			c.Owned = slices.Repeat([]shopping.Lot{{Item: star, Quantity: shopping.Quantity{Pieces: 1}}}, 5000)
			c.Lost = nil
		}},
		{"a million pieces of a kind", "NextStock", func(c *call) { c.Owned[1].Quantity.Pieces = 1_000_000 }},
		{"1,000 km of a kind", "NextStock", func(c *call) {
			c.Owned[1] = shopping.Lot{Item: garland, Quantity: shopping.Quantity{Length: 1_000_000 * units.Meter}}
			c.Lost = nil
		}},
		{"all of it is lost", "NextStock", func(c *call) { c.Lost = slices.Clone(c.Owned) }},
		{"5,000 purchases that are empty", "NextStock", func(c *call) { c.Bought.Purchases = make([]shopping.Purchase, 5000) }},
		{"a million pieces in packs", "NextStock", func(c *call) {
			c.Bought.Purchases[0].Buys[0].Packs, c.Bought.Purchases[0].Buys[0].Offer.Pack.Pieces = 500, 2000
		}},
		{"a million pieces cut", "NextStock", func(c *call) {
			c.Bought.Purchases[0].Cuts[0].Pieces[0].Quantity = shopping.Quantity{Pieces: 500_000, Length: 1}
		}},
		{"5,000 entries come of it, with the ribbons and stars that are there", "NextStock", func(c *call) {
			b := &c.Bought.Purchases[0].Buys[0]
			b.Offer.Contents, b.Packs = []shopping.Lot{{Item: shopping.Item{Kind: shopping.Light}, Quantity: shopping.Quantity{Pieces: 100}}}, 4999
			c.Bought.Purchases[0].Cuts = nil
		}},
	} {
		c := ordinary()
		row.put(c)
		for _, m := range methods {
			if m.name == row.method {
				if _, err := m.run(c); err != nil {
					t.Errorf("%s: %s: %v", m.name, row.reason, err)
				}
			}
		}
	}
}

// An item that cannot be read for its type is not said to be too large.
func TestReasonOfAnItem(t *testing.T) {
	for size, reason := range map[units.Length]error{100 * units.Foot: units.ErrSyntax, 0: units.ErrSyntax, 100*units.Foot + 1: units.ErrRange, -1: units.ErrRange} {
		c := ordinary()
		c.Things[1].Item.Type, c.Things[1].Item.Size = "a, b", size
		if _, _, err := c.Rates.Pack(c.Things, c.Boxes); !errors.Is(err, reason) {
			t.Errorf("%v: %v, want %v", size, err, reason)
		}
	}
}

// An error shows 64 bytes of a value, and that there is more.
func TestValueOfAnError(t *testing.T) {
	for _, row := range []struct{ room, want string }{
		{strings.Repeat("x", 63) + "\n", strings.Repeat("x", 63) + "\n"},
		{strings.Repeat("x", 64) + "\n", strings.Repeat("x", 64) + "..."},
	} {
		_, _, err := labor.StartingRates().Tasks([]labor.Work{{Room: row.room}})
		var e *units.Error
		if !errors.As(err, &e) || e.Value != row.want {
			t.Errorf("%v, want %q", err, row.want)
		}
	}
}

// What an error says is accepted, where it is worked out: names in order, a kind only where one is taken, and what two lift.
func TestWhatIsAccepted(t *testing.T) {
	for _, row := range []struct {
		method, want string
		put          func(*call)
	}{
		{"Rates.Tasks", "artificial tree, day, mantel, or a kind of package shopping", func(c *call) { c.Rates.Minutes["sofa"] = decimal.Zero }},
		{"Rates.Tasks", "above, deposit, discount, down, goods tax, markup, travel tax, work tax", func(c *call) { c.Rates.Percent["sofa"] = decimal.Zero }},
		{"Rates.Tasks", "above, deposit, discount, down, goods tax, markup, travel tax, work tax", func(c *call) { c.Rates.Percent["picks"] = decimal.Zero }},
		{"Rates.Quote", "consultation, hour, visit", func(c *call) { c.Rates.Price["sofa"] = decimal.Zero }},
		{"Rates.Dates", "cut tree, wiring, or a kind of package shopping", func(c *call) { c.Rates.Days["sofa"] = 1 }},
		{"Rates.Pack", "0 lb to 60 lb, which two people lift", func(c *call) { c.Rates.Lift, c.Boxes[1].Limit = 30*units.Pound, 61*units.Pound }},
		{"NextStock", "at most 2, which is all there is of ribbon of 15 ft", func(c *call) { c.Bought.Purchases[0].Cuts[0].Rolls = 3 }},
	} {
		c := ordinary()
		row.put(c)
		for _, m := range methods {
			if m.name != row.method {
				continue
			}
			_, err := m.run(c)
			var e *units.Error
			if !errors.As(err, &e) || e.Want != row.want {
				t.Errorf("%s: %v, want %q", m.name, err, row.want)
			}
		}
	}
}
