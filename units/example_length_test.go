package units_test

import (
	"fmt"

	"example.com/fircone/units"
)

func ExampleParseLength() {
	// 1 ft = 0.3048 m: International Yard and Pound Agreement 1959. 9 · 0.3048 = 2.7432, 4.5 · 0.3048 = 1.3716, 64 · 0.0254 = 1.6256.
	for _, s := range []string{"9 ft", "4 ft 6 in", "5'4\"", "7½ ft", "2 yd 1 ft", "230 cm"} {
		l, err := units.ParseLength(s)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s is %v, %v m\n", s, l, l.In(units.Meter))
	}
	_, err := units.ParseLength("9")
	fmt.Println(err)
	// Output:
	// 9 ft is 9 ft, 2.7432 m
	// 4 ft 6 in is 4 ft 6 in, 1.3716 m
	// 5'4" is 5 ft 4 in, 1.6256 m
	// 7½ ft is 7 ft 6 in, 2.286 m
	// 2 yd 1 ft is 7 ft, 2.1336 m
	// 230 cm is 2.3 m, 2.3 m
	// units.ParseLength: text "9": no unit: want a number and a unit, such as 7 ft 6 in
}

func ExampleMust() {
	// 64 in = 5 · 12 in + 4 in.
	mantel := units.Must(units.ParseLength("64 in"))
	fmt.Println(mantel)
	// Output:
	// 5 ft 4 in
}

func ExampleLength() {
	// 9 ft + 4 ft 6 in = 13 ft 6 in.
	hall := 9 * units.Foot
	waiting := 4*units.Foot + 6*units.Inch
	fmt.Println(hall, "and", waiting)
	fmt.Println("together", hall+waiting)
	fmt.Println("the waiting room's is half:", waiting == hall/2)
	// Output:
	// 9 ft and 4 ft 6 in
	// together 13 ft 6 in
	// the waiting room's is half: true
}

func ExampleLength_String() {
	// 90 in = 7 · 12 in + 6 in. 2.3 m is 90.551... in, so it is not printed in inches.
	fmt.Println(90 * units.Inch)
	fmt.Println(-units.Inch / 2)
	fmt.Println(2300 * units.Millimeter)
	fmt.Println(units.Length(0))
	// Output:
	// 7 ft 6 in
	// -1/2 in
	// 2.3 m
	// 0 ft
}

func ExampleLength_Format() {
	// 1 in = 2.54 cm: International Yard and Pound Agreement 1959. 90 in = 228.6 cm;
	// 46 cm = 18.1102... in, and 18 1/8 in is its nearest sixteenth: 18.1102 · 16 = 289.76, so 290/16.
	l := 7*units.Foot + 6*units.Inch
	fmt.Println(l.Format(units.InFeetInches, units.Inch/16))
	fmt.Println(l.Format(units.InFeet, units.Inch))
	fmt.Println(l.Format(units.InInches, units.Inch/4))
	fmt.Println(l.Format(units.InYards, units.Inch))
	fmt.Println(l.Format(units.InMetric, units.Centimeter))
	drop := 46 * units.Centimeter
	fmt.Println(drop.Format(units.InFeetInches, units.Inch/16))
	fmt.Println(drop.Format(units.InFeetInches, units.Inch))
	// Output:
	// 7 ft 6 in
	// 7.5 ft
	// 90 in
	// 2.5 yd
	// 2.29 m
	// 1 ft 6 1/8 in
	// 1 ft 6 in
}

func ExampleLength_MarshalText() {
	// 64 in = 5 · 12 in + 4 in.
	b, err := (64 * units.Inch).MarshalText()
	fmt.Printf("%s, %v\n", b, err)
	// Output:
	// 5 ft 4 in, <nil>
}

func ExampleLength_UnmarshalText() {
	// By the grammar in the package documentation. On error the length stays as it was.
	var l units.Length
	err := l.UnmarshalText([]byte("4'6\""))
	fmt.Println(l, err)
	err = l.UnmarshalText([]byte("4'6"))
	fmt.Println(l, err)
	// Output:
	// 4 ft 6 in <nil>
	// 4 ft 6 in units.ParseLength: text "4'6": no unit: want a number and a unit, such as 7 ft 6 in or 7'6"
}

func ExampleLength_In() {
	// 1 ft = 30.48 cm: International Yard and Pound Agreement 1959. 7.5 · 30.48 = 228.6.
	l := 7*units.Foot + 6*units.Inch
	fmt.Println(l.In(units.Foot), "ft")
	fmt.Println(l.In(units.Centimeter), "cm")
	fmt.Println(l.In(6*units.Foot), "strands of 6 ft")
	// Output:
	// 7.5 ft
	// 228.6 cm
	// 1.25 strands of 6 ft
}

func ExampleDecimal() {
	// 1/0.3048 = 3.28083989501..., 1/0.0254 = 39.37...: International Yard and Pound Agreement 1959.
	// The tenth place of the first is a 0, which Decimal prints only if asked to.
	feet, err := units.Decimal(units.Meter, units.Foot, 10)
	fmt.Println(feet, "ft,", err)
	inches, err := units.Decimal(units.Meter, units.Inch, 0)
	fmt.Println(inches, "in,", err)
	_, err = units.Decimal(units.Meter, units.Foot, 100)
	fmt.Println(err)
	// Output:
	// 3.280839895 ft, <nil>
	// 39 in, <nil>
	// units.Decimal: places "100": out of range: want 0 to 64
}

func ExampleRound() {
	// 67 ft 7 in is 5 in short of 68 ft. Of two as near, the one away from zero.
	garland := 67*units.Foot + 7*units.Inch
	fmt.Println(units.Round(garland, units.Foot))
	fmt.Println(units.Round(18*units.Inch, units.Foot))
	fmt.Println(units.Round(-18*units.Inch, units.Foot))
	fmt.Println(units.Round(garland, 0))
	// Output:
	// 68 ft <nil>
	// 2 ft <nil>
	// -2 ft <nil>
	// 0 ft units.Round: step "0 ft": out of range: want a step above 0 ft
}

func ExampleCeil() {
	// 11 · 6 = 66 is short, so 12 · 6 = 72.
	garland := 67*units.Foot + 6*units.Inch
	fmt.Println(units.Ceil(garland, 6*units.Foot))
	// Output:
	// 72 ft <nil>
}

func ExampleFloor() {
	// Down, also below zero.
	height := 7*units.Foot + 6*units.Inch
	fmt.Println(units.Floor(height, units.Foot))
	fmt.Println(units.Floor(-height, units.Foot))
	// Output:
	// 7 ft <nil>
	// -8 ft <nil>
}

func ExampleStyle_String() {
	fmt.Println(units.InFeetInches, units.InMetric)
	// Output:
	// feet and inches metric
}

func ExampleStyle_MarshalText() {
	text, err := units.InYards.MarshalText()
	fmt.Println(string(text), err)
	// Output:
	// yards <nil>
}

func ExampleStyle_UnmarshalText() {
	var style units.Style
	err := style.UnmarshalText([]byte("Feet"))
	fmt.Println(style, err)
	// Output:
	// feet <nil>
}
