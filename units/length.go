package units

import "database/sql/driver"

// A Length is a signed distance as a whole number of nanometers.
// It holds from -9,223,372 km to 9,223,372 km; as with any integer, a sum beyond that wraps.
type Length int64

// Lengths to multiply by, as in 7*units.Foot + 6*units.Inch. All are exact by definition.
// There is no mile and no kilometer, since nothing that is dressed here is that long.
//
// Source: International Yard and Pound Agreement, in force 1 July 1959, which sets the yard at 0.9144 m;
// a foot is a third of it and an inch a thirty-sixth. Metric prefixes: The International System of Units (SI), BIPM.
const (
	Millimeter Length = 1_000_000
	Centimeter Length = 10 * Millimeter
	Meter      Length = 1_000 * Millimeter
	Inch       Length = 25_400_000
	Foot       Length = 12 * Inch
	Yard       Length = 3 * Foot
)

// ParseLength returns the length that text gives, such as 7 ft 6 in, 7'6", 7 1/2 ft, 90in or 2.3 m.
// For the grammar, see Reading above. The result is rounded to the nearest nanometer.
// Its errors wrap [ErrSyntax], [ErrName] or [ErrRange].
func ParseLength(text string) (Length, error) {
	v, err := parse(kindLength, text)
	return Length(v), err
}

// String returns l exactly, in a form that [ParseLength] reads back as l:
//   - a whole number of sixty-fourths of an inch in feet and inches: 7 ft 6 1/2 in, 8 in, 0 ft;
//   - any other in the largest of m, cm and mm that it reaches: 2.3 m, 1.5 cm, 0.000001 mm.
//
// A minus sign applies to the whole: -7 ft 6 in is 90 inches below zero. For a rounded
// form see [Length.Format].
func (l Length) String() string { return kindLength.string(int64(l)) }

// Format returns l for people to read, rounded to the nearest multiple of step, half
// away from zero:
//   - inches have fractions if step is a whole number of sixty-fourths of an inch: 7 ft 6 1/16 in;
//   - everything else has decimals, enough to tell one multiple of step from the next,
//     and one or two more if that makes them exact. Trailing zeros are omitted.
//
// If step is not positive or style is unknown, Format returns [Length.String].
func (l Length) Format(style Style, step Length) string {
	return kindLength.format(int64(l), style, int64(step))
}

// MarshalText returns [Length.String], for JSON, flags and configuration files. The
// error is always nil.
func (l Length) MarshalText() ([]byte, error) { return kindLength.append(nil, int64(l)), nil }

// UnmarshalText sets *l to what [ParseLength] returns. On an error *l is unchanged.
func (l *Length) UnmarshalText(text []byte) error {
	v, err := parse(kindLength, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*l = Length(v)
	}
	return err
}

// In returns l divided by unit, so l.In(Foot) is l in feet.
// For its precision, see Converting above. It panics if unit is 0, as integer division does.
func (l Length) In(unit Length) float64 { return kindLength.in(int64(l), int64(unit)) }

// Value returns [Length.String], so that a database column of text holds l.
func (l Length) Value() (driver.Value, error) { return l.String(), nil }

// Scan sets *l from a column of text, as [ParseLength] does, or from a whole number of
// base units. On an error *l is unchanged.
func (l *Length) Scan(src any) error {
	v, err := kindLength.scan(src)
	if err == nil {
		*l = Length(v)
	}
	return err
}
