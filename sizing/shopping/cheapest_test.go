package shopping_test

import (
	"encoding/csv"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func cents(n int64) decimal.Decimal { return decimal.New(n, -2) }

// packs returns how many packs p buys of each offer of s.
func packs(s shopping.Shop, p shopping.Purchase) []int {
	counts := make([]int, len(s.Offers))
	for _, b := range p.Buys {
		for i, o := range s.Offers {
			if o.Item == b.Offer.Item && o.Name == b.Offer.Name {
				counts[i] = b.Packs
			}
		}
	}
	return counts
}

func ints(t *testing.T, s string) []int {
	t.Helper()
	var ns []int
	for _, f := range strings.Fields(s) {
		n, err := strconv.Atoi(f)
		if err != nil {
			t.Fatal(err)
		}
		ns = append(ns, n)
	}
	return ns
}

// The sources are in the last column of testdata/packs.csv.
func TestPublished(t *testing.T) {
	data, err := os.Open("testdata/packs.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer data.Close()
	rows, err := csv.NewReader(data).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	exact, cover := 0, 0
	for _, row := range rows[1:] {
		need, _ := strconv.Atoi(row[2])
		var s shopping.Shop
		for _, f := range strings.Fields(row[1]) {
			size, price, priced := strings.Cut(f, ":")
			n, _ := strconv.Atoi(size)
			cost, _ := strconv.ParseInt(price, 10, 64)
			if !priced {
				cost = int64(n) * 100 // by the piece, so that the fewest pieces over cost least
			}
			s.Offers = append(s.Offers, shopping.Offer{Item: shopping.Item{Kind: shopping.Ornament}, Name: f, Pack: shopping.Quantity{Pieces: n}, Price: cents(cost)})
		}
		p, err := s.Cheapest(shopping.Need{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: need}})
		if err != nil {
			t.Fatal(row, err)
		}
		switch row[0] {
		case "exact, fewest packs":
			exact++
			// At one price a piece, a total that can be made exactly has no surplus,
			// and of these the fewest packs are taken.
			n := 0
			for _, b := range p.Buys {
				n += b.Packs
			}
			if row[3] == "infeasible" {
				if shopping.Surplus(p.Left).Pieces == 0 {
					t.Errorf("%v: made exactly, by %v", row, p)
				}
			} else if shopping.Surplus(p.Left).Pieces != 0 || strconv.Itoa(n) != row[3] {
				t.Errorf("%v: got %d packs, %v over", row, n, shopping.Surplus(p.Left))
			}
		case "cover, least cost":
			cover++
			want := ints(t, row[3])
			if got := packs(s, p); !p.Cost.Equal(cents(int64(want[0]))) || !slices.Equal(got, want[1:]) {
				t.Errorf("%v: got %v for %v", row, got, p.Cost)
			}
		}
	}
	if exact != 8 || cover != 5 {
		t.Errorf("read %d and %d rows", exact, cover)
	}
}

// Source: the coin problem of Frobenius; the largest total that 6, 9 and 20 do not
// make is 43 (J. Burkardt, CHANGE_MAKING test set, problem 7).
func TestUnreachableCount(t *testing.T) {
	s := shopping.Shop{Offers: []shopping.Offer{
		{Item: shopping.Item{Kind: shopping.Bell}, Name: "6", Pack: shopping.Quantity{Pieces: 6}, Price: cents(600)},
		{Item: shopping.Item{Kind: shopping.Bell}, Name: "9", Pack: shopping.Quantity{Pieces: 9}, Price: cents(900)},
		{Item: shopping.Item{Kind: shopping.Bell}, Name: "20", Pack: shopping.Quantity{Pieces: 20}, Price: cents(2000)},
	}}
	for need := 1; need <= 60; need++ {
		p, err := s.Cheapest(shopping.Need{Item: shopping.Item{Kind: shopping.Bell}, Quantity: shopping.Quantity{Pieces: need}})
		if err != nil {
			t.Fatal(err)
		}
		got := need + shopping.Surplus(p.Left).Pieces
		if need == 43 && got != 44 || need > 43 && got != need {
			t.Errorf("need %d: got %d", need, got)
		}
	}
}

// drawShop draws offers and stock of one item in pieces.
func drawShop(t *rapid.T) shopping.Shop {
	var s shopping.Shop
	for i := range rapid.IntRange(1, 5).Draw(t, "offers") {
		o := shopping.Offer{
			Item: shopping.Item{Kind: shopping.Ornament}, Name: strconv.Itoa(i),
			Pack:  shopping.Quantity{Pieces: rapid.IntRange(1, 40).Draw(t, "pack")},
			Price: cents(rapid.Int64Range(0, 3000).Draw(t, "price")),
		}
		if rapid.Bool().Draw(t, "limited") {
			o.Shelf = onShelf(rapid.IntRange(0, 12).Draw(t, "left"))
		}
		s.Offers = append(s.Offers, o)
	}
	s.Offers = append(s.Offers, shopping.Offer{Item: shopping.Item{Kind: shopping.Ornament}, Name: "singles", Pack: shopping.Quantity{Pieces: 1}, Price: cents(250)})
	if rapid.Bool().Draw(t, "owned") {
		s.Owned = []shopping.Lot{{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: rapid.IntRange(0, 50).Draw(t, "owns")}}}
	}
	return s
}

// open returns n with a number of pieces that is open up to most.
func open(n shopping.Need, most int) shopping.Need {
	n.Open = units.Range[int]{Min: n.Quantity.Pieces, Max: most}
	return n
}

func balls(n int) shopping.Need {
	return shopping.Need{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: n}}
}

func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShop(t)
		n := rapid.IntRange(0, 200).Draw(t, "need")
		m := rapid.IntRange(0, 200).Draw(t, "more")
		cost := func(s shopping.Shop, needs ...shopping.Need) decimal.Decimal {
			p, err := s.Cheapest(needs...)
			if err != nil {
				t.Fatal(err)
			}
			sum := decimal.Zero
			held := 0
			for _, b := range p.Buys {
				if !b.Cost.Equal(b.Offer.Price.Mul(decimal.NewFromInt(int64(b.Packs)))) || b.Packs < 1 {
					t.Fatalf("%+v", b)
				}
				if b.Offer.Shelf != 0 && b.Packs > packsOn(b.Offer.Shelf) {
					t.Fatalf("more than there are: %+v", b)
				}
				sum = sum.Add(b.Cost)
				held += b.Packs * b.Offer.Pack.Pieces
			}
			need := 0
			for _, n := range needs {
				need += n.Quantity.Pieces
			}
			if !sum.Equal(p.Cost) || !p.Cost.Equal(p.Bound) || shopping.Surplus(p.Left).Pieces != shopping.Surplus(p.Owned).Pieces+held-need || shopping.Surplus(p.Left).Pieces < 0 {
				t.Fatalf("%+v", p)
			}
			return p.Cost
		}
		base := cost(s, balls(n))
		if cost(s, balls(n+m)).LessThan(base) {
			t.Fatal("more costs less")
		}
		more := s
		more.Offers = append(slices.Clone(s.Offers), shopping.Offer{Item: shopping.Item{Kind: shopping.Ornament}, Name: "new", Pack: shopping.Quantity{Pieces: rapid.IntRange(1, 99).Draw(t, "new")}, Price: cents(rapid.Int64Range(0, 5000).Draw(t, "its price"))})
		if cost(more, balls(n)).GreaterThan(base) {
			t.Fatal("an offer more, and it costs more")
		}
		more = s
		more.Owned = append(slices.Clone(s.Owned), shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament}, Quantity: shopping.Quantity{Pieces: m}})
		if cost(more, balls(n)).GreaterThan(base) {
			t.Fatal("more owned, and it costs more")
		}
		// The same choice at prices a hundred times as high, and a quarter.
		for _, k := range []decimal.Decimal{decimal.New(1, 2), decimal.New(25, -2)} {
			scaled := s
			scaled.Offers = slices.Clone(s.Offers)
			for i := range scaled.Offers {
				scaled.Offers[i].Price = scaled.Offers[i].Price.Mul(k)
			}
			a, _ := s.Cheapest(balls(n))
			b, err := scaled.Cheapest(balls(n))
			if err != nil || !b.Cost.Equal(a.Cost.Mul(k)) || !slices.Equal(packs(s, a), packs(scaled, b)) {
				t.Fatalf("times %v: %v and %v, %v", k, a, b, err)
			}
		}
		// Two rooms together.
		unlimited := s
		unlimited.Offers = slices.Clone(s.Offers)
		for i := range unlimited.Offers {
			unlimited.Offers[i].Shelf = 0
		}
		first := cost(unlimited, balls(n))
		rest := unlimited
		rest.Owned = nil // it was used for the first room
		if cost(unlimited, balls(n), balls(m)).GreaterThan(first.Add(cost(rest, balls(m)))) {
			t.Fatal("together costs more")
		}
	})
}

// What is offered or owned of the other kind changes nothing, as long as there is
// something of the kind that is needed.
func TestOtherKind(t *testing.T) {
	need := func(q shopping.Quantity) shopping.Need {
		return shopping.Need{Item: shopping.Item{Kind: shopping.Bell}, Quantity: q}
	}
	pieces := shopping.Offer{Item: shopping.Item{Kind: shopping.Bell}, Name: "box", Pack: shopping.Quantity{Pieces: 12}, Price: cents(300)}
	lengths := shopping.Offer{Item: shopping.Item{Kind: shopping.Bell}, Name: "string", Pack: ofLength(0, units.Yard), Price: cents(200)}
	both := shopping.Shop{
		Offers: []shopping.Offer{pieces, lengths},
		Owned:  []shopping.Lot{{Item: shopping.Item{Kind: shopping.Bell}, Quantity: shopping.Quantity{Pieces: 5}}, {Item: shopping.Item{Kind: shopping.Bell}, Quantity: ofLength(2, units.Foot)}},
	}
	for _, tt := range []struct {
		alone shopping.Shop
		needs []shopping.Need
	}{
		{shopping.Shop{Offers: both.Offers[:1], Owned: both.Owned[:1]}, []shopping.Need{need(shopping.Quantity{Pieces: 20})}},
		{shopping.Shop{Offers: both.Offers[1:], Owned: both.Owned[1:]}, []shopping.Need{need(ofLength(0, 10*units.Foot))}},
		{shopping.Shop{Offers: both.Offers[1:], Owned: both.Owned[1:]}, []shopping.Need{need(ofLength(3, units.Foot)), need(ofLength(1, units.Yard))}},
	} {
		want, err := tt.alone.Cheapest(tt.needs...)
		if err != nil {
			t.Fatal(err)
		}
		got, err := both.Cheapest(tt.needs...)
		if diff := cmp.Diff(want, got); err != nil || diff != "" {
			t.Errorf("%v: %v, -alone +both\n%s", tt.needs, err, diff)
		}
	}
}

// TestStrands holds joined strands against every choice of counts, with the rule
// ΣL - (n-1)·overlap in its plainest form.
func TestStrands(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		overlap := units.Length(rapid.IntRange(0, 3).Draw(t, "overlap")) * units.Inch
		need := units.Length(rapid.IntRange(1, 60).Draw(t, "need")) * units.Inch
		s := shopping.Shop{Joins: map[shopping.Item]shopping.Join{{Kind: shopping.Garland}: {Overlap: overlap}}}
		for i := range rapid.IntRange(0, 3).Draw(t, "offers") {
			o := shopping.Offer{
				Item: shopping.Item{Kind: shopping.Garland}, Name: strconv.Itoa(i),
				Pack:  shopping.Quantity{Length: units.Length(rapid.IntRange(4, 30).Draw(t, "length")) * units.Inch},
				Price: cents(rapid.Int64Range(0, 9).Draw(t, "price")),
			}
			if rapid.Bool().Draw(t, "several") {
				o.Pack.Pieces = rapid.IntRange(1, 3).Draw(t, "strands")
			}
			if rapid.Bool().Draw(t, "limited") {
				o.Shelf = onShelf(rapid.IntRange(0, 3).Draw(t, "left"))
			}
			s.Offers = append(s.Offers, o)
		}
		for range rapid.IntRange(0, 2).Draw(t, "owned") {
			s.Owned = append(s.Owned, shopping.Lot{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{
				Pieces: rapid.IntRange(0, 2).Draw(t, "owns"), Length: units.Length(rapid.IntRange(1, 20).Draw(t, "of")) * units.Inch,
			}})
		}
		var strands []units.Length
		add := func(q shopping.Quantity, times int) {
			for range max(1, q.Pieces) * times {
				strands = append(strands, q.Length)
			}
		}
		join := func() units.Length {
			sum, n := units.Length(0), units.Length(0)
			for _, l := range strands {
				if l > overlap {
					sum += l
					n++
				}
			}
			return sum - max(0, n-1)*overlap
		}
		owned := units.Length(0)
		for _, o := range s.Owned {
			add(o.Quantity, 1)
			owned += units.Length(max(1, o.Quantity.Pieces)) * o.Quantity.Length
		}
		var best []int
		var bestKey [3]int64
		reach := units.Length(0)
		counts := make([]int, len(s.Offers))
		var walk func(i int, cost int64, packs int64)
		walk = func(i int, cost int64, packs int64) {
			if i == len(counts) {
				reach = max(reach, join())
				if key := [3]int64{cost, int64(join()), packs}; join() >= need && (best == nil || slices.Compare(key[:], bestKey[:]) < 0) {
					best, bestKey = slices.Clone(counts), key
				}
				return
			}
			o := s.Offers[i]
			most := int(need/(o.Pack.Length-overlap)) + 1
			if o.Shelf != 0 {
				most = min(most, packsOn(o.Shelf))
			}
			before := strands
			for n := most; n >= 0; n-- {
				strands = slices.Clone(before)
				add(o.Pack, n)
				counts[i] = n
				walk(i+1, cost+o.Price.Shift(2).IntPart()*int64(n), packs+int64(n))
			}
			strands = before
		}
		walk(0, 0, 0)
		p, err := s.Cheapest(shopping.Need{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Length: need}})
		if best == nil {
			if got := p.Shares[0]; err != nil || got.Gets.Length != reach || got.Short().Length != need-reach {
				t.Fatalf("got %+v, %v, want %v", got, err, reach)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if got := packs(s, p); !slices.Equal(got, best) || shopping.Surplus(p.Owned).Length != owned {
			t.Fatalf("got %v, %v owned, want %v, %v owned", got, p.Owned, best, owned)
		}
	})
}

// onShelf returns a shelf with n packs, and packsOn how many there are on one that is known.
func onShelf(n int) shopping.Shelf {
	if n == 0 {
		return shopping.SoldOut
	}
	return shopping.Shelf(n)
}

func packsOn(s shopping.Shelf) int {
	if s == shopping.SoldOut {
		return 0
	}
	return int(s)
}
