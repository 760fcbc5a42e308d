package sizing

import (
	"math/bits"
	"slices"
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The heights of tree that this package takes.
const (
	minHeight units.Length = 1 * units.Foot
	maxHeight units.Length = 100 * units.Foot
)

// Rules are the rules of thumb for a tree. [CommonPractice] returns the usual ones. A shop with
// habits of its own changes a field, as in r.PerFoot[shopping.Pick].Pieces = 4; zero asks for none.
type Rules struct {
	// TypesPerFoot is the ornament types for each whole foot, 0 to 100.
	TypesPerFoot int `json:"typesPerFoot"`

	// EachSpread is how far the count of each type may be from the whole feet of
	// height, 0 to 100.
	EachSpread int `json:"eachSpread"`

	// PerFoot is what each foot of height takes: 0 to 100 ft of garland or ribbon, 0 to
	// 10,000 picks or lights, and nothing else.
	PerFoot shopping.ByKind[shopping.Quantity] `json:"perFoot"`

	// Sizes are the diameters of round ornament to be had, 1/4 in to 3 ft, smallest
	// first, up to 100. Empty is those of CommonPractice.
	Sizes []units.Length `json:"sizes"`

	// The largest ornaments in a home, and in a room that the public uses, each from the
	// first of Sizes to 3 ft.
	HomeLargest units.Length `json:"homeLargest"` // zero: 6 in
	HallLargest units.Length `json:"hallLargest"` // zero: 12 in
}

// dressings are the kinds that a tree is dressed with besides ornaments, in the
// order of a list. An accent is drawn through the branches, and one is enough; the
// others are always wanted. This table and that of package shopping are all there
// is to a kind.
var dressings = [...]struct {
	kind   shopping.Kind
	accent bool
}{
	{shopping.Garland, true},
	{shopping.Ribbon, true},
	{shopping.Pick, true},
	{shopping.Light, false},
}

// CommonPractice returns the rules of thumb that most of the trade follows: those at the top of
// this page, with
//
//	lights              100 for each foot; set 150 to 200 for a bright tree
//	sizes of ornament   3/4, 1, 1 1/2, 2, 2 3/8, 2 3/4, 3 1/8, 4, 4 3/4, 6, 8, 10 and 12 in
//	the largest         6 in in a home, 12 in in a hall
//
// Source: common practice; lights, ribbon and sizes from memory.
func CommonPractice() Rules {
	return Rules{
		TypesPerFoot: 1,
		EachSpread:   2,
		PerFoot: shopping.ByKind[shopping.Quantity]{
			shopping.Garland: {Length: 9 * units.Foot},
			shopping.Ribbon:  {Length: 9 * units.Foot},
			shopping.Pick:    {Pieces: 3},
			shopping.Light:   {Pieces: 100},
		},
		Sizes:       slices.Clone(stocked[:]),
		HomeLargest: 6 * units.Inch,
		HallLargest: 12 * units.Inch,
	}
}

// TradeHeight returns the whole feet that the trade counts a tree as: up to the next foot if that
// is within 2 in, otherwise down. The height is 1 ft to 100 ft.
//
//	cm   120   150   180   210   240   300
//	ft     4     5     6     7     8    10
//
// By true height the rules count these a foot lower. To size by the name, give Rules this
// height.
//
// Source: trade heights from memory; the 2 in are a figure of this package.
func TradeHeight(height units.Length) (units.Length, error) {
	if err := checkHeight("TradeHeight", "height", height); err != nil {
		return 0, err
	}
	return units.Length(wholeFeet(min(height+2*units.Inch, maxHeight))) * units.Foot, nil
}

// Types returns how many types of ornament a tree of this height carries:
//
//	TypesPerFoot · whole feet of height
//
// The height is 1 ft to 100 ft.
//
// Source: common practice.
func (r Rules) Types(height units.Length) (int, error) {
	return r.types("Rules.Types", "height", height)
}

func (r *Rules) types(fn, field string, height units.Length) (int, error) {
	if err := checkHeight(fn, field, height); err != nil {
		return 0, err
	}
	if err := checkCount(fn, "/typesPerFoot", r.TypesPerFoot, 100); err != nil {
		return 0, err
	}
	return r.TypesPerFoot * wholeFeet(height), nil
}

// Each returns how many there should be of each type, 1 or more:
//
//	whole feet of height - EachSpread   to   whole feet of height + EachSpread
//
// Large or costly ornaments go by the low end, small ones by the high end. The height is
// 1 ft to 100 ft. For all ornaments multiply by [Rules.Types].
//
// Source: common practice.
func (r Rules) Each(height units.Length) (units.Range[int], error) {
	return r.each("Rules.Each", "height", height)
}

func (r *Rules) each(fn, field string, height units.Length) (units.Range[int], error) {
	if err := checkHeight(fn, field, height); err != nil {
		return units.Range[int]{}, err
	}
	if err := checkCount(fn, "/eachSpread", r.EachSpread, 100); err != nil {
		return units.Range[int]{}, err
	}
	feet := wholeFeet(height)
	return units.Range[int]{Min: max(1, feet-r.EachSpread), Max: feet + r.EachSpread}, nil
}

// Supply returns how much garland or ribbon, or how many picks or lights, a tree of this height
// takes:
//
//	PerFoot[kind] · height in feet
//
// by the exact height, 1 ft to 100 ft, rounded up to a piece or a nanometer.
//
// Source: common practice; ribbon and lights from memory.
func (r Rules) Supply(kind shopping.Kind, height units.Length) (shopping.Quantity, error) {
	const fn = "Rules.Supply"
	if !dresses(kind) {
		var names []string
		for _, d := range dressings {
			names = append(names, d.kind.String())
		}
		return shopping.Quantity{}, nameError(fn, "kind", kind.String(), names)
	}
	return r.supply(fn, "height", height, kind)
}

// supply returns what a tree of this height takes of a kind, rounded up.
func (r *Rules) supply(fn, field string, height units.Length, kind shopping.Kind) (shopping.Quantity, error) {
	if err := checkHeight(fn, field, height); err != nil {
		return shopping.Quantity{}, err
	}
	q := r.PerFoot[kind]
	if kind.Running() {
		if q.Pieces != 0 || q.Length < 0 || q.Length > 100*units.Foot {
			return shopping.Quantity{}, rangeError(fn, "/perFoot/"+kind.String(), q.String(), "a length of 0 ft to 100 ft")
		}
		hi, lo := bits.Mul64(uint64(q.Length), uint64(height))
		quo, rem := bits.Div64(hi, lo, uint64(units.Foot))
		if rem != 0 {
			quo++
		}
		return shopping.Quantity{Length: units.Length(quo)}, nil
	}
	if q.Length != 0 || q.Pieces < 0 || q.Pieces > 10_000 {
		return shopping.Quantity{}, rangeError(fn, "/perFoot/"+kind.String(), q.String(), "0 to 10000 pieces")
	}
	return shopping.Quantity{Pieces: int((int64(q.Pieces)*int64(height) + int64(units.Foot) - 1) / int64(units.Foot))}, nil
}

// amounts returns what a tree takes by rule, see Compare.
func (r *Rules) amounts(fn string, t *Tree) (a shopping.ByKind[shopping.Quantity], err error) {
	types, err := r.types(fn, "/tree/height", t.Height)
	if err != nil {
		return shopping.ByKind[shopping.Quantity]{}, err
	}
	if t.Kind >= numKinds {
		return shopping.ByKind[shopping.Quantity]{}, nameError(fn, "/tree/kind", t.Kind.String(), kindNames[:])
	}
	for kind, q := range r.PerFoot {
		if kind := shopping.Kind(kind); q != (shopping.Quantity{}) && !dresses(kind) {
			return shopping.ByKind[shopping.Quantity]{}, rangeError(fn, "/perFoot/"+kind.String(), q.String(), "nothing: no rule goes by the foot of a tree")
		}
	}
	a[shopping.Ornament].Pieces = types * wholeFeet(t.Height)
	for _, d := range dressings {
		q, err := r.supply(fn, "/tree/height", t.Height, d.kind)
		if err != nil {
			return shopping.ByKind[shopping.Quantity]{}, err
		}
		a[d.kind] = t.supplied(d.kind, q)
	}
	return a, nil
}

// supplied rounds a quantity up to what can be measured off or bought.
func (t *Tree) supplied(kind shopping.Kind, q shopping.Quantity) shopping.Quantity {
	const half = 50 // lamps, half a usual string
	switch {
	case kind == shopping.Light && !t.Kind.lit():
		return shopping.Quantity{}
	case kind == shopping.Light:
		q.Pieces = (q.Pieces + half - 1) / half * half
	}
	q.Length = up(q.Length, units.Inch)
	return q
}

// dresses reports whether kind is among the dressings.
func dresses(kind shopping.Kind) bool {
	for _, d := range dressings {
		if d.kind == kind {
			return true
		}
	}
	return false
}

// wholeFeet returns the whole feet in a height that checkHeight has passed.
func wholeFeet(height units.Length) int { return int(height / units.Foot) }

func checkHeight(fn, field string, height units.Length) error {
	if height < minHeight || height > maxHeight {
		return rangeError(fn, field, height.String(), "1 ft to 100 ft")
	}
	return nil
}

func checkCount(fn, field string, n, most int) error {
	if n < 0 || n > most {
		return rangeError(fn, field, strconv.Itoa(n), "0 to "+strconv.Itoa(most))
	}
	return nil
}

func rangeError(fn, field, value, want string) error {
	return &units.Error{Func: "sizing." + fn, Field: field, Value: value, Want: want, Err: units.ErrRange}
}
