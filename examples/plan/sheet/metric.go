package sheet

import (
	"regexp"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// ofFoot is what the mantel's cautions have by the foot, and the same by the meter: 1 oz a foot is 93.01 g a meter.
var ofFoot = strings.NewReplacer(
	"2 to 4 oz a foot, full 6 to 10, fresh 8 to 16", "190 to 370 g a meter, full 560 to 930, fresh 740 to 1490",
)

// measure finds what a text has in pounds, ounces, feet and inches, and what says on which side it must stay.
var measure = regexp.MustCompile(`(no more than )?\b(?:(\d+ lb(?: [\d.]+ oz)?|[\d.]+ oz)( a foot)?|(\d+ ft(?: \d+(?: \d+/\d+)? in)?|\d+(?: \d+/\d+)? in))\b( apart or closer| or less)?`)

// measures returns a text of the library in the units of the house: pounds and feet as grams and meters if it is metric, on the
// safe side.
func (s *sheet) measures(text string) string {
	if s.style() != units.InMetric {
		return text
	}
	return measure.ReplaceAllStringFunc(ofFoot.Replace(text), func(found string) string {
		part := measure.FindStringSubmatch(found)
		down := part[1] != "" || part[5] != ""
		value := ""
		if part[2] != "" {
			var m units.Mass
			if m.UnmarshalText([]byte(part[2])) != nil {
				return found
			}
			if part[3] != "" { // a foot
				return part[1] + strconv.Itoa(int(m.In(units.Gram)/units.Foot.In(units.Meter))/10*10) + " g a meter" + part[5]
			}
			value = sided(m, 10*units.Gram, down).Format(units.InMetric, 10*units.Gram)
		} else {
			var l units.Length
			if l.UnmarshalText([]byte(part[4])) != nil {
				return found
			}
			value = sided(l, units.Centimeter, down).Format(units.InMetric, units.Centimeter)
		}
		return part[1] + value + part[5]
	})
}

// sided rounds a measure up, or down, to a step.
func sided[M units.Mass | units.Length](m, step M, down bool) M {
	if !down {
		m += step - 1
	}
	return m / step * step
}
