package labor

import (
	"cmp"
	"slices"
	"strconv"

	"example.com/fircone/internal/schedule"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

const (
	maxCrew     = 50
	maxShare    = 4         // people at one tree, one on each side
	maxSchedule = 5_000_000 // steps of the search
)

// Schedule returns the fastest way found for Crew people to do tasks: the tasks with Start and Who,
// by Start, and the minutes. Tasks of one Work follow one another as given, those of different ones
// go on side by side, and nobody is interrupted. Hanging and shaping from the floor may be split
// among up to four people, one on each side of the tree.
//
// Max is what this schedule takes; no schedule takes less than Min. The search
// ends after 5,000,000 steps, in under a second. ErrFit reports a task for more people than Crew.
func (r Rates) Schedule(tasks []Task) ([]Task, units.Range[int], error) {
	c := &checker{fn: "Rates.Schedule"}
	c.whole("/crew", r.Crew, 1, maxCrew)
	c.length("/reach", r.Reach, maxHeight)
	c.tasks("/tasks", tasks)
	for _, t := range tasks {
		if t.People > r.Crew {
			c.fail(units.ErrFit, "/crew", strconv.Itoa(r.Crew), strconv.Itoa(t.People)+" or more, since a task takes so many people")
		}
	}
	if c.err != nil {
		return nil, units.Range[int]{}, c.err
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
		for _, p := range t.shared(r.Crew, t.Height > min(r.Reach, stepladders())) {
			now = append(now, len(parts))
			parts = append(parts, part{p, i})
			graph = append(graph, schedule.Task{Time: p.Minutes, People: p.People, After: before[t.Work]})
		}
		before[t.Work] = now
	}
	work := int64(maxSchedule)
	starts, length, bound := schedule.Solve(graph, r.Crew, &work)
	var list []Task
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
		line := len(list)
		if x := crew[t.Who[0]-1]; x.task == t.of && x.free == t.Start {
			line = x.line
			list[line] = list[line].joined(t.Task, tasks[t.of])
		} else {
			list = append(list, t.Task)
		}
		for _, p := range t.Who {
			crew[p-1] = person{t.Start + t.Minutes, t.Work, t.of, line}
		}
	}
	return list, units.Range[int]{Min: bound, Max: length}, nil
}

// joined returns two parts of a whole task as one.
func (t Task) joined(with, whole Task) Task {
	t.Minutes += with.Minutes
	if t.Quantity.Pieces += with.Quantity.Pieces; t.Quantity.Pieces > 0 {
		t.Text = whole.part(strconv.Itoa(t.Quantity.Pieces) + " of")
	}
	if t.Minutes == whole.Minutes && t.Quantity == whole.Quantity {
		t.Text = whole.Text
	}
	return t
}

// shared returns the parts into which t is dealt out to a crew.
func (t Task) shared(crew int, ladder bool) []Task {
	total := t.Quantity.Pieces
	shape := t.Kind == 0 && t.Quantity.Length > 0
	if shape {
		total = maxShare
	}
	n := min(crew, maxShare, total, t.Minutes) // nobody has nothing to do
	if ladder || t.People > 1 || n < 2 || !shape && (t.Kind == 0 || stepOf(t.Kind).stage != stageSpread) {
		return []Task{t}
	}
	var parts []Task
	for i := range n {
		part := t
		part.Minutes = t.Minutes*(i+1)/n - t.Minutes*i/n
		if shape {
			part.Text = t.part("one of " + strconv.Itoa(n) + " sides of")
		} else {
			part.Quantity = shopping.Quantity{Pieces: total*(i+1)/n - total*i/n}
			part.Text = t.part(strconv.Itoa(part.Quantity.Pieces) + " of")
		}
		parts = append(parts, part)
	}
	slices.SortStableFunc(parts, func(a, b Task) int { return cmp.Compare(b.Minutes, a.Minutes) })
	return parts
}
