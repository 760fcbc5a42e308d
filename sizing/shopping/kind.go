package shopping

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"example.com/fircone/internal/spelling"
	"example.com/fircone/units"
)

// A Kind is what sort of thing an item is. The zero value is no kind, and is
// refused wherever an item is used.
type Kind uint8

// The kinds.
const (
	_           Kind = iota
	Ornament         // balls, stars, birds: whatever hangs from a branch
	Garland          // wound around a tree
	Ribbon           // wound around a tree, or tied into bows and falls
	Pick             // stems of berries, leaves or flowers pushed in among the branches
	Light            // miniature lamps, counted one by one
	Topper           // on the tip
	Skirt            // around the foot of the tree
	BaseGarland      // along a mantel, a banister or a door
	Bell             // hung with a bow
	Stocking         // below a mantel
	Tie              // wire ties
	Hook             // holds a garland or a stocking
	numKinds
)

// kinds are the kinds' names, for several and for one, whether they are measured by
// length, and whether a piece goes to one room whole. An ordinary name takes no number:
// "garland".
var kinds = [numKinds]struct {
	many, one string
	running   bool
	whole     bool
}{
	Ornament:    {many: "ornaments", one: "ornament"},
	Garland:     {many: "garland", running: true},
	Ribbon:      {many: "ribbon", running: true},
	Pick:        {many: "picks", one: "pick"},
	Light:       {many: "lights", one: "light", whole: true},
	Topper:      {many: "toppers", one: "topper"},
	Skirt:       {many: "skirts", one: "skirt"},
	BaseGarland: {many: "base garland", running: true},
	Bell:        {many: "bells", one: "bell"},
	Stocking:    {many: "stockings", one: "stocking"},
	Tie:         {many: "wire ties", one: "wire tie"},
	Hook:        {many: "hooks", one: "hook"},
}

func (k Kind) known() bool { return 0 < k && k < numKinds }

// Running reports whether k is measured by length, as garland and ribbon are, not counted.
func (k Kind) Running() bool { return k.known() && kinds[k].running }

// String returns the name of k: "ornaments", "garland".
func (k Kind) String() string {
	if !k.known() {
		return "Kind(" + strconv.Itoa(int(k)) + ")"
	}
	return kinds[k].many
}

// Count returns a number of pieces of k, "1 pick" or "27 picks".
func (k Kind) Count(n int) string {
	if n == 1 && k.known() && kinds[k].one != "" {
		return "1 " + kinds[k].one
	}
	return strconv.Itoa(n) + " " + k.String()
}

func kindError(fn, field, value string) error {
	return &units.Error{Func: "shopping." + fn, Field: field, Value: clip(value), Want: kindNames() + meant(value), Err: units.ErrName}
}

// meant proposes the kind that the words of an item before a comma, or the last of them, are most like.
func meant(text string) string {
	head, _, _ := strings.Cut(clip(text), ",")
	words := strings.Fields(head)
	var names []string
	for k := Kind(1); k < numKinds; k++ {
		names = append(names, kinds[k].many)
	}
	for i := range words {
		if near := spelling.DidYouMean(strings.Join(words[i:], " "), names...); near != "" {
			return near
		}
	}
	return ""
}

// kindNames returns "ornaments, garland, ... or hooks".
func kindNames() string {
	var b strings.Builder
	for k := Kind(1); k < numKinds; k++ {
		switch k {
		case 1:
		case numKinds - 1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		b.WriteString(kinds[k].many)
	}
	return b.String()
}

// MarshalText returns [Kind.String], or an error wrapping [units.ErrName] if k is no kind.
func (k Kind) MarshalText() ([]byte, error) {
	if !k.known() {
		return nil, kindError("Kind.MarshalText", "kind", k.String())
	}
	return []byte(kinds[k].many), nil
}

// UnmarshalText reads a name that [Kind.String] returns, in upper or lower case. Any other text
// is an error wrapping [units.ErrName].
func (k *Kind) UnmarshalText(text []byte) error {
	if len(text) <= maxName {
		for i := Kind(1); i < numKinds; i++ {
			if strings.EqualFold(strings.TrimSpace(string(text)), kinds[i].many) {
				*k = i
				return nil
			}
		}
	}
	return kindError("Kind.UnmarshalText", "kind", string(text))
}

// A ByKind has one value for each kind, at its index: table[Pick].
type ByKind[T comparable] [numKinds]T

// String returns the values that are not zero after their kinds, "ornaments 49,
// garland 63 ft", or "nothing".
func (table ByKind[T]) String() string {
	var zero T
	var parts []string
	for k, v := range table {
		if v != zero {
			parts = append(parts, Kind(k).String()+" "+fmt.Sprint(v))
		}
	}
	if parts == nil {
		return "nothing"
	}
	return strings.Join(parts, ", ")
}

// MarshalJSON returns an object without the zeros, such as
// {"ornaments":49,"garland":"63 ft"}.
func (table ByKind[T]) MarshalJSON() ([]byte, error) {
	var zero T
	out := []byte{'{'}
	for k := Kind(1); k < numKinds; k++ {
		if table[k] == zero {
			continue
		}
		value, err := json.Marshal(table[k])
		if err != nil {
			return nil, err
		}
		if len(out) > 1 {
			out = append(out, ',')
		}
		out = strconv.AppendQuote(out, kinds[k].many)
		out = append(append(out, ':'), value...)
	}
	return append(out, '}'), nil
}

// UnmarshalJSON reads an object of kinds; those left out become zero.
func (table *ByKind[T]) UnmarshalJSON(data []byte) error {
	var byKind map[Kind]T
	if err := json.Unmarshal(data, &byKind); err != nil {
		return err
	}
	*table = ByKind[T]{}
	for k, v := range byKind {
		table[k] = v
	}
	return nil
}

// whole reports whether a piece of k, however many it counts for, goes to one room: a string
// of lights.
func (k Kind) whole() bool { return k.known() && kinds[k].whole }
