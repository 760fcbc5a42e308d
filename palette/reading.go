package palette

import (
	"fmt"
	"math"
	"strings"
)

// A Reading says of every pair of swatches of a palette whether it holds apart, and
// for whom.
type Reading struct {
	Palette Palette `json:"palette"` // what was read
	Apart   float64 `json:"apart"`   // the difference from which two colors read as two, Rules.Apart
	Pairs   []Pair  `json:"pairs"`   // first and second, first and third, …, second and third, …
}

// A Pair is two swatches of a palette side by side.
type Pair struct {
	A Swatch `json:"a"` // the earlier in the palette
	B Swatch `json:"b"` // the later

	// Difference is ΔE00 between them, by View.
	Difference [Tritan + 1]float64 `json:"difference"`

	// Holds says whether that is enough to read as two colors, by View.
	Holds [Tritan + 1]bool `json:"holds"`

	// Mend is how to part the pair where it does not hold in some view. It is the
	// zero value where there is nothing to mend or no way was found.
	Mend Mend `json:"mend"`
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

// Read measures every pair of swatches of the palette in every [View].
//
// Where a pair does not hold in some view (red and green do not for about one man in
// twelve), it looks for a mend: one of the two made lighter, by mixing its sRGB with
// white, or darker, with black, in steps of 1/255, until the pair holds in all views,
// and no other pair loses a view that it has. Lightness is what every kind of color
// vision keeps, so where the pair does not hold now lightness alone must part it: the
// term ΔL'/SL of [Color.Difference] is at least r.Apart, and ΔL* is more than now. Of the up to
// four ways it gives the one that changes the color least by daylight, the first swatch
// and the lighter color first where two are equal, and says how far apart in lightness
// the two are then and now, to the viewer for whom they are closest now.
//
// Two colors nearer than Apart make no palette, and the error of [Rules.Palette] says
// how near. To see them in every view, parse them with Apart 0 and read with the usual
// rules.
//
// It returns an [units.Error] wrapping [units.ErrRange] if the palette has no swatches or more than r
// allows, or a rule is out of its range.
//
// Sources: see [Color.Difference] and [View.Lab]; one man in twelve: J. Birch, "Worldwide
// prevalence of red-green color deficiency", J. Opt. Soc. Am. A 29(3), 2012, 313-320
// (about 8 % of men and 0.4 % of women of European descent, fewer elsewhere).
func (r Rules) Read(palette Palette) (Reading, error) {
	p := palette
	if err := r.checkPalette("Rules.Read", p); err != nil {
		return Reading{}, err
	}
	seen := make([]sight, p.n)
	for i, s := range p.swatch[:p.n] {
		seen[i] = see(s.Color)
	}
	reading := Reading{Palette: p, Apart: r.Apart}
	for i, a := range p.swatch[:p.n] {
		for j := i + 1; j < p.n; j++ {
			pair := Pair{A: a, B: p.swatch[j]}
			pair.Difference = seen[i].differences(&seen[j])
			pair.Holds = r.holds(pair.Difference)
			if !all(pair.Holds) {
				pair.Mend = r.mend(&p, seen, i, j)
			}
			reading.Pairs = append(reading.Pairs, pair)
		}
	}
	return reading, nil
}

// A sight is a color as it is seen, by View.
type sight [Tritan + 1]point

func see(c Color) (s sight) {
	for v := range s {
		s[v] = pointOf(View(v).lab(c))
	}
	return s
}

func (s *sight) differences(t *sight) (d [Tritan + 1]float64) {
	for v := range s {
		d[v] = difference(s[v], t[v], anyFar)
	}
	return d
}

func (r Rules) holds(d [Tritan + 1]float64) (holds [Tritan + 1]bool) {
	for v := range d {
		holds[v] = r.apart(d[v])
	}
	return holds
}

func all(holds [Tritan + 1]bool) bool { return holds == [Tritan + 1]bool{true, true, true, true, true} }

// mend looks for a color for swatch i or j of p with which the two hold apart in all
// views, by lightness alone in those where they did not, and no other pair loses one.
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
		was := p.swatch[k].Color
		for _, mix := range [2]func(Color, int) Color{Color.tint, Color.shade} {
			for t := 1; t <= 255; t++ {
				color := mix(was, t)
				sees := see(color)
				d := sees.differences(&seen[other])
				if !all(r.holds(d)) || !r.byLightness(now, &seen[k], &sees, &seen[other]) || r.loses(seen, k, other, &sees) {
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

// byLightness says whether lightness alone parts a color seen as sees from other, and
// more of it than for the color seen as was, in every view in which those two, now
// apart, do not hold.
func (r Rules) byLightness(now [Tritan + 1]float64, was, sees, other *sight) bool {
	for v := range now {
		if r.apart(now[v]) {
			continue
		}
		more := math.Abs(sees[v].l-other[v].l) > math.Abs(was[v].l-other[v].l)
		if !more || !r.apart(math.Sqrt(lightnessTerm(sees[v], other[v]))) {
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
		was := r.holds(seen[k].differences(&seen[m]))
		now := r.holds(sees.differences(&seen[m]))
		for v := range was {
			if was[v] && !now[v] {
				return true
			}
		}
	}
	return false
}

// Holds says whether every pair holds apart in a view. It returns an [units.Error] wrapping
// [units.ErrName] if it is not one of the views.
func (r Reading) Holds(view View) (bool, error) {
	if err := view.check("Reading.Holds"); err != nil {
		return false, err
	}
	for i := range r.Pairs {
		if !r.Pairs[i].Holds[view] {
			return false, nil
		}
	}
	return true, nil
}

// String returns a table of the differences, one pair a line, cut to a tenth, a star
// behind those that do not hold, and then a few lines for each pair that does not hold
// somewhere: for whom, and what mends it. The zero Reading, which comes with an error,
// is "nothing was read".
func (r Reading) String() string {
	if r.Palette.n == 0 {
		return "nothing was read\n"
	}
	if len(r.Pairs) == 0 {
		return r.Palette.String() + ": one color, nothing to tell apart\n"
	}
	var t table
	heads := []string{"pair"}
	for v := Daylight; v <= Tritan; v++ {
		heads = append(heads, v.String()+" ")
	}
	t.row(heads...)
	for _, p := range r.Pairs {
		cells := []string{p.A.Name + ", " + p.B.Name}
		for v, d := range p.Difference {
			mark := " "
			if !p.Holds[v] {
				mark = "*"
			}
			cells = append(cells, cut(d, 1)+mark)
		}
		t.row(cells...)
	}
	var b strings.Builder
	b.WriteString(t.String())
	for _, p := range r.Pairs {
		if !all(p.Holds) {
			b.WriteString("* " + p.advice(r.Apart) + "\n")
		}
	}
	return b.String()
}

// advice says for whom a pair is one color, and what would mend it.
func (p Pair) advice(apart float64) string {
	var who []string
	redGreen := false
	for i, holds := range p.Holds {
		v := View(i)
		switch {
		case holds:
		case v <= WarmLight:
			who = append(who, "everybody in "+v.String())
		default:
			who = append(who, v.String()+" viewers")
			redGreen = redGreen || v != Tritan
		}
	}
	if len(who) == len(p.Holds) {
		who, redGreen = []string{"everybody, in every view"}, false
	}
	text := fmt.Sprintf("%s and %s: one color, under %s, to %s", p.A.Name, p.B.Name, formatFloat(apart), strings.Join(who, " and "))
	if redGreen {
		text += "\n  (about one man in twelve has some red-green deficiency)"
	}
	if p.Mend == (Mend{}) {
		return text + ";\n  no lighter or darker color of either parts them by lightness"
	}
	how := "darker"
	if p.Mend.Lighter {
		how = "lighter"
	}
	return text + fmt.Sprintf(";\n  %s %s, %s for %s, mends it: a difference in lightness\n  of %s in %s, where it is %s now",
		how, p.Mend.Swatch.Name, p.Mend.Swatch.Color, p.Mend.Was, cut(p.Mend.Needed, 1), view(p.Mend.View), cut(p.Mend.Now, 1))
}

// view says in whose eyes: "daylight", "the eyes of deutan viewers".
func view(v View) string {
	if v <= WarmLight {
		return v.String()
	}
	return "the eyes of " + v.String() + " viewers"
}
