package lights_test

import (
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// By hand: 900 lamps in strings of 100; and wound 8 in apart over 52.6 sq ft they run 78.9
// ft, and a little more: four strings of 25 ft.
func ExampleLabel_For() {
	label := lights.Label{Lamps: 100, Length: 25 * units.Foot, Power: 4800 * units.Milliwatt}
	strings, err := label.For(shopping.Quantity{Pieces: 900})
	fmt.Println(strings, err)
	length, _ := sizing.Tree{Height: 7 * units.Foot}.SpiralLength(8 * units.Inch)
	strings, err = label.For(shopping.Quantity{Length: length})
	fmt.Println(strings, err)
	// Output:
	// 9 strings of 100 lamps, 4.8 W each <nil>
	// 4 strings of 100 lamps, 4.8 W each <nil>
}

// Electrical Safety Foundation International: three incandescent strings end to
// end, unless the label says otherwise.
func ExampleStrings_Runs() {
	label := lights.Label{Lamps: 100, Length: 25 * units.Foot, Power: 40 * units.Watt}
	runs, err := lights.Strings{Each: label, Count: 10}.Runs()
	fmt.Println(runs, err)
	// Output: 4 <nil>
}

// National Electrical Code 210.20(A), as quoted: 15 A at 120 V carries 1440 W for
// 3 h or more. 40 strings of 40 W are 1600 W.
func ExampleStrings_Load() {
	label := lights.Label{Lamps: 100, Length: 25 * units.Foot, Power: 40 * units.Watt}
	load, err := lights.Strings{Each: label, Count: 40}.Load(lights.Circuit{Volts: 120, Amperes: 15})
	fmt.Println(load, err)
	// Output: 1600 W of 1440 W: OVER THE LIMIT; do not switch it on: use fewer lights or a second circuit; local code decides; ask a licensed electrician <nil>
}

func ExampleLoad_String() {
	load := lights.Load{Power: 43200, Limit: 1440 * units.Watt, Caution: units.Caution{Text: "follow the label"}}
	fmt.Println(load.String())
	// Output: 43.2 W of 1440 W: within the limit; follow the label
}

// ENERGY STAR and US Department of Energy, as quoted: 175 W for 12 h a day, 40
// days, at $0.119 costs $9.996.
func ExampleStrings_Use() {
	strings := lights.Strings{Each: lights.Label{Lamps: 25, Length: 25 * units.Foot, Power: 175 * units.Watt}, Count: 1}
	use, err := strings.Use(decimal.NewFromInt(12), 40)
	fmt.Println(use.Energy, "kWh", use.Energy.Mul(decimal.RequireFromString("0.119")), err)
	// Output: 84 kWh 9.996 <nil>
}

func ExampleUse_String() {
	use := lights.Use{Energy: decimal.NewFromInt(84), Caution: units.Caution{Text: "switch them off at night"}}
	fmt.Println(use.String())
	// Output: 84 kWh; switch them off at night
}

func ExampleStrings_String() {
	label := lights.Label{Lamps: 70, Length: 24 * units.Foot, Power: 3500 * units.Milliwatt}
	fmt.Println(lights.Strings{Each: label, Count: 2}.String())
	// Output: 2 strings of 70 lamps, 3.5 W each
}

// LED: ENERGY STAR, 0.05 W a lamp. The others from memory: 0.4 W a miniature lamp, 5 and
// 7 W the larger ones. By hand: 80 % of 120 V · 15 A is 1440 W, over 5, 40, 125 and 175 W
// that is 288, 36, 11.5 and 8.2 strings; of 20 A 1920 W.
func Example_chart() {
	fmt.Printf("%-24s %5s %9s %9s %5s %5s\n", "lamp", "W", "string of", "W", "15 A", "20 A")
	for _, row := range []struct {
		name  string
		lamps int
		each  units.Power
	}{
		{"LED, miniature", 100, 50 * units.Milliwatt},
		{"incandescent, miniature", 100, 400 * units.Milliwatt},
		{"incandescent, C7", 25, 5 * units.Watt},
		{"incandescent, C9", 25, 7 * units.Watt},
	} {
		power := units.Power(row.lamps) * row.each
		fmt.Printf("%-24s %5.2f %9d %9.0f", row.name, row.each.In(units.Watt), row.lamps, power.In(units.Watt))
		for _, amperes := range []int{15, 20} {
			load, err := lights.Strings{Each: lights.Label{Lamps: row.lamps, Length: 25 * units.Foot, Power: power}, Count: 1}.Load(lights.Circuit{Volts: 120, Amperes: amperes})
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf(" %5d", load.Limit/power)
		}
		fmt.Println()
	}
	// Output:
	// lamp                         W string of         W  15 A  20 A
	// LED, miniature            0.05       100         5   288   384
	// incandescent, miniature   0.40       100        40    36    48
	// incandescent, C7          5.00        25       125    11    15
	// incandescent, C9          7.00        25       175     8    10
}
