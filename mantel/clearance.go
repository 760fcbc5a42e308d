package mantel

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/fircone/units"
)

// Published clearances. All of them are written for woodwork and trim, or for
// decorations near a fire, and serve here as a caution.
const (
	// Nothing that burns nearer than this to the opening, and nothing that sticks
	// out far nearer than that.
	//
	// Source: IRC R1001.11 exception 4; NFPA 211, 11.2.5.4.
	nothingWithin = 6 * units.Inch
	limitedWithin = 12 * units.Inch

	// How far trim from 6 in to 12 in away may stand out: an eighth of the distance.
	//
	// Source: IRC R1001.11 exception 4.
	standOutPart = 8

	// How far anything within 12 in may stand out. Beside the opening, what stands out
	// more keeps 6 in and its own projection away.
	//
	// Source: NFPA 211, 11.2.5.4; IRC R1001.11 exception 4 for the sides, from memory.
	standOutMost = 3 * units.Inch / 2

	// How far decorations stay from a fire, a candle, a radiator or a vent.
	//
	// Source: NFPA and ESFI, holiday safety tips.
	fromFlame = 3 * units.Foot
)

const (
	sourceIRC  = "IRC R1001.11 exception 4, 2018"
	sourceNFPA = "ANSI/NFPA 211, 11.2.5.4, 2016"
	sourceSide = "IRC R1001.11 exception 4, sides, from memory, edition to be checked"
	sourceTips = tips + ", undated"
)

// A Clearance is how near something comes to fire or floor, or how far it stands out, and
// the limit.
type Clearance struct {
	Place    string       `json:"place"`    // "left drop", "along the shelf", "swag 1", "ribbon", "stocking 1", ...
	Measure  string       `json:"measure"`  // "distance from the opening", "standing out from the wall", ...
	Measured units.Length `json:"measured"` // how much it is
	Allowed  units.Length `json:"allowed"`  // the least that it may be, or the most
	AtLeast  bool         `json:"atLeast"`  // Allowed is the least
	Source   string       `json:"source"`   // who says so, in which edition
}

// String returns a text such as "swag 2: distance from the opening 4 in, at least 6 in (IRC
// R1001.11 exception 4, 2018)", rounded so that a shortfall shows.
func (c Clearance) String() string {
	text, limit := "", "at most "+showDown(c.Allowed, units.InFeetInches)
	switch {
	case c == Clearance{}:
		return unchecked
	case c.AtLeast:
		limit = "at least " + showUp(c.Allowed, units.InFeetInches)
	case c.Allowed == 0:
		limit = "nothing"
	}
	if c.Place != "" {
		measured := showUp(c.Measured, units.InFeetInches)
		if c.AtLeast {
			measured = showDown(c.Measured, units.InFeetInches)
		}
		text = c.Place + ": " + c.Measure + " " + measured + ", "
	}
	return text + limit + " (" + c.Source + ")"
}

// StandOut returns how far a combustible may stand out from the wall at a distance from the
// opening, 0 to 100 ft, by each standard that sets a limit there. Above the opening, and at
// its corners:
//
//	IRC       nothing nearer than 6 in; to 12 in, an eighth of the distance
//	NFPA 211  nothing nearer than 6 in; to 12 in, 1½ in (beside too)
//
// Beside it the IRC has, from memory:
//
//	nothing nearer than 6 in; then 1½ in, or the distance less 6 in if that is more
//
// Written for masonry fireplace trim; used here with no fire.
//
// Source: see the package.
func StandOut(distance units.Length, beside bool) ([]Clearance, error) {
	// One summary has, above the opening, 6 in and 1 in more for each 1/8 in beyond 1½ in: both quotations
	// disagree, and it is not used.
	if err := checkLength("StandOut", "distance", distance, 0, 100*units.Foot, "0 ft to 100 ft"); err != nil {
		return nil, err
	}
	return standOut(distance, beside), nil
}

func standOut(distance units.Length, beside bool) (limits []Clearance) {
	add := func(most units.Length, source string) {
		limits = append(limits, Clearance{Measure: measureOut, Allowed: most, Source: source})
	}
	switch near := distance < nothingWithin; {
	case beside && near:
		add(0, sourceSide)
	case beside:
		add(max(standOutMost, distance-nothingWithin), sourceSide)
	case near:
		add(0, sourceIRC)
	case distance <= limitedWithin:
		add(distance/standOutPart, sourceIRC)
	}
	switch {
	case distance < nothingWithin:
		add(0, sourceNFPA)
	case distance <= limitedWithin:
		add(standOutMost, sourceNFPA)
	}
	return limits
}

// Clearances says how far hanging things stay from fire and floor.
type Clearances struct {
	Places     []Clearance     `json:"places"`     // each part: distance from the opening, height above the hearth
	Violations []Clearance     `json:"violations"` // the nearest to the opening first, then what stands out too far, then what lies on the hearth
	Fire       Clearance       `json:"fire"`       // the nearest part, if within 3 ft of an open fire
	Cautions   []units.Caution `json:"cautions"`   // with what was not checked
}

// String says whether anything hangs within 3 ft of a fire, and the worst other figure.
// Without places it is "nothing was checked".
func (c Clearances) String() string {
	if len(c.Places) == 0 {
		return unchecked
	}
	text := "no opening was given: nothing was checked against a fire"
	if c.Fire != (Clearance{}) {
		text = "no fire while this hangs: " + c.Fire.String()
	} else if c.Places[0].Measure == measureNear {
		text = "3 ft or more from the opening; still, take it down before a fire is lit"
	}
	switch n := len(c.Violations) - 1; {
	case n < 0:
		text += "\nno other figure falls short"
	case n == 0:
		text += "\n" + c.Violations[0].String()
	default:
		text += "\nworst: " + c.Violations[0].String() + "; " + strconv.Itoa(n) + " more"
	}
	return text
}

// Clearances measures each part of the garland, and a falling ribbon, against the opening
// and the hearth. Distances are in the plane of the wall, to the outside of the garland,
// rounded to the nanometer, and 0 in front of the opening or below it.
//
//	===================================
//	|::::::::::::::::::::::::::::::::::
//	|:::##########################:::::
//	|:::####.----------------.####:::::
//	|:::####|....opening.....|####:::::
//	*:::####|................|####:::::
//
//	# to 6 in: nothing
//	: to 12 in: limited, see StandOut
//	* a drop beside it
//
// A garland stands out by the shelf depth and half its thickness, since it hangs at the
// front edge. All limits are cautions: nothing is changed to meet them.
//
// Source: see the package.
func (m Mantel) Clearances(hanging Hanging, style units.Style) (Clearances, error) {
	h := hanging
	if err := m.checkHanging("Mantel.Clearances", "", "/hanging", h); err != nil {
		return Clearances{}, err
	}
	var c Clearances
	around := h.Thickness / 2
	if h.Left > 0 {
		c.add(m, "left drop", m.fromZone(0, h.Left), h.Left, around)
	}
	if h.Swags == 0 {
		// The part of the shelf nearest to the middle of the opening.
		middle := m.Length/2 + m.Opening.Offset
		c.add(m, "along the shelf", m.fromZone(min(max(middle, 0), m.Length), 0), 0, around)
	}
	for i := range h.Swags {
		c.add(m, "swag "+strconv.Itoa(i+1), m.swagDistance(h, i), h.Sag, around)
	}
	if h.Right > 0 {
		c.add(m, "right drop", m.fromZone(m.Length, h.Right), h.Right, around)
	}
	if h.Fall > 0 {
		along := m.Length / 2
		switch h.Look {
		case AsymmetricalLeft:
			along = 0
		case AsymmetricalRight:
			along = m.Length
		}
		c.add(m, "ribbon", m.fromZone(along, h.Fall), h.Fall, around)
	}
	c.finish(m, h.Thickness, cautionNoWidth, style)
	return c, nil
}

// add measures one part: its distance from the opening before its thickness is taken
// off, and how far its lowest point is below the shelf.
func (c *Clearances) add(m Mantel, place string, from distance, lowest, around units.Length) {
	from.nm = float64(max(0, nearest(from.nm)-around))
	c.addOut(m, place, from, lowest+around, around)
}

// addOut measures one part by its outside: how near and how low it comes, and how far
// it stands out from the front edge of the shelf.
func (c *Clearances) addOut(m Mantel, place string, from distance, lowest, out units.Length) {
	if m.Opening != (Rectangle{}) {
		near := nearest(from.nm)
		c.Places = append(c.Places, Clearance{place, measureNear, near, nothingWithin, true, sourceIRC})
		c.judge(m, place, near, from.beside, m.Depth+out)
	}
	if m.Height != 0 {
		above := Clearance{place, measureHearth, m.Height - lowest, 0, true, commonPractice}
		c.Places = append(c.Places, above)
		if above.Measured < 0 {
			c.Violations = append(c.Violations, above)
		}
	}
}

const (
	measureNear   = "distance from the opening"
	measureOut    = "standing out from the wall"
	measureFire   = "distance from an open fire"
	measureHearth = "height above the hearth"
)

// judge adds what a part at a distance falls short of that stands out so far.
func (c *Clearances) judge(m Mantel, place string, d units.Length, beside bool, out units.Length) {
	for _, limit := range standOut(d, beside) {
		switch {
		case d < nothingWithin:
			c.Violations = append(c.Violations, Clearance{place, measureNear, d, nothingWithin, true, limit.Source})
		case m.Depth != 0 && out > limit.Allowed:
			c.Violations = append(c.Violations, Clearance{place, measureOut, out, limit.Allowed, false, limit.Source})
		}
	}
	if d < fromFlame && (c.Fire == Clearance{} || d < c.Fire.Measured) {
		c.Fire = Clearance{place, measureFire, d, fromFlame, true, sourceTips}
	}
}

// and returns c with other, the worst of both first.
func (c Clearances) and(other Clearances) Clearances {
	both := Clearances{slices.Concat(c.Places, other.Places), slices.Concat(c.Violations, other.Violations), c.Fire, slices.Clone(c.Cautions)}
	if c.Fire == (Clearance{}) || other.Fire != (Clearance{}) && other.Fire.Measured < c.Fire.Measured {
		both.Fire = other.Fire
	}
	for _, o := range other.Cautions {
		if !slices.Contains(both.Cautions, o) {
			both.Cautions = append(both.Cautions, o)
		}
	}
	both.order()
	return both
}

// finish puts the worst first, and adds the cautions: thin is the one of what has no thickness.
func (c *Clearances) finish(m Mantel, thickness units.Length, thin units.Caution, style units.Style) {
	c.order()
	c.Cautions = append(c.Cautions, cautionTakeDown, cautionNotTrim, cautionLocal, candles(style), cautionDry, cautionBerries, cautionPeople, cautionHangers)
	if m.Opening == (Rectangle{}) {
		c.Cautions = append(c.Cautions, cautionNoOpening)
	} else if m.Depth == 0 {
		c.Cautions = append(c.Cautions, cautionNoDepth)
	}
	if m.Height == 0 {
		c.Cautions = append(c.Cautions, cautionNoHeight)
	}
	if thickness == 0 {
		c.Cautions = append(c.Cautions, thin)
	}
	if m.Above != (Rectangle{}) {
		c.Cautions = append(c.Cautions, cautionAbove)
		if m.Above.Gap < thickness/2 {
			c.Cautions = append(c.Cautions, cautionCover)
		}
	}
}

// order puts the worst first.
func (c *Clearances) order() {
	rank := map[string]int{measureNear: 0, measureOut: 1, measureHearth: 2}
	slices.SortStableFunc(c.Violations, func(a, b Clearance) int {
		if a.Measure != b.Measure {
			return rank[a.Measure] - rank[b.Measure]
		}
		if a.AtLeast {
			return cmp.Compare(a.Measured, b.Measured)
		}
		return cmp.Compare(b.Measured-b.Allowed, a.Measured-a.Allowed)
	})
}

// A distance from the zone that is guarded: the opening, and what is under it down to
// the hearth. It is beside if it is level with the opening.
type distance struct {
	nm     float64
	beside bool
}

// side returns how far the left side of the zone is from the left end of the shelf, in
// nanometers; negative if it is beyond.
func (m Mantel) side() float64 {
	return float64(m.Length-m.Opening.Width)/2 + float64(m.Opening.Offset)
}

// fromZone returns how far a place is from the zone.
func (m Mantel) fromZone(along, below units.Length) distance {
	return m.distance(float64(along), float64(below))
}

func (m Mantel) distance(along, below float64) distance {
	left := m.side()
	x := max(0, left-along, along-left-float64(m.Opening.Width))
	y := max(0, float64(m.Opening.Gap)-below)
	return distance{math.Sqrt(float64(x*x) + float64(y*y)), y == 0 && x > 0}
}

// mirrored returns m as a mirror shows it.
func (m Mantel) mirrored() Mantel {
	m.Opening.Offset = -m.Opening.Offset
	return m
}

// swagDistance returns how far the i-th swag is from the zone.
//
// If its middle is over the zone, that is its nearest point. If not, the nearest
// is on the half that rises towards the zone. The distance as a function of the
// place along that half has one minimum, for what is above a catenary is convex,
// and so is the zone; so the interval is cut down by the golden ratio until
// floating point has no more digits.
func (m Mantel) swagDistance(h Hanging, i int) distance {
	span := float64(m.Length) / float64(h.Swags)
	if span*(float64(i)+0.5) > float64(m.Length)/2+float64(m.Opening.Offset) {
		m, i = m.mirrored(), h.Swags-1-i // the right side is the mirror image of the left
	}
	run := m.hang(h)
	c := run.curve(m.Length)
	start := float64(span * float64(i))
	at := func(x float64) distance { return m.distance(start+x, c.Below(x)) }
	low, high := span/2, span
	if start+low >= m.side() {
		return at(low)
	}
	const ratio = 0.6180339887498949
	for range 80 {
		step := float64(ratio * (high - low))
		if at(high-step).nm < at(low+step).nm {
			high = low + step
		} else {
			low = high - step
		}
	}
	return at(low)
}
