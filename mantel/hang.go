package mantel

import (
	"strconv"

	"example.com/fircone/units"
)

const (
	maxSwags     = 100
	maxDrop      = 50 * units.Foot
	maxThickness = 3 * units.Foot

	wantDrop = "0 ft to 50 ft"
)

// A Hanging is how a garland hangs on a mantel: straight along the shelf, or in equal swags,
// with what is left falling at the ends.
type Hanging struct {
	Swags int          `json:"swags"` // 0 to 100; 0 is straight along the shelf
	Sag   units.Length `json:"sag"`   // of each swag below its hooks
	Left  units.Length `json:"left"`  // how far the left end falls below the top of the shelf
	Right units.Length `json:"right"` // how far the right end falls
	Look  Look         `json:"look"`  // which rules hold; the ribbon is in the middle or at the heavy end
	Fall  units.Length `json:"fall"`  // of the ribbon; 0 for a bow or none

	// Thickness is the garland across its branches, 0 to 3 ft; where picks, bells or bows reach
	// farther, twice their reach from the middle line. Lengths and sags are of that line.
	Thickness units.Length `json:"thickness"`
}

// String returns a text such as "3 swags 9 in deep, falling 1 ft at the left and 1 ft at
// the right".
func (h Hanging) String() string {
	text := "straight along the shelf"
	if h.Swags != 0 {
		text = plural(h.Swags, "swag") + " " + show(h.Sag, units.InFeetInches) + " deep"
	}
	text += ", falling " + show(h.Left, units.InFeetInches) + " at the left and " + show(h.Right, units.InFeetInches) + " at the right"
	if h.Fall != 0 {
		text += ", with ribbon falling " + show(h.Fall, units.InFeetInches)
		if h.Look == Traditional {
			text += " in the middle"
		} else {
			text += " at the " + h.Look.side()
		}
	}
	return text
}

// A Point is a place on the front of a mantel, as a viewer sees it.
type Point struct {
	Along units.Length `json:"along"` // from the left end of the shelf; negative to the left of it
	Below units.Length `json:"below"` // below the top of the shelf; negative above it
}

// Hang returns the run of a garland hung this way. Hooks are level with the shelf top, at
// the ends and between swags, evenly spaced to the nanometer. A garland without swags lies
// on the shelf.
//
// It returns [units.ErrFit] for a drop or sag past the hearth, a drop at a wall, swags under
// an inch wide, or a sag without swags.
func (m Mantel) Hang(hanging Hanging) (Run, error) {
	if err := m.checkHanging("Mantel.Hang", "", "/hanging", hanging); err != nil {
		return Run{}, err
	}
	return m.hang(hanging), nil
}

// hang returns the run of a hanging that is known to be good.
func (m Mantel) hang(h Hanging) Run {
	return Run{Hooks: level(m.Length, max(1, h.Swags)), Sag: h.Sag, Left: h.Left, Right: h.Right, Lying: h.Swags == 0}
}

// level returns hooks at one height that divide a length into n equal parts.
func level(length units.Length, n int) []Point {
	hooks := make([]Point, n+1)
	for i := range hooks {
		hooks[i].Along = part(length, i, n)
	}
	return hooks
}

// part returns how far i of n equal parts of a length reach, the same from both ends to
// the nanometer.
func part(length units.Length, i, n int) units.Length {
	if i > n/2 {
		return length - part(length, n-i, n)
	}
	return length * units.Length(i) / units.Length(n)
}

// FindDrops returns hanging with Left and Right set to what the shelf or the swags leave of
// a garland. A traditional mantel has half at each end, or all at the end without a wall. On
// an asymmetrical one the light end keeps its drop and the heavy end takes the rest.
//
// It returns [units.ErrFit] if garland does not reach along the shelf, or an end would pass
// hearth, wall or 50 ft.
//
// Source: common practice.
func (m Mantel) FindDrops(garland units.Length, hanging Hanging) (Hanging, error) {
	const fn = "Mantel.FindDrops"
	h := hanging
	light := units.Length(0)
	switch h.Look {
	case AsymmetricalLeft:
		light = h.Right
	case AsymmetricalRight:
		light = h.Left
	}
	h.Left, h.Right = 0, light // until the rest is known to be good
	if err := m.checkHanging(fn, "", "/hanging", h); err != nil {
		return Hanging{}, err
	}
	run := m.hang(h)
	least := run.garland()
	if garland < least {
		return Hanging{}, fitError(fn, "garland", exact(garland), "at least "+exact(least)+" to reach along the shelf")
	}
	left := garland - least
	deepest := units.Length(maxDrop)
	if m.Height != 0 {
		deepest = min(deepest, m.Height)
	}
	room := units.Length(0) // for what may fall
	if !m.LeftWall && h.Look != AsymmetricalRight {
		room += deepest
	}
	if !m.RightWall && h.Look != AsymmetricalLeft {
		room += deepest
	}
	if left > room {
		return Hanging{}, fitError(fn, "garland", exact(garland), "at most "+exact(least+room)+", so that no end passes the hearth, a wall or "+exact(maxDrop))
	}
	switch {
	case h.Look == AsymmetricalLeft:
		h.Left, h.Right = left, light
	case h.Look == AsymmetricalRight:
		h.Left, h.Right = light, left
	case m.LeftWall:
		h.Left, h.Right = 0, left
	case m.RightWall:
		h.Left, h.Right = left, 0
	default:
		h.Left, h.Right = left/2, left-left/2
	}
	return h, nil
}

// checkHanging checks m and h, which are at the pointers mantel and hanging, and
// whether they go together.
func (m Mantel) checkHanging(fn, mantel, hanging string, h Hanging) error {
	if err := m.check(fn, mantel); err != nil {
		return err
	}
	if err := m.checkHang(fn, h); err != nil {
		return under(hanging, err) // only now, for putting texts together allocates
	}
	return nil
}

// checkHang checks h, with pointers that begin in it.
func (m Mantel) checkHang(fn string, h Hanging) error {
	if err := checkCount(fn, "/swags", h.Swags, 0, maxSwags); err != nil {
		return err
	}
	if most := m.Length / minSpan; units.Length(h.Swags) > most {
		return fitError(fn, "/swags", strconv.Itoa(h.Swags), "at most "+strconv.Itoa(int(most))+", an inch or more each on a shelf of "+exact(m.Length))
	}
	if err := checkLength(fn, "/sag", h.Sag, 0, maxSag, wantSag); err != nil {
		return err
	}
	if h.Swags == 0 && h.Sag != 0 {
		return fitError(fn, "/sag", exact(h.Sag), "0 ft where there are no swags")
	}
	if err := checkLength(fn, "/thickness", h.Thickness, 0, maxThickness, "0 ft to 3 ft"); err != nil {
		return err
	}
	for _, drop := range [...]struct {
		field  string
		length units.Length
		wall   bool
	}{{"/left", h.Left, m.LeftWall}, {"/right", h.Right, m.RightWall}, {"/fall", h.Fall, false}, {"/sag", h.Sag, false}} {
		if err := checkLength(fn, drop.field, drop.length, 0, maxDrop, wantDrop); err != nil {
			return err
		}
		if drop.wall && drop.length > 0 {
			return fitError(fn, drop.field, exact(drop.length), "0 ft, since the shelf ends at a wall there")
		}
		if m.Height != 0 && drop.length > m.Height {
			return fitError(fn, drop.field, exact(drop.length), "at most "+exact(m.Height)+", from the shelf to the hearth")
		}
	}
	return h.Look.check(fn, "/look")
}
