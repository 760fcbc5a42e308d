// Package labor answers "how long does it take, what do I charge, how do I pack it, and when
// do I begin?"
//
// # The rules
//
//   - Work is rate times quantity: minutes a foot of tree, an ornament, a yard of garland. Above
//     8 ft it takes two people and longer.
//   - Shape first, then lights, garland and pieces from the top down, so that no ladder
//     leans into dressed branches. Taking down is the reverse.
//   - A quote is goods with their markup, hours and travel. Totals add up the printed lines.
//   - A carton holds one room's things, glass apart, within its lifter's strength.
//
// The rates are house rates, all from memory; no standard has them. Time your own work.
//
// # The station's day
//
// Two people dress a 9 ft tree (900 lights, 27 picks, 81 ornaments, topper, skirt), a 4 ft 6 in
// tree and a mantel in 4 h 42 min, and [Rates.Schedule] proves that they cannot be faster; the
// example "day" lists who does what. Of 81 ornaments, 81·(3/9)² = 9 are above 6 ft, 81·(1/9)² = 1
// above 8 ft. The person-minutes come to 558; half of them is 4 h 39 min, but the tasks do not
// divide so evenly.
//
// # The station's quote
//
// At 45.00 an hour and 25.00 a visit, 50 % markup, 5 % off, 6.25 % tax on goods, with picks at
// 37.00 and 783 person-minutes: picks 55.50, work 587.25 with taking down, two visits 50.00,
// discounts 2.78, 29.36 and 2.50, tax 3.30 (of 52.72: 3.295), in all 661.41. The example "quote" is
// the client's [Rates.Sheet].
//
// # The station's cartons and dates
//
// The 81 balls of sizing.Rules.Mix, 12 a box (to 4 in) or 24 (to 2 1/2 in), and 54 picks in open
// boxes take 10 cartons, the fewest. One label: "3 of 10, ticket hall, 4 crimson balls, 4 in; 8
// gold balls, 3 1/8 in; fragile". To stand on 28 November, order base garland on 29 October, the
// rest on 12 November, wire on the 26th and begin on the 27th. The examples "cartons" and "dates"
// have all of it.
//
// # When they fail
//
//   - Rates are averages of a practiced crew. A first job, a stiff tree and stairs take longer.
//   - Pieces are taken to be spread evenly over a cone. If yours are not, give each level
//     as a [Work] of its own.
//   - Schedules ignore breaks and walking; dates ignore weekends and holidays.
//   - Without weights only the cells count.
//
// # Accuracy
//
// Totals and counts are exact. Minutes and cartons come as a range: Max was found, and nothing under
// Min is possible; with three Works or fewer they are nearly always equal. A quote is arithmetic: taxes
// are for an accountant, contracts for a lawyer.
//
// # Cautions
//
// [Rates.Cautions] returns them. Labels decide; lift no more than you can. Above a stepladder's
// reach the work is for trained people.
//
// # Bounds
//
//	works            500, with 5,000 needs in all
//	tasks            5,000, and 1,000,000,000 person-minutes
//	of a kind        1,000,000 pieces or 1,000 km in a work
//	packing          10,000 things, 100,000 pieces, 20 kinds of box
//	rooms, boxes     names of up to 64 bytes in one line
//
// Errors are [*units.Error]: ErrRange for a value or list too large, ErrSyntax or ErrName for
// text not understood, ErrFit and ErrDuplicate as documented. Methods check the fields they
// use.
//
// # Sources
//
// The order of work, what is packed together and the parts of a quote are common practice.
// Dates: E. M. Reingold, N. Dershowitz, Calendrical Calculations, Cambridge 1997 (from
// memory).
package labor
