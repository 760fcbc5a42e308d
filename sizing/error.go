package sizing

import (
	"errors"
	"strconv"
)

// ErrRange is what errors.Is finds in an [Error] about a value outside its range.
var ErrRange = errors.New("out of range")

// ErrName is what errors.Is finds in an [Error] about a word that names nothing known here.
var ErrName = errors.New("unknown name")

// An Error says which value a function of this package refused, and what it would take.
type Error struct {
	Func  string // the function or method, "Rules.Picks"
	Field string // the parameter or field, "height"
	Value string // the value given, in its text form, "6 in"
	Want  string // what is accepted, "1 ft to 100 ft"
	Err   error  // what is wrong: ErrRange or ErrName
}

// Error returns one line such as
//
//	sizing.Rules.Picks: height "6 in": out of range: want 1 ft to 100 ft
func (e *Error) Error() string {
	return "sizing." + e.Func + ": " + e.Field + " " + strconv.Quote(e.Value) + ": " + e.Err.Error() + ": want " + e.Want
}

// Unwrap returns e.Err.
func (e *Error) Unwrap() error { return e.Err }
