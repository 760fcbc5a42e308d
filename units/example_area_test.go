package units_test

import (
	"fmt"

	"example.com/fircone/units"
)

func ExampleAreaOf() {
	// 64 in · 36 in = 2304 sq in = 16 sq ft. 2 m · 1.5 m = 3 m².
	wall, err := units.AreaOf(64*units.Inch, 3*units.Foot)
	fmt.Println(wall, err)
	sheet, err := units.AreaOf(2*units.Meter, 150*units.Centimeter)
	fmt.Println(sheet.In(units.SquareMeter), "m²,", err)
	// Output:
	// 16 sq ft <nil>
	// 3 m², <nil>
}

func ExampleParseArea() {
	// 1 sq ft = 144 sq in, 1 sq yd = 9 sq ft.
	for _, s := range []string{"12 sq ft", "12.5 ft²", "2 square yards", "2.5 m2"} {
		a, err := units.ParseArea(s)
		fmt.Println(a, err)
	}
	_, err := units.ParseArea("12 ft")
	fmt.Println(err)
	// Output:
	// 12 sq ft <nil>
	// 12 sq ft 72 sq in <nil>
	// 18 sq ft <nil>
	// 2.5 m² <nil>
	// units.ParseArea: text "12 ft": unknown unit: want one of sq yd, sq ft, sq in, sq m, sq cm, sq mm, sq um
}

func ExampleArea_String() {
	// 1800 = 12 · 144 + 72. 2.5 m² is 3875.0077... sq in, so it is not printed in them.
	fmt.Println(1800 * units.SquareInch)
	fmt.Println(5 * units.SquareMeter / 2)
	fmt.Println(units.Area(0))
	// Output:
	// 12 sq ft 72 sq in
	// 2.5 m²
	// 0 sq ft
}

func ExampleArea_Format() {
	// 12.5/9 = 1.3889 sq yd. 12.5 · 0.09290304 = 1.1613 m²: 0.3048² = 0.09290304.
	a := 1800 * units.SquareInch
	fmt.Println(a.Format(units.InFeet, units.SquareFoot/10))
	fmt.Println(a.Format(units.InFeetInches, units.SquareInch))
	fmt.Println(a.Format(units.InYards, 9*units.SquareFoot/100))
	fmt.Println(a.Format(units.InMetric, units.SquareMeter/100))
	// Output:
	// 12.5 sq ft
	// 12 sq ft 72 sq in
	// 1.39 sq yd
	// 1.16 m²
}

func ExampleArea_MarshalText() {
	// By definition.
	b, err := (12 * units.SquareFoot).MarshalText()
	fmt.Printf("%s, %v\n", b, err)
	// Output:
	// 12 sq ft, <nil>
}

func ExampleArea_UnmarshalText() {
	// By the grammar in the package documentation.
	var a units.Area
	err := a.UnmarshalText([]byte("16 square feet"))
	fmt.Println(a, err)
	// Output:
	// 16 sq ft <nil>
}

func ExampleArea_In() {
	// 12/9 = 4/3. 12 · 0.3048² = 12 · 0.09290304 = 1.11483648.
	a := 12 * units.SquareFoot
	fmt.Println(a.In(9*units.SquareFoot), "sq yd")
	fmt.Println(a.In(units.SquareMeter), "m²")
	// Output:
	// 1.3333333333333333 sq yd
	// 1.11483648 m²
}
