package palette_test

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
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
	reading, err := rules.Read(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(reading)
	sharing, err := p.Share(palette.Totals{Types: 9, Pieces: 81})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(sharing)
	// Output:
	// pair                daylight   warm light   protan   deutan   tritan
	// crimson, darkgreen      71.3         68.1     15.1     15.7     50.9
	// crimson, gold           60.1         56.8     50.2     30.1     35.6
	// crimson, ivory          51.8         49.0     51.7     38.5     47.7
	// darkgreen, gold         51.5         52.6     40.9     47.5     58.9
	// darkgreen, ivory        54.8         56.2     50.1     54.5     53.7
	// gold, ivory             27.0         22.9     26.6     26.8     19.8
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
	reading, err := rules.Read(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(reading)
	mend := reading.Pairs[0].Mend
	fmt.Printf("%s: %s instead of %s\n", mend.Swatch.Name, mend.Swatch.Color, mend.Was)
	// Output:
	// pair                  daylight   warm light   protan   deutan   tritan
	// crimson, forestgreen      73.8         70.2     24.1      3.0*    53.2
	// * crimson and forestgreen: one color, under 10, to deutan viewers
	//   (about one man in twelve has some red-green deficiency);
	//   darker forestgreen, #1d751d for #228b22, mends it: a difference in lightness
	//   of 10.4 in the eyes of deutan viewers, where it is 3.0 now
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
		{Name: "glass balls", Color: palette.MustParseColor("#c8102e"), Finish: palette.Shiny, Count: 24},
		{Name: "velvet bows", Color: palette.MustParseColor("darkred"), Count: 6},
		{Name: "foil stars", Color: palette.MustParseColor("#fdd017"), Finish: palette.Metal, Count: 12},
		{Name: "icicles", Color: palette.MustParseColor("white"), Finish: palette.Clear, Count: 18},
		{Name: "tin engines", Color: palette.MustParseColor("royalblue"), Finish: palette.Metal, Count: 3},
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
	// 12 foil stars, #fdd017: gold, 2.2 away
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
		c, d := palette.MustParseColor(pair[0]), palette.MustParseColor(pair[1])
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
	for _, names := range [][3]string{
		{"crimson", "firebrick", "darkred"},
		{"forestgreen", "darkgreen", "seagreen"},
		{"gold", "goldenrod", "silver"},
		{"white", "ivory", "black"},
		{"royalblue", "navy", "skyblue"},
		{"teal", "plum", "chocolate"},
	} {
		for i, name := range names {
			if i > 0 {
				fmt.Print("   ")
			}
			fmt.Printf("%-11s  %s", name, palette.MustParseColor(name))
		}
		fmt.Println()
	}
	// Output:
	// crimson      #dc143c   firebrick    #b22222   darkred      #8b0000
	// forestgreen  #228b22   darkgreen    #006400   seagreen     #2e8b57
	// gold         #ffd700   goldenrod    #daa520   silver       #c0c0c0
	// white        #ffffff   ivory        #fffff0   black        #000000
	// royalblue    #4169e1   navy         #000080   skyblue      #87ceeb
	// teal         #008080   plum         #dda0dd   chocolate    #d2691e
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
		s, err := p.Share(palette.Totals{Types: tree.types, Pieces: tree.types})
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

// What goes with the tea room's red and green: 64 in of mantel with room for two more colors.
func Example_suggest() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("firebrick,darkgreen")
	if err != nil {
		fmt.Println(err)
		return
	}
	suggestions, err := rules.Suggest(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range suggestions {
		fmt.Println(s)
	}
	// Output:
	// aliceblue #f0f8ff: at least 50.1 from every color for everybody (least in deutan, from firebrick)
	// aqua #00ffff: at least 47.5 from every color for everybody (least in tritan, from darkgreen)
	// lavenderblush #fff0f5: at least 47.3 from every color for everybody (least in deutan, from firebrick)
	// ivory #fffff0: at least 46.7 from every color for everybody (least in deutan, from firebrick)
	// paleturquoise #afeeee: at least 45.6 from every color for everybody (least in tritan, from darkgreen)
	// yellow #ffff00: at least 43.4 from every color for everybody (least in deutan, from firebrick)
	// aquamarine #7fffd4: at least 42.2 from every color for everybody (least in deutan, from firebrick)
	// thistle #d8bfd8: at least 42.0 from every color for everybody (least in warm light, from firebrick)
}

// CSS Color Module Level 4, section 6.1: crimson is #dc143c; section 5.2: #d2f is #dd22ff.
func ExampleParseColor() {
	for _, text := range []string{"Crimson ", "#D2F", "burgundy"} {
		c, err := palette.ParseColor(text)
		fmt.Println(c, err)
	}
	// Output:
	// #dc143c <nil>
	// #dd22ff <nil>
	// #000000 palette.ParseColor: text "burgundy": unknown name: want #rrggbb, #rgb or a CSS color name
}

// CSS Color Module Level 4, section 6.1.
func ExampleMustParseColor() {
	fmt.Println(palette.MustParseColor("gold"))
	// Output: #ffd700
}

// 220, 20 and 60 are dc, 14 and 3c.
func ExampleColor_String() {
	fmt.Println(palette.Color{R: 220, G: 20, B: 60})
	// Output: #dc143c
}

// CSS Color Module Level 4, section 6.1: aqua and cyan are both #00ffff.
func ExampleColor_Name() {
	fmt.Println(palette.Color{R: 0, G: 255, B: 255}.Name())
	fmt.Printf("%q\n", palette.Color{R: 1, G: 2, B: 3}.Name())
	// Output:
	// aqua
	// ""
}

// CSS Color Module Level 4, section 6.1: ivory is #fffff0.
func ExampleColor_MarshalText() {
	text, err := json.Marshal(map[string]palette.Color{"ribbon": palette.MustParseColor("ivory")})
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

// By the constants of CSS Color Module Level 4 in 50 digits: 47.0334, 70.9192, 33.5961.
func ExampleColor_Lab() {
	fmt.Printf("%.2f\n", palette.MustParseColor("crimson").Lab())
	// Output: {47.03 70.92 33.60}
}

// CIEDE2000 is scaled so that black to white is 100.
func ExampleColor_Difference() {
	black, white := palette.MustParseColor("black"), palette.MustParseColor("white")
	fmt.Printf("%.1f\n", black.Difference(white))
	fmt.Printf("%.1f\n", white.Difference(white))
	// Output:
	// 100.0
	// 0.0
}

// The triangle of sides 3, 4 and 5.
func ExampleLab_Chroma() {
	fmt.Printf("%.1f\n", palette.Lab{L: 50, A: 3, B: 4}.Chroma())
	// Output: 5.0
}

// CIE 15: hab = atan2(b*, a*).
func ExampleLab_Hue() {
	fmt.Printf("%.1f° %.1f°\n", palette.Lab{L: 50, A: 0, B: 10}.Hue(), palette.Lab{L: 50, A: 10, B: -10}.Hue())
	// Output: 90.0° 315.0°
}

// Brettel, Viénot and Mollon 1997: greys are unchanged for every dichromat. CAT16
// and illuminant A, by hand: white comes back as X 98.775, Y 100.001, Z 90.455,
// which is a* 6.5, b* 12.0.
func ExampleView_Lab() {
	for v := palette.Daylight; v <= palette.Tritan; v++ {
		white, err := v.Lab(palette.MustParseColor("white"))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-10s  %.0f %.1f %.1f\n", v, white.L, white.A, white.B)
	}
	// Output:
	// daylight    100 0.0 0.0
	// warm light  100 6.4 12.0
	// protan      100 0.0 0.0
	// deutan      100 0.0 0.0
	// tritan      100 0.0 0.0
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
func ExampleParseFinish() {
	f, err := palette.ParseFinish(" Metal")
	fmt.Println(f == palette.Metal, err)
	_, err = palette.ParseFinish("dull")
	fmt.Println(err)
	// Output:
	// true <nil>
	// palette.ParseFinish: text "dull": unknown name: want matte, shiny, glittered, clear or metal
}

// The words are common practice.
func ExampleFinish_String() {
	fmt.Println(palette.Glittered)
	// Output: glittered
}

// The words are common practice.
func ExampleFinish_MarshalText() {
	text, err := json.Marshal(palette.Swatch{Name: "gold", Color: palette.MustParseColor("gold"), Finish: palette.Metal})
	fmt.Println(string(text), err)
	// Output: {"name":"gold","color":"#ffd700","finish":"metal"} <nil>
}

// The words are common practice.
func ExampleFinish_UnmarshalText() {
	var s palette.Swatch
	err := json.Unmarshal([]byte(`{"name":"gold","color":"gold","finish":"metal"}`), &s)
	fmt.Println(s, err)
	// Output: gold:metal <nil>
}

// CSS Color Module Level 4, section 6.1: gold is #ffd700.
func ExampleParseSwatch() {
	for _, text := range []string{"gold:metal", "barn red=#7c0a02:shiny"} {
		s, err := palette.ParseSwatch(text)
		fmt.Println(s.Name, s.Color, s.Finish, err)
	}
	// Output:
	// gold #ffd700 metal <nil>
	// barn red #7c0a02 shiny <nil>
}

// CSS Color Module Level 4, section 6.1: ivory is #fffff0, so the name says it.
func ExampleSwatch_String() {
	fmt.Println(palette.Swatch{Name: "ivory", Color: palette.Color{R: 255, G: 255, B: 240}})
	fmt.Println(palette.Swatch{Name: "cream", Color: palette.Color{R: 255, G: 255, B: 240}, Finish: palette.Shiny})
	// Output:
	// ivory
	// cream=#fffff0:shiny
}

// Common practice: four colors, metals counted. From memory: 10 is another color.
func ExampleCommonPractice() {
	fmt.Printf("%+v\n", palette.CommonPractice())
	// Output: {Limit:4 Apart:10 Fit:10}
}

// Common practice: four colors, metals counted. By the formula of Sharma, Wu and
// Dalal 2005, worked out the slow way in the tests: crimson and indianred differ by 9.71.
func ExampleRules_Palette() {
	rules := palette.CommonPractice()
	swatch := func(name string) palette.Swatch {
		return palette.Swatch{Name: name, Color: palette.MustParseColor(name)}
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
	for _, s := range p.Swatches() {
		fmt.Println(s.Name, s.Color, s.Finish)
	}
	// Output:
	// berry #8a0f2c shiny
	// forestgreen #228b22 matte
	// gold #ffd700 metal
}

// Common practice: gold and silver are two.
func ExamplePalette_Len() {
	p, err := palette.CommonPractice().ParsePalette("crimson,gold:metal,silver:metal")
	fmt.Println(p.Len(), err)
	// Output: 3 <nil>
}

// CSS Color Module Level 4, section 6.1: silver is #c0c0c0.
func ExamplePalette_Swatches() {
	p, err := palette.CommonPractice().ParsePalette("navy,silver:metal")
	fmt.Println(p.Swatches()[1].Color, err)
	// Output: #c0c0c0 <nil>
}

// CSS Color Module Level 4, section 6.1: #ffd700 is gold.
func ExamplePalette_String() {
	p, err := palette.CommonPractice().ParsePalette("gold=#ffd700:metal,pine=#0b3d0b")
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
	fmt.Println(p.Len(), p, err)
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
	reading, err := rules.Read(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	pair := reading.Pairs[0]
	fmt.Printf("daylight %.1f, deutan %.1f\n", pair.Difference[palette.Daylight], pair.Difference[palette.Deutan])
	fmt.Println(pair.Holds[palette.Daylight], pair.Holds[palette.Deutan])
	fmt.Printf("%s %s\n", pair.Mend.Swatch.Name, pair.Mend.Swatch.Color)
	// Output:
	// daylight 73.8, deutan 3.0
	// true false
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
	reading, err := usual.Read(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f\n", reading.Pairs[0].Difference)
	// Output:
	// palette.Rules.ParsePalette: text "crimson and indianred, 9.71 apart": does not fit: want at least 10 apart
	// [9.71 9.26 10.89 7.25 9.79]
}

// By the model of Brettel, Viénot and Mollon 1997.
func ExampleReading_Holds() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,forestgreen,ivory")
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := rules.Read(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	for v := palette.Daylight; v <= palette.Tritan; v++ {
		holds, err := reading.Holds(v)
		fmt.Println(v, holds, err)
	}
	// Output:
	// daylight true <nil>
	// warm light true <nil>
	// protan true <nil>
	// deutan false <nil>
	// tritan true <nil>
}

// Greys look the same to every dichromat (Brettel, Viénot and Mollon 1997).
func ExampleReading_String() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("silver:metal,white")
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := rules.Read(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(reading)
	// Output:
	// pair           daylight   warm light   protan   deutan   tritan
	// silver, white      14.1         14.2     14.1     14.1     14.1
}

// By CIEDE2000 (Sharma, Wu and Dalal 2005).
func ExampleRules_Match() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,darkgreen,gold:metal,ivory")
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, owned := range []string{"#c8102e", "white", "royalblue"} {
		m, err := rules.Match(p, palette.MustParseColor(owned))
		fmt.Println(owned, m.Index, m.Fits, err)
	}
	// Output:
	// #c8102e 0 true <nil>
	// white 3 true <nil>
	// royalblue 0 false <nil>
}

// By CIEDE2000 (Sharma, Wu and Dalal 2005); an equal color is 0 away.
func ExampleMatch_String() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("crimson,ivory")
	if err != nil {
		fmt.Println(err)
		return
	}
	m, err := rules.Match(p, palette.MustParseColor("crimson"))
	fmt.Println(m, err)
	// Output: crimson, 0.0 away <nil>
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
		{Name: "balls", Color: palette.MustParseColor("#c8102e"), Count: 24},
		{Name: "tin engines", Color: palette.MustParseColor("royalblue"), Count: 3},
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
		{Name: "balls", Color: palette.MustParseColor("crimson"), Count: 24},
		{Name: "stars", Color: palette.MustParseColor("gold"), Count: 12},
		{Name: "tin engines", Color: palette.MustParseColor("royalblue"), Count: 3},
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
		{Name: "tin engines", Color: palette.MustParseColor("royalblue"), Count: 3},
		{Name: "balls", Color: palette.MustParseColor("crimson"), Finish: palette.Shiny, Count: 24},
		{Name: "bells", Color: palette.MustParseColor("#d01030"), Count: 8},
		{Name: "stars", Color: palette.MustParseColor("gold"), Finish: palette.Metal, Count: 12},
		{Name: "doves", Color: palette.MustParseColor("white"), Count: 9},
		{Name: "bows", Color: palette.MustParseColor("darkgreen"), Count: 5},
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
	sharing, err := p.Share(palette.Totals{Pieces: 8})
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
	sharing, err := p.Share(palette.Totals{Types: 7, Pieces: 7 * 7})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("color      types  pieces by share  of each type  7 of each type")
	for _, row := range sharing {
		fmt.Printf("%-9s  %5d  %15d  %12s  %14d\n", row.Swatch.Name, row.Types, row.Pieces, strings.Trim(fmt.Sprint(row.Each()), "[]"), 7*row.Types)
	}
	// Output:
	// color      types  pieces by share  of each type  7 of each type
	// crimson        3               19         7 6 6              21
	// darkgreen      2               15           8 7              14
	// gold           1               10            10               7
	// ivory          1                5             5               7
}

// 33 pieces of 4 types: 8 of each, and one more.
func ExampleRow_Each() {
	fmt.Println(palette.Row{Types: 4, Pieces: 33}.Each())
	// Output: [9 8 8 8]
}

// Quotas of 4 types over 60 and 40: 2.4 and 1.6; of 16 pieces: 9.6 and 6.4.
func ExampleSharing_String() {
	p, err := palette.CommonPractice().ParsePalette("navy,silver:metal")
	if err != nil {
		fmt.Println(err)
		return
	}
	sharing, err := p.Share(palette.Totals{Types: 4, Pieces: 16})
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

// Greys keep their lightness in every view: black stands farthest from silver and white.
func ExampleRules_Suggest() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("silver:metal,white")
	if err != nil {
		fmt.Println(err)
		return
	}
	suggestions, err := rules.Suggest(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(suggestions[0].Palette)
	// Output: silver:metal,white,black
}

// The difference of greys by CIEDE2000 is |ΔL*|/SL: 77.70/1.155 for silver to black.
func ExampleSuggestion_String() {
	rules := palette.CommonPractice()
	p, err := rules.ParsePalette("silver:metal,white")
	if err != nil {
		fmt.Println(err)
		return
	}
	suggestions, err := rules.Suggest(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(suggestions[0])
	// Output: black #000000: at least 67.2 from every color for everybody (least in daylight, from silver)
}

// CSS Color Module Level 4 has no such name.
func ExampleError() {
	_, err := palette.ParseColor("burgundy")
	fmt.Println(err)
	fmt.Println(errors.Is(err, units.ErrName), errors.Is(err, units.ErrRange))
	var e *units.Error
	if errors.As(err, &e) {
		fmt.Println(e.Func, e.Field, e.Value)
	}
	// Output:
	// palette.ParseColor: text "burgundy": unknown name: want #rrggbb, #rgb or a CSS color name
	// true false
	// palette.ParseColor text burgundy
}
