package sheet

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// workCodes are the cautions of package labor: those of the day, and those of the cartons.
var workCodes = []string{"work ladder", "platform", "two people", "work cords", "glass", "lifting"}

// begin returns an empty sheet.
func begin(r job.Request, p job.Plan, why bool) *sheet {
	s := &sheet{request: r, plan: p, why: why}
	if s.request.House.Circuit.Volts == 0 {
		s.request.House = job.CommonPractice()
	}
	return s
}

// Quote returns what the client is asked, in three options; with why what the house sees of it.
func Quote(r job.Request, p job.Plan, why bool) string {
	s := begin(r, p, why)
	if why {
		s.heading("Quote: for the house, with costs and hours")
	} else {
		s.heading("Quote: to stand on " + r.Stand.String())
	}
	for i, o := range p.Quote {
		if i > 0 {
			s.b.WriteByte('\n')
		}
		s.b.WriteString(s.request.House.Rates.Sheet(o, !why))
	}
	var missing []string
	for _, name := range []string{"hour", "visit", "consultation"} {
		if _, known := s.request.House.Rates.Price[name]; !known {
			missing = append(missing, name)
		}
	}
	if missing != nil {
		s.line("NO PRICE is given of "+listing(missing)+": give -prices.", -1, "")
	}
	if p.Basket == nil {
		s.line("Goods are not in it: there is no shop to buy from.", -1, "")
	}
	if r.Down == 0 {
		s.line("Taking down is not in it.", -1, "")
	}
	if !why {
		s.b.WriteByte('\n')
		s.line("Prices are for the pieces and the work listed here. Which taxes apply is for an accountant to say.", -1, "")
	}
	return s.b.String()
}

// Work returns the sheet of the crew: the dates, who does what in which order, putting up and taking down, and what to mind.
func Work(r job.Request, p job.Plan, why bool) string {
	s := begin(r, p, why)
	s.heading("Dates")
	for _, d := range p.Dates {
		s.line(d.Date.String(), 12, d.Text)
	}
	for _, t := range p.Trees {
		if f := t.Fit; f != nil && f.Verdict == "does not fit" {
			text, _, _ := strings.Cut(sizing.Format(*f, s.style()), "; ")
			s.line(strings.ToUpper(cmp.Or(t.Room, "the tree"))+" "+text+".", -1, "")
		}
	}
	crew := say(s.request.House.Rates.Crew, "person")
	if s.request.House.Rates.Crew != 1 {
		crew = strconv.Itoa(s.request.House.Rates.Crew) + " people"
	}
	proved := ", the least for these tasks"
	if p.Time.Min < p.Time.Max {
		proved = "; it takes at least " + hours(p.Time.Min)
	}
	s.heading("Putting up: " + crew + ", " + hours(p.Time.Max) + proved)
	s.tasks(p.Work)
	for _, d := range p.Dates {
		var tasks []labor.Task
		for _, t := range p.TakeDown {
			if slices.Contains(d.Down, t.Work) {
				tasks = append(tasks, t)
			}
		}
		if len(tasks) == 0 {
			continue
		}
		on := "on "
		if decimal.NewFromInt(int64(end(tasks))).GreaterThan(s.request.House.Rates.Minutes["day"].Ceil()) {
			on = "from "
		}
		s.heading("Taking down: " + on + d.Date.String() + ", " + hours(end(tasks)))
		s.tasks(tasks)
	}
	s.b.WriteByte('\n')
	s.line("Times count from the beginning, without breaks and without the way there. They are rates of the house: time your own work. Not in them: setting up a tree, and what is done before the crew begins. The dates do not look at weekends and holidays.", -1, "")
	s.mind("work ladder", "platform", "lift", "deep", "two people", "work cords", "plugs", "half hung", "half hung overload", "hook overload", "stocking overload", "lifted", "no hooks planned", "too few hooks", "other garland", "no garland", "marshal", "take down before a fire")
	return s.b.String()
}

// tasks lists tasks by time: when, who and what.
func (s *sheet) tasks(tasks []labor.Task) {
	for _, t := range tasks {
		who := make([]string, len(t.Who))
		for i, p := range t.Who {
			who[i] = strconv.Itoa(p)
		}
		text := t.Text
		if t.Room != "" {
			text = t.Room + ": " + text
		}
		if s.why {
			text += " (" + t.Basis + ")"
		}
		when := clock(t.Start) + "-" + clock(t.Start+t.Minutes)
		s.line("[ ] "+when+strings.Repeat(" ", max(1, 11-len(when)))+" "+strings.Join(who, "+"), 23, text)
	}
}

// Pack returns the sheet for the day on which it comes down: the labels of the cartons, what there is next year, and what to mind.
func Pack(r job.Request, p job.Plan, why bool) string {
	s := begin(r, p, why)
	n := 0
	for _, c := range p.Cartons {
		if c.Box != "" {
			n++
		}
	}
	s.heading("To pack: " + say(n, "carton"))
	for _, c := range p.Cartons {
		box := ""
		for _, b := range s.request.House.Boxes {
			if b.Name != c.Box {
				continue
			}
			box = " (" + c.Box
			if b.Cell > 0 {
				box += ", for pieces up to " + s.length(b.Cell)
			}
			box += ")"
		}
		s.line("[ ]", 4, c.Label+box)
	}
	s.heading("Next year: what there is then")
	var lots []string
	for _, l := range p.Stock {
		lots = append(lots, s.lot(l.Item, l.Quantity))
	}
	s.line(strings.Join(grouped(lots), "; "), -1, "")
	var kept []string
	if p.Box != nil {
		for i, m := range p.Box.Matches {
			if piece := r.Box[i]; !m.Fits {
				kept = append(kept, strconv.Itoa(max(1, piece.Count))+" "+piece.Name)
			}
		}
	}
	if kept != nil {
		s.line("These fit no color and stay in their box: "+strings.Join(kept, "; ")+".", -1, "")
	}
	s.mind("glass", "lifting", "two people")
	return s.b.String()
}

// grouped returns texts with those that come several times in a row as one, "10 x 100 lights".
func grouped(texts []string) []string {
	var list []string
	for i := 0; i < len(texts); {
		n := 1
		for i+n < len(texts) && texts[i+n] == texts[i] {
			n++
		}
		text := texts[i]
		if n > 1 {
			text = strconv.Itoa(n) + " x " + text
		}
		list = append(list, text)
		i += n
	}
	return list
}

// mind lists the cautions of some codes.
func (s *sheet) mind(codes ...string) {
	var list []units.Caution
	for _, c := range s.plan.Cautions {
		if slices.Contains(codes, c.Code) {
			list = append(list, c)
		}
	}
	if len(list) > 0 {
		s.heading("Take care")
	}
	for _, c := range list {
		text := strings.ToUpper(c.Text[:1]) + c.Text[1:] + "."
		if c.Room != "" {
			text = c.Room + ": " + c.Text + "."
		}
		if s.why {
			text += " (" + c.Source + ")"
		}
		s.line("-", 2, text)
	}
}

// end returns when the last task ends.
func end(tasks []labor.Task) int {
	last := 0
	for _, t := range tasks {
		last = max(last, t.Start+t.Minutes)
	}
	return last
}

// hours returns "45 min" or "3 h 10 min".
func hours(n int) string {
	if n < 60 {
		return strconv.Itoa(n) + " min"
	}
	if n%60 == 0 {
		return strconv.Itoa(n/60) + " h"
	}
	return strconv.Itoa(n/60) + " h " + strconv.Itoa(n%60) + " min"
}

// clock returns "2:05" for 125 minutes.
func clock(n int) string {
	m := strconv.Itoa(n % 60)
	return strconv.Itoa(n/60) + ":" + strings.Repeat("0", 2-len(m)) + m
}
