// Package placement says where each piece goes on a tree, and in which order to
// hang it.
//
// Every ornament and pick gets a height, a place by the clock and a depth; a garland
// or a string of lights gets its line.
//
// Right numbers still make a bad tree when they clump. What looks right is even four
// times over: all the pieces, each type by itself, each color, and each size; with the
// large ones deep among the branches and the small ones at the tips.
//
// # The question
//
// A [Layout] is a tree and the way it faces; a [Piece] is so many of one item to
// hang. [Layout.Places] returns a place for each. On the 9 ft tree in the ticket hall of the station hang 81 pieces of nine
// types, in the shares of [sizing.Rules.Mix]:
//
//	81 pieces by size, how many and how high on average:
//	5 1/2 in: 16, 2 ft 7 in up, 8 1/2 in deep
//	4 in: 24, 2 ft 9 in up, 4 in deep
//	2 1/2 in: 41, 3 ft up, 0 ft deep
//	nearest two: 10.0 in apart
//
// # From colors and sizes to pieces
//
// A piece is one type, in one color and of one size. Package palette shares types and
// pieces out over the colors (Palette.Share), and [sizing.Rules.Mix] says how many balls
// there are of each size. Go through the colors, and give each type in turn its part of
// the color's pieces and the size of which most are still to come. A 7 ft tree with 7
// types and 49 pieces, in four colors, becomes
//
//	7 x crimson ball 1, 2 in
//	6 x crimson ball 2, 2 in
//	6 x crimson ball 3, 3 1/8 in
//	8 x darkgreen ball 1, 2 in
//	7 x darkgreen ball 2, 4 in
//	10 x gold ball 1, 3 1/8 in
//	5 x ivory ball 1, 4 in
//	49 places; at the top a crimson ball 2, 6 ft 6 1/2 in up at 8 o'clock
//
// by the few lines of the example named Pieces.
//
// # How even
//
// The measure is the distance from each place to the nearest other one, in a
// straight line, against that in a hexagonal pattern, in which each has six around
// it and which no arrangement beats on a wide surface: √(2·A/(√3·n)) for n places
// on the area A. Over 217 shapes and counts, from trees narrower than a pencil tree
// to flared ones and from 30 to 3,000 places, all round:
//
//	method                             mean   worst mean   least   worst least
//	at random                          0.47         0.42    0.09          0.00
//	golden angle                       0.88         0.85    0.76          0.70
//	an even spiral                     0.90         0.85    0.78          0.72
//	Layout.Places                      0.96         0.93    0.95          0.90
//
// (Mean and least are averages over the shapes.) Where only part of the way round is
// dressed, both are higher.
//
// Of each type, color and size with five pieces or more the same holds by itself, against
// the hexagonal pattern for that many: a mean of 0.65 at least, and no two nearer than
// half. So in all of 72 trees of 7 1/2 to 15 ft, slim and full, all round, against a wall
// and in a corner, with two and three sizes. Nothing lines up at the hem: no eighth of the
// surface has less than 0.6 or more than 1.4 of its share.
//
// [Layout.Places] lays the cone flat, cuts honeycombs to it, pushes apart what meets at
// the cut, and takes the best of them. Then it exchanges pieces until each class is even.
// A 9 ft tree takes about a tenth of a second, and 10,000 pieces about one.
//
// # Where each size goes
//
// Larger pieces hang deeper, and a little lower on average: common practice, the shares
// are a choice of our own. The largest are set back a third of the way from the tips to
// the trunk, the smallest not at all, the others in between. Evenness comes first: every
// size is found at every height. Pieces of no stated size stay at the tips. No piece
// reaches above the bare tip, where the topper is, or below the lowest branches, and no
// two touch. On a tree in a corner or against a wall nothing goes where nobody looks:
// [sizing.Exposure] says how much is seen, and Facing and Mirror which way it looks.
//
// What cannot hang without touching is refused, with how many could: to the piece up to
// about a hundred, beyond that to within a hundredth.
//
// # Garland and lights
//
// [Layout.Wind] gives the line of a garland wound from the bare tip down at the
// spacing that [sizing.Rules.Look] or [sizing.Tree.Spacing] has found, draped from
// tip to tip or not, no longer than what was bought and no lower than the lowest
// branches. With the distance from lamp to lamp as its step it gives the lamps of a
// string of lights. Where part is dressed it goes back and forth.
//
// # Hanging order
//
// [Order.Stations] says where to stand and what to hang from there: what is out of
// reach first, so that it is seen to; the ladders from the tallest down; the floor last.
// Each step has a number, an hour, a height, and how far left or right of the last piece
// it is. The ticket hall:
//
//	station 1: a 4 ft stepladder at 6 o'clock, 6 ft 2 in to 7 ft 2 in up, pieces 1 to 3
//	station 2: a 4 ft stepladder at 11 o'clock, 6 ft 5 in to 7 ft 2 1/2 in up, pieces 4 to 5
//	station 3: a 4 ft stepladder at 3 o'clock, 6 ft 7 in to 7 ft 10 1/2 in up, pieces 6 to 7
//	station 4: on the floor at 4 o'clock, 3 in to 5 ft 9 in up, pieces 8 to 32
//	station 5: on the floor at 8 o'clock, 1 1/2 in to 5 ft 5 1/2 in up, pieces 33 to 57
//	station 6: on the floor at 12 o'clock, 1 1/2 in to 5 ft 10 1/2 in up, pieces 58 to 81
//	1: cream ornaments, pine cone, 2 1/2 in: 7 ft 2 in up at 7 o'clock, 4 1/2 in left of the middle
//	2: brass ornaments, star, 2 1/2 in: 6 ft 6 in up at 5 o'clock, 1 ft right of the last
//
// # When it fails, and what to use instead
//
//   - A tree is not a cone: branches are where they are. Take the nearest branch that
//     bears the piece, and keep to the section.
//   - With few pieces, under 30 or so, each one counts: take the places as a start
//     and step back often.
//   - A piece that is larger than a quarter of the spacing cannot hang at an edge, and
//     few large ones are less even than many small ones.
//   - With three types or fewer, two of a type are neighbors here and there; it
//     cannot be avoided.
//   - Weight is ignored. Heavy pieces go near the trunk, on strong branches.
//
// # Cautions
//
//   - What is over reach is hung from a ladder: [LadderCaution].
//   - Keep glass, and whatever can be swallowed, out of reach of children and pets:
//     that is the lowest level, however the places fall.
//   - Lights: the label on the string decides; see package sizing for the load.
//
// # Sources, and how sure they are
//
//   - Equal shares of the surface and the golden angle: H. Vogel, Mathematical
//     Biosciences 44 (1979) 179-189; the formula is quoted.
//   - The hexagonal bound: any text on packing of disks; it holds for wide surfaces
//     and is exceeded by a little where many places are at an edge.
//   - The even spiral, for spheres: E. B. Saff and A. B. J. Kuijlaars, Mathematical
//     Intelligencer 19 (1997) 5-11, from memory.
//   - Large ones deep, small ones at the tips, two or three sizes: common practice,
//     without a published source. How deep and how low: a choice of our own.
//   - Ladders: what labels on ladders say, in our words.
package placement
