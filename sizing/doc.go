// Package sizing says how much of everything a Christmas tree takes: ornaments,
// garland, ribbon, picks and lights, the topper and the skirt, and what it takes
// to light it and to reach it safely.
//
// It answers in two ways. The rules of thumb ([Rules], [CommonPractice]) go by
// height alone, as the trade does. Geometry ([Tree], [Cone], [Look]) goes by the
// shape and by how much of the tree is seen. [Rules.Compare] sets one against the
// other.
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
// Ornament types, and how many of each, go by whole feet; a supply goes by the exact
// height and is never short. Garland, ribbon and picks are alternatives, since two together look
// overfull: choose one; who asks for both gets all of the garland and all of the picks. The figures are fields of [Rules] that a shop with other habits
// changes.
//
// # Quick chart
//
// For a full tree seen from every side. The last three columns are computed from
// the shape: how far apart the wraps come by rule, the garland that keeps them as
// close as on a 7 ft tree, and the surface.
//
//	height   types  each      picks  garland     lights  wraps  to match    surface
//	6 ft     6      4 to 8    18     54 ft       600     9 in   47 ft       38.6 sq ft
//	7 ft     7      5 to 9    21     63 ft       700     10 in  63 ft       52.6 sq ft
//	7½ ft    7      5 to 9    23     67 ft 6 in  750     11 in  73 ft       60.4 sq ft
//	9 ft     9      7 to 11   27     81 ft       900     13 in  104 ft      87 sq ft
//	12 ft    12     10 to 14  36     108 ft      1200    17 in  184 ft      154.6 sq ft
//	15 ft    15     13 to 17  45     135 ft      1500    22 in  287 ft      241.6 sq ft
//
// The garland to match is rounded up to a foot. From 6 to 8 ft either column will
// do, and the rule is the habit: for 7½ ft get 67 ft 6 in, or 73 ft if the tree is to
// match a 7 ft one. Above or below that, go by the match. Neither is as sure as its digits:
// the rule is a habit, and what is by shape goes with the width, see For engineers.
// So measure the width where it matters.
//
// # Chart by shape
//
// What it takes to match the same 7 ft tree where the rules do not suit. The width is
// the usual one, to the nearest inch, and garland is rounded up to a foot; get as many
// types as by rule, and fewer of each.
//
//	against a wall  width       ornaments  garland  picks  lights
//	6 ft            3 ft 11 in  24         32 ft    11     343
//	7 ft            4 ft 7 in   33         43 ft    14     467
//	7½ ft           4 ft 11 in  38         49 ft    17     536
//	9 ft            5 ft 10 in  54         70 ft    24     772
//	12 ft           7 ft 10 in  96         124 ft   42     1372
//	15 ft           9 ft 9 in   150        192 ft   65     2143
//
//	in a corner     width       ornaments  garland  picks  lights
//	6 ft            3 ft 11 in  18         25 ft    8      258
//	7 ft            4 ft 7 in   25         33 ft    11     350
//	7½ ft           4 ft 11 in  29         38 ft    13     402
//	9 ft            5 ft 10 in  41         53 ft    18     579
//	12 ft           7 ft 10 in  72         93 ft    31     1029
//	15 ft           9 ft 9 in   113        145 ft   49     1608
//
//	slim            width       ornaments  garland  picks  lights
//	6 ft            2 ft 8 in   25         32 ft    11     348
//	7 ft            3 ft 2 in   34         44 ft    15     473
//	7½ ft           3 ft 5 in   38         50 ft    17     543
//	9 ft            4 ft 1 in   55         71 ft    24     781
//	12 ft           5 ft 5 in   98         125 ft   42     1389
//	15 ft           6 ft 9 in   152        194 ft   66     2170
//
//	pencil          width       ornaments  garland  picks  lights
//	6 ft            1 ft 10 in  16         22 ft    7      229
//	7 ft            2 ft 1 in   22         30 ft    10     311
//	7½ ft           2 ft 3 in   25         34 ft    11     357
//	9 ft            2 ft 8 in   36         48 ft    16     514
//	12 ft           3 ft 7 in   64         83 ft    28     914
//	15 ft           4 ft 6 in   100        129 ft   43     1427
//
// The tree against a wall or in a corner is a full one. For other widths and corners,
// and for a handle or a bare tip, ask [Look.Amounts].
//
// # How far apart the garland in hand comes
//
// On a full tree seen from every side, to the nearest inch; on the reference tree wraps
// are 10 in apart:
//
//	garland    25 ft   50 ft   75 ft  100 ft  150 ft
//	6 ft       20 in    9 in    6 in    5 in    3 in
//	7 ft       27 in   13 in    9 in    6 in    4 in
//	7½ ft      32 in   15 in   10 in    7 in    5 in
//	9 ft       47 in   22 in   14 in   11 in    7 in
//	12 ft      91 in   39 in   25 in   19 in   12 in
//	15 ft     162 in   63 in   40 in   30 in   20 in
//
// Against a wall two thirds of a garland come about as close as all of it does here, in
// a corner half of it. [Tree.Spacing] says it for any garland on any tree.
//
// # When the rules fail
//
// Surface grows as the square of height; the rules for garland, picks and lights
// grow as the height itself. They suit a full tree of 6 to 8 ft: on a taller one
// everything but the ornaments thins out, on a smaller one it crowds. They do not know
// width: a slim or a pencil tree, or one in a corner or against a wall, gets too much.
// For those, size by shape: take the look that you like from a tree that the rules suit, or
// say it in so many words, and apply it:
//
//	look := sizing.CommonLook()
//	amounts, err := look.Amounts(sizing.Tree{Height: 12 * units.Foot, Exposure: sizing.InCorner})
//
// A tree is taken for a cone. A real one has gaps and an outline of its own, and
// its measured width matters more than the class it was sold as. Garland is measured
// along the branch tips; one that sags between them takes more, which is in none of
// these figures: see [Drape].
//
// # What to measure
//
//   - [Tree.Height]: from the floor to the tip, as the tree stands. If it was measured
//     before it was set up, [Room.Stand] says by how much the stand lifts it.
//   - [Tree.Base]: the widest diameter across the branches. Not measured, it is a part
//     of the whole height, handle included, by [Taper.Base].
//   - [Tree.Handle]: from the floor to the lowest branches. Zero is for branches down
//     to the floor, as the reference tree of [CommonLook] has them.
//   - [Tree.BareTip]: how much of the top stays undressed under a topper. It is apart
//     from [Room.Topper], how far the topper stands above the tip, which counts for the
//     ceiling and the ladder; [Topper] says how much is usual.
//   - [Tree.Exposure]: how much of the way round is seen and dressed.
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
// A close winding is about surface/p long. How exact this is stands under For
// engineers.
//
// # Worked example
//
// The ticket hall of a small-town station has a 9 ft tree, full, seen from every
// side, its top 10 in bare for a star of 1 ft, under a 14 ft ceiling. By rule it
// takes 81 ft of garland, which comes 13 in apart. To match the 7 ft tree that
// everyone likes, its wraps 10 in apart, it takes 103 ft; and the 1148 lights go on
// twelve strings of 100, of 4.8 W each, 57.6 W, in four runs if the label lets three be
// joined. The star is set on from a 6 ft stepladder, with 4 ft to spare above it.
//
// The waiting room has a tree of 4 ft 6 in in the corner. By rule it takes 40 ft 6 in
// of garland, which would come 3 1/4 in apart on the half that is seen; 14 ft 2 in
// match the other tree.
//
// # For engineers
//
// The arithmetic is far surer than the tree. A spiral length is within 1 nm of the
// exact one over the whole range, a spacing within 1.01 nm where the garland goes
// round at least once, a surface within a square micrometer and two parts in 10¹⁵; all
// are the same bits on every machine. So nothing is lost when figures are added up,
// compared or inverted. What is bought by them is as sure as the width, here of a 7½ ft
// tree sold as full:
//
//	60 % as wide as high: 52 ornaments, 67 ft of garland, 737 lights
//	65 % as wide as high: 57 ornaments, 73 ft of garland, 804 lights
//	70 % as wide as high: 62 ornaments, 79 ft of garland, 872 lights
//
// That is a twelfth either way before anybody has looked at the branches.
//
// In JSON a field has its name in lower camel case; lengths, areas, powers and
// named values are the texts that they print as.
//
// # Cautions
//
// What is computed here is a quantity, not a permission. Lights: the labels on
// strings, cords and timers come first, then local code; a load over 80 % of the
// circuit is reported as over and never adjusted, see [Strings.Load]. Look strings
// over for damage, and switch them off when leaving and when going to bed. Ladders:
// see [Room.Ladder]. A cut tree drinks about a quart a day for each inch of stem
// diameter; keep it 3 ft from fire, candles, radiators and vents. For wiring ask a
// licensed electrician, for work above a stepladder a trained firm.
//
// # Sources
//
// How sure each is: read (in the source), quoted (in somebody's quotation), memory,
// or common practice, for which there is no published source.
//
//   - Rules of thumb: common practice; lights, ribbon, topper, skirt, tapers and
//     exposures from memory. The fields of [Rules] are defaults, and a width or an arc
//     that was measured goes before a taper or an exposure.
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
