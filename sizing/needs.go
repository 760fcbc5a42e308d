package sizing

import (
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// commonPractice is the source of every rule of thumb.
const commonPractice = "common practice"

// Needs returns what a tree takes by rule, each with its basis and source, in this
// order, of which the accent says which of the middle three:
//
//	ornaments  pieces: as many of each type as the tree has whole feet, the middle
//	           of the band of Rules.Each
//	garland    a running length
//	ribbon     a running length
//	picks      pieces
//	lights     pieces: lamps
//
// A rule whose field is zero adds no need. The room is left empty for the caller to
// fill.
//
// It looks only at the height of t, and returns an [units.Error] wrapping [units.ErrRange]
// if that or a field of r is out of its range, and one wrapping [units.ErrName] if a
// is none of the accents.
func (r Rules) Needs(t Tree, a Accent) ([]shopping.Need, error) {
	if int(a) >= len(accentNames) {
		return nil, &units.Error{Func: "sizing.Rules.Needs", Field: "accent", Value: a.String(), Want: listOf(accentNames[:]), Err: units.ErrName}
	}
	types, err := r.Types(t.Height)
	if err != nil {
		return nil, err
	}
	each, err := r.Each(t.Height)
	if err != nil {
		return nil, err
	}
	needs := make([]shopping.Need, 0, 4)
	add := func(kind shopping.Kind, q shopping.Quantity, basis string) {
		if q != (shopping.Quantity{}) {
			needs = append(needs, shopping.Need{Item: shopping.Item{Kind: kind}, Quantity: q, Basis: basis, Source: commonPractice})
		}
	}
	kinds := " types"
	if types == 1 {
		kinds = " type"
	}
	ofEach := wholeFeet(t.Height)
	add(shopping.Ornament, shopping.Quantity{Pieces: types * ofEach},
		strconv.Itoa(types)+kinds+", "+strconv.Itoa(r.TypesPerFoot)+" for each whole foot of "+t.Height.String()+
			"; "+strconv.Itoa(ofEach)+" of each, and "+each.String()+" will do")

	if a == Garland || a == Both {
		length, err := r.Garland(t.Height)
		if err != nil {
			return nil, err
		}
		add(shopping.Garland, shopping.Quantity{Length: length}, basisPerFoot(r.GarlandPerFoot.String(), t.Height))
	}
	if a == Ribbon {
		length, err := r.Ribbon(t.Height)
		if err != nil {
			return nil, err
		}
		add(shopping.Ribbon, shopping.Quantity{Length: length}, basisPerFoot(r.RibbonPerFoot.String(), t.Height))
	}
	if a == Picks || a == Both {
		n, err := r.Picks(t.Height)
		if err != nil {
			return nil, err
		}
		add(shopping.Pick, shopping.Quantity{Pieces: n}, basisPerFoot(strconv.Itoa(r.PicksPerFoot), t.Height))
	}
	n, err := r.Lights(t.Height)
	if err != nil {
		return nil, err
	}
	add(shopping.Light, shopping.Quantity{Pieces: n}, basisPerFoot(strconv.Itoa(r.LightsPerFoot), t.Height))
	return needs, nil
}

// basisPerFoot returns "3 for each foot of 9 ft".
func basisPerFoot(perFoot string, height units.Length) string {
	return perFoot + " for each foot of " + height.String()
}
