package job

import (
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
	for _, n := range needs {
		p.Needs = append(p.Needs, n.Need)
	}
	if shop := r.Stock.Shop; len(shop.Offers)+len(shop.Owned) > 0 {
		if p.Colors != nil {
			shop.Owned = append(p.Colors.owned(), shop.Owned...)
		}
		if p.Basket, err = fill(shop, needs); err != nil {
			return Plan{}, refuse(err, "stock")
		}
	}
	p.Cautions = cautions(p)
	return p, nil
}

// An open is a need whose number of pieces may be anything from least to most.
type open struct {
	shopping.Need
	least, most int
}

// opened puts the needs of a room together: ornaments shared out over the
// colors, if there are any, the rest as they are.
func opened(needs []shopping.Need, room, ornaments string, types int, each sizing.Band, colors palette.Palette) ([]open, error) {
	var list []open
	for _, n := range needs {
		n.Room = room
		o := open{n, n.Quantity.Pieces, n.Quantity.Pieces}
		if n.Item == ornaments {
			if types > 0 {
				o.least, o.most = types*each.Min, types*each.Max
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
	tall := false
	for _, t := range p.Trees {
		tall = tall || t.Height > 6*units.Foot
	}
	if len(p.Trees) > 0 {
		list = append(list,
			"Lights: the maker's label says how many strings may join end to end. Throw out a string with a broken lamp holder or a bare wire, and switch off when nobody is there.",
			"A cut tree: water it every day, and keep it 3 ft from fire, candles, radiators and vents.")
	}
	if tall {
		list = append(list, "Ladder: on firm level ground, a second person at its foot, never the top step; come down and move it, do not lean out.")
	}
	said := map[string]bool{}
	for _, m := range p.Mantels {
		more := m.Clearances.Cautions
		if m.Loads != nil {
			more = append(more[:len(more):len(more)], m.Loads.Cautions...)
		}
		for _, c := range more {
			if !said[c] {
				said[c] = true
				list = append(list, strings.ToUpper(c[:1])+c[1:]+".")
			}
		}
	}
	return list
}
