// Package sizing says how much of everything a Christmas tree takes: ornaments,
// garland, ribbon, picks and lights, the topper and the skirt, and what it takes
// to light it and to reach it safely.
//
// It answers in two ways. The rules of thumb ([Rules], [CommonPractice]) go by
// height alone, as the trade does. Geometry ([Tree], [Cone], [Look]) goes by the
// shape and by how much of the tree is seen. [Rules.Compare] sets one against the
// other.
//
// In JSON a field has its name in lower camel case; lengths, areas, powers and
// named values are the texts that they print as.
//
// # The rules
//
// With the height in feet:
//
//	ornament types      1 for each foot             whole feet, a part foot adds none
//	of each type        height - 2 to height + 2    whole feet, never under 1
//	picks               3 for each foot             exact height, rounded up
//	garland or ribbon   9 ft for each foot          exact height
//	lights              100 for each foot           exact height, rounded up
//
// A count of kinds goes by whole feet; a supply goes by the exact height and is
// never short. Picks and garland together look overfull: choose one. The figures
// are fields of [Rules] that a shop with other habits changes.
//
// # Quick chart
//
// For a full tree seen from every side. The last three columns are computed from
// the shape: how far apart the wraps come by rule, the garland that keeps them as
// close as on a 7 ft tree, and the surface.
//
//	height   types  each      picks  garland    lights  wraps  to match    surface
//	6 ft     6      4 to 8    18     54 ft      600     9 in   47 ft       38.6 sq ft
//	7 ft     7      5 to 9    21     63 ft      700     10 in  63 ft       52.6 sq ft
//	7½ ft    7      5 to 9    23     67 ft 6 in 750     11 in  73 ft       60.4 sq ft
//	9 ft     9      7 to 11   27     81 ft      900     13 in  104 ft      87 sq ft
//	12 ft    12     10 to 14  36     108 ft     1200    17 in  184 ft      154.6 sq ft
//	15 ft    15     13 to 17  45     135 ft     1500    22 in  287 ft      241.6 sq ft
//
// The garland to match is rounded up to a foot. From 6 to 8 ft either column will
// do, and the rule is the habit; beyond that, go by the match. Nothing here is as
// sure as its digits: that a full tree is 60 to 70 % as wide as it is high moves the
// garland by about a twelfth either way, so measure the width where it matters.
//
// # When the rules fail
//
// Surface grows as the square of height; the rules for garland, picks and lights
// grow as the height itself. They suit a full tree of 6 to 8 ft, and on a taller
// one everything but the ornaments thins out. They do not know width: a slim or a
// pencil tree, or one in a corner or against a wall, gets too much. For those,
// size by shape: take the look that you like from a tree that the rules suit, or
// say it in so many words, and apply it:
//
//	look := sizing.CommonLook()
//	amounts, err := look.Amounts(sizing.Tree{Height: 12 * units.Foot, Exposure: sizing.InCorner})
//
// A tree is taken for a cone. A real one has gaps and an outline of its own, and
// its measured width matters more than the class it was sold as.
//
// # Formulas
//
// For a cone of base diameter d and height h, with whole slope s, between the
// depths y₁ and y₂ below its tip, and wraps a spacing p apart along the slope:
//
//	slope          s = √(d²/4 + h²)
//	surface        π·(d/2)·s·(y₂² - y₁²)/h²
//	turns          s·(y₂ - y₁)/(h·p)
//	spiral length  a/2·(F(u₂) - F(u₁))   F(u) = u·√(1+u²) + arsinh u
//	               a = p·s/(π·d)         u = π·d·y/(h·p)
//
// A close winding is about surface/p long. A spiral length is within 1 nm of the
// exact one over the whole range, a spacing within 1.01 nm where the garland goes
// round at least once, and both are the same bits on every machine.
//
// # Worked example
//
// The ticket hall of a small-town station has a 9 ft tree, full, seen from every
// side, its top 10 in bare for a star of 1 ft, under a 14 ft ceiling. By rule it
// takes 81 ft of garland, which comes 13 in apart. To match the 7 ft tree that
// everyone likes, its wraps 10 in apart, it takes 103 ft; and the 1148 lights go on
// twelve strings of 100, 57.6 W, in four runs if the label lets three be joined. The
// star is set on from a 6 ft stepladder, with 4 ft to spare above it.
//
// The waiting room has a tree of 4 ft 6 in in the corner. By rule it takes 40 ft 6 in
// of garland, which would come 3 1/4 in apart on the half that is seen; 14 ft 2 in
// match the other tree.
//
// # Cautions
//
// What is computed here is a quantity, not a permission. Lights: the labels on
// strings, cords and timers come first, then local code; a load over 80 % of the
// circuit is reported as over and never adjusted, see [Strings.Load]. Look strings
// over for damage, and switch them off when leaving and when going to bed. Ladders:
// see [LadderFor]. A cut tree drinks about a quart a day for each inch of stem
// diameter; keep it 3 ft from fire, candles, radiators and vents. For wiring ask a
// licensed electrician, for work above a stepladder a trained firm.
//
// # Sources
//
// How sure each is: read (in the source), quoted (in somebody's quotation), memory,
// or common practice, for which there is no published source.
//
//   - Rules of thumb: common practice; lights, ribbon, topper, skirt, tapers and
//     exposures from memory. All are defaults that a caller can change.
//   - Taper grades: Ontario R.R.O. 1990, Reg. 377 (read); U.S. Standards for Grades
//     of Christmas Trees, 1989 (memory).
//   - Ceiling: Clemson Cooperative Extension, Selecting a Christmas Tree (read).
//   - Spirals, cones and catenaries: OpenStax, Calculus (read); every closed form
//     is also checked against quadrature and 60-digit arithmetic.
//   - Circuits: National Electrical Code (quoted); strings end to end: Electrical
//     Safety Foundation International (read); season: ENERGY STAR (quoted).
//   - Water and distance from heat: Washington State University, 2012 (read); NFPA
//     (quoted).
//   - Ladder reach: makers' labels (memory).
package sizing
