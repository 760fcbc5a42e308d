// Package mantel answers how much a mantel takes, where each thing goes, how the garland
// hangs, what holds it up, and whether it stays clear of the fire.
//
// Learn first: [Mantel], [Hanging], [Rules], [Mantel.Hang], [Run.Loads],
// [Mantel.Clearances]; then [Stairs], [Door] and [Mantel.Stockings].
//
// # The rules
//
// A [Traditional] mantel is the same on both sides of the middle. An asymmetrical one
// carries its weight at one end, the heavy side, which is yours to choose.
//
//	               traditional             asymmetrical
//	base garland   the shelf and 2 ft,     the shelf and 4 ft,
//	               1 ft falls at each end  all at the heavy side
//	picks          one each 8 in           one each 3 in, in 3 layers
//	ornaments      one in each gap         one in each gap of the top layer
//	ribbon         none                    1½ yd at the heavy side
//	bells          none                    3 with the ribbon
//
// Garland and picks together are right on a mantel. All of it goes by the exact length of
// the shelf, and counts round up. [Rules.Needs] lists it with the reason for each line,
// [Rules.Spots] says where along the shelf it goes, and [Steps] in which order it is done.
//
// # Quick chart
//
//	shelf  look               garland  picks  ornaments     ribbon  bells
//	4 ft   traditional           6 ft      6          5       0 ft      0
//	4 ft   asymmetrical left     8 ft     16          5  4 ft 6 in      3
//	5 ft   traditional           7 ft      8          7       0 ft      0
//	5 ft   asymmetrical left     9 ft     20          6  4 ft 6 in      3
//	6 ft   traditional           8 ft      9          8       0 ft      0
//	6 ft   asymmetrical left    10 ft     24          7  4 ft 6 in      3
//	8 ft   traditional          10 ft     12         11       0 ft      0
//	8 ft   asymmetrical left    12 ft     32         10  4 ft 6 in      3
//
// # What it looks like
//
// Swags hang between hooks at the front edge; the ends of the garland fall as drops.
//
//	 o - - - - o - - - - o     o  hooks
//	 |*       *|*       *|
//	 | *     * | *     * |     sag, below the hooks
//	 |   * *   |   * *   |
//	 |                   |
//	left               right   drops, below the shelf
//
// The layers of an asymmetrical shelf lie like shingles, one third of the shelf each. Each
// pick lies over the stem of the one before it, from the light end on:
//
//	                                        o   o   o   ornaments in the gaps
//	                            | | | | | | | | | |     layer 3, on top
//	              | | | | | | | /                       layer 2, over the end of layer 1
//	| | | | | | | /                                     layer 1
//	===================================================
//	light end                                heavy end
//
// # When the rule fails, and what to use instead
//
// The rule lays the garland straight along the shelf. Swags take more: two of them 8 in
// deep on a 64 in shelf take 6 ft 2 in. What falls at the ends comes on top:
//
//	shelf      swags   4 in deep   6 in deep   8 in deep  12 in deep
//	4 ft           1   4 ft 1 in   4 ft 2 in   4 ft 4 in   4 ft 8 in
//	4 ft           2   4 ft 4 in   4 ft 8 in   5 ft 1 in        6 ft
//	4 ft           3   4 ft 8 in   5 ft 3 in        6 ft   7 ft 9 in
//	5 ft           1   5 ft 1 in   5 ft 2 in   5 ft 3 in   5 ft 6 in
//	5 ft           2   5 ft 3 in   5 ft 6 in  5 ft 11 in   6 ft 9 in
//	5 ft           3   5 ft 6 in   6 ft 1 in   6 ft 9 in   8 ft 4 in
//	5 ft 4 in      1   5 ft 5 in   5 ft 6 in   5 ft 7 in  5 ft 10 in
//	5 ft 4 in      2   5 ft 7 in  5 ft 10 in   6 ft 2 in        7 ft
//	5 ft 4 in      3  5 ft 10 in   6 ft 4 in        7 ft   8 ft 7 in
//	6 ft           1   6 ft 1 in   6 ft 2 in   6 ft 3 in   6 ft 6 in
//	6 ft           2   6 ft 3 in   6 ft 6 in   6 ft 9 in   7 ft 7 in
//	6 ft           3   6 ft 6 in  6 ft 11 in   7 ft 7 in        9 ft
//	8 ft           1   8 ft 1 in   8 ft 1 in   8 ft 2 in   8 ft 4 in
//	8 ft           2   8 ft 2 in   8 ft 4 in   8 ft 7 in   9 ft 3 in
//	8 ft           3   8 ft 4 in   8 ft 9 in   9 ft 3 in  10 ft 6 in
//
// [Rules.Needs] sizes the garland as it hangs, and says what the rule would have bought.
// With a garland in hand, [Run.FindSag] says how deep its swags hang, and
// [Mantel.FindDrops] how far its ends fall. On a low shelf [Rules.Hang] stops the ends
// 6 in above the hearth; at a wall nothing falls. Both say so.
//
// # What to measure
//
//   - The shelf: its length, its height above the hearth, its depth from the wall, and
//     whether it ends at a wall.
//   - The fireplace opening: width, height, how far its top is below the top of the shelf,
//     and how far its middle is to the side of the middle of the shelf.
//   - The garland: its thickness across the branches, and the weight of a foot of it,
//     dressed as it will hang. Weigh yours; to plan with, from memory, dry: thin artificial
//     2 to 4 oz, full artificial 6 to 10 oz, fresh cedar or fir 8 to 16 oz.
//   - The hook: the weight on its label, and whether that is a breaking load or a working
//     load.
//
// # Hooks
//
// How far apart hooks may be along an edge, by their breaking load and the weight of a
// foot of garland, with the usual design factor of 5:
//
//	hook rated  carries   4 oz a foot  8 oz a foot 12 oz a foot  1 lb a foot
//	      1 lb   3.2 oz         9.6 in        4.8 in        3.2 in        2.4 in
//	      3 lb   9.6 oz        28.8 in       14.4 in        9.6 in        7.2 in
//	      5 lb  16.0 oz        48.0 in       24.0 in       16.0 in       12.0 in
//	     10 lb  32.0 oz        96.0 in       48.0 in       32.0 in       24.0 in
//	     20 lb  64.0 oz       192.0 in       96.0 in       64.0 in       48.0 in
//
// A swag hangs half on each of its hooks and pulls them towards each other, the harder the
// flatter it is: see [Run.Loads]. While it goes up, the first hook carries the whole pull
// of one side. A hook that carries too much is reported as overloaded, with what would
// hold it in one line.
//
// # Fire
//
// An open fire asks for 3 ft. Few garlands over a fireplace keep that, which is why they
// come down before a fire is lit. With the fire out, figures for trim serve as a caution.
// [StandOut] says how far something may stand out from the wall:
//
//	from the opening  IRC above  NFPA 211  IRC beside
//	            5 in    nothing   nothing     nothing
//	            6 in     3/4 in  1 1/2 in    1 1/2 in
//	            7 in     7/8 in  1 1/2 in    1 1/2 in
//	            8 in       1 in  1 1/2 in        2 in
//	            9 in   1 1/8 in  1 1/2 in        3 in
//	           10 in   1 1/4 in  1 1/2 in        4 in
//	            1 ft   1 1/2 in  1 1/2 in        6 in
//	       1 ft 1 in   no limit  no limit        7 in
//
// [Mantel.Clearances] measures a garland against them, and [Mantel.Stockings] stockings.
//
// # A worked example
//
// The tea room of the station has a mantel 64 in long and 8 in deep, 54 in above its
// hearth, with an opening 36 in wide whose top is 16 in below the shelf. There are 8 ft of
// garland, 8 in thick, that weigh 8 oz a foot, and hooks rated 10 lb. A foot is to fall at
// each end, and the rest to hang in three swags:
//
//	3 swags 4 13/16 in deep, falling 1 ft at the left and 1 ft at the right
//	weight 4 lb, hooks at most 1 ft 9 5/16 in apart, each good for 2 lb
//	at 0 ft: 1 lb down, 8.4 oz to the right
//	at 1 ft 9 5/16 in: 1 lb down
//	at 3 ft 6 11/16 in: 1 lb down
//	at 5 ft 4 in: 1 lb down, 8.4 oz to the left
//	no fire while this hangs: swag 2: distance from an open fire 7 1/8 in, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
//	worst: swag 2: standing out from the wall 1 ft, at most 7/8 in (IRC R1001.11 exception 4, 2018); 9 more
//
// The hooks hold it. But the garland stands out a foot from the wall, 8 in of shelf and
// half its thickness, and 7 in above an opening trim may stand out less than one inch. The
// fireplace stays cold while the garland hangs.
//
// # For engineers
//
// A swag is a catenary, the curve of a chain; [Run] has its formulas. A parabola in its
// place is good for flat swags and short for deep ones:
//
//	5 ft wide       catenary  parabola
//	     6 in deep   61.57 in  61.56 in
//	1 ft 3 in deep   69.05 in  68.87 in
//	2 ft 6 in deep   89.75 in  88.74 in
//	     5 ft deep  142.26 in 139.40 in
//	    10 ft deep  257.22 in 252.28 in
//
// Results are the same bits on every machine. Types are comparable with ==, except those
// that hold a slice. Errors are *[units.Error]. In JSON a field has its name in lower camel
// case; lengths, masses and looks are the texts that they print as.
//
// # Cautions
//
//   - Take the garland down before a fire is lit. A hanging garland is not trim in the
//     sense of the codes, so meeting their figures does not make it safe. Local code and
//     the maker of the fireplace decide.
//   - Keep decorations 3 ft from a fire, a candle, a radiator or a vent. On a dressed shelf
//     use battery candles only.
//   - Fresh greens dry out over a hearth; throw them out when needles fall. Berries of
//     holly, mistletoe and yew are poisonous.
//   - Run no cord over the hearth, through the opening or under a rug.
//   - Follow the label of the hook. Heat and dust weaken adhesive: do not trust an adhesive
//     hook over a fireplace that is used.
//   - Stand on a step stool or ladder that is made for it, and let two people lift a
//     dressed garland.
//   - Keep ends, ribbon and bells out of the way of feet, children and pets.
//
// # Sources, and how sure they are
//
//   - Garland, picks and ribbon: common practice, without a published source. How many
//     layers, ornaments, bells and ties: starting figures of our own, and each need says so.
//   - Catenaries: OpenStax, Calculus Volume 1, section Calculus of the Hyperbolic
//     Functions; checked against its two cables and in 256 bits.
//   - Clearances: IRC R1001.11 exception 4, 2018 edition, and ANSI/NFPA 211 section
//     11.2.5.4, 2016 edition, both as quoted by others, not read; they are for masonry
//     fireplaces. The 3 ft: holiday safety tips of NFPA (quoted) and ESFI (read).
//   - The rule for the sides of an opening, weights and stockings: from memory. One summary
//     has the rule above the opening otherwise; see [StandOut].
//   - Design factor: 29 CFR 1919.33, read; it is for lifting gear, so an analogy.
package mantel
