package sizing

import (
	"math"
	"strconv"

	"example.com/fircone/units"
)

// A Mix is round ornaments of up to three sizes, largest first. A size of which
// there are none is zero. Mixes are equal if == says so.
type Mix struct {
	Large  Size `json:"large"`  // the largest
	Medium Size `json:"medium"` // the middle size
	Small  Size `json:"small"`  // the smallest
}

// A Size is so many ornaments of one diameter.
type Size struct {
	Diameter units.Length `json:"diameter"` // across one ornament, 1/4 in to 3 ft
	Count    int          `json:"count"`    // how many there are
}

// MixOf returns which sizes of round ornament a tree of this height takes, and
// how many of each out of a count, 0 to 1,000,000. The largest is a twentieth of
// the height across, up to 12 in, the medium one three quarters of that and the
// small one a half:
//
//	                       large          medium         small
//	diameter               height / 20    3/4 of large   1/2 of large
//	count, from 5 ft       20 %           30 %           50 %
//	count, 25 in to 5 ft   40 %           none           60 %
//	count, under 25 in     none           none           100 %
//
// Diameters go to the nearest half inch, each from the exact figure, what is halfway
// up, and none is under 1 in: on a 9 ft tree 5.4, 4.05 and 2.7 in are 5 1/2, 4 and
// 2 1/2 in; on a tree under 25 in all would be 1 in, and so there is one size. Large
// and medium counts go to the nearest whole one, halves up, and the rest is small.
// So no two sizes are the same, no count falls as the total grows, and no diameter
// as the height does.
//
// Large ones sit deep in the branches and low on the tree, small ones near the
// tips and the top. It returns an [units.Error] wrapping [units.ErrRange] if the height is not from
// 1 ft to 100 ft or the count is out of its range.
//
// Source: common practice that there are two or three sizes, more of the small
// ones; the figures are defaults of this package, about what shops sell for a
// 7 ft tree (4, 3 and 2 in).
func MixOf(height units.Length, count int) (Mix, error) {
	const fn = "MixOf"
	if err := checkHeight(fn, "height", height); err != nil {
		return Mix{}, err
	}
	if err := checkCount(fn, "count", count, 1_000_000); err != nil {
		return Mix{}, err
	}
	diameter := func(quarters units.Length) units.Length {
		const half = units.Inch / 2
		d := (min(height, 20*units.Foot)*quarters/(20*4) + half/2) / half * half
		return max(d, 1*units.Inch)
	}
	tenths := func(n int) int { return (count*n + 5) / 10 }
	m := Mix{Large: Size{Diameter: diameter(4)}, Small: Size{Diameter: diameter(2)}}
	switch {
	case m.Large.Diameter == m.Small.Diameter:
	case height < 5*units.Foot:
		m.Large.Count = tenths(4)
	default:
		m.Large.Count = tenths(2)
		m.Medium = Size{Diameter: diameter(3), Count: tenths(3)}
	}
	m.Small.Count = count - m.Large.Count - m.Medium.Count
	for _, s := range []*Size{&m.Large, &m.Medium, &m.Small} {
		if s.Count == 0 {
			*s = Size{}
		}
	}
	return m, nil
}

// Cover returns what part of a surface the ornaments of m cover, seen straight
// on, as a fraction:
//
//	cover = Σ count · π/4 · diameter² / surface
//
// within 4 parts in 10¹⁵. As many ornaments as by rule, of the sizes of [MixOf], cover
// about 4 % of a full 7 ft tree and 7 % of a 9 ft one; branches show through the rest.
// It returns an [units.Error] wrapping [units.ErrRange] if the surface is not positive,
// a count is not from 0 to 1,000,000, or the diameter of one that counts is not
// from 1/4 in to 3 ft.
func (m Mix) Cover(surface units.Area) (float64, error) {
	const fn = "Mix.Cover"
	if surface <= 0 {
		return 0, rangeError(fn, "surface", surface.String(), "more than 0 sq ft")
	}
	discs := 0.0
	for _, s := range [...]struct {
		Size
		count, diameter string
	}{
		{m.Large, "/large/count", "/large/diameter"},
		{m.Medium, "/medium/count", "/medium/diameter"},
		{m.Small, "/small/count", "/small/diameter"},
	} {
		if err := checkCount(fn, s.count, s.Count, 1_000_000); err != nil {
			return 0, err
		}
		if s.Count == 0 {
			continue
		}
		if s.Diameter < units.Inch/4 || s.Diameter > 3*units.Foot {
			return 0, rangeError(fn, s.diameter, s.Diameter.String(), "1/4 in to 3 ft")
		}
		d := float64(s.Diameter)
		discs += float64(float64(s.Count) * float64(d*d))
	}
	return float64(math.Pi/4*discs) / float64(float64(surface)*1e6), nil
}

// String returns one line, "10 of 4 in, 15 of 3 in, 24 of 2 in".
func (m Mix) String() string {
	text := ""
	for _, s := range [...]Size{m.Large, m.Medium, m.Small} {
		if s.Count == 0 {
			continue
		}
		if text != "" {
			text += ", "
		}
		text += strconv.Itoa(s.Count) + " of " + s.Diameter.String()
	}
	if text == "" {
		return "none"
	}
	return text
}
