package job

import (
	"cmp"
	"slices"
	"strconv"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A dressing is the ornaments of a room: types by color by size, shared out once.
type dressing struct {
	name  string
	at    string           // its place in the request
	types int              // 0 on a mantel, whose ornaments are of any types
	each  units.Range[int] // of each type
	rows  []row
	large units.Length // the largest ornament, 0 if any will do

	unhung   bool // the garland does not reach
	cautions []units.Caution
}

// A row is the types of one color, in the order of the palette.
type row struct {
	color string
	share int // percent, 0 without colors
	types []batch
}

// A batch is the pieces of one type.
type batch struct {
	size  units.Length
	count int
	part  bool // of a type that has another batch
}

// equal are the shares in percent where there is no usual rule: see [palette.Palette.Share].
var equal = map[int][]int{5: {20, 20, 20, 20, 20}, 6: {17, 17, 17, 17, 16, 16}}

// share shares total pieces out. Types go to the colors by the usual shares, and every
// type has as many pieces as the next, to one; on a mantel, without types, the
// pieces go by the shares. Each type is of one size of the mix, the one of which most is left, and is taken off the mix.
func (d *dressing) share(colors palette.Palette, total int, mix []shopping.Lot) error {
	var failed error
	if len(colors) == 0 {
		d.rows = []row{{types: make([]batch, max(1, d.types))}}
	} else {
		pieces := total
		if d.types > 0 {
			pieces = d.types
		}
		sharing, err := colors.Share(d.types, pieces, equal[len(colors)]...)
		failed = err
		d.rows = make([]row, 0, len(sharing))
		all := make([]batch, max(d.types, len(sharing)))
		for _, s := range sharing {
			types := s.Types
			if d.types == 0 && s.Pieces != 0 {
				types, all[0].count = 1, s.Pieces
			}
			d.rows = append(d.rows, row{color: s.Swatch.Name, share: s.Share, types: all[:types:types]})
			all = all[types:]
		}
	}
	n := max(1, d.types)
	for i := range d.rows {
		for k := range d.rows[i].types {
			b := &d.rows[i].types[k]
			if len(colors) == 0 || d.types > 0 {
				n--
				b.count = (total + n) / max(1, d.types) // as even as can be, what is over to the first
			}
			if len(mix) == 0 {
				continue
			}
			most := 0
			for s := range mix {
				if mix[s].Quantity.Pieces > mix[most].Quantity.Pieces {
					most = s
				}
			}
			b.size = mix[most].Item.Size
			mix[most].Quantity.Pieces -= b.count
		}
	}
	return failed
}

// A stock says what the shop and the box have: the ornaments by color, and for mantels which types there are of other kinds.
type stock struct {
	colors []known // those that are planned
	types  map[shopping.Item]bool
	near   int // how many sizes stand in for another one by one
}

type known struct {
	color   string
	seen    bool            // some are offered or owned
	offered bool            // some are
	sized   bool            // all that are offered state a size; if none are, all that are owned
	loose   int             // pieces owned that state none
	things  []shopping.Item // those that state a type
	sizes   []units.Length  // those that are stated
}

// stockOf looks through a shop.
func stockOf(s shopping.Shop, colors palette.Palette, mantels bool) stock {
	found := stock{colors: make([]known, max(1, len(colors)))} // without colors, one that has no name
	for i, c := range colors {
		found.colors[i].color = c.Name
	}
	if mantels {
		found.types = map[shopping.Item]bool{}
	}
	see := func(i shopping.Item, owned bool) {
		if i.Kind != shopping.Ornament {
			if mantels {
				found.types[shopping.Item{Kind: i.Kind, Type: i.Type}] = true
			}
			return
		}
		k := found.of(i.Color)
		if k == nil {
			return
		}
		if !k.offered || !owned {
			k.sized = (k.sized || !k.seen) && i.Size > 0
		}
		k.seen, k.offered = true, k.offered || !owned
		if i.Type != "" && !slices.Contains(k.things, i) {
			k.things = append(k.things, i)
		}
		if i.Size != 0 && !slices.Contains(k.sizes, i.Size) {
			k.sizes = append(k.sizes, i.Size)
		}
	}
	for _, o := range s.Offers {
		if len(o.Contents) == 0 {
			see(o.Item, false)
		}
		for _, c := range o.Contents {
			see(c.Item, false)
		}
	}
	for _, o := range s.Owned {
		see(o.Item, true)
		if k := found.of(o.Item.Color); k != nil && o.Item.Kind == shopping.Ornament && o.Item.Size == 0 {
			k.loose += max(0, o.Quantity.Pieces)
		}
	}
	return found
}

// of returns what there is of a color, nil if that is not planned.
func (s stock) of(color string) *known {
	for i := range s.colors {
		if s.colors[i].color == color {
			return &s.colors[i]
		}
	}
	return nil
}

// types returns how many types there are of a size, or of all sizes if that is 0.
func (k known) types(size units.Length) int {
	seen := map[string]bool{}
	for _, i := range k.things {
		if size == 0 || i.Size == size {
			seen[i.Type] = true
		}
	}
	return len(seen)
}

// How many sizes stand in for another one by one: in a job of many trees fewer, since each takes a search.
const (
	maxNear = 4
	allNear = 20 // of all trees
)

// instead returns what stands in for a size of a color: so many of the nearest sizes first, and then any up to the largest.
func (k known) instead(color string, size, largest units.Length, most int) []shopping.Need {
	near := slices.DeleteFunc(slices.Clone(k.sizes), func(s units.Length) bool { return s == size || s > largest })
	off := func(s units.Length) units.Length { return max(s-size, size-s) }
	slices.SortFunc(near, func(a, b units.Length) int { return cmp.Or(cmp.Compare(off(a), off(b)), cmp.Compare(a, b)) })
	var list []shopping.Need
	for _, s := range near[:min(len(near), most)] {
		list = append(list, shopping.Need{Item: shopping.Item{Kind: shopping.Ornament, Color: color, Size: s}, MaxSize: s})
	}
	return append(list, shopping.Need{Item: shopping.Item{Kind: shopping.Ornament, Color: color}, MaxSize: largest})
}

// loosen lets the last batches of a row be those of no stated size that are owned, so many in all, and returns how many are left.
func (r *row) loosen(loose int) int {
	for i := len(r.types) - 1; i >= 0 && loose > 0; i-- {
		b := &r.types[i]
		n := min(b.count, loose)
		if loose -= n; n == b.count {
			b.size = 0
			continue
		}
		b.count -= n
		r.types = append(r.types, batch{count: n, part: true})
	}
	return loose
}

// sold returns an item of a mantel as it is sold: without its type, where there are such things and none is of that type.
func (s stock) sold(i shopping.Item) shopping.Item {
	if bare := (shopping.Item{Kind: i.Kind}); i.Kind != shopping.Ornament && !s.types[i] && s.types[bare] {
		return bare
	}
	return i
}

// A group is the types of one color that are asked for together.
type group struct {
	size         units.Length // 0: any
	types, count int
}

// groups appends to a list the types of a row by size where the shelves have sizes, the largest first, or all in one.
func (r *row) groups(list []group, sized bool) []group {
	for _, b := range r.types {
		if !sized {
			b.size = 0
		}
		at := 0
		for at < len(list) && list[at].size != b.size {
			at++
		}
		if at == len(list) {
			list = append(list, group{size: b.size})
		}
		if list[at].count += b.count; !b.part {
			list[at].types++
		}
	}
	slices.SortFunc(list, func(a, b group) int { return cmp.Compare(b.size, a.size) })
	return list
}

// sizesUnsaid is said where offers of a color state no size, so that what is bought may be of any.
var sizesUnsaid = units.Caution{
	Code: "sizes not stated", Source: "common practice",
	Text: "not every offer states a size: buy ornaments of the sizes that hang",
}

// needs puts the needs of the room together: ornaments by color, and by size where
// the shelves have sizes; the rest as it is. Without a basket they get all of it.
func (d *dressing) needs(list []shopping.Need, stock stock) []shopping.Share {
	needs := make([]shopping.Share, 0, len(list)+len(d.rows))
	var groups [4]group
	for _, n := range list {
		n.Room = d.name
		if n.Item.Kind != shopping.Ornament {
			needs = append(needs, shopping.Share{Need: n, Gets: n.Quantity})
			continue
		}
		for i := range d.rows {
			r := &d.rows[i]
			known := stock.of(r.color)
			switch {
			case d.types == 0:
			case known.sized:
				known.loose = r.loosen(known.loose)
			case known.offered && len(r.types) > 1 && !slices.Contains(d.cautions, sizesUnsaid):
				d.cautions = append(d.cautions, sizesUnsaid)
			}
			for _, g := range r.groups(groups[:0], known.sized) {
				o := n
				o.Item = shopping.Item{Kind: shopping.Ornament, Color: r.color, Size: g.size}
				o.Quantity.Pieces = g.count
				switch {
				case g.size > 0:
					o.Instead = known.instead(r.color, g.size, d.large, stock.near)
				case d.large != 0 && slices.ContainsFunc(known.sizes, func(s units.Length) bool { return s > d.large }):
					o.MaxSize = d.large
				}
				had := min(g.types, known.types(g.size))
				if known.sized && g.size == 0 {
					had = 0 // those that are owned
				}
				d.open(&o, g.types, had)
				d.reason(&o, r, g.types)
				needs = append(needs, shopping.Share{Need: o, Gets: o.Quantity})
			}
		}
	}
	return needs
}

// open says from how many to how many of each type will do, and of how many types where so many are to be had.
func (d *dressing) open(n *shopping.Need, types, had int) {
	if d.types == 0 {
		return
	}
	n.Open = units.Range[int]{Min: min(n.Quantity.Pieces, types*d.each.Min), Max: max(n.Quantity.Pieces, types*d.each.Max)}
	if had > 1 {
		least := min(d.each.Min, n.Quantity.Pieces/had)
		n.Types, n.Each = had, units.Range[int]{Min: max(1, least), Max: max(d.each.Max, (n.Open.Max+had-1)/had)}
	}
}

// reason says how a share of the ornaments comes about: on a tree, whose comparison says why so many in all, that alone.
func (d *dressing) reason(n *shopping.Need, r *row, types int) {
	share := ""
	if r.color != "" {
		share = "a share of " + strconv.Itoa(r.share) + " %"
	}
	switch typed := d.types > 0 && (r.color != "" || n.Item.Size > 0); {
	case typed && share != "":
		n.Basis = strconv.Itoa(types) + " of " + say(d.types, "type") + ", " + share
	case typed:
		n.Basis = strconv.Itoa(types) + " of " + say(d.types, "type")
	case share != "":
		n.Basis += "; " + share
	}
}

// hung returns the pieces of the room as they are hung: its batches with the numbers
// that the shares of the room get. Where a share says which types or sizes it gets, it is those.
func (d *dressing) hung(shares []shopping.Share) []shopping.Lot {
	types := 0
	for _, r := range d.rows {
		types += len(r.types)
	}
	var list []shopping.Lot
	label := 0
	add := func(i shopping.Item, n int) {
		if n == 0 {
			return
		}
		if label++; list == nil {
			list = make([]shopping.Lot, 0, types)
		}
		if i.Type == "" {
			i.Type = "ball " + strconv.Itoa(label)
		}
		list = append(list, shopping.Lot{Item: i, Quantity: shopping.Quantity{Pieces: n}})
	}
	for _, r := range d.rows {
		of := func(s *shopping.Share) bool { return s.Item.Kind == shopping.Ornament && s.Item.Color == r.color }
		sized := false
		for i := range shares {
			if s := &shares[i]; of(s) {
				sized = sized || s.Item.Size > 0
				for _, p := range s.Parts {
					if p.Item.Color = r.color; told(p.Item) {
						add(p.Item, p.Quantity.Pieces)
					}
				}
			}
		}
		gets := func(size units.Length) (n int) {
			for i := range shares {
				if s := &shares[i]; of(s) && s.Item.Size == size {
					n += untold(s)
				}
			}
			return n
		}
		// The batches of each size go by what was got of the size, or of the color where the needs have no sizes.
		alike := func(a, b batch) bool { return !sized || a.size == b.size }
		for k, b := range r.types {
			if slices.ContainsFunc(r.types[:k], func(o batch) bool { return alike(o, b) }) {
				continue
			}
			n, i := 0, 0
			for _, o := range r.types[k:] {
				if alike(o, b) {
					n++
				}
			}
			size := b.size
			if !sized {
				size = 0
			}
			all := gets(size)
			for _, o := range r.types[k:] {
				if alike(o, b) { // as even as can be, what is over to the first
					i++
					add(shopping.Item{Kind: shopping.Ornament, Color: r.color, Size: o.size}, (all+n-i)/n)
				}
			}
		}
		var others []units.Length // sizes in place of what was not to be had
		for i := range shares {
			if s := &shares[i]; sized && of(s) && !slices.Contains(others, s.Item.Size) && !slices.ContainsFunc(r.types, func(o batch) bool { return o.size == s.Item.Size }) {
				others = append(others, s.Item.Size)
				add(shopping.Item{Kind: shopping.Ornament, Color: r.color, Size: s.Item.Size}, gets(s.Item.Size))
			}
		}
	}
	return list
}

// told reports whether an item says more than the color.
func told(i shopping.Item) bool { return i.Type != "" || i.Size > 0 }

// untold returns how many pieces a share gets of which its parts say no more than the color.
func untold(s *shopping.Share) int {
	n := s.Gets.Pieces
	for _, p := range s.Parts {
		if told(p.Item) {
			n -= p.Quantity.Pieces
		}
	}
	return n
}

// maxLamps is how many lamps a load is reckoned of at most.
const maxLamps = 1_000_000

// settle writes what the basket gets for each room into the rooms, and what hangs there.
func (d *draft) settle() {
	if d.Basket != nil {
		d.given()
	}
	for i := range d.rooms {
		picks, lamps, other := 0, 0, false
		shares := *d.shares(i)
		for k := range shares {
			s := &shares[k]
			switch s.Item.Kind {
			case shopping.Pick:
				picks += s.Gets.Pieces
			case shopping.Light:
				lamps += s.Gets.Pieces
				other = other || i < len(d.Trees) && slices.ContainsFunc(s.Parts, func(l shopping.Lot) bool { return l.Quantity.Pieces != d.Trees[i].Lights.Lamps })
			}
		}
		pieces := d.rooms[i].hung(shares)
		if i >= len(d.Trees) {
			m := &d.Mantels[i-len(d.Trees)]
			d.rehang(i - len(d.Trees))
			m.hang(d.house.Mantels, d.stock, pieces)
			if has(shopping.List{Purchases: []shopping.Purchase{{Shares: m.Shares}}}, m.Room) {
				d.rooms[i].cautions = append(d.rooms[i].cautions, m.fewer())
			}
			continue
		}
		t := &d.Trees[i]
		if picks > 0 {
			pieces = append(pieces, shopping.Lot{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: picks}})
		}
		t.Pieces = pieces
		if lamps != t.Planned[shopping.Light].Pieces {
			t.strings(&faulty{}, d.house, "", min(lamps, maxLamps)) // by a label that has been looked at
		}
		if other && t.Strings.Count > 0 {
			d.rooms[i].cautions = append(d.rooms[i].cautions, units.Caution{
				Code: "other strings", Source: "common practice",
				Text: "not all strings of lights are those of the label, by which their load is reckoned: add up the watts on the labels of those that hang, and join none that differ",
			})
		}
	}
}

// given gives the shares of the basket to the rooms: those of its needs in their order, and substitutes.
func (d *draft) given() {
	of := map[string][]*shopping.Share{} // by the name of a room, those still to be given
	for i := range d.rooms {
		name := d.rooms[i].name
		of[name] = slices.Grow(of[name], len(*d.shares(i)))
	}
	for i := range d.Basket.Purchases {
		shares := d.Basket.Purchases[i].Shares
		for k := range shares {
			if s := &shares[k]; !s.Spare {
				of[s.Room] = append(of[s.Room], s)
			}
		}
	}
	for i, r := range d.rooms {
		mine, rest := *d.shares(i), of[r.name]
		for n := range mine {
			for k, s := range rest {
				if s != nil && s.Item == mine[n].Item {
					mine[n].Gets, mine[n].Parts, mine[n].Replaced = s.Gets, s.Parts, s.Replaced // planned is as before
					rest[k] = nil
					break
				}
			}
		}
	}
	for i, r := range d.rooms { // substitutes
		to := d.shares(i)
		for _, s := range of[r.name] {
			if s != nil {
				*to = append(*to, *s)
			}
		}
	}
}
