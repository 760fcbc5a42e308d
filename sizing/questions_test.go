package sizing_test

import (
	"fmt"

	"github.com/shopspring/decimal"

	"example.com/fircone/sizing"
	"example.com/fircone/units"
)

// How many ornaments does a 9 ft tree take, and of how many types?
// Common practice: a type for each foot, the height less 2 to plus 2 of each.
func ExampleRules_Each_question() {
	rules, height := sizing.CommonPractice(), 9*units.Foot
	types, _ := rules.Types(height)
	each, _ := rules.Each(height)
	all, _ := rules.Ornaments(height)
	fmt.Println(types, "types,", each, "of each:", all, "ornaments in all")
	// Output: 9 types, 7 to 11 of each: 63 to 99 ornaments in all
}

// How many picks does a 9 ft tree take in place of garland?
// Common practice: 3 for each foot.
func ExampleRules_Picks_question() {
	picks, _ := sizing.CommonPractice().Picks(9 * units.Foot)
	fmt.Println(picks, "picks")
	// Output: 27 picks
}

// How many 6 ft strands of garland for a 7½ ft tree?
// Common practice: 9 ft for each foot is 67.5 ft, and 67.5/6 is 11.25.
func ExampleStrands_Count_question() {
	garland, _ := sizing.CommonPractice().Garland(7*units.Foot + 6*units.Inch)
	strands, _ := sizing.Strands{Total: garland, Each: 6 * units.Foot}.Count()
	fmt.Println(garland, "of garland:", strands, "strands")
	// Output: 67 ft 6 in of garland: 12 strands
}

// How much garland for a 6½ ft slim tree in a corner?
// By hand: the cone is 78 in high and 0.45 · 78 in = 35.1 in wide, its side
// π · 17.55 · √(17.55² + 78²) = 4408 sq in; half of it is seen, and one wrap each
// 10.16 in takes a little over 4408/2/10.16 in = 18 ft. Simpson's rule on the way
// to and fro gives 19 ft 10.2 in.
func ExampleLook_Amounts_question() {
	tree := sizing.Tree{
		Height:   6*units.Foot + 6*units.Inch,
		Taper:    sizing.Slim,
		Exposure: sizing.InCorner,
	}
	amounts, _ := sizing.CommonLook().Amounts(tree)
	rule, _ := sizing.CommonPractice().Garland(tree.Height)
	fmt.Println(amounts.Garland, "of garland to match an ordinary tree; the rule of thumb would buy", rule)
	// Output: 19 ft 11 in of garland to match an ordinary tree; the rule of thumb would buy 58 ft 6 in
}

// How far off is the rule of thumb on a 12 ft tree?
// By hand: at the same taper the surface of a 12 ft tree is (12/7)² = 2.94 times
// that of a 7 ft one, where the rule asks for 12/7 = 1.71 times as much: 1.71
// times too little.
func ExampleRules_Compare_question() {
	c, _ := sizing.CommonPractice().Compare(sizing.CommonLook(), sizing.Tree{Height: 12 * units.Foot})
	fmt.Println(c)
	fmt.Println("by shape over by rule:", c.Ratios())
	// Output:
	// ornaments: 144 gives 0.93 to the square foot here; 0.93 takes 144
	// garland or ribbon: 9 ft for each foot gives wraps 17 in apart here; 10 in apart takes 184 ft
	// picks: 3 for each foot gives 0.23 to the square foot here; 0.40 takes 62
	// lights: 100 for each foot gives 7.76 to the square foot here; 13 takes 2058
	// by shape over by rule: ornaments 1.00, garland 1.70, ribbon 1.70, picks 1.72, lights 1.72
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
// By hand: a twentieth of 108 in is 5.4 in; a fifth of 81 is 16, three tenths 24.
func ExampleMixOf_question() {
	mix, _ := sizing.MixOf(9*units.Foot, 81)
	fmt.Println(mix)
	// Output: 16 of 5 1/2 in, 24 of 4 in, 41 of 2 1/2 in
}

// Which is the tallest tree under a 9 ft ceiling?
// Clemson Cooperative Extension, Selecting a Christmas Tree: at least 1 ft less.
func ExampleRoom_Fit_question() {
	fit, _ := sizing.Room{Ceiling: 9 * units.Foot}.Fit(sizing.Tree{Height: 9 * units.Foot})
	fmt.Println(fit.Fits, "for a 9 ft tree; the tallest is", fit.Tallest)
	// Output: false for a 9 ft tree; the tallest is 8 ft
}

// May 40 strings of old lights, 40 W each, share a 15 A circuit of
// 120 V?
// NEC 210.19(A)(1) and 210.20(A), as quoted: 80 % of 15 A · 120 V is 1440 W.
func ExampleStrings_Load_question() {
	strings := sizing.Strings{
		Each:  sizing.LightString{Lamps: 100, Length: 25 * units.Foot, Power: 40 * units.Watt},
		Count: 40,
	}
	load, _ := strings.Load(sizing.Circuit{Volts: 120, Amperes: 15})
	fmt.Println("over:", load.Over)
	fmt.Println(load.Power, "on a circuit for", load.Limit)
	// Output:
	// over: true
	// 1600 W on a circuit for 1440 W
}

// What do 175 W of lights cost to run for a season of 40 days, 12 h a day, at 0.119 a
// kilowatt-hour? US DOE and ENERGY STAR, as quoted: 9.996.
func ExampleStrings_Use_question() {
	strings := sizing.Strings{
		Each:  sizing.LightString{Lamps: 25, Length: 25 * units.Foot, Power: 175 * units.Watt},
		Count: 1,
	}
	use, _ := strings.Use(sizing.Season{
		HoursPerDay: decimal.NewFromInt(12),
		Days:        40,
		PerKWh:      decimal.RequireFromString("0.119"),
	})
	fmt.Println(use.Energy, "kWh cost", use.Cost)
	// Output: 84 kWh cost 9.996
}
