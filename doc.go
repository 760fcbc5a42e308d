// Package fircone is a handbook for people who dress trees and mantels: how much of
// everything to get, what goes together, what it costs and where it goes.
//
// You buy long before the day: too little and the shop has sold out, too much and the money
// is gone. Each package gives its formulas, with their sources, and says when a formula fails.
//
// # Which question, which function
//
// Each question leads to the function that answers it. An example in questions_test.go of
// its package asks the same question. In a terminal give the folder, as in go doc
// ./sizing/lights.Strings.Load.
//
// The tree. It takes picks or garland, not both; together they look overfull. Keep it
// 3 ft from fire, heaters, vents and candles. Keep a cut tree in a public room its own height away.
//
//   - How many ornaments does a 9 ft tree take, and of how many types? 9 types, 7 to 11 of each: 63 to 99 in all ([sizing.Rules.Types], [sizing.Rules.Each]).
//   - Which sizes of ball for a 9 ft tree with 81 of them, and how many of each? 16 of 4 in, 24 of 3 1/8 in, 41 of 2 in ([sizing.Rules.Mix]).
//   - How many picks does a 9 ft tree take in place of garland? 27 picks ([sizing.Rules.Supply], [sizing.CommonPractice]).
//   - How much garland does a 7½ ft tree take? 67 ft 6 in: 12 strands of 6 ft ([sizing.Rules.Supply]).
//   - How much garland for a 6½ ft slim tree in a corner? 19 ft 11 in to match an ordinary tree; by the rule of thumb 58 ft 6 in ([sizing.Rules.Compare], [sizing.CommonLook]).
//   - How far off is the rule of thumb on a 12 ft tree? Wraps come 17 1/2 in apart; the usual 10 1/4 in takes 184 ft ([sizing.Rules.Compare]).
//   - I have 50 ft of garland for a 7 ft tree: how far apart do the wraps come? 13 in, in a corner 6 1/2 in ([sizing.Tree.Spacing]).
//   - Which is the tallest tree under a 9 ft ceiling? 8 ft 6 in is tight: the tallest is 8 ft ([sizing.Room.Fit]).
//   - May 40 strings of old lights, 40 W each, share a 15 A circuit of 120 V? No: 1600 W, over the limit of 1440 W ([lights.Strings.Load]).
//   - What do 175 W of lights cost to run for a season of 40 days, 12 h a day, at 0.119 a kilowatt-hour? 84 kWh cost 9.996 ([lights.Strings.Use]).
//   - Where do 4 balls of 3 in and 8 of 2 in go on a 4 ft 6 in tree in a corner? The topmost is a small one, 3 ft 8 in up at 9 o'clock ([placement.Layout.Places]).
//
// The mantel. It takes picks and garland together: the picks are wired into the garland. Take it
// all down before a fire is lit; keep it 3 ft from candles and heaters.
//
//   - How long is the garland for a 64 in mantel? 7 ft 4 in traditional, 9 ft 4 in asymmetrical ([mantel.Rules.Needs]).
//   - Where do the picks of a traditional 64 in mantel go? At 4 in, 12 in, 20 in, 28 in, 36 in, 44 in, 52 in and 60 in from the left ([mantel.Rules.Spots]).
//   - How far do the ends of a 9 ft garland fall on a traditional 64 in mantel? 1 ft 10 in at the left and 1 ft 10 in at the right ([mantel.Mantel.FindDrops]).
//   - How much garland do two swags 8 in deep take on a 64 in mantel, with ends that fall a foot? 8 ft 1 3/4 in ([mantel.Run.Garland]).
//   - Will hooks rated 5 lb hold 8 oz a foot in two swags 8 in deep on 64 in, a foot falling at each end? No: the middle one carries 24.6 oz and may carry 16 ([mantel.Run.Loads]).
//   - Is a garland 2 in above the opening clear? No: with no fire, 6 in is the least ([mantel.Mantel.Clearances]).
//
// Tree and mantel:
//
//   - Which boxes do I buy for 49 balls, in boxes of 6 at 5.00, 12 at 9.00 and 24 at 16.00? 1 box of 6 and 2 of 24 for 37, 5 left over ([shopping.Shop.List]).
//   - How full a tree does a budget of 30.00 make, of stars at 2.00 and bells at 3.00, 5 to 9 of each? 6 stars and 6 bells; 20.00 buys 4 of each; the fewest cost 25 ([shopping.Shop.Fullest]).
//   - Do crimson, forestgreen, gold and ivory stay distinct, in every view? Not for the green-blind (deutan); a darker forestgreen, #1d751d, would ([palette.Rules.Read]).
//   - Which of last year's pieces, red #d81840 and turquoise, go with crimson, forestgreen, gold and ivory? The red, 1.5 from crimson; not the turquoise, 26.1 from the nearest ([palette.Rules.Sort]).
//   - What is a 64 in shelf in feet, yards and meters? 5.33 ft, 1.78 yd, 1.63 m ([units.Length.Format]).
//   - How long do two people take to hang 100 ornaments on a 10 ft tree? 72 min; 4 ornaments above 8 ft take two people ([labor.Rates.Schedule]).
//   - What do I ask for a mantel, at 45.00 an hour and 25.00 a visit? 92.50 ([labor.Rates.Quote]).
//   - How many cartons of 12 cells do 14 stars and 10 bells take? 2 ([labor.Rates.Pack]).
//   - When do I order garland for a tree that must stand on 2026-11-28? On 2026-10-29 ([labor.Rates.Dates]).
//
// # The packages
//
//   - [example.com/fircone/units]: exact lengths, areas, masses and powers
//   - [example.com/fircone/sizing]: how much a tree takes, by rule of thumb and by shape; the room
//   - [example.com/fircone/sizing/lights]: strings, the load on a circuit, what a season costs
//   - [example.com/fircone/sizing/shopping]: packs, strands, rolls, what is owned, a budget
//   - [example.com/fircone/sizing/placement]: where each piece goes, and in which order
//   - [example.com/fircone/sizing/labor]: how long the work takes, a quote, cartons, dates
//   - [example.com/fircone/sizing/job]: a whole job, from request to plan
//   - [example.com/fircone/palette]: colors that stay distinct, and which old pieces fit
//   - [example.com/fircone/mantel]: how much a mantel takes, how it hangs, what holds it, the fire
//
// Read sizing first. The charts: trees in sizing, shelves and swags in mantel, colors in palette.
// Of the programs under examples, plan is the one to copy.
//
// # What every figure rests on
//
// A figure with a published source names it. Unpublished trade habit is called common practice.
// Sources are marked read, quoted (seen only in another text) or from memory (not looked up).
// Rules of thumb are fields of the types named Rules, which a shop may change.
//
// The rules of thumb know only a tree's height. Beside each is the geometry, which knows the
// tree's shape.
//
// A limit includes its own value: exactly the permitted load is permitted.
//
// # For programs
//
// The same arguments give the same answer, to the bit, on every machine. Nothing keeps state,
// so goroutines may share everything. All types work with go-cmp without options.
//
// Lengths are [units.Length], printed and read as text such as "7 ft 6 in", in JSON and in
// database columns too. JSON fields are in lower camel case. Types without a slice, map or
// decimal compare with ==. Money is decimal.Decimal of github.com/shopspring/decimal, in a
// currency that is not named. A zero field means not measured, not wanted or the usual figure;
// its comment says which.
//
// An error about a value is a [*units.Error] that wraps one of the reasons in package units, and
// the result beside it is the zero value. Field names the value as in JSON, so that a form can mark
// it:
//
//	var e *units.Error
//	if errors.As(err, &e) {
//		fmt.Println(e.Field, e.Value, "want", e.Want)
//	}
//
// # What is not covered
//
// Outdoor trees and roofs, live flames, anything hung over people's heads, and electrical
// work beyond adding up what labels say. fircone keeps no prices.
//
// # Take care
//
// Figures about electricity, fire, ladders and loads are cautions, not permission: the maker's
// label comes first, local code decides, and where it matters ask a licensed electrician or the
// fireplace's maker. A result that is unsafe by a published figure says so and is never adjusted.
package fircone

import (
	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The packages are named here so that the links above find them.
var (
	_ labor.Rates
	_ lights.Strings
	_ mantel.Mantel
	_ palette.Palette
	_ placement.Layout
	_ shopping.Shop
	_ sizing.Tree
	_ units.Length
)
