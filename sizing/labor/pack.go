package labor

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/internal/pack"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Box is a kind of carton. There are as many as it takes.
type Box struct {
	Name  string       `json:"name"`            // "12-cell box"
	Cells int          `json:"cells"`           // pieces, one in a cell, 1 to 10,000
	Cell  units.Length `json:"cell,omitempty"`  // the largest piece for a cell, up to 100 ft; 0: no dividers, any size, nothing fragile
	Limit units.Mass   `json:"limit,omitempty"` // the most weight, up to twice Lift; 0: Lift
}

// A Thing is so much of one item to pack. A strand is one piece, and so are a string of lights and
// a bag of ties or hooks. A piece with Size and Cell 0 fits any cell.
type Thing struct {
	shopping.Lot
	Room    string     `json:"room,omitempty"`    // where it hung, or "spares"
	Weight  units.Mass `json:"weight,omitempty"`  // of one piece, up to 200 lb
	Fragile bool       `json:"fragile,omitempty"` // goes into cells

	// Cell is the smallest cell that takes a piece, up to 100 ft, if larger than its size. Box labels
	// omit it.
	Cell units.Length `json:"cell,omitempty"`
}

// A Carton is one box and what is in it.
type Carton struct {
	Box    string  `json:"box,omitempty"` // which kind; empty for what no box takes
	Things []Thing `json:"things"`        // of one room
	Label  string  `json:"label"`         // "3 of 7, ticket hall, 14 crimson stars, 3 in", and "two people" above Lift
}

const (
	maxThings  = 10_000
	maxPacked  = 100_000 // pieces
	maxCells   = 10_000
	maxBoxes   = 20
	maxPiece   = 200 * units.Pound
	maxPacking = 10_000_000 // steps
)

// Pack returns the fewest cartons found, and the bounds of their number. A carton holds one room's
// things, fragile ones apart, one piece a cell, within the box's limit, sorted by kind, type, color
// and size where that costs no carton. Sturdy things go into boxes without dividers, if these take
// them. The smallest box that will do is taken. A thing that no box takes is a Carton without a
// Box, last and not counted.
//
// The search ends after 10,000,000 steps, in under a second. ErrFit reports pieces for lengths
// or the reverse, ErrDuplicate two boxes of one name.
//
// A cell is a quarter to half an inch wider than its ball (from memory).
func (r Rates) Pack(things []Thing, boxes []Box) ([]Carton, units.Range[int], error) {
	c := &checker{fn: "Rates.Pack"}
	if r.Lift <= 0 || r.Lift > 100*units.Pound {
		c.fail(units.ErrRange, "/lift", r.Lift.String(), "more than 0 lb, to 100 lb")
	}
	c.style(r.Units)
	things, bins := c.things(things), r.bins(c, boxes)
	if c.err != nil {
		return nil, units.Range[int]{}, c.err
	}
	var p packing
	work := int64(maxPacking)
	for len(things) > 0 { // a room, and what is fragile or not
		n := 1
		for n < len(things) && things[n].Room == things[0].Room && things[n].Fragile == things[0].Fragile {
			n++
		}
		p.group(things[:n], boxes, bins, &work)
		things = things[n:]
	}
	count := len(p.cartons)
	for i := range p.cartons {
		p.cartons[i].Label = strconv.Itoa(i+1) + " of " + strconv.Itoa(count) + ", " + p.cartons[i].label(r)
	}
	for _, t := range p.loose {
		one := Carton{Things: []Thing{t}}
		one.Label = "no box takes it, " + one.label(r)
		if t.Cell > t.Item.Size {
			one.Label += "; wants a cell of " + r.say(t.Cell)
		}
		p.cartons = append(p.cartons, one)
	}
	return p.cartons, units.Range[int]{Min: p.bound, Max: count}, nil
}

// A packing is what is packed so far.
type packing struct {
	cartons []Carton
	bound   int
	loose   []Thing
}

// things checks things, and returns those that there are in the order of packing.
func (c *checker) things(things []Thing) []Thing {
	if len(things) > maxThings {
		c.fail(units.ErrRange, "/things", strconv.Itoa(len(things)), "at most 10,000 things")
		return nil
	}
	var all []Thing
	rooms := map[string]int{}
	pieces := 0
	for i, t := range things {
		if !c.item(at("/things", i, "item"), t.Item) {
			return nil
		}
		c.text(at("/things", i, "room"), t.Room, true)
		c.quantity(at("/things", i, "quantity"), t.Item.Kind, t.Quantity)
		if t.Weight < 0 || t.Weight > maxPiece {
			c.fail(units.ErrRange, at("/things", i, "weight"), t.Weight.String(), "0 lb to 200 lb")
		}
		c.length(at("/things", i, "cell"), t.Cell, maxHeight)
		if t.Quantity.Pieces == 0 && t.Quantity.Length > 0 {
			t.Quantity.Pieces = 1
		}
		if pieces += t.pieces(); pieces > maxPacked {
			c.fail(units.ErrRange, at("/things", i, "quantity"), t.Quantity.String(), "at most 100,000 pieces in all")
		}
		if c.err != nil {
			return nil
		}
		if _, ok := rooms[t.Room]; !ok {
			rooms[t.Room] = len(rooms)
		}
		if t.Quantity.Pieces > 0 {
			all = append(all, t)
		}
	}
	slices.SortStableFunc(all, func(a, b Thing) int {
		fragile := 0
		if a.Fragile != b.Fragile {
			fragile = 1
			if b.Fragile {
				fragile = -1
			}
		}
		return cmp.Or(cmp.Compare(rooms[a.Room], rooms[b.Room]), fragile, cmp.Compare(a.Item.Kind, b.Item.Kind),
			cmp.Compare(a.Item.Type, b.Item.Type), cmp.Compare(a.Item.Color, b.Item.Color), cmp.Compare(a.cell(), b.cell()))
	})
	return all
}

// bins checks boxes, and returns them for the search.
func (r Rates) bins(c *checker, boxes []Box) []pack.Bin {
	if len(boxes) > maxBoxes {
		c.fail(units.ErrRange, "/boxes", strconv.Itoa(len(boxes)), "at most 20 boxes")
	}
	var bins []pack.Bin
	for i, b := range boxes {
		c.text(at("/boxes", i, "name"), b.Name, false)
		if slices.ContainsFunc(boxes[:i], func(o Box) bool { return o.Name == b.Name }) {
			c.fail(units.ErrDuplicate, at("/boxes", i, "name"), b.Name, "a box of its own name")
		}
		c.whole(at("/boxes", i, "cells"), b.Cells, 1, maxCells)
		c.length(at("/boxes", i, "cell"), b.Cell, maxHeight)
		if b.Limit < 0 || b.Limit > 2*r.Lift {
			c.fail(units.ErrRange, at("/boxes", i, "limit"), b.Limit.String(), "0 lb to "+(2*r.Lift).String()+", which two people lift")
		}
		if c.err != nil {
			return nil
		}
		bin := pack.Bin{Cells: b.Cells, Size: int64(b.Cell), Limit: int64(b.Limit)}
		if b.Cell == 0 {
			bin.Size = int64(maxHeight)
		}
		if b.Limit == 0 {
			bin.Limit = int64(r.Lift)
		}
		bins = append(bins, bin)
	}
	return bins
}

// group packs things of one room, all fragile or all not.
func (p *packing) group(things []Thing, boxes []Box, bins []pack.Bin, work *int64) {
	var kinds []int // of the boxes that take them
	var some []pack.Bin
	open := !things[0].Fragile // what is not fragile goes into boxes without dividers, if they take all of it
	for _, t := range things {
		open = open && slices.ContainsFunc(bins, func(b pack.Bin) bool { return b.Size == int64(maxHeight) && b.Fits(t.item()) })
	}
	for i, b := range bins {
		if cells := boxes[i].Cell > 0; cells && !open || !cells && !things[0].Fragile {
			kinds, some = append(kinds, i), append(some, b)
		}
	}
	var packed []Thing
	var items []pack.Item
	for _, t := range things {
		i := t.item()
		if !slices.ContainsFunc(some, func(b pack.Bin) bool { return b.Fits(i) }) {
			p.loose = append(p.loose, t)
			continue
		}
		packed, items = append(packed, t), append(items, i)
	}
	if len(items) == 0 {
		return
	}
	filled, bound := pack.Fewest(items, some, work)
	p.bound += bound
	for _, f := range filled {
		carton := Carton{Box: boxes[kinds[f.Bin]].Name}
		for _, part := range f.Take {
			t := packed[part.Item]
			if !t.bundled() {
				t.Quantity.Pieces = part.Count
			}
			carton.Things = append(carton.Things, t)
		}
		p.cartons = append(p.cartons, carton)
	}
}

// item returns t for the search.
func (t Thing) item() pack.Item {
	return pack.Item{Count: t.pieces(), Weight: int64(t.Weight), Size: int64(t.cell())}
}

// cell returns the narrowest cell that takes a piece, 0 for any.
func (t Thing) cell() units.Length { return max(t.Item.Size, t.Cell) }

// bundled reports whether t is one piece whatever its number: a string of lights, a bag of ties or hooks.
func (t Thing) bundled() bool {
	return t.Item.Kind == shopping.Light || t.Item.Kind == shopping.Tie || t.Item.Kind == shopping.Hook
}

// pieces returns how many cells t takes.
func (t Thing) pieces() int {
	if t.bundled() {
		return min(t.Quantity.Pieces, 1)
	}
	return t.Quantity.Pieces
}

// weight returns what the things weigh, without the box.
func (c Carton) weight() units.Mass {
	sum := units.Mass(0)
	for _, t := range c.Things {
		sum += units.Mass(t.pieces()) * t.Weight
	}
	return sum
}

// label returns what the label says of the room and the contents.
func (c Carton) label(r Rates) string {
	var parts []string
	for i := 0; i < len(c.Things); {
		same := 1 // strings of lights
		for c.Things[i].Item.Kind == shopping.Light && i+same < len(c.Things) && c.Things[i+same] == c.Things[i] {
			same++
		}
		t, told := c.Things[i], false // what is alike but for its cell is told as one
		for k, o := range c.Things {
			if k != i && o.alike(t) {
				told = told || k < i
				t.Quantity.Pieces += o.Quantity.Pieces
			}
		}
		if !told {
			parts = append(parts, t.contents(r, same))
		}
		i += same
	}
	text := ""
	if room := c.Things[0].Room; room != "" {
		text = room + ", "
	}
	text += strings.Join(parts, "; ")
	if c.Things[0].Fragile {
		text += "; fragile"
	}
	if c.weight() > r.Lift {
		text += "; two people"
	}
	return text
}

// alike reports whether things that are no bundles are told as one.
func (t Thing) alike(o Thing) bool {
	return !t.bundled() && t.Item == o.Item && t.Quantity.Length == o.Quantity.Length
}

// contents returns "14 crimson stars, 3 in", "27 picks", "3 strands of garland, 6 ft" or "9 strings of 100 lights".
func (t Thing) contents(r Rates, strings int) string {
	n, i := t.Quantity.Pieces, t.Item
	noun := i.Kind.Count(n)[len(strconv.Itoa(n))+1:]
	switch {
	case i.Type == "":
	case i.Kind == shopping.Ornament:
		noun = plural(i.Type, n) // a star says that it is an ornament
	default:
		noun = i.Type + " " + noun
	}
	if i.Color != "" {
		noun = i.Color + " " + noun
	}
	if t.Quantity.Length > 0 {
		noun = plural("strand", n) + " of " + noun
	}
	text := strconv.Itoa(n) + " " + noun
	if i.Kind == shopping.Light {
		text = countOf(strings, "string") + " of " + text
	}
	if t.Quantity.Length > 0 {
		text += ", " + r.say(t.Quantity.Length)
	}
	if i.Size > 0 {
		text += ", " + r.say(i.Size)
	}
	return text
}

// plural returns a noun for n pieces.
func plural(noun string, n int) string {
	if n == 1 {
		return noun
	}
	last := noun[len(noun)-1]
	before := byte(' ')
	if len(noun) > 1 {
		before = noun[len(noun)-2]
	}
	switch {
	case last == 'y' && !strings.ContainsRune("aeiou", rune(before)):
		return noun[:len(noun)-1] + "ies"
	case strings.ContainsRune("sxz", rune(last)) || last == 'h' && (before == 's' || before == 'c'):
		return noun + "es"
	case 'a' <= last && last <= 'z' || last >= 0x80:
		return noun + "s"
	}
	return noun // "ball 1"
}
