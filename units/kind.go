package units

import "math"

// A kind says which of the four types a value or a text is of. All four are read, printed and
// rounded by the same code, as a whole number of base units with a table that names the units.
type kind uint8

const (
	kindLength kind = iota
	kindArea
	kindMass
	kindPower
)

// A named is a unit with the symbol that it is printed with.
type named struct {
	size   uint64 // base units, 0 for no unit
	symbol string
}

// A layout is what a style prints: a number of small units, and before it, if big is a unit, a whole number of big ones.
type layout struct {
	big, small named
}

// kinds describes each kind.
var kinds = [...]struct {
	name   string            // the type's name
	such   string            // a text that shows what is read
	units  string            // the units that are read
	styles [numStyles]layout // the styles but InMetric
	exact  Style             // the style of String, for what it can say exactly
	parts  uint64            // how many parts of a small unit String can say exactly, a power of two
	metric []named           // the units for InMetric and for the rest of String, falling
}{
	kindLength: {
		name:  "Length",
		such:  "7 ft 6 in",
		units: "one of yd, ft, in, m, cm, mm, um, nm",
		styles: [numStyles]layout{
			InFeetInches: {named{uint64(Foot), "ft"}, named{uint64(Inch), "in"}},
			InFeet:       {small: named{uint64(Foot), "ft"}},
			InInches:     {small: named{uint64(Inch), "in"}},
			InYards:      {small: named{uint64(Yard), "yd"}},
		},
		exact:  InFeetInches,
		parts:  64,
		metric: []named{{uint64(Meter), "m"}, {uint64(Centimeter), "cm"}, {uint64(Millimeter), "mm"}},
	},
	kindArea: {
		name:  "Area",
		such:  "12 sq ft",
		units: "one of sq yd, sq ft, sq in, sq m, sq cm, sq mm, sq um",
		styles: [numStyles]layout{
			InFeetInches: {named{uint64(SquareFoot), "sq ft"}, named{uint64(SquareInch), "sq in"}},
			InFeet:       {small: named{uint64(SquareFoot), "sq ft"}},
			InInches:     {small: named{uint64(SquareInch), "sq in"}},
			InYards:      {small: named{9 * uint64(SquareFoot), "sq yd"}},
		},
		exact:  InFeetInches,
		parts:  1,
		metric: []named{{uint64(SquareMeter), "m²"}, {uint64(SquareMeter / 10_000), "cm²"}, {uint64(SquareMeter / 1_000_000), "mm²"}},
	},
	kindMass: {
		name:  "Mass",
		such:  "3 lb 4 oz",
		units: "one of lb, oz, kg, g, mg, ng",
		styles: [numStyles]layout{
			InFeetInches: {named{uint64(Pound), "lb"}, named{uint64(Ounce), "oz"}},
			InFeet:       {small: named{uint64(Pound), "lb"}},
			InInches:     {small: named{uint64(Ounce), "oz"}},
			InYards:      {small: named{uint64(Pound), "lb"}},
		},
		exact:  InFeetInches,
		parts:  1,
		metric: []named{{uint64(Kilogram), "kg"}, {uint64(Gram), "g"}, {uint64(Gram / 1000), "mg"}},
	},
	kindPower: {
		name:  "Power",
		such:  "175 W",
		units: "one of kW, W, mW",
		styles: [numStyles]layout{
			InFeetInches: {small: named{uint64(Watt), "W"}},
			InFeet:       {small: named{uint64(Watt), "W"}},
			InInches:     {small: named{uint64(Watt), "W"}},
			InYards:      {small: named{uint64(Watt), "W"}},
		},
		exact:  InMetric,
		metric: []named{{uint64(Watt), "W"}},
	},
}

// limits returns the range of k in words.
func (k kind) limits() string {
	return k.string(math.MinInt64) + " to " + k.string(math.MaxInt64)
}

// magnitude returns the absolute value of v, that of -1<<63 included.
func magnitude(v int64) uint64 {
	return uint64(max(v, -v)) // -v is v for -1<<63
}

// signed returns mag with its sign, and whether that fits.
func signed(mag uint64, neg bool) (v int64, fits bool) {
	if neg {
		return int64(-mag), mag <= 1<<63
	}
	return int64(mag), mag < 1<<63
}
