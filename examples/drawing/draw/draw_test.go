package draw_test

import (
	"encoding/xml"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/examples/drawing/draw"
	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A node is an element of a picture.
type node struct {
	XMLName xml.Name
	Attrs   []xml.Attr `xml:",any,attr"`
	Nodes   []node     `xml:",any"`
	Text    string     `xml:",chardata"`
}

func (n node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (n node) number(t *testing.T, name string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(n.attr(name), 64)
	if err != nil {
		t.Fatal(name, err)
	}
	return x
}

// id returns the element with an id, and all returns those with a name in it.
func (n node) id(id string) (found node) {
	for _, m := range n.Nodes {
		if m.attr("id") == id {
			return m
		}
		if f := m.id(id); f.XMLName.Local != "" {
			found = f
		}
	}
	return found
}

func (n node) all(name string) (found []node) {
	for _, m := range n.Nodes {
		if m.XMLName.Local == name {
			found = append(found, m)
		}
		found = append(found, m.all(name)...)
	}
	return found
}

func parse(t *testing.T, svg string) node {
	t.Helper()
	var n node
	if err := xml.Unmarshal([]byte(svg), &n); err != nil {
		t.Fatal(err)
	}
	if n.XMLName.Space != "http://www.w3.org/2000/svg" || n.attr("role") != "img" {
		t.Errorf("not a picture: %v", n.XMLName)
	}
	// Both names are what a screen reader says, and must be there.
	if n.attr("aria-labelledby") != "title desc" || n.id("title").Text == "" || len(n.id("desc").Text) < 20 {
		t.Error("no title or description")
	}
	if ids := strings.Count(svg, ` id="pieces"`); ids != 1 {
		t.Errorf("%d groups of pieces", ids)
	}
	return n
}

func colors(t *testing.T) palette.Palette {
	t.Helper()
	p, err := palette.CommonPractice().ParsePalette("red=#b3202a, cream=#f4e7c5")
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func hall(t *testing.T) draw.Tree {
	return draw.Tree{
		Title:  `Hall <1> & "2"`,
		Layout: placement.Layout{Tree: sizing.Tree{Height: 9 * units.Foot, BareTip: 9 * units.Inch, Handle: 9 * units.Inch}},
		Pieces: []placement.Piece{
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "globe", Size: 4 * units.Inch, Color: "red"}, Count: 30},
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "star", Size: 2 * units.Inch, Color: "cream"}, Count: 40},
			{Item: shopping.Item{Kind: shopping.Pick}, Count: 9},
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "none of these", Size: units.Inch}},
		},
		Garland: placement.Winding{Spacing: units.Foot},
		Lights:  placement.Winding{Spacing: units.Foot, Step: 6 * units.Inch},
		Palette: colors(t),
	}
}

// The front view is to scale: 9 ft stand between floor and tip, and each circle
// is where its place is, with its diameter.
func TestFrontScale(t *testing.T) {
	h := hall(t)
	svg, err := h.Front()
	if err != nil {
		t.Fatal(err)
	}
	n := parse(t, svg)
	if got := n.id("title").Text; got != h.Title+", from the front" {
		t.Errorf("title %q", got)
	}
	const scale, middle, floor = 520.0 / 108, 260.0, 560.0 // a picture's units to the inch, 40 below its top edge
	type ball struct{ x, y, r float64 }
	drawn := map[ball]bool{}
	round := func(x float64) float64 { return math.Round(x*100) / 100 }
	for _, c := range n.id("pieces").all("circle") {
		drawn[ball{c.number(t, "cx"), c.number(t, "cy"), c.number(t, "r")}] = true
	}
	places, err := h.Layout.Places(h.Pieces)
	if err != nil {
		t.Fatal(err)
	}
	near := 0
	for _, p := range places {
		r := p.Item.Size.In(units.Inch) / 2 * scale
		if p.Item.Size == 0 {
			r = 2.4 * scale / 5 // the berry of a pick
		}
		b := ball{round(middle + p.At.X.In(units.Inch)*scale), round(floor - p.At.Z.In(units.Inch)*scale), round(r)}
		if drawn[b] != (p.At.Y <= 0) {
			t.Errorf("%v: drawn is %v", p, drawn[b])
		}
		if p.At.Y <= 0 {
			near++
		}
	}
	if len(drawn) != near {
		t.Errorf("%d drawn, %d on the near side", len(drawn), near)
	}
	if got, want := n.id("desc").Text, strconv.Itoa(near)+" of 79 pieces hang on this side"; !strings.Contains(got, want) {
		t.Errorf("description %q does not say %q", got, want)
	}
	if entries := n.id("legend").all("text"); len(entries) != 3 {
		t.Errorf("%d entries in the legend", len(entries))
	}
	if bar := n.id("scale").all("rect"); len(bar) != 2 || math.Abs(bar[0].number(t, "width")-6*scale) > 0.01 {
		t.Errorf("scale bar %v", bar)
	}
	if n.id("topper").XMLName.Local == "" || len(n.id("garland").all("path")) == 0 || len(n.id("lights").all("circle")) < 30 {
		t.Error("no topper, garland or lights")
	}
}

// The unrolled surface keeps lengths: a place is as far from the tip as on the
// tree, and every place has its number.
func TestUnrolled(t *testing.T) {
	for _, facing := range []placement.Angle{0, 30 * placement.Degree, -170 * placement.Degree} {
		for _, mirror := range []bool{false, true} {
			h := hall(t)
			h.Layout.Tree.Exposure = sizing.InCorner
			h.Layout.Facing, h.Layout.Mirror = facing, mirror
			svg, err := h.Unrolled()
			if err != nil {
				t.Fatal(err)
			}
			n := parse(t, svg)
			pieces := n.id("pieces")
			if got := len(pieces.all("circle")); got != 79 {
				t.Fatalf("%d circles", got)
			}
			labels := map[string]bool{}
			for _, text := range pieces.all("text") {
				labels[strings.TrimRight(text.Text, "ABCD")] = true
			}
			for i := 1; i <= 79; i++ {
				if !labels[strconv.Itoa(i)] {
					t.Errorf("no piece has number %d", i)
				}
			}
			places, err := h.Layout.Places(h.Pieces)
			if err != nil {
				t.Fatal(err)
			}
			// 9 ft by 5.85 ft, 9 in of handle: the slope is √(99² + 35.1²) in.
			slope := math.Hypot(99, 35.1)
			half := math.Pi / 2 * 35.1 / slope
			scale := min((480-56)/(2*slope*math.Sin(half)), 620/slope)
			var want, got []float64
			for _, p := range places {
				want = append(want, (108-p.Height.In(units.Inch))/99*slope*scale)
			}
			left := 0
			for _, c := range pieces.all("circle") {
				x, y := c.number(t, "cx")-240, c.number(t, "cy")-56
				got = append(got, math.Hypot(x, y))
				if math.Abs(math.Atan2(x, y)) > half {
					t.Errorf("a piece beyond the edge: %v %v", x, y)
				}
				if x < 0 {
					left++
				}
			}
			sortBoth(got, want)
			for i := range got {
				if math.Abs(got[i]-want[i]) > 0.02 { // coordinates are to a hundredth
					t.Fatalf("slant %d: %v, want %v", i, got[i], want[i])
				}
			}
			if left < 30 || left > 49 {
				t.Errorf("%d of 79 on the left half", left)
			}
			if hours := n.id("clock").all("text"); len(hours) < 6 || len(hours) > 7 {
				t.Errorf("%d hours over 180°", len(hours))
			}
		}
	}
}

func sortBoth(lists ...[]float64) {
	for _, l := range lists {
		for i := range l {
			for j := i; j > 0 && l[j] < l[j-1]; j-- {
				l[j], l[j-1] = l[j-1], l[j]
			}
		}
	}
}

// The mantel is to scale: shelf, opening, and a garland as long as it should be.
func TestMantelScale(t *testing.T) {
	m := draw.Mantel{
		Title: "Tea room",
		Mantel: mantel.Mantel{
			Length: 64 * units.Inch, Height: 54 * units.Inch, Depth: 8 * units.Inch,
			Opening: mantel.Rectangle{Width: 36 * units.Inch, Height: 38 * units.Inch, Gap: 16 * units.Inch},
		},
		Rules:   mantel.CommonPractice(),
		Hanging: mantel.Hanging{Look: mantel.AsymmetricalLeft, Swags: 3, Sag: 6 * units.Inch, Left: 20 * units.Inch, Right: 10 * units.Inch, Fall: 12 * units.Inch, Thickness: 6 * units.Inch},
		Palette: colors(t),
	}
	svg, err := m.Front()
	if err != nil {
		t.Fatal(err)
	}
	n := parse(t, svg)
	const scale = (480.0 - 132) / 64
	if got := n.id("shelf").number(t, "width"); math.Abs(got-64*scale) > 0.01 {
		t.Errorf("shelf %v", got)
	}
	o := n.id("opening")
	if math.Abs(o.number(t, "width")-36*scale) > 0.01 || math.Abs(o.number(t, "height")-38*scale) > 0.01 || math.Abs(o.number(t, "y")-100-16*scale) > 0.01 {
		t.Errorf("opening %v", o.Attrs)
	}
	if got := len(n.id("hooks").all("circle")); got != 4 {
		t.Errorf("%d hooks for 3 swags", got)
	}
	// The length of the middle line, against the length of the catenaries.
	run, err := m.Mantel.Hang(m.Hanging)
	if err != nil {
		t.Fatal(err)
	}
	want, err := run.Garland()
	if err != nil {
		t.Fatal(err)
	}
	line := n.id("garland").all("path")[0].attr("d")
	if got := length(t, line) / scale; math.Abs(got-want.In(units.Inch)) > 0.1 {
		t.Errorf("garland %v in, want %v", got, want.In(units.Inch))
	}
	zones := n.id("clearances").all("path")
	if len(zones) != 2 {
		t.Fatalf("%d zones", len(zones))
	}
	for i, inches := range []float64{12, 6} {
		x, _ := first(t, zones[i].attr("d"))
		if math.Abs(o.number(t, "x")-x-inches*scale) > 0.01 {
			t.Errorf("zone %d begins at %v", i, x)
		}
	}
	if got := n.id("notes").all("text"); !strings.Contains(svg, "before a fire is lit") || len(got) < 5 {
		t.Error("no caution")
	}

	// Nothing but a length.
	bare := draw.Mantel{Title: "Shelf", Mantel: mantel.Mantel{Length: 4 * units.Foot}, Rules: mantel.CommonPractice()}
	if svg, err = bare.Front(); err != nil {
		t.Fatal(err)
	}
	n = parse(t, svg)
	if n.id("opening").XMLName.Local != "" || strings.Contains(svg, "of the opening") {
		t.Error("an opening where there is none")
	}
}

func first(t *testing.T, d string) (x, y float64) {
	t.Helper()
	pair := strings.Split(strings.FieldsFunc(d, func(r rune) bool { return strings.ContainsRune("MLZ", r) })[0], " ")
	x, err := strconv.ParseFloat(pair[0], 64)
	if err != nil {
		t.Fatal(err)
	}
	y, err = strconv.ParseFloat(pair[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return x, y
}

func length(t *testing.T, d string) float64 {
	t.Helper()
	sum, px, py := 0.0, 0.0, 0.0
	for i, pair := range strings.FieldsFunc(d, func(r rune) bool { return strings.ContainsRune("MLZ", r) }) {
		x, y := first(t, pair)
		if i > 0 {
			sum += math.Hypot(x-px, y-py)
		}
		px, py = x, y
	}
	return sum
}

func TestErrors(t *testing.T) {
	for name, change := range map[string]func(*draw.Tree){
		"height":  func(h *draw.Tree) { h.Layout.Tree.Height = units.Inch },
		"pieces":  func(h *draw.Tree) { h.Pieces[0].Count = -1 },
		"garland": func(h *draw.Tree) { h.Garland.Spacing = units.Inch / 8 },
		"lights":  func(h *draw.Tree) { h.Lights.Step = 0 },
	} {
		h := hall(t)
		change(&h)
		if svg, err := h.Front(); err == nil || svg != "" {
			t.Errorf("Front, %s: no error", name)
		}
	}
	h := hall(t)
	h.Layout.Tree.Exposure = -1
	if svg, err := h.Unrolled(); err == nil || svg != "" {
		t.Error("Unrolled: no error")
	}
	ok := draw.Mantel{Mantel: mantel.Mantel{Length: 4 * units.Foot}, Rules: mantel.CommonPractice()}
	for name, change := range map[string]func(*draw.Mantel){
		"length":  func(m *draw.Mantel) { m.Mantel.Length = 0 },
		"rules":   func(m *draw.Mantel) { m.Rules.Traditional.PickSpacing = -1 },
		"hanging": func(m *draw.Mantel) { m.Hanging.Sag = -1 },
	} {
		m := ok
		change(&m)
		if svg, err := m.Front(); err == nil || svg != "" {
			t.Errorf("mantel, %s: no error", name)
		}
	}
}

// What the description says of the tree, for those who do not see the picture.
func TestDescription(t *testing.T) {
	for e, want := range map[sizing.Exposure]string{
		sizing.AllRound:    "dressed all round",
		sizing.AgainstWall: "dressed to stand against a wall",
		sizing.InCorner:    "dressed to stand in a corner",
		sizing.HalfTree:    "dressed as a half tree",
		200_000:            "dressed over 200 degrees",
	} {
		h := hall(t)
		h.Layout.Tree.Exposure = e
		for _, draw := range []func() (string, error){h.Front, h.Unrolled} {
			svg, err := draw()
			if err != nil {
				t.Fatal(err)
			}
			if got := parse(t, svg).id("desc").Text; !strings.Contains(got, "9 ft tall and 5 ft 10 in wide, "+want) {
				t.Errorf("%q does not say %q", got, want)
			}
		}
	}
}

// Long names take one column and as many lines as they need, and touch neither each
// other nor the edge; short ones take two columns.
func TestLegendColumns(t *testing.T) {
	h := hall(t)
	column := func(name string) (columns map[float64]int, lines []string, height float64) {
		h.Pieces = nil
		for range 5 {
			h.Pieces = append(h.Pieces, placement.Piece{Item: shopping.Item{Kind: shopping.Ornament, Type: name, Size: 3 * units.Inch, Color: "cream"}, Count: 1})
		}
		for _, draw := range []func() (string, error){h.Unrolled, h.Front} {
			svg, err := draw()
			if err != nil {
				t.Fatal(err)
			}
			n := parse(t, svg)
			columns, lines = map[float64]int{}, nil
			_, box, _ := strings.Cut(n.attr("viewBox"), "480 ")
			if height, err = strconv.ParseFloat(box, 64); err != nil {
				t.Fatal(err)
			}
			for _, e := range n.id("legend").all("text") {
				columns[e.number(t, "x")]++
				lines = append(lines, strings.TrimSpace(e.Text))
				bottom := e.number(t, "y")
				for _, more := range e.all("tspan") {
					lines = append(lines, more.Text)
					bottom += more.number(t, "dy")
				}
				if bottom > height-4 {
					t.Errorf("%s: a line at %v of %v", name, bottom, height)
				}
			}
		}
		return columns, lines, height
	}
	columns, lines, low := column("bell")
	if len(columns) != 2 || columns[45] != 3 || len(lines) != 5 {
		t.Errorf("short names: columns %v, lines %q", columns, lines)
	}
	columns, lines, high := column("locomotive with a tender and three wagons")
	if len(columns) != 1 || len(lines) != 5 || high != low+2*17 {
		t.Errorf("long names: columns %v, lines %q, %v high and %v", columns, lines, low, high)
	}
	for _, name := range []string{"locomotive with a tender and three wagons of the mail too", strings.Repeat("W", 64)} {
		columns, lines, _ = column(name)
		if len(columns) != 1 || len(lines) < 10 {
			t.Errorf("very long names: columns %v, lines %q", columns, lines)
		}
		for _, line := range lines {
			// From measuring in a browser: DejaVu Sans at 11 px has at most 10.9 px for a W
			// and 5.9 on average for words, and there are 407 px.
			if n := len([]rune(line)); n > 80 || strings.Contains(line, "WWW") && n > 40 {
				t.Errorf("a line of %d: %s", n, line)
			}
		}
	}
}

// More pieces than letters, and a garland or lights that cannot be.
func TestManyKinds(t *testing.T) {
	h := hall(t)
	h.Pieces, h.Garland, h.Lights = nil, placement.Winding{}, placement.Winding{}
	for i := range 30 {
		h.Pieces = append(h.Pieces, placement.Piece{Item: shopping.Item{Kind: shopping.Ornament, Type: "t" + strconv.Itoa(i), Size: 3 * units.Inch}, Count: 2})
	}
	svg, err := h.Front()
	if err != nil {
		t.Fatal(err)
	}
	n := parse(t, svg)
	entries := n.id("legend").all("text")
	if len(entries) != 30 || !strings.HasPrefix(entries[26].Text, "AA ") || !strings.HasPrefix(entries[29].Text, "AD ") {
		t.Errorf("%v", entries)
	}
	if n.id("garland").XMLName.Local != "" || n.id("lights").XMLName.Local != "" {
		t.Error("a garland or lights where there are none")
	}
}

// Every piece is on one sheet of the crew, once in the picture and once in the list, with
// everything on the paper and no two numbers over each other.
func TestCrew(t *testing.T) {
	for _, paper := range []draw.Paper{draw.Letter, draw.A4} {
		for _, feet := range []units.Length{9, 15, 30} {
			h := hall(t)
			h.Layout.Tree.Height = feet * units.Foot
			sheets, err := h.Crew(paper)
			if err != nil {
				t.Fatal(err)
			}
			drawn, listed := map[string]int{}, map[string]int{}
			for _, sheet := range sheets {
				n := parse(t, sheet)
				for _, text := range n.all("text") {
					x, y := text.number(t, "x"), text.number(t, "y")
					if x < 40 || x > paper.Width-40 || y < 40 || y > paper.Height-40 {
						t.Errorf("%v: %q is off the paper, at %v %v", feet, text.Text, x, y)
					}
				}
				plates := n.id("pieces").all("rect")
				for i, p := range plates {
					for _, q := range plates[:i] {
						if math.Abs(p.number(t, "x")-q.number(t, "x")) < 10 && math.Abs(p.number(t, "y")-q.number(t, "y")) < 10 {
							t.Errorf("%v: two numbers at %v %v", feet, p.number(t, "x"), p.number(t, "y"))
						}
					}
				}
				for _, text := range n.id("pieces").all("text") {
					drawn[text.Text]++
				}
				for _, text := range n.id("list").all("text") {
					if text.attr("font-weight") == "bold" {
						listed[text.Text]++
					}
				}
			}
			for i := 1; i <= 79; i++ {
				if name := strconv.Itoa(i); drawn[name] != 1 || listed[name] != 1 {
					t.Errorf("%v: piece %d is drawn %d times and listed %d times", feet, i, drawn[name], listed[name])
				}
			}
		}
	}
	h := hall(t)
	h.Layout.Tree.Height = units.Inch
	if _, err := h.Crew(draw.Letter); err == nil {
		t.Error("sheets for no tree")
	}
}

// The client's view has every piece of the near side and no letters, in under 300 kB, and
// its ids do not collide when two stand in one page.
func TestClient(t *testing.T) {
	h := hall(t)
	h.Layout.Tree.Exposure = sizing.AllRound
	places, err := h.Layout.Places(h.Pieces)
	if err != nil {
		t.Fatal(err)
	}
	near := 0
	for _, p := range places {
		if p.At.Y <= 0 {
			near++
		}
	}
	seen := map[string]bool{}
	for _, dark := range []bool{false, true} {
		svg, err := h.Client(dark)
		if err != nil {
			t.Fatal(err)
		}
		var n node
		if err := xml.Unmarshal([]byte(svg), &n); err != nil {
			t.Fatal(err)
		}
		if got := strings.Count(svg, `<g class="piece">`); got != near {
			t.Errorf("%d pieces, want %d", got, near)
		}
		if len(svg) > 300_000 || len(n.all("text")) > 0 {
			t.Errorf("%d bytes, %d texts", len(svg), len(n.all("text")))
		}
		title, desc, _ := strings.Cut(n.attr("aria-labelledby"), " ")
		if n.id(title).Text != h.Title || len(n.id(desc).Text) < 20 {
			t.Errorf("title %q, description %q", n.id(title).Text, n.id(desc).Text)
		}
		for _, part := range strings.Split(svg, ` id="`)[1:] {
			id, _, _ := strings.Cut(part, `"`)
			if seen[id] {
				t.Errorf("id %q is there twice", id)
			}
			seen[id] = true
		}
	}
	for name, change := range map[string]func(*draw.Tree){
		"height":  func(h *draw.Tree) { h.Layout.Tree.Height = units.Inch },
		"garland": func(h *draw.Tree) { h.Garland.Spacing = units.Inch / 8 },
		"lights":  func(h *draw.Tree) { h.Lights.Step = 0 },
	} {
		h := hall(t)
		change(&h)
		if svg, err := h.Client(false); err == nil || svg != "" {
			t.Errorf("%s: no error", name)
		}
	}
}
