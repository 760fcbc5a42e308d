package palette

import (
	"fmt"
	"slices"
	"strconv"

	"example.com/fircone/internal/apportion"
	"example.com/fircone/units"
)

// The limits of what is shared out.
const (
	maxTotal   = apportion.MaxTotal // the total, each share and their sum
	maxClaims  = 1000               // the number of shares
	maxShared  = 1_000_000          // types, and pieces, of a palette
	maxPercent = 1_000_000          // each share of a swatch
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
// are taken back, one at a time, from the count that is most above its quota and can
// spare one, the later first. Then a count may miss its quota by more.
//
// It returns [units.ErrRange] unless total is 0 to 1,000,000,000, the shares are 1 to 1000 numbers
// from 0 that add up to 1 to 1,000,000,000, and least is 0 to total / number of shares.
//
// A known paradox of this method: as the total rises a count can
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
	return apportion.Counts(total, shares, slices.Repeat([]int{least}, len(shares))), nil
}

func checkShares(fn string, shares []int) error {
	if len(shares) < 1 || len(shares) > maxClaims {
		return rangeError(fn, "shares", len(shares), fmt.Sprint("1 to ", maxClaims, " of them"))
	}
	var sum int64
	for i, s := range shares {
		if s < 0 || s > maxTotal {
			return rangeError(fn, fmt.Sprintf("/shares/%d", i), s, fmt.Sprint("0 to ", maxTotal))
		}
		sum += int64(s)
	}
	if sum < 1 || sum > maxTotal {
		return refuse(fn, "shares", strconv.FormatInt(sum, 10), fmt.Sprint("a sum of 1 to ", maxTotal), units.ErrRange)
	}
	return nil
}

// usualShares are the shares of the usual palettes, in percent, by the number of colors; see [Palette.Share].
var usualShares = [...][]int{1: {100}, 2: {60, 40}, 3: {60, 30, 10}, 4: {40, 30, 20, 10}}

// A Sharing is types and pieces shared out over a palette: a row for each swatch, in
// the order of the palette.
type Sharing []Row

// A Row is what one swatch gets.
type Row struct {
	Swatch Swatch `json:"swatch"` // the color
	Share  int    `json:"share"`  // its weight
	Types  int    `json:"types"`  // of so many types
	Pieces int    `json:"pieces"` // so many pieces in all
}

// Share shares types and pieces out over the swatches of p. The usual shares in percent,
// the leading color first, are
//
//	1   100
//	2    60  40
//	3    60  30  10
//	4    40  30  20  10
//
// The types go by largest remainder, see [Apportion], and every color gets at least
// one where there are as many types as colors. Then the pieces go the same way over
// the colors that have a type, each color getting at least one piece for each of its
// types. Without types every color gets at least one piece where there are enough.
//
// The pieces follow the shares and not the types: 49 pieces of 7 types over four
// colors are 19, 15, 10 and 5, and the one type of the third color has 10, where one of the
// first has 6 or 7: [Apportion] with equal shares. To have every type alike, share the types
// and take as many pieces of each.
//
// The rows add up to the totals. Each count is within one of its quota, unless the least that
// a color gets forbids it.
//
// It returns [units.ErrRange] if p has no swatches, a total or share is
// out of its range, or p has over four swatches and totals no shares.
//
// Source: 60/30/10 and 40/30/20/10 are common practice, from memory; 60/40 was chosen here.
func (p Palette) Share(types, pieces int, shares ...int) (Sharing, error) {
	const fn = "Palette.Share"
	if err := p.check(fn, maxSwatches); err != nil {
		return nil, err
	}
	if len(shares) == 0 {
		if len(p) >= len(usualShares) {
			return nil, rangeError(fn, "shares", 0, fmt.Sprint(len(p), " shares, since there is no usual rule for so many colors"))
		}
		shares = usualShares[len(p)]
	}
	if len(shares) != len(p) {
		return nil, rangeError(fn, "shares", len(shares), fmt.Sprint(len(p), " of them, one for each swatch"))
	}
	for i, s := range shares {
		if s < 1 || s > maxPercent {
			return nil, rangeError(fn, fmt.Sprintf("/shares/%d", i), s, fmt.Sprint("1 to ", maxPercent))
		}
	}
	if types < 0 || types > maxShared {
		return nil, rangeError(fn, "types", types, fmt.Sprint("0 to ", maxShared))
	}
	if pieces < types || pieces > maxShared {
		return nil, rangeError(fn, "pieces", pieces, fmt.Sprint("the ", types, " types to ", maxShared))
	}
	ofTypes, ofPieces := deal(types, pieces, shares)
	rows := make(Sharing, len(p))
	for i := range rows {
		rows[i] = Row{p[i], shares[i], ofTypes[i], ofPieces[i]}
	}
	return rows, nil
}

// deal shares types and pieces out by the rules of [Palette.Share].
func deal(types, pieces int, shares []int) (ofTypes, ofPieces []int) {
	least := func(total int) []int {
		if total >= len(shares) {
			return slices.Repeat([]int{1}, len(shares))
		}
		return make([]int, len(shares))
	}
	ofTypes = apportion.Counts(types, shares, least(types))
	if types == 0 {
		return ofTypes, apportion.Counts(pieces, shares, least(pieces))
	}
	weights := slices.Clone(shares)
	for i := range weights {
		if ofTypes[i] == 0 {
			weights[i] = 0
		}
	}
	return ofTypes, apportion.Counts(pieces, weights, ofTypes)
}

// Finishes returns what each finish of the row's swatch gets, a row for each, in the order
// matte, shiny, glitter, clear, metal and natural: the share, the types and the pieces in equal
// parts by largest remainder, the earlier finish first, and at least a piece for each type, as
// [Palette.Share] has it. The rows add up to r. It is empty where a number of r is not from 0 to
// 1,000,000.
//
// Equal parts in matte, shiny and glitter are the usual assortment: common practice.
func (r Row) Finishes() []Row {
	for _, n := range [...]int{r.Share, r.Types, r.Pieces} {
		if n < 0 || n > maxShared {
			return nil
		}
	}
	if r.Pieces < r.Types {
		return nil
	}
	list := r.Swatch.Finish.each()
	equal := slices.Repeat([]int{1}, len(list))
	shares := apportion.Counts(r.Share, equal, make([]int, len(list)))
	types, pieces := deal(r.Types, r.Pieces, equal)
	rows := make([]Row, len(list))
	for i, f := range list {
		rows[i] = Row{Swatch{r.Swatch.Name, r.Swatch.Color, f}, shares[i], types[i], pieces[i]}
	}
	return rows
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
	var sum Row
	for _, r := range s {
		t.row(r.Swatch.String(), strconv.Itoa(r.Share), strconv.Itoa(r.Types), strconv.Itoa(r.Pieces))
		sum.Share += r.Share
		sum.Types += r.Types
		sum.Pieces += r.Pieces
	}
	t.row("total", strconv.Itoa(sum.Share), strconv.Itoa(sum.Types), strconv.Itoa(sum.Pieces))
	return t.String()
}
