package labor_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// Every piece is in one carton, of its room, with its like, in a cell that takes it, under the limit; or it is loose since no box takes
// it. The number of cartons is no less than the bound, and the labels count them.
func TestPack(t *testing.T) {
	rooms := []string{"ticket hall", "waiting room"}
	rapid.Check(t, func(t *rapid.T) {
		r := labor.StartingRates()
		boxes := []labor.Box{
			{Name: "small", Cells: rapid.IntRange(1, 24).Draw(t, "cells"), Cell: units.Length(rapid.IntRange(1, 6).Draw(t, "cell")) * units.Inch},
			{Name: "large", Cells: rapid.IntRange(1, 24).Draw(t, "cells"), Cell: units.Length(rapid.IntRange(1, 6).Draw(t, "cell")) * units.Inch, Limit: units.Mass(rapid.IntRange(1, 80).Draw(t, "limit")) * units.Pound},
			{Name: "open", Cells: rapid.IntRange(1, 60).Draw(t, "cells")},
		}
		var things []labor.Thing
		for i := range rapid.IntRange(0, 8).Draw(t, "things") {
			things = append(things, labor.Thing{
				Lot:    shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: "star " + strconv.Itoa(i), Size: units.Length(rapid.IntRange(0, 8).Draw(t, "size")) * units.Inch}, Quantity: shopping.Quantity{Pieces: rapid.IntRange(0, 40).Draw(t, "count")}},
				Room:   rapid.SampledFrom(rooms).Draw(t, "room"),
				Weight: units.Mass(rapid.IntRange(0, 64).Draw(t, "ounces")) * units.Ounce * 4, Fragile: rapid.Bool().Draw(t, "fragile"),
				Cell: units.Length(rapid.SampledFrom([]int{0, 0, 3, 7}).Draw(t, "needs")) * units.Inch,
			})
		}
		cartons, count := packed(t, r, things, boxes)
		left := map[shopping.Item]int{}
		for _, x := range things {
			left[x.Item] += x.Quantity.Pieces
		}
		size := func(x labor.Thing) units.Length { return max(x.Item.Size, x.Cell) }
		fits := func(x labor.Thing, b labor.Box) bool {
			limit := b.Limit
			if limit == 0 {
				limit = r.Lift
			}
			return (b.Cell == 0 && !x.Fragile || b.Cell > 0 && size(x) <= b.Cell) && x.Weight <= limit
		}
		for i, c := range cartons[:count.Max] {
			b := boxes[slices.IndexFunc(boxes, func(b labor.Box) bool { return b.Name == c.Box })]
			cells, weight := 0, units.Mass(0)
			for _, x := range c.Things {
				left[x.Item] -= x.Quantity.Pieces
				cells += x.Quantity.Pieces
				weight += units.Mass(x.Quantity.Pieces) * x.Weight
				if x.Quantity.Pieces < 1 || !fits(x, b) || x.Room != c.Things[0].Room || x.Fragile != c.Things[0].Fragile {
					t.Fatalf("%+v in %+v", x, c)
				}
			}
			limit := b.Limit
			if limit == 0 {
				limit = r.Lift
			}
			if cells > b.Cells || weight > limit || (weight > r.Lift) != strings.HasSuffix(c.Label, "; two people") || !strings.HasPrefix(c.Label, strconv.Itoa(i+1)+" of "+strconv.Itoa(count.Max)+", "+c.Things[0].Room) {
				t.Fatalf("%+v in %+v", c, b)
			}
		}
		for _, c := range cartons[count.Max:] {
			x := c.Things[0]
			left[x.Item] -= x.Quantity.Pieces
			if slices.ContainsFunc(boxes, func(b labor.Box) bool { return fits(x, b) }) || c.Box != "" || len(c.Things) != 1 || !strings.HasPrefix(c.Label, "no box takes it, "+x.Room) {
				t.Fatalf("%+v is loose", c)
			}
		}
		for item, n := range left {
			if n != 0 {
				t.Fatalf("%d of %v are lost", n, item)
			}
		}
		if count.Min > count.Max {
			t.Fatalf("%d cartons, bound %d", count.Max, count.Min)
		}
	})
}

// packed returns the cartons for things.
func packed(t interface{ Fatal(...any) }, r labor.Rates, things []labor.Thing, boxes []labor.Box) ([]labor.Carton, units.Range[int]) {
	cartons, count, err := r.Pack(things, boxes)
	if err != nil {
		t.Fatal(err)
	}
	return cartons, count
}

// A cell is chosen by the size stated or, where none is, by Cell, which no label tells: there is one line for all that are alike. By hand: 3
// balls of 3 in and 2 in cells go together into the 4 in box, which is the only one that takes them; 5 in is over both.
func TestCells(t *testing.T) {
	crimson := shopping.Item{Kind: shopping.Ornament, Color: "crimson"}
	thing := func(i shopping.Item, n int, cell units.Length) labor.Thing {
		return labor.Thing{Lot: shopping.Lot{Item: i, Quantity: shopping.Quantity{Pieces: n}}, Fragile: true, Cell: cell}
	}
	stated := crimson
	stated.Size = 2 * units.Inch
	boxes := []labor.Box{{Name: "small", Cells: 6, Cell: 5 * units.Inch / 2}, {Name: "large", Cells: 12, Cell: 4 * units.Inch}}
	for _, row := range []struct {
		things []labor.Thing
		want   []string
	}{
		{[]labor.Thing{thing(crimson, 3, 3*units.Inch), thing(crimson, 1, 2*units.Inch)}, []string{"large: 1 of 1, 4 crimson ornaments; fragile"}},
		{[]labor.Thing{thing(crimson, 3, 2*units.Inch)}, []string{"small: 1 of 1, 3 crimson ornaments; fragile"}},
		{[]labor.Thing{thing(crimson, 3, 0)}, []string{"small: 1 of 1, 3 crimson ornaments; fragile"}},
		{
			[]labor.Thing{thing(crimson, 1, 3*units.Inch), thing(stated, 2, 0), thing(crimson, 4, 3*units.Inch/2)},
			[]string{"large: 1 of 1, 5 crimson ornaments; 2 crimson ornaments, 2 in; fragile"},
		},
		{[]labor.Thing{thing(stated, 2, 3*units.Inch)}, []string{"large: 1 of 1, 2 crimson ornaments, 2 in; fragile"}},
		{[]labor.Thing{thing(crimson, 3, 5*units.Inch)}, []string{": no box takes it, 3 crimson ornaments; fragile; wants a cell of 5 in"}},
	} {
		cartons, _ := packed(t, labor.StartingRates(), row.things, boxes)
		var got []string
		for _, c := range cartons {
			got = append(got, c.Box+": "+c.Label)
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%v: %q, want %q", row.things, got, row.want)
		}
	}
}

// The texts of labels.
func TestLabels(t *testing.T) {
	thing := func(i shopping.Item, n int, l units.Length) labor.Thing {
		return labor.Thing{Lot: shopping.Lot{Item: i, Quantity: shopping.Quantity{Pieces: n, Length: l}}}
	}
	star := shopping.Item{Kind: shopping.Ornament, Type: "star", Color: "crimson", Size: 3 * units.Inch}
	typed := func(name string) shopping.Item { return shopping.Item{Kind: shopping.Ornament, Type: name} }
	for _, row := range []struct {
		thing labor.Thing
		want  string
	}{
		{thing(star, 14, 0), "14 crimson stars, 3 in"},
		{thing(star, 1, 0), "1 crimson star, 3 in"},
		{thing(shopping.Item{Kind: shopping.Ornament, Color: "gold"}, 2, 0), "2 gold ornaments"},
		{thing(shopping.Item{Kind: shopping.Pick}, 27, 0), "27 picks"},
		{thing(shopping.Item{Kind: shopping.Pick, Type: "mantel"}, 8, 0), "8 mantel picks"},
		{thing(shopping.Item{Kind: shopping.Garland}, 14, 6*units.Foot), "14 strands of garland, 6 ft"},
		{thing(shopping.Item{Kind: shopping.Garland}, 0, 6*units.Foot), "1 strand of garland, 6 ft"},
		{thing(typed("lily"), 2, 0), "2 lilies"},
		{thing(typed("toy"), 2, 0), "2 toys"},
		{thing(typed("fox"), 2, 0), "2 foxes"},
		{thing(typed("finch"), 2, 0), "2 finches"},
		{thing(typed("wreath"), 2, 0), "2 wreaths"},
		{thing(typed("ball 1"), 7, 0), "7 ball 1"},
		{thing(typed("y"), 2, 0), "2 ies"},
		{thing(typed("né"), 2, 0), "2 nés"},
	} {
		p, _ := packed(t, labor.StartingRates(), []labor.Thing{row.thing}, []labor.Box{{Name: "open", Cells: 60}})
		if got := p[0].Label; got != "1 of 1, "+row.want {
			t.Errorf("%s, want %s", got, row.want)
		}
	}
	heavy := labor.Thing{Lot: shopping.Lot{Item: star, Quantity: shopping.Quantity{Pieces: 12}}, Room: "ticket hall", Weight: 4 * units.Pound, Fragile: true}
	p, _ := packed(t, labor.StartingRates(), []labor.Thing{heavy}, []labor.Box{{Name: "12-cell box", Cells: 12, Cell: 3 * units.Inch, Limit: 50 * units.Pound}})
	if got := p[0].Label; got != "1 of 1, ticket hall, 12 crimson stars, 3 in; fragile; two people" {
		t.Error(got)
	}
	codes := ""
	for _, c := range labor.StartingRates().Cautions([]labor.Task{{Height: 21 * units.Foot}}, p) {
		codes += c.Code + " "
	}
	if codes != "work ladder platform two people glass lifting " {
		t.Error(codes)
	}
	lights := thing(shopping.Item{Kind: shopping.Light, Color: "white"}, 100, 0)
	p, _ = packed(t, labor.StartingRates(), []labor.Thing{lights, lights, thing(lights.Item, 50, 0)}, []labor.Box{{Name: "open", Cells: 3}})
	if got := p[0].Label; got != "1 of 1, 2 strings of 100 white lights; 1 string of 50 white lights" {
		t.Error(got)
	}
	for _, things := range [][]labor.Thing{nil, {thing(star, 0, 0)}} {
		if p, count := packed(t, labor.StartingRates(), things, nil); len(p) != 0 || count.Min != 0 {
			t.Errorf("nothing: %+v", p)
		}
	}
}

// Plan, buy, lose two, pack, plan again: the second basket has exactly the two that were lost, where they are sold singly, and what was over the
// first time is used first. Rolls and strands that were cut serve again as they were cut, and strings of lights as strings.
func TestNextStockRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		colors := []string{"crimson", "gold", "ivory"}
		var needs []shopping.Need
		var shop shopping.Shop
		price := decimal.NewFromInt(3)
		for _, color := range colors {
			item := shopping.Item{Kind: shopping.Ornament, Type: "star", Color: color, Size: 3 * units.Inch}
			for _, pack := range []int{1, 6, 12} {
				shop.Offers = append(shop.Offers, shopping.Offer{Item: item, Name: strconv.Itoa(pack), Pack: shopping.Quantity{Pieces: pack}, Price: price.Mul(decimal.NewFromInt(int64(pack))).Sub(decimal.New(int64(pack-1), -1))})
			}
			for _, room := range []string{"ticket hall", "waiting room"}[:rapid.IntRange(1, 2).Draw(t, "rooms")] {
				needs = append(needs, shopping.Need{Item: item, Room: room, Quantity: shopping.Quantity{Pieces: rapid.IntRange(2, 60).Draw(t, "need")}})
			}
			if n := rapid.IntRange(0, 30).Draw(t, "owned"); n > 0 {
				shop.Owned = append(shop.Owned, shopping.Lot{Item: item, Quantity: shopping.Quantity{Pieces: n}})
			}
		}
		ribbon := shopping.Item{Kind: shopping.Ribbon}
		shop.Offers = append(shop.Offers, shopping.Offer{Item: ribbon, Name: "5 yd roll", Pack: shopping.Quantity{Length: 5 * units.Yard}, Price: price})
		needs = append(needs, shopping.Need{Item: ribbon, Quantity: shopping.Quantity{Pieces: rapid.IntRange(1, 9).Draw(t, "bows"), Length: 54 * units.Inch}})

		garland, lights := shopping.Item{Kind: shopping.Garland}, shopping.Item{Kind: shopping.Light}
		shop.Offers = append(shop.Offers,
			shopping.Offer{Item: garland, Name: "6 ft strand", Pack: shopping.Quantity{Length: 6 * units.Foot}, Price: price},
			shopping.Offer{Item: lights, Name: "string of 100", Pack: shopping.Quantity{Pieces: 100}, Price: price})
		for _, room := range []string{"ticket hall", "waiting room"} {
			needs = append(needs, shopping.Need{Item: garland, Room: room, Quantity: shopping.Quantity{Length: units.Length(rapid.IntRange(1, 60).Draw(t, "garland")) * units.Foot}},
				shopping.Need{Item: lights, Room: room, Quantity: shopping.Quantity{Pieces: rapid.IntRange(1, 500).Draw(t, "lamps")}})
		}

		first := must[shopping.List](t)(shop.List(needs))
		lost := shopping.Lot{Item: needs[0].Item, Quantity: shopping.Quantity{Pieces: 2}}
		owned := must[[]shopping.Lot](t)(labor.NextStock(shop.Owned, first, []shopping.Lot{lost}))

		// What there is next year goes into cartons and comes out of them again.
		var things []labor.Thing
		for _, o := range owned {
			things = append(things, labor.Thing{Lot: o, Weight: units.Ounce, Fragile: o.Item.Kind == shopping.Ornament})
		}
		cartons, _ := packed(t, labor.StartingRates(), things, []labor.Box{{Name: "cells", Cells: 24, Cell: 4 * units.Inch}, {Name: "open", Cells: 60}})
		var out []shopping.Lot
		for _, c := range cartons {
			for _, x := range c.Things {
				out = append(out, x.Lot)
			}
		}
		shop.Owned = out
		second := must[shopping.List](t)(shop.List(needs))
		for i, p := range second.Purchases {
			bought := 0
			for _, b := range p.Buys {
				bought += b.Packs * b.Offer.Pack.Pieces
			}
			want := 0
			if p.Shares[0].Item == lost.Item {
				want = 2
				for _, l := range first.Purchases[i].Left {
					want = max(0, want-l.Quantity.Pieces)
				}
			}
			if p.Shares[0].Item.Kind == shopping.Ornament && bought != want || p.Shares[0].Item.Kind != shopping.Ornament && len(p.Buys) > 0 {
				t.Fatalf("bought %d of %v, want %d:\n%v\nfirst:\n%v", bought, p.Shares[0].Item, want, second, first)
			}
		}
	})
}

// By hand: 3 owned rolls of 6 ft, of which 2 are cut into 3 ft and 2 ft with 1 ft left; 2 packs of 2 rolls of 5 yd bought; one roll of 6 ft lost, and one piece of 2 ft.
func TestNextStockByHand(t *testing.T) {
	ribbon := shopping.Item{Kind: shopping.Ribbon}
	foot := func(n units.Length, pieces int) shopping.Lot {
		return shopping.Lot{Item: ribbon, Quantity: shopping.Quantity{Pieces: pieces, Length: n * units.Foot}}
	}
	list := shopping.List{Purchases: []shopping.Purchase{{
		Buys: []shopping.Buy{{Offer: shopping.Offer{Item: ribbon, Name: "2 rolls", Pack: shopping.Quantity{Pieces: 2, Length: 5 * units.Yard}}, Packs: 2}},
		Cuts: []shopping.Cut{{Roll: 6 * units.Foot, Rolls: 2, Pieces: []shopping.Need{{Item: ribbon, Quantity: foot(3, 1).Quantity}, {Item: ribbon, Quantity: foot(2, 0).Quantity}}}},
	}}}
	got := must[[]shopping.Lot](t)(labor.NextStock([]shopping.Lot{foot(6, 3)}, list, []shopping.Lot{foot(6, 0), foot(2, 1)}))
	want := []shopping.Lot{foot(15, 4), foot(3, 2), foot(2, 0), foot(1, 2)}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// By hand: a mixed box of 8 crimson and 8 gold, bought twice, and three strings of 100 lights, of which one is lost.
func TestNextStockOfBoxesAndStrings(t *testing.T) {
	ball := func(color string) shopping.Item { return shopping.Item{Kind: shopping.Ornament, Color: color} }
	lights := shopping.Item{Kind: shopping.Light}
	lot := func(i shopping.Item, n int) shopping.Lot {
		return shopping.Lot{Item: i, Quantity: shopping.Quantity{Pieces: n}}
	}
	list := shopping.List{Purchases: []shopping.Purchase{
		{Buys: []shopping.Buy{{Offer: shopping.Offer{Name: "mixed box", Contents: []shopping.Lot{lot(ball("crimson"), 8), lot(ball("gold"), 8)}}, Packs: 2}}},
		{Buys: []shopping.Buy{{Offer: shopping.Offer{Item: lights, Name: "string", Pack: shopping.Quantity{Pieces: 100}}, Packs: 3}}},
	}}
	got := must[[]shopping.Lot](t)(labor.NextStock([]shopping.Lot{lot(ball("gold"), 5), lot(lights, 50)}, list, []shopping.Lot{lot(lights, 100), lot(ball("crimson"), 2)}))
	want := []shopping.Lot{lot(ball("gold"), 21), lot(lights, 100), lot(lights, 100), lot(lights, 50), lot(ball("crimson"), 14)}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if _, err := labor.NextStock(got, shopping.List{}, []shopping.Lot{lot(lights, 70)}); err == nil || !strings.Contains(err.Error(), "lights, strings of 70") {
		t.Error(err)
	}
}
