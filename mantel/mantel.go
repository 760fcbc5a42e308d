package mantel

import "example.com/fircone/units"

// The lengths of shelf that this package takes.
const (
	MinLength units.Length = 1 * units.Foot
	MaxLength units.Length = 50 * units.Foot
)

const wantShelf = "1 ft to 50 ft"

// A Mantel is what a tape measure says of a shelf over a fireplace, or of any
// shelf that is dressed like one. Only Length is required.
// Mantels are equal if == says so.
type Mantel struct {
	// Length is the shelf from end to end, 1 ft to 50 ft.
	Length units.Length `json:"length"`

	// Height is the top of the shelf above the hearth or floor, 1 ft to 50 ft.
	// Zero if it was not measured.
	Height units.Length `json:"height"`

	// Depth is the shelf from the wall to its front edge, 1/8 in to 10 ft.
	// Zero if it was not measured.
	Depth units.Length `json:"depth"`

	// Opening is the firebox opening below. The zero value if there is none.
	Opening Opening `json:"opening"`
}

// An Opening is the front of a firebox: a rectangle in the wall, its middle
// under the middle of the shelf. The zero value is no opening at all.
// Openings are equal if == says so.
type Opening struct {
	Width  units.Length `json:"width"`  // from side to side, 1 in to 50 ft, and not wider than the shelf
	Height units.Length `json:"height"` // from its sill to its top, 1 in to 50 ft
	Below  units.Length `json:"below"`  // from the top of the shelf down to the top of the opening, 1 in to 50 ft
}

// String returns a text such as "mantel 5 ft 4 in long, 4 ft 6 in above the
// hearth, 8 in deep".
func (m Mantel) String() string {
	text := "mantel " + show(m.Length) + " long"
	if m.Height != 0 {
		text += ", " + show(m.Height) + " above the hearth"
	}
	if m.Depth != 0 {
		text += ", " + show(m.Depth) + " deep"
	}
	if m.Opening != (Opening{}) {
		text += ", " + m.Opening.String()
	}
	return text
}

// String returns a text such as "opening 3 ft wide and 2 ft 6 in high, 1 ft 2 in
// below the shelf".
func (o Opening) String() string {
	if o == (Opening{}) {
		return "no opening"
	}
	return "opening " + show(o.Width) + " wide and " + show(o.Height) + " high, " + show(o.Below) + " below the shelf"
}

// check checks every field of m.
func (m Mantel) check(fn string) error {
	if err := checkLength(fn, "Length", m.Length, MinLength, MaxLength, wantShelf); err != nil {
		return err
	}
	if m.Height != 0 {
		if err := checkLength(fn, "Height", m.Height, units.Foot, 50*units.Foot, "1 ft to 50 ft, or 0 ft if not measured"); err != nil {
			return err
		}
	}
	if m.Depth != 0 {
		if err := checkLength(fn, "Depth", m.Depth, units.Inch/8, 10*units.Foot, "1/8 in to 10 ft, or 0 ft if not measured"); err != nil {
			return err
		}
	}
	if m.Opening == (Opening{}) {
		return nil
	}
	for _, side := range [...]struct {
		field  string
		length units.Length
	}{{"Opening.Width", m.Opening.Width}, {"Opening.Height", m.Opening.Height}, {"Opening.Below", m.Opening.Below}} {
		if err := checkLength(fn, side.field, side.length, units.Inch, 50*units.Foot, "1 in to 50 ft, or no opening at all"); err != nil {
			return err
		}
	}
	if m.Opening.Width > m.Length {
		return fitError(fn, "Opening.Width", exact(m.Opening.Width), "at most the length of the shelf, "+exact(m.Length))
	}
	if m.Height != 0 && m.Opening.Below+m.Opening.Height > m.Height {
		return fitError(fn, "Opening.Height", exact(m.Opening.Height),
			"at most "+exact(m.Height)+" together with the "+exact(m.Opening.Below)+" below the shelf, from the shelf to the hearth")
	}
	return nil
}
