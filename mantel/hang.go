package mantel

import (
	"strconv"

	"example.com/fircone/internal/catenary"
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
// end and falls at neither.
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

// A Point is a place on the front of a mantel, as a viewer sees it; or for a [Swag],
// a place from its left hook.
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
// It returns an error wrapping [units.ErrRange] if a field of m or hanging is out of its
// range, and one wrapping [units.ErrFit] if two do not go together: a sag
// or a drop past the hearth, a drop at a wall, swags under an inch wide, a sag without
// swags.
//
// Source: lengths of swags, as for [Swag].
func (m Mantel) Garland(hanging Hanging) (units.Length, error) {
	if err := m.checkHanging("Mantel.Garland", "", "/hanging", hanging); err != nil {
		return 0, err
	}
	return hanging.Left + m.run(hanging) + hanging.Right, nil
}

// garlandNeed returns the garland of a hanging that is known to be good as a need,
// rounded up to a whole inch.
func (m Mantel) garlandNeed(h Hanging) shopping.Need {
	run, source := "along the shelf", "measured"
	if h.Swags > 0 {
		run, source = "in "+plural(h.Swags, "swag")+" "+show(h.Sag)+" deep", "length of a catenary"
	}
	return shopping.Need{
		Item:     itemGarland,
		Quantity: shopping.Quantity{Length: wholeInches(h.Left + m.run(h) + h.Right)},
		Basis:    show(m.run(h)) + " " + run + ", " + show(h.Left) + " falling at the left, " + show(h.Right) + " at the right",
		Source:   source,
	}
}

// wholeInches rounds up, for a supply is never short.
func wholeInches(l units.Length) units.Length {
	return (l + units.Inch - 1) / units.Inch * units.Inch
}

// FindDrops returns hanging with Look set to look, and Left and Right to what is left
// of a garland after the shelf or the swags. Half falls at each end of a traditional
// mantel, or all of it at the end that is not at a wall; at an asymmetrical one the
// light end falls as far as hanging says already, and the rest at the heavy side. An
// odd nanometer falls at the right. [Mantel.Garland] of the result is garland to the
// nanometer.
//
// The errors are those of [Mantel.Garland], and one wrapping [units.ErrFit] if garland
// is too short to reach along the shelf. It never shortens a drop: [Rules.Hang] does
// on a low shelf, and says so.
//
// Source: the extra on both sides, or on one, is common practice.
func (m Mantel) FindDrops(garland units.Length, look Look, hanging Hanging) (Hanging, error) {
	h := hanging
	const fn = "Mantel.FindDrops"
	if err := look.check(fn, "look"); err != nil {
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
	if err := m.checkHanging(fn, "", "/hanging", h); err != nil {
		return Hanging{}, err
	}
	least := m.run(h) + light
	if garland < least {
		return Hanging{}, fitError(fn, "garland", exact(garland), "at least "+exact(least)+" to reach along the shelf")
	}
	left := garland - least
	deepest := m.deepest(maxDrop)
	room := units.Length(0) // for what may fall
	for _, end := range [...]struct {
		wall bool
		side Side
	}{{m.LeftWall, Left}, {m.RightWall, Right}} {
		if !end.wall && (look == Traditional || h.Heavy == end.side) {
			room += deepest
		}
	}
	if left > room {
		return Hanging{}, fitError(fn, "garland", exact(garland), "at most "+exact(least+room)+", so that no end passes the hearth, a wall or "+exact(maxDrop))
	}
	switch {
	case look == Traditional && m.LeftWall:
		h.Left, h.Right = 0, left
	case look == Traditional && m.RightWall:
		h.Left, h.Right = left, 0
	case look == Traditional:
		h.Left, h.Right = left/2, left-left/2
	case h.Heavy == Left:
		h.Left, h.Right = left, light
	default:
		h.Left, h.Right = light, left
	}
	return h, nil
}

// deepest returns how far something may hang from the shelf: at most so far, and not
// past the hearth.
func (m Mantel) deepest(most units.Length) units.Length {
	if m.Height != 0 {
		return min(most, m.Height)
	}
	return most
}

// FindSag returns hanging with Sag set so that a garland is used up by its drops and
// swags. Each swag takes an equal part of what the drops leave.
// The sag is rounded to the nearest nanometer, so that [Mantel.Garland] of the
// result is garland to a nanometer for each swag, and one more.
//
// The errors are those of [Mantel.Garland], one wrapping [units.ErrRange] if there are no
// swags, and one wrapping [units.ErrFit] if garland is too short to reach along the
// shelf, or so long that the swags would hang past the hearth or over 50 ft deep.
//
// Source: as for [Swag].
func (m Mantel) FindSag(garland units.Length, hanging Hanging) (Hanging, error) {
	h := hanging
	const fn = "Mantel.FindSag"
	if err := checkCount(fn, "/hanging/swags", h.Swags, 1, maxSwags); err != nil {
		return Hanging{}, err
	}
	h.Sag = 0 // until the rest is known to be good
	if err := m.checkHanging(fn, "", "/hanging", h); err != nil {
		return Hanging{}, err
	}
	least := m.Length + h.Left + h.Right
	if garland < least {
		return Hanging{}, fitError(fn, "garland", exact(garland), "at least "+exact(least)+" to reach along the shelf")
	}
	n := float64(h.Swags)
	deepest := m.deepest(maxSag)
	if garland <= units.Length(h.Swags)*maxSwagLength+h.Left+h.Right { // or the sag is over 50 ft
		h.Sag = nearest(catenary.Sag(float64(m.Length)/n, float64(garland-least)/n))
		if h.Sag <= deepest {
			return h, nil
		}
	}
	h.Sag = deepest
	most := h.Left + m.run(h) + h.Right
	return Hanging{}, fitError(fn, "garland", exact(garland), "at most "+exact(most)+", which hangs "+exact(deepest)+" deep")
}

// Hooks returns where the hooks are, from the left end of the shelf: one at each
// end, and one between each two swags, at equal distances rounded to a nanometer,
// the same from both ends. They are level with the top of the shelf. The errors
// are those of [Mantel.Garland].
func (m Mantel) Hooks(hanging Hanging) ([]units.Length, error) {
	if err := m.checkHanging("Mantel.Hooks", "", "/hanging", hanging); err != nil {
		return nil, err
	}
	return m.hooks(hanging), nil
}

// Below returns how far below the top of the shelf the garland is, at a distance
// from the left end of the shelf: 0 along a shelf without swags. It is rounded to
// the nearest nanometer. The errors are those of [Mantel.Garland], and one
// wrapping [units.ErrRange] if along is not from 0 to the length of the shelf.
//
// Source: as for [Swag].
func (m Mantel) Below(hanging Hanging, along units.Length) (units.Length, error) {
	const fn = "Mantel.Below"
	if err := m.checkHanging(fn, "", "/hanging", hanging); err != nil {
		return 0, err
	}
	if along < 0 || along > m.Length {
		return 0, rangeError(fn, "along", exact(along), "0 ft to the length of the shelf, "+exact(m.Length))
	}
	if hanging.Swags == 0 {
		return 0, nil
	}
	n := units.Length(hanging.Swags)
	return nearest(m.curve(hanging).Below(float64(along*n%m.Length) / float64(n))), nil
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
func (m Mantel) AppendPath(dst []Point, hanging Hanging, pieces int) ([]Point, error) {
	const fn = "Mantel.AppendPath"
	if err := m.checkHanging(fn, "", "/hanging", hanging); err != nil {
		return dst, err
	}
	if err := checkCount(fn, "pieces", pieces, 1, 1000); err != nil {
		return dst, err
	}
	if hanging.Left > 0 {
		dst = append(dst, Point{0, hanging.Left})
	}
	dst = append(dst, Point{})
	if hanging.Swags > 0 {
		c := m.curve(hanging)
		span := float64(m.Length) / float64(hanging.Swags)
		steps := hanging.Swags * pieces
		for i := 1; i < steps; i++ {
			at := span * float64(i%pieces) / float64(pieces)
			dst = append(dst, Point{Along: m.part(i, steps), Below: nearest(c.Below(at))})
		}
	}
	dst = append(dst, Point{m.Length, 0})
	if hanging.Right > 0 {
		dst = append(dst, Point{m.Length, hanging.Right})
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
	return m.Length + nearest(float64(float64(h.Swags)*m.curve(h).Slack()))
}

// curve returns one swag of a hanging that has some. Its span need not be a
// whole number of nanometers.
func (m Mantel) curve(h Hanging) catenary.Curve {
	return catenary.Level(float64(m.Length)/float64(h.Swags), float64(h.Sag))
}

// checkHanging checks m and h, which are at the pointers mantel and hanging, and
// whether they go together.
func (m Mantel) checkHanging(fn, mantel, hanging string, h Hanging) error {
	if err := m.check(fn, mantel); err != nil {
		return err
	}
	err := m.checkHang(fn, h)
	if e, ok := err.(*units.Error); ok {
		e.Field = hanging + e.Field // only now, for putting texts together allocates
	}
	return err
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
	if err := h.Look.check(fn, "/look"); err != nil {
		return err
	}
	return h.Heavy.check(fn, "/heavy")
}
