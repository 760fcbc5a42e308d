package draw

import (
	"cmp"
	"fmt"
	"hash/fnv"
	"math"
	"slices"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Client returns the tree as the one who pays for it wants to see it: no letters, boughs
// that hide and shade, ornaments by shape and color, lights that glow, topper, skirt and
// stand; on white or on a dark ground. It is true to scale and to the plan: every piece
// on the near side is drawn where it hangs, and in its size.
func (t Tree) Client(dark bool) (string, error) {
	v, err := t.lay()
	if err != nil {
		return "", err
	}
	tree := t.Layout.Tree
	high, low := tree.Height.In(units.Inch), tree.Handle.In(units.Inch)
	v.scale = min(640/high, 440/(2*v.base))
	v.middle, v.floor = 260, 40+high*v.scale
	h := fnv.New32a()
	fmt.Fprint(h, t.Title, dark)
	id := fmt.Sprintf("c%x", h.Sum32())
	ground, shadow := "#fff", "#00000022"
	if dark {
		ground, shadow = "#12161d", "#00000088"
	}
	var near []int
	for i, p := range v.places {
		if p.At.Y <= 0 {
			near = append(near, i)
		}
	}
	height := v.floor + 46
	v.raw(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 520 `, num(height), `" width="520" height="`, num(height),
		`" role="img" aria-labelledby="`, id, `t `, id, `d" style="max-width:100%;height:auto">`, "\n")
	v.raw(`<title id="`, id, `t">`, escape(t.Title), "</title>\n")
	v.raw(`<desc id="`, id, `d">`, escape(fmt.Sprintf("A dressed tree %s, seen from the front. %d of %d pieces hang on this side.", v.shape(), len(near), len(v.places))), "</desc>\n")
	v.raw(`<rect width="100%" height="100%" fill="`, ground, `"/>`, "\n<defs>\n")
	v.raw(`<radialGradient id="`, id, `l"><stop offset="0" stop-color="#fffbe6"/><stop offset=".18" stop-color="#ffe9a3"/><stop offset=".35" stop-color="#ffcf5a" stop-opacity=".45"/><stop offset="1" stop-color="#ffb52e" stop-opacity="0"/></radialGradient>`, "\n")
	v.raw(`<radialGradient id="`, id, `s" cx=".35" cy=".28" r=".8"><stop offset="0" stop-color="#fff" stop-opacity=".85"/><stop offset=".22" stop-color="#fff" stop-opacity=".12"/><stop offset=".6" stop-color="#000" stop-opacity="0"/><stop offset="1" stop-color="#000" stop-opacity=".5"/></radialGradient>`, "\n</defs>\n")
	at := func(x, z float64) point { return point{v.middle + x*v.scale, v.floor - z*v.scale} }
	flat := func(p point, rx, ry float64, color string) {
		v.raw(`<ellipse cx="`, num(p.x), `" cy="`, num(p.y), `" rx="`, num(rx*v.scale), `" ry="`, num(ry*v.scale), `" fill="`, color, `"/>`, "\n")
	}
	// Shadow, skirt, stand and trunk.
	skirt := "#8c1c24"
	if s := v.Palette; len(s) > 0 {
		skirt = s[0].Color.String()
	}
	flat(at(0, -0.5), v.base*1.02, v.base*0.13, shadow)
	flat(at(0, 0.4), v.base*0.8, v.base*0.1, skirt)
	flat(at(0, 0.9), v.base*0.62, v.base*0.075, "#ffffff22")
	trunk := v.base / 13
	v.path([]point{at(-trunk*1.7, 0.6), at(-trunk*1.3, low*0.4), at(trunk*1.3, low*0.4), at(trunk*1.7, 0.6)}, true, `fill="#3d4247"`)
	v.path([]point{at(-trunk, low*0.35), at(-trunk*0.8, low+8), at(trunk*0.8, low+8), at(trunk, low*0.35)}, true, `fill="#5b4330"`)

	// A dark heart behind the boughs, so that nothing shows through.
	v.path([]point{at(-v.base*0.86, low+1), at(0, high-high/60), at(v.base*0.86, low+1)}, true, `fill="#0f2a1b"`)

	// Boughs and pieces from the bottom up: what is higher hangs over what is lower.
	type thing struct {
		key  float64
		draw func()
	}
	var things []thing
	radius := func(z float64) float64 { return v.base * (high - z) / (high - low) }
	shades := []string{"#173a26", "#1f4b31", "#2a5f3d", "#38754c", "#4c8b5e"}
	const tiers = 46
	for i := range tiers {
		z := low + (high-low)*(float64(i)+0.2)/tiers
		things = append(things, thing{z + 1.5, func() { v.boughs(at, z, radius(z), (high-low)/tiers, shades, i) }})
	}
	for _, i := range near {
		p := v.places[i]
		things = append(things, thing{p.At.Z.In(units.Inch) + p.Item.Size.In(units.Inch)/2 + 3 - 0.35*p.Depth.In(units.Inch) + high/tiers, func() {
			v.raw(`<g class="piece">`)
			v.ornament(p.Item, v.front(p.At), id)
			v.raw("</g>\n")
		}})
	}
	slices.SortStableFunc(things, func(a, b thing) int { return cmp.Compare(a.key, b.key) })
	for _, x := range things {
		x.draw()
	}
	if w := t.Garland; w.Spacing != 0 {
		w.Step = units.Inch
		if err := v.visible(w, func(run []point) {
			v.path(run, false, fmt.Sprintf(`fill="none" stroke="#5e4312" stroke-opacity=".55" stroke-width="%s" stroke-linecap="round" stroke-linejoin="round"`, num(max(0.9*v.scale, 2))))
			v.path(run, false, fmt.Sprintf(`fill="none" stroke="#f0cf7a" stroke-width="%s" stroke-linecap="round" stroke-dasharray="0 %s"`, num(max(0.85*v.scale, 2)), num(max(1.15*v.scale, 3))))
		}); err != nil {
			return "", err
		}
	}
	if t.Lights.Spacing != 0 {
		if err := v.visible(t.Lights, func(run []point) {
			for _, p := range run {
				v.circle(p, max(1.7*v.scale, 5), `fill="url(#`+id+`l)"`)
			}
		}); err != nil {
			return "", err
		}
	}
	if tree.BareTip > 0 {
		r := tree.BareTip.In(units.Inch) / 2 * v.scale
		p := at(0, high-tree.BareTip.In(units.Inch)/2)
		v.circle(p, r*2, `fill="url(#`+id+`l)" opacity=".8"`)
		v.pointed(p, r, 5, 0.45, `fill="#f3c74b" stroke="#a97d17" stroke-width="0.8" stroke-linejoin="round"`)
	}
	v.raw("</svg>\n")
	return v.b.String(), nil
}

// boughs draws one tier: strokes from the trunk out that fall to the tips, lighter to the
// front and to the left, with their own places in every tier.
func (v *view) boughs(at func(x, z float64) point, z, r, tier float64, shades []string, seed int) {
	n := max(int(r*2.4), 7)
	paths := make([]string, len(shades))
	for k := range n {
		x := math.Mod(float64(seed)*0.618+float64(k)*0.381966, 1)
		turn := (float64(k)+0.5+0.7*(x-0.5))/float64(n)*2 - 1 // from side to side
		sin := math.Sin(turn * math.Pi / 2)
		front := math.Sqrt(1 - sin*sin)
		out := r * (0.97 + 0.06*x)
		p, q := at(sin*out*0.42, min(z+tier*(1.9+1.2*front), v.Layout.Tree.Height.In(units.Inch))), at(sin*out, z-tier*(0.2+0.9*front*x))
		mid := point{(p.x+q.x)/2 + 2*sin, (p.y+q.y)/2 - 2}
		shade := int((0.25 + 0.5*front - 0.25*sin + 0.35*(x-0.5)) * float64(len(shades)))
		shade = min(max(shade, 0), len(shades)-1)
		paths[shade] += "M" + num(p.x) + " " + num(p.y) + "Q" + num(mid.x) + " " + num(mid.y) + " " + num(q.x) + " " + num(q.y)
		// Needles at the tip.
		for _, side := range []float64{-1, 1} {
			paths[shade] += "M" + num(mid.x) + " " + num(mid.y) + "l" + num((q.x-mid.x)*0.7+side*3.2) + " " + num((q.y-mid.y)*0.55+2-side*sin*2)
		}
	}
	for i, d := range paths {
		if d != "" {
			v.raw(`<path d="`, d, `" fill="none" stroke="`, shades[i], `" stroke-width="`, num(max(0.52*v.scale, 1.6)), `" stroke-linecap="round"/>`, "\n")
		}
	}
}

// ornament draws one piece by its shape, with a cap and a gleam.
func (v *view) ornament(item shopping.Item, at point, id string) {
	color, _ := fill(v.Palette, item.Color)
	r := item.Size.In(units.Inch) / 2 * v.scale
	if r == 0 {
		sprig(&v.canvas, at, max(2.4*v.scale, 6), color)
		return
	}
	style := `fill="` + color + `" stroke="#0006" stroke-width="0.7" stroke-linejoin="round"`
	gleam := `fill="url(#` + id + `s)"`
	v.rect(at.x-r*0.16, at.y-r*1.22, r*0.32, r*0.3, `fill="#d9c27a"`)
	switch item.Type {
	case "star":
		v.pointed(at, r, 5, 0.45, style)
		v.pointed(at, r, 5, 0.45, gleam)
	case "snowflake":
		v.pointed(at, r, 6, 0.35, style)
		v.pointed(at, r, 6, 0.35, gleam)
	case "drum", "lantern":
		for _, s := range []string{style, gleam} {
			v.rect(at.x-r*0.8, at.y-r, r*1.6, r*2, `rx="`+num(r*0.3)+`" `+s)
		}
		v.line(point{at.x - r*0.8, at.y - r*0.55}, point{at.x + r*0.8, at.y - r*0.55}, `stroke="#e8d38d" stroke-width="`+num(r*0.14)+`"`)
		v.line(point{at.x - r*0.8, at.y + r*0.55}, point{at.x + r*0.8, at.y + r*0.55}, `stroke="#e8d38d" stroke-width="`+num(r*0.14)+`"`)
	case "bell":
		shape := []point{{at.x, at.y - r}, {at.x + r*0.5, at.y - r*0.7}, {at.x + r*0.62, at.y + r*0.2}, {at.x + r, at.y + r*0.75}, {at.x - r, at.y + r*0.75}, {at.x - r*0.62, at.y + r*0.2}, {at.x - r*0.5, at.y - r*0.7}}
		v.path(shape, true, style)
		v.path(shape, true, gleam)
		v.circle(point{at.x, at.y + r*0.82}, r*0.18, `fill="#d9c27a"`)
	default:
		v.circle(at, r, style)
		v.circle(at, r, gleam)
	}
}

// pointed draws a star of so many points.
func (v *view) pointed(p point, r float64, points int, inner float64, attrs string) {
	var path []point
	for i := range 2 * points {
		q := r
		if i%2 == 1 {
			q *= inner
		}
		sin, cos := math.Sincos(float64(i) * math.Pi / float64(points))
		path = append(path, point{p.x + q*sin, p.y - q*cos})
	}
	v.path(path, true, attrs)
}
