package palette

import (
	"math"
	"strconv"
	"unicode/utf8"

	"example.com/fircone/units"
)

// rangeError reports an integer outside its range.
func rangeError(fn, field string, value int, want string) error {
	return &units.Error{Func: "palette." + fn, Field: field, Value: strconv.Itoa(value), Want: want, Err: units.ErrRange}
}

// clip shortens a text for an error message to at most 64 bytes of it.
func clip(s string) string {
	if len(s) <= 64 {
		return s
	}
	n := 64
	for n > 60 && !utf8.RuneStart(s[n]) {
		n--
	}
	return s[:n] + "…"
}

// cut prints d to places decimals, cut and not rounded, so that a figure which
// misses a threshold is never printed as meeting it.
func cut(d float64, places int) string {
	scale := 1.0
	for range places {
		scale = float64(scale * 10)
	}
	return strconv.FormatFloat(math.Floor(d*scale)/scale, 'f', places, 64)
}
