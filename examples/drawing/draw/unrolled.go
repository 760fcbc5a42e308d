package draw

import (
	"fmt"
	"math"
	"strconv"

	"example.com/fircone/units"
)

// Unrolled returns the surface of the tree cut open at the back of what is
// dressed and laid flat, to scale, the tip at the top. Every piece is on it with
// its number in the hanging order of [placement.Order], the levels of that order
// as arcs, and the hours of the clock along the base.
func (t Tree) Unrolled() (string, error) {
	v, err := t.lay()
	if err != nil {
		return "", err
	}
	degrees, err := t.Layout.Tree.Exposure.Degrees()
	if err != nil {
		return "", err
	}
	tree := t.Layout.Tree
	high, low := tree.Height.In(units.Inch), tree.Handle.In(units.Inch)
	slope := hypot(v.base, high-low)
	sin := v.base / slope
	half := degrees / 360 * math.Pi * sin // of the angle that the surface takes when it is flat
	// The sector reaches across, down, and up where it is wider than a half circle.
	across, up := slope*sine(min(half, math.Pi/2)), -slope*min(cosine(half), 0)
	v.scale = min((width-margin)/(2*across), 620/slope)
	down := 19 * float64(len(headLines(t.Title))-1)
	tip := point{width / 2, 56 + down + up*v.scale}
	flat := func(slant, azimuth float64) point {
		s, c := sincos(azimuth * sin)
		return point{tip.x + slant*v.scale*s, tip.y + slant*v.scale*c}
	}
	slant := func(z float64) float64 { return (high - z) / (high - low) * slope }
	arc := func(z float64) []point {
		var points []point
		for i := range 61 {
			points = append(points, flat(slant(z), (float64(i)/30-1)*half/sin))
		}
		return points
	}
	top := high - tree.BareTip.In(units.Inch)

	// More would be printed over each other: then the sheets of the crew have the numbers.
	v.lettered = len(v.places) <= 110
	legend := v.legend()
	desc := fmt.Sprintf("The dressed surface of a tree %s, laid flat, with the places of %d pieces %s.", v.shape(), len(v.places), map[bool]string{true: "numbered in hanging order", false: "without their numbers, which would not be readable"}[v.lettered])
	bottom := tip.y + slope*v.scale + 26
	v.open(width, bottom+52+line*float64(legend.rows), t.Title+", the surface unrolled", desc)
	v.heading(t.Title)
	v.text(point{margin / 2, 41 + down}, "", map[bool]string{true: "unrolled; numbered in hanging order, with the letter of the piece", false: "unrolled; the numbers are on the crew's sheets"}[v.lettered])

	outline := arc(low)
	for i := range outline {
		outline[i] = flat(slope, (float64(i)/30-1)*half/sin)
	}
	upper := arc(top)
	for i := len(upper) - 1; i >= 0; i-- {
		outline = append(outline, upper[i])
	}
	v.path(outline, true, `data-part="surface" fill="`+needle+`" stroke="`+ink+`"`)
	v.raw(`<g data-part="levels" fill="none" stroke="`, faint, `" stroke-dasharray="3 3">`, "\n")
	for z := 2 * units.Foot; z.In(units.Inch) < top; z += 2 * units.Foot {
		if z.In(units.Inch) > low {
			v.path(arc(z.In(units.Inch)), false, "")
		}
	}
	v.raw("</g>\n", `<g font-size="10" fill="#555">`, "\n")
	for z := 2 * units.Foot; z.In(units.Inch) < top; z += 2 * units.Foot {
		if z.In(units.Inch) > low {
			p := flat(slant(z.In(units.Inch)), half/sin)
			v.text(point{min(p.x+4, width-34), p.y - 2}, "", z.String())
		}
	}
	v.raw("</g>\n", `<g data-part="clock" text-anchor="middle" font-size="10" fill="#555">`, "\n")
	for hour := range 12 {
		azimuth := math.Remainder(float64(6-hour)*math.Pi/6, 2*math.Pi) - t.Layout.Facing.Degrees()*math.Pi/180
		if t.Layout.Mirror {
			azimuth = -azimuth
		}
		azimuth = math.Remainder(azimuth, 2*math.Pi)
		if math.Abs(azimuth) < degrees*math.Pi/360+1e-9 {
			p, q := flat(slope+12/v.scale, azimuth), flat(slope, azimuth)
			v.line(q, flat(slope+4/v.scale, azimuth), `stroke="`+ink+`"`)
			v.text(point{p.x, p.y + 4}, "", strconv.Itoa((hour+11)%12+1))
		}
	}
	v.raw("</g>\n", `<g data-part="pieces" text-anchor="middle" font-size="8">`, "\n")
	for i, p := range v.places {
		azimuth := (p.Azimuth - t.Layout.Facing).Degrees()
		if t.Layout.Mirror {
			azimuth = (-p.Azimuth - t.Layout.Facing).Degrees()
		}
		azimuth = math.Remainder(azimuth*math.Pi/180, 2*math.Pi)
		at := flat(slant(p.Height.In(units.Inch)), azimuth)
		piece := p.Item
		color, _ := fill(v.Palette, piece.Color)
		r := max(piece.Size.In(units.Inch)/2*v.scale, 1.5)
		v.circle(at, r, `fill="`+color+`" stroke="`+ink+`" stroke-width="0.9"`)
		label := strconv.Itoa(i+1) + v.letter(p.Item)
		down := r + 8
		if slant(p.Height.In(units.Inch)) > slope-16/v.scale { // clear of the hem
			down = -r - 2
		}
		if v.lettered {
			v.text(point{at.x, at.y + down}, "", label)
		}
	}
	v.raw("</g>\n")
	v.scaleBar(point{margin / 2, bottom + 24}, v.scale)
	v.text(point{width - margin/2, bottom + 24}, `text-anchor="end"`, "6 faces you; 3 is on your right")
	v.legendAt(legend, bottom+50)
	return v.close(), nil
}
