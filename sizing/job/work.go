package job

import (
	"cmp"
	"errors"
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// commonBoxes are the cartons of [CommonPractice].
func commonBoxes() []labor.Box {
	return []labor.Box{
		{Name: "24-cell box", Cells: 24, Cell: 5 * units.Inch / 2},
		{Name: "12-cell box", Cells: 12, Cell: 4 * units.Inch},
		{Name: "4-cell box", Cells: 4, Cell: 8 * units.Inch},
		{Name: "open box", Cells: 24},
	}
}

// fragile are the kinds that are packed as glass.
var fragile = shopping.ByKind[bool]{shopping.Ornament: true, shopping.Topper: true, shopping.Bell: true}

// dates notes the faults of the days of a request, and of what broke.
func (f *faulty) dates(rates labor.Rates, r Request) {
	stand := r.Stand
	if stand == 0 {
		switch {
		case r.Down != 0:
			f.refuse("/stand", stand.String(), "a day, since there is one to take it down", units.ErrFit)
			return
		case len(r.Lost) > 0:
			f.refuse("/stand", stand.String(), "a day, since something was lost", units.ErrFit)
		}
		stand = 1_000 // any day
	}
	_, err := rates.Dates(stand, r.Down, 0, nil, nil)
	f.note(err, "/house/rates", "stand", "/stand", "down", "/down")
	_, err = labor.NextStock(r.Lost, shopping.List{}, nil)
	f.note(err, "", "owned", "/lost")
}

// times notes an error about tasks: too many minutes, or too few people.
func (f *faulty) times(err error) bool {
	var e *units.Error
	if errors.As(err, &e) && (strings.HasPrefix(e.Field, "/work") || strings.HasPrefix(e.Field, "/tasks")) {
		f.refuse("/house/rates/minutes", e.Value, e.Want, e.Err)
		return false
	}
	return f.note(err, "/house/rates")
}

// labor plans the work of a job that has a day to stand.
func (d *draft) labor(function string, r Request) []*units.Error {
	if r.Stand == 0 {
		return nil
	}
	f := &faulty{function: function}
	rates := d.house.Rates
	rates.Units = d.house.Units
	var works []labor.Work
	for _, t := range d.Trees {
		w := labor.Work{Room: t.Room, Place: "artificial tree", Height: t.Space.Stand + t.Height, From: t.Space.Stand, Needs: hangs(t.Shares, t.Lights)}
		if t.Kind == sizing.Cut {
			w.Place = "cut tree"
		}
		works = append(works, w)
	}
	for i, m := range d.Mantels {
		works = append(works, m.work(d.rooms[len(d.Trees)+i].unhung))
	}
	up, down, err := rates.Tasks(works)
	if !f.times(err) {
		return f.list
	}
	for _, tasks := range [...][]labor.Task{up, down} {
		for i := range tasks {
			if m := tasks[i].Work - len(d.Trees); m >= 0 {
				tasks[i].Text = strings.Replace(tasks[i].Text, "the mantel", d.Mantels[m].Run.what(), 1)
			}
		}
	}
	for i := range up {
		if up[i].Kind == 0 && works[up[i].Work].Place == "mantel" {
			up[i].Text += "; call a second person to lift the garland"
		}
	}
	if r.Down == 0 {
		down = nil
	}
	if d.Work, d.Time, err = rates.Schedule(up); !f.times(err) {
		return f.list
	}
	owned, bought := d.goods.Owned, shopping.List{}
	order, _ := d.needs(make([]bool, len(d.Mantels)))
	if d.Basket == nil {
		owned = d.planned()
	} else {
		bought, order = *d.Basket, nil
		for _, p := range bought.Purchases {
			for k, s := range p.Shares {
				if len(p.Buys) > 0 && (k == 0 || s.Item != p.Shares[k-1].Item) {
					order = append(order, shopping.Need{Item: s.Item})
				}
			}
		}
	}
	d.Dates, err = rates.Dates(r.Stand, r.Down, d.Time.Max, works, order)
	f.note(err, "/house/rates", "stand", "/stand", "down", "/down", "elapsed", "/house/rates/minutes")
	visits := d.takeDown(f, rates, r, down)
	d.Quote, err = rates.Quote(bought, up, down, visits)
	f.note(err, "/house/rates", "goods", "/shop/offers", "visits", "/house/rates/minutes/day")
	d.Stock, err = labor.NextStock(owned, bought, r.Lost)
	if f.note(err, "", "owned", "/shop/owned", "bought", "/shop/offers", "lost", "/lost") {
		var e *units.Error
		things := d.things()
		if d.Cartons, _, err = rates.Pack(things, d.house.Boxes); errors.As(err, &e) && strings.HasPrefix(e.Field, "/things") {
			at, pieces := d.crowded(things)
			f.refuse(at, strconv.Itoa(pieces)+" pieces", e.Want+" to pack; without a day to stand nothing is packed", e.Err)
		} else {
			f.note(err, "/house/rates", "boxes", "/house/boxes")
		}
	}
	all := append(up, down...)
	for _, w := range works {
		for _, n := range w.Needs { // those of a mantel have no task of their own
			if n.Item.Kind == shopping.Light && n.Quantity.Pieces > 0 {
				all = append(all, labor.Task{Kind: shopping.Light})
			}
		}
	}
	d.careful = rates.Cautions(all, d.Cartons)
	return d.owned(f.list)
}

// takeDown schedules the tasks of each day of taking down, and returns how many visits there are in all. What takes
// several days begins on its date; with a cut tree, which must be out, it begins so much earlier, but stands first.
func (d *draft) takeDown(f *faulty, rates labor.Rates, r Request, tasks []labor.Task) (visits int) {
	day := int(rates.Minutes["day"].Ceil().IntPart())
	days := func(minutes int) int { return (minutes + day - 1) / day }
	visits = days(d.Time.Max)
	var ends []labor.Day
	for i := range d.Dates {
		date := &d.Dates[i]
		if len(date.Down) == 0 {
			continue
		}
		var those []labor.Task
		for _, t := range tasks {
			if slices.Contains(date.Down, t.Work) {
				those = append(those, t)
			}
		}
		list, time, _ := rates.Schedule(those) // which asks no more than putting up
		d.TakeDown = append(d.TakeDown, list...)
		n := days(time.Max)
		if visits += n; n < 2 {
			continue
		}
		date.Text = "begin to " + date.Text + ": " + say(n, "day")
		more := labor.Date(n - 1)
		if slices.ContainsFunc(date.Down, func(work int) bool { return work < len(d.Trees) && d.Trees[work].Kind == sizing.Cut }) {
			begin := date.Date - more
			if begin < r.Stand {
				date.Text += ", which the crew does not have before the cut tree must be out"
			}
			date.Date = max(min(r.Stand, date.Date), begin)
			continue
		}
		end := labor.Day{Date: r.Down + more, Text: "all is down and packed"}
		if _, err := end.Date.MarshalText(); err != nil {
			f.refuse("/down", r.Down.String(), "a day that leaves "+say(n, "day")+" to take down, before 9999-12-31", units.ErrRange)
		}
		ends = append(ends, end)
	}
	d.Dates = append(d.Dates, ends...)
	slices.SortStableFunc(d.Dates, func(a, b labor.Day) int { return cmp.Compare(a.Date, b.Date) })
	return visits
}

// work returns what there is to do at a mantel: where nothing is to be had of its garland, or too little, only the stockings are hung.
func (m MantelPlan) work(unhung bool) labor.Work {
	w := labor.Work{Room: m.Room, Place: "mantel", Height: m.top(), Needs: hangs(m.Shares, m.Mantel.Lights)}
	var sums shopping.ByKind[shopping.Quantity]
	for _, n := range w.Needs {
		sums[n.Item.Kind].Pieces += n.Quantity.Pieces
		sums[n.Item.Kind].Length += n.Quantity.Length
	}
	if sums[shopping.BaseGarland].Length > 0 && !unhung {
		return w
	}
	w.Place, w.Needs = "", nil
	if n := sums[shopping.Stocking].Pieces; n > 0 {
		w.Needs = []shopping.Need{
			{Item: shopping.Item{Kind: shopping.Hook}, Quantity: shopping.Quantity{Pieces: min(n, sums[shopping.Hook].Pieces)}},
			{Item: shopping.Item{Kind: shopping.Stocking}, Quantity: shopping.Quantity{Pieces: n}},
		}
	}
	return w
}

// top returns how high above the floor one works, as far as that is known: no run is lower than its ends. Along stairs one
// stands on them.
func (m MantelPlan) top() units.Length {
	hooks := m.Run.Hooks
	if len(hooks) == 0 || m.Run.Balusters > 0 {
		return m.Height
	}
	high, low := hooks[0].Below, max(hooks[0].Below+m.Run.Left, hooks[len(hooks)-1].Below+m.Run.Right)
	for _, h := range hooks {
		high, low = min(high, h.Below), max(low, h.Below)
	}
	return max(m.Height, min(low-high, maxHeight)) // what is higher is work from a lift too
}

// hangs returns what goes up in a room, lights by whole strings.
func hangs(shares []shopping.Share, label lights.Label) []shopping.Need {
	var list []shopping.Need
	for _, s := range shares {
		n := shopping.Need{Item: s.Item, Quantity: s.Gets}
		if s.Item.Kind == shopping.Light {
			n.Quantity.Pieces = 0
			for _, l := range lotsOf(s, label) {
				n.Quantity.Pieces += l.Quantity.Pieces
			}
		}
		list = append(list, n)
	}
	return list
}

// usualString is how many lamps a string has where no label says it.
const usualString = 100

// lotsOf returns the things that a share gets, lights string by string: as the basket has them, or else by their label.
func lotsOf(s shopping.Share, label lights.Label) []shopping.Lot {
	if len(s.Parts) > 0 {
		return s.Parts
	}
	l := shopping.Lot{Item: s.Item, Quantity: s.Gets}
	if s.Item.Kind != shopping.Light {
		return []shopping.Lot{l}
	}
	l.Quantity.Pieces = cmp.Or(label.Lamps, usualString)
	return slices.Repeat([]shopping.Lot{l}, (s.Gets.Pieces+l.Quantity.Pieces-1)/l.Quantity.Pieces)
}

// label returns that of the lights of a room.
func (d *draft) label(room int) lights.Label {
	if room < len(d.Trees) {
		return d.Trees[room].Lights
	}
	return d.Mantels[room-len(d.Trees)].Mantel.Lights
}

// planned returns what a job without a basket needs as lots.
func (d *draft) planned() []shopping.Lot {
	var lots []shopping.Lot
	for i := range d.rooms {
		for _, s := range *d.shares(i) {
			for _, l := range lotsOf(s, d.label(i)) {
				if l.Quantity != (shopping.Quantity{}) {
					lots = append(lots, l)
				}
			}
		}
	}
	return lots
}

// A shelf is what of the stock is not in a carton yet: how many of a lot of one piece.
type shelf map[shopping.Lot]int

// single returns a lot of one piece, and how many of it there are.
func single(l shopping.Lot) (shopping.Lot, int) {
	switch {
	case l.Quantity.Length > 0:
		n := max(1, l.Quantity.Pieces)
		l.Quantity.Pieces = 0
		return l, n
	case l.Item.Kind == shopping.Light:
		return l, 1
	}
	n := l.Quantity.Pieces
	l.Quantity.Pieces = 1
	return l, n
}

// take returns so many things of a lot for a room, as far as there are any.
func (s shelf) take(room string, l shopping.Lot, times int) []labor.Thing {
	one, n := single(l)
	n = min(n*times, s[one])
	s[one] -= n
	thing := labor.Thing{Lot: one, Room: room, Fragile: fragile[one.Item.Kind]}
	switch {
	case n <= 0:
		return nil
	case one.Item.Kind == shopping.Light && one.Quantity.Length == 0: // each string is a thing
		var list []labor.Thing
		for range n {
			list = append(list, thing)
		}
		return list
	}
	thing.Quantity.Pieces = n
	return []labor.Thing{thing}
}

// things returns next year's stock by the room where it hung, and what is left as "spares".
func (d *draft) things() []labor.Thing {
	stock := shelf{}
	for _, l := range d.Stock {
		one, n := single(l)
		stock[one] += n
	}
	var list []labor.Thing
	for i, room := range d.rooms {
		things := d.taken(stock, i, room.name)
		if i < len(d.Trees) {
			things = sized(things, d.Trees[i].Pieces)
		}
		list = append(list, things...)
	}
	for _, l := range d.Stock { // in their order
		one, _ := single(l)
		list = append(list, stock.take("spares", one, stock[one])...)
	}
	return merged(list)
}

// crowded returns which room has the most pieces to pack, or what is owned if more of it did not hang, and how many.
func (d *draft) crowded(things []labor.Thing) (at string, pieces int) {
	count := map[string]int{}
	for _, t := range things {
		n := max(1, t.Quantity.Pieces)
		if k := t.Item.Kind; k == shopping.Light || k == shopping.Tie || k == shopping.Hook {
			n = 1 // a string or a bag
		}
		count[t.Room] += n
	}
	at, pieces = "/shop/owned", count["spares"]
	for _, room := range d.rooms {
		if n := count[room.name]; n > pieces {
			at, pieces = room.at, n
		}
	}
	return at, pieces
}

// sized returns the things of a tree with cells for the ornaments as they hang, the largest first, where the stock does not say their sizes.
func sized(things []labor.Thing, pieces []shopping.Lot) []labor.Thing {
	type ball struct {
		color string
		size  units.Length
	}
	hung := map[ball]int{}
	var balls []ball
	for _, p := range pieces {
		b := ball{p.Item.Color, p.Item.Size}
		if hung[b] == 0 && b.size != 0 {
			balls = append(balls, b)
		}
		hung[b] += p.Quantity.Pieces
	}
	slices.SortStableFunc(balls, func(a, b ball) int { return cmp.Compare(b.size, a.size) })
	for _, t := range things {
		if t.Item.Kind == shopping.Ornament {
			hung[ball{t.Item.Color, t.Item.Size}] -= t.Quantity.Pieces
		}
	}
	var list []labor.Thing
	for _, t := range things {
		for _, b := range balls {
			if n := min(t.Quantity.Pieces, hung[b]); t.Item.Kind == shopping.Ornament && t.Item.Size == 0 && t.Item.Color == b.color && n > 0 {
				hung[b] -= n
				t.Quantity.Pieces -= n
				part := t
				part.Cell, part.Quantity.Pieces = b.size, n
				list = append(list, part)
			}
		}
		if t.Quantity.Pieces > 0 { // also strands, which are counted
			list = append(list, t)
		}
	}
	return list
}

// merged returns things with those that are alike in one, but for strings of lights.
func merged(list []labor.Thing) []labor.Thing {
	at := map[labor.Thing]int{}
	var all []labor.Thing
	for _, t := range list {
		key := t
		key.Quantity.Pieces = 0
		i, known := at[key]
		if known && t.Item.Kind != shopping.Light {
			all[i].Quantity.Pieces += t.Quantity.Pieces
			continue
		}
		at[key] = len(all)
		all = append(all, t)
	}
	return all
}

// taken takes from the stock what hung in a room.
func (d *draft) taken(stock shelf, room int, name string) []labor.Thing {
	var list []labor.Thing
	for _, s := range *d.shares(room) {
		if s.Gets.Length > 0 && d.Basket != nil {
			continue // it is cut: see below
		}
		for _, p := range lotsOf(s, d.label(room)) {
			list = append(list, stock.take(name, p, 1)...)
		}
	}
	if d.Basket == nil {
		return list
	}
	for _, p := range d.Basket.Purchases {
		for _, c := range p.Cuts {
			for _, piece := range c.Pieces {
				if piece.Room == name {
					list = append(list, stock.take(name, shopping.Lot{Item: piece.Item, Quantity: piece.Quantity}, c.Rolls)...)
				}
			}
		}
	}
	return list
}

// mendRates puts the value of a field of the rates, or of a name in a table of them, to the one to start from.
func mendRates(r *Request, names []string) {
	start := labor.StartingRates()
	rates := &r.House.Rates
	name := strings.NewReplacer("~1", "/", "~0", "~").Replace(names[len(names)-1])
	switch names[0] {
	case "minutes":
		rates.Minutes = mended(rates.Minutes, start.Minutes, name)
	case "days":
		rates.Days = mended(rates.Days, start.Days, name)
	case "percent":
		rates.Percent = mended(rates.Percent, start.Percent, name)
	case "price":
		rates.Price = mended(rates.Price, start.Price, name)
	case "crew":
		rates.Crew = start.Crew
	case "lift":
		rates.Lift = start.Lift
	case "places":
		rates.Places = start.Places
	default: // reach and pair
		rates.Reach, rates.Pair = start.Reach, start.Pair
	}
}

// mended returns a table in which a name is as in another, or not there.
func mended[V any](table, start map[string]V, name string) map[string]V {
	table = maps.Clone(table)
	if v, ok := start[name]; ok && table != nil {
		table[name] = v
	} else {
		delete(table, name)
	}
	return table
}
