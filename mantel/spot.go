package mantel

import (
	"slices"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Spot is where one thing goes along the shelf.
type Spot struct {
	Item  shopping.Item `json:"item"`  // as in Rules.Needs
	Along units.Length  `json:"along"` // from the left end of the shelf
	Layer int           `json:"layer"` // from the garland out, in the order of the work
}

// Spots returns where everything goes along the shelf: the picks from the left end, then the
// ornaments, the ribbon and the bells. Picks of a traditional mantel are PickSpacing apart,
// the same on both sides of the middle:
//
//	first pick = (length - (picks - 1) · PickSpacing)/2
//
// Those of an asymmetrical one begin at the heavy end, leaving any spare space at the other.
// Ornaments hang at equal distances in the gaps of the top layer. Ribbon and bells are in
// the middle, or at the heavy end. Places are rounded to the nanometer.
//
// Source: common practice; which end has spare space, and the layers: our own choice.
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
