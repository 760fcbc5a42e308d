package draw

import (
	"math"
	"strconv"
	"strings"
)

// chance returns a number from 0 to below 1 that is the same whenever its arguments are:
// a picture has to come out alike on every machine.
func chance(seeds ...int) float64 {
	h := uint64(14695981039346656037)
	for _, s := range seeds {
		h = (h ^ uint64(uint32(s))) * 1099511628211
		h ^= h >> 29
		h *= 0xbf58476d1ce4e5b9
		h ^= h >> 32
	}
	return float64(h>>11) / (1 << 53)
}

// A bough is drawn once and used hundreds of times. It points along x, from 0 to about
// 100, and hangs toward y.
type bough struct{ shade, twigs, mid, dark, light string }

// fir makes a bough. The wider its spread, the more it looks like one that points at
// the viewer.
func fir(seed int, spread float64) bough {
	var b struct{ shade, twigs, mid, dark, light strings.Builder }
	n := 0
	toss := func() float64 { n++; return chance(seed, n) }
	whole := func(x float64) string { return strconv.Itoa(int(math.Round(x))) }
	pair := func(x, y float64) string {
		s := whole(y)
		if s[0] == '-' {
			return whole(x) + s
		}
		return whole(x) + " " + s
	}
	// needles grow on both sides of a twig from p, in a direction, so long.
	needles := func(x, y, turn, length, bend float64, main bool) {
		const step = 2.7
		b.shade.WriteString("M" + pair(x, y))
		b.twigs.WriteString("M" + pair(x, y))
		for s := 0.0; s < length; s += step {
			u := s / length
			sin, cos := sincos(turn + bend*u)
			x, y = x+step*cos, y+step*sin
			for _, side := range []float64{-1, 1} {
				if main && s < 9 {
					continue
				}
				lean := side * (0.85 - 0.45*u + 0.35*(toss()-0.5))
				sin, cos := sincos(turn + bend*u + lean)
				l := (9.5 - 3*u) * (0.75 + 0.5*toss())
				d := "M" + pair(x, y) + "l" + pair(l*cos, l*sin)
				switch k := toss(); {
				case k < 0.16 || side > 0 && k < 0.42:
					b.dark.WriteString(d)
				case k > 0.82 || side < 0 && k > 0.58:
					b.light.WriteString(d)
				default:
					b.mid.WriteString(d)
				}
			}
		}
		b.shade.WriteString("L" + pair(x, y))
		b.twigs.WriteString("L" + pair(x, y))
	}
	needles(0, 0, 0.12, 94, -0.3, true)
	side := 1.0
	for u := 0.14; u < 0.86; u += 0.1 {
		// The stem bends by 0.3 on the way, so it is near y = 12 u - 15 u².
		x, y := 94*u, 11.5*u-14*u*u
		turn := 0.12 - 0.3*u + side*(spread+0.25*(toss()-0.5))
		needles(x, y, turn, (15+34*(1-u))*(0.8+0.4*toss()), -side*0.3, false)
		side = -side
	}
	return bough{b.shade.String(), b.twigs.String(), b.mid.String(), b.dark.String(), b.light.String()}
}

// The greens of a bough from the depth of the tree out to the tips.
var greens = []string{"#03110b", "#071b12", "#0c281a", "#123724", "#19472d", "#225937", "#2f6d42", "#41824e", "#57975c"}

const (
	fromSide  = 4 // kinds of bough that point to a side
	fromFront = 3 // kinds that point at the viewer
)

// boughDefs writes the boughs to use.
func (c *canvas) boughDefs() {
	for i := range fromSide + fromFront {
		spread := 0.7
		if i >= fromSide {
			spread = 0.95
		}
		b := fir(i+11, spread)
		// Deep in the tree there is no light on the needles.
		c.raw(`<g id="`, c.id("d", i), `"><path d="`, b.mid, b.dark, b.light, `"/></g>`, "\n")
		c.raw(`<g id="`, c.id("e", i), `"><path stroke="#2c2417" stroke-width="2.4" d="`, b.twigs, `"/>`,
			`<path d="`, b.mid, b.dark, b.light, `"/>`,
			`<path stroke="#031009" stroke-opacity=".5" d="`, b.dark, `"/>`,
			`<path stroke="#dff0b4" stroke-opacity=".27" d="`, b.light, `"/></g>`, "\n")
		// One that has others behind it shades them.
		c.raw(`<g id="`, c.id("b", i), `"><path stroke="#020a06" stroke-opacity=".45" stroke-width="17" d="`, b.shade, `"/><use href="#`, c.id("e", i), `"/></g>`, "\n")
	}
}

// A frond is one use of a bough.
type frond struct {
	tip    point   // where it ends
	dx, dy float64 // which way it points, of length one
	length float64
	width  float64 // as a share of what it would have at that length
	tone   float64 // 0, in the depth, to 1
	deep   bool    // where no light falls
	edge   bool    // with nothing behind it
	seed   int
}

// frond draws a bough that ends at its tip.
func (c *canvas) frond(f frond) {
	kinds, first := fromSide, 0
	if math.Abs(f.dx) < 0.62 {
		kinds, first = fromFront, fromSide
	}
	name := "b"
	switch {
	case f.deep:
		name = "d"
	case f.edge:
		name = "e"
	}
	i := first + int(chance(f.seed, 5)*float64(kinds))
	s := f.length / 100
	// What hangs hangs down on both sides of the tree.
	ux, uy := -f.dy, f.dx
	if uy < 0 || math.Abs(f.dx) < 0.3 && chance(f.seed, 6) < 0.5 {
		ux, uy = -ux, -uy
	}
	shade := min(max(int(f.tone*float64(len(greens))), 0), len(greens)-1)
	c.raw(`<use href="#`, c.id(name, i), `" stroke="`, greens[shade], `" transform="matrix(`,
		three(s*f.dx), " ", three(s*f.dy), " ", three(s*f.width*ux), " ", three(s*f.width*uy), " ",
		tenth(f.tip.x-f.dx*f.length), " ", tenth(f.tip.y-f.dy*f.length), `)"/>`, "\n")
}

// tenth prints x to a tenth.
func tenth(x float64) string {
	return strconv.FormatFloat(math.Round(x*10)/10+0, 'f', -1, 64)
}
