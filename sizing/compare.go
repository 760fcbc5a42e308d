package sizing

import (
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// A Comparison sets what the rules of thumb ask for on a tree against what it
// takes to match a look there. Comparisons are equal if == says so.
type Comparison struct {
	Tree  Tree       `json:"tree"`  // the tree as it was given
	Rules Rules      `json:"rules"` // what Rule was counted by
	Look  Look       `json:"look"`  // what is matched
	Area  units.Area `json:"area"`  // the surface that is dressed

	Rule  Amounts `json:"rule"`  // by rule
	Shape Amounts `json:"shape"` // by shape, to match Look

	// RuleLook is how the tree looks if it is dressed by rule: how far apart the
	// wraps come, and the surface to each piece. A spacing is zero where the rule
	// asks for none, or for so much or so little that it cannot be wound.
	RuleLook Look `json:"ruleLook"`
}

// Compare returns what the rules and the look each ask for on a tree, and what
// look the rules give there, see [Rules.Look]. Its errors are those of
// [Rules.Amounts] and [Look.Amounts].
//
// On a 7 ft full tree seen from every side the two agree, if the look is that of
// [CommonLook]. On a taller tree the rules fall short of everything but
// ornaments, since surface grows as the square of height; on a slim one, or one
// in a corner, they ask for too much.
func (r Rules) Compare(l Look, t Tree) (c Comparison, err error) {
	const fn = "Rules.Compare"
	s, err := t.surface(fn)
	if err != nil {
		return Comparison{}, err
	}
	c.Tree, c.Rules, c.Look, c.Area = t, r, l, s.area
	if c.Rule, err = r.Amounts(t); err != nil {
		return Comparison{}, err
	}
	if c.Shape, err = l.amounts(fn, s); err != nil {
		return Comparison{}, err
	}
	c.RuleLook = s.look(c.Rule)
	return c, nil
}

// Ratios are amounts by shape over amounts by rule: 1 where the two agree, over
// 1 where the rule falls short. Where the rule asks for none a ratio is 0.
type Ratios struct {
	Ornaments float64 `json:"ornaments"` // of Amounts.Ornaments
	Garland   float64 `json:"garland"`   // of Amounts.Garland
	Ribbon    float64 `json:"ribbon"`    // of Amounts.Ribbon
	Picks     float64 `json:"picks"`     // of Amounts.Picks
	Lights    float64 `json:"lights"`    // of Amounts.Lights
}

// Ratios returns each amount by shape divided by the same amount by rule.
func (c Comparison) Ratios() Ratios {
	return Ratios{
		Ornaments: ratio(c.Shape.Ornaments, c.Rule.Ornaments),
		Garland:   ratio(c.Shape.Garland, c.Rule.Garland),
		Ribbon:    ratio(c.Shape.Ribbon, c.Rule.Ribbon),
		Picks:     ratio(c.Shape.Picks, c.Rule.Picks),
		Lights:    ratio(c.Shape.Lights, c.Rule.Lights),
	}
}

// String returns one line, "ornaments 1.00, garland 1.70, ribbon 1.70, picks 1.72,
// lights 1.72", without those where the rule asks for none.
func (r Ratios) String() string {
	var parts []string
	for i, x := range [...]float64{r.Ornaments, r.Garland, r.Ribbon, r.Picks, r.Lights} {
		if x != 0 {
			what := [...]string{"ornaments", "garland", "ribbon", "picks", "lights"}[i]
			parts = append(parts, what+" "+strconv.FormatFloat(x, 'f', 2, 64))
		}
	}
	if parts == nil {
		return "nothing"
	}
	return strings.Join(parts, ", ")
}

func ratio[T int | units.Length](shape, rule T) float64 {
	if rule == 0 {
		return 0
	}
	return float64(shape) / float64(rule)
}

// String returns a line for each thing that both the rules and the look ask for:
//
//	garland: 9 ft for each foot gives wraps 17 in apart here; 10 in apart takes 187 ft
//
// for a 12 ft tree and a look of just 10 in. [CommonLook] is a sixth of an inch wider
// and takes 184 ft. What cannot be wound from 1/4 in to 100 ft apart "is too short
// to go round here" or "is too long to wind here".
func (c Comparison) String() string {
	var lines []string
	wraps := func(what string, perFoot, rule, ruled, wanted, takes units.Length) {
		if rule == 0 || wanted == 0 {
			return
		}
		gives := "gives wraps " + inches(ruled) + " apart here"
		switch {
		case ruled != 0:
		case c.tooLong(rule):
			gives = "is too long to wind here"
		default:
			gives = "is too short to go round here"
		}
		lines = append(lines, what+": "+perFoot.String()+" for each foot "+gives+"; "+
			inches(wanted)+" apart takes "+strconv.Itoa(int((takes+units.Foot-1)/units.Foot))+" ft")
	}
	pieces := func(what, by string, ruled, wanted units.Area, takes int) {
		if ruled != 0 && wanted != 0 {
			lines = append(lines, what+": "+by+" gives "+toSquareFoot(ruled)+" to the square foot here; "+
				toSquareFoot(wanted)+" takes "+strconv.Itoa(takes))
		}
	}
	perFoot := func(n int) string { return strconv.Itoa(n) + " for each foot" }
	pieces("ornaments", strconv.Itoa(c.Rule.Ornaments), c.RuleLook.Ornament, c.Look.Ornament, c.Shape.Ornaments)
	if c.Rules.RibbonPerFoot == c.Rules.GarlandPerFoot && c.Look.Ribbon == c.Look.Garland {
		wraps("garland or ribbon", c.Rules.GarlandPerFoot, c.Rule.Garland, c.RuleLook.Garland, c.Look.Garland, c.Shape.Garland)
	} else {
		wraps("garland", c.Rules.GarlandPerFoot, c.Rule.Garland, c.RuleLook.Garland, c.Look.Garland, c.Shape.Garland)
		wraps("ribbon", c.Rules.RibbonPerFoot, c.Rule.Ribbon, c.RuleLook.Ribbon, c.Look.Ribbon, c.Shape.Ribbon)
	}
	pieces("picks", perFoot(c.Rules.PicksPerFoot), c.RuleLook.Pick, c.Look.Pick, c.Shape.Picks)
	pieces("lights", perFoot(c.Rules.LightsPerFoot), c.RuleLook.Light, c.Look.Light, c.Shape.Lights)
	return strings.Join(lines, "\n")
}

// tooLong reports whether a garland of this length would be wound less than
// MinSpacing apart.
func (c Comparison) tooLong(garland units.Length) bool {
	s, err := c.Tree.surface("Comparison.String")
	return err == nil && s.cone.spacing(garland, s.turn()) < MinSpacing
}
