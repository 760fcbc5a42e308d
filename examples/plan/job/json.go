package job

import (
	"encoding/json"

	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The JSON of a plan, in the trade's words. Lengths and masses are text with a
// unit, money is text, counts are numbers.
type (
	planJSON struct {
		Tree        *treeJSON       `json:"tree,omitempty"`
		MoreTrees   []treeJSON      `json:"moreTrees,omitempty"`
		Mantel      *mantelJSON     `json:"mantel,omitempty"`
		MoreMantels []mantelJSON    `json:"moreMantels,omitempty"`
		Colors      *colorsJSON     `json:"colors,omitempty"`
		Needs       []shopping.Need `json:"needs"`
		Shopping    *shopping.List  `json:"shopping,omitempty"`
		Missing     []missingJSON   `json:"missing,omitempty"`
		Cautions    []string        `json:"cautions"`
	}
	treeJSON struct {
		Tree
		OrnamentTypes    int              `json:"ornamentTypes"`
		OrnamentsPerType units.Range[int] `json:"ornamentsPerType"`
		Ornaments        units.Range[int] `json:"ornaments"`
		Picks            int              `json:"picks"`
		Garland          units.Length     `json:"garland"`
		Lights           int              `json:"lights"`
		Grade            string           `json:"grade"`
		Comparison       compareJSON      `json:"comparison"`
		Sizes            []sizeJSON       `json:"ornamentSizes"`
		Fit              *fitJSON         `json:"fit,omitempty"`
		Ladder           units.Length     `json:"ladder,omitzero"`
		Strings          *stringsJSON     `json:"strings,omitempty"`
	}
	compareJSON struct {
		DressedArea units.Area   `json:"dressedArea"`
		Rule        amountsJSON  `json:"rule"`
		Shape       amountsJSON  `json:"shape"`
		RuleWraps   units.Length `json:"ruleWraps"`  // how far apart the wraps come by rule
		ShapeWraps  units.Length `json:"shapeWraps"` // and by shape
		Text        string       `json:"text"`
	}
	amountsJSON struct {
		Ornaments int          `json:"ornaments"`
		Garland   units.Length `json:"garland"`
		Ribbon    units.Length `json:"ribbon"`
		Picks     int          `json:"picks"`
		Lights    int          `json:"lights"`
	}
	sizeJSON struct {
		Diameter units.Length `json:"diameter"`
		Count    int          `json:"count"`
	}
	fitJSON struct {
		Verdict string       `json:"verdict"`
		Tallest units.Length `json:"tallest"`
		Spare   units.Length `json:"spare"`
	}
	stringsJSON struct {
		Count int         `json:"count"`
		Runs  int         `json:"runs"`
		Power units.Power `json:"power"` // of the strings on a circuit of their own
		Limit units.Power `json:"limit"` // 80 % of 15 A at 120 V
		Over  bool        `json:"over"`
	}
	mantelJSON struct {
		Mantel
		BaseGarland units.Length    `json:"baseGarland"`
		Picks       int             `json:"picks"`
		Ribbon      units.Length    `json:"ribbon"`
		Drops       dropsJSON       `json:"drops"`
		Spots       []spotJSON      `json:"spots"`
		Load        *loadJSON       `json:"load,omitempty"`
		Violations  []violationJSON `json:"violations"`
		Steps       []stepJSON      `json:"steps"`
	}
	dropsJSON struct {
		Left  units.Length `json:"left"`
		Right units.Length `json:"right"`
	}
	spotJSON struct {
		Item  shopping.Item `json:"item"`
		Along units.Length  `json:"along"`
		Layer int           `json:"layer"`
	}
	loadJSON struct {
		Weight  units.Mass `json:"weight"`
		Working units.Mass `json:"workingLoad"`
		Hooks   []hookJSON `json:"hooks"`
	}
	hookJSON struct {
		Along      units.Length `json:"along"`
		Total      units.Mass   `json:"total"`
		Overloaded bool         `json:"overloaded"`
	}
	violationJSON struct {
		Place    string       `json:"place"`
		Measure  string       `json:"measure"`
		Measured units.Length `json:"measured"`
		Allowed  units.Length `json:"allowed"`
		AtLeast  bool         `json:"atLeast"`
		Source   string       `json:"source"`
		Edition  string       `json:"edition"`
	}
	stepJSON struct {
		Do    string          `json:"do"`
		Items []shopping.Item `json:"items"`
		Mind  string          `json:"mind,omitempty"`
	}
	colorsJSON struct {
		Palette palette.Palette `json:"palette"`
		Reading string          `json:"reading"`
		Pairs   []pairJSON      `json:"pairs"`
		Box     []boxJSON       `json:"box,omitempty"`
	}
	pairJSON struct {
		A          string                  `json:"a"`
		B          string                  `json:"b"`
		Difference palette.ByView[float64] `json:"difference"`
		Holds      palette.ByView[bool]    `json:"holds"`
	}
	missingJSON struct {
		Needs []shopping.Need `json:"needs"`
		Why   string          `json:"why"`
	}
	boxJSON struct {
		Name    string `json:"name"`
		Nearest string `json:"nearest"`
		Fits    bool   `json:"fits"`
	}
)

// MarshalJSON writes the first tree as "tree" and the first mantel as "mantel",
// which is all that most jobs have; further ones follow in "moreTrees" and
// "moreMantels".
func (p Plan) MarshalJSON() ([]byte, error) {
	out := planJSON{Needs: p.Needs, Cautions: p.Cautions}
	var trees []treeJSON
	for _, t := range p.Trees {
		trees = append(trees, t.json())
	}
	if len(trees) > 0 {
		out.Tree, out.MoreTrees = &trees[0], trees[1:]
	}
	var mantels []mantelJSON
	for _, m := range p.Mantels {
		mantels = append(mantels, m.json())
	}
	if len(mantels) > 0 {
		out.Mantel, out.MoreMantels = &mantels[0], mantels[1:]
	}
	if p.Colors != nil {
		out.Colors = p.Colors.json()
	}
	if p.Basket != nil {
		out.Shopping = &p.Basket.List
		for _, m := range p.Basket.Missing {
			out.Missing = append(out.Missing, missingJSON(m))
		}
	}
	return json.Marshal(out)
}

func amounts(a sizing.Amounts) amountsJSON {
	return amountsJSON{
		Ornaments: a[shopping.Ornament].Pieces, Garland: a[shopping.Garland].Length, Ribbon: a[shopping.Ribbon].Length,
		Picks: a[shopping.Pick].Pieces, Lights: a[shopping.Light].Pieces,
	}
}

func (t TreePlan) json() treeJSON {
	c := t.Comparison
	c.Area, _ = c.Area.Round(units.SquareInch) // these are to be read, and far from any limit
	ruleWraps, _ := c.RuleLook.Spacing[shopping.Garland].Round(units.Inch / 16)
	shapeWraps, _ := c.Look.Spacing[shopping.Garland].Round(units.Inch / 16)
	out := treeJSON{
		Tree: t.Tree, OrnamentTypes: t.OrnamentTypes, OrnamentsPerType: t.OrnamentsPerType,
		Ornaments: t.Ornaments, Picks: t.Picks, Garland: t.Garland, Lights: t.Lights,
		Grade: t.Grade, Ladder: t.Ladder.Size,
		Comparison: compareJSON{
			DressedArea: c.Area, Rule: amounts(c.Rule), Shape: amounts(c.Shape),
			RuleWraps: ruleWraps, ShapeWraps: shapeWraps, Text: c.String(),
		},
	}
	for _, size := range t.Sizes {
		out.Sizes = append(out.Sizes, sizeJSON(size))
	}
	if f := t.Fit; f != nil {
		out.Fit = &fitJSON{f.Verdict, f.Tallest, f.Spare}
	}
	if s := t.Strings; s != nil {
		out.Strings = &stringsJSON{s.Count, s.Runs, s.Load.Power, s.Load.Limit, s.Load.Over}
	}
	return out
}

func (m MantelPlan) json() mantelJSON {
	out := mantelJSON{
		Mantel: m.Mantel, BaseGarland: m.BaseGarland, Picks: m.Picks, Ribbon: m.Ribbon,
		Drops: dropsJSON{m.Hanging.Left, m.Hanging.Right}, Violations: []violationJSON{},
	}
	out.Sag = m.Hanging.Sag
	for _, s := range m.Spots {
		out.Spots = append(out.Spots, spotJSON(s))
	}
	for _, v := range m.violations() {
		out.Violations = append(out.Violations, violationJSON(v))
	}
	for _, s := range m.Steps {
		out.Steps = append(out.Steps, stepJSON(s))
	}
	if m.Loads != nil {
		out.Load = &loadJSON{Weight: m.Loads.Weight, Working: m.Loads.Working}
		for _, h := range m.Loads.Hooks {
			out.Load.Hooks = append(out.Load.Hooks, hookJSON{h.Along, h.Total, h.Overloaded})
		}
	}
	return out
}

func (c *ColorPlan) json() *colorsJSON {
	out := &colorsJSON{Palette: c.Reading.Palette, Reading: c.Reading.String()}
	for _, p := range c.Reading.Pairs {
		out.Pairs = append(out.Pairs, pairJSON{p.A.Name, p.B.Name, p.Difference, p.Holds})
	}
	for i, m := range c.Box.Matches {
		out.Box = append(out.Box, boxJSON{c.Pieces[i].Name, m.Swatch.Name, m.Fits})
	}
	return out
}
