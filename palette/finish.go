package palette

import "strconv"

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

// ParseFinish reads matte, shiny, glittered, clear or metal, in lower case. It
// returns an [Error] wrapping [ErrName] for anything else.
func ParseFinish(text string) (Finish, error) { return parseFinish("ParseFinish", text) }

func parseFinish(fn, text string) (Finish, error) {
	for i, name := range finishNames {
		if text == name {
			return Finish(i), nil
		}
	}
	return 0, &Error{Func: fn, Field: "finish", Value: clip(text), Want: "matte, shiny, glittered, clear or metal", Err: ErrName}
}

// String returns the name of f: matte, shiny, glittered, clear or metal.
func (f Finish) String() string {
	if int(f) < len(finishNames) {
		return finishNames[f]
	}
	return "Finish(" + strconv.Itoa(int(f)) + ")"
}

// MarshalText returns f.String(), or an [Error] wrapping [ErrRange] if f is not one
// of the finishes above.
func (f Finish) MarshalText() ([]byte, error) {
	if int(f) >= len(finishNames) {
		return nil, rangeError("Finish.MarshalText", "finish", int(f), "Matte to Metal")
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
