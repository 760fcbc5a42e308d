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
	Length units.Length

	// Height is the top of the shelf above the hearth or floor, 1 ft to 50 ft.
	// Zero if it was not measured.
	Height units.Length

	// Depth is the shelf from the wall to its front edge, 1 in to 10 ft.
	// Zero if it was not measured.
	Depth units.Length

	// Opening is the firebox opening below. The zero value if there is none.
	Opening Opening
}

// An Opening is the front of a firebox: a rectangle in the wall, its middle
// under the middle of the shelf. The zero value is no opening at all.
// Openings are equal if == says so.
type Opening struct {
	Width  units.Length // from side to side, 1 in to the length of the shelf
	Height units.Length // from its sill to its top, 1 in to 50 ft
	Below  units.Length // from the top of the shelf down to the top of the opening, 1 in to 50 ft
}
