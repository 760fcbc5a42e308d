package units

import (
	"math/bits"

	"github.com/shopspring/decimal"
)

// An Area is a signed area as a whole number of square micrometers.
// The zero value is no area, and == tells whether two areas are equal.
// It holds from -9,223,372 m² to 9,223,372 m²; as with any integer, a sum beyond that wraps.
type Area int64

// Areas to multiply by. All are exact by definition: the squares of the lengths of the same name.
//
// Source: that of the lengths, as for [Inch].
const (
	SquareMicrometer Area = 1
	SquareMillimeter Area = 1_000_000 * SquareMicrometer
	SquareCentimeter Area = 100 * SquareMillimeter
	SquareMeter      Area = 1_000_000 * SquareMillimeter
	SquareInch       Area = 645_160_000 * SquareMicrometer
	SquareFoot       Area = 144 * SquareInch
	SquareYard       Area = 9 * SquareFoot
)

// AreaOf returns the area of a rectangle, width times height, rounded to the nearest square micrometer, half away from zero.
// It is negative if one of the two is. Multiplying two lengths with * does not give an area.
// It returns an error wrapping [ErrRange] if the area does not fit.
func AreaOf(width, height Length) (Area, error) {
	const perArea = uint64(Micrometer * Micrometer)
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
		Func: "units.AreaOf", Field: "width and height", Value: width.String() + " by " + height.String(),
		Want: "an area from " + kindArea.limits(), Err: ErrRange,
	}
}

// ParseArea returns the area that s gives, such as 12 sq ft, 12.5 ft², 12 square feet 72 square inches or 2 m2.
// The package documentation has the grammar.
// What is finer than a square micrometer is rounded to the nearest, half away from zero.
// It returns an error if s is not an area with a unit; the errors that it wraps are listed as variables of this package.
func ParseArea(s string) (Area, error) {
	v, err := parse(kindArea, s)
	return Area(v), err
}

// MustParseArea is [ParseArea] for constants in programs and tests. It panics if s is refused.
func MustParseArea(s string) Area {
	a, err := ParseArea(s)
	if err != nil {
		panic(err)
	}
	return a
}

// String returns a exactly, in a form that [ParseArea] reads back as a:
//   - a whole number of square inches in square feet and inches: 12 sq ft 72 sq in, 0 sq ft;
//   - any other in the largest of m², cm² and mm² that it reaches: 2.5 m².
//
// A minus in front holds for the whole. For a rounded form see [Area.Format].
func (a Area) String() string { return kindArea.string(int64(a)) }

// Format returns a for people to read, rounded to the nearest multiple of step, half away from zero.
// It carries decimals: as many as tell one multiple of step from the next, and one or two more
// if that makes all of them exact. Trailing zeros are omitted.
// If step is not positive, or style is no style, Format returns Area.String.
func (a Area) Format(style Style, step Area) string {
	return kindArea.format(int64(a), style, int64(step))
}

// AppendText appends the text of [Area.String] to b. The error is always nil.
func (a Area) AppendText(b []byte) ([]byte, error) { return kindArea.append(b, int64(a)), nil }

// MarshalText returns the text of [Area.String], so that JSON, flags and configuration files hold it. The error is always nil.
func (a Area) MarshalText() ([]byte, error) { return kindArea.append(nil, int64(a)), nil }

// UnmarshalText sets *a to what [ParseArea] reads in text. On error it leaves *a as it was.
func (a *Area) UnmarshalText(text []byte) error {
	v, err := parse(kindArea, string(text[:min(len(text), maxText+1)]))
	if err == nil {
		*a = Area(v)
	}
	return err
}

// In returns a divided by unit, so a.In(SquareFoot) is a in square feet.
// See the package documentation for its precision. It panics if unit is 0, as integer division does.
func (a Area) In(unit Area) float64 { return kindArea.in(int64(a), int64(unit)) }

// Decimal returns a divided by unit, rounded to that many decimal places, half away from zero.
// It returns an error wrapping [ErrRange] if unit is 0 or places is not from 0 to 64.
func (a Area) Decimal(unit Area, places int) (decimal.Decimal, error) {
	return kindArea.decimal(int64(a), int64(unit), places)
}

// Round returns the multiple of step nearest to a; of two as near, the one away from zero.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (a Area) Round(step Area) (Area, error) {
	v, err := kindArea.round(wayRound, int64(a), int64(step))
	return Area(v), err
}

// Ceil returns the least multiple of step that is not less than a.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (a Area) Ceil(step Area) (Area, error) {
	v, err := kindArea.round(wayCeil, int64(a), int64(step))
	return Area(v), err
}

// Floor returns the greatest multiple of step that is not more than a.
// It returns an error wrapping [ErrRange] if step is not positive or the result does not fit.
func (a Area) Floor(step Area) (Area, error) {
	v, err := kindArea.round(wayFloor, int64(a), int64(step))
	return Area(v), err
}
