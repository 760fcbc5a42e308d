package palette

import (
	"errors"
	"math"
	"strconv"
	"unicode/utf8"
)

// What errors.Is finds in an [Error].
var (
	ErrRange     = errors.New("out of range")        // a value outside its range
	ErrSyntax    = errors.New("not understood")      // a text that does not follow the grammar
	ErrName      = errors.New("unknown name")        // a word that names no color, finish or the like
	ErrDuplicate = errors.New("named twice")         // two swatches of one name
	ErrAlike     = errors.New("taken for one color") // two swatches that the eye takes for one
)

// An Error says which value a function of this package refused, and what it would take.
type Error struct {
	Func  string // the function or method, "Rules.Palette"
	Field string // the parameter or field, "swatches"
	Value string // the value given, in its text form, "crimson and indianred, 9.71 apart"
	Want  string // what is accepted, "at least 10 apart"
	Err   error  // what is wrong: ErrRange or another of this package's
}

// Error returns one line such as
//
//	palette.Rules.Palette: swatches "crimson and indianred, 9.71 apart": taken for one color: want at least 10 apart
func (e *Error) Error() string {
	return "palette." + e.Func + ": " + e.Field + " " + strconv.Quote(e.Value) + ": " + e.Err.Error() + ": want " + e.Want
}

// Unwrap returns e.Err.
func (e *Error) Unwrap() error { return e.Err }

// rangeError reports an integer outside its range.
func rangeError(fn, field string, value int, want string) error {
	return &Error{Func: fn, Field: field, Value: strconv.Itoa(value), Want: want, Err: ErrRange}
}

// clip shortens a text for an error message to at most 64 bytes of it.
func clip(s string) string {
	if len(s) <= 64 {
		return s
	}
	n := 64
	for n > 60 && !utf8.RuneStart(s[n]) {
		n--
	}
	return s[:n] + "…"
}

// cut prints d to places decimals, cut and not rounded, so that a figure which
// misses a threshold is never printed as meeting it.
func cut(d float64, places int) string {
	scale := 1.0
	for range places {
		scale = float64(scale * 10)
	}
	return strconv.FormatFloat(math.Floor(d*scale)/scale, 'f', places, 64)
}
