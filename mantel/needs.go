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
	itemLights    = shopping.Item{Kind: shopping.Light, Type: "mantel"}
	itemBells     = shopping.Item{Kind: shopping.Bell}
	itemStockings = shopping.Item{Kind: shopping.Stocking}
	itemTies      = shopping.Item{Kind: shopping.Tie}
	itemHooks     = shopping.Item{Kind: shopping.Hook}
)

// The sources of what is not from a published standard.
const (
	commonPractice = "common practice"
	ownFigure      = "a starting figure of our own"
)

// offHearth is how far above the hearth the ends of a garland stay on a low shelf.
//
// Source: a starting figure of our own.
const offHearth = 6 * units.Inch

// Hang returns hanging with Left and Right as the rule has them: half of Extra at each end
// of a traditional mantel, all of it at the heavy end of an asymmetrical one. Nothing falls
// at a wall, and on a low shelf an end stops 6 in above the hearth. A caution then gives the
// figures.
//
// Source: common practice; the 6 in, a starting figure of our own.
func (r Rules) Hang(mantel Mantel, hanging Hanging, style units.Style) (Hanging, []units.Caution, error) {
	const fn = "Rules.Hang"
	h := hanging
	h.Left, h.Right = 0, 0
	if err := mantel.checkHanging(fn, "/mantel", "/hanging", h); err != nil {
		return Hanging{}, nil, err
	}
	a, err := r.of(fn, "/mantel/length", mantel.Length, "/hanging/look", h.Look)
	if err != nil {
		return Hanging{}, nil, err
	}
	extra := a.rules.Extra
	switch h.Look {
	case Traditional:
		h.Left, h.Right = extra/2, extra-extra/2
	case AsymmetricalLeft:
		h.Left = extra
	default:
		h.Right = extra
	}
	var cautions []units.Caution
	say := func(c units.Caution, end, text string) {
		c.Code += " " + end // which are two sentences in any language
		c.Text += text
		cautions = append(cautions, c)
	}
	for _, end := range [...]struct {
		name string
		drop *units.Length
		wall bool
	}{{"left", &h.Left, mantel.LeftWall}, {"right", &h.Right, mantel.RightWall}} {
		most := max(0, mantel.Height-offHearth-h.Thickness/2)
		switch {
		case end.wall && *end.drop > 0:
			say(cautionWall, end.name, ": "+show(*end.drop, style)+" at the "+end.name)
			*end.drop = 0
		case mantel.Height != 0 && *end.drop > most:
			say(cautionLowShelf, end.name, ": the "+end.name+" end falls "+show(most, style)+", not "+show(*end.drop, style))
			*end.drop = most
		}
	}
	return h, cautions, nil
}

func difference(more units.Length, style units.Style) string {
	if more > 0 {
		return showUp(more, style) + " more"
	}
	return showDown(-more, style) + " less"
}

// Needs returns what a mantel takes, each with its basis and source:
//
//	base garland       as it hangs; if not by rule, rounded up to an inch
//	picks, mantel      length/PickSpacing, rounded up
//	ornaments, mantel  OrnamentsPerGap · (picks of the top layer - 1)
//	ribbon, mantel     one whole piece
//	bells
//	wire ties          one for each pick and ornament, one for the ribbon
//
// The top layer has length/(Layers · PickSpacing) picks, rounded up. The basis of the garland
// says what the rule would have bought, and the difference. Room is left empty. If tree and
// mantel share picks, ornaments, ribbon or lights, clear the Type "mantel" in the needs after
// [Steps].
func (r Rules) Needs(mantel Mantel, hanging Hanging, style units.Style) ([]shopping.Need, error) {
	const fn = "Rules.Needs"
	if err := mantel.checkHanging(fn, "/mantel", "/hanging", hanging); err != nil {
		return nil, err
	}
	look := hanging.Look
	a, err := r.of(fn, "/mantel/length", mantel.Length, "/hanging/look", look)
	if err != nil {
		return nil, err
	}
	needs := make([]shopping.Need, 0, 6)
	add := func(item shopping.Item, q shopping.Quantity, basis, source string) {
		needs = append(needs, shopping.Need{Item: item, Quantity: q, Basis: basis, Source: source})
	}
	run := mantel.hang(hanging)
	if garland := run.garland(); garland == a.garland {
		add(itemGarland, shopping.Quantity{Length: garland},
			"shelf of "+show(mantel.Length, style)+" and "+show(a.rules.Extra, style)+" more", commonPractice)
	} else {
		need := run.garlandNeed(style)
		need.Basis += "; by rule " + show(a.garland, style) + ", " + difference(garland-a.garland, style)
		needs = append(needs, need)
	}
	if a.picks > 0 {
		add(itemPicks, shopping.Quantity{Pieces: a.picks},
			"1 for each "+show(a.rules.PickSpacing, style)+" of "+show(mantel.Length, style), commonPractice)
	}
	if a.ornaments > 0 {
		gaps := a.ornaments / a.rules.OrnamentsPerGap
		among := " between picks"
		if look != Traditional && a.rules.Layers > 1 {
			among += " of the top layer"
		}
		add(itemOrnaments, shopping.Quantity{Pieces: a.ornaments},
			strconv.Itoa(a.rules.OrnamentsPerGap)+" in each of "+plural(gaps, "gap")+among, ownFigure)
	}
	ties := a.picks + a.ornaments
	if a.ribbon > 0 {
		ties++
		place := "in the middle"
		if look != Traditional {
			place = "at the heavy end"
		}
		add(itemRibbon, shopping.Quantity{Pieces: 1, Length: a.ribbon}, "one bow or fall "+place, commonPractice)
	}
	if a.bells > 0 {
		add(itemBells, shopping.Quantity{Pieces: a.bells}, "hung with the ribbon", ownFigure)
	}
	if ties > 0 {
		add(itemTies, shopping.Quantity{Pieces: ties}, tiesBasis(a.picks, a.ornaments, a.ribbon), ownFigure)
	}
	return needs, nil
}

// tiesBasis returns "1 for each of 8 picks and 7 ornaments".
func tiesBasis(picks, ornaments int, ribbon units.Length) string {
	text := "1 for each of " + plural(picks, "pick") + " and " + plural(ornaments, "ornament")
	if ribbon > 0 {
		text += ", 1 for the ribbon"
	}
	return text
}
