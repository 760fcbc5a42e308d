package mantel

import (
	"math"
	"math/bits"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// DefaultFactor is the design factor of a [Hook] that names none: a hook is loaded
// to a fifth of its rating. It is a figure of lifting practice that serves here by
// analogy, and a default that a caller may raise.
//
// Source: 29 CFR 1919.33.
const DefaultFactor = 5

const (
	minPerFoot = units.Gram
	maxPerFoot = 20 * units.Pound
	minRating  = units.Ounce
	maxRating  = 1000 * units.Pound

	wantPerFoot = "1 g to 20 lb"
)

// Cautions that come with every load.
const (
	cautionHookLabel   = "follow the label of the hook for the surface, the weight and the waiting time; a rating is for a clean, sound surface"
	cautionHookHeat    = "heat and dust weaken adhesive: do not trust an adhesive hook over a fireplace that is used"
	cautionHookShare   = "hooks side by side share a load only as far as they are pulled alike: a higher rating is better than more hooks"
	cautionHookDressed = "weigh the garland as it will hang, with its picks and ornaments"
)

// unchecked is the text of a result that came with an error, where any other could
// be read as safe.
const unchecked = "nothing was checked"

// A Hook is the kind of hook that holds a garland. Hooks are equal if == says so.
type Hook struct {
	// Rating is the weight that the label says one hook holds, 1 oz to 1000 lb.
	Rating units.Mass `json:"rating"`

	// Factor is the design factor, 5 to 20. Zero is DefaultFactor.
	Factor int `json:"factor"`
}

// WorkingLoad returns what one hook may carry:
//
//	working load = Rating/Factor
//
// rounded down to the nanogram. It returns an [units.Error] wrapping [units.ErrRange] if a
// field of k is out of its range.
//
// Source: the factor, as for [DefaultFactor].
func (k Hook) WorkingLoad() (units.Mass, error) { return k.workingLoad("Hook.WorkingLoad") }

func (k Hook) workingLoad(fn string) (units.Mass, error) {
	if k.Rating < minRating || k.Rating > maxRating {
		return 0, rangeError(fn, "Rating", k.Rating.String(), "1 oz to 1000 lb")
	}
	if k.Factor == 0 {
		return k.Rating / DefaultFactor, nil
	}
	if err := checkCount(fn, "Factor", k.Factor, DefaultFactor, 20); err != nil {
		return 0, err
	}
	return k.Rating / units.Mass(k.Factor), nil
}

// Spacing returns how far apart such hooks may be along a garland that weighs
// perFoot for each foot and is fastened close along an edge, so that each hook
// carries the garland half way to its neighbors:
//
//	spacing = working load/perFoot, in feet
//
// rounded down to the nanometer. For swags, which also pull sideways, and for the
// drops at the ends see [Mantel.Loads]. It returns an [units.Error] wrapping [units.ErrRange]
// if a field of k is out of its range or perFoot is not from 1 g to 20 lb.
//
// Source: statics.
func (k Hook) Spacing(perFoot units.Mass) (units.Length, error) {
	const fn = "Hook.Spacing"
	working, err := k.workingLoad(fn)
	if err != nil {
		return 0, err
	}
	if perFoot < minPerFoot || perFoot > maxPerFoot {
		return 0, rangeError(fn, "perFoot", perFoot.String(), wantPerFoot)
	}
	return units.Length(mulDiv(uint64(working), uint64(units.Foot), uint64(perFoot))), nil
}

// String returns a text such as "hook rated 5 lb, design factor 5".
func (k Hook) String() string {
	factor := k.Factor
	if factor == 0 {
		factor = DefaultFactor
	}
	return "hook rated " + showMass(k.Rating) + ", design factor " + strconv.Itoa(factor)
}

// A HookLoad is what the garland does to the hook, or hooks, at one place. A force
// is given as the weight that pulls as hard. HookLoads are equal if == says so.
type HookLoad struct {
	Along units.Length `json:"along"` // from the left end of the shelf

	Down       units.Mass `json:"down"`       // the weight that hangs here
	Left       units.Mass `json:"left"`       // the level pull of the swag on the left, to the left
	Right      units.Mass `json:"right"`      // the level pull of the swag on the right, to the right
	Total      units.Mass `json:"total"`      // √(Down² + (Right - Left)²), rounded up, within a nanogram
	Hooks      int        `json:"hooks"`      // how many hooks of the kind given carry Total, 1 or more
	Overloaded bool       `json:"overloaded"` // one hook would be loaded above its working load
}

// String returns a text such as "at 5 ft 4 in: 1 lb down, 8.4 oz to the left".
func (l HookLoad) String() string {
	text := "at " + show(l.Along) + ": " + showMass(l.Down) + " down"
	switch pull := l.Right - l.Left; {
	case pull > 0:
		text += ", " + showMass(pull) + " to the right"
	case pull < 0:
		text += ", " + showMass(-pull) + " to the left"
	}
	if l.Overloaded {
		text += ", overloaded: one hook will not do, " + strconv.Itoa(l.Hooks) + " would"
	}
	return text
}

// Loads is what a hanging garland weighs and what holds it.
type Loads struct {
	Weight     units.Mass   `json:"weight"`     // the whole garland
	Shelf      units.Mass   `json:"shelf"`      // the part that lies on the shelf, which no hook carries
	Hooks      []HookLoad   `json:"hooks"`      // from the left end of the shelf
	Spacing    units.Length `json:"spacing"`    // from hook to hook, rounded down to the nanometer
	Working    units.Mass   `json:"working"`    // the working load of one hook
	Heaviest   int          `json:"heaviest"`   // the index in Hooks of the largest Total, the first of equals
	Overloaded int          `json:"overloaded"` // at how many places one hook would be overloaded
	Cautions   []string     `json:"cautions"`   // what to mind, in plain words
}

// String returns the loads line by line, with the weight first and the cautions
// left out. Loads of no hook, which come with an error, are "nothing was checked".
func (l Loads) String() string {
	if len(l.Hooks) == 0 {
		return unchecked
	}
	var b strings.Builder
	b.WriteString("garland " + showMass(l.Weight) + ", hooks " + show(l.Spacing) + " apart, each good for " + showMass(l.Working))
	for _, h := range l.Hooks {
		b.WriteString("\n" + h.String())
	}
	return b.String()
}

// Need returns the hooks as a need, item mantel hooks: one at each place, or at an
// overloaded one as many as share its load, which the basis says.
func (l Loads) Need() shopping.Need {
	hooks, most := 0, units.Mass(0)
	for _, h := range l.Hooks {
		hooks += h.Hooks
		most = max(most, h.Total)
	}
	basis := "1 at each of " + strconv.Itoa(len(l.Hooks)) + " places, up to " + showMass(most) + " on a working load of " + showMass(l.Working)
	if l.Overloaded > 0 {
		basis += ", and more at " + strconv.Itoa(l.Overloaded) + " where one is overloaded"
	}
	return shopping.Need{Item: itemHooks, Quantity: shopping.Quantity{Pieces: hooks}, Basis: basis, Source: "statics; design factor by analogy, 29 CFR 1919.33"}
}

// Loads returns what the garland does to each hook of [Mantel.Hooks], for a
// garland that weighs perFoot for each foot as it hangs. A drop hangs on the hook
// at its end; a swag hangs half on each side and pulls its hooks towards each
// other with the level force
//
//	pull = perFoot · a, a = span/2u
//
// as [Swag] has u, which is the same at both ends and grows without limit as a
// swag is drawn flat. Where two swags meet, their pulls are equal and opposite.
// A garland without swags lies on the shelf, and its drops hang on a hook at each
// end.
//
// Weight is perFoot times the length, rounded to the nearest nanogram. It is shared
// out so that Shelf and every Down add up to it exactly, each within a nanogram of
// its own share. Pulls are within 1e-12 of theirs.
//
// A hook above its working load is reported as overloaded; nothing is changed to
// make it fit.
//
// The errors are those of [Mantel.Garland], and one wrapping [units.ErrRange] if perFoot
// is not from 1 g to 20 lb, a field of k is out of its range, or the swags are drawn
// flatter than a hundredth of their span.
//
// Source: statics of the catenary; the design factor, as for [DefaultFactor].
func (m Mantel) Loads(h Hanging, perFoot units.Mass, k Hook) (Loads, error) {
	const fn = "Mantel.Loads"
	if err := m.checkHanging(fn, h); err != nil {
		return Loads{}, err
	}
	if perFoot < minPerFoot || perFoot > maxPerFoot {
		return Loads{}, rangeError(fn, "perFoot", perFoot.String(), wantPerFoot)
	}
	working, err := k.workingLoad(fn)
	if err != nil {
		return Loads{}, err
	}
	if h.Swags > 0 && h.Sag*units.Length(100*h.Swags) < m.Length {
		least := units.Length(divideUp(m.Length, units.Length(100*h.Swags)))
		return Loads{}, rangeError(fn, "Sag", exact(h.Sag), "a hundredth of the span or more, "+exact(least)+": a taut garland pulls without limit")
	}

	places := m.hooks(h)
	run := m.run(h)
	garland := h.Left + run + h.Right
	loads := Loads{
		Weight:   units.Mass(mulDivNearest(uint64(garland), uint64(perFoot), uint64(units.Foot))),
		Hooks:    make([]HookLoad, len(places)),
		Spacing:  m.Length / units.Length(max(1, h.Swags)),
		Working:  working,
		Cautions: []string{cautionHookLabel, cautionHookHeat, cautionHookDressed},
	}

	// Lengths in parts of a nanometer, so that half a swag is a whole number.
	parts := uint64(2 * max(1, h.Swags))
	hung, weighed := uint64(0), units.Mass(0)
	// next returns the weight of the next so many parts of the garland, from the left.
	next := func(length uint64) units.Mass {
		hung += length
		upTo := units.Mass(mulDivNearest(uint64(loads.Weight), hung, parts*uint64(garland)))
		weight := upTo - weighed
		weighed = upTo
		return weight
	}
	pull := units.Mass(0)
	if h.Swags > 0 {
		c := m.catenary(h)
		pull = units.Mass(math.Round(float64(perFoot) * (c.span / (2 * c.u)) / float64(units.Foot)))
	}
	last := len(places) - 1
	for i, along := range places {
		load := HookLoad{Along: along}
		if i == 0 {
			load.Down = next(parts * uint64(h.Left))
		}
		if h.Swags > 0 {
			if i > 0 {
				load.Down += next(uint64(run))
				load.Left = pull
			}
			if i < last {
				load.Down += next(uint64(run))
				load.Right = pull
			}
		} else if i == 0 {
			loads.Shelf = next(parts * uint64(run))
		}
		if i == last {
			load.Down += next(parts * uint64(h.Right))
		}
		load.Total = resultant(load.Down, load.Right-load.Left)
		load.Hooks = max(1, int((load.Total+working-1)/working))
		if load.Overloaded = load.Total > working; load.Overloaded {
			loads.Overloaded++
		}
		loads.Hooks[i] = load
		if load.Total > loads.Hooks[loads.Heaviest].Total {
			loads.Heaviest = i
		}
	}
	if loads.Overloaded > 0 {
		loads.Cautions = append(loads.Cautions, cautionHookShare)
	}
	return loads, nil
}

// resultant returns √(a² + b²) rounded up. Both are below 2⁵³ here, so that it is
// within a nanogram.
func resultant(a, b units.Mass) units.Mass {
	x, y := float64(a), float64(b)
	return units.Mass(math.Ceil(math.Sqrt(float64(x*x) + float64(y*y))))
}

// mulDiv returns a·b/c rounded down, where that fits.
func mulDiv(a, b, c uint64) uint64 {
	hi, lo := bits.Mul64(a, b)
	quo, _ := bits.Div64(hi, lo, c)
	return quo
}

// mulDivNearest returns a·b/c rounded to the nearest, half up, where that fits.
func mulDivNearest(a, b, c uint64) uint64 {
	hi, lo := bits.Mul64(a, b)
	quo, rem := bits.Div64(hi, lo, c)
	if rem >= c-rem {
		quo++
	}
	return quo
}
