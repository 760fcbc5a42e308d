package labor

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Day is what to do on a date.
type Day struct {
	Date Date   `json:"date"`           // when
	Text string `json:"text"`           // "order garland"
	Down []int  `json:"down,omitempty"` // the indices of the works that are taken down on it
}

// maxStay is the most days from the day it stands to the day it comes down.
const maxStay = 3_650

// prepare says what is done before the crew sets out, as far as works and needs have it: the garland of a mantel is wired, that of a
// tree is wound.
func prepare(work []Work, needs []shopping.Need) string {
	var garland, picks, lights bool
	for _, n := range needs {
		lights = lights || n.Item.Kind == shopping.Light
	}
	for _, w := range work {
		has := shopping.ByKind[bool]{shopping.BaseGarland: w.Needs == nil, shopping.Pick: w.Needs == nil} // a mantel of which no more is said
		for _, n := range w.Needs {
			has[n.Item.Kind] = has[n.Item.Kind] || n.Quantity != (shopping.Quantity{})
		}
		lights = lights || has[shopping.Light]
		if w.Place == mantels && has[shopping.BaseGarland] {
			garland, picks = true, picks || has[shopping.Pick]
		}
	}
	text := "lay everything ready"
	switch {
	case picks:
		text = "wire garland and picks"
	case garland:
		text = "wire garland"
	case lights:
		return "see that the lights work"
	}
	if lights {
		text += ", and see that the lights work"
	}
	return text
}

// Dates returns what to do when, in order, for a job that must stand on a day:
//
//	begin          stand - ⌈elapsed / "day"⌉
//	wire           begin - "wiring"
//	order          wire - the days of each kind of the needs
//	take down      down; the zero Date if the house does not
//	cut tree in    begin, or the day before if that is at most "cut tree" days before down
//	cut tree out   begin + "cut tree" or down, whichever is earlier
//
// A cut tree is bare by the day it goes out; the text says if that is before it stands. Dates
// looks at the Place of each work and at the kind of each need. No clock is read. Limits: elapsed
// (Max of Schedule) 1,000,000 minutes, down 3,650 days after stand. ErrFit reports down before
// stand. If the public uses the room, the fire code may not allow a cut tree.
func (r Rates) Dates(stand, down Date, elapsed int, work []Work, needs []shopping.Need) ([]Day, error) {
	c := &checker{fn: "Rates.Dates"}
	c.minutesTable(r)
	day := 0
	if c.err == nil { // what is not in its range can be too long to write out
		day = int(r.Minutes[workday].Ceil().IntPart())
	}
	c.whole("/minutes/"+workday, day, 1, 1440)
	c.daysTable(r)
	c.date("stand", stand)
	last := down
	if last == 0 {
		last = stand
	} else {
		c.date("down", down)
	}
	if last < stand {
		c.fail(units.ErrFit, "down", down.String(), "no day before "+stand.String())
	} else if last-stand > maxStay {
		c.fail(units.ErrRange, "down", down.String(), "at most 3,650 days after "+stand.String())
	}
	c.whole("elapsed", elapsed, 0, 1_000_000)
	if len(needs) > maxNeeds {
		c.fail(units.ErrRange, "/needs", strconv.Itoa(len(needs)), "at most 5,000 needs")
	}
	var cut, rest []int
	if len(work) > maxWorks {
		c.fail(units.ErrRange, "/work", strconv.Itoa(len(work)), "at most 500 works")
	}
	for i, w := range work {
		for k, n := range w.Needs {
			if !c.item(at(at("/work", i, "needs"), k, "item"), n.Item) {
				return nil, c.err
			}
		}
		switch c.place(i, w); {
		case w.Place == cutTree:
			cut = append(cut, i)
		case w.Place != "" || len(w.Needs) > 0: // there is something to do
			rest = append(rest, i)
		}
	}
	kinds := map[int][]string{} // by lead
	var all []Day
	if c.err == nil {
		begin := stand - Date((elapsed+day-1)/day)
		wire := begin - Date(r.Days[wiring])
		var has shopping.ByKind[bool]
		for i, n := range needs {
			if c.kind(at("/needs", i, "item"), n.Item.Kind); c.err != nil {
				return nil, c.err
			}
			has[n.Item.Kind] = true
		}
		for kind, ok := range has {
			if ok {
				name := shopping.Kind(kind).String()
				kinds[r.Days[name]] = append(kinds[r.Days[name]], name)
			}
		}
		for lead, names := range kinds {
			all = append(all, Day{Date: wire - Date(lead), Text: "order " + strings.Join(names, ", ")})
		}
		add := func(d Date, text string, down ...int) { all = append(all, Day{d, text, down}) }
		if len(kinds) > 0 {
			add(wire, "everything is in hand")
		}
		add(wire, prepare(work, needs))
		stay := Date(r.Days[cutTree])
		in, out, early := begin, begin+stay, false
		if down != 0 {
			early = len(cut) > 0 && out < down
			in, out = min(begin, max(down-stay, begin-1)), min(down, out)
		}
		if len(cut) > 0 {
			add(in, "the cut tree comes in, at the earliest")
		}
		if begin < stand {
			add(begin, "begin to put up: "+minutesText(elapsed))
		}
		add(stand, "it stands")
		gone := "the cut tree is out, at the latest"
		switch {
		case early && len(rest) > 0:
			add(out, "take down and pack what is on the cut tree", cut...)
			gone += ": " + strconv.Itoa(int(down-out)) + " days before the rest"
			add(down, "take down and pack", rest...)
		case early:
			add(out, "take down and pack", cut...)
			gone += ", and not on " + down.String()
		case down != 0:
			rest = append(slices.Clone(cut), rest...)
			slices.Sort(rest)
			add(down, "take down and pack", rest...)
		}
		if out < stand {
			gone += ", which is before it stands: putting up takes more people"
		}
		if len(cut) > 0 {
			add(out, gone)
		}
		// The kinds come from a map, but each lead has a day of its own.
		slices.SortStableFunc(all, func(a, b Day) int { return cmp.Compare(a.Date, b.Date) })
		if all[0].Date < 1 || all[len(all)-1].Date > lastDate {
			c.fail(units.ErrRange, "stand", stand.String(), "a day that leaves time to order, after 0001-01-01")
		}
	}
	if c.err != nil {
		return nil, c.err
	}
	return all, nil
}
