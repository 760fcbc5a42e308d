package sizing_test

import (
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Common practice, no published source: the rules on a 7 ft tree.
func ExampleCommonPractice() {
	r := sizing.CommonPractice()
	height := 7 * units.Foot

	types, _ := r.Types(height)
	each, _ := r.Each(height)
	picks, _ := r.Supply(shopping.Pick, height)
	garland, _ := r.Supply(shopping.Garland, height)
	fmt.Println(types, "types,", each, "of each")
	fmt.Println(picks, "picks, or", garland, "of garland")
	// Output:
	// 7 types, 5 to 9 of each
	// 21 picks, or 63 ft of garland
}

// Common practice: a part foot adds no type.
func ExampleRules_Types() {
	types, err := sizing.CommonPractice().Types(7*units.Foot + 6*units.Inch)
	fmt.Println(types, err)
	// Output: 7 <nil>
}

// Common practice: large ornaments by the low end, small ones by the high end.
func ExampleRules_Each() {
	each, err := sizing.CommonPractice().Each(9 * units.Foot)
	fmt.Println(each, err)
	// Output: 7 to 11 <nil>
}

// Common practice: 3 for each foot of 7.5 ft is 22.5, so 23; 9 ft for each foot. From
// memory: 100 lights for each foot, or a shop's own 150 for a bright tree.
func ExampleRules_Supply() {
	r, height := sizing.CommonPractice(), 7*units.Foot+6*units.Inch
	picks, _ := r.Supply(shopping.Pick, height)
	garland, _ := r.Supply(shopping.Garland, height)
	lights, _ := r.Supply(shopping.Light, height)
	r.PerFoot[shopping.Light].Pieces = 150
	bright, err := r.Supply(shopping.Light, height)
	fmt.Println(picks.Pieces, garland.Length, lights.Pieces, bright.Pieces, err)
	// Output: 23 67 ft 6 in 750 1125 <nil>
}

// Common practice: the 9 ft tree of a station's ticket hall.
func ExampleComparison_Needs() {
	c, err := sizing.CommonPractice().Compare(sizing.CommonLook(), sizing.Tree{Height: 9 * units.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	needs, err := c.Needs(units.InFeetInches, shopping.Pick)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range needs {
		fmt.Printf("%v %s: %s (%s)\n", n.Quantity, n.Item, n.Basis, n.Source)
	}
	// Output:
	// 81 ornaments: 9 types, 1 for each whole foot of 9 ft; 9 of each, and 7 to 11 will do (common practice)
	// 27 picks: 3 for each foot of 9 ft (common practice)
	// 900 lights: 100 for each foot of 9 ft (common practice)
}

// The trade heights, from memory: a tree of 210 cm is sold as one of 7 ft.
func ExampleTradeHeight() {
	for _, height := range []units.Length{210 * units.Centimeter, 7*units.Foot - units.Inch/16, 7*units.Foot + 6*units.Inch} {
		trade, err := sizing.TradeHeight(height)
		fmt.Println(trade, err)
	}
	// Output:
	// 7 ft <nil>
	// 7 ft <nil>
	// 7 ft <nil>
}

// Geometry. By hand: the radius is 2 ft 5 1/4 in, and acos(2.4375/10) is 75.9 degrees,
// so that a spread of 90 degrees from a corner shows 241.8.
func ExampleTree_Seen() {
	tree := sizing.Tree{Height: 7*units.Foot + 6*units.Inch}
	seen, err := tree.Seen(90, 10*units.Foot)
	degrees, _ := seen.Degrees()
	fmt.Printf("%.1f degrees %v\n", degrees, err)
	// Output: 241.8 degrees <nil>
}

// International Fire Code section 806 and NFPA 1 section 10.13, as quoted.
func ExampleTree_Cautions() {
	tree := sizing.Tree{Height: 9 * units.Foot, Kind: sizing.Artificial, Public: true}
	cautions, err := tree.Cautions(units.InFeetInches)
	for _, c := range cautions {
		fmt.Println(c)
	}
	fmt.Println(err)
	// Output:
	// keep exits, the ways to them and their signs clear of the tree and its cords (NFPA 1 section 10.13 (2015), quoted)
	// the label of the tree and of its decorations must say flame resistant (NFPA 1 section 10.13 (2015), quoted)
	// keep the tree at least 3 ft from fire, candles, radiators and vents (NFPA and ESFI holiday safety tips, quoted)
	// tie the tree off to the wall or the ceiling (common practice, from memory)
	// ask the fire marshal before the tree is set up; editions and local rules differ (common practice)
	// <nil>
}
