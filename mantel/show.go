package mantel

import (
	"strconv"

	"example.com/fircone/units"
)

// show returns a length for people: exactly if it is a whole number of 64ths of
// an inch or of millimeters, or else to the nearest 16th of an inch.
func show(l units.Length) string {
	if plain(l) {
		return l.String()
	}
	return l.Format(units.InFeetInches, sixteenth)
}

// showDown is show, but to the 16th of an inch below, and showUp to the one above: for
// measures that must not be taken for more, or less, than they are.
func showDown(l units.Length) string {
	if below := l % sixteenth; !plain(l) {
		if below < 0 {
			below += sixteenth
		}
		l -= below
	}
	return l.String()
}

func showUp(l units.Length) string {
	if !plain(l) {
		return showDown(l + sixteenth)
	}
	return l.String()
}

// exact returns a length for an error: to the nanometer, in inches with decimals where
// show would round.
func exact(l units.Length) string {
	if plain(l) {
		return l.String()
	}
	return l.Format(units.InFeetInches, 1)
}

const sixteenth = units.Inch / 16

func plain(l units.Length) bool { return l%(units.Inch/64) == 0 || l%units.Millimeter == 0 }

// showMass returns a mass for people, exactly if it is a whole number of ounces or
// of grams, or else to the nearest tenth of an ounce.
func showMass(m units.Mass) string {
	if m%units.Gram == 0 {
		return m.String()
	}
	return m.Format(units.InFeetInches, units.Ounce/10)
}

// plural returns "1 swag" or "3 swags".
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return strconv.Itoa(n) + " " + noun + "s"
}
