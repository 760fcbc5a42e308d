package mantel

import (
	"strconv"

	"example.com/fircone/units"
)

// The texts of this package round what is measured to what a person reads off a tape or a scale,
// and to the safe side where there is one. What is exact there stays exact. A style that there
// is not counts as feet and inches.

// scale returns how a length is printed, and what it is rounded to, 0 if to nothing: a 16th of an
// inch unless it is a whole number of 64ths or of millimeters, half a centimeter, or a hundredth
// of a foot or yard.
func scale(l units.Length, style units.Style) (step units.Length, in units.Style) {
	const mm = units.Millimeter
	size := max(l, -l)
	switch {
	case style == units.InMetric && (size < 10*mm || l%mm == 0):
		return mm, style
	case style == units.InMetric && size < units.Meter:
		return 5 * mm, style
	case style == units.InMetric:
		return 10 * mm, style
	case style == units.InFeet && size >= units.Foot:
		return units.Foot / 100, style
	case style == units.InYards && size >= units.Yard:
		return units.Yard / 100, style
	case style == units.InFeet || style == units.InYards || style == units.InInches:
		return sixteenth, units.InInches
	case plain(l):
		return 0, units.InFeetInches
	}
	return sixteenth, units.InFeetInches
}

// show returns a length for people, to the nearest.
func show(l units.Length, style units.Style) string {
	step, in := scale(l, style)
	return l.Format(in, step)
}

// showDown is show, but rounds down, and showUp up: for measures that must not be taken for
// more, or less, than they are.
func showDown(l units.Length, style units.Style) string {
	step, in := scale(l, style)
	if step > 0 {
		l, _ = units.Floor(l, step)
	}
	return l.Format(in, step)
}

func showUp(l units.Length, style units.Style) string {
	step, in := scale(l, style)
	if step > 0 {
		l, _ = units.Ceil(l, step)
	}
	return l.Format(in, step)
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

// grams returns what a mass in metric, which is never negative, is rounded to.
func grams(m units.Mass) units.Mass {
	switch {
	case m%units.Gram == 0:
		return units.Gram
	case m < units.Kilogram:
		return 5 * units.Gram
	}
	return 10 * units.Gram
}

// showMass returns a mass for people: exactly if it is a whole number of ounces or of grams,
// or else to the nearest tenth of an ounce, or 5 g, from 1 kg on 10 g.
func showMass(m units.Mass, style units.Style) string {
	switch {
	case style == units.InMetric:
		return m.Format(style, grams(m))
	case m%units.Gram == 0:
		return m.String()
	}
	return m.Format(units.InFeetInches, units.Ounce/10)
}

// massUp is showMass, but rounds up, for a load, and massDown down, for what may be
// carried. A tenth of an ounce is no whole number of nanograms.
func massUp(m units.Mass, style units.Style) string {
	switch {
	case style == units.InMetric:
		m, _ = units.Ceil(m, grams(m))
	case m%units.Gram != 0:
		m = (10*m + units.Ounce - 1) / units.Ounce * units.Ounce / 10
	}
	return showMass(m, style)
}

func massDown(m units.Mass, style units.Style) string {
	switch {
	case style == units.InMetric:
		m, _ = units.Floor(m, grams(m))
	case m%units.Gram != 0:
		m = 10 * m / units.Ounce * units.Ounce / 10
	}
	return showMass(m, style)
}

// perFootDown is massDown of a foot of garland, by the meter in metric.
func perFootDown(m units.Mass, style units.Style) string {
	if style == units.InMetric {
		return massDown(units.Mass(mulDiv(uint64(m), uint64(units.Meter), uint64(units.Foot))), style) + " a meter"
	}
	return massDown(m, style) + " a foot"
}

// plural returns "1 swag" or "3 swags".
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return strconv.Itoa(n) + " " + noun + "s"
}
