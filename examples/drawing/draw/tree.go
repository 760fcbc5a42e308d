package draw

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

const (
	width  = 480.0 // of every picture
	tall   = 520.0 // the most that a tree takes of it
	margin = 56.0
	line   = 17.0 // from one line of text to the next
)

// A view is a tree in a picture.
type view struct {
	canvas
	Tree
	measured sizing.Tree       // with its base
	base     float64           // half the base diameter, in inches
	places   []placement.Place // in hanging order
	stations []placement.Station
	scale    float64
	middle   float64   // where the trunk is
	floor    float64   // where the floor is
	lettered bool      // each piece has the letter of the legend
	drawn    []covered // the pieces of this side
}

// lay places everything.
func (t Tree) lay() (*view, error) {
	tree, err := t.Layout.Tree.Measured()
	if err != nil {
		return nil, err
	}
	v := &view{Tree: t, measured: tree, base: tree.Base.In(units.Inch) / 2}
	places, err := t.Layout.Places(t.Pieces)
	if err != nil {
		return nil, err
	}
	if v.stations, err = (placement.Order{}).Stations(places); err != nil {
		return nil, err
	}
	for _, s := range v.stations {
		v.places = append(v.places, s.Places...)
	}
	return v, nil
}

// shape says what tree it is.
func (v *view) shape() string {
	t := v.Layout.Tree
	return fmt.Sprintf("%s tall and %s wide, dressed %s", feet(t.Height), feet(v.measured.Base), exposure(t.Exposure))
}

func exposure(e sizing.Exposure) string {
	switch e {
	case sizing.AllRound:
		return "all round"
	case sizing.AgainstWall:
		return "to stand against a wall"
	case sizing.InCorner:
		return "to stand in a corner"
	case sizing.HalfTree:
		return "as a half tree"
	}
	return "over " + e.String()
}

func feet(l units.Length) string { return l.Format(units.InFeetInches, units.Inch/2) }

// front returns where a point of the tree is in a view from the front.
func (v *view) front(p placement.Position) point {
	return point{v.middle + p.X.In(units.Inch)*v.scale, v.floor - p.Z.In(units.Inch)*v.scale}
}

// Front returns the tree as the viewer sees it, to scale: garland and lights,
// and what hangs on the near side in its colors and sizes, each piece with the
// letter that it has in the legend below.
func (t Tree) Front() (string, error) {
	v, err := t.lay()
	if err != nil {
		return "", err
	}
	tree := t.Layout.Tree
	high := tree.Height.In(units.Inch)
	v.scale = min(tall/high, (width-2*margin-24)/(2*v.base))
	v.middle = width/2 + 20
	v.floor = 40 + 19*float64(len(headLines(t.Title))-1) + high*v.scale
	var near []placement.Place
	for _, p := range v.places {
		if p.At.Y <= 0 {
			near = append(near, p)
		}
	}
	// What is farther back is drawn first.
	slices.SortStableFunc(near, func(p, q placement.Place) int { return cmp.Compare(q.At.Y, p.At.Y) })

	v.lettered = readable(near, v.scale)
	for _, p := range near {
		v.drawn = append(v.drawn, covered{v.front(p.At), reach(p.Item, v.scale)})
	}
	legend := v.legend()
	desc := fmt.Sprintf("A tree %s, seen from the front. %d of %d pieces hang on this side.", v.shape(), len(near), len(v.places))
	for _, e := range legend.entries {
		desc += " " + v.lead(e.piece) + e.text + "."
	}
	height := v.floor + 44 + line*float64(legend.rows) + 12
	v.open(width, height, t.Title+", from the front", desc)
	v.heading(t.Title)
	v.tree()
	if err := v.garland(); err != nil {
		return "", err
	}
	if err := v.ribbon(); err != nil {
		return "", err
	}
	if err := v.lights(); err != nil {
		return "", err
	}
	v.raw(`<g data-part="pieces" text-anchor="middle">`, "\n")
	for _, p := range near {
		v.piece(p, v.front(p.At), v.scale)
	}
	v.raw("</g>\n")

	x := v.middle - v.base*v.scale - 22
	v.line(point{x - 6, v.floor - high*v.scale}, point{v.middle - 4, v.floor - high*v.scale}, `stroke="`+faint+`" stroke-dasharray="2 3"`)
	v.measure(point{x, v.floor}, point{x, v.floor - high*v.scale}, feet(tree.Height))
	v.scaleBar(point{margin / 2, v.floor + 22}, v.scale)
	v.text(point{width - margin/2, v.floor + 23}, `text-anchor="end"`, fmt.Sprintf("%d of %d pieces on this side", len(near), len(v.places)))
	v.legendAt(legend, v.floor+44)
	return v.close(), nil
}

// tree draws what is dressed: floor, trunk, boughs and topper.
func (v *view) tree() {
	t := v.Layout.Tree
	high, low := t.Height.In(units.Inch), t.Handle.In(units.Inch)
	at := func(x, z float64) point { return point{v.middle + x*v.scale, v.floor - z*v.scale} }
	v.raw(`<g data-part="tree">`, "\n")
	v.line(point{margin / 2, v.floor}, point{width - margin/2, v.floor}, `stroke="`+ink+`" stroke-width="1.5"`)
	trunk := v.base / 14
	v.path([]point{at(-trunk, 0), at(-trunk, low+high/20), at(trunk, low+high/20), at(trunk, 0)}, true, `fill="`+wood+`" stroke="`+ink+`"`)
	if low > 0 {
		stand := v.base / 3
		v.path([]point{at(-stand, 0), at(-trunk*1.6, low*0.4), at(trunk*1.6, low*0.4), at(stand, 0)}, true, `fill="`+faint+`" stroke="`+ink+`"`)
	}
	// Tiers of boughs from the lowest up, their outer tips on the cone.
	const tiers = 9
	radius := func(z float64) float64 { return v.base * (high - z) / (high - low) }
	tier := (high - low) / tiers
	v.raw(`<g fill="`, needle, `" stroke="`, branch, `" stroke-width="1.3" stroke-linejoin="round">`, "\n")
	for i := range tiers {
		z := low + tier*float64(i)
		r := radius(z)
		top := min(z+2*tier, high)
		points := []point{at(-0.92*radius(top), top), at(0.92*radius(top), top), at(r, z)}
		teeth := 2*(tiers-i) + 3
		for k := 1; k < 2*teeth; k++ {
			up := 0.0
			if k%2 == 1 {
				up = tier / 4
			}
			points = append(points, at(r*(1-float64(k)/float64(teeth)), z+up))
		}
		v.path(append(points, at(-r, z)), true, "")
	}
	v.raw("</g>\n")
	// Boughs, as strokes that fall from the trunk to the tips.
	v.raw(`<g stroke="`, branch, `" fill="none">`, "\n")
	for i := range 3 * tiers {
		z := high - (high-low)*(float64(i)+0.7)/(3*tiers)
		for _, across := range []float64{-0.85, -0.5, -0.17, 0.17, 0.5, 0.85} {
			r := radius(z) * across
			v.line(at(r*0.86, z+high/90), at(r, z), "")
		}
	}
	v.raw("</g>\n")
	if t.BareTip > 0 {
		v.star(at(0, high-t.BareTip.In(units.Inch)/2), t.BareTip.In(units.Inch)/2*v.scale)
	}
	v.raw("</g>\n")
}

// star draws a topper with five points.
func (v *view) star(p point, r float64) {
	var points []point
	for i := range 10 {
		q := r
		if i%2 == 1 {
			q *= 0.45
		}
		sin, cos := sincos(float64(i) * math.Pi / 5)
		points = append(points, point{p.x + q*sin, p.y - q*cos})
	}
	v.path(points, true, `data-part="topper" fill="`+glow+`" stroke="`+ink+`" stroke-linejoin="round"`)
}

// visible calls f with each run of points on the near side.
func (v *view) visible(w placement.Winding, f func([]point)) error {
	path, err := v.Layout.Wind(w)
	if err != nil {
		return err
	}
	var run []point
	for p := range path {
		if p.Y > 0 {
			if len(run) > 0 {
				f(run)
			}
			run = nil
			continue
		}
		run = append(run, v.front(p))
	}
	if len(run) > 0 {
		f(run)
	}
	return nil
}

// garland draws the garland where it is seen.
func (v *view) garland() error {
	w := v.Garland
	if w.Spacing == 0 {
		return nil
	}
	w.Step = units.Inch
	v.raw(`<g data-part="garland" fill="none" stroke-linecap="round" stroke-linejoin="round">`, "\n")
	err := v.visible(w, func(run []point) {
		v.path(run, false, fmt.Sprintf(`stroke="#4f7d57" stroke-width="%s"`, num(max(2*v.scale, 3))))
		v.path(run, false, fmt.Sprintf(`stroke="#cfe3cf" stroke-width="%s" stroke-dasharray="1 %s"`, num(max(0.7*v.scale, 1)), num(max(1.6*v.scale, 3))))
	})
	v.raw("</g>\n")
	return err
}

// ribbon draws the ribbon where it is seen, in its width and color.
func (v *view) ribbon() error {
	w := v.Ribbon.Winding
	if w.Spacing == 0 {
		return nil
	}
	w.Step = units.Inch
	color := v.ribbonColor().String()
	wide := max(v.ribbonWidth()*v.scale, 2.5)
	v.raw(`<g data-part="ribbon" fill="none" stroke-linejoin="round">`, "\n")
	err := v.visible(w, func(run []point) {
		v.path(run, false, `stroke="`+ink+`" stroke-width="`+num(wide+1.6)+`"`)
		v.path(run, false, `stroke="`+color+`" stroke-width="`+num(wide)+`"`)
		v.path(run, false, `stroke="#fff" stroke-opacity=".45" stroke-width="`+num(wide/4)+`"`)
	})
	v.raw("</g>\n")
	return err
}

// lights draws the lamps that are seen.
func (v *view) lights() error {
	if v.Lights.Spacing == 0 {
		return nil
	}
	v.raw(`<g data-part="lights" fill="`, glow, `" stroke="#6b5a00" stroke-width="0.6">`, "\n")
	err := v.visible(v.Lights, func(run []point) {
		for _, p := range run {
			v.circle(p, max(0.35*v.scale, 1.4), "")
		}
	})
	v.raw("</g>\n")
	return err
}

// readable reports whether each piece can have its letter, so that all have one or none:
// there are at most 150 of them, and none is smaller than a letter beside it allows.
func readable(pieces []placement.Place, scale float64) bool {
	for _, p := range pieces {
		if r := p.Item.Size.In(units.Inch) / 2 * scale; p.Item.Size > 0 && r < 2.5 {
			return false
		}
	}
	return len(pieces) <= 150
}

// A covered is a disk that a piece covers.
type covered struct {
	at point
	r  float64
}

// reach returns how far an item reaches from its middle, as it is drawn.
func reach(item shopping.Item, scale float64) float64 {
	if item.Size == 0 {
		return max(2.4*scale, 6)
	}
	return item.Size.In(units.Inch) / 2 * scale
}

// piece draws a piece at p: an ornament with its letter, or a pick. A letter that does not
// fit in is beside it.
func (v *view) piece(p placement.Place, at point, scale float64) {
	color, text := fill(v.Palette, p.Item.Color)
	r := reach(p.Item, scale)
	if p.Item.Size == 0 {
		sprig(&v.canvas, at, r, color)
	} else {
		v.circle(at, r, `fill="`+color+`" stroke="`+ink+`" stroke-width="0.9"`)
	}
	switch size := min(r*1.25, 13); {
	case !v.lettered:
	case p.Item.Size > 0 && r >= 6:
		v.text(point{at.x, at.y + size*0.36}, fmt.Sprintf(`font-size="%s" fill="%s"`, num(size), text), v.letter(p.Item))
	default:
		v.text(v.beside(at, r), `font-size="8.5" fill="#000" stroke="#fff" stroke-width="2" paint-order="stroke"`, v.letter(p.Item))
	}
}

// beside returns where the letter of a piece at a point goes: to its right, or where it is on
// no other piece.
func (v *view) beside(at point, r float64) point {
	for _, way := range []point{{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {0.7, 0.7}, {-0.7, 0.7}, {-0.7, -0.7}, {0.7, -0.7}} {
		p := point{at.x + way.x*(r+4), at.y + way.y*(r+4)}
		if !slices.ContainsFunc(v.drawn, func(d covered) bool {
			x, y := d.at.x-p.x, d.at.y-p.y
			return d.at != at && float64(x*x)+float64(y*y) < (d.r+4)*(d.r+4)
		}) {
			return point{p.x, p.y + 3}
		}
	}
	return point{at.x + r + 4, at.y + 3}
}

// lead returns what stands before a piece in the legend, if it has a letter.
func (v *view) lead(piece int) string {
	if !v.lettered {
		return ""
	}
	return letter(piece) + " "
}

// letter returns the letter of an item.
func (v *view) letter(item shopping.Item) string {
	return letter(slices.IndexFunc(v.Pieces, func(p shopping.Lot) bool { return p.Item == item }))
}

// A legend says what the letters stand for: in two columns, or in one where a name is
// too long for that.
type legend struct {
	entries []entry
	columns int
	rows    int // lines from top to bottom
}

// An entry is one letter of a legend.
type entry struct {
	piece int
	text  string
	lines []string // the letter and the text as they are drawn
}

const (
	small = 11.0 // the font size of a legend
	mark  = 17.0 // what stands before an entry
)

// legend returns what the letters stand for.
func (v *view) legend() legend {
	l := legend{columns: 2}
	for i, p := range v.Pieces {
		if p.Quantity.Pieces == 0 {
			continue
		}
		text := p.Item.Type
		if text == "" {
			text = p.Item.Kind.String()
		}
		if p.Item.Size != 0 {
			text += ", " + p.Item.Size.Format(units.InInches, units.Inch/4)
		}
		if p.Item.Color != "" {
			text += ", " + p.Item.Color
		}
		text = fmt.Sprintf("%d × %s", p.Quantity.Pieces, text)
		l.entries = append(l.entries, entry{i, text, []string{v.lead(i) + text}})
		if wide(l.entries[len(l.entries)-1].lines[0], small) > (width-margin)/2-mark {
			l.columns = 1
		}
	}
	l.rows = (len(l.entries) + 1) / 2
	if l.columns == 1 {
		l.rows = 0
		for i, e := range l.entries {
			l.entries[i].lines = wrap(e.lines[0], width-margin-mark, small)
			l.rows += len(l.entries[i].lines)
		}
	}
	return l
}

// legendAt draws a legend below y.
func (v *view) legendAt(l legend, y float64) {
	v.raw(fmt.Sprintf(`<g data-part="legend" font-size="%s">`, num(small)), "\n")
	row := 0
	for _, e := range l.entries {
		p := point{margin/2 + 6 + float64(row/l.rows)*(width-margin)/2, y + float64(row%l.rows)*line}
		row += len(e.lines)
		piece := v.Pieces[e.piece].Item
		color, _ := fill(v.Palette, piece.Color)
		if piece.Size == 0 {
			sprig(&v.canvas, point{p.x, p.y - 2}, 6, color)
		} else {
			v.circle(point{p.x, p.y - 4}, 5, `fill="`+color+`" stroke="`+ink+`" stroke-width="0.9"`)
		}
		p.x += mark - 6
		v.raw(`<text x="`, num(p.x), `" y="`, num(p.y), `">`, escape(e.lines[0]))
		for _, more := range e.lines[1:] {
			v.raw(` <tspan x="`, num(p.x), `" dy="`, num(line), `">`, escape(more), "</tspan>")
		}
		v.raw("</text>\n")
	}
	v.raw("</g>\n")
}
