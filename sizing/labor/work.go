package labor

import (
	"cmp"
	"math/big"
	"slices"
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A Work is one tree, mantel or other place to dress, before any rate is applied: what
// goes there, how many and how high.
type Work struct {
	Room       string          `json:"room,omitempty"`       // where it is, "ticket hall"; may be empty
	Height     units.Length    `json:"height"`               // of its highest point above the floor, up to 100 ft
	From       units.Length    `json:"from,omitempty"`       // of its lowest point, 0 to Height
	Artificial bool            `json:"artificial,omitempty"` // a tree with branches to shape
	Mantel     bool            `json:"mantel,omitempty"`     // a mantel, which is one task whatever goes on it
	Needs      []shopping.Need `json:"needs"`                // what goes on it; of each the quantity that is planned
}

// A Task is one step of the work. Tasks of the same Work are done one after the other.
type Task struct {
	Work     int               `json:"work"`             // the index of the Work that it is part of
	Room     string            `json:"room,omitempty"`   // where it is
	Kind     shopping.Kind     `json:"kind,omitempty"`   // what is put up; 0 for shaping and for a mantel
	Quantity shopping.Quantity `json:"quantity"`         // how much of it; for shaping the height of tree
	Text     string            `json:"text"`             // the same in words: "8 ornaments, 6 ft to 8 ft"
	Height   units.Length      `json:"height"`           // of its highest point above the floor
	Minutes  int               `json:"minutes"`          // from its beginning to its end
	People   int               `json:"people"`           // how many it takes, all the time: the person-minutes are Minutes times People
	Ladder   bool              `json:"ladder,omitempty"` // some of it is above the house's reach
	Down     bool              `json:"down,omitempty"`   // taking down, and packing
	Basis    string            `json:"basis"`            // the formula with this job's figures
	Start    int               `json:"start"`            // minutes after the work begins; set by Rates.Schedule
	Who      []int             `json:"who,omitempty"`    // who of the crew does it, from 1; set by Rates.Schedule
}

// Bounds of what the methods take; the sums fit 32 bits.
const (
	maxWorks   = 500
	maxNeeds   = 5_000
	maxTasks   = 5_000
	maxPieces  = 1_000_000
	maxMinutes = 100_000       // of one kind in one work
	maxSum     = 1_000_000_000 // person-minutes of all tasks
	maxHeight  = 100 * units.Foot
	maxLength  = 1_000_000 * units.Meter
	maxRate    = 1_000 // minutes, percent
)

// A step is what is done with a kind, and when.
type step struct {
	stage   int    // stages follow one another; within a stage of spread pieces, level follows level
	up, off string // the verbs
	tip     bool   // it goes to the tip, and is not spread over the height
}

// The stages of dressing.
const (
	stageLights = iota
	stageWound
	stageSpread
	stageFoot
)

func stepOf(k shopping.Kind) step {
	switch {
	case k == shopping.Light:
		return step{stage: stageLights, up: "string", off: "unstring"}
	case k.Running():
		return step{stage: stageWound, up: "wind", off: "unwind"}
	case k == shopping.Topper:
		return step{stage: stageSpread, up: "set", off: "take off", tip: true}
	case k == shopping.Skirt:
		return step{stage: stageFoot, up: "lay", off: "take up"}
	case k == shopping.Pick:
		return step{stage: stageSpread, up: "set", off: "pull"}
	}
	return step{stage: stageSpread, up: "hang", off: "take off"}
}

// rank is the order of kinds in a level: the topper while the ladder is there, then picks, then ornaments.
func rank(k shopping.Kind) int {
	switch k {
	case shopping.Topper:
		return 0
	case shopping.Pick:
		return 1
	case shopping.Ornament:
		return 2
	}
	return 3 + int(k)
}

// String returns one line such as
//
//	ticket hall: hang 4 ornaments, 8 ft to 10 ft: 7 min, ladder, 2 people
func (t Task) String() string {
	text := t.object()
	text += ": " + minutesText(t.Minutes)
	if t.Ladder {
		text += ", ladder"
	}
	if t.People > 1 {
		text += ", " + strconv.Itoa(t.People) + " people"
	}
	return text
}

// object returns the room, the verb and what it is done to.
func (t Task) object() string {
	s := stepOf(t.Kind)
	switch {
	case t.Kind == 0 && t.Quantity.Length > 0:
		s.up, s.off = "shape", "fold"
	case t.Kind == 0:
		s.up, s.off = "dress", "clear"
	}
	verb := s.up
	if t.Down {
		verb = s.off
	}
	if t.Room != "" {
		verb = t.Room + ": " + verb
	}
	return verb + " " + t.Text
}

// minutesText returns "45 min", "6 h" or "6 h 12 min".
func minutesText(n int) string {
	switch {
	case n < 60:
		return strconv.Itoa(n) + " min"
	case n%60 == 0:
		return strconv.Itoa(n/60) + " h"
	}
	return strconv.Itoa(n/60) + " h " + strconv.Itoa(n%60) + " min"
}

// Tasks returns what is to be done at each place, in the order of work:
//
//   - an artificial tree is shaped first, section by section from the floor up;
//   - then lights, then garland and ribbon, each from the top down;
//   - then level by level from the top down the topper, picks, ornaments and the rest, so that no
//     ladder leans into dressed branches; the skirt last.
//
// The levels are above Pair, from Reach to Pair, and below Reach. Of what is spread over a tree the part above a height h
// is the share of its surface there, for a cone from From to Height
//
//	((Height - h) / (Height - From))²
//
// rounded up to a whole piece or inch. If you know better, give each level as a Work of its own. A
// task takes
//
//	rate · quantity · (1 + Above, if above Pair)
//
// minutes, exact, and rounded up to a whole minute for a kind from the top down, so that rounding adds
// less than a minute to each kind of a place; and two people above Pair. Tasks of the same kind and level are one.
//
// A kind without a rate takes no time, and its basis says so. A need whose quantity is not
// a number of pieces, or not a length for a running kind, is an error wrapping [units.ErrFit]; so are a From above Height and a Pair below
// Reach. At most 500 works with 5,000 needs, 1,000,000 pieces or 1,000 km, and 100,000 min of a kind.
//
// Source: the order is common practice; the cone is a choice of this package, as in package sizing.
func (r Rates) Tasks(work []Work) ([]Task, error) {
	c := &checker{fn: "Rates.Tasks"}
	r.checkTimes(c)
	if len(work) > maxWorks {
		c.fail(units.ErrRange, "/work", strconv.Itoa(len(work)), "at most 500 works")
	}
	var tasks []Task
	needs := 0
	for i, w := range work {
		c.work(i, w)
		if needs += len(w.Needs); needs > maxNeeds {
			c.fail(units.ErrRange, at("/work", i, "needs"), strconv.Itoa(needs), "at most 5,000 needs in all")
		}
		if c.err != nil {
			return nil, c.err
		}
		tasks = append(tasks, r.tasks(c, i, w)...)
	}
	if c.err != nil {
		return nil, c.err
	}
	return tasks, nil
}

// checkTimes checks the fields that tasks are made with.
func (r Rates) checkTimes(c *checker) {
	c.decimal("/fluff", r.Fluff, maxRate)
	for kind, d := range r.Each {
		c.decimal("/each/"+shopping.Kind(kind).String(), d, maxRate)
	}
	c.decimal("/mantel", r.Mantel, maxRate)
	c.decimal("/above", r.Above, maxRate)
	c.length("/reach", r.Reach, maxHeight)
	c.length("/pair", r.Pair, maxHeight)
	if r.Pair < r.Reach {
		c.fail(units.ErrFit, "/pair", r.Pair.String(), "the reach of "+r.Reach.String()+" or more")
	}
}

// work checks all of a work.
func (c *checker) work(i int, w Work) {
	c.text(at("/work", i, "room"), w.Room, true)
	c.length(at("/work", i, "height"), w.Height, maxHeight)
	c.length(at("/work", i, "from"), w.From, maxHeight)
	if w.From > w.Height {
		c.fail(units.ErrFit, at("/work", i, "from"), w.From.String(), "the height of "+w.Height.String()+" or less")
	}
	if w.Mantel && w.Artificial {
		c.fail(units.ErrFit, at("/work", i, "artificial"), "true", "false for a mantel")
	}
	var sums shopping.ByKind[shopping.Quantity]
	for j, n := range w.Needs {
		list := at("/work", i, "needs")
		if !c.item(at(list, j, "item"), n.Item) {
			return
		}
		field := at(list, j, "quantity")
		c.quantity(field, n.Item.Kind, n.Quantity)
		if c.err != nil {
			return
		}
		q := &sums[n.Item.Kind]
		q.Pieces += n.Quantity.Pieces
		q.Length += running(n.Quantity)
		if q.Pieces > maxPieces || q.Length > maxLength {
			c.fail(units.ErrRange, field, n.Quantity.String(), "at most 1,000,000 pieces or 1,000 km of a kind")
			return
		}
	}
}

// item checks an item, and reports whether it is one.
func (c *checker) item(field string, i shopping.Item) bool {
	_, err := i.MarshalText()
	if err != nil {
		reason := units.ErrSyntax
		if _, err := i.Kind.MarshalText(); err != nil {
			reason = units.ErrName
		} else if i.Size < 0 || i.Size > maxHeight {
			reason = units.ErrRange
		}
		c.fail(reason, field, i.String(), "an item that shopping.ParseItem reads")
	}
	return err == nil
}

// quantity checks how much there is of a kind.
func (c *checker) quantity(field string, k shopping.Kind, q shopping.Quantity) {
	switch {
	case q.Pieces < 0 || q.Pieces > maxPieces || q.Length < 0 || running(q) > maxLength || q.Length > maxLength:
		c.fail(units.ErrRange, field, q.String(), "0 to 1,000,000 pieces, or up to 1,000 km")
	case k.Running() && q.Length == 0 && q.Pieces > 0:
		c.fail(units.ErrFit, field, q.String(), "a length of "+k.String())
	case !k.Running() && q.Length > 0:
		c.fail(units.ErrFit, field, q.String(), "a number of "+k.String())
	}
}

// running returns the length of a quantity, all pieces together.
func running(q shopping.Quantity) units.Length {
	if q.Length > 0 && units.Length(q.Pieces) > maxLength/q.Length {
		return maxLength + 1
	}
	return q.Length * units.Length(max(1, q.Pieces))
}

// A level is a part of the height that is worked on in one way.
type level struct {
	from, to units.Length
	ladder   bool
	pair     bool
}

// levels returns those of w, from the top down.
func (r Rates) levels(w Work) []level {
	var all []level
	top := w.Height
	for _, l := range [...]level{{from: r.Pair, ladder: true, pair: true}, {from: r.Reach, ladder: true}, {}} {
		if l.from, l.to = max(l.from, w.From), top; l.from < l.to {
			all = append(all, l)
			top = l.from
		}
	}
	if len(all) == 0 { // it is all at one height
		all = append(all, level{from: w.From, to: w.Height, ladder: w.Height > r.Reach, pair: w.Height > r.Pair})
	}
	return all
}

// A timer rounds the minutes of one kind at one place up, from the top down.
type timer struct {
	rate   decimal.Decimal
	above  decimal.Decimal
	per    int64    // the base units for which the rate is
	exact  *big.Int // so far, in 1/(per·10^10) minutes
	before int      // minutes given out
}

func (r Rates) timer(rate decimal.Decimal, per int64) *timer {
	return &timer{rate: rate, above: r.Above, per: per, exact: new(big.Int)}
}

// minutes returns the minutes of so many base units more at a level.
func (t *timer) minutes(c *checker, field string, amount int64, pair bool) int {
	// Both are whole in 1/10^4, and percent are in 1/10^6 of the whole.
	rate := t.rate.Shift(maxPlaces).IntPart()
	factor := int64(1_000_000)
	if pair {
		factor += t.above.Shift(maxPlaces).IntPart()
	}
	more := new(big.Int).Mul(big.NewInt(rate), big.NewInt(factor))
	t.exact.Add(t.exact, more.Mul(more, big.NewInt(amount)))
	unit := new(big.Int).Mul(big.NewInt(t.per), big.NewInt(10_000*1_000_000))
	now := ceil(t.exact, unit)
	if !now.IsInt64() || now.Int64() > maxMinutes {
		c.fail(units.ErrRange, field, now.String()+" min", "at most 100,000 min of a kind")
		return 0
	}
	n := int(now.Int64()) - t.before
	t.before += n
	return n
}

// ceil returns a/b, rounded up, for a not below 0 and b above it.
func ceil(a, b *big.Int) *big.Int {
	q := new(big.Int).Add(a, b)
	return q.Sub(q, big.NewInt(1)).Quo(q, b)
}

// above returns how much of n, spread over the surface of a cone from from to its tip at top, is above a height between them, rounded up.
func above(n int64, from, top, height units.Length) int64 {
	high, all := big.NewInt(int64(top-height)), big.NewInt(int64(top-from))
	high.Mul(high, high).Mul(high, big.NewInt(n))
	return ceil(high, all.Mul(all, all)).Int64()
}

// tasks returns those of one work.
func (r Rates) tasks(c *checker, index int, w Work) []Task {
	levels := r.levels(w)
	field := at("/work", index, "needs")
	task := func(l level, kind shopping.Kind, q shopping.Quantity, text, basis string, minutes int) Task {
		t := Task{Work: index, Room: w.Room, Kind: kind, Quantity: q, Text: text, Height: l.to, Minutes: minutes, People: 1, Ladder: l.ladder, Basis: basis}
		if l.pair {
			t.People = 2
			if !r.Above.IsZero() {
				t.Basis += ", " + r.Above.String() + " % more above " + r.Pair.String()
			}
		}
		return t
	}
	where := func(l level) string {
		if len(levels) == 1 {
			return ""
		}
		return ", " + l.from.String() + " to " + l.to.String()
	}
	if w.Mantel {
		l := levels[0]
		n := r.timer(r.Mantel, 1).minutes(c, field, 1, l.pair)
		return []Task{task(l, 0, shopping.Quantity{}, "the mantel", r.Mantel.String()+" min for a mantel", n)}
	}
	var tasks []Task
	if w.Artificial && w.Height > w.From {
		clock := r.timer(r.Fluff, int64(units.Foot))
		for _, l := range levels {
			high := l.to - l.from
			tasks = append(tasks, task(l, 0, shopping.Quantity{Length: high}, "the tree"+where(l),
				r.Fluff.String()+" min for each foot of "+high.String(), clock.minutes(c, at("/work", index, "height"), int64(high), l.pair)))
		}
		slices.Reverse(tasks)
	}
	var sums shopping.ByKind[shopping.Quantity]
	for _, n := range w.Needs {
		q := &sums[n.Item.Kind]
		if q.Pieces += n.Quantity.Pieces; n.Item.Kind.Running() {
			q.Length += running(n.Quantity)
			q.Pieces = 0
		}
	}
	type ordered struct {
		stage, level, rank int
		task               Task
	}
	var list []ordered
	for k, q := range sums {
		kind := shopping.Kind(k)
		s := stepOf(kind)
		amount, per, grain := int64(q.Pieces), int64(1), int64(1)
		switch {
		case kind.Running():
			amount, per, grain = int64(q.Length), int64(units.Yard), int64(units.Inch)
		case kind == shopping.Light:
			per = 100
		}
		clock := r.timer(r.Each[kind], per)
		given := int64(0)
		for i, l := range levels {
			upTo := amount // what is in this level and those above
			switch last := i == len(levels)-1; {
			case last, s.tip:
			case s.stage == stageFoot:
				upTo = 0
			default:
				upTo = min(amount, (above(amount, w.From, w.Height, l.from)+grain-1)/grain*grain)
			}
			n := upTo - given
			if n == 0 {
				continue
			}
			given = upTo
			part, basis := shopping.Quantity{Pieces: int(n)}, r.Each[kind].String()+" min "
			text := kind.Count(part.Pieces)
			switch {
			case kind.Running():
				part = shopping.Quantity{Length: units.Length(n)}
				basis += "for each yard of "
				text = part.Length.Format(units.InFeetInches, units.Inch) + " of " + kind.String()
			case per > 1:
				basis += "for each " + strconv.FormatInt(per, 10) + " of "
			default:
				basis += "for each of "
			}
			if kind.Running() {
				basis += part.Length.Format(units.InFeetInches, units.Inch)
			} else {
				basis += strconv.Itoa(part.Pieces)
			}
			if !s.tip && s.stage != stageFoot {
				text += where(l)
			}
			o := ordered{stage: s.stage, rank: rank(kind), task: task(l, kind, part, text, basis, clock.minutes(c, field, n, l.pair))}
			if s.stage == stageSpread {
				o.level = i
			}
			list = append(list, o)
		}
	}
	slices.SortStableFunc(list, func(a, b ordered) int {
		return cmp.Or(cmp.Compare(a.stage, b.stage), cmp.Compare(a.level, b.level), cmp.Compare(a.rank, b.rank))
	})
	for _, o := range list {
		tasks = append(tasks, o.task)
	}
	return tasks
}

// tasks checks a list of tasks.
func (c *checker) tasks(tasks []Task) {
	if len(tasks) > maxTasks {
		c.fail(units.ErrRange, "/tasks", strconv.Itoa(len(tasks)), "at most 5,000 tasks")
	}
	sum := int64(0)
	for i, t := range tasks {
		if c.err != nil {
			return
		}
		c.whole(at("/tasks", i, "work"), t.Work, 0, 1_000_000)
		c.text(at("/tasks", i, "room"), t.Room, true)
		if t.Kind != 0 {
			c.kind(at("/tasks", i, "kind"), t.Kind)
			c.quantity(at("/tasks", i, "quantity"), t.Kind, t.Quantity)
		} else if t.Quantity.Pieces != 0 || t.Quantity.Length < 0 || t.Quantity.Length > maxHeight {
			c.fail(units.ErrRange, at("/tasks", i, "quantity"), t.Quantity.String(), "a height of tree, 0 ft to 100 ft")
		}
		c.length(at("/tasks", i, "height"), t.Height, maxHeight)
		c.whole(at("/tasks", i, "minutes"), t.Minutes, 0, maxMinutes)
		c.whole(at("/tasks", i, "people"), t.People, 1, maxCrew)
		if sum += int64(t.Minutes) * int64(t.People); sum > maxSum {
			c.fail(units.ErrRange, at("/tasks", i, "minutes"), strconv.Itoa(t.Minutes), "at most 1,000,000,000 person-minutes in all")
		}
	}
}

// kind checks a kind.
func (c *checker) kind(field string, k shopping.Kind) {
	if _, err := k.MarshalText(); err != nil {
		c.fail(units.ErrName, field, k.String(), "a kind of package shopping")
	}
}

// TakeDown returns the tasks that take down what tasks put up, and pack it, in the reverse order: the last hung comes off
// first. Each takes Down percent of its minutes, rounded up to a whole minute over the tasks of a place, those of two people first, so that
// rounding adds less than two person-minutes to a place. It takes as many people, and a ladder where the other did.
//
// It returns an error wrapping [units.ErrRange], [units.ErrSyntax] or [units.ErrName] for a field of a task that is out of its range.
//
// Source: the order is common practice, the share a house rate.
func (r Rates) TakeDown(tasks []Task) ([]Task, error) {
	c := &checker{fn: "Rates.TakeDown"}
	c.decimal("/down", r.Down, 100)
	c.tasks(tasks)
	if c.err != nil {
		return nil, c.err
	}
	down := slices.Clone(tasks)
	order := make([]int, len(tasks)) // of rounding
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(tasks[b].People, tasks[a].People) })
	share := r.Down.Shift(maxPlaces).IntPart()
	type sum struct{ exact, given int64 }
	sums := map[int]sum{}
	for _, i := range order {
		s := sums[tasks[i].Work]
		s.exact += int64(tasks[i].Minutes) * share
		n := (s.exact+999_999)/1_000_000 - s.given
		s.given += n
		sums[tasks[i].Work] = s
		t := &down[i]
		t.Minutes, t.Down, t.Start, t.Who = int(n), true, 0, nil
		t.Basis = r.Down.String() + " % of " + minutesText(tasks[i].Minutes)
	}
	slices.Reverse(down)
	return down, nil
}
