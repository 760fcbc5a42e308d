package main

import (
	"database/sql"
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Each type that has a text form goes into a column of SQLite and comes back, by its Value and
// its Scan. The examples print what the column holds, and what is read from it.

// stored puts a value in a column of text and prints what is there and what comes back.
func stored[T any](value T) {
	text, back, err := throughColumn(value)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%q is read as %v\n", text, back)
}

// throughColumn returns the text in the column, and what is read from it.
func throughColumn[T any](value T) (text string, back T, err error) {
	db, err := sql.Open("sqlite", ":memory:")
	if err != nil {
		return "", back, err
	}
	defer db.Close()
	db.SetMaxOpenConns(1) // each connection to :memory: is a database of its own
	if _, err = db.Exec(`CREATE TABLE kept (value TEXT)`); err != nil {
		return "", back, err
	}
	if _, err = db.Exec(`INSERT INTO kept (value) VALUES (?)`, value); err != nil {
		return "", back, err
	}
	if err = db.QueryRow(`SELECT value FROM kept WHERE value = ?`, value).Scan(&text); err != nil {
		return "", back, err
	}
	return text, back, db.QueryRow(`SELECT value FROM kept`).Scan(&back)
}

func Example_length() {
	var shelf units.Length = 5*units.Foot + 4*units.Inch
	stored(shelf)
	// Output: "5 ft 4 in" is read as 5 ft 4 in
}

// By hand: 52 sq ft and half of one are 52 sq ft 72 sq in.
func Example_area() {
	var surface units.Area = 105 * units.SquareFoot / 2
	stored(surface)
	// Output: "52 sq ft 72 sq in" is read as 52 sq ft 72 sq in
}

func Example_mass() {
	var carton units.Mass = 3*units.Pound + 4*units.Ounce
	stored(carton)
	// Output: "3 lb 4 oz" is read as 3 lb 4 oz
}

func Example_power() {
	var draw units.Power = 4800 * units.Milliwatt
	stored(draw)
	// Output: "4.8 W" is read as 4.8 W
}

func Example_style() {
	var style units.Style = units.InMetric
	stored(style)
	// Output: "metric" is read as metric
}

// CSS Color Module Level 4: crimson is #dc143c.
func Example_color() {
	var crimson palette.Color = units.Must(palette.ParseColor("crimson"))
	stored(crimson)
	// Output: "#dc143c" is read as #dc143c
}

func Example_finish() {
	var finish palette.Finish = palette.Matte | palette.Glitter
	stored(finish)
	// Output: "matte+glitter" is read as matte+glitter
}

func Example_swatch() {
	var barn palette.Swatch = units.Must(palette.ParseSwatch("barn red=#7c0a02:shiny"))
	stored(barn)
	// Output: "barn red=#7c0a02:shiny" is read as barn red=#7c0a02:shiny
}

func Example_palette() {
	var colors palette.Palette = units.Must(palette.CommonPractice().ParsePalette("crimson, gold:metal, ivory"))
	stored(colors)
	// Output: "crimson,gold:metal,ivory" is read as crimson,gold:metal,ivory
}

func Example_view() {
	var view palette.View = palette.WarmDeutan
	stored(view)
	// Output: "warm deutan" is read as warm deutan
}

func Example_taper() {
	var taper sizing.Taper = sizing.Slim
	stored(taper)
	// Output: "slim" is read as slim
}

func Example_treeKind() {
	var kind sizing.TreeKind = sizing.PreLit
	stored(kind)
	// Output: "pre-lit" is read as pre-lit
}

func Example_exposure() {
	var seen sizing.Exposure = 200 * sizing.Degree
	stored(seen)
	// Output: "200 degrees" is read as 200 degrees
}

func Example_kind() {
	var kind shopping.Kind = shopping.Ribbon
	stored(kind)
	// Output: "ribbon" is read as ribbon
}

func Example_item() {
	var stars shopping.Item = units.Must(shopping.ParseItem("crimson ornaments, star, 3 in"))
	stored(stars)
	// Output: "crimson ornaments, star, 3 in" is read as crimson ornaments, star, 3 in
}

func Example_quantity() {
	var strands shopping.Quantity = shopping.Quantity{Pieces: 4, Length: 9 * units.Foot}
	stored(strands)
	// Output: "4 of 9 ft" is read as 4 of 9 ft
}

func Example_angle() {
	var azimuth placement.Angle = 45 * placement.Degree / 2
	stored(azimuth)
	// Output: "22.5°" is read as 22.5°
}

func Example_date() {
	var opening labor.Date = units.Must(labor.ParseDate("2026-11-28"))
	stored(opening)
	// Output: "2026-11-28" is read as 2026-11-28
}

func Example_look() {
	var look mantel.Look = mantel.AsymmetricalRight
	stored(look)
	// Output: "asymmetrical right" is read as asymmetrical right
}

// Packs left: none are 0 in the column, which in Go is a shelf that is sold out, and not known is NULL.
func Example_shelf() {
	var left shopping.Shelf = shopping.SoldOut
	stored(left)
	stored(shopping.Shelf(12))
	db, err := open()
	if err != nil {
		fmt.Println(err)
		return
	}
	defer db.Close()
	err = db.QueryRow(`SELECT NULL`).Scan(&left)
	fmt.Println(left, err)
	// Output:
	// "0" is read as -1
	// "12" is read as 12
	// 0 <nil>
}

// A column that may be empty is read with sql.Null of the same type.
func Example_null() {
	stored(sql.Null[units.Length]{V: 9 * units.Foot, Valid: true})
	db, err := open()
	if err != nil {
		fmt.Println(err)
		return
	}
	defer db.Close()
	var size sql.Null[units.Length]
	err = db.QueryRow(`SELECT NULL`).Scan(&size)
	fmt.Println(size.Valid, err)
	// Output:
	// "9 ft" is read as {9 ft true}
	// false <nil>
}

// Every type that has a Scan has an example here.
func TestEachTextForm(t *testing.T) {
	names, err := os.ReadFile("../../.ci/exported.txt")
	if err != nil {
		t.Fatal(err)
	}
	source, err := os.ReadFile("example_test.go")
	if err != nil {
		t.Fatal(err)
	}
	scans := regexp.MustCompile(`(?m)^(\w+) method \(\*(\w+)\)\.Scan `).FindAllStringSubmatch(string(names), -1)
	if len(scans) < 20 {
		t.Errorf("%d types with a Scan", len(scans))
	}
	for _, s := range scans {
		if declared := " " + s[1] + "." + s[2] + " = "; !strings.Contains(string(source), declared) {
			t.Errorf("no example declares a variable of%s", strings.TrimSuffix(declared, "= "))
		}
	}
}
