package palette

import (
	"math"
	"strconv"
	"unicode/utf8"

	"example.com/fircone/units"
)

// refuse returns the error of a function that does not take a value.
func refuse(fn, field, value, want string, why error) error {
	return &units.Error{Func: "palette." + fn, Field: field, Value: clip(value), Want: want, Err: why}
}

// rangeError reports an integer outside its range.
func rangeError(fn, field string, value int, want string) error {
	return refuse(fn, field, strconv.Itoa(value), want, units.ErrRange)
}

// formatFloat writes a number as Go does.
func formatFloat(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

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
