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

func ExampleTreeKind_String() {
	fmt.Println(sizing.PreLit)
	// Output: pre-lit
}

func ExampleTreeKind_MarshalText() {
	text, err := json.Marshal(sizing.Metal)
	fmt.Println(string(text), err)
	// Output: "metal" <nil>
}

func ExampleTreeKind_UnmarshalText() {
	var k sizing.TreeKind
	err := json.Unmarshal([]byte(`"plastic"`), &k)
	fmt.Println(err)
	// Output: sizing.TreeKind.UnmarshalText: text "plastic": unknown name: want cut, artificial, pre-lit or metal
}

func ExampleSetting_String() {
	fmt.Println(sizing.Public)
	// Output: public
}

func ExampleSetting_MarshalText() {
	text, err := json.Marshal(sizing.Home)
	fmt.Println(string(text), err)
	// Output: "home" <nil>
}

func ExampleSetting_UnmarshalText() {
	var s sizing.Setting
	err := json.Unmarshal([]byte(`"public"`), &s)
	fmt.Println(s == sizing.Public, err)
	// Output: true <nil>
}

func ExampleWay_String() {
	fmt.Println(sizing.ByShape)
	// Output: shape
}

func ExampleWay_MarshalText() {
	text, err := json.Marshal(sizing.ByRule)
	fmt.Println(string(text), err)
	// Output: "rule" <nil>
}

func ExampleWay_UnmarshalText() {
	var w sizing.Way
	err := json.Unmarshal([]byte(`"auto"`), &w)
	fmt.Println(w == sizing.Auto, err)
	// Output: true <nil>
}
