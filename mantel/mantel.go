package mantel

import "example.com/fircone/units"

// The lengths of shelf that this package takes.
const (
	minLength units.Length = 1 * units.Foot
	maxLength units.Length = 50 * units.Foot

	wantShelf   = "1 ft to 50 ft"
	wantOpening = "1 in to 50 ft, or no opening at all"
	wantAbove   = "1 in to 50 ft, or nothing above at all"
)

// A Mantel is what a tape measure says of a shelf. Only Length is required; zero means
// not measured, or not there.
type Mantel struct {
	Length    units.Length `json:"length"`    // of the shelf, from 1 ft
	Height    units.Length `json:"height"`    // of its top above the hearth, from 1 ft
	Depth     units.Length `json:"depth"`     // from the wall to its front edge, 1/8 in to 10 ft
	LeftWall  bool         `json:"leftWall"`  // the left end is at a wall, where nothing can fall
	RightWall bool         `json:"rightWall"` // the right end is
	Opening   Rectangle    `json:"opening"`   // of the firebox under the shelf
	Above     Rectangle    `json:"above"`     // a mirror, picture or screen over the shelf
}

// A Rectangle is a place in the wall under or over the shelf. Zero is none.
type Rectangle struct {
	Width  units.Length `json:"width"`  // from 1 in
	Height units.Length `json:"height"` // from 1 in
	Gap    units.Length `json:"gap"`    // from the top of the shelf down to the top of an opening, from 1 in; or up to the bottom of a mirror
	Offset units.Length `json:"offset"` // how far its middle is right of the shelf's, from -50 ft
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
	if err := checkLength(fn, at+"/length", m.Length, minLength, maxLength, wantShelf); err != nil {
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
		{"/opening/gap", o.Gap, units.Inch, maxDrop, wantOpening},
		{"/opening/offset", o.Offset, -maxDrop, maxDrop, wantRise},
		{"/above/width", a.Width, units.Inch, maxDrop, wantAbove},
		{"/above/height", a.Height, units.Inch, maxDrop, wantAbove},
		{"/above/gap", a.Gap, 0, maxDrop, wantDrop},
		{"/above/offset", a.Offset, -maxDrop, maxDrop, wantRise},
	} {
		if x.field[1] == 'o' && o == (Rectangle{}) || x.field[1] == 'a' && a == (Rectangle{}) {
			continue
		}
		if x.length < x.least || x.length > x.most {
			return rangeError(fn, at+x.field, exact(x.length), x.want)
		}
	}
	if m.Height != 0 && m.Opening.Gap+m.Opening.Height > m.Height {
		return fitError(fn, at+"/opening/height", exact(m.Opening.Height),
			"at most "+exact(m.Height)+" together with the "+exact(m.Opening.Gap)+" below the shelf, from the shelf to the hearth")
	}
	return nil
}
