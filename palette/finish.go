package palette

import (
	"slices"
	"strings"

	"example.com/fircone/units"
)

// A Finish is how a piece takes the light: one of the finishes below or several of them,
// Matte|Shiny|Glitter. The zero value is unknown.
type Finish uint8

// The finishes.
const (
	Matte   Finish = 1 << iota // velvet, paper, frosted glass
	Shiny                      // lacquer, satin ribbon
	Glitter                    // covered with small mirrors
	Clear                      // glass, crystal, acrylic
	Metal                      // gold, silver, copper, or what looks like them
	Natural                    // wood, pinecone, burlap, dried orange
)

// allFinishes is every finish at once.
const allFinishes = Matte | Shiny | Glitter | Clear | Metal | Natural

var finishNames = [...]string{"matte", "shiny", "glitter", "clear", "metal", "natural"}

// parseFinish reads matte, shiny, glitter, clear, metal or natural, or several of them with
// a + between, as in matte+shiny+glitter, and the empty text as the zero value. Upper case is read
// as lower case, and space around the words is passed over. It returns
// [units.ErrName] for anything else. ParseFinish(f.String()) is f.
func parseFinish(fn, text string) (Finish, error) {
	var f Finish
	if strings.TrimSpace(text) == "" && len(text) <= maxColorText {
		return f, nil
	}
	for word := range strings.SplitSeq(text, "+") {
		i := slices.Index(finishNames[:], strings.ToLower(strings.TrimSpace(word)))
		if i < 0 || len(text) > maxColorText {
			return 0, refuse(fn, "text", text, oneOf(finishNames[:])+", or several with + between", units.ErrName)
		}
		f |= 1 << i
	}
	return f, nil
}

// oneOf lists words to choose from: "matte, shiny or clear".
func oneOf(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// each returns the finishes of f one by one, or f itself if it has none.
func (f Finish) each() []Finish {
	var list []Finish
	for i := range finishNames {
		if f>>i&1 != 0 {
			list = append(list, 1<<i)
		}
	}
	if list == nil {
		return []Finish{f}
	}
	return list
}

// check reports bits that are no finish.
func (f Finish) check(fn, field string) error {
	if f > allFinishes {
		return refuse(fn, field, f.String(), oneOf(finishNames[:]), units.ErrName)
	}
	return nil
}

// String returns the names of the finishes of f, matte or matte+shiny, and "" for the zero value.
func (f Finish) String() string {
	if f > allFinishes {
		return "not a finish"
	}
	var names []string
	for i, name := range finishNames {
		if f>>i&1 != 0 {
			names = append(names, name)
		}
	}
	return strings.Join(names, "+")
}

// MarshalText returns the text of String.
func (f Finish) MarshalText() ([]byte, error) {
	if err := f.check("Finish.MarshalText", "finish"); err != nil {
		return nil, err
	}
	return []byte(f.String()), nil
}

// UnmarshalText reads what String returns; case and space around the words do not count.
func (f *Finish) UnmarshalText(text []byte) error {
	parsed, err := parseFinish("Finish.UnmarshalText", string(text))
	if err != nil {
		return err
	}
	*f = parsed
	return nil
}
