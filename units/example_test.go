package units_test

import (
	"bufio"
	"context"
	"database/sql"
	"database/sql/driver"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"strings"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// The forms that are read; the package documentation shows this table.
func Example_forms() {
	// 1 ft = 12 in and 1 yd = 3 ft; 7 ft 6 in = 2.286 m (International Yard and Pound Agreement 1959).
	for _, s := range []string{
		"7 ft 6 in", "7ft6in", `7'6"`, `7'-6"`, "7.5 ft", "7½ ft", "7-1/2 in", "90in",
		"2 yd 1 ft", "-7 ft 6 in", "2.3 m", "5 um",
	} {
		fmt.Printf("%-16s %v\n", s, units.Must(units.ParseLength(s)))
	}
	for _, s := range []string{"12 sq ft", "12 sqft 72 sqin"} {
		fmt.Printf("%-16s %v\n", s, units.Must(units.ParseArea(s)))
	}
	for _, s := range []string{"3 lb 4 oz", "3¼ pounds"} {
		fmt.Printf("%-16s %v\n", s, units.Must(units.ParseMass(s)))
	}
	for _, s := range []string{"1.5 kW"} {
		fmt.Printf("%-16s %v\n", s, units.Must(units.ParsePower(s)))
	}
	// Output:
	// 7 ft 6 in        7 ft 6 in
	// 7ft6in           7 ft 6 in
	// 7'6"             7 ft 6 in
	// 7'-6"            7 ft 6 in
	// 7.5 ft           7 ft 6 in
	// 7½ ft            7 ft 6 in
	// 7-1/2 in         7 1/2 in
	// 90in             7 ft 6 in
	// 2 yd 1 ft        7 ft
	// -7 ft 6 in       -7 ft 6 in
	// 2.3 m            2.3 m
	// 5 um             0.005 mm
	// 12 sq ft         12 sq ft
	// 12 sqft 72 sqin  12 sq ft 72 sq in
	// 3 lb 4 oz        3 lb 4 oz
	// 3¼ pounds        3 lb 4 oz
	// 1.5 kW           1500 W
}

// What is refused, and the error to match; the package documentation shows this table.
func Example_refusals() {
	// The grammar in the package documentation.
	for _, s := range []string{
		"", "7", "7'6", "7 furlongs", "7 ft -6 in", "7,5 ft", "1e3 ft", "6 in 7 ft", "7 ft 14 in",
		"7.5 ft 2 in", "1/0 ft", "9999999999 m", strings.Repeat("7", 65),
	} {
		_, err := units.ParseLength(s)
		if len(s) > 64 {
			s = s[:4] + "..." + s[61:]
		}
		fmt.Printf("%-14q %v\n", s, errors.Unwrap(err))
	}
	// Output:
	// ""             empty
	// "7"            no unit
	// "7'6"          no unit
	// "7 furlongs"   unknown unit
	// "7 ft -6 in"   misplaced sign
	// "7,5 ft"       comma
	// "1e3 ft"       exponent
	// "6 in 7 ft"    units out of order
	// "7 ft 14 in"   part too large
	// "7.5 ft 2 in"  not understood
	// "1/0 ft"       not understood
	// "9999999999 m" out of range
	// "7777...7777"  too long
}

// printRow prints what a is in units of b, to ten places, with = if twenty places are no more exact.
func printRow[Q units.Quantity](name string, a, b Q, many string) {
	d, _ := units.Decimal(a, b, 10)
	more, _ := units.Decimal(a, b, 20)
	sign := "≈"
	if d.Equal(more) {
		sign = "="
	}
	fmt.Printf("1 %-5s %s %13s %s\n", name, sign, d, many)
}

// The conversions, rounded to ten places where they are not exact; the package documentation shows this table.
func Example_conversions() {
	// International Yard and Pound Agreement 1959: 1 yd = 0.9144 m, 1 lb = 0.45359237 kg. All others follow from these;
	// NIST SP 811, Appendix B, has the same factors to seven digits (from memory).
	printRow("in", units.Inch, units.Centimeter, "cm")
	printRow("ft", units.Foot, units.Inch, "in")
	printRow("ft", units.Foot, units.Centimeter, "cm")
	printRow("yd", units.Yard, units.Foot, "ft")
	printRow("yd", units.Yard, units.Meter, "m")
	printRow("cm", units.Centimeter, units.Inch, "in")
	printRow("m", units.Meter, units.Foot, "ft")
	printRow("m", units.Meter, units.Yard, "yd")
	printRow("sq in", units.SquareInch, units.SquareMeter/10_000, "cm²")
	printRow("sq ft", units.SquareFoot, units.SquareInch, "sq in")
	printRow("sq ft", units.SquareFoot, units.SquareMeter, "m²")
	printRow("sq yd", 9*units.SquareFoot, units.SquareMeter, "m²")
	printRow("m²", units.SquareMeter, units.SquareFoot, "sq ft")
	printRow("oz", units.Ounce, units.Gram, "g")
	printRow("lb", units.Pound, units.Ounce, "oz")
	printRow("lb", units.Pound, units.Kilogram, "kg")
	printRow("kg", units.Kilogram, units.Pound, "lb")
	// Output:
	// 1 in    =          2.54 cm
	// 1 ft    =            12 in
	// 1 ft    =         30.48 cm
	// 1 yd    =             3 ft
	// 1 yd    =        0.9144 m
	// 1 cm    ≈  0.3937007874 in
	// 1 m     ≈   3.280839895 ft
	// 1 m     ≈  1.0936132983 yd
	// 1 sq in =        6.4516 cm²
	// 1 sq ft =           144 sq in
	// 1 sq ft =    0.09290304 m²
	// 1 sq yd =    0.83612736 m²
	// 1 m²    ≈ 10.7639104167 sq ft
	// 1 oz    =  28.349523125 g
	// 1 lb    =            16 oz
	// 1 lb    =    0.45359237 kg
	// 1 kg    ≈  2.2046226218 lb
}

// A command's flag is a length, with a default and with its error.
func Example_flag() {
	// 64 in = 5 · 12 in + 4 in.
	flags := flag.NewFlagSet("plan", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	var mantel units.Length
	flags.TextVar(&mantel, "mantel", 5*units.Foot, "length of the mantel")

	fmt.Println(flags.Parse(nil), mantel)
	fmt.Println(flags.Parse([]string{"-mantel", "64 in"}), mantel)
	fmt.Println(flags.Parse([]string{"-mantel", "64"}))
	// Output:
	// <nil> 5 ft
	// <nil> 5 ft 4 in
	// invalid value "64" for flag -mantel: units.ParseLength: text "64": no unit: want a number and a unit, such as 7 ft 6 in
}

// JSON holds the text, since a bare number would not say its unit.
func Example_json() {
	// 108 in = 9 ft; 20 lb = 9.0718474 kg.
	type tree struct {
		Room   string       `json:"room"`
		Height units.Length `json:"height"`
		Weight units.Mass   `json:"weight"`
		Lights units.Power  `json:"lights"`
	}
	var t tree
	err := json.Unmarshal([]byte(`{"room": "ticket hall", "height": "108 in", "weight": "20 lb", "lights": "0.04 kW"}`), &t)
	fmt.Println(t.Height, t.Weight, t.Lights, err)
	b, err := json.Marshal(t)
	fmt.Println(string(b), err)
	fmt.Println(json.Unmarshal([]byte(`{"height": 108}`), &t))
	// Output:
	// 9 ft 20 lb 40 W <nil>
	// {"room":"ticket hall","height":"9 ft","weight":"20 lb","lights":"40 W"} <nil>
	// json: cannot unmarshal number into Go struct field tree.height of type units.Length
}

// A file of settings for the environment, one NAME=value a line.
func Example_env() {
	// By the grammar in the package documentation.
	const file = `
TICKET_HALL_TREE=9 ft
WAITING_ROOM_TREE=4'6"
TEA_ROOM_MANTEL=64in
`
	lengths := map[string]units.Length{}
	lines := bufio.NewScanner(strings.NewReader(file))
	for lines.Scan() {
		name, value, found := strings.Cut(lines.Text(), "=")
		if !found {
			continue
		}
		l, err := units.ParseLength(value)
		if err != nil {
			fmt.Println(name, err)
			return
		}
		lengths[name] = l
	}
	fmt.Println(lengths["TICKET_HALL_TREE"])
	fmt.Println(lengths["WAITING_ROOM_TREE"])
	fmt.Println(lengths["TEA_ROOM_MANTEL"])
	// Output:
	// 9 ft
	// 4 ft 6 in
	// 5 ft 4 in
}

// A database column of 64-bit whole numbers holds a length exactly, in nanometers, and compares and sums it right.
// Here the driver is a stand-in that keeps one row; with any other the calls are the same.
func Example_sql() {
	// 9 ft = 9 · 304,800,000 nm.
	db := sql.OpenDB(&oneRow{})
	defer db.Close()

	_, err := db.Exec("INSERT INTO trees (room, height) VALUES (?, ?)", "ticket hall", 9*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	var room string
	var height units.Length
	err = db.QueryRow("SELECT room, height FROM trees").Scan(&room, &height)
	fmt.Println(room, height, err)

	var text string
	err = db.QueryRow("SELECT room, height FROM trees").Scan(&room, &text)
	fmt.Println(room, text, err)
	// Output:
	// ticket hall 9 ft <nil>
	// ticket hall 9 ft <nil>
}

// oneRow is a driver whose database holds the row that was inserted last.
type oneRow struct{ row []driver.Value }

func (d *oneRow) Connect(context.Context) (driver.Conn, error) { return d, nil }
func (d *oneRow) Driver() driver.Driver                        { return nil }
func (d *oneRow) Prepare(query string) (driver.Stmt, error)    { return &oneRowStmt{d, query}, nil }
func (d *oneRow) Close() error                                 { return nil }
func (d *oneRow) Begin() (driver.Tx, error)                    { return nil, errors.ErrUnsupported }

type oneRowStmt struct {
	db    *oneRow
	query string
}

func (s *oneRowStmt) Close() error  { return nil }
func (s *oneRowStmt) NumInput() int { return strings.Count(s.query, "?") }
func (s *oneRowStmt) Exec(args []driver.Value) (driver.Result, error) {
	s.db.row = args
	return driver.RowsAffected(1), nil
}

func (s *oneRowStmt) Query([]driver.Value) (driver.Rows, error) { return &oneRowRows{s.db.row}, nil }

type oneRowRows struct{ row []driver.Value }

func (r *oneRowRows) Columns() []string { return []string{"room", "height_nm"} }
func (r *oneRowRows) Close() error      { return nil }
func (r *oneRowRows) Next(dest []driver.Value) error {
	if r.row == nil {
		return io.EOF
	}
	copy(dest, r.row)
	r.row = nil
	return nil
}

func ExampleFromFloat() {
	// 7.5 ft = 7 ft 6 in. 0.1 kg = 100 g. NaN is no length.
	height, err := units.FromFloat(7.5, units.Foot)
	fmt.Println(height, err)
	weight, err := units.FromFloat(0.1, units.Kilogram)
	fmt.Println(weight, err)
	_, err = units.FromFloat(math.NaN(), units.Foot)
	fmt.Println(err)
	// Output:
	// 7 ft 6 in <nil>
	// 100 g <nil>
	// units.FromFloat: value "NaN": out of range: want -9223372036.854775808 m to 9223372036.854775807 m in that unit
}

func ExampleFromDecimal() {
	// 67.5 ft = 67 ft 6 in. 10¹⁰ yd = 9.144·10⁹ m fits, 10¹¹ yd does not.
	garland, err := units.FromDecimal(decimal.RequireFromString("67.5"), units.Foot)
	fmt.Println(garland, err)
	_, err = units.FromDecimal(decimal.New(1, 11), units.Yard)
	fmt.Println(err)
	// Output:
	// 67 ft 6 in <nil>
	// units.FromDecimal: value "1e11": out of range: want -9223372036.854775808 m to 9223372036.854775807 m in that unit
}

func ExampleStyle() {
	// 64 in = 5.333 ft = 1.778 yd = 162.56 cm: 1 in = 2.54 cm (International Yard and Pound Agreement 1959).
	mantel := 64 * units.Inch
	for _, style := range []units.Style{units.InFeetInches, units.InFeet, units.InInches, units.InYards} {
		fmt.Println(mantel.Format(style, units.Inch))
	}
	fmt.Println(mantel.Format(units.InMetric, units.Centimeter))
	// Output:
	// 5 ft 4 in
	// 5.33 ft
	// 64 in
	// 1.78 yd
	// 1.63 m
}

func ExampleError() {
	// By the grammar in the package documentation.
	_, err := units.ParseLength("nine feet")
	var e *units.Error
	if errors.As(err, &e) {
		fmt.Printf("%s was given %q as %s\n", e.Func, e.Value, e.Field)
		fmt.Println("want", e.Want)
	}
	// Output:
	// units.ParseLength was given "nine feet" as text
	// want a number and a unit, such as 7 ft 6 in
}

func ExampleError_Error() {
	// By the grammar in the package documentation.
	_, err := units.ParsePower("100")
	fmt.Println(err.Error())
	// Output:
	// units.ParsePower: text "100": no unit: want a number and a unit, such as 175 W
}

func ExampleError_Unwrap() {
	// By the grammar in the package documentation.
	_, err := units.ParseLength("9")
	fmt.Println(errors.Is(err, units.ErrSyntax), errors.Is(err, units.ErrRange))
	// Output:
	// true false
}
