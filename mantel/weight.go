package mantel

import "example.com/fircone/units"

// A Weight is what a kind of garland usually weighs.
type Weight struct {
	Garland string                  `json:"garland"` // "full artificial"
	PerFoot units.Range[units.Mass] `json:"perFoot"` // dry, each foot of it
}

// String returns a text such as "full artificial, 6 oz to 10 oz a foot".
func (w Weight) String() string { return w.Garland + ", " + w.PerFoot.String() + " a foot" }

// UsualWeights returns what garlands usually weigh, dry and undressed, the lightest
// first. They are ranges to plan with: weigh yours before it hangs. Picks, ornaments
// and water add to them.
//
// Source: from memory, no published source.
func UsualWeights() []Weight {
	ounces := func(least, most units.Mass) units.Range[units.Mass] {
		return units.Range[units.Mass]{Min: least * units.Ounce, Max: most * units.Ounce}
	}
	return []Weight{
		{"thin artificial", ounces(2, 4)},
		{"full artificial", ounces(6, 10)},
		{"fresh cedar or fir", ounces(8, 16)},
	}
}
