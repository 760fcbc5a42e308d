package shopping_test

import (
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Garland of any sort. By hand: the sort that leaves least missing is taken, and of those the cheapest; a tie goes to the first offer.
func TestWhichSort(t *testing.T) {
	const ft = units.Foot
	cedar, pine := shopping.Item{Kind: shopping.Garland, Type: "cedar"}, shopping.Item{Kind: shopping.Garland, Type: "pine"}
	for _, row := range []struct {
		reason             string
		cedarCents         int64
		cedarLeft, pinLeft shopping.Shelf
		cedarLong, pinLong units.Length
		want               string
	}{
		{"the cheaper one", 1000, 0, 0, 9 * ft, 9 * ft, "pine"},
		{"of the cheaper one there is too little", 1000, 0, 1, 9 * ft, 9 * ft, "cedar"},
		{"of both, less is missing of the dearer one", 1000, 1, 1, 9 * ft, 8 * ft, "cedar"},
		{"of both, less is missing of the cheaper one", 1000, 1, 1, 8 * ft, 9 * ft, "pine"},
		{"as little of both: the cheaper one", 1000, 1, 1, 9 * ft, 9 * ft, "pine"},
		{"at one price the first offer", 600, 0, 0, 9 * ft, 9 * ft, "cedar"},
		{"as little of both at one price: the first offer", 600, 1, 1, 9 * ft, 9 * ft, "cedar"},
	} {
		s := shopping.Shop{Offers: []shopping.Offer{
			{Item: cedar, Name: "cedar", Pack: ofLength(0, row.cedarLong), Price: cents(row.cedarCents), Shelf: row.cedarLeft},
			{Item: pine, Name: "pine", Pack: ofLength(0, row.pinLong), Price: cents(600), Shelf: row.pinLeft},
		}}
		p, err := s.Cheapest(garland(18 * ft))
		if err != nil || len(p.Buys) != 1 || p.Buys[0].Offer.Name != row.want {
			t.Errorf("%s: %v, %v, want %s", row.reason, p, err, row.want)
		}
	}
	// Strands of one sort go together: 9 ft and 6 ft of cedar are 17.00, two of 9 ft of pine 18.00.
	s := shopping.Shop{Offers: []shopping.Offer{
		{Item: cedar, Name: "long", Pack: ofLength(0, 9*ft), Price: cents(1000)},
		{Item: cedar, Name: "short", Pack: ofLength(0, 6*ft), Price: cents(700)},
		{Item: pine, Name: "pine", Pack: ofLength(0, 9*ft), Price: cents(900)},
	}}
	if p, err := s.Cheapest(garland(15 * ft)); err != nil || !p.Cost.Equal(cents(1700)) {
		t.Errorf("two lengths of a sort: %v, %v", p, err)
	}
	// Of whole pieces 2 of 3 ft are missing in cedar, which is more than 1 of 5 ft in pine.
	s.Offers = []shopping.Offer{
		{Item: cedar, Name: "cedar", Pack: ofLength(0, 5*ft), Price: cents(100), Shelf: 1},
		{Item: pine, Name: "pine", Pack: ofLength(0, 6*ft), Price: cents(900), Shelf: 1},
	}
	wholes := []shopping.Need{garland(0), garland(0)}
	wholes[0].Quantity, wholes[1].Quantity = ofLength(1, 5*ft), ofLength(2, 3*ft)
	if p, err := s.Cheapest(wholes...); err != nil || len(p.Buys) != 1 || p.Buys[0].Offer.Name != "pine" {
		t.Errorf("whole pieces: %v, %v", p, err)
	}
}

// Slack is used only where it saves money, or where there is too little for all. By hand: two strands of 9 ft are 18 ft, with or without
// it; 17 ft 8 in are 8 ft 10 in for each of two rooms, which lack 2 in of 9 ft.
func TestSlackOnlyWhereItHelps(t *testing.T) {
	const ft, in = units.Foot, units.Inch
	strand := shopping.Offer{Item: shopping.Item{Kind: shopping.Garland}, Name: "strand", Pack: ofLength(0, 9*ft), Price: cents(100)}
	n := garland(18 * ft)
	n.Slack = 3 * in
	if p, err := (shopping.Shop{Offers: []shopping.Offer{strand}}).Cheapest(n); err != nil || p.Shares[0].Gets.Length != 18*ft {
		t.Errorf("where it saves nothing: %v, %v", p, err)
	}
	strand.Pack, strand.Shelf = ofLength(0, 17*ft+8*in), 1
	hall, stairs := garland(9*ft), garland(9*ft)
	hall.Room, stairs.Room, hall.Slack, stairs.Slack = "hall", "stairs", 3*in, 3*in
	p, err := (shopping.Shop{Offers: []shopping.Offer{strand}}).Cheapest(hall, stairs)
	if err != nil || !p.Shares[0].Enough() || !p.Shares[1].Enough() {
		t.Errorf("where there is too little: %v, %v", p, err)
	}
}

// Three types of 27 are wanted, 8 or 9 of each, and the shelf has 9 balls and 8 stars: two types are there. By hand, 10 pieces of
// one other type are missing, and a substitute that is there as balls and as bells is taken as bells, though they are dearer: 10, which
// is more than 9 of each.
func TestSubstituteKeepsTypes(t *testing.T) {
	thing := func(name string, size units.Length) shopping.Item {
		return shopping.Item{Kind: shopping.Ornament, Type: name, Size: size * units.Inch}
	}
	offer := func(i shopping.Item, price int64, left shopping.Shelf) shopping.Offer {
		return shopping.Offer{Item: i, Name: i.Type, Pack: pieces(1), Price: cents(price), Shelf: left}
	}
	s := shopping.Shop{Offers: []shopping.Offer{
		offer(thing("ball", 2), 100, 9), offer(thing("star", 2), 100, 8), offer(thing("ball", 3), 50, 0), offer(thing("bell", 3), 200, 0),
	}}
	n := shopping.Need{
		Item: shopping.Item{Kind: shopping.Ornament, Size: 2 * units.Inch}, Room: "hall", Quantity: pieces(27),
		Types: 3, Each: units.Range[int]{Min: 8, Max: 9}, Instead: []shopping.Need{{Item: shopping.Item{Kind: shopping.Ornament, Size: 3 * units.Inch}}},
	}
	l, err := s.List([]shopping.Need{n})
	if err != nil {
		t.Fatal(err)
	}
	instead := l.Purchases[len(l.Purchases)-1].Shares[0]
	if instead.For != n.Item || instead.Gets.Pieces != 10 || len(instead.Parts) != 1 || instead.Parts[0].Item.Type != "bell" {
		t.Errorf("%v", l)
	}
	// Without stars two types are missing, 18 pieces. Of bells there are 3 and of drops 2, and these 5 are taken: as many of each as there are.
	s.Offers[1] = offer(thing("drop", 3), 300, 2)
	s.Offers[3].Shelf = 3
	if l, err = s.List([]shopping.Need{n}); err != nil {
		t.Fatal(err)
	}
	got := map[string]int{}
	for _, p := range l.Purchases {
		for _, share := range p.Shares {
			if share.For == n.Item && !share.Enough() {
				t.Errorf("%v is not enough", share)
			}
			for _, part := range share.Parts {
				got[part.Item.Type+" "+part.Item.Size.String()] += part.Quantity.Pieces
			}
		}
	}
	if got["bell 3 in"] != 3 || got["drop 3 in"] != 2 || got["ball 2 in"] != 9 {
		t.Errorf("%v of %v", got, l)
	}
}

// What a page says of a share: whole strings only where more hangs than was asked for, and types only where there are several, or the need
// leaves them open.
func TestSharesInWords(t *testing.T) {
	lamps := shopping.Item{Kind: shopping.Light}
	s := shopping.Shop{Offers: []shopping.Offer{
		{Item: lamps, Name: "string", Pack: pieces(100), Price: cents(100)},
		{Item: shopping.Item{Kind: shopping.Pick, Type: "berry"}, Name: "berries", Pack: pieces(1), Price: cents(100)},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "star"}, Name: "stars", Pack: pieces(1), Price: cents(100)},
		{Item: shopping.Item{Kind: shopping.Bell}, Name: "bells", Pack: pieces(1), Price: cents(100), Shelf: 2},
		{Item: shopping.Item{Kind: shopping.Bell, Type: "jingle"}, Name: "jingles", Pack: pieces(1), Price: cents(200)},
		{Item: shopping.Item{Kind: shopping.Garland}, Name: "strand", Pack: ofLength(0, 9*units.Foot), Price: cents(100), Shelf: shopping.SoldOut},
	}}
	for _, row := range []struct {
		need shopping.Need
		says string
		not  string
	}{
		{shopping.Need{Item: lamps, Quantity: pieces(200)}, "2 x 100 lights", "whole strings"},
		{shopping.Need{Item: lamps, Quantity: pieces(150)}, "for 150, in whole strings", ""},
		{shopping.Need{Item: shopping.Item{Kind: shopping.Pick, Type: "berry"}, Quantity: pieces(3)}, "needed 3", "picks, berry 3"},
		{shopping.Need{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: pieces(3)}, "ornaments, star 3", ""},
		{shopping.Need{Item: shopping.Item{Kind: shopping.Bell}, Quantity: pieces(3)}, "needed 3 bells 2 bells, jingle 1", ""},
		{shopping.Need{Item: shopping.Item{Kind: shopping.Bell}, Quantity: pieces(2)}, "needed 2", "needed 2 bells 2"},
		{garland(9 * units.Foot), "not enough: 0 ft", "enough: 0 to"},
	} {
		l, err := s.List([]shopping.Need{row.need})
		text := strings.Join(strings.Fields(l.Page()), " ")
		if err != nil || !strings.Contains(text, row.says) || row.not != "" && strings.Contains(text, row.not) {
			t.Errorf("%v: %v\n%s", row.need, err, l.Page())
		}
	}
}
