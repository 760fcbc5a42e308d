package job

import (
	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A MantelPlan is the figures for one mantel.
type MantelPlan struct {
	Mantel
	BaseGarland units.Length
	Picks       int
	Ribbon      units.Length
	Hanging     mantel.Hanging
	Spots       []mantel.Spot
	Loads       *mantel.Loads // nil if the garland was not weighed or the hooks are not known
	Clearances  mantel.Clearances
	Hung        []units.Caution // where the ends fall otherwise than by rule
	Steps       []mantel.Step
	needs       []open
}

// Needs returns what the mantel takes: its part of [Plan.Needs], which a budget may
// have chosen.
func (p MantelPlan) Needs() []shopping.Need { return needsOf(p.needs) }

// shelf returns what the library calls a mantel.
func (m Mantel) shelf() mantel.Mantel {
	return mantel.Mantel{Length: m.Length, Height: m.Height, Depth: m.Depth, Opening: mantel.Opening{Width: m.Opening.Width, Height: m.Opening.Height, Below: m.Opening.Below}}
}

// planMantel sizes one mantel, hangs its garland, and looks at what holds it and
// what it comes near.
func planMantel(m Mantel, colors palette.Palette) (MantelPlan, error) {
	rules, shelf := mantel.CommonPractice(), m.shelf()
	p := MantelPlan{Mantel: m}
	var err error
	if p.Picks, err = rules.Picks(m.Length, m.Look); err != nil {
		return MantelPlan{}, err
	}
	if p.Ribbon, err = rules.Ribbon(m.Look); err != nil {
		return MantelPlan{}, err
	}
	if p.Spots, err = rules.Spots(shelf, m.Look, m.Heavy); err != nil {
		return MantelPlan{}, err
	}
	p.Hanging, p.Hung, err = rules.Hang(shelf, mantel.Hanging{Look: m.Look, Heavy: m.Heavy, Thickness: m.Thick})
	if err != nil {
		return MantelPlan{}, err
	}
	if m.Falls {
		p.Hanging.Fall = p.Ribbon / 2
	}
	if m.Swags != 0 {
		p.Hanging.Swags, p.Hanging.Sag = m.Swags, m.Sag
		if m.Sag == 0 && m.Swags > 0 {
			const step = units.Inch / 2
			p.Hanging.Sag = m.Length / units.Length(m.Swags) / 6 / step * step
		}
	}
	dressing, err := rules.Needs(shelf, p.Hanging)
	if err != nil {
		return MantelPlan{}, err
	}
	needs := dressing.Needs
	p.BaseGarland = needs[0].Quantity.Length
	if m.Weight != 0 && m.Hooks != 0 {
		loads, err := shelf.Loads(p.Hanging, m.Weight, mantel.Hook{Rating: m.Hooks})
		if err != nil {
			return MantelPlan{}, err
		}
		p.Loads = &loads
		needs = append(needs, loads.Need())
	}
	if p.Clearances, err = shelf.Clearances(p.Hanging); err != nil {
		return MantelPlan{}, err
	}
	if p.Steps, err = mantel.Steps(m.Look, needs); err != nil {
		return MantelPlan{}, err
	}
	p.needs, err = opened(needs, m.Room, 0, units.Range[int]{}, colors)
	return p, err
}

// violations returns every published figure that the garland falls short of, that of an
// open fire last.
func (p MantelPlan) violations() []mantel.Violation {
	list := p.Clearances.Violations
	if f := p.Clearances.Fire; f != (mantel.Violation{}) {
		list = append(list[:len(list):len(list)], f)
	}
	return list
}
