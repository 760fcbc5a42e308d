package mantel

import (
	"slices"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Step is one piece of work in dressing a mantel.
type Step struct {
	Code    string          `json:"code"`             // names the step for programs: "fluff"
	Do      string          `json:"do"`               // what to do
	Items   []shopping.Item `json:"items"`            // what it takes of the needs
	Caution units.Caution   `json:"caution,omitzero"` // what can go wrong or hurt, if anything
}

// Steps returns the order of work for a look, with the items of needs in it: those of
// [Rules.Needs], [Run.Loads], [Run.Lights] and [Mantel.Stockings]. A step without any is
// left out.
//
// Source: common practice.
func Steps(look Look, needs []shopping.Need) ([]Step, error) {
	if err := look.check("Steps", "look"); err != nil {
		return nil, err
	}
	var steps []Step
	// add adds a step if it takes nothing, or something that is there to be tied.
	add := func(code, do string, caution units.Caution, items ...shopping.Item) {
		var there []shopping.Item
		for _, item := range items {
			if slices.ContainsFunc(needs, func(n shopping.Need) bool { return n.Item == item }) {
				there = append(there, item)
			}
		}
		if len(items) == 0 || len(there) > 0 && there[0] != itemTies {
			steps = append(steps, Step{code, do, there, caution})
		}
	}
	order := "Start with the two beside the middle and work outwards, left and right in turn."
	trim := "Tie the ribbon over the middle of the shelf and hang the bells with it."
	hang := "Hang the garland from the middle outwards, and let both ends fall alike."
	if look != Traditional {
		order = "Start at the light end; each pick lies over the stem of the one before, and the layers rise towards the heavy end."
		trim = "Tie the ribbon at the heavy end, as a bow or a fall, and hang the bells with it."
		hang = "Hang the garland from the light end on, and let the rest fall at the heavy end."
	}

	add("fluff", "Lay the garland on a table and fluff it: spread every tip, first one side and then the other.",
		units.Caution{}, itemGarland)
	add("mark", "Mark the places along the garland, one for each pick, and lay the picks beside them.",
		units.Caution{}, itemPicks)
	add("wire picks", "Wire each pick to the garland by its stem, while it lies flat. "+order,
		cautionWire, itemPicks, itemTies)
	add("wind lights", "Wind the lights through the garland, the plug towards the outlet, and switch them on to try them.",
		cautionStrings, itemLights)
	add("wire ornaments", "Wire the ornaments into the gaps between the picks.",
		cautionBreakable, itemOrnaments, itemTies)
	add("hooks", "Put up the hooks, and wait as long as their label says before anything hangs on them.",
		cautionStand, itemHooks)
	add("hang", hang, cautionTwo, itemGarland)
	add("trim", trim, units.Caution{}, itemRibbon, itemBells, itemTies)
	add("stockings", "Hang the stockings on their holders.", cautionCold, itemStockings)
	add("measure", "Step back and measure: drops and swags, and what is between them and the opening and the hearth.",
		cautionDown)
	return steps, nil
}
