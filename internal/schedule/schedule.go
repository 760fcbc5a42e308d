// Package schedule finds how soon a crew can finish tasks that wait for one another and take
// one person or more: project scheduling with one renewable resource, by branch and bound.
//
// Source: P. Brucker, S. Knust, Complex Scheduling, Springer 2006 (from memory).
package schedule

import "slices"

// A Task is one piece of work that is not interrupted.
type Task struct {
	Time   int   // how long it takes, at least 0
	People int   // how many it takes, all the time, at least 1
	After  []int // the tasks that must have ended; all are earlier in the list
}

// maxKept is the most states that the search remembers, and maxBytes the most bytes in them.
const (
	maxKept  = 100_000
	maxBytes = 24 << 20
)

// Solve returns when each task starts, when the last one ends, and a bound that no crew of this
// size can beat. No task takes more people than the crew has. It takes the steps it needs off
// work, and ends the search when they are spent; the first answer costs a step for each
// task and person, and the bound one for each two tasks.
//
// Tasks are started one after the other, never earlier than the one before. In that
// order a crew is no more than the times at which each of its people is free, so every schedule
// that starts nothing later than it must is reached. A partial schedule is dropped if the
// bound says that it comes to nothing better, or if one with the same tasks has left everybody free,
// and every awaited task ended, no later.
func Solve(tasks []Task, crew int, work *int64) (starts []int, length, bound int) {
	s := &search{tasks: tasks, crew: crew, work: work, kept: map[string][][]int{}}
	s.tails()
	bound = s.bound()
	s.best = s.list()
	s.length = s.end(s.best)
	if s.length > bound {
		s.state = state{free: make([]int, crew), starts: make([]int, len(tasks)), ends: make([]int, len(tasks)), done: make([]bool, len(tasks))}
		s.floor = bound
		s.rest = s.load()
		s.branch(0, 0)
		if !s.stopped {
			bound = s.length // all was looked at
		}
	}
	return s.best, s.length, bound
}

type search struct {
	tasks   []Task
	crew    int
	tail    []int   // the longest chain of tasks that begins with each
	awaited [][]int // the tasks that wait for each
	work    *int64
	best    []int // the starts
	length  int
	floor   int  // the bound at the outset
	stopped bool // the work was spent
	state   state
	rest    int64 // time times people of what is not done
	kept    map[string][][]int
	states  int
	bytes   int
}

// A state is a partial schedule.
type state struct {
	free   []int // when each of the crew is free, rising
	starts []int
	ends   []int
	done   []bool
}

// tails fills in tail and awaited.
func (s *search) tails() {
	s.tail = make([]int, len(s.tasks))
	s.awaited = make([][]int, len(s.tasks))
	for i := len(s.tasks) - 1; i >= 0; i-- {
		s.tail[i] += s.tasks[i].Time
		for _, p := range s.tasks[i].After {
			s.tail[p] = max(s.tail[p], s.tail[i])
			s.awaited[p] = append(s.awaited[p], i)
		}
	}
}

// load returns the time of all tasks times their people.
func (s *search) load() int64 {
	sum := int64(0)
	for _, t := range s.tasks {
		sum += int64(t.Time) * int64(t.People)
	}
	return sum
}

// bound returns a length that no schedule is below. For any two times a and b, the tasks that cannot start
// before a and have b or more to come after their end
//
//	fill the crew for at least Σ time·people / crew
//	take turns, if each takes more than half of the crew: Σ time
//
// between a and b.
func (s *search) bound() int {
	n := len(s.tasks)
	head := make([]int, n)
	after := make([]int, n)
	order := make([]int, n) // by what comes after, falling
	for i, t := range s.tasks {
		for _, p := range t.After {
			head[i] = max(head[i], head[p]+s.tasks[p].Time)
		}
		after[i] = s.tail[i] - t.Time
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return after[b] - after[a] })
	best := 0
	begins := slices.Clone(head)
	slices.Sort(begins)
	for _, a := range slices.Compact(begins) {
		*s.work -= int64(n)
		if *s.work < 0 && a > 0 {
			break // a bound of fewer pairs is a bound
		}
		var all, turns int64
		for _, i := range order {
			if head[i] < a {
				continue
			}
			t := s.tasks[i]
			all += int64(t.Time) * int64(t.People)
			if 2*t.People > s.crew {
				turns += int64(t.Time)
			}
			fill := (all + int64(s.crew) - 1) / int64(s.crew)
			best = max(best, a+int(max(fill, turns))+after[i], a+s.tail[i])
		}
	}
	return best
}

// list returns the starts when, of the tasks that nothing holds up any more, always the one is started next that can
// begin first, and of several the one with the longest tail.
func (s *search) list() []int {
	free := make([]int, s.crew)
	starts := make([]int, len(s.tasks))
	ends := make([]int, len(s.tasks))
	waits := make([]int, len(s.tasks))
	ready := make([]int, 0, len(s.tasks))
	from := make([]int, len(s.tasks)) // when the last that it waits for has ended
	for i, t := range s.tasks {
		if waits[i] = len(t.After); waits[i] == 0 {
			ready = append(ready, i)
		}
	}
	now := 0
	for len(ready) > 0 {
		pick, at := -1, 0
		for k, i := range ready {
			start := max(now, from[i], free[s.tasks[i].People-1])
			if pick < 0 || start < at || start == at && (s.tail[i] > s.tail[ready[pick]] || s.tail[i] == s.tail[ready[pick]] && i < ready[pick]) {
				pick, at = k, start
			}
		}
		i := ready[pick]
		ready = slices.Delete(ready, pick, pick+1)
		now = at
		starts[i], ends[i] = at, at+s.tasks[i].Time
		take(free, s.tasks[i].People, at, ends[i])
		for _, j := range s.awaited[i] {
			from[j] = max(from[j], ends[i])
			if waits[j]--; waits[j] == 0 {
				ready = append(ready, j)
			}
		}
	}
	return starts
}

// take makes people of those who are free at the time at busy to the end. Free stays in order.
func take(free []int, people, at, end int) {
	for k := range free {
		free[k] = max(free[k], at) // nothing starts earlier any more
	}
	for k := range people {
		free[k] = end
	}
	slices.Sort(free)
}

// end returns when the last task ends.
func (s *search) end(starts []int) int {
	last := 0
	for i, t := range s.tasks {
		last = max(last, starts[i]+t.Time)
	}
	return last
}

// branch starts one more task, after count that are started, not before now.
func (s *search) branch(count, now int) {
	if count == len(s.tasks) {
		if end := s.end(s.state.starts); end < s.length {
			s.length, s.best = end, slices.Clone(s.state.starts)
		}
		return
	}
	type choice struct{ task, start int }
	var next []choice
	busy := s.rest
	for _, f := range s.state.free {
		busy += int64(f)
	}
	if (busy+int64(s.crew)-1)/int64(s.crew) >= int64(s.length) {
		return
	}
	for i, t := range s.tasks {
		if *s.work--; *s.work < 0 {
			s.stopped = true
			return
		}
		if s.state.done[i] {
			continue
		}
		start, ready := max(now, s.state.free[t.People-1]), true
		for _, p := range t.After {
			if !s.state.done[p] {
				ready = false
				break
			}
			start = max(start, s.state.ends[p])
		}
		if !ready {
			continue
		}
		if start+s.tail[i] >= s.length {
			return // it has to be started at some time
		}
		next = append(next, choice{i, start})
	}
	if !s.keep(now) {
		return
	}
	slices.SortStableFunc(next, func(a, b choice) int {
		if a.start != b.start {
			return a.start - b.start
		}
		return s.tail[b.task] - s.tail[a.task]
	})
	was := slices.Clone(s.state.free)
	for _, c := range next {
		t := s.tasks[c.task]
		s.state.done[c.task] = true
		s.state.starts[c.task], s.state.ends[c.task] = c.start, c.start+t.Time
		take(s.state.free, t.People, c.start, c.start+t.Time)
		s.rest -= int64(t.Time) * int64(t.People)
		s.branch(count+1, c.start)
		s.rest += int64(t.Time) * int64(t.People)
		copy(s.state.free, was)
		s.state.done[c.task] = false
		if s.stopped || s.length == s.floor {
			return
		}
	}
}

// keep remembers the state, and reports false if one that is no worse has been there.
func (s *search) keep(now int) bool {
	key := make([]byte, (len(s.tasks)+7)/8)
	times := make([]int, 0, s.crew+8)
	for _, f := range s.state.free {
		times = append(times, max(f, now))
	}
	for i, done := range s.state.done {
		if !done {
			continue
		}
		key[i/8] |= 1 << (i % 8)
		for _, j := range s.awaited[i] {
			if !s.state.done[j] {
				times = append(times, max(s.state.ends[i], now))
				break
			}
		}
	}
	list := s.kept[string(key)]
	for _, other := range list {
		*s.work -= int64(len(times))
		if noLater(other, times) {
			return false
		}
	}
	if s.states < maxKept && s.bytes < maxBytes {
		s.states++
		s.bytes += 8*len(times) + len(key) + 64
		s.kept[string(key)] = append(list, times)
	}
	return true
}

// noLater reports whether no time in a is later than the one in b.
func noLater(a, b []int) bool {
	for i, t := range a {
		if t > b[i] {
			return false
		}
	}
	return true
}
