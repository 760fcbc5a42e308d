package palette_test

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.com/fircone/palette"
	"example.com/fircone/units"
)

// The ticket hall's tree, 9 ft: nine types of ornament, nine of each.
func Example() {
	// The four colors: common practice. Quotas of 9 types over 40, 30, 20, 10: 3.6,
	// 2.7, 1.8, 0.9; of 81 pieces: 32.4, 24.3, 16.2, 8.1.
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,darkgreen,gold:metal,ivory")
	if err != nil {
		fmt.Println(err)
		return
	}
	fir, err := palette.ParseSwatch("fir")
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := rules.Read(p, fir)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(reading)
	sharing, err := p.Share(9, 81)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(sharing)
	// Output:
	// pair                by daylight                       by warm light
	//                     usual  protan  deutan  tritan     usual  protan  deutan  tritan
	// crimson, darkgreen   71.3    15.1    15.7    50.9      68.1    14.1    16.0    46.6
	// crimson, gold        50.0    40.3    19.5    28.3      46.8    40.3    19.3    27.0
	// crimson, ivory       51.8    51.7    38.5    47.7      49.0    52.1    36.4    44.8
	// darkgreen, gold      43.8    30.9    38.0    52.4      45.1    30.9    38.1    50.6
	// darkgreen, ivory     54.8    50.1    54.5    53.7      56.2    48.6    53.1    58.8
	// gold, ivory          28.1    27.7    27.7    24.4      24.3    24.7    24.0    19.8
	// crimson on fir       57.7     4.3*   19.4    43.1      54.5     4.4*   19.1    37.5
	// darkgreen on fir     11.4    11.4    11.3     4.4*     10.7    10.4    10.0     5.5*
	// gold on fir          43.6    35.7    40.6    47.9      43.9    35.3    40.3    45.1
	// ivory on fir         52.7    48.8    51.7    52.2      54.2    48.4    51.4    55.2
	// * crimson on fir: one color, under 10, to protan viewers
	//   (about one man in twelve has some red-green deficiency);
	//   lighter crimson, #e65a76 for #dc143c, mends it: a difference in lightness
	//   of 11.3 to protan viewers by daylight, where it is 3.0 now
	// * darkgreen on fir: one color, under 10, to tritan viewers;
	//   darker darkgreen, #004100 for #006400, mends it: a difference in lightness
	//   of 13.2 to tritan viewers by daylight, where it is 0.0 now
	// color       share  types  pieces
	// crimson        40      3      33
	// darkgreen      30      3      24
	// gold:metal     20      2      16
	// ivory          10      1       8
	// total         100      9      81
}

// Red and green, and what mends them.
func Example_redAndGreen() {
	// Birch 2012: about 8 % of men of European descent, one in twelve, have some
	// red-green deficiency.
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,forestgreen")
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := rules.Read(p, palette.Swatch{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(reading)
	pair := reading.Pairs[0]
	fmt.Printf("%s: %s instead of %s\n", pair.Mend.Name, pair.Mend.Color, pair.B.Color)
	// Output:
	// pair                  by daylight                       by warm light
	//                       usual  protan  deutan  tritan     usual  protan  deutan  tritan
	// crimson, forestgreen   73.8    24.1     3.0*   53.2      70.2    23.6     3.1*   47.7
	// * crimson and forestgreen: one color, under 10, to deutan viewers
	//   (about one man in twelve has some red-green deficiency);
	//   darker forestgreen, #1d751d for #228b22, mends it: a difference in lightness
	//   of 10.4 to deutan viewers by daylight, where it is 3.0 now
	// forestgreen: #1d751d instead of #228b22
}

// The box in the station's attic: what of it fits this year's palette.
func Example_lastYear() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,darkgreen,gold:metal,ivory")
	if err != nil {
		fmt.Println(err)
		return
	}
	box := []palette.Piece{
		{Name: "glass balls", Color: units.Must(palette.ParseColor("#c8102e")), Finish: palette.Shiny, Count: 24},
		{Name: "velvet bows", Color: units.Must(palette.ParseColor("darkred")), Count: 6},
		{Name: "foil stars", Color: units.Must(palette.ParseColor("#fdd017")), Finish: palette.Metal, Count: 12},
		{Name: "icicles", Color: units.Must(palette.ParseColor("white")), Finish: palette.Clear, Count: 18},
		{Name: "tin engines", Color: units.Must(palette.ParseColor("royalblue")), Finish: palette.Metal, Count: 3},
	}
	sorted, err := rules.Sort(p, box)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, m := range sorted.Matches {
		fmt.Printf("%2d %s, %s: %v\n", box[i].Count, box[i].Name, box[i].Color, m)
	}
	fmt.Print(sorted)
	// Output:
	// 24 glass balls, #c8102e: crimson, 4.9 away
	//  6 velvet bows, #8b0000: none: crimson is nearest, 18.9 away
	// 12 foil stars, #fdd017: gold, 6.4 away
	// 18 icicles, #ffffff: ivory, 6.9 away
	//  3 tin engines, #4169e1: none: crimson is nearest, 42.1 away
	// crimson     24
	// darkgreen    0
	// gold:metal  12
	// ivory       18
	// left out     9
}

// How far apart some colors are.
func Example_scale() {
	// By the formula of Sharma, Wu and Dalal 2005, worked out the slow way in the tests.
	for _, pair := range [][2]string{
		{"crimson", "#d81840"},
		{"gold", "#fdd017"},
		{"crimson", "#c8102e"},
		{"ivory", "white"},
		{"crimson", "indianred"},
		{"silver", "white"},
		{"crimson", "darkred"},
		{"ivory", "turquoise"},
		{"crimson", "darkgreen"},
		{"black", "white"},
	} {
		c, d := units.Must(palette.ParseColor(pair[0])), units.Must(palette.ParseColor(pair[1]))
		reads := "one color"
		if c.Difference(d) >= palette.CommonPractice().Apart {
			reads = "two"
		}
		fmt.Printf("%-7s  %s   %-9s  %s  %6.2f  %s\n", pair[0], c, d.Name(), d, c.Difference(d), reads)
	}
	// Output:
	// crimson  #dc143c              #d81840    1.42  one color
	// gold     #ffd700              #fdd017    2.19  one color
	// crimson  #dc143c              #c8102e    4.81  one color
	// ivory    #fffff0   white      #ffffff    6.87  one color
	// crimson  #dc143c   indianred  #cd5c5c    9.71  one color
	// silver   #c0c0c0   white      #ffffff   14.12  two
	// crimson  #dc143c   darkred    #8b0000   18.82  two
	// ivory    #fffff0   turquoise  #40e0d0   26.07  two
	// crimson  #dc143c   darkgreen  #006400   71.33  two
	// black    #000000   white      #ffffff  100.00  two
}

// Colors of the season by their CSS names.
func Example_names() {
	// CSS Color Module Level 4, section 6.1.
	for i, name := range starting {
		fmt.Printf("%-11s  %s", name, units.Must(palette.ParseColor(name)))
		if i%3 < 2 {
			fmt.Print("   ")
		} else {
			fmt.Println()
		}
	}
	// Output:
	// crimson      #dc143c   firebrick    #b22222   darkred      #8b0000
	// forestgreen  #228b22   darkgreen    #006400   seagreen     #2e8b57
	// gold         #ffd700   goldenrod    #daa520   silver       #c0c0c0
	// white        #ffffff   ivory        #fffff0   black        #000000
	// royalblue    #4169e1   navy         #000080   skyblue      #87ceeb
	// teal         #008080   plum         #dda0dd   chocolate    #d2691e
}

// starting are colors to start with.
var starting = []string{
	"crimson", "firebrick", "darkred", "forestgreen", "darkgreen", "seagreen", "gold", "goldenrod", "silver",
	"white", "ivory", "black", "royalblue", "navy", "skyblue", "teal", "plum", "chocolate",
}

// How far apart some colors are: by daylight right of the blank, and in the worst view left of it.
func Example_differences() {
	// By the formula of Sharma, Wu and Dalal 2005 and the views that View.Lab describes, worked
	// out the slow way in the tests. No figure lies between 9.95 and 10.
	rules := palette.Rules{Limit: 2}
	cell := func(d float64) string {
		if d >= 100 {
			return fmt.Sprintf("%5.0f", d)
		}
		return fmt.Sprintf("%5.1f", d)
	}
	colors := []string{"crimson", "forestgreen", "darkgreen", "gold", "silver", "white", "black", "royalblue", "plum"}
	fmt.Print("no  color        ")
	for i := range colors {
		fmt.Printf("%5d", i+1)
	}
	fmt.Println()
	for i, a := range colors {
		line := fmt.Sprintf("%2d  %-13s", i+1, a)
		for j, b := range colors {
			if i == j {
				line += "     "
				continue
			}
			p, err := rules.ParsePalette(a + "," + b)
			if err != nil {
				fmt.Println(err)
				return
			}
			reading, err := rules.Read(p, palette.Swatch{})
			if err != nil {
				fmt.Println(err)
				return
			}
			d := reading.Pairs[0].Difference
			if i < j {
				line += cell(d[palette.Daylight])
			} else {
				line += cell(slices.Min(slices.Collect(maps.Values(d))))
			}
		}
		fmt.Println(strings.TrimRight(line, " "))
	}
	// Output:
	// no  color            1    2    3    4    5    6    7    8    9
	//  1  crimson            73.8 71.3 60.1 38.6 48.6 44.2 42.1 35.5
	//  2  forestgreen    3.0      13.4 40.4 35.1 44.9 45.8 56.8 70.9
	//  3  darkgreen     14.1 12.7      51.6 46.1 56.7 35.7 57.1 74.6
	//  4  gold          29.9 26.0 40.9      30.1 30.5 85.6 73.7 60.4
	//  5  silver        26.8 27.0 38.8 14.8      14.1 67.3 37.2 23.2
	//  6  white         37.9 37.2 49.9 14.3 14.1       100 47.2 28.7
	//  7  black         25.7 39.0 27.1 82.4 66.8 99.5      44.0 65.8
	//  8  royalblue     41.0  5.5 12.9 55.1 32.3 43.4 39.1      32.1
	//  9  plum          28.3 38.6 49.0  9.6 11.3 19.3 58.3 24.4
}

// Metals, as they look at arm's length.
func Example_metals() {
	// NBS SP 440 and CSS; gold, copper and rose gold are estimates. See the tests for the blocks.
	for _, name := range []string{"gold", "old gold", "brass", "silver", "nickel", "pewter", "copper", "rose gold", "bronze", "champagne"} {
		s, err := palette.ParseSwatch(name + ":metal")
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-9s  %s\n", s.Name, s.Color)
	}
	// Output:
	// gold       #d4af37
	// old gold   #ab9144
	// brass      #c9ae5d
	// silver     #c0c0c0
	// nickel     #848482
	// pewter     #555555
	// copper     #b5714a
	// rose gold  #b76e79
	// bronze     #826644
	// champagne  #c2b280
}

// Everyday names, by NBS SP 440; those with a ~ are estimates.
func Example_everyday() {
	// K. L. Kelly and D. B. Judd, NBS Special Publication 440, 1976; the tests have block and dictionary of each.
	names := strings.Split("amethyst,apricot,aubergine,blue spruce,blush,bordeaux,bottle green,brass,brick red,bronze,buff,burgundy,cardinal,"+
		"champagne,cherry red,cinnamon,claret,cocoa,copper,cream,dove gray,dusty pink,ecru,eggplant,emerald,evergreen,fawn,flax,garnet,"+
		"geranium,gunmetal,holly berry,holly green,hunter green,jade,juniper,lilac,mahogany,mauve,natural,nickel,old gold,old rose,peach,"+
		"peacock,periwinkle,pewter,pinecone,platinum,pumpkin,raspberry,rosewood,ruby,russet,rust,sage,sage green,sand,sapphire,scarlet,"+
		"seafoam,shell pink,spruce,tangerine,taupe,terra cotta,vanilla,walnut,"+
		"~amber,~bare,~berry,~burlap,~charcoal,~cranberry,~dried orange,~dusty rose,~fir,~flocked,~ice blue,~mint,~moss,~mustard,"+
		"~oxblood,~pine green,~rose gold,~wine,~winter white,~wood", ",")
	for i, name := range names {
		fmt.Printf("%-13s %s", name, units.Must(palette.ParseColor(strings.TrimPrefix(name, "~"))))
		if i%4 < 3 && i < len(names)-1 {
			fmt.Print("   ")
		} else {
			fmt.Println()
		}
	}
	// Output:
	// amethyst      #86608e   apricot       #d99058   aubergine     #291e29   blue spruce   #3b7861
	// blush         #d9a6a9   bordeaux      #673147   bottle green  #1b4d3e   brass         #c9ae5d
	// brick red     #79443b   bronze        #826644   buff          #c19a6b   burgundy      #673147
	// cardinal      #841b2d   champagne     #fad6a5   cherry red    #be0032   cinnamon      #a67b5b
	// claret        #673147   cocoa         #6f4e37   copper        #b4745e   cream         #f0ead6
	// dove gray     #bfb9bd   dusty pink    #d9a6a9   ecru          #c2b280   eggplant      #291e29
	// emerald       #44944a   evergreen     #355e3b   fawn          #7e6d5a   flax          #c2b280
	// garnet        #722f37   geranium      #be0032   gunmetal      #555555   holly berry   #bc3f4a
	// holly green   #00622d   hunter green  #355e3b   jade          #679267   juniper       #3a4b47
	// lilac         #b695c0   mahogany      #79443b   mauve         #875692   natural       #bfb8a5
	// nickel        #848482   old gold      #ab9144   old rose      #c08081   peach         #f4c2c2
	// peacock       #367588   periwinkle    #8c92ac   pewter        #555555   pinecone      #635147
	// platinum      #848482   pumpkin       #ed872d   raspberry     #a8516e   rosewood      #79443b
	// ruby          #78184a   russet        #6f4e37   rust          #80461b   sage          #8a9a5b
	// sage green    #8da399   sand          #bfb8a5   sapphire      #272458   scarlet       #be0032
	// seafoam       #6aab8e   shell pink    #ecd5c5   spruce        #3a4b47   tangerine     #d9603b
	// taupe         #5b504f   terra cotta   #9e4732   vanilla       #f3e5ab   walnut        #a67b5b
	// ~amber        #eaa221   ~bare         #635147   ~berry        #a8516e   ~burlap       #ae9b82
	// ~charcoal     #555555   ~cranberry    #841b2d   ~dried orange #ae6938   ~dusty rose   #c08081
	// ~fir          #355e3b   ~flocked      #dfede8   ~ice blue     #bcd4e6   ~mint         #8ed1b2
	// ~moss         #4a5d23   ~mustard      #af8d13   ~oxblood      #56070c   ~pine green   #173620
	// ~rose gold    #b76e79   ~wine         #722f37   ~winter white #f0ead6   ~wood         #a67b5b
}

// Everyday names of the season, out of those of Example_everyday.
func Example_season() {
	// NBS SP 440, as there.
	for i, name := range strings.Split("blue spruce,burgundy,champagne,copper,evergreen,holly berry,holly green,juniper,natural,old gold,ruby,sage,~cranberry,~fir,~flocked,~rose gold", ",") {
		if i > 0 && i%4 == 0 {
			fmt.Println()
		} else if i > 0 {
			fmt.Print("   ")
		}
		fmt.Printf("%-13s %s", name, units.Must(palette.ParseColor(strings.TrimPrefix(name, "~"))))
	}
	fmt.Println()
	// Output:
	// blue spruce   #3b7861   burgundy      #673147   champagne     #fad6a5   copper        #b4745e
	// evergreen     #355e3b   holly berry   #bc3f4a   holly green   #00622d   juniper       #3a4b47
	// natural       #bfb8a5   old gold      #ab9144   ruby          #78184a   sage          #8a9a5b
	// ~cranberry    #841b2d   ~fir          #355e3b   ~flocked      #dfede8   ~rose gold    #b76e79
}

// Types of ornament by color for the usual heights of tree, one type for each whole foot.
func Example_chart() {
	// Common practice: one type a foot, a part foot adds none; 40/30/20/10, from memory.
	p, err := palette.CommonPractice().ParsePalette("crimson,darkgreen,gold:metal,ivory")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("tree    types  crimson  darkgreen  gold  ivory")
	for _, tree := range []struct {
		height string
		types  int
	}{{"6 ft", 6}, {"7 ft", 7}, {"7½ ft", 7}, {"9 ft", 9}, {"12 ft", 12}, {"15 ft", 15}} {
		s, err := p.Share(tree.types, tree.types)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-6s  %5d  %7d  %9d  %4d  %5d\n", tree.height, tree.types,
			s[0].Types, s[1].Types, s[2].Types, s[3].Types)
	}
	// Output:
	// tree    types  crimson  darkgreen  gold  ivory
	// 6 ft        6        2          2     1      1
	// 7 ft        7        3          2     1      1
	// 7½ ft       7        3          2     1      1
	// 9 ft        9        3          3     2      1
	// 12 ft      12        5          4     2      1
	// 15 ft      15        6          5     3      1
}

// What goes with crimson and gold on a fir? First what the station's shop has.
func Example_suggest() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,gold:metal")
	if err != nil {
		fmt.Println(err)
		return
	}
	fir := palette.Swatch{Name: "fir", Color: units.Must(palette.ParseColor("fir"))}
	var shelf []palette.Swatch
	for _, text := range []string{"plum:shiny", "teal:shiny", "firebrick:matte+glitter", "burgundy:matte"} {
		s, err := palette.ParseSwatch(text)
		if err != nil {
			fmt.Println(err)
			return
		}
		shelf = append(shelf, s)
	}
	suggestions, err := rules.Suggest(p, fir, shelf)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range suggestions {
		least, in := math.Inf(1), palette.Daylight
		for v := palette.Daylight; v <= palette.WarmTritan; v++ {
			if d := s.Nearest.Difference[v]; d < least {
				least, in = d, v
			}
		}
		how := "holds in every view"
		if least < rules.Apart {
			how = "from " + s.Nearest.A.Name + " in " + in.String()
		}
		fmt.Printf("%-10s  %s  %4.1f  %s: %s\n", s.Swatch.Name, s.Swatch.Color, math.Floor(least*10)/10, s.Why, how)
	}
	// Output:
	// teal        #008080  14.4  on the shelf: holds in every view
	// burgundy    #673147   9.7  on the shelf: from fir in warm deutan
	// plum        #dda0dd   1.6  on the shelf: from gold in warm tritan
	// black       #000000  25.2  a neutral: goes with any color: holds in every view
	// white       #ffffff  20.5  a neutral: goes with any color: holds in every view
	// silver      #c0c0c0  12.7  a neutral: goes with any color: holds in every view
	// rose gold   #b76e79  13.1  a metal: it takes up the lights: holds in every view
	// bronze      #826644   5.5  a metal: it takes up the lights: from fir in warm protan
	// champagne   #c2b280   5.5  a metal: it takes up the lights: from gold in warm tritan
	// sage green  #8da399  19.7  a green: beside the tree's own: holds in every view
	// mint        #8ed1b2  16.6  a green: beside the tree's own: holds in every view
	// darkgreen   #006400   4.4  a green: beside the tree's own: from fir in tritan
}

// CSS Color Module Level 4, section 6.1: crimson is #dc143c, forestgreen #228b22; section 5.2: #d2f is #dd22ff. NBS
// SP 440: burgundy is dark purplish red, #673147.
func ExampleParseColor() {
	for _, text := range []string{"Crimson ", "#D2F", "Forest Green", "d4af37", "burgundy", "burgandy"} {
		c, err := palette.ParseColor(text)
		fmt.Println(c, err)
	}
	// Output:
	// #dc143c <nil>
	// #dd22ff <nil>
	// #228b22 <nil>
	// #d4af37 <nil>
	// #673147 <nil>
	// #000000 palette.ParseColor: text "burgandy": unknown name: want #rrggbb, #rgb or a color name; did you mean burgundy?
}

// 220, 20 and 60 are dc, 14 and 3c.
func ExampleColor_String() {
	fmt.Println(palette.Color{220, 20, 60})
	// Output: #dc143c
}

// CSS Color Module Level 4, section 6.1: aqua and cyan are both #00ffff.
func ExampleColor_Name() {
	fmt.Println(palette.Color{0, 255, 255}.Name())
	fmt.Printf("%q\n", palette.Color{1, 2, 3}.Name())
	// Output:
	// aqua
	// ""
}

// CSS Color Module Level 4, section 6.1: ivory is #fffff0.
func ExampleColor_MarshalText() {
	text, err := json.Marshal(map[string]palette.Color{"ribbon": units.Must(palette.ParseColor("ivory"))})
	fmt.Println(string(text), err)
	// Output: {"ribbon":"#fffff0"} <nil>
}

// CSS Color Module Level 4, section 6.1: ivory is #fffff0.
func ExampleColor_UnmarshalText() {
	var c palette.Color
	flags := flag.NewFlagSet("station", flag.ContinueOnError)
	flags.TextVar(&c, "ribbon", palette.Color{}, "color of the ribbon")
	err := flags.Parse([]string{"-ribbon", "ivory"})
	fmt.Println(c, err)
	// Output: #fffff0 <nil>
}

// CIEDE2000 is scaled so that black to white is 100.
func ExampleColor_Difference() {
	black, white := units.Must(palette.ParseColor("black")), units.Must(palette.ParseColor("white"))
	fmt.Printf("%.1f\n", black.Difference(white))
	fmt.Printf("%.1f\n", white.Difference(white))
	// Output:
	// 100.0
	// 0.0
}

// Brettel, Viénot and Mollon 1997: greys are unchanged for every dichromat. CAT16
// and illuminant A, by hand: white comes back as X 98.775, Y 100.001, Z 90.455,
// which is a* 6.5, b* 12.0.
func ExampleView_Lab() {
	for v := palette.Daylight; v <= palette.WarmTritan; v++ {
		white, err := v.Lab(units.Must(palette.ParseColor("white")))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-11s  %.0f %.1f %.1f\n", v, white[0], white[1], white[2])
	}
	// Output:
	// daylight     100 0.0 0.0
	// protan       100 0.0 0.0
	// deutan       100 0.0 0.0
	// tritan       100 0.0 0.0
	// warm light   100 6.4 12.0
	// warm protan  99 -0.8 10.6
	// warm deutan  100 -0.9 12.7
	// warm tritan  100 11.6 2.6
}

// The names are this package's.
func ExampleView_String() {
	fmt.Println(palette.WarmLight, palette.Deutan)
	// Output: warm light deutan
}

// The names are this package's.
func ExampleView_MarshalText() {
	text, err := json.Marshal([]palette.View{palette.Daylight, palette.Protan})
	fmt.Println(string(text), err)
	// Output: ["daylight","protan"] <nil>
}

// The names are this package's.
func ExampleView_UnmarshalText() {
	var v palette.View
	err := json.Unmarshal([]byte(`"Warm light"`), &v)
	fmt.Println(v == palette.WarmLight, err)
	// Output: true <nil>
}

// The words are common practice.
func ExampleFinish_String() {
	fmt.Println(palette.Matte | palette.Shiny | palette.Glitter)
	// Output: matte+shiny+glitter
}

// The words are common practice.
func ExampleFinish_MarshalText() {
	text, err := json.Marshal(palette.Swatch{Name: "gold", Color: units.Must(palette.ParseColor("gold")), Finish: palette.Metal})
	fmt.Println(string(text), err)
	// Output: {"name":"gold","color":"#ffd700","finish":"metal"} <nil>
}

// The words are common practice.
func ExampleFinish_UnmarshalText() {
	var s palette.Swatch
	err := json.Unmarshal([]byte(`{"name":"gold","color":"#d4af37","finish":"metal"}`), &s)
	fmt.Println(s, err)
	// Output: gold:metal <nil>
}

// As metal, gold is #d4af37: an estimate.
func ExampleParseSwatch() {
	for _, text := range []string{"gold:metal", "barn red=#7c0a02:shiny"} {
		s, err := palette.ParseSwatch(text)
		fmt.Println(s.Name, s.Color, s.Finish, err)
	}
	// Output:
	// gold #d4af37 metal <nil>
	// barn red #7c0a02 shiny <nil>
}

// CSS Color Module Level 4, section 6.1: ivory is #fffff0, so the name says it.
func ExampleSwatch_String() {
	fmt.Println(palette.Swatch{Name: "ivory", Color: palette.Color{255, 255, 240}})
	fmt.Println(palette.Swatch{Name: "cream", Color: palette.Color{255, 255, 240}, Finish: palette.Shiny})
	// Output:
	// ivory
	// cream=#fffff0:shiny
}

// Common practice: four colors, metals counted. From memory: 10 is another color.
func ExampleCommonPractice() {
	fmt.Printf("%+v\n", palette.CommonPractice())
	// Output: {Limit:4 Apart:10 Fit:8}
}

// Common practice: four colors, metals counted. By the formula of Sharma, Wu and
// Dalal 2005, worked out the slow way in the tests: crimson and indianred differ by 9.71.
func ExampleRules_Palette() {
	rules := palette.CommonPractice()
	swatch := func(name string) palette.Swatch {
		return palette.Swatch{Name: name, Color: units.Must(palette.ParseColor(name))}
	}
	_, err := rules.Palette(swatch("crimson"), swatch("gold"), swatch("indianred"))
	fmt.Println(err)
	fmt.Println(errors.Is(err, units.ErrFit))
	_, err = rules.Palette(swatch("crimson"), swatch("gold"), swatch("silver"), swatch("ivory"), swatch("navy"))
	fmt.Println(err)

	rules.Apart = 9 // a house with a finer eye
	p, err := rules.Palette(swatch("crimson"), swatch("gold"), swatch("indianred"))
	fmt.Println(p, err)
	// Output:
	// palette.Rules.Palette: /swatches/2/color "crimson and indianred, 9.71 apart": does not fit: want at least 10 apart
	// true
	// palette.Rules.Palette: swatches "crimson, gold, silver, ivory, navy": out of range: want 1 to 4 of them, not 5
	// crimson,gold,indianred <nil>
}

// CSS Color Module Level 4, section 6.1: forestgreen is #228b22, gold #ffd700.
func ExampleRules_ParsePalette() {
	p, err := palette.CommonPractice().ParsePalette("berry=#8a0f2c:shiny, forestgreen, gold:metal")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range p {
		fmt.Printf("%s %s %q\n", s.Name, s.Color, s.Finish)
	}
	// Output:
	// berry #8a0f2c "shiny"
	// forestgreen #228b22 ""
	// gold #d4af37 "metal"
}

// As metal, gold is #d4af37: an estimate.
func ExamplePalette_String() {
	p, err := palette.CommonPractice().ParsePalette("gold=#d4af37:metal,pine=#0b3d0b")
	fmt.Println(p, err)
	// Output: gold:metal,pine=#0b3d0b <nil>
}

// CSS Color Module Level 4, section 6.1 for the names.
func ExamplePalette_MarshalText() {
	p, err := palette.CommonPractice().ParsePalette("crimson,gold:metal")
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := json.Marshal(map[string]palette.Palette{"waiting room": p})
	fmt.Println(string(text), err)
	// Output: {"waiting room":"crimson,gold:metal"} <nil>
}

// Common practice: four colors, metals counted.
func ExamplePalette_UnmarshalText() {
	var p palette.Palette
	flags := flag.NewFlagSet("plan", flag.ContinueOnError)
	flags.TextVar(&p, "colors", palette.Palette{}, "up to four colors, the leading one first")
	err := flags.Parse([]string{"-colors", "crimson,forestgreen,gold:metal,ivory"})
	fmt.Println(len(p), p, err)
	// Output: 4 crimson,forestgreen,gold:metal,ivory <nil>
}

// By the model of Brettel, Viénot and Mollon 1997; one man in twelve: Birch 2012.
func ExampleRules_Read() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,forestgreen")
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := rules.Read(p, palette.Swatch{})
	if err != nil {
		fmt.Println(err)
		return
	}
	pair := reading.Pairs[0]
	fmt.Printf("daylight %.1f, deutan %.1f\n", pair.Difference[palette.Daylight], pair.Difference[palette.Deutan])
	fmt.Println(pair.Mend.Name, pair.Mend.Color)
	// Output:
	// daylight 73.8, deutan 3.0
	// forestgreen #1d751d
}

// Two colors too near for a palette, in every view. By CIEDE2000: crimson and indianred
// are 9.71 apart by daylight, as the package documentation has it.
func ExampleRules_Read_near() {
	usual := palette.CommonPractice()
	_, err := usual.ParsePalette("crimson,indianred")
	fmt.Println(err)

	lax := usual
	lax.Apart = 0
	p, err := lax.ParsePalette("crimson,indianred")
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := usual.Read(p, palette.Swatch{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for v := palette.Daylight; v <= palette.WarmTritan; v++ {
		fmt.Printf("%v %.2f\n", v, reading.Pairs[0].Difference[v])
	}
	// Output:
	// palette.Rules.ParsePalette: text "crimson and indianred, 9.71 apart": does not fit: want at least 10 apart
	// daylight 9.71
	// protan 10.89
	// deutan 7.25
	// tritan 9.79
	// warm light 9.26
	// warm protan 10.86
	// warm deutan 6.47
	// warm tritan 9.34
}

// By CIEDE2000 and the model of Brettel, Viénot and Mollon 1997, as in the package documentation.
func ExamplePair_String() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,forestgreen")
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := rules.Read(p, palette.Swatch{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(reading.Pairs[0])
	// Output: crimson and forestgreen: 3.0 apart at least, for deutan viewers by daylight; forestgreen=#1d751d mends it
}

// By the model of Brettel, Viénot and Mollon 1997.
func ExampleReading_Holds() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,forestgreen,ivory")
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := rules.Read(p, palette.Swatch{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for v := palette.Daylight; v <= palette.WarmTritan; v++ {
		holds, err := reading.Holds(v)
		fmt.Println(v, holds, err)
	}
	// Output:
	// daylight true <nil>
	// protan true <nil>
	// deutan false <nil>
	// tritan true <nil>
	// warm light true <nil>
	// warm protan true <nil>
	// warm deutan false <nil>
	// warm tritan true <nil>
}

// Greys look the same to every dichromat (Brettel, Viénot and Mollon 1997).
func ExampleReading_String() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("silver:metal,white")
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := rules.Read(p, palette.Swatch{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(reading)
	// Output:
	// pair           by daylight                       by warm light
	//                usual  protan  deutan  tritan     usual  protan  deutan  tritan
	// silver, white   14.1    14.1    14.1    14.1      14.2    14.1    14.2    14.2
}

// By CIEDE2000 (Sharma, Wu and Dalal 2005); an equal color is 0 away.
func ExampleMatch_String() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,ivory")
	if err != nil {
		fmt.Println(err)
		return
	}
	sorted, err := rules.Sort(p, []palette.Piece{{Color: units.Must(palette.ParseColor("crimson"))}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(sorted.Matches[0])
	// Output: crimson, 0.0 away
}

// By CIEDE2000 (Sharma, Wu and Dalal 2005).
func ExampleRules_Sort() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,gold:metal")
	if err != nil {
		fmt.Println(err)
		return
	}
	sorted, err := rules.Sort(p, []palette.Piece{
		{Name: "balls", Color: units.Must(palette.ParseColor("#c8102e")), Count: 24},
		{Name: "tin engines", Color: units.Must(palette.ParseColor("royalblue")), Count: 3},
	})
	fmt.Println(sorted.Kept[0], sorted.Kept[1], sorted.Left, err)
	// Output: 24 0 3 <nil>
}

// 24 and 12 fit, 3 are left out.
func ExampleSorting_String() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,gold:metal")
	if err != nil {
		fmt.Println(err)
		return
	}
	sorted, err := rules.Sort(p, []palette.Piece{
		{Name: "balls", Color: units.Must(palette.ParseColor("crimson")), Count: 24},
		{Name: "stars", Color: units.Must(palette.ParseColor("gold")), Finish: palette.Metal, Count: 12},
		{Name: "tin engines", Color: units.Must(palette.ParseColor("royalblue")), Count: 3},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(sorted)
	// Output:
	// crimson     24
	// gold:metal  12
	// left out     3
}

// By hand: of six colors, all far apart but for the two reds, which pass for each
// other, four keep 24+8, 12, 9 and 5 pieces; the 3 engines are left.
func ExampleRules_Best() {
	rules := palette.CommonPractice()
	box := []palette.Piece{
		{Name: "tin engines", Color: units.Must(palette.ParseColor("royalblue")), Count: 3},
		{Name: "balls", Color: units.Must(palette.ParseColor("crimson")), Finish: palette.Shiny, Count: 24},
		{Name: "bells", Color: units.Must(palette.ParseColor("#d01030")), Count: 8},
		{Name: "stars", Color: units.Must(palette.ParseColor("#d4af37")), Finish: palette.Metal, Count: 12},
		{Name: "doves", Color: units.Must(palette.ParseColor("white")), Count: 9},
		{Name: "bows", Color: units.Must(palette.ParseColor("darkgreen")), Count: 5},
	}
	best, err := rules.Best(box)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(best.Palette)
	fmt.Println(best.Kept, "kept,", best.Left, "left")
	// Output:
	// crimson:shiny,gold:metal,white,darkgreen
	// [32 12 9 5] kept, 3 left
}

// COMAP, For All Practical Purposes, 10th edition, Table 14.5: the 120 seats of the
// U.S. House of 1790 by the method of Hamilton.
func ExampleApportion() {
	seats, err := palette.Apportion(120, []int{
		630560, 475327, 432879, 353523, 331589, 278514, 236841, 206236,
		179570, 141822, 85533, 70835, 68705, 68446, 55540,
	}, 0)
	fmt.Println(seats, err)
	// Output: [21 16 14 12 11 9 8 7 6 5 3 2 2 2 2] <nil>
}

// OpenStax, Contemporary Mathematics, section 11.4: eleven over 6, 6 and 2. With
// one thing more to share, the third gets one fewer.
func ExampleApportion_paradox() {
	for _, total := range []int{10, 11} {
		counts, err := palette.Apportion(total, []int{6, 6, 2}, 0)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%d over 6, 6 and 2: %d, %d and %d\n", total, counts[0], counts[1], counts[2])
	}
	// Output:
	// 10 over 6, 6 and 2: 4, 4 and 2
	// 11 over 6, 6 and 2: 5, 5 and 1
}

// Largest remainders: 8 picks over 60, 30 and 10 have quotas 4.8, 2.4 and 0.8.
func ExamplePalette_Share() {
	p, err := palette.CommonPractice().ParsePalette("firebrick,ivory,gold:metal")
	if err != nil {
		fmt.Println(err)
		return
	}
	sharing, err := p.Share(0, 8)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, row := range sharing {
		fmt.Println(row.Swatch.Name, row.Pieces)
	}
	// Output:
	// firebrick 5
	// ivory 2
	// gold 1
}

// Every type alike, 7 of each, for the tree of 7 ft: the types are shared by color, and
// the pieces follow from the types.
func ExamplePalette_Share_alike() {
	// Common practice: one type a foot, as many of each as there are types. Quotas of 7
	// types over 40, 30, 20, 10: 2.8, 2.1, 1.4, 0.7; of 49 pieces: 19.6, 14.7, 9.8, 4.9.
	p, err := palette.CommonPractice().ParsePalette("crimson,darkgreen,gold:metal,ivory")
	if err != nil {
		fmt.Println(err)
		return
	}
	sharing, err := p.Share(7, 7*7)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("color      types  pieces by share  of each type  7 of each type")
	for _, row := range sharing {
		each, err := palette.Apportion(row.Pieces, slices.Repeat([]int{1}, row.Types), 0) // in equal parts
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-9s  %5d  %15d  %12s  %14d\n", row.Swatch.Name, row.Types, row.Pieces, strings.Trim(fmt.Sprint(each), "[]"), 7*row.Types)
	}
	// Output:
	// color      types  pieces by share  of each type  7 of each type
	// crimson        3               19         7 6 6              21
	// darkgreen      2               15           8 7              14
	// gold           1               10            10               7
	// ivory          1                5             5               7
}

// Quotas of 4 types over 60 and 40: 2.4 and 1.6; of 16 pieces: 9.6 and 6.4.
func ExampleSharing_String() {
	p, err := palette.CommonPractice().ParsePalette("navy,silver:metal")
	if err != nil {
		fmt.Println(err)
		return
	}
	sharing, err := p.Share(4, 16)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(sharing)
	// Output:
	// color         share  types  pieces
	// navy             60      2      10
	// silver:metal     40      2       6
	// total           100      4      16
}

// The difference of greys by CIEDE2000 is |ΔL*|/SL, as in ExampleSuggestion_String.
func ExampleRules_Suggest() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("silver:metal,white")
	if err != nil {
		fmt.Println(err)
		return
	}
	black := palette.Swatch{Name: "black", Color: units.Must(palette.ParseColor("black")), Finish: palette.Shiny}
	suggestions, err := rules.Suggest(p, palette.Swatch{}, []palette.Swatch{black})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(suggestions[0].Swatch, suggestions[0].Why)
	// Output: black:shiny on the shelf
}

// The difference of greys by CIEDE2000 is |ΔL*|/SL: 77.70/1.155 for silver to black.
func ExampleSuggestion_String() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("silver:metal,white")
	if err != nil {
		fmt.Println(err)
		return
	}
	suggestions, err := rules.Suggest(p, palette.Swatch{}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(suggestions[0])
	// Output: black #000000, a neutral: goes with any color; at least 66.8 from every color in every view (least for protan viewers by warm light, from silver)
}

// The name is not spelled so in any list.
func ExampleError() {
	_, err := palette.ParseColor("burgandy")
	fmt.Println(err)
	fmt.Println(errors.Is(err, units.ErrName), errors.Is(err, units.ErrRange))
	var e *units.Error
	if errors.As(err, &e) {
		fmt.Println(e.Func, e.Field, e.Value)
	}
	// Output:
	// palette.ParseColor: text "burgandy": unknown name: want #rrggbb, #rgb or a color name; did you mean burgundy?
	// true false
	// palette.ParseColor text burgandy
}

// By hand: 33 pieces of 4 types over three finishes are two types and 11 pieces, one and 11, one and 11.
func ExampleRow_Finishes() {
	ruby, err := palette.ParseSwatch("ruby:matte+shiny+glitter")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range (palette.Row{Swatch: ruby, Share: 40, Types: 4, Pieces: 33}).Finishes() {
		fmt.Println(r.Swatch.Finish, r.Types, r.Pieces)
	}
	// Output:
	// matte 2 11
	// shiny 1 11
	// glitter 1 11
}

// CSS Color Module Level 4, section 6.1: ivory is #fffff0.
func ExampleColor_Value() {
	value, err := units.Must(palette.ParseColor("ivory")).Value()
	fmt.Printf("%q %v\n", value, err)
	// Output: "#fffff0" <nil>
}

// CSS Color Module Level 4, section 6.1: ivory is #fffff0.
func ExampleColor_Scan() {
	var v palette.Color
	err := v.Scan("ivory")
	fmt.Println(v, err)
	// Output: #fffff0 <nil>
}

// The words are common practice.
func ExampleFinish_Value() {
	value, err := (palette.Matte | palette.Shiny).Value()
	fmt.Printf("%q %v\n", value, err)
	// Output: "matte+shiny" <nil>
}

// The words are common practice.
func ExampleFinish_Scan() {
	var v palette.Finish
	err := v.Scan([]byte("matte+shiny"))
	fmt.Println(v, err)
	// Output: matte+shiny <nil>
}

// The names are this package's.
func ExampleView_Value() {
	value, err := palette.WarmLight.Value()
	fmt.Printf("%q %v\n", value, err)
	// Output: "warm light" <nil>
}

// The names are this package's.
func ExampleView_Scan() {
	var v palette.View
	err := v.Scan("warm light")
	fmt.Println(v, err)
	// Output: warm light <nil>
}

// The form is this package's.
func ExampleSwatch_Value() {
	value, err := palette.Swatch{Name: "ivory", Color: units.Must(palette.ParseColor("ivory")), Finish: palette.Clear}.Value()
	fmt.Printf("%q %v\n", value, err)
	// Output: "ivory:clear" <nil>
}

// The form is this package's.
func ExampleSwatch_Scan() {
	var v palette.Swatch
	err := v.Scan("barn red=#7c0a02:shiny")
	fmt.Println(v, err)
	// Output: barn red=#7c0a02:shiny <nil>
}

// The form is this package's.
func ExamplePalette_Value() {
	value, err := palette.Palette{}.Value()
	fmt.Printf("%q %v\n", value, err)
	// Output: "" <nil>
}

// The form is this package's.
func ExamplePalette_Scan() {
	var v palette.Palette
	err := v.Scan("crimson,gold:metal")
	fmt.Println(v, err)
	// Output: crimson,gold:metal <nil>
}
