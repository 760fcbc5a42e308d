// Package palette answers: which colors hold together, for whom, and what of last
// year's box goes with them?
//
// A tree or a mantel looks composed when the eye counts its colors at a glance. That
// takes few colors, each plainly another than the rest, by daylight and by tree
// light, and for those who do not tell red from green. This package measures that,
// sorts what is owned into the palette, and shares the ornaments out over it.
//
// # The rule
//
// At most four colors, metals counted: silver and gold are two. Two colors read as
// two from a difference of 10 on the scale of CIEDE2000, on which black to white is
// 100 by daylight; a piece passes for a color of the palette within 10 of it. A house changes
// these in [Rules]; [CommonPractice] has them as they stand here.
//
// The leading color comes first and gets the most: 60 and 40 percent of two colors, 60, 30
// and 10 of three, 40, 30, 20 and 10 of four.
//
// # How a color is written
//
// By its code on a screen, #rrggbb, as any color picker shows it; or by one of the 148
// color names of CSS, in one word: forestgreen and not forest green. These may do for a
// start:
//
//	crimson      #dc143c   firebrick    #b22222   darkred      #8b0000
//	forestgreen  #228b22   darkgreen    #006400   seagreen     #2e8b57
//	gold         #ffd700   goldenrod    #daa520   silver       #c0c0c0
//	white        #ffffff   ivory        #fffff0   black        #000000
//	royalblue    #4169e1   navy         #000080   skyblue      #87ceeb
//	teal         #008080   plum         #dda0dd   chocolate    #d2691e
//
// A name of your own goes before the color and the finish after it, as in
// barn red=#7c0a02:shiny; see [ParseSwatch].
//
// # How unlike two colors are
//
// The figure is the color difference ΔE00 of CIEDE2000: what two colors differ in
// lightness, in strength and in hue, each weighed by how well the eye sees it there;
// [Color.Difference] has the formula. As a rule of thumb 1 is just visible side by side, most
// people notice 2 to 3, and from 10 on it is another color:
//
//	crimson  #dc143c              #d81840    1.42  one color
//	gold     #ffd700              #fdd017    2.19  one color
//	crimson  #dc143c              #c8102e    4.81  one color
//	ivory    #fffff0   white      #ffffff    6.87  one color
//	crimson  #dc143c   indianred  #cd5c5c    9.71  one color
//	silver   #c0c0c0   white      #ffffff   14.12  two
//	crimson  #dc143c   darkred    #8b0000   18.82  two
//	ivory    #fffff0   turquoise  #40e0d0   26.07  two
//	crimson  #dc143c   darkgreen  #006400   71.33  two
//	black    #000000   white      #ffffff  100.00  two
//
// # For whom it holds
//
// [Rules.Read] measures every pair of a palette in five views: by daylight, by
// warm-white tree lights, and as each of the three kinds of dichromat sees it by
// daylight: protan is red-blind, deutan green-blind, tritan blue-blind; see [View.Lab]
// for the models. A star marks what reads as one color:
//
//	pair                  daylight   warm light   protan   deutan   tritan
//	crimson, forestgreen      73.8         70.2     24.1      3.0*    53.2
//	* crimson and forestgreen: one color, under 10, to deutan viewers
//	  (about one man in twelve has some red-green deficiency);
//	  darker forestgreen, #1d751d for #228b22, mends it: a difference in lightness
//	  of 10.4 in the eyes of deutan viewers, where it is 3.0 now
//
// Red and green is the palette of the season, and this is its trap. What mends it is
// lightness, which every kind of color vision keeps: a dark green to a clear red, or
// a pale one. A palette with darkgreen in place of forestgreen holds for everybody.
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
// pieces the one gold type has 10. Whoever wants as many of every type shares the types
// and multiplies, and gets more of the colors that were rounded up:
//
//	color      types  pieces by share  of each type  7 of each type
//	crimson        3               19         7 6 6              21
//	darkgreen      2               15           8 7              14
//	gold           1               10            10               7
//	ivory          1                5             5               7
//
// The method has a known paradox: with one thing more to share, a count can fall. So,
// by [Apportion],
//
//	10 over 6, 6 and 2: 4, 4 and 2
//	11 over 6, 6 and 2: 5, 5 and 1
//
// which is no mistake. With the shares above it does not happen; with others it may.
//
// # What of it is owned
//
// [Rules.Match] finds the color of the palette that one piece goes with,
// [Rules.Sort] does it for a box, and [Rules.Best] turns the question round: the
// palette of at most four that keeps the most of the box.
//
// # A worked example
//
// The tree in the ticket hall of a small-town station is 9 ft: nine types of
// ornament, nine of each. In crimson, darkgreen, gold and ivory it reads and is
// shared out as
//
//	pair                daylight   warm light   protan   deutan   tritan
//	crimson, darkgreen      71.3         68.1     15.1     15.7     50.9
//	crimson, gold           60.1         56.8     50.2     30.1     35.6
//	crimson, ivory          51.8         49.0     51.7     38.5     47.7
//	darkgreen, gold         51.5         52.6     40.9     47.5     58.9
//	darkgreen, ivory        54.8         56.2     50.1     54.5     53.7
//	gold, ivory             27.0         22.9     26.6     26.8     19.8
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
//	12 foil stars, #fdd017: gold, 2.2 away
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
// not covered, only warm white. Tiny pieces, seen from afar, need more than 10
// between them. The threshold of 10 is a rule of thumb, and CIEDE2000 was fitted to small
// differences; where a pair is within 2 of the threshold, look. The simulations are of
// the average dichromat. The milder forms, which are the more usual ones, lie between
// that and usual vision and are not covered: a pair that is near the threshold in one of
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
// Color Module Level 4; COMAP and OpenStax for sharing out; Birch 2012 (abstract) for
// one man in twelve. Quoted: CAT16 and its degree of adaptation (Li et al. 2017), the
// dichromats (Brettel, Viénot and Mollon 1997; Viénot et al. 1999; Smith and Pokorny
// 1975; Vos 1978), CIE 15 for illuminant A. From memory: 60/30/10 and 40/30/20/10, and
// that 10 is another color. Chosen here: 60/40, the tolerance of 10 for a piece, and the dim room of 4 cd/m² for tree light. Four
// colors are common practice, with no published source.
//
// # For engineers: what was checked
//
// In JSON a field has its name in lower camel case; colors, finishes, views
// and palettes are the texts that they print as.
//
// sRGB to L*a*b* is under D65 with the white x = 0.3127, y = 0.3290, within 1e-12 of
// values computed in 50 digits. CIEDE2000 gives all 34 published pairs within 1e-4 in both
// orders, with the same bits on amd64 (plain and v3), arm64 and s390x.
//
// The color library go-colorful was checked on the same facts and is not used here,
// but stands in the tests and benchmarks: version 1.4.1 gives 7.2195 for the published 7.1792 of
// pair 10, whose hues are exactly opposite, in both orders; the last bits of its
// differences are not the same on amd64, amd64 v3, arm64 and s390x, so that a color
// at the threshold could be in the palette on one machine and not on another; it
// takes colors and not L*a*b*, which the views need; and its white is the rounded
// one, which leaves a trace of hue in greys.
//
// CAT16's matrix was checked against its published inverse, and the construction of an
// incomplete adaptation against the worked example published with CMCCAT2000. The
// three dichromats agree with the matrices that libDaltonLens publishes in all five
// decimals, leave greys exactly as they are, and collapse their lines of confusion.
package palette
