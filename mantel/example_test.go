package mantel_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The tea room of the station: a 64 in mantel over a fireplace that is not used.
var teaRoom = mantel.Mantel{
	Length: 64 * units.Inch,
	Height: 54 * units.Inch,
	Depth:  8 * units.Inch,
	Opening: mantel.Opening{
		Width:  36 * units.Inch,
		Height: 30 * units.Inch,
		Below:  16 * units.Inch,
	},
}

// Common practice; each figure worked out by hand, such as 60 in/8 in = 7.5, so 8.
func Example_chart() {
	r := mantel.CommonPractice()
	fmt.Println("shelf  look          garland  picks  ornaments  ribbon")
	for _, length := range []units.Length{4 * units.Foot, 5 * units.Foot, 6 * units.Foot, 8 * units.Foot} {
		for _, look := range []mantel.Look{mantel.Traditional, mantel.Asymmetrical} {
			garland, err := r.BaseGarland(length, look)
			if err != nil {
				fmt.Println(err)
				return
			}
			picks, _ := r.Picks(length, look)
			ornaments, _ := r.Ornaments(length, look)
			ribbon, _ := r.Ribbon(look)
			fmt.Printf("%-5v  %-12v  %-7v  %5d  %9d  %s\n", length, look, garland, picks, ornaments, ribbon)
		}
	}
	// Output:
	// shelf  look          garland  picks  ornaments  ribbon
	// 4 ft   traditional   6 ft         6          5  0 ft
	// 4 ft   asymmetrical  8 ft        16          5  4 ft 6 in
	// 5 ft   traditional   7 ft         8          7  0 ft
	// 5 ft   asymmetrical  9 ft        20          6  4 ft 6 in
	// 6 ft   traditional   8 ft         9          8  0 ft
	// 6 ft   asymmetrical  10 ft       24          7  4 ft 6 in
	// 8 ft   traditional   10 ft       12         11  0 ft
	// 8 ft   asymmetrical  12 ft       32         10  4 ft 6 in
}

// The tea room with 8 ft of garland: a foot falls at each end, and 6 ft hang in
// three swags. Sag and pulls were worked out in 40 digits by root finding on the
// formulas of OpenStax Calculus Vol. 1, Calculus of the Hyperbolic Functions:
// sag 4.81622 in, a = 12.54138 in, so the pull of 8 oz a foot is 8.4 oz. The opening
// is 16 in below the shelf and 14 in from its ends. Less 4 in, half of the thickness,
// the middle swag is 16 - 4.8162 = 11.1838 in away, the outer ones 11.4164 in (the
// least over a table of points in 40 digits), the drops √(14² + 4²) = 14.5602 in. All
// five parts are from 6 to 12 in away and stand out 8 + 4 in: over an eighth of the
// distance above it, over 1½ in, and over 10½ - 6 in beside it: two figures each.
func Example_teaRoom() {
	h, err := teaRoom.FindSag(8*units.Foot, mantel.Hanging{
		Swags: 3, Left: units.Foot, Right: units.Foot, Thickness: 8 * units.Inch,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(h)
	loads, err := teaRoom.Loads(h, 8*units.Ounce, mantel.Hook{Rating: 10 * units.Pound})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(loads)
	clear, err := teaRoom.Clearances(h)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, place := range clear.Places {
		fmt.Println(place)
	}
	fmt.Println(clear)
	// Output:
	// 3 swags 4 13/16 in deep, falling 1 ft at the left and 1 ft at the right
	// weight 4 lb, hooks at most 1 ft 9 5/16 in apart, each good for 2 lb
	// at 0 ft: 1 lb down, 8.4 oz to the right
	// at 1 ft 9 5/16 in: 1 lb down
	// at 3 ft 6 11/16 in: 1 lb down
	// at 5 ft 4 in: 1 lb down, 8.4 oz to the left
	// left drop: 10 1/2 in from the opening, 3 ft 2 in above the hearth
	// swag 1: 7 3/8 in from the opening, 3 ft 9 1/8 in above the hearth
	// swag 2: 7 1/8 in from the opening, 3 ft 9 1/8 in above the hearth
	// swag 3: 7 3/8 in from the opening, 3 ft 9 1/8 in above the hearth
	// right drop: 10 1/2 in from the opening, 3 ft 2 in above the hearth
	// no fire while this hangs: swag 2: distance from an open fire 7 1/8 in, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
	// worst: swag 2: standing out from the wall 1 ft, at most 7/8 in (IRC R1001.11 exception 4, 2018); 9 more
}

// The garland that swags take, rounded up to the inch. Every length was worked out in 40
// digits by root finding on the formulas of OpenStax, Calculus Volume 1, Calculus of the
// Hyperbolic Functions: two swags 8 in deep on 64 in take 73.6506 in.
func Example_swags() {
	fmt.Println("shelf      swags   4 in deep   6 in deep   8 in deep  12 in deep")
	for _, shelf := range []units.Length{48 * units.Inch, 60 * units.Inch, 64 * units.Inch, 72 * units.Inch, 96 * units.Inch} {
		for swags := 1; swags <= 3; swags++ {
			fmt.Printf("%-9v  %5d", shelf, swags)
			for _, sag := range []units.Length{4 * units.Inch, 6 * units.Inch, 8 * units.Inch, 12 * units.Inch} {
				d, err := mantel.CommonPractice().Needs(mantel.Mantel{Length: shelf}, mantel.Hanging{Swags: swags, Sag: sag})
				if err != nil {
					fmt.Println(err)
					return
				}
				fmt.Printf("  %10v", d.Needs[0].Quantity.Length)
			}
			fmt.Println()
		}
	}
	// Output:
	// shelf      swags   4 in deep   6 in deep   8 in deep  12 in deep
	// 4 ft           1   4 ft 1 in   4 ft 2 in   4 ft 4 in   4 ft 8 in
	// 4 ft           2   4 ft 4 in   4 ft 8 in   5 ft 1 in        6 ft
	// 4 ft           3   4 ft 8 in   5 ft 3 in        6 ft   7 ft 9 in
	// 5 ft           1   5 ft 1 in   5 ft 2 in   5 ft 3 in   5 ft 6 in
	// 5 ft           2   5 ft 3 in   5 ft 6 in  5 ft 11 in   6 ft 9 in
	// 5 ft           3   5 ft 6 in   6 ft 1 in   6 ft 9 in   8 ft 4 in
	// 5 ft 4 in      1   5 ft 5 in   5 ft 6 in   5 ft 7 in  5 ft 10 in
	// 5 ft 4 in      2   5 ft 7 in  5 ft 10 in   6 ft 2 in        7 ft
	// 5 ft 4 in      3  5 ft 10 in   6 ft 4 in        7 ft   8 ft 7 in
	// 6 ft           1   6 ft 1 in   6 ft 2 in   6 ft 3 in   6 ft 6 in
	// 6 ft           2   6 ft 3 in   6 ft 6 in   6 ft 9 in   7 ft 7 in
	// 6 ft           3   6 ft 6 in  6 ft 11 in   7 ft 7 in        9 ft
	// 8 ft           1   8 ft 1 in   8 ft 1 in   8 ft 2 in   8 ft 4 in
	// 8 ft           2   8 ft 2 in   8 ft 4 in   8 ft 7 in   9 ft 3 in
	// 8 ft           3   8 ft 4 in   8 ft 9 in   9 ft 3 in  10 ft 6 in
}

// By rule a traditional mantel has no ribbon, which is common practice. A shop that ties a
// bow in its middle says so: 1½ yd is 54 in.
func Example_ribbon() {
	r := mantel.CommonPractice()
	r.Traditional.Ribbon, r.Traditional.Bells = 54*units.Inch, 2
	d, err := r.Needs(teaRoom, mantel.Hanging{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range d.Needs {
		if n.Item == (shopping.Item{Kind: shopping.Ribbon, Type: "mantel"}) || n.Item == (shopping.Item{Kind: shopping.Bell}) {
			fmt.Printf("%s: %v; %s\n", n.Item, n.Quantity, n.Basis)
		}
	}
	// Output:
	// ribbon, mantel: 1 of 4 ft 6 in; one bow or fall in the middle
	// bells: 2; hung with the ribbon
}

// A parabola of the same span and sag is the usual stand-in for the catenary, as
// span/2 · (√(1 + k²) + asinh(k)/k) with k = 4·sag/span. Both columns were worked out
// in 40 digits: 61.5712 and 61.5636 in, 69.0475 and 68.8676, 89.7500 and 88.7366,
// 142.2612 and 139.4035, 257.2247 and 252.2795.
func Example_parabola() {
	const span = 60 * units.Inch
	for _, sag := range []units.Length{6 * units.Inch, 15 * units.Inch, 30 * units.Inch, 60 * units.Inch, 120 * units.Inch} {
		length, err := mantel.Swag{Span: span, Sag: sag}.Length()
		if err != nil {
			fmt.Println(err)
			return
		}
		k := 4 * sag.In(units.Inch) / span.In(units.Inch)
		parabola := span.In(units.Inch) / 2 * (math.Sqrt(1+k*k) + math.Asinh(k)/k)
		fmt.Printf("%v wide, %v deep: %.2f in, by a parabola %.2f in too little\n",
			span, sag, length.In(units.Inch), length.In(units.Inch)-parabola)
	}
	// Output:
	// 5 ft wide, 6 in deep: 61.57 in, by a parabola 0.01 in too little
	// 5 ft wide, 1 ft 3 in deep: 69.05 in, by a parabola 0.18 in too little
	// 5 ft wide, 2 ft 6 in deep: 89.75 in, by a parabola 1.01 in too little
	// 5 ft wide, 5 ft deep: 142.26 in, by a parabola 2.86 in too little
	// 5 ft wide, 10 ft deep: 257.22 in, by a parabola 4.95 in too little
}

// Words of the trade.
func ExampleParseLook() {
	for _, text := range []string{"Symmetrical", "asymmetrical", "rustic"} {
		look, err := mantel.ParseLook(text)
		fmt.Println(look, err)
	}
	// Output:
	// traditional <nil>
	// asymmetrical <nil>
	// traditional mantel.ParseLook: text "rustic": unknown name: want traditional or asymmetrical
}

// Words of the trade.
func ExampleLook_String() {
	fmt.Println(mantel.Traditional, mantel.Asymmetrical, mantel.Look(9))
	// Output: traditional asymmetrical Look(9)
}

// A look is its name in JSON.
func ExampleLook_MarshalText() {
	text, err := json.Marshal(map[string]mantel.Look{"look": mantel.Asymmetrical})
	fmt.Println(string(text), err)
	// Output: {"look":"asymmetrical"} <nil>
}

// A look is read by its name from JSON.
func ExampleLook_UnmarshalText() {
	var look mantel.Look
	err := json.Unmarshal([]byte(`"asymmetric"`), &look)
	fmt.Println(look, err)
	// Output: asymmetrical <nil>
}

// The sides are the viewer's.
func ExampleParseSide() {
	side, err := mantel.ParseSide("Right")
	fmt.Println(side, err)
	_, err = mantel.ParseSide("middle")
	fmt.Println(err)
	// Output:
	// right <nil>
	// mantel.ParseSide: text "middle": unknown name: want left or right
}

// The sides are the viewer's.
func ExampleSide_String() {
	fmt.Println(mantel.Left, mantel.Right, mantel.Side(9))
	// Output: left right Side(9)
}

// A side is its name in JSON.
func ExampleSide_MarshalText() {
	text, err := json.Marshal(mantel.Right)
	fmt.Println(string(text), err)
	// Output: "right" <nil>
}

// A side is read by its name from JSON.
func ExampleSide_UnmarshalText() {
	var side mantel.Side
	err := json.Unmarshal([]byte(`"right"`), &side)
	fmt.Println(side, err)
	// Output: right <nil>
}

// No shelf is so short.
func ExampleError_Error() {
	_, err := mantel.CommonPractice().Picks(6*units.Inch, mantel.Traditional)
	fmt.Println(err)
	// Output: mantel.Rules.Picks: length "6 in": out of range: want 1 ft to 50 ft
}

// A program can tell what is wrong, and with which field.
func ExampleError_Unwrap() {
	_, err := teaRoom.Garland(mantel.Hanging{Left: 5 * units.Foot})
	var refused *units.Error
	if errors.As(err, &refused) {
		fmt.Println(refused.Field, refused.Value, errors.Is(err, units.ErrFit))
	}
	// Output: /hanging/left 5 ft true
}

// Common practice. A shop that likes its picks closer changes one figure.
func ExampleCommonPractice() {
	r := mantel.CommonPractice()
	r.Traditional.PickSpacing = 6 * units.Inch
	picks, err := r.Picks(5*units.Foot, mantel.Traditional)
	fmt.Println(picks, err)
	// Output: 10 <nil>
}

// Common practice: the shelf and 2 ft, or the shelf and 4 ft.
func ExampleRules_BaseGarland() {
	r := mantel.CommonPractice()
	fmt.Println(r.BaseGarland(5*units.Foot, mantel.Traditional))
	fmt.Println(r.BaseGarland(5*units.Foot, mantel.Asymmetrical))
	// Output:
	// 7 ft <nil>
	// 9 ft <nil>
}

// Common practice: 60/8 is 7.5, so 8, and 60/3 is 20.
func ExampleRules_Picks() {
	r := mantel.CommonPractice()
	fmt.Println(r.Picks(5*units.Foot, mantel.Traditional))
	fmt.Println(r.Picks(5*units.Foot, mantel.Asymmetrical))
	// Output:
	// 8 <nil>
	// 20 <nil>
}

// A starting figure of our own: one between each two picks. With 8 picks there are 7
// gaps; in the third of 5 ft at the heavy side there are 7 picks, and 6 gaps.
func ExampleRules_Ornaments() {
	r := mantel.CommonPractice()
	fmt.Println(r.Ornaments(5*units.Foot, mantel.Traditional))
	fmt.Println(r.Ornaments(5*units.Foot, mantel.Asymmetrical))
	// Output:
	// 7 <nil>
	// 6 <nil>
}

// Common practice: 1½ yd at the heavy side.
func ExampleRules_Ribbon() {
	r := mantel.CommonPractice()
	fmt.Println(r.Ribbon(mantel.Traditional))
	fmt.Println(r.Ribbon(mantel.Asymmetrical))
	// Output:
	// 0 ft <nil>
	// 4 ft 6 in <nil>
}

// Bells with the ribbon are common practice; how many is a starting figure of our own.
func ExampleRules_Bells() {
	fmt.Println(mantel.CommonPractice().Bells(mantel.Asymmetrical))
	// Output: 3 <nil>
}

// Common practice, and starting figures of our own; each need says which. 64/3 is 21.3,
// so 22 picks; a third of 64 in holds 8 of them, with 7 gaps; 22 + 7 + 1 ties.
func ExampleRules_Needs() {
	rules := mantel.CommonPractice()
	h, _, err := rules.Hang(teaRoom, mantel.Hanging{Look: mantel.Asymmetrical})
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := rules.Needs(teaRoom, h)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range d.Needs {
		fmt.Printf("%s: %v; %s (%s)\n", n.Item, n.Quantity, n.Basis, n.Source)
	}
	// Output:
	// base garland: 9 ft 4 in; shelf of 5 ft 4 in and 4 ft more (common practice)
	// picks, mantel: 22; 1 for each 3 in of 5 ft 4 in (common practice)
	// ornaments, mantel: 7; 1 in each of 7 gaps between picks of the top layer (a starting figure of our own)
	// ribbon, mantel: 1 of 4 ft 6 in; one bow or fall at the heavy side (common practice)
	// bells: 3; hung with the ribbon (a starting figure of our own)
	// wire ties: 30; 1 for each of 22 picks and 7 ornaments, 1 for the ribbon (a starting figure of our own)
}

// Common practice: picks 8 in apart. Two on 12 in leave 4 in, 2 at each end.
func ExampleRules_Spots() {
	shelf := mantel.Mantel{Length: 12 * units.Inch}
	spots, err := mantel.CommonPractice().Spots(shelf, mantel.Traditional, mantel.Left)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range spots {
		fmt.Println(s)
	}
	// Output:
	// picks, mantel at 2 in, layer 1
	// picks, mantel at 10 in, layer 1
	// ornaments, mantel at 6 in, layer 2
}

// Common practice: picks 3 in apart, from the heavy end on; here that is the right one.
func ExampleSpot_String() {
	shelf := mantel.Mantel{Length: 12 * units.Inch}
	spots, err := mantel.CommonPractice().Spots(shelf, mantel.Asymmetrical, mantel.Right)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(spots[0])
	fmt.Println(spots[3])
	// Output:
	// picks, mantel at 3 in, layer 1
	// picks, mantel at 1 ft, layer 3
}

// A textbook exercise: a wire of 51 ft over a span of 50 ft sags 4.360 ft.
func ExampleSwag_FindSag() {
	swag, err := mantel.Swag{Span: 50 * units.Foot}.FindSag(51 * units.Foot)
	fmt.Printf("%.3f ft %v\n", swag.Sag.In(units.Foot), err)
	// Output: 4.360 ft <nil>
}

// OpenStax, Calculus Volume 1, Calculus of the Hyperbolic Functions: the cable
// y = 10 cosh(x/10) from -15 to 15 ft is 20 sinh 1.5 = 42.586 ft long. Its sag is
// 10 (cosh 1.5 - 1) = 13.5240962 ft.
func ExampleSwag_Length() {
	sag, err := units.FromFloat(13.5240962, units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	length, err := mantel.Swag{Span: 30 * units.Foot, Sag: sag}.Length()
	fmt.Printf("%.3f ft %v\n", length.In(units.Foot), err)
	// Output: 42.586 ft <nil>
}

// A swag 5 ft wide and 9 in deep hangs 6.797 in below its hooks at a quarter of its
// span, by root finding in 40 digits; a parabola would hang 6.75 in.
func ExampleSwag_Below() {
	swag := mantel.Swag{Span: 5 * units.Foot, Sag: 9 * units.Inch}
	for _, at := range []units.Length{0, 15 * units.Inch, 30 * units.Inch, 60 * units.Inch} {
		below, err := swag.Below(at)
		fmt.Printf("%v: %.3f in %v\n", at, below.In(units.Inch), err)
	}
	// Output:
	// 0 ft: 0.000 in <nil>
	// 1 ft 3 in: 6.797 in <nil>
	// 2 ft 6 in: 9.000 in <nil>
	// 5 ft: 0.000 in <nil>
}

// A swag as it is said.
func ExampleSwag_String() {
	fmt.Println(mantel.Swag{Span: 5 * units.Foot, Sag: 9 * units.Inch})
	// Output: swag 5 ft wide, 9 in deep
}

// A hanging as it is said.
func ExampleHanging_String() {
	fmt.Println(mantel.Hanging{Swags: 2, Sag: 9 * units.Inch, Left: units.Foot, Right: units.Foot})
	// Output: 2 swags 9 in deep, falling 1 ft at the left and 1 ft at the right
}

// A mantel as it is said.
func ExampleMantel_String() {
	fmt.Println(teaRoom)
	// Output: mantel 5 ft 4 in long, 4 ft 6 in above the hearth, 8 in deep, opening 3 ft wide and 2 ft 6 in high, 1 ft 4 in below the shelf
}

// An opening as it is said.
func ExampleOpening_String() {
	fmt.Println(teaRoom.Opening)
	fmt.Println(mantel.Opening{})
	// Output:
	// opening 3 ft wide and 2 ft 6 in high, 1 ft 4 in below the shelf
	// no opening
}

// Which garland do two swags 9 in deep take on 64 in, with a foot falling at each end?
// By root finding in 40 digits, 99.94445 in.
func ExampleMantel_Garland() {
	garland, err := teaRoom.Garland(mantel.Hanging{
		Swags: 2, Sag: 9 * units.Inch, Left: units.Foot, Right: units.Foot,
	})
	fmt.Printf("%.3f in %v\n", garland.In(units.Inch), err)
	// Output: 99.944 in <nil>
}

// As for Mantel.Garland: 75.94445 in of swags and 24 in, so 99.94445 in; by rule 88 in.
func ExampleDressing_String() {
	d, err := mantel.CommonPractice().Needs(teaRoom, mantel.Hanging{
		Swags: 2, Sag: 9 * units.Inch, Left: units.Foot, Right: units.Foot,
	})
	fmt.Println(d, err)
	// Output: garland 8 ft 4 in as it hangs, 7 ft 4 in by rule: 1 ft more <nil>
}

// A shelf 44 in above the hearth: by rule 48 in would fall at the heavy end. A starting
// figure of our own: it stays 6 in above the hearth.
func ExampleRules_Hang() {
	low := mantel.Mantel{Length: 64 * units.Inch, Height: 44 * units.Inch}
	h, cautions, err := mantel.CommonPractice().Hang(low, mantel.Hanging{Look: mantel.Asymmetrical})
	fmt.Println(h, err)
	fmt.Println(cautions[0].Text)
	// Output:
	// straight along the shelf, falling 3 ft 2 in at the left and 0 ft at the right <nil>
	// the shelf is too low for the ends that the rule asks for: the left one falls 3 ft 2 in, not 4 ft
}

// Part of the cable of OpenStax, Calculus Volume 1, y = 10 cosh(x/10), from -5 to 15 ft:
// its pull is 10 ft of it level, 10 sinh 0.5 = 5.211 ft on the left and 10 sinh 1.5 =
// 21.293 ft on the right. It rises 12.248 ft, and hangs 5.124 ft below the middle of its
// chord.
func ExampleSwag_Pull() {
	rise, _ := units.FromFloat(10*(math.Cosh(1.5)-math.Cosh(0.5)), units.Foot)
	sag, _ := units.FromFloat(5*(math.Cosh(1.5)-math.Cosh(0.5)), units.Foot)
	pull, err := mantel.Swag{Span: 20 * units.Foot, Rise: rise, Sag: sag}.Pull(units.Pound)
	fmt.Printf("%.3f %.3f %.3f %v\n", pull.Left.In(units.Pound), pull.Right.In(units.Pound), pull.Level.In(units.Pound), err)
	// Output: 5.211 21.293 10.000 <nil>
}

// 20 in wide, rising 14 in, 4 in of sag, 8 oz a foot: worked out in 50 digits, 25.5928 in
// of garland, so 17.0619 oz, of which 98.02 % hang on the upper hook.
func ExamplePull_String() {
	pull, err := mantel.Swag{Span: 20 * units.Inch, Rise: 14 * units.Inch, Sag: 4 * units.Inch}.Pull(8 * units.Ounce)
	fmt.Println(pull, err)
	// Output: 0.3 oz on the left, 1 lb 0.7 oz on the right, 10.3 oz level <nil>
}

// As for Swag.Pull: the cable is lowest 5 ft from its left end, 10 cosh 0.5 - 10 =
// 1.276 ft below it.
func ExampleSwag_Lowest() {
	rise, _ := units.FromFloat(10*(math.Cosh(1.5)-math.Cosh(0.5)), units.Foot)
	sag, _ := units.FromFloat(5*(math.Cosh(1.5)-math.Cosh(0.5)), units.Foot)
	p, err := mantel.Swag{Span: 20 * units.Foot, Rise: rise, Sag: sag}.Lowest()
	fmt.Printf("%.3f %.3f %v\n", p.Along.In(units.Foot), p.Below.In(units.Foot), err)
	// Output: 5.000 1.276 <nil>
}

// A straight line of 3, 4 and 5 ft twice over, and a foot that falls at the right.
func ExampleRun_Garland() {
	run := mantel.Run{
		Hooks: []mantel.Point{{}, {Along: 4 * units.Foot, Below: 3 * units.Foot}, {Along: 8 * units.Foot}},
		Right: units.Foot,
	}
	fmt.Println(run.Garland())
	// Output: 11 ft <nil>
}

// Common practice: a pick each 8 in; 132/8 is 16.5.
func ExampleRun_Needs() {
	run := mantel.Run{
		Hooks: []mantel.Point{{}, {Along: 4 * units.Foot, Below: 3 * units.Foot}, {Along: 8 * units.Foot}},
		Right: units.Foot,
	}
	needs, err := run.Needs(8 * units.Inch)
	for _, n := range needs {
		fmt.Printf("%s: %v; %s\n", n.Item, n.Quantity, n.Basis)
	}
	fmt.Println(err)
	// Output:
	// base garland: 11 ft; 10 ft close along 3 hooks, 0 ft and 1 ft falling, 0 ft for corners
	// picks, garland: 17; 1 for each 8 in of 11 ft
	// wire ties: 17; 1 for each of 17 picks
	// <nil>
}

// By hand: half of 5 ft at each hook, and a foot more at the last.
func ExampleRun_Loads() {
	run := mantel.Run{
		Hooks: []mantel.Point{{}, {Along: 4 * units.Foot, Below: 3 * units.Foot}, {Along: 8 * units.Foot}},
		Right: units.Foot,
	}
	loads, err := run.Loads(8*units.Ounce, mantel.Hook{Rating: 2 * units.Pound, Working: true})
	fmt.Println(loads, err)
	// Output:
	// weight 5 lb 8 oz, hooks at most 4 ft apart, each good for 2 lb
	// at 0 ft: 1 lb 4 oz down
	// at 4 ft: 2 lb 8 oz down, OVERLOADED
	// at 8 ft: 1 lb 12 oz down
	// to hold it: hooks with a working load of 2 lb 8 oz or more; or garland of 6.4 oz a foot or less; or these hooks 4 ft apart or closer along an edge, with no more than 2 ft falling at an end <nil>
}

// The corners of the line, and the end that falls.
func ExampleRun_AppendPath() {
	run := mantel.Run{Hooks: []mantel.Point{{}, {Along: 4 * units.Foot, Below: 3 * units.Foot}}, Right: units.Foot}
	fmt.Println(run.AppendPath(nil, 2))
	// Output: [0 ft along, 0 ft below 2 ft along, 1 ft 6 in below 4 ft along, 3 ft below 4 ft along, 4 ft below] <nil>
}

// Fifteen balusters make 16 gaps of 7.5 in on 10 ft; every fourth one is 30 in on and,
// for 80 in of rise, 20 in up.
func ExampleBanister_Hang() {
	stairs := mantel.Banister{Across: 10 * units.Foot, Rise: 80 * units.Inch, Balusters: 15, Each: 4, Sag: 6 * units.Inch}
	run, err := stairs.Hang()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(run.Hooks)
	loads, err := run.Loads(8*units.Ounce, mantel.Hook{Rating: 10 * units.Pound})
	fmt.Println(len(loads.Hooks), "hooks, the heaviest", loads.Hooks[loads.Heaviest].Along, "from the newel", err)
	// Output:
	// [0 ft along, 0 ft below 2 ft 6 in along, -1 ft 8 in below 5 ft along, -3 ft 4 in below 7 ft 6 in along, -5 ft below 10 ft along, -6 ft 8 in below]
	// 5 hooks, the heaviest 10 ft from the newel <nil>
}

// A door 36 in by 80 in: both sides and the top are 196 in, and 3 in for each corner.
func ExampleFrame_Hang() {
	door := mantel.Frame{Width: 36 * units.Inch, Height: 80 * units.Inch, Corner: 3 * units.Inch}
	run, err := door.Hang()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(run.Garland())
	// Output: 16 ft 10 in <nil>
}

// By hand: on 64 in, 6 stockings 10 in apart take 50 in from the first to the last, so 7 in
// are left at each end. The first is 7 in beside the opening, less half of its 8 in, so 3
// in; the third is in front of it.
func ExampleMantel_Stockings() {
	row, err := teaRoom.Stockings(
		mantel.Stockings{Length: 18 * units.Inch, Width: 8 * units.Inch, Weight: 2 * units.Pound},
		mantel.Hook{Rating: 3 * units.Pound, Working: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(row.Fit, row.Loads.Weight)
	fmt.Println(row.Loads.Hooks[0])
	fmt.Println(row.Clearances.Places[0])
	fmt.Println(row.Clearances.Places[2])
	fmt.Println(row.Clearances)
	// Output:
	// 6 12 lb
	// at 7 in: 2 lb down
	// stocking 1: 3 in from the opening, 3 ft above the hearth
	// stocking 3: 0 ft from the opening, 3 ft above the hearth
	// no fire while this hangs: stocking 2: distance from an open fire 0 ft, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
	// worst: stocking 2: distance from the opening 0 ft, at least 6 in (IRC R1001.11 exception 4, 2018); 11 more
}

// 88 in of garland takes four strings of 25 in. From the bottom of the left end, a foot
// below the shelf, to an outlet 2 ft beside it and 4 ft down is 5 ft.
func ExampleMantel_Lights() {
	l, err := teaRoom.Lights(
		mantel.Hanging{Left: units.Foot, Right: units.Foot},
		mantel.LightString{Lamps: 20, Length: 25 * units.Inch, Outlet: mantel.Point{Along: -2 * units.Foot, Below: 4 * units.Foot}})
	fmt.Println(l.Strings, l.Lamps, l.Cord, l.At, err)
	// Output: 4 80 5 ft left <nil>
}

// IRC R1001.11 exception 4, 2018 edition: an eighth of the distance; ANSI/NFPA 211, 2016
// edition: 1½ in. 7 in away, 7/8 in.
func ExampleStandOut() {
	limits, err := mantel.StandOut(7*units.Inch, false)
	for _, l := range limits {
		fmt.Println(l)
	}
	fmt.Println(err)
	// Output:
	// at most 7/8 in (IRC R1001.11 exception 4, 2018)
	// at most 1 1/2 in (ANSI/NFPA 211, 11.2.5.4, 2016)
	// <nil>
}

// As for StandOut. Beside the opening, from memory: the distance less 6 in.
func ExampleLimit_String() {
	limits, err := mantel.StandOut(9*units.Inch, true)
	fmt.Println(limits[0], err)
	// Output: at most 3 in (IRC R1001.11 exception 4, sides, from memory, edition to be checked) <nil>
}

// As for StandOut, worked out by hand: 6/8, 7/8, 8/8 ... of an inch.
func Example_standOut() {
	fmt.Println("from the opening  IRC above  NFPA 211  IRC beside")
	for _, d := range []units.Length{5, 6, 7, 8, 9, 10, 12, 13} {
		above, err := mantel.StandOut(d*units.Inch, false)
		beside, err2 := mantel.StandOut(d*units.Inch, true)
		if err != nil || err2 != nil {
			fmt.Println(err, err2)
			return
		}
		text := func(l mantel.Limit) string {
			switch {
			case !l.Limited:
				return "no limit"
			case l.Most == 0:
				return "nothing"
			}
			return l.Most.String()
		}
		fmt.Printf("%16v  %9s  %8s  %10s\n", d*units.Inch, text(above[0]), text(above[1]), text(beside[0]))
	}
	// Output:
	// from the opening  IRC above  NFPA 211  IRC beside
	//             5 in    nothing   nothing     nothing
	//             6 in     3/4 in  1 1/2 in    1 1/2 in
	//             7 in     7/8 in  1 1/2 in    1 1/2 in
	//             8 in       1 in  1 1/2 in        2 in
	//             9 in   1 1/8 in  1 1/2 in        3 in
	//            10 in   1 1/4 in  1 1/2 in        4 in
	//             1 ft   1 1/2 in  1 1/2 in        6 in
	//        1 ft 1 in   no limit  no limit        7 in
}

// From memory, no published source: a range to plan with.
func ExampleUsualWeights() {
	for _, w := range mantel.UsualWeights() {
		fmt.Println(w)
	}
	// Output:
	// thin artificial, 2 oz to 4 oz a foot
	// full artificial, 6 oz to 10 oz a foot
	// fresh cedar or fir, 8 oz to 1 lb a foot
}

// As for UsualWeights.
func ExampleWeight_String() {
	fmt.Println(mantel.UsualWeights()[0])
	// Output: thin artificial, 2 oz to 4 oz a foot
}

// What hangs above, as it is said.
func ExampleAbove_String() {
	fmt.Println(mantel.Above{Width: 4 * units.Foot, Height: 2 * units.Foot, Up: 6 * units.Inch, Screen: true})
	// Output: screen 4 ft wide and 2 ft high, 6 in above the shelf
}

// By hand: hooks good for a pound hold 2 ft of 8 oz each; 9 ft take five gaps, so six hooks.
func ExampleHook_Count() {
	fmt.Println(mantel.Hook{Rating: 5 * units.Pound}.Count(9*units.Foot, 8*units.Ounce))
	// Output: 6 <nil>
}

// Common practice: 2 ft more than the shelf falls half at each end, 4 ft more all at
// the heavy side.
func ExampleMantel_FindDrops() {
	h, err := teaRoom.FindDrops(88*units.Inch, mantel.Traditional, mantel.Hanging{})
	fmt.Println(h, err)
	h, err = teaRoom.FindDrops(112*units.Inch, mantel.Asymmetrical, mantel.Hanging{Heavy: mantel.Right})
	fmt.Println(h, err)
	_, err = teaRoom.FindDrops(5*units.Foot, mantel.Traditional, mantel.Hanging{})
	fmt.Println(err)
	// Output:
	// straight along the shelf, falling 1 ft at the left and 1 ft at the right <nil>
	// straight along the shelf, falling 0 ft at the left and 4 ft at the right <nil>
	// mantel.Mantel.FindDrops: garland "5 ft": does not fit: want at least 5 ft 4 in to reach along the shelf
}

// How deep do two swags of 80 in hang on 64 in? By root finding in 40 digits, a garland
// of 40 in over 32 in sags 10.61750 in.
func ExampleMantel_FindSag() {
	h, err := teaRoom.FindSag(80*units.Inch, mantel.Hanging{Swags: 2})
	fmt.Printf("%.4f in %v\n", h.Sag.In(units.Inch), err)
	// Output: 10.6175 in <nil>
}

// Four swags on 64 in take five hooks, 16 in apart.
func ExampleMantel_Hooks() {
	fmt.Println(teaRoom.Hooks(mantel.Hanging{Swags: 4, Sag: 4 * units.Inch}))
	// Output: [0 ft 1 ft 4 in 2 ft 8 in 4 ft 5 ft 4 in] <nil>
}

// The middle of the second of two swags, 48 in along, is as deep as the swag.
func ExampleMantel_Below() {
	fmt.Println(teaRoom.Below(mantel.Hanging{Swags: 2, Sag: 9 * units.Inch}, 48*units.Inch))
	// Output: 9 in <nil>
}

// One swag in two straight pieces, and a foot falling at the right: the path from the
// left end of the shelf by the bottom of the swag.
func ExampleMantel_AppendPath() {
	path, err := teaRoom.AppendPath(nil, mantel.Hanging{Swags: 1, Sag: 9 * units.Inch, Right: units.Foot}, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range path {
		fmt.Println(p)
	}
	// Output:
	// 0 ft along, 0 ft below
	// 2 ft 8 in along, 9 in below
	// 5 ft 4 in along, 0 ft below
	// 5 ft 4 in along, 1 ft below
}

// A point as it is said.
func ExamplePoint_String() {
	fmt.Println(mantel.Point{Along: 2 * units.Foot, Below: 9 * units.Inch})
	// Output: 2 ft along, 9 in below
}

// The garland that OpenStax, Calculus Volume 1, calls y = 10 cosh(x/10), -15 to 15 ft. Of
// a catenary the level pull is the weight of 10 ft of it, and the whole pull at a
// hook the weight of 10 ft and the sag, 13.524 ft more.
func ExampleMantel_Loads() {
	wide := mantel.Mantel{Length: 30 * units.Foot}
	sag, err := units.FromFloat(13.5240962, units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	loads, err := wide.Loads(mantel.Hanging{Swags: 1, Sag: sag}, units.Pound, mantel.Hook{Rating: 100 * units.Pound})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, h := range loads.Hooks {
		fmt.Printf("%.3f lb down, %.3f lb in all, overloaded: %v\n", h.Down.In(units.Pound), h.Total.In(units.Pound), h.Overloaded)
	}
	fmt.Printf("%.3f lb level\n", loads.Hooks[0].Right.In(units.Pound))
	// Output:
	// 21.293 lb down, 23.524 lb in all, overloaded: true
	// 21.293 lb down, 23.524 lb in all, overloaded: true
	// 10.000 lb level
}

// By hand: 8 oz a foot along 64 in, a foot falling at the left and 2 ft at the right.
func ExampleLoads_String() {
	loads, err := teaRoom.Loads(
		mantel.Hanging{Left: units.Foot, Right: 2 * units.Foot}, 8*units.Ounce, mantel.Hook{Rating: 4 * units.Pound})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(loads)
	// Output:
	// weight 4 lb 2.7 oz, hooks at most 5 ft 4 in apart, each good for 12.8 oz
	// at 0 ft: 8 oz down
	// at 5 ft 4 in: 1 lb down, OVERLOADED
	// to hold it: hooks with a breaking load of 5 lb or more; or garland of 6.4 oz a foot or less; or these hooks 1 ft 7 3/16 in apart or closer along an edge, with no more than 9 9/16 in falling at an end
}

// As for Loads.String: a pound at the right, on hooks good for 8 oz.
func ExampleLoads_Need() {
	loads, err := teaRoom.Loads(
		mantel.Hanging{Left: units.Foot, Right: 2 * units.Foot}, 8*units.Ounce, mantel.Hook{Rating: 5 * units.Pound, Factor: 10})
	if err != nil {
		fmt.Println(err)
		return
	}
	need := loads.Need()
	fmt.Printf("%s: %v; %s\n", need.Item, need.Quantity, need.Basis)
	// Output: hooks: 2; 1 at each of 2 places, up to 1 lb on a working load of 8 oz: overloaded at 1; to hold it, hooks with a breaking load of 10 lb or more; or garland of 4 oz a foot or less; or these hooks 1 ft apart or closer along an edge, with no more than 6 in falling at an end
}

// By hand: a pound hangs at the right.
func ExampleHookLoad_String() {
	loads, err := teaRoom.Loads(mantel.Hanging{Right: 2 * units.Foot}, 8*units.Ounce, mantel.Hook{Rating: 5 * units.Pound})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(loads.Hooks[loads.Heaviest])
	// Output: at 5 ft 4 in: 1 lb down
}

// 29 CFR 1919.33 has a factor of 5 for lifting gear: an analogy, that may be raised.
func ExampleHook_WorkingLoad() {
	fmt.Println(mantel.Hook{Rating: 5 * units.Pound}.WorkingLoad())
	fmt.Println(mantel.Hook{Rating: 5 * units.Pound, Factor: 10}.WorkingLoad())
	fmt.Println(mantel.Hook{Rating: 5 * units.Pound, Working: true}.WorkingLoad())
	// Output:
	// 1 lb <nil>
	// 8 oz <nil>
	// 5 lb <nil>
}

// By hand: a pound of garland at 8 oz a foot is 2 ft.
func ExampleHook_Spacing() {
	fmt.Println(mantel.Hook{Rating: 5 * units.Pound}.Spacing(8 * units.Ounce))
	// Output: 2 ft <nil>
}

// A hook as it is said.
func ExampleHook_String() {
	fmt.Println(mantel.Hook{Rating: 5 * units.Pound})
	// Output: hook rated 5 lb, design factor 5
}

// IRC R1001.11 exception 4, 2018 edition: 8 in away, trim may stand out 1 in. This
// shelf is 1½ in deep, which ANSI/NFPA 211, 2016 edition, still allows.
func ExampleMantel_Clearances() {
	m := mantel.Mantel{
		Length: 5 * units.Foot, Height: 4 * units.Foot, Depth: 3 * units.Inch / 2,
		Opening: mantel.Opening{Width: 3 * units.Foot, Height: 2 * units.Foot, Below: 9 * units.Inch},
	}
	clear, err := m.Clearances(mantel.Hanging{Swags: 1, Sag: units.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(clear.Violations)
	fmt.Println(clear.Fire)
	// Output:
	// [swag 1: standing out from the wall 1 1/2 in, at most 1 in (IRC R1001.11 exception 4, 2018)]
	// swag 1: distance from an open fire 8 in, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
}

// As for Mantel.Clearances: no violation where there is no fireplace.
func ExampleClearances_String() {
	clear, err := mantel.Mantel{Length: 5 * units.Foot}.Clearances(mantel.Hanging{Thickness: 8 * units.Inch})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(clear)
	// Output:
	// no opening was given: nothing was checked against a fire
	// no other figure falls short
}

// By hand: a drop of a foot ends 14 in beside the opening and 4 in above its top, so
// √212 = 14.56 in away.
func ExampleClearance_String() {
	clear, err := teaRoom.Clearances(mantel.Hanging{Left: units.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(clear.Places[0])
	// Output: left drop: 1 ft 2 1/2 in from the opening, 3 ft 6 in above the hearth
}

// NFPA and ESFI holiday safety tips: 3 ft from a fire.
func ExampleViolation_String() {
	clear, err := teaRoom.Clearances(mantel.Hanging{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(clear.Fire)
	// Output: along the shelf: distance from an open fire 1 ft 4 in, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
}

// Common practice: fluff, wire, tie in, hang, and then the rest.
func ExampleSteps() {
	d, err := mantel.CommonPractice().Needs(teaRoom, mantel.Hanging{Left: units.Foot, Right: units.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	steps, err := mantel.Steps(mantel.Traditional, d.Needs)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, s := range steps {
		fmt.Printf("%d. %s %q\n", i+1, s.Do, s.Items)
	}
	// Output:
	// 1. Lay the garland on a table and fluff it: spread every tip, first one side and then the other. ["base garland"]
	// 2. Mark the places along the garland, one for each pick, and lay the picks beside them. ["picks, mantel"]
	// 3. Wire each pick to the garland by its stem, while it lies flat. Start with the two beside the middle and work outwards, left and right in turn. ["picks, mantel" "wire ties"]
	// 4. Wire the ornaments into the gaps between the picks. ["ornaments, mantel" "wire ties"]
	// 5. Hang the garland from the middle outwards, and let both ends fall alike. ["base garland"]
	// 6. Step back and measure: drops and swags, and what is between them and the opening and the hearth. []
}

// Common practice, and the usual caution.
func ExampleStep_String() {
	d, err := mantel.CommonPractice().Needs(teaRoom, mantel.Hanging{Left: units.Foot, Right: units.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	steps, err := mantel.Steps(mantel.Traditional, d.Needs)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(steps[3])
	// Output: Wire the ornaments into the gaps between the picks. (ornaments, mantel; wire ties) Mind: breakable ones stay out of reach of children and pets.
}
