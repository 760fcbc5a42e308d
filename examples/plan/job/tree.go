package job

import (
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A TreePlan is the figures for one tree, by what it is sized by.
type TreePlan struct {
	Tree
	OrnamentTypes    int
	OrnamentsPerType units.Range[int]
	Ornaments        units.Range[int]
	Picks            int
	Garland          units.Length
	Lights           int
	Grade            string
	Comparison       sizing.Comparison // rule against shape
	Sizes            sizing.Mix        // of round ornaments
	Fit              *sizing.Fit       // nil if the ceiling was not measured
	Ladder           sizing.Ladder     // to lift a usual topper over the tip
	Strings          *Strings          // nil if the label of the lights is not known, or the tree takes none
	Cautions         []units.Caution   // for such a tree in such a room
	needs            []open
}

// Needs returns what the tree takes: its part of [Plan.Needs], which a budget may
// have chosen.
func (p TreePlan) Needs() []shopping.Need { return needsOf(p.needs) }

// Strings is what the lights come to.
type Strings struct {
	lights.Strings
	Runs int
	Load lights.Load
}

// tape returns what the library calls a tree.
func (t Tree) tape() sizing.Tree {
	return sizing.Tree{Height: t.Height, Base: t.Width, Taper: t.Taper, Exposure: t.Where, Kind: t.Kind, Setting: t.Setting}
}

// planTree sizes one tree, by rule and by shape.
func planTree(t Tree, colors palette.Palette) (TreePlan, error) {
	rules, look, tape := sizing.CommonPractice(), sizing.CommonLook(), t.tape()
	p := TreePlan{Tree: t}
	var err error
	if p.Comparison, err = rules.Compare(look, tape, t.SizeBy); err != nil {
		return TreePlan{}, err
	}
	if p.OrnamentTypes, err = rules.Types(t.Height); err != nil {
		return TreePlan{}, err
	}
	cone, err := tape.Cone()
	if err != nil {
		return TreePlan{}, err
	}
	if p.Grade, err = cone.Grade(); err != nil {
		return TreePlan{}, err
	}
	if p.Cautions, err = tape.Cautions(units.InFeetInches); err != nil {
		return TreePlan{}, err
	}
	if p.Ladder, err = (sizing.Room{}).Ladder(tape); err != nil {
		return TreePlan{}, err
	}
	if t.Ceiling != 0 {
		fit, err := sizing.Room{Ceiling: t.Ceiling}.Fit(tape)
		if err != nil {
			return TreePlan{}, err
		}
		p.Fit = &fit
	}

	amounts := p.Comparison.Rule
	if p.OrnamentsPerType, err = rules.Each(t.Height); err != nil {
		return TreePlan{}, err
	}
	if p.Comparison.Way == sizing.ByShape {
		// As many types as by rule, and as many of each as the surface asks for.
		amounts = p.Comparison.Shape
		each := max(1, (amounts[shopping.Ornament].Pieces+p.OrnamentTypes/2)/p.OrnamentTypes)
		p.OrnamentsPerType = units.Range[int]{Min: max(1, each-rules.EachSpread), Max: each + rules.EachSpread}
	}
	p.Ornaments = units.Range[int]{Min: p.OrnamentTypes * p.OrnamentsPerType.Min, Max: p.OrnamentTypes * p.OrnamentsPerType.Max}
	p.Garland, p.Picks, p.Lights = amounts[shopping.Garland].Length, amounts[shopping.Pick].Pieces, amounts[shopping.Light].Pieces
	if p.Sizes, err = rules.Mix(tape, amounts[shopping.Ornament].Pieces); err != nil {
		return TreePlan{}, err
	}
	if t.Label != (Label{}) && p.Lights != 0 {
		if p.Strings, err = t.strings(p.Lights); err != nil {
			return TreePlan{}, err
		}
	}
	accents, err := t.Accent.kinds()
	if err != nil {
		return TreePlan{}, err
	}
	list, err := p.Comparison.Needs(units.InFeetInches, accents...)
	if err != nil {
		return TreePlan{}, err
	}
	p.needs, err = opened(list, t.Room, p.OrnamentTypes, p.OrnamentsPerType, colors)
	return p, err
}

// strings returns the strings that have so many lamps, on a circuit of their own.
func (t Tree) strings(lamps int) (*Strings, error) {
	var s Strings
	var err error
	if s.Strings, err = lights.Label(t.Label).ForLamps(lamps); err != nil {
		return nil, err
	}
	if s.Runs, err = s.Strings.Runs(); err != nil {
		return nil, err
	}
	s.Load, err = s.Strings.Load(lights.Circuit{Volts: 120, Amperes: 15})
	return &s, err
}
