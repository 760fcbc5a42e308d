package mantel

import (
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Step is one piece of work in dressing a mantel.
type Step struct {
	Code    string         `json:"code"`             // names the step for programs: "fluff"
	Do      string         `json:"do"`               // what to do
	Uses    []shopping.Lot `json:"uses"`             // what is handled, and how many ties that takes
	Caution units.Caution  `json:"caution,omitzero"` // what can go wrong or hurt, if anything
}

// Steps returns the order of work for a hanging, and what it uses of the needs from
// [Rules.Needs], [Run.Loads], [Run.Lights] and [Mantel.Stockings]. Picks, ornaments and ribbon
// take a tie each, while ties last. A step whose pieces are missing is omitted.
//
// Source: common practice.
func Steps(hanging Hanging, needs []shopping.Need) ([]Step, error) {
	look := hanging.Look
	if err := look.check("Steps", "/hanging/look"); err != nil {
		return nil, err
	}
	all := func(item shopping.Item) (q shopping.Quantity, there bool) {
		for _, n := range needs {
			if n.Item == item {
				q.Pieces, q.Length, there = q.Pieces+n.Quantity.Pieces, max(q.Length, n.Quantity.Length), true
			}
		}
		return q, there
	}
	var steps []Step
	ties, tied := all(itemTies)
	// add adds a step if it takes nothing, or something that is there.
	add := func(code, do string, caution units.Caution, items ...shopping.Item) {
		var uses []shopping.Lot
		tie := 0
		for _, item := range items {
			if q, there := all(item); there {
				uses = append(uses, shopping.Lot{Item: item, Quantity: q})
				if item != itemBells { // which hang with the ribbon
					tie += q.Pieces
				}
			} else if item == tieEach && uses != nil && tied {
				tie = min(tie, ties.Pieces)
				ties.Pieces -= tie
				uses = append(uses, shopping.Lot{Item: itemTies, Quantity: shopping.Quantity{Pieces: tie}})
			}
		}
		if len(items) == 0 || uses != nil {
			steps = append(steps, Step{code, do, uses, caution})
		}
	}
	order := "Start with the two beside the middle and work outwards, left and right in turn."
	trim := "Tie the ribbon over the middle of the shelf and hang the bells with it."
	hang := "Hang the garland from the middle outwards" + hanging.falls()
	if look != Traditional {
		order = "Start at the light end; each pick lies over the stem of the one before, and the layers rise towards the heavy end."
		trim = "Tie the ribbon at the heavy end, as a bow, and hang the bells with it."
		if hanging.Fall > 0 {
			trim = "Tie the ribbon at the heavy end, let it fall, and hang the bells with it."
		}
		hang = "Hang the garland from the light end on" + hanging.falls()
	}

	add("fluff", "Lay the garland on a table and fluff it: spread every tip, first one side and then the other.",
		units.Caution{}, itemGarland)
	add("mark", "Mark the places along the garland, one for each pick, and lay the picks beside them.",
		units.Caution{}, itemPicks)
	add("wire picks", "Wire each pick to the garland by its stem, while it lies flat. "+order,
		cautionWire, itemPicks, tieEach)
	add("wind lights", "Wind the lights through the garland, the plug towards the outlet, and switch them on to try them.",
		cautionStrings, itemLights)
	add("wire ornaments", "Wire the ornaments into the gaps between the picks.",
		cautionBreakable, itemOrnaments, tieEach)
	add("hooks", "Put up the hooks, and wait as long as their label says before anything hangs on them.",
		cautionStand, itemHooks)
	add("hang", hang, cautionTwo, itemGarland)
	add("trim", trim, units.Caution{}, itemRibbon, itemBells, tieEach)
	add("stockings", "Hang the stockings on their holders.", cautionCold, itemStockings)
	add("measure", "Step back and measure: drops and swags, and what is between them and the opening and the hearth.",
		cautionDown)
	return steps, nil
}

// tieEach stands for a tie for each piece of a step.
var tieEach = shopping.Item{Kind: shopping.Tie, Type: "each"}

// falls says what the ends do.
func (h Hanging) falls() string {
	switch {
	case h.Left == 0 && h.Right == 0:
		return "."
	case h.Left == h.Right:
		return ", and let both ends fall alike."
	case h.Right == 0:
		return ", and let the rest fall at the left."
	case h.Left == 0:
		return ", and let the rest fall at the right."
	case h.Left > h.Right:
		return ", and let more fall at the left than at the right."
	}
	return ", and let more fall at the right than at the left."
}
