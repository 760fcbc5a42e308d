package sizing

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A kind that dresses a tree is one row of dressings. Each of them has a rule of its
// own in CommonPractice and so stands in what the rules ask for, in the needs, in the
// look, in the comparison, in every text and in JSON. A kind that is forgotten in any
// of them, or has a row and no rule, fails here.
func TestEveryKindStandsEverywhere(t *testing.T) {
	tree := Tree{Height: 12 * ft} // where the rules and the look differ
	rules, look := CommonPractice(), CommonLook()
	kinds := []shopping.Kind{shopping.Ornament}
	var accents []shopping.Kind
	for _, d := range dressings {
		kinds = append(kinds, d.kind)
		if d.accent {
			accents = append(accents, d.kind)
		}
	}
	amounts, err1 := ruled(rules, tree)
	match, err2 := matched(rules, look, tree)
	c, err3 := rules.Compare(look, tree)
	byRule, err4 := c.Needs(units.InFeetInches, accents...)
	c.ByShape = true
	byShape, err5 := c.Needs(units.InFeetInches, accents...)
	inJSON, err6 := json.Marshal(c)
	if err1 != nil || err2 != nil || err3 != nil || err4 != nil || err5 != nil || err6 != nil {
		t.Fatal(err1, err2, err3, err4, err5, err6)
	}
	if len(byRule) != len(kinds) || len(byShape) != len(kinds) {
		t.Errorf("%d kinds, but needs for %d and %d", len(kinds), len(byRule), len(byShape))
	}
	var read struct{ Rule, Shape map[string]any }
	if err := json.Unmarshal(inJSON, &read); err != nil {
		t.Fatal(err)
	}
	for i, kind := range kinds {
		name := kind.String()
		if kind != shopping.Ornament && rules.PerFoot[kind] == (shopping.Quantity{}) {
			t.Errorf("%s dresses a tree, and CommonPractice has no rule for it", name)
		}
		if amounts[kind] == (shopping.Quantity{}) || match[kind] == (shopping.Quantity{}) {
			t.Errorf("%s: %v by rule, %v by shape", name, amounts[kind], match[kind])
		}
		if (look.Spacing[kind] != 0) != kind.Running() || (look.Each[kind] != 0) == (kind.Running() || kind == shopping.Ornament) || look.Cover == 0 {
			t.Errorf("%s: the look has it %v apart and %v each, cover %v", name, look.Spacing[kind], look.Each[kind], look.Cover)
		}
		if i < len(byRule) && (byRule[i].Item.Kind != kind || byRule[i].Quantity != amounts[kind] || byRule[i].Basis == "") {
			t.Errorf("%s: by rule the list has %+v", name, byRule[i])
		}
		if i < len(byShape) && (byShape[i].Item.Kind != kind || byShape[i].Quantity != match[kind] || byShape[i].Basis == "") {
			t.Errorf("%s: by shape the list has %+v", name, byShape[i])
		}
		for _, text := range []string{amounts.String(), look.String(), c.String()} {
			if !strings.Contains(text, name) {
				t.Errorf("%s is missing in %q", name, text)
			}
		}
		if read.Rule[name] == nil || read.Shape[name] == nil {
			t.Errorf("%s is missing in the JSON of a comparison", name)
		}
	}
	// And nothing else does.
	for kind := range amounts {
		if kind := shopping.Kind(kind); amounts[kind] != (shopping.Quantity{}) && kind != shopping.Ornament && !dresses(kind) {
			t.Errorf("%v is asked for, and is no dressing", kind)
		}
		if kind := shopping.Kind(kind); !dresses(kind) {
			r := CommonPractice()
			r.PerFoot[kind].Pieces = 1
			_, err := ruled(r, tree)
			refused(t, err, units.ErrRange, "Rules.Compare", "/perFoot/"+kind.String())
		}
	}
}
