package units

import "database/sql/driver"

// A Power is an electric power: a whole number of milliwatts, from -9,223,372,036,854 kW to
// 9,223,372,036,854 kW.
//
// It says what a string of lights draws, not what a circuit may carry: follow the maker's
// label and local code, and ask a licensed electrician.
type Power int64

// Powers to multiply by.
const (
	Milliwatt Power = 1
	Watt      Power = 1_000 * Milliwatt
)

// ParsePower reads a power such as 175 W, 4.8 watts or 1.5 kW, to the
// nearest milliwatt. See Reading above.
func ParsePower(text string) (Power, error) {
	v, err := parse(kindPower, text)
	return Power(v), err
}

// String returns p exactly, in watts, as [ParsePower] reads it back: 175 W, 0.07 W.
func (p Power) String() string { return kindPower.string(int64(p)) }

// Format returns p in watts, rounded to step. See [Length.Format].
func (p Power) Format(style Style, step Power) string {
	return kindPower.format(int64(p), style, int64(step))
}

// MarshalText returns the text of String. It never fails.
func (p Power) MarshalText() ([]byte, error) { return kindPower.append(nil, int64(p)), nil }

// UnmarshalText is [ParsePower].
func (p *Power) UnmarshalText(text []byte) error {
	v, err := parse(kindPower, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*p = Power(v)
	}
	return err
}

// In returns p divided by unit: p.In(Watt) is p in watts. See [Length.In].
func (p Power) In(unit Power) float64 { return kindPower.in(int64(p), int64(unit)) }

// Value returns the text of String.
func (p Power) Value() (driver.Value, error) { return p.String(), nil }

// Scan reads text, or a whole number of base units; NULL is [ErrSyntax].
func (p *Power) Scan(src any) error {
	v, err := kindPower.scan(src)
	if err == nil {
		*p = Power(v)
	}
	return err
}
