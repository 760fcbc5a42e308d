package job

import (
	"cmp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A TreePlan is the figures for one tree.
type TreePlan struct {
	Tree                                                 // as given, with the handle and the bare tip for placing
	sizing.Comparison                                    // of the tree as given, each accent as if alone
	Types             int                                `json:"types"`            // of ornament, by rule
	Each              units.Range[int]                   `json:"each"`             // pieces of each; by shape, those planned ± Rules.EachSpread
	Planned           shopping.ByKind[shopping.Quantity] `json:"planned"`          // by rule or by shape
	Shares            []shopping.Share                   `json:"shares"`           // the same by color and size, with what it gets, then substitutes
	Pieces            []shopping.Lot                     `json:"pieces"`           // what hangs: types by color and size
	Fit               *sizing.Fit                        `json:"fit,omitempty"`    // nil without a ceiling
	Ladder            sizing.Ladder                      `json:"ladder"`           // to set the topper
	Strings           lights.Strings                     `json:"strings,omitzero"` // for the lamps that hang; zero without a label
	Load              lights.Load                        `json:"load,omitzero"`    // on a circuit of their own
}

// What stands in for a handle and a bare tip that were not measured, when pieces are placed: a twelfth of
// the height at most.
const (
	usualHandle = 6 * units.Inch
	usualTip    = 4 * units.Inch
)

// usual returns the accents, garland if none are said.
func (t Tree) usual() []shopping.Kind {
	if t.Accents == nil {
		return []shopping.Kind{shopping.Garland}
	}
	return t.Accents
}

// maxName is the longest name of a room in bytes, and what an error shows of a longer one.
const maxName = 64

// room notes the fault of a name that a basket and a label could not have.
func (f *faulty) room(name, at string) {
	if len(name) <= maxName && !strings.ContainsFunc(name, func(r rune) bool { return unicode.IsControl(r) || r == utf8.RuneError }) {
		return
	}
	if len(name) > maxName {
		name = strings.ToValidUTF8(name[:maxName], "") + "..."
	}
	f.refuse(at+"/room", name, "at most 64 bytes of text in one line", units.ErrSyntax)
}

// tree plans a tree at a place of the request.
func (d *draft) tree(f *faulty, colors palette.Palette, t Tree, at string) {
	h, before := d.house, len(f.list)
	ok := func(err error) {
		if err != nil {
			f.note(err, "/house/trees", "t", at, "tree", at, "height", at+"/height", "look", "/house/look", "accents", at+"/accents", "count", at)
		}
	}

	p := TreePlan{Tree: t}
	var cautions []units.Caution
	c, err := h.Trees.Compare(h.Look, t.Tree)
	ok(err)
	switch t.SizeBy {
	case "", "auto":
	case "rule", "shape":
		c.ByShape = t.SizeBy == "shape"
	default:
		f.refuse(at+"/sizeBy", t.SizeBy, "auto, rule or shape", units.ErrName)
	}
	needs, err := c.Needs(h.Units, t.usual()...)
	ok(err)
	p.Types, err = h.Trees.Types(t.Height)
	ok(err)
	p.Each, err = h.Trees.Each(t.Height)
	ok(err)
	p.Ladder, err = t.Space.Ladder(t.Tree)
	f.note(err, at+"/space", "t", at, "tree", at)
	if t.Space.Ceiling != 0 {
		fit, err := t.Space.Fit(t.Tree)
		f.note(err, at+"/space", "t", at, "tree", at)
		p.Fit = &fit
		cautions = append(cautions, fit.Caution)
	}
	of, err := t.Tree.Cautions(h.Units)
	f.note(err, at)
	cautions = append(append(of, cautions...), p.Ladder.Cautions...)

	accents := 0
	for _, n := range needs {
		if n.Item.Kind != shopping.Ornament && n.Item.Kind != shopping.Light {
			accents++
		}
	}
	if accents > 1 {
		cautions = append(cautions, units.Caution{Code: "overfull", Text: "two accents on one tree look overfull, since each is as much as one alone: choose one", Source: "common practice"})
	}

	p.Comparison, p.SizeBy = c, "rule"
	if c.ByShape {
		p.SizeBy = "shape"
	}
	for _, n := range needs {
		p.Planned[n.Item.Kind] = n.Quantity
	}
	p.strings(f, h, at, p.Planned[shopping.Light].Pieces)
	if t.Handle == 0 {
		p.Handle = min(usualHandle, t.Height/12)
	}
	if t.BareTip == 0 {
		p.BareTip = min(usualTip, t.Height/12)
	}
	if len(f.list) > before {
		return
	}

	total := p.Planned[shopping.Ornament].Pieces
	if c.ByShape {
		each := max(1, (total+p.Types/2)/max(1, p.Types))
		p.Each = units.Range[int]{Min: max(1, each-h.Trees.EachSpread), Max: each + h.Trees.EachSpread}
	}
	mix, err := h.Trees.Mix(t.Tree, total)
	ok(err)
	room := dressing{name: t.Room, at: at, types: min(p.Types, total), each: p.Each, large: largest(h.Trees, t), cautions: cautions}
	if len(mix) > 0 { // larger ones would look out of place
		room.large = min(room.large, 3*mix[0].Item.Size/2)
	}
	f.note(room.share(colors, total, mix), at, "palette", "/colors", "shares", "/colors")
	p.Shares = room.needs(needs, d.stock)
	d.Trees = append(d.Trees, p)
	d.rooms = append(d.rooms, room)
}

// largest returns the largest ornament of a tree, by the rules of the house.
func largest(rules sizing.Rules, t Tree) units.Length {
	if t.Public {
		return cmp.Or(rules.HallLargest, 12*units.Inch)
	}
	return cmp.Or(rules.HomeLargest, 6*units.Inch)
}

// strings counts the strings of lights for so many lamps.
func (p *TreePlan) strings(f *faulty, h House, at string, lamps int) {
	p.Strings, p.Load = lights.Strings{}, lights.Load{}
	if p.Lights == (lights.Label{}) {
		return
	}
	var err error
	if p.Strings, err = p.Lights.For(shopping.Quantity{Pieces: lamps}); !f.note(err, at+"/lights") || p.Strings.Count == 0 {
		return
	}
	p.Load, err = p.Strings.Load(h.Circuit)
	f.note(err, at+"/lights", "each", at+"/lights", "c", "/house/circuit", "circuit", "/house/circuit")
}

// say is a number of things in words.
func say(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return strconv.Itoa(n) + " " + what
}
