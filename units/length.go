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
