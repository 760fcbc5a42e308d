package palette

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"
)

// A Reading says how different the swatches of a palette are from each other, and from
// the background, in every view.
type Reading struct {
	Palette Palette `json:"palette"` // what was read
	Apart   float64 `json:"apart"`   // Rules.Apart
	Pairs   []Pair  `json:"pairs"`   // first and second, first and third, ..., second and third, ...; then each swatch and the background
}

// A Pair is two swatches side by side, or a swatch on a background.
type Pair struct {
	A Swatch `json:"a"` // the earlier in the palette
	B Swatch `json:"b"` // the later, or the background

	Difference map[View]float64 `json:"difference"` // ΔE00 between them in every view

	// Mend is A or B, lighter or darker, so that the pair holds in every view. The zero
	// value is none: not needed, or not found.
	Mend Swatch `json:"mend,omitzero"`
}

// String returns the least difference, rounded down to a tenth, and the mend if there is one.
func (p Pair) String() string {
	if len(p.Difference) == 0 {
		return "no pair"
	}
	v := p.worst()
	text := fmt.Sprintf("%s and %s: %s apart at least, for %s", p.A.Name, p.B.Name, cut(p.Difference[v], 1), v.viewer())
	if p.Mend != (Swatch{}) {
		text += "; " + p.Mend.String() + " mends it"
	}
	return text
}

// worst returns the view in which the two are least unlike, the earliest of several.
func (p *Pair) worst() View {
	return p.differences().worst()
}

func (p *Pair) differences() (d differences) {
	for v := range views {
		d[v] = p.Difference[v]
	}
	return d
}

// mended returns the color that Mend stands for, and the one beside it.
func (p *Pair) mended() (was, other Color) {
	if p.Mend.Name == p.A.Name {
		return p.A.Color, p.B.Color
	}
	return p.B.Color, p.A.Color
}

// Read measures every pair of swatches in every [View], and every swatch against the
// background. The zero Swatch means no background. [ParseSwatch] knows three:
//
//	fir       #355e3b   NBS SP 440, block 137, evergreen: an estimate
//	flocked   #dfede8   block 153, greenish white: an estimate
//	bare      #635147   block 61, grayish brown: an estimate
//
// For a pair that does not hold in some view, Read looks for a mend: one of the two mixed with
// white or black in sRGB, in steps of 1/255, until the pair holds in all views and every other
// pair keeps those it had. In each view where the pair fails now, lightness alone must part it:
// ΔL'/SL of [Color.Difference] is at least r.Apart, and ΔL* is more than now. Of up to four ways it
// takes the one that changes the color least by daylight; of two equal ones the first swatch, then the
// lighter color. The background is never changed.
//
// To see two colors that are too near for a palette, parse them with Apart 0 and read them with the
// usual rules.
func (r Rules) Read(palette Palette, on Swatch) (Reading, error) {
	const fn = "Rules.Read"
	p := palette
	if err := r.checkPalette(fn, "", p); err != nil {
		return Reading{}, err
	}
	if on != (Swatch{}) {
		if err := on.check(fn, "/on/name", "/on/finish"); err != nil {
			return Reading{}, err
		}
	}
	var room [maxSwatches + 1]sight
	seen := p.sights(room[:0], on)
	pairs, at := len(seen)*(len(seen)-1)/2, 0
	reading := Reading{Palette: slices.Clone(p), Apart: r.Apart, Pairs: slices.Grow([]Pair(nil), pairs)[:pairs]}
	read := func(i, j int, b Swatch) {
		d := seen[i].differences(&seen[j])
		pair := Pair{A: p[i], B: b, Difference: d.byView()}
		if !all(r.holds(d)) {
			pair.Mend = r.mend(p, seen, i, j)
		}
		reading.Pairs[at] = pair
		at++
	}
	for i := range p {
		for j := i + 1; j < len(p); j++ {
			read(i, j, p[j])
		}
	}
	if len(seen) > len(p) {
		for i := range p {
			read(i, len(p), on)
		}
	}
	return reading, nil
}

// sights appends to a list how the swatches of p are seen, and after them the background if there is one.
func (p Palette) sights(seen []sight, on Swatch) []sight {
	for _, s := range p {
		seen = append(seen, see(s.Color))
	}
	if on != (Swatch{}) {
		seen = append(seen, see(on.Color))
	}
	return seen
}

// A sight is a color as it is seen, by View.
type sight [views]point

func see(c Color) (s sight) {
	for v := range s {
		s[v] = pointOf(View(v).lab(c))
	}
	return s
}

// differences are how unlike two colors are, by View.
type differences [views]float64

func (s *sight) differences(t *sight) (d differences) {
	for v := range s {
		d[v] = difference(s[v], t[v], anyFar)
	}
	return d
}

// worst returns the view of the least difference, the earliest of several.
func (d differences) worst() (worst View) {
	for v := range views {
		if d[v] < d[worst] {
			worst = v
		}
	}
	return worst
}

func (d differences) byView() map[View]float64 {
	m := make(map[View]float64, views)
	for v := range views {
		m[v] = d[v]
	}
	return m
}

func (r Rules) holds(d differences) (holds [views]bool) {
	for v := range d {
		holds[v] = r.apart(d[v])
	}
	return holds
}

func all(holds [views]bool) bool {
	for _, h := range holds {
		if !h {
			return false
		}
	}
	return true
}

// mend looks for a color for one of the swatches in change with which the pair i, j of what is
// seen holds apart in all views, by lightness alone in those where it did not, and no
// other pair loses one. What is seen are the swatches of p, and perhaps the background after them.
func (r Rules) mend(p Palette, seen []sight, i, j int) Swatch {
	var best Swatch
	least := math.Inf(1)
	now := seen[i].differences(&seen[j])
	for _, change := range [2][2]int{{i, j}, {j, i}} {
		k, other := change[0], change[1]
		if k == len(p) {
			continue // the background stays
		}
		nearer := between(&seen[k], &seen[other])
		for _, mix := range [2]func(Color, int) Color{Color.tint, Color.shade} {
			for t := 1; t <= 255; t++ {
				color := mix(p[k].Color, t)
				if !r.byLightness(now, color, &seen[k], &seen[other], &nearer) {
					continue // which looks at a view or two, and rules out most
				}
				sees := see(color)
				if !r.parted(&sees, &seen[other]) || r.loses(seen, k, other, &sees) {
					continue
				}
				if change := difference(seen[k][Daylight], sees[Daylight], anyFar); change < least {
					least = change
					best = Swatch{p[k].Name, color, p[k].Finish}
				}
				break
			}
		}
	}
	return best
}

// between returns for each view the luminances at which a color is surely no farther from other, by
// lightness, than was. They leave out a billionth of L* at both ends.
func between(was, other *sight) (nearer [views][2]float64) {
	luminance := func(l float64) float64 { // the inverse of the L* of toLab
		if f := (l + 16) / 116; f > 6.0/29 {
			return float64(f * f * f)
		}
		return l * 27 / 24389
	}
	for v := range nearer {
		d := math.Abs(was[v].l-other[v].l) - 1e-9
		nearer[v] = [2]float64{luminance(other[v].l - d), luminance(other[v].l + d)}
	}
	return nearer
}

// byLightness says whether lightness alone parts a color from other, and more of it than
// for the color seen as was, in every view in which those two, now apart, do not
// hold. What is nearer by its luminance does not.
func (r Rules) byLightness(now differences, color Color, was, other *sight, nearer *[views][2]float64) bool {
	for v := range now {
		if r.apart(now[v]) {
			continue
		}
		y := View(v).stimulus(color)[1]
		if y > nearer[v][0] && y < nearer[v][1] {
			return false
		}
		sees := point{l: float64(116*labCurve(y)) - 16} // the L* of toLab alone
		more := math.Abs(sees.l-other[v].l) > math.Abs(was[v].l-other[v].l)
		if !more || !r.apart(math.Sqrt(lightnessTerm(sees, other[v]))) {
			return false
		}
	}
	return true
}

// parted says whether two colors hold apart in every view.
func (r Rules) parted(a, b *sight) bool {
	for v := range a {
		if !r.apart(difference(a[v], b[v], r.Apart)) {
			return false
		}
	}
	return true
}

// loses says whether, with swatch k seen as sees, it no longer holds apart from
// one of the swatches beside other in a view in which it does now.
func (r Rules) loses(seen []sight, k, other int, sees *sight) bool {
	for m := range seen {
		if m == k || m == other {
			continue
		}
		for v := range sees {
			if !r.apart(difference(sees[v], seen[m][v], r.Apart)) && r.apart(difference(seen[k][v], seen[m][v], r.Apart)) {
				return true
			}
		}
	}
	return false
}

// Holds reports whether every pair holds apart in a view.
func (r Reading) Holds(view View) (bool, error) {
	if err := view.check("Reading.Holds"); err != nil {
		return false, err
	}
	return !slices.ContainsFunc(r.Pairs, func(p Pair) bool { return !r.holds(p.Difference[view]) }), nil
}

// holds says whether two colors that differ by d read as two.
func (r Reading) holds(d float64) bool { return Rules{Apart: r.Apart}.apart(d) }

// on says whether pair i is a swatch on the background: those come after the pairs of swatches.
func (r Reading) on(i int) bool { return i >= len(r.Palette)*(len(r.Palette)-1)/2 }

// String returns a table of the differences, rounded down to a tenth, with a star behind those
// under Apart, and for each such pair who is affected and a mend.
func (r Reading) String() string {
	if len(r.Palette) == 0 {
		return "nothing was read\n"
	}
	pairs := r.Pairs
	if len(pairs) == 0 {
		return r.Palette.String() + ": one color, nothing to tell apart\n"
	}
	width := len("pair")
	for i := range pairs {
		width = max(width, utf8.RuneCountInString(pairs[i].names(r.on(i))))
	}
	var b strings.Builder
	line := func(name string, cells func(View) string) {
		text := name + strings.Repeat(" ", width-utf8.RuneCountInString(name))
		for v := range views {
			if v == WarmLight {
				text += "  "
			}
			text += cells(v)
		}
		b.WriteString(strings.TrimRight(text, " ") + "\n")
	}
	half := 8 * int(WarmLight)
	fmt.Fprintf(&b, "%-*s  %-*s  by warm light\n", width, "pair", half, "by daylight")
	line("", func(v View) string { return fmt.Sprintf("%7s ", viewers[v%WarmLight]) })
	for i := range pairs {
		p := &pairs[i]
		line(p.names(r.on(i)), func(v View) string {
			if !r.holds(p.Difference[v]) {
				return fmt.Sprintf("%7s*", cut(p.Difference[v], 1))
			}
			return fmt.Sprintf("%7s ", cut(p.Difference[v], 1))
		})
	}
	for i := range pairs {
		if !all(Rules{Apart: r.Apart}.holds(pairs[i].differences())) {
			b.WriteString("* " + r.advice(i) + "\n")
		}
	}
	return b.String()
}

// names returns the two as a table has them: "crimson, gold", or on a background "crimson on fir".
func (p *Pair) names(on bool) string {
	if on {
		return p.A.Name + " on " + p.B.Name
	}
	return p.A.Name + ", " + p.B.Name
}

// viewers are who looks, in the order of the views of one light.
var viewers = [...]string{"usual", "protan", "deutan", "tritan"}

// advice says for whom pair i is one color, and what would mend it.
func (r Reading) advice(i int) string {
	p, on := &r.Pairs[i], r.on(i)
	holds := Rules{Apart: r.Apart}.holds(p.differences())
	var who []string
	redGreen, none := false, true
	for i, name := range viewers {
		day, warm := holds[i], holds[i+len(viewers)]
		switch {
		case day && warm:
			none = false
			continue
		case day:
			name += " viewers by warm light"
		case warm:
			name += " viewers by daylight"
		default:
			name += " viewers"
		}
		none = none && !day && !warm
		who = append(who, name)
		redGreen = redGreen || i == int(Protan) || i == int(Deutan)
	}
	if none {
		who, redGreen = []string{"everybody, in every view"}, false
	}
	pair := p.A.Name + " and " + p.B.Name
	if on {
		pair = p.names(on)
	}
	text := fmt.Sprintf("%s: one color, under %s, to %s", pair, formatFloat(r.Apart), strings.Join(who, " and "))
	if redGreen {
		text += "\n  (about one man in twelve has some red-green deficiency)"
	}
	if p.Mend == (Swatch{}) {
		if on {
			return text + ";\n  no lighter or darker color of it parts them by lightness"
		}
		return text + ";\n  no lighter or darker color of either parts them by lightness"
	}
	was, other := p.mended()
	v := p.worst()
	before, after, beside := v.lab(was).L, v.lab(p.Mend.Color).L, v.lab(other).L
	how := "darker"
	if Daylight.lab(p.Mend.Color).L > Daylight.lab(was).L {
		how = "lighter"
	}
	return text + fmt.Sprintf(";\n  %s %s, %s for %s, mends it: a difference in lightness\n  of %s to %s, where it is %s now",
		how, p.Mend.Name, p.Mend.Color, was, cut(math.Abs(after-beside), 1), v.viewer(), cut(math.Abs(before-beside), 1))
}

// viewer says who looks and by what light: "deutan viewers by warm light".
func (v View) viewer() string {
	light := " viewers by daylight"
	if v >= WarmLight {
		light = " viewers by warm light"
	}
	return viewers[int(v)%len(viewers)] + light
}
