package golden

import (
	"crypto/sha256"
	"fmt"
	"iter"
	"slices"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
)

func at(p placement.Position) string {
	return fmt.Sprintf("%d %d %d nm", int64(p.X), int64(p.Y), int64(p.Z))
}

// hung writes a place, with which of the pieces hangs there.
func hung(pieces []shopping.Lot) func(placement.Place) string {
	return func(x placement.Place) string {
		return fmt.Sprintf("piece %d up %s turn %d deep %s at %s", number(pieces, x), nm(x.Height), int64(x.Azimuth), nm(x.Depth), at(x.At))
	}
}

// number returns which of the pieces hangs at a place, from 1.
func number(pieces []shopping.Lot, x placement.Place) int {
	return 1 + slices.IndexFunc(pieces, func(p shopping.Lot) bool { return p.Item == x.Item })
}

// series writes how many there are, a digest of them all, and the first, the middle one and the last.
func series[T any](one func(T) string) func([]T) string {
	return func(all []T) string {
		h := sha256.New()
		for _, x := range all {
			fmt.Fprintln(h, one(x))
		}
		s := fmt.Sprintf("%d, digest %x", len(all), h.Sum(nil)[:8])
		if len(all) > 0 {
			s += fmt.Sprintf(", first %s, middle %s, last %s", one(all[0]), one(all[len(all)/2]), one(all[len(all)-1]))
		}
		return s
	}
}

// layouts are ways for trees to stand.
func layouts() []placement.Layout {
	all := []placement.Layout{
		{Tree: sizing.Tree{Height: length("7 ft")}},
		{Tree: sizing.Tree{Height: length("6 ft"), Taper: sizing.Pencil, Exposure: sizing.AgainstWall}, Facing: 30 * placement.Degree},
		{Tree: sizing.Tree{Height: length("8 ft"), Exposure: arc(200)}, Facing: -12_345, Mirror: true},
	}
	for _, t := range measured {
		all = append(all, placement.Layout{Tree: t})
	}
	return all
}

// boards are lists of pieces to hang.
func boards() [][]shopping.Lot {
	mixed := []shopping.Lot{
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "a", Size: length("4 in"), Color: "x"}, Quantity: shopping.Quantity{Pieces: 5}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "b", Size: length("3 in"), Color: "y"}, Quantity: shopping.Quantity{Pieces: 8}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "c", Size: length("2 in"), Color: "x"}, Quantity: shopping.Quantity{Pieces: 13}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "d", Size: length("60 mm")}, Quantity: shopping.Quantity{Pieces: 6}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "e", Color: "z"}, Quantity: shopping.Quantity{Pieces: 9}},
	}
	return [][]shopping.Lot{
		{{Item: shopping.Item{Kind: shopping.Ornament, Type: "a"}, Quantity: shopping.Quantity{Pieces: 30}}},
		{{Item: shopping.Item{Kind: shopping.Ornament, Type: "a", Size: length("2 1/2 in")}, Quantity: shopping.Quantity{Pieces: 12}}, {Item: shopping.Item{Kind: shopping.Ornament, Type: "b", Size: length("2 in")}, Quantity: shopping.Quantity{Pieces: 12}}},
		mixed,
		{{Item: shopping.Item{Kind: shopping.Ornament, Type: "a", Size: length("1 ft")}, Quantity: shopping.Quantity{Pieces: 400}}},
		{},
		{{Item: shopping.Item{Kind: shopping.Ornament, Type: "a"}, Quantity: shopping.Quantity{Pieces: 1}}},
		{{Item: shopping.Item{Kind: shopping.Ornament, Type: "a", Size: length("3 in"), Color: "x"}, Quantity: shopping.Quantity{Pieces: 7}}, {Item: shopping.Item{Kind: shopping.Ornament, Type: "b", Size: length("3 in"), Color: "x"}, Quantity: shopping.Quantity{Pieces: 7}}, {Item: shopping.Item{Kind: shopping.Ornament, Type: "c", Size: length("3 in"), Color: "y"}, Quantity: shopping.Quantity{Pieces: 7}}},
	}
}

func board(pieces []shopping.Lot) string {
	s := ""
	for _, x := range pieces {
		s += fmt.Sprintf("[%d %s %s %q]", x.Quantity.Pieces, x.Item.Type, nm(x.Item.Size), x.Item.Color)
	}
	return s
}

func placementPage(p *page) {
	for _, l := range layouts() {
		text := fmt.Sprintf("%s facing %d mirror %t", said(l.Tree), l.Facing, l.Mirror)
		for _, pieces := range boards() {
			p.add("places of %s on %s = %s", board(pieces), text, or(series(hung(pieces)))(l.Places(pieces)))
		}
		for _, w := range []placement.Winding{
			{Spacing: length("10 in"), Step: length("1 ft")},
			{Spacing: length("6 in"), Step: length("4 in"), Drape: sizing.Drape{Span: length("1 ft"), Sag: length("3 in")}},
			{Spacing: length("100 ft"), Step: length("2 in")},
		} {
			p.add("winding every %s drape %s %s step %s on %s = %s", nm(w.Spacing), nm(w.Drape.Span), nm(w.Drape.Sag), nm(w.Step), text, or(func(seq iter.Seq[placement.Position]) string { return series(at)(slices.Collect(seq)) })(l.Wind(w)))
		}
		pieces := boards()[2]
		places, err := l.Places(pieces)
		if err != nil {
			continue
		}
		for _, o := range []placement.Order{{}, {Ladder: length("4 ft"), Side: length("18 in")}, {Side: length("4 ft")}} {
			s, err := o.Stations(places)
			p.add("order ladder %s side %s on %s = %s", nm(o.Ladder), nm(o.Side), text, or(stations(pieces))(s, err))
		}
	}
	for _, text := range []string{"37.5°", "37.5 degrees", "-90 deg", "0°", "180 DEGREES", "2147483.647°", "2147483.648°", "1.2345°", "90", "", "ten°"} {
		var a placement.Angle
		err := a.UnmarshalText([]byte(text))
		p.add("read angle %q = %s", text, or(func(a placement.Angle) string { return fmt.Sprintf("%d, %q, %s", int64(a), a, num(a.Degrees())) })(a, err))
	}
	for a := -180; a <= 180; a += 15 {
		p.add("clock of %d = %d", a, (placement.Angle(a) * placement.Degree).Clock())
	}
}

// stations writes each station: its ladder and hour, and the pieces in their order.
func stations(pieces []shopping.Lot) func([]placement.Station) string {
	return func(all []placement.Station) string {
		s := ""
		for _, x := range all {
			s += fmt.Sprintf("[ladder %s lift %t %d o'clock %s to %s:", nm(x.Ladder.Size), x.Ladder.Lift, x.Clock, nm(x.From), nm(x.To))
			for _, place := range x.Places {
				s += fmt.Sprintf(" %d %s", number(pieces, place), nm(place.Left))
			}
			s += "]"
		}
		return s
	}
}
