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
// Each line leads to a function, and under that function the same question stands
// as an example with its answer.
//
// The tree:
//
//   - How many ornaments does a 9 ft tree take, and of how many types? [sizing.Rules.Each]
//   - How many picks does a 9 ft tree take in place of garland? [sizing.Rules.Picks]
//   - How many 6 ft strands of garland for a 7½ ft tree? [sizing.Strands.Count]
//   - How much garland for a 6½ ft slim tree in a corner? [sizing.Look.Amounts]
//   - How far off is the rule of thumb on a 12 ft tree? [sizing.Rules.Compare]
//   - I have 50 ft of garland for a 7 ft tree: how far apart do the wraps come? [sizing.Cone.Spacing]
//   - Which sizes of ball for a 9 ft tree with 81 of them, and how many of each? [sizing.MixOf]
//   - Which is the tallest tree under a 9 ft ceiling? [sizing.Room.Fit]
//   - May 40 strings of old lights, 40 W each, share a 15 A circuit? [sizing.Strings.Load]
//   - Where does each of twelve balls go on a 4 ft 6 in tree in a corner? [placement.Layout.Places]
//   - What do 175 W of lights cost to run for a season at 0.119 a kilowatt-hour? [sizing.Strings.Use]
//
// The mantel:
//
//   - How long is the garland for a 64 in mantel? [mantel.Rules.BaseGarland]
//   - Where do the picks of a 64 in mantel go? [mantel.Rules.Spots]
//   - How far do the ends of a 9 ft garland fall on a 64 in mantel? [mantel.Mantel.FindDrops]
//   - How much garland do two swags 8 in deep take on a 64 in mantel, with ends that fall a foot? [mantel.Mantel.Garland]
//   - Will hooks rated 5 lb hold a garland of 8 oz a foot in two swags? [mantel.Mantel.Loads]
//   - Is the garland clear of the fire? [mantel.Mantel.Clearances]
//
// The shop and the boxes:
//
//   - Which boxes do I buy for 49 balls, in boxes of 6, 12 and 24? [shopping.Shop.Cheapest]
//   - How full a tree does a budget of 30.00 make, and what if it is too small? [shopping.Shop.Fullest]
//   - Do these four colors hold together, for everybody? [palette.Rules.Read]
//   - Which of last year's ornaments fit the palette? [palette.Rules.Sort]
//   - What is a 64 in shelf in feet, yards and meters? [units.Length.Format]
//
// # The packages
//
//   - [example.com/fircone/units]: exact lengths, areas, masses and powers; reading and printing them
//   - [example.com/fircone/sizing]: how much a tree takes, by rule of thumb and by its shape; sizes of ornament; the room; the lights
//   - [example.com/fircone/sizing/shopping]: from what is needed to what is bought: packs, strands, rolls, what is owned, a budget
//   - [example.com/fircone/sizing/placement]: where each piece goes on the tree, and in which order it is hung
//   - [example.com/fircone/palette]: up to four colors that hold together, and what of last year's fits them
//   - [example.com/fircone/mantel]: how much a mantel takes, how it hangs, what holds it, what it stays clear of
//
// Read units first if you write programs and sizing first if you do not: its rules
// of thumb are the trade's, and the section on shape says when to leave them.
// The programs under examples put the packages together; examples/plan plans a
// whole job and is the one to copy.
//
// # What every figure rests on
//
// A figure with a published source carries it: a standard with its section, a
// paper, a textbook. Much of the trade is habit that nobody has published; it is
// called common practice, and what could not be looked up says that it is from
// memory. Both kinds are values of a type named Rules, so a shop with habits of
// its own changes a field.
//
// The rules of thumb know only a tree's height, and suit a full tree of 6 to 8 ft
// that is seen from all sides. Beside each stands the geometry, which knows its
// shape: the two check each other, and a comparison says by how much they differ.
//
// Rounding is one policy. A count of kinds goes by whole feet, a part foot adding
// none. A supply goes by the exact size and rounds up, never short.
//
// The same arguments give the same answer, to the bit, on every machine. Wrong
// data is an error that names the value and what is accepted.
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
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The packages are named here so that the links above find them.
var (
	_ mantel.Mantel
	_ palette.Palette
	_ placement.Layout
	_ shopping.Shop
	_ sizing.Tree
	_ units.Length
)
