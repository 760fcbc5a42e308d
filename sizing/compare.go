package sizing

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Comparison sets what the rules of thumb ask for on a tree against what it takes to match
// a look. [Rules.Compare] makes it.
type Comparison struct {
	Tree  Tree  `json:"tree"`  // the tree as given
	Rules Rules `json:"rules"` // what Rule was counted by
	Look  Look  `json:"look"`  // what is matched

	// Amounts of each kind, pieces or a length: each accent as if alone.
	Rule    shopping.ByKind[shopping.Quantity] `json:"rule"`    // by rule
	Shape   shopping.ByKind[shopping.Quantity] `json:"shape"`   // by shape, to match Look
	ByShape bool                               `json:"byShape"` // go by Shape, not by Rule; you may set it

	// RuleLook is how the tree looks if dressed by rule. A spacing is zero where the rule
	// asks for none, or for too much or too little to wind.
	RuleLook Look `json:"ruleLook"`
}

// Compare returns what a tree takes by rule, and by shape to match a look. ByShape is true under 4
// ft and over 15 ft, where the chart ends, and whenever more than the height is known: a width,
// taper, exposure, handle or bare part.
//
//	            by rule                by shape
//	ornaments   types · whole feet     cover · dressed area / mean disc, to the nearest
//	garland     per foot · height      Tree.SpiralLength of the spacing, up to an inch
//	pieces      per foot · height      dressed area / surface to each, rounded up
//
// Ornaments are never fewer than the types, and cover what the look asks, give or take one of
// the largest; [Rules.Mix] has their sizes. Lights are rounded up to 50. Pre-lit and metal
// trees take none.
//
// Source: common practice; the geometry is computed.
func (r Rules) Compare(look Look, tree Tree) (c Comparison, err error) {
	const fn = "Rules.Compare"
	s, err := r.surface(fn, &tree)
	if err != nil {
		return Comparison{}, err
	}
	c.Tree, c.Rules, c.Look = tree, r, look
	c.ByShape = tree.Height < chartLow || tree.Height > chartHigh || tree.Base != 0 || tree.Taper != Full || tree.Exposure != AllRound || tree.BareTip != 0 || tree.BareBase != 0 || tree.Handle != 0
	if c.Rule, err = r.amounts(fn, &tree); err != nil {
		return Comparison{}, err
	}
	if c.Shape, err = r.match(fn, &look, &tree, &s); err != nil {
		return Comparison{}, err
	}
	c.RuleLook = s.look(&c.Rule)
	return c, nil
}

// The rules are charted from 4 to 15 ft. For a tree of 18 in they give one ornament, for one of 40 ft wraps 5 ft apart.
const (
	chartLow  = 4 * units.Foot
	chartHigh = 15 * units.Foot
)

// The sources of what is sized by rule and by shape.
const (
	commonPractice = "common practice"
	bySurface      = "geometry; common practice for the look"
)

// Needs returns what the tree takes, by Shape if ByShape is true and otherwise by Rule, each with
// its basis and source: ornaments, the accents asked for, lights. Room stays empty; kinds not
// needed are omitted.
//
// The accents are garland, ribbon and picks. Ask for one: each amount assumes no other accent. In
// metric a length is rounded up to a centimeter, not an inch. A basis by rule gives the whole
// feet counted and, within 2 in of the next foot, that foot's figures too.
func (c Comparison) Needs(style units.Style, accents ...shopping.Kind) ([]shopping.Need, error) {
	const fn = "Comparison.Needs"
	if err := checkAccents(fn, accents); err != nil {
		return nil, err
	}
	amounts, source, basis := &c.Rule, commonPractice, c.ruled
	if c.ByShape {
		amounts, source, basis = &c.Shape, bySurface, c.shaped
	}
	kinds := []shopping.Kind{shopping.Ornament}
	for _, d := range dressings {
		if !d.accent || slices.Contains(accents, d.kind) {
			kinds = append(kinds, d.kind)
		}
	}
	list := make([]shopping.Need, 0, len(kinds))
	for _, kind := range kinds {
		q := amounts[kind]
		if q == (shopping.Quantity{}) {
			continue
		}
		text, err := basis(fn, kind, style)
		if err != nil {
			return nil, err
		}
		if kind.Running() {
			q.Length = c.length(kind, c.ByShape, style)
		}
		list = append(list, shopping.Need{Item: shopping.Item{Kind: kind}, Quantity: q, Basis: text, Source: source})
	}
	return list, nil
}

// length returns how much of a kind that is measured the tree takes, as Compare has it, or in metric to the centimeter:
// twelve strands of 2.7 m are as long as a rule that gives 32.4 m, and an inch more would take a thirteenth.
func (c Comparison) length(kind shopping.Kind, byShape bool, style units.Style) units.Length {
	amount, exact := c.Rule[kind].Length, units.Length(0)
	if byShape {
		amount = c.Shape[kind].Length
	}
	if s, err := c.Rules.surface("", &c.Tree); err == nil && style == units.InMetric {
		if spacing := c.Look.Spacing[kind]; !byShape {
			q, _ := c.Rules.supply("", "", c.Tree.Height, kind)
			exact = q.Length
		} else if spacing >= minSpacing {
			exact = s.cone.spiralLength(spacing, s.turn())
		}
	}
	if exact == 0 || up(exact, units.Inch) != amount {
		return amount // in inches, or a comparison that somebody made up
	}
	return up(exact, units.Centimeter)
}

// ruled returns the formula of a kind by rule.
func (c Comparison) ruled(fn string, kind shopping.Kind, style units.Style) (string, error) {
	height := c.Tree.Height
	if kind != shopping.Ornament {
		text := c.perFoot(kind, style) + " of " + tape(height, style)
		if q, _ := c.Rules.supply("", "", height, kind); kind == shopping.Light && q.Pieces != c.Rule[kind].Pieces {
			text += inSteps
		}
		return text, nil
	}
	if err := checkCount(fn, "/rules/eachSpread", c.Rules.EachSpread, 100); err != nil {
		return "", err
	}
	each, err := c.Rules.each(fn, "/tree/height", height)
	if err != nil {
		return "", err
	}
	feet := wholeFeet(height)
	count := "whole foot of " + tape(height, style)
	if units.Length(feet)*units.Foot != height {
		count = "of " + strconv.Itoa(feet) + " whole feet (" + tape(height-height%tick(style), style) + ")"
		if feet == 1 {
			count = "whole foot of " + tape(height, style)
		}
	}
	text := plural(c.Rules.TypesPerFoot*feet, "type") + ", " + strconv.Itoa(c.Rules.TypesPerFoot) + " for each " + count +
		"; " + strconv.Itoa(feet) + " of each, and " + each.String() + " will do"
	if next, err := TradeHeight(height); err == nil && next > height {
		feet++
		text += "; " + tape(up(next-height, tick(style)), style) + " short of " + nominal(next, style) + ", which has " +
			plural(c.Rules.TypesPerFoot*feet, "type") + " and " + strconv.Itoa(feet) + " of each"
	}
	return text, nil
}

// perFoot returns the rule for a kind, "9 ft for each foot".
func (c Comparison) perFoot(kind shopping.Kind, style units.Style) string {
	q := c.Rules.PerFoot[kind]
	switch {
	case style != units.InMetric:
		if kind.Running() {
			return tape(q.Length, style) + " for each foot"
		}
		return strconv.Itoa(q.Pieces) + " for each foot"
	case kind.Running(): // as many meters for each meter as feet for each foot
		return strconv.FormatFloat(q.Length.In(units.Foot), 'g', 3, 64) + " m for each meter"
	}
	return strconv.FormatFloat(float64(q.Pieces)/units.Foot.In(units.Meter), 'g', 3, 64) + " for each meter"
}

// shaped returns the formula of a kind by shape.
func (c Comparison) shaped(_ string, kind shopping.Kind, style units.Style) (string, error) {
	s, _ := c.Rules.surface("", &c.Tree) // as Compare had it
	area := surfaceText(s.area, style)
	switch {
	case kind == shopping.Ornament:
		return percent(c.Look.Cover) + " of " + area + " covered, by sizes of " + s.balls.words(style), nil
	case kind.Running():
		return "wraps " + apart(c.Look.Spacing[kind], style) + " apart over " + area, nil
	}
	return c.counted(kind, s.area, style), nil
}

// inSteps is said of lights that have been rounded up.
const inSteps = ", in steps of 50"

// counted returns how many pieces of a kind there are to the square foot or meter, and over how much: in three figures and
// to a tenth, or in as many more as give the number of pieces to whoever works it out.
func (c Comparison) counted(kind shopping.Kind, area units.Area, style units.Style) string {
	first, unit := "", unitArea(style)
	for figures, step := 3, unit/10; figures < 7; figures, step = figures+1, step/10 {
		n, text := density(c.Look.Each[kind], style, figures)
		over := (area + step/2) / step * step
		exact := min(float64(n*over.In(unit)), 1e9) // which is more than any look takes
		pieces := int(math.Ceil(exact - 1e-9))
		text += square(style) + " over " + surfaceTo(area, step, style)
		q := c.Tree.supplied(kind, shopping.Quantity{Pieces: pieces})
		if q.Pieces != pieces {
			text += inSteps
		}
		if q == c.Shape[kind] {
			return text
		}
		if first == "" {
			first = text
		}
	}
	return first // of a comparison that somebody made up
}

// sizes returns the sizes of ornament in words.
func (c Comparison) sizes(style units.Style) string {
	s, _ := c.Rules.surface("", &c.Tree)
	return s.balls.words(style)
}

// checkAccents reports a kind that is no accent.
func checkAccents(fn string, accents []shopping.Kind) error {
	for _, a := range accents {
		known := false
		for _, d := range dressings {
			known = known || d.accent && d.kind == a
		}
		if known {
			continue
		}
		var names []string
		for _, d := range dressings {
			if d.accent {
				names = append(names, d.kind.String())
			}
		}
		return nameError(fn, "accents", a.String(), names)
	}
	return nil
}

// String returns a line for each kind that both the rules and the look ask for, such as
//
//	garland: 9 ft for each foot gives wraps 17 1/2 in apart here; 10 1/4 in apart takes 184 ft
//
// Spacings are rounded up to a quarter inch, over 2 ft to an inch; lengths up to a foot, with
// ByShape as in [Comparison.Needs].
func (c Comparison) String() string { return c.text(units.InFeetInches) }

func (c Comparison) text(style units.Style) string {
	var lines []string
	for k := range c.Rule {
		kind := shopping.Kind(k)
		what := kind.String()
		if kind == shopping.Ornament {
			if c.RuleLook.Cover != 0 && c.Look.Cover != 0 {
				lines = append(lines, what+": "+strconv.Itoa(c.Rule[kind].Pieces)+" of "+c.sizes(style)+" cover "+percent(c.RuleLook.Cover)+" here; "+
					percent(c.Look.Cover)+" takes "+strconv.Itoa(c.Shape[kind].Pieces))
			}
			continue
		}
		by := c.perFoot(kind, style)
		if kind.Running() {
			if c.alike(kind, kind+1) {
				continue // said with the next
			}
			if c.alike(kind, kind-1) {
				what = (kind - 1).String() + " or " + what
			}
			if line := c.wound(kind, by, style); line != "" {
				lines = append(lines, what+": "+line)
			}
			continue
		}
		ruled, wanted := c.RuleLook.Each[kind], c.Look.Each[kind]
		if ruled != 0 && wanted != 0 {
			lines = append(lines, what+": "+by+" gives "+dense(ruled, style)+square(style)+" here; "+
				dense(wanted, style)+" takes "+strconv.Itoa(c.Shape[kind].Pieces))
		}
	}
	if lines == nil {
		return "nothing"
	}
	return strings.Join(lines, "\n")
}

// alike reports whether the same is said of two kinds that are wound, so that they can share a line.
func (c Comparison) alike(a, b shopping.Kind) bool {
	return a.Running() && b.Running() && c.Rules.PerFoot[a].Length == c.Rules.PerFoot[b].Length && c.Look.Spacing[a] == c.Look.Spacing[b]
}

// wound says how far apart a garland comes by rule, and what the look takes.
func (c Comparison) wound(kind shopping.Kind, by string, style units.Style) string {
	rule, ruled, wanted := c.Rule[kind].Length, c.RuleLook.Spacing[kind], c.Look.Spacing[kind]
	if rule == 0 || wanted == 0 {
		return ""
	}
	gives := "gives wraps " + apart(ruled, style) + " apart here"
	switch {
	case ruled != 0:
	case c.tooLong(rule):
		gives = "is too long to wind here"
	default:
		gives = "is too short to go round here"
	}
	takes := c.length(kind, true, style)
	text := enough(takes, style)
	if c.ByShape { // as the need has it
		text = tape(takes, style)
	}
	return by + " " + gives + "; " + apart(wanted, style) + " apart takes " + text
}

// tooLong reports whether a garland of this length would be wound less than
// minSpacing apart.
func (c Comparison) tooLong(garland units.Length) bool {
	s, err := c.Tree.surface("Comparison.String", "/tree/")
	return err == nil && s.cone.spacing(garland, s.turn()) < minSpacing
}
