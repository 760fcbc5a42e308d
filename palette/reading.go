package palette

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"
)

// A Reading says of every pair of swatches of a palette whether it holds apart, and
// for whom, and the same of every swatch and what it hangs on.
type Reading struct {
	Palette    Palette `json:"palette"`              // what was read
	On         Swatch  `json:"on,omitzero"`          // on which background; the zero value is on none
	Apart      float64 `json:"apart"`                // the difference from which two colors read as two, Rules.Apart
	Pairs      []Pair  `json:"pairs"`                // first and second, first and third, …, second and third, …
	Background []Pair  `json:"background,omitempty"` // each swatch and the background
}

// A Pair is two swatches of a palette side by side, or a swatch and the background.
type Pair struct {
	A Swatch `json:"a"` // the earlier in the palette
	B Swatch `json:"b"` // the later, or the background

	// Difference is ΔE00 between them.
	Difference ByView[float64] `json:"difference"`

	// Holds says whether that is enough to read as two colors.
	Holds ByView[bool] `json:"holds"`

	// Mend is how to part the pair where it does not hold in some view. It is the
	// zero value where there is nothing to mend or no way was found.
	Mend Mend `json:"mend,omitzero"`
}

// A Mend is a lighter or darker color for one swatch of a pair, with which the pair
// holds apart in every view: by lightness alone in those where it does not hold now.
type Mend struct {
	Swatch  Swatch  `json:"swatch"`  // the swatch to change, with its new color
	Was     Color   `json:"was"`     // its color now
	Lighter bool    `json:"lighter"` // whether the new color is the old one with white, not with black
	View    View    `json:"view"`    // the view in which the pair differs least now
	Now     float64 `json:"now"`     // the difference in lightness L* between the pair in that view
	Needed  float64 `json:"needed"`  // the same with the new color, always more
}

// Read measures every pair of swatches of the palette in every [View], and every swatch
// against what it hangs on: the greenery, a flocked tree, a wall. The background is no color of
// the palette; it gets no share and no mend. The zero value is no background. [ParseSwatch]
// knows three:
//
//	fir       #355e3b   NBS SP 440, block 137, evergreen
//	flocked   #dfede8   block 153, greenish white: an estimate
//	bare      #635147   block 61, grayish brown: an estimate
//
// Where a pair does not hold in some view, Read looks for a mend: one of the two made lighter, by
// mixing its sRGB with white, or darker, with black, in steps of 1/255, until the pair holds in all
// views and no other pair loses a view that it has. Lightness is what every kind of color
// vision keeps, so where the pair does not hold now lightness alone must part it: the
// term ΔL'/SL of [Color.Difference] is at least r.Apart, and ΔL* is more than now. Of the up to
// four ways it gives the one that changes the color least by daylight, the first swatch
// and the lighter color first where two are equal.
//
// Two colors nearer than Apart make no palette. To see them in every view, parse them with
// Apart 0 and read with the usual rules.
//
// It returns [units.ErrRange] if the palette has no swatches or more than r
// allows, or a rule is out of its range, and [units.ErrSyntax] or [units.ErrName] for a background
// that is no swatch.
//
// Sources: see [Color.Difference], [View.Lab] and [ParseColor].
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
	seen := p.sights(on)
	reading := Reading{Palette: p, On: on, Apart: r.Apart}
	read := func(i, j int, b Swatch) Pair {
		pair := Pair{A: p.swatch[i], B: b, Difference: seen[i].differences(&seen[j])}
		pair.Holds = r.holds(pair.Difference)
		if !all(pair.Holds) {
			pair.Mend = r.mend(&p, seen, i, j)
		}
		return pair
	}
	for i := range p.n {
		for j := i + 1; j < p.n; j++ {
			reading.Pairs = append(reading.Pairs, read(i, j, p.swatch[j]))
		}
		if len(seen) > p.n {
			reading.Background = append(reading.Background, read(i, p.n, on))
		}
	}
	return reading, nil
}

// sights returns how the swatches of p are seen, and after them the background if there is one.
func (p *Palette) sights(on Swatch) []sight {
	seen := make([]sight, p.n, p.n+1)
	for i, s := range p.swatch[:p.n] {
		seen[i] = see(s.Color)
	}
	if on != (Swatch{}) {
		seen = append(seen, see(on.Color))
	}
	return seen
}

// A sight is a color as it is seen, by View.
type sight ByView[point]

func see(c Color) (s sight) {
	for v := range s {
		s[v] = pointOf(View(v).lab(c))
	}
	return s
}

func (s *sight) differences(t *sight) (d ByView[float64]) {
	for v := range s {
		d[v] = difference(s[v], t[v], anyFar)
	}
	return d
}

func (r Rules) holds(d ByView[float64]) (holds ByView[bool]) {
	for v := range d {
		holds[v] = r.apart(d[v])
	}
	return holds
}

func all(holds ByView[bool]) bool {
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
func (r Rules) mend(p *Palette, seen []sight, i, j int) Mend {
	var best Mend
	least := math.Inf(1)
	var worst View
	now := seen[i].differences(&seen[j])
	for v := range now {
		if now[v] < now[worst] {
			worst = View(v)
		}
	}
	for _, change := range [2][2]int{{i, j}, {j, i}} {
		k, other := change[0], change[1]
		if k == p.n {
			continue // the background stays
		}
		was := p.swatch[k].Color
		for _, mix := range [2]func(Color, int) Color{Color.tint, Color.shade} {
			for t := 1; t <= 255; t++ {
				color := mix(was, t)
				if !r.byLightness(now, color, &seen[k], &seen[other]) {
					continue // which looks at a view or two, and rules out most
				}
				sees := see(color)
				if !r.parted(&sees, &seen[other]) || r.loses(seen, k, other, &sees) {
					continue
				}
				if change := difference(seen[k][Daylight], sees[Daylight], anyFar); change < least {
					least = change
					best = Mend{
						Swatch:  Swatch{p.swatch[k].Name, color, p.swatch[k].Finish},
						Was:     was,
						Lighter: sees[Daylight].l > seen[k][Daylight].l,
						View:    worst,
						Now:     math.Abs(seen[i][worst].l - seen[j][worst].l),
						Needed:  math.Abs(sees[worst].l - seen[other][worst].l),
					}
				}
				break
			}
		}
	}
	return best
}

// byLightness says whether lightness alone parts a color from other, and more of it than
// for the color seen as was, in every view in which those two, now apart, do not
// hold.
func (r Rules) byLightness(now ByView[float64], color Color, was, other *sight) bool {
	for v := range now {
		if r.apart(now[v]) {
			continue
		}
		sees := pointOf(View(v).lab(color))
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
		if !r.apart(difference(a[v], b[v], anyFar)) {
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
			if !r.apart(difference(sees[v], seen[m][v], anyFar)) && r.apart(difference(seen[k][v], seen[m][v], anyFar)) {
				return true
			}
		}
	}
	return false
}

// Holds says whether every pair holds apart in a view, those with the background too. It returns
// [units.ErrName] if it is not one of the views.
func (r Reading) Holds(view View) (bool, error) {
	if err := view.check("Reading.Holds"); err != nil {
		return false, err
	}
	return !slices.ContainsFunc(r.all(), func(p Pair) bool { return !p.Holds[view] }), nil
}

// all returns the pairs, and those with the background after them.
func (r Reading) all() []Pair { return slices.Concat(r.Pairs, r.Background) }

// String returns a table of the differences, one pair a line, cut to a tenth, a star
// behind those that do not hold; and then a few lines for each pair that does not hold
// somewhere: for whom, and what mends it. The zero Reading is "nothing was read".
func (r Reading) String() string {
	if r.Palette.n == 0 {
		return "nothing was read\n"
	}
	pairs := r.all()
	if len(pairs) == 0 {
		return r.Palette.String() + ": one color, nothing to tell apart\n"
	}
	width := len("pair")
	for i := range pairs {
		width = max(width, utf8.RuneCountInString(pairs[i].names(r.On)))
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
		line(p.names(r.On), func(v View) string {
			if !p.Holds[v] {
				return fmt.Sprintf("%7s*", cut(p.Difference[v], 1))
			}
			return fmt.Sprintf("%7s ", cut(p.Difference[v], 1))
		})
	}
	for i := range pairs {
		if !all(pairs[i].Holds) {
			b.WriteString("* " + pairs[i].advice(r) + "\n")
		}
	}
	return b.String()
}

// names returns the two as a table has them: "crimson, gold", "crimson on fir".
func (p *Pair) names(on Swatch) string {
	if p.B == on {
		return p.A.Name + " on " + p.B.Name
	}
	return p.A.Name + ", " + p.B.Name
}

// viewers are who looks, in the order of the views of one light.
var viewers = [...]string{"usual", "protan", "deutan", "tritan"}

// advice says for whom a pair is one color, and what would mend it.
func (p *Pair) advice(r Reading) string {
	var who []string
	redGreen, none := false, true
	for i, name := range viewers {
		day, warm := p.Holds[i], p.Holds[i+len(viewers)]
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
	if p.B == r.On {
		pair = p.names(r.On)
	}
	text := fmt.Sprintf("%s: one color, under %s, to %s", pair, formatFloat(r.Apart), strings.Join(who, " and "))
	if redGreen {
		text += "\n  (about one man in twelve has some red-green deficiency)"
	}
	if p.Mend == (Mend{}) {
		if p.B == r.On {
			return text + ";\n  no lighter or darker color of it parts them by lightness"
		}
		return text + ";\n  no lighter or darker color of either parts them by lightness"
	}
	how := "darker"
	if p.Mend.Lighter {
		how = "lighter"
	}
	return text + fmt.Sprintf(";\n  %s %s, %s for %s, mends it: a difference in lightness\n  of %s to %s, where it is %s now",
		how, p.Mend.Swatch.Name, p.Mend.Swatch.Color, p.Mend.Was, cut(p.Mend.Needed, 1), p.Mend.View.viewer(), cut(p.Mend.Now, 1))
}

// viewer says who looks and by what light: "deutan viewers by warm light".
func (v View) viewer() string {
	light := " viewers by daylight"
	if v >= WarmLight {
		light = " viewers by warm light"
	}
	return viewers[int(v)%len(viewers)] + light
}
