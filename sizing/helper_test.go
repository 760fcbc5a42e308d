package sizing

import (
	"math"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Short names for the tables of the tests.
type (
	counts      = units.Range[int]
	lengthRange = units.Range[units.Length]
	lengths     = shopping.ByKind[units.Length]
	areas       = shopping.ByKind[units.Area]
)

// The measures of a cone as those of a tree, without its checks; cones of 6 in are those of
// trees of 1 ft with the longest handle.
func (c cone) SpiralLength(p units.Length) (units.Length, error) { return c.spiralLength(p, 1), nil }

func (c cone) Spacing(l units.Length) (units.Length, error) {
	return c.spacingOf("Tree.Spacing", l, 1)
}
func (c cone) Slant() (units.Length, error)     { return units.Length(math.Round(c.slant())), nil }
func (c cone) LateralArea() (units.Area, error) { return c.area(), nil }

// ruled, matched and looked are what Compare finds by rule, by shape and as a look.
func ruled(r Rules, t Tree) (shopping.ByKind[shopping.Quantity], error) {
	c, err := r.Compare(Look{}, t)
	return c.Rule, err
}

func matched(r Rules, l Look, t Tree) (shopping.ByKind[shopping.Quantity], error) {
	c, err := r.Compare(l, t)
	return c.Shape, err
}

func looked(r Rules, t Tree) (Look, error) {
	c, err := r.Compare(Look{}, t)
	return c.RuleLook, err
}

// piecesOf and lengthOf are what Supply returns of a kind that is counted or measured.
func piecesOf(r Rules, k shopping.Kind, h units.Length) (int, error) {
	q, err := r.Supply(k, h)
	return q.Pieces, err
}

func lengthOf(r Rules, k shopping.Kind, h units.Length) (units.Length, error) {
	q, err := r.Supply(k, h)
	return q.Length, err
}

// lots makes lots of ornaments from diameters and counts.
func lots(of ...ball) []shopping.Lot {
	var list []shopping.Lot
	for _, b := range of {
		list = append(list, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Size: b.size}, Quantity: shopping.Quantity{Pieces: b.count}})
	}
	return list
}

type ball struct {
	size  units.Length
	count int
}

// exposureOf reads a text.
func exposureOf(text string) (e Exposure, err error) {
	err = e.UnmarshalText([]byte(text))
	return e, err
}
