package mantel

import "example.com/fircone/units"

// The lengths of shelf that this package takes.
const (
	MinLength units.Length = 1 * units.Foot
	MaxLength units.Length = 50 * units.Foot
)

const (
	wantShelf   = "1 ft to 50 ft"
	wantOpening = "1 in to 50 ft, or no opening at all"
	wantAbove   = "1 in to 50 ft, or nothing above at all"
)

// A Mantel is what a tape measure says of a shelf over a fireplace, or of any
// shelf that is dressed like one. Only Length is required.
type Mantel struct {
	// Length is the shelf from end to end, 1 ft to 50 ft.
	Length units.Length `json:"length"`

	// Height is the top of the shelf above the hearth or floor, 1 ft to 50 ft.
	// Zero if it was not measured.
	Height units.Length `json:"height"`

	// Depth is the shelf from the wall to its front edge, 1/8 in to 10 ft.
	// Zero if it was not measured.
	Depth units.Length `json:"depth"`

	// LeftWall and RightWall say that the shelf ends at a wall there, as in a corner.
	// Nothing can fall at such an end.
	LeftWall  bool `json:"leftWall"`
	RightWall bool `json:"rightWall"`

	// Opening is the firebox opening below. The zero value if there is none.
	Opening Opening `json:"opening"`

	// Above is what hangs or stands above the shelf. The zero value if nothing does.
	Above Above `json:"above"`
}

// An Opening is the front of a firebox: a rectangle in the wall, as wide as it
// happens to be. The zero value is no opening at all.
type Opening struct {
	Width  units.Length `json:"width"`  // from side to side, 1 in to 50 ft
	Height units.Length `json:"height"` // from its sill to its top, 1 in to 50 ft
	Below  units.Length `json:"below"`  // from the top of the shelf down to the top of the opening, 1 in to 50 ft
	Offset units.Length `json:"offset"` // its middle to the right of the middle of the shelf, -50 to 50 ft; negative to the left
}

// Above is a mirror, a picture or a screen over the shelf. The zero value is nothing.
type Above struct {
	Width  units.Length `json:"width"`  // from side to side, 1 in to 50 ft
	Height units.Length `json:"height"` // from bottom to top, 1 in to 50 ft
	Up     units.Length `json:"up"`     // its bottom above the shelf, 0 to 50 ft; 0 if it stands on it
	Screen bool         `json:"screen"` // a television or other screen, which heat spoils
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
	switch {
	case m.LeftWall && m.RightWall:
		text += ", between two walls"
	case m.LeftWall:
		text += ", a wall at the left"
	case m.RightWall:
		text += ", a wall at the right"
	}
	if m.Opening != (Opening{}) {
		text += ", " + m.Opening.String()
	}
	if m.Above != (Above{}) {
		text += ", " + m.Above.String()
	}
	return text
}

// String returns a text such as "opening 3 ft wide and 2 ft 6 in high, 1 ft 2 in
// below the shelf".
func (o Opening) String() string {
	if o == (Opening{}) {
		return "no opening"
	}
	text := "opening " + show(o.Width) + " wide and " + show(o.Height) + " high, " + show(o.Below) + " below the shelf"
	if o.Offset > 0 {
		text += ", " + show(o.Offset) + " right of the middle"
	} else if o.Offset < 0 {
		text += ", " + show(-o.Offset) + " left of the middle"
	}
	return text
}

// String returns a text such as "screen 4 ft wide and 2 ft 6 in high, 1 ft above
// the shelf".
func (a Above) String() string {
	if a == (Above{}) {
		return "nothing above"
	}
	what := "mirror or picture "
	if a.Screen {
		what = "screen "
	}
	return what + show(a.Width) + " wide and " + show(a.Height) + " high, " + show(a.Up) + " above the shelf"
}

// A measured length is a field by its pointer, and what it may be.
type measured struct {
	field       string
	length      units.Length
	least, most units.Length
	want        string
}

// check checks every field of m, which is at a pointer.
func (m Mantel) check(fn, at string) error {
	if err := checkLength(fn, at+"/length", m.Length, MinLength, MaxLength, wantShelf); err != nil {
		return err
	}
	if m.Height != 0 {
		if err := checkLength(fn, at+"/height", m.Height, units.Foot, 50*units.Foot, "1 ft to 50 ft, or 0 ft if not measured"); err != nil {
			return err
		}
	}
	if m.Depth != 0 {
		if err := checkLength(fn, at+"/depth", m.Depth, units.Inch/8, 10*units.Foot, "1/8 in to 10 ft, or 0 ft if not measured"); err != nil {
			return err
		}
	}
	o, a := m.Opening, m.Above
	for _, x := range [...]measured{
		{"/opening/width", o.Width, units.Inch, maxDrop, wantOpening},
		{"/opening/height", o.Height, units.Inch, maxDrop, wantOpening},
		{"/opening/below", o.Below, units.Inch, maxDrop, wantOpening},
		{"/opening/offset", o.Offset, -maxDrop, maxDrop, wantRise},
		{"/above/width", a.Width, units.Inch, maxDrop, wantAbove},
		{"/above/height", a.Height, units.Inch, maxDrop, wantAbove},
		{"/above/up", a.Up, 0, maxDrop, wantDrop},
	} {
		if x.field[1] == 'o' && o == (Opening{}) || x.field[1] == 'a' && a == (Above{}) {
			continue
		}
		if x.length < x.least || x.length > x.most {
			return rangeError(fn, at+x.field, exact(x.length), x.want)
		}
	}
	if m.Height != 0 && m.Opening.Below+m.Opening.Height > m.Height {
		return fitError(fn, at+"/opening/height", exact(m.Opening.Height),
			"at most "+exact(m.Height)+" together with the "+exact(m.Opening.Below)+" below the shelf, from the shelf to the hearth")
	}
	return nil
}
