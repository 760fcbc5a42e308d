// Package palette answers: which colors hold together, for whom, and what of last
// year's box goes with them?
//
// A tree or a mantel looks composed when the eye counts its colors at a glance. That
// takes few colors, each plainly another than the rest and than the greenery, by daylight and by tree
// light, and for those who do not tell red from green. This package measures that,
// sorts what is owned into the palette, and shares the ornaments out over it.
//
// Begin with [CommonPractice], [Rules.ParsePalette], [Rules.Read], [Rules.Sort] and
// [Palette.Share]; then [Swatch], [Piece], [ParseColor], [Rules.Suggest] and [Rules.Best]. Errors are
// [units.Error]; the docs name the sentinel that they wrap.
//
// # The rule
//
// At most four colors, metals counted: silver and gold are two. Two colors read as
// two from a difference of 10 on the scale of CIEDE2000, on which black to white is
// 100 by daylight; a piece passes for a color of the palette within 8 of it. A house changes
// these in [Rules]; [CommonPractice] has them as they stand here.
//
// The leading color comes first and gets the most: 60 and 40 percent of two colors, 60, 30
// and 10 of three, 40, 30, 20 and 10 of four.
//
// # How a color is written
//
// By its code on a screen, #rrggbb, as any color picker shows it, or by a name: one of the 148 color
// names of CSS, such as these to start with,
//
//	crimson      #dc143c   firebrick    #b22222   darkred      #8b0000
//	forestgreen  #228b22   darkgreen    #006400   seagreen     #2e8b57
//	gold         #ffd700   goldenrod    #daa520   silver       #c0c0c0
//	white        #ffffff   ivory        #fffff0   black        #000000
//	royalblue    #4169e1   navy         #000080   skyblue      #87ceeb
//	teal         #008080   plum         #dda0dd   chocolate    #d2691e
//
// or an everyday name, by the color that NBS Special Publication 440 gives for it; a ~
// marks an estimate:
//
//	amethyst      #86608e   apricot       #d99058   aubergine     #291e29   blue spruce   #3b7861
//	blush         #d9a6a9   bordeaux      #673147   bottle green  #1b4d3e   brass         #c9ae5d
//	brick red     #79443b   bronze        #826644   buff          #c19a6b   burgundy      #673147
//	cardinal      #841b2d   champagne     #fad6a5   cherry red    #be0032   cinnamon      #a67b5b
//	claret        #673147   cocoa         #6f4e37   copper        #b4745e   cream         #f0ead6
//	dove gray     #bfb9bd   dusty pink    #d9a6a9   ecru          #c2b280   eggplant      #291e29
//	emerald       #44944a   evergreen     #355e3b   fawn          #7e6d5a   flax          #c2b280
//	garnet        #722f37   geranium      #be0032   gunmetal      #555555   holly berry   #bc3f4a
//	holly green   #00622d   hunter green  #355e3b   jade          #679267   juniper       #3a4b47
//	lilac         #b695c0   mahogany      #79443b   mauve         #875692   natural       #bfb8a5
//	nickel        #848482   old gold      #ab9144   old rose      #c08081   peach         #f4c2c2
//	peacock       #367588   periwinkle    #8c92ac   pewter        #555555   pinecone      #635147
//	platinum      #848482   pumpkin       #ed872d   raspberry     #a8516e   rosewood      #79443b
//	ruby          #78184a   russet        #6f4e37   rust          #80461b   sage          #8a9a5b
//	sage green    #8da399   sand          #bfb8a5   sapphire      #272458   scarlet       #be0032
//	seafoam       #6aab8e   shell pink    #ecd5c5   spruce        #3a4b47   tangerine     #d9603b
//	taupe         #5b504f   terra cotta   #9e4732   vanilla       #f3e5ab   walnut        #a67b5b
//	~amber        #eaa221   ~bare         #635147   ~berry        #a8516e   ~burlap       #ae9b82
//	~charcoal     #555555   ~cranberry    #841b2d   ~dried orange #ae6938   ~dusty rose   #c08081
//	~fir          #355e3b   ~flocked      #dfede8   ~ice blue     #bcd4e6   ~mint         #8ed1b2
//	~moss         #4a5d23   ~mustard      #af8d13   ~oxblood      #56070c   ~pine green   #173620
//	~rose gold    #b76e79   ~wine         #722f37   ~winter white #f0ead6   ~wood         #a67b5b
//
// Upper case, spaces and hyphens do not count: Forest Green is forestgreen. A metal looks
// otherwise than paint of its name, so gold:metal and the like have codes of their own; gold, copper and rose
// gold are estimates:
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
// A name of your own goes before the color and the finish after it, as in
// barn red=#7c0a02:shiny. Several finishes share one color, as in ruby:matte+shiny+glitter; see [ParseSwatch] and [Row.Finishes].
//
// # How unlike two colors are
//
// The figure is the color difference ΔE00 of CIEDE2000: what two colors differ in
// lightness, in strength and in hue, each weighed by how well the eye sees it there;
// [Color.Difference] has the formula. As a rule of thumb 1 is just visible side by side, most
// people notice 2 to 3, and from 10 on it is another color.
//
// The starting colors with each other: by daylight right of the blank, and left of it in the worst of
// the eight views below:
//
//	no  color            1    2    3    4    5    6    7    8    9   10   11   12   13   14   15   16   17   18
//	 1  crimson             9.6 18.8 73.8 71.3 68.6 60.1 46.8 38.6 48.6 51.8 44.2 42.1 45.5 62.5 57.6 35.5 24.2
//	 2  firebrick      5.8       9.5 67.0 63.4 62.8 59.3 45.9 44.0 54.5 56.3 38.1 43.8 44.0 63.6 53.7 43.2 23.0
//	 3  darkred       12.7  7.8      65.7 60.4 62.2 66.8 52.9 55.3 65.6 66.7 32.4 47.3 42.7 71.2 54.0 54.9 28.2
//	 4  forestgreen    3.0  5.6 15.1      13.4  9.4 40.4 37.2 35.1 44.9 42.7 45.8 56.8 63.4 46.5 26.6 70.9 51.9
//	 5  darkgreen     14.1  7.3  3.2 12.7      16.8 51.6 45.8 46.1 56.7 54.9 35.7 57.1 57.7 55.3 28.1 74.6 53.0
//	 6  seagreen       9.3 11.7 19.0  1.0 14.3      42.4 38.3 32.4 42.6 40.4 45.0 46.9 56.9 37.8 18.1 46.6 49.6
//	 7  gold          29.9 38.2 50.6 26.0 40.9 29.2      13.7 30.1 30.5 27.1 85.6 73.7  103 48.0 50.4 60.4 36.2
//	 8  goldenrod     18.8 27.4 40.3 13.4 29.0 17.3 11.3      27.6 33.1 30.5 64.5 63.6 82.3 45.6 44.4 52.5 23.0
//	 9  silver        26.8 34.8 47.1 27.0 38.8 22.0 14.8 15.1      14.1 15.5 67.3 37.2 68.0 18.0 32.9 23.2 32.1
//	10  white         37.9 46.1 57.9 37.2 49.9 33.8 14.3 22.9 14.1       6.9  100 47.2 85.5 22.2 43.8 28.7 41.1
//	11  ivory         36.5 44.8 56.9 35.4 48.7 32.7 13.4 22.3 14.1  1.0      99.9 53.7 89.8 25.9 43.5 36.6 41.1
//	12  black         25.7 24.7 20.4 39.0 27.1 38.3 82.4 62.1 66.8 99.5 99.6      44.0 29.7 71.6 41.0 65.8 50.1
//	13  royalblue     41.0 43.1 46.1  5.5 12.9  5.8 55.1 50.5 32.3 43.4 46.7 39.1      29.6 31.2 31.7 32.1 50.7
//	14  navy          45.5 44.0 42.2 29.9 18.3 30.8 88.6 72.7 65.0 81.4 84.1 21.3 26.7      67.5 44.4 57.9 61.0
//	15  skyblue       40.3 46.1 56.1 23.9 39.5 22.9 38.5 36.9 13.3 17.7 23.6 69.0 26.0 62.3      28.7 34.4 48.2
//	16  teal          17.8 23.2 29.9  3.9 12.0  4.3 39.8 30.3 22.5 35.8 36.9 33.9  1.6 27.2 26.0      44.8 47.0
//	17  plum          28.3 34.5 46.9 38.6 49.0 31.8  9.6  4.6 11.3 19.3 18.7 58.3 24.4 54.5  3.0 21.8      42.2
//	18  chocolate      8.3 16.4 25.3  3.6 10.5  8.4 22.5 11.1 25.7 34.9 33.0 43.8 49.5 60.4 40.8 22.1 17.7
//
// # For whom it holds
//
// [Rules.Read] measures every pair of a palette in eight views: by daylight and by
// warm-white tree lights, as the usual eye sees it and as each of the three kinds of dichromat does:
// protan is red-blind, deutan green-blind, tritan blue-blind; see [View.Lab]
// for the models. Cool-white lights are read as daylight. A star marks what reads as one color:
//
//	pair                  by daylight                       by warm light
//	                      usual  protan  deutan  tritan     usual  protan  deutan  tritan
//	crimson, forestgreen   73.8    24.1     3.0*   53.2      70.2    23.6     3.1*   47.7
//	* crimson and forestgreen: one color, under 10, to deutan viewers
//	  (about one man in twelve has some red-green deficiency);
//	  darker forestgreen, #1d751d for #228b22, mends it: a difference in lightness
//	  of 10.4 to deutan viewers by daylight, where it is 3.0 now
//	forestgreen: #1d751d instead of #228b22
//
// Red and green is the palette of the season, and this is its trap. What mends it is
// lightness, which every kind of color vision keeps: a dark green to a clear red, or
// a pale one. With darkgreen in place of forestgreen it holds in all eight views. The milder forms of
// the deficiencies are not among them.
//
// The tree is a color too: crimson on fir green is one color to a protan viewer. Read reads every
// color against the greenery, a flocked tree or a wall as well; a background is no
// color of the palette.
//
// # How many of each
//
// [Palette.Share] shares types and pieces out by largest remainder: each color gets
// its quota cut to whole ones, and what is left goes to the largest remainders, the
// earlier color first in a tie. Every color gets a type where there are enough, and
// the rows add up. With one type for each whole foot of tree, the types by color are:
//
//	tree    types  crimson  darkgreen  gold  ivory
//	6 ft        6        2          2     1      1
//	7 ft        7        3          2     1      1
//	7½ ft       7        3          2     1      1
//	9 ft        9        3          3     2      1
//	12 ft      12        5          4     2      1
//	15 ft      15        6          5     3      1
//
// Pieces go by the shares too, so that the types are not all alike: on a 7 ft tree with 49
// pieces the one gold type has 10. To have as many of every type, share the types and multiply. The
// method has a known paradox; see [Apportion].
//
// # What of it is owned
//
// [Rules.Sort] finds for every piece of a box, or of a catalog, the color of the palette that it goes with,
// and [Rules.Best] turns the question round: the
// palette of at most four that keeps the most of the box.
//
// # What to add
//
// [Rules.Suggest] looks through the colors that you have or can buy, and then through
// neutrals, metals and greens, for those that stand clear of the palette and the
// tree.
//
// # A worked example
//
// The tree in the ticket hall of a small-town station is 9 ft: nine types of
// ornament, nine of each. In crimson, darkgreen, gold and ivory on a fir it reads and is
// shared out as
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
//	* crimson on fir: one color, under 10, to protan viewers
//	  (about one man in twelve has some red-green deficiency);
//	  lighter crimson, #e65a76 for #dc143c, mends it: a difference in lightness
//	  of 11.3 to protan viewers by daylight, where it is 3.0 now
//	* darkgreen on fir: one color, under 10, to tritan viewers;
//	  darker darkgreen, #004100 for #006400, mends it: a difference in lightness
//	  of 13.2 to tritan viewers by daylight, where it is 0.0 now
//	color       share  types  pieces
//	crimson        40      3      33
//	darkgreen      30      3      24
//	gold:metal     20      2      16
//	ivory          10      1       8
//	total         100      9      81
//
// and the box from the attic sorts into it so (how far away is rounded up):
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
// # When the rule fails
//
// A color code is what a flat, evenly lit patch looks like. Metal, glitter and glass
// take the color of what they mirror; their code is that of the piece at arm's length
// and an average. Two dyes that match by day may part by lamplight (metamerism), and
// no code can tell: hold the real pieces under the real lights. Colored lights are
// not covered. Tiny pieces, seen from afar, need more than 10
// between them. The threshold of 10 is a rule of thumb, and CIEDE2000 was fitted to small
// differences; where a pair is within 2 of the threshold, look. The simulations are of
// the average dichromat. The milder forms, which are the more usual ones, lie between
// that and usual vision: a pair that is near the threshold in one of
// the two can be one color to them; see [View.Lab].
//
// # Cautions
//
// Color must not be the only sign of anything that matters: mark an exit, a step or a
// switch by shape and words too. Lights are bought and hung by their label and local
// code, whatever their color.
//
// # Sources
//
// Read, or read in data that is public: the 34 pairs of Sharma, Wu and Dalal 2005; CSS
// Color Module Level 4; the 267 centroids of NBS Special Publication 440 (Kelly and Judd 1976); COMAP and
// OpenStax for sharing out; Birch 2012 (abstract) for
// one man in twelve. Quoted: CAT16 and its degree of adaptation (Li et al. 2017), the
// dichromats (Brettel, Viénot and Mollon 1997; Viénot et al. 1999; Smith and Pokorny
// 1975; Vos 1978), CIE 15 for illuminant A. From memory: 60/30/10 and 40/30/20/10, and
// that 10 is another color. Chosen here: 60/40, the tolerance of 8 for a piece, the rule for
// metals, the estimates among the colors, and the dim room of 4 cd/m² for tree light. Four
// colors are common practice, with no published source.
//
// # For engineers: what was checked
//
// In JSON a field has its name in lower camel case; colors, finishes, views
// and palettes are the texts that they print as, and what there is by view stands under the view's name. All
// that have a text store it in a column of SQL.
//
// sRGB to L*a*b* is under D65 with the white x = 0.3127, y = 0.3290, within 1e-12 of
// values computed in 50 digits. CIEDE2000 gives all 34 published pairs within 1e-4 in both
// orders, with the same bits on amd64 (plain and v3), arm64 and s390x. The color library
// go-colorful stands beside it in tests and benchmarks; its version 1.4.1 gives 7.2195 for the published
// 7.1792 of pair 10, whose hues are exactly opposite.
//
// CAT16's matrix agrees with its published inverse, the construction of an incomplete
// adaptation with the worked example of CMCCAT2000, and the three dichromats with the matrices of
// libDaltonLens in all five decimals.
package palette
