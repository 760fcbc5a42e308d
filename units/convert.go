package units

import (
	"math"
	"strconv"

	"github.com/shopspring/decimal"
)

// maxPlaces is the most decimal places that Decimal gives.
const maxPlaces = 64

// A Quantity is one of the four measures.
type Quantity interface {
	Length | Area | Mass | Power
}

// FromFloat returns value times unit, so FromFloat(7.5, Foot) is 7 ft 6 in. Below 2⁵³ base
// units it is at most one base unit off. It returns [ErrRange] if value is NaN or infinite, unit is 0, or the
// result does not fit.
func FromFloat[Q Quantity](value float64, unit Q) (Q, error) {
	k := kindOf(unit)
	if unit == 0 {
		return 0, k.unitError("FromFloat")
	}
	p := math.Round(value * float64(unit))
	if !(p >= -1<<63 && p < 1<<63) { // NaN too
		return 0, &Error{
			Func: "units.FromFloat", Field: "value", Value: strconv.FormatFloat(value, 'g', -1, 64),
			Want: k.limits() + " in that unit", Err: ErrRange,
		}
	}
	return Q(p), nil
}

// FromDecimal returns value times unit, exact and then rounded to a whole number of base units. It
// returns [ErrRange] if unit is 0 or the result does not fit.
func FromDecimal[Q Quantity](value decimal.Decimal, unit Q) (Q, error) {
	k := kindOf(unit)
	if unit == 0 {
		return 0, k.unitError("FromDecimal")
	}
	// value is below 10 to the power of top and, unless it is 0, at least a tenth of that. A unit is from 1 to 1<<63.
	// Outside these bounds the answer is known, and an exponent of a billion is never written out.
	top := int64(value.NumDigits()) + int64(value.Exponent())
	switch {
	case value.IsZero() || top < -20:
		return 0, nil
	case top <= 20:
		p := value.Mul(decimal.NewFromInt(int64(unit))).Round(0).BigInt()
		if p.IsInt64() {
			return Q(p.Int64()), nil
		}
	}
	text := value.Coefficient().String() + "e" + strconv.Itoa(int(value.Exponent()))
	if value.Exponent() <= 0 {
		text = value.String()
	}
	return 0, &Error{
		Func: "units.FromDecimal", Field: "value", Value: clip(text),
		Want: k.limits() + " in that unit", Err: ErrRange,
	}
}

// kindOf returns the kind of a quantity.
func kindOf[Q Quantity](q Q) kind {
	switch any(q).(type) {
	case Length:
		return kindLength
	case Area:
		return kindArea
	case Mass:
		return kindMass
	default:
		return kindPower
	}
}

// in returns v in units of unit.
func (k kind) in(v, unit int64) float64 {
	if unit == 0 {
		panic(k.unitError(kinds[k].name + ".In"))
	}
	return float64(v) / float64(unit)
}

// Decimal returns value divided by unit, rounded to places, 0 to 64. It returns [ErrRange] if unit
// is 0 or places is out of range.
func Decimal[Q Quantity](value, unit Q, places int) (decimal.Decimal, error) {
	if unit == 0 {
		return decimal.Decimal{}, kindOf(value).unitError("Decimal")
	}
	if places < 0 || places > maxPlaces {
		return decimal.Decimal{}, &Error{
			Func: "units.Decimal", Field: "places", Value: strconv.Itoa(places),
			Want: "0 to " + strconv.Itoa(maxPlaces), Err: ErrRange,
		}
	}
	return decimal.NewFromInt(int64(value)).DivRound(decimal.NewFromInt(int64(unit)), int32(places)), nil
}

func (k kind) unitError(fn string) error {
	return &Error{Func: "units." + fn, Field: "unit", Value: k.string(0), Want: "a unit that is not 0", Err: ErrRange}
}
