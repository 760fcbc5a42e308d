package units

import (
	"errors"
	"strconv"
	"strings"
)

// The reasons an [Error] can wrap, for [errors.Is].
var (
	// ErrEmpty reports a text with nothing in it but space.
	ErrEmpty = errors.New("empty")

	// ErrTooLong reports a text of more than 64 bytes.
	ErrTooLong = errors.New("too long")

	// ErrSyntax reports a text that does not follow the grammar in a way no other error names.
	ErrSyntax = errors.New("not understood")

	// ErrNoUnit reports a number with no unit after it.
	ErrNoUnit = errors.New("no unit")

	// ErrUnknownUnit reports a unit that is not one of the quantity's units.
	ErrUnknownUnit = errors.New("unknown unit")

	// ErrSign reports a second sign, or a sign anywhere but in front.
	ErrSign = errors.New("misplaced sign")

	// ErrComma reports a comma, which some readers take for a decimal point and others for a mark between thousands.
	ErrComma = errors.New("comma")

	// ErrExponent reports a number such as 1e3.
	ErrExponent = errors.New("exponent")

	// ErrOrder reports units that do not fall in size, as in 6 in 7 ft.
	ErrOrder = errors.New("units out of order")

	// ErrCarry reports a part that makes a whole one of the unit before it, as in 7 ft 14 in.
	ErrCarry = errors.New("part too large")

	// ErrRange reports a value outside what is accepted: one that does not fit its type,
	// NaN or an infinity, a step that is not positive, a unit of zero.
	ErrRange = errors.New("out of range")
)

// An Error says which argument of which function was refused, and what is accepted instead.
// Every error of this package is an *Error.
type Error struct {
	Func  string // function or method, without the package: "ParseLength", "Length.Round"
	Field string // parameter: "text"
	Value string // the value given, in its text form; a text over 64 bytes is cut there
	Want  string // what is accepted
	Err   error  // the reason: ErrNoUnit, ErrRange, ...
}

// Error returns one line such as
//
//	units.ParseLength: text "7": no unit: want a number and a unit, such as 7 ft 6 in
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString("units.")
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

// Unwrap returns e.Err.
func (e *Error) Unwrap() error { return e.Err }
