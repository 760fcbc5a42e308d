package palette

import (
	"math"
	"strings"
	"testing"

	"example.com/fircone/units"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// COMAP, For All Practical Purposes, and OpenStax, Contemporary Mathematics; the
// source of each row stands in testdata/apportionment.csv.
func TestApportionPublished(t *testing.T) {
	list := func(text string) (v []int) {
		for _, f := range strings.Fields(text) {
			v = append(v, int(number(t, f)))
		}
		return v
	}
	rows := readCSV(t, "apportionment.csv")
	if len(rows) != 13 {
		t.Errorf("%d rows", len(rows))
	}
	for _, row := range rows {
		want := list(row["result_computed"])
		if row["published_result"] != "" && row["published_result"] != row["result_computed"] {
			t.Errorf("%s: the published result is another", row["case"])
		}
		got, err := Apportion(int(number(t, row["total"])), list(row["weights"]), int(number(t, row["minimum"])))
		if err != nil || !cmp.Equal(got, want) {
			t.Errorf("%s: %v, %v, want %v (%s)", row["case"], got, err, want, row["source"])
		}
	}
}

func TestApportion(t *testing.T) {
	for _, test := range []struct {
		total  int
		shares []int
		least  int
		want   []int
		reason string
	}{
		{10, []int{6, 6, 2}, 0, []int{4, 4, 2}, "the paradox: ten …"},
		{11, []int{6, 6, 2}, 0, []int{5, 5, 1}, "… and eleven (OpenStax 11.4)"},
		{0, []int{1, 2}, 0, []int{0, 0}, "nothing to share"},
		{7, []int{0, 5}, 0, []int{0, 7}, "no share, nothing"},
		{7, []int{0, 5}, 1, []int{1, 6}, "no share, the least: 7 is taken back to 6"},
		{1, []int{1, 1, 1}, 0, []int{1, 0, 0}, "a tie goes to the earliest"},
		{2, []int{1, 1, 1}, 0, []int{1, 1, 0}, "and to the next"},
		{4, []int{97, 1, 1, 1}, 1, []int{1, 1, 1, 1}, "the least takes all"},
		// Quotas 4.85, 0.05 each: raised 4, 1, 1, 1 is 7; two are taken back.
		{5, []int{97, 1, 1, 1}, 1, []int{2, 1, 1, 1}, "taken back from the one that can spare"},
		// Quotas 2.4, 2.4, 0.1, 0.1: raised to 2, 2, 1, 1, one too many; both large
		// ones are 0.4 below, and the later gives.
		{5, []int{24, 24, 1, 1}, 1, []int{2, 1, 1, 1}, "taken back from the later of two"},
		// Quotas 3.2, 2.7, 0.1: raised 3, 2, 1, none left.
		{6, []int{32, 27, 1}, 1, []int{3, 2, 1}, "raising takes what a remainder would have got"},
		// Quotas 4.5, 4.4, 0.1: raised 4, 4, 1, none left over.
		{9, []int{45, 44, 1}, 1, []int{4, 4, 1}, "raising takes what was left"},
		// Quotas 4.75, 4.75, 0.5: raised 4, 4, 1, one over for the first.
		{10, []int{19, 19, 2}, 1, []int{5, 4, 1}, "one left over after raising"},
		{1_000_000_000, []int{999_999_999, 1}, 0, []int{999_999_999, 1}, "the largest numbers"},
		{1_000_000_000, []int{1, 1}, 500_000_000, []int{500_000_000, 500_000_000}, "the largest least"},
		{1_000_000_000, []int{1_000_000_000}, 0, []int{1_000_000_000}, "one claim, the largest share"},
	} {
		got, err := Apportion(test.total, test.shares, test.least)
		if err != nil || !cmp.Equal(got, test.want) {
			t.Errorf("%s: Apportion(%d, %v, %d) = %v, %v, want %v", test.reason, test.total, test.shares, test.least, got, err, test.want)
		}
	}
	for _, test := range []struct {
		total  int
		shares []int
		least  int
		want   string
	}{
		{-1, []int{1}, 0, `total "-1": out of range: want 0 to 1000000000`},
		{1_000_000_001, []int{1}, 0, `total "1000000001": out of range: want 0 to 1000000000`},
		{1, nil, 0, `shares "0": out of range: want 1 to 1000 of them`},
		{1, make([]int, 1001), 0, `shares "1001": out of range: want 1 to 1000 of them`},
		{1, []int{1, -1}, 0, `/shares/1 "-1": out of range: want 0 to 1000000000`},
		{1, []int{1_000_000_001}, 0, `/shares/0 "1000000001": out of range: want 0 to 1000000000`},
		{1, []int{0, 0}, 0, `shares "0": out of range: want a sum of 1 to 1000000000`},
		{1, []int{1_000_000_000, 1}, 0, `shares "1000000001": out of range: want a sum of 1 to 1000000000`},
		{5, []int{1, 1}, -1, `least "-1": out of range: want 0 to 2, for 2 shares of 5`},
		{5, []int{1, 1}, 3, `least "3": out of range: want 0 to 2, for 2 shares of 5`},
	} {
		got, err := Apportion(test.total, test.shares, test.least)
		checkError(t, err, units.ErrRange, "palette.Apportion: "+test.want)
		if got != nil {
			t.Errorf("%v beside an error", got)
		}
	}
	if _, err := Apportion(5, append(make([]int, 999), 1), 0); err != nil {
		t.Errorf("1000 shares: %v", err)
	}
}

func TestApportionProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shares := rapid.SliceOfN(rapid.IntRange(0, 1000), 1, 8).Draw(t, "shares")
		total := rapid.IntRange(0, 500).Draw(t, "total")
		least := rapid.IntRange(0, total/len(shares)).Draw(t, "least")
		sum := 0
		for _, s := range shares {
			sum += s
		}
		if sum == 0 {
			t.Skip("no shares")
		}
		got, err := Apportion(total, shares, least)
		if err != nil {
			t.Fatal(err)
		}
		all, raised := 0, 0
		for i, n := range got {
			all += n
			raised += max(least, total*shares[i]/sum)
			if n < least {
				t.Fatalf("count %d is %d, under %d", i, n, least)
			}
		}
		if all != total {
			t.Fatalf("%v adds up to %d, want %d", got, all, total)
		}
		for i, n := range got {
			quota := float64(total) * float64(shares[i]) / float64(sum)
			// Within one of the quota, or of the least above it, where there is enough to
			// raise all; 1e-9 is the rounding of the quota.
			if raised <= total && math.Abs(float64(n)-max(quota, float64(least))) >= 1+1e-9 {
				t.Fatalf("count %d is %d, its quota %v, least %d", i, n, quota, least)
			}
			for j, m := range got {
				if shares[i] > shares[j] && n < m {
					t.Fatalf("share %d gets %d and share %d gets %d", shares[i], n, shares[j], m)
				}
			}
		}
	})
}

// With the usual shares no count falls as the total rises. They are tenths, so the
// remainders repeat after ten.
func TestUsualSharesNoParadox(t *testing.T) {
	for n := 1; n <= 4; n++ {
		shares := usualShares[n]
		before := make([]int, n)
		for total := range 40 {
			counts, err := Apportion(total, shares, 0)
			if err != nil {
				t.Fatal(err)
			}
			for i := range counts {
				if counts[i] < before[i] {
					t.Errorf("%d over %v: %v after %v", total, shares, counts, before)
				}
			}
			before = counts
		}
	}
}

// totals are the arguments of Share.
type totals struct {
	types, pieces int
	shares        []int
}

func TestShare(t *testing.T) {
	four := mustPalette(t, "crimson,forestgreen,gold:metal,ivory")
	two := mustPalette(t, "crimson,gold")
	six, err := Rules{6, 10, 10}.Palette(swatches("black", "white", "red", "lime", "blue", "yellow")...)
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		p             Palette
		totals        totals
		types, pieces []int
		reason        string
	}{
		// Quotas 3.6, 2.7, 1.8, 0.9 and 32.4, 24.3, 16.2, 8.1.
		{four, totals{9, 81, nil}, []int{3, 3, 2, 1}, []int{33, 24, 16, 8}, "a 9 ft tree, nine of each"},
		// Quotas 1.6, 1.2, 0.8, 0.4, raised to 1, 1, 1, 1.
		{four, totals{4, 20, nil}, []int{1, 1, 1, 1}, []int{8, 6, 4, 2}, "a type for each color"},
		// Quotas 2, 1.5, 1, 0.5, raised to 2, 1, 1, 1.
		{four, totals{5, 20, nil}, []int{2, 1, 1, 1}, []int{8, 6, 4, 2}, "one type more than colors"},
		// Quotas 1.2, 0.9, 0.6, 0.3: too few for each; then 12 over 40, 30, 20.
		{four, totals{3, 12, nil}, []int{1, 1, 1, 0}, []int{5, 4, 3, 0}, "fewer types than colors"},
		{four, totals{9, 9, nil}, []int{3, 3, 2, 1}, []int{3, 3, 2, 1}, "one piece of each type"},
		// Quotas 4, 3, 2, 1, but three types need three pieces.
		{four, totals{9, 10, nil}, []int{3, 3, 2, 1}, []int{4, 3, 2, 1}, "one piece over"},
		{four, totals{0, 27, nil}, []int{0, 0, 0, 0}, []int{11, 8, 5, 3}, "27 picks, no types"},
		// Quotas 1.6, 1.2, 0.8, 0.4.
		{four, totals{0, 4, nil}, []int{0, 0, 0, 0}, []int{1, 1, 1, 1}, "a piece for each color"},
		// Quotas 1.2, 0.9, 0.6, 0.3.
		{four, totals{0, 3, nil}, []int{0, 0, 0, 0}, []int{1, 1, 1, 0}, "too few pieces for each"},
		{four, totals{0, 0, nil}, []int{0, 0, 0, 0}, []int{0, 0, 0, 0}, "nothing"},
		{two, totals{5, 50, nil}, []int{3, 2}, []int{30, 20}, "60/40"},
		{two, totals{5, 50, []int{9, 1}}, []int{4, 1}, []int{45, 5}, "the caller's shares: 4.5 and 0.5 tie, but each has its type"},
		{six, totals{6, 12, []int{1, 1, 1, 1, 1, 1_000_000}}, []int{1, 1, 1, 1, 1, 1}, []int{1, 1, 1, 1, 1, 7}, "six colors, the largest share"},
		{two, totals{1_000_000, 1_000_000, nil}, []int{600_000, 400_000}, []int{600_000, 400_000}, "the largest totals"},
	} {
		got, err := test.p.Share(test.totals.types, test.totals.pieces, test.totals.shares...)
		if err != nil {
			t.Errorf("%s: %v", test.reason, err)
			continue
		}
		var types, pieces []int
		for i, row := range got {
			types, pieces = append(types, row.Types), append(pieces, row.Pieces)
			if row.Swatch != test.p[i] {
				t.Errorf("%s: row %d is for %v", test.reason, i, row.Swatch)
			}
		}
		if !cmp.Equal(types, test.types) || !cmp.Equal(pieces, test.pieces) {
			t.Errorf("%s: types %v, pieces %v, want %v, %v", test.reason, types, pieces, test.types, test.pieces)
		}
	}
	for _, test := range []struct {
		p      Palette
		totals totals
		want   string
	}{
		{Palette{}, totals{1, 1, nil}, `palette "": out of range: want 1 to 6 swatches, not 0`},
		{six[:5], totals{6, 6, nil}, `shares "0": out of range: want 5 shares, since there is no usual rule for so many colors`},
		{six, totals{6, 6, nil}, `shares "0": out of range: want 6 shares, since there is no usual rule for so many colors`},
		{two, totals{1, 1, []int{1}}, `shares "1": out of range: want 2 of them, one for each swatch`},
		{two, totals{1, 1, []int{1, 0}}, `/shares/1 "0": out of range: want 1 to 1000000`},
		{two, totals{1, 1, []int{1_000_001, 1}}, `/shares/0 "1000001": out of range: want 1 to 1000000`},
		{two, totals{-1, 1, nil}, `types "-1": out of range: want 0 to 1000000`},
		{two, totals{1_000_001, 1, nil}, `types "1000001": out of range: want 0 to 1000000`},
		{two, totals{3, 2, nil}, `pieces "2": out of range: want the 3 types to 1000000`},
		{two, totals{3, 1_000_001, nil}, `pieces "1000001": out of range: want the 3 types to 1000000`},
		{two, totals{0, -1, nil}, `pieces "-1": out of range: want the 0 types to 1000000`},
	} {
		got, err := test.p.Share(test.totals.types, test.totals.pieces, test.totals.shares...)
		checkError(t, err, units.ErrRange, "palette.Palette.Share: "+test.want)
		if got != nil {
			t.Errorf("%+v beside an error", got)
		}
	}
}

func TestShareProperties(t *testing.T) {
	r := Rules{maxSwatches, 1, 10}
	rapid.Check(t, func(t *rapid.T) {
		p := palettes(r).Draw(t, "p")
		var all totals
		all.shares = rapid.SliceOfN(rapid.IntRange(1, 100), len(p), len(p)).Draw(t, "shares")
		all.types = rapid.IntRange(0, 40).Draw(t, "types")
		all.pieces = all.types + rapid.IntRange(0, 400).Draw(t, "more pieces")
		got, err := p.Share(all.types, all.pieces, all.shares...)
		if err != nil {
			t.Fatal(err)
		}
		types, pieces := 0, 0
		for i, row := range got {
			types += row.Types
			pieces += row.Pieces
			if all.types >= len(p) && row.Types < 1 {
				t.Fatalf("color %d of %d has none of %d types", i, len(p), all.types)
			}
			if row.Pieces < row.Types || all.types > 0 && row.Types == 0 && row.Pieces > 0 {
				t.Fatalf("row %d has %d types and %d pieces", i, row.Types, row.Pieces)
			}
		}
		if types != all.types || pieces != all.pieces {
			t.Fatalf("%d types and %d pieces, want %d and %d", types, pieces, all.types, all.pieces)
		}
	})
}
