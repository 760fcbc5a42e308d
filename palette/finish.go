package palette

import (
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// A Finish is how the surface of a piece takes the light. It is for the record and
// the shopping list: the comparisons here go by color alone, since a color that is
// shiny in one place and matte in another is still one color of the palette. A metal
// is a color like the rest and counts among the four. The zero value is Matte.
type Finish uint8

// The finishes.
const (
	Matte     Finish = iota // scatters light evenly: velvet, paper, frosted glass
	Shiny                   // mirrors the lights in small spots: lacquer, satin ribbon
	Glittered               // strewn with small mirrors
	Clear                   // lets light through: glass, crystal, acrylic
	Metal                   // gold, silver, copper and what is made to look so
)

var finishNames = [...]string{"matte", "shiny", "glittered", "clear", "metal"}

// ParseFinish reads matte, shiny, glittered, clear or metal. Upper case is read as
// lower case, and space around the word is passed over. It returns an [units.Error] wrapping
// [units.ErrName] for anything else.
func ParseFinish(text string) (Finish, error) { return parseFinish("ParseFinish", text) }

func parseFinish(fn, text string) (Finish, error) {
	i, err := parseWord(fn, text, finishNames[:])
	return Finish(i), err
}

// parseWord returns which of the words the text is, by the rules of [ParseFinish].
func parseWord(fn, text string, words []string) (int, error) {
	if len(text) <= maxColorText {
		if i := slices.Index(words, strings.ToLower(strings.TrimSpace(text))); i >= 0 {
			return i, nil
		}
	}
	return 0, refuse(fn, "text", text, oneOf(words), units.ErrName)
}

// oneOf lists words to choose from: "matte, shiny or clear".
func oneOf(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// String returns the name of f: matte, shiny, glittered, clear or metal.
func (f Finish) String() string {
	if int(f) < len(finishNames) {
		return finishNames[f]
	}
	return "Finish(" + strconv.Itoa(int(f)) + ")"
}

// MarshalText returns f.String(), or an [units.Error] wrapping [units.ErrName] if f is not one
// of the finishes above.
func (f Finish) MarshalText() ([]byte, error) {
	if int(f) >= len(finishNames) {
		return nil, refuse("Finish.MarshalText", "finish", f.String(), oneOf(finishNames[:]), units.ErrName)
	}
	return []byte(f.String()), nil
}

// UnmarshalText reads what [ParseFinish] reads. On an error f is left as it was.
func (f *Finish) UnmarshalText(text []byte) error {
	parsed, err := parseFinish("Finish.UnmarshalText", string(text))
	if err != nil {
		return err
	}
	*f = parsed
	return nil
}
