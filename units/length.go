package units

import "database/sql/driver"

// A Length is a whole number of nanometers, from -9,223,372 km to 9,223,372 km.
type Length int64

// Lengths to multiply by. One nanometer is Length(1).
//
// Source: see the package.
const (
	Millimeter Length = 1_000_000
	Centimeter Length = 10 * Millimeter
	Meter      Length = 1_000 * Millimeter
	Inch       Length = 25_400_000
	Foot       Length = 12 * Inch
	Yard       Length = 3 * Foot
)

// ParseLength reads a length such as 7 ft 6 in, 7'6", 7 1/2 ft, 90in or 2.3 m, to the nearest
// nanometer. See Reading above.
func ParseLength(text string) (Length, error) {
	v, err := parse(kindLength, text)
	return Length(v), err
}

// String returns l exactly, as [ParseLength] reads it back:
//   - a whole number of sixty-fourths of an inch in feet and inches: 7 ft 6 1/2 in, 8 in, 0 ft;
//   - any other in the largest of m, cm and mm that it reaches: 2.3 m, 1.5 cm, 0.000001 mm.
func (l Length) String() string { return kindLength.string(int64(l)) }

// Format returns l rounded to the nearest multiple of step, in a style:
//   - with fractions if step is a whole number of sixty-fourths of an inch and the style prints
//     feet and inches or inches: 7 ft 6 1/16 in;
//   - otherwise with the decimals that step needs, and one or two more if that makes the value
//     exact. Trailing zeros are omitted.
//
// If step is not positive or style is unknown, Format returns String.
func (l Length) Format(style Style, step Length) string {
	return kindLength.format(int64(l), style, int64(step))
}

// MarshalText returns the text of String. It never fails.
func (l Length) MarshalText() ([]byte, error) { return kindLength.append(nil, int64(l)), nil }

// UnmarshalText is [ParseLength].
func (l *Length) UnmarshalText(text []byte) error {
	v, err := parse(kindLength, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*l = Length(v)
	}
	return err
}

// In returns l divided by unit: l.In(Foot) is l in feet. It panics if unit is 0.
// For its precision see Converting above.
func (l Length) In(unit Length) float64 { return kindLength.in(int64(l), int64(unit)) }

// Value returns the text of String.
func (l Length) Value() (driver.Value, error) { return l.String(), nil }

// Scan reads text, or a whole number of base units; NULL is [ErrSyntax].
func (l *Length) Scan(src any) error {
	v, err := kindLength.scan(src)
	if err == nil {
		*l = Length(v)
	}
	return err
}
