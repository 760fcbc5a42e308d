package job_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

func itemOf(t *testing.T, text string) shopping.Item {
	t.Helper()
	i, err := shopping.ParseItem(text)
	if err != nil {
		t.Fatal(err)
	}
	return i
}

// offerOf returns packs of so many for the price of 1 a piece.
func offerOf(t *testing.T, text string, pack int) shopping.Offer {
	t.Helper()
	return shopping.Offer{Item: itemOf(t, text), Name: "box", Pack: shopping.Quantity{Pieces: pack}, Price: decimal.NewFromInt(int64(pack))}
}

// bare returns a full tree with ornaments and lights alone.
func bare(height units.Length) job.Tree {
	return job.Tree{Tree: sizing.Tree{Height: height}, SizeBy: "rule", Accents: []shopping.Kind{}}
}

// A house may allow up to six colors. There is no usual rule for the shares of five and six: they are equal, to a hundredth.
func TestSixColors(t *testing.T) {
	for text, want := range map[string][]int{
		"crimson,forestgreen,gold:metal,ivory,navy":               {18, 18, 18, 18, 9}, // 2, 2, 2, 2 and 1 of 9 types of 9
		"crimson,forestgreen,gold:metal,ivory,navy,silver:metal,": {18, 18, 18, 9, 9, 9},
	} {
		r := job.Request{House: job.CommonPractice(), Trees: []job.Tree{bare(9 * units.Foot)}}
		r.House.Colors.Limit = 6
		var err error
		if r.Colors, err = r.House.Colors.ParsePalette(strings.TrimSuffix(text, ",")); err != nil {
			t.Fatal(err)
		}
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		count := balls(p.Trees[0].Shares, ofPlanned)
		percent := 0
		for i, s := range r.Colors {
			if count[s.Name] != want[i] {
				t.Errorf("%d %s of 81, want %d", count[s.Name], s.Name, want[i])
			}
		}
		for _, s := range p.Trees[0].Shares {
			if _, share, ok := strings.Cut(s.Basis, ", a share of "); ok {
				n, err := strconv.Atoi(strings.TrimSuffix(share, " %"))
				if percent += n; err != nil || n < 16 || n > 20 {
					t.Errorf("%q", s.Basis)
				}
			}
		}
		if percent != 100 {
			t.Errorf("the shares add up to %d %%", percent)
		}
	}
}

// What is owned without a size is used first, and leaves the rest the sizes and types of the shop.
func TestOwnedWithoutSize(t *testing.T) {
	// By the rule a tree of 7 ft has 49 pieces: 7 types of 7, of which 2 of the three crimson ones are of 2 in
	// and one of 3 1/8 in.
	r := job.Request{Trees: []job.Tree{bare(7 * units.Foot)}}
	for _, size := range []string{"2 in", "3 1/8 in", "4 in"} {
		r.Shop.Offers = append(r.Shop.Offers, offerOf(t, "ornaments, ball, "+size, 1), offerOf(t, "ornaments, star, "+size, 1))
	}
	sizes := func() (bySize map[units.Length]int, types map[string]bool) {
		t.Helper()
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		bySize, types = map[units.Length]int{}, map[string]bool{}
		for _, l := range p.Trees[0].Pieces {
			bySize[l.Item.Size] += l.Quantity.Pieces
			if l.Item.Size > 0 {
				types[l.Item.Type] = true
			}
		}
		return bySize, types
	}
	all, _ := sizes()
	if all[0] != 0 || len(all) != 3 || all[2*units.Inch]+all[4*units.Inch]+all[25*units.Inch/8] != 49 {
		t.Fatalf("%v", all)
	}
	for _, n := range []int{1, 7, 10, 49, 60} {
		r.Shop.Owned = []shopping.Lot{{Item: itemOf(t, "ornaments"), Quantity: shopping.Quantity{Pieces: n}}}
		with, types := sizes()
		total := 0
		for size, k := range with {
			if total += k; size > 0 && k > all[size] {
				t.Errorf("with %d owned %d of %v, without %d", n, k, size, all[size])
			}
		}
		if with[0] != min(n, 49) || total != 49 {
			t.Errorf("%d owned without a size: %v", n, with)
		}
		if n < 40 && len(types) != 2 {
			t.Errorf("%d owned without a size: of types %v, want balls and stars", n, types)
		}
	}
}

// Things that are owned say which sizes there are only where none is offered.
func TestSizesOfOffers(t *testing.T) {
	owned := []shopping.Lot{{Item: itemOf(t, "ornaments, 3 1/8 in"), Quantity: shopping.Quantity{Pieces: 5}}}
	for _, row := range []struct {
		offers []shopping.Offer
		sized  bool
	}{
		{nil, true},
		{[]shopping.Offer{offerOf(t, "ornaments", 1)}, false},
		{[]shopping.Offer{offerOf(t, "ornaments, 2 in", 1)}, true},
	} {
		p, err := job.Make(job.Request{Trees: []job.Tree{bare(7 * units.Foot)}, Shop: shopping.Shop{Offers: row.offers, Owned: owned}})
		if err != nil {
			t.Fatal(err)
		}
		if sized := p.Trees[0].Shares[0].Item.Size > 0; sized != row.sized {
			t.Errorf("%v: sized is %t", row.offers, sized)
		}
		if !row.sized { // what is bought is told by the size that suits, as without anything owned
			for _, l := range p.Trees[0].Pieces {
				if l.Item.Size == 0 {
					t.Errorf("%v", p.Trees[0].Pieces)
				}
			}
		}
	}
}

// Where fewer types are to be had than are planned, it is as many as there are: 27 crimson pieces in three types.
func TestFewerTypes(t *testing.T) {
	for n, names := range [][]string{{""}, {"ball"}, {"ball", "star"}, {"ball", "star", "bird"}, {"ball", "star", "bird", "bell"}} {
		r := job.Request{Trees: []job.Tree{bare(9 * units.Foot)}}
		var err error
		if r.Colors, err = palette.CommonPractice().ParsePalette("crimson,forestgreen,gold:metal,ivory"); err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			o := offerOf(t, "crimson ornaments", 1)
			o.Item.Type = name
			r.Shop.Offers = append(r.Shop.Offers, o)
		}
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		want := min(n, 3)
		if n == 1 {
			want = 0 // of one type they are in any case
		}
		s := p.Trees[0].Shares[0]
		types := map[string]bool{}
		for _, part := range s.Parts {
			types[part.Item.Type] = true
		}
		if s.Quantity.Pieces != 27 || s.Types != want || want > 0 && len(types) != want || s.Short() != (shopping.Quantity{}) || !s.Enough() {
			t.Errorf("%v to be had: %v, types %d, parts %v, short %v", names, s, s.Types, s.Parts, s.Short())
		}
	}
}

// A mantel without garland gets nothing but its stockings, and the money goes elsewhere. Prices by hand: base garland 10 a
// strand of 6 ft, a pair of hooks 3, a bunch of 8 picks 2, and 8 and 6 picks are needed for 64 and 48 in.
func TestNoGarland(t *testing.T) {
	shelf := func(room string, length units.Length) job.Mantel {
		m := job.Mantel{Room: room, PerFoot: units.Ounce, Hook: mantel.Hook{Rating: 5 * units.Pound}}
		m.Length = length
		return m
	}
	offer := func(text, pack string, price int64) shopping.Offer {
		q, err := shopping.ParseQuantity(pack)
		if err != nil {
			t.Fatal(err)
		}
		return shopping.Offer{Item: itemOf(t, text), Name: pack, Pack: q, Price: decimal.NewFromInt(price)}
	}
	long, short := shelf("long", 64*units.Inch), shelf("short", 4*units.Foot) // which take 7 ft 4 in and 6 ft
	stockings := shelf("short", 4*units.Foot)
	stockings.Stockings = mantel.Stockings{Count: 2, Weight: units.Pound, Length: 18 * units.Inch}
	for _, row := range []struct {
		name    string
		mantels []job.Mantel
		budget  int64
		shelf   shopping.Shelf // of the garland
		bare    string         // rooms, in order
		hooks   int            // in all
	}{
		{"all can be had", []job.Mantel{long, short}, 0, 0, "", 4},
		{"sold out", []job.Mantel{long, short}, 0, shopping.SoldOut, "long short", 0},
		{"sold out, with money", []job.Mantel{long, short}, 100, shopping.SoldOut, "long short", 0},
		{"sold out, with stockings", []job.Mantel{stockings}, 0, shopping.SoldOut, "short", 2},
		{"one strand", []job.Mantel{short, long}, 0, 1, "long", 2},
		{"for all", []job.Mantel{long, short}, 36, 0, "", 4},
		{"for one of them", []job.Mantel{long, short}, 35, 0, "short", 2},
		{"for the other", []job.Mantel{long, short}, 22, 0, "long", 2},
		{"for none", []job.Mantel{long, short}, 12, 0, "long short", 0},
		{"for neither, with stockings", []job.Mantel{long, stockings}, 12, 0, "long short", 2},
	} {
		r := job.Request{House: job.CommonPractice(), Mantels: row.mantels}
		r.Shop.Offers = []shopping.Offer{offer("base garland", "6 ft", 10), offer("hooks", "2", 3), offer("picks", "8", 2), offer("stockings", "1", 1), offer("wire ties", "50", 1)}
		r.Shop.Offers[0].Shelf = row.shelf
		r.Shop.Spares[shopping.Pick] = 1
		r.Shop.Budget = decimal.NewFromInt(row.budget)
		p, err := job.Make(r)
		if err != nil {
			t.Fatalf("%s: %v", row.name, err)
		}
		var bare []string
		hooks, all := 0, 0
		for _, m := range p.Mantels {
			gets := shopping.ByKind[bool]{}
			for _, s := range m.Shares {
				all++
				gets[s.Item.Kind] = gets[s.Item.Kind] || s.Gets != shopping.Quantity{}
				if s.Item.Kind == shopping.Hook {
					hooks += s.Gets.Pieces
					if s.Gets.Pieces != 0 && s.Gets != s.Quantity {
						t.Errorf("%s: %v", row.name, s)
					}
				}
			}
			for _, purchase := range p.Basket.Purchases {
				for _, s := range purchase.Shares {
					if s.Item.Kind != purchase.Shares[0].Item.Kind {
						t.Errorf("%s: %v is among %v", row.name, s, purchase.Shares[0])
					}
				}
			}
			told := ""
			for _, c := range p.Cautions {
				if c.Room == m.Room && (c.Code == "no garland" || c.Code == "too few hooks") {
					told += c.Code
				}
			}
			if !gets[shopping.BaseGarland] {
				bare = append(bare, m.Room)
				if gets[shopping.Pick] || gets[shopping.Tie] || gets[shopping.Hook] != (m.Stockings != mantel.Stockings{}) || told != "no garland" {
					t.Errorf("%s: %s gets %v, told %q", row.name, m.Room, gets, told)
				}
			} else if !gets[shopping.Hook] || told != "" {
				t.Errorf("%s: %s gets %v, told %q", row.name, m.Room, gets, told)
			}
		}
		if got := strings.Join(bare, " "); got != row.bare || hooks != row.hooks {
			t.Errorf("%s: bare are %q, want %q; %d hooks, want %d", row.name, got, row.bare, hooks, row.hooks)
		}
		for _, b := range p.Basket.Purchases { // nothing is dropped from the list
			for k, s := range b.Shares {
				if !s.Spare {
					all--
				} else if k < len(b.Shares)-1 {
					t.Errorf("%s: spares are not last in %v", row.name, b.Shares)
				}
			}
		}
		if all != 0 {
			t.Errorf("%s: %d shares of the rooms are not in the list", row.name, all)
		}
		if row.budget > 0 && (p.Basket.Total.GreaterThan(r.Shop.Budget) || row.shelf == 0 && p.Basket.Least.LessThanOrEqual(r.Shop.Budget)) {
			t.Errorf("%s: %v of %v, least %v", row.name, p.Basket.Total, row.budget, p.Basket.Least)
		}
	}
}

// A garland does not hang on fewer hooks than are planned.
func TestTooFewHooks(t *testing.T) {
	for _, room := range []string{"", "tea room"} {
		m := job.Mantel{Room: room, PerFoot: units.Ounce, Hook: mantel.Hook{Rating: 5 * units.Pound}}
		m.Length = 4 * units.Foot
		r := job.Request{House: job.CommonPractice(), Mantels: []job.Mantel{m}}
		r.Shop.Owned = []shopping.Lot{{Item: itemOf(t, "hooks"), Quantity: shopping.Quantity{Pieces: 1}}, {Item: itemOf(t, "base garland"), Quantity: shopping.Quantity{Length: 9 * units.Foot}}}
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		told := false
		for _, c := range p.Cautions {
			told = told || c.Code == "too few hooks" && c.Room == room && strings.HasPrefix(c.Text, "there are 1 of 2 hooks")
		}
		if !told {
			t.Errorf("%q: %v", room, p.Cautions)
		}
	}
}

// What the hooks on the shelf do not do, or a delivery for the rest, does not send the money after what cannot hang.
func TestNoGarlandBesideTheRest(t *testing.T) {
	shelf := func(room string, length units.Length) job.Mantel {
		m := job.Mantel{Room: room, PerFoot: units.Ounce, Hook: mantel.Hook{Rating: 5 * units.Pound}}
		m.Length = length
		return m
	}
	strand := shopping.Offer{Item: itemOf(t, "base garland"), Name: "strand", Pack: shopping.Quantity{Length: 6 * units.Foot}, Price: decimal.NewFromInt(10)}
	pair, picks := offerOf(t, "hooks", 3), offerOf(t, "picks", 1)
	pair.Pack.Pieces = 2
	for _, row := range []struct {
		name    string
		mantels []job.Mantel
		budget  int64
		hooks   shopping.Shelf
		fee     int64 // to deliver picks
		each    string
		bare    string
	}{
		// By hand: 2 strands for the long one are 20, so that only the short one is dressed, and warned of.
		{"no hooks", []job.Mantel{shelf("long", 64*units.Inch), shelf("short", 4*units.Foot)}, 12, shopping.SoldOut, 0, "1", "long"},
		// By hand: 10 and 3 are 13, and the first pick would take 6 more.
		{"a delivery", []job.Mantel{shelf("short", 4*units.Foot)}, 14, 0, 5, "1", ""},
		// By hand: at a hundredth of a cent for a pick the search for what is left beside the delivery ends before it gets to 10.
		{"a delivery for next to nothing", []job.Mantel{{Room: "short", Mantel: mantel.Mantel{Length: 4 * units.Foot}}}, 14, 0, 5, "0.0001", "short"},
		{"a cent", []job.Mantel{shelf("short", 4*units.Foot)}, 12, 0, 5, "1", "short"},
	} {
		r := job.Request{House: job.CommonPractice(), Mantels: row.mantels}
		r.Shop.Budget = decimal.NewFromInt(row.budget)
		pair.Shelf, picks.Store = row.hooks, "away"
		picks.Price = decimal.RequireFromString(row.each)
		r.Shop.Offers = []shopping.Offer{strand, pair, picks}
		r.Shop.Stores = []shopping.Store{{Name: "away", Delivery: decimal.NewFromInt(row.fee)}}
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		var bare []string
		for _, m := range p.Mantels {
			garland, others := false, false
			for _, s := range m.Shares {
				there := s.Gets != shopping.Quantity{}
				garland, others = garland || there && s.Item.Kind == shopping.BaseGarland, others || there && s.Item.Kind != shopping.BaseGarland
			}
			if !garland {
				bare = append(bare, m.Room)
				if others {
					t.Errorf("%s: %s gets %v", row.name, m.Room, m.Shares)
				}
			}
		}
		if got := strings.Join(bare, " "); got != row.bare || p.Basket.Total.GreaterThan(r.Shop.Budget) {
			t.Errorf("%s: bare are %q, want %q, for %v", row.name, got, row.bare, p.Basket.Total)
		}
	}
}

// What is short is told as in the rooms: by the plan, not by what the budget leaves of it.
func TestShortByThePlan(t *testing.T) {
	for _, budget := range []int64{5, 30, 45, 200} {
		r := job.Request{Trees: []job.Tree{bare(7 * units.Foot)}}
		r.Trees[0].Room = "hall"
		r.Shop.Offers, r.Shop.Budget = []shopping.Offer{offerOf(t, "ornaments", 1)}, decimal.NewFromInt(budget)
		p, err := job.Make(r)
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range p.Basket.Purchases {
			for _, s := range b.Shares {
				for _, m := range p.Trees[0].Shares {
					if m.Item == s.Item && (m.Quantity != s.Quantity || m.Open != s.Open || m.Gets != s.Gets) {
						t.Errorf("with %d: %v, %v in the room", budget, s, m)
					}
				}
				// By hand: 49 planned, from 35 to 63 will do.
				if s.Item.Kind == shopping.Ornament && (s.Quantity.Pieces != 49 || s.Enough() != (budget >= 35) || s.Short().Pieces != max(0, 49-int(budget))) {
					t.Errorf("with %d: %v, short %v", budget, s, s.Short())
				}
			}
		}
	}
}

// The nearest size stands in for one that is short, the smaller of two, and none that is too large for the tree: over half again as
// large as its largest, or as the rules let a home or a public place have.
func TestNearestSize(t *testing.T) {
	offers := func(texts ...string) (list []shopping.Offer) {
		for _, text := range texts {
			list = append(list, offerOf(t, "ornaments"+text, 49))
		}
		return list
	}
	at := func(inches int64) units.Length { return units.Length(inches) * units.Inch / 8 }
	for _, row := range []struct {
		public bool
		offers []shopping.Offer
		owned  string
		want   map[units.Length]int // by hand: 21 of 2 in, 14 of 3 1/8 in and 14 of 4 in are planned
		unused string
	}{
		{false, offers(", 2 in", ", 3 1/8 in", ", 4 in"), "", map[units.Length]int{at(16): 21, at(25): 14, at(32): 14}, ""},
		{false, offers(", 2 in", ", 4 in"), "", map[units.Length]int{at(16): 21, at(32): 28}, ""}, // 7/8 in off, not 1 1/8
		{false, offers(", 2 in", ", 3 in"), "", map[units.Length]int{at(16): 21, at(24): 28}, ""},
		{false, offers(", 1 in", ", 3 in"), "", map[units.Length]int{at(8): 21, at(24): 28}, ""}, // as far off: the smaller
		{false, offers(", 1 in", ", 6 in"), "", map[units.Length]int{at(8): 35, at(48): 14}, ""}, // the largest for a home is nearer to 4 in
		{false, offers(", 2 in"), "ornaments, 3 in", map[units.Length]int{at(16): 40, at(24): 9}, ""},
		{false, offers(", 12 in"), "", map[units.Length]int{}, "ornaments, 1 ft (box)"},
		{true, offers(", 6 in"), "", map[units.Length]int{at(48): 49}, ""}, // half again as large as 4 in
		{true, offers(", 49/8 in"), "", map[units.Length]int{}, "ornaments, 6 1/8 in (box)"},
		{false, offers(""), "ornaments, 12 in", map[units.Length]int{at(16): 21, at(25): 14, at(32): 14}, "ornaments, 1 ft (owned)"},
		{false, offers(", 12 in"), "ornaments", map[units.Length]int{0: 9}, "ornaments, 1 ft (box)"}, // those of no size are no size to stand in
	} {
		r := job.Request{House: job.CommonPractice(), Trees: []job.Tree{bare(7 * units.Foot)}}
		r.Trees[0].Public = row.public
		r.Shop.Offers = row.offers
		if row.owned != "" {
			r.Shop.Owned = []shopping.Lot{{Item: itemOf(t, row.owned), Quantity: shopping.Quantity{Pieces: 9}}}
		}
		for _, largest := range []units.Length{r.House.Trees.HomeLargest, 0} { // 6 in and 12 in if nothing is said
			if largest == 0 {
				r.House.Trees.HomeLargest, r.House.Trees.HallLargest = 0, 0
			}
			p := mustMake(t, r)
			got := map[units.Length]int{}
			for _, l := range p.Trees[0].Pieces {
				got[l.Item.Size] += l.Quantity.Pieces
			}
			if diff := cmp.Diff(row.want, got); diff != "" {
				t.Errorf("public %t, %v: -want +got\n%s", row.public, row.offers, diff)
			}
			told := strings.TrimPrefix(caution(p, "not used"), "nothing that is planned takes these as they are named: ")
			if told != row.unused {
				t.Errorf("public %t, %v, %s: not used are %q, want %q", row.public, row.offers, row.owned, told, row.unused)
			}
		}
	}
}

// What is left when the pieces are shared out goes to the leading colors, one to a type. By hand, in a corner, 19 are five, five, five and four.
func TestOverToTheLeadingColors(t *testing.T) {
	r := job.Request{Trees: []job.Tree{{Tree: sizing.Tree{Height: 4*units.Foot + 6*units.Inch, Exposure: sizing.InCorner}}}}
	if err := r.Colors.UnmarshalText([]byte("crimson,forestgreen,gold,ivory")); err != nil {
		t.Fatal(err)
	}
	p := mustMake(t, r)
	var got []int
	for _, s := range p.Trees[0].Shares {
		if s.Item.Kind == shopping.Ornament {
			got = append(got, s.Quantity.Pieces)
		}
	}
	hung := []int{}
	for _, l := range p.Trees[0].Pieces {
		hung = append(hung, l.Quantity.Pieces)
	}
	if want := []int{5, 5, 5, 4}; !slices.Equal(got, want) || !slices.Equal(hung, want) {
		t.Errorf("planned %v, hung %v, want %v", got, hung, want)
	}
	r.Trees[0] = bare(7 * units.Foot)
	r.Trees[0].Public = false
	r.Colors = nil
	p = mustMake(t, r)
	last, sum := 1000, 0
	for _, l := range p.Trees[0].Pieces {
		if n := l.Quantity.Pieces; n > last || n < 7 {
			t.Errorf("%v", p.Trees[0].Pieces)
		}
		last = l.Quantity.Pieces
		sum += last
	}
	if sum != 49 {
		t.Errorf("%d hang of 49", sum)
	}
}

// Where offers state no size, whoever buys is told to look for those that hang.
func TestSizesUnsaid(t *testing.T) {
	for _, row := range []struct {
		offers []string
		told   bool
	}{
		{[]string{"ornaments"}, true},
		{[]string{"ornaments", "ornaments, 2 in"}, true},
		{[]string{"ornaments, 2 in", "ornaments, 4 in"}, false},
		{[]string{"picks"}, false},
	} {
		r := job.Request{Trees: []job.Tree{bare(7 * units.Foot), bare(6 * units.Foot)}}
		for _, text := range row.offers {
			r.Shop.Offers = append(r.Shop.Offers, offerOf(t, text, 49))
		}
		told := 0
		for _, c := range mustMake(t, r).Cautions {
			if c.Code == "sizes not stated" {
				told++
			}
		}
		if told != map[bool]int{true: 1}[row.told] {
			t.Errorf("%v: told %d times", row.offers, told)
		}
	}
}

// On a tall tree the rules are what limits a size that stands in: by hand, at 22 ft 5 1/2 in is the largest planned, and at 40 ft 10 in.
func TestLargestByTheRules(t *testing.T) {
	for _, row := range []struct {
		height units.Length
		public bool
		offer  string
		fits   bool
	}{
		{22 * units.Foot, false, "ornaments, 6 in", true},
		{22 * units.Foot, false, "ornaments, 49/8 in", false},
		{40 * units.Foot, true, "ornaments, 12 in", true},
		{40 * units.Foot, true, "ornaments, 97/8 in", false},
	} {
		r := job.Request{House: job.CommonPractice(), Trees: []job.Tree{bare(row.height)}}
		r.Trees[0].Public = row.public
		r.Shop.Offers = []shopping.Offer{offerOf(t, row.offer, 1000)}
		for range 2 {
			if p := mustMake(t, r); (len(p.Trees[0].Pieces) > 0) != row.fits {
				t.Errorf("%v, public %t, %s: %v", row.height, row.public, row.offer, p.Trees[0].Pieces)
			}
			r.House.Trees.HomeLargest, r.House.Trees.HallLargest = 0, 0
		}
	}
}

// How many types there are is looked at by size: 21 of 2 in are planned in three types of 5 to 9, so in two they are up to 14, half of 27; 14 of 4 in in
// two types, of which there is one. Where 6 of these are owned without a size, the 8 that are left are 4 of each, if there are two.
func TestTypesOfASize(t *testing.T) {
	r := job.Request{Trees: []job.Tree{bare(7 * units.Foot)}}
	size := func(inches units.Length, pieces, types, least, most int) string {
		return fmt.Sprintln(inches*units.Inch, pieces, types, least, most)
	}
	for _, row := range []struct {
		offers string // more of them
		loose  int
		want   string
	}{
		{"ball, 2 in; star, 2 in; bird, 4 in", 0, size(4, 14, 0, 0, 0) + size(2, 21, 2, 5, 14)},
		{"star, 4 in", 6, size(4, 8, 2, 4, 9) + size(2, 21, 2, 5, 14) + size(0, 6, 0, 0, 0)},
	} {
		for text := range strings.SplitSeq(row.offers, "; ") {
			r.Shop.Offers = append(r.Shop.Offers, offerOf(t, "ornaments, "+text, 1))
		}
		r.Shop.Owned = []shopping.Lot{{Item: itemOf(t, "ornaments"), Quantity: shopping.Quantity{Pieces: row.loose}}}
		got := ""
		p := mustMake(t, r)
		for _, s := range p.Trees[0].Shares {
			if s.Item.Kind == shopping.Ornament && s.Item.Size != 25*units.Inch/8 && s.For == (shopping.Item{}) { // others stand in for that size
				got += fmt.Sprintln(s.Item.Size, s.Quantity.Pieces, s.Types, s.Each.Min, s.Each.Max)
			}
		}
		if got != row.want {
			t.Errorf("with %s:\n%swant\n%s", row.offers, got, row.want)
		}
	}
}

// caution returns the text of the caution with a code.
func caution(p job.Plan, code string) string {
	for _, c := range p.Cautions {
		if c.Code == code {
			return c.Text
		}
	}
	return ""
}

// What can never serve is a fault if it is of the wrong measure, and otherwise named.
func TestNeverOfUse(t *testing.T) {
	r := job.Request{Trees: []job.Tree{bare(7 * units.Foot)}}
	var err error
	if r.Colors, err = palette.CommonPractice().ParsePalette("crimson"); err != nil {
		t.Fatal(err)
	}
	feet := offerOf(t, "garland", 9)
	length := offerOf(t, "picks", 1)
	length.Pack = shopping.Quantity{Length: units.Foot}
	empty := offerOf(t, "garland", 1)
	empty.Pack = shopping.Quantity{}
	for field, o := range map[string]shopping.Offer{"want a length, as 9 ft, of garland": feet, "want a number of picks": length, "want at least 1 piece or a length": empty} {
		r.Shop.Offers = []shopping.Offer{offerOf(t, "crimson ornaments", 1), o}
		_, err := job.Make(r)
		if list := job.Faults(err); len(list) != 1 || list[0].Field != "/shop/offers/1/pack" || !strings.Contains(err.Error(), field) {
			t.Errorf("%v: %v", o, err)
		}
	}
	r.Shop.Offers = []shopping.Offer{offerOf(t, "crimson ornaments", 1), offerOf(t, "ornaments", 12), offerOf(t, "navy ornaments", 1), offerOf(t, "picks", 1)}
	for n, want := range []string{
		"takes these as they are named: ornaments (box)",
		"named: type 1 ornaments (owned); ornaments (box)",
		"named: type 1 ornaments (owned); type 2 ornaments (owned); ornaments (box)",
	} {
		if got := caution(mustMake(t, r), "not used"); !strings.HasSuffix(got, want) {
			t.Errorf("%d owned: %q, want %q", n, got, want)
		}
		r.Shop.Owned = append(r.Shop.Owned, shopping.Lot{Item: itemOf(t, "type "+strconv.Itoa(n+1)+" ornaments"), Quantity: shopping.Quantity{Pieces: 1}})
	}
	for n := range 4 {
		r.Shop.Owned = append(r.Shop.Owned, shopping.Lot{Item: itemOf(t, "more "+strconv.Itoa(n)+" ornaments"), Quantity: shopping.Quantity{Pieces: 1}})
	}
	if got := caution(mustMake(t, r), "not used"); !strings.HasSuffix(got, "more 1 ornaments (owned); and 3 more") {
		t.Errorf("%q", got)
	}
}

// A mantel takes the picks that are sold for one, so that others are told.
func TestPicksNotForMantels(t *testing.T) {
	var r job.Request
	r.Mantels = make([]job.Mantel, 1)
	r.Mantels[0].Length = 66 * units.Inch
	garland := offerOf(t, "base garland", 9)
	garland.Pack = shopping.Quantity{Length: 9 * units.Foot}
	r.Shop.Offers = []shopping.Offer{garland, offerOf(t, "picks, mantel", 1)}
	p := mustMake(t, r)
	if got := caution(p, "not used"); got != "" {
		t.Errorf("%q", got)
	}
	// As many picks as planned hang where the rule has them, 8 in apart.
	along := func(p job.Plan) (picks []units.Length) {
		for _, s := range p.Mantels[0].Spots {
			if s.Item.Kind == shopping.Pick {
				picks = append(picks, s.Along)
			}
		}
		return picks
	}
	if got := along(p); len(got) != 9 || got[1]-got[0] != 8*units.Inch {
		t.Errorf("picks at %v", got)
	}
	// Seven of them go over the whole shelf, as far from its one end as from its other.
	r.Shop.Offers[1].Shelf = 7
	if got := along(mustMake(t, r)); len(got) != 7 || got[0]+got[6] > r.Mantels[0].Length+2 || got[0]+got[6] < r.Mantels[0].Length-2 {
		t.Errorf("picks at %v", got)
	}
	r.Shop.Owned = []shopping.Lot{{Item: itemOf(t, "picks, berry"), Quantity: shopping.Quantity{Pieces: 1}}, {Item: itemOf(t, "picks, mantel"), Quantity: shopping.Quantity{Pieces: 1}}}
	if got := caution(mustMake(t, r), "not used"); !strings.HasSuffix(got, "named: picks, berry (owned)") {
		t.Errorf("%q", got)
	}
}

func mustMake(t *testing.T, r job.Request) job.Plan {
	t.Helper()
	p, err := job.Make(r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A garland that is a little longer than its strands is told to do with less at the ends: 2 in at each.
func TestNearlyAStrand(t *testing.T) {
	strand := func(length units.Length) shopping.Offer {
		return shopping.Offer{Item: itemOf(t, "base garland"), Name: length.String(), Pack: shopping.Quantity{Length: length}, Price: decimal.NewFromInt(9)}
	}
	for _, row := range []struct {
		length, strand, overlap units.Length
		style                   units.Style
		want                    string // after 24 in more than the shelf
	}{
		{87 * units.Inch, 9 * units.Foot, 0, 0, "; 3 in less at the ends, and 1 x 9 ft would do"}, // 9 ft 3 in
		{88 * units.Inch, 9 * units.Foot, 0, 0, "; 4 in less at the ends, and 1 x 9 ft would do"},
		{89 * units.Inch, 9 * units.Foot, 0, 0, ""},
		{84 * units.Inch, 9 * units.Foot, 0, 0, ""},                                                     // just a strand
		{87 * units.Inch, 54 * units.Inch, 0, 0, "; 3 in less at the ends, and 2 x 4 ft 6 in would do"}, // joined without loss
		{87 * units.Inch, 56 * units.Inch, 2 * units.Inch, 0, "; 1 in less at the ends, and 2 x 4 ft 8 in would do"},
		{87 * units.Inch, 30 * units.Foot, 0, 0, ""},
		{87 * units.Inch, 9 * units.Foot, 0, units.InMetric, "; 8 cm less at the ends, and 1 x 2.74 m would do"},
	} {
		m := job.Mantel{}
		m.Length = row.length
		r := job.Request{House: job.CommonPractice(), Mantels: []job.Mantel{m}}
		r.House.Units = row.style
		r.Shop.Offers = []shopping.Offer{offerOf(t, "picks", 1), strand(row.strand)}
		if row.overlap > 0 {
			short := strand(row.overlap + 1)
			short.Item.Type = "short"
			r.Shop.Offers = append([]shopping.Offer{short}, r.Shop.Offers...)
			r.Shop.Joins = map[shopping.Item]shopping.Join{{Kind: shopping.BaseGarland}: {Overlap: row.overlap}}
		}
		basis := ""
		for _, s := range mustMake(t, r).Mantels[0].Shares {
			if s.Item.Kind == shopping.BaseGarland {
				basis = s.Basis
			}
		}
		_, got, found := strings.Cut(basis, " more")
		if got != row.want || !found {
			t.Errorf("%v of strands of %v: %q, want %q", row.length, row.strand, basis, row.want)
		}
	}
}
