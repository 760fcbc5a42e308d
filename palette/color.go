package palette

import (
	"sort"
	"strings"

	"example.com/fircone/units"
)

// maxColorText is the longest color, finish or other word that is read, in bytes.
const maxColorText = 64

// A Color is an sRGB color of eight bits a channel, 0 to 255: how a thing looks by
// daylight, on a screen that keeps to the standard. Every value is a color, the
// zero value is black, and == is equality.
//
// Source: IEC 61966-2-1 (sRGB).
type Color struct {
	R, G, B uint8 // red, green and blue, encoded as sRGB has it
}

// ParseColor reads a color in one of these forms:
//
//	#rrggbb     six hexadecimal digits, upper or lower case
//	#rgb        three, each of them doubled: #d2f is #dd22ff
//	crimson     a color name of CSS, upper or lower case
//
// A name is written in one word: forestgreen, not forest green. Space around the text
// is passed over; other notations and texts over 64 bytes are refused.
// It returns an [units.Error] wrapping [units.ErrSyntax], or [units.ErrName] for an unknown name.
// ParseColor(c.String()) is c.
//
// Source: CSS Color Module Level 4, sections 5.2 (hexadecimal) and 6.1 (the 148 names).
func ParseColor(text string) (Color, error) { return parseColor("ParseColor", text) }

func parseColor(fn, text string) (Color, error) {
	const want = "#rrggbb, #rgb or a CSS color name"
	given := text
	if text = strings.TrimSpace(text); len(given) > maxColorText || text == "" {
		return Color{}, refuse(fn, "text", given, want+" of 1 to 64 bytes", units.ErrSyntax)
	}
	if text[0] != '#' {
		name := strings.ToLower(text)
		i := sort.Search(len(cssColors), func(i int) bool { return cssColors[i].name >= name })
		if i == len(cssColors) || cssColors[i].name != name {
			return Color{}, refuse(fn, "text", given, want, units.ErrName)
		}
		return cssColors[i].color, nil
	}
	var digits [6]uint8
	n := len(text) - 1
	for i := 0; i < n && i < len(digits); i++ {
		d, ok := hexDigit(text[1+i])
		if !ok {
			n = 0
			break
		}
		digits[i] = d
	}
	switch n {
	case 3:
		return Color{17 * digits[0], 17 * digits[1], 17 * digits[2]}, nil
	case 6:
		return Color{digits[0]<<4 | digits[1], digits[2]<<4 | digits[3], digits[4]<<4 | digits[5]}, nil
	}
	return Color{}, refuse(fn, "text", given, want, units.ErrSyntax)
}

func hexDigit(c byte) (d uint8, ok bool) {
	switch {
	case '0' <= c && c <= '9':
		return c - '0', true
	case 'a' <= c && c <= 'f':
		return c - 'a' + 10, true
	case 'A' <= c && c <= 'F':
		return c - 'A' + 10, true
	}
	return 0, false
}

// MustParseColor is [ParseColor] for constants: it panics where ParseColor returns an error.
func MustParseColor(text string) Color {
	c, err := ParseColor(text)
	if err != nil {
		panic(err)
	}
	return c
}

// String returns c as #rrggbb in lower case.
func (c Color) String() string {
	const hex = "0123456789abcdef"
	return string([]byte{
		'#',
		hex[c.R>>4], hex[c.R&15],
		hex[c.G>>4], hex[c.G&15],
		hex[c.B>>4], hex[c.B&15],
	})
}

// Name returns the CSS name of exactly this color, the first in the alphabet where
// there are two ("aqua" for #00ffff), and "" where there is none.
//
// Source: CSS Color Module Level 4, section 6.1.
func (c Color) Name() string {
	for i := range cssColors {
		if cssColors[i].color == c {
			return cssColors[i].name
		}
	}
	return ""
}

// MarshalText returns c.String(). It never fails.
func (c Color) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText reads what [ParseColor] reads. On an error c is left as it was.
func (c *Color) UnmarshalText(text []byte) error {
	parsed, err := parseColor("Color.UnmarshalText", string(text))
	if err != nil {
		return err
	}
	*c = parsed
	return nil
}

// tint returns c mixed with white, t of 255 parts of it; shade the same with black.
// Channels are rounded to the nearest.
func (c Color) tint(t int) Color {
	mix := func(v uint8) uint8 { return uint8(int(v) + ((255-int(v))*t+127)/255) }
	return Color{mix(c.R), mix(c.G), mix(c.B)}
}

func (c Color) shade(t int) Color {
	mix := func(v uint8) uint8 { return uint8(int(v) - (int(v)*t+127)/255) }
	return Color{mix(c.R), mix(c.G), mix(c.B)}
}
