package units

// A Power is a power as a whole number of milliwatts.
type Power int64

// Powers to multiply by.
const (
	Milliwatt Power = 1
	Watt      Power = 1_000 * Milliwatt
	Kilowatt  Power = 1_000 * Watt
)

// ParsePower reads a number and a unit, such as 175 W; see the package documentation for the grammar.
func ParsePower(s string) (Power, error) {
	v, err := parse(kindPower, s)
	return Power(v), err
}

// MustParsePower is [ParsePower] for constants in programs and tests: it panics if s is refused.
func MustParsePower(s string) Power {
	p, err := ParsePower(s)
	if err != nil {
		panic(err)
	}
	return p
}

// String returns p exactly.
func (p Power) String() string { return kindPower.string(int64(p)) }

// AppendText appends the text of [Power.String] to b. The error is always nil.
func (p Power) AppendText(b []byte) ([]byte, error) { return kindPower.append(b, int64(p)), nil }

// MarshalText returns the text of [Power.String]. The error is always nil.
func (p Power) MarshalText() ([]byte, error) { return kindPower.append(nil, int64(p)), nil }

// UnmarshalText sets *p to what [ParsePower] reads in text. On error it leaves *p as it was.
func (p *Power) UnmarshalText(text []byte) error {
	v, err := parse(kindPower, string(text))
	if err == nil {
		*p = Power(v)
	}
	return err
}
