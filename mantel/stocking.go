package mantel

import (
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// UsualSpacing is how far apart stockings hang, center to center, if a [Stockings]
// does not say; 8 to 12 in is usual.
//
// Source: common practice, from memory.
const UsualSpacing units.Length = 10 * units.Inch

// Stockings are what hangs below a shelf, one to a hook or holder.
type Stockings struct {
	// Count is how many hang, 0 to 100. Zero is as many as fit.
	Count int `json:"count"`

	// Spacing is center to center, 1 in to 50 ft. Zero is UsualSpacing.
	Spacing units.Length `json:"spacing"`

	// Length is from the shelf to the lowest point of the toe, 1 in to 50 ft; 15 to
	// 20 in is usual.
	Length units.Length `json:"length"`

	// Width is across one, heel to toe, 0 to 3 ft; half of it brings it nearer to the
	// opening. How far it stands out, filled, is Thick, 0 to 3 ft.
	Width units.Length `json:"width"`
	Thick units.Length `json:"thick"`

	// Weight is one stocking, filled, 1 g to 1000 lb; 1 to 3 lb is usual: weigh it.
	Weight units.Mass `json:"weight"`
}

// A Row is a row of stockings as it hangs.
type Row struct {
	Fit        int             `json:"fit"`        // how many would fit on the shelf at this spacing
	Loads      Loads           `json:"loads"`      // what each holder carries, from the left
	Clearances Clearances      `json:"clearances"` // how near each comes to the opening and the hearth
	Needs      []shopping.Need `json:"needs"`      // stockings, and a hook or holder for each
}

// Stockings returns how a row of stockings hangs along the front edge of the shelf:
//
//	fit = length of the shelf/spacing, rounded down, and at least 1
//
// The row is in the middle of the shelf. Loads and clearances are those of a garland's
// hooks and drops, by the same figures; the toe is what comes nearest to the opening.
// Places are rounded down to the nanometer.
//
//	==o=======o=======o=======o==   shelf
//	  |_      |_      |_      |_    spacing between the holders
//	  |_)     |_)     |_)     |_)
//	      .________________.        opening
//
// It returns an error wrapping [units.ErrRange] if a field of m, stockings or hook is out of its
// range, and one wrapping [units.ErrFit] if Count is more than fit or the toes would
// lie on the hearth.
//
// Source: spacing and length, common practice, from memory; the clearances, as for
// [Mantel.Clearances].
func (m Mantel) Stockings(stockings Stockings, hook Hook) (Row, error) {
	const fn = "Mantel.Stockings"
	s := stockings
	if err := m.check(fn, ""); err != nil {
		return Row{}, err
	}
	if err := checkCount(fn, "/stockings/count", s.Count, 0, 100); err != nil {
		return Row{}, err
	}
	if s.Spacing == 0 {
		s.Spacing = UsualSpacing
	}
	for _, x := range [...]measured{
		{"/stockings/spacing", s.Spacing, units.Inch, maxDrop, "1 in to 50 ft, or 0 ft for the usual spacing"},
		{"/stockings/length", s.Length, units.Inch, maxDrop, "1 in to 50 ft"},
		{"/stockings/width", s.Width, 0, maxThickness, "0 ft to 3 ft"},
		{"/stockings/thick", s.Thick, 0, maxThickness, "0 ft to 3 ft"},
	} {
		if err := checkLength(fn, x.field, x.length, x.least, x.most, x.want); err != nil {
			return Row{}, err
		}
	}
	if err := checkMass(fn, "/stockings/weight", s.Weight, units.Gram, maxRating, "1 g to 1000 lb"); err != nil {
		return Row{}, err
	}
	if m.Height != 0 && s.Length > m.Height {
		return Row{}, fitError(fn, "/stockings/length", exact(s.Length), "at most "+exact(m.Height)+", from the shelf to the hearth")
	}
	working, err := hook.workingLoad(fn, "/hook")
	if err != nil {
		return Row{}, err
	}
	row := Row{Fit: max(1, int(m.Length/s.Spacing))}
	n := s.Count
	if n == 0 {
		n = row.Fit
	}
	if n > row.Fit {
		return Row{}, fitError(fn, "/stockings/count", strconv.Itoa(n), "at most "+strconv.Itoa(row.Fit)+", "+exact(s.Spacing)+" apart on "+exact(m.Length))
	}
	row.Loads = Loads{Weight: units.Mass(n) * s.Weight, Working: working, Spacing: s.Spacing}
	first := (m.Length - units.Length(n-1)*s.Spacing) / 2
	for i := range n {
		along := first + units.Length(i)*s.Spacing
		row.Loads.Hooks = append(row.Loads.Hooks, HookLoad{Along: along, Down: s.Weight})
		from := m.fromZone(along, s.Length)
		from.nm = max(0, from.nm-float64(s.Width/2))
		// The thickness stands out, and does not reach sideways.
		row.Clearances.addOut(m, "stocking "+strconv.Itoa(i+1), from, s.Length, s.Thick)
	}
	row.Loads.judge(hook, 0)
	row.Clearances.finish(m, max(s.Width, s.Thick))
	row.Needs = []shopping.Need{
		{Item: itemStockings, Quantity: shopping.Quantity{Pieces: n}, Basis: show(s.Spacing) + " apart on " + show(m.Length) + ", where " + strconv.Itoa(row.Fit) + " fit", Source: commonPractice},
		row.Loads.Need(),
	}
	return row, nil
}
