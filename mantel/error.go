package mantel

import (
	"strconv"

	"example.com/fircone/units"
)

func rangeError(fn, field, value, want string) error {
	return &units.Error{Func: "mantel." + fn, Field: field, Value: value, Want: want, Err: units.ErrRange}
}

func fitError(fn, field, value, want string) error {
	return &units.Error{Func: "mantel." + fn, Field: field, Value: value, Want: want, Err: units.ErrFit}
}

// under puts a pointer before the one of an error.
func under(at string, err error) error {
	e := *err.(*units.Error)
	e.Field = at + e.Field
	return &e
}

// checkLength is short enough for the compiler to put in the caller's place, with the text of
// the error apart.
func checkLength(fn, field string, l, least, most units.Length, want string) error {
	if l < least || l > most {
		return lengthError(fn, field, l, want)
	}
	return nil
}

func lengthError(fn, field string, l units.Length, want string) error {
	return rangeError(fn, field, exact(l), want)
}

func checkMass(fn, field string, m, least, most units.Mass, want string) error {
	if m < least || m > most {
		return rangeError(fn, field, m.String(), want)
	}
	return nil
}

func checkCount(fn, field string, n, least, most int) error {
	if n < least || n > most {
		return rangeError(fn, field, strconv.Itoa(n), strconv.Itoa(least)+" to "+strconv.Itoa(most))
	}
	return nil
}

func checkPerFoot(fn string, perFoot units.Mass) error {
	return checkMass(fn, "perFoot", perFoot, minPerFoot, maxPerFoot, wantPerFoot)
}
