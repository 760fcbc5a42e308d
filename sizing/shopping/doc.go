// Package shopping answers "what do I put in the basket?": it turns the needs of
// trees and mantels into packs, strands and rolls at the least cost.
//
// # The rule
//
// The number needed is not the number bought. Add up what all rooms need of an
// item, take off what is owned, and buy at least the rest in the cheapest
// combination:
//
//	least Σ n·price  with  Σ n·pack ≥ need - owned,  n ≤ what is on the shelf
//
// For ties see [Shop.List].
//
// # Worked example
//
// The station needs 27 picks for the ticket hall, 14 for the waiting room and 8 for the
// tea room. A box of 6 costs 5.00, of 12 costs 9.00, of 24 costs 16.00. Bought room by
// room, picks cost 21.00, 14.00 and 9.00: 44.00. Bought together:
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
// # When the obvious way fails
//
// Largest pack first can be wrong, and so can cheapest per piece:
//
//	need  packs                                 obvious way           best
//	6     1, 3 and 4 at 1.00 a piece            4+1+1                 3+3, a pack fewer
//	43    6, 9 and 20 at 0.50 a piece           20+20+6 for 23.00     9+9+20+6 for 22.00
//	30    1 (1.00), 10 (7.00) and 25 (15.00)    25+10 for 22.00       25+1+1+1+1+1 for 20.00
//
// Rows 1 and 2 take the largest, row 3 the cheapest per piece. Packs of 6, 9 and 20 make 44
// and everything above, but never 43.
//
// # What a need may leave open
//
// A need names a kind and, where it matters, a type, a color and a size; whatever it
// omits is open. The fields of [Need] say what else it may leave open.
//
// A string of lights counts as its lamps but is not split. Each room has its own
// strings, of one type and color.
//
// # Lengths
//
// Strands are joined to a running length. Each join loses the overlap of the item's [Join]:
// n strands come to ΣL - (n-1)·overlap. A strand may be cut to serve two rooms; rooms are
// not joined to each other. Whole pieces, as a bow of 1½ yd, are cut from rolls. See
// Purchase.Cuts and Purchase.Left.
//
// # Money
//
// A [Deal] is "3 for 2", or a lower price from 10 packs on. A [Store] may add delivery and
// tax.
//
// Prices are of type Decimal of github.com/shopspring/decimal, in one currency, with at
// most four decimal places (no currency of ISO 4217 has more). Nothing is rounded but the tax of
// each bill, as a till does it: to whole coins of Shop.Coin, half away from zero. Texts
// show two places, or four where two would round. JSON takes "9.00" or 9.00 and writes "9".
//
// # Bounds
//
//	pieces needed, in a pack, or owned      0 to 1,000,000
//	one strand, roll, whole piece, or pack  to 1,000 m
//	all runs, or an owned entry             to 1,000,000 m
//	price of a pack, delivery, coin         0 to 1,000,000
//	budget, Store.FreeFrom                  0 to 1,000,000,000
//	packs on a shelf                        to 999,999,999
//	size of an item, MaxSize                to 100 ft
//	overlap, shortest piece                 to 1,000 m
//	names of items, offers and rooms        1 to 64 bytes in one line; a room may be empty
//	basis and source of a need              any text
//	offers, owned entries, needs            5,000 of each
//	items in a mixed box                    64
//	strings of lights owned and bought      100,000
//	deals of an offer, substitutes          8 of each
//	stores                                  8
//	types of an assortment                  100
//
// Anything beyond is [units.ErrRange], [units.ErrSyntax] or (lights) [units.ErrLimit]. One
// call takes at most 250,000,000 steps of search: 2 s of one core and 55 MB in the longest
// test. A problem that takes more, as 10,000 pieces of 64 lengths from 64 kinds of roll
// may, is [units.ErrLimit]. Where [Shop.List] promises no exact answer, the search ends
// when the least cost is proved or its share of the steps is spent; the bound shows which.
//
// # Errors
//
// ErrRange, ErrSyntax, ErrName or ErrDuplicate for a value wrong in itself; ErrFit for values
// that disagree, such as pieces needed where only lengths are; ErrLimit as above.
//
// # Sources
//
//   - packs, strands and rolls: common practice
//   - largest first fails, and 43: J. Burkardt, CHANGE_MAKING test set, Florida State
//     University, and the coin problem of Frobenius (read)
package shopping
