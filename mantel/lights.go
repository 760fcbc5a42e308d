package mantel

import (
	"strconv"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A LightString is a string of lights for the garland, as its label has it, and where
// it is plugged in. What the strings draw from the circuit, and how many may be joined,
// is in package sizing/lights.
type LightString struct {
	Lamps  int          `json:"lamps"`  // on one string, 1 to 10,000
	Length units.Length `json:"length"` // lighted, of one string, 1 in to 150 ft

	// Outlet is the outlet, from the left end of the shelf and below its top, each -150
	// to 150 ft; negative to the left of it, and above.
	Outlet Point `json:"outlet"`
}

// Lighting is the lights in a garland.
type Lighting struct {
	Strings int             `json:"strings"` // how many strings
	Lamps   int             `json:"lamps"`   // on all of them
	Cord    units.Length    `json:"cord"`    // the extension cord, in whole feet
	At      Side            `json:"at"`      // the end of the garland where the plug is
	Needs   []shopping.Need `json:"needs"`   // the lamps
	Caution units.Caution   `json:"caution"` // cords
}

// Lights returns the lights for a garland that hangs so, wound along all of it:
//
//	strings = garland/Length, rounded up
//	cord    = from the bottom of the nearer end to the outlet, along the wall and up or
//	          down it, rounded up to a whole foot
//
// The errors are those of [Mantel.Garland], and one wrapping [units.ErrRange] if a field
// of each is out of its range.
//
// Source: geometry; the lamps to a foot are those of the strings.
func (m Mantel) Lights(hanging Hanging, each LightString) (Lighting, error) {
	const fn = "Mantel.Lights"
	if err := m.checkHanging(fn, "", "/hanging", hanging); err != nil {
		return Lighting{}, err
	}
	if err := checkCount(fn, "/each/lamps", each.Lamps, 1, 10_000); err != nil {
		return Lighting{}, err
	}
	const far, wantFar = maxSwagLength, "-150 ft to 150 ft"
	for _, x := range [...]measured{
		{"/each/length", each.Length, units.Inch, maxSwagLength, "1 in to 150 ft"},
		{"/each/outlet/along", each.Outlet.Along, -far, far, wantFar},
		{"/each/outlet/below", each.Outlet.Below, -far, far, wantFar},
	} {
		if err := checkLength(fn, x.field, x.length, x.least, x.most, x.want); err != nil {
			return Lighting{}, err
		}
	}
	garland := hanging.Left + m.run(hanging) + hanging.Right
	l := Lighting{Strings: divideUp(garland, each.Length), Caution: cautionCords}
	l.Lamps = l.Strings * each.Lamps
	apart := func(p Point) units.Length {
		a, b := p.Along-each.Outlet.Along, p.Below-each.Outlet.Below
		return max(a, -a) + max(b, -b)
	}
	left, right := apart(Point{0, hanging.Left}), apart(Point{m.Length, hanging.Right})
	if right < left {
		l.At = Right
	}
	l.Cord = units.Length(divideUp(min(left, right), units.Foot)) * units.Foot
	l.Needs = []shopping.Need{{
		Item: itemLights, Quantity: shopping.Quantity{Pieces: l.Lamps},
		Basis:  plural(l.Strings, "string") + " of " + strconv.Itoa(each.Lamps) + " on " + show(each.Length) + ", along " + show(garland) + " of garland; cord " + show(l.Cord) + " from the " + l.At.String(),
		Source: "geometry",
	}}
	return l, nil
}
