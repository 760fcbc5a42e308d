package job

import (
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// String returns the rooms, the basket and the cautions.
func (p Plan) String() string {
	var b strings.Builder
	for _, t := range p.Trees {
		b.WriteString(t.String())
	}
	for _, m := range p.Mantels {
		b.WriteString(m.String())
	}
	if p.Basket != nil {
		b.WriteString("basket:\n" + p.Basket.String())
	}
	if len(p.Cautions) > 0 {
		b.WriteString("take care:\n")
	}
	for _, c := range p.Cautions {
		b.WriteString("    " + c.String() + "\n")
	}
	if b.Len() == 0 {
		return unplanned
	}
	return b.String()
}

// unplanned is the text of a plan that came with an error.
const unplanned = "nothing was planned"

// String returns what hangs, a line each.
func (p TreePlan) String() string { return hung(p.Room, "tree", p.Height, p.Shares) }

// String returns what hangs, a line each.
func (p MantelPlan) String() string {
	if p.Run.given() {
		return hung(p.Room, "garland", 0, p.Shares)
	}
	return hung(p.Room, "mantel", p.Length, p.Shares)
}

func hung(room, what string, size units.Length, shares []shopping.Share) string {
	if size == 0 && len(shares) == 0 {
		return unplanned
	}
	switch room {
	case "":
	case what: // of a job that names no room
		room = ""
	default:
		room += ", "
	}
	text := room + what
	if size != 0 {
		text = room + size.String() + " " + what
	}
	text += ":\n"
	for _, s := range shares {
		text += "    " + s.Item.String() + ": " + s.Gets.String()
		if s.Gets != s.Quantity {
			text += ", " + s.Quantity.String() + " planned"
		}
		text += "\n"
	}
	return text
}
