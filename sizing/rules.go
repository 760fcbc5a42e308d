package sizing

import (
	"math/bits"
	"strconv"

	"example.com/fircone/units"
)

// The heights of tree that this package takes.
const (
	MinHeight units.Length = 1 * units.Foot
	MaxHeight units.Length = 100 * units.Foot
)

// Rules are the rules of thumb for a tree: so much for each foot of its height.
// They know nothing of its width or of how much of it is seen; for a slim tree, a
// tree in a corner or one outside 6 to 8 ft, size by shape instead, see [Look].
//
// [CommonPractice] returns the usual ones. A shop with habits of its own changes
// a field; a field of zero asks for none. The methods check the field they use.
//
// Rounding is one policy. Ornament types, and how many of each, go by whole feet, and
// a part foot adds none: 7 ft 6 in counts as 7. A supply (picks, garland, ribbon,
// lights) goes by the exact height and rounds up.
type Rules struct {
	// TypesPerFoot is the ornament types for each whole foot, 0 to 100.
	TypesPerFoot int `json:"typesPerFoot"`

	// EachSpread is how far the count of each type may go below and above the
	// whole feet of height, 0 to 100.
	EachSpread int `json:"eachSpread"`

	// PicksPerFoot is the picks for each foot, 0 to 1000.
	PicksPerFoot int `json:"picksPerFoot"`

	// GarlandPerFoot is the garland for each foot, 0 to 100 ft.
	GarlandPerFoot units.Length `json:"garlandPerFoot"`

	// RibbonPerFoot is the ribbon, wound as garland is, for each foot, 0 to 100 ft.
	RibbonPerFoot units.Length `json:"ribbonPerFoot"`

	// LightsPerFoot is the miniature lights for each foot, 0 to 10000.
	LightsPerFoot int `json:"lightsPerFoot"`
}

// CommonPractice returns the rules of thumb that most of the trade follows:
//
//	ornament types       1 for each foot
//	of each type         the height in feet, less 2 to plus 2
//	picks                3 for each foot
//	garland, or ribbon   9 ft for each foot
//	lights               100 for each foot (150 to 200 for a bright tree)
//
// They suit a full tree of 6 to 8 ft that is seen from all sides.
//
// Source: common practice, for which there is no published standard; the figure
// for lights, and that ribbon takes what garland does, from memory.
func CommonPractice() Rules {
	return Rules{
		TypesPerFoot:   1,
		EachSpread:     2,
		PicksPerFoot:   3,
		GarlandPerFoot: 9 * units.Foot,
		RibbonPerFoot:  9 * units.Foot,
		LightsPerFoot:  100,
	}
}

// Types returns how many different ornaments a tree of this height carries:
//
//	types = TypesPerFoot · whole feet of height
//
// A part foot adds none. It returns an [units.Error] wrapping [units.ErrRange] if the height
// is not from 1 ft to 100 ft, or TypesPerFoot is out of its range.
//
// Source: common practice.
func (r Rules) Types(height units.Length) (int, error) {
	if err := checkHeight("Rules.Types", height); err != nil {
		return 0, err
	}
	if err := checkCount("Rules.Types", "TypesPerFoot", r.TypesPerFoot, 100); err != nil {
		return 0, err
	}
	return r.TypesPerFoot * wholeFeet(height), nil
}

// Each returns how many there should be of each type of ornament:
//
//	whole feet of height - EachSpread   to   whole feet of height + EachSpread
//
// and never fewer than one. Large or costly ornaments go by the low end, small
// ones by the high end. A part foot adds none. It returns an [units.Error] wrapping
// [units.ErrRange] if the height is not from 1 ft to 100 ft, or EachSpread is out of
// its range.
//
// Source: common practice.
func (r Rules) Each(height units.Length) (Band, error) {
	if err := checkHeight("Rules.Each", height); err != nil {
		return Band{}, err
	}
	if err := checkCount("Rules.Each", "EachSpread", r.EachSpread, 100); err != nil {
		return Band{}, err
	}
	feet := wholeFeet(height)
	return Band{Min: max(1, feet-r.EachSpread), Max: feet + r.EachSpread}, nil
}

// Ornaments returns how many ornaments there are in all, the types of
// [Rules.Types] times the band of [Rules.Each]. Its errors are theirs.
//
// Source: common practice.
func (r Rules) Ornaments(height units.Length) (Band, error) {
	types, err := r.Types(height)
	if err != nil {
		return Band{}, err
	}
	each, err := r.Each(height)
	if err != nil {
		return Band{}, err
	}
	return Band{Min: types * each.Min, Max: types * each.Max}, nil
}

// Picks returns how many picks (stems of berries, leaves or flowers pushed in
// among the branches) a tree of this height takes where no garland is wound:
//
//	picks = PicksPerFoot · height in feet
//
// by the exact height, rounded up. It returns an [units.Error] wrapping [units.ErrRange] if
// the height is not from 1 ft to 100 ft, or PicksPerFoot is out of its range.
//
// Source: common practice.
func (r Rules) Picks(height units.Length) (int, error) {
	return countPerFoot("Rules.Picks", height, "PicksPerFoot", r.PicksPerFoot, 1000)
}

// Lights returns how many miniature lights a tree of this height takes:
//
//	lights = LightsPerFoot · height in feet
//
// by the exact height, rounded up. It returns an [units.Error] wrapping [units.ErrRange] if
// the height is not from 1 ft to 100 ft, or LightsPerFoot is out of its range.
// For strings, runs and the load on a circuit, see [Strings].
//
// Source: common practice, from memory.
func (r Rules) Lights(height units.Length) (int, error) {
	return countPerFoot("Rules.Lights", height, "LightsPerFoot", r.LightsPerFoot, 10_000)
}

// Garland returns how much garland winds round a tree of this height:
//
//	length = GarlandPerFoot · height in feet
//
// by the exact height, rounded up to a nanometer. It returns an [units.Error] wrapping
// [units.ErrRange] if the height is not from 1 ft to 100 ft, or GarlandPerFoot is out
// of its range. Where a printed chart and the rule disagree, the rule decides.
//
// Source: common practice.
func (r Rules) Garland(height units.Length) (units.Length, error) {
	return lengthPerFoot("Rules.Garland", height, "GarlandPerFoot", r.GarlandPerFoot)
}

// Ribbon returns how much ribbon winds round a tree of this height in place of
// garland:
//
//	length = RibbonPerFoot · height in feet
//
// by the exact height, rounded up to a nanometer. It returns an [units.Error] wrapping
// [units.ErrRange] if the height is not from 1 ft to 100 ft, or RibbonPerFoot is out of
// its range.
//
// Source: common practice; that it is the same length as for garland, from memory.
func (r Rules) Ribbon(height units.Length) (units.Length, error) {
	return lengthPerFoot("Rules.Ribbon", height, "RibbonPerFoot", r.RibbonPerFoot)
}

// Strands says what a length is made up from: strands of garland or rolls of
// ribbon that are all as long as Each and are joined end to end.
type Strands struct {
	Total units.Length `json:"total"` // what is needed, 0 to 100 km
	Each  units.Length `json:"each"`  // the length of one strand or roll, 1 in to 1000 ft
}

// Count returns how many strands cover the total:
//
//	count = Total / Each
//
// rounded up, with nothing lost where two are joined; for that, and for strands
// of several lengths and prices, see package shopping. It returns an [units.Error]
// wrapping [units.ErrRange] if a field is out of its range.
func (s Strands) Count() (int, error) {
	const maxTotal, maxEach = 100_000 * units.Meter, 1000 * units.Foot
	if s.Total < 0 || s.Total > maxTotal {
		return 0, rangeError("Strands.Count", "Total", s.Total.String(), "0 ft to 100000 m")
	}
	if s.Each < units.Inch || s.Each > maxEach {
		return 0, rangeError("Strands.Count", "Each", s.Each.String(), "1 in to 1000 ft")
	}
	return int((s.Total + s.Each - 1) / s.Each), nil
}

// wholeFeet returns the whole feet in a height that checkHeight has passed.
func wholeFeet(height units.Length) int { return int(height / units.Foot) }

// countPerFoot returns perFoot for each foot of height, rounded up.
func countPerFoot(fn string, height units.Length, field string, perFoot, most int) (int, error) {
	if err := checkHeight(fn, height); err != nil {
		return 0, err
	}
	if err := checkCount(fn, field, perFoot, most); err != nil {
		return 0, err
	}
	return int((int64(perFoot)*int64(height) + int64(units.Foot) - 1) / int64(units.Foot)), nil
}

// lengthPerFoot returns perFoot for each foot of height, rounded up to a nanometer.
func lengthPerFoot(fn string, height units.Length, field string, perFoot units.Length) (units.Length, error) {
	if err := checkHeight(fn, height); err != nil {
		return 0, err
	}
	if perFoot < 0 || perFoot > 100*units.Foot {
		return 0, rangeError(fn, field, perFoot.String(), "0 ft to 100 ft")
	}
	hi, lo := bits.Mul64(uint64(perFoot), uint64(height))
	quo, rem := bits.Div64(hi, lo, uint64(units.Foot))
	if rem != 0 {
		quo++
	}
	return units.Length(quo), nil
}

func checkHeight(fn string, height units.Length) error {
	if height < MinHeight || height > MaxHeight {
		return rangeError(fn, "height", height.String(), "1 ft to 100 ft")
	}
	return nil
}

func checkCount(fn, field string, n, most int) error {
	if n < 0 || n > most {
		return rangeError(fn, field, strconv.Itoa(n), "0 to "+strconv.Itoa(most))
	}
	return nil
}

func rangeError(fn, field, value, want string) error {
	return &units.Error{Func: "sizing." + fn, Field: field, Value: value, Want: want, Err: units.ErrRange}
}
