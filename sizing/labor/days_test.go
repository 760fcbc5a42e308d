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

// The dates are in order; the work fits between its beginning and the day it stands; a cut tree is in no longer than it may be, there for
// the work, and out no later than the rest.
func TestDays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := labor.StartingRates()
		workday := rapid.IntRange(60, 600).Draw(t, "day")
		r.Minutes["day"], r.Days["wiring"], r.Days["cut tree"] = decimal.NewFromInt(int64(workday)), rapid.IntRange(0, 9).Draw(t, "prepare"), rapid.IntRange(1, 60).Draw(t, "cutDays")
		stand := labor.Date(rapid.IntRange(739_000, 740_000).Draw(t, "stand"))
		down := stand + labor.Date(rapid.IntRange(0, 60).Draw(t, "down"))
		minutes := rapid.IntRange(0, 5000).Draw(t, "minutes")
		works := []labor.Work{{Place: "cut tree"}}
		for _, place := range rapid.SliceOfN(rapid.SampledFrom([]string{"artificial tree", "cut tree", "mantel"}), 0, 3).Draw(t, "places") {
			works = append(works, labor.Work{Place: place})
		}
		days := must[[]labor.Day](t)(r.Dates(stand, down, minutes, works, []shopping.Need{pieces(shopping.Pick, 1), pieces(shopping.Garland, 0), pieces(shopping.Pick, 1)}))
		if !slices.IsSortedFunc(days, func(a, b labor.Day) int { return int(a.Date - b.Date) }) {
			t.Fatalf("%v", days)
		}
		on := func(text string) labor.Date {
			i := slices.IndexFunc(days, func(d labor.Day) bool { return strings.HasPrefix(d.Text, text) })
			if i < 0 {
				t.Fatalf("no %q in %v", text, days)
			}
			return days[i].Date
		}
		wire, begin := on(prepared(works)), stand
		if minutes > 0 {
			begin = on("begin")
		}
		work := int(stand-begin) * workday
		if work < minutes || work-workday >= minutes && minutes > 0 || begin-wire != labor.Date(r.Days["wiring"]) {
			t.Fatalf("%d min from %v: %v", minutes, begin, days)
		}
		if wire-on("order picks") != 14 || wire-on("order garland") != 28 || on("everything") != wire || on("it stands") != stand {
			t.Fatalf("%v", days)
		}
		// Everything is taken down once: the cut trees by the day on which they are out, the rest on its own.
		taken := map[int]labor.Date{}
		for _, d := range days {
			for _, i := range d.Down {
				if taken[i] != 0 || d.Text == "" {
					t.Fatalf("work %d is taken down twice: %v", i, days)
				}
				taken[i] = d.Date
			}
		}
		for i, w := range works {
			want := down
			if w.Place == "cut tree" {
				want = on("the cut tree is out")
			}
			if taken[i] != want {
				t.Fatalf("work %d, %q, is taken down on %v, not %v: %v", i, w.Place, taken[i], want, days)
			}
		}
		in, out := on("the cut tree comes in"), on("the cut tree is out")
		if in > begin || in < begin-1 || out > down || out-begin > labor.Date(r.Days["cut tree"]) || out < down && out-begin < labor.Date(r.Days["cut tree"]) || in < begin && down-in > labor.Date(r.Days["cut tree"]) || in == begin && down-begin < labor.Date(r.Days["cut tree"]) {
			t.Fatalf("in %v, out %v, at most %d days: %v", in, out, r.Days["cut tree"], days)
		}
	})
}

// prepared returns how what is done before begins: with a mantel, of which no more is said here, garland is wired.
func prepared(works []labor.Work) string {
	if slices.ContainsFunc(works, func(w labor.Work) bool { return w.Place == "mantel" }) {
		return "wire garland and picks"
	}
	return "lay everything ready"
}

// What is done before is what the works have: the garland of a mantel is wired, that of a tree is wound; lights are tried where there are any.
func TestPreparing(t *testing.T) {
	stand := must[labor.Date](t)(labor.ParseDate("2026-11-28"))
	tree := func(needs ...shopping.Need) labor.Work {
		return labor.Work{Place: "artificial tree", Height: 9 * units.Foot, Needs: needs}
	}
	mantel := func(needs ...shopping.Need) labor.Work {
		return labor.Work{Place: "mantel", Height: 4 * units.Foot, Needs: needs}
	}
	lights, picks, none := pieces(shopping.Light, 100), pieces(shopping.Pick, 8), pieces(shopping.Light, 0)
	wound, wired := pieces(shopping.Garland, 0), pieces(shopping.BaseGarland, 0)
	wound.Quantity.Length, wired.Quantity.Length = 81*units.Foot, 7*units.Foot
	for _, row := range []struct {
		works []labor.Work
		needs []shopping.Need
		want  string
	}{
		{[]labor.Work{tree(picks, wound), mantel(wired, picks), tree(lights)}, nil, "wire garland and picks, and see that the lights work"},
		{[]labor.Work{mantel(wired), tree(picks)}, nil, "wire garland"},
		{[]labor.Work{mantel(wired, lights)}, nil, "wire garland, and see that the lights work"},
		{[]labor.Work{tree(picks, wound, lights)}, nil, "see that the lights work"},
		{[]labor.Work{tree(picks, wound, none)}, nil, "lay everything ready"},
		{[]labor.Work{tree(wound)}, []shopping.Need{none}, "see that the lights work"}, // to order, however many
		{[]labor.Work{mantel(picks)}, nil, "lay everything ready"},                     // there is no garland to wire them to
	} {
		days := must[[]labor.Day](t)(labor.StartingRates().Dates(stand, 0, 0, row.works, row.needs))
		i := slices.IndexFunc(days, func(d labor.Day) bool { return d.Date == stand-1 && d.Text != "everything is in hand" })
		if i < 0 || days[i].Text != row.want {
			t.Errorf("%v: %v, want %q", row.works, days, row.want)
		}
	}
}

// On one day what comes first is said first: it stands, is taken down, and the tree is out; and the tree is there before work on it begins.
func TestDatesOfOneDay(t *testing.T) {
	stand := must[labor.Date](t)(labor.ParseDate("2026-12-24"))
	r := labor.StartingRates()
	days := must[[]labor.Day](t)(r.Dates(stand, stand, 600, []labor.Work{{Place: "cut tree"}}, nil))
	var got []string
	for _, d := range days {
		got = append(got, d.Date.String()+" "+d.Text)
	}
	want := []string{
		"2026-12-21 lay everything ready", "2026-12-21 the cut tree comes in, at the earliest", "2026-12-22 begin to put up: 10 h",
		"2026-12-24 it stands", "2026-12-24 take down and pack", "2026-12-24 the cut tree is out, at the latest",
	}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// Nobody takes it down: the dates end on the day it stands, but for a cut tree, which has to go. By hand: 27 November and 28 days are 25 December.
func TestDatesWithoutTakingDown(t *testing.T) {
	stand := must[labor.Date](t)(labor.ParseDate("2026-11-28"))
	days := must[[]labor.Day](t)(labor.StartingRates().Dates(stand, 0, 282, []labor.Work{{Place: "cut tree"}}, nil))
	last := days[len(days)-1]
	if last.Date.String() != "2026-12-25" || last.Text != "the cut tree is out, at the latest" || days[len(days)-2].Text != "it stands" || len(days) != 5 ||
		days[1].Date.String() != "2026-11-27" || days[1].Text != "the cut tree comes in, at the earliest" {
		t.Errorf("%v", days)
	}
}

// What takes no time begins on no day of its own. The calendar ends with its first and its last day: wiring takes the day before.
func TestDatesAtTheEnds(t *testing.T) {
	r := labor.StartingRates()
	for _, row := range []struct {
		stand labor.Date
		want  string
	}{
		{1, ""},
		{2, "0001-01-01 lay everything ready; 0001-01-02 it stands"},
		{3_652_059, "9999-12-30 lay everything ready; 9999-12-31 it stands"},
	} {
		days, err := r.Dates(row.stand, 0, 0, nil, nil)
		var got []string
		for _, d := range days {
			got = append(got, d.Date.String()+" "+d.Text)
		}
		if strings.Join(got, "; ") != row.want || (err == nil) != (row.want != "") {
			t.Errorf("day %d: %q, %v", row.stand, got, err)
		}
	}
}

// A cut tree is taken down before it is out, the rest on its day; where there is no rest, nothing is left for that day. By hand: it comes
// in on 27 November, and may stay until 25 December, which is 12 days before 6 January.
func TestDatesOfTakingDown(t *testing.T) {
	stand, down := must[labor.Date](t)(labor.ParseDate("2026-11-28")), must[labor.Date](t)(labor.ParseDate("2027-01-06"))
	cut := labor.Work{Place: "cut tree"}
	for _, row := range []struct {
		works []labor.Work
		down  labor.Date
		want  []string
	}{
		{[]labor.Work{{Place: "mantel"}, cut, {Place: "artificial tree"}, cut}, down, []string{
			"2026-12-25 take down and pack what is on the cut tree [1 3]", "2026-12-25 the cut tree is out, at the latest: 12 days before the rest []", "2027-01-06 take down and pack [0 2]",
		}},
		{[]labor.Work{cut}, down, []string{"2026-12-25 take down and pack [0]", "2026-12-25 the cut tree is out, at the latest, and not on 2027-01-06 []"}},
		{[]labor.Work{{Needs: []shopping.Need{pieces(shopping.Stocking, 1)}}, cut}, down - 12, []string{"2026-12-25 take down and pack [0 1]", "2026-12-25 the cut tree is out, at the latest []"}},
		{[]labor.Work{{Place: "mantel"}}, down, []string{"2027-01-06 take down and pack [0]"}},
		{[]labor.Work{cut, {}}, down, []string{"2026-12-25 take down and pack [0]", "2026-12-25 the cut tree is out, at the latest, and not on 2027-01-06 []"}}, // the other has nothing to do
		{nil, down, []string{"2027-01-06 take down and pack []"}},
	} {
		days := must[[]labor.Day](t)(labor.StartingRates().Dates(stand, row.down, 282, row.works, nil))
		var got []string
		for _, d := range days[slices.IndexFunc(days, func(d labor.Day) bool { return d.Text == "it stands" })+1:] {
			got = append(got, fmt.Sprint(d.Date, " ", d.Text, " ", d.Down))
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%v: %q, want %q", row.works, got, row.want)
		}
	}
}
