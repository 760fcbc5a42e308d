package sizing

import (
	"math"
	"strconv"

	"example.com/fircone/units"
)

// The texts of this package round each figure to what a tape measure shows and to the
// safe side: what is to be bought up, what is left down. A style that there is not
// counts as feet and inches.

// Format returns the text of a result, as its String does, in a style. Metric balls
// are in millimeters.
func Format[R Comparison | Fit | Ladder | Look](result R, style units.Style) string {
	return any(result).(interface{ text(units.Style) string }).text(style)
}

// tape returns a length as it was measured, to the nearest eighth of an inch or centimeter.
func tape(l units.Length, style units.Style) string {
	switch style {
	case units.InMetric:
		return l.Format(style, units.Centimeter)
	case units.InFeet:
		return l.Format(style, units.Foot/100)
	case units.InYards:
		return l.Format(style, units.Yard/100)
	case units.InInches:
		return l.Format(style, units.Inch/8)
	}
	return l.Format(units.InFeetInches, units.Inch/8)
}

// nominal returns a size in whole feet, by which trees and ladders are told, or in metric.
func nominal(l units.Length, style units.Style) string {
	if style != units.InMetric {
		style = units.InFeet
	}
	return tape(l, style)
}

// tick returns what a tape measure is read to.
func tick(style units.Style) units.Length {
	if style == units.InMetric {
		return units.Centimeter
	}
	return units.Inch / 8
}

// across returns the diameter of a ball, by its number in inches or millimeters.
func across(l units.Length, style units.Style) string {
	if style == units.InMetric {
		return l.Format(style, units.Millimeter)
	}
	return l.Format(units.InInches, units.Inch/8)
}

// apart returns a spacing to wind by, up to a quarter of an inch or half a
// centimeter, from 2 ft on to an inch or a centimeter. Wound so, the garland lasts.
func apart(spacing units.Length, style units.Style) string {
	step, in := units.Inch/4, units.InInches
	if style == units.InMetric {
		step, in = units.Centimeter/2, style
	}
	switch {
	case spacing <= 24*units.Inch:
	case style == units.InMetric:
		step = units.Centimeter
	default:
		step = units.Inch
	}
	return up(spacing, step).Format(in, step)
}

// enough returns a length to buy, up to a foot or a tenth of a meter.
func enough(l units.Length, style units.Style) string {
	switch style {
	case units.InMetric:
		return up(l, units.Meter/10).Format(style, units.Meter/10)
	case units.InYards:
		return up(l, units.Yard/10).Format(style, units.Yard/10)
	}
	return up(l, units.Foot).Format(units.InFeet, units.Foot)
}

// left returns a length that is to spare, down to a quarter of an inch or half a
// centimeter, and over one that is too much, up.
func left(l units.Length, style units.Style) string { return safe(l, style, false) }
func over(l units.Length, style units.Style) string { return safe(l, style, true) }

func safe(l units.Length, style units.Style, more bool) string {
	step, in := units.Inch/4, style
	switch {
	case style == units.InMetric:
		step = units.Centimeter / 2
	case style == units.InFeet && l >= units.Foot, style == units.InYards && l >= units.Yard:
		step = units.Foot / 100
		if style == units.InYards {
			step = units.Yard / 100
		}
	case style == units.InFeet, style == units.InYards:
		in = units.InInches
	case style != units.InInches:
		in = units.InFeetInches
	}
	if more {
		return up(l, step).Format(in, step)
	}
	return (l / step * step).Format(in, step)
}

// up rounds a positive length up to a multiple of step.
func up(l, step units.Length) units.Length { return (l + step - 1) / step * step }

// surfaceText returns a surface to a tenth of a square foot or meter.
func surfaceText(a units.Area, style units.Style) string {
	return surfaceTo(a, unitArea(style)/10, style)
}

func surfaceTo(a, step units.Area, style units.Style) string {
	if style != units.InMetric {
		style = units.InFeet
	}
	return a.Format(style, step)
}

// dense returns how many pieces there are to the square foot or meter where each has so much surface, in three figures.
func dense(each units.Area, style units.Style) string {
	_, text := density(each, style, 3)
	return text
}

// density is dense in so many figures, and as a number.
func density(each units.Area, style units.Style, figures int) (float64, string) {
	if each <= 0 {
		return 0, "no" // a comparison that somebody made up
	}
	n, _ := strconv.ParseFloat(strconv.FormatFloat(unitArea(style).In(each), 'e', figures-1, 64), 64)
	return n, strconv.FormatFloat(n, 'f', -1, 64)
}

func unitArea(style units.Style) units.Area {
	if style == units.InMetric {
		return units.SquareMeter
	}
	return units.SquareFoot
}

// square is what there are so many to.
func square(style units.Style) string {
	if style == units.InMetric {
		return " to the square meter"
	}
	return " to the square foot"
}

// percent returns a cover as "4.1 %".
func percent(cover float64) string {
	return strconv.FormatFloat(math.Round(cover*1000)/10, 'f', 1, 64) + " %"
}

// plural returns "1 pick" or "2 picks".
func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}
