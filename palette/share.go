package palette

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"example.com/fircone/units"
)

// The limits of what is shared out.
const (
	maxTotal   = 1_000_000_000 // the total, each share and their sum
	maxClaims  = 1000          // the number of shares
	maxShared  = 1_000_000     // types, and pieces, of a palette
	maxPercent = 1_000_000     // each share of a swatch
)

// Apportion shares total things out in whole numbers, in the proportion of the
// shares, by largest remainders: first each gets its quota
//
//	quota = total · share / sum of the shares
//
// cut to whole things, then those left over go one each to the largest remainders,
// the earlier share first where two are equal. The counts add up to total, and each
// is within one of its quota.
//
// Where least is over 0, each share gets at least that many, a share of 0 too: a
// count that falls short is raised to it, and if that takes more than there is, things
// are taken back, one at a time, from the count that is most above (or least below)
// its quota and can spare one, the later first. Then a count may miss its quota by more.
//
// Total is 0 to 1,000,000,000, the shares are 1 to 1000 numbers from 0 that add up to
// 1 to 1,000,000,000, and least is 0 to total / number of shares; otherwise the
// result is an [units.Error] wrapping [units.ErrRange].
//
// A known paradox of this method, and no mistake here: as the total rises a count can
// fall. Ten over shares of 6, 6 and 2 go 4, 4, 2, and eleven go 5, 5, 1.
//
// Source: the method of Hamilton, as in COMAP, "For All Practical Purposes", 10th
// edition, chapter 14; the paradox in OpenStax, "Contemporary Mathematics", section 11.4.
func Apportion(total int, shares []int, least int) ([]int, error) {
	const fn = "Apportion"
	if total < 0 || total > maxTotal {
		return nil, rangeError(fn, "total", total, fmt.Sprint("0 to ", maxTotal))
	}
	if err := checkShares(fn, shares); err != nil {
		return nil, err
	}
	if least < 0 || least > total/len(shares) {
		return nil, rangeError(fn, "least", least, fmt.Sprint("0 to ", total/len(shares), ", for ", len(shares), " shares of ", total))
	}
	counts := make([]int, len(shares))
	for i := range counts {
		counts[i] = least
	}
	apportion(total, shares, counts)
	return counts, nil
}

func checkShares(fn string, shares []int) error {
	if len(shares) < 1 || len(shares) > maxClaims {
		return rangeError(fn, "number of shares", len(shares), fmt.Sprint("1 to ", maxClaims))
	}
	var sum int64
	for i, s := range shares {
		if s < 0 || s > maxTotal {
			return rangeError(fn, fmt.Sprintf("shares[%d]", i), s, fmt.Sprint("0 to ", maxTotal))
		}
		sum += int64(s)
	}
	if sum < 1 || sum > maxTotal {
		return &units.Error{Func: "palette." + fn, Field: "sum of the shares", Value: strconv.FormatInt(sum, 10), Want: fmt.Sprint("1 to ", maxTotal), Err: units.ErrRange}
	}
	return nil
}

// apportion shares total out over counts, which come in as the least of each and add
// up to no more than total. All products are below 1e18·2.
func apportion(total int, shares, counts []int) {
	var sum int64
	for _, s := range shares {
		sum += int64(s)
	}
	least := slices.Clone(counts)
	left := int64(total)
	// surplus[i]/sum is how far count i is above its quota.
	surplus := make([]int64, len(shares))
	for i, s := range shares {
		claim := int64(total) * int64(s)
		counts[i] = max(counts[i], int(claim/sum))
		surplus[i] = int64(counts[i])*sum - claim
		left -= int64(counts[i])
	}
	for ; left > 0; left-- {
		at := 0
		for i, s := range surplus {
			if s < surplus[at] {
				at = i
			}
		}
		counts[at]++
		surplus[at] += sum
	}
	// Where a count is above its least it is its quota cut, under one below the quota.
	// So those that can spare some give one each in turn, round after round.
	var givers []int
	for i := range counts {
		if counts[i] > least[i] {
			givers = append(givers, i)
		}
	}
	slices.SortFunc(givers, func(i, j int) int {
		return cmp.Or(cmp.Compare(surplus[j], surplus[i]), cmp.Compare(j, i))
	})
	for left < 0 {
		rounds := int(-left) / len(givers)
		for _, i := range givers {
			rounds = min(rounds, counts[i]-least[i])
		}
		if rounds == 0 { // the last one is for the first of them
			rounds, givers = 1, givers[:-left]
		}
		for _, i := range givers {
			counts[i] -= rounds
		}
		left += int64(rounds * len(givers))
		givers = slices.DeleteFunc(givers, func(i int) bool { return counts[i] == least[i] })
	}
}

// DefaultShares returns the shares in percent, the leading color first, of a palette
// of n colors:
//
//	1   100
//	2    60  40
//	3    60  30  10
//	4    40  30  20  10
//
// For more there is no usual rule, and for less than one nothing to share: the result
// is an [units.Error] wrapping [units.ErrRange].
//
// Source: 60/30/10 and 40/30/20/10 are common practice, from memory; 60/40 was chosen here.
func DefaultShares(n int) ([]int, error) {
	switch n {
	case 1:
		return []int{100}, nil
	case 2:
		return []int{60, 40}, nil
	case 3:
		return []int{60, 30, 10}, nil
	case 4:
		return []int{40, 30, 20, 10}, nil
	}
	return nil, rangeError("DefaultShares", "n", n, "1 to 4; give the shares for more")
}

// Totals are what [Palette.Share] shares out.
type Totals struct {
	// Types is how many different ornaments there are, 0 to 1,000,000. With 0 only
	// the pieces are shared.
	Types int `json:"types"`

	// Pieces is how many ornaments (or picks, bows, …) there are in all, from Types
	// to 1,000,000.
	Pieces int `json:"pieces"`

	// Shares are the weights of the swatches, each 1 to 1,000,000, as many as there are
	// swatches. Nil is DefaultShares.
	Shares []int `json:"shares"`
}

// A Sharing is types and pieces shared out over a palette.
type Sharing struct {
	Rows   []Row `json:"rows"`   // one for each swatch, in the order of the palette
	Types  int   `json:"types"`  // the types in all
	Pieces int   `json:"pieces"` // the pieces in all
}

// A Row is what one swatch gets.
type Row struct {
	Swatch Swatch `json:"swatch"` // the color
	Share  int    `json:"share"`  // its weight
	Types  int    `json:"types"`  // of so many types
	Pieces int    `json:"pieces"` // so many pieces in all
}

// Share shares types and pieces out over the swatches of p.
//
// The types go by largest remainder, see [Apportion], and every color gets at least
// one where there are as many types as colors. Then the pieces go the same way over
// the colors that have a type, each color getting at least one piece for each of its
// types. Without types every color gets at least one piece where there are enough.
//
// So the pieces follow the shares and not the types: 49 pieces of 7 types over four
// colors are 19, 15, 10 and 5, and the one type of the third color has 10, where one of the
// first has 6 or 7; see [Row.Each]. Whoever wants every type alike shares the types
// and takes as many pieces of each, 7 · [Row].Types for 7 of each, or shares a given number of
// pieces out by them, with [Apportion].
//
// The types of the rows add up to t.Types and the pieces to t.Pieces. Each count is
// within one of its quota, unless the least that a color gets forbids it.
//
// It returns an [units.Error] wrapping [units.ErrRange] if p has no swatches, a total or share is
// out of its range, or p has over four swatches and t no shares.
func (p Palette) Share(t Totals) (Sharing, error) {
	const fn = "Palette.Share"
	if p.n == 0 {
		return Sharing{}, &units.Error{Func: "palette." + fn, Field: "palette", Value: "", Want: "at least one swatch", Err: units.ErrRange}
	}
	shares := t.Shares
	if shares == nil {
		if p.n > 4 {
			return Sharing{}, rangeError(fn, "Totals.Shares", 0, fmt.Sprint(p.n, " shares, since there is no usual rule for so many colors"))
		}
		shares, _ = DefaultShares(p.n)
	}
	if len(shares) != p.n {
		return Sharing{}, rangeError(fn, "number of Totals.Shares", len(shares), fmt.Sprint(p.n, ", one for each swatch"))
	}
	for i, s := range shares {
		if s < 1 || s > maxPercent {
			return Sharing{}, rangeError(fn, fmt.Sprintf("Totals.Shares[%d]", i), s, fmt.Sprint("1 to ", maxPercent))
		}
	}
	if t.Types < 0 || t.Types > maxShared {
		return Sharing{}, rangeError(fn, "Totals.Types", t.Types, fmt.Sprint("0 to ", maxShared))
	}
	if t.Pieces < t.Types || t.Pieces > maxShared {
		return Sharing{}, rangeError(fn, "Totals.Pieces", t.Pieces, fmt.Sprint("the ", t.Types, " types to ", maxShared))
	}

	types := make([]int, p.n)
	one := func(counts []int, total int) {
		for i := range counts {
			if total >= p.n {
				counts[i] = 1
			}
		}
	}
	one(types, t.Types)
	apportion(t.Types, shares, types)

	pieces := slices.Clone(types)
	weights := slices.Clone(shares)
	if t.Types == 0 {
		one(pieces, t.Pieces)
	} else {
		for i := range weights {
			if types[i] == 0 {
				weights[i] = 0
			}
		}
	}
	apportion(t.Pieces, weights, pieces)

	result := Sharing{Rows: make([]Row, p.n), Types: t.Types, Pieces: t.Pieces}
	for i := range result.Rows {
		result.Rows[i] = Row{p.swatch[i], shares[i], types[i], pieces[i]}
	}
	return result, nil
}

// Each returns how many pieces there are of each type of the row, as evenly as can
// be, the larger counts first. It is empty where the row has no types, and where it
// has more than [Palette.Share] shares out, 1,000,000.
func (r Row) Each() []int {
	if r.Types < 1 || r.Types > maxShared {
		return nil
	}
	each := make([]int, r.Types)
	for i := range each {
		each[i] = r.Pieces / r.Types
		if i < r.Pieces%r.Types {
			each[i]++
		}
	}
	return each
}

// String returns a table of s:
//
//	color        share  types  pieces
//	crimson         40      3      33
//	forestgreen     30      3      24
//	gold:metal      20      2      16
//	ivory           10      1       8
//	total          100      9      81
func (s Sharing) String() string {
	var t table
	t.row("color", "share", "types", "pieces")
	sum := 0
	for _, r := range s.Rows {
		t.row(r.Swatch.String(), strconv.Itoa(r.Share), strconv.Itoa(r.Types), strconv.Itoa(r.Pieces))
		sum += r.Share
	}
	t.row("total", strconv.Itoa(sum), strconv.Itoa(s.Types), strconv.Itoa(s.Pieces))
	return t.String()
}
