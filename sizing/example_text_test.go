package sizing_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/units"
)

// The named values go through JSON, flags and configuration files as their names.
func ExampleAccent_MarshalText() {
	text, err := json.Marshal(sizing.Ribbon)
	fmt.Println(string(text), err)
	// Output: "ribbon" <nil>
}

func ExampleAccent_UnmarshalText() {
	var a sizing.Accent
	err := json.Unmarshal([]byte(`"picks"`), &a)
	fmt.Println(a, err)
	// Output: picks <nil>
}

func ExampleAccent_String() {
	fmt.Println(sizing.Both.String(), sizing.Accent(9).String())
	// Output: both Accent(9)
}

func ExampleTaper_MarshalText() {
	text, err := json.Marshal(sizing.Pencil)
	fmt.Println(string(text), err)
	// Output: "pencil" <nil>
}

func ExampleTaper_UnmarshalText() {
	var t sizing.Taper
	err := json.Unmarshal([]byte(`"wide"`), &t)
	fmt.Println(err)
	// Output: sizing.ParseTaper: taper "wide": unknown name: want full, slim or pencil
}

func ExampleTaper_String() {
	fmt.Println(sizing.Full.String())
	// Output: full
}

// Ontario R.R.O. 1990, Reg. 377, names a candlestick taper.
func ExampleParseTaperGrade() {
	grade, err := sizing.ParseTaperGrade("Candlestick")
	fmt.Println(grade == sizing.Candlestick, err)
	// Output: true <nil>
}

func ExampleTaperGrade_MarshalText() {
	text, err := json.Marshal(sizing.Flared)
	fmt.Println(string(text), err)
	// Output: "flared" <nil>
}

func ExampleTaperGrade_UnmarshalText() {
	var g sizing.TaperGrade
	err := json.Unmarshal([]byte(`"normal"`), &g)
	fmt.Println(g == sizing.Normal, err)
	// Output: true <nil>
}

// Common practice, from memory: two thirds of the way round.
func ExampleExposure_Degrees() {
	degrees, err := sizing.AgainstWall.Degrees()
	fmt.Println(degrees, err)
	// Output: 240 <nil>
}

func ExampleExposure_MarshalText() {
	arc, _ := sizing.ArcDegrees(202.5)
	text, err := json.Marshal([]sizing.Exposure{sizing.InCorner, arc})
	fmt.Println(string(text), err)
	// Output: ["corner","202.5 degrees"] <nil>
}

func ExampleExposure_UnmarshalText() {
	var e sizing.Exposure
	err := json.Unmarshal([]byte(`"half"`), &e)
	fmt.Println(e == sizing.HalfTree, err)
	// Output: true <nil>
}

func ExampleExposure_String() {
	fmt.Println(sizing.AllRound.String())
	// Output: all round
}

// Results go through JSON too, lengths and areas as the texts that units reads.
func ExampleAmounts_json() {
	amounts, err := sizing.CommonPractice().Amounts(sizing.Tree{Height: 9 * units.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := json.Marshal(amounts)
	fmt.Println(string(text), err)
	// Output: {"ornaments":81,"garland":"81 ft","ribbon":"81 ft","picks":27,"lights":900} <nil>
}

func ExampleBand_String() {
	fmt.Println(sizing.Band{Min: 7, Max: 11}.String(), "or", sizing.Band{Min: 3, Max: 3}.String())
	// Output: 7 to 11 or 3
}

func ExampleError_Error() {
	err := &units.Error{Func: "sizing.Rules.Picks", Field: "height", Value: "6 in", Want: "1 ft to 100 ft", Err: units.ErrRange}
	fmt.Println(err.Error())
	// Output: sizing.Rules.Picks: height "6 in": out of range: want 1 ft to 100 ft
}

func ExampleError_Unwrap() {
	_, err := sizing.CommonPractice().Picks(6 * units.Inch)
	fmt.Println(errors.Is(err, units.ErrRange), errors.Is(err, units.ErrName))
	// Output: true false
}
