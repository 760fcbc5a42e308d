package placement_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"

	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// ticketHall is the tree in the ticket hall of the station, 9 ft, its top 10 in left for
// the star, and what hangs on it: of nine types 16 pieces of 5½ in, 24 of 4 in and 41
// of 2½ in.
func ticketHall() (placement.Layout, []shopping.Lot) {
	layout := placement.Layout{Tree: sizing.Tree{Height: 9 * units.Foot, BareTip: 10 * units.Inch}}
	const large, medium, small = 11 * units.Inch / 2, 4 * units.Inch, 5 * units.Inch / 2
	return layout, []shopping.Lot{
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "globe", Size: large, Color: "red"}, Quantity: shopping.Quantity{Pieces: 8}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "lantern", Size: large, Color: "cream"}, Quantity: shopping.Quantity{Pieces: 8}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "drum", Size: medium, Color: "brass"}, Quantity: shopping.Quantity{Pieces: 8}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "bell", Size: medium, Color: "blue"}, Quantity: shopping.Quantity{Pieces: 8}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "locomotive", Size: medium, Color: "red"}, Quantity: shopping.Quantity{Pieces: 8}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "pine cone", Size: small, Color: "cream"}, Quantity: shopping.Quantity{Pieces: 10}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "star", Size: small, Color: "brass"}, Quantity: shopping.Quantity{Pieces: 10}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "whistle", Size: small, Color: "blue"}, Quantity: shopping.Quantity{Pieces: 10}},
		{Item: shopping.Item{Kind: shopping.Ornament, Type: "snowflake", Size: small, Color: "red"}, Quantity: shopping.Quantity{Pieces: 11}},
	}
}

// Common practice: a type for each foot, 7 to 11 of each. By hand: 5·8 + 3·10 + 11 = 81
// pieces, and small ones at the top.
func ExampleLayout_Places() {
	layout, pieces := ticketHall()
	places, err := layout.Places(pieces)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range places[:3] {
		fmt.Println(p.Item.Type, p)
	}
	fmt.Println(len(places), "places")
	// Output:
	// whistle 7 ft 10 1/2 in up at 4 o'clock
	// pine cone 7 ft 2 in up at 7 o'clock
	// drum 7 ft 2 1/2 in up at 11 o'clock, 1 in deep
	// 81 places
}

// Common practice: large ones lower and deeper. By hand: 2·8, 3·8 and 3·10 + 11 pieces,
// and a surface of 86.2 sq ft for 81, in which a hexagonal pattern has 13.3 in
// from each to the next; what is set back comes nearer.
func Example_ticketHall() {
	layout, pieces := ticketHall()
	places, err := layout.Places(pieces)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(places), "pieces by size, how many and how high on average:")
	for _, size := range []units.Length{11 * units.Inch / 2, 4 * units.Inch, 5 * units.Inch / 2} {
		var n int
		var height, depth units.Length
		for _, p := range places {
			if p.Item.Size == size {
				n++
				height += p.Height
				depth += p.Depth
			}
		}
		half := func(l units.Length) string { return (l / units.Length(n)).Format(units.InFeetInches, units.Inch/2) }
		fmt.Printf("%v: %d, %s up, %s deep\n", size, n, half(height), half(depth))
	}
	least := math.Inf(1)
	for i, p := range places {
		for _, q := range places[:i] {
			x, y, z := (p.At.X - q.At.X).In(units.Inch), (p.At.Y - q.At.Y).In(units.Inch), (p.At.Z - q.At.Z).In(units.Inch)
			least = min(least, math.Sqrt(x*x+y*y+z*z))
		}
	}
	fmt.Printf("nearest two: %.1f in apart\n", least)
	// Output:
	// 81 pieces by size, how many and how high on average:
	// 5 1/2 in: 16, 2 ft 7 in up, 8 1/2 in deep
	// 4 in: 24, 2 ft 9 in up, 4 in deep
	// 2 1/2 in: 41, 3 ft up, 0 ft deep
	// nearest two: 10.0 in apart
}

// From a palette and the sizes of ball to pieces: a type has one color and one size,
// the size of which most are still to come. By hand: 49 over 40, 30, 20 and 10 are 19,
// 15, 10 and 5, and the types 3, 2, 1 and 1; 49 balls on a 7 ft tree are 10 of 4 in, 15
// of 3 1/8 in and 24 of 2 in, to which whole types come as near as 12, 16 and 21.
func Example_pieces() {
	layout := placement.Layout{Tree: sizing.Tree{Height: 7 * units.Foot}}
	colors, err := palette.CommonPractice().ParsePalette("crimson,darkgreen,gold,ivory")
	if err != nil {
		fmt.Println(err)
		return
	}
	sharing, err1 := colors.Share(7, 49)
	mix, err2 := sizing.CommonPractice().Mix(layout.Tree, 49)
	if err := errors.Join(err1, err2); err != nil {
		fmt.Println(err)
		return
	}

	var pieces []shopping.Lot
	sizes := mix
	for _, row := range sharing {
		each, err := palette.Apportion(row.Pieces, slices.Repeat([]int{1}, row.Types), 0) // as even as can be
		if err != nil {
			fmt.Println(err)
			return
		}
		for i, count := range each {
			size := &sizes[0]
			for k := range sizes {
				if sizes[k].Quantity.Pieces > size.Quantity.Pieces {
					size = &sizes[k]
				}
			}
			size.Quantity.Pieces -= count
			pieces = append(pieces, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: fmt.Sprintf("%s ball %d", row.Swatch.Name, i+1), Color: row.Swatch.Name, Size: size.Item.Size}, Quantity: shopping.Quantity{Pieces: count}})
		}
	}
	for _, p := range pieces {
		fmt.Printf("%d x %s, %v\n", p.Quantity.Pieces, p.Item.Type, p.Item.Size)
	}

	places, err := layout.Places(pieces)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d places; at the top a %s, %v\n", len(places), places[0].Item.Type, places[0])
	// Output:
	// 7 x crimson ball 1, 2 in
	// 6 x crimson ball 2, 2 in
	// 6 x crimson ball 3, 3 1/8 in
	// 8 x darkgreen ball 1, 2 in
	// 7 x darkgreen ball 2, 4 in
	// 10 x gold ball 1, 3 1/8 in
	// 5 x ivory ball 1, 4 in
	// 49 places; at the top a crimson ball 2, 6 ft 6 1/2 in up at 8 o'clock
}

// By hand: the half tree is seen from 9 by way of 6 to 3 o'clock, and 24 picks are
// 24 places.
func ExampleLayout_Places_picks() {
	layout := placement.Layout{Tree: sizing.Tree{Height: 8 * units.Foot, Exposure: sizing.HalfTree}}
	places, err := layout.Places([]shopping.Lot{{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 24}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	byClock := [13]int{}
	for _, p := range places {
		byClock[p.Azimuth.Clock()]++
	}
	fmt.Println(len(places), "picks, by the clock from 1:", byClock[1:])
	// Output: 24 picks, by the clock from 1: [0 0 4 3 3 3 4 3 4 0 0 0]
}

// The garland that package sizing measures, as a line: OpenStax, Calculus Volume 3,
// section 3.3, for its length. By hand: from the bare tip 8 ft 2 in up to the floor.
func ExampleLayout_Wind() {
	layout, _ := ticketHall()
	w := placement.Winding{Spacing: units.Foot, Step: 10 * units.Foot}
	points, err := layout.Wind(w)
	if err != nil {
		fmt.Println(err)
		return
	}
	for p := range points {
		fmt.Println(p.Z.Format(units.InFeetInches, units.Inch), "up")
	}
	// Output:
	// 8 ft 2 in up
	// 5 ft 11 in up
	// 4 ft 8 in up
	// 3 ft 8 in up
	// 2 ft 11 in up
	// 2 ft 2 in up
	// 1 ft 6 in up
	// 11 in up
	// 4 in up
	// 0 ft up
}

// Common practice. By hand: all 81 pieces are in one station or another; from a 6 ft ladder
// one reaches 10 ft, and the floor is last.
func ExampleOrder_Stations() {
	layout, pieces := ticketHall()
	places, err := layout.Places(pieces)
	if err != nil {
		fmt.Println(err)
		return
	}
	stations, err := placement.Order{}.Stations(places)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(stations[0])
	fmt.Println("stations:", len(stations))
	// Output:
	// a 4 ft stepladder at 6 o'clock, 6 ft 2 in to 7 ft 2 in up:
	// 1: cream ornaments, pine cone, 2 1/2 in: 7 ft 2 in up at 7 o'clock, 4 1/2 in left of the middle
	// 2: brass ornaments, star, 2 1/2 in: 6 ft 6 in up at 5 o'clock, 1 ft right of the last
	// 3: blue ornaments, bell, 4 in: 6 ft 2 in up at 7 o'clock, 1 ft 1 1/2 in left of the last, 2 in deep
	// stations: 6
}

// The clock as decorators use it. By hand: 6 is toward the viewer, and 90° to the
// viewer's right is 3.
func ExampleAngle_Clock() {
	for _, a := range []placement.Angle{0, 90, 180, -90, -60} {
		fmt.Print((a * placement.Degree).Clock(), " ")
	}
	fmt.Println()
	// Output: 6 3 12 9 8
}

// By hand: 37,500 thousandths of a degree.
func ExampleAngle_Degrees() {
	fmt.Println(placement.Angle(37_500).Degrees())
	// Output: 37.5
}

// By hand: -90 degrees is to the viewer's left.
func ExampleAngle_MarshalText() {
	text, err := json.Marshal(-90 * placement.Degree)
	fmt.Println(string(text), err)
	// Output: "-90°" <nil>
}

// By hand: 180 degrees is the back, and the clock has 30 degrees to the hour.
func ExampleAngle_UnmarshalText() {
	var l placement.Layout
	err := json.Unmarshal([]byte(`{"facing": "180 deg"}`), &l)
	fmt.Println(l.Facing, "is at", l.Facing.Clock(), "o'clock,", err)
	err = l.Facing.UnmarshalText([]byte("37.5"))
	fmt.Println(err)
	// Output:
	// 180° is at 12 o'clock, <nil>
	// placement.Angle.UnmarshalText: text "37.5": not understood: want degrees, such as 37.5°
}

// By hand: a column holds the text, or thousandths of a degree.
func ExampleAngle_Value() {
	v, err := (90 * placement.Degree).Value()
	fmt.Println(v, err)
	// Output: 90° <nil>
}

// By hand: 37,500 thousandths of a degree.
func ExampleAngle_Scan() {
	var text, number placement.Angle
	err := errors.Join(text.Scan("-90 deg"), number.Scan(int64(37_500)))
	fmt.Println(text, number, err)
	// Output: -90° 37.5° <nil>
}

// By hand: a quarter of a turn is 90 degrees.
func ExampleAngle_String() {
	fmt.Println(90*placement.Degree, -37_500*placement.Degree/1000)
	// Output: 90° -37.5°
}

// By hand.
func ExamplePlace_String() {
	fmt.Println(placement.Place{Height: 50 * units.Inch, Azimuth: 90 * placement.Degree, Depth: 5 * units.Inch})
	// Output: 4 ft 2 in up at 3 o'clock, 5 in deep
}

// By hand: a negative Left is to the right, and the fourth piece of all is the first here.
func ExampleStation_String() {
	star := shopping.Item{Kind: shopping.Ornament, Color: "crimson", Type: "star", Size: 3 * units.Inch}
	bell := shopping.Item{Kind: shopping.Ornament, Color: "cream", Type: "bell", Size: 4 * units.Inch}
	fmt.Println(placement.Station{
		First: 4, Clock: 9, Ladder: sizing.Ladder{Size: 6 * units.Foot}, From: 8 * units.Foot, To: 98 * units.Inch,
		Places: []placement.Place{
			{Item: star, Height: 98 * units.Inch, Azimuth: -90 * placement.Degree, Left: -8 * units.Inch, Depth: 5 * units.Inch},
			{Item: bell, Height: 96 * units.Inch, Azimuth: -120 * placement.Degree, Left: 11 * units.Inch},
		},
	})
	// Output:
	// a 6 ft stepladder at 9 o'clock, 8 ft to 8 ft 2 in up:
	// 4: crimson ornaments, star, 3 in: 8 ft 2 in up at 9 o'clock, 8 in right of the middle, 5 in deep
	// 5: cream ornaments, bell, 4 in: 8 ft up at 10 o'clock, 11 in left of the last
}

// By hand: twenty balls of 2 ft would cover more than a small tree has of surface,
// which is π·9 in·28.5 in or 5.6 sq ft.
func ExampleError_Error() {
	layout := placement.Layout{Tree: sizing.Tree{Height: 27 * units.Inch, Base: 18 * units.Inch}}
	_, err := layout.Places([]shopping.Lot{{Item: shopping.Item{Kind: shopping.Ornament, Type: "ball", Size: units.Foot}, Quantity: shopping.Quantity{Pieces: 20}}})
	fmt.Println(err)
	// Output:
	// placement.Layout.Places: pieces "20": does not fit: want at most 4 in these proportions
}

// As for Error.
func ExampleError_Unwrap() {
	layout := placement.Layout{Tree: sizing.Tree{Height: 6 * units.Foot}, Facing: 400 * placement.Degree}
	_, err := layout.Places(nil)
	fmt.Println(errors.Is(err, units.ErrRange), errors.Is(err, units.ErrFit))
	// Output: true false
}
