// Package lights says how many strings of lights a tree or a mantel takes, how many
// plugs they need, what they draw from a circuit, and what they use in a season.
//
// # The rules
//
//	strings   lamps wanted / lamps on a string, rounded up
//	runs      strings / the most that may be joined end to end, rounded up
//	load      strings · watts of one, and what else is on the circuit
//	limit     80 % of volts · amperes, for 3 h or more
//	energy    kilowatts · hours a day · days
//	cost      energy · price of a kilowatt-hour
//
// # Chart
//
// Watts of a lamp and of a string, and how many strings a 120 V circuit carries for 3 h or more.
// The label decides. Each run has its own limit, usually far lower.
//
//	lamp                         W string of         W  15 A  20 A
//	LED, miniature            0.05       100         5   288   384
//	incandescent, miniature   0.40       100        40    36    48
//	incandescent, C7          5.00        25       125    11    15
//	incandescent, C9          7.00        25       175     8    10
//
// # When the rules fail
//
// Outlets of several rooms can share a circuit: count everything on it.
//
// # What to measure
//
// Nothing: the [Label] of the string has lamps, length, watts and how many may be joined.
//
// # Worked example
//
// The 900 lamps that the rule gives a 9 ft tree are nine strings of 100. At 4.8 W each they draw
// 43.2 W of the 1440 W allowed on 15 A at 120 V, from three plugs if three may be joined.
//
// # Cautions
//
// A load over the limit is reported, never adjusted. Throw out strings with a broken lamp
// holder or a bare wire. Switch lights off when leaving and when going to bed. Local code
// decides; ask a licensed electrician.
//
// Errors are [*units.Error] with ErrRange.
//
// # Sources
//
//   - Continuous loads: National Electrical Code (NFPA 70), articles 100, 210.19(A)(1) and
//     210.20(A), quoted; numbers move between editions.
//   - Three strings end to end: Electrical Safety Foundation International (read).
//   - A season of 12 h a day for 40 days: ENERGY STAR (quoted).
//   - 0.05 W: ENERGY STAR, Decorative Light Strings (read); other lamps from memory.
//   - 90 days at most: UL 588, scope, and NEC 590, quoted.
package lights
