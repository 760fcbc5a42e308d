package placement

import (
	"math"
	"strconv"

	"example.com/fircone/internal/elem"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A Layout is a tree and how it stands. Only the Height of Tree is required.
type Layout struct {
	// Tree is the tree. Its pieces go between its lowest branches and its bare
	// tip, on as much of the way round as its exposure has.
	Tree sizing.Tree `json:"tree"`

	// Facing is the azimuth of the middle of what is dressed, -360° to 360°: 0
	// is toward the viewer.
	Facing Angle `json:"facing"`

	// Mirror exchanges left and right, Facing included, as for the second of
	// two trees at a door.
	Mirror bool `json:"mirror"`
}

// A Piece is so many of one item to hang.
type Piece struct {
	// Item is what it is. Its size is at most 10 ft; one with no size takes no room.
	// Items of one kind and type are kept apart, and so are items of one color.
	Item shopping.Item `json:"item"`

	// Count is how many there are, none or more.
	Count int `json:"count"`
}

// A Position is a point in the room: X to the right of the trunk as the viewer sees
// it, Y away from the viewer, Z above the floor.
type Position struct {
	X units.Length `json:"x"`
	Y units.Length `json:"y"`
	Z units.Length `json:"z"`
}

// A Place is where one item goes, that is, its middle.
type Place struct {
	// Item is what hangs there.
	Item shopping.Item `json:"item"`

	// Height is above the floor.
	Height units.Length `json:"height"`

	// Azimuth is the direction from the trunk.
	Azimuth Angle `json:"azimuth"`

	// Depth is how far it is set back from the tips of the branches, toward the
	// trunk.
	Depth units.Length `json:"depth"`

	// At is the same in space, to the nanometer; Azimuth is rounded.
	At Position `json:"at"`
}

// String returns one line, "4 ft 2 1/2 in up at 6 o'clock, 0 in deep", to half an inch.
func (p Place) String() string {
	s := p.Height.Format(units.InFeetInches, units.Inch/2) + " up at " + strconv.Itoa(p.Azimuth.Clock()) + " o'clock"
	if p.Depth > 0 {
		s += ", " + p.Depth.Format(units.InFeetInches, units.Inch/2) + " deep"
	}
	return s
}

// MaxPieces is the most that [Layout.Places] places at once.
const MaxPieces = 100_000

const maxSize = 10 * units.Foot

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

// Places returns a place for each of the pieces, roughly from the top down.
//
//   - They are even. For 30 pieces and more on trees from pencil to flared, the
//     mean distance to the nearest neighbor is at least 0.93 of that in a
//     hexagonal pattern, √(2·A/(√3·n)) for n places on the area A, and the least
//     is at least 0.88 of it, before pieces are set back among the branches.
//   - Each type, each color and each size is even by itself: where there are five
//     or more, the mean is about 0.65 of that distance for as many, and no two are
//     nearer than half of it. See the package documentation for where that was measured.
//   - Larger pieces hang deeper, and on average a little lower. The largest are set
//     back a third of the way from the tips to the trunk and the smallest not at all,
//     and the others in between by size; where that would make two touch, they stay
//     at the tips.
//   - No piece touches another one, and none reaches above the bare tip, where a
//     topper is, or below the lowest branches.
//
// The same arguments give the same places on every machine. It takes time and
// memory proportional to the number of pieces.
//
// It returns an [units.Error] wrapping [units.ErrFit] if there is no room for all, which says
// for how many there is; one wrapping [units.ErrRange] if a size, a count or Facing is
// out of its range or there are more than 100,000 pieces; one wrapping [units.ErrName]
// or [units.ErrSyntax] if an item cannot be written; and the errors of
// [sizing.Tree.Cone] and [sizing.Exposure.Degrees].
//
// Source: common practice for what goes where; the shares are ours.
func (l Layout) Places(pieces []Piece) ([]Place, error) {
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
