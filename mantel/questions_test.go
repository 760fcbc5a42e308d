package mantel_test

import (
	"fmt"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// How long is the garland for a 64 in mantel?
// Common practice: 2 ft more than the shelf, or 4 ft if one side is to be heavy.
func ExampleRules_Needs_question() {
	rules, shelf := mantel.CommonPractice(), mantel.Mantel{Length: 64 * units.Inch}
	for _, look := range []mantel.Look{mantel.Traditional, mantel.AsymmetricalLeft} {
		h, _, _ := rules.Hang(shelf, mantel.Hanging{Look: look}, units.InFeetInches)
		needs, _ := rules.Needs(shelf, h, units.InFeetInches)
		fmt.Println(needs[0].Quantity, look)
	}
	// Output:
	// 7 ft 4 in traditional
	// 9 ft 4 in asymmetrical left
}

// Where do the picks of a traditional 64 in mantel go?
// Common practice: one each 8 in. By hand: eight of them span 56 in, and half of
// the 8 in that are left is at each end.
func ExampleRules_Spots_question() {
	rules := mantel.CommonPractice()
	spots, _ := rules.Spots(mantel.Mantel{Length: 64 * units.Inch}, mantel.Traditional)
	for _, s := range spots {
		if s.Item == (shopping.Item{Kind: shopping.Pick, Type: "mantel"}) {
			fmt.Print(s.Along.Format(units.InInches, units.Inch/4), " ")
		}
	}
	fmt.Println("from the left")
	// Output: 4 in 12 in 20 in 28 in 36 in 44 in 52 in 60 in from the left
}

// How far do the ends of a 9 ft garland fall on a traditional 64 in mantel?
// By hand: 108 in less 64 in is 44 in, half of it at each end.
func ExampleMantel_FindDrops_question() {
	m := mantel.Mantel{Length: 64 * units.Inch}
	h, _ := m.FindDrops(9*units.Foot, mantel.Hanging{})
	fmt.Println(h)
	// Output: straight along the shelf, falling 1 ft 10 in at the left and 1 ft 10 in at the right
}

// How much garland do two swags 8 in deep take on a 64 in mantel, with ends that
// fall a foot? By hand, for a shallow swag: 32 in and 8/3 · 8²/32 = 5.3 in more
// each, so 24 + 2 · 37.3 in is 98.7 in by the parabola, and the catenary takes less.
func ExampleRun_Garland_question() {
	m := mantel.Mantel{Length: 64 * units.Inch}
	run, _ := m.Hang(mantel.Hanging{Swags: 2, Sag: 8 * units.Inch, Left: units.Foot, Right: units.Foot})
	garland, _ := run.Garland()
	fmt.Println(garland.Format(units.InFeetInches, units.Inch/4))
	// Output: 8 ft 1 3/4 in
}

// Will hooks rated 5 lb hold 8 oz a foot in two swags 8 in deep on 64 in, a foot
// falling at each end? The design factor of 5 is by analogy, 29 CFR 1919.33. By hand:
// a working load of 1 lb. Half a swag is 18.4 in or 12.3 oz, so the middle hook carries 24.6 oz; an
// end hook carries 12.3 + 8 oz down and the pull of 8 oz/ft · 17.2 in = 11.5 oz, and
// √(20.3² + 11.5²) = 23.3.
func ExampleRun_Loads_question() {
	m := mantel.Mantel{Length: 64 * units.Inch}
	run, _ := m.Hang(mantel.Hanging{Swags: 2, Sag: 8 * units.Inch, Left: units.Foot, Right: units.Foot})
	loads, _ := run.Loads(units.Pound/2, mantel.Hook{Rating: 5 * units.Pound}, units.InFeetInches)
	for _, hook := range loads.Hooks {
		fmt.Println(hook.At.Along, hook.Total.Format(units.InInches, units.Ounce/10), "overloaded:", hook.Total > loads.Working)
	}
	fmt.Println("each may carry", loads.Working.Format(units.InInches, units.Ounce/10))
	// Output:
	// 0 ft 23.3 oz overloaded: true
	// 2 ft 8 in 24.6 oz overloaded: true
	// 5 ft 4 in 23.3 oz overloaded: true
	// each may carry 16 oz
}

// Is a garland 2 in above the opening clear? IRC R1001.11
// exception 4 and NFPA 211, as quoted: nothing within 6 in of the opening. By hand: two swags 8 in deep reach
// within 10 - 8 = 2 in of an opening 10 in below the shelf.
func ExampleMantel_Clearances_question() {
	m := mantel.Mantel{
		Length:  64 * units.Inch,
		Height:  54 * units.Inch,
		Depth:   7 * units.Inch,
		Opening: mantel.Rectangle{Width: 36 * units.Inch, Height: 30 * units.Inch, Gap: 10 * units.Inch},
	}
	c, _ := m.Clearances(mantel.Hanging{Swags: 2, Sag: 8 * units.Inch, Left: units.Foot, Right: units.Foot}, units.InFeetInches)
	fmt.Println(c)
	// Output:
	// no fire while this hangs: swag 1: distance from an open fire 2 in, at least 3 ft (NFPA and ESFI holiday safety tips, undated)
	// worst: swag 1: distance from the opening 2 in, at least 6 in (IRC R1001.11 exception 4, 2018); 3 more
}
