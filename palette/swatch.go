package palette

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/fircone/units"
)

// The longest texts that are read, in bytes.
const (
	maxName        = 40
	maxSwatchText  = 128
	maxPaletteText = 1024
)

// A Swatch is one color of a palette.
type Swatch struct {
	// Name is 1 to 40 bytes of printable text without commas, colons or equals signs, or spaces at either end.
	Name string `json:"name"`

	Color  Color  `json:"color"`           // how it looks by daylight
	Finish Finish `json:"finish,omitzero"` // how it takes the light
}

// ParseSwatch reads a swatch of up to 128 bytes in the form
//
//	[name=]color[:finish]
//
// Without a name, the color as written is the name. With the finish metal, metal names take
// precedence:
//
//	crimson                     crimson, the finish unknown
//	gold:metal                  gold as metal looks, #d4af37
//	barn red=#7c0a02:shiny      barn red, shiny
//	ruby:matte+shiny+glitter    ruby in three finishes
func ParseSwatch(text string) (Swatch, error) { return parseSwatch("ParseSwatch", text) }

func parseSwatch(fn, text string) (Swatch, error) {
	if len(text) > maxSwatchText {
		return Swatch{}, refuse(fn, "text", text, "[name=]color[:finish] of at most 128 bytes", units.ErrSyntax)
	}
	rest, finish, _ := strings.Cut(text, ":")
	name, color, hasName := strings.Cut(rest, "=")
	name, color, finish = strings.TrimSpace(name), strings.TrimSpace(color), strings.TrimSpace(finish)
	if !hasName {
		color = name
	}
	var s Swatch
	var err error
	if s.Finish, err = parseFinish(fn, finish); err != nil {
		return Swatch{}, err
	}
	if s.Color, err = parseColor(fn, color, s.Finish); err != nil {
		return Swatch{}, err
	}
	s.Name = name
	if err := s.check(fn, "text", "text"); err != nil {
		return Swatch{}, err
	}
	return s, nil
}

// check reports what is wrong with the name or the finish of s, as the fields given.
func (s Swatch) check(fn, name, finish string) error {
	ok := 0 < len(s.Name) && len(s.Name) <= maxName && utf8.ValidString(s.Name) &&
		!strings.ContainsAny(s.Name, ",:=") && strings.TrimSpace(s.Name) == s.Name
	for _, r := range s.Name {
		ok = ok && unicode.IsPrint(r)
	}
	if !ok {
		return refuse(fn, name, s.Name, "1 to 40 bytes of printable text without , : = and spaces at the ends", units.ErrSyntax)
	}
	return s.Finish.check(fn, finish)
}

// String returns s as [ParseSwatch] reads it, in its shortest form. The zero value is
// "".
func (s Swatch) String() string {
	if s == (Swatch{}) {
		return ""
	}
	text := s.Name
	if c, err := parseColor("", s.Name, s.Finish); err != nil || c != s.Color {
		text += "=" + s.Color.String()
	}
	if s.Finish != 0 {
		text += ":" + s.Finish.String()
	}
	return text
}
