package labor_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// A schedule does all tasks, in the order of each work, with nobody in two places; alone it takes the sum.
func TestSchedule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := labor.StartingRates()
		r.Crew = rapid.IntRange(1, 5).Draw(t, "crew")
		var work []labor.Work
		for range rapid.IntRange(0, 3).Draw(t, "works") {
			w := drawnWork(t)
			if r.Crew == 1 {
				w.From, w.Height = 0, min(w.Height, r.Pair)
			}
			work = append(work, w)
		}
		tasks := must[[]labor.Task](t)(r.Tasks(work))
		if rapid.Bool().Draw(t, "down") { // with tasks of no time
			r.Down = decimal.NewFromInt(5)
			tasks = must[[]labor.Task](t)(r.TakeDown(tasks))
		}
		s := must[labor.Schedule](t)(r.Schedule(tasks))
		type span struct{ start, end int }
		busy := map[int][]span{}
		var done, asked shopping.ByKind[shopping.Quantity]
		ends := map[int]int{}
		total := 0
		for _, task := range s.Tasks {
			if len(task.Who) != task.People || task.Start < 0 || task.Start+task.Minutes > s.Minutes {
				t.Fatalf("%+v", task)
			}
			if task.Kind != 0 {
				done[task.Kind].Pieces += task.Quantity.Pieces
				done[task.Kind].Length += task.Quantity.Length
			}
			for _, p := range task.Who {
				if p < 1 || p > r.Crew {
					t.Fatalf("person %d of %d", p, r.Crew)
				}
				for _, b := range busy[p] {
					if task.Start < b.end && b.start < task.Start+task.Minutes {
						t.Fatalf("person %d is in two places at %d:\n%v", p, task.Start, s)
					}
				}
				busy[p] = append(busy[p], span{task.Start, task.Start + task.Minutes})
			}
			total += task.Minutes * task.People
			ends[task.Work] = max(ends[task.Work], task.Start+task.Minutes)
		}
		for _, task := range tasks {
			if task.Kind != 0 {
				asked[task.Kind].Pieces += task.Quantity.Pieces
				asked[task.Kind].Length += task.Quantity.Length
			}
		}
		if total != personMinutes(tasks) || done != asked {
			t.Fatalf("%d person-minutes of %d; %v of %v", total, personMinutes(tasks), done, asked)
		}
		// In the order of the work: a task begins when all before it have ended. Levels and kinds tell them apart.
		for _, a := range s.Tasks {
			for _, b := range s.Tasks {
				if a.Work == b.Work && index(tasks, a) < index(tasks, b) && b.Start < a.Start+a.Minutes {
					t.Fatalf("%v begins before %v ends", b, a)
				}
			}
		}
		if s.Bound > s.Minutes || s.Minutes*r.Crew < total || r.Crew == 1 && (s.Minutes != total || s.Bound != total) {
			t.Fatalf("%d, bound %d, for %d by %d", s.Minutes, s.Bound, total, r.Crew)
		}
	})
}

// index returns which of the tasks a part is of.
func index(tasks []labor.Task, part labor.Task) int {
	return slices.IndexFunc(tasks, func(x labor.Task) bool { return x.Work == part.Work && x.Kind == part.Kind && x.Height == part.Height })
}

// By hand, for a crew of two: 90 min of one mantel are 90 min for both, two mantels are 90 as well, three are 180. Twelve ornaments
// from the floor, 14.4 and so 15 min, are 7 and 8 for two. The lights are not shared.
func TestScheduleByHand(t *testing.T) {
	mantel := labor.Work{Height: 54 * units.Inch, Mantel: true}
	tree := func(k shopping.Kind, n int) labor.Work {
		return labor.Work{Height: 5 * units.Foot, Needs: []shopping.Need{pieces(k, n)}}
	}
	for _, row := range []struct {
		work []labor.Work
		want int
	}{
		{nil, 0},
		{[]labor.Work{mantel}, 90},
		{[]labor.Work{mantel, mantel}, 90},
		{[]labor.Work{mantel, mantel, mantel}, 180},
		{[]labor.Work{tree(shopping.Ornament, 12)}, 8},
		{[]labor.Work{tree(shopping.Light, 200)}, 18},
	} {
		r := labor.StartingRates()
		s := must[labor.Schedule](t)(r.Schedule(must[[]labor.Task](t)(r.Tasks(row.work))))
		if s.Minutes != row.want || s.Bound != row.want {
			t.Errorf("%d works: %d, bound %d, want %d", len(row.work), s.Minutes, s.Bound, row.want)
		}
	}
}

// Where the search ends before the proof, the bound is below, and the text says so. A hotel of twelve trees is too much.
func TestScheduleOfAHotel(t *testing.T) {
	var work []labor.Work
	for i := range 12 {
		work = append(work, labor.Work{
			Room: "room", Height: units.Length(6+i%5) * units.Foot, Artificial: true,
			Needs: []shopping.Need{pieces(shopping.Light, 300+70*i), pieces(shopping.Ornament, 40+9*i), pieces(shopping.Pick, 11+2*i), pieces(shopping.Topper, 1)},
		})
	}
	r := labor.StartingRates()
	r.Crew = 5
	s := must[labor.Schedule](t)(r.Schedule(must[[]labor.Task](t)(r.Tasks(work))))
	if s.Bound >= s.Minutes || s.Minutes*100 > s.Bound*105 || !strings.Contains(s.String(), "the least is no less than ") {
		t.Errorf("%d, bound %d", s.Minutes, s.Bound)
	}
	t.Logf("%d, bound %d", s.Minutes, s.Bound)
}

// A task of no time for two, at the minute at which another begins, has two people all the same.
func TestScheduleOfNoTime(t *testing.T) {
	tasks := []labor.Task{{Work: 1, Minutes: 5, People: 1}, {Work: 1, Minutes: 5, People: 1}, {Minutes: 5, People: 1}, {Minutes: 0, People: 2}, {Minutes: 5, People: 1}}
	s := must[labor.Schedule](t)(labor.StartingRates().Schedule(tasks))
	for _, task := range s.Tasks {
		if len(task.Who) != task.People {
			t.Errorf("%+v", task)
		}
	}
	if s.Minutes != 10 || s.Bound != 10 {
		t.Errorf("%d, bound %d", s.Minutes, s.Bound)
	}
}
