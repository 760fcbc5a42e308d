// Package placement says where each piece goes on a tree, and in which order to hang it.
//
// A good tree is even in four ways: all pieces together, each type, each color and each
// size. Large pieces sit deep among the branches, small ones at the tips.
//
// # The question
//
// [Layout.Places] gives each piece a height, a depth and an hour on a clock that lies on the floor,
// with 6 toward the viewer. On the 9 ft tree in the ticket hall, its top 10 in bare for the star,
// hang 81 pieces of nine types, in three sizes larger than usual:
//
//	81 pieces by size, how many and how high on average:
//	5 1/2 in: 16, 2 ft 7 in up, 8 1/2 in deep
//	4 in: 24, 2 ft 9 in up, 4 in deep
//	2 1/2 in: 41, 3 ft up, 0 ft deep
//	nearest two: 10.0 in apart
//
// The example Pieces goes from a palette and a mix of sizes to a list of pieces.
//
// # How even
//
// Evenness, before setting back, is each place's distance to its nearest neighbor over
// that in a hexagonal pattern, √(2·A/(√3·n)) for n places on area A. No pattern on a
// large flat surface does better than 1. Over 217 shapes and counts, from very narrow
// to flared, 30 to 3,000 places, free-standing:
//
//	method                             mean   worst mean   least   worst least
//	at random                          0.47         0.42    0.09          0.00
//	golden angle                       0.88         0.85    0.76          0.70
//	an even spiral                     0.90         0.85    0.78          0.72
//	Layout.Places                      0.96         0.94    0.95          0.91
//
// Mean and least are averages over the shapes, worst is the lowest of any. Trees dressed part of
// the way around score higher.
//
// For each type, color and size with five pieces or more, against the pattern for its own
// number, the mean is at least 0.65 and the least 0.5. No eighth of the surface has under
// 0.6 or over 1.4 of its share. That was measured on 72 trees of 7 1/2 to 15 ft: slim and
// full, free-standing, against a wall and in a corner, with two and three sizes. Places
// takes about 0.1 s on a 9 ft tree.
//
// # Garland and lights
//
// [Layout.Wind] gives their points, at the spacing of a sizing.Look.
//
// # Hanging order
//
// [Order.Stations] says where to stand, on what, and what to hang from there. The first
// station of the ticket hall:
//
//	a 4 ft stepladder at 6 o'clock, 6 ft 2 in to 7 ft 2 in up:
//	1: cream ornaments, pine cone, 2 1/2 in: 7 ft 2 in up at 7 o'clock, 4 1/2 in left of the middle
//	2: brass ornaments, star, 2 1/2 in: 6 ft 6 in up at 5 o'clock, 1 ft right of the last
//	3: blue ornaments, bell, 4 in: 6 ft 2 in up at 7 o'clock, 1 ft 1 1/2 in left of the last, 2 in deep
//	stations: 6
//
// # When it fails
//
//   - Branches are where they are. Use the nearest one that bears the piece.
//   - With fewer than about 30 pieces each one counts: step back often.
//   - A few large pieces are less even than many small. On a tree dressed part of the way,
//     a large piece at the side edge reaches past it.
//   - With three types or fewer, some neighbors share a type.
//   - Weight is ignored. Hang heavy pieces near the trunk, on strong branches.
//
// # Cautions
//
//   - Ladders: each [Station] has its cautions.
//   - Keep glass, and anything that can be swallowed, out of reach of children and pets,
//     whatever the layout says.
//   - Lights: follow the label on the string, and see package lights for the load.
//
// # Errors
//
// Errors are [*units.Error]. Trees and drapes get those of sizing, items those of
// shopping.
//
// # Method and sources
//
// Honeycombs are laid on the flattened cone and pushed apart where its edges meet; the best
// is kept. Pieces are then exchanged until each class is even.
//
//   - Equal shares of the surface, golden angle: H. Vogel, Mathematical Biosciences 44
//     (1979) 179-189; formula quoted.
//   - Hexagonal bound: any text on packing disks.
//   - Even spiral, for spheres: E. B. Saff and A. B. J. Kuijlaars, Mathematical
//     Intelligencer 19 (1997) 5-11, from memory.
package placement
