// Package sizing says how much of everything a Christmas tree takes: ornaments and
// their sizes, garland, ribbon, picks and lights, the topper and the skirt; whether it
// goes under the ceiling; and what it takes to reach it safely.
//
// It answers in two ways. The rules of thumb ([Rules], [CommonPractice]) go by
// height alone, as the trade does. Geometry ([Tree], [Cone], [Look]) goes by the
// shape and by how much of the tree is seen. [Rules.Compare] sets one against the
// other and says which to go by: by rule where only the height is known, by shape once
// more is. Start with [CommonPractice], [Tree], [Rules.Compare] and [Comparison.Needs].
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
// Garland, ribbon and picks are alternatives, since two together look overfull. Choose
// one. The figures are fields of [Rules] that a shop with other habits changes.
//
// A tree of 6 ft 10 5/8 in, sold as 210 cm, has six whole feet and so 36 ornaments,
// where 7 ft has 49. Within 2 in below a foot the basis of a need says what the next
// foot would come to, and [TradeHeight] returns it.
//
// # Quick chart
//
// For a full tree seen from every side. The last three columns are computed from the
// shape: how far apart the wraps come by rule, the garland that keeps them as close as
// on a 7 ft tree, and the surface.
//
//	height  types   of each  picks  garland  strings   wraps  to match  surface
//	    ft                               ft   of 100      in        ft    sq ft
//	     4      4    2 to 6     12       36        4     5.8        22     17.2
//	     5      5    3 to 7     15       45        5     7.3        33     26.8
//	     6      6    4 to 8     18       54        6     8.7        47     38.6
//	     7      7    5 to 9     21       63        7    10.2        63     52.6
//	     8      8   6 to 10     24       72        8    11.6        83     68.7
//	     9      9   7 to 11     27       81        9    13.1       104     87.0
//	    10     10   8 to 12     30       90       10    14.5       128    107.4
//	    11     11   9 to 13     33       99       11    16.0       155    129.9
//	    12     12  10 to 14     36      108       12    17.4       184    154.6
//	    13     13  11 to 15     39      117       13    18.9       216    181.4
//	    14     14  12 to 16     42      126       14    20.3       250    210.4
//	    15     15  13 to 17     45      135       15    21.8       287    241.6
//
// By rule a garland is a habit, and to match is as sure as the width of the tree.
// From 6 to 8 ft they are close. Above and below that, go by the match.
//
// # Chart by shape
//
// Ornaments and feet of garland that match a full 7 ft tree where the rules do not
// suit. A full tree stands free, against a wall or in a corner; a slim and a pencil one
// stand free.
//
//	height        free        wall      corner        slim      pencil
//	    ft  balls   ft  balls   ft  balls   ft  balls   ft  balls   ft
//	     4     46   22     30   15     23   12     59   15     58   11
//	     5     43   33     28   23     21   18     62   23     60   16
//	     6     39   47     26   32     20   25     69   32     87   22
//	     7     49   63     33   43     25   33     61   44     80   30
//	     8     64   83     43   56     32   43     74   56     81   38
//	     9     81  104     54   70     41   53     60   71    102   48
//	    10    100  128     67   86     50   65     67   87     82   58
//	    11    121  155     81  104     60   79     82  105     92   70
//	    12    144  184     96  124     72   93     97  125    109   83
//	    13    169  216    113  145     85  109    114  146     82   97
//	    14    196  250    131  168     98  126    132  170     95  113
//	    15    225  287    150  192    112  145    152  194    100  129
//
// The counts go with the sizes of [Rules.Mix], which are smaller on a small or narrow
// tree. Picks and lights go by the surface: 0.40 picks and 13 lights to the square foot.
//
// # Garland by height and width
//
// In feet, for wraps as close as on a full 7 ft tree, seen from every side. Against a
// wall take two thirds of it, in a corner half.
//
//	height    2 ft    3 ft    4 ft    5 ft    6 ft    7 ft    8 ft
//	  4 ft      17      25      34      45      57       -       -
//	  5 ft      21      30      41      53      66      80       -
//	  6 ft      24      36      48      62      76      91     108
//	  7 ft      28      41      55      70      86     103     121
//	  8 ft      32      47      63      79      96     115     134
//	  9 ft      36      53      70      88     107     127     147
//	 10 ft      40      58      78      97     118     139     161
//	 11 ft      44      64      85     106     129     151     175
//	 12 ft      48      70      92     116     139     164     189
//	 13 ft      52      75     100     125     150     176     203
//	 14 ft      56      81     107     134     161     189     218
//	 15 ft      60      87     115     143     172     202     232
//
// # Strands
//
// Garland by rule, and how many strands of 5, 6 and 9 ft it comes to:
//
//	height  garland   5 ft   6 ft   9 ft
//	  4 ft    36 ft      8      6      4
//	  5 ft    45 ft      9      8      5
//	  6 ft    54 ft     11      9      6
//	  7 ft    63 ft     13     11      7
//	  8 ft    72 ft     15     12      8
//	  9 ft    81 ft     17     14      9
//	 10 ft    90 ft     18     15     10
//	 11 ft    99 ft     20     17     11
//	 12 ft   108 ft     22     18     12
//	 13 ft   117 ft     24     20     13
//	 14 ft   126 ft     26     21     14
//	 15 ft   135 ft     27     23     15
//
// # How far apart the garland in hand comes
//
// On a full tree seen from every side, to the nearest inch. Surface over length is
// nearly it: 52.6 sq ft over 50 ft is 12.6 in.
//
//	height   25 ft   50 ft   75 ft  100 ft  150 ft
//	  4 ft    8 in    4 in    3 in    2 in    1 in
//	  5 ft   13 in    7 in    4 in    3 in    2 in
//	  6 ft   20 in    9 in    6 in    5 in    3 in
//	  7 ft   27 in   13 in    9 in    6 in    4 in
//	  8 ft   36 in   17 in   11 in    8 in    6 in
//	  9 ft   47 in   22 in   14 in   11 in    7 in
//	 10 ft   59 in   27 in   18 in   13 in    9 in
//	 11 ft   74 in   33 in   21 in   16 in   10 in
//	 12 ft   91 in   39 in   25 in   19 in   12 in
//	 13 ft  111 in   46 in   30 in   22 in   15 in
//	 14 ft  134 in   54 in   35 in   26 in   17 in
//	 15 ft  162 in   63 in   40 in   30 in   20 in
//
// [Tree.Spacing] says it for any garland on any tree, and [Tree.SpiralLength] says what
// a spacing takes.
//
// # What to measure
//
//	     o        topper      Room.Topper
//	    /|\  - - - - - - - -  bare tip    Tree.BareTip
//	   / | \
//	  /  |  \     height      Tree.Height, floor to tip
//	 /   |   \
//	/____|____\   base        Tree.Base, the widest
//	     |
//	_____|_____   handle      Tree.Handle
//
// All of them but the height have usual values, which zero stands for:
//
//   - [Tree.Height]: from the floor to the tip, as the tree stands. If it was measured
//     before it was set up, [Room.Stand] says by how much the stand lifts it.
//   - [Tree.Base]: the widest diameter across the branches. Not measured, it is a part
//     of the whole height, handle included, by [Taper.Base].
//   - [Tree.Handle]: from the floor to the lowest branches. Zero is for branches down
//     to the floor, as the reference tree of [CommonLook] has them.
//   - [Tree.BareTip]: how much of the top stays undressed under a topper.
//   - [Tree.Exposure]: how much of the way round is seen and dressed. [Tree.Seen]
//     works it out from where people stand.
//   - [Tree.Kind] and [Tree.Setting]: what it is made of and who uses the room.
//
// # When the rules fail
//
// Surface grows as the square of height; the rules for garland, picks and lights
// grow as the height itself. They suit a full tree of 6 to 8 ft: on a taller one they
// thin out, on a smaller one they crowd. Ornaments grow as the square of the height too,
// so on a taller tree balls of the same sizes go on covering as much of it. A small
// tree takes smaller balls, and more of them than by rule: 33 of 1 in on a 2 ft tree,
// where the rule has 4. No rule knows the width: a slim or a pencil tree, or one in a
// corner or against a wall, gets too much. For those, size by shape.
//
// A look is kept by its cover: what part of the surface the ornaments hide. Two trees
// dressed to one look are a match side by side. Take the look that you like from a tree
// that the rules suit ([Rules.Look]), or say it in so many words ([Look]).
//
// A tree is taken for a cone. A real one has gaps and an outline of its own, and
// its measured width matters more than the class it was sold as. Garland is measured
// along the branch tips; one that sags between them takes more, see [Drape].
//
// # Worked example
//
// The ticket hall of a small-town station has a 9 ft tree, full, seen from every
// side, its top 10 in bare for a star of 1 ft, under a 14 ft ceiling. By rule it
// takes 81 ft of garland, which comes 13 in apart. To match the 7 ft tree that
// everyone likes, its wraps 10 1/4 in apart, it takes 103 ft; and the lights go on
// twelve strings of 100, of 4.8 W each, 57.6 W, in four runs if the label lets three be
// joined. The star is set on from a 6 ft stepladder, with 4 ft to spare above it.
//
// The waiting room has a tree of 4 ft 6 in in the corner. By rule it takes 40 ft 6 in
// of garland, which would come 3 1/4 in apart on the half that is seen; 14 ft 2 in
// match the other tree, with 19 balls of 2 3/4 and 1 1/2 in.
//
// # Public rooms and cautions
//
// What is computed here is a quantity, not a permission. [Tree.Cautions] says what to
// see to. In rooms that the public uses (halls, shops, churches, lobbies) fire codes
// forbid most cut trees, keep them out of exits and away from heat by their own height,
// and ask for flame-resistant labels on the others; no electric lights go on a metal
// tree. Editions and local rules differ: ask the fire marshal. A cut tree is watered
// every day. From 8 ft a tree is tied off.
//
// Ladders: see [LadderFor] and [Room.Ladder]. Over 3 ft in from the branch line the tip
// is out of a safe reach; over 20 ft no stepladder will do. For wiring ask a licensed
// electrician, for work above a stepladder a trained firm. For lights see package
// lights.
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
//	cover          Σ count · π/4 · diameter² / surface
//	seen           spread + 2·acos(d/2 / distance)
//
// # For engineers
//
// The arithmetic is far surer than the tree. A spiral length is within 1 nm of the
// exact one over the whole range, a spacing within 1.01 nm where the garland goes
// round at least once, a surface within a square micrometer and two parts in 10¹⁵; all
// are the same bits on every machine. What is bought by them is as sure as the width,
// here of a 7½ ft tree sold as full:
//
//	60 % as wide as high: 52 ornaments, 67 ft of garland
//	65 % as wide as high: 56 ornaments, 73 ft of garland
//	70 % as wide as high: 61 ornaments, 79 ft of garland
//
// That is a twelfth either way before anybody has looked at the branches. A supply is
// rounded up, to a whole inch or half a string of lights, and a text never says less
// than its value.
//
// In JSON a field has its name in lower camel case; lengths, areas, powers and
// named values are the texts that they print as. Texts come in every [units.Style] from
// the Format methods. Errors are [units.Error]. Types without a slice are comparable
// with ==.
//
// # Sources
//
// How sure each is: read (in the source), quoted (in somebody's quotation), memory,
// or common practice, for which there is no published source.
//
//   - Rules of thumb: common practice; lights, ribbon, topper, skirt, tapers,
//     exposures, sizes of ornament and trade heights from memory.
//   - Taper grades: Ontario R.R.O. 1990, Reg. 377 (read); U.S. Standards for Grades
//     of Christmas Trees, 1989 (memory).
//   - Ceiling: Clemson Cooperative Extension, Selecting a Christmas Tree (read).
//   - Spirals, cones and catenaries: OpenStax, Calculus (read); every closed form
//     is also checked against quadrature and 60-digit arithmetic.
//   - Public rooms: International Fire Code section 806 (quoted) and its commentary
//     (read); NFPA 1 section 10.13, 2015 (quoted).
//   - Water and distance from heat: Washington State University, 2012 (read); NFPA
//     and ESFI (quoted).
//   - Ladder reach: makers' labels (memory); the top step: 29 CFR 1926.1053 (memory).
package sizing
