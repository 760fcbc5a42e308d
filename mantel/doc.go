// Package mantel answers what a mantel takes, where each thing goes, how the
// garland hangs, what holds it up, and whether it stays clear of the fire.
//
// # The rules
//
// The rules of thumb go by the length of the shelf and by the look. A [Traditional]
// mantel is the same on both sides of the middle; an [Asymmetrical] one carries its
// weight on one side, the heavy side, which is yours to choose.
//
//   - Base garland, [Rules.BaseGarland]: the shelf and 2 ft, of which a foot falls
//     at each end; or the shelf and 4 ft, which all fall at the heavy side.
//     garland = length + extra.
//   - Picks, [Rules.Picks]: one for each 8 in of shelf; or one for each 3 in, in
//     three layers. picks = length/spacing, rounded up.
//   - Ornaments, [Rules.Ornaments]: one in each gap between two picks; or between two
//     of the top layer. ornaments = picks of the top layer - 1.
//   - Ribbon, [Rules.Ribbon]: one piece of 1½ yd at the heavy side, as a bow or a
//     fall, with bells, [Rules.Bells]. A traditional mantel has none unless you set
//     Rules.Traditional.Ribbon.
//
// The layers of an asymmetrical mantel are not one on top of the other all along the
// shelf. They lie like shingles, one part of the shelf each: every pick lies over the
// stem of the one before it, from the light end on, so that the second third of the shelf
// begins over the end of the first, and the last third, at the heavy side, is the top
// layer. Only that one has ornaments.
//
// All of it goes by the exact length, and counts round up. [Rules.Hang] says how the
// ends fall by rule, [Rules.Needs] lists what a mantel takes as it hangs, with the reason
// for each line, [Rules.Spots] says where along the shelf it goes, and [Steps] in which
// order it is done. A shop with habits of its own changes a field of [Rules].
//
// Types are comparable with ==, except those that hold a slice. Errors are
// *[units.Error]. Learn first: [Mantel], [Hanging], [Rules], [Mantel.Loads],
// [Mantel.Clearances]; then [Run] for stairs and doors, and [Mantel.Stockings].
//
// # Quick chart
//
//	shelf  look          garland  picks  ornaments  ribbon
//	4 ft   traditional   6 ft         6          5  0 ft
//	4 ft   asymmetrical  8 ft        16          5  4 ft 6 in
//	5 ft   traditional   7 ft         8          7  0 ft
//	5 ft   asymmetrical  9 ft        20          6  4 ft 6 in
//	6 ft   traditional   8 ft         9          8  0 ft
//	6 ft   asymmetrical  10 ft       24          7  4 ft 6 in
//	8 ft   traditional   10 ft       12         11  0 ft
//	8 ft   asymmetrical  12 ft       32         10  4 ft 6 in
//
// A traditional mantel with a bow in its middle and two bells to it, after
//
//	r := mantel.CommonPractice()
//	r.Traditional.Ribbon, r.Traditional.Bells = 54*units.Inch, 2
//
// also needs
//
//	ribbon, mantel: 1 of 4 ft 6 in; one bow or fall in the middle
//	bells: 2; hung with the ribbon
//
// # When the rule fails, and what to use instead
//
// The rule for garland lays it straight along the shelf. Swags take more, and so
// [Rules.Needs] sizes the garland as it hangs and says what the rule would have bought.
// With the garland in hand, [Mantel.FindSag] says how deep its swags hang, and
// [Mantel.FindDrops] how far its ends fall. On a low shelf [Rules.Hang] stops the ends
// 6 in above the hearth; at a wall nothing falls. Both say so.
//
//	 o - - - - o - - - - o     o  hooks at the front edge
//	 |*       *|*       *|
//	 | *     * | *     * |     sag, below the hooks
//	 |   * *   |   * *   |
//	 |                   |
//	left               right   drops, below the shelf
//
// The swags of a 64 in mantel, two of them and 8 in deep, take 6 ft 2 in of garland,
// rounded up to an inch as all of these. What falls at the ends comes on top:
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
// A swag hangs in a catenary, the curve of a chain. For a span and a sag there is no
// formula for its length without solving an equation, so books put a parabola in
// its place. That is good for flat swags and short for deep ones:
//
//	5 ft wide, 6 in deep: 61.57 in, by a parabola 0.01 in too little
//	5 ft wide, 1 ft 3 in deep: 69.05 in, by a parabola 0.18 in too little
//	5 ft wide, 2 ft 6 in deep: 89.75 in, by a parabola 1.01 in too little
//	5 ft wide, 5 ft deep: 142.26 in, by a parabola 2.86 in too little
//	5 ft wide, 10 ft deep: 257.22 in, by a parabola 4.95 in too little
//
// [Swag.Length] and [Swag.FindSag] are right to the nearest nanometer for every span
// from an inch to 50 ft and every sag to 50 ft, the very flat and the very deep included.
//
// # Stairs, doors, brackets
//
// A [Run] goes from hook to hook at any heights, with its length, picks, hooks and
// loads. [Banister.Hang] makes one from a stair's rise and run and its balusters,
// [Frame.Hang] one for a door or window; for brackets, measure where they are. The upper
// hook of a steep swag carries most of it: see [Swag.Pull].
//
// # What holds it
//
// [Mantel.Loads] says what each hook carries, from the weight of a foot of your
// garland: weigh it, dressed as it will hang. These ranges are only to plan with:
//
//	thin artificial, 2 oz to 4 oz a foot
//	full artificial, 6 oz to 10 oz a foot
//	fresh cedar or fir, 8 oz to 1 lb a foot
//
// A swag hangs half on each of its hooks and pulls them towards each other, the harder
// the flatter it is. While it goes up, the first hook carries the whole pull of one side.
// The working load of a [Hook] is its breaking load divided by a design factor, 5 unless
// you raise it, or the working load that its label states. A hook that carries more is
// reported as overloaded, with what would hold it in one line. Along an edge
// [Hook.Spacing] and [Hook.Count] say how many hooks.
//
// # What it stays clear of
//
// [Mantel.Clearances] measures every drop and swag, and the ribbon where it falls, and
// answers in two levels. An open fire asks for 3 ft: few garlands over a fireplace keep
// that, which is why they come down before a fire is lit. Trim figures ask for less, and
// the worst comes first. [StandOut] says how far something may stand out:
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
// Picks and bells that hang below the garland count only if its thickness counts them in.
// [Mantel.Stockings] measures toes the same way.
//
// # A worked example
//
// The tea room of the station has a mantel 64 in long and 8 in deep, 54 in above its
// hearth, with an opening 36 in wide whose top is 16 in below the shelf. There are
// 8 ft of garland, 8 in thick, that weigh 8 oz a foot, and hooks rated 10 lb. A foot
// is to fall at each end, and the rest to hang in three swags:
//
//	3 swags 4 13/16 in deep, falling 1 ft at the left and 1 ft at the right
//	weight 4 lb, hooks at most 1 ft 9 5/16 in apart, each good for 2 lb
//	at 0 ft: 1 lb down, 8.4 oz to the right
//	at 1 ft 9 5/16 in: 1 lb down
//	at 3 ft 6 11/16 in: 1 lb down
//	at 5 ft 4 in: 1 lb down, 8.4 oz to the left
//	left drop: 10 1/2 in from the opening, 3 ft 2 in above the hearth
//	swag 1: 7 3/8 in from the opening, 3 ft 9 1/8 in above the hearth
//	swag 2: 7 1/8 in from the opening, 3 ft 9 1/8 in above the hearth
//	swag 3: 7 3/8 in from the opening, 3 ft 9 1/8 in above the hearth
//	right drop: 10 1/2 in from the opening, 3 ft 2 in above the hearth
//	no fire while this hangs: swag 2: distance from an open fire 7 1/8 in, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
//	worst: swag 2: standing out from the wall 1 ft, at most 7/8 in (IRC R1001.11 exception 4, 2018); 9 more
//
// The hooks hold it. But the garland stands out a foot from the wall, 8 in of shelf
// and half its thickness, and 7 in above an opening trim may stand out less than one.
// The fireplace stays cold while the garland hangs.
//
// # For engineers
//
// In JSON a field has its name in lower camel case; lengths, masses, looks and sides are
// the texts that they print as. Lengths of swags are less than a nanometer from the
// exact ones, and the same bits on every machine; a real garland is not so exact, so
// hold the tape along it.
//
// # Cautions
//
//   - Take the garland down before a fire is lit. A hanging garland is not trim in the
//     sense of the codes, so that meeting their clearances does not make it safe.
//     Local code and the maker of the fireplace decide.
//   - Keep decorations 3 ft from a fire, a candle, a radiator or a vent. On a dressed
//     shelf use battery candles only.
//   - Fresh greens dry out over a hearth; throw them out when needles fall. Berries of
//     holly, mistletoe and yew are poisonous.
//   - Run no cord over the hearth, through the opening or under a rug.
//   - Follow the label of the hook. Heat and dust weaken adhesive: do not trust an
//     adhesive hook over a fireplace that is used.
//   - Stand on a step stool or ladder that is made for it, and let two people lift a
//     dressed garland.
//   - Keep ends, ribbon and bells out of the way of feet, children and pets.
//
// # Sources, and how sure they are
//
//   - Garland, picks and ribbon: common practice, without a published source. How many
//     layers, ornaments, bells and ties: starting figures of our own, and each need
//     says so.
//   - Catenaries: OpenStax, Calculus Volume 1, section Calculus of the Hyperbolic
//     Functions; checked against its two cables and in 256 bits.
//   - Clearances: IRC R1001.11 exception 4, 2018 edition, and ANSI/NFPA 211 section
//     11.2.5.4, 2016 edition, both as quoted by others, not read; they are for masonry
//     fireplaces. The 3 ft: holiday safety tips of NFPA (quoted) and ESFI (read).
//   - The rule for the sides of an opening, what garlands weigh, and stockings: from
//     memory. One summary has the rule above the opening otherwise; see [StandOut].
//   - Design factor: 29 CFR 1919.33, read; it is for lifting gear, so an analogy.
package mantel
