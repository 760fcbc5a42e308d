package sizing_test

import (
	"encoding/json"
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
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
	// Output: sizing.Taper.UnmarshalText: text "wide": unknown name: want full, slim or pencil
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
	text, err := json.Marshal([]sizing.Exposure{sizing.InCorner, 405 * sizing.Degree / 2})
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
func ExampleRules_Compare_json() {
	c, err := sizing.CommonPractice().Compare(sizing.CommonLook(), sizing.Tree{Height: 9 * units.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := json.Marshal(c.Rule)
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

func ExampleTaper_Value() {
	text, err := sizing.Slim.Value()
	fmt.Println(text, err)
	// Output: slim <nil>
}

func ExampleTaper_Scan() {
	var t sizing.Taper
	err := t.Scan("slim")
	fmt.Println(t == sizing.Slim, err)
	// Output: true <nil>
}

func ExampleTreeKind_Value() {
	text, err := sizing.Cut.Value()
	fmt.Println(text, err)
	// Output: cut <nil>
}

func ExampleTreeKind_Scan() {
	var k sizing.TreeKind
	err := k.Scan("cut")
	fmt.Println(k == sizing.Cut, err)
	// Output: true <nil>
}

func ExampleExposure_Value() {
	text, err := sizing.AgainstWall.Value()
	fmt.Println(text, err)
	// Output: wall <nil>
}

func ExampleExposure_Scan() {
	var e sizing.Exposure
	err := e.Scan("wall")
	fmt.Println(e == sizing.AgainstWall, err)
	// Output: true <nil>
}

// Common practice, by hand: 9 types of 9 for 9 ft, and 9 ft of garland for each foot. What a
// basis says in English is in the fields too, so that an app says it in its own language, and
// cautions by their codes.
func ExampleComparison_Needs_language() {
	c, err := sizing.CommonPractice().Compare(sizing.CommonLook(), sizing.Tree{Height: 9 * units.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	needs, err := c.Needs(units.InFeetInches, shopping.Garland)
	if err != nil {
		fmt.Println(err)
		return
	}
	names := map[shopping.Kind]string{shopping.Ornament: "bolas", shopping.Garland: "guirnalda", shopping.Light: "luces"}
	height := c.Tree.Height
	for _, n := range needs {
		kind := n.Item.Kind
		if kind == shopping.Ornament {
			fmt.Printf("%s: %v, %d tipos\n", names[kind], n.Quantity, c.Rules.TypesPerFoot*int(height/units.Foot))
			continue
		}
		fmt.Printf("%s: %v, %v por pie de %v\n", names[kind], n.Quantity, c.Rules.PerFoot[kind], height)
	}
	cautions, err := c.Tree.Cautions(units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	spanish := map[string]string{"water": "riegue el árbol todos los días", "tie": "sujete el árbol a la pared o al techo"}
	for _, c := range cautions {
		if text, ok := spanish[c.Code]; ok {
			fmt.Printf("%s (%s)\n", text, c.Source)
		}
	}
	// Output:
	// bolas: 81, 9 tipos
	// guirnalda: 81 ft, 9 ft por pie de 9 ft
	// luces: 900, 100 por pie de 9 ft
	// riegue el árbol todos los días (Washington State University, Chastagner, 2012, read)
	// sujete el árbol a la pared o al techo (common practice, from memory)
}
