package sizing_test

import (
	"fmt"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Common practice for the rules; the shape is computed. By hand, at 12 ft: 12 types, 10
// to 14 of each, 36 picks, 108 ft, 12 strings; π · 3.9 · √(3.9² + 12²) is 154.6 sq ft,
// over 108 ft 17.2 in, and over 10.16 in 182.6 ft, and a little more.
func Example_quickChart() {
	rules, look := sizing.CommonPractice(), sizing.CommonLook()
	fmt.Printf("%6s %5s %8s %5s %7s %14s %7s %6s %5s %7s\n", "height", "types", "of each", "picks", "garland", "strands", "strings", "wraps", "match", "surface")
	fmt.Printf("%6s %5s %8s %5s %7s %14s %7s %6s %5s %7s\n", "ft", "", "", "", "ft", "5, 6, 9 ft", "of 100", "in", "ft", "sq ft")
	for feet := units.Length(4); feet <= 15; feet++ {
		height := feet * units.Foot
		types, _ := rules.Types(height)
		each, _ := rules.Each(height)
		c, err := rules.Compare(look, sizing.Tree{Height: height})
		if err != nil {
			fmt.Println(err)
			return
		}
		area, _ := c.Tree.DressedArea()
		match, _ := units.Ceil(c.Shape[shopping.Garland].Length, units.Foot)
		garland := c.Rule[shopping.Garland].Length
		strands := func(length units.Length) units.Length { return (garland + length - 1) / length }
		fmt.Printf("%6d %5d %8v %5d %7.0f %6d %3d %3d %7d %6.1f %5.0f %7.1f\n",
			feet, types, each, c.Rule[shopping.Pick].Pieces, garland.In(units.Foot), strands(5*units.Foot), strands(6*units.Foot), strands(9*units.Foot), (c.Rule[shopping.Light].Pieces+99)/100,
			c.RuleLook.Spacing[shopping.Garland].In(units.Inch), match.In(units.Foot), area.In(units.SquareFoot))
	}
	// Output:
	// height types  of each picks garland        strands strings  wraps match surface
	//     ft                           ft     5, 6, 9 ft  of 100     in    ft   sq ft
	//      4     4   2 to 6    12      36      8   6   4       4    5.8    22    17.2
	//      5     5   3 to 7    15      45      9   8   5       5    7.3    33    26.8
	//      6     6   4 to 8    18      54     11   9   6       6    8.7    47    38.6
	//      7     7   5 to 9    21      63     13  11   7       7   10.2    63    52.6
	//      8     8  6 to 10    24      72     15  12   8       8   11.6    83    68.7
	//      9     9  7 to 11    27      81     17  14   9       9   13.1   104    87.0
	//     10    10  8 to 12    30      90     18  15  10      10   14.5   128   107.4
	//     11    11  9 to 13    33      99     20  17  11      11   16.0   155   129.9
	//     12    12 10 to 14    36     108     22  18  12      12   17.4   184   154.6
	//     13    13 11 to 15    39     117     24  20  13      13   18.9   216   181.4
	//     14    14 12 to 16    42     126     26  21  14      14   20.3   250   210.4
	//     15    15 13 to 17    45     135     27  23  15      15   21.8   287   241.6
}

// Common practice for the look; the geometry is computed. By hand, at 12 ft: a wall
// leaves 2/3 of 154.6 sq ft and of 144 ornaments, a corner 1/2; a slim cone 144 in high
// and 64.8 in wide has 104.3 sq ft, a pencil one 43.2 in wide 68.6 sq ft; and the
// surface over 10.16 in is 122, 91, 123 and 81 ft, a little less than what it takes to
// wind it so.
func Example_chartByShape() {
	rules, look := sizing.CommonPractice(), sizing.CommonLook()
	shapes := []struct {
		name string
		tree sizing.Tree
	}{
		{"free", sizing.Tree{}},
		{"wall", sizing.Tree{Exposure: sizing.AgainstWall}},
		{"corner", sizing.Tree{Exposure: sizing.InCorner}},
		{"slim", sizing.Tree{Taper: sizing.Slim}},
		{"pencil", sizing.Tree{Taper: sizing.Pencil}},
	}
	fmt.Printf("%6s", "height")
	for _, s := range shapes {
		fmt.Printf("  %10s", s.name)
	}
	fmt.Printf("\n%6s", "ft")
	for range shapes {
		fmt.Printf("  %5s %4s", "balls", "ft")
	}
	fmt.Println()
	for feet := units.Length(4); feet <= 15; feet++ {
		fmt.Printf("%6d", feet)
		for _, s := range shapes {
			s.tree.Height = feet * units.Foot
			c, err := rules.Compare(look, s.tree)
			if err != nil {
				fmt.Println(err)
				return
			}
			garland, _ := units.Ceil(c.Shape[shopping.Garland].Length, units.Foot)
			fmt.Printf("  %5d %4.0f", c.Shape[shopping.Ornament].Pieces, garland.In(units.Foot))
		}
		fmt.Println()
	}
	// Output:
	// height        free        wall      corner        slim      pencil
	//     ft  balls   ft  balls   ft  balls   ft  balls   ft  balls   ft
	//      4     46   22     30   15     23   12     59   15     58   11
	//      5     43   33     28   23     21   18     62   23     60   16
	//      6     39   47     26   32     20   25     69   32     87   22
	//      7     49   63     33   43     25   33     61   44     80   30
	//      8     64   83     43   56     32   43     74   56     81   38
	//      9     81  104     54   70     41   53     60   71    102   48
	//     10    100  128     67   86     50   65     67   87     82   58
	//     11    121  155     81  104     60   79     82  105     92   70
	//     12    144  184     96  124     72   93     97  125    109   83
	//     13    169  216    113  145     85  109    114  146     82   97
	//     14    196  250    131  168     98  126    132  170     95  113
	//     15    225  287    150  192    112  145    152  194    100  129
}

// Geometry, for wraps 10.16 in apart. By hand, at 8 ft: 4 ft wide has π · 2 · √68 =
// 51.8 sq ft, over 0.847 ft 61 ft, and a little more.
func Example_chartOfWidths() {
	spacing := sizing.CommonLook().Spacing[shopping.Garland]
	fmt.Printf("%6s", "height")
	for width := 2; width <= 8; width++ {
		fmt.Printf(" %4d", width)
	}
	fmt.Println()
	for feet := units.Length(4); feet <= 15; feet++ {
		fmt.Printf("%6d", feet)
		for width := units.Length(2); width <= 8; width++ {
			tree := sizing.Tree{Height: feet * units.Foot, Base: width * units.Foot}
			garland, err := tree.SpiralLength(spacing)
			if err != nil { // wider than one and a half times the height
				fmt.Printf(" %4s", "-")
				continue
			}
			garland, _ = units.Ceil(garland, units.Foot)
			fmt.Printf(" %4.0f", garland.In(units.Foot))
		}
		fmt.Println()
	}
	// Output:
	// height    2    3    4    5    6    7    8
	//      4   17   25   34   45   57    -    -
	//      5   21   30   41   53   66   80    -
	//      6   24   36   48   62   76   91  108
	//      7   28   41   55   70   86  103  121
	//      8   32   47   63   79   96  115  134
	//      9   36   53   70   88  107  127  147
	//     10   40   58   78   97  118  139  161
	//     11   44   64   85  106  129  151  175
	//     12   48   70   92  116  139  164  189
	//     13   52   75  100  125  150  176  203
	//     14   56   81  107  134  161  189  218
	//     15   60   87  115  143  172  202  232
}

// Geometry. By hand, at 7 ft: 52.6 sq ft over 25, 50, 75, 100 and 150 ft is 25, 13, 8,
// 6 and 4 in, and a little more, the more so the fewer the wraps.
func Example_chartOfSpacings() {
	lengths := []units.Length{25, 50, 75, 100, 150}
	fmt.Printf("%6s", "height")
	for _, garland := range lengths {
		fmt.Printf(" %4d", garland)
	}
	fmt.Println()
	for feet := units.Length(4); feet <= 15; feet++ {
		fmt.Printf("%6d", feet)
		for _, garland := range lengths {
			spacing, err := sizing.Tree{Height: feet * units.Foot}.Spacing(garland * units.Foot)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf(" %4.0f", spacing.In(units.Inch))
		}
		fmt.Println()
	}
	// Output:
	// height   25   50   75  100  150
	//      4    8    4    3    2    1
	//      5   13    7    4    3    2
	//      6   20    9    6    5    3
	//      7   27   13    9    6    4
	//      8   36   17   11    8    6
	//      9   47   22   14   11    7
	//     10   59   27   18   13    9
	//     11   74   33   21   16   10
	//     12   91   39   25   19   12
	//     13  111   46   30   22   15
	//     14  134   54   35   26   17
	//     15  162   63   40   30   20
}

// Common practice for the widths: a full tree is 60 to 70 % as wide as it is high.
// By hand: width times slope is 0.92, 1 and 1.09 times what it is at 65 %.
func Example_howSure() {
	const height = 7*units.Foot + 6*units.Inch
	for _, percent := range []units.Length{60, 65, 70} {
		tree := sizing.Tree{Height: height, Base: height * percent / 100}
		c, err := sizing.CommonPractice().Compare(sizing.CommonLook(), tree)
		if err != nil {
			fmt.Println(err)
			return
		}
		garland, _ := units.Ceil(c.Shape[shopping.Garland].Length, units.Foot)
		fmt.Printf("%d %% as wide as high: %d ornaments, %v of garland\n", percent, c.Shape[shopping.Ornament].Pieces, garland)
	}
	// Output:
	// 60 % as wide as high: 52 ornaments, 67 ft of garland
	// 65 % as wide as high: 56 ornaments, 73 ft of garland
	// 70 % as wide as high: 61 ornaments, 79 ft of garland
}
