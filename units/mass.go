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
