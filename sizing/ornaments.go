package sizing

import (
	"math"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

const (
	minSize  = units.Inch / 4
	maxSize  = 3 * units.Foot
	maxCount = 100_000_000
)

// stocked are the sizes that shops stock, see CommonPractice.
var stocked = [...]units.Length{
	3 * units.Inch / 4, 1 * units.Inch, 3 * units.Inch / 2, 2 * units.Inch, 19 * units.Inch / 8, 11 * units.Inch / 4, 25 * units.Inch / 8,
	4 * units.Inch, 19 * units.Inch / 4, 6 * units.Inch, 8 * units.Inch, 10 * units.Inch, 12 * units.Inch,
}

// balls are the sizes that a tree takes and what share of its ornaments each has.
// Two of the sizes may be the same.
type balls [3]struct {
	diameter units.Length
	tenths   int
}

// balls returns the sizes for a tree, whose base is as wide as that.
func (r *Rules) balls(fn string, t *Tree, base units.Length) (balls, error) {
	list, limit, at := r.Sizes, r.HomeLargest, "/homeLargest"
	if t.Public {
		limit, at = r.HallLargest, "/hallLargest"
	}
	switch {
	case len(list) == 0:
		list = stocked[:]
	case len(list) > 100:
		return balls{}, rangeError(fn, "/sizes", strconv.Itoa(len(list)), "at most 100 sizes")
	}
	least := minSize
	for i, d := range list {
		if d < least || d > maxSize {
			return balls{}, rangeError(fn, "/sizes/"+strconv.Itoa(i), d.String(), least.String()+" to 3 ft, each size larger than the one before")
		}
		least = d + 1
	}
	switch {
	case limit == 0 && t.Public:
		limit = 12 * units.Inch
	case limit == 0:
		limit = 6 * units.Inch
	}
	if limit < list[0] || limit > maxSize {
		return balls{}, rangeError(fn, at, limit.String(), list[0].String()+" to 3 ft, the smallest of the sizes at least")
	}
	// A full tree is 13/20 as wide as high; a narrower one counts as a lower one.
	tall := min(t.Height, (base*20+12)/13)
	large := min(tall/20, max(4*units.Inch, tall/48), limit)
	for len(list) > 1 && list[0] < units.Inch && units.Inch <= large && list[1] <= large {
		list = list[1:] // minis are for trees that take nothing larger
	}
	nearest := func(target units.Length) units.Length {
		best := list[0]
		for _, d := range list {
			if d <= limit && max(d-target, target-d) <= max(best-target, target-best) {
				best = d
			}
		}
		return best
	}
	b := balls{{nearest(large), 2}, {nearest(large * 3 / 4), 3}, {nearest(large / 2), 5}}
	if tall < 5*units.Foot {
		b[0].tenths, b[1].tenths, b[2].tenths = 4, 0, 6
	}
	return b, nil
}

// disc returns the mean area that one of the ornaments covers, in square nanometers.
func (b balls) disc() float64 {
	sum := 0.0
	for _, s := range b {
		d := float64(s.diameter)
		sum += float64(float64(s.tenths) * float64(d*d))
	}
	return float64(math.Pi / 40 * sum)
}

// mix parts a count into the sizes.
func (b balls) mix(count int) []shopping.Lot {
	if count == 0 {
		return nil
	}
	m := make([]shopping.Lot, 0, len(b))
	rest := count
	for i, s := range b {
		n := rest
		if i < 2 {
			n = (count*s.tenths + 5) / 10
		}
		rest -= n
		switch last := len(m) - 1; {
		case n == 0:
		case last >= 0 && m[last].Item.Size == s.diameter:
			m[last].Quantity.Pieces += n
		default:
			m = append(m, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Size: s.diameter}, Quantity: shopping.Quantity{Pieces: n}})
		}
	}
	return m
}

// words returns the sizes in words, "4 in, 3 1/8 in and 2 in".
func (b balls) words(style units.Style) string {
	var list []string
	for _, s := range b {
		text := across(s.diameter, style)
		if s.tenths != 0 && (list == nil || list[len(list)-1] != text) {
			list = append(list, text)
		}
	}
	if last := len(list) - 1; last > 0 {
		return strings.Join(list[:last], ", ") + " and " + list[last]
	}
	return strings.Join(list, "")
}

// Mix returns which sizes of round ornament a tree takes, largest first, and how many of each
// out of a count, 0 to 100,000,000:
//
//	              large                     medium        small
//	diameter      1/20 of height, to 4 in   3/4 of large  1/2 of large
//	count         20 %                      30 %          50 %
//	  under 5 ft  40 %                      none          60 %
//
// From 16 ft on, large is a quarter inch for each foot. The height counts as at most 20/13 of the
// base. Each diameter is the nearest of Sizes, the larger of two equally near, and none over
// HomeLargest or, in public, HallLargest. Sizes under 1 in are used only where large is under 1 in.
// Counts are rounded to the nearest; the rest are small.
//
// Hang large ornaments deep and low, small ones near the tips.
//
// Source: two or three sizes, more of the small ones, is common practice; the figures are
// this package's.
func (r Rules) Mix(tree Tree, count int) ([]shopping.Lot, error) {
	const fn = "Rules.Mix"
	c, err := tree.cone(fn, "/tree/")
	if err != nil {
		return nil, err
	}
	b, err := r.balls(fn, &tree, c.BaseDiameter)
	if err != nil {
		return nil, err
	}
	if err := checkCount(fn, "count", count, maxCount); err != nil {
		return nil, err
	}
	return b.mix(count), nil
}

// Cover returns the share of a surface that round ornaments cover, seen
// straight on:
//
//	Σ count · π/4 · diameter² / surface
//
// within 4 parts in 10¹⁵. The surface is more than zero, a diameter 1/4 in to 3 ft, a count 0
// to 100,000,000.
func Cover(ornaments []shopping.Lot, surface units.Area) (float64, error) {
	const fn = "Cover"
	if surface <= 0 {
		return 0, rangeError(fn, "surface", surface.String(), "more than 0 sq ft")
	}
	discs := 0.0
	for i, lot := range ornaments {
		n, size := lot.Quantity.Pieces, lot.Item.Size
		switch {
		case lot.Item.Kind != shopping.Ornament || lot.Quantity.Length != 0 || n < 0 || n > maxCount:
			return 0, rangeError(fn, "/ornaments/"+strconv.Itoa(i), lot.Quantity.String()+" "+lot.Item.String(), "0 to 100000000 ornaments")
		case n == 0:
			continue
		case size < minSize || size > maxSize:
			return 0, rangeError(fn, "/ornaments/"+strconv.Itoa(i)+"/item", size.String(), "a size of 1/4 in to 3 ft")
		}
		d := float64(size)
		discs += float64(float64(n) * float64(d*d))
	}
	return float64(math.Pi/4*discs) / float64(float64(surface)*1e6), nil
}
