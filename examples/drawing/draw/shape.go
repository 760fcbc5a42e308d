package draw

import (
	"fmt"
	"math"
	"strings"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
)

// tint mixes a color with another one, a share of it.
func tint(c, with palette.Color, share float64) palette.Color {
	mix := func(a, b uint8) uint8 {
		return uint8(math.Round(float64(a) + (float64(b)-float64(a))*share))
	}
	return palette.Color{mix(c[0], with[0]), mix(c[1], with[1]), mix(c[2], with[2])}
}

var (
	white = palette.Color{255, 255, 255}
	black = palette.Color{6, 8, 10}
	warm  = palette.Color{255, 214, 140}
	gold  = palette.Color{214, 170, 84}
	red   = palette.Color{168, 24, 34}
)

// swatch returns a swatch of the palette by its name, or one instead.
func swatch(p palette.Palette, name string, instead palette.Color) palette.Swatch {
	for _, s := range p {
		if s.Name == name {
			return s
		}
	}
	return palette.Swatch{Color: instead, Finish: palette.Metal}
}

// metal returns the color of the metal in a palette, or gold.
func metal(p palette.Palette) palette.Color {
	for _, s := range p {
		if s.Finish&palette.Metal != 0 {
			return s.Color
		}
	}
	return gold
}

// An ornament is drawn once for its item, 100 units from the middle to the edge, and used
// wherever one hangs.
type ornament struct {
	*canvas
	id     string // what its gradients begin with
	color  palette.Color
	finish palette.Finish
	body   string // the paint of its body
}

// shapes has how to draw a type by a word in it; whatever else it is, is a ball.
var shapes = []struct {
	word string
	draw func(ornament)
}{
	{"snowflake", ornament.snowflake},
	{"star", ornament.star},
	{"icicle", ornament.icicle},
	{"drop", ornament.drop},
	{"bell", ornament.bell},
	{"bow", ornament.bow},
	{"cone", ornament.cone},
	{"lantern", ornament.lantern},
	{"drum", ornament.drum},
	{"heart", ornament.heart},
	{"bird", ornament.bird},
	{"locomotive", ornament.locomotive},
	{"", ornament.ball},
}

// ornamentDef writes what hangs for an item.
func (v *view) ornamentDef(id string, item shopping.Item, finish palette.Finish) {
	s := swatch(v.Palette, item.Color, white)
	o := ornament{&v.canvas, id, s.Color, finish, "url(#" + id + "f)"}
	c := s.Color
	dark := tint(c, black, 0.72)
	switch finish {
	case palette.Metal:
		o.linear("f", stops(0, tint(c, white, 0.75), 0.2, tint(c, white, 0.3), 0.45, c, 0.56, tint(c, black, 0.62), 0.66, tint(c, black, 0.2), 0.82, tint(c, white, 0.35), 1, tint(c, black, 0.6)))
	case palette.Glitter:
		o.radial("f", stops(0, tint(c, white, 0.35), 0.4, c, 0.8, tint(c, black, 0.4), 1, dark))
	case palette.Matte, palette.Natural:
		o.radial("f", stops(0, tint(c, white, 0.42), 0.35, tint(c, white, 0.12), 0.65, tint(c, black, 0.14), 0.9, tint(c, black, 0.48), 1, tint(c, black, 0.4)))
	default:
		o.radial("f", stops(0, tint(c, white, 0.55), 0.18, tint(c, white, 0.18), 0.45, c, 0.75, tint(c, black, 0.45), 0.92, tint(c, black, 0.7), 1, tint(tint(c, black, 0.3), warm, 0.2)))
	}
	v.raw(`<g id="`, id, `">`)
	kind := strings.ToLower(item.Type)
	for _, s := range shapes {
		if strings.Contains(kind, s.word) {
			s.draw(o)
			break
		}
	}
	v.raw("</g>\n")
}

// stops writes the stops of a gradient: an offset, a color, an offset and so on.
func stops(pairs ...any) string {
	var b strings.Builder
	for i := 0; i < len(pairs); i += 2 {
		fmt.Fprintf(&b, `<stop offset="%v" stop-color="%v"/>`, pairs[i], pairs[i+1])
	}
	return b.String()
}

func (o ornament) radial(name, stops string) {
	o.raw(`<radialGradient id="`, o.id, name, `" cx=".36" cy=".28" r=".82">`, stops, "</radialGradient>\n")
}

func (o ornament) linear(name, stops string) {
	o.raw(`<linearGradient id="`, o.id, name, `" x1=".3" y1="0" x2=".6" y2="1">`, stops, "</linearGradient>\n")
}

func (o ornament) fill(d string, paint any) {
	o.raw(`<path d="`, d, `" fill="`, fmt.Sprint(paint), `"/>`)
}

func (o ornament) stroke(d string, paint any, width float64, opacity string) {
	o.raw(`<path d="`, d, `" fill="none" stroke="`, fmt.Sprint(paint), `" stroke-width="`, num(width), `" stroke-linecap="round" stroke-linejoin="round" opacity="`, opacity, `"/>`)
}

// cap draws the metal cap and the wire of a piece whose top is at y.
func (o ornament) cap(y float64) {
	o.raw(`<path d="M-2 `, num(y-18), `c-14-16-2-30 4-30s16 16 2 30" fill="none" stroke="#c9b27a" stroke-width="4"/>`,
		`<path d="M-17 `, num(y+6), `l2-24q15-6 30 0l2 24q-17 8-34 0z" fill="#b6924a"/>`,
		`<path d="M-13 `, num(y+6), `l1-24h7v27z" fill="#fff0c0"/><path d="M9 `, num(y+7), `v-26h5l2 24z" fill="#6d5220"/>`)
}

// gleam lays on a body what its finish does with the light of the room and the lamps.
func (o ornament) gleam(d string) {
	switch o.finish {
	case palette.Glitter:
		o.sparkle(d)
	case palette.Matte, palette.Natural:
	default:
		o.raw(`<g fill="#ffe9b0">`)
		for i := range 9 {
			sin, cos := sincos(0.5 + float64(i)*0.66)
			r := 52 + 24*chance(i, 3)
			o.raw(`<circle cx="`, tenth(r*cos), `" cy="`, tenth(r*sin), `" r="`, tenth(2.4+2.6*chance(i, 4)), `" opacity="`, tenth(0.5+0.4*chance(i, 5)), `"/>`)
		}
		o.raw(`</g>`)
	}
}

// sparkle strews small mirrors over what lies within 92 of the middle of a body.
func (o ornament) sparkle(clip string) {
	o.raw(`<clipPath id="`, o.id, `k"><path d="`, clip, `"/></clipPath><g clip-path="url(#`, o.id, `k)" fill="none" stroke-linecap="round">`)
	for k, paint := range []any{tint(o.color, black, 0.5), tint(o.color, white, 0.55), "#fff"} {
		o.raw(`<path stroke="`, fmt.Sprint(paint), `" stroke-width="`, num([]float64{7, 6, 5.5}[k]), `" d="`)
		for i := range []int{60, 55, 26}[k] {
			sin, cos := sincos(2 * math.Pi * chance(i, k, 1))
			r := 96 * math.Sqrt(chance(i, k, 2))
			o.raw("M", num(math.Round(r*cos)), " ", num(math.Round(r*sin)), "h0")
		}
		o.raw(`"/>`)
	}
	o.raw("</g>")
}

const round = "M-100 0a100 100 0 1 1 200 0a100 100 0 1 1-200 0z"

func (o ornament) ball() {
	o.cap(-104)
	o.fill(round, o.body)
	switch o.finish {
	case palette.Matte, palette.Natural:
		o.raw(`<ellipse cx="-34" cy="-44" rx="30" ry="22" fill="#fff" opacity=".16" transform="rotate(-35-34-44)"/>`)
	case palette.Glitter:
		o.sparkle(round)
	case palette.Metal:
		o.raw(`<path d="M-92 20Q-40 52 10 44T94 14Q92 62 40 88Q0 74-40 88Q-84 66-92 20z" fill="`, tint(o.color, black, 0.6).String(), `" opacity=".38"/>`)
		o.window()
		o.gleam(round)
	default:
		// The dark of the room below, the window, and light from the floor on the rim.
		o.raw(`<path d="M-90 28Q-46 58 0 50T92 24Q84 72 38 90Q0 66-38 90Q-82 74-90 28z" fill="`, tint(o.color, black, 0.8).String(), `" opacity=".35"/>`)
		o.raw(`<path d="M-62 70Q0 112 66 68Q30 98 0 97T-62 70z" fill="`, tint(o.color, warm, 0.65).String(), `" opacity=".7"/>`)
		o.window()
		o.gleam(round)
	}
}

// window is what a mirror shows of one, upper left.
func (o ornament) window() {
	o.raw(`<path d="M-70-34Q-56-68-24-78L-14-50Q-40-42-50-22z" fill="#fff" opacity=".82"/><path d="M-50-62L-36-34M-62-48L-20-64" stroke="`, tint(o.color, black, 0.2).String(), `" stroke-width="3.4" opacity=".55"/>`,
		`<circle cx="-30" cy="-44" r="46" fill="#fff" opacity=".09"/><ellipse cx="56" cy="40" rx="9" ry="20" fill="#fff" opacity=".28" transform="rotate(38 56 40)"/>`)
}

// spokes returns a star of so many points, each with one side in the light.
func (o ornament) spokes(points int, inner float64) {
	at := func(i int) (x, y float64) {
		r := 100.0
		if i%2 != 0 {
			r *= inner
		}
		sin, cos := sincos(float64(i) * math.Pi / float64(points))
		return r * sin, -r * cos
	}
	for i := range 2 * points {
		x, y := at(i)
		p, q := at(i + 1)
		// The light comes from the upper left.
		facing := -sine((float64(i)+0.5)*math.Pi/float64(points)+0.75) * 0.42
		if i%2 == 0 {
			facing -= 0.28
		} else {
			facing += 0.28
		}
		paint := tint(o.color, white, max(facing, 0)*1.05)
		if facing < 0 {
			paint = tint(o.color, black, -facing*0.95)
		}
		o.fill("M0 0L"+tenth(x)+" "+tenth(y)+"L"+tenth(p)+" "+tenth(q)+"z", paint)
	}
}

func (o ornament) star() {
	o.cap(-100)
	o.spokes(5, 0.42)
	if o.finish == palette.Glitter {
		o.sparkle("M0-100L25-34L95-31L40 13L59 81L0 42L-59 81L-40 13L-95-31L-25-34z")
	}
}

func (o ornament) snowflake() {
	var d strings.Builder
	for i := range 6 {
		for _, p := range [][4]float64{{0, 0, 0, -96}, {0, -36, -26, -62}, {0, -36, 26, -62}, {0, -64, -20, -84}, {0, -64, 20, -84}} {
			sin, cos := sincos(float64(i) * math.Pi / 3)
			d.WriteString("M" + tenth(p[0]*cos-p[1]*sin) + " " + tenth(p[0]*sin+p[1]*cos) + "L" + tenth(p[2]*cos-p[3]*sin) + " " + tenth(p[2]*sin+p[3]*cos))
		}
	}
	o.raw(`<g transform="translate(3 5)">`)
	o.stroke(d.String(), tint(o.color, black, 0.7), 15, ".75")
	o.raw(`</g>`)
	o.stroke(d.String(), tint(o.color, black, 0.12), 14, "1")
	o.stroke(d.String(), tint(o.color, white, 0.6), 6, ".9")
	o.raw(`<circle r="17" fill="`, tint(o.color, white, 0.8).String(), `"/>`)
}

func (o ornament) icicle() {
	o.cap(-100)
	o.fill("M-22-96Q0-106 22-96Q22-40 9 20Q4 66 0 100Q-4 66-9 20Q-22-40-22-96z", o.body)
	for i := range 7 {
		y := -82 + 24*float64(i)
		w := 20 - 2.6*float64(i)
		o.stroke(fmt.Sprintf("M%s %sq%s 12 %s 6", num(-w), num(y), num(w), num(2*w)), tint(o.color, white, 0.8), 4, ".8")
		o.stroke(fmt.Sprintf("M%s %sq%s 12 %s 6", num(-w), num(y+9), num(w), num(2*w)), tint(o.color, black, 0.55), 3, ".6")
	}
	o.fill("M-14-88Q-12-30-4 30Q-16-20-14-88z", "#ffffffb0")
}

func (o ornament) drop() {
	const d = "M0-100C14-60 62-22 62 34C62 74 34 100 0 100S-62 74-62 34C-62-22-14-60 0-100z"
	o.cap(-98)
	o.fill(d, o.body)
	o.fill("M-44 30Q-44-10-16-44Q-24-4-26 40Q-36 46-44 30z", "#ffffff"+map[bool]string{true: "30", false: "b0"}[o.finish == palette.Matte])
	o.raw(`<path d="M-58 40Q0 66 58 40" fill="none" stroke="`, tint(gold, white, 0.3).String(), `" stroke-width="7"/><path d="M-60 50Q0 77 60 50" fill="none" stroke="#6b4d18" stroke-width="3" opacity=".6"/>`)
	if o.finish == palette.Glitter {
		o.sparkle(d)
	}
}

func (o ornament) bell() {
	const d = "M0-100C34-100 46-76 50-40C55 8 62 38 94 66Q98 78 86 80Q0 94-86 80Q-98 78-94 66C-62 38-55 8-50-40C-46-76-34-100 0-100z"
	o.cap(-98)
	o.raw(`<circle cy="86" r="15" fill="`, tint(o.color, black, 0.45).String(), `"/><circle cx="-5" cy="84" r="5" fill="#fff" opacity=".8"/>`)
	o.fill(d, o.body)
	o.fill("M40-60C50 10 58 44 88 70Q60 84 20 86C34 40 40-10 40-60z", "#00000048")
	o.fill("M-34-74C-40-30-44 20-66 58Q-56 62-46 62C-24 20-22-30-20-80Q-30-84-34-74z", "#ffffff90")
	o.stroke("M-88 70Q0 88 88 70", tint(o.color, white, 0.6), 6, ".8")
	o.stroke("M-58 26Q0 40 58 26", tint(o.color, black, 0.5), 4, ".6")
	if o.finish == palette.Glitter {
		o.sparkle(d)
	}
}

func (o ornament) bow() {
	light, dark := tint(o.color, white, 0.28), tint(o.color, black, 0.5)
	for _, side := range []string{"1 1", "-1 1"} {
		o.raw(`<g transform="scale(`, side, `)">`)
		o.fill("M4 0Q34 40 40 96L24 82L6 92Q14 40 0 6z", dark)
		o.fill("M4 0Q34 40 40 96L34 90Q24 40 4 8z", o.color)
		o.fill("M0-4Q40-72 84-58Q108-30 88 6Q60 34 0 6z", o.color)
		o.fill("M0-2Q44-40 78-34Q92-16 80 2Q50 22 0 4z", dark)
		o.fill("M2-6Q40-72 84-58Q94-50 96-40Q50-60 2-6z", light)
		o.raw(`</g>`)
	}
	o.raw(`<path d="M-15-14Q0-22 15-14Q21 0 15 14Q0 22-15 14Q-21 0-15-14z" fill="`, light.String(), `"/><path d="M-3-16Q-9 0-3 16M7-16Q11 0 7 16" stroke="`, dark.String(), `" stroke-width="4" fill="none"/>`)
}

func (o ornament) cone() {
	o.cap(-96)
	o.fill("M0-98C40-90 62-40 56 10C50 60 24 96 0 100C-24 96-50 60-56 10C-62-40-40-90 0-98z", tint(o.color, black, 0.72))
	for row := 7; row >= 0; row-- {
		y := -78 + 23*float64(row)
		w := 56 * sine(math.Pi*(0.16+0.74*float64(row)/7.6))
		for k := range 4 {
			x := w * (float64(k) + 0.5*float64(row%2) - 1.75) / 2.1
			lit := 0.3 - x/130 + 0.1*(chance(row, k)-0.5)
			paint := tint(o.color, white, max(lit, 0)*0.8)
			if lit < 0.1 {
				paint = tint(o.color, black, 0.1-lit)
			}
			o.fill("M"+tenth(x-15)+" "+tenth(y-10)+"q15-10 30 0q2 16-15 26q-17-10-15-26z", tint(o.color, black, 0.6))
			o.fill("M"+tenth(x-13)+" "+tenth(y-10)+"q13-9 26 0q0 12-13 20q-13-8-13-20z", paint)
		}
	}
}

func (o ornament) lantern() {
	dark := tint(o.color, black, 0.6)
	o.cap(-100)
	o.fill("M-58 78h116l6 20h-128z", o.body)
	o.fill("M-50-50h100v128h-100z", "#ffdf8e")
	o.raw(`<ellipse cy="36" rx="34" ry="42" fill="#fff6d8"/><path d="M0 2q13 22 0 38q-13-16 0-38z" fill="#ff9a2e"/><path d="M-10 40h20v38h-20z" fill="#f4ead2"/>`)
	o.fill("M-52-50h10v128h-10zM-5-50h8v128h-8zM42-50h10v128h-10z", dark)
	o.fill("M-62-48Q-30-62-22-98h44Q30-62 62-48z", o.body)
	o.fill("M-46-52Q-22-64-14-94h8Q-12-62-22-52z", "#ffffff80")
}

func (o ornament) drum() {
	const d = "M-78-58Q0-84 78-58V58Q0 90-78 58z"
	o.cap(-84)
	o.fill(d, o.body)
	o.fill("M40-70Q62-66 78-58V58Q62 70 40 76z", "#00000050")
	o.fill("M-62-62Q-50-66-38-69V72Q-52 70-62 65z", "#ffffff60")
	o.raw(`<path d="M-76-40L-38 66L0-52L38 66L76-40" fill="none" stroke="#f2e2b8" stroke-width="5"/>`)
	o.raw(`<ellipse cy="-60" rx="78" ry="20" fill="#efe6cf"/><path d="M-80-60Q0-30 80-60V-44Q0-12-80-44zM-80 44Q0 76 80 44V60Q0 94-80 60z" fill="`, tint(gold, black, 0.1).String(), `"/><path d="M-70-50Q-50-42-36-40M-70 54Q-50 64-36 66" stroke="#fff4cc" stroke-width="5" fill="none"/>`)
}

func (o ornament) heart() {
	const d = "M0 96C-60 50-96 10-92-38C-88-82-30-98 0-48C30-98 88-82 92-38C96 10 60 50 0 96z"
	o.cap(-50)
	o.fill(d, o.body)
	o.fill("M-76-30Q-72-66-40-68Q-56-52-56-14Q-72-8-76-30z", "#ffffffa0")
	o.gleam(d)
}

func (o ornament) bird() {
	o.fill("M28-10Q66 10 98 50L70 46L64 66Q20 60 6 30z", tint(o.color, black, 0.45))
	o.fill("M-98-28L-72-40Q-60-66-34-56Q-14-48-8-26Q44-30 56 4Q46 58-4 60Q-66 58-70-6Q-76-18-98-28z", o.body)
	o.fill("M-20-8Q30-20 66 26Q20 44-20-8z", tint(o.color, black, 0.3))
	o.raw(`<circle cx="-48" cy="-34" r="6" fill="#14100c"/><circle cx="-50" cy="-36" r="2" fill="#fff"/>`)
	o.fill("M-62 0Q-54 40-14 52Q-60 52-62 0z", "#ffffff50")
}

func (o ornament) locomotive() {
	dark := tint(o.color, black, 0.55)
	o.cap(-74)
	o.fill("M-92 42h190l-16 22h-160z", dark)
	o.fill("M-86-70h70v112h-70z", o.body)
	o.fill("M-94-76h86v12h-86z", dark)
	o.fill("M-72-50h40v36h-40z", "#ffe3a0")
	o.fill("M-16-28h88q14 34 0 70h-88z", o.body)
	o.fill("M38-28l-8-42h36l-8 42z", dark)
	o.fill("M-14-20h84q4 6 5 12h-89z", "#ffffff90")
	o.raw(`<g fill="`, dark.String(), `" stroke="#e9cf8a" stroke-width="6"><circle cx="-54" cy="58" r="28"/><circle cx="6" cy="64" r="22"/><circle cx="56" cy="64" r="22"/></g>`)
}

// pickDef writes a stem of berries and leaves, which points up.
func (v *view) pickDef(id string, s palette.Swatch) {
	o := ornament{&v.canvas, id, s.Color, s.Finish, "url(#" + id + "f)"}
	c := s.Color
	o.radial("f", stops(0, tint(c, white, 0.85), 0.2, tint(c, white, 0.25), 0.5, c, 1, tint(c, black, 0.65)))
	v.raw(`<g id="`, id, `"><g transform="translate(0 52)">`) // its place is its middle
	type spray struct{ turn, reach float64 }
	sprays := []spray{{-0.95, 72}, {-0.5, 92}, {-0.08, 100}, {0.38, 94}, {0.85, 76}}
	leaf := tint(metal(v.Palette), palette.Color{70, 96, 60}, 0.25)
	for i, s := range sprays {
		sin, cos := sincos(s.turn + 0.22)
		r := s.reach * 0.86
		x, y := r*sin, -r*cos
		o.fill(fmt.Sprintf("M0 0Q%s %s %s %sQ%s %s 0 0z", tenth(x*0.5-y*0.16), tenth(y*0.5+x*0.16), tenth(x), tenth(y), tenth(x*0.5+y*0.16), tenth(y*0.5-x*0.16)), tint(leaf, black, 0.15+0.1*float64(i%3)))
		o.stroke(fmt.Sprintf("M0 0L%s %s", tenth(x*0.94), tenth(y*0.94)), tint(leaf, white, 0.55), 2.4, ".8")
	}
	for i, s := range sprays {
		sin, cos := sincos(s.turn)
		o.stroke(fmt.Sprintf("M0 10Q%s %s %s %s", tenth(s.reach*0.3*sin), tenth(-s.reach*0.6*cos), tenth(s.reach*0.9*sin), tenth(-s.reach*0.9*cos)), "#4a3420", 4, "1")
		for k := range 4 {
			u := 0.42 + 0.18*float64(k)
			side := (float64(k%2)*2 - 1) * 10
			x, y := s.reach*u*sin*(0.4+0.6*u)+side*cos, -s.reach*u*cos+side*sin
			o.raw(`<circle cx="`, tenth(x), `" cy="`, tenth(y), `" r="`, tenth(9+2*chance(i, k)), `" fill="`, o.body, `"/>`)
		}
	}
	v.raw("</g></g>\n")
}
