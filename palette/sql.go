package palette

import (
	"database/sql/driver"

	"example.com/fircone/internal/sqltext"
)

// Value implements [driver.Valuer].
func (c Color) Value() (driver.Value, error) { return c.String(), nil }

// Scan implements [database/sql.Scanner].
func (c *Color) Scan(src any) error { return sqltext.Scan("palette.Color.Scan", src, c) }

// Value implements [driver.Valuer].
func (f Finish) Value() (driver.Value, error) { return sqltext.Value(f) }

// Scan implements [database/sql.Scanner].
func (f *Finish) Scan(src any) error { return sqltext.Scan("palette.Finish.Scan", src, f) }

// Value implements [driver.Valuer].
func (v View) Value() (driver.Value, error) { return sqltext.Value(v) }

// Scan implements [database/sql.Scanner].
func (v *View) Scan(src any) error { return sqltext.Scan("palette.View.Scan", src, v) }

// Value implements [driver.Valuer].
func (s Swatch) Value() (driver.Value, error) { return s.String(), nil }

// Scan implements [database/sql.Scanner].
func (s *Swatch) Scan(src any) error {
	return sqltext.Scan("palette.Swatch.Scan", src, (*swatchText)(s))
}

// Value implements [driver.Valuer].
func (p Palette) Value() (driver.Value, error) { return p.String(), nil }

// Scan implements [database/sql.Scanner].
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
