package labor_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"

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
		days := must[[]labor.Day](t)(r.Dates(stand, down, minutes, true, []shopping.Need{pieces(shopping.Pick, 1), pieces(shopping.Garland, 0), pieces(shopping.Pick, 1)}))
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
		wire, begin := on("wire"), stand
		if minutes > 0 {
			begin = on("begin")
		}
		work := int(stand-begin) * workday
		if work < minutes || work-workday >= minutes && minutes > 0 || begin-wire != labor.Date(r.Days["wiring"]) {
			t.Fatalf("%d min from %v: %v", minutes, begin, days)
		}
		if wire-on("order picks") != 14 || wire-on("order garland") != 28 || on("everything") != wire || on("it stands") != stand || on("take down") != down {
			t.Fatalf("%v", days)
		}
		in, out := on("the cut tree comes in"), on("the cut tree is out")
		if in > begin || in < begin-1 || out > down || out-begin > labor.Date(r.Days["cut tree"]) || out < down && out-begin < labor.Date(r.Days["cut tree"]) || in < begin && down-in > labor.Date(r.Days["cut tree"]) {
			t.Fatalf("in %v, out %v, at most %d days: %v", in, out, r.Days["cut tree"], days)
		}
	})
}

// Nobody takes it down: the dates end on the day it stands, but for a cut tree, which has to go. By hand: 27 November and 28 days are 25 December.
func TestDatesWithoutTakingDown(t *testing.T) {
	stand := must[labor.Date](t)(labor.ParseDate("2026-11-28"))
	days := must[[]labor.Day](t)(labor.StartingRates().Dates(stand, 0, 282, true, nil))
	last := days[len(days)-1]
	if last.Date.String() != "2026-12-25" || last.Text != "the cut tree is out, at the latest" || days[len(days)-2].Text != "it stands" || len(days) != 5 {
		t.Errorf("%v", days)
	}
}
