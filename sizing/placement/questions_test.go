package placement_test

import (
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Where do 4 balls of 3 in and 8 of 2 in go on a 4 ft 6 in tree in a corner?
// Common practice: large ones low and deep, none where nobody looks. By hand: the
// half that is seen is from 9 by way of 6 to 3 o'clock.
func ExampleLayout_Places_question() {
	layout := placement.Layout{Tree: sizing.Tree{Height: 54 * units.Inch, Exposure: sizing.InCorner}}
	places, err := layout.Places([]shopping.Lot{
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "ball", Size: 3 * units.Inch}, Quantity: shopping.Quantity{Pieces: 4}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "ball", Size: 2 * units.Inch}, Quantity: shopping.Quantity{Pieces: 8}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	seen := true
	for _, p := range places {
		clock := p.Azimuth.Clock()
		seen = seen && 3 <= clock && clock <= 9
	}
	fmt.Println(len(places), "places, all where they are seen:", seen)
	fmt.Println("the topmost, a small one:", places[0])
	for _, p := range places {
		if p.Item.Size == 3*units.Inch {
			fmt.Println("large:", p)
		}
	}
	// Output:
	// 12 places, all where they are seen: true
	// the topmost, a small one: 3 ft 8 in up at 9 o'clock
	// large: 3 ft up at 4 o'clock, 2 in deep
	// large: 1 ft up at 3 o'clock, 4 1/2 in deep
	// large: 8 1/2 in up at 8 o'clock, 5 in deep
	// large: 2 in up at 5 o'clock, 5 1/2 in deep
}
