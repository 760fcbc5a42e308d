package sheet

import (
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// money prints an amount with the places of the house.
func (s *sheet) money(d decimal.Decimal) string {
	if places := int32(s.request.House.Rates.Places); d.Equal(d.Truncate(places)) {
		return d.StringFixed(places)
	}
	return d.String()
}

// style is the units of the house.
func (s *sheet) style() units.Style { return s.request.House.Units }

// scale returns what a length is rounded to, and the style that it is printed in: a quarter inch, an
// eighth of a small one; half a centimeter, a centimeter from a meter on, and 10 cm from 10 m on. What
// is shorter than a foot or a yard is in inches.
func (s *sheet) scale(l units.Length) (units.Length, units.Style) {
	switch style := s.style(); {
	case style == units.InMetric && l >= 10*units.Meter:
		return 10 * units.Centimeter, style
	case style == units.InMetric && l >= units.Meter:
		return units.Centimeter, style
	case style == units.InMetric:
		return units.Centimeter / 2, style
	case style == units.InFeet && l >= units.Foot:
		return units.Foot / 100, style
	case style == units.InYards && l >= units.Yard:
		return units.Yard / 100, style
	case l < 6*units.Inch:
		return units.Inch / 8, inches(style)
	default:
		return units.Inch / 4, inches(style)
	}
}

// inches returns the style of what is shorter than a foot or a yard.
func inches(style units.Style) units.Style {
	if style == units.InFeetInches {
		return style
	}
	return units.InInches
}

// length prints a length.
func (s *sheet) length(l units.Length) string {
	step, style := s.scale(l)
	return l.Format(style, step)
}

// least prints a length that may be no shorter, rounded up, and most one that may be no longer, down. What a tape
// shows is exact.
func (s *sheet) least(l units.Length) string { return s.sided(l, units.Ceil) }

func (s *sheet) most(l units.Length) string { return s.sided(l, units.Floor) }

func (s *sheet) sided(l units.Length, round func(l, step units.Length) (units.Length, error)) string {
	step, style := s.scale(l)
	if style == units.InMetric && l%units.Millimeter == 0 {
		step = units.Millimeter
	}
	l, _ = round(l, step)
	return l.Format(style, step)
}

// quantity prints a quantity in the units of the house.
func (s *sheet) quantity(q shopping.Quantity) string {
	switch {
	case q.Length == 0:
		return strconv.Itoa(q.Pieces)
	case q.Pieces > 1:
		return strconv.Itoa(q.Pieces) + " x " + s.length(q.Length)
	}
	return s.length(q.Length)
}

// item prints an item in the units of the house.
func (s *sheet) item(i shopping.Item) string {
	size, before := i.Size, ""
	i.Size = 0
	if i.Type == "mantel" {
		i.Type, before = "", "mantel "
	}
	text := before + i.String()
	if size > 0 {
		text += ", " + s.length(size)
	}
	return text
}

// lot prints so much of an item, "9 crimson ornaments" or "6 ft of garland".
func (s *sheet) lot(i shopping.Item, q shopping.Quantity) string {
	if q.Length > 0 && q.Pieces == 1 {
		return s.length(q.Length) + " of " + s.item(i)
	}
	if q.Length > 0 {
		return s.quantity(q) + " of " + s.item(i)
	}
	text := s.item(i)
	if q.Pieces == 1 {
		one := strings.TrimPrefix(i.Kind.Count(1), "1 ")
		text = strings.Replace(text, i.Kind.String(), one, 1)
	}
	return strconv.Itoa(q.Pieces) + " " + text
}

// along says places, from somewhere: each, or the first and how far apart they are.
func (s *sheet) along(at []units.Length, from string) string {
	step := units.Length(0)
	if len(at) > 2 {
		step = at[1] - at[0]
	}
	for i := 1; i < len(at); i++ {
		if off := at[i] - at[i-1] - step; off > units.Millimeter/1000 || off < -units.Millimeter/1000 {
			step = 0
		}
	}
	if step > 0 {
		return s.place(at[0]) + " from " + from + ", then every " + s.place(step)
	}
	var texts []string
	for i, l := range at {
		if i == 0 || l != at[i-1] {
			texts = append(texts, s.place(l))
		}
	}
	if texts == nil {
		return ""
	}
	return listing(texts) + " from " + from
}

// place prints a place to an eighth of an inch, or to a millimeter.
func (s *sheet) place(l units.Length) string {
	_, style := s.scale(l)
	if style == units.InMetric {
		return l.Format(style, units.Millimeter)
	}
	return l.Format(style, units.Inch/8)
}

// load prints a load, rounded up to a tenth of an ounce, or to 5 g unless it is whole grams, from 1 kg on 10 g; and
// carries what a hook may carry, rounded down.
func (s *sheet) load(m units.Mass) string { return s.weight(m-within, units.Ceil) }

func (s *sheet) carries(m units.Mass) string { return s.weight(m+within, units.Floor) }

// within is how near loads come to the exact ones: without it half a nanogram adds a tenth of an ounce.
const within = units.Mass(1000)

func (s *sheet) weight(m units.Mass, round func(m, step units.Mass) (units.Mass, error)) string {
	step, tenths := 5*units.Gram, units.Mass(1)
	switch {
	case s.style() != units.InMetric:
		step, tenths = units.Ounce, 10 // a tenth of it is no whole number of nanograms
	case (m+2*within)%units.Gram <= 4*within:
		step = units.Gram
	case m >= units.Kilogram:
		step = 10 * units.Gram
	}
	m, _ = round(tenths*m, step)
	if tenths > 1 {
		return ((m + 5) / 10).Format(units.InFeetInches, units.Ounce/10)
	}
	return m.Format(units.InMetric, step)
}
