package labor_test

import (
	"fmt"
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
		r.Percent["down"] = decimal.NewFromInt(5)
		tasks, down := tasksOf(t, r, work...)
		if rapid.Bool().Draw(t, "down") { // with tasks of no time
			tasks = down
		}
		list, time := schedule(t, r, tasks)
		type span struct{ start, end int }
		busy := map[int][]span{}
		var done, asked shopping.ByKind[shopping.Quantity]
		ends := map[int]int{}
		total := 0
		for _, task := range list {
			if len(task.Who) != task.People || task.Start < 0 || task.Start+task.Minutes > time.Max {
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
						t.Fatalf("person %d is in two places at %d:\n%v", p, task.Start, list)
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
		for _, a := range list {
			for _, b := range list {
				if a.Work == b.Work && index(tasks, a) < index(tasks, b) && b.Start < a.Start+a.Minutes {
					t.Fatalf("%v begins before %v ends", b, a)
				}
			}
		}
		if time.Min > time.Max || time.Max*r.Crew < total || r.Crew == 1 && (time.Max != total || time.Min != total) {
			t.Fatalf("%d, bound %d, for %d by %d", time.Max, time.Min, total, r.Crew)
		}
	})
}

// schedule returns the schedule of tasks.
func schedule(t interface{ Fatal(...any) }, r labor.Rates, tasks []labor.Task) ([]labor.Task, units.Range[int]) {
	list, time, err := r.Schedule(tasks)
	if err != nil {
		t.Fatal(err)
	}
	return list, time
}

// index returns which of the tasks a part is of.
func index(tasks []labor.Task, part labor.Task) int {
	return slices.IndexFunc(tasks, func(x labor.Task) bool { return x.Work == part.Work && x.Kind == part.Kind && x.Height == part.Height })
}

// By hand, for a crew of two: 90 min of one mantel are 90 min for both, two mantels are 90 as well, three are 180. Twelve ornaments
// from the floor, 14.4 and so 15 min, are 7 and 8 for two. The lights are not shared.
func TestScheduleByHand(t *testing.T) {
	mantel := labor.Work{Height: 54 * units.Inch, Place: "mantel"}
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
		tasks, _ := tasksOf(t, r, row.work...)
		_, time := schedule(t, r, tasks)
		if time.Max != row.want || time.Min != row.want {
			t.Errorf("%d works: %d, bound %d, want %d", len(row.work), time.Max, time.Min, row.want)
		}
	}
}

// Who does what, by hand, for a crew of three. Two mantels are two tasks, by one person each. Two who are done go on, before a
// third begins. While one dresses a mantel, the others do a third of 12 ornaments each in 4 min, and one of them the last third: 8 in all;
// and likewise the sides of a tree that is shaped.
func TestScheduleWho(t *testing.T) {
	r := labor.StartingRates()
	r.Crew = 3
	mantel := labor.Task{Text: "dress the mantel", Minutes: 90, People: 1}
	second := mantel
	second.Work = 1
	for _, row := range []struct {
		tasks []labor.Task
		want  []string
	}{
		{[]labor.Task{mantel, second}, []string{"0 dress the mantel 90 [1]", "0 dress the mantel 90 [2]"}},
		{[]labor.Task{{Text: "x", Minutes: 10, People: 2}, {Work: 1, Text: "y", Minutes: 5, People: 2}}, []string{"0 x 10 [1 2]", "10 y 5 [1 2]"}},
		{
			[]labor.Task{mantel, {Work: 1, Kind: shopping.Ornament, Quantity: shopping.Quantity{Pieces: 12}, Text: "hang 12 ornaments", Minutes: 12, People: 1}},
			[]string{"0 dress the mantel 90 [1]", "0 hang 8 of 12 ornaments 8 [2]", "0 hang 4 of 12 ornaments 4 [3]"},
		},
		{
			[]labor.Task{mantel, {Work: 1, Quantity: shopping.Quantity{Length: 5 * units.Foot}, Text: "shape the tree", Minutes: 12, People: 1}},
			[]string{"0 dress the mantel 90 [1]", "0 shape the tree 8 [2]", "0 shape the tree 4 [3]"},
		},
	} {
		list, _ := schedule(t, r, row.tasks)
		var got []string
		for _, x := range list {
			got = append(got, fmt.Sprint(x.Start, " ", strings.Replace(x.Text, "one of 3 sides of ", "", 1), " ", x.Minutes, " ", x.Who))
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%q, want %q", got, row.want)
		}
	}
}

// Where the search ends before the proof, the bound is below. A hotel of twelve trees is too much.
func TestScheduleOfAHotel(t *testing.T) {
	var work []labor.Work
	for i := range 12 {
		work = append(work, labor.Work{
			Room: "room", Height: units.Length(6+i%5) * units.Foot, Place: "artificial tree",
			Needs: []shopping.Need{pieces(shopping.Light, 300+70*i), pieces(shopping.Ornament, 40+9*i), pieces(shopping.Pick, 11+2*i), pieces(shopping.Topper, 1)},
		})
	}
	r := labor.StartingRates()
	r.Crew = 5
	tasks, _ := tasksOf(t, r, work...)
	_, time := schedule(t, r, tasks)
	if time.Min >= time.Max || time.Max*100 > time.Min*105 {
		t.Errorf("%d, bound %d", time.Max, time.Min)
	}
	t.Logf("%d, bound %d", time.Max, time.Min)
}

// A task of no time for two, at the minute at which another begins, has two people all the same.
func TestScheduleOfNoTime(t *testing.T) {
	tasks := []labor.Task{{Work: 1, Minutes: 5, People: 1}, {Work: 1, Minutes: 5, People: 1}, {Minutes: 5, People: 1}, {Minutes: 0, People: 2}, {Minutes: 5, People: 1}}
	list, time := schedule(t, labor.StartingRates(), tasks)
	for _, task := range list {
		if len(task.Who) != task.People {
			t.Errorf("%+v", task)
		}
	}
	if time.Max != 10 || time.Min != 10 {
		t.Errorf("%d, bound %d", time.Max, time.Min)
	}
}

// The text of a part, where the text of a task is not one of ours.
func TestScheduleOfOtherTexts(t *testing.T) {
	tasks := []labor.Task{{Kind: shopping.Ornament, Quantity: shopping.Quantity{Pieces: 4}, Text: "stars", Minutes: 6, People: 1}}
	list, time := schedule(t, labor.StartingRates(), tasks)
	if len(list) != 2 || list[0].Text != "2 of stars" || time.Max != 3 {
		t.Errorf("%v, %v", list, time)
	}
}
