package job

import (
	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A MantelPlan is the figures for one mantel.
type MantelPlan struct {
	Mantel                       // as it was given, with the drops of its hanging
	Needs      []shopping.Need   `json:"needs"`            // what it takes, ornaments by color
	Shares     []shopping.Share  `json:"shares,omitempty"` // what it gets of them from the basket, and of substitutes
	Spots      []mantel.Spot     `json:"spots"`            // where each thing goes along the shelf
	Loads      *mantel.Loads     `json:"loads,omitempty"`  // nil if the garland was not weighed or there is no hook
	Clearances mantel.Clearances `json:"clearances"`       // how near it comes to the fire
	Steps      []mantel.Step     `json:"steps"`            // the order of work
	cautions   []units.Caution
}

// mantel plans a mantel at a place of the request.
func (d *draft) mantel(f *faulty, colors palette.Palette, m Mantel, at string) {
	rules, before := d.house.Mantels, len(f.list)
	args := []string{
		"m", at, "mantel", at, "length", at + "/length", "look", at + "/hanging/look", "sag", at + "/hanging/sag",
		"hanging", at + "/hanging", "perFoot", at + "/perFoot", "hook", at + "/hook", "garland", at + "/length", "k", at + "/hook",
	}
	ofHouse := func(err error) bool { return f.note(err, "/house/mantels", args...) }
	ofShelf := func(err error) bool { return f.note(err, at, args...) }

	p := MantelPlan{Mantel: m}
	look := m.Hanging.Look
	var err error
	p.Spots, err = rules.Spots(m.Mantel, look)
	ofHouse(err)
	if m.Hanging.Sag == 0 && m.Hanging.Swags > 0 {
		const step = units.Inch / 2
		p.Hanging.Sag = m.Length / units.Length(m.Hanging.Swags) / 6 / step * step
	}
	if m.Hanging.Left == 0 && m.Hanging.Right == 0 {
		hanging, cautions, err := rules.Hang(m.Mantel, p.Hanging)
		if ofHouse(err) {
			p.Hanging, p.cautions = hanging, cautions
		}
	}
	needs, err := rules.Needs(m.Mantel, p.Hanging)
	ofHouse(err)
	hook := m.Hook
	if hook == (mantel.Hook{}) {
		hook.Rating = units.Pound // to look at the weight alone
	} else if _, err := hook.WorkingLoad(); !f.note(err, at+"/hook", args...) {
		hook = mantel.Hook{Rating: units.Pound}
	}
	run, err := m.Hang(p.Hanging)
	if ofShelf(err) && m.PerFoot != 0 {
		loads, err := run.Loads(m.PerFoot, hook)
		if ofShelf(err) && hook == m.Hook {
			p.Loads = &loads
			needs = append(needs, loads.Needs...)
			p.cautions = append(p.cautions, loads.Cautions...)
		}
	}
	if p.Clearances, err = m.Clearances(p.Hanging); ofShelf(err) {
		p.cautions = append(p.cautions, p.Clearances.Cautions...)
	}
	p.Steps, err = mantel.Steps(look, needs)
	ofShelf(err)
	if len(f.list) > before {
		return
	}
	room := dressing{name: m.Room}
	total := 0
	for _, n := range needs {
		if n.Item.Kind == shopping.Ornament {
			total += n.Quantity.Pieces
		}
	}
	if total > 0 {
		if err := room.share(colors, total, nil); !f.note(err, "/colors") {
			return
		}
	}
	p.Needs = room.needs(needs, nil)
	for i := range p.Steps {
		p.Steps[i].Items = planned(p.Steps[i].Items, p.Needs)
	}
	d.Mantels = append(d.Mantels, p)
	d.rooms = append(d.rooms, room)
}

// planned returns the items of a step as the needs have them: ornaments by color.
func planned(items []shopping.Item, needs []shopping.Need) []shopping.Item {
	var list []shopping.Item
	for _, i := range items {
		if i.Kind != shopping.Ornament {
			list = append(list, i)
			continue
		}
		for _, n := range needs {
			if n.Item.Kind == shopping.Ornament {
				list = append(list, n.Item)
			}
		}
	}
	return list
}

// colored returns spots with the ornaments in the colors of pieces, as many as there are. On
// a traditional mantel the two ends are alike, as far as the numbers are even.
func colored(spots []mantel.Spot, pieces []placement.Piece, look mantel.Look) []mantel.Spot {
	var list []mantel.Spot
	var at []int // the places of the ornaments in the list
	left := make([]int, len(pieces))
	total := 0
	for i, p := range pieces {
		left[i] = p.Count
		total += p.Count
	}
	for _, s := range spots {
		if s.Item.Kind == shopping.Ornament {
			if len(at) == total {
				continue
			}
			at = append(at, len(list))
		}
		list = append(list, s)
	}
	// most returns the color of which most is to come, with at least so many, another than the one before if there is one.
	most := func(least, before int) int {
		best := -1
		for i, n := range left {
			if n >= least && (best < 0 || n > left[best] && i != before || best == before) {
				best = i
			}
		}
		return best
	}
	taken := make([]bool, len(at))
	take := func(spot, piece int) {
		list[at[spot]].Item = pieces[piece].Item
		list[at[spot]].Item.Type = ""
		left[piece]--
		taken[spot] = true
	}
	if look == mantel.Traditional {
		before := -1
		for i := len(at)/2 - 1; i >= 0; i-- {
			if piece := most(2, before); piece >= 0 {
				take(i, piece)
				take(len(at)-1-i, piece)
				before = piece
			}
		}
	}
	before := -1
	for i := range at {
		if !taken[i] {
			before = most(1, before)
			take(i, before)
		}
	}
	return list
}
