// Drawing writes pictures of a dressed tree and mantel as SVG: the tree from the
// front, its surface unrolled with the places numbered in hanging order, and the
// mantel from the front.
//
//	go run ./examples/drawing
//	go run ./examples/drawing -tree "7 ft 6 in" -exposure corner -out pictures
//
//	go run ./examples/drawing -paper A4
//
// Without flags it draws the 9 ft tree in the ticket hall of a small-town railway
// station and the 64 in mantel in its tea room. It writes tree.svg, unrolled.svg and
// mantel.svg to work by, client.svg for the one who pays, and crew.html to print: a sheet
// for each place to stand and the sheets of the mantel. They go into the folder of -out,
// or here.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"

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
	paper := draw.Letter
	flags.Func("paper", "the `size` of the crew's sheets, letter or A4 (default letter)", func(name string) error {
		for _, p := range []draw.Paper{draw.Letter, draw.A4} {
			if strings.EqualFold(name, p.Name) {
				paper = p
				return nil
			}
		}
		return errors.New("want letter or A4")
	})
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(stderr, "drawing: unexpected %q: only flags are read, such as -tree \"9 ft\"; -help lists them\n", flags.Arg(0))
		return 2
	}
	pictures, err := pictures(height, exposure, shelf, paper)
	if err != nil {
		fmt.Fprintln(stderr, "drawing:", err)
		return 2
	}
	for _, p := range pictures {
		name := filepath.Join(*out, p.name)
		if err := os.WriteFile(name, []byte(p.text), 0o644); err != nil {
			fmt.Fprintln(stderr, "drawing:", err)
			return 1
		}
		fmt.Fprintln(stdout, name)
	}
	return 0
}

type picture struct{ name, text string }

// pictures draws them all.
func pictures(height units.Length, exposure sizing.Exposure, shelf units.Length, paper draw.Paper) ([]picture, error) {
	colors, err := palette.CommonPractice().ParsePalette("signal red=#b3202a:shiny, cream=#f4e7c5:matte, brass=#c39a45:metal, midnight=#24365e:glitter")
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
	client, err := t.Client()
	if err != nil {
		return nil, err
	}
	sheets, err := t.Crew(paper)
	if err != nil {
		return nil, err
	}
	unrolled, err := t.Unrolled()
	if err != nil {
		return nil, err
	}
	room := teaRoom(shelf, colors)
	m, err := room.Front()
	if err != nil {
		return nil, err
	}
	more, err := room.Crew(paper, nil)
	if err != nil {
		return nil, err
	}
	crew := draw.Print("Sheets for the crew", paper, append(sheets, more...))
	return []picture{{"tree.svg", front}, {"unrolled.svg", unrolled}, {"mantel.svg", m}, {"client.svg", client}, {"crew.html", crew}}, nil
}

// kinds are what hangs in the ticket hall, a type for each foot of height: the size on a
// tree of 9 ft or more, and which color of the palette.
var kinds = []struct {
	name  string
	size  units.Length
	color int
}{
	{"ball", 5 * units.Inch, 0},
	{"bell", 5 * units.Inch, 2},
	{"drop", 4 * units.Inch, 1},
	{"ball", 4 * units.Inch, 2},
	{"star", 4 * units.Inch, 2},
	{"ball", 3 * units.Inch, 3},
	{"snowflake", 3 * units.Inch, 1},
	{"bow", 3 * units.Inch, 0},
	{"icicle", 3 * units.Inch, 1},
}

// tree sizes the ticket hall as a plan does: by rule where only the height is known, by
// shape otherwise. The large types come at the low end of what the rule allows, the small
// ones at the high end.
func tree(height units.Length, exposure sizing.Exposure, colors palette.Palette) (draw.Tree, error) {
	t := sizing.Tree{Height: height, Exposure: exposure}
	rules := sizing.CommonPractice()
	c, err := rules.Compare(sizing.CommonLook(), t)
	if err != nil {
		return draw.Tree{}, err
	}
	amounts, look := c.Rule, c.RuleLook
	if c.ByShape {
		amounts, look = c.Shape, c.Look
	}
	types, err := rules.Types(height)
	if err != nil {
		return draw.Tree{}, err
	}
	types = min(types, max(amounts[shopping.Ornament].Pieces, 1))
	// Nothing on the floor or under the topper.
	t.BareTip, t.Handle = height/12, height/12
	swatches := colors
	var pieces []shopping.Lot
	for i := range types {
		k := kinds[i%len(kinds)]
		size := k.size * min(height/units.Foot, 9) / 9 / (units.Inch / 4) * (units.Inch / 4)
		item := shopping.Item{Kind: shopping.Ornament, Type: k.name, Size: size, Color: swatches[k.color].Name}
		if i >= len(kinds) {
			item.Type += fmt.Sprintf(" %d", i/len(kinds)+1)
		}
		each := amounts[shopping.Ornament].Pieces
		pieces = append(pieces, shopping.Lot{Item: item, Quantity: shopping.Quantity{Pieces: (each*(i+1))/types - each*i/types}})
	}
	pieces = append(pieces, shopping.Lot{Item: shopping.Item{Kind: shopping.Pick, Color: swatches[0].Name}, Quantity: shopping.Quantity{Pieces: amounts[shopping.Pick].Pieces}})
	drape := sizing.Drape{Span: 14 * units.Inch, Sag: 2 * units.Inch}
	apart := units.Length(math.Sqrt(look.Each[shopping.Light].In(units.SquareInch)) * float64(units.Inch))
	return draw.Tree{
		Title:   "Ticket hall: a tree of " + height.String(),
		Layout:  placement.Layout{Tree: t},
		Pieces:  pieces,
		Ribbon:  draw.Ribbon{Winding: placement.Winding{Spacing: look.Spacing[shopping.Ribbon], Length: amounts[shopping.Ribbon].Length, Drape: drape}, Color: swatches[0].Name},
		Lights:  placement.Winding{Spacing: apart, Step: apart},
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
