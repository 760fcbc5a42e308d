package palette_test

import (
	"fmt"

	"example.com/fircone/palette"
	"example.com/fircone/units"
)

// Do crimson, forestgreen, gold and ivory stay distinct, in every view? By CIEDE2000
// and, for color vision deficiencies, Brettel, Viénot and Mollon (1997). About one man
// in twelve cannot tell some reds from greens.
func ExampleRules_Read_question() {
	rules := palette.CommonPractice()
	p, _ := rules.ParsePalette("crimson,forestgreen,gold:metal,ivory")
	reading, _ := rules.Read(p, palette.Swatch{})
	for v := palette.Daylight; v <= palette.WarmTritan; v++ {
		holds, _ := reading.Holds(v)
		fmt.Println(v, holds)
	}
	for _, pair := range reading.Pairs {
		if pair.Difference[palette.Deutan] < rules.Apart {
			fmt.Println(pair.A, "and", pair.B, "are one color to some; make it", pair.Mend)
		}
	}
	// Output:
	// daylight true
	// protan true
	// deutan false
	// tritan true
	// warm light true
	// warm protan true
	// warm deutan false
	// warm tritan true
	// crimson and forestgreen are one color to some; make it forestgreen=#1d751d
}

// Which of last year's pieces, red #d81840 and turquoise, go with crimson,
// forestgreen, gold and ivory? By CIEDE2000: within 8 of a color they pass for it.
func ExampleRules_Sort_question() {
	rules := palette.CommonPractice()
	p, _ := rules.ParsePalette("crimson,forestgreen,gold:metal,ivory")
	sorting, _ := rules.Sort(p, []palette.Piece{
		{Name: "red glass", Color: units.Must(palette.ParseColor("#d81840")), Count: 9},
		{Name: "turquoise birds", Color: units.Must(palette.ParseColor("turquoise")), Count: 4},
	})
	for _, m := range sorting.Matches {
		fmt.Println(m.Fits, m)
	}
	// Output:
	// true crimson, 1.5 away
	// false none: ivory is nearest, 26.1 away
}
