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
