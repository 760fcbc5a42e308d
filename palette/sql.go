package palette

import (
	"database/sql/driver"
	"encoding"
	"fmt"

	"example.com/fircone/units"
)

// Value returns c.String(), for a column of text.
func (c Color) Value() (driver.Value, error) { return c.String(), nil }

// Scan reads a text as [ParseColor] does. It returns [units.ErrSyntax] for
// anything but a string or bytes, NULL too, and leaves c as it was.
func (c *Color) Scan(src any) error { return scan("Color.Scan", src, c) }

// Value returns f as [Finish.MarshalText] does.
func (f Finish) Value() (driver.Value, error) { return value(f) }

// Scan reads a text as [Finish.UnmarshalText] does, with the errors of [Color.Scan].
func (f *Finish) Scan(src any) error { return scan("Finish.Scan", src, f) }

// Value returns the name of v as [View.MarshalText] does.
func (v View) Value() (driver.Value, error) { return value(v) }

// Scan reads a text as [View.UnmarshalText] does, with the errors of [Color.Scan].
func (v *View) Scan(src any) error { return scan("View.Scan", src, v) }

// Value returns s.String().
func (s Swatch) Value() (driver.Value, error) { return s.String(), nil }

// Scan reads a text as [ParseSwatch] does, with the errors of [Color.Scan].
func (s *Swatch) Scan(src any) error { return scan("Swatch.Scan", src, (*swatchText)(s)) }

// Value returns p.String().
func (p Palette) Value() (driver.Value, error) { return p.String(), nil }

// Scan reads a text as [Palette.UnmarshalText] does, with the errors of [Color.Scan].
func (p *Palette) Scan(src any) error { return scan("Palette.Scan", src, p) }

// A swatchText is a swatch that is read from its text; in JSON a swatch is an object.
type swatchText Swatch

func (s *swatchText) UnmarshalText(text []byte) error {
	parsed, err := parseSwatch("Swatch.Scan", string(text))
	if err == nil {
		*s = swatchText(parsed)
	}
	return err
}

func value(v encoding.TextMarshaler) (driver.Value, error) {
	text, err := v.MarshalText()
	if err != nil {
		return nil, err
	}
	return string(text), nil
}

func scan(fn string, src any, to encoding.TextUnmarshaler) error {
	switch src := src.(type) {
	case string:
		return to.UnmarshalText([]byte(src))
	case []byte:
		return to.UnmarshalText(src)
	}
	return refuse(fn, "src", fmt.Sprintf("%T", src), "a string or bytes", units.ErrSyntax)
}
