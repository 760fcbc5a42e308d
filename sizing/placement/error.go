package placement

import (
	"errors"
	"strconv"
)

// ErrRange is what errors.Is finds in an [Error] about a value outside its range.
var ErrRange = errors.New("out of range")

// ErrFit is what errors.Is finds in an [Error] about pieces for which there is no room.
var ErrFit = errors.New("does not fit")

// An Error says which value a function of this package refused, and what it would take.
type Error struct {
	Func  string // the function or method, "Layout.Places"
	Field string // the parameter or field, "Piece.Size"
	Value string // the value given, in its text form
	Want  string // what is accepted, "0 ft to 10 ft"
	Err   error  // what is wrong: [ErrRange] or [ErrFit]
}

// Error returns one line such as
//
//	placement.Layout.Places: pieces "900": does not fit: want at most 412 in these proportions
func (e *Error) Error() string {
	return "placement." + e.Func + ": " + e.Field + " " + strconv.Quote(e.Value) + ": " + e.Err.Error() + ": want " + e.Want
}

// Unwrap returns e.Err.
func (e *Error) Unwrap() error { return e.Err }

func rangeError(fn, field, value, want string) error {
	return &Error{Func: fn, Field: field, Value: value, Want: want, Err: ErrRange}
}
