package mantel

import (
	"errors"
	"strconv"

	"example.com/fircone/units"
)

// ErrRange is what errors.Is finds in an [Error] about a value outside its range.
var ErrRange = errors.New("out of range")

// ErrName is what errors.Is finds in an [Error] about a word that names nothing known here.
var ErrName = errors.New("unknown name")

// ErrFit is what errors.Is finds in an [Error] about a value that does not go
// with another one, such as a garland shorter than its shelf.
var ErrFit = errors.New("does not fit")

// An Error says which value a function of this package refused, and what it would take.
type Error struct {
	Func  string // the function or method, "Rules.Picks"
	Field string // the parameter or field, "length"
	Value string // the value given, in its text form, "6 in"
	Want  string // what is accepted, "1 ft to 50 ft"
	Err   error  // what is wrong: ErrRange, ErrName or ErrFit
}

// Error returns one line such as
//
//	mantel.Rules.Picks: length "6 in": out of range: want 1 ft to 50 ft
func (e *Error) Error() string {
	return "mantel." + e.Func + ": " + e.Field + " " + strconv.Quote(e.Value) + ": " + e.Err.Error() + ": want " + e.Want
}

// Unwrap returns e.Err.
func (e *Error) Unwrap() error { return e.Err }

func rangeError(fn, field, value, want string) error {
	return &Error{Func: fn, Field: field, Value: value, Want: want, Err: ErrRange}
}

func fitError(fn, field, value, want string) error {
	return &Error{Func: fn, Field: field, Value: value, Want: want, Err: ErrFit}
}

func checkLength(fn, field string, l, least, most units.Length, want string) error {
	if l < least || l > most {
		return rangeError(fn, field, exact(l), want)
	}
	return nil
}

func checkCount(fn, field string, n, least, most int) error {
	if n < least || n > most {
		return rangeError(fn, field, strconv.Itoa(n), strconv.Itoa(least)+" to "+strconv.Itoa(most))
	}
	return nil
}
