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

// A Palette is the colors that a tree or a mantel is dressed in, the leading one first.
// [Rules.Palette] and [Rules.ParsePalette] make one of colors that stand apart. The functions that
// take a palette check its names, its finishes and the number of colors; how far apart the colors are is what
// [Rules.Read] measures. An empty palette is none, and is refused where one is needed.
type Palette []Swatch

// Rules are the house rules for a palette. [CommonPractice] returns the usual ones;
// a shop with habits of its own changes a field. The methods check all three.
type Rules struct {
	// Limit is the most swatches in a palette, metals counted, 1 to 6.
	Limit int `json:"limit"`

	// Apart is the difference ΔE00 from which two colors read as two, 0 to 100: less
	// than this is taken for one color. Equal colors are one color even at 0.
	Apart float64 `json:"apart"`

	// Fit is the greatest difference ΔE00, 0 to 100, at which a piece still passes
	// for the swatch it is nearest to; see Rules.Sort.
	Fit float64 `json:"fit"`
}

// CommonPractice returns the usual rules:
//
//	at most 4 colors, metals counted
//	a difference ΔE00 of 10 or more reads as another color
//	a piece fits where it is within 8 of a swatch
//
// Source: the four are common practice, with no published standard;
// that 10 reads as another color is a rule of thumb from memory. The 8 was chosen here: at 10 a
// dusty pink, #cd5c5c, passes for crimson. A shop that is strict about its reds sets Fit to 5.
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

// Palette returns the palette of the given swatches, the leading color first. It
// returns
// //
//   - [units.ErrRange] for no swatch or more than r.Limit, or a rule out of its range,
//   - [units.ErrSyntax] for a name that [Swatch] does not allow,
//   - [units.ErrName] for a finish that is none,
//   - [units.ErrDuplicate] for two swatches of one name, upper and lower case being one,
//   - [units.ErrFit] for two swatches that by daylight are less than r.Apart apart; it
//     names them and the difference, cut to two decimals.
//
// The first thing wrong is reported, in the order of the swatches; of two swatches that
// do not go together, at the later.
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

// ParsePalette reads swatches separated by commas, each as [ParseSwatch] reads it,
// the leading color first:
//
//	crimson,forestgreen,gold:metal,ivory
//
// At most 1024 bytes are read. It returns an [units.Error] as [ParseSwatch] and
// [Rules.Palette] do. For every palette p that r allows, r.ParsePalette(p.String()) is p.
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

// String returns p in the form that [Rules.ParsePalette] reads, and "" for the zero value.
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

// MarshalText returns p.String(). It never fails.
func (p Palette) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// UnmarshalText reads any palette that some rules allow, of one to six different colors, and the empty
// text as the zero value, so that whatever was written can be read. Whether a palette keeps to the rules of
// a house says [Rules.Palette] of its swatches. On an error, that of [Rules.ParsePalette], p is left as it was.
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
