// Drawing writes pictures of a dressed tree and mantel as SVG: the tree from the
// front, its surface unrolled with the places numbered in hanging order, and the
// mantel from the front.
//
//	go run ./examples/drawing
//	go run ./examples/drawing -tree "7 ft 6 in" -exposure corner -out pictures
//
// Without flags it draws the 9 ft tree in the ticket hall of a small-town railway
// station and the 64 in mantel in its tea room. It writes tree.svg, unrolled.svg,
// mantel.svg, client.svg and client-dark.svg, the tree as a client sees it, and a sheet to hang from for each station, crew-1.svg and so on, into the
// folder of -out, or here.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"example.com/fircone/examples/drawing/draw"
	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run is the program, and returns its exit status.
func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("drawing", flag.ContinueOnError)
	flags.SetOutput(stderr)
	out := flags.String("out", ".", "the `folder` to write to")
	height, shelf := 9*units.Foot, 64*units.Inch
	var exposure sizing.Exposure
	flags.TextVar(&height, "tree", height, "the `height` of the tree")
	flags.TextVar(&exposure, "exposure", exposure, "how much of the tree is dressed: all round, wall, corner, half, or an `arc` such as 200 degrees")
	flags.TextVar(&shelf, "mantel", shelf, "the `length` of the mantel")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(stderr, "drawing: %q is no flag\n", flags.Arg(0))
		return 2
	}
	pictures, err := pictures(height, exposure, shelf)
	if err != nil {
		fmt.Fprintln(stderr, "drawing:", err)
		return 2
	}
	for _, p := range pictures {
		name := filepath.Join(*out, p.name)
		if err := os.WriteFile(name, []byte(p.svg), 0o644); err != nil {
			fmt.Fprintln(stderr, "drawing:", err)
			return 1
		}
		fmt.Fprintln(stdout, name)
	}
	return 0
}

type picture struct{ name, svg string }

// pictures draws all three.
func pictures(height units.Length, exposure sizing.Exposure, shelf units.Length) ([]picture, error) {
	colors, err := palette.CommonPractice().ParsePalette("signal red=#b3202a, cream=#f4e7c5, brass=#b5893a:metal, midnight=#24365e")
	if err != nil {
		return nil, err
	}
	t, err := tree(height, exposure, colors)
	if err != nil {
		return nil, err
	}
	front, err := t.Front()
	if err != nil {
		return nil, err
	}
	white, err := t.Client(false)
	if err != nil {
		return nil, err
	}
	dark, err := t.Client(true)
	if err != nil {
		return nil, err
	}
	sheets, err := t.Crew(draw.Letter)
	if err != nil {
		return nil, err
	}
	unrolled, err := t.Unrolled()
	if err != nil {
		return nil, err
	}
	m, err := teaRoom(shelf, colors).Front()
	if err != nil {
		return nil, err
	}
	all := []picture{{"tree.svg", front}, {"unrolled.svg", unrolled}, {"mantel.svg", m}, {"client.svg", white}, {"client-dark.svg", dark}}
	for i, sheet := range sheets {
		all = append(all, picture{fmt.Sprintf("crew-%d.svg", i+1), sheet})
	}
	return all, nil
}

// kinds are what hangs in the ticket hall, a type for each foot of height.
var kinds = []placement.Piece{
	{Item: shopping.Item{Kind: shopping.Ornament, Type: "globe", Size: 4 * units.Inch}},
	{Item: shopping.Item{Kind: shopping.Ornament, Type: "lantern", Size: 4 * units.Inch}},
	{Item: shopping.Item{Kind: shopping.Ornament, Type: "drum", Size: 4 * units.Inch}},
	{Item: shopping.Item{Kind: shopping.Ornament, Type: "bell", Size: 3 * units.Inch}},
	{Item: shopping.Item{Kind: shopping.Ornament, Type: "locomotive", Size: 3 * units.Inch}},
	{Item: shopping.Item{Kind: shopping.Ornament, Type: "pine cone", Size: 3 * units.Inch}},
	{Item: shopping.Item{Kind: shopping.Ornament, Type: "star", Size: 2 * units.Inch}},
	{Item: shopping.Item{Kind: shopping.Ornament, Type: "whistle", Size: 2 * units.Inch}},
	{Item: shopping.Item{Kind: shopping.Ornament, Type: "snowflake", Size: 2 * units.Inch}},
}

// tree sizes the ticket hall by rule: the large types at the low end of what the
// rule allows, the small ones at the high end.
func tree(height units.Length, exposure sizing.Exposure, colors palette.Palette) (draw.Tree, error) {
	t := sizing.Tree{Height: height, BareTip: height / 12, Handle: height / 12, Exposure: exposure}
	rules := sizing.CommonPractice()
	types, err := rules.Types(height)
	if err != nil {
		return draw.Tree{}, err
	}
	each, err := rules.Each(height)
	if err != nil {
		return draw.Tree{}, err
	}
	c, err := rules.Compare(sizing.Look{}, t)
	if err != nil {
		return draw.Tree{}, err
	}
	swatches := colors
	var pieces []placement.Piece
	for i := range types {
		p := kinds[i%len(kinds)]
		switch p.Item.Size {
		case 4 * units.Inch:
			p.Count = each.Min
		case 3 * units.Inch:
			p.Count = (each.Min + each.Max) / 2
		default:
			p.Count = each.Max
		}
		if i >= len(kinds) {
			p.Item.Type += fmt.Sprintf(" %d", i/len(kinds)+1)
		}
		p.Item.Color = swatches[i%len(swatches)].Name
		pieces = append(pieces, p)
	}
	drape := sizing.Drape{Span: 14 * units.Inch, Sag: 2 * units.Inch}
	return draw.Tree{
		Title:   "Ticket hall: a tree of " + height.String(),
		Layout:  placement.Layout{Tree: t},
		Pieces:  pieces,
		Garland: placement.Winding{Spacing: c.RuleLook.Spacing[shopping.Garland], Length: c.Rule[shopping.Garland].Length, Drape: drape},
		Lights:  placement.Winding{Spacing: c.RuleLook.Spacing[shopping.Garland] / 2, Step: 8 * units.Inch},
		Palette: colors,
	}, nil
}

// teaRoom is an asymmetrical mantel over a fireplace that stays cold.
func teaRoom(shelf units.Length, colors palette.Palette) draw.Mantel {
	return draw.Mantel{
		Title: "Tea room: a mantel of " + shelf.String(),
		Mantel: mantel.Mantel{
			Length: shelf, Height: 54 * units.Inch, Depth: 8 * units.Inch,
			Opening: mantel.Rectangle{Width: shelf * 9 / 16, Height: 38 * units.Inch, Gap: 16 * units.Inch},
		},
		Rules:   mantel.CommonPractice(),
		Hanging: mantel.Hanging{Swags: 2, Sag: 6 * units.Inch, Left: 30 * units.Inch, Right: 8 * units.Inch, Look: mantel.AsymmetricalLeft, Fall: 20 * units.Inch, Thickness: 6 * units.Inch},
		Palette: colors,
	}
}
