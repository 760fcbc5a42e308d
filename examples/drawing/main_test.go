package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/examples/drawing/draw"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The committed pictures are what the program draws, on every machine. What is in them is checked
// in package draw, against the places.
func TestCommitted(t *testing.T) {
	dir := t.TempDir()
	var stdout, stderr bytes.Buffer
	if code := run([]string{"-out", dir}, &stdout, &stderr); code != 0 {
		t.Fatalf("exit %d: %s", code, stderr.String())
	}
	for _, name := range []string{"tree.svg", "unrolled.svg", "mantel.svg", "client.svg", "crew.html"} {
		if !strings.Contains(stdout.String(), filepath.Join(dir, name)) {
			t.Errorf("%s is not named in %q", name, stdout.String())
		}
		got, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		want, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s is not what the program draws: run go run ./examples/drawing -out examples/drawing", name)
		}
	}
}

func TestFlags(t *testing.T) {
	for _, tc := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"station"}, 2, `unexpected "station": only flags are read`},
		{[]string{"-tree", "9 ft", "corner"}, 2, `unexpected "corner"`},
		{[]string{"-paper", "A3"}, 2, "want letter or A4"},
		{[]string{"-tree", "6 in"}, 2, "6 in"},
		{[]string{"-tree", "nine feet"}, 2, "nine feet"},
		{[]string{"-exposure", "attic"}, 2, "attic"},
		{[]string{"-tree", "3 ft", "-mantel", "2 in"}, 2, "2 in"},
		{[]string{"-tree", "3 ft", "-mantel", "9 in", "-out", "."}, 2, "9 in"},
		{[]string{"-tree", "3 ft", "-out", filepath.Join(t.TempDir(), "nowhere")}, 1, "nowhere"},
	} {
		var stderr bytes.Buffer
		if code := run(tc.args, io.Discard, &stderr); code != tc.code || !strings.Contains(stderr.String(), tc.says) {
			t.Errorf("%v: exit %d with %q; want %d with %q in it", tc.args, code, stderr.String(), tc.code, tc.says)
		}
	}
}

// Any tree and mantel that the packages take gives pictures that parse.
func TestSizes(t *testing.T) {
	heights := []units.Length{3 * units.Foot, 4*units.Foot + 6*units.Inch, 12 * units.Foot}
	if !testing.Short() {
		heights = append(heights, 20*units.Foot)
	}
	for _, height := range heights {
		for _, e := range []sizing.Exposure{sizing.AllRound, sizing.InCorner, 77_500} {
			if height > 9*units.Foot && e != sizing.InCorner {
				continue // these take long
			}
			pictures, err := pictures(height, e, 4*units.Foot, draw.A4)
			if err != nil {
				t.Fatal(height, e, err)
			}
			for _, p := range pictures {
				if strings.HasSuffix(p.name, ".html") {
					continue // its sheets are checked in package draw
				}
				d := xml.NewDecoder(strings.NewReader(p.text))
				for {
					if _, err := d.Token(); errors.Is(err, io.EOF) {
						break
					} else if err != nil {
						t.Fatal(p.name, err)
					}
				}
			}
		}
	}
}

// Where only the height is known the tree gets what the rules of thumb ask for; where it
// stands in a corner, what its surface takes, as in a plan.
func TestSized(t *testing.T) {
	colors, err := palette.CommonPractice().ParsePalette("crimson, ivory, gold:metal, navy")
	if err != nil {
		t.Fatal(err)
	}
	count := func(e sizing.Exposure) (ornaments, picks int) {
		d, err := tree(9*units.Foot, e, colors)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range d.Pieces {
			if p.Item.Kind == shopping.Pick {
				picks += p.Quantity.Pieces
			} else {
				ornaments += p.Quantity.Pieces
			}
		}
		return ornaments, picks
	}
	// By rule: 9 types of 9, and 3 picks to the foot.
	if ornaments, picks := count(sizing.AllRound); ornaments != 81 || picks != 27 {
		t.Errorf("all round: %d ornaments, %d picks", ornaments, picks)
	}
	// A corner shows half of the surface or less.
	all, err := sizing.CommonPractice().Compare(sizing.CommonLook(), sizing.Tree{Height: 9 * units.Foot, Exposure: sizing.InCorner})
	if err != nil {
		t.Fatal(err)
	}
	if ornaments, picks := count(sizing.InCorner); ornaments != all.Shape[shopping.Ornament].Pieces || picks != all.Shape[shopping.Pick].Pieces || picks >= 27 {
		t.Errorf("in a corner: %d ornaments, %d picks", ornaments, picks)
	}
}

// The letter beside a pick is on no other piece.
func TestLettersBeside(t *testing.T) {
	svg, err := os.ReadFile("tree.svg")
	if err != nil {
		t.Fatal(err)
	}
	_, pieces, _ := strings.Cut(string(svg), `data-part="pieces"`)
	pieces, _, _ = strings.Cut(pieces, "</g>")
	number := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	letters := regexp.MustCompile(`<text x="([^"]*)" y="([^"]*)" font-size="8.5"`).FindAllStringSubmatch(pieces, -1)
	balls := regexp.MustCompile(`<circle cx="([^"]*)" cy="([^"]*)" r="([^"]*)"`).FindAllStringSubmatch(pieces, -1)
	if len(letters) < 10 || len(balls) < 30 {
		t.Fatalf("%d letters, %d balls", len(letters), len(balls))
	}
	for _, l := range letters {
		for _, b := range balls {
			if x, y, r := number(l[1])-number(b[1]), number(l[2])-3-number(b[2]), number(b[3]); r > 4 && math.Hypot(x, y) < r {
				t.Errorf("%s is on %s", l[0], b[0])
			}
		}
	}
}
