package units_test

import (
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"testing"

	"example.com/fircone/units"
)

func ExampleLength_Value() {
	v, err := (7*units.Foot + 6*units.Inch).Value()
	fmt.Printf("%T %v %v\n", v, v, err)
	// Output: string 7 ft 6 in <nil>
}

func ExampleLength_Scan() {
	var l units.Length
	err := l.Scan("64 in")
	fmt.Println(l, err)
	err = l.Scan(int64(25_400_000)) // a column of nanometers
	fmt.Println(l, err)
	err = l.Scan(64.0)
	fmt.Println(err)
	// Output:
	// 5 ft 4 in <nil>
	// 1 in <nil>
	// units.Length.Scan: src "float64": not understood: want text such as 7 ft 6 in, or a whole number of base units
}

func ExampleArea_Value() {
	v, err := (12 * units.SquareFoot).Value()
	fmt.Println(v, err)
	// Output: 12 sq ft <nil>
}

func ExampleArea_Scan() {
	var a units.Area
	err := a.Scan([]byte("2 m2"))
	fmt.Println(a, err)
	// Output: 2 m² <nil>
}

func ExampleMass_Value() {
	v, err := (3*units.Pound + 4*units.Ounce).Value()
	fmt.Println(v, err)
	// Output: 3 lb 4 oz <nil>
}

func ExampleMass_Scan() {
	var m units.Mass
	err := m.Scan("8 oz")
	fmt.Println(m, err)
	// Output: 8 oz <nil>
}

func ExamplePower_Value() {
	v, err := (5 * units.Watt).Value()
	fmt.Println(v, err)
	// Output: 5 W <nil>
}

func ExamplePower_Scan() {
	var p units.Power
	err := p.Scan("1.5 kW")
	fmt.Println(p, err)
	// Output: 1500 W <nil>
}

func ExampleStyle_Value() {
	v, err := units.InMetric.Value()
	fmt.Println(v, err)
	_, err = units.Style(9).Value()
	fmt.Println(err)
	// Output:
	// metric <nil>
	// units.Style.Value: style "Style(9)": unknown name: want feet and inches, feet, inches, yards or metric
}

func ExampleStyle_Scan() {
	var s units.Style
	err := s.Scan("Feet")
	fmt.Println(s, err)
	err = s.Scan("cubits")
	fmt.Println(err)
	// Output:
	// feet <nil>
	// units.Style.Scan: src "cubits": unknown name: want feet and inches, feet, inches, yards or metric
}

// What is stored is read back, and what cannot be read leaves the value alone.
func TestSQL(t *testing.T) {
	length, area, mass, power := -7*units.Foot, 3*units.SquareInch, 5*units.Ounce, 40*units.Watt
	style := units.InYards
	for _, c := range []struct {
		value driver.Valuer
		back  sql.Scanner
	}{
		{length, new(units.Length)}, {area, new(units.Area)}, {mass, new(units.Mass)}, {power, new(units.Power)}, {style, new(units.Style)},
	} {
		stored, err := c.value.Value()
		if err != nil || c.back.Scan(stored) != nil || fmt.Sprint(c.back) == "" {
			t.Errorf("%T: %v, %v", c.value, stored, err)
		}
		got, err := c.back.(driver.Valuer).Value()
		if err != nil || got != stored {
			t.Errorf("%T: %v comes back as %v, %v", c.value, stored, got, err)
		}
		for _, bad := range []any{nil, 1.5, true, "7", []byte("x")} {
			err := c.back.Scan(bad)
			var e *units.Error
			if again, _ := c.back.(driver.Valuer).Value(); !errors.As(err, &e) || again != stored {
				t.Errorf("%T from %v: %v, and now %v", c.value, bad, err, again)
			}
		}
	}
}
