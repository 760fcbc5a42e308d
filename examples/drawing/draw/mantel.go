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

// A shelf is a mantel in a picture.
type shelf struct {
	*canvas
	Mantel
	run     mantel.Run
	path    []mantel.Point
	violate int        // how often it is nearer to the fire than published figures have it
	high    float64    // inches from the floor, or to a little below the lowest thing
	scale   float64    // units of the picture to the inch
	left    float64    // where the shelf begins
	top     float64    // where its top is
	at      []point    // where each spot is
	reach   [2]float64 // how far a bow covers the left and the right, beyond the ends of the shelf
}

// lay hangs everything.
func (m Mantel) lay() (*shelf, error) {
	s := &shelf{canvas: &canvas{}, Mantel: m}
	var err error
	if s.run, err = m.Mantel.Hang(m.Hanging); err != nil {
		return nil, err
	}
	if s.path, err = s.run.AppendPath(nil, 24); err != nil {
		return nil, err
	}
	if m.Spots == nil {
		if s.Spots, err = m.Rules.Spots(m.Mantel, m.Hanging.Look); err != nil {
			return nil, err
		}
	}
	clear, err := m.Mantel.Clearances(m.Hanging, units.InFeetInches)
	if err != nil {
		return nil, err
	}
	s.violate = len(clear.Violations)
	s.high = m.Mantel.Height.In(units.Inch)
	if s.high == 0 { // not measured: enough for what hangs
		lowest := max(m.Hanging.Left, m.Hanging.Right, m.Hanging.Fall, m.Hanging.Sag, m.Mantel.Opening.Gap+m.Mantel.Opening.Height)
		s.high = lowest.In(units.Inch) + 12
	}
	return s, nil
}

// fit sets the scale and the place of a picture so wide and so high, at the top.
func (s *shelf) fit(x, wide, top, high float64) {
	const side = 88.0
	long := s.Mantel.Mantel.Length.In(units.Inch)
	s.scale = min((wide-2*side)/long, high/s.high)
	s.left, s.top = x+(wide-long*s.scale)/2, top
}

func (s *shelf) point(p mantel.Point) point {
	return point{s.left + p.Along.In(units.Inch)*s.scale, s.top + p.Below.In(units.Inch)*s.scale}
}

func (s *shelf) floor() float64 { return s.top + s.high*s.scale }

// draw draws the mantel and what hangs on it.
func (s *shelf) draw() error {
	m, c, scale := s.Mantel, s.canvas, s.scale
	long, hearth := m.Mantel.Length.In(units.Inch)*scale, s.floor()
	c.raw(`<g data-part="mantel">`, "\n")
	board := max(2*scale, 5)
	wall := []point{{s.left - 1.5*scale, hearth}, {s.left - 1.5*scale, s.top + board}, {s.left + long + 1.5*scale, s.top + board}, {s.left + long + 1.5*scale, hearth}}
	c.path(wall, false, `fill="#f3efe8" stroke="`+faint+`"`)
	c.rect(s.left, s.top, long, board, `data-part="shelf" fill="`+wood+`" stroke="`+ink+`"`)
	if m.Mantel.Height != 0 {
		c.line(point{s.left - 44, hearth}, point{s.left + long + 80, hearth}, `data-part="floor" stroke="`+ink+`" stroke-width="2"`)
	} else { // nobody measured where the floor is: the wall is broken off
		var edge []point
		for x, i := wall[0].x, 0; x <= wall[3].x; x, i = x+8, i+1 {
			edge = append(edge, point{x, hearth + 3*float64(i%2)})
		}
		c.path(edge, false, `fill="none" stroke="`+faint+`"`)
	}
	c.raw("</g>\n")
	if o := m.Mantel.Opening; o != (mantel.Rectangle{}) {
		w, h := o.Width.In(units.Inch)*scale, o.Height.In(units.Inch)*scale
		x, y := s.left+(long-w)/2+o.Offset.In(units.Inch)*scale, s.top+o.Gap.In(units.Inch)*scale
		c.raw(`<g data-part="clearances" fill="none" stroke="`, alarm, `">`, "\n")
		for _, zone := range zones {
			c.path(around(x, y, w, h, zone.inches*scale, min(y+h, hearth)), false, `stroke-dasharray="`+zone.dash+`" stroke-width="1.3"`)
		}
		c.raw("</g>\n")
		c.rect(x, y, w, h, `data-part="opening" fill="#4a4542" stroke="`+ink+`"`)
		c.text(point{x + w/2, y + h/2 + 4}, `fill="#fff" text-anchor="middle"`, feet(o.Width)+" × "+feet(o.Height))
	}

	// The garland, in its thickness.
	var garland []point
	for _, p := range s.path {
		garland = append(garland, s.point(p))
	}
	thick := m.Hanging.Thickness.In(units.Inch) * scale
	c.raw(`<g data-part="garland" fill="none" stroke-linejoin="round" stroke-linecap="round">`, "\n")
	if thick > 0 {
		c.path(garland, false, `stroke="#4f7d57" stroke-opacity="0.35" stroke-width="`+num(thick)+`"`)
	}
	c.path(garland, false, `stroke="#33573a" stroke-width="`+num(max(thick/4, 3))+`"`)
	c.path(needles(garland, max(thick/2, 4)), false, `stroke="#33573a" stroke-width="1.1"`)
	c.raw("</g>\n", `<g data-part="hooks" fill="`, paper, `" stroke="`, ink, `">`, "\n")
	for _, h := range s.run.Hooks {
		c.circle(s.point(h), 2.6, "")
	}
	c.raw("</g>\n", `<g data-part="pieces">`, "\n")
	colors := m.colors()
	s.at = nil
	for i, spot := range m.Spots {
		below, err := s.run.Below(spot.Along)
		if err != nil {
			return err
		}
		p := s.point(mantel.Point{Along: spot.Along, Below: below})
		color := colors[i%len(colors)]
		for k, swatch := range m.Palette {
			if spot.Item.Color == swatch.Name {
				color = colors[k]
			}
		}
		switch spot.Item.Kind {
		case shopping.Pick:
			p.y -= float64(spot.Layer-1) * 1.5 * scale // over those below
			sprig(c, p, 4*scale, color)
		case shopping.Ornament:
			p.y += 2 * scale
			c.circle(p, max(1.5*scale, 4), `fill="`+color+`" stroke="`+ink+`" stroke-width="0.9"`)
		case shopping.Bell:
			p.y += 3 * scale
			bell(c, p, 2*scale)
		default: // ribbon
			bow(c, p, 6*scale, max(m.Hanging.Fall.In(units.Inch), 9)*scale, colors[0])
			s.reach[0] = max(s.reach[0], s.left-(p.x-7.5*scale))
			s.reach[1] = max(s.reach[1], p.x+7.5*scale-(s.left+long))
		}
		s.at = append(s.at, p)
	}
	c.raw("</g>\n")
	return nil
}

// measures draws the dimensions, clear of what hangs.
func (s *shelf) measures(above float64) {
	m, c := s.Mantel, s.canvas
	right := s.left + m.Mantel.Length.In(units.Inch)*s.scale
	y := s.top - above
	for _, x := range []float64{s.left, right} {
		c.line(point{x, y - 4}, point{x, y + 8}, `stroke="`+faint+`"`)
	}
	c.measure(point{s.left, y}, point{right, y}, feet(m.Mantel.Length))
	out := [2]float64{max(36, s.reach[0]+12, m.Hanging.Thickness.In(units.Inch)/2*s.scale+12), max(36, s.reach[1]+12, m.Hanging.Thickness.In(units.Inch)/2*s.scale+12)}
	c.raw(`<g data-part="measures">`, "\n")
	if m.Mantel.Height != 0 {
		x := right + out[1] + 24
		c.measure(point{x, s.floor()}, point{x, s.top}, feet(m.Mantel.Height))
	}
	for i, fall := range []units.Length{m.Hanging.Left, m.Hanging.Right} {
		if fall > 0 {
			x := []float64{s.left - out[0], right + out[1]}[i]
			c.measure(point{x, s.top + fall.In(units.Inch)*s.scale}, point{x, s.top}, feet(fall))
		}
	}
	c.raw("</g>\n")
}

// caution is what every picture of a mantel says.
const caution = "Take the garland down before a fire is lit. Local code and the maker of the fireplace decide."

// Front returns the mantel as the viewer sees it, to scale: the garland with its
// swags and drops, picks, ornaments, ribbon and bells where the rules have them,
// the opening, and how far from it the published figures keep what can burn. Where its
// height was not measured there is no floor.
func (m Mantel) Front() (string, error) {
	s, err := m.lay()
	if err != nil {
		return "", err
	}
	counts := map[shopping.Kind]int{}
	for _, spot := range s.Spots {
		counts[spot.Item.Kind]++
	}
	notes := []string{fmt.Sprintf("Look %s; %s.", m.Hanging.Look, m.Hanging), caution}
	if s.violate > 0 {
		notes = append(notes, fmt.Sprintf("The garland is %d times nearer to the opening, or stands out farther, than published figures have it.", s.violate))
	}
	var text []string
	for _, n := range notes {
		text = append(text, wrap(n, width-margin, 12)...)
	}
	desc := "mantel " + feet(m.Mantel.Length) + " long, seen from the front."
	for _, n := range notes {
		desc += " " + n
	}
	s.fit(0, width, 100+19*float64(len(headLines(m.Title))-1), 430)
	hearth := s.floor()
	s.open(width, hearth+64+line*float64(len(text)+len(zones)), m.Title+", mantel from the front", desc)
	s.heading(m.Title)
	if err := s.draw(); err != nil {
		return "", err
	}
	s.measures(38)
	s.scaleBar(point{margin / 2, hearth + 26}, s.scale)
	s.canvas.text(point{width - margin/2, hearth + 26}, `text-anchor="end"`, fmt.Sprintf("%d %s, %d %s", counts[shopping.Pick], shopping.Pick, counts[shopping.Ornament], shopping.Ornament))
	s.raw(`<g data-part="notes" font-size="11.5">`, "\n")
	y := hearth + 50
	if m.Mantel.Opening != (mantel.Rectangle{}) {
		y = s.zoneKey(margin/2, y)
	}
	for _, t := range text {
		s.canvas.text(point{margin / 2, y}, "", t)
		y += line
	}
	s.raw("</g>\n")
	return s.close(), nil
}

// zoneKey says what the dashes mean, and returns where it ends.
func (s *shelf) zoneKey(x, y float64) float64 {
	for _, zone := range zones {
		s.line(point{x, y - 4}, point{x + 34, y - 4}, `stroke="`+alarm+`" stroke-dasharray="`+zone.dash+`" stroke-width="1.3"`)
		s.canvas.text(point{x + 42, y}, "", zone.note)
		y += line
	}
	return y
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
		sin, cos := sincos(float64(i) * math.Pi / 24)
		points = append(points, point{x - d*cos, y - d*sin})
	}
	for i := range 13 {
		sin, cos := sincos(float64(i) * math.Pi / 24)
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
		d := hypot(q.x-p.x, q.y-p.y)
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
		sin, cos := sincos(turn)
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
