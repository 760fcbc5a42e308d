package units

// A Length is a signed distance as a whole number of nanometers.
type Length int64

// Lengths to multiply by, as in 7*units.Foot + 6*units.Inch. All are exact by definition.
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

// ParseLength reads a number and a unit, such as 7 ft 6 in; see the package documentation for the grammar.
func ParseLength(s string) (Length, error) {
	v, err := parse(kindLength, s)
	return Length(v), err
}

// MustParseLength is [ParseLength] for constants in programs and tests: it panics if s is refused.
func MustParseLength(s string) Length {
	l, err := ParseLength(s)
	if err != nil {
		panic(err)
	}
	return l
}

// String returns l exactly.
func (l Length) String() string { return kindLength.string(int64(l)) }

// AppendText appends the text of [Length.String] to b. The error is always nil.
func (l Length) AppendText(b []byte) ([]byte, error) { return kindLength.append(b, int64(l)), nil }

// MarshalText returns the text of [Length.String]. The error is always nil.
func (l Length) MarshalText() ([]byte, error) { return kindLength.append(nil, int64(l)), nil }

// UnmarshalText sets *l to what [ParseLength] reads in text. On error it leaves *l as it was.
func (l *Length) UnmarshalText(text []byte) error {
	v, err := parse(kindLength, string(text))
	if err == nil {
		*l = Length(v)
	}
	return err
}
