package placement

import (
	"math"
	"strconv"

	"example.com/fircone/internal/elem"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Layout is a tree and the way it faces. Only Tree.Height is required;
// without a Handle and a BareTip pieces go from the floor to the tip.
type Layout struct {
	Tree sizing.Tree `json:"tree"`

	// Facing is the azimuth of the middle of the dressed part, -360° to 360°.
	Facing Angle `json:"facing"`

	// Mirror swaps left and right, as for the second of two trees beside a door.
	Mirror bool `json:"mirror"`
}

// A Position is a point in the room, measured from the foot of the trunk.
type Position struct {
	X units.Length `json:"x"` // to the viewer's right
	Y units.Length `json:"y"` // away from the viewer
	Z units.Length `json:"z"` // above the floor
}

// A Place is where the middle of one item goes.
type Place struct {
	Item    shopping.Item `json:"item"`    // what hangs there
	Height  units.Length  `json:"height"`  // above the floor
	Azimuth Angle         `json:"azimuth"` // direction from the trunk
	Depth   units.Length  `json:"depth"`   // how far in from the branch tips, toward the trunk

	// At is the same point, to the nanometer.
	At Position `json:"at"`

	// Left, set by Order.Stations, is how far left of the previous piece this one
	// hangs, around the tree, facing the trunk; right if negative. The first
	// piece of a station is measured from the middle of the station.
	Left units.Length `json:"left,omitzero"`
}

// String returns one line to half an inch: "4 ft 2 1/2 in up at 6 o'clock, 5 in deep".
func (p Place) String() string {
	return tape(p.Height) + " up at " + strconv.Itoa(p.Azimuth.Clock()) + " o'clock" + p.deep()
}

// deep says how deep p is, if it is.
func (p Place) deep() string {
	if p.Depth == 0 {
		return ""
	}
	return ", " + tape(p.Depth) + " deep"
}

const (
	maxPieces = 100_000
	maxSize   = 10 * units.Foot
)

// A stand is a layout that was checked.
type stand struct {
	surface
	height float64 // of the tree, in nanometers
	facing Angle
	mirror bool
}

func (l Layout) stand(fn string) (stand, error) {
	tree, err := l.Tree.Measured()
	if err != nil {
		return stand{}, inside(fn, "/tree", err)
	}
	degrees, err := l.Tree.Exposure.Degrees()
	if err != nil {
		return stand{}, inside(fn, "/tree/exposure", err)
	}
	if l.Facing < -fullTurn || l.Facing > fullTurn {
		return stand{}, rangeError(fn, "/facing", l.Facing.String(), "-360° to 360°")
	}
	height := float64(l.Tree.Height)
	r, h := float64(tree.Base)/height/2, float64(tree.Height-tree.Handle)/height
	slope := math.Sqrt(float64(r*r) + float64(h*h))
	return stand{
		surface: surface{
			sin:    r / slope,
			cos:    h / slope,
			top:    float64(tree.BareTip) / height * slope / h,
			bottom: slope - float64(tree.BareBase)/height*slope/h,
			arc:    float64(degrees / 180 * math.Pi),
			round:  degrees == 360,
		},
		height: height,
		facing: l.Facing,
		mirror: l.Mirror,
	}, nil
}

// length returns x, in heights of the tree, as a length.
func (s stand) length(x float64) units.Length { return units.Length(math.Round(x * s.height)) }

// point returns the point on the surface at p, moved inward by depth and down by
// drop, and its azimuth.
func (s stand) point(p spot, depth, drop float64) (Position, Angle) {
	sin, cos := elem.Sincos(p.azimuth + float64(s.facing.Degrees()/180*math.Pi))
	r := float64(p.slant*s.sin) - depth
	at := Position{s.length(float64(r * sin)), s.length(float64(-r * cos)), s.length(1 - float64(p.slant*s.cos) - drop)}
	azimuth := (Angle(math.Round(p.azimuth/math.Pi*float64(halfTurn))) + s.facing).normal()
	if s.mirror {
		at.X, azimuth = -at.X, (-azimuth).normal()
	}
	return at, azimuth
}

func (s stand) place(item shopping.Item, p spot, depth float64) Place {
	at, azimuth := s.point(p, depth, 0)
	return Place{Item: item, Height: at.Z, Azimuth: azimuth, Depth: s.length(depth), At: at}
}

// Places returns a place for each piece, roughly from the top down.
//
// Larger pieces hang deeper, and on average a little lower. The largest are set back a
// third of the way from the branch tips to the trunk, others in proportion, the smallest
// (or only) size not at all. Pieces that would touch when set back stay at the tips. None
// touch; none reaches above or below the dressed part.
//
// At most 100,000 pieces, of up to 10 ft across. Those without a size take no room. If they
// do not all fit, the error wraps [units.ErrFit] and says how many in these proportions
// would; for one size mostly exact up to about 100, within 2 % up to 14,000, within 5 %
// above; for several, at times a few too low.
//
// Source: common practice; how deep and how low is our own choice.
func (l Layout) Places(pieces []shopping.Lot) ([]Place, error) {
	a, err := l.arrange("Layout.Places", pieces)
	if err != nil {
		return nil, err
	}
	places := make([]Place, len(a.spots))
	for i, p := range a.spots {
		places[i] = a.stand.place(pieces[a.who[i]].Item, p, a.depth[i])
	}
	return places, nil
}
