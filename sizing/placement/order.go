package placement

import (
	"cmp"
	"slices"
	"strconv"

	"example.com/fircone/units"
)

// An Order is how the work of hanging is divided: into levels by height, and
// each level into faces by the clock. Orders are equal if == says so.
type Order struct {
	// Level is the height of a level, 1 in to 100 ft. Zero is 2 ft.
	Level units.Length `json:"level"`

	// Faces is into how many equal parts each level goes, 1 to 12; the middle of
	// the first is at 6 o'clock, toward the viewer. Zero is four: 6, 9, 12 and 3
	// o'clock.
	Faces int `json:"faces"`

	// Reach is the height up to which nobody has to climb, 0 to 100 ft. Zero is
	// 6 ft.
	Reach units.Length `json:"reach"`
}

// A Section is what one person hangs from one stand.
type Section struct {
	Level  int          `json:"level"`  // 1 at the floor
	From   units.Length `json:"from"`   // the lower border of the level, above the floor
	To     units.Length `json:"to"`     // the upper border
	Clock  int          `json:"clock"`  // the hour on which the face looks, 6 toward the viewer
	Climb  bool         `json:"climb"`  // some of it is out of reach from the floor: see LadderCaution
	Places []Place      `json:"places"` // in hanging order
}

// LadderCaution is what to tell whoever hangs a [Section] that needs a climb.
const LadderCaution = "Use a step ladder that is made for the height, opened and locked on level ground. " +
	"Face it, keep three points of contact and stay below its top cap; its label says how high to stand and how much it bears. " +
	"Let a second person hold it and hand things up. Never lean across: come down and move it. " +
	"Keep it clear of light cords, and switch the lights off while hanging."

const (
	usualLevel = 2 * units.Foot
	usualFaces = 4
	usualReach = 6 * units.Foot
	highest    = 100 * units.Foot
)

// Sections returns places in the order in which to hang them: level by level
// from the floor up, and in each level face by face with the clock, beginning at
// 6 o'clock. In each section what is set deepest comes first, since it is out of
// reach later, and then what is lower. Sections with nothing in them are left
// out. Each place is in one section; those whose height or azimuth is on a
// border are in the higher one, and in the one later by the clock.
//
// The sections share a copy of places, sorted; places stays as it is.
//
// It returns an [units.Error] wrapping [units.ErrRange] if a field of o is out of its range,
// or a place is not from the floor to 100 ft above it.
//
// Source: common practice.
func (o Order) Sections(places []Place) ([]Section, error) {
	const fn = "Order.Sections"
	if o.Level == 0 {
		o.Level = usualLevel
	}
	if o.Faces == 0 {
		o.Faces = usualFaces
	}
	if o.Reach == 0 {
		o.Reach = usualReach
	}
	switch {
	case o.Level < units.Inch || o.Level > highest:
		return nil, rangeError(fn, "/level", o.Level.String(), "1 in to 100 ft")
	case o.Faces < 1 || o.Faces > 12:
		return nil, rangeError(fn, "/faces", strconv.Itoa(o.Faces), "1 to 12")
	case o.Reach < 0 || o.Reach > highest:
		return nil, rangeError(fn, "/reach", o.Reach.String(), "0 ft to 100 ft")
	}
	for i, p := range places {
		if p.Height < 0 || p.Height > highest {
			return nil, rangeError(fn, "/places/"+strconv.Itoa(i)+"/height", p.Height.String(), "0 ft to 100 ft")
		}
	}
	sorted := slices.Clone(places)
	slices.SortStableFunc(sorted, func(p, q Place) int {
		return cmp.Or(
			cmp.Compare(o.level(p), o.level(q)),
			cmp.Compare(o.face(p), o.face(q)),
			cmp.Compare(q.Depth, p.Depth),
			cmp.Compare(p.Height, q.Height),
		)
	})
	var sections []Section
	for len(sorted) > 0 {
		level, face := o.level(sorted[0]), o.face(sorted[0])
		n := 1
		for n < len(sorted) && o.level(sorted[n]) == level && o.face(sorted[n]) == face {
			n++
		}
		s := Section{
			Level:  int(level) + 1,
			From:   level * o.Level,
			To:     (level + 1) * o.Level,
			Clock:  Angle(-int64(face) * int64(fullTurn) / int64(o.Faces)).Clock(),
			Places: sorted[:n:n],
		}
		for _, p := range s.Places {
			s.Climb = s.Climb || p.Height > o.Reach
		}
		sections = append(sections, s)
		sorted = sorted[n:]
	}
	return sections, nil
}

// level returns how many levels are below p.
func (o Order) level(p Place) units.Length { return p.Height / o.Level }

// face returns the face of p, with the clock from the viewer.
func (o Order) face(p Place) int {
	turn := int64(fullTurn-p.Azimuth.normal())*int64(o.Faces) + int64(halfTurn)
	return int(turn/int64(fullTurn)) % o.Faces
}

// String returns one line, "level 3, 4 ft to 6 ft, at 9 o'clock: 7 pieces", and
// "; use a ladder" where that is so.
func (s Section) String() string {
	text := "level " + strconv.Itoa(s.Level) + ", " + s.From.String() + " to " + s.To.String() +
		", at " + strconv.Itoa(s.Clock) + " o'clock: " + strconv.Itoa(len(s.Places)) + " piece"
	if len(s.Places) != 1 {
		text += "s"
	}
	if s.Climb {
		text += "; use a ladder"
	}
	return text
}
