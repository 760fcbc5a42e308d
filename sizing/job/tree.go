package job

import (
	"strconv"

	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A TreePlan is the figures for one tree.
type TreePlan struct {
	Tree                       // as it was given, with the handle and the bare tip of the house
	Types    int               `json:"types"`            // how many different ornaments, by rule
	Each     units.Range[int]  `json:"each"`             // how many of each
	Grade    string            `json:"grade"`            // what grading rules call the shape, see sizing.Tree.Grade
	Area     units.Area        `json:"area"`             // the surface that is dressed, to a square inch
	Rule     sizing.Amounts    `json:"rule"`             // what the rules of thumb ask for; of the accents each as if it were the one
	Shape    sizing.Amounts    `json:"shape"`            // what it takes to look as the house has it
	Planned  sizing.Amounts    `json:"planned"`          // the one of the two that is planned, with the accents asked for
	Look     sizing.Look       `json:"look"`             // how the tree looks as planned: how far apart garland is wound
	Compared string            `json:"compared"`         // the two in words, a line for each kind
	Needs    []shopping.Need   `json:"needs"`            // the same as needs, by color and size
	Shares   []shopping.Share  `json:"shares,omitempty"` // what it gets of them from the basket, and of substitutes
	Pieces   []placement.Piece `json:"pieces"`           // what hangs from the branches: types by color and size
	Fit      *sizing.Fit       `json:"fit,omitempty"`    // nil if the ceiling was not measured
	Ladder   sizing.Ladder     `json:"ladder"`           // to set the topper
	Strings  lights.Strings    `json:"strings,omitzero"` // of lights; zero if the label is not known or there are none
	Runs     int               `json:"runs,omitempty"`   // how many plugs they need
	Load     lights.Load       `json:"load,omitzero"`    // what they draw from a circuit of their own
	Cautions []units.Caution   `json:"-"`                // of this tree; a plan says each once
}

// usual returns the accents, garland if none are said.
func (t Tree) usual() []shopping.Kind {
	if t.Accents == nil {
		return []shopping.Kind{shopping.Garland}
	}
	return t.Accents
}

// tree plans a tree at a place of the request.
func (d *draft) tree(f *faulty, colors palette.Palette, t Tree, at string) {
	h, before := d.house, len(f.list)
	args := []string{"t", at, "tree", at, "height", at + "/height", "look", "/house/look", "accents", at + "/accents", "count", at}
	ok := func(err error) bool { return f.note(err, "/house/trees", args...) }

	p := TreePlan{Tree: t}
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
	p.Grade, err = t.Grade()
	f.note(err, at)
	p.Ladder, err = t.Space.Ladder(t.Tree)
	f.note(err, at+"/space", "t", at, "tree", at)
	if t.Space.Ceiling != 0 {
		fit, err := t.Space.Fit(t.Tree)
		f.note(err, at+"/space", "t", at, "tree", at)
		p.Fit = &fit
		p.Cautions = append(p.Cautions, fit.Caution)
	}
	of, err := t.Tree.Cautions(h.Units)
	f.note(err, at)
	p.Cautions = append(append(of, p.Cautions...), p.Ladder.Cautions...)

	area, _ := t.DressedArea()                      // as Compare had it
	p.Area, _ = units.Round(area, units.SquareInch) // a tree's surface is far from any limit
	p.Rule, p.Shape, p.Compared = c.Rule, c.Shape, c.Format(h.Units)
	p.SizeBy, p.Look = "rule", c.RuleLook
	if c.ByShape {
		p.SizeBy, p.Look = "shape", c.Look
	}
	for _, n := range needs {
		p.Planned[n.Item.Kind] = n.Quantity
	}
	p.strings(f, h, at, p.Planned[shopping.Light].Pieces)
	p.Cautions = append(p.Cautions, p.Load.Caution)
	if t.Handle == 0 {
		p.Handle = min(h.Handle, t.Height/12)
	}
	if t.BareTip == 0 {
		p.BareTip = min(h.BareTip, t.Height/12)
	}
	if len(f.list) > before {
		return
	}

	total := p.Planned[shopping.Ornament].Pieces
	if c.ByShape {
		each := max(1, (total+p.Types/2)/max(1, p.Types))
		p.Each = units.Range[int]{Min: max(1, each-h.Trees.EachSpread), Max: each + h.Trees.EachSpread}
	}
	room := dressing{name: t.Room, types: min(p.Types, total), each: p.Each}
	if total > 0 {
		mix, err := h.Trees.Mix(t.Tree, total)
		if !ok(err) {
			return
		}
		if err := room.share(colors, total, mix); !f.note(err, "/colors") {
			return
		}
	}
	p.Needs = room.needs(needs, d.stock)
	d.Trees = append(d.Trees, p)
	d.rooms = append(d.rooms, room)
}

// strings counts the strings of lights for so many lamps.
func (p *TreePlan) strings(f *faulty, h House, at string, lamps int) {
	p.Strings, p.Runs, p.Load = lights.Strings{}, 0, lights.Load{}
	if p.Lights == (lights.Label{}) {
		return
	}
	var err error
	if p.Strings, err = p.Lights.For(shopping.Quantity{Pieces: lamps}); !f.note(err, at+"/lights") || p.Strings.Count == 0 {
		return
	}
	p.Runs, err = p.Strings.Runs()
	f.note(err, at+"/lights", "each", at+"/lights")
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
