package units

import (
	"errors"
	"strconv"
	"strings"
)

// The reasons an [Error] wraps, for [errors.Is]. Every package of fircone uses
// these and no others.
var (
	// ErrRange reports a number outside its range: one that does not fit its type,
	// NaN or an infinity, a step that is not positive.
	ErrRange = errors.New("out of range")

	// ErrSyntax reports text that does not follow its grammar.
	ErrSyntax = errors.New("not understood")

	// ErrName reports a word, or a value of an enumerated type, that names nothing
	// known here.
	ErrName = errors.New("unknown name")

	// ErrDuplicate reports a second one of something that may be there once.
	ErrDuplicate = errors.New("duplicate")

	// ErrFit reports a value that does not go with another one, such as a garland
	// shorter than its shelf.
	ErrFit = errors.New("does not fit")

	// ErrLimit reports a problem past the stated bounds of a search.
	ErrLimit = errors.New("too large to solve")
)

// An Error says which value a function refused, and what it accepts instead. Every
// error of fircone that is about an argument is an *Error.
//
// Field is the name of a plain argument, "height". For a value inside an argument
// it is a JSON Pointer (RFC 6901) that begins with the argument's name, as in
// "/tree/base" and "/offers/3/price"; for one inside the receiver of a method the
// pointer begins there, as in "/picksPerFoot". Names are those of the JSON form.
type Error struct {
	Func  string // package and function or method: "units.ParseLength", "sizing.Rules.Picks"
	Field string // which value: "text", "/tree/base"
	Value string // the value in its text form, cut if it is long
	Want  string // what is accepted: "1 ft to 100 ft"
	Err   error  // the reason: ErrRange, ErrSyntax, ...
}

// Error returns one line such as
//
//	sizing.Rules.Picks: height "6 in": out of range: want 1 ft to 100 ft
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(e.Func)
	b.WriteString(": ")
	b.WriteString(e.Field)
	b.WriteByte(' ')
	b.WriteString(strconv.Quote(e.Value))
	b.WriteString(": ")
	b.WriteString(e.Err.Error())
	b.WriteString(": want ")
	b.WriteString(e.Want)
	return b.String()
}

// Must returns v, or panics with err if that is not nil. It is for constants and tests:
//
//	height := units.Must(units.ParseLength("7 ft 6 in"))
func Must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// Unwrap returns e.Err.
func (e *Error) Unwrap() error { return e.Err }
