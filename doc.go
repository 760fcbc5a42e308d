// Package fircone is a handbook for whoever dresses a tree or a mantel: how much
// of everything to get, what goes together, what it costs and where it goes.
// It has no code of its own; this page leads to the packages that do.
//
// The hard part is to say it in the shop, long before the day: how many ornaments,
// how many feet of garland, how much ribbon, in which few colors. What was too
// little cannot be had later, and what was too much is money gone. Each package
// answers a part of that, shows the formula with its source, and says when the
// formula fails.
//
// # Which question, which function
//
// Each line leads to the function that gives the answer. The same question stands
// under that function as an example, which shows how it is asked: on the web page, or
// in questions_test.go of its package, since go doc in a terminal shows no examples.
// There write the folder with ./ before it, as in go doc ./palette.Rules.Read: palette
// alone finds a package of Go's own.
//
// The examples share a station; each page dresses it anew.
//
// The tree:
//
//   - How many ornaments does a 9 ft tree take, and of how many types? 9 types, 7 to 11 of each: 63 to 99 ornaments in all ([sizing.Rules.Types], [sizing.Rules.Each]).
//   - How many picks does a 9 ft tree take in place of garland? 27 picks ([sizing.CommonPractice], [sizing.Rules.Supply]).
//   - How much garland does a 7½ ft tree take? 67 ft 6 in: 12 strands of 6 ft ([sizing.Rules.Supply]).
//   - How much garland for a 6½ ft slim tree in a corner? 19 ft 11 in of garland to match an ordinary tree; the rule of thumb would buy 58 ft 6 in ([sizing.Rules.Compare], [sizing.CommonLook]).
//   - How far off is the rule of thumb on a 12 ft tree? 9 ft for each foot gives wraps 17 1/2 in apart here; 10 1/4 in apart takes 184 ft ([sizing.Rules.Compare]).
//   - I have 50 ft of garland for a 7 ft tree: how far apart do the wraps come? 13 in apart, in a corner 6 1/2 in ([sizing.Tree.Spacing]).
//   - Which sizes of ball for a 9 ft tree with 81 of them, and how many of each? 16 of 4 in, 24 of 3 1/8 in, 41 of 2 in ([sizing.Rules.Mix]).
//   - Which is the tallest tree under a 9 ft ceiling? 8 ft 6 in is tight: the tallest is 8 ft ([sizing.Room.Fit]).
//   - May 40 strings of old lights, 40 W each, share a 15 A circuit of 120 V? No, 1600 W on a circuit for 1440 W ([lights.Strings.Load]).
//   - Where do 4 balls of 3 in and 8 of 2 in go on a 4 ft 6 in tree in a corner? The topmost is a small one, 3 ft 8 in up at 9 o'clock ([placement.Layout.Places]).
//   - What do 175 W of lights cost to run for a season of 40 days, 12 h a day, at 0.119 a kilowatt-hour? 84 kWh cost 9.996 ([lights.Strings.Use]).
//
// The mantel:
//
//   - How long is the garland for a 64 in mantel? 7 ft 4 in traditional, 9 ft 4 in asymmetrical ([mantel.Rules.Needs]).
//   - Where do the picks of a traditional 64 in mantel go? At 4 in, 12 in, 20 in, 28 in, 36 in, 44 in, 52 in and 60 in from the left ([mantel.Rules.Spots]).
//   - How far do the ends of a 9 ft garland fall on a traditional 64 in mantel? 1 ft 10 in at the left and 1 ft 10 in at the right ([mantel.Mantel.FindDrops]).
//   - How much garland do two swags 8 in deep take on a 64 in mantel, with ends that fall a foot? 8 ft 1 3/4 in ([mantel.Run.Garland]).
//   - Will hooks rated 5 lb hold 8 oz a foot in two swags 8 in deep on 64 in, a foot falling at each end? No: the middle one carries 24.6 oz and may carry 16 ([mantel.Run.Loads]).
//   - Is a garland that hangs 2 in above the opening clear of the fire? No, 6 in is the least ([mantel.Mantel.Clearances]).
//
// The shop and the boxes:
//
//   - Which boxes do I buy for 49 balls, in boxes of 6 at 5.00, 12 at 9.00 and 24 at 16.00? 1 box of 6 and 2 of 24 for 37, 5 left over ([shopping.Shop.Cheapest]).
//   - How full a tree does a budget of 30.00 make, of stars at 2.00 and bells at 3.00, 5 to 9 of each? 6 stars and 6 bells; 20.00 buys 4 of each, and the fewest cost 25 ([shopping.Shop.Fullest]).
//   - Do crimson, forestgreen, gold and ivory hold together, in every view? Not for the green-blind (deutan); a darker forestgreen, #1d751d, would ([palette.Rules.Read]).
//   - Which of last year's pieces, red #d81840 and turquoise, go with crimson, forestgreen, gold and ivory? The red is 1.5 away from crimson and does; the turquoise is 26.1 away from the nearest and does not ([palette.Rules.Sort]).
//   - What is a 64 in shelf in feet, yards and meters? 5.33 ft, 1.78 yd, 1.63 m ([units.Length.Format]).
//
// The work:
//
//   - How long do two people take to hang 100 ornaments on a 10 ft tree? 72 min, 4 of them above 8 ft by two people ([labor.Rates.Schedule]).
//   - What do I ask for a mantel, at 45.00 an hour and 25.00 a visit? 92.50 ([labor.Rates.Quote]).
//   - How many cartons of 12 cells do 14 stars and 10 bells take? 2 ([labor.Rates.Pack]).
//   - When do I order garland for a tree that must stand on 2026-11-28? On 2026-10-29 ([labor.Rates.Dates]).
//
// # The packages
//
//   - [example.com/fircone/units]: exact lengths, areas, masses and powers; reading and printing them
//   - [example.com/fircone/sizing]: how much a tree takes, by rule of thumb and by its shape; sizes of ornament; the room
//   - [example.com/fircone/sizing/lights]: strings, runs, the load on a circuit, what a season costs
//   - [example.com/fircone/sizing/shopping]: from what is needed to what is bought: packs, strands, rolls, what is owned, a budget
//   - [example.com/fircone/sizing/placement]: where each piece goes on the tree, and in which order it is hung
//   - [example.com/fircone/sizing/labor]: how long the work takes, a quote, cartons, next year's stock, dates
//   - [example.com/fircone/palette]: up to four colors that hold together, and what of last year's fits them
//   - [example.com/fircone/mantel]: how much a mantel takes, how it hangs, what holds it, what it stays clear of
//
// Read units first if you write programs and sizing first if you do not: its rules
// of thumb are the trade's, and its section When the rules fail says when to leave
// them. The charts: trees by height and by shape in sizing, shelves and swags in
// mantel, types by color in palette.
// The programs under examples put the packages together; examples/plan plans a
// whole job and is the one to copy.
//
// # What every figure rests on
//
// A figure with a published source carries it: a standard with its section, a
// paper, a textbook. Much of the trade is habit that nobody has published; it is
// called common practice, and what could not be looked up says that it is from
// memory. The rules of thumb are fields of the types named Rules, which a shop may
// change; safety figures are fixed.
//
// The rules of thumb know only a tree's height, and suit a full tree of 6 to 8 ft
// that is seen from all sides. Beside each stands the geometry, which knows its
// shape: the two check each other, and a comparison says by how much they differ.
//
// Rounding is one policy. Ornament types, and how many of each, go by whole feet, a
// part foot adding none. A supply goes by the exact size and rounds up, never short.
//
// The same arguments give the same answer, to the bit, on every machine. Wrong
// data is an error that names the value and what is accepted.
//
// # For programs
//
// Lengths are [units.Length], whole nanometers; they are read from and printed as
// text such as "7 ft 6 in", in JSON too. There a field has its name in lower camel
// case, and a named value is the text that it prints as. Money and prices are decimal.Decimal of
// github.com/shopspring/decimal, in a currency that is not named; make one with
// decimal.RequireFromString("0.119"). Nothing here keeps state, so every function
// may be called from any number of goroutines. Texts for people (bases, cautions,
// steps) are in English.
//
// A zero field of a parameter struct means that it was not measured or is not
// wanted, or stands for the usual figure; its comment says which.
//
// Every error about a value is a [units.Error], which wraps one of the reasons in
// package units. Field names the value as JSON does, so that a form can mark it:
//
//	var e *units.Error
//	if errors.As(err, &e) {
//		fmt.Println(e.Field, e.Value, "want", e.Want)
//	}
//
// With an error the result is the zero value. [sizing.Rules] and [mantel.Rules] are
// values of their own, and so are the two types named Look: a tree's is how densely
// it is dressed, a mantel's is traditional or asymmetrical.
//
// # What is not covered
//
// Outdoor trees and roofs, live flames, anything hung over people's heads, and
// electrical work beyond adding up what labels say. fircone keeps no prices and
// no catalog: offers are the caller's. It draws nothing by itself; examples/drawing
// shows how.
//
// # Take care
//
// Some of these figures are about electricity, fire, ladders and loads. They are
// cautions and no permit: the maker's label comes first, local code decides, and a
// licensed electrician or the fireplace's maker is asked where it matters. A
// result that is unsafe by a published figure says so and is never adjusted.
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
