package palette

import (
	"math/bits"
	"slices"
)

// maxBestPieces is the most entries that Best takes.
const maxBestPieces = 200

// maxBest is the most colors of a palette that Best looks for.
const maxBest = 4

// Best chooses at most four colors (or r.Limit, if fewer) from a box of 1 to 200 entries and
// sorts the box into them. The colors are at least r.Apart apart, and no other choice from the
// box keeps more pieces; a piece is kept if it fits a swatch. Ties go to the fewest colors,
// then to those first in the box. The swatches are in the order of the pieces they keep, the
// most first.
func (r Rules) Best(box []Piece) (Sorting, error) {
	const fn = "Rules.Best"
	if err := r.check(fn, ""); err != nil {
		return Sorting{}, err
	}
	if len(box) == 0 {
		return Sorting{}, rangeError(fn, "box", 0, "1 to 200 entries")
	}
	if err := checkBox(fn, "box", box, maxBestPieces); err != nil {
		return Sorting{}, err
	}

	s := newSearch(r, box)
	var best []int
	for size := 1; size <= min(r.Limit, maxBest); size++ {
		if found := s.find(size); found != nil {
			best = found
		}
	}

	var p Palette
	for _, i := range best {
		c := s.color[i]
		name := nameOf(c, s.finish[i])
		p = append(p, Swatch{name, c, s.finish[i]})
	}
	sorted := r.sort(p, box)
	order := make([]int, len(p))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return sorted.Kept[j] - sorted.Kept[i] })
	ranked := make(Palette, len(p))
	for i, j := range order {
		ranked[i] = p[j]
	}
	return r.sort(ranked, box), nil
}

// nameOf returns the name of a color, of the metal if it is that, or else its #rrggbb.
func nameOf(c Color, f Finish) string {
	if f&Metal != 0 {
		for i := range metals {
			if metals[i].color == c {
				return metals[i].name
			}
		}
	}
	name := c.Name()
	if named, err := parseColor("", name, f); err != nil || named != c {
		return c.String()
	}
	return name
}

// A set is a set of up to maxBestPieces colors.
type set [(maxBestPieces + 63) / 64]uint64

func (s *set) add(i int)      { s[i>>6] |= 1 << (i & 63) }
func (s *set) has(i int) bool { return s[i>>6]>>(i&63)&1 != 0 }

func (s *set) union(t *set) set {
	u := *s
	for k := range u {
		u[k] |= t[k]
	}
	return u
}

// A search looks for the sets of colors that keep the most. Equal colors of the box
// are one color here, metals, and those whose finish nobody says, apart from the rest.
type search struct {
	color  []Color
	finish []Finish
	keeps  []set // the colors that a swatch of this color keeps
	clash  []set // the colors that a swatch of this color cannot stand beside, itself among them
	planes []set // the weights, in binary: color i weighs the sum of 2^b where planes[b] has i
	most   int   // the most pieces kept so far
	chosen [maxBest]int
	found  []int
}

func newSearch(r Rules, box []Piece) *search {
	s := new(search)
	type look struct {
		color       Color
		metal, open bool
	}
	at := make(map[look]int, len(box))
	var weight []int
	for i := range box {
		c := box[i].Color
		l := look{c, box[i].Finish&Metal != 0, box[i].Finish == 0}
		k, ok := at[l]
		if !ok {
			k = len(s.color)
			at[l] = k
			s.color = append(s.color, c)
			s.finish = append(s.finish, box[i].Finish)
			weight = append(weight, 0)
		}
		weight[k] += box[i].count()
	}
	for i, w := range weight {
		for b := 0; w>>b > 0; b++ {
			if b == len(s.planes) {
				s.planes = append(s.planes, set{})
			}
			if w>>b&1 != 0 {
				s.planes[b].add(i)
			}
		}
	}
	n := len(s.color)
	s.keeps = make([]set, n)
	s.clash = make([]set, n)
	points := make([]point, n)
	for i, c := range s.color {
		points[i] = c.point()
		s.keeps[i].add(i)
		s.clash[i].add(i)
		for j := range i {
			d := difference(points[j], points[i], max(r.Fit, r.Apart))
			for _, k := range [2][2]int{{i, j}, {j, i}} { // a swatch and a piece
				near := d
				if w := light(s.finish[k[0]], s.finish[k[1]]); w != 1 {
					near = weighed(points[i], points[j], r.Fit, w)
				}
				if near <= r.Fit {
					s.keeps[k[0]].add(k[1])
				}
			}
			if !r.apart(d) {
				s.clash[i].add(j)
				s.clash[j].add(i)
			}
		}
	}
	return s
}

// gains[i] is a bound on what color i would add to the pieces kept, or -1 if it
// cannot be added.
type gains [maxBestPieces]int

// find returns the first set of the given size that keeps the most pieces, if it
// keeps more than s.most, which it raises; else nil.
func (s *search) find(size int) []int {
	var none set
	var all gains
	for i := range s.color {
		all[i] = s.added(i, &none)
	}
	s.found = nil
	// What can be had by taking the color that adds most, again and again, is a
	// mark to beat: nothing below it need be looked at.
	s.most = max(s.most, s.greedy(size)-1)
	s.extend(size, 0, 0, 0, &none, &none, &all)
	return s.found
}

// greedy returns how many pieces are kept by up to size colors taken one by one, each
// the one that adds the most.
func (s *search) greedy(size int) int {
	var kept, barred set
	total := 0
	for range size {
		best, most := 0, 0 // where nothing adds any more, the first color does not either
		for i := range s.color {
			if n := s.added(i, &kept); n > most && !barred.has(i) {
				best, most = i, n
			}
		}
		total += most
		kept, barred = kept.union(&s.keeps[best]), barred.union(&s.clash[best])
	}
	return total
}

// extend tries every color from next on as the one chosen after depth others, which
// keep the set kept, in all total pieces, and bar the set barred. What a color adds
// can only fall as more is kept, so upper, from the step before, bounds it from above.
func (s *search) extend(size, depth, next, total int, kept, barred *set, upper *gains) {
	n := len(s.color)
	left := size - depth
	if left == 1 {
		for i := next; i < n; i++ {
			if total+upper[i] <= s.most || barred.has(i) {
				continue
			}
			if t := total + s.added(i, kept); t > s.most {
				s.most = t
				s.chosen[depth] = i
				s.found = slices.Clone(s.chosen[:size])
			}
		}
		return
	}

	// rest[i] is the most that left-1 colors from i on could add.
	var gain gains
	var rest [maxBestPieces + 1]int
	var top [maxBest]int // the largest gains from i on, the largest first
	for i := n - 1; i >= next; i-- {
		gain[i] = -1
		if !barred.has(i) {
			gain[i] = s.added(i, kept)
		}
		g := gain[i]
		for k := range left - 1 {
			if g > top[k] {
				g, top[k] = top[k], g
			}
			rest[i] += top[k]
		}
	}
	for i := next; i < n; i++ {
		if gain[i] < 0 || total+gain[i]+rest[i+1] <= s.most {
			continue
		}
		nowKept, nowBarred := kept.union(&s.keeps[i]), barred.union(&s.clash[i])
		s.chosen[depth] = i
		s.extend(size, depth+1, i+1, total+gain[i], &nowKept, &nowBarred, &gain)
	}
}

// added returns the pieces that color i keeps beyond those of kept.
func (s *search) added(i int, kept *set) int {
	var more set
	for k := range more {
		more[k] = s.keeps[i][k] &^ kept[k]
	}
	sum := 0
	for b := range s.planes {
		n := 0
		for k := range more {
			n += bits.OnesCount64(more[k] & s.planes[b][k])
		}
		sum += n << b
	}
	return sum
}
