package units

// An Area is a signed area as a whole number of square micrometers.
type Area int64

// Areas to multiply by. All are exact by definition.
const (
	SquareMicrometer Area = 1
	SquareMillimeter Area = 1_000_000 * SquareMicrometer
	SquareCentimeter Area = 100 * SquareMillimeter
	SquareMeter      Area = 1_000_000 * SquareMillimeter
	SquareInch       Area = 645_160_000 * SquareMicrometer
	SquareFoot       Area = 144 * SquareInch
	SquareYard       Area = 9 * SquareFoot
)

// ParseArea reads a number and a unit, such as 12 sq ft; see the package documentation for the grammar.
func ParseArea(s string) (Area, error) {
	v, err := parse(kindArea, s)
	return Area(v), err
}

// MustParseArea is [ParseArea] for constants in programs and tests: it panics if s is refused.
func MustParseArea(s string) Area {
	a, err := ParseArea(s)
	if err != nil {
		panic(err)
	}
	return a
}

// String returns a exactly.
func (a Area) String() string { return kindArea.string(int64(a)) }

// AppendText appends the text of [Area.String] to b. The error is always nil.
func (a Area) AppendText(b []byte) ([]byte, error) { return kindArea.append(b, int64(a)), nil }

// MarshalText returns the text of [Area.String]. The error is always nil.
func (a Area) MarshalText() ([]byte, error) { return kindArea.append(nil, int64(a)), nil }

// UnmarshalText sets *a to what [ParseArea] reads in text. On error it leaves *a as it was.
func (a *Area) UnmarshalText(text []byte) error {
	v, err := parse(kindArea, string(text))
	if err == nil {
		*a = Area(v)
	}
	return err
}
