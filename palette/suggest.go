package palette

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// A Suggestion is one more swatch for a palette.
type Suggestion struct {
	Swatch  Swatch `json:"swatch"`  // what to add
	Why     string `json:"why"`     // where it comes from: "on the shelf"
	Nearest Pair   `json:"nearest"` // B is the swatch, and A the color, or background, that it is nearest to in any view
}

// The most that Suggest takes and gives.
const (
	maxShelf   = 1000 // colors on the shelf
	maxOfGroup = 3    // neutrals, metals and greens, of each
)

// groups are what Suggest lists beside the shelf. It is only read.
var groups = [...]struct {
	why      string
	swatches []string
}{
	{"a neutral: goes with any color", []string{"white", "ivory", "natural", "silver", "black"}},
	{"a metal: it takes up the lights", []string{"gold:metal", "silver:metal", "copper:metal", "rose gold:metal", "champagne:metal", "bronze:metal"}},
	{"a green: beside the tree's own", []string{"darkgreen", "evergreen", "sage green", "mint", "olive"}},
}

// Suggest returns swatches that can each join a palette under r.Limit: first those of the shelf,
// up to 1000 colors that the caller has or can buy, then up to three neutrals, three metals and
// three greens (common practice). The background is as in [Rules.Read].
//
// Each is by daylight at least r.Apart from every swatch, the background and the suggestions
// before it. Each group is sorted by its worst view, clearest first. That measures clearness;
// taste is the caller's.
func (r Rules) Suggest(palette Palette, on Swatch, shelf []Swatch) ([]Suggestion, error) {
	const fn = "Rules.Suggest"
	if err := r.checkPalette(fn, "", palette); err != nil {
		return nil, err
	}
	if len(palette) == r.Limit {
		return nil, refuse(fn, "palette", palette.String(), fmt.Sprintf("under %d swatches, to have room for one more", r.Limit), units.ErrRange)
	}
	if on != (Swatch{}) {
		if err := on.check(fn, "/on/name", "/on/finish"); err != nil {
			return nil, err
		}
	}
	if len(shelf) > maxShelf {
		return nil, rangeError(fn, "shelf", len(shelf), fmt.Sprint("at most ", maxShelf, " colors"))
	}
	for i, s := range shelf {
		at := "/shelf/" + strconv.Itoa(i)
		if err := s.check(fn, at+"/name", at+"/finish"); err != nil {
			return nil, err
		}
	}
	seen := palette.sights(nil, on)
	chosen := r.clearest(nil, maxShelf, palette, on, seen, "on the shelf", shelf)
	for _, g := range groups {
		list := make([]Swatch, len(g.swatches))
		for i, text := range g.swatches {
			list[i], _ = parseSwatch(fn, text)
		}
		chosen = r.clearest(chosen, maxOfGroup, palette, on, seen, g.why, list)
	}
	return chosen, nil
}

// clearest appends up to most suggestions out of a list to those chosen before.
func (r Rules) clearest(chosen []Suggestion, most int, p Palette, on Swatch, seen []sight, why string, list []Swatch) []Suggestion {
	type candidate struct {
		Suggestion
		least float64
	}
	var candidates []candidate
	for _, swatch := range list {
		c := candidate{Suggestion{Swatch: swatch, Why: why}, math.Inf(1)}
		sees := see(swatch.Color)
		fits := !p.names(swatch.Name)
		for j := range seen {
			d := seen[j].differences(&sees)
			fits = fits && r.apart(d[Daylight])
			if least := d[d.worst()]; least < c.least {
				c.least = least
				c.Nearest = Pair{A: on, B: swatch, Difference: d.byView()}
				if j < len(p) {
					c.Nearest.A = p[j]
				}
			}
		}
		if fits {
			candidates = append(candidates, c)
		}
	}
	slices.SortStableFunc(candidates, func(a, b candidate) int { return cmp.Compare(b.least, a.least) })
	for _, c := range candidates {
		same := func(s Suggestion) bool { return !r.apart(s.Swatch.Color.Difference(c.Swatch.Color)) }
		if most > 0 && !slices.ContainsFunc(chosen, same) {
			chosen = append(chosen, c.Suggestion)
			most--
		}
	}
	return chosen
}

// names says whether a swatch of p has this name.
func (p Palette) names(name string) bool {
	return slices.ContainsFunc(p, func(s Swatch) bool { return strings.EqualFold(s.Name, name) })
}

// String returns a line such as "navy #000080, on the shelf; at least 27.3 from every color in every
// view ...", rounded down to a tenth.
func (s Suggestion) String() string {
	if len(s.Nearest.Difference) == 0 {
		return "no suggestion"
	}
	v := s.Nearest.worst()
	return fmt.Sprintf("%s %s, %s; at least %s from every color in every view (least for %s, from %s)",
		s.Swatch.Name, s.Swatch.Color, s.Why, cut(s.Nearest.Difference[v], 1), v.viewer(), s.Nearest.A.Name)
}
