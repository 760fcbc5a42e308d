package placement

import (
	"errors"
	"strings"

	"example.com/fircone/units"
)

// maxText is the longest text that is looked at, in bytes.
const maxText = 64

// clip shortens a refused text to what an error may show.
func clip(s string) string {
	if len(s) > maxText {
		return strings.ToValidUTF8(s[:maxText], "") + "..."
	}
	return s
}

func rangeError(fn, field, value, want string) error {
	return &units.Error{Func: "placement." + fn, Field: field, Value: value, Want: want, Err: units.ErrRange}
}

// inside returns err, which another package has about the value at a pointer, as fn
// says it.
func inside(fn, pointer string, err error) error {
	var e *units.Error
	if !errors.As(err, &e) {
		return err
	}
	at := *e
	at.Func = "placement." + fn
	at.Field = pointer
	if strings.HasPrefix(e.Field, "/") { // inside the value
		at.Field += e.Field
	}
	return &at
}
