package job

import (
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// buy returns what a method of the shop buys. A mantel for which no garland is to be had gets its stockings and
// nothing else: the rest of its needs is in the list, and the money goes elsewhere.
func (d *draft) buy(from func(needs []shopping.Need) (shopping.List, error)) (shopping.List, error) {
	bare := make([]bool, len(d.Mantels))
	wanted, _ := d.needs(bare)
	list, err := from(wanted)
	least := list.Least
	var others []shopping.Need
	for err == nil && d.undressed(list, bare) {
		wanted, others = d.needs(bare)
		list, err = from(wanted)
		list.Least = least
	}
	if !d.budget.IsZero() {
		asPlanned(list, wanted)
	}
	for _, n := range others {
		without(&list, n)
	}
	for i, m := range d.Mantels {
		if !bare[i] {
			continue
		}
		c := units.Caution{Code: "no garland", Source: "common practice", Text: "no garland is to be had for this mantel, so it cannot be dressed, and nothing else is bought for it"}
		if m.Stockings == (mantel.Stockings{}) {
			d.rooms[len(d.Trees)+i].cautions = nil // of what does not hang
		} else {
			c.Text += " but its stockings"
		}
		d.rooms[len(d.Trees)+i].cautions = append(d.rooms[len(d.Trees)+i].cautions, c)
	}
	return list, err
}

// asPlanned lets the shares of a list say how much was planned, not what the budget left of it.
func asPlanned(list shopping.List, needs []shopping.Need) {
	type key struct {
		room string
		item shopping.Item
	}
	planned := make(map[key]shopping.Need, len(needs))
	for _, n := range needs {
		if n.Open != (units.Range[int]{}) {
			planned[key{n.Room, n.Item}] = n
		}
	}
	for _, p := range list.Purchases {
		for i := range p.Shares {
			k := key{p.Shares[i].Room, p.Shares[i].Item}
			if n, ok := planned[k]; ok { // the first; others are substitutes
				p.Shares[i].Quantity, p.Shares[i].Open = n.Quantity, n.Open
				delete(planned, k)
			}
		}
	}
}

// needs returns those of all rooms, and apart from them what a bare mantel has no use for.
func (d *draft) needs(bare []bool) (wanted, others []shopping.Need) {
	n := 0
	for i := range d.rooms {
		n += len(*d.shares(i))
	}
	wanted = make([]shopping.Need, 0, n)
	for i := range d.rooms {
		shares, m := *d.shares(i), i-len(d.Trees)
		stays := func(int) bool { return true }
		if m >= 0 && bare[m] {
			stays = d.Mantels[m].stays()
		}
		for k, s := range shares {
			if stays(k) {
				wanted = append(wanted, s.Need)
			} else {
				others = append(others, s.Need)
			}
		}
	}
	return wanted, others
}

// stays returns which of the shares of a mantel are of use without garland: its stockings, and the hooks that come last.
func (m MantelPlan) stays() func(share int) bool {
	hooks := -1
	for k, s := range m.Shares {
		if s.Item.Kind == shopping.Hook && m.Stockings != (mantel.Stockings{}) {
			hooks = k
		}
	}
	return func(k int) bool { return k == hooks || m.Shares[k].Item.Kind == shopping.Stocking }
}

// undressed finds the mantels for which a list has no garland, and reports whether there are any but those that are
// known. With a budget they are the ones whose garland and hooks, after those before them, cost more than it.
func (d *draft) undressed(list shopping.List, bare []bool) bool {
	there := false
	for i := range d.stock.types {
		there = there || i.Kind == shopping.BaseGarland
	}
	if !there {
		return false // it comes from elsewhere
	}
	last := -1
	for i, m := range d.Mantels {
		if !bare[i] && !has(list, m.Room) {
			last = i
			bare[i] = d.budget.IsZero()
		}
	}
	if d.budget.IsZero() {
		return last >= 0
	}
	if last < 0 && list.Short() == nil {
		return false
	}
	var kept []shopping.Need
	dear := false
	for i, m := range d.Mantels {
		if bare[i] {
			continue
		}
		more := slices.Clone(kept)
		for _, s := range m.Shares {
			if s.Item.Kind == shopping.BaseGarland || s.Item.Kind == shopping.Hook {
				more = append(more, s.Need)
			}
		}
		hung, err := d.goods.List(more)
		if err != nil || hung.Total.GreaterThan(d.budget) || !has(hung, m.Room) {
			bare[i], dear = true, true
			continue
		}
		kept = more
	}
	if !dear && last >= 0 { // all could be had, but not beside the rest
		bare[last], dear = true, true
	}
	return dear
}

// has reports whether a list has garland for the mantel of a room.
func has(list shopping.List, room string) bool {
	for _, p := range list.Purchases {
		for _, s := range p.Shares {
			if s.Item.Kind == shopping.BaseGarland && s.Room == room && s.Gets.Length > 0 {
				return true
			}
		}
	}
	return false
}

// without adds a need to a list, with nothing for it.
func without(list *shopping.List, n shopping.Need) {
	for i := range list.Purchases {
		p := &list.Purchases[i]
		if p.Shares[0].Item == n.Item {
			p.Shares = slices.Insert(p.Shares, 0, shopping.Share{Need: n}) // before the spares
			return
		}
	}
	list.Purchases = append(list.Purchases, shopping.Purchase{Shares: []shopping.Share{{Need: n}}})
}

// fewer warns of a garland that has fewer hooks than it is to hang on.
func (m MantelPlan) fewer() units.Caution {
	for _, s := range m.Shares {
		if s.Item.Kind == shopping.Hook && len(m.Loads[shopping.Garland].Hooks) != 0 {
			if s.Gets.Pieces >= s.Quantity.Pieces {
				break
			}
			return units.Caution{
				Code: "too few hooks", Source: "common practice",
				Text: "there are " + strconv.Itoa(s.Gets.Pieces) + " of " + strconv.Itoa(s.Quantity.Pieces) + " hooks: do not hang the garland on fewer",
			}
		}
	}
	return units.Caution{}
}

// odd notes what the shop has in pieces and is measured by length, or the reverse: no need could ever take it.
func (f *faulty) odd(s shopping.Shop) {
	look := func(list string, n int, field string, i shopping.Item, q shopping.Quantity) {
		long := q.Length != 0
		if i.Kind == 0 || q == (shopping.Quantity{}) || long == i.Kind.Running() {
			return
		}
		want := "a length, as 9 ft, of " + i.Kind.String()
		if long {
			want = "a number of " + i.Kind.String()
		}
		f.refuse(list+strconv.Itoa(n)+field, q.String(), want, units.ErrFit)
	}
	for i, o := range s.Offers {
		if len(o.Contents) == 0 {
			look("/shop/offers/", i, "/pack", o.Item, o.Pack)
		}
	}
	for i, o := range s.Owned {
		look("/shop/owned/", i, "/quantity", o.Item, o.Quantity)
	}
}

// maxUnused is how many things that are not used are named.
const maxUnused = 5

// unused names what is owned, and ornaments of no color, that no need takes, though things of their kind are planned.
func (d *draft) unused() units.Caution {
	type thing struct {
		item shopping.Item
		from string
	}
	var things []thing
	for _, o := range d.goods.Owned {
		things = append(things, thing{o.Item, "owned"})
	}
	for _, o := range d.goods.Offers {
		if len(o.Contents) == 0 && o.Item.Kind == shopping.Ornament && o.Item.Color == "" {
			things = append(things, thing{o.Item, o.Name})
		}
	}
	if things == nil {
		return units.Caution{}
	}
	type taken struct {
		item shopping.Item
		most units.Length
	}
	var all []taken
	for r := range d.rooms {
		for _, s := range *d.shares(r) {
			for k := -1; k < len(s.Instead); k++ {
				n := &s.Need
				if k != -1 {
					n = &s.Instead[k]
				}
				if t := (taken{n.Item, n.MaxSize}); !slices.Contains(all, t) {
					all = append(all, t)
				}
			}
		}
	}
	var names []string
	more := 0
	for _, t := range things {
		i, planned, used := t.item, false, false
		for _, n := range all {
			if n.item.Kind == i.Kind {
				planned = true
				used = used || (n.item.Type == "" || n.item.Type == i.Type) && (n.item.Color == "" || n.item.Color == i.Color) &&
					(n.item.Size == 0 && n.most == 0 || n.item.Size <= i.Size && i.Size <= max(n.item.Size, n.most))
			}
		}
		if !planned || used {
			continue
		}
		switch name := i.String() + " (" + t.from + ")"; {
		case slices.Contains(names, name):
		case len(names) == maxUnused:
			more++
		default:
			names = append(names, name)
		}
	}
	if names == nil {
		return units.Caution{}
	}
	text := "nothing that is planned takes these as they are named: " + strings.Join(names, "; ")
	if more > 0 {
		text += "; and " + strconv.Itoa(more) + " more"
	}
	return units.Caution{Code: "not used", Text: text, Source: "common practice"}
}
