package sizing_test

import (
	"encoding/json"
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/units"
)

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
func ExampleRules_Amounts_json() {
	amounts, err := sizing.CommonPractice().Amounts(sizing.Tree{Height: 9 * units.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := json.Marshal(amounts)
	fmt.Println(string(text), err)
	// Output: {"ornaments":81,"garland":"81 ft","ribbon":"81 ft","picks":27,"lights":900} <nil>
}
