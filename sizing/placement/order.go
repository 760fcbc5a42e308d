package placement

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/fircone/internal/elem"
	"example.com/fircone/sizing"
	"example.com/fircone/units"
)

// An Order is how a tree is hung.
type Order struct {
	// Ladder is the tallest stepladder at hand, by its nominal height, up to 16 ft.
	// Zero is whichever it takes.
	Ladder units.Length `json:"ladder"`

	// Side is how far to each side one hangs from a ladder without leaning out, 1 ft
	// to 4 ft. Zero is 2 ft. From the floor it is half as much again.
	Side units.Length `json:"side"`
}

// A Station is one place to stand, and what is hung from there.
type Station struct {
	Number int  `json:"number"` // from 1, in hanging order
	Clock  int  `json:"clock"`  // the hour at which to stand, 6 toward the viewer
	Lift   bool `json:"lift"`   // nobody reaches it with the ladder there is

	// Ladder is the stepladder, by its nominal height; zero stands on the floor.
	Ladder units.Length `json:"ladder"`

	From  units.Length `json:"from"`  // the height of the lowest piece
	To    units.Length `json:"to"`    // the height of the highest
	Steps []Step       `json:"steps"` // what is hung there, in order
}

// A Step hangs one piece.
type Step struct {
	Number int `json:"number"` // of all pieces of the tree, from 1
	Place
	Clock int `json:"clock"` // the hour of Azimuth

	// Left is how far to the left of the last piece it hangs, along the branches and
	// seen by who hangs it; to the right if negative. For the First of a station it is
	// to the left of the middle, where one stands.
	Left  units.Length `json:"left"`
	First bool         `json:"first"`
}

// LadderCaution is what to tell whoever hangs a [Station] that has a ladder.
const LadderCaution = "Use a step ladder that is made for the height, opened and locked on level ground. " +
	"Face it, keep three points of contact and stay below its top cap; its label says how high to stand and how much it bears. " +
	"Let a second person hold it and hand things up. Never lean across: come down and move it. " +
	"Keep it clear of light cords, and switch the lights off while hanging."

const (
	usualSide = 2 * units.Foot
	highest   = 100 * units.Foot
	row       = units.Foot // pieces hung from side to side before the next lower ones
	widest    = 60 * Degree
)

// Stations returns places in the order in which to hang them, each with where to stand.
//
// What is out of reach comes first, as stations with Lift: see to it before anything is
// hung. Then come the ladders from the tallest down, and last the floor. A ladder
// serves what [sizing.LadderFor] has it reach, down to the step one stands on. At each
// height of ladder there are as few stations as cover all pieces without leaning out,
// with the clock. In a station pieces come from the top down, in rows a foot high that go
// left and right in turn.
//
// It returns an [units.Error] wrapping [units.ErrRange] if a field of o is out of its
// range, or a place is not from the floor to 100 ft above it.
//
// Source: common practice; how far a ladder reaches is that of package sizing. How far to
// the side is a figure of this package: the belt buckle stays between the rails.
func (o Order) Stations(places []Place) ([]Station, error) {
	const fn = "Order.Stations"
	side := o.Side
	if side == 0 {
		side = usualSide
	}
	switch {
	case o.Ladder < 0 || o.Ladder > 16*units.Foot:
		return nil, rangeError(fn, "/ladder", o.Ladder.String(), "0 ft to 16 ft")
	case side < units.Foot || side > 4*units.Foot:
		return nil, rangeError(fn, "/side", o.Side.String(), "1 ft to 4 ft")
	}
	for i, p := range places {
		if p.Height < 0 || p.Height > highest {
			return nil, rangeError(fn, "/places/"+strconv.Itoa(i)+"/height", p.Height.String(), "0 ft to 100 ft")
		}
	}
	left := slices.Clone(places)
	slices.SortStableFunc(left, func(p, q Place) int { return cmp.Compare(q.Height, p.Height) })
	var stations []Station
	number := 0
	for len(left) > 0 {
		s, down := o.stand(left[0].Height)
		n := 1
		for n < len(left) && left[n].Height > down {
			n++
		}
		reach := side
		if s.Ladder == 0 {
			reach = side * 3 / 2
		}
		for _, group := range faces(left[:n], reach) {
			t := Station{Number: len(stations) + 1, Lift: s.Lift, Ladder: s.Ladder}
			t.hang(group, &number)
			stations = append(stations, t)
		}
		left = left[n:]
	}
	return stations, nil
}

// stand returns how to reach a height, and the height down to which one then works.
func (o Order) stand(height units.Length) (s Station, down units.Length) {
	floor := sizing.Ladder{}.Reach().Max
	l, _ := sizing.LadderFor(height) // no higher than a tree
	switch {
	case height <= floor:
		return Station{}, -1
	case o.Ladder != 0 && l.Lift || o.Ladder != 0 && l.Size > o.Ladder:
		// Down to what the tallest ladder there is reaches.
		return Station{Lift: true}, max(sizing.Ladder{Size: o.Ladder}.Reach().Max, floor)
	}
	return Station{Lift: l.Lift, Ladder: l.Size}, max(l.Reach().Min, floor)
}

// radius returns how far the tips of the branches are from the trunk at p.
func radius(p Place) float64 {
	x, y := float64(p.At.X), float64(p.At.Y)
	return math.Sqrt(float64(x*x)+float64(y*y)) + float64(p.Depth)
}

// faces divides places into as few groups as there need be for all of each to be
// within reach to the left and right of its middle, with the clock from the one next to 6.
func faces(places []Place, reach units.Length) [][]Place {
	// The half angle: sin a = reach / radius at the widest, and no more than the sixth of a turn.
	wide := 0.0
	for _, p := range places {
		wide = max(wide, radius(p))
	}
	half := widest
	if s := float64(reach) / max(wide, 1); s < 0.8660254037844386 {
		half = Angle(elem.Atan2(s, math.Sqrt(1-float64(s*s))) / math.Pi * float64(halfTurn))
	}
	// With the clock is against the azimuth; 0 to under a full turn.
	sorted := slices.Clone(places)
	turn := func(p Place) Angle { return (fullTurn - p.Azimuth.normal()) % fullTurn }
	slices.SortStableFunc(sorted, func(p, q Place) int { return cmp.Compare(turn(p), turn(q)) })
	n := len(sorted)
	at := func(i int) Angle { return turn(sorted[i%n]) + Angle(i/n)*fullTurn }
	// The groups no wider than so much: where each begins, and the end.
	cover := func(wide Angle) (best []int) {
		// One of them has place n, which is place 0, in it, and begins there or before.
		for first := n; first > 0 && n-first < 200 && at(n)-at(first) <= wide; first-- {
			var starts []int
			for i := first; i < first+n; {
				starts = append(starts, i)
				for begin := i; i < first+n && at(i)-at(begin) <= wide; {
					i++
				}
			}
			if starts = append(starts, first+n); best == nil || len(starts) < len(best) {
				best = starts
			}
		}
		return best
	}
	// As few as there can be, and of those the least wide.
	best := cover(2 * half)
	for tight, loose := Angle(0), 2*half; loose-tight > Degree; {
		middle := (tight + loose) / 2
		if narrow := cover(middle); len(narrow) == len(best) {
			best, loose = narrow, middle
		} else {
			tight = middle
		}
	}
	var groups [][]Place
	front, nearest := 0, Angle(fullTurn)
	for g := 0; g+1 < len(best); g++ {
		var group []Place
		for i := best[g]; i < best[g+1]; i++ {
			group = append(group, sorted[i%n])
		}
		if off := max(middle(group), -middle(group)); off < nearest {
			front, nearest = g, off
		}
		groups = append(groups, group)
	}
	return append(groups[front:], groups[:front]...)
}

// middle returns the azimuth halfway between the first and the last of a group, which is
// with the clock.
func middle(group []Place) Angle {
	wide := (group[0].Azimuth - group[len(group)-1].Azimuth).normal() // at most a third of a turn
	return (group[0].Azimuth - wide/2).normal()
}

// hang puts a group, which is with the clock, in the order in which it is hung.
func (s *Station) hang(group []Place, number *int) {
	middle := middle(group)
	s.Clock = middle.Clock()
	s.From, s.To = group[0].Height, group[0].Height
	for _, p := range group {
		s.From, s.To = min(s.From, p.Height), max(s.To, p.Height)
	}
	// Rows from the top, left and right in turn.
	off := func(p Place) Angle { return (p.Azimuth - middle).normal() } // to the right
	slices.SortStableFunc(group, func(p, q Place) int {
		r, t := (s.To-p.Height)/row, (s.To-q.Height)/row
		side := cmp.Compare(off(p), off(q))
		if r%2 == 1 {
			side = -side
		}
		return cmp.Or(cmp.Compare(r, t), side, cmp.Compare(q.Height, p.Height))
	})
	last := middle
	for i, p := range group {
		*number++
		arc := (last - p.Azimuth).normal() // the azimuth grows to the right
		s.Steps = append(s.Steps, Step{
			Number: *number,
			Place:  p,
			Clock:  p.Azimuth.Clock(),
			Left:   units.Length(math.Round(float64(arc) / float64(halfTurn) * math.Pi * radius(p))),
			First:  i == 0,
		})
		last = p.Azimuth
	}
}

// String returns one line, "station 3: a 6 ft stepladder at 9 o'clock, 6 ft to 8 ft 2 in
// up, pieces 9 to 15".
func (s Station) String() string {
	text := "station " + strconv.Itoa(s.Number) + ": "
	switch {
	case s.Lift:
		text += "out of reach of the ladder"
	case s.Ladder == 0:
		text += "on the floor"
	default:
		text += "a " + s.Ladder.String() + " stepladder"
	}
	text += " at " + strconv.Itoa(s.Clock) + " o'clock, " + tape(s.From) + " to " + tape(s.To) + " up"
	if n := len(s.Steps); n == 1 {
		text += ", piece " + strconv.Itoa(s.Steps[0].Number)
	} else if n > 1 {
		text += ", pieces " + strconv.Itoa(s.Steps[0].Number) + " to " + strconv.Itoa(s.Steps[n-1].Number)
	}
	return text
}

// String returns one line, "12: crimson ornaments, star, 3 in: 4 ft 2 1/2 in up at 5
// o'clock, 8 in right of the last, 5 in deep".
func (s Step) String() string {
	text := strconv.Itoa(s.Number) + ": " + s.Item.String() + ": " + tape(s.Height) + " up at " + strconv.Itoa(s.Clock) + " o'clock, "
	from := "the last"
	if s.First {
		from = "the middle"
	}
	if s.Left < 0 {
		text += tape(-s.Left) + " right of " + from
	} else {
		text += tape(s.Left) + " left of " + from
	}
	if s.Depth > 0 {
		text += ", " + tape(s.Depth) + " deep"
	}
	return text
}

// tape returns a length to half an inch.
func tape(l units.Length) string { return l.Format(units.InFeetInches, units.Inch/2) }
