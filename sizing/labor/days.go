package labor

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Day is what has to be done on a date.
type Day struct {
	Date Date   `json:"date"` // when
	Text string `json:"text"` // what, "order garland"
}

// maxStay is the most days from the day it stands to the day it comes down.
const maxStay = 3_650

// Days returns what has to be done when, counted back from the day on which it must stand, in
// the order of dates. Work that takes so many minutes ends on the day before:
//
//	putting up    = stand - ⌈minutes / Day⌉
//	wiring        = putting up - Prepare
//	ordering      = wiring - Lead of the kind, for the kinds of the needs
//	taking down   = the day given
//
// If there is a cut tree, it comes in no more than CutDays before it goes out:
//
//	in, at the earliest   = the later of down - CutDays and the day before putting up, but no later than putting up
//	out, at the latest    = the earlier of down and putting up + CutDays
//
// Days are counted through: weekends and holidays are yours to look at. No clock is read.
//
// It returns an error wrapping [units.ErrFit] if down is before stand, and [units.ErrRange] or [units.ErrName] for
// a value out of its range: minutes up to 1,000,000, down at most 3,650 days after stand, and all days from the year 1 to 9999.
//
// Source: from memory, all of it. In rooms that the public uses, cut trees may not be allowed at all: the fire code decides.
func (r Rates) Days(stand, down Date, minutes int, cut bool, needs []shopping.Need) ([]Day, error) {
	c := &checker{fn: "Rates.Days"}
	c.whole("/day", r.Day, 1, 1440)
	c.whole("/prepare", r.Prepare, 0, 365)
	c.whole("/cutDays", r.CutDays, 1, 365)
	for kind, n := range r.Lead {
		c.whole("/lead/"+shopping.Kind(kind).String(), n, 0, 365)
	}
	c.date("stand", stand)
	c.date("down", down)
	if down < stand {
		c.fail(units.ErrFit, "down", down.String(), "no day before "+stand.String())
	} else if down-stand > maxStay {
		c.fail(units.ErrRange, "down", down.String(), "at most 3,650 days after "+stand.String())
	}
	c.whole("minutes", minutes, 0, 1_000_000)
	if len(needs) > maxNeeds {
		c.fail(units.ErrRange, "/needs", strconv.Itoa(len(needs)), "at most 5,000 needs")
	}
	kinds := map[int][]string{} // by lead
	var all []Day
	if c.err == nil {
		begin := stand - Date((minutes+r.Day-1)/r.Day)
		wire := begin - Date(r.Prepare)
		var has shopping.ByKind[bool]
		for i, n := range needs {
			if c.kind(at("/needs", i, "item"), n.Item.Kind); c.err != nil {
				return nil, c.err
			}
			has[n.Item.Kind] = true
		}
		for kind, ok := range has {
			if ok {
				kinds[r.Lead[kind]] = append(kinds[r.Lead[kind]], shopping.Kind(kind).String())
			}
		}
		for lead, names := range kinds {
			all = append(all, Day{wire - Date(lead), "order " + strings.Join(names, ", ")})
		}
		if len(kinds) > 0 {
			all = append(all, Day{wire, "everything is in hand"})
		}
		all = append(all, Day{wire, "wire garland and picks, and see that the lights work"})
		if begin < stand {
			all = append(all, Day{begin, "begin to put up: " + minutesText(minutes)})
		}
		if cut {
			in := min(begin, max(down-Date(r.CutDays), begin-1))
			out := min(down, begin+Date(r.CutDays))
			all = append(all, Day{in, "the cut tree comes in, at the earliest"})
			text := "the cut tree is out, at the latest"
			if out < down {
				text += ": " + strconv.Itoa(int(down-out)) + " days before the rest"
			}
			all = append(all, Day{out, text})
		}
		all = append(all, Day{stand, "it stands"}, Day{down, "take down and pack"})
		// The kinds of one day come from a map, so texts are compared as well where nothing else tells them apart.
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

// String returns "2026-10-26 order garland".
func (d Day) String() string { return d.Date.String() + " " + d.Text }
