package placement

import (
	"errors"
	"strconv"
	"strings"
)

// ErrRange is what errors.Is finds in an [Error] about a value outside its range.
var ErrRange = errors.New("out of range")

// ErrSyntax is what errors.Is finds in an [Error] about a text that is not understood.
var ErrSyntax = errors.New("not understood")

// ErrFit is what errors.Is finds in an [Error] about pieces for which there is no room.
var ErrFit = errors.New("does not fit")

// An Error says which value a function of this package refused, and what it would take.
type Error struct {
	Func  string // the function or method, "Layout.Places"
	Field string // the parameter or field, "Piece.Size"
	Value string // the value given, in its text form
	Want  string // what is accepted, "0 ft to 10 ft"
	Err   error  // what is wrong: ErrRange, ErrSyntax or ErrFit
}

// Error returns one line such as
//
//	placement.Layout.Places: pieces "900": does not fit: want at most 412 in these proportions
func (e *Error) Error() string {
	return "placement." + e.Func + ": " + e.Field + " " + strconv.Quote(e.Value) + ": " + e.Err.Error() + ": want " + e.Want
}

// Unwrap returns e.Err.
func (e *Error) Unwrap() error { return e.Err }

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
	return &Error{Func: fn, Field: field, Value: value, Want: want, Err: ErrRange}
}
