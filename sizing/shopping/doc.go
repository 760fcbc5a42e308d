// Package shopping answers "what do I put in the basket?": it turns the needs of
// trees and mantels into packs, strands and rolls at the least cost.
//
// # The rule
//
// The number needed is not the number bought. Add up what all rooms need of an
// item, take off what is owned, and of all packs that hold at least the rest take
// those of the least cost:
//
//	least Σ n·price  with  Σ n·pack ≥ need - owned,  n ≤ what is on the shelf
//
// Of several at the least cost take the one with the least over, then the fewest
// packs, then the offers that come first. [Shop.Cheapest] does this for one item and
// [Shop.List] for all, with the share of each room beside it.
//
// # Worked example
//
// The station needs picks: 27 for the 9 ft tree in the ticket hall and 14 for the
// 4 ft 6 in tree in the waiting room (by rule, 3 for each foot), and 8 for the 64 in mantel
// in the tea room (one each 8 in). All are called picks, since they are of one kind:
// what has one name is bought together. A box of 6 costs 5.00, of 12 costs 9.00, of 24
// costs 16.00. Bought for each room by itself they cost 21.00, 14.00 and 9.00: 44.00.
// Bought together:
//
//	[ ] picks
//	    ticket hall                       27
//	    waiting room                      14
//	    tea room                           8
//	    1 x box of 6 at 5.00            5.00
//	    2 x box of 24 at 16.00         32.00
//	    left over                          5
//
//	total                              37.00
//
// This is the output of the first example, and the table below that of the second.
//
// # When the obvious way fails
//
// Largest pack first is wrong, and so is least price a piece first:
//
//	need  packs                                 obvious way           best
//	6     1, 3 and 4 at 1.00 a piece            4+1+1                 3+3, a pack fewer
//	43    9 (4.50), 20 (10.00) and 6 (3.00)     20+20+6 for 23.00     9+9+20+6 for 22.00
//	30    1 (1.00), 10 (7.00) and 25 (15.00)    25+10 for 22.00       25+1+1+1+1+1 for 20.00
//
// The first two take the largest first, the third takes what is cheapest a
// piece. Nor can every number be met exactly: packs of 6, 9 and 20 make 44 and
// everything above, but not 43.
//
// # What a need may leave open
//
// A need names a kind of thing and, where it matters, its type, color and size; what it
// leaves out is served by any. It may give a range of sizes, a least and a most number of pieces,
// an [Assortment] of types, a [Substitute] for what the shelves are short of, and, of a
// length, how much shorter it may be. An offer is one item, or a mixed box of several. Needs that
// one box or one owned piece serves are bought together, in one [Purchase].
//
// A string of lights counts for its lamps but is not divided: each room has its own, of one type
// and color. An owned string is a [Lot] of its own.
//
// # Short shelves
//
// What is short is no error. The list buys what there is, and each [Share] says what
// the room gets of what was planned, how much is missing, and whether it will do.
// [List.Short] is what to look for elsewhere.
//
// # Lengths
//
// A running length is joined from strands, and each join loses the overlap of the
// item, if one is given in a [Join]: n strands come to ΣL - (n-1)·overlap. A strand may be cut
// to serve two rooms, and nothing is joined from room to room: two strands of 6 ft
// serve two rooms of 6 ft each with no join at all. Whole pieces, as a bow of 1½ yd, are cut
// from rolls. Purchase.Cuts says of every strand and roll which room gets it and where it is
// cut, and [List.Left] what goes back into the box, which is next year's owned stock.
// For pieces of one length this is the same problem as packs. For pieces of several it is the
// cutting-stock problem, for which the answer comes with a bound that nothing costs less than.
//
// # Prices
//
// A [Deal] is "3 for 2", or a price from 10 packs on. A [Store] delivers for a fee, free from
// an amount on, and may add tax; the list is the least over all sets of stores.
//
// # Budget
//
// [Shop.Fullest] makes the fullest tree that the money allows, evenly: it raises
// the item that is least full as far as it can, then the next. [Shop.Filled] is
// the reverse, the least cost of a wanted fullness. A budget too small buys the part that it
// does, and List.Least says what would do. A Budget of zero, or one that is
// left out, is no money at all for Fullest and not a budget without limit; where there
// is no limit use [Shop.List], or Filled at 100 percent.
//
// # Money
//
// Prices are decimals in one currency that is not named, of the type Decimal of the
// module github.com/shopspring/decimal; decimal.RequireFromString("9.00") makes one.
// Nothing is rounded: a price has at most four decimal places, as many as any currency
// of ISO 4217, and costs and totals are exact sums. Texts show two places, or all four
// where two would round.
//
// JSON takes money as a text or as a number, "9.00" or 9.00, and both are read exactly.
// It is written as a text, without trailing zeros: "9", "37.5".
//
// # Bounds
//
//	pieces needed, in a pack, or owned      0 to 1,000,000
//	one strand, roll, or whole piece        to 1,000 m, and so is all in one pack
//	a running length, or all owned          to 1,000,000 m
//	price of a pack                         0 to 1,000,000
//	budget                                  0 to 1,000,000,000
//	names of items, offers and rooms        1 to 64 bytes in one line; a room may be empty
//	basis and source of a need              any text: they are handed on as they are
//	offers, owned entries, needs            5,000 of each
//	items in a mixed box                    64
//	deals of an offer, substitutes          8 of each
//	stores                                  8
//	types of an assortment                  100
//
// What is beyond them is an error wrapping [units.ErrRange] or [units.ErrSyntax]. The time and
// room that the search takes are bounded too: 250,000,000 steps for all items of
// one call together, which took at most 2 s of one core of a 2-core machine under
// other load, and 55 MB. A problem that takes more is an error wrapping [units.ErrLimit]:
//
//	packs      takes a step for each amount up to the need, counted in the largest
//	           measure that divides all packs smaller than it, and each offer (a
//	           limited shelf counts for log₂ of it). Offers that cannot be in the
//	           best purchase, by their price a piece, take none
//	runs       several rooms of strands that overlap: any number; the search ends at
//	           its share, and the bound tells
//	strands    as packs; with no common measure above 1/1,000,000 of the need, as
//	           many as give 130,000 different remainders
//	together   needs that share boxes, assortments, lights: 2,000,000 packs times needs;
//	           the search ends at its share, and the bound tells
//	rolls      10,000 pieces of 64 lengths from 64 kinds, if there are several
//	           lengths; then the search ends at its share, and the bound tells
//
// The share of such a search is what is left of the steps, divided by the items of the
// list that are left.
//
// # Sources
//
//   - that packs, strands and rolls come so: common practice
//   - largest first fails, and 43: J. Burkardt, CHANGE_MAKING test set, Florida State
//     University, and the coin problem of Frobenius (read)
//   - covering by dynamic programming: H. Kellerer, U. Pferschy, D. Pisinger, Knapsack
//     Problems, Springer 2004, chapters 5 to 8 (from memory)
//   - covering several needs at once: see internal/supply and internal/intprog
//   - cutting: P. C. Gilmore, R. E. Gomory, A linear programming approach to the
//     cutting-stock problem, Operations Research 9 (1961) 849-859 (from memory)
package shopping
