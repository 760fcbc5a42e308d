package mantel

import (
	"slices"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Spot is where one thing goes along the shelf.
type Spot struct {
	// Item is what it is, as Rules.Needs has it: mantel
	// picks, ornaments, mantel, ribbon, mantel or bells.
	Item shopping.Item `json:"item"`

	// Along is the distance from the left end of the shelf.
	Along units.Length `json:"along"`

	// Layer counts from the garland out and in the order of the work: the picks of
	// layer 2 begin over the end of layer 1, like shingles, and are tied in after it; see
	// LookRules. Ornaments are a layer over the top picks, ribbon and bells one more.
	Layer int `json:"layer"`
}

// Spots returns where everything goes along the shelf: first the picks, then the
// ornaments, then the ribbon and the bells, each from the left end on. There are
// as many of each as [Rules.Needs] says.
//
// The picks of a traditional mantel are PickSpacing apart and the same on both
// sides of the middle; what the spacing leaves is shared by the two ends, less
// than half a spacing each:
//
//	first pick = (length - (picks - 1) · PickSpacing)/2
//
// Those of an asymmetrical one are PickSpacing apart from the heavy end on, where
// the first one is, and what the spacing leaves is at the light end, at most a
// spacing. The shelf is divided into Layers equal parts, and the layers rise
// towards the heavy end; a traditional mantel is one layer. Ornaments hang in the
// gaps between neighboring picks of the top layer, at equal distances. The ribbon
// and the bells are at the heavy end of an asymmetrical mantel, and in the middle
// of a traditional one.
//
// Places are rounded to the nanometer, and the mirror image of a look has the
// mirror image of its places, to the nanometer. Only the length of mantel is used.
// heavy is not used for a traditional mantel.
//
// It returns an error wrapping [units.ErrRange] if its length or a field of r is
// out of its range, and one wrapping [units.ErrName] if look or heavy is no look or side.
//
// Source: the spacings and the heavy side, common practice; what is left at which
// end and how the layers divide the shelf, a choice of our own.
func (r Rules) Spots(mantel Mantel, look Look) ([]Spot, error) {
	a, err := r.of("Rules.Spots", "/mantel/length", mantel.Length, "look", look)
	if err != nil {
		return nil, err
	}
	m, rules, picks, ornaments, ribbon, bells := mantel, a.rules, a.picks, a.ornaments, a.ribbon, a.bells

	spots := make([]Spot, 0, picks+ornaments+1+bells)
	// step returns how far the i-th ornament is from the first pick of the top layer.
	step := func(i int) units.Length {
		k := rules.OrnamentsPerGap
		return units.Length(i/k)*rules.PickSpacing + rules.PickSpacing*units.Length(i%k+1)/units.Length(k+1)
	}
	if look == Traditional {
		first := (m.Length - units.Length(max(0, picks-1))*rules.PickSpacing) / 2
		for i := range picks {
			spots = append(spots, Spot{itemPicks, m.reflected(i, picks, func(i int) units.Length {
				return first + units.Length(i)*rules.PickSpacing
			}), 1})
		}
		for i := range ornaments {
			spots = append(spots, Spot{itemOrnaments, m.reflected(i, ornaments, func(i int) units.Length {
				return first + step(i)
			}), 2})
		}
		return appendTrim(spots, m.Length/2, 3, ribbon, bells), nil
	}

	layers := max(1, rules.Layers)
	for i := range picks {
		fromHeavy := units.Length(i) * rules.PickSpacing
		spots = append(spots, Spot{itemPicks, fromHeavy, layers - int(fromHeavy*units.Length(layers)/m.Length)})
	}
	for i := range ornaments {
		spots = append(spots, Spot{itemOrnaments, step(i), layers + 1})
	}
	spots = appendTrim(spots, 0, layers+2, ribbon, bells)
	if look == AsymmetricalRight {
		for i, s := range spots {
			spots[i].Along = m.Length - s.Along
		}
		slices.Reverse(spots[:picks])
		slices.Reverse(spots[picks : picks+ornaments])
	}
	return spots, nil
}

// reflected returns the place of the i-th of n things along the shelf, where left
// says the places of the first half of them.
func (m Mantel) reflected(i, n int, left func(i int) units.Length) units.Length {
	switch j := n - 1 - i; {
	case i < j:
		return left(i)
	case i > j:
		return m.Length - left(j)
	}
	return m.Length / 2
}

// appendTrim appends the ribbon, if there is any, and the bells.
func appendTrim(spots []Spot, along units.Length, layer int, ribbon units.Length, bells int) []Spot {
	if ribbon > 0 {
		spots = append(spots, Spot{itemRibbon, along, layer})
	}
	for range bells {
		spots = append(spots, Spot{itemBells, along, layer})
	}
	return spots
}
