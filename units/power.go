package units

import "database/sql/driver"

// A Power is an electric power as a whole number of milliwatts.
// It holds from -9,223,372,036,854 kW to 9,223,372,036,854 kW; as with any integer, a sum beyond that wraps.
//
// It says what a string of lights draws, not what a circuit may carry:
// follow the maker's label, local code decides, and a licensed electrician is the one to ask.
type Power int64

// Powers to multiply by. All are exact by definition.
//
// Source: The International System of Units (SI), BIPM.
const (
	Milliwatt Power = 1
	Watt      Power = 1_000 * Milliwatt
	Kilowatt  Power = 1_000 * Watt
)

// ParsePower returns the power that text gives, such as 175 W, 4.8 watts or 1.5 kW.
// For the grammar, see Reading above. The result is rounded to the nearest milliwatt.
// Its errors wrap [ErrSyntax], [ErrName] or [ErrRange].
func ParsePower(text string) (Power, error) {
	v, err := parse(kindPower, text)
	return Power(v), err
}

// String returns p exactly, in watts, in a form that [ParsePower] reads back as p: 175 W, 1440 W, 0.07 W.
// For a rounded form see [Power.Format].
func (p Power) String() string { return kindPower.string(int64(p)) }

// Format returns p rounded to the nearest multiple of step, in watts. See [Length.Format].
func (p Power) Format(style Style, step Power) string {
	return kindPower.format(int64(p), style, int64(step))
}

// MarshalText returns [Power.String]. The error is always nil.
func (p Power) MarshalText() ([]byte, error) { return kindPower.append(nil, int64(p)), nil }

// UnmarshalText sets *p to what [ParsePower] returns. On an error *p is unchanged.
func (p *Power) UnmarshalText(text []byte) error {
	v, err := parse(kindPower, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*p = Power(v)
	}
	return err
}

// In returns p divided by unit, so p.In(Watt) is p in watts. See [Length.In].
func (p Power) In(unit Power) float64 { return kindPower.in(int64(p), int64(unit)) }

// Value returns [Power.String], so that a database column of text holds p.
func (p Power) Value() (driver.Value, error) { return p.String(), nil }

// Scan sets *p from a column of text, as [ParsePower] does, or from a whole number of
// base units. On an error *p is unchanged.
func (p *Power) Scan(src any) error {
	v, err := kindPower.scan(src)
	if err == nil {
		*p = Power(v)
	}
	return err
}
