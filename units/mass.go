package units

// A Mass is a mass as a whole number of nanograms.
type Mass int64

// Masses to multiply by. All are exact by definition.
const (
	Nanogram  Mass = 1
	Milligram Mass = 1_000_000 * Nanogram
	Gram      Mass = 1_000 * Milligram
	Kilogram  Mass = 1_000 * Gram
	Ounce     Mass = 28_349_523_125 * Nanogram
	Pound     Mass = 16 * Ounce
)

// ParseMass reads a number and a unit, such as 3 lb 4 oz; see the package documentation for the grammar.
func ParseMass(s string) (Mass, error) {
	v, err := parse(kindMass, s)
	return Mass(v), err
}

// MustParseMass is [ParseMass] for constants in programs and tests: it panics if s is refused.
func MustParseMass(s string) Mass {
	m, err := ParseMass(s)
	if err != nil {
		panic(err)
	}
	return m
}

// String returns m exactly.
func (m Mass) String() string { return kindMass.string(int64(m)) }

// AppendText appends the text of [Mass.String] to b. The error is always nil.
func (m Mass) AppendText(b []byte) ([]byte, error) { return kindMass.append(b, int64(m)), nil }

// MarshalText returns the text of [Mass.String]. The error is always nil.
func (m Mass) MarshalText() ([]byte, error) { return kindMass.append(nil, int64(m)), nil }

// UnmarshalText sets *m to what [ParseMass] reads in text. On error it leaves *m as it was.
func (m *Mass) UnmarshalText(text []byte) error {
	v, err := parse(kindMass, string(text))
	if err == nil {
		*m = Mass(v)
	}
	return err
}
