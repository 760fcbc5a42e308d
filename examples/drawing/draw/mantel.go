package draw

import (
	"fmt"
	"math"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Mantel is what there is to draw of a mantel.
type Mantel struct {
	Title   string // "Tea room"
	Mantel  mantel.Mantel
	Rules   mantel.Rules
	Hanging mantel.Hanging
	Palette palette.Palette
	Spots   []mantel.Spot // what goes where; nil is as Rules have it, which are of no use otherwise
}

// Front returns the mantel as the viewer sees it, to scale: the garland with its
// swags and drops, picks, ornaments, ribbon and bells where the rules have them,
// the opening, and how far from it the published figures keep what can burn.
func (m Mantel) Front() (string, error) {
	run, err := m.Mantel.Hang(m.Hanging)
	if err != nil {
		return "", err
	}
	path, err := run.AppendPath(nil, 24)
	if err != nil {
		return "", err
	}
	spots := m.Spots
	if spots == nil {
		if spots, err = m.Rules.Spots(m.Mantel, m.Hanging.Look); err != nil {
			return "", err
		}
	}
	clear, err := m.Mantel.Clearances(m.Hanging)
	if err != nil {
		return "", err
	}
	shelf := m.Mantel.Length.In(units.Inch)
	high := m.Mantel.Height.In(units.Inch)
	if high == 0 { // not measured: enough for what hangs
		lowest := max(m.Hanging.Left, m.Hanging.Right, m.Hanging.Fall, m.Hanging.Sag, m.Mantel.Opening.Gap+m.Mantel.Opening.Height)
		high = lowest.In(units.Inch) + 12
	}
	const side = 66.0
	scale := min((width-2*side)/shelf, 430/high)
	left, top := (width-shelf*scale)/2, 100.0
	hearth := top + high*scale
	at := func(p mantel.Point) point {
		return point{left + p.Along.In(units.Inch)*scale, top + p.Below.In(units.Inch)*scale}
	}

	counts := map[shopping.Kind]int{}
	for _, s := range spots {
		counts[s.Item.Kind]++
	}
	notes := []string{
		fmt.Sprintf("Look %s; %s.", m.Hanging.Look, m.Hanging),
		"Take the garland down before a fire is lit. Local code and the maker of the fireplace decide.",
	}
	if n := len(clear.Violations); n > 0 {
		notes = append(notes, fmt.Sprintf("The garland is %d times nearer to the opening, or stands out farther, than published figures have it.", n))
	}
	var text []string
	for _, n := range notes {
		text = append(text, wrap(n, width-margin, 12)...)
	}
	c := &canvas{}
	desc := "mantel " + feet(m.Mantel.Length) + " long, seen from the front."
	for _, n := range notes {
		desc += " " + n
	}
	c.open(width, hearth+64+line*float64(len(text)+len(zones)), m.Title+", mantel from the front", desc)
	c.text(point{margin / 2, 24}, `font-size="15" font-weight="bold"`, m.Title)

	// The wall, the breast and the shelf.
	c.raw(`<g data-part="mantel">`, "\n")
	board := max(2*scale, 5)
	c.rect(left-1.5*scale, top+board, shelf*scale+3*scale, hearth-top-board, `fill="#f3efe8" stroke="`+faint+`"`)
	c.rect(left, top, shelf*scale, board, `data-part="shelf" fill="`+wood+`" stroke="`+ink+`"`)
	c.line(point{14, hearth}, point{width - 14, hearth}, `stroke="`+ink+`" stroke-width="2"`)
	c.raw("</g>\n")
	if o := m.Mantel.Opening; o != (mantel.Rectangle{}) {
		w, h := o.Width.In(units.Inch)*scale, o.Height.In(units.Inch)*scale
		x, y := (width-w)/2+o.Offset.In(units.Inch)*scale, top+o.Gap.In(units.Inch)*scale
		c.raw(`<g data-part="clearances" fill="none" stroke="`, alarm, `">`, "\n")
		for _, zone := range zones {
			d := zone.inches * scale
			c.path(around(x, y, w, h, d, min(y+h, hearth)), false, `stroke-dasharray="`+zone.dash+`" stroke-width="1.3"`)
		}
		c.raw("</g>\n")
		c.rect(x, y, w, h, `data-part="opening" fill="#4a4542" stroke="`+ink+`"`)
		c.text(point{x + w/2, y + h/2 + 4}, `fill="#fff" text-anchor="middle"`, feet(o.Width)+" × "+feet(o.Height))
	}

	// The garland, in its thickness.
	var garland []point
	for _, p := range path {
		garland = append(garland, at(p))
	}
	thick := m.Hanging.Thickness.In(units.Inch) * scale
	c.raw(`<g data-part="garland" fill="none" stroke-linejoin="round" stroke-linecap="round">`, "\n")
	if thick > 0 {
		c.path(garland, false, `stroke="#4f7d57" stroke-opacity="0.35" stroke-width="`+num(thick)+`"`)
	}
	c.path(garland, false, `stroke="#33573a" stroke-width="`+num(max(thick/4, 3))+`"`)
	c.path(needles(garland, max(thick/2, 4)), false, `stroke="#33573a" stroke-width="1.1"`)
	c.raw("</g>\n", `<g data-part="hooks" fill="`, paper, `" stroke="`, ink, `">`, "\n")
	for _, h := range run.Hooks {
		c.circle(at(h), 2.6, "")
	}
	c.raw("</g>\n", `<g data-part="pieces">`, "\n")
	colors := m.colors()
	for i, s := range spots {
		below, err := run.Below(s.Along)
		if err != nil {
			return "", err
		}
		p := at(mantel.Point{Along: s.Along, Below: below})
		color := colors[i%len(colors)]
		for k, swatch := range m.Palette {
			if s.Item.Color == swatch.Name {
				color = colors[k]
			}
		}
		switch s.Item.Kind {
		case shopping.Pick:
			p.y -= float64(s.Layer-1) * 1.5 * scale // over those below
			sprig(c, p, 4*scale, color)
		case shopping.Ornament:
			p.y += 2 * scale
			c.circle(p, max(1.5*scale, 4), `fill="`+color+`" stroke="`+ink+`" stroke-width="0.9"`)
		case shopping.Bell:
			bell(c, point{p.x, p.y + 3*scale}, 2*scale)
		default: // ribbon
			bow(c, p, 6*scale, max(m.Hanging.Fall.In(units.Inch), 9)*scale, colors[0])
		}
	}
	c.raw("</g>\n")

	// Measures.
	c.measure(point{left, 62}, point{left + shelf*scale, 62}, feet(m.Mantel.Length))
	if m.Mantel.Height != 0 {
		x := left + shelf*scale + 58
		c.measure(point{x, hearth}, point{x, top}, feet(m.Mantel.Height))
	}
	for _, drop := range []struct {
		along, fall units.Length
		out         float64
	}{{0, m.Hanging.Left, -36}, {m.Mantel.Length, m.Hanging.Right, 36}} {
		if drop.fall > 0 {
			p, q := at(mantel.Point{Along: drop.along}), at(mantel.Point{Along: drop.along, Below: drop.fall})
			p.x, q.x = p.x+drop.out, q.x+drop.out
			c.measure(q, p, feet(drop.fall))
		}
	}
	c.scaleBar(point{margin / 2, hearth + 26}, scale)
	var items []string
	for _, kind := range []shopping.Kind{shopping.Pick, shopping.Ornament} {
		items = append(items, fmt.Sprintf("%d %s", counts[kind], kind))
	}
	c.text(point{width - margin/2, hearth + 26}, `text-anchor="end"`, items[0]+", "+items[1])
	c.raw(`<g data-part="notes" font-size="11.5">`, "\n")
	y := hearth + 50
	if m.Mantel.Opening != (mantel.Rectangle{}) {
		for _, zone := range zones {
			c.line(point{margin / 2, y - 4}, point{margin/2 + 34, y - 4}, `stroke="`+alarm+`" stroke-dasharray="`+zone.dash+`" stroke-width="1.3"`)
			c.text(point{margin/2 + 42, y}, "", zone.note)
			y += line
		}
	}
	for _, t := range text {
		c.text(point{margin / 2, y}, "", t)
		y += line
	}
	c.raw("</g>\n")
	return c.close(), nil
}

// zones are the distances from the opening that the published figures name.
var zones = []struct {
	inches     float64
	dash, note string
}{
	{12, "2 4", "within 12 in of the opening: stands out 1 1/2 in at the most"},
	{6, "7 3", "within 6 in of the opening: nothing that burns"},
}

// colors returns those of the palette, or white.
func (m Mantel) colors() []string {
	var colors []string
	for _, s := range m.Palette {
		colors = append(colors, s.Color.String())
	}
	if colors == nil {
		colors = []string{paper}
	}
	return colors
}

// around returns the line at a distance d from a rectangle, over its top, with
// round corners, both ends at floor.
func around(x, y, w, h, d, floor float64) []point {
	points := []point{{x - d, floor}}
	for i := range 13 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 24)
		points = append(points, point{x - d*cos, y - d*sin})
	}
	for i := range 13 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 24)
		points = append(points, point{x + w + d*sin, y - d*cos})
	}
	return append(points, point{x + w + d, floor})
}

// needles returns a zigzag of half width r along a line.
func needles(run []point, r float64) []point {
	var points []point
	side := 1.0
	for i := 1; i < len(run); i++ {
		p, q := run[i-1], run[i]
		d := math.Hypot(q.x-p.x, q.y-p.y)
		n := max(int(d/4), 1)
		for k := range n {
			t := float64(k) / float64(n)
			points = append(points, point{
				p.x + (q.x-p.x)*t - side*r*(q.y-p.y)/d,
				p.y + (q.y-p.y)*t + side*r*(q.x-p.x)/d,
			})
			side = -side
		}
	}
	return points
}

// sprig draws a pick: three leaves and a berry.
func sprig(c *canvas, p point, r float64, color string) {
	for _, turn := range []float64{-0.9, 0, 0.9} {
		sin, cos := math.Sincos(turn)
		c.line(p, point{p.x + r*sin, p.y - r*cos}, `stroke="#33573a" stroke-width="1.8" stroke-linecap="round"`)
	}
	c.circle(p, max(r/5, 2), `fill="`+color+`" stroke="`+ink+`" stroke-width="0.8"`)
}

// bow draws two loops, two tails that fall so far, and a knot.
func bow(c *canvas, p point, r, fall float64, color string) {
	style := `fill="` + color + `" stroke="` + ink + `" stroke-width="0.9" stroke-linejoin="round"`
	for _, side := range []float64{-1, 1} {
		c.path([]point{p, {p.x + side*0.25*r, p.y + fall}, {p.x + side*0.5*r, p.y + fall*0.92}, {p.x + side*0.7*r, p.y + fall}}, true, style)
		c.path([]point{p, {p.x + side*r, p.y - 0.7*r}, {p.x + side*1.25*r, p.y}, {p.x + side*r, p.y + 0.55*r}}, true, style)
	}
	c.circle(p, r/4, style)
}

// bell draws a bell with its crown at p.
func bell(c *canvas, p point, r float64) {
	c.path([]point{{p.x, p.y}, {p.x + r*0.5, p.y + r*0.3}, {p.x + r*0.6, p.y + r}, {p.x + r, p.y + r*1.4}, {p.x - r, p.y + r*1.4}, {p.x - r*0.6, p.y + r}, {p.x - r*0.5, p.y + r*0.3}}, true,
		`fill="`+glow+`" stroke="`+ink+`" stroke-width="0.9"`)
	c.circle(point{p.x, p.y + r*1.6}, r*0.28, `fill="`+ink+`"`)
}
