package sizing

import "example.com/fircone/units"

// A Tree is what a tape measure says of a tree. Only Height is required.
// Trees are equal if == says so.
type Tree struct {
	// Height is from the floor to the tip, 1 ft to 100 ft.
	Height units.Length

	// Base is the widest diameter across the branches, as measured.
	// Zero takes the default of Taper.
	Base units.Length

	// Taper is the class of shape, used where Base is zero.
	Taper Taper

	// BareTip is the height at the top that is left undressed, for a topper.
	BareTip units.Length

	// Handle is the bare height from the floor to the lowest branches.
	Handle units.Length

	// Exposure is how much of the way round is seen and dressed.
	Exposure Exposure
}

// A Taper is a class of tree shape: how wide the base is for the height.
type Taper uint8

// The classes of taper, widest first.
const (
	Full   Taper = iota // a full tree
	Slim                // a slim tree
	Pencil              // a pencil tree
)

// An Exposure is how much of the way round a tree is seen and so dressed: one
// of the named situations, or an arc in thousandths of a degree made by
// [ArcDegrees].
type Exposure int32

// The named exposures.
const (
	AllRound    Exposure = iota // free-standing, seen from every side
	AgainstWall                 // its back to a wall
	InCorner                    // in a corner of the room
	HalfTree                    // a half tree, flat at the back
)
