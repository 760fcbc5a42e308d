package units_test

import (
	"fmt"

	"example.com/fircone/units"
)

// What is a 64 in shelf in feet, yards and meters?
// NIST SP 811, appendix B (from memory): a foot is 0.3048 m exactly.
func ExampleLength_Format_question() {
	shelf, _ := units.ParseLength("64 in")
	fmt.Println(shelf)
	fmt.Println(shelf.Format(units.InFeet, units.Foot/100))
	fmt.Println(shelf.Format(units.InYards, units.Yard/100))
	fmt.Println(shelf.Format(units.InMetric, units.Centimeter))
	// Output:
	// 5 ft 4 in
	// 5.33 ft
	// 1.78 yd
	// 1.63 m
}
