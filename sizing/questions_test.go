package sizing_test

import (
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// How many ornaments does a 9 ft tree take, and of how many types?
// Common practice: a type for each foot, the height less 2 to plus 2 of each.
func ExampleRules_Each_question() {
	rules, height := sizing.CommonPractice(), 9*units.Foot
	types, _ := rules.Types(height)
	each, _ := rules.Each(height)
	fmt.Println(types, "types,", each, "of each:", types*each.Min, "to", types*each.Max, "ornaments in all")
	// Output: 9 types, 7 to 11 of each: 63 to 99 ornaments in all
}

// How many picks does a 9 ft tree take in place of garland?
// Common practice: 3 for each foot.
func ExampleCommonPractice_question() {
	picks, _ := sizing.CommonPractice().Supply(shopping.Pick, 9*units.Foot)
	fmt.Println(picks.Pieces, "picks")
	// Output: 27 picks
}

// How much garland does a 7½ ft tree take?
// Common practice: 9 ft for each foot is 67.5 ft, and 67.5/6 is 11.25.
func ExampleRules_Supply_question() {
	need, _ := sizing.CommonPractice().Supply(shopping.Garland, 7*units.Foot+6*units.Inch)
	garland, strand := need.Length, 6*units.Foot
	fmt.Printf("%v: %d strands of %v\n", garland, (garland+strand-1)/strand, strand)
	// Output: 67 ft 6 in: 12 strands of 6 ft
}

// How much garland for a 6½ ft slim tree in a corner?
// By hand: the cone is 78 in high and 0.45 · 78 in = 35.1 in wide, its side
// π · 17.55 · √(17.55² + 78²) = 4408 sq in; half of it is seen, and one wrap each
// 10.16 in takes a little over 4408/2/10.16 in = 18 ft. Simpson's rule on the way
// to and fro gives 19 ft 10.2 in.
func ExampleCommonLook_question() {
	tree := sizing.Tree{
		Height:   6*units.Foot + 6*units.Inch,
		Taper:    sizing.Slim,
		Exposure: sizing.InCorner,
	}
	c, _ := sizing.CommonPractice().Compare(sizing.CommonLook(), tree)
	fmt.Println(c.Shape[shopping.Garland].Length, "of garland to match an ordinary tree; the rule of thumb would buy", c.Rule[shopping.Garland].Length)
	// Output: 19 ft 11 in of garland to match an ordinary tree; the rule of thumb would buy 58 ft 6 in
}

// How far off is the rule of thumb on a 12 ft tree?
// By hand: at the same taper the surface of a 12 ft tree is (12/7)² = 2.94 times
// that of a 7 ft one, where the rule asks for 12/7 = 1.71 times as much: 1.71
// times too little.
func ExampleRules_Compare_question() {
	c, _ := sizing.CommonPractice().Compare(sizing.CommonLook(), sizing.Tree{Height: 12 * units.Foot})
	fmt.Println(c)
	// Output:
	// ornaments: 144 of 4 in, 3 1/8 in and 2 in cover 4.1 % here; 4.1 % takes 144
	// garland or ribbon: 9 ft for each foot gives wraps 17 1/2 in apart here; 10 1/4 in apart takes 184 ft
	// picks: 3 for each foot gives 0.233 to the square foot here; 0.399 takes 62
	// lights: 100 for each foot gives 7.76 to the square foot here; 13.3 takes 2100
}

// I have 50 ft of garland for a 7 ft tree: how far apart do the wraps come?
// By hand: the side of a cone 84 in high and 54.6 in wide is 7576 sq in, and
// 7576 over 600 in is 12.6 in, half of it 6.3 in; the slant of the wraps adds a little.
func ExampleTree_Spacing_question() {
	tree := sizing.Tree{Height: 7 * units.Foot}
	around, _ := tree.Spacing(50 * units.Foot)
	tree.Exposure = sizing.InCorner
	corner, _ := tree.Spacing(50 * units.Foot)
	fmt.Println(around.Format(units.InInches, units.Inch/4), "apart, in a corner", corner.Format(units.InInches, units.Inch/4))
	// Output: 13 in apart, in a corner 6 1/2 in
}

// Which sizes of ball for a 9 ft tree with 81 of them, and how many of each?
// By hand: 4, 3 and 2 in, the nearest that shops stock; a fifth of 81 is 16, three
// tenths 24.
func ExampleRules_Mix_question() {
	mix, _ := sizing.CommonPractice().Mix(sizing.Tree{Height: 9 * units.Foot}, 81)
	for _, m := range mix {
		fmt.Println(m.Quantity.Pieces, "of", m.Item.Size.Format(units.InInches, units.Inch/8))
	}
	// Output:
	// 16 of 4 in
	// 24 of 3 1/8 in
	// 41 of 2 in
}

// Which is the tallest tree under a 9 ft ceiling?
// Clemson Cooperative Extension, Selecting a Christmas Tree: at least 1 ft less.
func ExampleRoom_Fit_question() {
	fit, _ := sizing.Room{Ceiling: 9 * units.Foot}.Fit(sizing.Tree{Height: 8*units.Foot + 6*units.Inch})
	fmt.Println("8 ft 6 in is", fit.Verdict+": the tallest is", fit.Tallest)
	// Output: 8 ft 6 in is tight: the tallest is 8 ft
}
