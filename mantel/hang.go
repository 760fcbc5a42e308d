package mantel

import (
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

const (
	maxSwags     = 100
	maxDrop      = 50 * units.Foot
	maxThickness = 3 * units.Foot

	wantDrop = "0 ft to 50 ft"
)

// A Hanging is how a garland hangs on a mantel: straight along the shelf, or in
// swags of one width and one sag between hooks along its front edge, with what
// is left falling at the ends. The zero value lies along the shelf from end to
// end and falls at neither. Hangings are equal if == says so.
type Hanging struct {
	// Swags is how many swags there are, 0 to 100, each an inch wide or more.
	// Zero lays the garland straight along the shelf.
	Swags int `json:"swags"`

	// Sag is how far each swag hangs below its hooks, 0 to 50 ft.
	// Zero where there are no swags.
	Sag units.Length `json:"sag"`

	// Left and Right are how far the ends fall below the top of the shelf,
	// 0 to 50 ft.
	Left  units.Length `json:"left"`
	Right units.Length `json:"right"`

	// Look and Heavy say where the ribbon is, as in Rules.Spots: in the middle of
	// a traditional mantel or at the heavy end of an asymmetrical one. Left out, that
	// is the middle, where it comes nearest to the fire.
	Look  Look `json:"look"`
	Heavy Side `json:"heavy"`

	// Fall is how far the ribbon falls below the top of the shelf, 0 to 50 ft.
	// Zero if it is tied in a bow, or there is none.
	Fall units.Length `json:"fall"`

	// Thickness is the garland across its branches, 0 to 3 ft. The lengths and
	// sags are of its middle line; clearances are of its outside, half of the
	// thickness all around. For what hangs below the garland or stands out from it
	// (picks, ornaments, bells, a bow), make it twice the farthest reach from the
	// middle line. Zero reckons with the middle line, as if the garland were a thread.
	Thickness units.Length `json:"thickness"`
}

// String returns a text such as "3 swags 9 in deep, falling 1 ft at the left and
// 1 ft at the right".
func (h Hanging) String() string {
	text := "straight along the shelf"
	if h.Swags != 0 {
		text = plural(h.Swags, "swag") + " " + show(h.Sag) + " deep"
	}
	text += ", falling " + show(h.Left) + " at the left and " + show(h.Right) + " at the right"
	if h.Fall != 0 {
		text += ", with ribbon falling " + show(h.Fall)
		if h.Look == Traditional {
			text += " in the middle"
		} else {
			text += " at the " + h.Heavy.String()
		}
	}
	return text
}

// A Point is a place on the front of a mantel, as a viewer sees it.
type Point struct {
	Along units.Length `json:"along"` // from the left end of the shelf
	Below units.Length `json:"below"` // below the top of the shelf
}

// String returns a text such as "1 ft along, 9 in below".
func (p Point) String() string { return show(p.Along) + " along, " + show(p.Below) + " below" }

// Garland returns the length of garland that hangs so:
//
//	garland = Left + the swags, or the length of the shelf + Right
//
// rounded to the nearest nanometer. It answers which garland wanted drops and
// swags take; [Mantel.FindDrops] and [Mantel.FindSag] answer the reverse.
//
// It returns an [units.Error] wrapping [units.ErrRange] if a field of m or h is out of its
// range, and one wrapping [units.ErrFit] if two do not go together: an opening wider
// than the shelf, a sag or a drop past the hearth, swags under an inch wide, a
// sag without swags.
//
// Source: lengths of swags, as for [Swag].
func (m Mantel) Garland(h Hanging) (units.Length, error) {
	if err := m.checkHanging("Mantel.Garland", h); err != nil {
		return 0, err
	}
	return h.Left + m.run(h) + h.Right, nil
}

// GarlandNeed returns the garland of [Mantel.Garland] as a need, with its basis,
// to put in place of the base garland that [Rules.Needs] sizes by rule. Like any
// supply it is never short: what is needed is rounded up to a whole inch. The room
// is left empty for the caller to fill. The errors are those of [Mantel.Garland].
//
// Source: as for [Swag].
func (m Mantel) GarlandNeed(h Hanging) (shopping.Need, error) {
	if err := m.checkHanging("Mantel.GarlandNeed", h); err != nil {
		return shopping.Need{}, err
	}
	run, source := "along the shelf", "measured"
	if h.Swags > 0 {
		run, source = "in "+plural(h.Swags, "swag")+" "+show(h.Sag)+" deep", "length of a catenary"
	}
	length := h.Left + m.run(h) + h.Right
	return shopping.Need{
		Item:     itemGarland,
		Quantity: shopping.Quantity{Length: (length + units.Inch - 1) / units.Inch * units.Inch},
		Basis:    show(m.run(h)) + " " + run + ", " + show(h.Left) + " falling at the left, " + show(h.Right) + " at the right",
		Source:   source,
	}, nil
}

// FindDrops returns h with Look set to look, and Left and Right to what is left of a
// garland after the shelf or the swags. It looks at the other fields of h, but for
// Look: half falls at each end of a traditional mantel; at an asymmetrical one the
// light end falls as far as h says already, and the rest at the heavy side. An odd
// nanometer falls at the right. [Mantel.Garland] of the result is garland to the
// nanometer.
//
// The errors are those of [Mantel.Garland], and one wrapping [units.ErrFit] if garland
// is too short to reach along the shelf.
//
// Source: the extra on both sides, or on one, is common practice.
func (m Mantel) FindDrops(garland units.Length, look Look, h Hanging) (Hanging, error) {
	const fn = "Mantel.FindDrops"
	if err := look.check(fn); err != nil {
		return Hanging{}, err
	}
	light := units.Length(0)
	if look == Asymmetrical {
		light = h.Right
		if h.Heavy == Right {
			light = h.Left
		}
	}
	h.Look = look
	h.Left, h.Right = 0, light // until the rest is known to be good
	if err := m.checkHanging(fn, h); err != nil {
		return Hanging{}, err
	}
	least := m.run(h) + light
	if garland < least {
		return Hanging{}, fitError(fn, "garland", exact(garland), "at least "+exact(least)+" to reach along the shelf")
	}
	left := garland - least
	switch {
	case look == Traditional:
		h.Left, h.Right = left/2, left-left/2
	case h.Heavy == Left:
		h.Left, h.Right = left, light
	default:
		h.Left, h.Right = light, left
	}
	if err := m.checkHanging(fn, h); err != nil {
		return Hanging{}, err
	}
	return h, nil
}

// FindSag returns h with Sag set so that a garland is used up by the drops and
// the swags that h says. Each swag takes an equal part of what the drops leave.
// The sag is rounded to the nearest nanometer, so that [Mantel.Garland] of the
// result is garland to a nanometer for each swag, and one more.
//
// The errors are those of [Mantel.Garland], one wrapping [units.ErrRange] if h has no
// swags, and one wrapping [units.ErrFit] if garland is too short to reach along the
// shelf or leaves over 150 ft for each swag.
//
// Source: as for [Swag].
func (m Mantel) FindSag(garland units.Length, h Hanging) (Hanging, error) {
	const fn = "Mantel.FindSag"
	if err := checkCount(fn, "Swags", h.Swags, 1, maxSwags); err != nil {
		return Hanging{}, err
	}
	h.Sag = 0 // until the rest is known to be good
	if err := m.checkHanging(fn, h); err != nil {
		return Hanging{}, err
	}
	least := m.Length + h.Left + h.Right
	if garland < least {
		return Hanging{}, fitError(fn, "garland", exact(garland), "at least "+exact(least)+" to reach along the shelf")
	}
	most := units.Length(h.Swags)*maxSwagLength + h.Left + h.Right
	if garland > most {
		return Hanging{}, fitError(fn, "garland", exact(garland), "at most "+exact(most)+", 150 ft for each swag")
	}
	n := float64(h.Swags)
	h.Sag = nearest(sagOf(float64(m.Length)/n, float64(garland-least)/n))
	if err := m.checkHanging(fn, h); err != nil {
		return Hanging{}, err
	}
	return h, nil
}

// Hooks returns where the hooks are, from the left end of the shelf: one at each
// end, and one between each two swags, at equal distances rounded to a nanometer,
// the same from both ends. They are level with the top of the shelf. The errors
// are those of [Mantel.Garland].
func (m Mantel) Hooks(h Hanging) ([]units.Length, error) {
	if err := m.checkHanging("Mantel.Hooks", h); err != nil {
		return nil, err
	}
	return m.hooks(h), nil
}

// Below returns how far below the top of the shelf the garland is, at a distance
// from the left end of the shelf: 0 along a shelf without swags. It is rounded to
// the nearest nanometer. The errors are those of [Mantel.Garland], and one
// wrapping [units.ErrRange] if along is not from 0 to the length of the shelf.
//
// Source: as for [Swag].
func (m Mantel) Below(h Hanging, along units.Length) (units.Length, error) {
	const fn = "Mantel.Below"
	if err := m.checkHanging(fn, h); err != nil {
		return 0, err
	}
	if along < 0 || along > m.Length {
		return 0, rangeError(fn, "along", exact(along), "0 ft to the length of the shelf, "+exact(m.Length))
	}
	if h.Swags == 0 {
		return 0, nil
	}
	n := units.Length(h.Swags)
	return nearest(m.catenary(h).below(float64(along*n%m.Length) / float64(n))), nil
}

// AppendPath appends to dst the middle line of the garland, as a front view shows
// it, from the bottom of the left drop to the bottom of the right one, and returns
// the longer slice. Each swag is given as that many straight pieces of equal
// width, 1 to 1000; pieces is not used where there are no swags. A drop of zero
// adds no point beyond the end of the shelf.
// The errors are those of [Mantel.Garland], and one wrapping [units.ErrRange] if pieces
// is out of its range. With an error it returns dst as it was.
//
// Source: as for [Swag].
func (m Mantel) AppendPath(dst []Point, h Hanging, pieces int) ([]Point, error) {
	const fn = "Mantel.AppendPath"
	if err := m.checkHanging(fn, h); err != nil {
		return dst, err
	}
	if err := checkCount(fn, "pieces", pieces, 1, 1000); err != nil {
		return dst, err
	}
	if h.Left > 0 {
		dst = append(dst, Point{0, h.Left})
	}
	dst = append(dst, Point{})
	if h.Swags > 0 {
		c := m.catenary(h)
		steps := h.Swags * pieces
		for i := 1; i < steps; i++ {
			at := c.span * float64(i%pieces) / float64(pieces)
			dst = append(dst, Point{Along: m.part(i, steps), Below: nearest(c.below(at))})
		}
	}
	dst = append(dst, Point{m.Length, 0})
	if h.Right > 0 {
		dst = append(dst, Point{m.Length, h.Right})
	}
	return dst, nil
}

// hooks returns the places of the hooks of a hanging that is known to be good.
func (m Mantel) hooks(h Hanging) []units.Length {
	gaps := max(1, h.Swags)
	places := make([]units.Length, gaps+1)
	for i := range places {
		places[i] = m.part(i, gaps)
	}
	return places
}

// part returns how far i of n equal parts reach along the shelf, the same from
// both ends to the nanometer.
func (m Mantel) part(i, n int) units.Length {
	if i > n/2 {
		return m.Length - m.part(n-i, n)
	}
	return m.Length * units.Length(i) / units.Length(n)
}

// run returns the garland between the ends of the shelf.
func (m Mantel) run(h Hanging) units.Length {
	if h.Swags == 0 {
		return m.Length
	}
	return m.Length + nearest(float64(float64(h.Swags)*m.catenary(h).slack()))
}

// catenary returns one swag of a hanging that has some. Its span need not be a
// whole number of nanometers.
func (m Mantel) catenary(h Hanging) catenary {
	return catenaryOfSag(float64(m.Length)/float64(h.Swags), float64(h.Sag))
}

// checkHanging checks m and h and whether they go together.
func (m Mantel) checkHanging(fn string, h Hanging) error {
	if err := m.check(fn); err != nil {
		return err
	}
	if err := checkCount(fn, "Swags", h.Swags, 0, maxSwags); err != nil {
		return err
	}
	if most := m.Length / minSpan; units.Length(h.Swags) > most {
		return fitError(fn, "Swags", strconv.Itoa(h.Swags), "at most "+strconv.Itoa(int(most))+", an inch or more each on a shelf of "+exact(m.Length))
	}
	if err := checkLength(fn, "Sag", h.Sag, 0, maxSag, wantSag); err != nil {
		return err
	}
	if h.Swags == 0 && h.Sag != 0 {
		return fitError(fn, "Sag", exact(h.Sag), "0 ft where there are no swags")
	}
	if err := checkLength(fn, "Thickness", h.Thickness, 0, maxThickness, "0 ft to 3 ft"); err != nil {
		return err
	}
	for _, drop := range [...]struct {
		field  string
		length units.Length
	}{{"Left", h.Left}, {"Right", h.Right}, {"Fall", h.Fall}} {
		if err := checkLength(fn, drop.field, drop.length, 0, maxDrop, wantDrop); err != nil {
			return err
		}
		if err := m.checkHearth(fn, drop.field, drop.length); err != nil {
			return err
		}
	}
	if err := m.checkHearth(fn, "Sag", h.Sag); err != nil {
		return err
	}
	if err := h.Look.check(fn); err != nil {
		return err
	}
	return h.Heavy.check(fn)
}

// checkHearth checks that something that hangs from the shelf ends above the
// hearth, if it is known where that is.
func (m Mantel) checkHearth(fn, field string, hangs units.Length) error {
	if m.Height != 0 && hangs > m.Height {
		return fitError(fn, field, exact(hangs), "at most "+exact(m.Height)+", from the shelf to the hearth")
	}
	return nil
}
