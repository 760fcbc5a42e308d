package draw

import (
	"encoding/xml"
	"hash/fnv"
	"math"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// A point is in the units of the picture, x to the right and y down.
type point struct{ x, y float64 }

// A canvas is an SVG document that is being written.
type canvas struct{ b strings.Builder }

// own stands in for what makes the ids of a picture its own, until close knows it.
const own = "\x01"

// id returns an id of this picture: what is drawn under a name, by number. No other
// picture in the same page has it.
func (c *canvas) id(name string, number ...int) string {
	for _, n := range number {
		name += strconv.Itoa(n)
	}
	return own + name
}

// The colors of everything but the pieces. All are told apart by their lightness
// alone, so that the pictures survive a black and white printer.
const (
	ink    = "#222"
	faint  = "#8a8a8a"
	paper  = "#fff"
	needle = "#dce8dc"
	branch = "#b4cbb6"
	wood   = "#8d7355"
	glow   = "#ffd84d"
	alarm  = "#b3261e"
)

// open begins a picture with a title and a description for those who do not see it.
func (c *canvas) open(width, height float64, title, desc string) {
	c.raw(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 `, num(width), " ", num(height),
		`" width="`, num(width), `" height="`, num(height), `" role="img" aria-labelledby="`, c.id("title"), " ", c.id("desc"), `"`,
		` style="max-width:100%;height:auto" font-family="DejaVu Sans, Verdana, sans-serif" font-size="12" fill="`, ink, `">`, "\n")
	c.raw(`<title id="`, c.id("title"), `">`, escape(title), "</title>\n")
	c.raw(`<desc id="`, c.id("desc"), `">`, escape(desc), "</desc>\n")
	c.raw(`<rect width="100%" height="100%" fill="`, paper, `"/>`, "\n")
}

// close ends the picture and returns it. Its ids begin with a number that is made of all
// that is in it, so that two pictures in one page have none in common.
func (c *canvas) close() string {
	c.raw("</svg>\n")
	h := fnv.New64a()
	_, _ = h.Write([]byte(c.b.String())) // it takes everything
	return strings.ReplaceAll(c.b.String(), own, "p"+strconv.FormatUint(h.Sum64()&(1<<40-1), 36))
}

func (c *canvas) raw(parts ...string) {
	for _, p := range parts {
		c.b.WriteString(p)
	}
}

// path draws a path through points, closed or not.
func (c *canvas) path(points []point, closed bool, attrs string) {
	c.raw(`<path d="`)
	for i, p := range points {
		command := "L"
		if i == 0 {
			command = "M"
		}
		c.raw(command, num(p.x), " ", num(p.y))
	}
	if closed {
		c.raw("Z")
	}
	c.raw(`" `, attrs, "/>\n")
}

func (c *canvas) line(p, q point, attrs string) { c.path([]point{p, q}, false, attrs) }

func (c *canvas) circle(p point, r float64, attrs string) {
	c.raw(`<circle cx="`, num(p.x), `" cy="`, num(p.y), `" r="`, num(r), `" `, attrs, "/>\n")
}

func (c *canvas) rect(x, y, w, h float64, attrs string) {
	c.raw(`<rect x="`, num(x), `" y="`, num(y), `" width="`, num(w), `" height="`, num(h), `" `, attrs, "/>\n")
}

func (c *canvas) text(p point, attrs, s string) {
	c.raw(`<text x="`, num(p.x), `" y="`, num(p.y), `"`)
	if attrs != "" {
		c.raw(" ", attrs)
	}
	c.raw(">", escape(s), "</text>\n")
}

// heading draws a title in as many lines as it takes, the first at y = 24, and returns
// how much lower than a single one it ends.
func (c *canvas) heading(title string) float64 {
	lines := headLines(title)
	for i, l := range lines {
		c.text(point{margin / 2, 24 + 19*float64(i)}, `font-size="15" font-weight="bold"`, l)
	}
	return 19 * float64(len(lines)-1)
}

// headLines breaks a title: bold letters are an eighth wider.
func headLines(title string) []string { return wrap(title, (width-margin)/1.125, 15) }

// measure draws a dimension line from p to q with a label beside its middle.
func (c *canvas) measure(p, q point, label string) {
	c.line(p, q, `stroke="`+ink+`" fill="none"`)
	dx, dy := q.x-p.x, q.y-p.y
	d := hypot(dx, dy)
	dx, dy = dx/d, dy/d
	for _, e := range []struct {
		at   point
		sign float64
	}{{p, 1}, {q, -1}} {
		tip := func(side float64) point {
			return point{e.at.x + e.sign*7*dx - side*3*dy, e.at.y + e.sign*7*dy + side*3*dx}
		}
		c.path([]point{tip(1), e.at, tip(-1)}, true, `fill="`+ink+`"`)
		c.line(point{e.at.x - 5*dy, e.at.y + 5*dx}, point{e.at.x + 5*dy, e.at.y - 5*dx}, `stroke="`+ink+`"`)
	}
	mid := point{(p.x + q.x) / 2, (p.y + q.y) / 2}
	if math.Abs(dy) > math.Abs(dx) {
		c.raw(`<text transform="translate(`, num(mid.x-6), " ", num(mid.y), `) rotate(-90)" text-anchor="middle">`, escape(label), "</text>\n")
		return
	}
	c.text(point{mid.x, mid.y - 6}, `text-anchor="middle"`, label)
}

// scaleBar draws a bar of a round length, with its left end at p, for a picture
// with so many units of the picture to the inch.
func (c *canvas) scaleBar(p point, perInch float64) {
	bars := []units.Length{units.Inch, 3 * units.Inch, 6 * units.Inch, units.Foot, 2 * units.Foot, 5 * units.Foot, 10 * units.Foot, 20 * units.Foot}
	l := bars[0]
	for _, bar := range bars {
		if bar.In(units.Inch)*perInch <= 110 {
			l = bar
		}
	}
	w := l.In(units.Inch) * perInch
	c.raw(`<g data-part="scale" stroke="`, ink, `">`)
	c.rect(p.x, p.y-5, w/2, 5, `fill="`+ink+`"`)
	c.rect(p.x+w/2, p.y-5, w/2, 5, `fill="`+paper+`"`)
	c.raw("</g>\n")
	c.text(point{p.x + w + 8, p.y + 1}, "", l.String())
}

// num prints x to a hundredth, as short as it goes. Adding zero makes -0 a 0.
func num(x float64) string {
	return strconv.FormatFloat(math.Round(x*100)/100+0, 'f', -1, 64)
}

func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a Builder takes everything
	return b.String()
}

// letter returns the name of thing i in a legend: A to Z, then AA and so on.
func letter(i int) string {
	s := string(rune('A' + i%26))
	if i >= 26 {
		return letter(i/26-1) + s
	}
	return s
}

// wide returns about how wide s is at a font size, rather more than less: the widths
// are those of DejaVu Sans.
func wide(s string, size float64) float64 {
	w := 0.0
	for _, r := range s {
		switch {
		case strings.ContainsRune("ijlI|.,:;'! ", r):
			w += 0.32
		case strings.ContainsRune("frt-/()[]", r):
			w += 0.41
		case strings.ContainsRune("mwMW@%", r):
			w += 0.98
		case 'a' <= r && r <= 'z', '0' <= r && r <= '9':
			w += 0.636
		case r < 0x1100: // capitals and accents, other alphabets
			w += 0.84
		default: // signs as wide as high
			w += 1.1
		}
	}
	return w * size
}

// wrap breaks s into lines at most so wide at a font size, at spaces, or within a word
// that does not fit a line by itself.
func wrap(s string, most, size float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		if line != "" && wide(line+" "+word, size) > most {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		for _, r := range word {
			if line != "" && wide(line+string(r), size) > most {
				lines = append(lines, line)
				line = ""
			}
			line += string(r)
		}
	}
	return append(lines, line)
}
