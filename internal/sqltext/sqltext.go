// Package sqltext stores values in database columns by their texts.
package sqltext

import (
	"database/sql/driver"
	"encoding"
	"fmt"

	"example.com/fircone/units"
)

// Value returns the text of v.
func Value(v encoding.TextMarshaler) (driver.Value, error) {
	text, err := v.MarshalText()
	if err != nil {
		return nil, err
	}
	return string(text), nil
}

// Scan sets to from src, a string or bytes, for the method fn.
func Scan(fn string, src any, to encoding.TextUnmarshaler) error {
	switch src := src.(type) {
	case string:
		return to.UnmarshalText([]byte(src))
	case []byte:
		return to.UnmarshalText(src)
	}
	return &units.Error{Func: fn, Field: "src", Value: fmt.Sprintf("%T", src), Want: "a string or bytes", Err: units.ErrSyntax}
}
