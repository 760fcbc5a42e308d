package sheet

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// mantel writes the page of a mantel, in the order of work.
func (s *sheet) mantel(m job.MantelPlan) {
	name := m.Room
	if name == "" {
		name = "Mantel"
	}
	what, hung := s.hung(m)
	s.heading(name + ": " + what)
	needs := s.gets(m.Shares)
	if bare(m) {
		text := "NO GARLAND IS TO BE HAD FOR IT: it cannot be dressed, and nothing is bought for it"
		if m.Stockings == (mantel.Stockings{}) {
			s.line(text+".", -1, "")
			return
		}
		s.line(text+" but its stockings.", -1, "")
	}
	about := s.fire(m) + hung
	if l, ok := m.Loads[shopping.Garland]; ok {
		about += s.loads(" Hooks", "one", l, m)
	}
	if l, ok := m.Loads[shopping.Stocking]; ok {
		about += s.loads(" Stocking holders", "one", l, m)
	}
	s.line(about, -1, "")
	if s.why {
		for _, v := range m.Clearances.Violations {
			s.line("", labelWidth+1, "trim: "+s.clearance(v)+" ("+v.Source+")")
		}
	}
	told := map[shopping.Item]bool{}
	var lines []string
	for _, step := range m.Steps {
		text, takes := step.Do, s.takes(m, step, needs, told)
		if takes == "" && !had(step, needs) {
			continue // there is nothing to do it with, as a step before has told
		}
		places := s.places(step.Code, m)
		if s.why {
			if takes != "" {
				text += " It takes" + strings.TrimPrefix(takes, ":") + "."
			}
			if places != "" {
				text += " Places: " + places + "."
			}
			if step.Caution.Text != "" {
				text += " Mind: " + step.Caution.Text + "."
			}
			lines = append(lines, text)
			continue
		}
		if takes == "" && step.Code == "measure" {
			continue // the figures are above
		}
		text, _, _ = strings.Cut(text, ". ")
		text, _, _ = strings.Cut(text, ": ")
		if places != "" {
			places = "; " + places
		}
		lines = append(lines, strings.TrimSuffix(text, ".")+takes+places)
	}
	for i, line := range lines {
		s.line(strconv.Itoa(i+1), 2, line)
	}
	for _, g := range needs { // what no step names
		if !told[g.Item] {
			s.dress([]get{g}, g.Item.Kind, "")
		}
	}
	if s.why {
		for _, g := range needs {
			s.line(s.item(g.Item), labelWidth+1, g.Basis+" ("+g.Source+")")
		}
	}
}

// bare reports whether a mantel is not dressed: there is no garland for it, and nothing but its stockings.
func bare(m job.MantelPlan) bool {
	planned := false
	for _, share := range m.Shares {
		switch share.Item.Kind {
		case shopping.Stocking, shopping.Hook:
			continue
		case shopping.BaseGarland:
			planned = planned || share.Quantity.Length > 0
		}
		if share.Gets != (shopping.Quantity{}) {
			return false
		}
	}
	return planned
}

// places says where along the shelf, or how far from the first hook to the right, what a step marks, wires or puts up goes.
func (s *sheet) places(code string, m job.MantelPlan) string {
	switch code {
	case "mark":
		return s.layers(m)
	case "wire ornaments":
		return s.gaps(m)
	case "hang":
		if _, hooked := m.Loads[shopping.Garland]; !hooked && m.Run.Balusters > 0 {
			return s.rail(m)
		}
	case "trim":
		if m.Hanging.Fall > 0 {
			return "it falls " + s.length(m.Hanging.Fall)
		}
	case "hooks":
		var texts []string
		for _, kind := range []shopping.Kind{shopping.Garland, shopping.Stocking} {
			var at []units.Length
			hooks := m.Loads[kind].Hooks
			if kind == shopping.Stocking && hooks == nil { // whose places do not depend on what a hook holds
				row, _, _ := m.Mantel.Mantel.Stockings(m.Stockings, mantel.Hook{Rating: units.Pound}, m.Clearances, s.style())
				hooks = row.Hooks
			}
			for _, h := range hooks {
				at = append(at, h.At.Along-start(m))
			}
			switch {
			case len(at) > 0 && m.Run.Balusters > 0:
				texts = append(texts, s.rail(m))
			case len(at) > 0:
				texts = append(texts, s.along(at, "the left"))
			}
		}
		if len(texts) == 2 {
			return "of the garland " + texts[0] + "; of the stockings " + texts[1]
		}
		return strings.Join(texts, "")
	}
	return ""
}

// rail says at which balusters the garland of stairs is held.
func (s *sheet) rail(m job.MantelPlan) string {
	switch each := every(m); {
	case each > m.Run.Balusters:
		return "at the newel and at the post"
	case each == 1:
		return "at the newel, at every baluster and at the post"
	default:
		return "at the newel, at every " + ordinal(each) + " baluster and at the post"
	}
}

// every returns how many balusters on the garland of stairs is held.
func every(m job.MantelPlan) int {
	return (m.Run.Balusters + max(1, len(m.Run.Hooks)-1)) / max(1, len(m.Run.Hooks)-1)
}

// ordinal returns "2nd", "3rd" and so on.
func ordinal(n int) string {
	end := "th"
	if n/10%10 != 1 {
		switch n % 10 {
		case 1:
			end = "st"
		case 2:
			end = "nd"
		case 3:
			end = "rd"
		}
	}
	return strconv.Itoa(n) + end
}

// start is where the places of a mantel count from: the left end of the shelf, or the first hook of a run.
func start(m job.MantelPlan) units.Length {
	if len(m.Run.Hooks) > 0 {
		return m.Run.Hooks[0].Along
	}
	return 0
}

// onGarland returns how far from the left end of a garland, that lies on the table, a place along the shelf is.
func onGarland(m job.MantelPlan, along units.Length) units.Length {
	left, between := m.Hanging.Left, m.Length
	if run, err := m.Mantel.Mantel.Hang(m.Hanging); err == nil {
		if garland, err := run.Garland(); err == nil {
			between = garland - left - m.Hanging.Right // longer than the shelf where it swags
		}
	}
	return left + units.Length(float64(along)/float64(m.Length)*float64(between))
}

// layers says where the picks go, layer by layer if there are several.
func (s *sheet) layers(m job.MantelPlan) string {
	var all []units.Length
	var order []int
	layers := map[int][]units.Length{}
	for _, spot := range m.Spots {
		if spot.Item.Kind != shopping.Pick {
			continue
		}
		at := onGarland(m, spot.Along)
		all = append(all, at)
		if layers[spot.Layer] == nil {
			order = append(order, spot.Layer)
		}
		layers[spot.Layer] = append(layers[spot.Layer], at)
	}
	if all == nil { // along stairs or a door
		garland, picks := units.Length(0), 0
		for _, share := range m.Shares {
			switch share.Item.Kind {
			case shopping.BaseGarland:
				garland += share.Gets.Length
			case shopping.Pick:
				picks += share.Gets.Pieces
			}
		}
		if picks == 0 || len(m.Run.Hooks) == 0 {
			return ""
		}
		for i := range picks {
			all = append(all, garland*units.Length(2*i+1)/units.Length(2*picks))
		}
		return s.along(all, "its left end")
	}
	text := s.along(all, "its left end")
	if len(order) < 2 {
		return text
	}
	slices.Sort(order)
	light := "right"
	if m.Hanging.Look == mantel.AsymmetricalRight {
		light = "left"
	}
	text += "; begin at the light end, the " + light
	for _, layer := range order {
		at := layers[layer]
		text += "; layer " + strconv.Itoa(layer) + " from " + s.place(slices.Min(at)) + " to " + s.place(slices.Max(at))
	}
	return text
}

// gaps says which ornaments go into which gap between the picks, from the left or, where that is the heavy end, from the
// right. Without gaps it says where they go along the shelf.
func (s *sheet) gaps(m job.MantelPlan) string {
	var picks []units.Length
	var balls []mantel.Spot
	for _, spot := range m.Spots {
		switch spot.Item.Kind {
		case shopping.Pick:
			picks = append(picks, spot.Along)
		case shopping.Ornament:
			balls = append(balls, spot)
		}
	}
	from := "left"
	if m.Hanging.Look == mantel.AsymmetricalRight {
		from = "right"
		slices.Reverse(balls)
	}
	in := make([][]string, len(picks)+1) // by gap
	var places []string
	alike := !slices.ContainsFunc(balls, func(b mantel.Spot) bool { return b.Item != balls[0].Item })
	for _, b := range balls {
		gap := 0
		for _, p := range picks {
			if p < b.Along == (from == "left") {
				gap++
			}
		}
		name := b.Item.Color
		if name == "" {
			name = "any color"
		}
		if b.Item.Size > 0 {
			name += " of " + s.length(b.Item.Size)
		}
		in[gap] = append(in[gap], name)
		place := s.place(onGarland(m, b.Along))
		if !alike {
			place += " " + name
		}
		places = append(places, place)
	}
	if len(balls) == 0 {
		return ""
	}
	if n := len(picks); len(places) > 0 && (n < 2 || len(in[0]) > 0 || len(in[n]) > 0) {
		return "from the left end of the garland: " + strings.Join(places, "; ")
	}
	var order []string
	at := map[string][]string{}
	for gap, names := range in {
		if len(names) == 0 {
			continue
		}
		what := listing(names)
		if at[what] == nil {
			order = append(order, what)
		}
		at[what] = append(at[what], strconv.Itoa(gap))
	}
	if alike && len(order) == 1 && len(at[order[0]]) == len(picks)-1 {
		return "" // as many in each
	}
	var texts []string
	for _, what := range order {
		texts = append(texts, strings.Join(at[what], ", ")+" "+what)
	}
	return "gaps from the " + from + ": " + strings.Join(texts, "; ")
}

// hung says what is dressed, and how its garland hangs.
func (s *sheet) hung(m job.MantelPlan) (what, how string) {
	r := m.Run
	if len(r.Hooks) == 0 {
		how = "Garland " + s.hangs(m.Hanging) + "."
		if m.LeftWall {
			how += " The left end is at a wall."
		}
		if m.RightWall {
			how += " The right end is at a wall."
		}
		return "mantel, " + s.length(m.Length) + ", " + m.Hanging.Look.String(), how
	}
	first, last := r.Hooks[0], r.Hooks[len(r.Hooks)-1]
	switch {
	case r.Balusters > 0:
		what = "stairs, " + s.length(last.Along-first.Along) + " across"
		if rise := first.Below - last.Below; rise != 0 {
			what += ", " + s.length(max(rise, -rise)) + " up"
		}
	case r.To != (mantel.Point{}):
		what = "door or window, " + s.length(r.To.Along) + " by " + s.length(r.To.Below)
	default:
		what = "garland over hooks, " + s.length(last.Along-first.Along) + " across"
	}
	how = "Garland close along it"
	if r.Sag > 0 {
		how = "Garland in " + say(len(r.Hooks)-1, "swag") + " " + s.length(r.Sag) + " deep"
	}
	if r.Left > 0 || r.Right > 0 {
		how += s.falling(r.Left, r.Right)
	}
	return what, how + "."
}

// loads says what hooks carry, and what would hold where they do not.
func (s *sheet) loads(hooks, one string, l mantel.Loads, m job.MantelPlan) string {
	most, half := units.Mass(0), units.Mass(0)
	var lifted []units.Length
	var named []string // the same along stairs
	for i, h := range l.Hooks {
		if h.Down < 0 {
			lifted = append(lifted, h.At.Along-l.Hooks[0].At.Along)
			switch {
			case i == 0:
				named = append(named, "the newel")
			case i == len(l.Hooks)-1:
				named = append(named, "the post")
			default:
				named = append(named, "baluster "+strconv.Itoa(i*every(m)))
			}
		}
		most = max(most, h.Total)
		half = max(half, units.Mass(math.Ceil(math.Hypot(float64(h.Down), float64(max(h.Left, h.Right))))))
	}
	text := hooks + " at " + say(len(l.Hooks), "place") + ", at most " + s.load(most) + " on " + one + "; one may carry " + s.carries(l.Working) + "."
	switch {
	case lifted != nil && m.Run.Balusters > 0:
		text += " The garland lifts off the hook at " + listing(named) + ": tie it down there."
	case lifted != nil:
		text += " The garland lifts off the hook " + s.along(lifted, "the left") + ": tie it down there."
	}
	if half > l.Working+within && half > most+within {
		text += " OVERLOADED while it goes up, at up to " + s.load(half) + " with a swag on one side alone: hold each swag until the next one hangs."
	}
	for _, c := range l.Cautions {
		if slices.Contains(overloads, c.Code) {
			text += " OVERLOADED: " + c.Text + "."
		}
	}
	return text
}

// fire says how near what hangs comes to the fire: in one sentence whether a fire may burn, and the worst of the
// figures for trim with its source. With why the rest follow.
func (s *sheet) fire(m job.MantelPlan) string {
	c := m.Clearances
	if m.Opening == (mantel.Rectangle{}) {
		return ""
	}
	var texts []string
	if c.Fire != (mantel.Clearance{}) {
		texts = append(texts, "NO FIRE WHILE THIS HANGS: "+s.most(c.Fire.Measured)+" from the opening ("+c.Fire.Place+"), want "+s.least(c.Fire.Allowed))
	}
	if len(c.Violations) > 0 {
		worst := c.Violations[0]
		if worst.Place == c.Fire.Place {
			worst.Place = "" // as before
		}
		text := "Worst as trim: " + s.clearance(worst) + " (" + worst.Source + ")"
		if n := len(c.Violations) - 1; n > 0 && !s.why {
			text += "; " + strconv.Itoa(n) + " more with -why"
		}
		texts = append(texts, text)
	}
	if texts == nil {
		return "Nothing is within " + s.least(3*units.Foot) + " of the opening. "
	}
	return strings.Join(texts, ". ") + ". "
}

// clearance says what was measured and what is asked for.
func (s *sheet) clearance(c mantel.Clearance) string {
	what := c.Measure + " "
	if c.Place != "" {
		what = c.Place + ", " + what
	}
	if c.AtLeast {
		return what + s.most(c.Measured) + ", at least " + s.least(c.Allowed)
	}
	return what + s.least(c.Measured) + ", at most " + s.most(c.Allowed)
}

// takes says how much a step takes of what no step before it has named.
func (s *sheet) takes(m job.MantelPlan, step mantel.Step, needs []get, told map[shopping.Item]bool) string {
	var texts []string
	for _, u := range step.Uses {
		i := u.Item
		if i.Kind == shopping.Tie {
			told[i] = true
			texts = append(texts, s.ties(u, step, needs)...)
			continue
		}
		if told[i] {
			continue
		}
		var list []get
		for _, g := range needs {
			if g.Item != i {
				continue
			}
			told[i] = true
			if n := len(list); n > 0 && g.Quantity.Length == 0 { // hooks for the garland, and those for stockings
				list[n-1].Gets.Pieces += g.Gets.Pieces
				list[n-1].Quantity.Pieces += g.Quantity.Pieces
				continue
			}
			list = append(list, g)
		}
		for _, g := range list {
			text := s.lot(i, g.Gets)
			switch {
			case g.Gets == g.Quantity:
			case g.Gets == (shopping.Quantity{}):
				text = "no " + s.item(i) + " (planned " + s.quantity(g.Quantity) + ")"
			default:
				text += " (planned " + s.quantity(g.Quantity) + ")"
			}
			if len(g.cuts) > 0 {
				lap := ""
				if g.lap > 0 {
					lap = "lapped " + s.length(g.lap) + ": "
				}
				text += " (" + lap + strings.Join(g.cuts, ", ") + ")"
			}
			if i.Kind == shopping.Light && len(g.Parts) > 0 {
				text += " (" + stringsOf(g.Parts) + ")"
			}
			if i.Kind == shopping.Light && m.Cord > 0 {
				text += ", " + s.cord(m)
			}
			texts = append(texts, text)
		}
	}
	if len(texts) == 0 {
		return ""
	}
	return ": " + listed(texts)
}

// cord returns "4 ft of extension cord".
func (s *sheet) cord(m job.MantelPlan) string { return s.least(m.Cord) + " of extension cord" }

// ties says how many wire ties a step takes: one for each piece that there is to tie.
func (s *sheet) ties(ties shopping.Lot, step mantel.Step, needs []get) []string {
	tied, there := 0, 0
	for _, g := range needs {
		if g.Item == ties.Item {
			there += g.Gets.Pieces
		} else if g.Item.Kind != shopping.Bell && slices.ContainsFunc(step.Uses, func(l shopping.Lot) bool { return l.Item == g.Item }) {
			tied += g.Gets.Pieces
		}
	}
	switch tied = min(tied, ties.Quantity.Pieces); {
	case tied == 0:
		return nil
	case there == 0:
		return []string{"no " + s.item(ties.Item) + " (planned " + strconv.Itoa(tied) + ")"}
	}
	return []string{s.lot(ties.Item, shopping.Quantity{Pieces: tied})}
}

// had reports whether there is anything of what a step uses.
func had(step mantel.Step, needs []get) bool {
	return len(step.Uses) == 0 || slices.ContainsFunc(needs, func(g get) bool {
		return g.Gets != (shopping.Quantity{}) && slices.ContainsFunc(step.Uses, func(l shopping.Lot) bool { return l.Item == g.Item && l.Item.Kind != shopping.Tie })
	})
}

// hangs says how a garland hangs.
func (s *sheet) hangs(h mantel.Hanging) string {
	text := "straight"
	if h.Swags > 0 {
		text = say(h.Swags, "swag") + " " + s.length(h.Sag) + " deep"
	}
	return text + s.falling(h.Left, h.Right)
}

// falling says how far the ends fall.
func (s *sheet) falling(left, right units.Length) string {
	switch {
	case left == right:
		return ", falling " + s.length(left) + " at each end"
	case left == 0:
		return ", falling " + s.length(right) + " at the right"
	case right == 0:
		return ", falling " + s.length(left) + " at the left"
	}
	return ", falling " + s.length(left) + " at the left, " + s.length(right) + " at the right"
}
