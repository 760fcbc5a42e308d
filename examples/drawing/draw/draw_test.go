package draw_test

import (
	"encoding/xml"
	"fmt"
	"math"
	"regexp"
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

// id returns the element that is a part of a picture, or has an id, and all returns those
// with a name in it.
func (n node) id(id string) (found node) {
	for _, m := range n.Nodes {
		if m.attr("id") == id || m.attr("data-part") == id {
			return m
		}
		if f := m.id(id); f.XMLName.Local != "" {
			found = f
		}
	}
	return found
}

// title and desc return what names and describes a picture.
func (n node) title() string {
	title, _, _ := strings.Cut(n.attr("aria-labelledby"), " ")
	return n.id(title).Text
}

func (n node) desc() string {
	_, desc, _ := strings.Cut(n.attr("aria-labelledby"), " ")
	return n.id(desc).Text
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
	if n.title() == "" || len(n.desc()) < 20 {
		t.Error("no title or description")
	}
	if ids := strings.Count(svg, ` data-part="pieces"`); ids != 1 {
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
		Pieces: []shopping.Lot{
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "globe", Size: 4 * units.Inch, Color: "red"}, Quantity: shopping.Quantity{Pieces: 30}},
			{Item: shopping.Item{Kind: shopping.Ornament, Type: "star", Size: 2 * units.Inch, Color: "cream"}, Quantity: shopping.Quantity{Pieces: 40}},
			{Item: shopping.Item{Kind: shopping.Pick}, Quantity: shopping.Quantity{Pieces: 9}},
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
	if got := n.title(); got != h.Title+", from the front" {
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
	if got, want := n.desc(), strconv.Itoa(near)+" of 79 pieces hang on this side"; !strings.Contains(got, want) {
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
	const scale = (480.0 - 176) / 64
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
		"pieces":  func(h *draw.Tree) { h.Pieces[0].Quantity.Pieces = -1 },
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
			if got := parse(t, svg).desc(); !strings.Contains(got, "9 ft tall and 5 ft 10 in wide, "+want) {
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
			h.Pieces = append(h.Pieces, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: name, Size: 3 * units.Inch, Color: "cream"}, Quantity: shopping.Quantity{Pieces: 1}})
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
		h.Pieces = append(h.Pieces, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: "t" + strconv.Itoa(i), Size: 3 * units.Inch}, Quantity: shopping.Quantity{Pieces: 2}})
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
				// From measuring in a browser: a letter of DejaVu Sans is 0.48 of its
				// size wide on average over such texts.
				for _, text := range n.id("list").all("text") {
					size := n.id("list").number(t, "font-size")
					if text.attr("font-size") != "" {
						size = text.number(t, "font-size")
					}
					if end := text.number(t, "x") + 0.48*size*float64(len(text.Text)); end > paper.Width-40 {
						t.Errorf("%v: %q ends at %v of %v", feet*units.Foot, text.Text, end, paper.Width)
					}
				}
				plates := n.id("pieces").all("rect")
				for i, p := range plates {
					for _, q := range plates[:i] {
						px, py, qx, qy := p.number(t, "x"), p.number(t, "y"), q.number(t, "x"), q.number(t, "y")
						if px < qx+q.number(t, "width") && qx < px+p.number(t, "width") && py < qy+q.number(t, "height") && qy < py+p.number(t, "height") {
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

// The client's view has every piece of the near side once, where and as large as it hangs,
// and no letters, in under 300 kB.
func TestClient(t *testing.T) {
	h := hall(t)
	h.Ribbon = draw.Ribbon{Winding: placement.Winding{Spacing: 15 * units.Inch, Drape: sizing.Drape{Span: 14 * units.Inch, Sag: 2 * units.Inch}}, Color: "red"}
	svg, err := h.Client()
	if err != nil {
		t.Fatal(err)
	}
	var n node
	if err := xml.Unmarshal([]byte(svg), &n); err != nil {
		t.Fatal(err)
	}
	if len(svg) > 300_000 || len(n.all("text")) > 0 {
		t.Errorf("%d bytes, %d texts", len(svg), len(n.all("text")))
	}
	if n.title() != h.Title || !strings.Contains(n.desc(), "with garland and ribbon and lights") {
		t.Errorf("title %q, description %q", n.title(), n.desc())
	}
	drawn := map[int]string{}
	for _, use := range n.all("use") {
		if piece := use.attr("data-piece"); piece != "" {
			i := int(use.number(t, "data-piece"))
			if drawn[i] != "" {
				t.Errorf("piece %d is drawn twice", i)
			}
			drawn[i] = use.attr("transform")
		}
	}
	places, err := h.Layout.Places(h.Pieces)
	if err != nil {
		t.Fatal(err)
	}
	stations, err := placement.Order{}.Stations(places)
	if err != nil {
		t.Fatal(err)
	}
	// 9 ft are 760 high, 44 below the upper edge, and the trunk is in the middle of 640.
	const scale = 760.0 / 108
	near := 0
	for _, s := range stations {
		for i, step := range s.Places {
			number := s.First + i
			got, ok := drawn[number]
			if ok != (step.At.Y <= 0) {
				t.Errorf("piece %d, %v: drawn is %v", number, step, ok)
			}
			if step.At.Y > 0 {
				continue
			}
			near++
			var x, y, turn, size float64
			if _, err := fmt.Sscanf(got, "translate(%f %f) rotate(%f) scale(%f)", &x, &y, &turn, &size); err != nil {
				t.Fatal(got, err)
			}
			if math.Abs(x-320-step.At.X.In(units.Inch)*scale) > 0.051 || math.Abs(y-804+step.At.Z.In(units.Inch)*scale) > 0.051 {
				t.Errorf("piece %d, %v, is at %v %v", number, step, x, y)
			}
			if step.Item.Size > 0 && math.Abs(size*100-step.Item.Size.In(units.Inch)/2*scale) > 0.051 {
				t.Errorf("piece %d of %v is drawn %v from the middle to the edge", number, step.Item.Size, size*100)
			}
		}
	}
	if len(drawn) != near || near < 30 {
		t.Errorf("%d drawn, %d on the near side", len(drawn), near)
	}
	for name, change := range map[string]func(*draw.Tree){
		"height":  func(h *draw.Tree) { h.Layout.Tree.Height = units.Inch },
		"garland": func(h *draw.Tree) { h.Garland.Spacing = units.Inch / 8 },
		"ribbon":  func(h *draw.Tree) { h.Ribbon.Spacing = units.Inch / 8 },
		"sag":     func(h *draw.Tree) { h.Garland.Drape.Sag = units.Foot },
		"lights":  func(h *draw.Tree) { h.Lights.Step = 0 },
	} {
		h := hall(t)
		change(&h)
		if svg, err := h.Client(); err == nil || svg != "" {
			t.Errorf("%s: no error", name)
		}
	}
}

// Ribbon is drawn as ribbon and garland as garland, each where it was asked for, and both
// in no fewer pieces of path than there are spans to see.
func TestWoundAsSuch(t *testing.T) {
	w := placement.Winding{Spacing: 15 * units.Inch, Drape: sizing.Drape{Span: 14 * units.Inch, Sag: 2 * units.Inch}}
	count := func(change func(*draw.Tree)) (bands, ropes int) {
		h := hall(t)
		h.Garland = placement.Winding{}
		change(&h)
		svg, err := h.Client()
		if err != nil {
			t.Fatal(err)
		}
		return strings.Count(svg, `data-part="ribbon"`), strings.Count(svg, `data-part="garland"`)
	}
	if bands, ropes := count(func(*draw.Tree) {}); bands != 0 || ropes != 0 {
		t.Errorf("%d spans of ribbon and %d of garland where there are none", bands, ropes)
	}
	if bands, ropes := count(func(h *draw.Tree) { h.Ribbon.Winding = w }); bands < 15 || ropes != 0 {
		t.Errorf("%d spans of ribbon, %d of garland", bands, ropes)
	}
	if bands, ropes := count(func(h *draw.Tree) { h.Garland = w }); bands != 0 || ropes < 15 {
		t.Errorf("%d spans of ribbon, %d of garland", bands, ropes)
	}
}

// Every shape and every finish can be drawn, and each is another picture.
func TestShapes(t *testing.T) {
	seen := map[string]int{}
	for _, finish := range []palette.Finish{0, palette.Matte, palette.Shiny, palette.Glitter, palette.Clear, palette.Metal, palette.Natural, palette.Matte | palette.Shiny} {
		p, err := palette.CommonPractice().Palette(palette.Swatch{Name: "red", Color: palette.Color{180, 30, 40}, Finish: finish})
		if err != nil {
			t.Fatal(err)
		}
		h := hall(t)
		h.Palette, h.Garland, h.Lights, h.Pieces = p, placement.Winding{}, placement.Winding{}, nil
		h.Layout.Tree.Exposure = sizing.InCorner // all are seen
		kinds := []string{"ball", "star", "snowflake", "icicle", "drop", "bell", "bow", "pine cone", "lantern", "drum", "heart", "bird", "locomotive"}
		for _, kind := range kinds {
			h.Pieces = append(h.Pieces, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: kind, Size: 4 * units.Inch, Color: "red"}, Quantity: shopping.Quantity{Pieces: 3}})
		}
		svg, err := h.Client()
		if err != nil {
			t.Fatal(err)
		}
		n := parseXML(t, svg)
		if finish == palette.Shiny {
			for i := range kinds {
				_, body, _ := strings.Cut(svg, fmt.Sprintf(`o%d">`, i))
				body, _, _ = strings.Cut(body, "</g>\n")
				if other, ok := seen[body]; ok || body == "" {
					t.Errorf("kind %d is drawn like kind %d", i, other)
				}
				seen[body] = i
			}
		}
		// Each reference is to something that is there.
		ids := map[string]bool{}
		for _, part := range strings.Split(svg, ` id="`)[1:] {
			id, _, _ := strings.Cut(part, `"`)
			ids[id] = true
		}
		for _, use := range n.all("use") {
			if !ids[strings.TrimPrefix(use.attr("href"), "#")] {
				t.Fatalf("%v: no %s", finish, use.attr("href"))
			}
		}
		for _, part := range strings.Split(svg, `url(#`)[1:] {
			if id, _, _ := strings.Cut(part, `)`); !ids[id] {
				t.Fatalf("%v: no paint %s", finish, id)
			}
		}
	}
}

func parseXML(t *testing.T, svg string) (n node) {
	t.Helper()
	if err := xml.Unmarshal([]byte(svg), &n); err != nil {
		t.Fatal(err)
	}
	return n
}

// Pictures that stand in one page have no id in common.
func TestIDs(t *testing.T) {
	h := hall(t)
	other := h
	other.Title = "Waiting room"
	m := draw.Mantel{Title: "Shelf", Mantel: mantel.Mantel{Length: 4 * units.Foot}, Rules: mantel.CommonPractice()}
	seen := map[string]bool{}
	for i, draw := range []func() (string, error){h.Front, h.Unrolled, h.Client, other.Front, other.Unrolled, other.Client, m.Front} {
		svg, err := draw()
		if err != nil {
			t.Fatal(err)
		}
		for _, part := range strings.Split(svg, ` id="`)[1:] {
			id, _, _ := strings.Cut(part, `"`)
			if seen[id] {
				t.Errorf("picture %d: id %q is there twice", i, id)
			}
			seen[id] = true
		}
	}
	if len(seen) < 30 {
		t.Errorf("%d ids", len(seen))
	}
}

// A number is over no other one and over no other piece, in a crowd too.
func TestCrewCrowd(t *testing.T) {
	h := hall(t)
	h.Pieces[0].Quantity.Pieces, h.Pieces[1].Quantity.Pieces, h.Pieces[2].Quantity.Pieces = 100, 60, 60
	sheets, err := h.Crew(draw.A4)
	if err != nil {
		t.Fatal(err)
	}
	for _, sheet := range sheets {
		pieces := parse(t, sheet).id("pieces")
		plates, covered := pieces.all("rect"), 0
		for i, p := range plates {
			x, y, w, h := p.number(t, "x"), p.number(t, "y"), p.number(t, "width"), p.number(t, "height")
			for _, q := range plates[:i] {
				if math.Abs(x+w/2-q.number(t, "x")-q.number(t, "width")/2) < (w+q.number(t, "width"))/2 && math.Abs(y-q.number(t, "y")) < h {
					t.Errorf("two numbers at %v %v", x, y)
				}
			}
			for _, c := range pieces.all("circle") {
				// A quarter of the disk may be under a plate beside it, not its middle.
				if cx, cy := c.number(t, "cx"), c.number(t, "cy"); cx > x && cx < x+w && cy > y && cy < y+h {
					covered++
				}
			}
		}
		// A number in its own disk covers one.
		if own := len(plates); covered > own {
			t.Errorf("%d middles under %d numbers", covered, own)
		}
	}
}

// The sheets of the mantel have every spot once in the list and once over the shelf, the
// steps, and everything on the paper.
func TestMantelCrew(t *testing.T) {
	for _, paper := range []draw.Paper{draw.Letter, draw.A4} {
		for _, length := range []units.Length{4 * units.Foot, 64 * units.Inch, 12 * units.Foot} {
			m := draw.Mantel{
				Title: strings.Repeat("Tea room of the station ", 4), Mantel: mantel.Mantel{Length: length, Height: 54 * units.Inch}, Rules: mantel.CommonPractice(),
				Hanging: mantel.Hanging{Swags: 2, Sag: 6 * units.Inch, Left: 20 * units.Inch, Right: 10 * units.Inch, Look: mantel.AsymmetricalLeft, Fall: 12 * units.Inch, Thickness: 6 * units.Inch}, Palette: colors(t),
			}
			sheets, err := m.Crew(paper, nil)
			if err != nil {
				t.Fatal(err)
			}
			spots, err := m.Rules.Spots(m.Mantel, m.Hanging.Look)
			if err != nil {
				t.Fatal(err)
			}
			drawn, listed, steps := map[string]int{}, map[string]int{}, 0
			for _, sheet := range sheets {
				n := parseXML(t, sheet)
				if n.number(t, "width") != paper.Width || n.title() == "" || len(n.desc()) < 20 {
					t.Errorf("a sheet %v wide, %q, %q", n.number(t, "width"), n.title(), n.desc())
				}
				for _, text := range n.all("text") {
					if text.attr("x") == "" { // turned
						continue
					}
					if x, y := text.number(t, "x"), text.number(t, "y"); x < 40 || x > paper.Width-40 || y < 40 || y > paper.Height-40 {
						t.Errorf("%q is off the paper, at %v %v", text.Text, x, y)
					}
				}
				for _, text := range n.id("numbers").all("text") {
					drawn[text.Text]++
				}
				for _, text := range n.all("g") {
					if text.attr("data-part") == "list" {
						for _, text := range text.all("text") {
							if text.attr("font-weight") == "bold" {
								listed[text.Text]++
							}
						}
					}
				}
				for _, text := range n.id("steps").all("text") {
					if text.attr("font-weight") == "bold" {
						steps++
					}
				}
			}
			for i := range spots {
				if name := strconv.Itoa(i + 1); drawn[name] != 1 || listed[name] != 1 {
					t.Errorf("%v: spot %s is drawn %d times and listed %d times", length, name, drawn[name], listed[name])
				}
			}
			if len(listed) != len(spots) || steps < 6 {
				t.Errorf("%v: %d listed of %d, %d steps", length, len(listed), len(spots), steps)
			}
		}
	}
	if _, err := (draw.Mantel{Rules: mantel.CommonPractice()}).Crew(draw.A4, nil); err == nil {
		t.Error("no error for no mantel")
	}
}

// A page to print has a section for each sheet, of the size of the paper.
func TestPrint(t *testing.T) {
	sheets, err := hall(t).Crew(draw.A4)
	if err != nil {
		t.Fatal(err)
	}
	// Letter is 8 1/2 by 11 in (ANSI A), A4 210 by 297 mm (ISO 216), 96 to the inch.
	if draw.Letter.Width != 8.5*96 || draw.Letter.Height != 11*96 || math.Abs(draw.A4.Width-210/25.4*96) > 0.05 || math.Abs(draw.A4.Height-297/25.4*96) > 0.05 {
		t.Error(draw.Letter, draw.A4)
	}
	for _, paper := range []draw.Paper{draw.Letter, draw.A4} {
		page := draw.Print("Crew & co", paper, sheets)
		if strings.Count(page, "<section>") != len(sheets) || strings.Count(page, "</svg>") != len(sheets) {
			t.Errorf("%d sections for %d sheets", strings.Count(page, "<section>"), len(sheets))
		}
		if !strings.Contains(page, "size: "+paper.Name+" ") || !strings.Contains(page, "<title>Crew &amp; co</title>") || !strings.Contains(page, "print-color-adjust: exact") {
			t.Errorf("%.300s", page)
		}
	}
}

// Letters are read on every color: at least 4.5:1, as the guidelines of the W3C have it
// for text (WCAG 2.2, success criterion 1.4.3, with its formula of the contrast ratio).
func TestContrast(t *testing.T) {
	luminance := func(hex string) float64 {
		if len(hex) == 4 {
			hex = "#" + strings.Repeat(hex[1:2], 2) + strings.Repeat(hex[2:3], 2) + strings.Repeat(hex[3:4], 2)
		}
		sum := 0.0
		for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
			n, err := strconv.ParseUint(hex[1+2*i:3+2*i], 16, 8)
			if err != nil {
				t.Fatal(hex, err)
			}
			x := float64(n) / 255
			if x <= 0.04045 {
				x /= 12.92
			} else {
				x = math.Pow((x+0.055)/1.055, 2.4)
			}
			sum += weight * x
		}
		return sum
	}
	contrast := func(a, b string) float64 {
		x, y := luminance(a), luminance(b)
		return (max(x, y) + 0.05) / (min(x, y) + 0.05)
	}
	// The guidelines have #777 on white at 4.48:1; black on white is 21:1.
	if got := contrast("#777777", "#fff"); math.Abs(got-4.48) > 0.005 || contrast("#000", "#fff") != 21 {
		t.Fatal("the formula: ", got)
	}
	least, letters := 21.0, 0
	for _, hex := range []string{"#b5893a", "#b3202a", "#f4e7c5", "#24365e", "#777777", "#757575", "#767676", "#808080", "#c08080", "#008b8b", "#ff0000", "#0000ff", "#00a000", "#d2691e"} {
		h := hall(t)
		var err error
		if h.Palette, err = palette.CommonPractice().ParsePalette("red=" + hex); err != nil {
			t.Fatal(err)
		}
		h.Pieces = h.Pieces[:1]
		svg, err := h.Front()
		if err != nil {
			t.Fatal(err)
		}
		n := parse(t, svg)
		for _, text := range n.id("pieces").all("text") {
			letters++
			if got := contrast(hex, text.attr("fill")); got < 4.5 {
				t.Errorf("%s on %s has %.2f", text.attr("fill"), hex, got)
			} else {
				least = min(least, got)
			}
		}
		// Everything else is ink on paper, or gray that is dark enough.
		for _, e := range n.all("g") {
			if e.attr("font-size") != "" && e.attr("fill") != "" && contrast(e.attr("fill"), "#fff") < 4.5 {
				t.Errorf("%s on paper", e.attr("fill"))
			}
		}
	}
	if letters < 100 || least > 6 {
		t.Errorf("%d letters, the least contrast %v: no color was hard", letters, least)
	}
}

// All pieces have letters, or none has and the legend neither.
func TestLettersAllOrNone(t *testing.T) {
	for _, feet := range []units.Length{5, 9, 15, 30, 40} {
		h := hall(t)
		h.Layout.Tree.Height = feet * units.Foot
		svg, err := h.Front()
		if err != nil {
			t.Fatal(err)
		}
		n := parse(t, svg)
		pieces := n.id("pieces")
		letters := len(pieces.all("text"))
		if letters != 0 && letters != len(pieces.all("circle")) {
			t.Errorf("%v: %d letters for %d pieces", feet, letters, len(pieces.all("circle")))
		}
		if got := strings.HasPrefix(n.id("legend").all("text")[0].Text, "A "); got != (letters > 0) || feet == 9 && letters == 0 || feet == 40 && letters > 0 {
			t.Errorf("%v: %d letters, and the legend has them is %v", feet, letters, got)
		}
	}
}

// A long title takes as many lines as it needs, and what is below moves down.
func TestTitleWraps(t *testing.T) {
	long := "The ticket hall of the railway station, beside the window of the lost property office, on the left as one comes in"
	h := hall(t)
	h.Title = long
	m := draw.Mantel{Title: long, Mantel: mantel.Mantel{Length: 4 * units.Foot}, Rules: mantel.CommonPractice()}
	for i, draw := range []func() (string, error){h.Front, h.Unrolled, m.Front} {
		svg, err := draw()
		if err != nil {
			t.Fatal(err)
		}
		var lines []string
		lowest := 0.0
		for _, text := range parse(t, svg).all("text") {
			if text.attr("font-size") == "15" {
				lines = append(lines, text.Text)
				lowest = text.number(t, "y")
			}
		}
		if strings.Join(lines, " ") != long || len(lines) < 3 || lowest != 24+19*float64(len(lines)-1) {
			t.Errorf("picture %d: %q", i, lines)
		}
		for _, l := range lines {
			// From measuring in a browser: bold DejaVu Sans at 15 px has 7.8 px a letter.
			if 9*float64(len(l)) > 480-28 {
				t.Errorf("picture %d: %q is wider than the picture", i, l)
			}
		}
	}
}

// A mantel whose height was not measured has no floor; dimensions are clear of the bow.
func TestMantelMeasures(t *testing.T) {
	m := draw.Mantel{Title: "Shelf", Mantel: mantel.Mantel{Length: 64 * units.Inch}, Rules: mantel.CommonPractice(), Palette: colors(t)}
	svg, err := m.Front()
	if err != nil {
		t.Fatal(err)
	}
	if n := parse(t, svg); n.id("floor").XMLName.Local != "" {
		t.Error("a floor that nobody measured")
	}
	for _, look := range []mantel.Look{mantel.AsymmetricalLeft, mantel.AsymmetricalRight} {
		m.Mantel.Height = 54 * units.Inch
		m.Hanging = mantel.Hanging{Look: look, Left: 30 * units.Inch, Right: 30 * units.Inch, Fall: 20 * units.Inch, Thickness: 6 * units.Inch}
		if svg, err = m.Front(); err != nil {
			t.Fatal(err)
		}
		n := parse(t, svg)
		if n.id("floor").XMLName.Local == "" {
			t.Error("no floor")
		}
		// Everything that hangs, from left to right.
		low, high := math.Inf(1), math.Inf(-1)
		for _, p := range n.id("pieces").all("path") {
			for _, pair := range strings.FieldsFunc(p.attr("d"), func(r rune) bool { return strings.ContainsRune("MLZ", r) }) {
				x, _ := first(t, pair)
				low, high = min(low, x), max(high, x)
			}
		}
		for _, p := range n.id("measures").all("path") {
			for _, pair := range strings.FieldsFunc(p.attr("d"), func(r rune) bool { return strings.ContainsRune("MLZ", r) }) {
				if x, _ := first(t, pair); x > low && x < high || x < 4 || x > 476 {
					t.Errorf("%v: a dimension at %v, over what hangs from %v to %v, or off the picture", look, x, low, high)
				}
			}
		}
		if len(n.id("measures").all("text")) != 3 {
			t.Errorf("%d dimensions", len(n.id("measures").all("text")))
		}
	}
}

// The dark in a tree does not show beside its topper: it is drawn the same on trees of one
// shape, whatever their height.
func TestHeart(t *testing.T) {
	heart := func(height units.Length) string {
		svg, err := draw.Tree{Title: "tree", Layout: placement.Layout{Tree: sizing.Tree{Height: height, BareTip: height / 12, Handle: height / 12}}}.Client()
		if err != nil {
			t.Fatal(err)
		}
		found := regexp.MustCompile(`<path [^>]*fill="#03100a"[^>]*>`).FindString(svg)
		if found == "" {
			t.Fatal("no dark in the tree")
		}
		return found
	}
	if small, large := heart(54*units.Inch), heart(9*units.Foot); small != large {
		t.Errorf("4 ft 6 in: %s\n9 ft: %s", small, large)
	}
}
