package palette

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// The most that a box may hold.
const (
	maxBox    = 1_000_000     // entries
	maxAlike  = 1_000_000     // pieces in an entry
	maxPieces = 1_000_000_000 // pieces in all
)

// A Piece is an ornament, ribbon or pick that is owned, or that a shop has.
type Piece struct {
	Name   string `json:"name"`            // what the owner calls it: "glass balls, attic"
	Color  Color  `json:"color"`           // how it looks by daylight
	Finish Finish `json:"finish,omitzero"` // how it takes the light
	Count  int    `json:"count"`           // how many alike, 0 to 1,000,000; zero counts as one
}

func (p *Piece) count() int { return max(p.Count, 1) }

// A Match says where in a palette a piece belongs.
type Match struct {
	Swatch     Swatch  `json:"swatch"`     // the nearest swatch of the palette
	Difference float64 `json:"difference"` // ΔE00 from it
	Fits       bool    `json:"fits"`       // whether that is within Rules.Fit
}

// String returns "crimson, 4.2 away" or "none: crimson is nearest, 24.7 away", rounded up to a tenth.
func (m Match) String() string {
	if m.Swatch == (Swatch{}) {
		return "no match"
	}
	d := strconv.FormatFloat(math.Ceil(m.Difference*10)/10, 'f', 1, 64)
	if m.Fits {
		return m.Swatch.Name + ", " + d + " away"
	}
	return "none: " + m.Swatch.Name + " is nearest, " + d + " away"
}

// points returns the swatches of p as points, by daylight.
func (p Palette) points() (points [maxSwatches]point) {
	for i, s := range p {
		points[i] = s.Color.point()
	}
	return points
}

// light is how much of (ΔL'/SL)² counts between a swatch and a piece of these finishes.
func light(swatch, piece Finish) float64 {
	if swatch&Metal != 0 && (piece&Metal != 0 || piece == 0) {
		return 0.25
	}
	return 1
}

// match returns where a piece belongs in p, whose points are given, and the place of that swatch.
func (r Rules) match(p Palette, points *[maxSwatches]point, piece *Piece) (Match, int) {
	q := piece.Color.point()
	best, at := anyFar, 0
	for i := range p {
		if d := weighed(points[i], q, best, light(p[i].Finish, piece.Finish)); d < best {
			best, at = d, i
		}
	}
	return Match{Swatch: p[at], Difference: best, Fits: best <= r.Fit}, at
}

// A Sorting is a box of pieces sorted into a palette.
type Sorting struct {
	Palette Palette `json:"palette"` // what it was sorted into
	Matches []Match `json:"matches"` // one for each piece, in the order of the box
	Kept    []int   `json:"kept"`    // the pieces that fit each swatch
	Left    int     `json:"left"`    // the pieces that fit no swatch
}

// Sort finds for every piece of the box the swatch nearest to it by daylight, the earlier of
// two equally near, and whether the difference is at most r.Fit. A box has at most 1,000,000
// entries and 1,000,000,000 pieces.
//
// The difference is [Color.Difference]. Between two metals lightness counts half (kL = 2): a
// metal is as light or dark as what it mirrors, and keeps its hue. Gold balls of many codes
// therefore match gold; copper does not. For a metal swatch, an unknown finish counts as
// metal.
//
// Source: kL is CIEDE2000's factor for viewing conditions, and 2 the textile trade's; its use
// for metals was chosen here.
func (r Rules) Sort(palette Palette, box []Piece) (Sorting, error) {
	const fn = "Rules.Sort"
	if err := r.checkPalette(fn, "", palette); err != nil {
		return Sorting{}, err
	}
	if err := checkBox(fn, "box", box, maxBox); err != nil {
		return Sorting{}, err
	}
	return r.sort(palette, box), nil
}

func (r Rules) sort(p Palette, box []Piece) Sorting {
	s := Sorting{Palette: slices.Clone(p), Matches: make([]Match, len(box)), Kept: make([]int, len(p))}
	points := p.points()
	for i := range box {
		m, at := r.match(p, &points, &box[i])
		s.Matches[i] = m
		if m.Fits {
			s.Kept[at] += box[i].count()
		} else {
			s.Left += box[i].count()
		}
	}
	return s
}

func checkBox(fn, name string, box []Piece, limit int) error {
	if len(box) > limit {
		return rangeError(fn, name, len(box), fmt.Sprint("at most ", limit, " entries"))
	}
	var total int64
	for i := range box {
		if n := box[i].Count; n < 0 || n > maxAlike {
			return rangeError(fn, "/"+name+"/"+strconv.Itoa(i)+"/count", n, fmt.Sprint("0 to ", maxAlike))
		}
		if box[i].Finish > allFinishes {
			return box[i].Finish.check(fn, "/"+name+"/"+strconv.Itoa(i)+"/finish")
		}
		if total += int64(box[i].count()); total > maxPieces {
			return refuse(fn, name, fmt.Sprint(total), fmt.Sprint("at most ", maxPieces, " pieces in all"), units.ErrRange)
		}
	}
	return nil
}

// String returns the pieces that fit each swatch, and those left out, a line each.
func (s Sorting) String() string {
	var t table
	for i, n := range s.Kept[:min(len(s.Kept), len(s.Palette))] {
		t.row(s.Palette[i].String(), strconv.Itoa(n))
	}
	t.row("left out", strconv.Itoa(s.Left))
	return t.String()
}

// A table lays out rows of cells: the first column to the left, the others to the right.
type table struct {
	rows  [][]string
	width []int
}

func (t *table) row(cells ...string) {
	for i, c := range cells {
		if i == len(t.width) {
			t.width = append(t.width, 0)
		}
		t.width[i] = max(t.width[i], len([]rune(c)))
	}
	t.rows = append(t.rows, cells)
}

func (t *table) String() string {
	var b strings.Builder
	for _, cells := range t.rows {
		line := ""
		for i, c := range cells {
			pad := strings.Repeat(" ", t.width[i]-len([]rune(c)))
			if i == 0 {
				line += c + pad
			} else {
				line += "  " + pad + c
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}
