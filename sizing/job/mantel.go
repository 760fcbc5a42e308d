package job

import (
	"strconv"
	"strings"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A MantelPlan is the figures for one mantel.
type MantelPlan struct {
	Mantel                                    // as given, with drops or hooks
	Shares     []shopping.Share               `json:"shares"`          // what it takes, with what it gets, then substitutes
	Spots      []mantel.Spot                  `json:"spots"`           // where what hangs goes along a shelf
	Loads      map[shopping.Kind]mantel.Loads `json:"loads,omitempty"` // of garland and stockings, as far as weight and hook are known
	Clearances mantel.Clearances              `json:"clearances"`      // as far as shelf and opening are known
	Cord       units.Length                   `json:"cord,omitzero"`   // the extension cord of the lights, if the outlet is known
	Steps      []mantel.Step                  `json:"steps"`           // the order of work
}

// A mantelDraft is a mantel in the making.
type mantelDraft struct {
	MantelPlan
	cautions []units.Caution
}

// mantel plans a mantel at a place of the request.
func (d *draft) mantel(f *faulty, colors palette.Palette, m Mantel, at string) {
	before := len(f.list)
	p := &mantelDraft{MantelPlan: MantelPlan{Mantel: m, Loads: map[shopping.Kind]mantel.Loads{}}}
	hang, style := p.shelf, d.house.Units
	if m.Run.given() {
		hang = p.run
	}
	run, needs := hang(f, d.house.Mantels, style, at)
	if d.house.Units == units.InMetric && len(f.list) == before {
		err := inMetric(run, needs)
		f.note(err, at)
	}
	args := []string{"perFoot", at + "/perFoot", "hook", at + "/hook", "k", at + "/hook"}
	hook, hooked := m.Hook, m.Hook != (mantel.Hook{})
	if !hooked {
		hook.Rating = units.Pound // to look at the weight alone
	} else if _, err := hook.WorkingLoad(); !f.note(err, at+"/hook", args...) {
		hook, hooked = mantel.Hook{Rating: units.Pound}, false
	}
	if m.PerFoot != 0 && len(f.list) == before {
		loads, err := run.Loads(m.PerFoot, hook, style)
		if f.note(err, at+"/hanging", args...) && hooked {
			p.Loads[shopping.Garland] = loads
			needs = append(needs, loads.Needs...)
			p.cautions = append(p.cautions, loads.Cautions...)
		}
	}
	if len(f.list) == before && p.Loads[shopping.Garland].Hooks == nil && m.Run.Hooks == nil && m.Run.Balusters == 0 {
		p.cautions = append(p.cautions, p.loose())
	}
	if m.Stockings != (mantel.Stockings{}) {
		needs = append(needs, p.stockings(f, hook, hooked, style, at)...)
	}
	if m.Lights != (lights.Label{}) && len(f.list) == before {
		needs = append(needs, p.lights(f, d.house, run, at)...)
	}
	if len(f.list) > before {
		return
	}
	steps, err := mantel.Steps(p.Hanging, needs)
	f.note(err, at, "hanging", at+"/hanging")
	p.Steps = steps
	for i := range p.Steps {
		if m.Run.given() {
			p.Run.work(&p.Steps[i], hooked, m.Run.Hooks != nil)
		}
	}
	room := dressing{name: m.Room, at: at, cautions: p.cautions}
	total := 0
	for i, n := range needs {
		needs[i].Item = d.stock.sold(n.Item)
		if n.Item.Kind == shopping.BaseGarland {
			needs[i].Basis += d.nearly(n.Quantity.Length, run)
		}
		if n.Item.Kind == shopping.Ornament {
			total += n.Quantity.Pieces
		}
	}
	if total != 0 {
		f.note(room.share(colors, total, nil), at, "palette", "/colors", "shares", "/colors")
	}
	p.Shares = room.needs(needs, stockOf(shopping.Shop{}, colors, false)) // of any size
	for i := range p.Steps {
		p.Steps[i].Uses = planned(p.Steps[i].Uses, p.Shares, d.stock)
	}
	d.Mantels = append(d.Mantels, p.MantelPlan)
	d.rooms = append(d.rooms, room)
}

// loose returns the caution of a garland of which it is not known what holds it.
func (p *mantelDraft) loose() units.Caution {
	c := units.Caution{Code: "no hooks planned", Source: "geometry: what was measured", Text: "the weight of the garland or the rating of a hook was not given, so no hooks are planned, and what holds it was not checked"}
	if n := p.Hanging.Swags + p.Run.Swags; n > 0 {
		c.Text += "; " + say(n, "swag") + " hang from " + say(n+1, "hook")
	}
	return c
}

// inMetric rounds the garland of a run up to a centimeter, not to an inch, among the needs.
func inMetric(run mantel.Run, needs []shopping.Need) error {
	const step = units.Centimeter
	var failed error
	for i := range needs {
		if q := &needs[i].Quantity; needs[i].Item.Kind == shopping.BaseGarland {
			exact, err := run.Garland()
			failed = err
			q.Length = min(q.Length, (exact+step-1)/step*step)
		}
	}
	return failed
}

// shelf hangs the garland along the shelf.
func (p *mantelDraft) shelf(f *faulty, rules mantel.Rules, style units.Style, at string) (mantel.Run, []shopping.Need) {
	args := []string{"mantel", at, "m", at, "length", at + "/length", "look", at + "/hanging/look", "sag", at + "/hanging/sag", "hanging", at + "/hanging"}
	ofHouse := func(err error) bool { return f.note(err, "/house/mantels", args...) }
	ofShelf := func(err error) bool { return f.note(err, at, args...) }
	h := &p.Hanging
	var err error
	p.Spots, err = rules.Spots(p.Mantel.Mantel, h.Look)
	ofHouse(err)
	if h.Sag == 0 && h.Swags > 0 {
		h.Sag = sixth(p.Length, h.Swags)
	}
	if h.Left == 0 && h.Right == 0 {
		hanging, cautions, err := rules.Hang(p.Mantel.Mantel, *h, style)
		if ofHouse(err) {
			*h, p.cautions = hanging, cautions
		}
	}
	needs, err := rules.Needs(p.Mantel.Mantel, *h, style)
	ofHouse(err)
	run, err := p.Hang(*h)
	ofShelf(err)
	p.Clearances, err = p.Mantel.Mantel.Clearances(*h, style)
	ofShelf(err)
	p.cautions = append(p.cautions, p.Clearances.Cautions...)
	return run, needs
}

// nearly says how much shorter a garland would be with a strand fewer, if its ends can spare that.
func (d *draft) nearly(garland units.Length, run mantel.Run) string {
	const each = 2 * units.Inch // which nobody sees
	text := func(l units.Length) string {
		if d.house.Units == units.InMetric {
			return l.Format(units.InMetric, units.Centimeter)
		}
		return l.Format(d.house.Units, units.Inch/2)
	}
	spare := min(run.Left/2, each) + min(run.Right/2, each)
	for _, o := range d.goods.Offers {
		join, known := d.goods.Joins[shopping.Item{Kind: o.Item.Kind, Type: o.Item.Type}]
		if !known {
			join = d.goods.Joins[shopping.Item{Kind: o.Item.Kind}]
		}
		l := o.Pack.Length - join.Overlap
		if o.Item.Kind != shopping.BaseGarland || l <= 0 {
			continue
		}
		n := (garland - join.Overlap) / l
		if less := garland - join.Overlap - n*l; n > 0 && less > 0 && less <= spare {
			return "; " + text(less) + " less at the ends, and " + strconv.FormatInt(int64(n), 10) + " x " + text(o.Pack.Length) + " would do"
		}
	}
	return ""
}

// sixth returns the usual sag of swags, to half an inch.
func sixth(across units.Length, swags int) units.Length {
	const step = units.Inch / 2
	return across / units.Length(swags) / 6 / step * step
}

// given reports whether a run is asked for.
func (r Run) given() bool {
	return r.Hooks != nil || r.To != (mantel.Point{}) || r.Balusters != 0 || r.Swags != 0 || r.Sag != 0 || r.Left != 0 || r.Right != 0 || r.Lying
}

// what says what is dressed.
func (r Run) what() string {
	switch {
	case !r.given():
		return "the mantel"
	case r.Balusters != 0:
		return "the stairs"
	case r.To != (mantel.Point{}):
		return "the door or window"
	}
	return "along the hooks"
}

// work says what a step is along stairs, round a door or over hooks, where there is no fireplace.
func (r Run) work(s *mantel.Step, hooked, there bool) {
	switch s.Code {
	case "hang":
		s.Do = r.hang(hooked, there)
	case "hooks":
		s.Caution = units.Caution{Code: "no chair", Text: "stand on a step stool or ladder that is made for it, not on a chair", Source: "common practice"}
	case "measure":
		s.Do, s.Caution = "Step back and measure: drops and swags.", units.Caution{}
	}
}

// hang says how the garland of a run is put up: with hooks, that are there or not, or whatever else holds it.
func (r Run) hang(hooked, there bool) string {
	way := ", from the middle outwards"
	if first, last := r.Hooks[0], r.Hooks[len(r.Hooks)-1]; first.Below != last.Below {
		way = ", from the lower end up"
	}
	if r.Left > 0 || r.Right > 0 {
		way += ", and let the ends fall"
	}
	switch {
	case hooked || there:
		return "Hang the garland from hook to hook" + way + "."
	case r.Balusters > 0:
		return "Tie the garland to the rail at each place" + way + "."
	}
	return "Fasten the garland along the top, from the middle outwards, and let both sides fall."
}

// maxHeight is how high a run may hang.
const maxHeight = 100 * units.Foot

// run hangs the garland along stairs, round a door or over hooks.
func (p *mantelDraft) run(f *faulty, rules mantel.Rules, style units.Style, at string) (mantel.Run, []shopping.Need) {
	r := &p.Run
	at += "/run"
	if p.Length != 0 {
		f.refuse(strings.TrimSuffix(at, "/run")+"/length", p.Length.String(), "0 ft, since a run takes the place of the shelf", units.ErrFit)
	}
	if p.Height < 0 || p.Height > maxHeight {
		f.refuse(strings.TrimSuffix(at, "/run")+"/height", p.Height.String(), "0 ft to "+maxHeight.String(), units.ErrRange)
	}
	hung, err := r.Run, error(nil)
	if r.Hooks == nil {
		args := []string{"newel", at + "/to", "post", at + "/to", "corner", at + "/to", "balusters", at + "/balusters", "each", at + "/swags", "swags", at + "/swags"}
		var cautions []units.Caution
		if r.Balusters != 0 {
			each := 1
			switch {
			case r.Swags < 0 || r.Swags > max(0, r.Balusters)+1:
				f.refuse(at+"/swags", strconv.Itoa(r.Swags), "0 to one more than the balusters", units.ErrRange)
			case r.Swags > 0:
				each = (r.Balusters + r.Swags) / r.Swags
				if shared, ok := share(r.Balusters, r.Swags); !ok && r.Balusters != 0 {
					f.refuse(at+"/swags", strconv.Itoa(r.Swags), shared+" over "+say(r.Balusters, "baluster")+", or 0 for none", units.ErrFit)
				}
			}
			hung, cautions, err = mantel.Stairs(mantel.Point{}, r.To, r.Balusters, each)
		} else {
			hung, cautions, err = mantel.Door(r.To, r.Swags)
		}
		f.note(err, at, args...)
		hung.Sag, hung.Left, hung.Right = r.Sag, hung.Left+r.Left, hung.Right+r.Right
		if r.Swags > 0 && r.Sag == 0 {
			hung.Sag = sixth(r.To.Along, r.Swags)
		}
		p.cautions = append(p.cautions, cautions...)
	} else if r.To != (mantel.Point{}) || r.Balusters != 0 || r.Swags != 0 {
		f.refuse(at+"/hooks", strconv.Itoa(len(r.Hooks))+" hooks", "either hooks, or where stairs or a door go to", units.ErrFit)
	}
	if err != nil {
		return mantel.Run{}, nil
	}
	needs, err := hung.Needs(rules.Traditional.PickSpacing, style)
	f.note(err, at, "pickSpacing", "/house/mantels/traditional/pickSpacing")
	for i := range needs {
		if needs[i].Item.Kind == shopping.Pick {
			needs[i].Item.Type = "mantel" // one kind of pick for all garlands
		}
	}
	_, err = mantel.Steps(p.Hanging, nil)
	f.note(err, at, "hanging", strings.TrimSuffix(at, "/run")+"/hanging")
	r.Run = hung
	p.Spots, p.Clearances = []mantel.Spot{}, mantel.Clearances{Places: []mantel.Clearance{}, Violations: []mantel.Clearance{}, Cautions: []units.Caution{}}
	return hung, needs
}

// share returns the numbers of swags that so many balusters hold, as in "1, 2, 3, 4, 6, 8 or 16": each
// reaches over as many but the last, which may be shorter. It reports whether swags is one of them.
func share(balusters, swags int) (numbers string, ok bool) {
	before := 0
	for each := balusters + 1; each > 0; each-- {
		n := (balusters + each) / each
		if n == before {
			continue
		}
		switch before = n; {
		case each == 1:
			numbers += " or "
		case numbers != "":
			numbers += ", "
		}
		numbers += strconv.Itoa(n)
		ok = ok || n == swags
	}
	return numbers, ok
}

// stockings hangs a row of stockings below the shelf, and returns what it takes.
func (p *mantelDraft) stockings(f *faulty, hook mantel.Hook, hooked bool, style units.Style, at string) []shopping.Need {
	if p.Run.given() {
		f.refuse(at+"/stockings", strconv.Itoa(p.Stockings.Count), "a shelf to hang them from", units.ErrFit)
		return nil
	}
	loads, near, err := p.Mantel.Mantel.Stockings(p.Stockings, hook, p.Clearances, style)
	if !f.note(err, at, "m", at, "stockings", at+"/stockings", "hook", at+"/hook") {
		return nil
	}
	p.Clearances = near
	p.cautions = append(p.cautions, near.Cautions...)
	if hooked {
		p.Loads[shopping.Stocking] = loads
		p.cautions = append(p.cautions, loads.Cautions...)
	}
	return loads.Needs
}

// lights winds strings through the garland, and returns what they come to.
func (p *mantelDraft) lights(f *faulty, h House, run mantel.Run, at string) []shopping.Need {
	label := p.Mantel.Lights
	need, cord, cautions, err := run.Lights(label.Lamps, label.Length, p.Outlet, h.Units)
	if !f.note(err, at, "lamps", at+"/lights/lamps", "length", at+"/lights/length", "outlet", at+"/outlet") {
		return nil
	}
	if p.Outlet != (mantel.Point{}) {
		p.Cord = cord
	}
	count, err := label.For(need.Quantity)
	if !f.note(err, at+"/lights") {
		return nil
	}
	load, err := count.Load(h.Circuit)
	f.note(err, at+"/lights", "each", at+"/lights", "c", "/house/circuit", "circuit", "/house/circuit")
	p.cautions = append(append(p.cautions, cautions...), load.Caution)
	if plugs, _ := count.Runs(); plugs > 1 {
		p.cautions = append(p.cautions, units.Caution{
			Code: "plugs", Source: "the label",
			Text: say(count.Count, "string") + " of lights take " + strconv.Itoa(plugs) + " plugs, since no more may be joined: bring a cord for each",
		})
	}
	return []shopping.Need{need}
}

// planned returns what a step uses as the needs have it: ornaments by color, the rest as it is sold.
func planned(lots []shopping.Lot, needs []shopping.Share, stock stock) []shopping.Lot {
	var list []shopping.Lot
	for _, l := range lots {
		if l.Item.Kind != shopping.Ornament {
			list = append(list, shopping.Lot{Item: stock.sold(l.Item), Quantity: l.Quantity})
			continue
		}
		for _, n := range needs {
			if n.Item.Kind == shopping.Ornament {
				list = append(list, shopping.Lot{Item: n.Item, Quantity: n.Quantity})
			}
		}
	}
	return list
}

// hang leaves the spots of what there is to hang. Picks fewer than planned are spread over the shelf, and the ornaments over their gaps.
func (p *MantelPlan) hang(rules mantel.Rules, stock stock, pieces []shopping.Lot) {
	planned, there := 0, map[shopping.Kind]int{}
	for _, s := range p.Shares {
		there[s.Item.Kind] += s.Gets.Pieces
		if s.Item.Kind == shopping.Pick {
			planned += s.Quantity.Pieces
		}
	}
	balls := 0
	for _, l := range pieces {
		balls += l.Quantity.Pieces
	}
	if picks := there[shopping.Pick]; picks != 0 && picks < planned && !p.Run.given() {
		p.Spots = p.spread(rules, picks, balls)
	}
	hangs := evenly(balls, ornaments(p.Spots))
	list, at, hung := []mantel.Spot{}, 0, map[shopping.Kind]int{}
	for _, s := range p.Spots {
		if s.Item.Kind == shopping.Ornament {
			at++
			if !hangs[at-1] {
				continue
			}
		} else if hung[s.Item.Kind]++; hung[s.Item.Kind] > there[s.Item.Kind] {
			continue
		}
		s.Item = stock.sold(s.Item)
		list = append(list, s)
	}
	p.Spots = colored(list, pieces, p.Hanging.Look)
}

// spread returns the spots of so many picks, fewer than planned, over the whole shelf, with places for ornaments in
// their gaps; where the gaps do not hold so many, with those planned.
func (p *MantelPlan) spread(rules mantel.Rules, picks, places int) []mantel.Spot {
	r := &rules.Traditional
	if p.Hanging.Look != mantel.Traditional {
		r = &rules.Asymmetrical
	}
	n := units.Length(picks)
	r.PickSpacing = (p.Length + n - 1) / n
	r.Layers = min(r.Layers, max(1, picks/2)) // so that the top one has a gap
	for {
		list, err := rules.Spots(p.Mantel.Mantel, p.Hanging.Look)
		switch {
		case err != nil: // more to a gap than there may be
			r.OrnamentsPerGap = 0
			list, _ = rules.Spots(p.Mantel.Mantel, p.Hanging.Look)
			for _, s := range p.Spots {
				if s.Item.Kind == shopping.Ornament {
					list = append(list, s)
				}
			}
			return list
		case ornaments(list) >= places:
			return list
		}
		r.OrnamentsPerGap++
	}
}

// ornaments counts the places for ornaments.
func ornaments(spots []mantel.Spot) (n int) {
	for _, s := range spots {
		if s.Item.Kind == shopping.Ornament {
			n++
		}
	}
	return n
}

// evenly says which of a row of places are taken by n things, the same from both ends as far as that goes.
func evenly(n, places int) []bool {
	taken := make([]bool, places)
	n = min(n, places)
	for i := range n / 2 {
		at := (2*i + 1) * places / (2 * n)
		taken[at], taken[places-1-at] = true, true
	}
	if n%2 == 1 {
		taken[(places-1)/2] = true
	}
	return taken
}

// colored returns spots with the ornaments in the colors of pieces. On
// a traditional mantel the two ends are alike, as far as the numbers are even.
func colored(list []mantel.Spot, pieces []shopping.Lot, look mantel.Look) []mantel.Spot {
	var at []int // the places of the ornaments in the list
	left := make([]int, len(pieces))
	for i, p := range pieces {
		left[i] = p.Quantity.Pieces
	}
	for i, s := range list {
		if s.Item.Kind == shopping.Ornament {
			at = append(at, i)
		}
	}
	// most returns the color of which most is to come, with at least so many, another than the one before if there is one.
	most := func(least, before int) int {
		best := -1
		for i, n := range left {
			if n >= least && (best < 0 || n > left[best] && i != before || best == before) {
				best = i
			}
		}
		return best
	}
	taken := make([]bool, len(at))
	take := func(spot, piece int) {
		list[at[spot]].Item = pieces[piece].Item
		list[at[spot]].Item.Type = ""
		left[piece]--
		taken[spot] = true
	}
	if look == mantel.Traditional {
		before := -1
		for i := len(at)/2 - 1; i >= 0; i-- {
			if piece := most(2, before); piece >= 0 {
				take(i, piece)
				take(len(at)-1-i, piece)
				before = piece
			}
		}
	}
	before := -1
	for i := range at {
		if !taken[i] {
			before = most(1, before)
			take(i, before)
		}
	}
	return list
}
