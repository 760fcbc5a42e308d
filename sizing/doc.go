// Package sizing says how much of everything a Christmas tree takes, whether it fits under the
// ceiling, and which ladder reaches it. The rules of thumb go by height alone; sizing by shape
// goes by the surface seen. Begin with [CommonPractice], [Tree], [Rules.Compare] and
// [Comparison.Needs].
//
// # The rules
//
// By [Rules.Compare], with the height in feet:
//
//	ornament types      1 for each foot             whole feet, a part foot adds none
//	of each type        height - 2 to height + 2    whole feet, never under 1
//	picks               3 for each foot             exact height, rounded up
//	garland or ribbon   9 ft for each foot          exact height, rounded up to an inch
//	lights              100 for each foot           exact height, rounded up to 50
//
// Garland, ribbon and picks are alternatives: two together look overfull on a tree. A tree
// sold as 210 cm has six whole feet and so 36 ornaments, where 7 ft has 49: see [TradeHeight].
//
// # The tree
//
//	     o        topper      Room.Topper
//	    /|\  - -  bare tip    Tree.BareTip
//	   / | \
//	  /  |  \     height      Tree.Height, floor to tip
//	 /   |   \
//	/____|____\   base        Tree.Base, the widest
//	     |
//	_____|_____   handle      Tree.Handle
//
// # Quick chart
//
// A full tree seen from every side. The columns up to strings go by rule. Wraps: how far apart
// that garland comes. Match: the garland that matches a 7 ft tree.
//
//	height types  of each picks garland        strands strings  wraps match surface
//	    ft                           ft     5, 6, 9 ft  of 100     in    ft   sq ft
//	     4     4   2 to 6    12      36      8   6   4       4    5.8    22    17.2
//	     5     5   3 to 7    15      45      9   8   5       5    7.3    33    26.8
//	     6     6   4 to 8    18      54     11   9   6       6    8.7    47    38.6
//	     7     7   5 to 9    21      63     13  11   7       7   10.2    63    52.6
//	     8     8  6 to 10    24      72     15  12   8       8   11.6    83    68.7
//	     9     9  7 to 11    27      81     17  14   9       9   13.1   104    87.0
//	    10    10  8 to 12    30      90     18  15  10      10   14.5   128   107.4
//	    11    11  9 to 13    33      99     20  17  11      11   16.0   155   129.9
//	    12    12 10 to 14    36     108     22  18  12      12   17.4   184   154.6
//	    13    13 11 to 15    39     117     24  20  13      13   18.9   216   181.4
//	    14    14 12 to 16    42     126     26  21  14      14   20.3   250   210.4
//	    15    15 13 to 17    45     135     27  23  15      15   21.8   287   241.6
//
// # Chart by shape
//
// Balls, and feet of garland, that match a full 7 ft tree: on a full tree in three places, and
// on free-standing slim and pencil trees. Picks are 0.399 and lights 13.3 to the square foot.
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
// Counts jump where a smaller size takes over, see [Rules.Mix]: a 2 ft tree takes 33 of 1 in,
// by rule 4.
//
// # Garland by height and width
//
// Whole feet to match a full 7 ft tree, by width; - is refused. Against a wall take over
// two thirds, in a corner over half.
//
//	height    2    3    4    5    6    7    8
//	     4   17   25   34   45   57    -    -
//	     5   21   30   41   53   66   80    -
//	     6   24   36   48   62   76   91  108
//	     7   28   41   55   70   86  103  121
//	     8   32   47   63   79   96  115  134
//	     9   36   53   70   88  107  127  147
//	    10   40   58   78   97  118  139  161
//	    11   44   64   85  106  129  151  175
//	    12   48   70   92  116  139  164  189
//	    13   52   75  100  125  150  176  203
//	    14   56   81  107  134  161  189  218
//	    15   60   87  115  143  172  202  232
//
// # How far apart the garland in hand comes
//
// To the nearest inch, by feet of garland, on a full tree. From five wraps on, surface over
// length is close: 52.6 sq ft over 50 ft is 12.6 in. [Tree.Spacing] has bounds and the exact
// figure.
//
//	height   25   50   75  100  150
//	     4    8    4    3    2    1
//	     5   13    7    4    3    2
//	     6   20    9    6    5    3
//	     7   27   13    9    6    4
//	     8   36   17   11    8    6
//	     9   47   22   14   11    7
//	    10   59   27   18   13    9
//	    11   74   33   21   16   10
//	    12   91   39   25   19   12
//	    13  111   46   30   22   15
//	    14  134   54   35   26   17
//	    15  162   63   40   30   20
//
// # When the rules fail
//
// The rules for garland, picks and lights grow with height, surface with its square. They suit
// a full tree of 6 to 8 ft: taller ones come out thin, smaller ones crowded. No rule knows the
// width: a slim or pencil tree, or one in a corner or against a wall, gets too much. Size
// these by shape. [Rules.Compare] sets Comparison.ByShape where more than the height is known,
// or the chart ends; otherwise set it yourself.
//
// Ornaments grow with the square too. To make two trees match, keep the cover equal: the part
// of the surface that ornaments hide.
//
// The usual wraps are 10.16 in apart, printed as 10 1/4 in; at exactly 10 in a tree takes 2 %
// more garland. A tree is treated as a cone; a real one has gaps.
//
// # What to measure
//
//   - [Tree.Height], from the floor to the tip as it stands. The rest has usual values.
//   - [Tree.Base], the widest diameter across the branches. It matters more than the class
//     under which the tree was sold.
//   - [Tree.Exposure], how much is seen. [Tree.Seen] computes it from where people stand.
//   - [Tree.Handle], [Tree.BareTip] and [Tree.BareBase], where it is not dressed.
//
// # Worked example
//
// The ticket hall of a station has a full 9 ft tree with a 1 ft star under a 14 ft ceiling. By
// rule it takes 81 ft of garland, wrapped 13 1/4 in apart. To match a full 7 ft tree it takes
// 104 ft, 81 balls, and 12 strings of 100 lights; at 4.8 W a string, 57.6 W, in four runs if
// three may be joined. A 6 ft stepladder reaches the star, 4 ft below the ceiling.
//
// The waiting room has a 4 ft 6 in tree in the corner. The rule's 40 ft 6 in of garland
// would come 3 1/2 in apart; 14 ft 2 in matches, with 19 balls.
//
// # Cautions
//
// See [Tree.Cautions]. In rooms that the public uses, fire codes forbid most cut trees and ask
// for flame-resistant labels on artificial ones. Ask the fire marshal, and for wiring a
// licensed electrician. Over 20 ft no stepladder will do: hire a trained firm.
//
// # Formulas
//
// Base diameter d, height h above the handle, depths y₁ and y₂ of the dressed part below
// the tip, wraps p apart along the slope:
//
//	slope     s = √(d²/4 + h²)
//	surface   π·(d/2)·s·(y₂² - y₁²)/h²
//	turns     s·(y₂ - y₁)/(h·p)
//	spiral    a/2·(F(u₂) - F(u₁))   a = p·s/(π·d)   u = s·y/(h·a)   F(u) = u·√(1+u²) + arsinh u
//
// Step by step, a 7 ft tree 4.55 ft wide with wraps 10.16 in (0.847 ft) apart:
//
//	s   √(2.275² + 7²) = 7.360 ft
//	a   0.847 · 7.360 / (π · 4.55) = 0.436 ft
//	u₂  7.360 / 0.436 = 16.88
//	F   16.88 · 16.91 + 3.52 = 289.0
//	    0.436 / 2 · 289.0 = 63.0 ft
//
// The spiral is [Tree.SpiralLength]. [Cover] and [Tree.Seen] have their own.
//
// # For engineers
//
// A surface is within a square micrometer and two parts in 10¹⁵, but what you buy is only as
// exact as the width. For a 7½ ft full tree:
//
//	60 % as wide as high: 52 ornaments, 67 ft of garland
//	65 % as wide as high: 56 ornaments, 73 ft of garland
//	70 % as wide as high: 61 ornaments, 79 ft of garland
//
// Errors are [*units.Error]: ErrRange for a value outside its range, ErrName for an unknown
// name, ErrSyntax from Scan, ErrFit for Topper with NoTopper or Clearance with NoClearance.
//
// # Sources
//
// Each figure has its source where it stands. The rest:
//
//   - Public rooms: International Fire Code section 806; NFPA 1 section 10.13, 2015 (quoted).
//   - Water: Washington State University, 2012 (read). Heat: NFPA (quoted), ESFI (read).
//   - Top step of a ladder: 29 CFR 1926.1053 (memory).
//   - Formulas: OpenStax, Calculus (read), quadrature and 60-digit arithmetic.
package sizing
