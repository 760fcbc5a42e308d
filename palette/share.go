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

// Apportion divides total among up to 1000 shares by largest remainders; total and the
// shares' sum up to 1,000,000,000. Each share gets its quota
//
//	quota = total · share / sum of the shares
//
// cut to whole things, and the rest go one each to the largest remainders, earlier ones first
// in ties. With least 0, each is within one of quota.
//
// No count is under least, which is at most total/shares. If raising counts exceeds total,
// things are taken back one at a time from the count over least that is most above its quota,
// the later in a tie.
//
// A known paradox: as the total rises a count can fall. Ten over 6, 6 and 2 go 4, 4, 2, and
// eleven go 5, 5, 1.
//
// Source: the method of Hamilton, as in COMAP, "For All Practical Purposes", 10th edition, chapter 14;
// the paradox in OpenStax, "Contemporary Mathematics", section 11.4.
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

// A Sharing is types and pieces shared out over a palette: a row for each swatch.
type Sharing []Row

// A Row is what one swatch gets.
type Row struct {
	Swatch Swatch `json:"swatch"` // the color
	Share  int    `json:"share"`  // its weight
	Types  int    `json:"types"`  // how many types
	Pieces int    `json:"pieces"` // how many pieces in all
}

// Share divides types and pieces, each 0 to 1,000,000 and no fewer pieces than types, among the
// swatches of p by [Apportion]. Pass one share of 1 to 1,000,000 for each swatch, or none for the
// usual, for up to four colors:
//
//	1   100
//	2    60  40
//	3    60  30  10
//	4    40  30  20  10
//
// Every color gets at least one type where there are as many types as colors. The pieces go in the
// same shares to the colors that have a type, at least one for each type; with no types, to all.
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

// Finishes shares a row out in equal parts over the finishes of its swatch, in the order of the
// constants. Matte, shiny and glitter in equal parts are common practice.
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

// String returns the table of the worked example above.
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
