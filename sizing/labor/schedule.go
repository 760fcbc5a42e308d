package labor

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/internal/schedule"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Schedule is who does what, and when.
type Schedule struct {
	Tasks   []Task `json:"tasks"`   // with Start and Who, by Start; a task that several share is in parts
	Minutes int    `json:"minutes"` // from the beginning to the end of the last task
	Bound   int    `json:"bound"`   // no crew of this size takes less; equal to Minutes if that is proved the least
}

const (
	maxCrew     = 50
	maxShare    = 4         // people at one tree, one on each side
	maxSchedule = 5_000_000 // steps of the search
)

// Schedule returns how Crew people do the tasks in the least time. Tasks of one Work follow
// one another in the order given, those of different ones go on side by side, and nobody is interrupted. Pieces that are hung or
// branches that are shaped from the floor are dealt out evenly to as many people as there are, four at most, one on each side of the tree. What
// is wound, what is done from a ladder, and a mantel are not shared.
//
// The answer is exact, and Bound says so by being equal to Minutes, for up to about 3 places in
// most cases. The search ends after 5,000,000 steps, which take under a second; then the least is from Bound to Minutes. There are no breaks
// and no ways between rooms in it.
//
// It returns an error wrapping [units.ErrFit] if a task takes more people than Crew, and
// [units.ErrRange], [units.ErrSyntax] or [units.ErrName] for a field out of its range; at most 5,000 tasks.
//
// Source: common practice for what waits for what. The bound is the load of the crew between any two times (from memory: P. Brucker, S. Knust, Complex
// Scheduling, Springer 2006).
func (r Rates) Schedule(tasks []Task) (Schedule, error) {
	c := &checker{fn: "Rates.Schedule"}
	c.whole("/crew", r.Crew, 1, maxCrew)
	c.tasks(tasks)
	for _, t := range tasks {
		if t.People > r.Crew {
			c.fail(units.ErrFit, "/crew", strconv.Itoa(r.Crew), strconv.Itoa(t.People)+" or more, since a task takes so many people")
		}
	}
	if c.err != nil {
		return Schedule{}, c.err
	}
	type part struct {
		Task
		of int // the index of the task that it is a part of
	}
	var parts []part
	var graph []schedule.Task
	before := map[int][]int{} // by work: the parts of its last task
	for i, t := range tasks {
		var now []int
		for _, p := range t.shared(r.Crew) {
			now = append(now, len(parts))
			parts = append(parts, part{p, i})
			graph = append(graph, schedule.Task{Time: p.Minutes, People: p.People, After: before[t.Work]})
		}
		before[t.Work] = now
	}
	work := int64(maxSchedule)
	starts, length, bound := schedule.Solve(graph, r.Crew, &work)
	s := Schedule{Minutes: length, Bound: bound}
	for i := range parts {
		parts[i].Start = starts[i]
	}
	slices.SortStableFunc(parts, func(a, b part) int {
		return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(min(a.Minutes, 1), min(b.Minutes, 1)))
	})
	// People are given names: who is free, rather somebody who is at that place already. Parts that one person does
	// one after the other are one again.
	type person struct{ free, work, task, line int }
	crew := make([]person, r.Crew)
	for p := range crew {
		crew[p] = person{work: -1, task: -1}
	}
	for _, t := range parts {
		t.Who = nil
		for _, stay := range [...]bool{true, false} {
			for p, x := range crew {
				if len(t.Who) < t.People && x.free <= t.Start && (x.work == t.Work) == stay {
					t.Who = append(t.Who, p+1)
				}
			}
		}
		slices.Sort(t.Who)
		line := len(s.Tasks)
		if x := crew[t.Who[0]-1]; x.task == t.of && x.free == t.Start {
			line = x.line
			s.Tasks[line] = s.Tasks[line].joined(t.Task, tasks[t.of])
		} else {
			s.Tasks = append(s.Tasks, t.Task)
		}
		for _, p := range t.Who {
			crew[p-1] = person{t.Start + t.Minutes, t.Work, t.of, line}
		}
	}
	return s, nil
}

// joined returns two parts of a whole task as one.
func (t Task) joined(with, whole Task) Task {
	t.Minutes += with.Minutes
	if t.Quantity.Pieces += with.Quantity.Pieces; t.Quantity.Pieces > 0 {
		t.Text = strconv.Itoa(t.Quantity.Pieces) + " of " + whole.Text
	}
	if t.Minutes == whole.Minutes && t.Quantity == whole.Quantity {
		t.Text = whole.Text
	}
	return t
}

// shared returns the parts into which t is dealt out to a crew.
func (t Task) shared(crew int) []Task {
	total := t.Quantity.Pieces
	shape := t.Kind == 0 && t.Quantity.Length > 0
	if shape {
		total = maxShare
	}
	n := min(crew, maxShare, total)
	if t.Ladder || t.People > 1 || n < 2 || !shape && (t.Kind == 0 || stepOf(t.Kind).stage != stageSpread) {
		return []Task{t}
	}
	var parts []Task
	for i := range n {
		part := t
		part.Minutes = t.Minutes*(i+1)/n - t.Minutes*i/n
		if shape {
			part.Text = "one of " + strconv.Itoa(n) + " sides of " + t.Text
		} else {
			part.Quantity = shopping.Quantity{Pieces: total*(i+1)/n - total*i/n}
			part.Text = strconv.Itoa(part.Quantity.Pieces) + " of " + t.Text
		}
		parts = append(parts, part)
	}
	slices.SortStableFunc(parts, func(a, b Task) int { return cmp.Compare(b.Minutes, a.Minutes) })
	return parts
}

// String returns a line for each task, such as
//
//	2:33 to 2:35   1 and 2   ticket hall: hang 1 ornament, 8 ft to 9 ft, from a ladder
//
// with its beginning and end in hours and minutes and who does it, and a last line with the time it all takes.
func (s Schedule) String() string {
	var b strings.Builder
	clock := func(n int) string {
		text := strconv.Itoa(n % 60)
		if len(text) < 2 {
			text = "0" + text
		}
		return strconv.Itoa(n/60) + ":" + text
	}
	for _, t := range s.Tasks {
		names := make([]string, len(t.Who))
		for i, p := range t.Who {
			names[i] = strconv.Itoa(p)
		}
		b.WriteString(pad(clock(t.Start)+" to "+clock(t.Start+t.Minutes), 15) + pad(strings.Join(names, " and "), 10) + t.object())
		if t.Ladder {
			b.WriteString(", from a ladder")
		}
		b.WriteByte('\n')
	}
	b.WriteString("done in " + minutesText(s.Minutes))
	if s.Bound == s.Minutes {
		b.WriteString(", the least\n")
	} else {
		b.WriteString("; the least is no less than " + minutesText(s.Bound) + "\n")
	}
	return b.String()
}

// pad returns s with spaces after it, to a width of n.
func pad(s string, n int) string { return s + strings.Repeat(" ", max(1, n-len([]rune(s)))) }
