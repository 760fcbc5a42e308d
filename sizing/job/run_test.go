package job_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

const (
	ft = units.Foot
	in = units.Inch
)

// need returns what a mantel needs of a kind.
func need(m job.MantelPlan, kind shopping.Kind) shopping.Need {
	for _, n := range m.Shares {
		if n.Item.Kind == kind {
			return n.Need
		}
	}
	return shopping.Need{}
}

// Stairs, a door and hooks that are there, in the one basket with a mantel. By hand: 14 balusters make 15 gaps,
// five swags of three; 10 ft across is 2 ft to a swag, 7 ft up 16.8 in, a sixth of 2 ft is 4 in; around a door of 3 ft by
// 6 ft 8 in with 4 in more at each end go 36 + 2·84 in, 17 ft; one pick for each 8 in of it is 25.5.
func TestRuns(t *testing.T) {
	r := job.Request{Mantels: []job.Mantel{
		{Room: "stairs", Run: job.Run{To: mantel.Point{Along: 10 * ft, Below: -7 * ft}, Balusters: 14, Swags: 5}, PerFoot: 8 * units.Ounce, Hook: mantel.Hook{Rating: 20 * units.Pound}},
		{Room: "door", Run: job.Run{Run: mantel.Run{Left: 4 * in, Right: 4 * in}, To: mantel.Point{Along: 3 * ft, Below: 80 * in}}},
		{Room: "brackets", Run: job.Run{Run: mantel.Run{Hooks: []mantel.Point{{}, {Along: 3 * ft}, {Along: 5 * ft}}}}},
		{Room: "rail", Run: job.Run{To: mantel.Point{Along: 10 * ft}, Balusters: 14}},
	}}
	r.Shop.Offers = []shopping.Offer{{Item: shopping.Item{Kind: shopping.BaseGarland}, Name: "9 ft", Pack: shopping.Quantity{Length: 9 * ft}, Price: decimal.NewFromInt(9)}}
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	stairs, door, brackets, rail := p.Mantels[0], p.Mantels[1], p.Mantels[2], p.Mantels[3]
	if h := stairs.Run.Hooks; len(h) != 6 || h[1] != (mantel.Point{Along: 2 * ft, Below: -168 * in / 10}) || stairs.Run.Sag != 4*in {
		t.Errorf("stairs: %v, sag %v", h, stairs.Run.Sag)
	}
	// Each swag is longer than the straight line, 29.3 in, and shorter than that and twice its sag.
	if n := need(stairs, shopping.BaseGarland).Quantity.Length; n < 5*293*in/10 || n > 5*373*in/10 {
		t.Errorf("stairs take %v", n)
	}
	if need(stairs, shopping.Hook).Quantity.Pieces != 6 || len(stairs.Loads[shopping.Garland].Hooks) != 6 {
		t.Errorf("stairs: %v", stairs.Shares)
	}
	if n := need(door, shopping.BaseGarland).Quantity.Length; n != 17*ft {
		t.Errorf("the door takes %v, want 17 ft", n)
	}
	if n := need(door, shopping.Pick); n.Quantity.Pieces != 26 || n.Item.Type != "mantel" {
		t.Errorf("the door takes %v, want 26 mantel picks", n)
	}
	if n := need(brackets, shopping.BaseGarland).Quantity.Length; n != 5*ft {
		t.Errorf("the brackets take %v, want 5 ft", n)
	}
	if len(rail.Run.Hooks) != 16 || need(rail, shopping.BaseGarland).Quantity.Length != 10*ft {
		t.Errorf("the rail: %d hooks, %v", len(rail.Run.Hooks), rail.Shares)
	}
	for _, m := range p.Mantels {
		steps := ""
		for _, s := range m.Steps {
			steps += s.Do
		}
		how := map[string]string{"stairs": "from hook to hook", "brackets": "from hook to hook", "rail": "to the rail at each place", "door": "let both sides fall"}[m.Room]
		if !strings.Contains(steps, how) || strings.Contains(steps, "Hang the garland from the middle") {
			t.Errorf("%s: %s", m.Room, steps)
		}
	}
	// By hand: of 16 gaps 5 swags would take 4 each, which makes 4.
	_, err = job.Make(job.Request{Mantels: []job.Mantel{{Run: job.Run{To: mantel.Point{Along: 12 * ft, Below: -8 * ft}, Balusters: 15, Swags: 5}}}})
	if want := `job.Make: /mantels/0/run/swags "5": does not fit: want 1, 2, 3, 4, 6, 8 or 16 over 15 balusters, or 0 for none`; err == nil || !strings.HasPrefix(err.Error(), want) {
		t.Errorf("%v, want %s", err, want)
	}
	// Level hooks have no lower end, and what falls at a door does so at both ends.
	level := job.Mantel{Run: job.Run{To: mantel.Point{Along: 38 * in, Below: 84 * in}, Swags: 1}, PerFoot: 6 * units.Ounce, Hook: mantel.Hook{Rating: 5 * units.Pound}}
	if p, err := job.Make(job.Request{Mantels: []job.Mantel{level}}); err != nil || !slices.ContainsFunc(p.Mantels[0].Steps, func(s mantel.Step) bool {
		return s.Do == "Hang the garland from hook to hook, from the middle outwards, and let the ends fall."
	}) {
		t.Errorf("%v, %v", p.Mantels, err)
	}
	// One end falls, or none does; and a run may hang 100 ft up.
	for _, row := range []struct {
		left, right units.Length
		want        string
	}{{0, 0, ""}, {ft, 0, ", and let the ends fall"}, {0, ft, ", and let the ends fall"}} {
		m := job.Mantel{Run: job.Run{Run: mantel.Run{Hooks: []mantel.Point{{}, {Along: 3 * ft}}, Left: row.left, Right: row.right}}}
		m.Height = 100 * ft
		if p, err := job.Make(job.Request{Mantels: []job.Mantel{m}}); err != nil || !slices.ContainsFunc(p.Mantels[0].Steps, func(s mantel.Step) bool {
			return s.Do == "Hang the garland from hook to hook, from the middle outwards"+row.want+"."
		}) {
			t.Errorf("%v, %v: %v, %v", row.left, row.right, p.Mantels, err)
		}
	}
	for _, code := range []string{"stairs", "door", "hook label"} {
		if !slices.ContainsFunc(p.Cautions, func(c units.Caution) bool { return c.Code == code }) {
			t.Errorf("no caution %q", code)
		}
	}
}

// A shelf with everything: a wall at one end, an opening off center, a screen above, stockings, and lights with a
// cord. By hand: four stockings of 1 lb each hang from four holders, and 9 ft of garland or less takes one string.
// From the left end, 12 in below the shelf, to the outlet it is 24 in along and 38 in down, 6 ft of cord.
func TestShelf(t *testing.T) {
	m := job.Mantel{
		Mantel: mantel.Mantel{
			Length: 5 * ft, Height: 54 * in, Depth: 8 * in, RightWall: true, Opening: mantel.Rectangle{Width: 30 * in, Height: 28 * in, Gap: 16 * in, Offset: -6 * in},
			Above: mantel.Rectangle{Width: 40 * in, Height: 24 * in, Gap: 8 * in},
		},
		Room: "parlor", PerFoot: 6 * units.Ounce, Hook: mantel.Hook{Rating: 10 * units.Pound},
		Stockings: mantel.Stockings{Count: 4, Length: 18 * in, Thickness: 6 * in, Weight: units.Pound},
		Lights:    lights.Label{Lamps: 100, Length: 16 * ft, Power: 5 * units.Watt}, Outlet: mantel.Point{Along: -2 * ft, Below: 50 * in},
	}
	p, err := job.Make(job.Request{Mantels: []job.Mantel{m}})
	if err != nil {
		t.Fatal(err)
	}
	got := p.Mantels[0]
	if got.Hanging.Right != 0 || got.Hanging.Left != ft {
		t.Errorf("at a wall: %v", got.Hanging)
	}
	if holders := got.Loads[shopping.Stocking].Hooks; len(holders) != 4 || holders[0].Down != units.Pound || need(got, shopping.Stocking).Quantity.Pieces != 4 {
		t.Errorf("stockings: %+v", holders)
	}
	if n := need(got, shopping.Light); n.Quantity.Pieces != 100 || n.Item.Type != "mantel" || got.Cord != 6*ft {
		t.Errorf("lights: %+v, cord %v", n, got.Cord)
	}
	// A toe 18 in below the shelf hangs in front of the opening, whose top is 16 in below it.
	if got.Clearances.Fire.Measured != 0 || !strings.HasPrefix(got.Clearances.Fire.Place, "stocking") {
		t.Errorf("nearest to the fire: %v", got.Clearances.Fire)
	}
	hooks := 0
	for _, n := range got.Shares {
		if n.Item.Kind == shopping.Hook {
			hooks += n.Quantity.Pieces
		}
	}
	if hooks != 2+4 {
		t.Errorf("%d hooks, want two for the garland and four for the stockings", hooks)
	}
	for _, code := range []string{"wall right", "above", "cords", "load"} {
		if !slices.ContainsFunc(p.Cautions, func(c units.Caution) bool { return c.Code == code }) {
			t.Errorf("no caution %q", code)
		}
	}
	// Without a hook and an outlet the stockings and lamps are counted all the same.
	m.Hook, m.Outlet, m.Opening = mantel.Hook{}, mantel.Point{}, mantel.Rectangle{}
	if p, err = job.Make(job.Request{Mantels: []job.Mantel{m}}); err != nil {
		t.Fatal(err)
	}
	got = p.Mantels[0]
	if len(got.Loads) > 0 || need(got, shopping.Stocking).Quantity.Pieces != 4 || got.Cord != 0 {
		t.Errorf("without a hook: %+v", got.Shares)
	}
}

// Swags of a shelf hang by the sag given, or a sixth of their width: 64 in in two swags are 32 in each, and 5 1/3 in to half an inch is 5.
func TestSagOfAShelf(t *testing.T) {
	for given, want := range map[units.Length]units.Length{0: 5 * in, 7 * in: 7 * in} {
		p, err := job.Make(job.Request{Mantels: []job.Mantel{{Mantel: mantel.Mantel{Length: 64 * in}, Hanging: mantel.Hanging{Swags: 2, Sag: given}}}})
		if err != nil || p.Mantels[0].Hanging.Sag != want {
			t.Errorf("sag %v: %v, %v", given, p.Mantels, err)
		}
	}
}

// A run takes no ornaments, and so no colors; lights of a mantel come from the basket by whole strings.
func TestRunWithColorsAndLights(t *testing.T) {
	colors, err := palette.CommonPractice().ParsePalette("crimson,gold")
	if err != nil {
		t.Fatal(err)
	}
	r := job.Request{Colors: colors, Mantels: []job.Mantel{
		{Run: job.Run{Run: mantel.Run{Hooks: []mantel.Point{{}, {Along: 3 * ft}}}}},
		{Mantel: mantel.Mantel{Length: 5 * ft}, Lights: lights.Label{Lamps: 100, Length: 16 * ft, Power: 5 * units.Watt}},
	}}
	r.Shop.Offers = []shopping.Offer{{Item: shopping.Item{Kind: shopping.Light, Type: "mantel"}, Name: "string", Pack: shopping.Quantity{Pieces: 50}, Price: decimal.NewFromInt(9)}}
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Mantels[0].Steps) == 0 || need(p.Mantels[0], shopping.Ornament).Quantity.Pieces != 0 {
		t.Errorf("run: %v", p.Mantels[0])
	}
	for _, s := range p.Mantels[1].Shares {
		if s.Item.Kind == shopping.Light && (s.Gets.Pieces != 100 || len(s.Parts) != 2) {
			t.Errorf("lights: %+v", s)
		}
	}
}

// What cannot hang is told by its place, with what else is wrong.
func TestRunFaults(t *testing.T) {
	stairs := job.Run{To: mantel.Point{Along: 10 * ft, Below: -7 * ft}, Balusters: 14, Swags: 5}
	with := func(change func(*job.Mantel)) job.Mantel {
		m := job.Mantel{Run: stairs}
		change(&m)
		return m
	}
	shelf := func(change func(*job.Mantel)) job.Mantel {
		m := job.Mantel{Mantel: mantel.Mantel{Length: 5 * ft}}
		change(&m)
		return m
	}
	for _, row := range []struct {
		pointer string
		m       job.Mantel
	}{
		{"/length", with(func(m *job.Mantel) { m.Length = 5 * ft })},
		{"/run/swags", with(func(m *job.Mantel) { m.Run.Swags = 16 })},
		{"/run/swags", with(func(m *job.Mantel) { m.Run.Swags = 6 })}, // 15 gaps: 1, 2, 3, 4, 5, 8 or 15 swags
		{"/run/swags", with(func(m *job.Mantel) { m.Run.Balusters, m.Run.Swags = 1, 3 })},
		{"/run/swags", with(func(m *job.Mantel) { m.Run.Swags = -1 })},
		{"/run/balusters", with(func(m *job.Mantel) { m.Run.Balusters, m.Run.Swags = -1, 0 })},
		{"/run/to", with(func(m *job.Mantel) { m.Run.To = mantel.Point{} })},
		{"/run/to/along", with(func(m *job.Mantel) { m.Run = job.Run{To: mantel.Point{Along: 60 * ft}} })},
		{"/run/sag", with(func(m *job.Mantel) { m.Run.Sag = 60 * ft })},
		{"/run/left", with(func(m *job.Mantel) { m.Run.Left = -1 })},
		{"/run/hooks", with(func(m *job.Mantel) { m.Run.Hooks = []mantel.Point{{}, {Along: ft}} })},
		{"/run/hooks", with(func(m *job.Mantel) { m.Run = job.Run{Run: mantel.Run{Hooks: []mantel.Point{{}}}} })},
		{"/hanging/look", with(func(m *job.Mantel) { m.Hanging.Look = 9 })},
		{"/stockings", with(func(m *job.Mantel) { m.Stockings.Count = 3 })},
		{"/stockings/count", shelf(func(m *job.Mantel) { m.Stockings = mantel.Stockings{Count: 101, Length: ft, Weight: units.Pound} })},
		{"/stockings/length", shelf(func(m *job.Mantel) { m.Stockings = mantel.Stockings{Count: 1, Length: 60 * ft, Weight: units.Pound} })},
		{"/lights/lamps", shelf(func(m *job.Mantel) { m.Lights = lights.Label{Lamps: -1, Length: ft, Power: units.Watt} })},
		{"/lights/power", shelf(func(m *job.Mantel) { m.Lights = lights.Label{Lamps: 10, Length: ft} })},
		{"/outlet/along", shelf(func(m *job.Mantel) {
			m.Lights, m.Outlet = lights.Label{Lamps: 10, Length: ft, Power: units.Watt}, mantel.Point{Along: 200 * ft}
		})},
		{"/opening/width", shelf(func(m *job.Mantel) { m.Opening.Height = ft })},
	} {
		r := job.Request{Mantels: []job.Mantel{row.m, {}}} // the second has no length
		_, err := job.Make(r)
		list := job.Faults(err)
		if len(list) != 2 || !strings.HasPrefix(list[0].Field, "/mantels/0"+row.pointer) && list[0].Field != "/mantels/0"+row.pointer || list[1].Field != "/mantels/1/length" {
			t.Errorf("%s: %v", row.pointer, err)
		}
	}
}

// Where picks are sold, and none of them for mantels, a mantel takes the same as a tree: in its needs, steps and spots, and from one box.
func TestPicksForBoth(t *testing.T) {
	for sold, want := range map[string]string{"picks": "picks", "picks, mantel": "picks, mantel"} {
		request, err := job.ParseRequest([]byte(`{"trees": [{"height": "7 ft", "accents": ["picks"]}], "mantels": [{"length": "60 in"}],
			"shop": {"offers": [{"name": "box of 12", "item": "` + sold + `", "pack": 12, "price": "9"}, {"name": "ribbon", "item": "ribbon, mantel", "pack": "30 ft", "price": "8"}]}}`))
		if err != nil {
			t.Fatal(err)
		}
		plan, err := job.Make(request)
		if err != nil {
			t.Fatal(err)
		}
		m := plan.Mantels[0]
		var item shopping.Item
		for _, s := range m.Shares {
			if s.Item.Kind == shopping.Pick {
				item = s.Item
				if s.Gets.Pieces != s.Quantity.Pieces || s.Gets.Pieces != 8 {
					t.Errorf("%s on offer: the mantel gets %d of %d, want 8 of 8", sold, s.Gets.Pieces, s.Quantity.Pieces)
				}
			}
		}
		if item.String() != want || m.Steps[1].Uses[0].Item != item || !slices.ContainsFunc(m.Spots, func(s mantel.Spot) bool { return s.Item == item }) {
			t.Errorf("%s on offer: the mantel takes %v, step 2 has %v, want %s", sold, item, m.Steps[1].Uses, want)
		}
	}
}

// A task says what it dresses: stairs, a door, hooks or a shelf.
func TestTasksOfRuns(t *testing.T) {
	mantels := []job.Mantel{
		{Run: job.Run{To: mantel.Point{Along: 10 * ft, Below: -7 * ft}, Balusters: 14, Swags: 5}},
		{Run: job.Run{To: mantel.Point{Along: 3 * ft, Below: 7 * ft}}},
		{Run: job.Run{Run: mantel.Run{Hooks: []mantel.Point{{}, {Along: 6 * ft}}}}},
		{},
	}
	mantels[3].Length = 5 * ft
	for i := range mantels {
		mantels[i].Room = "room " + strconv.Itoa(i)
	}
	r := job.Request{Mantels: mantels, Stand: units.Must(labor.ParseDate("2026-11-28")), Down: units.Must(labor.ParseDate("2027-01-06"))}
	p := mustMake(t, r)
	for i, what := range []string{"the stairs", "the door or window, from a ladder", "along the hooks", "the mantel"} {
		up := slices.ContainsFunc(p.Work, func(task labor.Task) bool {
			return task.Room == mantels[i].Room && task.Text == "dress "+what+"; call a second person to lift the garland"
		})
		down := slices.ContainsFunc(p.TakeDown, func(task labor.Task) bool { return task.Room == mantels[i].Room && task.Text == "clear "+what })
		if !up || !down {
			t.Errorf("%s: %v, %v", what, p.Work, p.TakeDown)
		}
	}
}
