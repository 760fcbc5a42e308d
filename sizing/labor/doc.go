// Package labor answers "how long does it take, what do I charge, how do I pack it, and when
// do I begin?": it turns trees and mantels, with what goes on them, into tasks, a
// day's schedule, a quote, dates, cartons for January and next year's stock.
//
// # The rules
//
//   - Work is rate times quantity: minutes a foot of tree, an ornament, a pick, a yard of
//     garland. Above 8 ft it takes two people and longer.
//   - The order is shape, lights, garland, then the pieces; each from the top down, so
//     that no ladder leans into dressed branches. Taking down goes in reverse.
//   - A quote is goods with their markup, hours, and travel. Every line is rounded as it is
//     printed, and totals are sums of what is printed.
//   - A carton holds one room, glass by itself, and no more than its lifter can lift.
//   - Next year's stock is what there was and what was bought, less what broke.
//
// The values are in [Rates]. [StartingRates] has values to start from: house rates, all from
// memory; no standard has them. Time your own work for a day and replace them.
//
// # The station's day
//
// Two people dress the station: the 9 ft tree in the ticket hall with 900 lights, 27 picks and
// 81 ornaments, the 4 ft 6 in tree in the waiting room with 450, 14 and 16, and
// the mantel in the tea room. [Rates.Tasks] and [Rates.Schedule] give
//
//	0:00 to 0:24   1         ticket hall: shape one of 2 sides of the tree, 0 ft to 6 ft
//	0:00 to 0:24   2         ticket hall: shape one of 2 sides of the tree, 0 ft to 6 ft
//	0:24 to 0:40   1         ticket hall: shape the tree, 6 ft to 8 ft, from a ladder
//	0:24 to 0:42   2         waiting room: shape one of 2 sides of the tree
//	0:42 to 0:54   1 and 2   ticket hall: shape the tree, 8 ft to 9 ft, from a ladder
//	0:54 to 0:56   1 and 2   ticket hall: string 12 lights, 8 ft to 9 ft, from a ladder
//	0:56 to 1:04   1         ticket hall: string 88 lights, 6 ft to 8 ft, from a ladder
//	0:56 to 1:14   2         waiting room: shape one of 2 sides of the tree
//	1:04 to 2:16   1         ticket hall: string 800 lights, 0 ft to 6 ft
//	1:14 to 1:55   2         waiting room: string 450 lights
//	1:55 to 2:16   2         waiting room: set 14 picks
//	2:16 to 2:30   1 and 2   ticket hall: set 1 topper, from a ladder
//	2:30 to 2:33   1 and 2   ticket hall: set 1 pick, 8 ft to 9 ft, from a ladder
//	2:33 to 2:35   1 and 2   ticket hall: hang 1 ornament, 8 ft to 9 ft, from a ladder
//	2:35 to 2:38   1         ticket hall: set 2 picks, 6 ft to 8 ft, from a ladder
//	2:35 to 2:45   2         waiting room: hang 8 of 16 ornaments
//	2:38 to 2:48   1         ticket hall: hang 8 ornaments, 6 ft to 8 ft, from a ladder
//	2:48 to 3:06   1         ticket hall: set 12 of 24 picks, 0 ft to 6 ft
//	2:48 to 3:06   2         ticket hall: set 12 of 24 picks, 0 ft to 6 ft
//	3:06 to 4:32   1         ticket hall: hang 72 ornaments, 0 ft to 6 ft
//	3:06 to 4:36   2         tea room: dress the mantel
//	4:32 to 4:42   1         waiting room: hang 8 of 16 ornaments
//	4:36 to 4:41   2         ticket hall: lay 1 skirt
//	done in 282 min, and in no less than 282
//
// Of the 81 ornaments (3/9)², 9, are above 6 ft, and (1/9)², 1, above 8 ft: the share of the
// surface of a cone. The person-minutes come to 558, so two people take at least 279 min; the
// search proves that nothing under 282 can be done.
//
// # The station's quote
//
// At 45.00 an hour, 25.00 a visit and half on top of the goods, with 5 % off and a tax of
// 6.25 % on goods, [Rates.Quote] gives three options. The goods here are the picks alone.
// This is the client's [Rates.Sheet]; the one for the house shows costs and minutes too.
//
//	consultation
//	  consultation                                                         80.00
//	  discount of 5 % on the work                                          -4.00
//	  1 visit                                                              25.00
//	  discount of 5 % on the travel                                        -1.25
//	total                                                                  99.75
//	  deposit                                                              49.88
//	  balance                                                              49.87
//	done for you
//	  picks, 1 x box of 6, 2 x box of 24                                   55.50
//	  discount of 5 % on the goods                                         -2.78
//	  tax of 6.25 % on the goods                                            3.30
//	  ticket hall, putting up                                             262.50
//	  waiting room, putting up                                             88.50
//	  tea room, putting up                                                 67.50
//	  tea room, taking down and packing                                    27.00
//	  waiting room, taking down and packing                                36.00
//	  ticket hall, taking down and packing                                105.75
//	  discount of 5 % on the work                                         -29.36
//	  2 visits                                                             50.00
//	  discount of 5 % on the travel                                        -2.50
//	total                                                                 661.41
//	  deposit                                                             330.71
//	  balance                                                             330.70
//	goods only
//	  picks, 1 x box of 6, 2 x box of 24                                   55.50
//	  discount of 5 % on the goods                                         -2.78
//	  tax of 6.25 % on the goods                                            3.30
//	total                                                                  56.02
//	  deposit                                                              28.01
//	  balance                                                              28.01
//
// The price of a line, a discount, a tax and the deposit are each computed exactly and
// rounded to the places of the currency, half away from zero; everything else is a sum. The
// tax above is 6.25 % of 55.50 - 2.78 = 52.72, which is 3.295.
//
// # The station's cartons
//
// In January the balls of the ticket hall go into boxes of 12 cells for balls of up to 4 in,
// or 24 for up to 2 1/2 in; the picks into open boxes. [Rates.Pack] gives the labels:
//
//	1 of 10, ticket hall, 27 picks
//	2 of 10, ticket hall, 12 crimson balls, 4 in; fragile
//	3 of 10, ticket hall, 4 crimson balls, 4 in; 8 gold balls, 3 1/8 in; fragile
//	4 of 10, ticket hall, 12 gold balls, 3 1/8 in; fragile
//	5 of 10, ticket hall, 4 gold balls, 3 1/8 in; 8 ivory balls, 2 in; fragile
//	6 of 10, ticket hall, 24 ivory balls, 2 in; fragile
//	7 of 10, ticket hall, 9 ivory balls, 2 in; fragile
//	8 of 10, waiting room, 14 picks
//	9 of 10, tea room, 8 picks
//	10 of 10, spares, 5 picks
//	no packing has fewer than 10
//
// # The station's dates
//
// It must stand on 28 November, and the tree in the waiting room is a cut one.
// [Rates.Dates] gives
//
//	2026-10-29 order base garland
//	2026-11-12 order ornaments, picks, lights, toppers, skirts
//	2026-11-26 everything is in hand
//	2026-11-26 wire garland and picks, and see that the lights work
//	2026-11-27 begin to put up: 4 h 42 min
//	2026-11-27 the cut tree comes in, at the earliest
//	2026-11-28 it stands
//	2026-12-25 the cut tree is out, at the latest: 12 days before the rest
//	2027-01-06 take down and pack
//
// # When they fail
//
//   - Rates are averages of a practiced crew. A first job, a stiff tree, a stairway
//     and a client who helps take longer.
//   - Pieces are taken to be spread evenly over a cone. If yours are not, give each
//     level as a [Work] of its own.
//   - A schedule has no breaks and no walks from room to room; add yours to the day.
//   - Weights are yours. If a thing has none, only the cells count.
//   - A strand that was cut between rooms is counted uncut next year.
//   - Dates know no weekends, no holidays, and not what a shop has left.
//
// # Accuracy
//
// Totals and counts are exact. The least time and the fewest cartons come as a range from
// what is proved to what was found: if Min equals Max, the answer is exact. With up to
// three places it nearly always is.
//
// # Money
//
// Prices, percentages and minutes are of type Decimal of the module
// github.com/shopspring/decimal. A quote is arithmetic: which tax applies, and what a
// contract must say, is for an accountant or a lawyer.
//
// # Cautions
//
// [Rates.Cautions] returns those that apply. The label on the ladder, the string and the
// carton decides; above a stepladder's reach the work is for trained people. If the public uses the room, ask
// the fire marshal about a cut tree before you buy it.
//
// # Bounds
//
//	works, needs     500, and 5,000 in all
//	tasks            5,000, and 1,000,000,000 person-minutes
//	pieces, length   1,000,000 and 1,000 km of a kind in a work
//	cartons          10,000 pieces of 1,000 things in 20 kinds of box
//	rooms, boxes     names of up to 64 bytes in one line
//
// All errors are [units.Error]: ErrRange for a value outside its range or a list that is too long,
// ErrSyntax for a text and ErrName for a name that is not understood. Methods check the fields
// they use, and name other errors themselves.
//
// # Sources
//
//   - rates, order of work, markup, deposit, weights, lead times: from memory; house rates
//   - schedules: resource-constrained project scheduling, as in P. Brucker, S. Knust, Complex
//     Scheduling, Springer 2006 (from memory)
//   - cartons: bin packing, as in S. Martello, P. Toth, Knapsack Problems, Wiley 1990,
//     chapter 8 (from memory)
//   - dates: E. M. Reingold, N. Dershowitz, Calendrical Calculations, Cambridge 1997 (from memory)
package labor
