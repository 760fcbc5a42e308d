package labor_test

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// Every kind has a rate to start from, but ties, and a lead time. A new kind needs a row.
func TestStartingRatesHaveEveryKind(t *testing.T) {
	r := labor.StartingRates()
	for k := range kindTable {
		kind := shopping.Kind(k)
		if rate, ok := r.Minutes[kind.String()]; k > 0 && (!ok || rate.IsZero() != (kind == shopping.Tie) || r.Days[kind.String()] == 0) {
			t.Errorf("%v: %s min, %d days", kind, rate, r.Days[kind.String()])
		}
	}
}

// The ranges of the handbook, section 15, hold the values to start from.
func TestStartingRatesAreInTheirRanges(t *testing.T) {
	r := labor.StartingRates()
	for _, row := range []struct {
		what     string
		value    decimal.Decimal
		low, top string
	}{
		{"fluffing a foot, 6 to 10 min", r.Minutes["artificial tree"], "6", "10"},
		{"100 lights, 6 to 12 min", r.Minutes["lights"], "6", "12"},
		{"an ornament, 40 to 60 an hour", r.Minutes["ornaments"], "1", "1.5"},
		{"a pick, 1 to 2 min", r.Minutes["picks"], "1", "2"},
		{"a yard of garland, about 1 min", r.Minutes["garland"], "1", "1"},
		{"a mantel, 1 to 2 hours", r.Minutes["mantel"], "60", "120"},
		{"above 8 ft a third to a half more", r.Percent["above"], "33", "50"},
		{"taking down a third to a half", r.Percent["down"], "33", "50"},
		{"markup of 50 to 100 %", r.Percent["markup"], "50", "100"},
		{"a deposit of half", r.Percent["deposit"], "50", "50"},
	} {
		if row.value.LessThan(decimal.RequireFromString(row.low)) || row.value.GreaterThan(decimal.RequireFromString(row.top)) {
			t.Errorf("%s: %s", row.what, row.value)
		}
	}
	if r.Pair != 8*units.Foot || r.Lift < 40*units.Pound || r.Lift > 50*units.Pound {
		t.Errorf("pair above %v, one lifts %v", r.Pair, r.Lift)
	}
}

// drawnWork draws a tree or another place.
func drawnWork(t *rapid.T) labor.Work {
	height := units.Length(rapid.IntRange(1, 40*12).Draw(t, "height")) * units.Inch
	w := labor.Work{Room: "ticket hall", Height: height, Place: rapid.SampledFrom([]string{"", "artificial tree"}).Draw(t, "place")}
	if rapid.Bool().Draw(t, "part") {
		w.From = units.Length(rapid.Int64Range(0, int64(height)).Draw(t, "from"))
	}
	for _, k := range []shopping.Kind{shopping.Ornament, shopping.Garland, shopping.Pick, shopping.Light, shopping.Topper, shopping.Skirt, shopping.Stocking} {
		for range rapid.IntRange(0, 2).Draw(t, "needs") {
			n := pieces(k, rapid.IntRange(0, 300).Draw(t, "count"))
			if k.Running() {
				n.Quantity = shopping.Quantity{Length: units.Length(n.Quantity.Pieces) * 7 * units.Inch}
			}
			w.Needs = append(w.Needs, n)
		}
	}
	return w
}

// drawnRates draws values of a house.
func drawnRates(t *rapid.T) labor.Rates {
	r := labor.StartingRates()
	money := func(name string, most int) decimal.Decimal {
		return decimal.New(int64(rapid.IntRange(0, most*10_000).Draw(t, name)), -4)
	}
	for k := range kindTable {
		if k > 0 {
			r.Minutes[shopping.Kind(k).String()] = money("each", 3)
		}
	}
	r.Minutes["artificial tree"] = money("fluff", 10)
	r.Reach = units.Length(rapid.IntRange(0, 96).Draw(t, "reach")) * units.Inch
	r.Pair = r.Reach + units.Length(rapid.IntRange(0, 48).Draw(t, "pair"))*units.Inch
	for _, name := range []string{"hour", "visit", "consultation"} {
		r.Price[name] = money(name, 100)
	}
	for _, name := range []string{"above", "down", "markup", "discount", "deposit", "goods tax", "work tax", "travel tax"} {
		r.Percent[name] = money(name, 100)
	}
	r.Places = rapid.IntRange(0, 4).Draw(t, "places")
	return r
}

func must[T any](t interface{ Fatal(...any) }) func(T, error) T {
	return func(v T, err error) T {
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// tasksOf returns the tasks up and down.
func tasksOf(t interface{ Fatal(...any) }, r labor.Rates, work ...labor.Work) (up, down []labor.Task) {
	up, down, err := r.Tasks(work)
	if err != nil {
		t.Fatal(err)
	}
	return up, down
}

// personMinutes returns what tasks come to.
func personMinutes(tasks []labor.Task) (sum int) {
	for _, task := range tasks {
		sum += task.Minutes * task.People
	}
	return sum
}

// The tasks of a work hold what its needs ask for, piece for piece; in the order of work; and a kind takes, against
// exact fractions, what the formula says, rounded up by less than a minute for all of it, or for each task if one is shorter.
func TestTasks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, w := drawnRates(t), drawnWork(t)
		tasks, _ := tasksOf(t, r, w)
		var asked, given shopping.ByKind[shopping.Quantity]
		for _, n := range w.Needs {
			asked[n.Item.Kind].Pieces += n.Quantity.Pieces
			asked[n.Item.Kind].Length += n.Quantity.Length
		}
		var clock, count shopping.ByKind[int] // minutes, tasks
		var exact [len(clock)]*big.Rat        // the same by the formula
		var short shopping.ByKind[bool]       // a task takes less than a minute
		spread, floor := false, false
		for _, task := range tasks {
			k := task.Kind
			given[k].Pieces += task.Quantity.Pieces
			given[k].Length += task.Quantity.Length
			clock[k] += task.Minutes
			count[k]++
			// rate · amount · (1 + above), in fractions.
			rate, amount := r.Minutes[k.String()], big.NewRat(int64(task.Quantity.Pieces), 1)
			switch {
			case k == 0:
				rate, amount = r.Minutes["artificial tree"], big.NewRat(int64(task.Quantity.Length), int64(units.Foot))
			case k.Running():
				amount = big.NewRat(int64(task.Quantity.Length), int64(units.Yard))
			case k == shopping.Light:
				amount.Mul(amount, big.NewRat(1, 100))
			}
			time := new(big.Rat).Mul(rate.Rat(), amount)
			if task.People == 2 {
				time.Mul(time, decimal.NewFromInt(100).Add(r.Percent["above"]).Shift(-2).Rat())
			}
			if exact[k] == nil {
				exact[k] = new(big.Rat)
			}
			exact[k].Add(exact[k], time)
			short[k] = short[k] || time.Cmp(big.NewRat(1, 1)) < 0
			if (task.Minutes > 0) != (time.Sign() > 0) {
				t.Fatalf("%v takes %s min", task, time.FloatString(4))
			}
			lift := task.Height > 20*units.Foot
			if strings.HasSuffix(task.Text, ", from a lift") != lift || strings.HasSuffix(task.Text, ", from a ladder") != (task.Height > r.Reach && !lift) || (task.People == 2) != (task.Height > r.Pair) {
				t.Fatalf("%v up to %v, reach %v, pair %v", task, task.Height, r.Reach, r.Pair)
			}
			if k == shopping.Ornament || k == shopping.Pick {
				spread = true
				if task.Height > r.Reach && floor {
					t.Fatalf("%v: the floor is dressed", task)
				}
				floor = floor || task.Height <= r.Reach
			} else if spread && (k == shopping.Light || k.Running() || k == 0) {
				t.Fatalf("%v: after the pieces", task)
			}
		}
		if w.Place != "" {
			asked[0].Length = w.Height - w.From
		}
		for k := range asked {
			if asked[k] != given[k] {
				t.Fatalf("%v: %v of %v", shopping.Kind(k), given[k], asked[k])
			}
			if exact[k] != nil {
				over := new(big.Rat).Sub(big.NewRat(int64(clock[k]), 1), exact[k])
				most := int64(1)
				if short[k] {
					most = int64(count[k]) // a minute each at least
				}
				if over.Sign() < 0 || over.Cmp(big.NewRat(most, 1)) >= 0 {
					t.Fatalf("%v: %d min, by the formula %s", shopping.Kind(k), clock[k], exact[k].FloatString(4))
				}
			}
		}
	})
}

// By hand: of 81 pieces on a 9 ft tree (3/9)² are above 6 ft, 9, and (1/9)², 1, above 8 ft. Above 1 ft, the same tree has
// (3/8)² of 64, 9, and (1/8)², 1.
func TestShareAboveReach(t *testing.T) {
	for _, row := range []struct {
		n            int
		from, height units.Length
		want         []int // from the top down
	}{
		{81, 0, 9 * units.Foot, []int{1, 8, 72}},
		{64, units.Foot, 9 * units.Foot, []int{1, 8, 55}},
		{82, 0, 9 * units.Foot, []int{2, 8, 72}},
		{81, 0, 6 * units.Foot, []int{81}},
		{81, 6 * units.Foot, 8 * units.Foot, []int{81}},
		{5, 9 * units.Foot, 9 * units.Foot, []int{5}},
		{0, 0, 9 * units.Foot, nil},
		{900, 0, 30 * units.Foot, []int{100, 384, 92, 324}}, // 100 from a lift: (10/30)², (22/30)² and (24/30)² are above 20, 8 and 6 ft
		{36, 18 * units.Foot, 24 * units.Foot, []int{16, 20}},
	} {
		w := labor.Work{From: row.from, Height: row.height, Needs: []shopping.Need{pieces(shopping.Ornament, row.n)}}
		var got []int
		tasks, _ := tasksOf(t, labor.StartingRates(), w)
		for _, task := range tasks {
			got = append(got, task.Quantity.Pieces)
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%d from %v to %v: %v, want %v", row.n, row.from, row.height, got, row.want)
		}
	}
}

// By hand: of 81 ft of garland on a 9 ft tree (1/9)², 1 ft, are above 8 ft and (3/9)², 9 ft, above 6 ft. Of 80 ft, 960 in, these
// are 11.9 and 106.7, and so 12 and 107 in. Three strands of 6 ft are 18 ft, 6 min at 1 min a yard.
func TestGarlandByLevel(t *testing.T) {
	for _, row := range []struct {
		height, length units.Length
		pieces         int
		want           []string
	}{
		{9 * units.Foot, 81 * units.Foot, 1, []string{"1 ft of garland, 8 ft to 9 ft, from a ladder", "8 ft of garland, 6 ft to 8 ft, from a ladder", "72 ft of garland, 0 ft to 6 ft"}},
		{9 * units.Foot, 80 * units.Foot, 1, []string{"1 ft of garland, 8 ft to 9 ft, from a ladder", "7 ft 11 in of garland, 6 ft to 8 ft, from a ladder", "71 ft 1 in of garland, 0 ft to 6 ft"}},
		{5 * units.Foot, 6 * units.Foot, 3, []string{"18 ft of garland"}},
	} {
		tasks, _ := tasksOf(t, labor.StartingRates(), labor.Work{Height: row.height, Needs: []shopping.Need{{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Pieces: row.pieces, Length: row.length}}}})
		var got []string
		for _, task := range tasks {
			got = append(got, strings.TrimPrefix(task.Text, "wind "))
		}
		if !slices.Equal(got, row.want) || row.pieces == 3 && tasks[0].Minutes != 6 {
			t.Errorf("%d of %v: %q", row.pieces, row.length, got)
		}
	}
}

// A tree that is all at one height is not shaped. Ties take no time, up or down, and at 0 % nothing takes time to take down.
func TestNothingToDo(t *testing.T) {
	r := labor.StartingRates()
	if up, _ := tasksOf(t, r, labor.Work{Place: "artificial tree", Height: units.Foot, From: units.Foot}); len(up) != 0 {
		t.Errorf("%v", up)
	}
	needs := []shopping.Need{pieces(shopping.Pick, 4), pieces(shopping.Tie, 4)}
	for _, row := range []struct {
		percent int64
		want    string
	}{{40, "picks 6, wire ties 0; wire ties 0, picks 3"}, {0, "picks 6, wire ties 0; wire ties 0, picks 0"}} {
		r.Percent["down"] = decimal.NewFromInt(row.percent)
		up, down := tasksOf(t, r, labor.Work{Height: units.Yard, Needs: needs})
		var got []string
		for _, tasks := range [][]labor.Task{up, down} {
			var list []string
			for _, task := range tasks {
				list = append(list, fmt.Sprint(task.Kind, " ", task.Minutes))
			}
			got = append(got, strings.Join(list, ", "))
		}
		if text := strings.Join(got, "; "); text != row.want {
			t.Errorf("%d %%: %s, want %s", row.percent, text, row.want)
		}
	}
}

// Hooks go up before what hangs on them, and come down after it.
func TestHooksFirst(t *testing.T) {
	tasks, down := tasksOf(t, labor.StartingRates(), labor.Work{Height: units.Yard, Needs: []shopping.Need{pieces(shopping.Pick, 3), pieces(shopping.Topper, 1), pieces(shopping.Ornament, 3), pieces(shopping.Stocking, 2), pieces(shopping.Hook, 2)}})
	if tasks[0].Kind != shopping.Hook || down[len(down)-1].Kind != shopping.Hook {
		t.Errorf("%v, %v", tasks, down)
	}
}

// What no stepladder reaches is a task of its own from a lift, wherever the house begins to work in twos: the sheet and the ladder of the
// room have the same limit.
func TestLift(t *testing.T) {
	limit := 20 * units.Foot
	below := must[sizing.Ladder](t)(sizing.LadderFor(limit))
	above := must[sizing.Ladder](t)(sizing.LadderFor(limit + 1))
	if below.Lift || !above.Lift {
		t.Fatalf("%v, %v", below, above)
	}
	r := labor.StartingRates()
	for _, row := range []struct {
		reach, pair units.Length
		want        []string
	}{
		{6 * units.Foot, 8 * units.Foot, []string{"20 ft to 24 ft, from a lift 2", "8 ft to 20 ft, from a ladder 2", "6 ft to 8 ft, from a ladder 1", "0 ft to 6 ft 1"}},
		{6 * units.Foot, 22 * units.Foot, []string{"22 ft to 24 ft, from a lift 2", "20 ft to 22 ft, from a lift 1", "6 ft to 20 ft, from a ladder 1", "0 ft to 6 ft 1"}},
		{22 * units.Foot, 23 * units.Foot, []string{"23 ft to 24 ft, from a lift 2", "22 ft to 23 ft, from a lift 1", "20 ft to 22 ft, from a lift 1", "0 ft to 20 ft 1"}},
	} {
		r.Reach, r.Pair = row.reach, row.pair
		tasks, _ := tasksOf(t, r, labor.Work{Height: 24 * units.Foot, Needs: []shopping.Need{pieces(shopping.Ornament, 800)}})
		var got []string
		for _, task := range tasks {
			_, where, _ := strings.Cut(task.Text, ", ")
			got = append(got, fmt.Sprint(where, " ", task.People))
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("reach %v, pair %v: %q", row.reach, row.pair, got)
		}
	}
}

// A mantel is one task whatever is on it; one above Pair takes two people and longer.
func TestMantel(t *testing.T) {
	needs := []shopping.Need{pieces(shopping.Pick, 50)}
	for _, row := range []struct {
		height  units.Length
		minutes int
		people  int
	}{{54 * units.Inch, 90, 1}, {7 * units.Foot, 90, 1}, {9 * units.Foot, 126, 2}} {
		tasks, down := tasksOf(t, labor.StartingRates(), labor.Work{Height: row.height, Place: "mantel", Needs: needs})
		ladder := ""
		if row.height > 6*units.Foot {
			ladder = ", from a ladder"
		}
		if len(tasks) != 1 || tasks[0].Minutes != row.minutes || tasks[0].People != row.people || tasks[0].Text != "dress the mantel"+ladder {
			t.Errorf("%v: %v", row.height, tasks)
		}
		if d := down[0]; d.Text != "clear the mantel"+ladder || d.Minutes != map[int]int{90: 36, 126: 51}[row.minutes] || d.People != row.people {
			t.Errorf("%v", d)
		}
	}
}

// Taking down is the reverse, with as many people; its share, exact, is rounded up by less than two person-minutes for a place, or more where a task
// takes the one minute that it takes at least.
func TestTakeDown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, w := drawnRates(t), drawnWork(t)
		tasks, down := tasksOf(t, r, w)
		for i, task := range tasks {
			back := down[len(down)-1-i]
			if back.Kind != task.Kind || back.Quantity != task.Quantity || back.People != task.People || back.Height != task.Height || object(back.Text) != object(task.Text) || back.Text == task.Text {
				t.Fatalf("%v comes down as %v", task, back)
			}
		}
		exact := r.Percent["down"].Shift(-2).Mul(decimal.NewFromInt(int64(personMinutes(tasks))))
		over := decimal.NewFromInt(int64(personMinutes(down))).Sub(exact)
		most := int64(2)
		if slices.ContainsFunc(down, func(t labor.Task) bool { return t.Minutes == 1 }) {
			most += int64(2 * len(down)) // a minute each at least
		}
		if over.IsNegative() || over.GreaterThanOrEqual(decimal.NewFromInt(most)) {
			t.Fatalf("%d person-minutes, by the share %s", personMinutes(down), exact)
		}
	})
}

// object returns a text without its verb.
func object(text string) string {
	for _, verb := range []string{"take off ", "take up "} {
		if rest, ok := strings.CutPrefix(text, verb); ok {
			return rest
		}
	}
	_, rest, _ := strings.Cut(text, " ")
	return rest
}

// kindTable is ranged over for every kind.
var kindTable shopping.ByKind[int]

// A house that works in meters reads meters. By hand: 8 ft are 2.438 m, 10 ft 3.048 m; 3 in are 7.62 cm.
func TestUnits(t *testing.T) {
	r := labor.StartingRates()
	r.Units = units.InMetric
	tasks, _ := tasksOf(t, r, labor.Work{Height: 10 * units.Foot, Needs: []shopping.Need{pieces(shopping.Ornament, 100)}})
	if got := tasks[0].Text; got != "hang 4 ornaments, 2.44 m to 3.05 m, from a ladder" {
		t.Error(got)
	}
	star := labor.Thing{Lot: shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Type: "star", Size: 3 * units.Inch}, Quantity: shopping.Quantity{Pieces: 2}}}
	cartons, _ := packed(t, r, []labor.Thing{star}, []labor.Box{{Name: "open", Cells: 60}})
	if got := cartons[0].Label; got != "1 of 1, 2 stars, 7.5 cm" {
		t.Error(got)
	}
	r.Units = units.InInches
	star.Item.Size = 33 * units.Inch / 10 // 3.3 in, to a quarter
	if cartons, _ = packed(t, r, []labor.Thing{star}, []labor.Box{{Name: "open", Cells: 60}}); cartons[0].Label != "1 of 1, 2 stars, 3 1/4 in" {
		t.Error(cartons[0].Label)
	}
	if tasks, _ = tasksOf(t, r, labor.Work{Height: 10 * units.Foot, Needs: []shopping.Need{pieces(shopping.Ornament, 100)}}); tasks[0].Text != "hang 4 ornaments, 96 in to 120 in, from a ladder" {
		t.Error(tasks[0].Text)
	}
}

// Every task takes a minute at least, also a share that one of a crew does. By hand: of 4 picks on a 7 ft tree (1/7)² is above 6 ft, 1: 2 min,
// and 4 in all are 6, less 2 for the others; at 10 % all 6 are 1, which the first takes, so that the other one takes a minute more.
func TestNoTaskWithoutTime(t *testing.T) {
	r := labor.StartingRates()
	r.Percent["down"] = decimal.NewFromInt(10)
	tasks, down := tasksOf(t, r, labor.Work{Height: 7 * units.Foot, Needs: []shopping.Need{pieces(shopping.Pick, 4)}})
	if len(tasks) != 2 || tasks[0].Minutes != 2 || tasks[1].Minutes != 4 || len(down) != 2 || down[0].Minutes != 1 || down[1].Minutes != 1 {
		t.Fatalf("%v, %v", tasks, down)
	}
	list, time := schedule(t, r, down)
	for _, task := range list {
		if task.Minutes < 1 {
			t.Errorf("%v takes no time", task)
		}
	}
	if time.Max != 2 {
		t.Errorf("%v min", time)
	}
}
