package units

import "github.com/shopspring/decimal"

// A Mass is a mass as a whole number of nanograms. In the trade it is called weight, and weighed on a scale.
// The zero value is no mass, and == tells whether two masses are equal.
// It holds from -9,223,372 kg to 9,223,372 kg; as with any integer, a sum beyond that wraps.
type Mass int64

// Masses to multiply by. All are exact by definition. The pound and the ounce are avoirdupois;
// half an ounce is not a whole number of nanograms, and is half a nanogram off.
//
// Source: International Yard and Pound Agreement, in force 1 July 1959, which sets the pound at 0.45359237 kg;
// an ounce is a sixteenth of it. Metric prefixes: The International System of Units (SI), BIPM.
const (
	Nanogram  Mass = 1
	Milligram Mass = 1_000_000 * Nanogram
	Gram      Mass = 1_000 * Milligram
	Kilogram  Mass = 1_000 * Gram
	Ounce     Mass = 28_349_523_125 * Nanogram
	Pound     Mass = 16 * Ounce
)

// ParseMass returns the mass that s gives, such as 3 lb 4 oz, 3.5 lbs, 12 ounces or 1.5 kg.
// The package documentation has the grammar.
// What is finer than a nanogram is rounded to the nearest, half away from zero.
// It returns an error if s is not a mass with a unit; the errors that it wraps are listed as variables of this package.
func ParseMass(s string) (Mass, error) {
	v, err := parse(kindMass, s)
	return Mass(v), err
}

// MustParseMass is [ParseMass] for constants in programs and tests. It panics if s is refused.
func MustParseMass(s string) Mass {
	m, err := ParseMass(s)
	if err != nil {
		panic(err)
	}
	return m
}

// String returns m exactly, in a form that [ParseMass] reads back as m:
//   - a whole number of ounces in pounds and ounces: 3 lb 4 oz, 0 lb;
//   - any other in the largest of kg, g and mg that it reaches: 1.5 kg.
//
// A minus in front holds for the whole. For a rounded form see [Mass.Format].
func (m Mass) String() string { return kindMass.string(int64(m)) }

// Format returns m for people to read, rounded to the nearest multiple of step, half away from zero.
// It carries decimals: as many as tell one multiple of step from the next, and one or two more
// if that makes all of them exact. Trailing zeros are omitted.
// If step is not positive, or style is no style, Format returns Mass.String.
func (m Mass) Format(style Style, step Mass) string {
	return kindMass.format(int64(m), style, int64(step))
}

// AppendText appends the text of [Mass.String] to b. The error is always nil.
func (m Mass) AppendText(b []byte) ([]byte, error) { return kindMass.append(b, int64(m)), nil }

// MarshalText returns the text of [Mass.String], so that JSON, flags and configuration files hold it. The error is always nil.
func (m Mass) MarshalText() ([]byte, error) { return kindMass.append(nil, int64(m)), nil }

// UnmarshalText sets *m to what [ParseMass] reads in text. On error it leaves *m as it was.
func (m *Mass) UnmarshalText(text []byte) error {
	v, err := parse(kindMass, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*m = Mass(v)
	}
	return err
}

// In returns m divided by unit, so m.In(Pound) is m in pounds.
// See the package documentation for its precision. It panics if unit is 0, as integer division does.
func (m Mass) In(unit Mass) float64 { return kindMass.in(int64(m), int64(unit)) }

// Decimal returns m divided by unit, rounded to that many decimal places, half away from zero.
// It returns an error wrapping [ErrRange] if unit is 0 or places is not from 0 to 64.
func (m Mass) Decimal(unit Mass, places int) (decimal.Decimal, error) {
	return kindMass.decimal(int64(m), int64(unit), places)
}

// Round returns the multiple of step nearest to m; of two as near, the one away from zero.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (m Mass) Round(step Mass) (Mass, error) {
	v, err := kindMass.round(wayRound, int64(m), int64(step))
	return Mass(v), err
}

// Ceil returns the least multiple of step that is not less than m.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (m Mass) Ceil(step Mass) (Mass, error) {
	v, err := kindMass.round(wayCeil, int64(m), int64(step))
	return Mass(v), err
}

// Floor returns the greatest multiple of step that is not more than m.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (m Mass) Floor(step Mass) (Mass, error) {
	v, err := kindMass.round(wayFloor, int64(m), int64(step))
	return Mass(v), err
}
