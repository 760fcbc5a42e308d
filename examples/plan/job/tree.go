package job

import (
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A TreePlan is the figures for one tree.
type TreePlan struct {
	Tree
	OrnamentTypes    int
	OrnamentsPerType sizing.Band
	Ornaments        sizing.Band
	Picks            int
	Garland          units.Length
	Lights           int
	Shares           []open // the ornaments by color, if there are colors
	needs            []open
}

// tape returns what the library calls a tree.
func (t Tree) tape() sizing.Tree {
	return sizing.Tree{Height: t.Height, Base: t.Width, Taper: t.Taper, Exposure: t.Where}
}

// planTree sizes one tree.
func planTree(t Tree, colors palette.Palette) (TreePlan, error) {
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
	needs, err := rules.Needs(t.tape(), t.Accent)
	if err != nil {
		return TreePlan{}, err
	}
	p.needs, err = opened(needs, t.Room, "ornaments", p.OrnamentTypes, p.OrnamentsPerType, colors)
	return p, err
}

var _ []shopping.Need
