package job

import (
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Plan is what a request takes: the figures room by room, and what they come
// to as needs and as a basket. Its String is the sheet for the shop, its JSON is
// for an app.
type Plan struct {
	Trees    []TreePlan
	Mantels  []MantelPlan
	Colors   *ColorPlan // nil if the colors are open
	Needs    []shopping.Need
	Basket   *Basket // nil without a stock
	Cautions []string
}

// Make returns the plan for a request. A value that cannot be planned is a
// [Refusal] that names its place in the request.
func Make(r Request) (Plan, error) {
	var p Plan
	var needs []open
	var err error
	if r.Colors.Len() > 0 {
		if p.Colors, err = planColors(r.Colors, r.Stock.Box); err != nil {
			return Plan{}, refuse(err, "stock")
		}
	}
	for i, t := range r.Trees {
		tp, err := planTree(t, r.Colors)
		if err != nil {
			return Plan{}, refuse(err, "trees", strconv.Itoa(i))
		}
		p.Trees = append(p.Trees, tp)
		needs = append(needs, tp.needs...)
	}
	for i, m := range r.Mantels {
		mp, err := planMantel(m, r.Colors)
		if err != nil {
			return Plan{}, refuse(err, "mantels", strconv.Itoa(i))
		}
		p.Mantels = append(p.Mantels, mp)
		needs = append(needs, mp.needs...)
	}
	if shop := r.Stock.Shop; len(shop.Offers)+len(shop.Owned) > 0 {
		if p.Colors != nil {
			shop.Owned = append(p.Colors.owned(), shop.Owned...)
		}
		if p.Basket, err = fill(shop, needs); err != nil {
			return Plan{}, refuse(err, "stock")
		}
		if err := p.settle(); err != nil {
			return Plan{}, refuse(err, "stock")
		}
	}
	for _, t := range p.Trees {
		p.Needs = append(p.Needs, t.Needs()...)
	}
	for _, m := range p.Mantels {
		p.Needs = append(p.Needs, m.Needs()...)
	}
	p.Cautions = cautions(p)
	return p, nil
}

// settle writes what the basket chose of each open need into the trees and mantels.
// A purchase has one need for each of theirs, in their order. As many ornaments as that makes
// are parted into sizes anew.
func (p *Plan) settle() error {
	chosen := map[shopping.Item][]shopping.Need{} // by item, those still to come
	for _, buy := range p.Basket.List.Purchases {
		for _, share := range buy.Shares {
			n := share.Need
			n.Quantity, n.Least, n.Most = share.Gets, 0, 0
			if share.Short() != (shopping.Quantity{}) {
				n.Quantity = share.Quantity // the rest is to be had elsewhere
			}
			chosen[n.Item] = append(chosen[n.Item], n)
		}
	}
	in := func(needs []open) {
		for i, n := range needs {
			if list := chosen[n.Item]; len(list) > 0 {
				needs[i].Need, chosen[n.Item] = list[0], list[1:]
			}
		}
	}
	for i := range p.Trees {
		t := &p.Trees[i]
		in(t.needs)
		ornaments := 0
		for _, n := range t.needs {
			if n.ornaments {
				ornaments += n.Quantity.Pieces
			}
		}
		var err error
		if t.Sizes, err = sizing.CommonPractice().Mix(t.tape(), ornaments); err != nil {
			return err
		}
	}
	for _, m := range p.Mantels {
		in(m.needs)
	}
	return nil
}

func needsOf(list []open) []shopping.Need {
	needs := make([]shopping.Need, len(list))
	for i, n := range list {
		needs[i] = n.Need
	}
	return needs
}

// An open is a need whose number of pieces may be anything from least to most.
type open struct {
	shopping.Need
	least, most int
	ornaments   bool   // of a tree or a mantel, of one color or all
	brief       string // of what, "3 types, 7 to 11 of each"
}

// opened puts the needs of a room together: ornaments shared out over the
// colors, if there are any, the rest as they are.
func opened(needs []shopping.Need, room string, types int, each units.Range[int], colors palette.Palette) ([]open, error) {
	var list []open
	for _, n := range needs {
		n.Room = room
		o := open{Need: n, least: n.Quantity.Pieces, most: n.Quantity.Pieces, ornaments: n.Item.Kind == shopping.Ornament}
		if o.ornaments {
			if types > 0 {
				o.least, o.most = types*each.Min, types*each.Max
				o.brief = plural(types, "type") + ", " + each.String() + " of each"
			}
			if colors.Len() > 0 {
				shares, err := shareOut(colors, n, types, each)
				if err != nil {
					return nil, err
				}
				list = append(list, shares...)
				continue
			}
		}
		list = append(list, o)
	}
	return list, nil
}

// cautions returns those that this plan calls for. They are the usual ones and
// stand in for no label, no code and no licensed person.
func cautions(p Plan) []string {
	var list []string
	said := map[string]bool{}
	say := func(texts ...string) {
		for _, text := range texts {
			if text != "" && !said[text] {
				said[text] = true
				list = append(list, strings.ToUpper(text[:1])+text[1:]+".")
			}
		}
	}
	if len(p.Trees) > 0 {
		say("lights: the maker's label says how many strings may join end to end; throw out a string with a broken lamp holder or a bare wire, and switch off when nobody is there")
	}
	for _, t := range p.Trees {
		for _, c := range t.Cautions {
			say(c.String())
		}
		if t.Strings != nil {
			say(t.Strings.Load.Caution.Text)
		}
		if t.Fit != nil {
			say(t.Fit.Caution.Text)
		}
		if t.Ladder.Size > 0 || t.Ladder.Lift {
			for _, c := range t.Ladder.Cautions {
				say("ladder: " + c.Text)
			}
		}
	}
	for _, m := range p.Mantels {
		for _, c := range slices.Concat(m.Hung, m.Clearances.Cautions) {
			say(c.Text)
		}
		if m.Loads != nil {
			for _, c := range m.Loads.Cautions {
				say(c.Text)
			}
		}
	}
	return list
}
