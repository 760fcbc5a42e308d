package sizing

import (
	"slices"
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The sources of what is sized by rule and by shape.
const (
	commonPractice = "common practice"
	bySurface      = "geometry; common practice for the look"
)

// Needs returns what a tree takes by rule, each with its basis and source, in this
// order:
//
//	ornaments  pieces: as many of each type as the tree has whole feet, the middle
//	           of the range of Rules.Each
//	garland    a running length
//	ribbon     a running length
//	picks      pieces
//	lights     pieces: lamps
//
// Garland, ribbon and picks are accents, drawn through the branches. Only those
// asked for are listed; ask for one, since two at once look overfull. Two are each
// as much as one alone: neither makes up for the other.
//
// A rule that is zero adds no need. The room is left empty for the caller to fill.
// Only the height of t matters. Asking for a kind that is no accent is an error
// wrapping [units.ErrName].
func (r Rules) Needs(t Tree, accents ...shopping.Kind) ([]shopping.Need, error) {
	const fn = "Rules.Needs"
	if err := checkAccents(fn, accents); err != nil {
		return nil, err
	}
	amounts, err := r.amounts(fn, t)
	if err != nil {
		return nil, err
	}
	each, err := r.each(fn, "/tree/height", t.Height)
	if err != nil {
		return nil, err
	}
	types, ofEach := r.TypesPerFoot*wholeFeet(t.Height), wholeFeet(t.Height)
	ornaments := plural(types, "type") + ", " + strconv.Itoa(r.TypesPerFoot) + " for each whole foot of " + t.Height.String() +
		"; " + strconv.Itoa(ofEach) + " of each, and " + each.String() + " will do"
	return needs(amounts, accents, commonPractice, func(kind shopping.Kind) string {
		if kind == shopping.Ornament {
			return ornaments
		}
		return r.PerFoot[kind].String() + " for each foot of " + t.Height.String()
	}), nil
}

// Needs returns what a tree takes to match the look, each with its basis, in the
// order and with the accents of [Rules.Needs]. What the look does without adds no need. The
// room is left empty for the caller to fill.
func (l Look) Needs(t Tree, accents ...shopping.Kind) ([]shopping.Need, error) {
	const fn = "Look.Needs"
	if err := checkAccents(fn, accents); err != nil {
		return nil, err
	}
	s, err := t.surface(fn, "/tree/")
	if err != nil {
		return nil, err
	}
	amounts, err := l.amounts(fn, s)
	if err != nil {
		return nil, err
	}
	over := " over " + squareFeet(s.area)
	return needs(amounts, accents, bySurface, func(kind shopping.Kind) string {
		if kind.Running() {
			return "wraps " + inches(l.Spacing[kind]) + " apart" + over
		}
		return toSquareFoot(l.Each[kind]) + " to the square foot" + over
	}), nil
}

// needs lists amounts that are not zero: ornaments, the accents asked for, and the rest.
func needs(amounts Amounts, accents []shopping.Kind, source string, basis func(shopping.Kind) string) []shopping.Need {
	list := make([]shopping.Need, 0, len(dressings))
	add := func(kind shopping.Kind) {
		if q := amounts[kind]; q != (shopping.Quantity{}) {
			list = append(list, shopping.Need{Item: shopping.Item{Kind: kind}, Quantity: q, Basis: basis(kind), Source: source})
		}
	}
	add(shopping.Ornament)
	for _, d := range dressings {
		if !d.accent || slices.Contains(accents, d.kind) {
			add(d.kind)
		}
	}
	return list
}

// checkAccents reports a kind that is no accent.
func checkAccents(fn string, accents []shopping.Kind) error {
	for _, a := range accents {
		known, names := false, []string(nil)
		for _, d := range dressings {
			if d.accent {
				known = known || d.kind == a
				names = append(names, d.kind.String())
			}
		}
		if !known {
			return &units.Error{Func: "sizing." + fn, Field: "accents", Value: a.String(), Want: listOf(names), Err: units.ErrName}
		}
	}
	return nil
}
