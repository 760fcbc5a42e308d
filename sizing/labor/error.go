package labor

import (
	"strconv"
	"strings"

	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// maxText is the longest text in bytes that names a room or a box, and that an error shows of a value.
const maxText = 64

// maxPlaces is the most decimal places of a rate or a price.
const maxPlaces = 4

// A checker makes the errors of one method, and keeps the first one.
type checker struct {
	fn  string
	err error
}

// fail keeps an error about the value at a field, unless there is one.
func (c *checker) fail(reason error, field, value, want string) {
	if c.err == nil {
		if len(value) > maxText {
			value = strings.ToValidUTF8(value[:maxText], "") + "..."
		}
		c.err = &units.Error{Func: "labor." + c.fn, Field: field, Value: value, Want: want, Err: reason}
	}
}

// decimal checks a number from 0 to most with at most four decimal places.
func (c *checker) decimal(field string, d decimal.Decimal, most int64) {
	if inRange(d, most) {
		return
	}
	// The exponent first, since a sum with a huge one fills the memory.
	if e := d.Exponent(); e < -64 || e > 18 || d.IsNegative() || d.GreaterThan(decimal.NewFromInt(most)) || !d.Equal(d.Truncate(maxPlaces)) {
		c.fail(units.ErrRange, field, decimalText(d), "0 to "+strconv.FormatInt(most, 10)+", at most 4 decimal places")
	}
}

// inRange reports, without allocating, that d is from 0 to most with at most four places; it may miss one that is.
func inRange(d decimal.Decimal, most int64) bool {
	e := d.Exponent()
	if e > 0 || e < -maxPlaces || d.NumDigits() > 14 {
		return false
	}
	for ; e < 0; e++ {
		most *= 10
	}
	n := d.CoefficientInt64()
	return n >= 0 && n <= most
}

// decimalText returns d as text, or its parts if that is long.
func decimalText(d decimal.Decimal) string {
	if e := d.Exponent(); e < -64 || e > 64 {
		return d.Coefficient().String() + "e" + strconv.Itoa(int(e))
	}
	return d.String()
}

// whole checks an integer.
func (c *checker) whole(field string, n, least, most int) {
	if n < least || n > most {
		c.fail(units.ErrRange, field, strconv.Itoa(n), strconv.Itoa(least)+" to "+strconv.Itoa(most))
	}
}

// length checks a length from 0 to most.
func (c *checker) length(field string, l, most units.Length) {
	if l < 0 || l > most {
		c.fail(units.ErrRange, field, l.String(), "0 ft to "+most.String())
	}
}

// text checks a name.
func (c *checker) text(field, s string, empty bool) {
	if len(s) > maxText || s == "" && !empty || strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r == 0x7f || r == 0xfffd }) {
		c.fail(units.ErrSyntax, field, s, "at most 64 bytes of text in one line")
	}
}

// at returns a JSON Pointer to a field of the i-th element.
func at(list string, i int, field string) string {
	p := list + "/" + strconv.Itoa(i)
	if field != "" {
		p += "/" + field
	}
	return p
}
