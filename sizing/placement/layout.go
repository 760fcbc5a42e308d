package placement

import (
	"iter"
	"math"
	"strconv"

	"example.com/fircone/internal/elem"
	"example.com/fircone/sizing"
	"example.com/fircone/units"
)

// A Layout is a tree and how it stands. Only the Height of Tree is required.
// Layouts are equal if == says so.
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

// A Piece is something to hang, and how often.
type Piece struct {
	// Type is what it is. Pieces of one Type are kept apart, whatever their size.
	Type string `json:"type"`

	// Size is its diameter, zero to 10 ft. Zero takes no room.
	Size units.Length `json:"size"`

	// Swatch is its color. Pieces of one Swatch are kept apart, whatever their
	// Type; those without one go anywhere.
	Swatch string `json:"swatch"`

	// Count is how many there are, none or more.
	Count int `json:"count"`
}

// A Point is where something is: X to the right of the trunk as the viewer sees
// it, Y away from the viewer, Z above the floor. Points are equal if == says so.
type Point struct {
	X units.Length `json:"x"`
	Y units.Length `json:"y"`
	Z units.Length `json:"z"`
}

// A Place is where one piece goes, that is, its middle. Places are equal if ==
// says so.
type Place struct {
	// Piece is the index of the piece in the list that was placed.
	Piece int `json:"piece"`

	// Height is above the floor.
	Height units.Length `json:"height"`

	// Azimuth is the direction from the trunk.
	Azimuth Angle `json:"azimuth"`

	// Depth is how far it is set back from the tips of the branches, toward the
	// trunk.
	Depth units.Length `json:"depth"`

	// At is the same in space, to the nanometer; Azimuth is rounded.
	At Point `json:"at"`
}

// String returns one line, "4 ft 2 1/2 in up at 6 o'clock, 0 in deep", to half an inch.
func (p Place) String() string {
	s := p.Height.Format(units.InFeetInches, units.Inch/2) + " up at " + strconv.Itoa(p.Azimuth.Clock()) + " o'clock"
	if p.Depth > 0 {
		s += ", " + p.Depth.Format(units.InFeetInches, units.Inch/2) + " deep"
	}
	return s
}

// The most that is placed at once.
const (
	MaxPieces = 100_000    // by Layout.Places
	MaxSpiral = 10_000_000 // by Layout.Spiral
)

const maxSize = 10 * units.Foot

// A stand is a layout that was checked.
type stand struct {
	surface
	height float64 // of the tree, in nanometers
	facing Angle
	mirror bool
}

func (l Layout) stand(fn string) (stand, error) {
	cone, err := l.Tree.Cone()
	if err != nil {
		return stand{}, err
	}
	degrees, err := l.Tree.Exposure.Degrees()
	if err != nil {
		return stand{}, err
	}
	if l.Facing < -fullTurn || l.Facing > fullTurn {
		return stand{}, rangeError(fn, "Facing", l.Facing.String(), "-360° to 360°")
	}
	height := float64(l.Tree.Height)
	r, h := float64(cone.BaseDiameter)/height/2, float64(cone.Height)/height
	slope := math.Sqrt(float64(r*r) + float64(h*h))
	return stand{
		surface: surface{
			sin:    r / slope,
			cos:    h / slope,
			top:    float64(cone.BareTip) / height * slope / h,
			bottom: slope,
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
func (s stand) point(p spot, depth, drop float64) (Point, Angle) {
	sin, cos := elem.Sincos(p.azimuth + float64(s.facing.Degrees()/180*math.Pi))
	r := float64(p.slant*s.sin) - depth
	at := Point{s.length(float64(r * sin)), s.length(float64(-r * cos)), s.length(1 - float64(p.slant*s.cos) - drop)}
	azimuth := (Angle(math.Round(p.azimuth/math.Pi*float64(halfTurn))) + s.facing).normal()
	if s.mirror {
		at.X, azimuth = -at.X, (-azimuth).normal()
	}
	return at, azimuth
}

func (s stand) place(piece int, p spot, depth float64) Place {
	at, azimuth := s.point(p, depth, 0)
	return Place{Piece: piece, Height: at.Z, Azimuth: azimuth, Depth: s.length(depth), At: at}
}

// Spiral returns n places, 0 to 10,000,000, one after the other from the top
// down and with no memory of those before. Place k of n, from 1, shares the
// surface equally with the others: above it lies the share (k - 1/2)/n of it.
// They follow a spiral with as much room between its turns as along it,
//
//	s = √(t² + (b² - t²)·(k - ½)/n)     azimuth = arc·(s - t)·√(n/A)
//
// where t, s and b are the distances along the slope from the tip to the upper
// edge, the place and the lower edge, and A is the dressed area. Where only part
// is dressed, each turn is a row from one side to the other.
//
// Over trees from pencil to flared and 30 to 3,000 places, the mean distance to
// the nearest neighbor is 0.90 of that in a hexagonal pattern on average, and the
// least 0.72 of it; golden-angle placing has 0.88 and 0.70. [Layout.Places] is
// better, and takes memory and some hundred times as long.
//
// It returns an [units.Error] wrapping [units.ErrRange] if n or Facing is out of range, and
// the errors of [sizing.Tree.Cone] and [sizing.Exposure.Degrees].
//
// Source: equal shares as in H. Vogel, Mathematical Biosciences 44 (1979)
// 179-189; the even spiral as for points on a sphere in E. B. Saff and A. B. J.
// Kuijlaars, Mathematical Intelligencer 19 (1997) 5-11, from memory.
func (l Layout) Spiral(n int) (iter.Seq[Place], error) {
	const fn = "Layout.Spiral"
	s, err := l.stand(fn)
	if err != nil {
		return nil, err
	}
	if n < 0 || n > MaxSpiral {
		return nil, rangeError(fn, "n", strconv.Itoa(n), "0 to "+strconv.Itoa(MaxSpiral))
	}
	return func(yield func(Place) bool) {
		for k := range n {
			if !yield(s.place(0, s.spiral(k, n), 0)) {
				return
			}
		}
	}, nil
}

// Places returns a place for each of the pieces, roughly from the top down.
//
//   - They are even. For 30 pieces and more on trees from pencil to flared, the
//     mean distance to the nearest neighbor is at least 0.93 of that in a
//     hexagonal pattern, √(2·A/(√3·n)) for n places on the area A, and the least
//     is at least 0.78 of it, before pieces are set back among the branches.
//   - Each Type is even by itself: where there are five or more, no two of
//     them are nearer than half of that distance for the type alone; and so is
//     each Swatch. Where there are five types or more, none of them half as
//     numerous again as a fifth, no two of a type are neighbors.
//   - Larger pieces hang lower and deeper. The largest are set back a third of
//     the way from the tips to the trunk and the smallest not at all, and the
//     others in between by size; where that would make two touch, they stay at
//     the tips.
//   - No piece touches another one, and none reaches above the bare tip, where a
//     topper is, or below the lowest branches.
//
// The same arguments give the same places on every machine. It takes time and
// memory proportional to the number of pieces. The places are found at once, and
// handed out one by one with no more memory.
//
// It returns an [units.Error] wrapping [units.ErrFit] if there is no room for all, which says
// for how many there is; one wrapping [units.ErrRange] if a Size, a Count or Facing is
// out of its range or there are more than 100,000 pieces; and the errors of
// [sizing.Tree.Cone] and [sizing.Exposure.Degrees].
//
// Source: common practice for what goes where; the shares are ours.
func (l Layout) Places(pieces []Piece) (iter.Seq[Place], error) {
	a, err := l.arrange("Layout.Places", pieces)
	if err != nil {
		return nil, err
	}
	return func(yield func(Place) bool) {
		for i := range a.spots {
			if !yield(a.place(i)) {
				return
			}
		}
	}, nil
}

// AppendPlaces appends to dst what [Layout.Places] returns. On error it returns dst as
// it was. Its errors are those of Layout.Places.
func (l Layout) AppendPlaces(dst []Place, pieces []Piece) ([]Place, error) {
	a, err := l.arrange("Layout.AppendPlaces", pieces)
	if err != nil {
		return dst, err
	}
	for i := range a.spots {
		dst = append(dst, a.place(i))
	}
	return dst, nil
}
