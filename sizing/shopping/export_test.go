package shopping

import "example.com/fircone/units"

// Cheapest returns the one purchase of a list of needs of one item.
func (s Shop) Cheapest(needs ...Need) (Purchase, error) {
	l, err := s.List(needs)
	if err != nil {
		return Purchase{}, err
	}
	return l.Purchases[0], nil
}

// Filled returns the list of the least cost that makes every need at least so full, as [Shop.Fullest] documents it.
func (s Shop) Filled(needs []Need, percent int) (List, error) {
	fuller := make([]Need, len(needs))
	for i, n := range needs {
		count := n.Open.Min + ((n.Open.Max-n.Open.Min)*percent+99)/100
		n.Quantity.Pieces, n.Open = count, units.Range[int]{}
		fuller[i] = n
	}
	return s.List(fuller)
}

// Records returns the records of [List.CSV] cell by cell, without the header.
func (l List) Records() [][]string { return l.records() }

// LeftOf returns what a cut leaves of each roll.
func LeftOf(c Cut) units.Length { return c.left() }

// Surplus returns what the lots of a list come to, as what is left of a purchase.
func Surplus(lots []Lot) (sum Quantity) {
	for _, l := range lots {
		if l.Quantity.Length > 0 {
			sum.Length += units.Length(max(1, l.Quantity.Pieces)) * l.Quantity.Length
			continue
		}
		sum.Pieces += l.Quantity.Pieces
	}
	return sum
}
