package shopping

import (
	"database/sql/driver"
	"fmt"

	"example.com/fircone/internal/sqltext"
)

// Value returns the text of k.
func (k Kind) Value() (driver.Value, error) { return sqltext.Value(k) }

// Scan reads a text as [Kind.UnmarshalText] does. Anything but a string or bytes, NULL too, is an
// error wrapping [units.ErrSyntax].
func (k *Kind) Scan(src any) error { return sqltext.Scan("shopping.Kind.Scan", src, k) }

// Value returns the text of i.
func (i Item) Value() (driver.Value, error) { return sqltext.Value(i) }

// Scan reads a text as [ParseItem] does; see [Kind.Scan].
func (i *Item) Scan(src any) error { return sqltext.Scan("shopping.Item.Scan", src, i) }

// Value returns the text of q.
func (q Quantity) Value() (driver.Value, error) { return q.String(), nil }

// Scan reads a text as [ParseQuantity] does, or a number of pieces; see [Kind.Scan].
func (q *Quantity) Scan(src any) error {
	if n, ok := src.(int64); ok {
		src = fmt.Sprint(n)
	}
	return sqltext.Scan("shopping.Quantity.Scan", src, (*quantityText)(q))
}

// A quantityText is a quantity that is read from its text; in JSON it may be a number.
type quantityText Quantity

func (q *quantityText) UnmarshalText(text []byte) error {
	parsed, err := ParseQuantity(string(text))
	if err == nil {
		*q = quantityText(parsed)
	}
	return err
}
