package mantel

import (
	"strconv"

	"example.com/fircone/units"
)

// show returns a length for people: exactly if it is a whole number of 64ths of
// an inch or of millimeters, or else to the nearest 16th of an inch.
func show(l units.Length) string {
	if l%(units.Inch/64) == 0 || l%units.Millimeter == 0 {
		return l.String()
	}
	return l.Format(units.InFeetInches, units.Inch/16)
}

// showMass returns a mass for people, exactly if it is a whole number of ounces or
// of grams, or else to the nearest tenth of an ounce.
func showMass(m units.Mass) string {
	if m%units.Ounce == 0 || m%units.Gram == 0 {
		return m.String()
	}
	return m.Format(units.InPoundsOunces, units.Ounce/10)
}

// plural returns "1 swag" or "3 swags".
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return strconv.Itoa(n) + " " + noun + "s"
}
