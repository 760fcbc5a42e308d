package sheet

import (
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// tree writes the page of a tree, in the order of work. As it was measured it has no handle and bare tip but its own.
func (s *sheet) tree(t job.TreePlan, measured sizing.Tree) {
	name := t.Room
	if name == "" {
		name = "Tree"
	}
	s.heading(name + ": tree, " + s.length(t.Height))
	shape := t.Taper.String()
	if t.Base > 0 {
		grade, _ := measured.Grade()
		shape = s.length(t.Base) + " wide, " + grade + " taper"
	}
	way := "by rule"
	if t.SizeBy == "shape" {
		way = "by shape"
	}
	step := units.SquareFoot
	if s.style() == units.InMetric {
		step = units.SquareMeter / 10
	}
	area := s.style()
	if area == units.InFeetInches {
		area = units.InFeet
	}
	surface, _ := measured.DressedArea() // which the plan is made by
	if surface < 10*step {
		step /= 10
	}
	room := s.top(t)
	if f := t.Fit; f != nil {
		text, _, _ := strings.Cut(sizing.Format(*f, s.style()), "; ")
		room = "; ceiling " + s.length(t.Space.Ceiling) + ", " + text + s.under(t) + room
	}
	seen := t.Exposure.String()
	if t.Exposure == sizing.HalfTree {
		seen = "a half tree"
	}
	s.line(strings.ToUpper(shape[:1])+shape[1:]+", "+seen+", "+surface.Format(area, step)+", "+way+room+".", -1, "")
	needs := s.gets(t.Shares)
	s.lamps(needs, t)
	for _, kind := range []shopping.Kind{shopping.Garland, shopping.Ribbon} {
		s.dress(needs, kind, s.wraps(t, measured, needs, kind))
	}
	s.dress(needs, shopping.Pick, "")
	s.balls(needs, t)
	if s.why {
		s.line("rule and shape", labelWidth+1, strings.ReplaceAll(sizing.Format(t.Comparison, s.style()), "\n", ". "))
	}
}

// lamps writes the lights: how many, which strings, and what they draw by their label.
func (s *sheet) lamps(needs []get, t job.TreePlan) {
	for i, g := range needs {
		if g.Item.Kind != shopping.Light {
			continue
		}
		text := s.told(g)
		l := t.Load
		want, differ := lots(t.Strings.Each.Lamps, t.Strings.Count), false
		hang := g.Parts
		if len(hang) == 0 && g.Gets.Pieces > 0 {
			hang = want
		}
		for _, p := range hang {
			differ = differ || p.Quantity.Pieces != t.Strings.Each.Lamps
		}
		if len(hang) > 0 {
			text += ": " + stringsOf(hang)
			all := 0
			for _, p := range hang {
				all += p.Quantity.Pieces
			}
			if all != g.Gets.Pieces && len(hang) > 1 {
				text += ", " + strconv.Itoa(all) + " in all"
			}
		} else if g.Gets.Pieces > 0 {
			text += ", as " + say((g.Gets.Pieces+99)/100, "string") + " of 100 until a label says otherwise"
		}
		if first := i == slices.IndexFunc(needs, func(o get) bool { return o.Item.Kind == shopping.Light }); l.Limit > 0 && first && len(hang) > 0 {
			plugs, _ := t.Strings.Runs()
			if differ {
				text += "; the label given is of a string of " + strconv.Itoa(t.Strings.Each.Lamps) + ", and " + strconv.Itoa(t.Strings.Count) + " of them draw " +
					l.Power.String() + " from " + say(plugs, "plug") + ": go by the labels of yours; limit "
			} else {
				text += ", " + say(plugs, "plug") + ", " + l.Power.String() + ", limit "
			}
			text += l.Limit.String() + ", 80 % of " + strconv.Itoa(s.request.House.Circuit.Amperes) + " A"
			if l.Power > l.Limit {
				text += ": OVERLOADED, use more circuits"
			}
		}
		s.line(s.item(g.Item), labelWidth+1, text)
		s.reason(g.Need)
	}
}

// lots returns so many strings of so many lamps, and none of none.
func lots(lamps, count int) []shopping.Lot {
	if lamps == 0 || count == 0 {
		return nil
	}
	return slices.Repeat([]shopping.Lot{{Quantity: shopping.Quantity{Pieces: lamps}}}, count)
}

// stringsOf counts strings by their lamps: "4 strings of 100, 1 of 50".
func stringsOf(list []shopping.Lot) string {
	var order []int
	count := map[int]int{}
	for _, l := range list {
		n := l.Quantity.Pieces
		if count[n] == 0 {
			order = append(order, n)
		}
		count[n]++
	}
	var texts []string
	for i, n := range order {
		if i == 0 {
			texts = append(texts, say(count[n], "string")+" of "+strconv.Itoa(n))
		} else {
			texts = append(texts, strconv.Itoa(count[n])+" of "+strconv.Itoa(n))
		}
	}
	return strings.Join(texts, ", ")
}

// wraps says how far apart a garland or ribbon is wound: what is had of it. It is rounded up, so that it reaches the foot of the tree.
func (s *sheet) wraps(t job.TreePlan, measured sizing.Tree, needs []get, kind shopping.Kind) string {
	apart := t.RuleLook.Spacing[kind]
	if t.ByShape {
		apart = t.Look.Spacing[kind]
	}
	for _, g := range needs {
		if g.Item.Kind == kind && g.Gets.Length < g.Quantity.Length {
			apart = 0
			if wide, err := measured.Spacing(g.Gets.Length); err == nil {
				apart = wide
			}
		}
	}
	if apart == 0 {
		return ""
	}
	return "wind it " + s.least(apart) + " apart"
}

// under says what else has to go under the ceiling, if it is given or the room is tight.
func (s *sheet) under(t job.TreePlan) string {
	var with []string
	more := ""
	switch room := t.Space; {
	case room.Topper > 0:
		with = append(with, "a topper of "+s.length(room.Topper))
	case room.NoTopper || t.Fit.Verdict == "fits":
	case t.Fit.Topper > 0:
		more = "; room for a topper of " + s.length(t.Fit.Topper) + " at most"
	default:
		more = "; no room for a topper"
	}
	if t.Space.Stand > 0 {
		with = append(with, "a stand of "+s.length(t.Space.Stand))
	}
	if t.Space.Fall > 0 {
		with = append(with, "a vault "+s.length(t.Space.Fall)+" lower a foot to the side")
	}
	if with != nil {
		more = " with " + listing(with) + more
	}
	return more
}

// top says what it takes to reach the top of the tree, unless it does not go under the ceiling.
func (s *sheet) top(t job.TreePlan) string {
	what := "; topper"
	if f := t.Fit; f != nil && f.Verdict == "does not fit" {
		return ""
	} else if t.Space.NoTopper || f != nil && f.Topper == 0 {
		what = "; tip"
	}
	switch {
	case t.Ladder.Lift:
		return "; no stepladder reaches the tip: it takes a lift, and people trained to use it"
	case slices.ContainsFunc(t.Ladder.Cautions, func(c units.Caution) bool { return c.Code == "deep" }):
		return what + " farther in than a stepladder reaches"
	case t.Ladder.Size > 0:
		return what + " from a stepladder of " + s.ladder(t.Ladder.Size)
	}
	return what + " within reach from the floor"
}

// ladder prints the size of a stepladder, which is sold by feet.
func (s *sheet) ladder(size units.Length) string {
	if s.style() == units.InMetric {
		return s.length(size)
	}
	return size.Format(units.InFeetInches, units.Inch)
}

// balls writes the ornaments: how many of each color, and of which sizes they are.
func (s *sheet) balls(needs []get, t job.TreePlan) {
	total, least, most := 0, t.Types*t.Each.Min, t.Types*t.Each.Max
	types := map[shopping.Item]bool{}
	for _, p := range t.Pieces {
		if p.Item.Kind == shopping.Ornament {
			total += p.Quantity.Pieces
			types[p.Item] = true
		}
	}
	if t.Planned[shopping.Ornament].Pieces == 0 {
		return
	}
	text := strconv.Itoa(total) + " in all"
	if total < least {
		text += ", too few"
	}
	kinds := say(t.Types, "type")
	if len(types) < t.Types {
		kinds += " planned, fewer to be had"
	}
	text += ": " + kinds + ", " + t.Each.String() + " of each (" +
		strconv.Itoa(least) + " to " + strconv.Itoa(most) + " will do)"
	if next, err := sizing.TradeHeight(t.Height); err == nil && next > t.Height && !t.ByShape {
		rules := s.request.House.Trees
		types, _ := rules.Types(next)
		text += "; " + s.least(next-t.Height) + " short of " + s.length(next) + ", which has " + say(types, "type") + " and " + strconv.Itoa(int(next/units.Foot)) + " of each"
	}
	s.line("ornaments", labelWidth+1, text)
	var all shopping.Need
	if list, err := t.Needs(s.style(), t.Accents...); err == nil {
		all = list[0]
	}
	s.reason(all)
	others := map[string]int{} // that stand in for those of a color
	for _, g := range needs {
		if g.Item.Kind == shopping.Ornament && g.instead() {
			others[g.Item.Color] += g.Gets.Pieces
		}
	}
	hung := slices.Clone(t.Pieces) // those that no line has told yet
	for _, g := range needs {
		if g.Item.Kind != shopping.Ornament || g.instead() && others[g.Item.Color] == 0 {
			continue
		}
		color := g.Item.Color
		if color == "" {
			color = "any color"
		}
		if g.Item.Size > 0 && !g.instead() {
			color += ", " + s.length(g.Item.Size)
		}
		text, n := s.told(g), g.Gets.Pieces
		if g.instead() {
			g.Item.Size, g.MaxSize = 0, 0 // of all sizes
			color += ", others"
			n = others[g.Item.Color]
			text = strconv.Itoa(n)
			others[g.Item.Color] = 0
		}
		s.line("  "+color, labelWidth+1, text+s.which(taken(hung, g, n), g.Item.Size > 0, g.instead()))
		if g.Basis != all.Basis {
			s.reason(g.Need)
		}
	}
}

// taken takes n pieces of the color of a get, and of its size if it has one, from what hangs in a room.
func taken(hung []shopping.Lot, g get, n int) []shopping.Lot {
	var list []shopping.Lot
	for i := range hung {
		p := &hung[i]
		k := min(n, p.Quantity.Pieces)
		if p.Item.Kind != shopping.Ornament || p.Item.Color != g.Item.Color || g.Item.Size > 0 && !g.serves(p.Item) || k == 0 {
			continue
		}
		list = append(list, shopping.Lot{Item: p.Item, Quantity: shopping.Quantity{Pieces: k}})
		p.Quantity.Pieces -= k
		n -= k
	}
	return list
}

// serves reports whether an item has a size that the need takes.
func (g get) serves(i shopping.Item) bool {
	return i.Size >= g.Item.Size && i.Size <= max(g.Item.Size, g.MaxSize)
}

// which says how many there are of which size, and of which types. Where one size is asked for only the types are said; of
// others in their place it is not known how many types without a name they are.
func (s *sheet) which(pieces []shopping.Lot, sized, others bool) string {
	type sort struct {
		size  units.Length
		named string // empty where the shelves have no types
	}
	var order []sort
	count, types := map[sort]int{}, map[sort]int{}
	for _, p := range pieces {
		key := sort{size: p.Item.Size, named: p.Item.Type}
		if numbered(p.Item.Type) {
			key.named = ""
		}
		if count[key] == 0 {
			order = append(order, key)
		}
		count[key] += p.Quantity.Pieces
		types[key]++
	}
	plain := len(order) == 1 && order[0].named == ""
	if len(order) == 0 || plain && (sized || order[0].size == 0) {
		return ""
	}
	if len(order) == 1 && sized {
		return " (" + order[0].named + ")"
	}
	var texts []string
	for _, key := range order {
		text := strconv.Itoa(count[key])
		switch {
		case key.size > 0 && !sized:
			text += " of " + s.length(key.size)
		case key.size == 0:
			text += " of no stated size"
		}
		switch {
		case key.named != "":
			text += " (" + key.named + ")"
		case types[key] > 1 && !others:
			text += " (" + say(types[key], "type") + ")"
		}
		texts = append(texts, text)
	}
	return ": " + strings.Join(texts, ", ")
}

// numbered reports whether a type is a number of the plan's own, as "ball 2": the shelves tell none.
func numbered(name string) bool {
	number, found := strings.CutPrefix(name, "ball ")
	_, err := strconv.Atoi(number)
	return found && err == nil
}
