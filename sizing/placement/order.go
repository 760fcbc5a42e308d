package placement

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/internal/elem"
	"example.com/fircone/sizing"
	"example.com/fircone/units"
)

// An Order is how a tree is hung.
type Order struct {
	// Ladder is the tallest stepladder at hand, up to 16 ft. Zero allows any.
	Ladder units.Length `json:"ladder"`

	// Side is how far to each side one reaches from a ladder, 1 to 4 ft; zero is
	// 2 ft. From the floor it is half as much again.
	Side units.Length `json:"side"`
}

// A Station is one place to stand, and what is hung from there.
type Station struct {
	First int `json:"first"` // number of its first piece, counting all stations from 1
	Clock int `json:"clock"` // hour nearest to where to stand, facing the middle of its pieces

	// Ladder is what to stand on. A zero Size is the floor. Lift means out of reach
	// of the ladder at hand.
	Ladder sizing.Ladder `json:"ladder"`

	From   units.Length `json:"from"`   // height of the lowest piece
	To     units.Length `json:"to"`     // height of the highest
	Places []Place      `json:"places"` // in hanging order, each with its Left
}

const commonPractice = "common practice"

const (
	usualSide = 2 * units.Foot
	highest   = 100 * units.Foot
	row       = units.Foot // pieces hung from side to side before the next lower ones
	widest    = 60 * Degree
)

// Stations returns the places in hanging order, grouped by where to stand.
//
// Pieces out of reach come first, so that you can plan for them. Then come the ladders, tallest
// first, and last the floor. Each ladder is the one of [sizing.LadderFor] for the highest piece
// left, and serves all down to its least reach, but never under 6 ft. Moves go clockwise, from near
// 6 o'clock, as few as Side allows. Within a station pieces are hung from the top down in rows 1 ft
// high, left to right and back in turn. Heights must be 0 to 100 ft.
//
// Source: common practice. Ladder reach: package sizing. Reach to the side: our own
// figure; your belt buckle stays between the rails.
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
	number := 1
	for len(left) > 0 {
		ladder, down := o.stand(left[0].Height)
		n := 1
		for n < len(left) && left[n].Height > down {
			n++
		}
		reach := side
		if ladder.Size == 0 {
			reach = side * 3 / 2
		}
		for _, group := range faces(left[:n], reach) {
			s := Station{First: number, Ladder: ladder}
			s.hang(group)
			stations = append(stations, s)
			number += len(group)
		}
		left = left[n:]
	}
	return stations, nil
}

// stand returns how to reach a height, and the height down to which one then works.
func (o Order) stand(height units.Length) (l sizing.Ladder, down units.Length) {
	l, _ = sizing.LadderFor(height) // no higher than a tree
	floor := sizing.Ladder{}.Reach().Max
	switch {
	case height <= floor:
		return sizing.Ladder{}, -1
	case o.Ladder != 0 && (l.Lift || l.Size > o.Ladder):
		// Down to what the tallest ladder at hand reaches.
		if !l.Lift {
			l = sizing.Ladder{Lift: true, Cautions: []units.Caution{{
				Code:   "short ladder",
				Text:   "the ladder at hand does not reach: get a taller one, or ask trained people with a platform or a lift",
				Source: commonPractice,
			}}}
		}
		return l, max(sizing.Ladder{Size: o.Ladder}.Reach().Max, floor)
	case !l.Lift:
		l.Cautions = append(l.Cautions, units.Caution{
			Code:   "hanging",
			Text:   "face the ladder and keep three points of contact, let a second person hand things up, keep the ladder clear of light cords, and switch the lights off while hanging",
			Source: commonPractice,
		})
	}
	return l, max(l.Reach().Min, floor)
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
		// One of them has place n, which is place 0, in it, and begins there or before; place 0 itself is a whole turn
		// away.
		for first := n; n-first < 200 && at(n)-at(first) <= wide; first-- {
			var starts []int
			for i := first; i < first+n; {
				starts = append(starts, i)
				for begin := i; at(i)-at(begin) <= wide; {
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
	tight, loose := Angle(0), 2*half
	for range 7 { // to a degree
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

// hang puts a group, which is clockwise, in the order in which it is hung.
func (s *Station) hang(group []Place) {
	middle := middle(group)
	s.Clock = middle.Clock()
	s.From, s.To = group[0].Height, group[0].Height
	for _, p := range group {
		s.From, s.To = min(s.From, p.Height), max(s.To, p.Height)
	}
	// Rows from the top, left and right in turn.
	off := func(p Place) Angle { return (p.Azimuth - middle).normal() } // to the right
	below := func(p Place) int { return int((s.To - p.Height) / row) }
	var rows []int // those with pieces
	for _, p := range group {
		rows = append(rows, below(p))
	}
	slices.Sort(rows)
	rows = slices.Compact(rows)
	slices.SortStableFunc(group, func(p, q Place) int {
		r, side := below(p), cmp.Compare(off(p), off(q))
		if at, _ := slices.BinarySearch(rows, r); at%2 == 1 {
			side = -side
		}
		return cmp.Or(cmp.Compare(r, below(q)), side, cmp.Compare(q.Height, p.Height))
	})
	last := middle
	for i := range group {
		p := &group[i]
		arc := (last - p.Azimuth).normal() // the azimuth grows to the right
		p.Left = units.Length(math.Round(float64(arc) / float64(halfTurn) * math.Pi * radius(*p)))
		last = p.Azimuth
	}
	s.Places = group
}

// String returns a line for the station and one for each piece, lengths to half an inch.
func (s Station) String() string {
	var b strings.Builder
	switch {
	case s.Ladder.Lift:
		b.WriteString("out of reach of the ladder")
	case s.Ladder.Size == 0:
		b.WriteString("on the floor")
	default:
		b.WriteString("a " + s.Ladder.Size.String() + " stepladder")
	}
	fmt.Fprintf(&b, " at %d o'clock, ", s.Clock)
	if low, high := tape(s.From), tape(s.To); low != high {
		b.WriteString(low + " to ")
	}
	b.WriteString(tape(s.To) + " up:")
	for i, p := range s.Places {
		fmt.Fprintf(&b, "\n%d: %v: %s up at %d o'clock, %s%s", s.First+i, p.Item, tape(p.Height), p.Azimuth.Clock(), s.aside(i), p.deep())
	}
	return b.String()
}

// aside says how far piece i is from the one before it, or the first from the middle.
func (s Station) aside(i int) string {
	from, straight := "the last", "straight below the last"
	if i == 0 {
		from, straight = "the middle", "in the middle"
	} else if s.Places[i].Height > s.Places[i-1].Height {
		straight = "straight above the last"
	}
	side, off := "left", s.Places[i].Left
	if off < 0 {
		side, off = "right", -off
	}
	if off < units.Inch/4 {
		return straight
	}
	return tape(off) + " " + side + " of " + from
}

// tape returns a length to half an inch.
func tape(l units.Length) string { return l.Format(units.InFeetInches, units.Inch/2) }
