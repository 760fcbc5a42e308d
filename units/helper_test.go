package units

// Small units that the tests count in.
const (
	nanometer  Length = 1
	micrometer        = 1_000 * nanometer

	squareMicrometer Area = 1
	squareMillimeter      = 1_000_000 * squareMicrometer
	squareCentimeter      = 100 * squareMillimeter

	nanogram  Mass = 1
	milligram      = 1_000_000 * nanogram
)
