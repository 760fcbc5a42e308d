package units

import "database/sql/driver"

// A Mass is a whole number of nanograms, from -9,223,372 kg to 9,223,372 kg.
type Mass int64

// Masses to multiply by. The pound and the ounce are avoirdupois. Parts of an ounce are rounded
// to a nanogram.
//
// Source: see the package.
const (
	Gram     Mass = 1_000_000_000
	Kilogram Mass = 1_000 * Gram
	Ounce    Mass = 28_349_523_125
	Pound    Mass = 16 * Ounce
)

// ParseMass reads a mass such as 3 lb 4 oz, 3.5 lbs, 12 ounces or 1.5 kg, to the
// nearest nanogram. See Reading above.
func ParseMass(text string) (Mass, error) {
	v, err := parse(kindMass, text)
	return Mass(v), err
}

// String returns m exactly, as [ParseMass] reads it back:
//   - a whole number of ounces in pounds and ounces: 3 lb 4 oz, 0 lb;
//   - any other in the largest of kg, g and mg that it reaches: 1.5 kg.
func (m Mass) String() string { return kindMass.string(int64(m)) }

// Format returns m in a style, rounded to step. See [Length.Format].
func (m Mass) Format(style Style, step Mass) string {
	return kindMass.format(int64(m), style, int64(step))
}

// MarshalText returns the text of String. It never fails.
func (m Mass) MarshalText() ([]byte, error) { return kindMass.append(nil, int64(m)), nil }

// UnmarshalText is [ParseMass].
func (m *Mass) UnmarshalText(text []byte) error {
	v, err := parse(kindMass, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*m = Mass(v)
	}
	return err
}

// In returns m divided by unit: m.In(Pound) is m in pounds. See [Length.In].
func (m Mass) In(unit Mass) float64 { return kindMass.in(int64(m), int64(unit)) }

// Value returns the text of String.
func (m Mass) Value() (driver.Value, error) { return m.String(), nil }

// Scan reads text, or a whole number of base units; NULL is [ErrSyntax].
func (m *Mass) Scan(src any) error {
	v, err := kindMass.scan(src)
	if err == nil {
		*m = Mass(v)
	}
	return err
}
