package job_test

import (
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

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
