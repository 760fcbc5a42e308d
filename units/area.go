package units

import (
	"database/sql/driver"
	"math/bits"
)

// An Area is a whole number of square micrometers, from -9,223,372 m² to 9,223,372 m².
type Area int64

// Areas to multiply by: the squares of the lengths.
const (
	SquareMeter Area = 1_000_000_000_000
	SquareInch  Area = 645_160_000
	SquareFoot  Area = 144 * SquareInch
)

// AreaOf returns width times height, rounded to the nearest square micrometer. It is negative
// if one of the two is. It returns [ErrRange] if the area does not fit.
func AreaOf(width, height Length) (Area, error) {
	const perArea = 1_000_000 // square nanometers in a square micrometer
	hi, lo := bits.Mul64(magnitude(int64(width)), magnitude(int64(height)))
	if hi >= perArea {
		return 0, areaOfError(width, height)
	}
	mag, r := bits.Div64(hi, lo, perArea)
	if r >= perArea/2 {
		mag++
	}
	v, fits := signed(mag, width^height < 0)
	if !fits {
		return 0, areaOfError(width, height)
	}
	return Area(v), nil
}

func areaOfError(width, height Length) error {
	return &Error{
		Func: "units.AreaOf", Field: "width", Value: width.String() + " by " + height.String(),
		Want: "an area from " + kindArea.limits(), Err: ErrRange,
	}
}

// ParseArea reads an area such as 12 sq ft, 12.5 ft², 12 square feet 72 square inches or 2 m2, to the
// nearest square micrometer. See Reading above.
func ParseArea(text string) (Area, error) {
	v, err := parse(kindArea, text)
	return Area(v), err
}

// String returns a exactly, as [ParseArea] reads it back:
//   - a whole number of square inches in square feet and inches: 12 sq ft 72 sq in, 0 sq ft;
//   - any other in the largest of m², cm² and mm² that it reaches: 2.5 m².
func (a Area) String() string { return kindArea.string(int64(a)) }

// Format returns a in a style, rounded to step. See [Length.Format].
func (a Area) Format(style Style, step Area) string {
	return kindArea.format(int64(a), style, int64(step))
}

// MarshalText returns the text of String. It never fails.
func (a Area) MarshalText() ([]byte, error) { return kindArea.append(nil, int64(a)), nil }

// UnmarshalText is [ParseArea].
func (a *Area) UnmarshalText(text []byte) error {
	v, err := parse(kindArea, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*a = Area(v)
	}
	return err
}

// In returns a divided by unit: a.In(SquareFoot) is a in square feet. See [Length.In].
func (a Area) In(unit Area) float64 { return kindArea.in(int64(a), int64(unit)) }

// Value returns the text of String.
func (a Area) Value() (driver.Value, error) { return a.String(), nil }

// Scan reads text, or a whole number of base units; NULL is [ErrSyntax].
func (a *Area) Scan(src any) error {
	v, err := kindArea.scan(src)
	if err == nil {
		*a = Area(v)
	}
	return err
}
