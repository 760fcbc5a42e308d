package draw

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Ribbon is wound like a garland.
type Ribbon struct {
	placement.Winding              // Step is not used; no Spacing: none
	Width             units.Length // from edge to edge; zero is 2 1/2 in
	Color             string       // the name of one in the palette, or its first
}

// ribbonWidth returns the width of the ribbon in inches.
func (t Tree) ribbonWidth() float64 {
	if t.Ribbon.Width == 0 {
		return 2.5
	}
	return t.Ribbon.Width.In(units.Inch)
}

func (t Tree) ribbonColor() palette.Color {
	color := red
	for i, s := range t.Palette {
		if i == 0 || s.Name == t.Ribbon.Color {
			color = s.Color
		}
	}
	return color
}

// A thing is drawn when its turn comes: what hangs higher is in front of what is lower.
type thing struct {
	key  float64 // inches above the floor
	draw func()
}

// Client returns the tree as the one who pays for it wants to see it, on a ground that
// lets white or dark paper through: true to scale, with every piece of the near side where
// the plan hangs it and in its size, and no letters. For 9 ft it takes under 300 kB.
//
// What gives a drawing away beside a photograph, and what is done about each:
//
//	silhouette     tips end up to a tenth nearer or farther than the cone, in whorls, each
//	               with its needles; below they droop, at the top they rise
//	depth          three shells of boughs, the inner in the dark and without highlights;
//	               the heart of the tree is nearly black and shows in the gaps
//	occlusion      what hangs higher is drawn over what is lower; each bough, ornament and
//	               span of ribbon casts a shadow on what is behind it
//	light          from the upper left: boughs on the right are darker, needles on the
//	               upper side of each twig lighter, those on the lower side darker
//	falloff        a lamp is white, then amber, and fades; one in eight lights up the
//	               boughs around it
//	highlights     shiny: a window, lamps in the glass, the floor on the rim; metal: the
//	               horizon of the room; glitter: small mirrors; matte: one soft spot
//	gravity        boughs arch, pieces hang from a cap below a twig, each a little askew;
//	               ribbon and garland sag from the tips that hold them
//	nesting        pieces that hang deep have tips in front of them, none is covered
//	lamps          near their line but not on it, as cords are tied in by hand
//	ground         trunk, stand, a skirt in folds with the dark of the tree on it, and a
//	               soft shadow on the floor
//
// Three things are drawn to an eye and not to a tape, since nothing states their size:
// lamps, picks (as long as a fourteenth of the tree) and the topper, which fills the bare
// tip.
func (t Tree) Client() (string, error) {
	v, err := t.lay()
	if err != nil {
		return "", err
	}
	tree := t.Layout.Tree
	high, low := tree.Height.In(units.Inch), tree.Handle.In(units.Inch)
	const wide = 640.0
	v.scale = min(760/high, 540/(2*v.base))
	v.middle, v.floor = wide/2, 44+high*v.scale
	near := 0
	for _, p := range v.places {
		if p.At.Y <= 0 {
			near++
		}
	}
	height := v.floor + 70
	v.raw(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 `, num(wide), " ", num(math.Ceil(height)), `" width="`, num(wide), `" height="`, num(math.Ceil(height)),
		`" role="img" aria-labelledby="`, v.id("title"), " ", v.id("desc"), `" style="max-width:100%;height:auto">`, "\n")
	v.raw(`<title id="`, v.id("title"), `">`, escape(t.Title), "</title>\n")
	v.raw(`<desc id="`, v.id("desc"), `">`, escape(v.about(near)), "</desc>\n")
	things, err := v.define()
	if err != nil {
		return "", err
	}
	v.foot()
	v.raw(`<g fill="none" stroke-linecap="round" stroke-width="1.6">`, "\n")
	v.heart()
	things = append(things, v.fronds()...)
	slices.SortStableFunc(things, func(a, b thing) int { return cmp.Compare(a.key, b.key) })
	for _, x := range things {
		x.draw()
	}
	v.raw("</g>\n")
	if tree.BareTip > 0 {
		v.topper(low)
	}
	return v.close(), nil
}

// about says what there is to see.
func (v *view) about(near int) string {
	text := fmt.Sprintf("A dressed tree %s, seen from the front. %d of %d pieces hang on this side", v.shape(), near, len(v.places))
	var with []string
	if v.Garland.Spacing != 0 {
		with = append(with, "garland")
	}
	if v.Ribbon.Spacing != 0 {
		with = append(with, "ribbon")
	}
	if v.Lights.Spacing != 0 {
		with = append(with, "lights")
	}
	if len(with) > 0 {
		text += ", with " + strings.Join(with, " and ")
	}
	return text + "."
}

func (v *view) at(x, z float64) point { return point{v.middle + x*v.scale, v.floor - z*v.scale} }

// radius returns how far the tips are from the trunk at a height.
func (v *view) radius(z float64) float64 {
	high, low := v.Layout.Tree.Height.In(units.Inch), v.Layout.Tree.Handle.In(units.Inch)
	return v.base * (high - z) / (high - low)
}

// define writes all that is used more than once, and returns the pieces, the lamps and
// what is wound as things to draw.
func (v *view) define() ([]thing, error) {
	v.raw("<defs>\n")
	v.boughDefs()
	v.raw(`<radialGradient id="`, v.id("s"), `"><stop offset="0" stop-opacity=".62"/><stop offset=".55" stop-opacity=".3"/><stop offset="1" stop-opacity="0"/></radialGradient>`, "\n")
	v.raw(`<radialGradient id="`, v.id("h"), `"><stop offset="0" stop-color="#ffd98a" stop-opacity=".5"/><stop offset=".3" stop-color="#ffc65c" stop-opacity=".22"/><stop offset="1" stop-color="#ffb53a" stop-opacity="0"/></radialGradient>`, "\n")
	v.raw(`<radialGradient id="`, v.id("l"), `"><stop offset="0" stop-color="#fffdf0"/><stop offset=".13" stop-color="#fff3c4"/><stop offset=".2" stop-color="#ffd97c" stop-opacity=".75"/><stop offset=".42" stop-color="#ffbe4a" stop-opacity=".25"/><stop offset="1" stop-color="#ffab2a" stop-opacity="0"/></radialGradient>`, "\n")
	r := max(1.5*v.scale, 3)
	for i := range 3 {
		v.raw(`<circle id="`, v.id("l", i), `" r="`, tenth(r*(0.6+0.36*float64(i))), `" fill="url(#`, v.id("l"), `)"/>`, "\n")
	}
	v.raw(`<circle id="`, v.id("l3"), `" r="`, tenth(5.2*v.scale), `" fill="url(#`, v.id("h"), `)"/>`, "\n")
	var things []thing
	type look struct {
		item   shopping.Item
		finish palette.Finish
	}
	defined := map[look]string{}
	high, low := v.Layout.Tree.Height.In(units.Inch), v.Layout.Tree.Handle.In(units.Inch)
	for i, p := range v.places {
		if p.At.Y > 0 {
			continue
		}
		s := swatch(v.Palette, p.Item.Color, white)
		l := look{p.Item, oneOf(s.Finish, i)}
		id, ok := defined[l]
		if !ok {
			id = v.id("o", len(defined))
			defined[l] = id
			if p.Item.Size == 0 {
				v.pickDef(id, swatch(v.Palette, p.Item.Color, red))
			} else {
				v.ornamentDef(id, p.Item, l.finish)
			}
		}
		r := p.Item.Size.In(units.Inch) / 2
		at := v.front(p.At)
		z := p.At.Z.In(units.Inch)
		sin, _ := sincos(p.Azimuth.Degrees() * math.Pi / 180)
		if p.Item.Size == 0 {
			// A pick is pushed in from the outside: it points out and up.
			turn := sin*70 + 24*(chance(i, 1)-0.5)
			reach := max(high/27, 3)
			things = append(things, thing{z + 4, func() {
				v.raw(`<use data-piece="`, num(float64(i+1)), `" href="#`, id, `" transform="translate(`, tenth(at.x), " ", tenth(at.y), ") rotate(", tenth(turn), ") scale(", three(reach*v.scale/100), `)" stroke="none"/>`, "\n")
			}})
			continue
		}
		// How deep it hangs, as a share of a third of the way to the trunk.
		deep := min(p.Depth.In(units.Inch)/max(v.radius(z)/3, 1), 1)
		tilt := 8 * (chance(i, 2) - 0.5)
		things = append(things, thing{z + r*(1.5-0.4*deep) + 3.5, func() {
			d := r * v.scale
			if math.Abs(p.At.X.In(units.Inch))+1.1*r < v.radius(z) { // there is something to fall on
				v.raw(`<ellipse cx="`, tenth(at.x+d*0.18), `" cy="`, tenth(at.y+d*0.25), `" rx="`, tenth(d*1.45), `" ry="`, tenth(d*1.5), `" fill="url(#`, v.id("s"), `)" stroke="none"/>`)
			}
			v.raw(`<use data-piece="`, num(float64(i+1)), `" href="#`, id, `" transform="translate(`, tenth(at.x), " ", tenth(at.y), ") rotate(", tenth(tilt), ") scale(", three(d/100), `)" stroke-width="0"/>`, "\n")
		}})
		// The twig that it hangs from.
		things = append(things, thing{z + r*(1.5-0.4*deep) + 3.6, func() {
			side := 1.0
			if sin < 0 {
				side = -1
			}
			l := max(high/20, 3) * v.scale
			v.frond(frond{tip: point{at.x + side*l*0.22, at.y - r*v.scale*1.15}, dx: side * 0.86, dy: 0.5, length: l, width: 0.7, tone: 0.62 - 0.3*deep + 0.2*chance(i, 7), seed: i, edge: math.Abs(sin) > 0.8})
		}})
	}
	if v.Lights.Spacing != 0 {
		path, err := v.Layout.Wind(v.Lights)
		if err != nil {
			return nil, err
		}
		n := 0
		for p := range path {
			n++
			if p.Y > 0 {
				continue
			}
			// Lamps sit on the boughs at different depths.
			kind, dip := int(chance(n, 8)*3), 4*chance(n, 9)
			at := v.front(p)
			at.x, at.y = at.x+2.2*v.scale*(chance(n, 10)-0.5), at.y+2.6*v.scale*(chance(n, 11)-0.5)
			at.y = min(at.y, v.floor-(low+2)*v.scale)
			things = append(things, thing{p.Z.In(units.Inch) + 2.5 - dip, func() {
				v.raw(`<use href="#`, v.id("l", kind), `" x="`, tenth(at.x), `" y="`, tenth(at.y), `"/>`)
			}})
			// Some light up the boughs around them.
			if chance(n, 14) < 0.12 && math.Abs(p.X.In(units.Inch)) < 0.75*v.radius(p.Z.In(units.Inch)) {
				things = append(things, thing{p.Z.In(units.Inch) + 0.8, func() {
					v.raw(`<use href="#`, v.id("l3"), `" x="`, tenth(at.x), `" y="`, tenth(at.y), `"/>`)
				}})
			}
		}
	}
	wound, err := v.wound()
	if err != nil {
		return nil, err
	}
	v.raw("</defs>\n")
	return append(things, wound...), nil
}

// oneOf returns one finish of several, in turn.
func oneOf(f palette.Finish, i int) palette.Finish {
	var all []palette.Finish
	for one := palette.Matte; one <= palette.Natural; one <<= 1 {
		if f&one != 0 {
			all = append(all, one)
		}
	}
	if all == nil {
		return palette.Shiny
	}
	return all[i%len(all)]
}

// foot draws the shadow on the floor, the stand, the trunk and the skirt.
func (v *view) foot() {
	low := v.Layout.Tree.Handle.In(units.Inch)
	high := v.Layout.Tree.Height.In(units.Inch)
	cloth, trim := red, metal(v.Palette)
	if s := v.Palette; len(s) > 0 {
		cloth = s[0].Color
	}
	b := v.base * v.scale
	v.raw(`<g data-part="foot">`, "\n")
	v.raw(`<ellipse cx="`, num(v.middle), `" cy="`, num(v.floor+4), `" rx="`, num(b*1.12), `" ry="`, num(b*0.2), `" fill="url(#`, v.id("s"), `)"/>`, "\n")
	// The skirt lies in folds: a hem that waves, lit and dark by turns.
	rx, ry := b*0.8, b*0.135
	hem := func(a, grow float64) point {
		wave := 1 + 0.013*sine(a*13) + 0.012*sine(a*8+1) + 0.005*sine(a*21+2)
		return point{v.middle + rx*grow*wave*cosine(a), v.floor + ry*grow*wave*sine(a)}
	}
	ring := func(grow float64) (points []point) {
		for i := range 144 {
			points = append(points, hem(float64(i)*math.Pi/72, grow))
		}
		return points
	}
	v.raw(`<radialGradient id="`, v.id("k"), `" cx=".46" cy=".5">`, stops(0, tint(cloth, black, 0.7), 0.3, tint(cloth, black, 0.55), 0.62, tint(cloth, black, 0.25), 0.85, cloth, 1, tint(cloth, white, 0.08)), `</radialGradient>`, "\n")
	low1 := ring(1.06)
	for i := range low1 {
		low1[i].y += 2.5
	}
	v.curve(low1, true, `fill="`+tint(trim, black, 0.55).String()+`"`)
	v.curve(ring(1.06), true, `fill="`+trim.String()+`"`)
	v.curve(ring(0.97), true, `fill="`+tint(trim, black, 0.45).String()+`"`)
	v.curve(ring(0.96), true, `fill="url(#`+v.id("k")+`)"`)
	// Folds fan out from the trunk: the light side and the dark one of each wave of the hem.
	for i := range 26 {
		a := (float64(i) + 0.5*(chance(i, 21)-0.5)) * math.Pi / 13
		for k, paint := range []string{tint(cloth, black, 0.75).String() + `" opacity=".42`, tint(cloth, white, 0.5).String() + `" opacity=".2`} {
			shift := 0.03 + 0.035*float64(k)
			from, to := hem(a+shift*0.4, 0.42+0.2*chance(i, 22)), hem(a+shift, 0.96)
			mid := hem(a+shift+0.02, 0.75)
			v.raw(`<path d="M`, tenth(from.x), " ", tenth(from.y), "Q", tenth(mid.x), " ", tenth(mid.y), " ", tenth(to.x), " ", tenth(to.y))
			back := hem(a+shift+0.055, 0.96)
			v.raw("L", tenth(back.x), " ", tenth(back.y), "Q", tenth(mid.x), " ", tenth(mid.y), " ", tenth(from.x), " ", tenth(from.y), `" fill="`, paint, `"/>`, "\n")
		}
	}
	v.raw(`<ellipse cx="`, num(v.middle), `" cy="`, num(v.floor-2), `" rx="`, num(b*0.62), `" ry="`, num(b*0.11), `" fill="url(#`, v.id("s"), `)"/>`, "\n")
	// The stand: a cup that the trunk is bolted into.
	trunk := v.base / 13
	cup := func(x, z float64) point { return v.at(x*trunk, z) }
	v.raw(`<linearGradient id="`, v.id("c"), `">`, stops(0, "#14161a", 0.3, "#6a727c", 0.45, "#2b3036", 1, "#0c0e10"), `</linearGradient>`,
		`<linearGradient id="`, v.id("t"), `">`, stops(0, "#2a1c12", 0.32, "#6b4a30", 0.6, "#432c1b", 1, "#160e08"), `</linearGradient>`, "\n")
	v.path([]point{cup(-1, low*0.2), cup(-0.82, low+high/6), cup(0.82, low+high/6), cup(1, low*0.2)}, true, `fill="url(#`+v.id("t")+`)"`)
	if low > 0 {
		v.path([]point{cup(-2.2, 0.1), cup(-1.75, low*0.42), cup(1.75, low*0.42), cup(2.2, 0.1)}, true, `fill="url(#`+v.id("c")+`)"`)
		p := cup(0, low*0.42)
		v.raw(`<ellipse cx="`, num(p.x), `" cy="`, num(p.y), `" rx="`, num(1.75*trunk*v.scale), `" ry="`, num(0.3*trunk*v.scale), `" fill="#1b1e22"/>`)
		v.path([]point{cup(-1, low*0.42), cup(-0.94, low), cup(0.94, low), cup(1, low*0.42)}, true, `fill="url(#`+v.id("t")+`)"`)
	}
	v.raw("</g>\n")
}

// heart draws the dark in the tree, so that nothing shows through, and the leader.
func (v *view) heart() {
	high, low := v.Layout.Tree.Height.In(units.Inch), v.Layout.Tree.Handle.In(units.Inch)
	unit := high / 108 // an inch on a tree of 9 ft
	left, right := []point{}, []point{}
	for i := range 41 {
		z := low + (high-low)*0.97*float64(i)/40
		r := v.radius(z) * (0.8 - 0.35*float64(i)/40)
		left = append(left, v.at(-r*(0.92+0.16*chance(i, 31)), z+1.5*unit))
		right = append(right, v.at(r*(0.92+0.16*chance(i, 32)), z+1.5*unit))
	}
	slices.Reverse(right)
	v.path(append(left, right...), true, `fill="#03100a"`)
	v.line(v.at(0, high*0.9), v.at(0, high-0.4*v.Layout.Tree.BareTip.In(units.Inch)), `stroke="#2c2417" stroke-width="`+num(max(0.5*v.scale, 1.5))+`"`)
}

// fronds returns the boughs, in three shells, the innermost the darkest.
func (v *view) fronds() []thing {
	high, low := v.Layout.Tree.Height.In(units.Inch), v.Layout.Tree.Handle.In(units.Inch)
	unit := high / 108 // so that each tree has as many boughs as one of 9 ft
	var things []thing
	for shell, share := range []float64{0.68, 0.86, 1} {
		// The tips stand in whorls, with the dark of the tree between them.
		whorls := []int{25, 25, 17}[shell]
		for w := range whorls {
			u := (float64(w) + 0.35*float64(shell) + 0.35*(chance(w, shell, 1)-0.5)) / float64(whorls)
			z0 := low + (high-low)*(0.005+0.975*u)
			r0 := v.radius(z0) * share
			n := max(int(math.Pi*r0/([]float64{8, 7.4, 5.2}[shell]*unit)), 3)
			for k := range n {
				seed := shell*10000 + w*100 + k
				turn := (float64(k)+0.5+0.7*(chance(seed, 2)-0.5))/float64(n)*math.Pi - math.Pi/2
				sin, cos := sincos(turn * (1.02 + 0.6/float64(n)))
				r := r0 * (0.95 + 0.17*chance(seed, 3))
				z := z0 + unit*3.6*(chance(seed, 4)-0.5)*min(1, r0/(10*unit))
				// Low branches droop, those at the top rise.
				fall := 0.45 - 1.0*u
				dx, dy := sin*cosine(fall), sine(fall)+0.62*cos*(1-0.3*u)
				d := hypot(dx, dy)
				if d < 0.05 {
					dx, dy, d = 0.1, 0.5, 0.5
				}
				length := (3*unit + 0.52*min(r, 16*unit) + 0.15*r) * (0.85 + 0.3*chance(seed, 5)) * max(d, 0.55)
				tip := v.at(sin*r, min(z, high-0.4*unit))
				tone := []float64{0.1, 0.33, 0.68}[shell] - 0.2*sin + 0.08*cos + 0.05*u + 0.26*(chance(seed, 7)-0.5)
				f := frond{
					tip: tip, dx: dx / d, dy: dy / d, length: length * v.scale, width: 0.9 + 0.25*chance(seed, 8), tone: tone, seed: seed,
					deep: shell == 0, edge: math.Abs(sin) > 0.86 || r0 < 6*unit || w == 0,
				}
				things = append(things, thing{z + unit*(float64(shell)-2)*4 + 0.5*cos, func() { v.frond(f) }})
			}
		}
	}
	return things
}

// topper draws a star of glass and metal that fills the bare tip, with its light.
func (v *view) topper(low float64) {
	tree := v.Layout.Tree
	r := tree.BareTip.In(units.Inch) / 2
	p := v.at(0, tree.Height.In(units.Inch)-r)
	v.raw(`<g data-part="topper" transform="translate(`, tenth(p.x), " ", tenth(p.y), ") scale(", three(r*v.scale/100), `)">`)
	v.raw(`<circle r="210" fill="url(#`, v.id("h"), `)"/>`)
	ornament{&v.canvas, v.id("z"), tint(metal(v.Palette), white, 0.25), palette.Metal, ""}.spokes(5, 0.42)
	v.raw(`<circle r="60" fill="url(#`, v.id("h"), `)"/><path d="M0-100L4-30L0 0L-4-30z" fill="#fff" opacity=".7"/>`)
	v.raw("</g>\n")
}

// wound returns the spans of garland and ribbon.
func (v *view) wound() ([]thing, error) {
	var things []thing
	if w := v.Garland; w.Spacing != 0 {
		w.Step = units.Inch
		rope := metal(v.Palette)
		n := 0
		if err := v.spans(w, func(run []placement.Position) {
			var line []point
			z := 0.0
			for _, p := range run {
				line = append(line, v.front(p))
				z += p.Z.In(units.Inch) / float64(len(run))
			}
			n++
			seed := n
			things = append(things, thing{z + 3, func() { v.tinsel(line, rope, seed) }})
		}); err != nil {
			return nil, err
		}
	}
	if w := v.Ribbon; w.Spacing != 0 {
		w.Step = units.Inch
		color := v.ribbonColor()
		v.raw(`<linearGradient id="`, v.id("r0"), `">`, stops(0, tint(color, black, 0.7), 0.14, tint(color, black, 0.3), 0.34, tint(color, white, 0.4), 0.5, color, 0.78, tint(color, black, 0.25), 1, tint(color, black, 0.75)), `</linearGradient>`, "\n")
		v.raw(`<linearGradient id="`, v.id("r1"), `">`, stops(0, tint(color, black, 0.75), 0.2, tint(color, black, 0.45), 0.5, tint(color, black, 0.12), 0.7, tint(color, white, 0.16), 0.85, tint(color, black, 0.3), 1, tint(color, black, 0.75)), `</linearGradient>`, "\n")
		n := 0
		if err := v.spans(w.Winding, func(run []placement.Position) {
			var line []point
			z := 0.0
			for _, p := range run {
				line = append(line, v.front(p))
				z += p.Z.In(units.Inch) / float64(len(run))
			}
			n++
			seed := n
			things = append(things, thing{z + 2.3, func() { v.band(line, v.ribbonWidth()*v.scale, color, seed) }})
			// A twig holds it.
			p := run[len(run)-1]
			sin := p.X.In(units.Inch) / max(v.radius(p.Z.In(units.Inch)), 1)
			side, l := math.Copysign(1, sin+0.3*(chance(seed, 12)-0.5)), max(v.Layout.Tree.Height.In(units.Inch)/23, 2)*v.scale
			end := v.front(p)
			things = append(things, thing{z + 2.4, func() {
				v.frond(frond{tip: point{end.x + side*l*0.1, end.y + l*0.45}, dx: side * (0.25 + 0.6*math.Abs(sin)), dy: 0.8 - 0.5*math.Abs(sin), length: l, width: 0.9, tone: 0.6 - 0.2*sin + 0.2*chance(seed, 13), seed: 700 + seed, edge: math.Abs(sin) > 0.86})
			}})
		}); err != nil {
			return nil, err
		}
	}
	return things, nil
}

// spans calls f with what is seen of a winding, from one tip that holds it to the next.
func (v *view) spans(w placement.Winding, f func([]placement.Position)) error {
	path, err := v.Layout.Wind(w)
	if err != nil {
		return err
	}
	each := 14.0
	if w.Drape.Sag > 0 {
		stretch, err := w.Drape.Stretch()
		if err != nil {
			return err
		}
		each = w.Drape.Span.In(units.Inch) * stretch
	}
	var run []placement.Position
	flush := func() {
		if len(run) > 1 {
			f(run)
		}
		run = nil
	}
	span, s := 0, 0.0
	for p := range path {
		if now := int(s / each); now != span {
			if p.Y <= 0 {
				run = append(run, p)
			}
			flush()
			span = now
		}
		if p.Y > 0 {
			flush()
		} else {
			run = append(run, p)
		}
		s += w.Step.In(units.Inch)
	}
	flush()
	return nil
}

// band draws a span of ribbon: narrow where it is tucked in, wide where it bellies out.
func (v *view) band(line []point, width float64, color palette.Color, seed int) {
	var up, down []point
	for i, p := range line {
		u := float64(i) / float64(len(line)-1)
		belly := sine(math.Pi * u)
		half := width / 2 * (0.3 + 0.7*math.Sqrt(max(belly, 0)))
		tip := width * 0.12 * sine(2*math.Pi*u+float64(seed%2)*math.Pi)
		up = append(up, point{p.x, p.y - half + tip})
		down = append(down, point{p.x, p.y + half + tip*0.6})
	}
	all := slices.Clone(up)
	for i := len(down) - 1; i >= 0; i-- {
		all = append(all, down[i])
	}
	shadow := slices.Clone(all)
	for i := range shadow {
		shadow[i].y += width * 0.3
		shadow[i].x += width * 0.1
	}
	v.curve(shadow, true, `data-part="ribbon" fill="#010704" fill-opacity=".5" stroke="none"`)
	v.curve(all, true, `fill="url(#`+v.id("r", seed%2)+`)" stroke="none"`)
	v.curve(up, false, `stroke="`+tint(color, white, 0.55).String()+`" stroke-width="1" opacity=".8"`)
	v.curve(down, false, `stroke="`+tint(color, black, 0.6).String()+`" stroke-width="1" opacity=".8"`)
}

// curve draws a path through points, to a tenth and relative, which is short.
func (v *view) curve(points []point, closed bool, attrs string) {
	v.raw(`<path d="M`, tenth(points[0].x), " ", tenth(points[0].y), "L")
	for i, p := range points[1:] {
		if i > 0 {
			v.raw(" ")
		}
		v.raw(tenth(p.x), " ", tenth(p.y))
	}
	if closed {
		v.raw("z")
	}
	v.raw(`" `, attrs, "/>\n")
}

// tinsel draws a span of garland: a rope of fringe that takes the light.
func (v *view) tinsel(line []point, color palette.Color, seed int) {
	w := max(0.8*v.scale, 2)
	v.raw(`<g data-part="garland" transform="translate(`, tenth(w*0.3), " ", tenth(w*0.9), `)">`)
	v.curve(line, false, `stroke="#010704" stroke-opacity=".5" stroke-width="`+tenth(w*2.2)+`"`)
	v.raw("</g>")
	v.curve(line, false, `stroke="`+tint(color, black, 0.55).String()+`" stroke-width="`+tenth(w*1.5)+`"`)
	for k, paint := range []palette.Color{tint(color, black, 0.35), color, tint(color, white, 0.65)} {
		v.raw(`<path stroke="`, paint.String(), `" stroke-width="`, num([]float64{1.5, 1.2, 0.9}[k]), `" d="`)
		for i, p := range line {
			for m := range 3 {
				sin, cos := sincos(2 * math.Pi * chance(seed, i, m, k))
				l := w * (0.7 + 0.6*chance(seed, i, m, k, 1))
				if k == 2 {
					sin = -math.Abs(sin) // the light comes from above
				}
				v.raw("M", tenth(p.x+2*(chance(i, m, k)-0.5)), " ", tenth(p.y), "l", tenth(l*cos), " ", tenth(l*sin))
			}
		}
		v.raw(`"/>`)
	}
	v.raw("\n")
}

// three prints x to a thousandth, without the zero before the point.
func three(x float64) string {
	s := fmt.Sprint(math.Round(x*1000)/1000 + 0)
	if a, ok := strings.CutPrefix(s, "0."); ok {
		return "." + a
	}
	if a, ok := strings.CutPrefix(s, "-0."); ok {
		return "-." + a
	}
	return s
}
