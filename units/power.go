package units

// A Power is a power as a whole number of milliwatts.
type Power int64

// Powers to multiply by.
const (
	Milliwatt Power = 1
	Watt      Power = 1_000 * Milliwatt
	Kilowatt  Power = 1_000 * Watt
)
