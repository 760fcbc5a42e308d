package palette

import (
	"sort"
	"strings"

	"example.com/fircone/internal/spelling"
	"example.com/fircone/units"
)

// maxColorText is the longest color, finish or other word that is read, in bytes.
const maxColorText = 64

// A Color is red, green and blue as sRGB encodes them (IEC 61966-2-1), 0 to 255 each: how a thing looks
// by daylight. The zero value is black.
type Color [3]uint8

// ParseColor reads a color of up to 64 bytes:
//
//	#rrggbb       six hexadecimal digits, with or without the #
//	#rgb          three, each doubled: #d2f is #dd22ff
//	forestgreen   a color name of CSS
//	burgundy      an everyday name; see the package doc
//
// Grey is gray. CSS comes first where both have a name. The error for an
// unknown name lists up to three similar ones.
//
// Source: CSS Color Module Level 4, sections 5.2 and 6.1; NBS Special Publication 440.
func ParseColor(text string) (Color, error) { return parseColor("ParseColor", text, 0) }

// parseColor is ParseColor for fn. Names of metals come first where the finish is metal.
func parseColor(fn, text string, finish Finish) (Color, error) {
	const want = "#rrggbb, #rgb or a color name"
	var key string
	if len(text) <= maxColorText {
		key = fold(text)
	}
	if key == "" {
		return Color{}, refuse(fn, "text", text, want+" of 1 to 64 bytes", units.ErrSyntax)
	}
	if finish&Metal != 0 {
		for i := range metals {
			if metals[i].name == key {
				return metals[i].color, nil
			}
		}
	}
	if i := sort.Search(len(cssColors), func(i int) bool { return cssColors[i].name >= key }); i < len(cssColors) && cssColors[i].name == key {
		return cssColors[i].color, nil
	}
	if i := sort.Search(len(everyday), func(i int) bool { return everyday[i].name >= key }); i < len(everyday) && everyday[i].name == key {
		return everyday[i].color, nil
	}
	digits, hash := strings.CutPrefix(key, "#")
	if c, ok := parseHex(digits); ok {
		return c, nil
	}
	if hash {
		return Color{}, refuse(fn, "text", text, want, units.ErrSyntax)
	}
	return Color{}, refuse(fn, "text", text, want+didYouMean(key), units.ErrName)
}

// fold returns a color name as the tables have it: lower case, without spaces and hyphens.
func fold(text string) string {
	text = strings.NewReplacer(" ", "", "\t", "", "-", "").Replace(strings.ToLower(strings.TrimSpace(text)))
	if word, ok := strings.CutSuffix(text, "grey"); ok {
		return word + "gray"
	}
	return text
}

// parseHex reads three or six hexadecimal digits.
func parseHex(text string) (Color, bool) {
	var digits [6]uint8
	if len(text) != 3 && len(text) != 6 {
		return Color{}, false
	}
	for i := range len(text) {
		d, ok := hexDigit(text[i])
		if !ok {
			return Color{}, false
		}
		digits[i] = d
	}
	if len(text) == 3 {
		return Color{17 * digits[0], 17 * digits[1], 17 * digits[2]}, true
	}
	return Color{digits[0]<<4 | digits[1], digits[2]<<4 | digits[3], digits[4]<<4 | digits[5]}, true
}

// maxMeant is the most names that an error proposes.
const maxMeant = 3

// didYouMean returns "; did you mean …?" with the names that are fewest letters, at
// most a third of them, from an unknown one, or "".
func didYouMean(key string) string {
	var names [maxMeant]string
	var letters [maxMeant]int
	n := 0
	offer := func(name string) {
		d := spelling.Distance(key, name)
		if 3*d > max(len(key), 3) {
			return
		}
		at := n
		for at > 0 && letters[at-1] > d {
			at--
		}
		if at == maxMeant {
			return
		}
		n = min(n+1, maxMeant)
		copy(names[at+1:], names[at:])
		copy(letters[at+1:], letters[at:])
		names[at], letters[at] = name, d
	}
	for i := range cssColors {
		if !strings.HasSuffix(cssColors[i].name, "grey") {
			offer(cssColors[i].name)
		}
	}
	for i := range everyday {
		offer(everyday[i].name)
	}
	if n == 0 {
		return ""
	}
	return "; did you mean " + strings.Join(names[:n], " or ") + "?"
}

func hexDigit(c byte) (d uint8, ok bool) {
	switch {
	case '0' <= c && c <= '9':
		return c - '0', true
	case 'a' <= c && c <= 'f':
		return c - 'a' + 10, true
	}
	return 0, false
}

// String returns c as #rrggbb in lower case.
func (c Color) String() string {
	const hex = "0123456789abcdef"
	return string([]byte{
		'#',
		hex[c[0]>>4], hex[c[0]&15],
		hex[c[1]>>4], hex[c[1]&15],
		hex[c[2]>>4], hex[c[2]&15],
	})
}

// Name returns the name of exactly this color, preferably CSS, without spaces, or "" if none.
func (c Color) Name() string {
	for i := range cssColors {
		if cssColors[i].color == c {
			return cssColors[i].name
		}
	}
	for i := range everyday {
		if everyday[i].color == c {
			return everyday[i].name
		}
	}
	return ""
}

// MarshalText returns the text of String.
func (c Color) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText is [ParseColor]. On an error *c is unchanged.
func (c *Color) UnmarshalText(text []byte) error {
	parsed, err := parseColor("Color.UnmarshalText", string(text), 0)
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
	return Color{mix(c[0]), mix(c[1]), mix(c[2])}
}

func (c Color) shade(t int) Color {
	mix := func(v uint8) uint8 { return uint8(int(v) - (int(v)*t+127)/255) }
	return Color{mix(c[0]), mix(c[1]), mix(c[2])}
}
