package job

import (
	"encoding/json"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Plan is what a request takes: the figures room by room, and what they come
// to as needs. Its String is the sheet for the shop, its JSON is for an app.
type Plan struct {
	Trees    []TreePlan
	Mantels  []MantelPlan
	Needs    []shopping.Need
	Cautions []string
}

// A TreePlan is the figures for one tree.
type TreePlan struct {
	Tree
	OrnamentTypes    int          `json:"ornamentTypes"`
	OrnamentsPerType sizing.Band  `json:"ornamentsPerType"`
	Ornaments        sizing.Band  `json:"ornaments"`
	Picks            int          `json:"picks"`
	Garland          units.Length `json:"garland"`
	Lights           int          `json:"lights"`
	needs            []shopping.Need
}

// A MantelPlan is the figures for one mantel.
type MantelPlan struct {
	Mantel
	BaseGarland units.Length `json:"baseGarland"`
	Picks       int          `json:"picks"`
	Ribbon      units.Length `json:"ribbon"`
	needs       []shopping.Need
}

// Make returns the plan for a request. A value that cannot be planned is a
// [Refusal] that names its place in the request.
func Make(r Request) (Plan, error) {
	var p Plan
	for i, t := range r.Trees {
		tp, err := planTree(t)
		if err != nil {
			return Plan{}, refuse("trees", i, err)
		}
		p.Trees = append(p.Trees, tp)
		p.Needs = append(p.Needs, tp.needs...)
	}
	for i, m := range r.Mantels {
		mp, err := planMantel(m)
		if err != nil {
			return Plan{}, refuse("mantels", i, err)
		}
		p.Mantels = append(p.Mantels, mp)
		p.Needs = append(p.Needs, mp.needs...)
	}
	p.Cautions = cautions(p)
	return p, nil
}

func planTree(t Tree) (TreePlan, error) {
	rules := sizing.CommonPractice()
	p := TreePlan{Tree: t}
	var err error
	if p.OrnamentTypes, err = rules.Types(t.Height); err != nil {
		return TreePlan{}, err
	}
	if p.OrnamentsPerType, err = rules.Each(t.Height); err != nil {
		return TreePlan{}, err
	}
	if p.Ornaments, err = rules.Ornaments(t.Height); err != nil {
		return TreePlan{}, err
	}
	if p.Picks, err = rules.Picks(t.Height); err != nil {
		return TreePlan{}, err
	}
	if p.Garland, err = rules.Garland(t.Height); err != nil {
		return TreePlan{}, err
	}
	if p.Lights, err = rules.Lights(t.Height); err != nil {
		return TreePlan{}, err
	}
	p.needs, err = rules.Needs(sizing.Tree{
		Height: t.Height, Base: t.Width, Taper: t.Taper, Exposure: t.Where,
	}, t.Accent)
	if err != nil {
		return TreePlan{}, err
	}
	inRoom(p.needs, t.Room)
	return p, nil
}

func planMantel(m Mantel) (MantelPlan, error) {
	rules := mantel.CommonPractice()
	p := MantelPlan{Mantel: m}
	var err error
	if p.BaseGarland, err = rules.BaseGarland(m.Length, m.Look); err != nil {
		return MantelPlan{}, err
	}
	if p.Picks, err = rules.Picks(m.Length, m.Look); err != nil {
		return MantelPlan{}, err
	}
	if p.Ribbon, err = rules.Ribbon(m.Look); err != nil {
		return MantelPlan{}, err
	}
	p.needs, err = rules.Needs(mantel.Mantel{Length: m.Length}, m.Look)
	if err != nil {
		return MantelPlan{}, err
	}
	inRoom(p.needs, m.Room)
	return p, nil
}

// inRoom writes the room into each need.
func inRoom(needs []shopping.Need, room string) {
	for i := range needs {
		needs[i].Room = room
	}
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
			"Lights: the maker's label says how many strings may join end to end; discard a string with a broken lamp holder or a bare wire, and switch off when nobody is there.",
			"A cut tree: water it every day, and keep it 3 ft from fire, candles, radiators and vents.")
	}
	if tall {
		list = append(list, "Ladder: on firm level ground, a second person at its foot, never the top step; come down and move it, do not lean out.")
	}
	if len(p.Mantels) > 0 {
		list = append(list,
			"Fireplace: take the garland down before a fire is lit. The local code and the maker of the fireplace decide what may hang near it.")
	}
	return list
}

// MarshalJSON writes the first tree as "tree" and the first mantel as "mantel",
// which is all that most jobs have; further ones follow in "moreTrees" and
// "moreMantels".
func (p Plan) MarshalJSON() ([]byte, error) {
	type need struct {
		Item     string            `json:"item"`
		Room     string            `json:"room,omitempty"`
		Quantity shopping.Quantity `json:"quantity"`
		Basis    string            `json:"basis"`
		Source   string            `json:"source"`
	}
	out := struct {
		Tree        *TreePlan    `json:"tree,omitempty"`
		MoreTrees   []TreePlan   `json:"moreTrees,omitempty"`
		Mantel      *MantelPlan  `json:"mantel,omitempty"`
		MoreMantels []MantelPlan `json:"moreMantels,omitempty"`
		Needs       []need       `json:"needs"`
		Cautions    []string     `json:"cautions"`
	}{Needs: []need{}, Cautions: p.Cautions}
	if len(p.Trees) > 0 {
		out.Tree, out.MoreTrees = &p.Trees[0], p.Trees[1:]
	}
	if len(p.Mantels) > 0 {
		out.Mantel, out.MoreMantels = &p.Mantels[0], p.Mantels[1:]
	}
	for _, n := range p.Needs {
		out.Needs = append(out.Needs, need(n))
	}
	return json.Marshal(out)
}
