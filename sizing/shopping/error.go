package shopping

import (
	"errors"
	"strconv"
)

// What errors.Is finds in an [Error].
var (
	ErrRange     = errors.New("out of range")                // a number outside its bounds
	ErrText      = errors.New("bad text")                    // a name that is empty, too long or not plain text
	ErrKind      = errors.New("pieces and lengths mixed up") // a pack that does not hold what the need asks for
	ErrDuplicate = errors.New("duplicate")                   // a name given twice
	ErrShort     = errors.New("not enough to buy")           // shelves that cannot cover the need
	ErrBudget    = errors.New("over budget")                 // even the fewest cost more than there is
	ErrSize      = errors.New("too large to solve")          // a problem past the stated bounds of the search
)

// An Error says which value a function of this package refused, and what it would take.
type Error struct {
	Func  string // the function or method, "Shop.Cheapest"
	Field string // the parameter or field, `offer "box of 12": price`
	Value string // the value given, in its text form, "-9.00"
	Want  string // what is accepted, "0 to 1000000"
	Err   error  // what is wrong, one of the Err variables above
}

// Error returns one line such as
//
//	shopping.Shop.Cheapest: offer "box of 12": price "-9": out of range: want 0 to 1000000 with at most 4 decimal places
func (e *Error) Error() string {
	return "shopping." + e.Func + ": " + e.Field + " " + strconv.Quote(e.Value) + ": " + e.Err.Error() + ": want " + e.Want
}

// Unwrap returns e.Err.
func (e *Error) Unwrap() error { return e.Err }
