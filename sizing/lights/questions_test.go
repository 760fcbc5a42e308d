package lights_test

import (
	"fmt"

	"example.com/fircone/sizing/lights"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// May 40 strings of old lights, 40 W each, share a 15 A circuit of
// 120 V?
// NEC 210.19(A)(1) and 210.20(A), as quoted: 80 % of 15 A · 120 V is 1440 W.
func ExampleStrings_Load_question() {
	strings := lights.Strings{
		Each:  lights.Label{Lamps: 100, Length: 25 * units.Foot, Power: 40 * units.Watt},
		Count: 40,
	}
	load, _ := strings.Load(lights.Circuit{Volts: 120, Amperes: 15})
	fmt.Println("over:", load.Power > load.Limit)
	fmt.Println(load.Power, "on a circuit for", load.Limit)
	// Output:
	// over: true
	// 1600 W on a circuit for 1440 W
}

// What do 175 W of lights cost to run for a season of 40 days, 12 h a day, at 0.119 a
// kilowatt-hour? US DOE and ENERGY STAR, as quoted: 9.996.
func ExampleStrings_Use_question() {
	strings := lights.Strings{
		Each:  lights.Label{Lamps: 25, Length: 25 * units.Foot, Power: 175 * units.Watt},
		Count: 1,
	}
	use, _ := strings.Use(decimal.NewFromInt(12), 40)
	fmt.Println(use.Energy, "kWh cost", use.Energy.Mul(decimal.RequireFromString("0.119")))
	// Output: 84 kWh cost 9.996
}
