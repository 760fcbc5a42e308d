package labor

import (
	"cmp"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A Work is one place to dress.
type Work struct {
	Room   string          `json:"room,omitempty"`  // "ticket hall"; may be empty
	Place  string          `json:"place,omitempty"` // "artificial tree", which is shaped first; "cut tree", which is taken out in time; "mantel", one task whatever goes on it; or empty
	Height units.Length    `json:"height"`          // of its highest point above the floor, up to 110 ft
	From   units.Length    `json:"from,omitempty"`  // of its lowest point, 0 to Height
	Needs  []shopping.Need `json:"needs"`           // what goes on it: kinds and quantities alone
}

// A Task is one step.
type Task struct {
	Work     int               `json:"work"`           // the index of its Work
	Room     string            `json:"room,omitempty"` // where it is
	Kind     shopping.Kind     `json:"kind,omitempty"` // what is put up or taken down; 0 for shaping and a mantel
	Quantity shopping.Quantity `json:"quantity"`       // how much of it; for shaping, feet of height
	Text     string            `json:"text"`           // "hang 8 ornaments, 6 ft to 8 ft, from a ladder"
	Height   units.Length      `json:"height"`         // of its highest point; above Reach it takes a ladder
	Minutes  int               `json:"minutes"`        // from beginning to end
	People   int               `json:"people"`         // all the time: Minutes times People are person-minutes
	Basis    string            `json:"basis"`          // the formula with this job's figures
	Start    int               `json:"start"`          // minutes after the work begins; set by Schedule
	Who      []int             `json:"who,omitempty"`  // of the crew, from 1; set by Schedule
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
	maxTop     = 110 * units.Foot // a tree of 100 ft on a stand
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

// rank is the order of kinds in a level: hooks before what hangs on them, the topper while the ladder is there, then picks, then ornaments.
func rank(k shopping.Kind) int {
	switch k {
	case shopping.Hook:
		return -1
	case shopping.Topper:
		return 0
	case shopping.Pick:
		return 1
	case shopping.Ornament:
		return 2
	}
	return 3 + int(k)
}

// verbs returns what is done with t, up and down.
func (t Task) verbs() (up, off string) {
	switch {
	case t.Kind == 0 && t.Quantity.Length > 0:
		return "shape", "fold"
	case t.Kind == 0:
		return "dress", "clear"
	}
	s := stepOf(t.Kind)
	return s.up, s.off
}

// part returns the text of t for a part of what it is done to, "hang 8 of 16 ornaments".
func (t Task) part(of string) string {
	up, off := t.verbs()
	for _, verb := range [...]string{up, off} {
		if rest, ok := strings.CutPrefix(t.Text, verb+" "); ok {
			return verb + " " + of + " " + rest
		}
	}
	return of + " " + t.Text
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

// Tasks returns how to put everything up, place by place in the order of work, and how to take it
// down. The levels are above what a stepladder reaches (see [sizing.Ladder.Reach]), above Pair,
// above Reach, below Reach: the tree is shaped from the floor up; lights, garland and ribbon go
// from the top down, then topper, picks, ornaments and the rest level by level, the skirt last. The
// share above a height h of what is spread over a tree is that of a cone,
//
//	((Height - h) / (Height - From))²
//
// rounded up to a piece or an inch. A task takes
//
//	rate · quantity · (1 + above, if above Pair)
//
// minutes, running totals rounded up: less than 1 min more for each kind at a place, and a task
// takes at least 1 min. Down is the reverse, at its percentage: rounding up adds less than 2
// person-minutes for each place, and a task takes at least 1 min.
//
// ErrFit reports pieces for what is measured by length and the reverse, a From above Height, and a
// Pair below Reach. A kind takes at most 100,000 min in a work.
func (r Rates) Tasks(work []Work) (up, down []Task, err error) {
	c := &checker{fn: "Rates.Tasks"}
	c.minutesTable(r)
	c.percentTable(r)
	c.style(r.Units)
	c.length("/reach", r.Reach, maxHeight)
	c.length("/pair", r.Pair, maxHeight)
	if r.Pair < r.Reach {
		c.fail(units.ErrFit, "/pair", r.Pair.String(), "the reach of "+r.Reach.String()+" or more")
	}
	if len(work) > maxWorks {
		c.fail(units.ErrRange, "/work", strconv.Itoa(len(work)), "at most 500 works")
	}
	needs := 0
	for i, w := range work {
		c.work(i, w)
		if needs += len(w.Needs); needs > maxNeeds {
			c.fail(units.ErrRange, at("/work", i, "needs"), strconv.Itoa(needs), "at most 5,000 needs in all")
		}
		if c.err != nil {
			return nil, nil, c.err
		}
		up = append(up, r.tasks(c, i, w)...)
	}
	if c.err != nil {
		return nil, nil, c.err
	}
	return up, r.takeDown(up), nil
}

// work checks all of a work.
func (c *checker) work(i int, w Work) {
	c.text(at("/work", i, "room"), w.Room, true)
	c.length(at("/work", i, "height"), w.Height, maxTop)
	c.length(at("/work", i, "from"), w.From, maxTop)
	if w.From > w.Height {
		c.fail(units.ErrFit, at("/work", i, "from"), w.From.String(), "the height of "+w.Height.String()+" or less")
	}
	c.place(i, w)
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

// place checks the place of a work.
func (c *checker) place(i int, w Work) {
	if w.Place != "" && w.Place != shaping && w.Place != cutTree && w.Place != mantels {
		c.fail(units.ErrName, at("/work", i, "place"), w.Place, shaping+", "+cutTree+", "+mantels+" or empty")
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
	lift     bool
}

// levels returns those of w, from the top down.
func (r Rates) levels(w Work) []level {
	var all []level
	at := func(from, to, height units.Length) {
		all = append(all, level{from, to, height > r.Reach, height > r.Pair, height > stepladders()})
	}
	top := w.Height
	steps := [...]units.Length{stepladders(), r.Pair, r.Reach, 0}
	slices.SortFunc(steps[:], func(a, b units.Length) int { return cmp.Compare(b, a) })
	for _, from := range steps {
		if from = max(from, w.From); from < top {
			at(from, top, top)
			top = from
		}
	}
	if len(all) == 0 { // it is all at one height
		at(w.From, w.Height, w.Height)
	}
	return all
}

// A timer rounds the minutes of one kind at one place up, from the top down.
type timer struct {
	rate   decimal.Decimal
	more   decimal.Decimal // percent
	per    int64           // the base units for which the rate is
	exact  *big.Int        // so far, in 1/(per·10^10) minutes
	before int             // minutes given out
}

func (r Rates) timer(rate decimal.Decimal, per int64) *timer {
	return &timer{rate: rate, more: r.Percent[above], per: per, exact: new(big.Int)}
}

// minutes returns the minutes of so many base units more at a level.
func (t *timer) minutes(c *checker, field string, amount int64, pair bool) int {
	// Both are whole in 1/10^4, and percent are in 1/10^6 of the whole.
	rate := t.rate.Shift(maxPlaces).IntPart()
	factor := int64(1_000_000)
	if pair {
		factor += t.more.Shift(maxPlaces).IntPart()
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
	if more.Sign() > 0 {
		n = max(n, 1)
	}
	t.before += n
	return n
}

// ceil returns a/b, rounded up, for a not below 0 and b above it.
func ceil(a, b *big.Int) *big.Int {
	q := new(big.Int).Add(a, b)
	return q.Sub(q, big.NewInt(1)).Quo(q, b)
}

// shareAbove returns how much of n, spread over the surface of a cone from from to its tip at top, is above a height between them, rounded up.
func shareAbove(n int64, from, top, height units.Length) int64 {
	high, all := big.NewInt(int64(top-height)), big.NewInt(int64(top-from))
	high.Mul(high, high).Mul(high, big.NewInt(n))
	return ceil(high, all.Mul(all, all)).Int64()
}

// tasks returns those of one work.
func (r Rates) tasks(c *checker, index int, w Work) []Task {
	levels := r.levels(w)
	field := at("/work", index, "needs")
	task := func(l level, kind shopping.Kind, q shopping.Quantity, text, basis string, minutes int) Task {
		t := Task{Work: index, Room: w.Room, Kind: kind, Quantity: q, Height: l.to, Minutes: minutes, People: 1, Basis: basis}
		verb, _ := t.verbs()
		switch t.Text = verb + " " + text; {
		case l.lift:
			t.Text += ", from a lift"
		case l.ladder:
			t.Text += ", from a ladder"
		}
		if l.pair {
			t.People = 2
			if !r.Percent[above].IsZero() {
				t.Basis += ", " + r.Percent[above].String() + " % more above " + r.say(r.Pair)
			}
		}
		return t
	}
	where := func(l level) string {
		if len(levels) == 1 {
			return ""
		}
		return ", " + r.say(l.from) + " to " + r.say(l.to)
	}
	if w.Place == mantels {
		l := levels[0]
		n := r.timer(r.Minutes[mantels], 1).minutes(c, field, 1, l.pair)
		return []Task{task(l, 0, shopping.Quantity{}, "the mantel", r.Minutes[mantels].String()+" min for a mantel", n)}
	}
	var tasks []Task
	if w.Place == shaping && w.Height > w.From {
		clock := r.timer(r.Minutes[shaping], int64(units.Foot))
		for _, l := range levels {
			high := l.to - l.from
			tasks = append(tasks, task(l, 0, shopping.Quantity{Length: high}, "the tree"+where(l),
				r.Minutes[shaping].String()+" min for each foot of "+r.say(high), clock.minutes(c, at("/work", index, "height"), int64(high), l.pair)))
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
		clock := r.timer(r.minutes(kind), per)
		given := int64(0)
		for i, l := range levels {
			upTo := amount // what is in this level and those above
			switch last := i == len(levels)-1; {
			case last, s.tip:
			case s.stage == stageFoot:
				upTo = 0
			default:
				upTo = min(amount, (shareAbove(amount, w.From, w.Height, l.from)+grain-1)/grain*grain)
			}
			n := upTo - given
			if n == 0 {
				continue
			}
			given = upTo
			part, basis := shopping.Quantity{Pieces: int(n)}, r.minutes(kind).String()+" min "
			text := kind.Count(part.Pieces)
			switch {
			case kind.Running():
				part = shopping.Quantity{Length: units.Length(n)}
				basis += "for each yard of "
				text = r.say(part.Length) + " of " + kind.String()
			case per > 1:
				basis += "for each " + strconv.FormatInt(per, 10) + " of "
			default:
				basis += "for each of "
			}
			if kind.Running() {
				basis += r.say(part.Length)
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
func (c *checker) tasks(list string, tasks []Task) {
	if len(tasks) > maxTasks {
		c.fail(units.ErrRange, list, strconv.Itoa(len(tasks)), "at most 5,000 tasks")
	}
	sum := int64(0)
	for i, t := range tasks {
		if c.err != nil {
			return
		}
		c.whole(at(list, i, "work"), t.Work, 0, 1_000_000)
		c.text(at(list, i, "room"), t.Room, true)
		if t.Kind != 0 {
			c.kind(at(list, i, "kind"), t.Kind)
			c.quantity(at(list, i, "quantity"), t.Kind, t.Quantity)
		} else if t.Quantity.Pieces != 0 || t.Quantity.Length < 0 || t.Quantity.Length > maxHeight {
			c.fail(units.ErrRange, at(list, i, "quantity"), t.Quantity.String(), "a height of tree, 0 ft to 100 ft")
		}
		c.length(at(list, i, "height"), t.Height, maxTop)
		c.whole(at(list, i, "minutes"), t.Minutes, 0, maxMinutes)
		c.whole(at(list, i, "people"), t.People, 1, maxCrew)
		if sum += int64(t.Minutes) * int64(t.People); sum > maxSum {
			c.fail(units.ErrRange, at(list, i, "minutes"), strconv.Itoa(t.Minutes), "at most 1,000,000,000 person-minutes in all")
		}
	}
}

// kind checks a kind.
func (c *checker) kind(field string, k shopping.Kind) {
	if _, err := k.MarshalText(); err != nil {
		c.fail(units.ErrName, field, k.String(), "a kind of package shopping")
	}
}

// takeDown returns the tasks that take down what tasks put up.
func (r Rates) takeDown(tasks []Task) []Task {
	share, percent := r.Percent[down].Shift(maxPlaces).IntPart(), r.Percent[down].String()
	list := slices.Clone(tasks)
	order := make([]int, len(tasks)) // of rounding
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(tasks[b].People, tasks[a].People) })
	type sum struct{ exact, given int64 }
	sums := map[int]sum{}
	for _, i := range order {
		s := sums[tasks[i].Work]
		s.exact += int64(tasks[i].Minutes) * share
		n := max(0, (s.exact+999_999)/1_000_000-s.given)
		if tasks[i].Minutes > 0 && share > 0 {
			n = max(n, 1)
		}
		s.given += n
		sums[tasks[i].Work] = s
		t := &list[i]
		up, off := t.verbs()
		t.Text = off + strings.TrimPrefix(t.Text, up)
		t.Minutes, t.Basis = int(n), percent+" % of "+minutesText(tasks[i].Minutes)
	}
	slices.Reverse(list)
	return list
}
