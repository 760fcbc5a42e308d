package units_test

import (
	"fmt"

	"example.com/fircone/units"
)

func ExampleParsePower() {
	// SI prefixes: kilo is 1000, milli 1/1000; mega, M, is refused. The International System of Units (SI), BIPM.
	for _, s := range []string{"175 W", "4.8 watts", "1.5 kW", "70 mW"} {
		p, err := units.ParsePower(s)
		fmt.Println(p, err)
	}
	_, err := units.ParsePower("70 MW")
	fmt.Println(err)
	// Output:
	// 175 W <nil>
	// 4.8 W <nil>
	// 1500 W <nil>
	// 0.07 W <nil>
	// units.ParsePower: text "70 MW": unknown unit: want one of kW, W, mW
}

func ExamplePower_String() {
	// SI prefixes.
	fmt.Println(175*units.Watt, 1500*units.Watt, 70*units.Milliwatt, units.Power(0))
	// Output:
	// 175 W 1500 W 0.07 W 0 W
}

func ExamplePower_Format() {
	// 4.85 W: of two tenths as near, the one away from zero.
	fmt.Println((4850 * units.Milliwatt).Format(units.InMetric, units.Watt/10))
	fmt.Println((4850 * units.Milliwatt).Format(units.InMetric, units.Watt))
	// Output:
	// 4.9 W
	// 5 W
}

func ExamplePower_MarshalText() {
	// 1 W = 1000 mW.
	b, err := (4800 * units.Milliwatt).MarshalText()
	fmt.Printf("%s, %v\n", b, err)
	// Output:
	// 4.8 W, <nil>
}

func ExamplePower_UnmarshalText() {
	// By the grammar in the package documentation.
	var p units.Power
	err := p.UnmarshalText([]byte("4.8W"))
	fmt.Println(p, err)
	// Output:
	// 4.8 W <nil>
}

func ExamplePower_In() {
	// 1 kW = 1000 W.
	fmt.Println((175 * units.Watt).In(1000*units.Watt), "kW")
	// Output:
	// 0.175 kW
}
