package units

import "github.com/shopspring/decimal"

// A Length is a signed distance as a whole number of nanometers.
// The zero value is no distance, and == tells whether two lengths are equal.
// It holds from -9,223,372 km to 9,223,372 km; as with any integer, a sum beyond that wraps.
type Length int64

// Lengths to multiply by, as in 7*units.Foot + 6*units.Inch. All are exact by definition.
// There is no mile and no kilometer, since nothing that is dressed here is that long.
//
// Source: International Yard and Pound Agreement, in force 1 July 1959, which sets the yard at 0.9144 m;
// a foot is a third of it and an inch a thirty-sixth. Metric prefixes: The International System of Units (SI), BIPM.
const (
	Nanometer  Length = 1
	Micrometer Length = 1_000 * Nanometer
	Millimeter Length = 1_000_000 * Nanometer
	Centimeter Length = 10 * Millimeter
	Meter      Length = 1_000 * Millimeter
	Inch       Length = 25_400_000 * Nanometer
	Foot       Length = 12 * Inch
	Yard       Length = 3 * Foot
)

// Feet returns l in feet, as precise as [Length.In].
func (l Length) Feet() float64 { return l.In(Foot) }

// Inches returns l in inches, as precise as [Length.In].
func (l Length) Inches() float64 { return l.In(Inch) }

// ParseLength returns the length that s gives, such as 7 ft 6 in, 7'6", 7 1/2 ft, 90in or 2.3 m.
// The package documentation has the grammar.
// What is finer than a nanometer is rounded to the nearest, half away from zero.
// It returns an error if s is not a length with a unit; the errors that it wraps are listed as variables of this package.
func ParseLength(s string) (Length, error) {
	v, err := parse(kindLength, s)
	return Length(v), err
}

// MustParseLength is [ParseLength] for constants in programs and tests. It panics if s is refused.
func MustParseLength(s string) Length {
	l, err := ParseLength(s)
	if err != nil {
		panic(err)
	}
	return l
}

// String returns l exactly, in a form that [ParseLength] reads back as l:
//   - a whole number of sixty-fourths of an inch in feet and inches: 7 ft 6 1/2 in, 8 in, 0 ft;
//   - any other in the largest of m, cm and mm that it reaches: 2.3 m, 1.5 cm, 0.000001 mm.
//
// A minus in front holds for the whole: -7 ft 6 in. For a rounded form see [Length.Format].
func (l Length) String() string { return kindLength.string(int64(l)) }

// Format returns l for people to read, rounded to the nearest multiple of step, half away from zero.
// Inches carry fractions if step is a whole number of sixty-fourths of an inch: 7 ft 6 1/16 in.
// Everything else carries decimals: as many as tell one multiple of step from the next, and one or two more
// if that makes all of them exact. Trailing zeros are omitted.
// If step is not positive, or style is no style, Format returns Length.String.
func (l Length) Format(style Style, step Length) string {
	return kindLength.format(int64(l), style, int64(step))
}

// AppendText appends the text of [Length.String] to b. The error is always nil.
func (l Length) AppendText(b []byte) ([]byte, error) { return kindLength.append(b, int64(l)), nil }

// MarshalText returns the text of [Length.String], so that JSON, flags and configuration files hold it. The error is always nil.
func (l Length) MarshalText() ([]byte, error) { return kindLength.append(nil, int64(l)), nil }

// UnmarshalText sets *l to what [ParseLength] reads in text. On error it leaves *l as it was.
func (l *Length) UnmarshalText(text []byte) error {
	v, err := parse(kindLength, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*l = Length(v)
	}
	return err
}

// In returns l divided by unit, so l.In(Foot) is l in feet.
// See the package documentation for its precision. It panics if unit is 0, as integer division does.
func (l Length) In(unit Length) float64 { return kindLength.in(int64(l), int64(unit)) }

// Decimal returns l divided by unit, rounded to that many decimal places, half away from zero.
// It returns an error wrapping [ErrRange] if unit is 0 or places is not from 0 to 64.
func (l Length) Decimal(unit Length, places int) (decimal.Decimal, error) {
	return kindLength.decimal(int64(l), int64(unit), places)
}

// Round returns the multiple of step nearest to l; of two as near, the one away from zero.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (l Length) Round(step Length) (Length, error) {
	v, err := kindLength.round(wayRound, int64(l), int64(step))
	return Length(v), err
}

// Ceil returns the least multiple of step that is not less than l.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (l Length) Ceil(step Length) (Length, error) {
	v, err := kindLength.round(wayCeil, int64(l), int64(step))
	return Length(v), err
}

// Floor returns the greatest multiple of step that is not more than l.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (l Length) Floor(step Length) (Length, error) {
	v, err := kindLength.round(wayFloor, int64(l), int64(step))
	return Length(v), err
}
