package schedule

import (
	"math/bits"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/fircone/internal/tally"
)

// valid fails the test if starts break a rule: a task that begins before one it waits for has ended, or more people
// than the crew has.
func valid(t *testing.T, tasks []Task, crew int, starts []int, length int) {
	t.Helper()
	end := 0
	for i, a := range tasks {
		end = max(end, starts[i]+a.Time)
		for _, p := range a.After {
			if starts[i] < starts[p]+tasks[p].Time {
				t.Fatalf("task %d starts at %d, before task %d has ended", i, starts[i], p)
			}
		}
		busy := 0
		for j, b := range tasks {
			if starts[j] <= starts[i] && starts[i] < starts[j]+b.Time {
				busy += b.People
			}
		}
		if busy > crew {
			t.Fatalf("%d people busy at %d, of %d", busy, starts[i], crew)
		}
	}
	if end != length {
		t.Fatalf("length %d, but the last ends at %d", length, end)
	}
}

func TestByHand(t *testing.T) {
	const plenty = 1_000_000
	for _, row := range []struct {
		reason string
		tasks  []Task
		crew   int
		length int
	}{
		{"nothing to do", nil, 2, 0},
		{"a chain takes the sum", []Task{{3, 1, nil}, {4, 1, []int{0}}}, 5, 7},
		{"two at a time", []Task{{3, 1, nil}, {4, 1, nil}, {5, 1, nil}}, 2, 7},
		{"longest first is 7 (4+2, 3+2, then 2 on top: 3+2+2); 3+3 and 2+2+2 is 6", []Task{{3, 1, nil}, {3, 1, nil}, {2, 1, nil}, {2, 1, nil}, {2, 1, nil}}, 2, 6},
		{"two people wait for each other: 5 alone, then 2 together", []Task{{5, 1, nil}, {2, 2, []int{0}}, {3, 1, nil}}, 2, 7},
		{"two tasks of two people cannot go on at once in a crew of three", []Task{{4, 2, nil}, {4, 2, nil}, {8, 1, nil}}, 3, 8},
		{"it pays to keep somebody waiting: 1, then 1 together, then 9; the 5 at once would make it 15", []Task{{1, 1, nil}, {1, 2, []int{0}}, {9, 1, []int{1}}, {5, 1, nil}}, 2, 11},
		{"tasks of no time", []Task{{0, 1, nil}, {0, 2, []int{0}}}, 2, 0},
	} {
		work := int64(plenty)
		starts, length, bound := Solve(row.tasks, row.crew, &work)
		valid(t, row.tasks, row.crew, starts, length)
		if length != row.length || bound != row.length {
			t.Errorf("%s: %d, bound %d, want %d", row.reason, length, bound, row.length)
		}
	}
}

// slow returns the least length by going through time minute by minute: at each minute every set of
// tasks that may start is tried, the empty one too.
func slow(tasks []Task, crew int) int {
	best := 0
	for _, t := range tasks {
		best += t.Time
	}
	starts := make([]int, len(tasks))
	var minute func(now int, started uint)
	minute = func(now int, started uint) {
		if now > best {
			return
		}
		busy, end := 0, now
		for i, t := range tasks {
			if started>>i&1 == 1 {
				end = max(end, starts[i]+t.Time)
				if starts[i]+t.Time > now {
					busy += t.People
				}
			}
		}
		if bits.OnesCount(started) == len(tasks) {
			best = min(best, end)
			return
		}
		var ready []int
		for i, t := range tasks {
			if started>>i&1 == 0 && !slices.ContainsFunc(t.After, func(p int) bool { return started>>p&1 == 0 || starts[p]+tasks[p].Time > now }) {
				ready = append(ready, i)
			}
		}
		for set := range 1 << len(ready) {
			people, with := busy, started
			for k, i := range ready {
				if set>>k&1 == 1 {
					people += tasks[i].People
					with |= 1 << i
				}
			}
			if people > crew {
				continue
			}
			for i := range tasks {
				if with>>i&1 == 1 && started>>i&1 == 0 {
					starts[i] = now
				}
			}
			minute(now+1, with)
		}
	}
	minute(0, 0)
	return best
}

func random(r *rand.Rand, n, longest, crew int, waits float64) []Task {
	tasks := make([]Task, n)
	for i := range tasks {
		tasks[i] = Task{Time: 1 + r.IntN(longest), People: 1 + r.IntN(min(2, crew))}
		for p := range i {
			if r.Float64() < waits {
				tasks[i].After = append(tasks[i].After, p)
			}
		}
	}
	return tasks
}

func TestAgainstMinuteByMinute(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 1000 {
		crew := 1 + r.IntN(3)
		tasks := random(r, 1+r.IntN(5), 3, crew, 0.3)
		work := int64(10_000_000)
		starts, length, bound := Solve(tasks, crew, &work)
		valid(t, tasks, crew, starts, length)
		if want := slow(tasks, crew); length != want || bound != want {
			t.Fatalf("%+v by %d: %d, bound %d; minute by minute %d", tasks, crew, length, bound, want)
		}
	}
}

// However few steps there are, the answer is a schedule, its length no less than the bound, and the bound of the
// outset no more than what all steps prove.
func TestFewSteps(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	short := 0
	for range 200 {
		crew := 2 + r.IntN(3)
		tasks := random(r, 12, 30, crew, 0.15)
		work := int64(r.IntN(2_000)) // from none for the bound on
		starts, length, bound := Solve(tasks, crew, &work)
		valid(t, tasks, crew, starts, length)
		all := int64(100_000_000)
		_, least, proved := Solve(tasks, crew, &all)
		if bound > least || least != proved || length < least {
			t.Fatalf("%+v by %d: %d to %d with few steps, %d to %d with many", tasks, crew, bound, length, proved, least)
		}
		if bound < length {
			short++
		}
	}
	if short == 0 || short == 200 {
		t.Errorf("%d of 200 were not proved with few steps", short)
	}
}

// The bound, by hand, where there are no steps for a search. A crew of three, and tasks of two people take turns.
func TestBoundByHand(t *testing.T) {
	for _, row := range []struct {
		reason      string
		tasks       []Task
		work, bound int
	}{
		{"two take turns: 5 + 7, where the crew is filled for 24/3 = 8", []Task{{5, 2, nil}, {7, 2, nil}}, 0, 12},
		{"one person each does not: 12/3", []Task{{5, 1, nil}, {7, 1, nil}, {0, 1, nil}}, 0, 7},
		{"turns and what comes after: 5 + 5 + 10", []Task{{5, 2, nil}, {5, 2, nil}, {10, 3, []int{0, 1}}}, 0, 20},
		{"from the start of the two that take turns: 4, 5 + 5, 6; from 0 on it is 5 + 5 + 6", []Task{{4, 1, nil}, {5, 2, []int{0}}, {5, 2, []int{0}}, {6, 1, []int{1, 2}}}, 8, 20},
		{"the same without the steps for the second time", []Task{{4, 1, nil}, {5, 2, []int{0}}, {5, 2, []int{0}}, {6, 1, []int{1, 2}}}, 7, 16},
		{"the crew is filled, and a part of a minute is one more: (3 + 3 + 4)/3", []Task{{3, 1, nil}, {3, 1, nil}, {2, 1, nil}, {2, 1, nil}}, 0, 4},
	} {
		s := &search{tasks: row.tasks, crew: 3, work: new(int64)}
		*s.work = int64(row.work)
		s.tails()
		if got := s.bound(); got != row.bound {
			t.Errorf("%s: %d, want %d", row.reason, got, row.bound)
		}
	}
}

// Ten chains of twelve tasks, as ten trees are, end within the steps given and use no more.
func TestLarge(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	var tasks []Task
	for range 10 {
		for k := range 12 {
			task := Task{Time: 5 + r.IntN(60), People: 1}
			if k%4 == 0 {
				task.People = 2
			}
			if k > 0 {
				task.After = []int{len(tasks) - 1}
			}
			tasks = append(tasks, task)
		}
	}
	work := int64(2_000_000)
	starts, length, bound := Solve(tasks, 4, &work)
	valid(t, tasks, 4, starts, length)
	if work < -100_000 || bound > length || length*100 > bound*105 {
		t.Errorf("%d, bound %d, %d steps left", length, bound, work)
	}
	t.Logf("%d, bound %d, %d steps left", length, bound, work)
}

// The steps that the search takes, with enough of them and with few.
func TestWork(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	c := tally.New()
	for k := range 300 {
		crew := 2 + r.IntN(3)
		tasks := random(r, 9+k%6, 30, crew, 0.2)
		all := int64(20_000)
		if k%3 == 0 {
			all = int64(r.IntN(2_000))
		}
		work := all
		starts, length, bound := Solve(tasks, crew, &work)
		valid(t, tasks, crew, starts, length)
		c.Add(all-work, int64(length), int64(bound))
	}
	c.Check(t, "1605764 c92d800c19dbe196")
}

// TestKeep holds what is remembered to its two limits: one state more is the last, and the bytes are those of its times, its
// key and 64 for the rest.
func TestKeep(t *testing.T) {
	const size = 8*2 + 1 + 64 // two people, and a bit for each of eight tasks
	for _, tt := range []struct {
		states, bytes int
		kept          bool
	}{
		{0, 0, true},
		{maxKept - 1, 0, true},
		{maxKept, 0, false},
		{0, maxBytes - 1, true},
		{0, maxBytes, false},
	} {
		work := int64(100)
		s := &search{
			tasks: make([]Task, 8), crew: 2, awaited: make([][]int, 8), work: &work, kept: map[string][][]int{}, states: tt.states, bytes: tt.bytes,
			state: state{free: []int{3, 5}, ends: make([]int, 8), done: make([]bool, 8)},
		}
		if !s.keep(0) {
			t.Errorf("%+v: the first of its kind is no worse than any", tt)
		}
		states, bytes := tt.states, tt.bytes
		if tt.kept {
			states, bytes = states+1, bytes+size
		}
		if s.states != states || s.bytes != bytes {
			t.Errorf("%+v: %d states of %d bytes, want %d and %d", tt, s.states, s.bytes, states, bytes)
		}
		if s.keep(0) == tt.kept {
			t.Errorf("%+v: the same once more is kept: %t", tt, !tt.kept)
		}
	}
}
