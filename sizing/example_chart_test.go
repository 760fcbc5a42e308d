package sizing_test

import (
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Common practice for the look; the geometry is computed. By hand, at 12 ft: a wall
// leaves 2/3 of 154.6 sq ft and of 144 ornaments, a corner 1/2; a slim cone
// 144 in high and 64.8 in wide has 104.3 sq ft, a pencil one 43.2 in wide 68.6 sq ft;
// and the surface over 10.16 in is 122, 91, 123 and 81 ft, a little less than what it
// takes to wind it so.
func Example_chartByShape() {
	look := sizing.CommonLook()
	for i, shape := range []struct {
		name     string
		taper    sizing.Taper
		exposure sizing.Exposure
	}{
		{"against a wall", sizing.Full, sizing.AgainstWall},
		{"in a corner", sizing.Full, sizing.InCorner},
		{"slim", sizing.Slim, sizing.AllRound},
		{"pencil", sizing.Pencil, sizing.AllRound},
	} {
		if i > 0 {
			fmt.Println()
		}
		fmt.Printf("%-15s %-11s %-10s %-8s %-6s %s\n", shape.name, "width", "ornaments", "garland", "picks", "lights")
		for _, text := range []string{"6 ft", "7 ft", "7½ ft", "9 ft", "12 ft", "15 ft"} {
			tree := sizing.Tree{Height: units.MustParseLength(text), Taper: shape.taper, Exposure: shape.exposure}
			width, _ := tree.Taper.Base(tree.Height)
			a, err := look.Amounts(tree)
			if err != nil {
				fmt.Println(err)
				return
			}
			garland, _ := a[shopping.Garland].Length.Ceil(units.Foot)
			fmt.Printf("%-15s %-11s %-10d %-8v %-6d %d\n",
				text, width.Format(units.InFeetInches, units.Inch), a[shopping.Ornament].Pieces, garland, a[shopping.Pick].Pieces, a[shopping.Light].Pieces)
		}
	}
	// Output:
	// against a wall  width       ornaments  garland  picks  lights
	// 6 ft            3 ft 11 in  24         32 ft    11     343
	// 7 ft            4 ft 7 in   33         43 ft    14     467
	// 7½ ft           4 ft 11 in  38         49 ft    17     536
	// 9 ft            5 ft 10 in  54         70 ft    24     772
	// 12 ft           7 ft 10 in  96         124 ft   42     1372
	// 15 ft           9 ft 9 in   150        192 ft   65     2143
	//
	// in a corner     width       ornaments  garland  picks  lights
	// 6 ft            3 ft 11 in  18         25 ft    8      258
	// 7 ft            4 ft 7 in   25         33 ft    11     350
	// 7½ ft           4 ft 11 in  29         38 ft    13     402
	// 9 ft            5 ft 10 in  41         53 ft    18     579
	// 12 ft           7 ft 10 in  72         93 ft    31     1029
	// 15 ft           9 ft 9 in   113        145 ft   49     1608
	//
	// slim            width       ornaments  garland  picks  lights
	// 6 ft            2 ft 8 in   25         32 ft    11     348
	// 7 ft            3 ft 2 in   34         44 ft    15     473
	// 7½ ft           3 ft 5 in   38         50 ft    17     543
	// 9 ft            4 ft 1 in   55         71 ft    24     781
	// 12 ft           5 ft 5 in   98         125 ft   42     1389
	// 15 ft           6 ft 9 in   152        194 ft   66     2170
	//
	// pencil          width       ornaments  garland  picks  lights
	// 6 ft            1 ft 10 in  16         22 ft    7      229
	// 7 ft            2 ft 1 in   22         30 ft    10     311
	// 7½ ft           2 ft 3 in   25         34 ft    11     357
	// 9 ft            2 ft 8 in   36         48 ft    16     514
	// 12 ft           3 ft 7 in   64         83 ft    28     914
	// 15 ft           4 ft 6 in   100        129 ft   43     1427
}

// Geometry. By hand, at 7 ft: 52.6 sq ft over 25, 50, 75, 100 and 150 ft is 25, 13, 8,
// 6 and 4 in, and a little more, the more so the fewer the wraps.
func Example_chartOfSpacings() {
	fmt.Printf("%-8s", "garland")
	lengths := []units.Length{25 * units.Foot, 50 * units.Foot, 75 * units.Foot, 100 * units.Foot, 150 * units.Foot}
	for _, garland := range lengths {
		fmt.Printf(" %7v", garland)
	}
	fmt.Println()
	for _, text := range []string{"6 ft", "7 ft", "7½ ft", "9 ft", "12 ft", "15 ft"} {
		fmt.Printf("%-8s", text)
		tree := sizing.Tree{Height: units.MustParseLength(text)}
		for _, garland := range lengths {
			spacing, err := tree.Spacing(garland)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf(" %7s", spacing.Format(units.InInches, units.Inch))
		}
		fmt.Println()
	}
	// Output:
	// garland    25 ft   50 ft   75 ft  100 ft  150 ft
	// 6 ft       20 in    9 in    6 in    5 in    3 in
	// 7 ft       27 in   13 in    9 in    6 in    4 in
	// 7½ ft      32 in   15 in   10 in    7 in    5 in
	// 9 ft       47 in   22 in   14 in   11 in    7 in
	// 12 ft      91 in   39 in   25 in   19 in   12 in
	// 15 ft     162 in   63 in   40 in   30 in   20 in
}

// Common practice for the widths: a full tree is 60 to 70 % as wide as it is high.
// By hand: width times slope is 0.92, 1 and 1.09 times what it is at 65 %.
func Example_howSure() {
	const height = 7*units.Foot + 6*units.Inch
	for _, percent := range []units.Length{60, 65, 70} {
		a, err := sizing.CommonLook().Amounts(sizing.Tree{Height: height, Base: height * percent / 100})
		if err != nil {
			fmt.Println(err)
			return
		}
		garland, _ := a[shopping.Garland].Length.Ceil(units.Foot)
		fmt.Printf("%d %% as wide as high: %d ornaments, %v of garland, %d lights\n", percent, a[shopping.Ornament].Pieces, garland, a[shopping.Light].Pieces)
	}
	// Output:
	// 60 % as wide as high: 52 ornaments, 67 ft of garland, 737 lights
	// 65 % as wide as high: 57 ornaments, 73 ft of garland, 804 lights
	// 70 % as wide as high: 62 ornaments, 79 ft of garland, 872 lights
}
