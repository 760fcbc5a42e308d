package sizing_test

import (
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The worked example of the package documentation: common practice and geometry.
// By hand: on 86.96 sq ft 81 ft come 12.9 in apart, and 35 picks and 1157 lights are 0.40
// and 13.3 to the square foot.
func Example_ticketHall() {
	tree := sizing.Tree{Height: 9 * units.Foot}
	rules, look := sizing.CommonPractice(), sizing.CommonLook()
	c, err := rules.Compare(look, tree)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c)

	label := lights.Label{Lamps: 100, Length: 25 * units.Foot, Power: 4800 * units.Milliwatt, EndToEnd: 3}
	strings, _ := label.For(c.Shape[shopping.Light])
	runs, _ := strings.Runs()
	load, _ := strings.Load(lights.Circuit{Volts: 120, Amperes: 15})
	fmt.Println(strings, "in", runs, "runs:", load.Power)
	hall := sizing.Room{Ceiling: 14 * units.Foot, Topper: 1 * units.Foot}
	fit, _ := hall.Fit(tree)
	ladder, _ := hall.Ladder(tree)
	fmt.Println(fit.Spare, "to spare,", ladder.Size, "stepladder")
	// Output:
	// ornaments: 81 of 4 in, 3 1/8 in and 2 in cover 4.1 % here; 4.1 % takes 81
	// garland or ribbon: 9 ft for each foot gives wraps 13 1/4 in apart here; 10 1/4 in apart takes 104 ft
	// picks: 3 for each foot gives 0.31 to the square foot here; 0.399 takes 35
	// lights: 100 for each foot gives 10.3 to the square foot here; 13.3 takes 1200
	// 12 strings of 100 lamps, 4.8 W each in 4 runs: 57.6 W
	// 4 ft to spare, 6 ft stepladder
}

// The second tree of the worked example. By hand: half the height and half the way
// round is an eighth of 86.96 sq ft, 10.9; on that 40.5 ft come 3.2 in apart.
func Example_waitingRoom() {
	tree := sizing.Tree{Height: 4*units.Foot + 6*units.Inch, Exposure: sizing.InCorner}
	c, err := sizing.CommonPractice().Compare(sizing.CommonLook(), tree)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("by rule: ", c.Rule)
	fmt.Println("by shape:", c.Shape)
	fmt.Println("wraps by rule:", c.RuleLook.Spacing[shopping.Garland].Format(units.InInches, units.Inch/4))
	// Output:
	// by rule:  ornaments 16, garland 40 ft 6 in, ribbon 40 ft 6 in, picks 14, lights 450
	// by shape: ornaments 19, garland 14 ft 2 in, ribbon 14 ft 2 in, picks 5, lights 150
	// wraps by rule: 3 1/4 in
}

// A 3-4-5 triangle, and 5 ft of slope at 6 in.
func ExampleTree_Slant() {
	slant, err := sizing.Tree{Height: 4 * units.Foot, Base: 6 * units.Foot}.Slant()
	fmt.Println(slant, "and", slant.In(6*units.Inch), "wraps 6 in apart", err)
	// Output: 5 ft and 10 wraps 6 in apart <nil>
}

// Mell and others, Combustion and Flame 156 (2009), as tabled by NIST: a fir's
// crown 1.9 m high and 1.7 m wide. π · 0.85 · 2.0815 is 5.558.
func ExampleTree_DressedArea_fir() {
	fir := sizing.Tree{Height: 1900 * units.Millimeter, Base: 1700 * units.Millimeter}
	area, err := fir.DressedArea()
	fmt.Println(area.Format(units.InMetric, units.SquareMeter/1000), err)
	// Output: 5.558 m² <nil>
}

// By hand: only the lowest 3 ft of a 7 ft tree, from 1 ft up, wound 10 in apart,
// is between the depths of 3 and 6 ft: 36 - 9 of 49 parts of 52.6 sq ft, which is
// 28.99 sq ft or 34.8 ft of garland, and a little more.
func ExampleTree_SpiralLength_band() {
	band := sizing.Tree{
		Height: 7 * units.Foot, Base: units.Must(units.ParseLength("54.6 in")),
		BareTip: 3 * units.Foot, BareBase: 1 * units.Foot,
	}
	length, err := band.SpiralLength(10 * units.Inch)
	fmt.Printf("%.1f ft %v\n", length.In(units.Foot), err)
	// Output: 34.9 ft <nil>
}

// Geometry, for the tree in the corner of the waiting room. By hand: half of a cone
// 54 in high and 35.1 in wide is 1565 sq in, and 1565 over 240 in is 6.5 in; the slant
// of the wraps adds a little.
func ExampleTree_Spacing() {
	tree := sizing.Tree{Height: 4*units.Foot + 6*units.Inch, Exposure: sizing.InCorner}
	spacing, err := tree.Spacing(20 * units.Foot)
	fmt.Println(spacing.Format(units.InInches, units.Inch/4), err)
	// Output: 6 3/4 in <nil>
}

// Ontario R.R.O. 1990, Reg. 377, for 40 %; USDA AMS 1989, from memory, for 90 %.
func ExampleTree_Grade() {
	for _, base := range []units.Length{3 * units.Foot, 6 * units.Foot, 10 * units.Foot} {
		grade, err := sizing.Tree{Height: 10 * units.Foot, Base: base}.Grade()
		fmt.Println(grade, err)
	}
	// Output:
	// candlestick <nil>
	// normal <nil>
	// flared <nil>
}

// OpenStax, Calculus Volume 2, section 2.9: y = 10 cosh(x/10) over 30 ft is
// 42.586 ft long, and dips 13.524 ft. Here at a tenth of the size.
func ExampleDrape_Stretch() {
	stretch, err := sizing.Drape{Span: 3 * units.Foot, Sag: units.Must(units.ParseLength("1.3524096 ft"))}.Stretch()
	fmt.Printf("%.4f of 3 ft is %.4f ft, %v\n", stretch, 3*stretch, err)
	// Output: 1.4195 of 3 ft is 4.2586 ft, <nil>
}

// Common practice, from memory: 65, 45 and 30 % of 10 ft.
func ExampleTree_Measured() {
	for _, taper := range []sizing.Taper{sizing.Full, sizing.Slim, sizing.Pencil} {
		tree, err := sizing.Tree{Height: 10 * units.Foot, Taper: taper}.Measured()
		fmt.Println(taper, tree.Base, err)
	}
	// Output:
	// full 6 ft 6 in <nil>
	// slim 4 ft 6 in <nil>
	// pencil 3 ft <nil>
}

// By hand: π · 2.925 · √(2.925² + 81) is 86.96 sq ft, and a corner shows half.
func ExampleTree_DressedArea() {
	area, err := sizing.Tree{Height: 9 * units.Foot, Exposure: sizing.InCorner}.DressedArea()
	fmt.Println(area.Format(units.InFeet, units.SquareFoot/100), err)
	// Output: 43.48 sq ft <nil>
}

// Common practice, from memory: 1 ft less than a 6 ft base, to 6 in beyond it all round.
func ExampleTree_Skirt() {
	skirt, err := sizing.Tree{Height: 9 * units.Foot, Base: 6 * units.Foot}.Skirt()
	fmt.Println(skirt, err)
	// Output: 5 ft to 7 ft <nil>
}

// Common practice; by hand 49, 21 and 700 on 52.6 sq ft.
func ExampleCommonLook() {
	fmt.Println(sizing.CommonLook())
	// Output: garland 10 1/4 in apart, ribbon 10 1/4 in apart; 4.1 % covered by ornaments; to the square foot 0.399 picks, 13.3 lights
}

// Geometry: half of a tree seen takes half the ornaments and lights.
func ExampleComparison_Needs_byShape() {
	tree := sizing.Tree{Height: 9 * units.Foot, Exposure: sizing.InCorner}
	c, err := sizing.CommonPractice().Compare(sizing.CommonLook(), tree)
	if err != nil {
		fmt.Println(err)
		return
	}
	needs, err := c.Needs(units.InFeetInches, shopping.Garland)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range needs {
		fmt.Printf("%v %s: %s (%s)\n", n.Quantity, n.Item, n.Basis, n.Source)
	}
	// Output:
	// 41 ornaments: 4.1 % of 43.5 sq ft covered, by sizes of 4 in, 3 1/8 in and 2 in (geometry; common practice for the look)
	// 52 ft 11 in garland: wraps 10 1/4 in apart over 43.5 sq ft (geometry; common practice for the look)
	// 600 lights: 13.3 to the square foot over 43.5 sq ft, in steps of 50 (geometry; common practice for the look)
}

func ExampleLook_String() {
	look := sizing.Look{Spacing: shopping.ByKind[units.Length]{shopping.Garland: 10 * units.Inch}, Cover: 0.05}
	fmt.Println(look.String())
	// Output: garland 10 in apart; 5.0 % covered by ornaments
}

// Common practice against geometry. By hand: surface grows as the square of height, so
// 9 ft takes 81/49 of the 49 ornaments, 21 picks and 700 lights of 7 ft: 81, 34.7, 1157.1.
func ExampleRules_Compare_matched() {
	c, err := sizing.CommonPractice().Compare(sizing.CommonLook(), sizing.Tree{Height: 9 * units.Foot})
	fmt.Println("by rule: ", c.Rule)
	fmt.Println("by shape:", c.Shape, err)
	// Output:
	// by rule:  ornaments 81, garland 81 ft, ribbon 81 ft, picks 27, lights 900
	// by shape: ornaments 81, garland 103 ft 8 in, ribbon 103 ft 8 in, picks 35, lights 1200 <nil>
}

// Common practice against geometry. By hand, 154.6 sq ft over 108 ft is 17 in, and
// over 10 in it is 186 ft, and a little more.
func ExampleRules_Compare() {
	look := sizing.Look{Spacing: shopping.ByKind[units.Length]{shopping.Garland: 10 * units.Inch}}
	c, err := sizing.CommonPractice().Compare(look, sizing.Tree{Height: 12 * units.Foot})
	fmt.Println(c, err)
	// Output: garland: 9 ft for each foot gives wraps 17 1/2 in apart here; 10 in apart takes 187 ft <nil>
}

func ExampleComparison_String() {
	c, _ := sizing.CommonPractice().Compare(sizing.Look{Each: shopping.ByKind[units.Area]{shopping.Pick: units.SquareFoot}}, sizing.Tree{Height: 7 * units.Foot})
	fmt.Println(c.String())
	// Output: picks: 3 for each foot gives 0.399 to the square foot here; 1 takes 53
}

// A default of this package. By hand: 4, 3 and 2 in, the nearest that shops stock; 20,
// 30 and 50 % of 49.
func ExampleRules_Mix() {
	mix, err := sizing.CommonPractice().Mix(sizing.Tree{Height: 7 * units.Foot}, 49)
	for _, m := range mix {
		fmt.Println(m.Quantity.Pieces, "of", m.Item.Size.Format(units.InInches, units.Inch/8))
	}
	fmt.Println(err)
	// Output:
	// 10 of 4 in
	// 15 of 3 1/8 in
	// 24 of 2 in
	// <nil>
}

// By hand: on 2 ft and on 9 ft as much is covered as on 7 ft, 33 · 0.785 of 618.4 sq in,
// and 16 · 12.57 + 24 · 7.67 + 41 · 3.14 of 12522 sq in.
func ExampleCover() {
	rules, look := sizing.CommonPractice(), sizing.CommonLook()
	for _, feet := range []units.Length{2, 7, 9} {
		tree := sizing.Tree{Height: feet * units.Foot}
		c, _ := rules.Compare(look, tree)
		mix, _ := rules.Mix(tree, c.Shape[shopping.Ornament].Pieces)
		area, _ := tree.DressedArea()
		cover, err := sizing.Cover(mix, area)
		fmt.Printf("%v: %d balls cover %.1f %% %v\n", tree.Height, c.Shape[shopping.Ornament].Pieces, 100*cover, err)
	}
	// Output:
	// 2 ft: 33 balls cover 4.2 % <nil>
	// 7 ft: 49 balls cover 4.2 % <nil>
	// 9 ft: 81 balls cover 4.1 % <nil>
}

// By hand: 10.16 in are 25.8 cm, up to half a centimeter; 6 ft are 1.83 m. The garland is 19.198 m, by quadrature.
func ExampleFormat() {
	fmt.Println(sizing.Format(sizing.CommonLook(), units.InMetric))
	look := sizing.Look{Spacing: shopping.ByKind[units.Length]{shopping.Garland: 25 * units.Centimeter}}
	c, err := sizing.CommonPractice().Compare(look, sizing.Tree{Height: 210 * units.Centimeter})
	fmt.Println(sizing.Format(c, units.InMetric), err)
	ladder := sizing.Ladder{Size: 6 * units.Foot, Cautions: []units.Caution{{Text: "follow its label"}}}
	fmt.Println(sizing.Format(ladder, units.InMetric))
	// Output:
	// garland 26 cm apart, ribbon 26 cm apart; 4.1 % covered by ornaments; to the square meter 4.3 picks, 143 lights
	// garland: 9 m for each meter gives wraps 25.5 cm apart here; 25 cm apart takes 19.2 m <nil>
	// 1.83 m stepladder; follow its label
}

// Geometry. By hand: half of a cone 54 in high and 35.1 in wide is 1565 sq in, and over
// 10 in that is 13 ft; the slant of the wraps adds more than a foot.
func ExampleTree_SpiralLength() {
	tree := sizing.Tree{Height: 4*units.Foot + 6*units.Inch, Exposure: sizing.InCorner}
	garland, err := tree.SpiralLength(10 * units.Inch)
	fmt.Println(garland.Format(units.InFeetInches, units.Inch), err)
	// Output: 14 ft 3 in <nil>
}

// Common practice, from memory: a tenth to an eighth of 10 ft.
func ExampleTopper() {
	topper, err := sizing.Topper(10 * units.Foot)
	fmt.Println(topper, err)
	// Output: 1 ft to 1 ft 3 in <nil>
}

// Clemson Cooperative Extension: at least 1 ft shorter than the ceiling.
func ExampleRoom_Fit() {
	hall := sizing.Room{Ceiling: 10 * units.Foot, Topper: 10 * units.Inch}
	fit, err := hall.Fit(sizing.Tree{Height: 9 * units.Foot})
	fmt.Println(fit, err)
	// Output: fits: 2 in to spare, 9 ft is the tallest; keep tip and topper clear of lamps, sprinkler heads, fans and heat <nil>
}

func ExampleFit_String() {
	fmt.Println(sizing.Fit{Verdict: "does not fit", Tallest: 7 * units.Foot, Spare: -3 * units.Inch, Caution: units.Caution{Text: "keep clear of lamps"}}.String())
	// Output: does not fit: 3 in past the ceiling, 7 ft is the tallest; keep clear of lamps
}

// Makers' labels, from memory: a 6 ft stepladder reaches 10 ft. The tip of this
// tree is under that, and a usual topper over it.
func ExampleRoom_Ladder() {
	tree := sizing.Tree{Height: 9*units.Foot + 10*units.Inch, Taper: sizing.Slim}
	bare, err1 := sizing.Room{NoTopper: true}.Ladder(tree)
	usual, err2 := sizing.Room{}.Ladder(tree)
	fmt.Println(bare.Size, "for the tip,", usual.Size, "for a topper", err1, err2)
	// Output: 6 ft for the tip, 8 ft for a topper <nil> <nil>
}

// Makers' labels, from memory.
func ExampleLadderFor() {
	for _, height := range []units.Length{6 * units.Foot, 13 * units.Foot, 30 * units.Foot} {
		ladder, err := sizing.LadderFor(height)
		fmt.Println(ladder.Size, ladder.Lift, err)
	}
	// Output:
	// 0 ft false <nil>
	// 10 ft false <nil>
	// 0 ft true <nil>
}

// Makers' labels, from memory: from a 6 ft stepladder one works from 4 to 10 ft up.
func ExampleLadder_Reach() {
	fmt.Println(sizing.Ladder{Size: 6 * units.Foot}.Reach())
	// Output: 4 ft to 10 ft
}

func ExampleLadder_String() {
	ladder := sizing.Ladder{Size: 6 * units.Foot, In: 35 * units.Inch, Cautions: []units.Caution{{Text: "follow its label"}}}
	fmt.Println(ladder.String())
	// Output: 6 ft stepladder, the tip 2 ft 11 in in from the branch line; follow its label
}
