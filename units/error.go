package units

import (
	"strconv"
	"strings"
)

// The reasons an [Error] wraps, for [errors.Is]. All packages of fircone use these and no others.
var (
	ErrRange     error = &reason{text: "out of range"}       // a number outside its range, or NaN
	ErrSyntax    error = &reason{text: "not understood"}     // text that does not follow its grammar
	ErrName      error = &reason{text: "unknown name"}       // a word, or a value of an enumerated type, that is not known
	ErrDuplicate error = &reason{text: "duplicate"}          // a second of something allowed once
	ErrFit       error = &reason{text: "does not fit"}       // a value that does not go with another, such as a garland shorter than its shelf
	ErrLimit     error = &reason{text: "too large to solve"} // a problem past the stated bounds of a search
)

// An Error says which value a function refused, and what it accepts. Every error of
// fircone about an argument is an *Error.
//
// Field is the name of an argument, "height", or, for a value inside one, a JSON Pointer
// (RFC 6901) that begins with that name: "/tree/base". Inside a method's receiver the name
// is left out: "/typesPerFoot", "/offers/3/price". Empty means the whole document. Names are
// those in JSON.
type Error struct {
	Func  string // package and function or method: "units.ParseLength", "sizing.Rules.Types"
	Field string // which value: "text", "/tree/base"
	Value string // the value in its text form, cut if it is long
	Want  string // what is accepted: "1 ft to 100 ft"
	Err   error  // the reason: ErrRange, ErrSyntax, ...
}

// Error returns one line such as
//
//	sizing.Rules.Types: height "6 in": out of range: want 1 ft to 100 ft
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(e.Func)
	b.WriteString(": ")
	if e.Field != "" {
		b.WriteString(e.Field)
		b.WriteByte(' ')
	}
	b.WriteString(strconv.Quote(e.Value))
	b.WriteString(": ")
	if e.Err != nil {
		b.WriteString(e.Err.Error())
	}
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

// A reason is what an Error wraps: one of the exported reasons, or a kind of one in words of its own.
type reason struct {
	text string
	kind error // nil for an exported one
}

func (r *reason) Error() string { return r.text }
func (r *reason) Unwrap() error { return r.kind }

// Equal lets go-cmp compare errors by identity, as errors.Is does.
func (r *reason) Equal(s *reason) bool { return r == s }
