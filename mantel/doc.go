// Package mantel tells how much a mantel takes, where each thing goes, how the garland
// hangs, what holds it up, and whether it stays clear of the fire.
//
// Begin with [CommonPractice], [Rules.Hang], [Rules.Needs], [Mantel.Hang],
// [Run.Loads] and [Mantel.Clearances]; then [Stairs], [Door] and
// [Mantel.Stockings].
//
// # The rules
//
// A traditional mantel is the same on both sides of the middle. An asymmetrical one
// carries its weight at one end, the heavy end, which is yours to choose.
//
//	           traditional             asymmetrical
//	garland    the shelf and 2 ft,     the shelf and 4 ft,
//	           1 ft falls at each end  all at the heavy end
//	picks      one every 8 in          one every 3 in, in 3 layers
//	ornaments  one in each gap         one in each gap of the top layer
//	ribbon     none                    1½ yd at the heavy end
//	bells      none                    3 with the ribbon
//
// All figures use the exact shelf length; counts are rounded up. [Rules.Needs] lists
// the pieces with a reason for each, [Rules.Spots] says where they go, and [Steps]
// gives the order of work.
//
// # Quick chart
//
//	         traditional              asymmetrical
//	shelf    garland picks ornaments  garland picks ornaments
//	4 ft        6 ft     6         5     8 ft    16         5
//	5 ft        7 ft     8         7     9 ft    20         6
//	6 ft        8 ft     9         8    10 ft    24         7
//	8 ft       10 ft    12        11    12 ft    32        10
//
// # What it looks like
//
// Swags hang between hooks at the front edge of the shelf. The ends of the garland fall as
// drops.
//
//	 o---------o---------o     o  hooks
//	 |*       *|*       *|
//	 | *     * | *     * |     sag, below the hooks
//	 |   *_*   |   *_*   |
//	 |                   |
//	left               right   drops, below the shelf
//
// The layers of an asymmetrical shelf lie like shingles, one third of the shelf each.
// Starting at the light end, each pick covers the stem of the one before:
//
//	                             o  o  o  o  o  o       ornaments in the gaps
//	                            |--|--|--|--|--|--|     layer 3, on top
//	              |--|--|--|--|/                        layer 2
//	|--|--|--|--|/                                      layer 1
//	===================================================
//	light end                                heavy end
//
// # When the rule fails
//
// The rule lays the garland straight along the shelf. Swags take more. Garland for
// the swags, rounded up to inches, without the drops:
//
//	shelf  swags   sag 4    6    8   12 in
//	48 in      1      49   50   52   56
//	48 in      2      52   56   61   72
//	48 in      3      56   63   72   93
//	60 in      1      61   62   63   66
//	60 in      2      63   66   71   81
//	60 in      3      66   73   81  100
//	72 in      1      73   74   75   78
//	72 in      2      75   78   81   91
//	72 in      3      78   83   91  108
//	96 in      1      97   97   98  100
//	96 in      2      98  100  103  111
//	96 in      3     100  105  111  126
//
// [Rules.Needs] sizes the garland as it hangs. For a garland you own, [Run.FindSag] says
// how deep its swags hang, and [Mantel.FindDrops] how far its ends fall.
//
// # What to measure
//
//   - The shelf: length, height above the hearth, depth from the wall, walls at its ends.
//   - The firebox opening: width, height, how far its top is below the top of the shelf,
//     and how far its middle is to one side of the middle of the shelf.
//   - The garland: thickness across the branches, and the weight of a foot, dressed as it
//     will hang. Weigh yours. Dry planning weights, from memory: thin artificial 2 to 4 oz,
//     full artificial 6 to 10 oz, fresh cedar or fir 8 to 16 oz.
//   - The hook: the weight on its label, breaking or working load. The working load
//     (breaking load over design factor) is the most it may carry.
//
// Length fields (Points aside) without a range are 0 to 50 ft; ranges that begin with "from"
// end at 50 ft.
//
// # Hooks
//
// Hooks along an edge, for a breaking load and the usual design factor of 5:
//
//	           each     inches apart, for garland of
//	hook rated carries    4 oz    8 oz   12 oz   16 oz a foot
//	      1 lb  3.2 oz      9.6     4.8     3.2     2.4
//	      3 lb  9.6 oz     28.8    14.4     9.6     7.2
//	      5 lb 16.0 oz     48.0    24.0    16.0    12.0
//	     10 lb 32.0 oz     96.0    48.0    32.0    24.0
//	     20 lb 64.0 oz    192.0    96.0    64.0    48.0
//
// A swag also pulls its hooks towards each other, harder if it is flatter. While the
// garland goes up, a hook carries the whole pull of one side. [Run.Loads] gives both.
//
// # Fire
//
// Decorations stay 3 ft from an open fire. Few garlands over a fireplace hang that far
// off; take all down before any fire. With the fire out, code figures for wood trim
// serve as cautions. [Mantel.Clearances] measures a garland against them, and [StandOut]
// has them for every distance:
//
//	inches from   inches that it may stand out
//	the opening   IRC above  NFPA 211  IRC beside
//	          5       0.000     0.000       0.000
//	          6       0.750     1.500       1.500
//	          7       0.875     1.500       1.500
//	          8       1.000     1.500       2.000
//	          9       1.125     1.500       3.000
//	         10       1.250     1.500       4.000
//	         12       1.500     1.500       6.000
//	         13         any       any       7.000
//
// # A worked example
//
// A tea room has a mantel 64 in long and 8 in deep, 54 in above its hearth. Its opening
// is 36 by 30 in, 16 in below the shelf top. The 8 ft of garland, 8 in thick, weighs 8
// oz a foot; the hooks are rated 10 lb. A foot falls at each end, and the rest hangs in
// three swags:
//
//	3 swags 4 13/16 in deep, falling 1 ft at the left and 1 ft at the right
//	weight 4 lb, hooks up to 1 ft 9 3/8 in apart, each good for 2 lb
//	at 0 ft: 1 lb down, 8.4 oz to the right
//	at 1 ft 9 5/16 in: 1 lb down
//	at 3 ft 6 11/16 in: 1 lb down
//	at 5 ft 4 in: 1 lb down, 8.4 oz to the left
//	no fire while this hangs: swag 2: distance from an open fire 7 1/8 in, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
//	worst: swag 2: standing out from the wall 1 ft, at most 7/8 in (IRC R1001.11 exception 4, 2018); 9 more
//
// The hooks hold it. But the garland stands out a foot from the wall (8 in of shelf and 4
// in of garland) where trim may stand out 7/8 in. The fireplace stays cold while the
// garland hangs.
//
// # For engineers
//
// A swag is a catenary, the curve of a chain; [Run] has its formulas. The usual parabola
// comes out short; lengths in inches, 60 in wide:
//
//	sag, inches    6    15    30    60    120
//	catenary    61.6  69.0  89.8 142.3 257.2
//	parabola    61.6  68.9  88.7 139.4 252.3
//
// Errors are *[units.Error]: [units.ErrRange] for a value outside its range,
// [units.ErrFit] for values that do not go together, [units.ErrName] for an unknown look.
// A style argument sets the units of the figures in the texts.
//
// # Cautions
//
//   - Take the garland down before a fire is lit. It is not trim in the sense of the codes:
//     meeting their figures does not make it safe. Local code and the maker of the
//     fireplace decide.
//   - Keep decorations 3 ft from candles, radiators and vents. On a dressed shelf use
//     battery candles.
//   - Fresh greens dry out over a hearth: throw them out when needles fall. Berries of
//     holly, mistletoe and yew are poisonous.
//   - Run no cord over the hearth, through the opening or under a rug.
//   - Follow the label of the hook. Do not trust an adhesive hook over a fireplace in use:
//     heat and dust weaken adhesive.
//   - Stand on a step stool or ladder, never a chair. Let two people lift a dressed garland.
//   - Keep ends, ribbon and bells away from feet, children and pets.
//
// # Sources
//
//   - Garland, picks and ribbon: common practice. Layers, ornaments, bells and ties:
//     starting figures of our own.
//   - Catenaries: OpenStax, Calculus Volume 1, section Calculus of the Hyperbolic
//     Functions; checked against its two examples and in 256-bit arithmetic.
//   - Clearances, for masonry fireplaces: IRC R1001.11 exception 4, 2018 edition, and
//     ANSI/NFPA 211 section 11.2.5.4, 2016 edition, both known only from quotations; the
//     sides of the opening from memory. The 3 ft: holiday safety tips of NFPA (quoted)
//     and ESFI (read).
//   - Design factor: 29 CFR 1919.33, read; for lifting gear, so an analogy.
//   - Weights and stockings: from memory.
package mantel
