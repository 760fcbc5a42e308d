package palette

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// maxSwatches is the most swatches that a palette has room for, whatever the rules.
const maxSwatches = 6

// A Palette is the colors of a tree or mantel, the leading one first. [Rules.Palette]
// and [Rules.ParsePalette] make one whose colors stand apart. A function that takes a palette
// checks names, finishes and the number of swatches; [Rules.Read] measures how far apart they are.
type Palette []Swatch

// Rules are the rules of a house for its palettes.
type Rules struct {
	Limit int     `json:"limit"` // the most swatches in a palette, metals counted, 1 to 6
	Apart float64 `json:"apart"` // the least difference ΔE00 of two colors, 0 to 100; equal colors are one even at 0
	Fit   float64 `json:"fit"`   // the greatest difference ΔE00 of a piece from its swatch, 0 to 100
}

// CommonPractice returns Rules{Limit: 4, Apart: 10, Fit: 8}.
//
// Source: the four are common practice, the 10 from memory. The 8 was chosen here: at 10,
// indianred (#cd5c5c) passes for crimson. A shop that is strict about its reds sets Fit to 5.
func CommonPractice() Rules { return Rules{Limit: 4, Apart: 10, Fit: 8} }

// check reports a rule outside its range, where the rules stand at a place.
func (r Rules) check(fn, at string) error {
	if r.Limit < 1 || r.Limit > maxSwatches {
		return rangeError(fn, at+"/limit", r.Limit, fmt.Sprint("1 to ", maxSwatches))
	}
	if !(0 <= r.Apart && r.Apart <= 100) {
		return refuse(fn, at+"/apart", formatFloat(r.Apart), "0 to 100", units.ErrRange)
	}
	if !(0 <= r.Fit && r.Fit <= 100) {
		return refuse(fn, at+"/fit", formatFloat(r.Fit), "0 to 100", units.ErrRange)
	}
	return nil
}

// checkPalette reports a rule outside its range, or a palette with too few or too
// many swatches for the rules.
func (r Rules) checkPalette(fn, at string, p Palette) error {
	if err := r.check(fn, at); err != nil {
		return err
	}
	return p.check(fn, r.Limit)
}

// check reports a palette with too few or too many swatches, or one that is no palette. In JSON a palette is a
// text, so that every fault in it is one of the whole.
func (p Palette) check(fn string, limit int) error {
	if len(p) < 1 || len(p) > limit {
		return refuse(fn, "palette", p.String(), fmt.Sprintf("1 to %d swatches, not %d", limit, len(p)), units.ErrRange)
	}
	for i, s := range p {
		if err := s.check(fn, "palette", "palette"); err != nil {
			return err
		}
		if p[:i].names(s.Name) {
			return refuse(fn, "palette", s.Name, "a name of its own for each", units.ErrDuplicate)
		}
	}
	return nil
}

// apart says whether two colors that differ by d read as two.
func (r Rules) apart(d float64) bool { return d >= r.Apart && d > 0 }

// Palette returns the palette of the given swatches, the leading color first. It returns
// [units.ErrDuplicate] for a repeated name, ignoring case, and [units.ErrFit] for colors
// under r.Apart apart by daylight, with their difference rounded down to two decimals.
func (r Rules) Palette(swatches ...Swatch) (Palette, error) {
	return r.palette("Rules.Palette", swatches, func(i int, member string) string {
		return "/swatches/" + strconv.Itoa(i) + "/" + member
	})
}

// inText is the field of every error about a palette that is read from one text.
func inText(int, string) string { return "text" }

// palette is Palette for fn, where field names the place of a member of a swatch.
func (r Rules) palette(fn string, swatches []Swatch, field func(i int, member string) string) (Palette, error) {
	if err := r.check(fn, ""); err != nil {
		return nil, err
	}
	if n := len(swatches); n < 1 || n > r.Limit {
		names := make([]string, 0, n)
		for _, s := range swatches {
			names = append(names, s.Name)
		}
		at := "swatches"
		if field(0, "") == "text" {
			at = "text"
		}
		return nil, refuse(fn, at, strings.Join(names, ", "), fmt.Sprintf("1 to %d of them, not %d", r.Limit, n), units.ErrRange)
	}
	for i, s := range swatches {
		if err := s.check(fn, field(i, "name"), field(i, "finish")); err != nil {
			return nil, err
		}
		for _, t := range swatches[:i] {
			both := t.Name + " and " + s.Name
			if strings.EqualFold(s.Name, t.Name) {
				return nil, refuse(fn, field(i, "name"), both, "a name of its own for each", units.ErrDuplicate)
			}
			if d := t.Color.Difference(s.Color); !r.apart(d) {
				return nil, refuse(fn, field(i, "color"), both+", "+cut(d, 2)+" apart", "at least "+formatFloat(r.Apart)+" apart", units.ErrFit)
			}
		}
	}
	return slices.Clone(swatches), nil
}

// ParsePalette reads a palette of up to 1024 bytes, swatches as [ParseSwatch] reads them:
//
//	crimson,forestgreen,gold:metal,ivory
//
// Its errors are those of [ParseSwatch] and [Rules.Palette].
func (r Rules) ParsePalette(text string) (Palette, error) {
	return r.parsePalette("Rules.ParsePalette", text)
}

func (r Rules) parsePalette(fn, text string) (Palette, error) {
	if len(text) > maxPaletteText {
		return nil, refuse(fn, "text", text, "at most 1024 bytes", units.ErrSyntax)
	}
	var swatches []Swatch
	for part := range strings.SplitSeq(text, ",") {
		s, err := parseSwatch(fn, part)
		if err != nil {
			return nil, err
		}
		swatches = append(swatches, s)
	}
	return r.palette(fn, swatches, inText)
}

// String returns p as [Rules.ParsePalette] reads it, "" for none.
func (p Palette) String() string {
	var b strings.Builder
	for i, s := range p {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(s.String())
	}
	return b.String()
}

// MarshalText returns the text of String.
func (p Palette) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// UnmarshalText reads any palette that some rules allow: one to six different colors, or "".
func (p *Palette) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*p = nil
		return nil
	}
	parsed, err := Rules{Limit: maxSwatches}.parsePalette("Palette.UnmarshalText", string(text))
	if err != nil {
		return err
	}
	*p = parsed
	return nil
}
