// Package lights says how many strings of lights a tree or a mantel takes, how many
// plugs they need, what they draw from a circuit, and what a season of them costs.
//
// # The rules
//
//	strings     lamps wanted / lamps on a string, rounded up
//	runs        strings / the most that may be joined end to end, rounded up
//	load        strings · watts of one, and what else is on the circuit
//	limit       80 % of volts · amperes, for a load that is on for 3 h or more
//	energy      watts · hours a day · days
//
// Every figure comes from the label of the string: [Label] holds what it says.
// Incandescent and LED strings differ only by these figures. A label that does not
// say how many may be joined counts as 3, the usual limit for incandescent strings.
//
// # Chart
//
// Watts of a lamp and of a string, and how many strings a circuit of 120 V carries for
// hours if nothing else is on it. The label decides:
//
//	lamp                         W string of         W  15 A  20 A
//	LED, miniature            0.05       100         5   288   384
//	incandescent, miniature   0.40       100        40    36    48
//	incandescent, C7          5.00        25       125    11    15
//	incandescent, C9          7.00        25       175     8    10
//
// How many strings may be joined end to end is another limit, and usually the lower one.
//
// # Worked example
//
// The 900 lamps of a 9 ft tree are nine strings of 100. At 4.8 W each they draw 43.2 W,
// 0.36 A of the 12 A that a 15 A circuit carries for hours, from three plugs if three
// may be joined: [Label.ForLamps], [Strings.Runs] and [Strings.Load].
//
// # Cautions
//
// A load over the limit is reported as over and never adjusted. The limit looks at
// the circuit only: the wire and the fuse of a string limit how many are joined, and
// the label says how many. Look strings over for damage; throw out one with a broken
// lamp holder or a bare wire. Switch lights off when leaving and when going to bed.
// Local code decides; ask a licensed electrician.
//
// # Sources
//
//   - Continuous loads: National Electrical Code (NFPA 70), articles 100, 210.19(A)(1)
//     and 210.20(A), as quoted. Numbers move between editions.
//   - Strings joined end to end: Electrical Safety Foundation International (read).
//   - A season of 12 h a day for 40 days: ENERGY STAR (quoted).
//   - Watts of lamps: ENERGY STAR, Decorative Light Strings, for 0.05 W (read); the
//     others from memory.
//   - 90 days at most: UL 588, scope, and NEC 590, as quoted.
package lights
