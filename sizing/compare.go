package sizing

import (
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
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
	s, err := t.surface(fn, "/tree/")
	if err != nil {
		return Comparison{}, err
	}
	c.Tree, c.Rules, c.Look, c.Area = t, r, l, s.area
	if c.Rule, err = r.amounts(fn, t); err != nil {
		return Comparison{}, err
	}
	if c.Shape, err = l.amounts(fn, s); err != nil {
		return Comparison{}, within(err, "/look")
	}
	c.RuleLook = s.look(c.Rule)
	return c, nil
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
	for k := range c.Rule {
		kind := shopping.Kind(k)
		what, by := kind.String(), c.Rules.PerFoot[kind].String()+" for each foot"
		if kind == shopping.Ornament {
			by = strconv.Itoa(c.Rule[kind].Pieces)
		}
		if kind.Running() {
			if k+1 < len(c.Rule) && c.wraps(kind) == c.wraps(kind+1) {
				continue // said with the next
			}
			if c.wraps(kind) == c.wraps(kind-1) {
				what = (kind - 1).String() + " or " + what
			}
			if line := c.wound(kind, by); line != "" {
				lines = append(lines, what+": "+line)
			}
			continue
		}
		ruled, wanted := c.RuleLook.Each[kind], c.Look.Each[kind]
		if ruled != 0 && wanted != 0 {
			lines = append(lines, what+": "+by+" gives "+toSquareFoot(ruled)+" to the square foot here; "+
				toSquareFoot(wanted)+" takes "+strconv.Itoa(c.Shape[kind].Pieces))
		}
	}
	return strings.Join(lines, "\n")
}

// wraps returns what is said of a kind that is wound, so that two of which the same
// is said can share a line.
func (c Comparison) wraps(kind shopping.Kind) [2]units.Length {
	if !kind.Running() {
		return [2]units.Length{-1}
	}
	return [2]units.Length{c.Rules.PerFoot[kind].Length, c.Look.Spacing[kind]}
}

// wound says how far apart a garland comes by rule, and what the look takes.
func (c Comparison) wound(kind shopping.Kind, by string) string {
	rule, ruled, wanted := c.Rule[kind].Length, c.RuleLook.Spacing[kind], c.Look.Spacing[kind]
	if rule == 0 || wanted == 0 {
		return ""
	}
	gives := "gives wraps " + inches(ruled) + " apart here"
	switch {
	case ruled != 0:
	case c.tooLong(rule):
		gives = "is too long to wind here"
	default:
		gives = "is too short to go round here"
	}
	takes := (c.Shape[kind].Length + units.Foot - 1) / units.Foot
	return by + " " + gives + "; " + inches(wanted) + " apart takes " + strconv.Itoa(int(takes)) + " ft"
}

// tooLong reports whether a garland of this length would be wound less than
// MinSpacing apart.
func (c Comparison) tooLong(garland units.Length) bool {
	s, err := c.Tree.surface("Comparison.String", "/tree/")
	return err == nil && s.cone.spacing(garland, s.turn()) < MinSpacing
}

// within puts at before the field of an error.
func within(err error, at string) error {
	if e, ok := err.(*units.Error); ok {
		moved := *e
		moved.Field = at + e.Field
		return &moved
	}
	return err
}
