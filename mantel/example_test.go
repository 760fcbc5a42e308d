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
	Length:  64 * units.Inch,
	Height:  54 * units.Inch,
	Depth:   8 * units.Inch,
	Opening: mantel.Rectangle{Width: 36 * units.Inch, Height: 30 * units.Inch, Gap: 16 * units.Inch},
}

// Common practice; each figure worked out by hand, such as 60 in/8 in = 7.5, so 8.
func Example_chart() {
	r := mantel.CommonPractice()
	fmt.Println("         traditional              asymmetrical")
	fmt.Println("shelf    garland picks ornaments  garland picks ornaments")
	for _, feet := range []units.Length{4, 5, 6, 8} {
		shelf := mantel.Mantel{Length: feet * units.Foot}
		fmt.Printf("%d ft   ", feet)
		for _, look := range []mantel.Look{mantel.Traditional, mantel.AsymmetricalLeft} {
			h, _, err := r.Hang(shelf, mantel.Hanging{Look: look}, units.InFeetInches)
			if err != nil {
				fmt.Println(err)
				return
			}
			needs, err := r.Needs(shelf, h, units.InFeetInches)
			if err != nil {
				fmt.Println(err)
				return
			}
			of := map[shopping.Kind]shopping.Quantity{}
			for _, n := range needs {
				of[n.Item.Kind] = n.Quantity
			}
			fmt.Printf("  %7v %5d %9d", of[shopping.BaseGarland].Length, of[shopping.Pick].Pieces, of[shopping.Ornament].Pieces)
		}
		fmt.Println()
	}
	// Output:
	//          traditional              asymmetrical
	// shelf    garland picks ornaments  garland picks ornaments
	// 4 ft        6 ft     6         5     8 ft    16         5
	// 5 ft        7 ft     8         7     9 ft    20         6
	// 6 ft        8 ft     9         8    10 ft    24         7
	// 8 ft       10 ft    12        11    12 ft    32        10
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
	h := mantel.Hanging{Swags: 3, Left: units.Foot, Right: units.Foot, Thickness: 8 * units.Inch}
	run, err := teaRoom.Hang(h)
	if err != nil {
		fmt.Println(err)
		return
	}
	if run, err = run.FindSag(8 * units.Foot); err != nil {
		fmt.Println(err)
		return
	}
	h.Sag = run.Sag
	fmt.Println(h)
	loads, err := run.Loads(8*units.Ounce, mantel.Hook{Rating: 10 * units.Pound}, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(loads)
	clear, err := teaRoom.Clearances(h, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(clear)
	// Output:
	// 3 swags 4 13/16 in deep, falling 1 ft at the left and 1 ft at the right
	// weight 4 lb, hooks up to 1 ft 9 3/8 in apart, each good for 2 lb
	// at 0 ft: 1 lb down, 8.4 oz to the right
	// at 1 ft 9 5/16 in: 1 lb down
	// at 3 ft 6 11/16 in: 1 lb down
	// at 5 ft 4 in: 1 lb down, 8.4 oz to the left
	// no fire while this hangs: swag 2: distance from an open fire 7 1/8 in, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
	// worst: swag 2: standing out from the wall 1 ft, at most 7/8 in (IRC R1001.11 exception 4, 2018); 9 more
}

// The garland that swags take, rounded up to the inch. Every length was worked out in 40
// digits by root finding on the formulas of OpenStax, Calculus Volume 1, Calculus of the
// Hyperbolic Functions: three swags 4 in deep on 48 in take 55.3 in, so 56.
func Example_swags() {
	fmt.Println("shelf  swags   sag 4    6    8   12 in")
	for _, shelf := range []units.Length{48, 60, 72, 96} {
		for swags := 1; swags <= 3; swags++ {
			fmt.Printf("%2d in  %5d   ", shelf, swags)
			for _, sag := range []units.Length{4, 6, 8, 12} {
				run, err := mantel.Mantel{Length: shelf * units.Inch}.Hang(mantel.Hanging{Swags: swags, Sag: sag * units.Inch})
				if err != nil {
					fmt.Println(err)
					return
				}
				needs, err := run.Needs(0, units.InFeetInches)
				if err != nil {
					fmt.Println(err)
					return
				}
				fmt.Printf("%5.0f", needs[0].Quantity.Length.In(units.Inch))
			}
			fmt.Println()
		}
	}
	// Output:
	// shelf  swags   sag 4    6    8   12 in
	// 48 in      1      49   50   52   56
	// 48 in      2      52   56   61   72
	// 48 in      3      56   63   72   93
	// 60 in      1      61   62   63   66
	// 60 in      2      63   66   71   81
	// 60 in      3      66   73   81  100
	// 72 in      1      73   74   75   78
	// 72 in      2      75   78   81   91
	// 72 in      3      78   83   91  108
	// 96 in      1      97   97   98  100
	// 96 in      2      98  100  103  111
	// 96 in      3     100  105  111  126
}

// A parabola of the same span and sag is the usual stand-in for the catenary, as
// span/2 · (√(1 + k²) + asinh(k)/k) with k = 4·sag/span. Both columns were worked out
// in 40 digits: 61.5712 and 61.5636 in, 69.0475 and 68.8676, 89.7500 and 88.7366,
// 142.2612 and 139.4035, 257.2247 and 252.2795.
func Example_parabola() {
	const span = 60 * units.Inch
	fmt.Println("sag, inches    6    15    30    60    120")
	var exact, flat string
	for _, sag := range []units.Length{6, 15, 30, 60, 120} {
		run := mantel.Run{Hooks: []mantel.Point{{}, {Along: span}}, Sag: sag * units.Inch}
		length, err := run.Garland()
		if err != nil {
			fmt.Println(err)
			return
		}
		k := 4 * float64(sag) / span.In(units.Inch)
		exact += fmt.Sprintf("%6.1f", length.In(units.Inch))
		flat += fmt.Sprintf("%6.1f", span.In(units.Inch)/2*(math.Sqrt(1+k*k)+math.Asinh(k)/k))
	}
	fmt.Println("catenary  " + exact)
	fmt.Println("parabola  " + flat)
	// Output:
	// sag, inches    6    15    30    60    120
	// catenary    61.6  69.0  89.8 142.3 257.2
	// parabola    61.6  68.9  88.7 139.4 252.3
}

// By hand: a hook rated 5 lb may carry a pound, which is 4 ft of 4 oz, 2 ft of 8 oz.
func Example_hooks() {
	fmt.Println("           each     inches apart, for garland of")
	fmt.Println("hook rated carries    4 oz    8 oz   12 oz   16 oz a foot")
	for _, pounds := range []units.Mass{1, 3, 5, 10, 20} {
		hook := mantel.Hook{Rating: pounds * units.Pound}
		working, err := hook.WorkingLoad()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%7d lb %4.1f oz ", pounds, working.In(units.Ounce))
		for _, ounces := range []units.Mass{4, 8, 12, 16} {
			_, apart, err := hook.Count(units.Foot, ounces*units.Ounce)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf("%8.1f", apart.In(units.Inch))
		}
		fmt.Println()
	}
	// Output:
	//            each     inches apart, for garland of
	// hook rated carries    4 oz    8 oz   12 oz   16 oz a foot
	//       1 lb  3.2 oz      9.6     4.8     3.2     2.4
	//       3 lb  9.6 oz     28.8    14.4     9.6     7.2
	//       5 lb 16.0 oz     48.0    24.0    16.0    12.0
	//      10 lb 32.0 oz     96.0    48.0    32.0    24.0
	//      20 lb 64.0 oz    192.0    96.0    64.0    48.0
}

// As for StandOut, worked out by hand: 6/8, 7/8, 8/8 ... of an inch.
func Example_standOut() {
	fmt.Println("inches from   inches that it may stand out")
	fmt.Println("the opening   IRC above  NFPA 211  IRC beside")
	for _, d := range []units.Length{5, 6, 7, 8, 9, 10, 12, 13} {
		above, err := mantel.StandOut(d*units.Inch, false)
		beside, err2 := mantel.StandOut(d*units.Inch, true)
		if err != nil || err2 != nil {
			fmt.Println(err, err2)
			return
		}
		text := func(list []mantel.Clearance, source string) string {
			for _, c := range list {
				if c.Source[:3] == source {
					return fmt.Sprintf("%.3f", c.Allowed.In(units.Inch))
				}
			}
			return "any"
		}
		fmt.Printf("%11d   %9s  %8s  %10s\n", d, text(above, "IRC"), text(above, "ANS"), text(beside, "IRC"))
	}
	// Output:
	// inches from   inches that it may stand out
	// the opening   IRC above  NFPA 211  IRC beside
	//           5       0.000     0.000       0.000
	//           6       0.750     1.500       1.500
	//           7       0.875     1.500       1.500
	//           8       1.000     1.500       2.000
	//           9       1.125     1.500       3.000
	//          10       1.250     1.500       4.000
	//          12       1.500     1.500       6.000
	//          13         any       any       7.000
}

// Words of the trade.
func ExampleLook_UnmarshalText() {
	for _, text := range []string{"Symmetrical", "asymmetrical", "asymmetric right", "rustic"} {
		var look mantel.Look
		err := look.UnmarshalText([]byte(text))
		fmt.Println(look, err)
	}
	// Output:
	// traditional <nil>
	// asymmetrical left <nil>
	// asymmetrical right <nil>
	// traditional mantel.Look.UnmarshalText: text "rustic": unknown name: want traditional, asymmetrical left or asymmetrical right
}

// Words of the trade.
func ExampleLook_String() {
	fmt.Println(mantel.Traditional, mantel.AsymmetricalLeft, mantel.Look(9))
	// Output: traditional asymmetrical left Look(9)
}

// A look is its name in JSON.
func ExampleLook_MarshalText() {
	text, err := json.Marshal(map[string]mantel.Look{"look": mantel.AsymmetricalRight})
	fmt.Println(string(text), err)
	// Output: {"look":"asymmetrical right"} <nil>
}

// A look is its name in a database.
func ExampleLook_Value() {
	fmt.Println(mantel.AsymmetricalRight.Value())
	// Output: asymmetrical right <nil>
}

// A look is read by its name from a database.
func ExampleLook_Scan() {
	var look mantel.Look
	err := look.Scan([]byte("asymmetrical right"))
	fmt.Println(look, err)
	// Output: asymmetrical right <nil>
}

// A program can tell what is wrong, and with which field.
func ExampleMantel_Hang() {
	run, err := teaRoom.Hang(mantel.Hanging{Swags: 4, Sag: 4 * units.Inch})
	fmt.Println(len(run.Hooks), "hooks, the second at", run.Hooks[1].Along, err)
	_, err = teaRoom.Hang(mantel.Hanging{Left: 5 * units.Foot})
	fmt.Println(err)
	var refused *units.Error
	if errors.As(err, &refused) {
		fmt.Println(refused.Field, refused.Value, errors.Is(err, units.ErrFit))
	}
	// Output:
	// 5 hooks, the second at 1 ft 4 in <nil>
	// mantel.Mantel.Hang: /hanging/left "5 ft": does not fit: want at most 4 ft 6 in, from the shelf to the hearth
	// /hanging/left 5 ft true
}

// Common practice. A shop that likes its picks closer changes one figure; one that ties
// a bow in the middle of a traditional mantel, two more: 1½ yd is 54 in.
func ExampleCommonPractice() {
	r := mantel.CommonPractice()
	r.Traditional.PickSpacing = 6 * units.Inch
	r.Traditional.Ribbon, r.Traditional.Bells = 54*units.Inch, 2
	needs, err := r.Needs(mantel.Mantel{Length: 5 * units.Foot}, mantel.Hanging{Left: units.Foot, Right: units.Foot}, units.InFeetInches)
	for _, n := range needs {
		fmt.Printf("%s: %v; %s\n", n.Item, n.Quantity, n.Basis)
	}
	fmt.Println(err)
	// Output:
	// base garland: 7 ft; shelf of 5 ft and 2 ft more
	// picks, mantel: 10; 1 for each 6 in of 5 ft
	// ornaments, mantel: 9; 1 in each of 9 gaps between picks
	// ribbon, mantel: 1 of 4 ft 6 in; one bow or fall in the middle
	// bells: 2; hung with the ribbon
	// wire ties: 20; 1 for each of 10 picks and 9 ornaments, 1 for the ribbon
	// <nil>
}

// A shelf 44 in above the hearth: by rule 48 in would fall at the heavy end. A starting
// figure of our own: it stays 6 in above the hearth.
func ExampleRules_Hang() {
	low := mantel.Mantel{Length: 64 * units.Inch, Height: 44 * units.Inch}
	h, cautions, err := mantel.CommonPractice().Hang(low, mantel.Hanging{Look: mantel.AsymmetricalLeft}, units.InFeetInches)
	fmt.Println(h, err)
	fmt.Println(cautions[0].Text)
	// Output:
	// straight along the shelf, falling 3 ft 2 in at the left and 0 ft at the right <nil>
	// the shelf is too low for the ends that the rule asks for: the left end falls 3 ft 2 in, not 4 ft
}

// Common practice, and starting figures of our own; each need says which. Two swags 9 in
// deep take 75.944 in, by root finding in 40 digits, and the ends 24 in. 64/3 is 21.3, so
// 22 picks; a third of 64 in holds 8 of them, with 7 gaps; 22 + 7 + 1 ties.
func ExampleRules_Needs() {
	needs, err := mantel.CommonPractice().Needs(teaRoom, mantel.Hanging{
		Swags: 2, Sag: 9 * units.Inch, Left: units.Foot, Right: units.Foot, Look: mantel.AsymmetricalLeft,
	}, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range needs {
		fmt.Printf("%s: %v; %s (%s)\n", n.Item, n.Quantity, n.Basis, n.Source)
	}
	// Output:
	// base garland: 8 ft 4 in; 6 ft 3 15/16 in in 2 swags 9 in deep, 1 ft falling at the left, 1 ft at the right; by rule 9 ft 4 in, 1 ft less (length of a catenary)
	// picks, mantel: 22; 1 for each 3 in of 5 ft 4 in (common practice)
	// ornaments, mantel: 7; 1 in each of 7 gaps between picks of the top layer (a starting figure of our own)
	// ribbon, mantel: 1 of 4 ft 6 in; one bow or fall at the heavy end (common practice)
	// bells: 3; hung with the ribbon (a starting figure of our own)
	// wire ties: 30; 1 for each of 22 picks and 7 ornaments, 1 for the ribbon (a starting figure of our own)
}

// Common practice: picks 8 in apart; two on 12 in leave 4 in, 2 at each end. Or 3 in apart,
// from the heavy end on.
func ExampleRules_Spots() {
	shelf := mantel.Mantel{Length: 12 * units.Inch}
	for _, look := range []mantel.Look{mantel.Traditional, mantel.AsymmetricalRight} {
		spots, err := mantel.CommonPractice().Spots(shelf, look)
		if err != nil {
			fmt.Println(err)
			return
		}
		for _, s := range spots[:3] {
			fmt.Printf("%v at %v, layer %d\n", s.Item, s.Along, s.Layer)
		}
	}
	// Output:
	// picks, mantel at 2 in, layer 1
	// picks, mantel at 10 in, layer 1
	// ornaments, mantel at 6 in, layer 2
	// picks, mantel at 3 in, layer 1
	// picks, mantel at 6 in, layer 2
	// picks, mantel at 9 in, layer 3
}

// A hanging as it is said.
func ExampleHanging_String() {
	fmt.Println(mantel.Hanging{Swags: 2, Sag: 9 * units.Inch, Left: units.Foot, Right: units.Foot})
	// Output: 2 swags 9 in deep, falling 1 ft at the left and 1 ft at the right
}

// Common practice: 2 ft more than the shelf falls half at each end, 4 ft more all at
// the heavy end.
func ExampleMantel_FindDrops() {
	h, err := teaRoom.FindDrops(88*units.Inch, mantel.Hanging{})
	fmt.Println(h, err)
	h, err = teaRoom.FindDrops(112*units.Inch, mantel.Hanging{Look: mantel.AsymmetricalRight})
	fmt.Println(h, err)
	_, err = teaRoom.FindDrops(5*units.Foot, mantel.Hanging{})
	fmt.Println(err)
	// Output:
	// straight along the shelf, falling 1 ft at the left and 1 ft at the right <nil>
	// straight along the shelf, falling 0 ft at the left and 4 ft at the right <nil>
	// mantel.Mantel.FindDrops: garland "5 ft": does not fit: want at least 5 ft 4 in to reach along the shelf
}

// Part of the cable of OpenStax, Calculus Volume 1, Calculus of the Hyperbolic Functions,
// y = 10 cosh(x/10), which is 20 sinh 1.5 = 42.586 ft long from -15 to 15 ft: from -5 to
// 15 ft it rises 12.248 ft, hangs 5.124 ft below the middle of its chord, and is
// 10 sinh 0.5 + 10 sinh 1.5 long. Its pull is the weight of 10 ft level, of 5.211 ft down
// on the left and of 21.293 ft on the right.
func cable() mantel.Run {
	rise, err := units.FromFloat(10*(math.Cosh(1.5)-math.Cosh(0.5)), units.Foot)
	if err != nil {
		panic(err)
	}
	return mantel.Run{Hooks: []mantel.Point{{}, {Along: 20 * units.Foot, Below: -rise}}, Sag: rise / 2}
}

// As for cable: 5.211 + 21.293 ft.
func ExampleRun_Garland() {
	garland, err := cable().Garland()
	fmt.Printf("%.3f ft %v\n", garland.In(units.Foot), err)
	// Output: 26.504 ft <nil>
}

// A textbook exercise: a wire of 51 ft over a span of 50 ft sags 4.360 ft.
func ExampleRun_FindSag() {
	wire := mantel.Run{Hooks: []mantel.Point{{}, {Along: 50 * units.Foot}}}
	wire, err := wire.FindSag(51 * units.Foot)
	fmt.Printf("%.3f ft %v\n", wire.Sag.In(units.Foot), err)
	// Output: 4.360 ft <nil>
}

// A swag 5 ft wide and 9 in deep hangs 6.797 in below its hooks at a quarter of its
// span, by root finding in 40 digits; a parabola would hang 6.75 in.
func ExampleRun_Below() {
	swag := mantel.Run{Hooks: []mantel.Point{{}, {Along: 5 * units.Foot}}, Sag: 9 * units.Inch}
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

// As for cable, at a pound a foot.
func ExampleRun_Loads() {
	loads, err := cable().Loads(units.Pound, mantel.Hook{Rating: 25 * units.Pound, Factor: 1}, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, h := range loads.Hooks {
		fmt.Printf("%.3f lb down, %.3f lb level\n", h.Down.In(units.Pound), (h.Left + h.Right).In(units.Pound))
	}
	// Output:
	// 5.211 lb down, 10.000 lb level
	// 21.293 lb down, 10.000 lb level
}

// Two straight lines of 3, 4 and 5 ft, and a foot falling. Common practice: a pick each
// 8 in; 132/8 is 16.5.
func ExampleRun_Needs() {
	run := mantel.Run{
		Hooks: []mantel.Point{{}, {Along: 4 * units.Foot, Below: 3 * units.Foot}, {Along: 8 * units.Foot}},
		Right: units.Foot,
	}
	needs, err := run.Needs(8*units.Inch, units.InFeetInches)
	for _, n := range needs {
		fmt.Printf("%s: %v; %s\n", n.Item, n.Quantity, n.Basis)
	}
	fmt.Println(err)
	// Output:
	// base garland: 11 ft; 10 ft close along 3 hooks, 0 ft falling at the left, 1 ft at the right
	// picks, garland: 17; 1 for each 8 in of 11 ft
	// wire ties: 17; 1 for each of 17 picks
	// <nil>
}

// One swag in two straight pieces, and a foot falling at the right: by the bottom of the
// swag.
func ExampleRun_AppendPath() {
	run := mantel.Run{Hooks: []mantel.Point{{}, {Along: 64 * units.Inch}}, Sag: 9 * units.Inch, Right: units.Foot}
	fmt.Println(run.AppendPath(nil, 2))
	// Output: [{0 ft 0 ft} {2 ft 8 in 9 in} {5 ft 4 in 0 ft} {5 ft 4 in 1 ft}] <nil>
}

// 88 in of garland takes four strings of 25 in. From the bottom of the left end, a foot
// below the shelf, to an outlet 2 ft beside it and 4 ft down is 5 ft.
func ExampleRun_Lights() {
	run, err := teaRoom.Hang(mantel.Hanging{Left: units.Foot, Right: units.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	need, cord, cautions, err := run.Lights(20, 25*units.Inch, mantel.Point{Along: -2 * units.Foot, Below: 4 * units.Foot}, units.InFeetInches)
	fmt.Println(need.Quantity, need.Basis, err)
	fmt.Println(cord, cautions[0].Code)
	// Output:
	// 80 4 strings of 20 on 2 ft 1 in, along 7 ft 4 in of garland <nil>
	// 5 ft cords
}

// Fifteen balusters make 16 gaps of 7.5 in on 10 ft; every fourth one is 30 in on and,
// for 80 in of rise, 20 in up. A swag 30 in wide that rises 20 in and sags 6 in weighs
// 1.050 oz on its lower hook and 24.218 oz on its upper one at 8 oz a foot, and pulls both
// with 15.250 oz: by root finding in 50 digits.
func ExampleStairs() {
	stairs, cautions, err := mantel.Stairs(mantel.Point{}, mantel.Point{Along: 10 * units.Foot, Below: -80 * units.Inch}, 15, 4)
	if err != nil {
		fmt.Println(err)
		return
	}
	stairs.Sag = 6 * units.Inch
	fmt.Println(stairs.Hooks)
	fmt.Println(cautions[0].Text)
	loads, err := stairs.Loads(8*units.Ounce, mantel.Hook{Rating: 10 * units.Pound}, units.InFeetInches)
	fmt.Println(loads.Hooks[0], err)
	fmt.Println(loads.Hooks[4])
	// Output:
	// [{0 ft 0 ft} {2 ft 6 in -1 ft 8 in} {5 ft -3 ft 4 in} {7 ft 6 in -5 ft} {10 ft -6 ft 8 in}]
	// keep the handrail clear for hands, and the garland off the treads
	// at 0 ft: 1.1 oz down, 15.3 oz to the right <nil>
	// at 10 ft: 1 lb 8.2 oz down, 15.3 oz to the left
}

// A door 36 in by 80 in: both sides and the top are 196 in, and 3 in for each corner.
func ExampleDoor() {
	door, cautions, err := mantel.Door(mantel.Point{Along: 36 * units.Inch, Below: 80 * units.Inch}, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	door.Left += 3 * units.Inch
	door.Right += 3 * units.Inch
	fmt.Println(door.Garland())
	fmt.Println(cautions[0].Text)
	// Output:
	// 16 ft 10 in <nil>
	// keep a door free to open and close, and an exit clear and its sign in view; local code decides
}

// 29 CFR 1919.33 has a factor of 5 for lifting gear: an analogy, that may be raised. The
// third label states a working load.
func ExampleHook_WorkingLoad() {
	fmt.Println(mantel.Hook{Rating: 5 * units.Pound}.WorkingLoad())
	fmt.Println(mantel.Hook{Rating: 5 * units.Pound, Factor: 10}.WorkingLoad())
	fmt.Println(mantel.Hook{Rating: 5 * units.Pound, Factor: 1}.WorkingLoad())
	// Output:
	// 1 lb <nil>
	// 8 oz <nil>
	// 5 lb <nil>
}

// By hand: hooks good for a pound hold 2 ft of 8 oz each; 9 ft take five gaps, so six hooks.
func ExampleHook_Count() {
	fmt.Println(mantel.Hook{Rating: 5 * units.Pound}.Count(9*units.Foot, 8*units.Ounce))
	// Output: 6 2 ft <nil>
}

// By hand: 8 oz a foot along 64 in, a foot falling at the left and 2 ft at the right, on
// hooks good for 12.8 oz.
func ExampleLoads_String() {
	run, err := teaRoom.Hang(mantel.Hanging{Left: units.Foot, Right: 2 * units.Foot})
	if err != nil {
		fmt.Println(err)
		return
	}
	loads, err := run.Loads(8*units.Ounce, mantel.Hook{Rating: 4 * units.Pound}, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(loads)
	fmt.Println(loads.Needs[0].Item, loads.Needs[0].Quantity)
	// Output:
	// weight 4 lb 2.7 oz, hooks up to 5 ft 4 in apart, each good for 12.8 oz
	// at 0 ft: 8 oz down
	// at 5 ft 4 in: 1 lb down, OVERLOADED
	// more than a hook may carry at 1 place: use hooks with a breaking load of 5 lb or more; or garland of 6.4 oz a foot or less; or these hooks 1 ft 7 3/16 in apart or closer along an edge, with no more than 9 9/16 in falling at an end
	// hooks 2
}

// By hand: 2 ft of 8 oz hang at the first hook.
func ExampleHookLoad_String() {
	run := mantel.Run{Hooks: []mantel.Point{{}, {Along: 4 * units.Foot}}, Left: 2 * units.Foot, Lying: true}
	loads, err := run.Loads(8*units.Ounce, mantel.Hook{Rating: 5 * units.Pound}, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(loads.Hooks[0])
	// Output: at 0 ft: 1 lb down
}

// IRC R1001.11 exception 4, 2018 edition: 8 in away, trim may stand out 1 in. This
// shelf is 1½ in deep, which ANSI/NFPA 211, 2016 edition, still allows.
func ExampleMantel_Clearances() {
	m := mantel.Mantel{
		Length: 5 * units.Foot, Height: 4 * units.Foot, Depth: 3 * units.Inch / 2,
		Opening: mantel.Rectangle{Width: 3 * units.Foot, Height: 2 * units.Foot, Gap: 9 * units.Inch},
	}
	clear, err := m.Clearances(mantel.Hanging{Swags: 1, Sag: units.Inch}, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range clear.Places {
		fmt.Println(c)
	}
	fmt.Println(clear.Violations)
	// Output:
	// swag 1: distance from the opening 8 in, at least 6 in (IRC R1001.11 exception 4, 2018)
	// swag 1: height above the hearth 3 ft 11 in, at least 0 ft (common practice)
	// [swag 1: standing out from the wall 1 1/2 in, at most 1 in (IRC R1001.11 exception 4, 2018)]
}

// As for Mantel.Clearances: no figure falls short where there is no fireplace.
func ExampleClearances_String() {
	clear, err := mantel.Mantel{Length: 5 * units.Foot, Height: 4 * units.Foot}.Clearances(mantel.Hanging{Thickness: 8 * units.Inch}, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(clear)
	// Output:
	// no opening was given: nothing was checked against a fire
	// no other figure falls short
}

// NFPA and ESFI holiday safety tips: 3 ft from a fire.
func ExampleClearance_String() {
	clear, err := teaRoom.Clearances(mantel.Hanging{}, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(clear.Fire)
	// Output: along the shelf: distance from an open fire 1 ft 4 in, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
}

// IRC R1001.11 exception 4, 2018 edition: an eighth of the distance; ANSI/NFPA 211, 2016
// edition: 1½ in. 7 in away, 7/8 in. Beside the opening, from memory: the distance less 6 in.
func ExampleStandOut() {
	above, err := mantel.StandOut(7*units.Inch, false)
	for _, c := range above {
		fmt.Println(c)
	}
	beside, err2 := mantel.StandOut(9*units.Inch, true)
	fmt.Println(beside[0], err, err2)
	// Output:
	// at most 7/8 in (IRC R1001.11 exception 4, 2018)
	// at most 1 1/2 in (ANSI/NFPA 211, 11.2.5.4, 2016)
	// at most 3 in (IRC R1001.11 exception 4, sides, from memory, edition to be checked) <nil> <nil>
}

// By hand: on 64 in, 6 stockings 10 in apart take 50 in from the first to the last, so 7 in
// are left at each end. The first is 7 in beside the opening, less half of its 8 in, so 3
// in; the third is in front of it.
func ExampleMantel_Stockings() {
	loads, clear, err := teaRoom.Stockings(
		mantel.Stockings{Length: 18 * units.Inch, Thickness: 8 * units.Inch, Weight: 2 * units.Pound},
		mantel.Hook{Rating: 3 * units.Pound, Factor: 1}, mantel.Clearances{}, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range loads.Needs {
		fmt.Printf("%s: %v; %s\n", n.Item, n.Quantity, n.Basis)
	}
	fmt.Println(loads.Hooks[0])
	fmt.Println(clear.Places[0])
	fmt.Println(clear)
	// Output:
	// stockings: 6; 10 in apart on 5 ft 4 in, where 6 fit
	// hooks: 6; 1 for each of 6 stockings, up to 2 lb on a working load of 3 lb
	// at 7 in: 2 lb down
	// stocking 1: distance from the opening 3 in, at least 6 in (IRC R1001.11 exception 4, 2018)
	// no fire while this hangs: stocking 2: distance from an open fire 0 ft, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
	// worst: stocking 2: distance from the opening 0 ft, at least 6 in (IRC R1001.11 exception 4, 2018); 11 more
}

// Common practice, and the usual cautions: fluff, wire, tie in, hang, and then the rest.
func ExampleSteps() {
	needs, err := mantel.CommonPractice().Needs(teaRoom, mantel.Hanging{Left: units.Foot, Right: units.Foot}, units.InFeetInches)
	if err != nil {
		fmt.Println(err)
		return
	}
	steps, err := mantel.Steps(mantel.Hanging{Left: units.Foot, Right: units.Foot}, needs)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, s := range steps {
		fmt.Printf("%d. %s %q (%s)\n", i+1, s.Do, s.Uses, s.Caution.Text)
	}
	// Output:
	// 1. Lay the garland on a table and fluff it: spread every tip, first one side and then the other. ["base garland: 7 ft 4 in"] ()
	// 2. Mark the places along the garland, one for each pick, and lay the picks beside them. ["picks, mantel: 8"] ()
	// 3. Wire each pick to the garland by its stem, while it lies flat. Start with the two beside the middle and work outwards, left and right in turn. ["picks, mantel: 8" "wire ties: 8"] (wire ends are sharp)
	// 4. Wire the ornaments into the gaps between the picks. ["ornaments, mantel: 7" "wire ties: 7"] (breakable ones stay out of reach of children and pets)
	// 5. Hang the garland from the middle outwards, and let both ends fall alike. ["base garland: 7 ft 4 in"] (two people lift a dressed garland, one at each end)
	// 6. Step back and measure: drops and swags, and what is between them and the opening and the hearth. [] (the garland comes down before a fire is lit)
}

// By hand: 64 in in three swags.
func ExampleRun_String() {
	run, err := teaRoom.Hang(mantel.Hanging{Swags: 3, Sag: 6 * units.Inch, Left: units.Foot, Right: units.Foot})
	fmt.Println(run, err)
	// Output: 3 swags 6 in deep over 5 ft 4 in, falling 1 ft at the left and 1 ft at the right <nil>
}
