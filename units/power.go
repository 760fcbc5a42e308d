package units

import "github.com/shopspring/decimal"

// A Power is an electric power as a whole number of milliwatts.
// The zero value is no power, and == tells whether two powers are equal.
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

// ParsePower returns the power that s gives, such as 175 W, 4.8 watts or 1.5 kW.
// The package documentation has the grammar.
// What is finer than a milliwatt is rounded to the nearest, half away from zero.
// It returns an error if s is not a power with a unit; the errors that it wraps are listed as variables of this package.
func ParsePower(s string) (Power, error) {
	v, err := parse(kindPower, s)
	return Power(v), err
}

// MustParsePower is [ParsePower] for constants in programs and tests. It panics if s is refused.
func MustParsePower(s string) Power {
	p, err := ParsePower(s)
	if err != nil {
		panic(err)
	}
	return p
}

// String returns p exactly, in watts, in a form that [ParsePower] reads back as p: 175 W, 1440 W, 0.07 W.
// For a rounded form see [Power.Format].
func (p Power) String() string { return kindPower.string(int64(p)) }

// Format returns p for people to read, in watts, rounded to the nearest multiple of step, half away from zero.
// It carries decimals: as many as tell one multiple of step from the next, and one or two more
// if that makes all of them exact. Trailing zeros are omitted.
// If step is not positive, or style is no style, Format returns Power.String.
func (p Power) Format(style Style, step Power) string {
	return kindPower.format(int64(p), style, int64(step))
}

// AppendText appends the text of [Power.String] to b. The error is always nil.
func (p Power) AppendText(b []byte) ([]byte, error) { return kindPower.append(b, int64(p)), nil }

// MarshalText returns the text of [Power.String], so that JSON, flags and configuration files hold it. The error is always nil.
func (p Power) MarshalText() ([]byte, error) { return kindPower.append(nil, int64(p)), nil }

// UnmarshalText sets *p to what [ParsePower] reads in text. On error it leaves *p as it was.
func (p *Power) UnmarshalText(text []byte) error {
	v, err := parse(kindPower, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*p = Power(v)
	}
	return err
}

// In returns p divided by unit, so p.In(Watt) is p in watts.
// See the package documentation for its precision. It panics if unit is 0, as integer division does.
func (p Power) In(unit Power) float64 { return kindPower.in(int64(p), int64(unit)) }

// Decimal returns p divided by unit, rounded to that many decimal places, half away from zero.
// It returns an error wrapping [ErrRange] if unit is 0 or places is not from 0 to 64.
func (p Power) Decimal(unit Power, places int) (decimal.Decimal, error) {
	return kindPower.decimal(int64(p), int64(unit), places)
}

// Round returns the multiple of step nearest to p; of two as near, the one away from zero.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (p Power) Round(step Power) (Power, error) {
	v, err := kindPower.round(wayRound, int64(p), int64(step))
	return Power(v), err
}

// Ceil returns the least multiple of step that is not less than p.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (p Power) Ceil(step Power) (Power, error) {
	v, err := kindPower.round(wayCeil, int64(p), int64(step))
	return Power(v), err
}

// Floor returns the greatest multiple of step that is not more than p.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (p Power) Floor(step Power) (Power, error) {
	v, err := kindPower.round(wayFloor, int64(p), int64(step))
	return Power(v), err
}
