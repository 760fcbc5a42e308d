package units

import (
	"math"
	"strconv"
)

// A named is a unit with the symbol it is printed with.
type named struct {
	size   uint64
	symbol string
}

// kinds says how each kind of quantity is named in errors and printed.
var kinds = [...]struct {
	name   string // the type's name
	such   string // a text to show what is read
	units  string // the units that are read
	big    named  // the customary unit; size 0 if there is none
	small  named  // the smaller customary unit, printed after it
	parts  uint64 // how finely String splits a small unit
	metric []named
}{
	kindLength: {
		"Length", "7 ft 6 in", "one of nm, um, mm, cm, m, in, ft, yd",
		named{uint64(Foot), "ft"},
		named{uint64(Inch), "in"},
		64,
		[]named{{uint64(Meter), "m"}, {uint64(Centimeter), "cm"}, {uint64(Millimeter), "mm"}},
	},
	kindArea: {
		"Area", "12 sq ft", "one of sq um, sq mm, sq cm, sq m, sq in, sq ft, sq yd",
		named{uint64(SquareFoot), "sq ft"},
		named{uint64(SquareInch), "sq in"},
		1,
		[]named{{uint64(SquareMeter), "m²"}, {uint64(SquareCentimeter), "cm²"}, {uint64(SquareMillimeter), "mm²"}},
	},
	kindMass: {
		"Mass", "3 lb 4 oz", "one of ng, mg, g, kg, oz, lb",
		named{uint64(Pound), "lb"},
		named{uint64(Ounce), "oz"},
		1,
		[]named{{uint64(Kilogram), "kg"}, {uint64(Gram), "g"}, {uint64(Milligram), "mg"}},
	},
	kindPower: {
		"Power", "175 W", "one of mW, W, kW",
		named{}, named{}, 1,
		[]named{{uint64(Watt), "W"}},
	},
}

// faults gives each fault its error and what to write instead.
// An empty text stands for a number and a unit of the kind.
var faults = [...]struct {
	err  error
	want string
}{
	faultEmpty:       {ErrEmpty, ""},
	faultTooLong:     {ErrTooLong, "at most 64 bytes"},
	faultNumber:      {ErrSyntax, ""},
	faultPoint:       {ErrSyntax, "a digit after the decimal point"},
	faultPeriod:      {ErrSyntax, "a space after the period of an abbreviation"},
	faultDenominator: {ErrSyntax, "a number from 1 up under the fraction"},
	faultMiddle:      {ErrSyntax, "decimals or a fraction in the last part only"},
	faultNoUnit:      {ErrNoUnit, ""},
	faultUnknownUnit: {ErrUnknownUnit, ""},
	faultSign:        {ErrSign, "at most one sign, in front"},
	faultComma:       {ErrComma, "a decimal point, and nothing between thousands or parts"},
	faultExponent:    {ErrExponent, "the number written out"},
	faultOrder:       {ErrOrder, "each unit smaller than the one before it"},
	faultCarry:       {ErrCarry, "each part smaller than one of what stands before it"},
	faultRange:       {ErrRange, ""},
}

// limits returns the range of k in words.
func (k kind) limits() string {
	b := k.append(nil, math.MinInt64)
	b = append(b, " to "...)
	return string(k.append(b, math.MaxInt64))
}

// append appends the exact form of v.
func (k kind) append(b []byte, v int64) []byte {
	b, mag := appendSign(b, v)
	d := &kinds[k]
	if d.big.size != 0 && mag%(d.small.size/d.parts) == 0 {
		return appendCompound(b, mag, d.big, d.small, d.parts)
	}
	return appendMetric(b, mag, d.metric)
}

// string returns the exact form of v.
func (k kind) string(v int64) string {
	var buf [48]byte
	return string(k.append(buf[:0], v))
}

// appendSign appends a minus if v is negative, and returns the magnitude of v.
func appendSign(b []byte, v int64) ([]byte, uint64) {
	if v < 0 {
		return append(b, '-'), -uint64(v)
	}
	return b, uint64(v)
}

// appendCompound appends mag as a whole number of big units and what is left in small ones, as in 7 ft 6 1/2 in.
// What is left must be a multiple of small.size/parts.
func appendCompound(b []byte, mag uint64, big, small named, parts uint64) []byte {
	n, rest := mag/big.size, mag%big.size
	if n != 0 || rest == 0 {
		b = strconv.AppendUint(b, n, 10)
		b = append(b, ' ')
		b = append(b, big.symbol...)
		if rest == 0 {
			return b
		}
		b = append(b, ' ')
	}
	return appendFraction(b, rest, small, parts)
}

// appendFraction appends mag, a multiple of unit.size/parts, as in 6 in, 1/2 in or 6 1/2 in. The number parts is a power of two.
func appendFraction(b []byte, mag uint64, unit named, parts uint64) []byte {
	n, num := mag/unit.size, mag%unit.size/(unit.size/parts)
	if n != 0 || num == 0 {
		b = strconv.AppendUint(b, n, 10)
		b = append(b, ' ')
	}
	if num != 0 {
		for num%2 == 0 {
			num, parts = num/2, parts/2
		}
		b = strconv.AppendUint(b, num, 10)
		b = append(b, '/')
		b = strconv.AppendUint(b, parts, 10)
		b = append(b, ' ')
	}
	return append(b, unit.symbol...)
}

// appendMetric appends mag in the first of units that it reaches, in the last if it reaches none.
func appendMetric(b []byte, mag uint64, units []named) []byte {
	u := units[len(units)-1]
	for _, v := range units {
		if mag >= v.size {
			u = v
			break
		}
	}
	b = strconv.AppendUint(b, mag/u.size, 10)
	if rest := mag % u.size; rest != 0 {
		b = append(b, '.')
		for scale := u.size / 10; rest != 0; scale /= 10 {
			b = append(b, '0'+byte(rest/scale))
			rest %= scale
		}
	}
	b = append(b, ' ')
	return append(b, u.symbol...)
}
