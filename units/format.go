package units

import (
	"database/sql/driver"
	"fmt"
	"math/bits"
	"strconv"
	"strings"
)

// A Style says in which units a Format method prints.
type Style uint8

// The styles, and how each prints 7 ft 6 in, 12 sq ft 72 sq in and 3 lb 4 oz. Power is in watts in every style.
const (
	InFeetInches Style = iota // 7 ft 6 in; 12 sq ft 72 sq in; 3 lb 4 oz
	InFeet                    // 7.5 ft; 12.5 sq ft; 3.25 lb
	InInches                  // 90 in; 1800 sq in; 52 oz
	InYards                   // 2.5 yd; 1.39 sq yd; 3.25 lb
	InMetric                  // 2.29 m, cm below 1 m, mm below 1 cm; 1.16 m²; 1.47 kg
	numStyles
)

var styleNames = [numStyles]string{"feet and inches", "feet", "inches", "yards", "metric"}

func styleError(fn, field, value string) error {
	return &Error{Func: "units." + fn, Field: field, Value: value, Want: "feet and inches, feet, inches, yards or metric", Err: ErrName}
}

// String returns the name: feet and inches, feet, inches, yards or metric. An unknown style prints
// with its number: Style(9).
func (s Style) String() string {
	if s >= numStyles {
		return "Style(" + strconv.Itoa(int(s)) + ")"
	}
	return styleNames[s]
}

// MarshalText returns the name of s, or [ErrName] if s is no style.
func (s Style) MarshalText() ([]byte, error) {
	if s >= numStyles {
		return nil, styleError("Style.MarshalText", "style", s.String())
	}
	return []byte(styleNames[s]), nil
}

// UnmarshalText reads a name, ignoring case and surrounding space. Any other text is
// [ErrName].
func (s *Style) UnmarshalText(text []byte) error {
	return s.read("Style.UnmarshalText", "text", string(text))
}

// Value is MarshalText for a database column.
func (s Style) Value() (driver.Value, error) {
	if s >= numStyles {
		return nil, styleError("Style.Value", "style", s.String())
	}
	return styleNames[s], nil
}

// Scan is UnmarshalText for a database column.
func (s *Style) Scan(src any) error {
	switch src := src.(type) {
	case string:
		return s.read("Style.Scan", "src", src)
	case []byte:
		return s.read("Style.Scan", "src", string(src))
	}
	return &Error{Func: "units.Style.Scan", Field: "src", Value: fmt.Sprintf("%T", src), Want: "text such as inches", Err: ErrSyntax}
}

// read sets *s from a name, for fn.
func (s *Style) read(fn, field, text string) error {
	for i, name := range styleNames {
		if len(text) <= maxText && strings.EqualFold(strings.TrimSpace(text), name) {
			*s = Style(i)
			return nil
		}
	}
	return styleError(fn, field, clip(text))
}

// string returns v exactly.
func (k kind) string(v int64) string {
	var buf [48]byte
	return string(k.append(buf[:0], v))
}

// append appends v exactly.
func (k kind) append(b []byte, v int64) []byte {
	if v < 0 {
		b = append(b, '-')
	}
	mag := magnitude(v)
	d := &kinds[k]
	x := d.styles[d.exact]
	if x.small.size != 0 && mag%(x.small.size/d.parts) == 0 {
		return x.appendFractions(b, mag, d.parts)
	}
	return layout{small: metricUnit(mag, d.metric)}.appendDecimals(b, mag, 1)
}

// format returns v in a style, rounded to step.
func (k kind) format(v int64, style Style, step int64) string {
	if style >= numStyles || step <= 0 {
		return k.string(v)
	}
	mag := nearest(magnitude(v), uint64(step)) // at most 1.5·2⁶³
	d := &kinds[k]
	x := d.styles[style]
	if style == InMetric {
		x.small = metricUnit(mag, d.metric)
	}
	var buf [64]byte
	b := buf[:0]
	if v < 0 && mag != 0 {
		b = append(b, '-')
	}
	if x.small == d.styles[d.exact].small && uint64(step)%(x.small.size/d.parts) == 0 {
		return string(x.appendFractions(b, mag, d.parts))
	}
	return string(x.appendDecimals(b, mag, uint64(step)))
}

// metricUnit returns the first of the falling units that mag reaches, the last if it reaches none, the first if mag is 0.
func metricUnit(mag uint64, units []named) named {
	for _, u := range units {
		if mag >= u.size || mag == 0 {
			return u
		}
	}
	return units[len(units)-1]
}

// split takes the big units out of mag.
func (x layout) split(mag uint64) (big, rest uint64) {
	if x.big.size == 0 {
		return 0, mag
	}
	return mag / x.big.size, mag % x.big.size
}

// appendFractions appends mag, which is a multiple of x.small.size/parts, as in 7 ft 6 1/2 in.
func (x layout) appendFractions(b []byte, mag, parts uint64) []byte {
	big, rest := x.split(mag)
	n, num := rest/x.small.size, rest%x.small.size/(x.small.size/parts)
	b = x.appendBig(b, big, rest == 0)
	if x.big.size != 0 && rest == 0 {
		return b
	}
	if n != 0 || num == 0 {
		b = append(strconv.AppendUint(b, n, 10), ' ')
	}
	if num != 0 {
		shift := bits.TrailingZeros64(num)
		b = append(strconv.AppendUint(b, num>>shift, 10), '/')
		b = append(strconv.AppendUint(b, parts>>shift, 10), ' ')
	}
	return append(b, x.small.symbol...)
}

// places returns 10 to the power of the decimal places that x shows: as many as tell one multiple of step from the next,
// and one or two more if no multiple is then rounded.
func (x layout) places(step uint64) uint64 {
	scale := uint64(1)
	for ; step < x.small.size; step *= 10 {
		scale *= 10
	}
	for more, rest := uint64(1), step%x.small.size; more <= 100; more *= 10 {
		if rest*more%x.small.size == 0 {
			return scale * more
		}
	}
	return scale
}

// appendDecimals appends mag, which is a multiple of step, as in 7 ft 6.5 in.
func (x layout) appendDecimals(b []byte, mag, step uint64) []byte {
	scale := x.places(step)
	big, rest := x.split(mag)
	n, r := rest/x.small.size, rest%x.small.size
	hi, lo := bits.Mul64(r, scale)
	frac, r := bits.Div64(hi, lo, x.small.size) // r < x.small.size, so the quotient is below scale
	if r >= x.small.size-r {
		frac++
	}
	if frac == scale {
		n, frac = n+1, 0
	}
	if n*x.small.size == x.big.size { // a whole big unit, or nothing and no big unit
		big, n = big+1, 0
	}
	b = x.appendBig(b, big, n == 0 && frac == 0)
	if x.big.size != 0 && n == 0 && frac == 0 {
		return b
	}
	b = strconv.AppendUint(b, n, 10)
	if frac != 0 {
		b = append(b, '.')
		for ; frac != 0; frac %= scale {
			scale /= 10
			b = append(b, '0'+byte(frac/scale))
		}
	}
	b = append(b, ' ')
	return append(b, x.small.symbol...)
}

// appendBig appends a number of big units, and a space unless it is the last thing printed.
func (x layout) appendBig(b []byte, big uint64, last bool) []byte {
	if x.big.size == 0 || big == 0 && !last {
		return b
	}
	b = append(strconv.AppendUint(b, big, 10), ' ')
	b = append(b, x.big.symbol...)
	if !last {
		b = append(b, ' ')
	}
	return b
}
