package job_test

import (
	"encoding/json"
	"errors"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// station is the demo of the examples: a 9 ft tree, a 4 ft 6 in tree in a corner and a 64 in mantel.
func station(t testing.TB) job.Request {
	t.Helper()
	data, err := os.ReadFile("../../examples/plan/demo/station.json")
	if err != nil {
		t.Fatal(err)
	}
	r, err := job.ParseRequest(data)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The station in plain sizes: the figures are common practice, worked by hand.
func TestStation(t *testing.T) {
	p, err := job.Make(station(t))
	if err != nil {
		t.Fatal(err)
	}
	hall := p.Trees[0]
	if hall.Types != 9 || hall.Each != (units.Range[int]{Min: 7, Max: 11}) || hall.Planned[shopping.Garland].Length != 81*units.Foot || hall.Rule[shopping.Pick].Pieces != 27 {
		t.Errorf("ticket hall: %d types, %v of each, %v", hall.Types, hall.Each, hall.Planned)
	}
	// By hand: 12 ft less 1 ft is 11 ft; 9 strings of 5 W; 81 shared 40/30/20/10.
	if hall.Fit == nil || hall.Fit.Tallest != 11*units.Foot || hall.Strings.Count != 9 || hall.Load.Power != 45*units.Watt {
		t.Errorf("ticket hall: fit %v, strings %v, load %v", hall.Fit, hall.Strings, hall.Load)
	}
	tea := p.Mantels[0]
	if tea.Hanging.Left != units.Foot || tea.Hanging.Right != units.Foot || len(balls(tea.Spots, ofSpot)) != 4 {
		t.Errorf("tea room: %v, %v", tea.Hanging, tea.Spots)
	}
}

// balls counts ornaments by color.
func balls[T any](list []T, get func(T) (shopping.Item, int)) map[string]int {
	count := map[string]int{}
	for _, x := range list {
		if item, n := get(x); item.Kind == shopping.Ornament && n > 0 {
			count[item.Color] += n
		}
	}
	return count
}

func ofShare(s shopping.Share) (shopping.Item, int) { return s.Item, s.Gets.Pieces }

func ofPlanned(s shopping.Share) (shopping.Item, int) { return s.Item, s.Quantity.Pieces }

func ofSpot(s mantel.Spot) (shopping.Item, int) { return s.Item, 1 }

// Of 500 jobs at random the pieces that hang, the needs, the shares of the basket, the spots of the
// mantel and the totals agree, color by color and room by room.
func TestOneAssortment(t *testing.T) {
	colors := []string{"", "crimson", "crimson,ivory", "crimson,forestgreen,gold:metal", "crimson,forestgreen,gold:metal,ivory"}
	for seed := range uint64(500) {
		rng := rand.New(rand.NewPCG(seed, 18))
		r := job.Request{}
		text := colors[rng.IntN(len(colors))]
		if text != "" {
			var err error
			if r.Colors, err = palette.CommonPractice().ParsePalette(text); err != nil {
				t.Fatal(err)
			}
		}
		for range rng.IntN(3) {
			tree := job.Tree{Room: "hall " + strconv.Itoa(rng.IntN(2))}
			tree.Height = units.Length(12+rng.IntN(150)) * units.Inch
			tree.Exposure = sizing.Exposure(rng.IntN(4))
			tree.Taper = sizing.Taper(rng.IntN(3))
			tree.SizeBy = []string{"", "rule", "shape"}[rng.IntN(3)]
			tree.Accents = [][]shopping.Kind{nil, {}, {shopping.Pick}, {shopping.Ribbon}}[rng.IntN(4)]
			r.Trees = append(r.Trees, tree)
		}
		for range rng.IntN(3) {
			m := job.Mantel{Room: "hall " + strconv.Itoa(rng.IntN(2))}
			m.Length = units.Length(24+rng.IntN(72)) * units.Inch
			m.Hanging.Look = mantel.Look(rng.IntN(2))
			r.Mantels = append(r.Mantels, m)
		}
		shops := rng.IntN(4)
		if shops > 0 {
			names := []string{""}
			for _, s := range r.Colors {
				names = append(names, s.Name)
			}
			for _, name := range names {
				if rng.IntN(5) == 0 {
					continue // not to be had
				}
				o := shopping.Offer{Item: shopping.Item{Kind: shopping.Ornament, Color: name}, Name: "box", Pack: shopping.Quantity{Pieces: 1 + rng.IntN(12)}, Price: decimal.NewFromInt(int64(1 + rng.IntN(9)))}
				if rng.IntN(2) == 0 {
					o.Shelf = shopping.Shelf(1 + rng.IntN(11))
				}
				r.Shop.Offers = append(r.Shop.Offers, o)
			}
			r.Shop.Offers = append(r.Shop.Offers, shopping.Offer{Item: shopping.Item{Kind: shopping.Pick}, Name: "bunch", Pack: shopping.Quantity{Pieces: 6}, Price: decimal.NewFromInt(2)})
			if shops == 2 {
				r.Shop.Budget = decimal.NewFromInt(int64(20 + rng.IntN(300)))
			}
		}
		p, err := job.Make(r)
		if err != nil {
			t.Fatalf("job %d: %v", seed, err)
		}
		if p.Basket == nil != (len(r.Shop.Offers) == 0) {
			t.Fatalf("job %d: basket %v", seed, p.Basket)
		}
		var shares []shopping.Share
		agree := func(what string, got, want map[string]int) {
			t.Helper()
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("job %d, %s: -want +got\n%s", seed, what, diff)
			}
		}
		for i, tree := range p.Trees {
			name := "tree " + strconv.Itoa(i)
			need, hung, gets := balls(tree.Shares, ofPlanned), map[string]int{}, balls(tree.Shares, ofShare)
			picks := 0
			for _, piece := range tree.Pieces {
				if piece.Item.Kind == shopping.Pick {
					picks += piece.Quantity.Pieces
					continue
				}
				hung[piece.Item.Color] += piece.Quantity.Pieces
			}
			total := 0
			for _, n := range need {
				total += n
			}
			if want := tree.Planned[shopping.Ornament].Pieces; total != want {
				t.Errorf("job %d, %s: %d ornaments needed, %d planned", seed, name, total, want)
			}
			if p.Basket == nil {
				agree(name, hung, need)
			} else {
				agree(name, hung, gets)
			}
			for _, s := range tree.Shares {
				if p.Basket == nil && s.Gets != s.Quantity {
					t.Errorf("job %d, %s: %v gets %v without a basket", seed, name, s.Need, s.Gets)
				}
				if s.Item.Kind == shopping.Pick && picks != s.Gets.Pieces {
					t.Errorf("job %d, %s: %d picks hang of %d", seed, name, picks, s.Gets.Pieces)
				}
			}
			shares = append(shares, tree.Shares...)
		}
		for i, m := range p.Mantels {
			name := "mantel " + strconv.Itoa(i)
			hung := balls(m.Spots, ofSpot)
			if p.Basket == nil {
				agree(name, hung, balls(m.Shares, ofPlanned))
			} else {
				agree(name, hung, balls(m.Shares, ofShare))
			}
			for _, step := range m.Steps {
				for _, item := range step.Uses {
					found := false
					for _, n := range m.Shares {
						found = found || n.Item == item.Item
					}
					if !found {
						t.Errorf("job %d, %s: step %q has %v, which no need has", seed, name, step.Do, item)
					}
				}
			}
			shares = append(shares, m.Shares...)
		}
		if p.Basket == nil {
			continue
		}
		bought, all := map[string]int{}, 0
		for _, b := range p.Basket.Purchases {
			all += len(b.Shares)
			for _, s := range b.Shares {
				if s.Item.Kind == shopping.Ornament {
					bought[s.Item.Color] += s.Gets.Pieces
				}
			}
		}
		for color, n := range bought {
			if n == 0 {
				delete(bought, color)
			}
		}
		agree("basket", balls(shares, ofShare), bought)
		if all != len(shares) {
			t.Errorf("job %d: %d shares in the basket, %d in the rooms", seed, all, len(shares))
		}
	}
}

// A budget that does not do is told with what would, and a cent less does not.
func TestBudgetTooSmall(t *testing.T) {
	r := station(t)
	r.Shop.Budget = decimal.NewFromInt(90)
	p, err := job.Make(r)
	if err != nil || !p.Basket.Least.GreaterThan(r.Shop.Budget) || p.Basket.Total.GreaterThan(r.Shop.Budget) || len(p.Basket.Short()) == 0 {
		t.Fatalf("%v, least %v, total %v", err, p.Basket.Least, p.Basket.Total)
	}
	r.Shop.Budget = p.Basket.Least
	if p, err = job.Make(r); err != nil {
		t.Fatal(err)
	}
	for _, s := range p.Basket.Short() {
		if !s.Enough() {
			t.Errorf("the budget %v that was asked for leaves %v short", r.Shop.Budget, s.Need)
		}
	}
}

// A house's own rules reach the plan, each of them.
func TestHouse(t *testing.T) {
	r := job.Request{House: job.CommonPractice(), Trees: []job.Tree{{Tree: sizing.Tree{Height: 7 * units.Foot}, Accents: []shopping.Kind{shopping.Pick}}}, Mantels: []job.Mantel{{Mantel: mantel.Mantel{Length: 5 * units.Foot}}}}
	r.Trees[0].Lights.Lamps, r.Trees[0].Lights.Length, r.Trees[0].Lights.Power = 100, 33*units.Foot, 300*units.Watt
	r.House.Trees.PerFoot[shopping.Pick].Pieces = 4
	r.House.Mantels.Traditional.PickSpacing = 4 * units.Inch
	r.House.Circuit.Amperes = 20
	r.House.Units = units.InMetric
	r.Trees[0].Handle, r.Trees[0].SizeBy = 3*units.Inch, "rule"
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	tree := p.Trees[0]
	if tree.Planned[shopping.Pick].Pieces != 28 || tree.Load.Limit != 1920*units.Watt || tree.Load.Power <= tree.Load.Limit || tree.Handle != 3*units.Inch || tree.BareTip != 4*units.Inch {
		t.Errorf("%v, %v, handle %v, bare tip %v", tree.Planned, tree.Load, tree.Handle, tree.BareTip)
	}
	if !strings.Contains(tree.Shares[1].Basis, "m") || strings.Contains(tree.Shares[1].Basis, "ft") {
		t.Errorf("in metric: %q", tree.Shares[1].Basis)
	}
	// By hand: 60 in with one each 4 in.
	for _, n := range p.Mantels[0].Shares {
		if n.Item.Kind == shopping.Pick && n.Quantity.Pieces != 15 {
			t.Errorf("%v", n)
		}
	}
}

// By hand: 9 m for each of 3.6 m are 12 strands of 2.7 m, of which an inch more would take a thirteenth.
func TestLengthInMetric(t *testing.T) {
	r := job.Request{
		House:   job.CommonPractice(),
		Trees:   []job.Tree{{Tree: sizing.Tree{Height: 360 * units.Centimeter}}},
		Mantels: []job.Mantel{{Run: job.Run{Run: mantel.Run{Hooks: []mantel.Point{{}, {Along: 271 * units.Centimeter}}}}}},
	}
	r.Shop.Offers = []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.Garland}, Name: "strand", Pack: shopping.Quantity{Length: 270 * units.Centimeter}, Price: decimal.NewFromInt(3)},
	}
	for style, want := range map[units.Style]struct {
		strands      int
		base, excess units.Length
	}{
		units.InMetric:     {12, 271 * units.Centimeter, 0},
		units.InFeetInches: {13, 107 * units.Inch, 13*270*units.Centimeter - 1276*units.Inch},
	} {
		r.House.Units = style
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range p.Basket.Purchases {
			excess := units.Length(0)
			for _, l := range n.Left {
				excess += units.Length(l.Quantity.Pieces) * l.Quantity.Length
			}
			if n.Shares[0].Item.Kind == shopping.Garland && (n.Buys[0].Packs != want.strands || excess != want.excess) {
				t.Errorf("%v: garland of 32.4 m: %v", style, n)
			}
		}
		if n := p.Mantels[0].Shares[0]; n.Quantity.Length != want.base {
			t.Errorf("%v: garland over 2.71 m: %v", style, n)
		}
	}
}

// Each fault is named by the place of its value in the request, and all of them at once.
func TestFaults(t *testing.T) {
	all := map[string]func(*job.Request){
		"/trees/1/height":             func(r *job.Request) { r.Trees[1].Height = 0 },
		"/trees/0/base":               func(r *job.Request) { r.Trees[0].Base = 100 * units.Foot },
		"/trees/0/taper":              func(r *job.Request) { r.Trees[0].Taper = 9 },
		"/trees/0/exposure":           func(r *job.Request) { r.Trees[0].Exposure = 9 },
		"/trees/0/kind":               func(r *job.Request) { r.Trees[0].Kind = 9 },
		"/trees/0/sizeBy":             func(r *job.Request) { r.Trees[0].SizeBy = "width" },
		"/trees/0/accents":            func(r *job.Request) { r.Trees[0].Accents = []shopping.Kind{shopping.Hook} },
		"/trees/0/space/ceiling":      func(r *job.Request) { r.Trees[0].Space.Ceiling = 1 },
		"/trees/0/space/stand":        func(r *job.Request) { r.Trees[0].Space.Stand = -1 },
		"/trees/0/lights/lamps":       func(r *job.Request) { r.Trees[0].Lights.Lamps = -1 },
		"/mantels/0/length":           func(r *job.Request) { r.Mantels[0].Length = 0 },
		"/mantels/0/depth":            func(r *job.Request) { r.Mantels[0].Depth = -1 },
		"/mantels/0/hanging/swags":    func(r *job.Request) { r.Mantels[0].Hanging.Swags = -1 },
		"/mantels/0/hook/rating":      func(r *job.Request) { r.Mantels[0].Hook.Rating = -1 },
		"/mantels/0/perFoot":          func(r *job.Request) { r.Mantels[0].PerFoot = -1 },
		"/shop/offers/0/price":        func(r *job.Request) { r.Shop.Offers[0].Price = decimal.NewFromInt(-1) },
		"/shop/offers/3/pack":         func(r *job.Request) { r.Shop.Offers[3].Pack.Pieces = -1 },
		"/shop/owned/1/quantity":      func(r *job.Request) { r.Shop.Owned[1].Quantity.Pieces = -1 },
		"/shop/budget":                func(r *job.Request) { r.Shop.Budget = decimal.NewFromInt(-1) },
		"/box/2/count":                func(r *job.Request) { r.Box[2].Count = -1 },
		"/house/rates/places":         func(r *job.Request) { r.House.Rates.Places = 5 },
		"/house/units":                func(r *job.Request) { r.House.Units = 99 },
		"/house/circuit/amperes":      func(r *job.Request) { r.House.Circuit.Amperes = 1000 },
		"/house/trees/typesPerFoot":   func(r *job.Request) { r.House.Trees.TypesPerFoot = -1 },
		"/house/look/spacing/garland": func(r *job.Request) { r.House.Look.Spacing[shopping.Garland] = 1 },
		"/house/colors/apart":         func(r *job.Request) { r.House.Colors.Apart = -1 },
	}
	together := station(t)
	for pointer, change := range all {
		r := station(t)
		change(&r)
		change(&together)
		_, err := job.Make(r)
		list := job.Faults(err)
		if len(list) != 1 || list[0].Field != pointer || list[0].Want == "" || list[0].Value == "" || list[0].Err == nil || list[0].Func != "job.Make" {
			t.Errorf("%s: %v", pointer, err)
		}
	}
	_, err := job.Make(together)
	for _, f := range job.Faults(err) {
		if all[f.Field] == nil {
			t.Errorf("nothing is wrong with %v", f)
		}
		delete(all, f.Field)
	}
	for pointer := range all {
		t.Errorf("of several faults %s is not told", pointer)
	}
	if job.Faults(errors.New("other")) != nil || job.Faults(nil) != nil {
		t.Error("faults of what is no fault of a request")
	}
}

// A request goes through JSON and comes back, and the plan is the same.
func TestRequestJSON(t *testing.T) {
	r := station(t)
	r.House.Trees.PerFoot[shopping.Light].Pieces = 150
	r.Trees[0].Accents = []shopping.Kind{}
	data, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	back, err := job.ParseRequest(data)
	if err != nil {
		t.Fatalf("%v\n%s", err, data)
	}
	again, err := json.Marshal(back)
	if err != nil || string(again) != string(data) {
		t.Errorf("%v:\n%s\n%s", err, data, again)
	}
}

// FuzzParseRequest: whatever the text, there is a request that can be planned, or faults with
// their places.
func FuzzParseRequest(f *testing.F) {
	for _, s := range []string{
		`{}`, `{"trees":[{"height":"9 ft","exposure":"200 degrees"}]}`, `{"mantels":[{"length":"64 in","hanging":{"look":"asymmetrical","swags":3}}]}`,
		`{"trees":[{"height":"1e99 ft"}]}`, `{"house":{"trees":{"perFoot":{"picks":4}}}}`, `{"house":{"rates":{"places":9}}}`, `[`, `{"trees":7}`,
		`{"trees":[{"height":"3 ft"}],"colors":"crimson,ivory","box":[{"name":"a","color":"red","count":3}],"shop":{"budget":9,"owned":[{"item":"ivory ornaments, star, 3 in","quantity":4}]}}`,
		`{"trees":[{"room":"nave","height":"15 ft","base":"7 ft","taper":"slim","bareTip":"4 in","bareBase":"3 in","handle":"6 in","kind":"artificial","public":true,"sizeBy":"shape","accents":["picks","ribbon"],` +
			`"space":{"ceiling":"18 ft","fall":"6 in","clearance":"1 ft","topper":"18 in","topperWidth":"1 ft","stand":"6 in"},"lights":{"lamps":100,"length":"33 ft","power":"5 W","endToEnd":20}}],"on":{"name":"fir","color":"#2f4f2f"},"colors":"crimson,ivory"}`,
		`{"mantels":[{"room":"stairs","run":{"to":{"along":"10 ft","below":"-7 ft"},"balusters":14,"swags":5,"sag":"4 in"},"perFoot":"8 oz","hook":{"rating":"20 lb","count":1}}]}`,
		`{"mantels":[{"run":{"to":{"along":"3 ft","below":"80 in"},"left":"4 in","right":"4 in"}},{"run":{"hooks":[{"along":"0 ft","below":"0 ft"},{"along":"3 ft","below":"1 ft"}],"lying":true}}]}`,
		`{"mantels":[{"length":"5 ft","height":"54 in","depth":"8 in","rightWall":true,"opening":{"width":"30 in","height":"28 in","gap":"16 in","offset":"-6 in"},"above":{"width":"40 in","height":"24 in","gap":"8 in"},` +
			`"hanging":{"swags":2,"sag":"5 in","left":"1 ft","fall":"2 ft","thickness":"8 in"},"perFoot":"6 oz","hook":{"rating":"10 lb"},"stockings":{"count":4,"length":"18 in","thickness":"6 in","weight":"1 lb"},` +
			`"lights":{"lamps":100,"length":"16 ft","power":"5 W"},"outlet":{"along":"-2 ft","below":"50 in"}}]}`,
		`{"trees":[{"height":"7 ft"}],"stand":"2026-11-28","down":"2027-01-06","lost":[{"item":"garland","quantity":"63 ft"}],"house":{"units":"metric","boxes":[{"name":"crate","cells":24,"cell":"4 in","limit":"20 lb"}],` +
			`"rates":{"minutes":{"ornaments":"1.5"},"days":{"picks":3},"percent":{"goods tax":"6.25"},"price":{"hour":"45"},"crew":3,"lift":"30 lb","reach":"6 ft","pair":"8 ft"},"circuit":{"volts":120,"amperes":20}}}`,
		`{"trees":[{"height":"7 ft"}],"shop":{"offers":[{"item":"garland","name":"9 ft","pack":"9 ft","price":"6.90","shelf":3},{"name":"mixed","contents":[{"item":"ornaments, ball, 3 in","quantity":4}],"price":3}],` +
			`"owned":[{"item":"garland","quantity":"6 ft"}],"joins":{"garland":{"overlap":"2 in"}}}}`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		r, err := job.ParseRequest(data)
		if err == nil {
			if _, err := job.Make(r); len(job.Faults(err)) > 0 {
				t.Errorf("%q: read, and then %v", data, err)
			}
			return
		}
		list := job.Faults(err)
		if len(list) == 0 {
			t.Errorf("%q: %v", data, err)
		}
		for _, e := range list {
			if e.Func != "job.ParseRequest" || e.Field != "data" && e.Field != "" && !strings.HasPrefix(e.Field, "/") || e.Err == nil {
				t.Errorf("%q: %#v", data, e)
			}
		}
	})
}

// Where the shelves state sizes and types the needs ask for them, mixed boxes and owned pieces too, and
// what hangs is what the parts of the shares are. A pencil tree of 3 ft in a corner takes small balls.
func TestSizesAndTypes(t *testing.T) {
	item := func(text string) shopping.Item {
		i, err := shopping.ParseItem(text)
		if err != nil {
			t.Fatal(err)
		}
		return i
	}
	offer := func(text string, pack int) shopping.Offer {
		return shopping.Offer{Item: item(text), Name: "box", Pack: shopping.Quantity{Pieces: pack}, Price: decimal.NewFromInt(3)}
	}
	r := job.Request{Trees: []job.Tree{{Tree: sizing.Tree{Height: 3 * units.Foot, Taper: sizing.Pencil, Exposure: sizing.InCorner}, Room: "stair", Accents: []shopping.Kind{}}}}
	r.Shop.Offers = []shopping.Offer{
		offer("ornaments, star, 3/4 in", 6), offer("ornaments, ball, 3/4 in", 6), offer("ornaments, bird, 3/4 in", 6),
		{Name: "mixed", Contents: []shopping.Lot{{Item: item("ornaments, ball, 3/4 in"), Quantity: shopping.Quantity{Pieces: 2}}, {Item: item("ornaments, star, 4 in"), Quantity: shopping.Quantity{Pieces: 2}}}, Price: decimal.NewFromInt(9)},
	}
	r.Shop.Owned = []shopping.Lot{{Item: item("ornaments, bird, 3/4 in"), Quantity: shopping.Quantity{Pieces: 2}}}
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	tree := p.Trees[0]
	n := tree.Shares[0]
	if n.Item.Size == 0 || n.Item.Size > 2*units.Inch || n.Types != 3 || n.Quantity.Pieces < 9 || n.Open.Max < 18 {
		t.Errorf("%+v", n)
	}
	types := map[string]int{}
	total := 0
	for _, piece := range tree.Pieces {
		types[piece.Item.Type] += piece.Quantity.Pieces
		total += piece.Quantity.Pieces
		if piece.Item.Size == 0 {
			t.Errorf("a piece without a size: %v", piece.Item)
		}
	}
	if len(types) != 3 || total != tree.Shares[0].Gets.Pieces {
		t.Errorf("%v hang of %v", types, tree.Shares[0])
	}
	// Half of the shelf is gone: what there is hangs, and a size that was not asked for stands in.
	r.Shop.Offers = []shopping.Offer{offer("ornaments, star, 1 in", 4)}
	r.Shop.Offers[0].Shelf = 1
	r.Shop.Owned = nil
	if p, err = job.Make(r); err != nil {
		t.Fatal(err)
	}
	total = 0
	for _, piece := range p.Trees[0].Pieces {
		total += piece.Quantity.Pieces
	}
	if total != 4 || len(p.Basket.Short()) == 0 {
		t.Errorf("%d hang of 4: %v", total, p.Trees[0].Shares)
	}
}

// Of all kinds three are accents of a tree, and no other is meant by a word that is no kind.
func TestAccents(t *testing.T) {
	for word, meant := range map[string]string{"pick": "; did you mean picks?", "hook": "", "hooks": "", "tinsel": ""} {
		_, err := job.ParseRequest([]byte(`{"trees":[{"height":"7 ft","accents":["garland","` + word + `"]}]}`))
		list := job.Faults(err)
		if len(list) != 1 || !errors.Is(list[0], units.ErrName) || list[0].Want != "garland, ribbon or picks"+meant {
			t.Errorf("%s: %v", word, err)
		}
	}
}

// What cannot be planned at all.
func TestRefused(t *testing.T) {
	many := job.Request{Mantels: make([]job.Mantel, 101)}
	box := job.Request{Box: []palette.Piece{{Name: "a", Count: 1}}}
	for pointer, r := range map[string]job.Request{"/trees": many, "/box": box} {
		_, err := job.Make(r)
		if list := job.Faults(err); len(list) == 0 || list[0].Field != pointer {
			t.Errorf("%s: %v", pointer, err)
		}
	}
	if _, err := job.Make(job.Request{}); err != nil {
		t.Errorf("nothing to dress: %v", err)
	}
}

// BenchmarkMake plans the station with its basket, and with the work of putting it up too.
func BenchmarkMake(b *testing.B) {
	for name, work := range map[string]bool{"basket": false, "work": true} {
		b.Run(name, func(b *testing.B) {
			r := station(b)
			if !work {
				r.Stand, r.Down = 0, 0
			}
			for b.Loop() {
				if _, err := job.Make(r); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// Two trees of one room share what stands in for what was not to be had, and a color that comes in several
// sizes is asked for by size, the largest first.
func TestSubstitutes(t *testing.T) {
	item := func(text string) shopping.Item {
		i, err := shopping.ParseItem(text)
		if err != nil {
			t.Fatal(err)
		}
		return i
	}
	tree := func(room string) job.Tree {
		return job.Tree{Tree: sizing.Tree{Height: 7 * units.Foot}, Room: room, SizeBy: "rule", Accents: []shopping.Kind{}}
	}
	r := job.Request{Trees: []job.Tree{tree("hall"), tree("stair"), tree("hall")}}
	// The rule asks for balls of 4, 3 1/8 and 2 in, which are not there.
	r.Shop.Offers = []shopping.Offer{{Item: item("ornaments, 6 in"), Name: "box", Pack: shopping.Quantity{Pieces: 49}, Price: decimal.NewFromInt(3)}}
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	total := 0
	for i, tree := range p.Trees {
		last := units.Length(1 << 60)
		for _, n := range tree.Shares {
			if n.Item.Kind != shopping.Ornament || n.For != (shopping.Item{}) {
				continue
			}
			if n.Item.Size == 0 || n.Item.Size >= last {
				t.Errorf("tree %d: %v after %v", i, n, last)
			}
			last = n.Item.Size
		}
		for _, piece := range tree.Pieces {
			total += piece.Quantity.Pieces
			if piece.Item.Kind != shopping.Ornament {
				t.Errorf("tree %d: %v", i, piece)
			}
		}
	}
	if total != 3*49 {
		t.Errorf("%d hang, want three times 49", total)
	}
}

// What is misspelled is told once, with the name that it is like, and not again as missing; what is wrong beside it is told.
func TestToldOnce(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{`{"mantels":[{"length":"5 ft","opening":{"width":"36 in","height":"30 in","below":"14 in"}}]}`, "/mantels/0/opening/below"},
		{`{"mantels":[{"length":"5 ft","opening":{"width":"36 in","height":"30 in","gab":"14"}}]}`, "/mantels/0/opening/gab"},
		{`{"mantels":[{"length":"5 ft","opening":{"width":"36 in","height":"30 in","gap":"14"}}]}`, "/mantels/0/opening/gap"},
		{`{"trees":[{"hight":"7 ft"}]}`, "/trees/0/hight"},
		{`{"trees":[{"height":"200 ft","expsure":"corner"}]}`, "/trees/0/expsure /trees/0/height"},
		{`{"trees":[{"height":"7 ft","room":"a\tb"}],"mantels":[{"length":"5 ft","room":"` + strings.Repeat("hall", 17) + `"}]}`, "/trees/0/room /mantels/0/room"},
		{`{"mantels":[{"height":"-1 ft","run":{"to":{"along":"3 ft","below":"80 in"}}}]}`, "/mantels/0/height"},
		{`{"trees":[{"height":"7 ft","accents":["picks"]}],"shop":{"owned":[{"item":"picks","quantity":149820}]},"stand":"2026-11-28"}`, "/shop/owned"},
		{`{"trees":[{"height":"7 ft"}],"stand":"2026-11-28","lost":[{"item":"picks","quantity":2}]}`, "/lost/0/quantity"},
	} {
		_, err := job.ParseRequest([]byte(row.text))
		var fields []string
		for _, f := range job.Faults(err) {
			fields = append(fields, f.Field)
		}
		if got := strings.Join(fields, " "); got != row.want {
			t.Errorf("%s: %s, want %s", row.text, got, row.want)
		}
	}
}

// What is owned is told at its place in the request, although what fits of the box comes before it; and the box where it is too full.
func TestOwnedPlaces(t *testing.T) {
	const text = `{"trees":[{"height":"7 ft","accents":["picks"]}],"colors":"crimson,ivory","box":[{"name":"red","color":"crimson","count":%s},{"name":"more","color":"crimson","count":9}],"shop":{"owned":[{"item":"wire ties","quantity":5},{"item":"picks","quantity":%s}]}}`
	for _, row := range []struct{ count, picks, want string }{{"9", "2000000", "/shop/owned/1/quantity"}, {"9", `"50 of 1 in"`, "/shop/owned/1/quantity"}, {"1000000", "50", "/box"}} {
		r, err := job.ParseRequest([]byte(strings.Replace(strings.Replace(text, "%s", row.count, 1), "%s", row.picks, 1)))
		if err == nil {
			_, err = job.Make(r)
		}
		if list := job.Faults(err); len(list) != 1 || list[0].Field != row.want {
			t.Errorf("%s and %s: %v, want %s", row.count, row.picks, err, row.want)
		}
	}
}

// A tax of 6.25 % makes no amount that cannot be paid: the plan with its quote is made, and the tax is in the places of the house.
func TestTaxAtTheTill(t *testing.T) {
	r := station(t)
	r.Stand = units.Must(labor.ParseDate("2026-11-28"))
	r.Shop.Budget = decimal.Decimal{}
	r.Shop.Stores = []shopping.Store{{Name: "depot", Tax: decimal.RequireFromString("6.25")}}
	for i := range r.Shop.Offers {
		r.Shop.Offers[i].Store = "depot"
	}
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	goods := decimal.Zero
	for _, b := range p.Basket.Purchases {
		goods = goods.Add(b.Cost)
	}
	bill := p.Basket.Bills[0]
	if want := goods.Mul(decimal.RequireFromString("0.0625")).Round(2); !bill.Goods.Equal(goods) || !bill.Tax.Equal(want) || !p.Basket.Total.Equal(goods.Add(want)) {
		t.Errorf("goods %v of %v, tax %v of %v", bill.Goods, goods, bill.Tax, want)
	}
	// A house whose currency has no places pays whole ones.
	r.House = job.CommonPractice()
	r.House.Rates.Places = 0
	if p, err = job.Make(r); err != nil || !p.Basket.Bills[0].Tax.Equal(p.Basket.Bills[0].Tax.Round(0)) {
		t.Errorf("%v, %v", p.Basket.Bills, err)
	}
}

// What is told of the lights is what hangs: a tree gets the lamps of its strings, its load is of these, and strings that
// are not those of the label are told. By hand: the 9 ft tree takes 900 lamps; 3 strings of 150 and one of 50 are 500, as
// 5 strings of 100 of 400 W, which is over 1440 W; 9 strings of 100 that draw 5 W are 45 W, and one of 1000 as much as 10.
func TestLightsThatHang(t *testing.T) {
	light := shopping.Item{Kind: shopping.Light}
	str := func(lamps int, shelf shopping.Shelf) shopping.Offer {
		return shopping.Offer{Item: light, Name: "string of " + strconv.Itoa(lamps), Pack: shopping.Quantity{Pieces: lamps}, Price: decimal.NewFromInt(9), Shelf: shelf}
	}
	for _, row := range []struct {
		reason             string
		offers             []shopping.Offer
		watts              units.Power
		gets, short, count int
		codes              string
	}{
		{"short", []shopping.Offer{str(150, 3), str(50, 1)}, 400, 500, 400, 5, "other strings overload"},
		{"as the label", []shopping.Offer{str(100, 0)}, 5, 900, 0, 9, "load"},
		{"longer", []shopping.Offer{str(1000, 0)}, 5, 1000, 0, 10, "other strings load"},
		{"without a label", []shopping.Offer{str(100, 0)}, 0, 900, 0, 0, ""},
	} {
		r := job.Request{
			Trees: []job.Tree{{Tree: sizing.Tree{Height: 9 * units.Foot}, SizeBy: "rule", Accents: []shopping.Kind{}, Lights: lights.Label{Lamps: 100, Length: 25 * units.Foot, Power: row.watts * units.Watt}}},
			Shop:  shopping.Shop{Offers: row.offers},
		}
		if row.watts == 0 {
			r.Trees[0].Lights = lights.Label{}
		}
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(row.reason, err)
		}
		tree, parts := p.Trees[0], 0
		share := tree.Shares[slices.IndexFunc(tree.Shares, func(s shopping.Share) bool { return s.Item == light })]
		for _, l := range share.Parts {
			parts += l.Quantity.Pieces
		}
		var codes []string
		for _, c := range p.Cautions {
			if c.Code == "load" || c.Code == "overload" || c.Code == "other strings" {
				codes = append(codes, c.Code)
			}
		}
		if share.Gets.Pieces != row.gets || parts != row.gets || share.Short().Pieces != row.short || tree.Strings.Count != row.count ||
			tree.Load.Power != row.watts*units.Watt*units.Power(row.count) || strings.Join(codes, " ") != row.codes {
			t.Errorf("%s: %d lamps, %d in strings, short of %d, %v, %v, cautions %q", row.reason, share.Gets.Pieces, parts, share.Short().Pieces, tree.Strings, tree.Load, codes)
		}
	}
}
