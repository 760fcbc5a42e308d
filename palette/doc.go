// Package palette answers three questions: which colors stay distinct, to whom, and which
// of last year's ornaments match them?
//
// A tree looks composed when its few colors can be counted at a glance: each plainly
// different from the others and from the greenery, by day and by tree light, for
// color-blind viewers too.
//
// Begin with [CommonPractice], [Rules.ParsePalette], [Rules.Read], [Rules.Sort] and
// [Palette.Share].
//
// # The rules
//
//   - At most four colors. Metals count: silver and gold are two.
//   - Two colors read as two if they differ by 10 or more, on a scale (CIEDE2000) where
//     black to white is 100. Exactly 10 is two colors; 9.9 is one. Readings are rounded
//     down: 9.96 never prints as 10.
//   - An ornament passes for a color of the palette up to a difference of 8; exactly 8 passes.
//   - The leading color comes first and gets the most: with three colors, 60, 30 and 10
//     percent. For other numbers see [Palette.Share].
//
// A shop changes the first three in [Rules]. Errors are [*units.Error]: [units.ErrRange] for a
// number outside its range, [units.ErrName] for an unknown word or constant, [units.ErrSyntax] for
// other text that cannot be read.
//
// # How many types of each color
//
// With one type of ornament for each whole foot of tree:
//
//	tree    types  crimson  darkgreen  gold  ivory
//	6 ft        6        2          2     1      1
//	7 ft        7        3          2     1      1
//	7½ ft       7        3          2     1      1
//	9 ft        9        3          3     2      1
//	12 ft      12        5          4     2      1
//	15 ft      15        6          5     3      1
//
// Pieces go by the shares too: on a 7 ft tree with 49 pieces the one gold type has 10. For
// seven of every type, multiply the types by seven.
//
// # How to write a color
//
// Write its screen code, #rrggbb, or a name. All 148 color names of CSS are known, such as
//
//	crimson      #dc143c   firebrick    #b22222   darkred      #8b0000
//	forestgreen  #228b22   darkgreen    #006400   seagreen     #2e8b57
//	gold         #ffd700   goldenrod    #daa520   silver       #c0c0c0
//	white        #ffffff   ivory        #fffff0   black        #000000
//	royalblue    #4169e1   navy         #000080   skyblue      #87ceeb
//	teal         #008080   plum         #dda0dd   chocolate    #d2691e
//
// About 90 everyday names are known too, with their colors in NBS Special Publication 440. Some
// are here; ~ marks an estimate. The example Everyday has them all.
//
//	blue spruce   #3b7861   burgundy      #673147   champagne     #fad6a5   copper        #b4745e
//	evergreen     #355e3b   holly berry   #bc3f4a   holly green   #00622d   juniper       #3a4b47
//	natural       #bfb8a5   old gold      #ab9144   ruby          #78184a   sage          #8a9a5b
//	~cranberry    #841b2d   ~fir          #355e3b   ~flocked      #dfede8   ~rose gold    #b76e79
//
// Upper case, spaces and hyphens do not count: Forest Green is forestgreen. A metal looks
// different from paint of the same name, so gold:metal and the like have codes of their
// own; gold, copper and rose gold are estimates:
//
//	gold       #d4af37
//	old gold   #ab9144
//	brass      #c9ae5d
//	silver     #c0c0c0
//	nickel     #848482
//	pewter     #555555
//	copper     #b5714a
//	rose gold  #b76e79
//	bronze     #826644
//	champagne  #c2b280
//
// For names of your own and for finishes see [ParseSwatch].
//
// # Who sees two colors
//
// [Rules.Read] measures every pair in eight views: by daylight and by warm-white tree
// lights, each with usual color vision and as a red-blind (protan), green-blind (deutan) or
// blue-blind (tritan) person sees it. A starred pair does not hold: it reads as one:
//
//	pair                  by daylight                       by warm light
//	                      usual  protan  deutan  tritan     usual  protan  deutan  tritan
//	crimson, forestgreen   73.8    24.1     3.0*   53.2      70.2    23.6     3.1*   47.7
//	* crimson and forestgreen: one color, under 10, to deutan viewers
//	  (about one man in twelve has some red-green deficiency);
//	  darker forestgreen, #1d751d for #228b22, mends it: a difference in lightness
//	  of 10.4 to deutan viewers by daylight, where it is 3.0 now
//
// A difference in lightness mends the pair, since everybody sees that. With darkgreen in
// place of forestgreen it holds in all eight views.
//
// [Rules.Read] also compares every color with the background, a tree or a wall: crimson on
// fir green is one color to a protan viewer.
//
// # How different two colors are
//
// As a rule of thumb a difference of 1 is just visible side by side, most people notice 2 to 3,
// and 10 is another color. To the nearest tenth: by daylight above the diagonal, below it the
// least of the eight views:
//
//	no  color            1    2    3    4    5    6    7    8    9
//	 1  crimson            73.8 71.3 60.1 38.6 48.6 44.2 42.1 35.5
//	 2  forestgreen    3.0      13.4 40.4 35.1 44.9 45.8 56.8 70.9
//	 3  darkgreen     14.1 12.7      51.6 46.1 56.7 35.7 57.1 74.6
//	 4  gold          29.9 26.0 40.9      30.1 30.5 85.6 73.7 60.4
//	 5  silver        26.8 27.0 38.8 14.8      14.1 67.3 37.2 23.2
//	 6  white         37.9 37.2 49.9 14.3 14.1       100 47.2 28.7
//	 7  black         25.7 39.0 27.1 82.4 66.8 99.5      44.0 65.8
//	 8  royalblue     41.0  5.5 12.9 55.1 32.3 43.4 39.1      32.1
//	 9  plum          28.3 38.6 49.0  9.6 11.3 19.3 58.3 24.4
//
// # When the rules fail
//
//   - A code is the color of a flat, evenly lit patch. Metal, glitter and glass take the color of
//     what they mirror; their code is an average at arm's length.
//   - Dyes that match by day may part by lamplight: hold the real pieces under the real lights.
//   - Small pieces seen from afar need more than 10. Near 10, trust your eye.
//   - The milder forms of color blindness, which are more common, can be worse for a pair near
//     the threshold; see [View.Lab].
//   - Colored lights are not covered.
//
// Mark an exit, a step or a switch by shape and words, never by color alone. For lights,
// follow the label and local code.
//
// # What to measure
//
// Common practice: photograph a piece in daylight beside white paper, and read the code off
// the evenly lit part with a color picker. Note the finish and count the pieces. Then
// [Rules.Sort] finds the color of each piece, [Rules.Best] a palette for the box, and
// [Rules.Suggest] colors to add.
//
// # A worked example
//
// A 9 ft fir in the ticket hall of a small-town station: nine types of ornament, 81 pieces, and
// gold as a metal.
//
//	pair                by daylight                       by warm light
//	                    usual  protan  deutan  tritan     usual  protan  deutan  tritan
//	crimson, darkgreen   71.3    15.1    15.7    50.9      68.1    14.1    16.0    46.6
//	crimson, gold        50.0    40.3    19.5    28.3      46.8    40.3    19.3    27.0
//	crimson, ivory       51.8    51.7    38.5    47.7      49.0    52.1    36.4    44.8
//	darkgreen, gold      43.8    30.9    38.0    52.4      45.1    30.9    38.1    50.6
//	darkgreen, ivory     54.8    50.1    54.5    53.7      56.2    48.6    53.1    58.8
//	gold, ivory          28.1    27.7    27.7    24.4      24.3    24.7    24.0    19.8
//	crimson on fir       57.7     4.3*   19.4    43.1      54.5     4.4*   19.1    37.5
//	darkgreen on fir     11.4    11.4    11.3     4.4*     10.7    10.4    10.0     5.5*
//	gold on fir          43.6    35.7    40.6    47.9      43.9    35.3    40.3    45.1
//	ivory on fir         52.7    48.8    51.7    52.2      54.2    48.4    51.4    55.2
//
// Crimson is lost on the fir to protan viewers, darkgreen to tritan viewers. Read proposes a
// lighter crimson, #e65a76, and a darker darkgreen, #004100. The ornaments are shared out as
//
//	color       share  types  pieces
//	crimson        40      3      33
//	darkgreen      30      3      24
//	gold:metal     20      2      16
//	ivory          10      1       8
//	total         100      9      81
//
// and the box from the attic is sorted (differences rounded up):
//
//	24 glass balls, #c8102e: crimson, 4.9 away
//	 6 velvet bows, #8b0000: none: crimson is nearest, 18.9 away
//	12 foil stars, #fdd017: gold, 6.4 away
//	18 icicles, #ffffff: ivory, 6.9 away
//	 3 tin engines, #4169e1: none: crimson is nearest, 42.1 away
//	crimson     24
//	darkgreen    0
//	gold:metal  12
//	ivory       18
//	left out     9
//
// # For engineers
//
// L*a*b* is under D65 (x = 0.3127, y = 0.3290), within 1e-12 of values computed in 50
// digits. CIEDE2000 gives all 34 published pairs within 1e-4 in both orders. The three dichromats agree with the matrices of libDaltonLens
// in all five decimals.
//
// # Sources
//
// Read: the 34 pairs of Sharma, Wu and Dalal 2005; CSS Color Module Level 4; the 267
// centroids of NBS Special Publication 440 (Kelly and Judd 1976); Birch 2012 (abstract) for
// one man in twelve. Quoted: CAT16 (Li et al. 2017), the dichromats (Brettel, Viénot and
// Mollon 1997; Viénot et al. 1999; Smith and Pokorny 1975; Vos 1978), CIE 15 for illuminant
// A. Chosen here: the rule for metals, the estimates, and a dim room of 4 cd/m² for tree
// light.
package palette
