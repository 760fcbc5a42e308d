package mantel

import (
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// What a mantel takes, by the names that needs, spots and steps share.
var (
	itemGarland   = shopping.Item{Kind: shopping.BaseGarland}
	itemPicks     = shopping.Item{Kind: shopping.Pick, Type: "mantel"}
	itemOrnaments = shopping.Item{Kind: shopping.Ornament, Type: "mantel"}
	itemRibbon    = shopping.Item{Kind: shopping.Ribbon, Type: "mantel"}
	itemBells     = shopping.Item{Kind: shopping.Bell}
	itemTies      = shopping.Item{Kind: shopping.Tie}
	itemHooks     = shopping.Item{Kind: shopping.Hook}
)

// The sources of what is not from a published standard.
const (
	commonPractice = "common practice"
	ownFigure      = "a starting figure of our own"
)

// Needs returns what a mantel takes by rule, each with its basis and source, in
// this order:
//
//	base garland       a running length
//	picks, mantel      pieces
//	ornaments, mantel  pieces
//	ribbon, mantel     one whole piece
//	bells              pieces
//	wire ties          pieces: one for each pick and ornament, and one for the ribbon
//
// A rule whose field is zero adds no need. The room is left empty for the caller
// to fill. Hooks depend on how the garland hangs; see [Loads.Need].
//
// Package shopping adds up the needs of one item, over the rooms too. Picks, ornaments and
// ribbon of a mantel are of a type of their own, since they are often not those of the
// tree. Where they are the same, take the type away, before the needs are added up and
// after [Steps] has looked at them:
//
//	for i, n := range needs {
//		if n.Item.Type == "mantel" {
//			needs[i].Item.Type = ""
//		}
//	}
//
// It looks only at the length of m, and returns an [units.Error] wrapping [units.ErrRange]
// if that or a field of r is out of its range, and one wrapping [units.ErrName] if
// look is no look.
func (r Rules) Needs(m Mantel, look Look) ([]shopping.Need, error) {
	const fn = "Rules.Needs"
	rules, err := r.of(fn, m.Length, look)
	if err != nil {
		return nil, err
	}
	garland, err := r.BaseGarland(m.Length, look)
	if err != nil {
		return nil, err
	}
	picks, err := r.Picks(m.Length, look)
	if err != nil {
		return nil, err
	}
	ornaments, err := r.Ornaments(m.Length, look)
	if err != nil {
		return nil, err
	}
	ribbon, err := r.Ribbon(look)
	if err != nil {
		return nil, err
	}
	bells, err := r.Bells(look)
	if err != nil {
		return nil, err
	}

	needs := make([]shopping.Need, 0, 6)
	add := func(item shopping.Item, q shopping.Quantity, basis, source string) {
		needs = append(needs, shopping.Need{Item: item, Quantity: q, Basis: basis, Source: source})
	}
	add(itemGarland, shopping.Quantity{Length: garland},
		"shelf of "+m.Length.String()+" and "+rules.Extra.String()+" more", commonPractice)
	if picks > 0 {
		add(itemPicks, shopping.Quantity{Pieces: picks},
			"1 for each "+rules.PickSpacing.String()+" of "+m.Length.String(), commonPractice)
	}
	if ornaments > 0 {
		gaps := ornaments / rules.OrnamentsPerGap
		among := " between picks"
		if look == Asymmetrical && rules.Layers > 1 {
			among += " of the top layer"
		}
		add(itemOrnaments, shopping.Quantity{Pieces: ornaments},
			strconv.Itoa(rules.OrnamentsPerGap)+" in each of "+plural(gaps, "gap")+among, ownFigure)
	}
	ties := picks + ornaments
	if ribbon > 0 {
		ties++
		add(itemRibbon, shopping.Quantity{Pieces: 1, Length: ribbon}, "one bow or fall "+ribbonPlace(look), commonPractice)
	}
	if bells > 0 {
		add(itemBells, shopping.Quantity{Pieces: bells}, "hung with the ribbon", ownFigure)
	}
	if ties > 0 {
		add(itemTies, shopping.Quantity{Pieces: ties}, tiesBasis(picks, ornaments, ribbon), ownFigure)
	}
	return needs, nil
}

func ribbonPlace(look Look) string {
	if look == Asymmetrical {
		return "at the heavy side"
	}
	return "in the middle"
}

// tiesBasis returns "1 for each of 8 picks and 7 ornaments".
func tiesBasis(picks, ornaments int, ribbon units.Length) string {
	text := "1 for each of " + plural(picks, "pick") + " and " + plural(ornaments, "ornament")
	if ribbon > 0 {
		text += ", 1 for the ribbon"
	}
	return text
}
