package shopping

import (
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// An Item is one thing to decorate with. Only Kind is required.
type Item struct {
	Kind  Kind         // what it is
	Type  string       // which sort of it: "star"
	Color string       // a color of the palette, by its name there: "crimson"
	Size  units.Length // across one piece; 0 if not stated
}

// maxSize is the largest item: across a piece, or along one.
const maxSize = 100 * units.Foot

// String returns the text form of i: the color, the kind, the type and the size, as
// in
//
//	picks
//	crimson ornaments
//	crimson ornaments, star, 3 in
//	picks, mantel
func (i Item) String() string {
	text := i.Kind.String()
	if i.Color != "" {
		text = i.Color + " " + text
	}
	if i.Type != "" {
		text += ", " + i.Type
	}
	if i.Size != 0 {
		text += ", " + i.Size.String()
	}
	return text
}

// ParseItem reads the text form of [Item.String]. Text over 200 bytes, or a type or color that
// an item cannot hold, is an error wrapping [units.ErrSyntax]; one without a kind wraps [units.ErrName].
func ParseItem(text string) (Item, error) {
	const fn = "ParseItem"
	const most = 200
	if len(text) > most {
		return Item{}, &units.Error{Func: "shopping." + fn, Field: "text", Value: clip(text), Want: "at most " + strconv.Itoa(most) + " bytes", Err: units.ErrSyntax}
	}
	head, tail, _ := strings.Cut(text, ",")
	i := Item{}
	head = strings.TrimSpace(head)
	for k := Kind(1); k < numKinds; k++ {
		name := kinds[k].many
		n := len(head) - len(name)
		if n < 0 || !strings.EqualFold(head[n:], name) || n > 0 && head[n-1] != ' ' || i.Kind.known() && len(name) < len(kinds[i.Kind].many) {
			continue
		}
		i.Kind, i.Color = k, strings.TrimSpace(head[:n])
	}
	if !i.Kind.known() {
		return Item{}, kindError(fn, "text", text)
	}
	if tail != "" {
		parts := strings.Split(tail, ",")
		last := strings.TrimSpace(parts[len(parts)-1])
		if size, err := units.ParseLength(last); err == nil {
			i.Size = size
			parts = parts[:len(parts)-1]
		}
		i.Type = strings.TrimSpace(strings.Join(parts, ","))
	}
	if at, value, want := i.fault(); at != "" {
		return Item{}, &units.Error{Func: "shopping." + fn, Field: "text", Value: clip(value), Want: want, Err: units.ErrSyntax}
	}
	return i, nil
}

// fault returns which field of i could not be written and read back, its value and
// what is accepted, or nothing.
func (i Item) fault() (field, value, want string) {
	word := func(s string) bool {
		return plain(s) && strings.TrimSpace(s) == s && !strings.Contains(s, ",")
	}
	const wantWord = "at most 64 bytes of text in one line, without commas and without spaces at its ends"
	switch {
	case !word(i.Type):
		return "type", i.Type, wantWord
	case !word(i.Color):
		return "color", i.Color, wantWord
	case i.Size < 0 || i.Size > maxSize:
		return "size", i.Size.String(), "0 ft to " + maxSize.String()
	}
	if i.Type != "" {
		if _, err := units.ParseLength(i.Type); err == nil {
			return "type", i.Type, "a word, which a length is not"
		}
	}
	name := i.Kind.String()
	for k := Kind(1); k < numKinds && i.Color != ""; k++ {
		if many := kinds[k].many; len(many) > len(name) && strings.HasSuffix(many, name) && strings.HasSuffix(" "+strings.ToLower(i.Color+" "+name), " "+many) {
			return "color", i.Color, "a color that does not read as " + many
		}
	}
	return "", "", ""
}

// MarshalText returns [Item.String], or an error if [ParseItem] would not read it back.
func (i Item) MarshalText() ([]byte, error) {
	if err := i.check("Item.MarshalText", "item"); err != nil {
		return nil, err
	}
	return []byte(i.String()), nil
}

// UnmarshalText reads text as [ParseItem] does.
func (i *Item) UnmarshalText(text []byte) error {
	v, err := ParseItem(string(text))
	if err == nil {
		*i = v
	}
	return err
}

// check reports an item that cannot be used, as the field at.
func (i Item) check(fn, at string) error {
	if !i.Kind.known() {
		return kindError(fn, at, i.Kind.String())
	}
	if field, value, want := i.fault(); field != "" {
		reason := units.ErrSyntax
		if field == "size" {
			reason = units.ErrRange
		}
		return &units.Error{Func: "shopping." + fn, Field: at, Value: clip(value), Want: "a " + field + " that is " + want, Err: reason}
	}
	return nil
}
