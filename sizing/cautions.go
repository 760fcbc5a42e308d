package sizing

import (
	"strings"

	"example.com/fircone/units"
)

// Cautions returns what to watch for with a tree, most important first, with lengths in a
// style. Fire codes differ between editions and places.
//
//	cut         cut, public: not allowed in many rooms
//	exits       public: keep exits clear
//	label       public, not cut: flame-resistant label
//	own height  cut, public: how far from heat
//	heat        others: how far from heat
//	trunk       cut: the fresh cut and the stand
//	water       cut
//	metal       metal: no electric lights
//	prelit      pre-lit: its own lights
//	tie         8 ft and taller: tie it off
//	marshal     public: ask the fire marshal
//
// Source: each caution has its own.
func (t Tree) Cautions(style units.Style) ([]units.Caution, error) {
	const fn = "Tree.Cautions"
	if err := checkHeight(fn, "/height", t.Height); err != nil {
		return nil, err
	}
	if t.Kind >= numKinds {
		return nil, nameError(fn, "/kind", t.Kind.String(), kindNames[:])
	}
	const (
		ifc    = "International Fire Code section 806, quoted"
		nfpa1  = "NFPA 1 section 10.13 (2015), quoted"
		tips   = "NFPA and ESFI holiday safety tips, quoted"
		wsu    = "Washington State University, Chastagner, 2012, read"
		memory = "common practice, from memory"
	)
	say := func(inches, metric string) string {
		if style == units.InMetric {
			return metric
		}
		return inches
	}
	list := make([]units.Caution, 0, 4)
	add := func(when bool, code, source string, text ...string) {
		if when {
			list = append(list, units.Caution{Code: code, Text: strings.Join(text, ""), Source: source})
		}
	}
	cut, public := t.Kind == Cut, t.Public
	add(cut && public, "cut", ifc, "a cut tree is not allowed in rooms for assembly, shops and the like unless the building is sprinklered throughout, nor in an exit, corridor, lobby or vestibule")
	add(public, "exits", nfpa1, "keep exits, the ways to them and their signs clear of the tree and its cords")
	add(!cut && public, "label", nfpa1, "the label of the tree and of its decorations must say flame resistant")
	add(cut && public, "own height", ifc, "keep the tree at least ", tape(t.Height, style), ", its own height, from any source of heat")
	add(!(cut && public), "heat", tips, "keep the tree at least ", say("3 ft", "91.5 cm"), " from fire, candles, radiators and vents")
	add(cut, "trunk", "commentary on International Fire Code section 806.1, read", "cut at least ", say("1/2 in", "13 mm"), " off the trunk before it goes into its stand, which should hold ", say("2 gallons", "8 liters"), " or more")
	add(cut, "water", wsu, "water the tree every day, about ", say("a quart for each inch", "a liter for each 27 mm"), " of the trunk's diameter and ", say("a gallon", "4 liters"), " or more on the first day; a dry tree goes out")
	add(t.Kind == Metal, "metal", nfpa1, "hang no electric lights on a metal tree")
	add(t.Kind == PreLit, "prelit", "common practice", "use only the tree's own lights, as its label says")
	add(t.Height >= 8*units.Foot, "tie", memory, "tie the tree off to the wall or the ceiling")
	add(public, "marshal", "common practice", "ask the fire marshal before the tree is set up; editions and local rules differ")
	return list, nil
}
