package units_test

import (
	"fmt"

	"example.com/fircone/units"
)

func ExampleParseMass() {
	// 1 lb = 16 oz.
	for _, s := range []string{"3 lb 4 oz", "3.25 pounds", "12 oz", "1.5 kg", "250 g"} {
		m, err := units.ParseMass(s)
		fmt.Println(m, err)
	}
	_, err := units.ParseMass("3 lb 20 oz")
	fmt.Println(err)
	// Output:
	// 3 lb 4 oz <nil>
	// 3 lb 4 oz <nil>
	// 12 oz <nil>
	// 1.5 kg <nil>
	// 250 g <nil>
	// units.ParseMass: text "3 lb 20 oz": part too large: want each part smaller than one of what stands before it
}

func ExampleMass_String() {
	// 52 = 3 · 16 + 4. 1.5 kg is 52.9... oz, so it is not printed in ounces.
	fmt.Println(52 * units.Ounce)
	fmt.Println(1500 * units.Gram)
	fmt.Println(units.Mass(0))
	// Output:
	// 3 lb 4 oz
	// 1.5 kg
	// 0 lb
}

func ExampleMass_Format() {
	// 52/16 = 3.25 lb, whose nearest tenths are as near: the one away from zero.
	// 3.25 · 0.45359237 = 1.4742 kg: International Yard and Pound Agreement 1959.
	m := 52 * units.Ounce
	fmt.Println(m.Format(units.InFeetInches, units.Ounce))
	fmt.Println(m.Format(units.InFeet, units.Pound/10))
	fmt.Println(m.Format(units.InInches, units.Ounce))
	fmt.Println(m.Format(units.InMetric, 10*units.Gram))
	// Output:
	// 3 lb 4 oz
	// 3.3 lb
	// 52 oz
	// 1.47 kg
}

func ExampleMass_MarshalText() {
	// By definition.
	b, err := (250 * units.Gram).MarshalText()
	fmt.Printf("%s, %v\n", b, err)
	// Output:
	// 250 g, <nil>
}

func ExampleMass_UnmarshalText() {
	// By the grammar in the package documentation.
	var m units.Mass
	err := m.UnmarshalText([]byte("3 lbs. 4 oz."))
	fmt.Println(m, err)
	// Output:
	// 3 lb 4 oz <nil>
}

func ExampleMass_In() {
	// 1 lb = 0.45359237 kg: International Yard and Pound Agreement 1959. 453.59237/16 = 28.349523125.
	fmt.Println(units.Pound.In(units.Kilogram), "kg")
	fmt.Println(units.Ounce.In(units.Gram), "g")
	// Output:
	// 0.45359237 kg
	// 28.349523125 g
}
