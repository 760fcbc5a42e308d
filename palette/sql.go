package palette

import (
	"database/sql/driver"

	"example.com/fircone/internal/sqltext"
)

// Value returns the text of String.
func (c Color) Value() (driver.Value, error) { return c.String(), nil }

// Scan reads String's text.
func (c *Color) Scan(src any) error { return sqltext.Scan("palette.Color.Scan", src, c) }

// Value returns the text of String.
func (f Finish) Value() (driver.Value, error) { return sqltext.Value(f) }

// Scan reads String's text.
func (f *Finish) Scan(src any) error { return sqltext.Scan("palette.Finish.Scan", src, f) }

// Value returns the text of String.
func (v View) Value() (driver.Value, error) { return sqltext.Value(v) }

// Scan reads String's text.
func (v *View) Scan(src any) error { return sqltext.Scan("palette.View.Scan", src, v) }

// Value returns the text of String.
func (s Swatch) Value() (driver.Value, error) { return s.String(), nil }

// Scan reads String's text.
func (s *Swatch) Scan(src any) error {
	return sqltext.Scan("palette.Swatch.Scan", src, (*swatchText)(s))
}

// Value returns the text of String.
func (p Palette) Value() (driver.Value, error) { return p.String(), nil }

// Scan reads String's text.
func (p *Palette) Scan(src any) error { return sqltext.Scan("palette.Palette.Scan", src, p) }

// A swatchText is a swatch that is read from its text; in JSON a swatch is an object.
type swatchText Swatch

func (s *swatchText) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*s = swatchText{}
		return nil
	}
	parsed, err := parseSwatch("Swatch.Scan", string(text))
	if err == nil {
		*s = swatchText(parsed)
	}
	return err
}
