package palette

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/fircone/units"
)

// A Suggestion is one more swatch for a palette.
type Suggestion struct {
	Swatch  Swatch  `json:"swatch"`  // what to add, matte
	Palette Palette `json:"palette"` // the palette with it added at the end
	Least   float64 `json:"least"`   // the least difference ΔE00 to a swatch of the palette in any view
	Nearest Swatch  `json:"nearest"` // the swatch at which it is that
	View    View    `json:"view"`    // the view in which it is that
	Holds   bool    `json:"holds"`   // whether it holds apart from every swatch in every view
}

// maxSuggestions is the most suggestions.
const maxSuggestions = 8

// Suggest returns up to eight swatches, the best first, any one of which p can take in
// as its next color. Asked again with the palette of a suggestion, it completes a
// palette step by step.
//
// The candidates are the CSS colors that by daylight are at least r.Apart from every
// swatch of p. The better of two candidates is the one whose least difference, over all
// swatches of p and all views, is the greater: the one that most surely reads as a
// color of its own for everybody, by day and by tree light; between equals the
// earlier name. From that order the best eight are taken. Each must also hold apart by
// daylight from those before it, so that no two say the same.
//
// It is a measure of clearness and not of taste.
//
// It returns an [units.Error] wrapping [units.ErrRange] if p has no swatches or as many as r
// allows, or a rule is out of its range.
func (r Rules) Suggest(palette Palette) ([]Suggestion, error) {
	const fn = "Rules.Suggest"
	p := palette
	if err := r.checkPalette(fn, p); err != nil {
		return nil, err
	}
	if p.n == r.Limit {
		return nil, refuse(fn, "palette", p.String(), fmt.Sprintf("under %d swatches, to have room for one more", r.Limit), units.ErrRange)
	}

	seen := make([]sight, p.n)
	for i, s := range p.swatch[:p.n] {
		seen[i] = see(s.Color)
	}

	var candidates []Suggestion
	for i, css := range cssColors {
		if css.color.Name() != css.name || p.names(css.name) {
			continue // another name of a color that was there before, or one taken
		}
		s := Suggestion{Swatch: Swatch{Name: cssColors[i].name, Color: css.color}, Holds: true}
		sees := see(css.color)
		fits := true
		for j := range seen {
			d := seen[j].differences(&sees)
			fits = fits && r.apart(d[Daylight])
			s.Holds = s.Holds && all(r.holds(d))
			for v := range d {
				if j == 0 && v == 0 || d[v] < s.Least {
					s.Least, s.Nearest, s.View = d[v], p.swatch[j], View(v)
				}
			}
		}
		if fits {
			s.Palette = p
			s.Palette.swatch[p.n] = s.Swatch
			s.Palette.n++
			candidates = append(candidates, s)
		}
	}
	slices.SortStableFunc(candidates, func(a, b Suggestion) int { return cmp.Compare(b.Least, a.Least) })

	var chosen []Suggestion
	for _, c := range candidates {
		if len(chosen) == maxSuggestions {
			break
		}
		same := func(s Suggestion) bool { return !r.apart(s.Swatch.Color.Difference(c.Swatch.Color)) }
		if slices.ContainsFunc(chosen, same) {
			continue
		}
		chosen = append(chosen, c)
	}
	return chosen, nil
}

// names says whether a swatch of p has this name.
func (p *Palette) names(name string) bool {
	return slices.ContainsFunc(p.swatch[:p.n], func(s Swatch) bool { return strings.EqualFold(s.Name, name) })
}

// String returns s in a line:
//
//	navy #000080: at least 27.3 from every color for everybody (deutan, from forestgreen)
//
// with the difference cut to a tenth.
func (s Suggestion) String() string {
	text := fmt.Sprintf("%s %s: ", s.Swatch.Name, s.Swatch.Color)
	if s.Holds {
		return text + fmt.Sprintf("at least %s from every color for everybody (least in %s, from %s)", cut(s.Least, 1), s.View, s.Nearest.Name)
	}
	return text + fmt.Sprintf("only %s from %s in %s", cut(s.Least, 1), s.Nearest.Name, s.View)
}
