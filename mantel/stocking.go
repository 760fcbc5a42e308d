package mantel

import (
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// usualSpacing is how far apart stockings hang, center to center.
//
// Source: common practice, from memory.
const usualSpacing = 10 * units.Inch

// Stockings hang below a shelf, one to a hook or holder.
type Stockings struct {
	Count     int          `json:"count"`     // 0 to 100; 0 is as many as fit
	Spacing   units.Length `json:"spacing"`   // center to center, from 1 in; 8 to 12 in is usual, 0 is 10 in
	Length    units.Length `json:"length"`    // from the shelf to the toe, needed, from 1 in; 15 to 20 in is usual
	Thickness units.Length `json:"thickness"` // filled, 0 to 3 ft; half nears the opening, all stands out
	Weight    units.Mass   `json:"weight"`    // of one, filled, needed, 1 g to 1000 lb; 1 to 3 lb is usual
}

// Stockings returns what each holder of a row of stockings carries, and how near each comes
// to the opening and the hearth, by the same figures as a garland. The clearances are those
// of the stockings and of the garland, if given, the worst first.
// The row is in the middle of the shelf:
//
//	=o=======o=======o=======o=  shelf
//	.|_......|_......|_......|_  spacing
//	.|_).....|_).....|_).....|_)
//	......_________________....  opening
//
//	fit = length of the shelf/spacing, rounded down, and at least 1
//
// It returns [units.ErrFit] if Count is more than fit, or the toes would lie on the hearth.
//
// Source: common practice, from memory.
func (m Mantel) Stockings(stockings Stockings, hook Hook, garland Clearances, style units.Style) (Loads, Clearances, error) {
	const fn = "Mantel.Stockings"
	s := stockings
	if err := m.check(fn, ""); err != nil {
		return Loads{}, Clearances{}, err
	}
	if err := checkCount(fn, "/stockings/count", s.Count, 0, 100); err != nil {
		return Loads{}, Clearances{}, err
	}
	if s.Spacing == 0 {
		s.Spacing = usualSpacing
	}
	for _, x := range [...]measured{
		{"/stockings/spacing", s.Spacing, units.Inch, maxDrop, "1 in to 50 ft, or 0 ft for the usual spacing"},
		{"/stockings/length", s.Length, units.Inch, maxDrop, "1 in to 50 ft"},
		{"/stockings/thickness", s.Thickness, 0, maxThickness, "0 ft to 3 ft"},
	} {
		if err := checkLength(fn, x.field, x.length, x.least, x.most, x.want); err != nil {
			return Loads{}, Clearances{}, err
		}
	}
	if err := checkMass(fn, "/stockings/weight", s.Weight, units.Gram, maxRating, "1 g to 1000 lb"); err != nil {
		return Loads{}, Clearances{}, err
	}
	if m.Height != 0 && s.Length > m.Height {
		return Loads{}, Clearances{}, fitError(fn, "/stockings/length", exact(s.Length), "at most "+exact(m.Height)+", from the shelf to the hearth")
	}
	working, err := hook.workingLoad(fn, "/hook")
	if err != nil {
		return Loads{}, Clearances{}, err
	}
	fit := max(1, int(m.Length/s.Spacing))
	n := s.Count
	if n == 0 {
		n = fit
	}
	if n > fit {
		return Loads{}, Clearances{}, fitError(fn, "/stockings/count", strconv.Itoa(n), "at most "+strconv.Itoa(fit)+", "+exact(s.Spacing)+" apart on "+exact(m.Length))
	}
	loads := Loads{
		Weight: units.Mass(n) * s.Weight, Working: working,
		Needs: []shopping.Need{{Item: itemStockings, Quantity: shopping.Quantity{Pieces: n}, Basis: show(s.Spacing, style) + " apart on " + show(m.Length, style) + ", where " + strconv.Itoa(fit) + " fit", Source: commonPractice}},
	}
	var clear Clearances
	first := (m.Length - units.Length(n-1)*s.Spacing) / 2
	for i := range n {
		along := first + units.Length(i)*s.Spacing
		loads.Hooks = append(loads.Hooks, HookLoad{At: Point{Along: along}, Down: s.Weight})
		from := m.fromZone(along, s.Length)
		from.nm = max(0, from.nm-float64(s.Thickness/2))
		clear.addOut(m, "stocking "+strconv.Itoa(i+1), from, s.Length, s.Thickness)
	}
	loads.judge(hook, 0, style)
	clear.finish(m, s.Thickness, cautionThin, style)
	return loads, garland.and(clear), nil
}
