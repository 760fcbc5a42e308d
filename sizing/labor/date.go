package labor

import (
	"database/sql/driver"
	"fmt"
	"strconv"

	"example.com/fircone/units"
)

// A Date is a day of the Gregorian calendar, 0001-01-01 to 9999-12-31, counted from 1: d+7 is a week
// after d, and < is earlier. The zero value is no date. The count is the Rata Die of Reingold and Dershowitz.
type Date int32

// lastDate is 9999-12-31.
const lastDate Date = 3_652_059

// ParseDate returns the date of a text in the extended form of ISO 8601, 2026-11-28. ErrSyntax reports any
// other text, and a day that its month does not have.
func ParseDate(text string) (Date, error) {
	var parts [3]int
	ok := len(text) == 10 && text[4] == '-' && text[7] == '-'
	if ok {
		for i, digits := range [...]string{text[:4], text[5:7], text[8:]} {
			n, err := strconv.ParseUint(digits, 10, 16)
			ok = ok && err == nil
			parts[i] = int(n)
		}
	}
	year, month, day := parts[0], parts[1], parts[2]
	if !ok || year < 1 || month < 1 || month > 12 || day < 1 || day > monthDays(year, month) {
		c := checker{fn: "ParseDate"}
		c.fail(units.ErrSyntax, "text", text, "a day such as 2026-11-28")
		return 0, c.err
	}
	for m := 1; m < month; m++ {
		day += monthDays(year, m)
	}
	return Date(yearDays(year-1) + day), nil
}

// yearDays returns the days in the first so many years.
func yearDays(years int) int { return 365*years + years/4 - years/100 + years/400 }

// monthDays returns the days of a month.
func monthDays(year, month int) int {
	switch month {
	case 2:
		return yearDays(year) - yearDays(year-1) - 337
	case 4, 6, 9, 11:
		return 30
	}
	return 31
}

// String returns the text that [ParseDate] reads, or "no date".
func (d Date) String() string {
	if d < 1 || d > lastDate {
		return "no date"
	}
	year := int(d)/366 + 1 // no later than the year of d
	for yearDays(year) < int(d) {
		year++
	}
	day := int(d) - yearDays(year-1)
	month := 1
	for ; day > monthDays(year, month); month++ {
		day -= monthDays(year, month)
	}
	return fmt.Sprintf("%04d-%02d-%02d", year, month, day)
}

// MarshalText returns [Date.String]. ErrRange reports what is no date.
func (d Date) MarshalText() ([]byte, error) {
	c := checker{fn: "Date.MarshalText"}
	if c.date("date", d); c.err != nil {
		return nil, c.err
	}
	return []byte(d.String()), nil
}

// UnmarshalText reads as [ParseDate] does. On an error d is unchanged.
func (d *Date) UnmarshalText(text []byte) error {
	v, err := ParseDate(string(text))
	if err == nil {
		*d = v
	}
	return err
}

// date checks a date.
func (c *checker) date(field string, d Date) {
	if d < 1 || d > lastDate {
		c.fail(units.ErrRange, field, strconv.Itoa(int(d)), "0001-01-01 to 9999-12-31")
	}
}

// Value returns [Date.String] for a column of text, or NULL for the zero value.
func (d Date) Value() (driver.Value, error) {
	if d == 0 {
		return nil, nil
	}
	text, err := d.MarshalText()
	if err != nil {
		return nil, err
	}
	return string(text), nil
}

// Scan reads a column of text as [ParseDate] does, and NULL as the zero value. On an error d is unchanged.
func (d *Date) Scan(src any) error {
	switch v := src.(type) {
	case nil:
		*d = 0
		return nil
	case string:
		return d.UnmarshalText([]byte(v))
	case []byte:
		return d.UnmarshalText(v)
	}
	c := checker{fn: "Date.Scan"}
	c.fail(units.ErrSyntax, "src", fmt.Sprintf("%T", src), "a text such as 2026-11-28, or NULL")
	return c.err
}
