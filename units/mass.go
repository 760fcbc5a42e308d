package units

import "database/sql/driver"

// A Mass is a mass as a whole number of nanograms. In the trade it is called weight, and weighed on a scale.
// It holds from -9,223,372 kg to 9,223,372 kg; as with any integer, a sum beyond that wraps.
type Mass int64

// Masses to multiply by. All are exact by definition. The pound and the ounce are avoirdupois;
// half an ounce is not a whole number of nanograms, and is half a nanogram off.
//
// Source: International Yard and Pound Agreement, in force 1 July 1959, which sets the pound at 0.45359237 kg;
// an ounce is a sixteenth of it. Metric prefixes: The International System of Units (SI), BIPM.
const (
	Gram     Mass = 1_000_000_000
	Kilogram Mass = 1_000 * Gram
	Ounce    Mass = 28_349_523_125
	Pound    Mass = 16 * Ounce
)

// ParseMass returns the mass that text gives, such as 3 lb 4 oz, 3.5 lbs, 12 ounces or 1.5 kg.
// For the grammar, see Reading above. The result is rounded to the nearest nanogram.
// Its errors wrap [ErrSyntax], [ErrName] or [ErrRange].
func ParseMass(text string) (Mass, error) {
	v, err := parse(kindMass, text)
	return Mass(v), err
}

// String returns m exactly, in a form that [ParseMass] reads back as m:
//   - a whole number of ounces in pounds and ounces: 3 lb 4 oz, 0 lb;
//   - any other in the largest of kg, g and mg that it reaches: 1.5 kg.
//
// A minus sign applies to the whole. For a rounded form see [Mass.Format].
func (m Mass) String() string { return kindMass.string(int64(m)) }

// Format returns m rounded to the nearest multiple of step. See [Length.Format].
func (m Mass) Format(style Style, step Mass) string {
	return kindMass.format(int64(m), style, int64(step))
}

// MarshalText returns [Mass.String]. The error is always nil.
func (m Mass) MarshalText() ([]byte, error) { return kindMass.append(nil, int64(m)), nil }

// UnmarshalText sets *m to what [ParseMass] returns. On an error *m is unchanged.
func (m *Mass) UnmarshalText(text []byte) error {
	v, err := parse(kindMass, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*m = Mass(v)
	}
	return err
}

// In returns m divided by unit, so m.In(Pound) is m in pounds. See [Length.In].
func (m Mass) In(unit Mass) float64 { return kindMass.in(int64(m), int64(unit)) }

// Value returns [Mass.String], so that a database column of text holds m.
func (m Mass) Value() (driver.Value, error) { return m.String(), nil }

// Scan sets *m from a column of text, as [ParseMass] does, or from a whole number of
// base units. On an error *m is unchanged.
func (m *Mass) Scan(src any) error {
	v, err := kindMass.scan(src)
	if err == nil {
		*m = Mass(v)
	}
	return err
}
