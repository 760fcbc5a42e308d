package job_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// told returns the texts of the cautions of a code.
func told(p job.Plan, code string) string {
	text := ""
	for _, c := range p.Cautions {
		if c.Code == code {
			text += c.Text + "\n"
		}
	}
	return text
}

// What stands on a stand, or goes around a door, is dressed at the height where it is. By hand: 5 ft of tree on 5 ft of stand end
// at 10 ft, and a quarter of its surface is above 7 ft 6 in; the corners of a door are as far above the floor as above its sill.
func TestWorkAtItsHeight(t *testing.T) {
	p := mustMake(t, mustParse(t, `{"trees":[{"room":"hall","height":"5 ft","sizeBy":"rule","space":{"stand":"5 ft"}}],"mantels":[
		{"room":"door","run":{"to":{"along":"12 ft","below":"12 ft"},"swags":3}},
		{"room":"brackets","run":{"hooks":[{"along":"0 ft","below":"9 ft"},{"along":"3 ft","below":"0 ft"},{"along":"6 ft","below":"9 ft"}],"sag":"6 in"}},
		{"room":"drops","run":{"hooks":[{"along":"0 ft"},{"along":"3 ft"}],"left":"7 ft","right":"1 ft"}},
		{"room":"right","run":{"hooks":[{"along":"0 ft"},{"along":"3 ft","below":"1 ft"}],"left":"1 ft","right":"7 ft"}},
		{"room":"stairs","run":{"to":{"along":"10 ft","below":"-9 ft"},"balusters":14}}],"stand":"2026-11-28"}`))
	heights := map[string]units.Length{}
	low := 100 * ft
	for _, task := range p.Work {
		heights[task.Room] = max(heights[task.Room], task.Height)
		if task.Room == "hall" {
			low = min(low, task.Height)
		}
		if ladder := strings.Contains(task.Text, "from a ladder"); ladder != (task.Height > 6*ft) {
			t.Errorf("%v up: %s", task.Height, task.Text)
		}
	}
	for room, want := range map[string]units.Length{"hall": 10 * ft, "door": 12 * ft, "brackets": 9 * ft, "drops": 7 * ft, "right": 8 * ft, "stairs": 0} {
		if heights[room] != want {
			t.Errorf("%s: %v, want %v", room, heights[room], want)
		}
	}
	if low <= 5*ft {
		t.Errorf("a task at %v on a tree that begins at 5 ft", low)
	}
	if told(p, "work ladder") == "" || told(p, "two people") == "" {
		t.Errorf("%v", p.Cautions)
	}
	// As high as anything may be.
	if _, err := job.Make(mustParse(t, `{"trees":[{"height":"100 ft","space":{"stand":"5 ft"}}],"mantels":[{"run":{"hooks":[{"below":"0 ft"},{"along":"1 ft","below":"50 ft"},{"along":"2 ft","below":"100 ft"},{"along":"3 ft","below":"150 ft"}],"sag":"12 in"}}],"stand":"2026-11-28"}`)); err != nil {
		t.Error(err)
	}
}

// Who winds lights through a garland is told to unplug them, and how many plugs they take: 40 ft of garland and 1 ft at each end
// take five strings of 10 ft, of which two may be joined.
func TestLightsOfAMantel(t *testing.T) {
	const request = `{"mantels":[{"room":"hall","length":"40 ft","height":"6 ft","lights":{"lamps":50,"length":"10 ft","power":"25 W","endToEnd":%d}}],"stand":"2026-11-28"}`
	p := mustMake(t, mustParse(t, fmt.Sprintf(request, 2)))
	if told(p, "work cords") == "" {
		t.Errorf("%v", p.Cautions)
	}
	if want := "5 strings of lights take 3 plugs, since no more may be joined: bring a cord for each\n"; told(p, "plugs") != want {
		t.Errorf("%q, want %q", told(p, "plugs"), want)
	}
	// Four may be joined; or three, where the label does not say.
	for _, joined := range []int{4, 0} {
		if p = mustMake(t, mustParse(t, fmt.Sprintf(request, joined))); !strings.Contains(told(p, "plugs"), "5 strings of lights take 2 plugs") {
			t.Errorf("%d joined: %q", joined, told(p, "plugs"))
		}
	}
	if p = mustMake(t, mustParse(t, fmt.Sprintf(request, 5))); told(p, "plugs") != "" {
		t.Errorf("%q for one plug", told(p, "plugs"))
	}
	// Strings of others than the label has are told of trees alone.
	p = mustMake(t, mustParse(t, `{"trees":[{"height":"7 ft"}],"mantels":[{"room":"hall","length":"5 ft","lights":{"lamps":50,"length":"10 ft","power":"25 W"}}],"shop":{"offers":[{"item":"lights","name":"string","pack":100,"price":"9"},{"item":"base garland","name":"strand","pack":"9 ft","price":"9"}]}}`))
	if m := p.Mantels[0]; !slices.ContainsFunc(m.Shares, func(s shopping.Share) bool { return s.Item.Kind == shopping.Light && s.Gets.Pieces > 0 }) || told(p, "other strings") != "" {
		t.Errorf("%v, %v", m.Shares, p.Cautions)
	}
	p = mustMake(t, mustParse(t, `{"mantels":[{"room":"hall","length":"40 ft"}],"stand":"2026-11-28"}`))
	if told(p, "work cords") != "" {
		t.Error("cords without lights")
	}
}

// A garland that does not reach is not hung, and takes nobody's time; the stockings are hung all the same.
func TestNoWorkForAShortGarland(t *testing.T) {
	p := mustMake(t, mustParse(t, `{"mantels":[{"room":"tea room","length":"64 in","height":"54 in","stockings":{"count":2,"length":"18 in","weight":"8 oz"}}],"stand":"2026-11-28",
		"shop":{"offers":[{"item":"base garland","name":"4 ft","pack":"4 ft","price":"21","shelf":1},{"item":"stockings","name":"knit","pack":1,"price":"9"}]}}`))
	for _, task := range p.Work {
		if task.Kind != shopping.Stocking {
			t.Errorf("%s", task.Text)
		}
	}
	if len(p.Work) == 0 || !strings.Contains(told(p, "other garland"), "do not hang it") {
		t.Errorf("%v, %v", p.Work, p.Cautions)
	}
}

// All of a garland that is too long hangs on the hooks. Between walls its swags take it up, and else what is fastened up weighs as
// much as what hangs: 9 ft of 1 lb a foot is 9 lb.
func TestAllOfALongGarlandIsOnTheHooks(t *testing.T) {
	request := func(walls, strand string) job.Plan {
		return mustMake(t, mustParse(t, `{"mantels":[{"room":"tea room","length":"64 in","height":"54 in",`+walls+`"perFoot":"1 lb","hook":{"rating":"10 lb"}}],
			"shop":{"offers":[{"item":"base garland","name":"strand","pack":"`+strand+`","price":"21"},{"item":"hooks","name":"pair","pack":2,"price":"5"}],"joins":{"base garland":{"uncut":true}}}}`))
	}
	const between = `"leftWall":true,"rightWall":true,"hanging":{"swags":3,"sag":"4 in"},`
	p := request(between, "9 ft")
	m := p.Mantels[0]
	loads := m.Loads[shopping.Garland]
	if m.Hanging.Sag <= 4*units.Inch || loads.Weight < 9*units.Pound-units.Gram/1000 || loads.Weight > 9*units.Pound+units.Gram/1000 || told(p, "hook overload") == "" {
		t.Errorf("between walls: a sag of %v, %v, %v", m.Hanging.Sag, loads, p.Cautions)
	}
	if run, err := m.Hang(m.Hanging); err != nil || max(units.Must(run.Garland())-9*ft, 9*ft-units.Must(run.Garland())) > units.Millimeter/1000 {
		t.Errorf("the swags take %v of 9 ft, %v", units.Must(run.Garland()), err)
	}
	// On 54 in of height no end falls further than that: 300 ft are over.
	p = request("", "300 ft")
	if loads = p.Mantels[0].Loads[shopping.Garland]; loads.Hooks != nil || !strings.Contains(told(p, "hook overload"), "too heavy for any hooks") {
		t.Errorf("300 ft: %v, %v", loads, told(p, "hook overload"))
	}
	p = request("", "20 ft")
	if loads = p.Mantels[0].Loads[shopping.Garland]; loads.Weight < 20*units.Pound || loads.Weight > 20*units.Pound+units.Gram || told(p, "hook overload") == "" || !strings.Contains(told(p, "other garland"), "fasten up") {
		t.Errorf("20 ft: %v, %v", loads, p.Cautions)
	}
}

// Only ornaments use up the cells of ornaments: a 9 ft tree by rule has 81, of 4 in, 3 1/8 in and 2 in.
func TestCellsAreForOrnaments(t *testing.T) {
	for _, offer := range []string{`{"item":"garland, 4 in","name":"strand","pack":"9 ft","price":"5"}`, `{"item":"garland","name":"strand","pack":"9 ft","price":"5"}`, `{"item":"picks, 4 in","name":"bunch","pack":3,"price":"5"}`} {
		accent := strings.Cut
		kind, _, _ := accent(strings.TrimPrefix(offer, `{"item":"`), `"`)
		kind, _, _ = strings.Cut(kind, ",")
		p := mustMake(t, mustParse(t, `{"trees":[{"room":"hall","height":"9 ft","accents":["`+kind+`"],"sizeBy":"rule"}],"stand":"2026-11-28","shop":{"offers":[{"item":"ornaments","name":"box","pack":9,"price":"5"},`+offer+`]}}`))
		want, got := map[units.Length]int{}, map[units.Length]int{}
		for _, l := range p.Trees[0].Pieces {
			if l.Item.Kind == shopping.Ornament {
				want[l.Item.Size] += l.Quantity.Pieces
			}
		}
		for _, c := range p.Cartons {
			for _, thing := range c.Things {
				if thing.Item.Kind == shopping.Ornament {
					got[thing.Cell] += thing.Quantity.Pieces
				}
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: cells for %v, want %v", offer, got, want)
		}
	}
}

// A cut tree is bare by the day it goes out, however many days that takes, or else the dates say that it is not.
func TestCutTreesOutInTime(t *testing.T) {
	many := func(n int, height string) string {
		var trees []string
		for i := range n {
			trees = append(trees, fmt.Sprintf(`{"room":"hall %d","height":"%s","kind":"cut","sizeBy":"rule"}`, i, height))
		}
		return `{"trees":[` + strings.Join(trees, ",") + `],"stand":"2026-11-28","down":"2026-12-22"`
	}
	dates := func(request string) (text string) {
		p := mustMake(t, mustParse(t, request+"}"))
		for _, d := range p.Dates {
			text += d.Date.String() + " " + d.Text + "\n"
		}
		last := 0
		for _, task := range p.TakeDown {
			last = max(last, task.Start+task.Minutes)
		}
		at := slices.IndexFunc(p.Dates, func(d labor.Day) bool { return len(d.Down) > 0 })
		out := slices.IndexFunc(p.Dates, func(d labor.Day) bool { return strings.HasPrefix(d.Text, "the cut tree is out") })
		if days := labor.Date((last + 479) / 480); p.Dates[at].Date+days-1 > p.Dates[out].Date && !strings.Contains(text, "does not have") {
			t.Errorf("%d minutes of taking down:\n%s", last, text)
		}
		return text
	}
	if text := dates(many(8, "12 ft")); !strings.Contains(text, "2026-12-21 begin to take down and pack: 2 days\n") || strings.Contains(text, "2026-12-23") {
		t.Error(text)
	}
	if text := dates(many(99, "9 ft")); !strings.Contains(text, ", which the crew does not have before the cut tree must be out\n") {
		t.Error(text)
	}
	const short = `,"house":{"rates":{"days":{"cut tree":1}}}`
	if text := dates(many(8, "12 ft") + short); !strings.Contains(text, "the cut tree is out, at the latest, and not on 2026-12-22, which is before it stands: putting up takes more people") {
		t.Error(text)
	}
}

// A strand as long as what each join of it takes is refused, and a pack in pieces of what is measured by length.
func TestStrandsThatJoinsUseUp(t *testing.T) {
	for _, shop := range []string{
		`{"offers":[{"item":"base garland","name":"9 ft","pack":"9 ft","price":"21"}],"joins":{"base garland":{"overlap":"9 ft"}}}`,
		`{"offers":[{"item":"base garland","name":"9 ft","pack":9,"price":"21"}]}`,
	} {
		_, err := job.ParseRequest([]byte(`{"mantels":[{"length":"64 in"}],"shop":` + shop + `}`))
		if err == nil || !strings.Contains(err.Error(), "/shop/offers/0/pack") {
			t.Errorf("%s: %v", shop, err)
		}
	}
}

// There are no more picks along a shelf than there are to hang, and none fewer.
func TestPicksAsThereAre(t *testing.T) {
	for shelf, want := range map[int]int{1: 1, 5: 5, 8: 8, 20: 8} {
		p := mustMake(t, mustParse(t, fmt.Sprintf(`{"mantels":[{"length":"64 in"}],"shop":{"offers":[{"item":"base garland","name":"9 ft","pack":"9 ft","price":"21"},{"item":"picks","name":"pick","pack":1,"price":"1","shelf":%d}]}}`, shelf)))
		picks := 0
		for _, s := range p.Mantels[0].Spots {
			if s.Item.Kind == shopping.Pick {
				picks++
			}
		}
		if picks != want {
			t.Errorf("%d of 8 picks are to be had, and %d hang", shelf, picks)
		}
	}
}

// A name too long to tell two mantels apart is refused where it stands, whatever trees there are.
func TestLongNamesOfMantels(t *testing.T) {
	long := strings.Repeat("x", 60)
	_, err := job.ParseRequest([]byte(`{"trees":[{"height":"7 ft"}],"mantels":[{"room":"` + long + `","length":"5 ft"},{"room":"` + long + `","length":"5 ft"}]}`))
	if err == nil || !strings.Contains(err.Error(), "/mantels/0/room") || !strings.Contains(err.Error(), "/mantels/1/room") {
		t.Error(err)
	}
}
