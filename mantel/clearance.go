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
	sourceIRC   = "IRC R1001.11 exception 4"
	editionIRC  = "2018"
	sourceNFPA  = "ANSI/NFPA 211, 11.2.5.4"
	edition211  = "2016"
	sourceSide  = "IRC R1001.11 exception 4, sides"
	editionSide = "from memory, edition to be checked"
	sourceTips  = tips
	noEdition   = "undated"
)

// A Clearance is how near one part of a garland comes to the fire and the floor.
type Clearance struct {
	// Place is the part of the garland: left drop, right drop, along the shelf,
	// swag 1 and so on from the left, or ribbon.
	Place string `json:"place"`

	// FromOpening is the least distance of its outside from the opening, in the
	// plane of the wall: 0 for what hangs in front of the opening, or of the wall
	// between the opening and the hearth. It means nothing without HasOpening.
	FromOpening units.Length `json:"fromOpening"`
	HasOpening  bool         `json:"hasOpening"` // the mantel has an opening

	// AboveHearth is the height of its lowest point, less half the thickness,
	// above the hearth; negative if it would lie on it. It means nothing without
	// HasHearth.
	AboveHearth units.Length `json:"aboveHearth"`
	HasHearth   bool         `json:"hasHearth"` // the height of the shelf is known
}

// String returns a text such as "swag 2: 7 in from the opening, 3 ft above the
// hearth". What is not exact in it is rounded down.
func (c Clearance) String() string {
	text := c.Place + ": "
	switch {
	case c.HasOpening && c.HasHearth:
		return text + showDown(c.FromOpening) + " from the opening, " + showDown(c.AboveHearth) + " above the hearth"
	case c.HasOpening:
		return text + showDown(c.FromOpening) + " from the opening"
	case c.HasHearth:
		return text + showDown(c.AboveHearth) + " above the hearth"
	}
	return text + "not measured"
}

// A Violation is a clearance that falls short of a published figure.
type Violation struct {
	Place    string       `json:"place"`    // the part of the garland, as in Clearance
	Measure  string       `json:"measure"`  // what was measured: "distance from the opening"
	Measured units.Length `json:"measured"` // how much it is
	Allowed  units.Length `json:"allowed"`  // how much it may be
	AtLeast  bool         `json:"atLeast"`  // Allowed is the least; otherwise it is the most
	Source   string       `json:"source"`   // who says so
	Edition  string       `json:"edition"`  // of which year, or "undated"
}

// String returns a text such as "swag 2: distance from the opening 4 in, at least
// 6 in (IRC R1001.11 exception 4, 2018)". What is not exact in it is rounded towards
// the worse: a violation never reads as if it met the figure.
func (v Violation) String() string {
	figures := showUp(v.Measured) + ", at most " + showDown(v.Allowed)
	if v.AtLeast {
		figures = showDown(v.Measured) + ", at least " + showUp(v.Allowed)
	}
	text := v.Place + ": " + v.Measure + " " + figures + " (" + v.Source
	if v.Edition != "" {
		text += ", " + v.Edition
	}
	return text + ")"
}

// A Limit is how far something may stand out from the wall by one standard.
type Limit struct {
	Limited bool         `json:"limited"` // the standard sets a limit at this distance
	Most    units.Length `json:"most"`    // how far it may stand out, 0 where nothing may be; means nothing without Limited
	Source  string       `json:"source"`  // the standard
	Edition string       `json:"edition"` // of which year
}

// String returns a text such as "7/8 in (IRC R1001.11 exception 4, 2018)". What is not
// exact in it is rounded down.
func (l Limit) String() string {
	text := "no limit"
	if l.Limited {
		text = "at most " + showDown(l.Most)
		if l.Most == 0 {
			text = "nothing"
		}
	}
	return text + " (" + l.Source + ", " + l.Edition + ")"
}

// StandOut returns how far something that burns may stand out from the wall at a
// distance from the opening, by each standard. Above the opening, and at its corners:
//
//	IRC       nothing within 6 in; to 12 in an eighth of the distance; then no limit
//	NFPA 211  nothing within 6 in; to 12 in at most 1½ in; then no limit
//
// Beside it the first is replaced by
//
//	IRC       nothing within 6 in; then 1½ in, or the distance less 6 in if that is more
//
// They are for the trim of masonry fireplaces, with no fire; for an open one, 3 ft
// holds for everything. Results are exact, rounded down to the nanometer. It returns
// an error wrapping [units.ErrRange] if distance is not from 0 to 100 ft.
//
// Source: IRC R1001.11 exception 4, 2018 edition, and ANSI/NFPA 211 section 11.2.5.4,
// 2016 edition, both quoted; the sides, from memory. One summary states the rule above
// the opening as 6 in and 1 in more for each 1/8 in beyond 1½ in: it disagrees with
// both quotations and is not used.
func StandOut(distance units.Length, beside bool) ([]Limit, error) {
	if err := checkLength("StandOut", "distance", distance, 0, 100*units.Foot, "0 ft to 100 ft"); err != nil {
		return nil, err
	}
	first, second := standOut(distance, beside)
	return []Limit{first, second}, nil
}

func standOut(distance units.Length, beside bool) (first, second Limit) {
	first, second = Limit{Source: sourceIRC, Edition: editionIRC}, Limit{Source: sourceNFPA, Edition: edition211}
	if beside {
		first = Limit{Source: sourceSide, Edition: editionSide}
	}
	switch {
	case distance < nothingWithin:
		first.Limited, second.Limited = true, true
		return first, second
	case beside:
		first.Limited, first.Most = true, max(standOutMost, distance-nothingWithin)
	case distance <= limitedWithin:
		first.Limited, first.Most = true, distance/standOutPart
	}
	if distance <= limitedWithin {
		second.Limited, second.Most = true, standOutMost
	}
	return first, second
}

// Clearances is how what hangs stays clear of the fire and the floor: the trim figures
// on one side, an open fire on the other.
type Clearances struct {
	Places []Clearance `json:"places"` // every part, from the left

	// Violations are the trim figures that a part falls short of, and parts that lie
	// on the hearth. The worst is first: the nearest within 6 in of the opening, then
	// what stands out farthest beyond its limit, then what lies on the hearth.
	Violations []Violation `json:"violations"`

	// Fire is the part nearest to the opening, if that is within the 3 ft that
	// decorations keep from an open fire. The zero value if none is.
	Fire Violation `json:"fire"`

	Cautions []units.Caution `json:"cautions"` // what to mind, and what could not be checked
}

// String returns two lines: whether a fire may burn while this hangs, and the worst of
// the trim figures with its source and how many more there are. The rest is in the
// fields. Clearances of no place, which come with an error, are "nothing was checked".
func (c Clearances) String() string {
	if len(c.Places) == 0 {
		return unchecked
	}
	text := "no opening was given: nothing was checked against a fire"
	if c.Fire != (Violation{}) {
		text = "no fire while this hangs: " + c.Fire.String()
	} else if c.Places[0].HasOpening {
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

// Clearances measures every drop and swag, and the ribbon if it falls, against the
// opening and the hearth. Of something at a distance d from the opening, measured in
// the plane of the wall to the outside of the garland, these are asked:
//
//	trim       d at least 6 in, and no more standing out than StandOut has it
//	open fire  d at least 3 ft
//	hearth     not lying on it
//
//	          shelf
//	  ================================
//	  |          |        |
//	  |   ...............................  12 in: stands out 1/8 in an inch, 1 1/2 in at most
//	  |   :  - - - - - - - - - - -  :      6 in: nothing nearer
//	  |   : |   _______________   | :
//	  |   : |  |    opening    |  | :
//	  *   : |  |               |  | :      * a drop beside the opening: 6 in and what it stands out
//	 _______________________________________ hearth
//
// What stands out is the depth of the shelf, for the garland hangs at its front edge,
// and half the thickness. The ribbon falls where hanging.Look has it: in the middle,
// unless the look is asymmetrical. Picks, ornaments, bells and bows are counted only as
// far as the thickness counts them. Distances are rounded to the nearest nanometer.
//
// All of it is a caution, and nothing is changed to meet it: a garland is not trim in
// the sense of a code, local code and the maker of the fireplace decide, and a garland
// comes down before a fire is lit. Cautions says so, what was not checked because it
// was not measured, and what heat asks of a mirror or a screen above.
//
// The errors are those of [Mantel.Garland].
//
// Source: as for [StandOut]; 3 ft, NFPA and ESFI holiday safety tips.
func (m Mantel) Clearances(hanging Hanging) (Clearances, error) {
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
		along := m.Length
		switch {
		case h.Look == Traditional:
			along = m.Length / 2
		case h.Heavy == Left:
			along = 0
		}
		c.add(m, "ribbon", m.fromZone(along, h.Fall), h.Fall, around)
	}
	c.finish(m, h.Thickness)
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
	near := Clearance{Place: place, HasOpening: m.Opening != (Opening{}), HasHearth: m.Height != 0}
	if near.HasOpening {
		near.FromOpening = nearest(from.nm)
		c.judge(m, near, from.beside, m.Depth+out)
	}
	if near.HasHearth {
		near.AboveHearth = m.Height - lowest
		if near.AboveHearth < 0 {
			c.Violations = append(c.Violations, Violation{
				Place: place, Measure: measureHearth, Measured: near.AboveHearth, AtLeast: true, Source: commonPractice,
			})
		}
	}
	c.Places = append(c.Places, near)
}

const (
	measureNear   = "distance from the opening"
	measureOut    = "standing out from the wall"
	measureFire   = "distance from an open fire"
	measureHearth = "height above the hearth"
)

// judge adds what a part falls short of that stands out so far.
func (c *Clearances) judge(m Mantel, part Clearance, beside bool, out units.Length) {
	d := part.FromOpening
	first, second := standOut(d, beside)
	for _, limit := range [...]Limit{first, second} {
		switch {
		case d < nothingWithin:
			c.Violations = append(c.Violations, Violation{part.Place, measureNear, d, nothingWithin, true, limit.Source, limit.Edition})
		case m.Depth != 0 && limit.Limited && out > limit.Most:
			c.Violations = append(c.Violations, Violation{part.Place, measureOut, out, limit.Most, false, limit.Source, limit.Edition})
		}
	}
	if d < fromFlame && (c.Fire == Violation{} || d < c.Fire.Measured) {
		c.Fire = Violation{part.Place, measureFire, d, fromFlame, true, sourceTips, noEdition}
	}
}

// finish puts the worst first, and adds the cautions.
func (c *Clearances) finish(m Mantel, thickness units.Length) {
	rank := map[string]int{measureNear: 0, measureOut: 1, measureHearth: 2}
	slices.SortStableFunc(c.Violations, func(a, b Violation) int {
		if a.Measure != b.Measure {
			return rank[a.Measure] - rank[b.Measure]
		}
		if a.AtLeast {
			return cmp.Compare(a.Measured, b.Measured)
		}
		return cmp.Compare(b.Measured-b.Allowed, a.Measured-a.Allowed)
	})
	c.Cautions = append(c.Cautions, cautionTakeDown, cautionNotTrim, cautionLocal, cautionCandles, cautionDry, cautionBerries, cautionPeople, cautionHangers)
	if m.Opening == (Opening{}) {
		c.Cautions = append(c.Cautions, cautionNoOpening)
	} else if m.Depth == 0 {
		c.Cautions = append(c.Cautions, cautionNoDepth)
	}
	if m.Height == 0 {
		c.Cautions = append(c.Cautions, cautionNoHeight)
	}
	if thickness == 0 {
		c.Cautions = append(c.Cautions, cautionNoWidth)
	}
	if m.Above != (Above{}) {
		if m.Above.Screen {
			c.Cautions = append(c.Cautions, cautionScreen)
		} else {
			c.Cautions = append(c.Cautions, cautionMirror)
		}
		if m.Above.Up < thickness/2 {
			c.Cautions = append(c.Cautions, cautionCover)
		}
	}
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
	y := max(0, float64(m.Opening.Below)-below)
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
	c := m.curve(h)
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
