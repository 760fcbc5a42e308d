package sheet

import (
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A get is what a need of a room gets, from the basket if there is one.
type get struct {
	shopping.Share
	cuts  []string
	hangs units.Length // what the cuts come to, joined
	lap   units.Length // that each join takes
}

// instead reports whether it stands in for what was not to be had.
func (g get) instead() bool { return g.For != shopping.Item{} }

// gets returns what the needs of a room get, and what stands in for them.
func (s *sheet) gets(shares []shopping.Share) []get {
	var list []get
	for _, n := range shares {
		g := get{Share: n}
		strands := 0
		if s.plan.Basket != nil {
			for _, p := range s.plan.Basket.Purchases {
				for _, c := range p.Cuts {
					for _, piece := range c.Pieces {
						if piece.Item.Kind == n.Item.Kind && piece.Room == n.Room {
							if last := len(g.cuts) - 1; last >= 0 && !strings.Contains(g.cuts[last], " off ") { // said once
								g.cuts[last] = strings.TrimSuffix(strings.TrimSuffix(g.cuts[last], " strand"), " roll")
							}
							g.cuts = append(g.cuts, s.cut(c, piece))
							n := c.Rolls * max(1, piece.Quantity.Pieces)
							g.hangs += units.Length(n) * piece.Quantity.Length
							strands += n
						}
					}
				}
			}
		}
		if strands > 1 && n.Quantity.Pieces == 0 {
			join, known := s.request.Shop.Joins[shopping.Item{Kind: n.Item.Kind, Type: n.Item.Type}]
			if !known {
				join = s.request.Shop.Joins[shopping.Item{Kind: n.Item.Kind}]
			}
			g.lap = join.Overlap
			g.hangs -= units.Length(strands-1) * g.lap
		}
		list = append(list, g)
	}
	return list
}

// cut says what a room gets of a strand.
func (s *sheet) cut(c shopping.Cut, piece shopping.Need) string {
	own, roll := "a ", s.length(c.Roll)+" strand"
	if piece.Item.Kind == shopping.Ribbon {
		roll = s.length(c.Roll) + " roll"
	}
	if c.Offer == "" {
		own, roll = "", "your own "+roll
	}
	if piece.Quantity.Length == c.Roll {
		return strconv.Itoa(c.Rolls*max(1, piece.Quantity.Pieces)) + " x " + roll
	}
	length := s.length(piece.Quantity.Length)
	if n := c.Rolls * max(1, piece.Quantity.Pieces); n > 1 {
		return strconv.Itoa(n) + " x " + length + " off " + strconv.Itoa(c.Rolls) + " x " + roll
	}
	return length + " off " + own + roll
}

// told says how much there is of a need, "81 ft" or "planned 27, budget allows 29".
func (s *sheet) told(g get) string {
	planned, gets := s.quantity(g.Quantity), s.quantity(g.Gets)
	switch {
	case g.Gets == g.Quantity && g.Quantity.Pieces == 0 && g.hangs > g.Gets.Length+units.Inch: // uncut, or of pieces not too short
		return s.length(g.hangs) + " (planned " + planned + ")"
	case g.Gets == g.Quantity:
		return planned
	case g.Replaced != (shopping.Quantity{}) && g.Gets == (shopping.Quantity{}):
		return "planned " + planned + ", " + s.quantity(g.Replaced) + " others in their place"
	case g.Replaced != (shopping.Quantity{}):
		return "planned " + planned + ", " + gets + " and " + s.quantity(g.Replaced) + " others in their place"
	case g.Gets == (shopping.Quantity{}):
		return "planned " + planned + ", none to be had"
	case g.Gets.Pieces > g.Quantity.Pieces && g.Gets.Length == 0 && g.Open.Max > 0:
		return "planned " + planned + ", budget allows " + gets
	case g.Gets.Pieces > g.Quantity.Pieces && g.Gets.Length == 0:
		return gets + " (planned " + planned + ")" // whole strings of lights
	case g.Gets.Pieces == 0 && g.Gets.Length > g.Quantity.Length:
		return gets + " (planned " + planned + ")" // since strands are not cut, or not short
	case g.Gets.Pieces >= g.Open.Min && g.Open.Max > 0:
		return "planned " + planned + ", " + gets + " will do"
	}
	return "planned " + planned + ", only " + gets
}

// reason writes why a need is as it is.
func (s *sheet) reason(n shopping.Need) {
	if !s.why {
		return
	}
	text := n.Basis
	if n.Source != "" {
		text += " (" + n.Source + ")"
	}
	s.line("", labelWidth+1, "why: "+text)
}

// dress writes the needs of some kinds.
func (s *sheet) dress(needs []get, kind shopping.Kind, extra string) {
	for _, g := range needs {
		if g.Item.Kind != kind {
			continue
		}
		text := s.told(g)
		if g.lap > 0 {
			text += ", lapped " + s.length(g.lap)
		}
		if len(g.cuts) > 0 {
			text += ": " + strings.Join(g.cuts, ", ")
		}
		if extra != "" {
			text += "; " + extra
		}
		s.line(s.item(g.Item), labelWidth+1, text)
		s.reason(g.Need)
	}
}
