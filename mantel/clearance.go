package mantel

import (
	"math"
	"strconv"
	"strings"

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

	// How far anything within 12 in may stand out.
	//
	// Source: NFPA 211, 11.2.5.4.
	standOutMost = 3 * units.Inch / 2

	// How far decorations stay from a fire, a candle, a radiator or a vent.
	//
	// Source: NFPA and ESFI, holiday safety tips.
	fromFlame = 3 * units.Foot
)

const (
	sourceIRC  = "IRC R1001.11 exception 4"
	editionIRC = "2018"
	sourceNFPA = "ANSI/NFPA 211, 11.2.5.4"
	edition211 = "2016"
	sourceTips = "NFPA and ESFI holiday safety tips"
	noEdition  = "undated"
)

// Cautions that come with every check of clearances.
const (
	cautionNotTrim   = "a hanging garland is not trim in the sense of the codes: their clearances are used as a caution, and meeting them does not make it safe"
	cautionLocal     = "local code and the maker of the fireplace decide"
	cautionTakeDown  = "take the garland down before a fire is lit, and keep candles 3 ft away"
	cautionPeople    = "keep ends, ribbon and bells out of the way of feet, children and pets"
	cautionHangers   = "picks, ornaments, bells and bows were not measured: what hangs below the garland or stands out from it comes nearer than these figures, unless the thickness counts it in"
	cautionNoHeight  = "the height of the shelf was not given, so nothing was checked against the hearth"
	cautionNoDepth   = "the depth of the shelf was not given, so how far the garland stands out was not checked"
	cautionNoWidth   = "the thickness of the garland was not given, so distances are from its middle line: it comes nearer than they say"
	cautionNoOpening = "no opening was given, so nothing was checked against a fire"
)

// A Clearance is how near one part of a garland comes to the fire and the floor.
// Clearances are equal if == says so.
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

// A Violation is a clearance that falls short of a published figure. Violations
// are equal if == says so.
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

// Clearances is how a hanging garland stays clear of the fire and the floor.
type Clearances struct {
	Places     []Clearance `json:"places"`     // every part of the garland, from the left
	Violations []Violation `json:"violations"` // every figure it falls short of, place by place
	Cautions   []string    `json:"cautions"`   // what to mind, and what could not be checked
}

// String returns the violations line by line, or says that there are none; then
// the cautions. Clearances of no place, which come with an error, are "nothing was
// checked".
func (c Clearances) String() string {
	var b strings.Builder
	switch {
	case len(c.Violations) > 0:
	case len(c.Places) == 0:
		b.WriteString(unchecked)
	default:
		b.WriteString("no clearance falls short")
	}
	for i, v := range c.Violations {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(v.String())
	}
	for _, text := range c.Cautions {
		b.WriteString("\ncaution: " + text)
	}
	return b.String()
}

// Clearances measures every drop and swag, and the ribbon if it falls, against the
// opening and the hearth, and returns every place where it falls short of a
// published figure. Of something at a distance d from the opening, measured in the
// plane of the wall to the outside of the garland, these are asked:
//
//	d at least 6 in                               IRC, NFPA 211
//	d from 6 to 12 in: stands out at most d/8     IRC
//	d up to 12 in: stands out at most 1½ in       NFPA 211
//	d at least 3 ft from an open fire             NFPA, ESFI
//	not lying on the hearth                       common practice
//
// The ribbon falls where h.Look has it: in the middle, which is over the opening and
// the worst place, unless the look is asymmetrical. Picks, ornaments, bells and bows are
// counted only as far as the thickness counts them.
//
// How far the garland stands out is the depth of the shelf, for it hangs at the
// front edge, and half its thickness. Distances are rounded to the nearest
// nanometer.
//
// All of it is a caution, and nothing is changed to meet it: a garland is not trim
// in the sense of a code, local code and the maker of the fireplace decide, and a
// garland comes down before a fire is lit. Cautions says so, and says what was not
// checked because it was not measured.
//
// The errors are those of [Mantel.Garland].
//
// Source: IRC R1001.11 exception 4, 2018 edition, quoted; ANSI/NFPA 211 section
// 11.2.5.4, 2016 edition, quoted; NFPA and ESFI holiday safety tips.
func (m Mantel) Clearances(h Hanging) (Clearances, error) {
	if err := m.checkHanging("Mantel.Clearances", h); err != nil {
		return Clearances{}, err
	}
	var c Clearances
	add := func(place string, distance float64, lowest units.Length) {
		near := Clearance{Place: place, HasOpening: m.Opening != (Opening{}), HasHearth: m.Height != 0}
		if near.HasOpening {
			near.FromOpening = max(0, nearest(distance)-h.Thickness/2)
			c.Violations = append(c.Violations, m.fireViolations(h, near)...)
		}
		if near.HasHearth {
			near.AboveHearth = m.Height - lowest - h.Thickness/2
			if near.AboveHearth < 0 {
				c.Violations = append(c.Violations, Violation{
					Place: place, Measure: "height above the hearth", Measured: near.AboveHearth,
					AtLeast: true, Source: commonPractice,
				})
			}
		}
		c.Places = append(c.Places, near)
	}
	if h.Left > 0 {
		add("left drop", m.dropDistance(h.Left), h.Left)
	}
	if h.Swags == 0 {
		add("along the shelf", float64(m.Opening.Below), 0)
	}
	for i := range h.Swags {
		add("swag "+strconv.Itoa(i+1), m.swagDistance(h, i), h.Sag)
	}
	if h.Right > 0 {
		add("right drop", m.dropDistance(h.Right), h.Right)
	}
	if h.Fall > 0 {
		distance := m.dropDistance(h.Fall)
		if h.Look == Traditional {
			distance = m.fromZone(float64(m.Length)/2, float64(h.Fall))
		}
		add("ribbon", distance, h.Fall)
	}

	c.Cautions = append(c.Cautions, cautionNotTrim, cautionLocal, cautionTakeDown, cautionPeople, cautionHangers)
	if m.Opening == (Opening{}) {
		c.Cautions = append(c.Cautions, cautionNoOpening)
	} else if m.Depth == 0 {
		c.Cautions = append(c.Cautions, cautionNoDepth)
	}
	if m.Height == 0 {
		c.Cautions = append(c.Cautions, cautionNoHeight)
	}
	if h.Thickness == 0 {
		c.Cautions = append(c.Cautions, cautionNoWidth)
	}
	return c, nil
}

// fireViolations returns the figures that a place falls short of whose distance
// from the opening is known.
func (m Mantel) fireViolations(h Hanging, c Clearance) []Violation {
	const distance, standOut = "distance from the opening", "standing out from the wall"
	d := c.FromOpening
	out := m.Depth + h.Thickness/2
	var found []Violation
	if d < nothingWithin {
		found = append(found,
			Violation{c.Place, distance, d, nothingWithin, true, sourceIRC, editionIRC},
			Violation{c.Place, distance, d, nothingWithin, true, sourceNFPA, edition211})
	}
	if m.Depth != 0 && d <= limitedWithin {
		if d >= nothingWithin && out > d/standOutPart {
			found = append(found, Violation{c.Place, standOut, out, d / standOutPart, false, sourceIRC, editionIRC})
		}
		if out > standOutMost {
			found = append(found, Violation{c.Place, standOut, out, standOutMost, false, sourceNFPA, edition211})
		}
	}
	if d < fromFlame {
		found = append(found, Violation{c.Place, "distance from an open fire", d, fromFlame, true, sourceTips, noEdition})
	}
	return found
}

// The zone that is guarded is the opening, and what is under it down to the hearth.
// It lies side nanometers in from both ends of the shelf.
func (m Mantel) side() float64 { return float64(m.Length-m.Opening.Width) / 2 }

// fromZone returns how far a point is from the zone, in nanometers, for a point
// that is not to the right of its middle.
func (m Mantel) fromZone(along, below float64) float64 {
	x := max(0, m.side()-along)
	y := max(0, float64(m.Opening.Below)-below)
	return math.Sqrt(float64(x*x) + float64(y*y))
}

// dropDistance returns how far a drop at an end of the shelf is from the zone: its
// lowest point is the nearest.
func (m Mantel) dropDistance(drop units.Length) float64 { return m.fromZone(0, float64(drop)) }

// swagDistance returns how far the i-th swag is from the zone.
//
// If its middle is over the zone, that is its nearest point. If not, the nearest
// is on the half that rises towards the zone. The distance as a function of the
// place along that half has one minimum, for what is above a catenary is convex,
// and so is the zone; so the interval is cut down by the golden ratio until
// floating point has no more digits.
func (m Mantel) swagDistance(h Hanging, i int) float64 {
	i = min(i, h.Swags-1-i) // the right half is the mirror image of the left
	c := m.catenary(h)
	start := float64(c.span * float64(i))
	distance := func(at float64) float64 { return m.fromZone(start+at, c.below(at)) }
	low, high := c.span/2, c.span
	if start+low >= m.side() {
		return distance(low)
	}
	const ratio = 0.6180339887498949
	for range 80 {
		step := float64(ratio * (high - low))
		if distance(high-step) < distance(low+step) {
			high = low + step
		} else {
			low = high - step
		}
	}
	return distance(low)
}
