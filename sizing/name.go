package sizing

import (
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// maxText is the longest text that this package reads, in bytes.
const maxText = 64

// clip shortens a refused text to what an error may show.
func clip(s string) string {
	if len(s) > maxText {
		return strings.ToValidUTF8(s[:maxText], "") + "..."
	}
	return s
}

// readName sets *v to the index of the name that s is, ignoring case and space around
// it, or leaves it as it was.
func readName[T ~uint8 | ~int32](v *T, fn, s string, names []string) error {
	t := strings.TrimSpace(s)
	for i, name := range names {
		if len(s) <= maxText && strings.EqualFold(t, name) {
			*v = T(i)
			return nil
		}
	}
	return nameError(fn, "text", clip(s), names)
}

func nameError(fn, field, value string, names []string) error {
	return &units.Error{Func: "sizing." + fn, Field: field, Value: value, Want: listOf(names), Err: units.ErrName}
}

// nameOf returns names[i], or a text like Taper(9) if there is none.
func nameOf(typ string, i int, names []string) string {
	if i < 0 || i >= len(names) {
		return typ + "(" + strconv.Itoa(i) + ")"
	}
	return names[i]
}

func marshalName(fn, field string, i int, text string, names []string) ([]byte, error) {
	if i < 0 || i >= len(names) {
		return nil, nameError(fn, field, text, names)
	}
	return []byte(text), nil
}

// listOf returns "full, slim or pencil".
func listOf(names []string) string {
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " or " + names[last]
}
