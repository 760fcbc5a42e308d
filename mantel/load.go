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
	wantRating  = "1 oz to 1000 lb"
)

// unchecked is the text of a result that came with an error, where any other could
// be read as safe.
const unchecked = "nothing was checked"

// A Hook is the kind of hook or holder that carries a garland or a stocking.
//
// Its label gives a weight, and says which: a breaking load, at which the hook
// gives way, or a working load, which it carries day by day. A label that does not
// say which gives a breaking load.
type Hook struct {
	// Rating is the weight on the label, for one hook, 1 oz to 1000 lb.
	Rating units.Mass `json:"rating"`

	// Working says that the label states a working load. It takes no design factor.
	Working bool `json:"working"`

	// Factor is the design factor of a breaking load, 5 to 20. Zero is DefaultFactor,
	// and 1 for a working load, which takes no other.
	Factor int `json:"factor"`
}

// WorkingLoad returns what one hook may carry:
//
//	working load = Rating/Factor
//
// rounded down to the nanogram, or Rating itself if the label states a working load.
// It returns an error wrapping [units.ErrRange] if a field of k is out of its range,
// and one wrapping [units.ErrFit] for a design factor with a working load.
//
// Source: the factor, as for [DefaultFactor].
func (k Hook) WorkingLoad() (units.Mass, error) { return k.workingLoad("Hook.WorkingLoad", "") }

// workingLoad checks k, which is at a pointer.
func (k Hook) workingLoad(fn, at string) (units.Mass, error) {
	if err := checkMass(fn, at+"/rating", k.Rating, minRating, maxRating, wantRating); err != nil {
		return 0, err
	}
	if k.Working {
		if k.Factor != 0 && k.Factor != 1 {
			return 0, fitError(fn, at+"/factor", strconv.Itoa(k.Factor), "0 or 1 for a label that states a working load")
		}
		return k.Rating, nil
	}
	if k.Factor != 0 {
		if err := checkCount(fn, at+"/factor", k.Factor, DefaultFactor, 20); err != nil {
			return 0, err
		}
	}
	return k.Rating / units.Mass(k.factor()), nil
}

// factor returns the design factor of a hook that is known to be good.
func (k Hook) factor() int {
	switch {
	case k.Working:
		return 1
	case k.Factor == 0:
		return DefaultFactor
	}
	return k.Factor
}

// Spacing returns how far apart such hooks may be along a garland that weighs
// perFoot for each foot and is fastened close along an edge, so that each hook
// carries the garland half way to its neighbors:
//
//	spacing = working load/perFoot, in feet
//
// rounded down to the nanometer. Swags also pull sideways, and drops hang on the end
// hooks: see [Mantel.Loads]. It returns the errors of [Hook.WorkingLoad], and one
// wrapping [units.ErrRange] if perFoot is not from 1 g to 20 lb.
//
// Source: statics.
func (k Hook) Spacing(perFoot units.Mass) (units.Length, error) {
	return k.spacing("Hook.Spacing", perFoot)
}

func (k Hook) spacing(fn string, perFoot units.Mass) (units.Length, error) {
	working, err := k.workingLoad(fn, "")
	if err != nil {
		return 0, err
	}
	if err := checkPerFoot(fn, perFoot); err != nil {
		return 0, err
	}
	return every(working, perFoot), nil
}

// every returns the garland that weighs as much as a hook may carry.
func every(working, perFoot units.Mass) units.Length {
	return units.Length(mulDiv(uint64(working), uint64(units.Foot), uint64(perFoot)))
}

// Count returns how many such hooks hold this length of garland close along an edge,
// one at each end and none farther from the next than [Hook.Spacing]:
//
//	hooks = length/spacing, rounded up, + 1
//
// It returns the errors of [Hook.Spacing], one wrapping [units.ErrRange] if length is
// not from 1 in to 150 ft, and one wrapping [units.ErrFit] if the hooks would be less
// than an inch apart.
//
// Source: statics.
func (k Hook) Count(length units.Length, perFoot units.Mass) (int, error) {
	const fn = "Hook.Count"
	if err := checkLength(fn, "length", length, units.Inch, maxSwagLength, "1 in to 150 ft"); err != nil {
		return 0, err
	}
	spacing, err := k.spacing(fn, perFoot)
	if err != nil {
		return 0, err
	}
	if spacing < units.Inch {
		return 0, fitError(fn, "perFoot", perFoot.String(), "a garland that such hooks hold an inch or more apart")
	}
	return divideUp(length, spacing) + 1, nil
}

// String returns a text such as "hook rated 5 lb, design factor 5".
func (k Hook) String() string {
	if k.Working {
		return "hook with a working load of " + showMass(k.Rating)
	}
	return "hook rated " + showMass(k.Rating) + ", design factor " + strconv.Itoa(k.factor())
}

// A HookLoad is what hangs on the hook at one place, and how it is pulled. A force is
// given as the weight that pulls as hard.
type HookLoad struct {
	Along units.Length `json:"along"` // from the left end of the shelf, or from the first hook
	Below units.Length `json:"below"` // below the top of the shelf, or below the first hook; negative above

	Down       units.Mass `json:"down"`       // the weight that hangs here; negative if the garland lifts the hook
	Left       units.Mass `json:"left"`       // the level pull of the swag on the left, to the left
	Right      units.Mass `json:"right"`      // the level pull of the swag on the right, to the right
	Total      units.Mass `json:"total"`      // √(Down² + (Right - Left)²), rounded up, within a nanogram
	Overloaded bool       `json:"overloaded"` // Total is above the working load of a hook
}

// String returns a text such as "at 5 ft 4 in: 1 lb down, 8.4 oz to the left".
func (l HookLoad) String() string {
	text := "at " + show(l.Along) + ": "
	if l.Down < 0 {
		text += showMass(-l.Down) + " up"
	} else {
		text += showMass(l.Down) + " down"
	}
	switch pull := l.Right - l.Left; {
	case pull > 0:
		text += ", " + showMass(pull) + " to the right"
	case pull < 0:
		text += ", " + showMass(-pull) + " to the left"
	}
	if l.Overloaded {
		text += ", OVERLOADED"
	}
	return text
}

// Loads is what a hanging garland, or a row of stockings, weighs and what holds it.
type Loads struct {
	Weight     units.Mass   `json:"weight"`     // of the whole
	Shelf      units.Mass   `json:"shelf"`      // the part that lies on the shelf, which no hook carries
	Hooks      []HookLoad   `json:"hooks"`      // from the left
	Spacing    units.Length `json:"spacing"`    // the widest gap between neighbors, rounded down to the nanometer
	Working    units.Mass   `json:"working"`    // the working load of one hook
	Heaviest   int          `json:"heaviest"`   // the index in Hooks of the largest Total, the first of equals
	Overloaded int          `json:"overloaded"` // at how many places a hook is overloaded
	Remedy     string       `json:"remedy"`     // what would hold it, in one line; empty if nothing is overloaded

	// Hanging is the most that a hook carries while the garland goes up, with a swag
	// on one side of it only: √(Down² + the larger of Left and Right squared), rounded
	// up.
	Hanging units.Mass `json:"hanging"`

	Cautions []units.Caution `json:"cautions"` // what to mind
}

// String returns the loads line by line, with the weight first, the remedy last and
// the cautions left out. Loads of no hook, which come with an error, are "nothing was
// checked".
func (l Loads) String() string {
	if len(l.Hooks) == 0 {
		return unchecked
	}
	var b strings.Builder
	b.WriteString("weight " + showMass(l.Weight) + ", hooks at most " + show(l.Spacing) + " apart, each good for " + showMass(l.Working))
	for _, h := range l.Hooks {
		b.WriteString("\n" + h.String())
	}
	if l.Remedy != "" {
		b.WriteString("\nto hold it: " + l.Remedy)
	}
	return b.String()
}

// Need returns the hooks as a need: one at each place. If one is overloaded the basis
// says what would hold it, and the need buys no more of the hooks that do not.
func (l Loads) Need() shopping.Need {
	basis := "1 at each of " + strconv.Itoa(len(l.Hooks)) + " places, up to " + showMass(l.most()) + " on a working load of " + showMass(l.Working)
	if l.Overloaded > 0 {
		basis += ": overloaded at " + strconv.Itoa(l.Overloaded) + "; to hold it, " + l.Remedy
	}
	return shopping.Need{Item: itemHooks, Quantity: shopping.Quantity{Pieces: len(l.Hooks)}, Basis: basis, Source: "statics; design factor by analogy, 29 CFR 1919.33"}
}

func (l Loads) most() (most units.Mass) {
	for _, h := range l.Hooks {
		most = max(most, h.Total)
	}
	return most
}

// Loads returns what the garland does to each hook of [Mantel.Hooks], for a
// garland that weighs perFoot for each foot as it hangs. A drop hangs on the hook
// at its end; a swag hangs half on each side and pulls its hooks towards each
// other with the level force
//
//	pull = perFoot · a, a = span/2u
//
// as [Swag] has u, which is the same at both ends and grows without limit as a
// swag is drawn flat. Where two swags meet, their pulls are equal and opposite; but
// not before both hang: see Loads.Hanging. A garland without swags lies on the shelf,
// and its drops hang on a hook at each end. For hooks at other places see [Run].
//
// Weight is perFoot times the length, rounded to the nearest nanogram. It is shared
// out so that Shelf and every Down add up to it exactly, each within a nanogram of
// its own share. Pulls are within 1e-12 of theirs.
//
// A hook above its working load is reported as overloaded, with what would hold it;
// nothing is changed to make it fit.
//
// The errors are those of [Mantel.Garland] and [Hook.WorkingLoad], and one wrapping
// [units.ErrRange] if perFoot is not from 1 g to 20 lb or the swags are drawn flatter
// than a hundredth of their span.
//
// Source: statics of the catenary; the design factor, as for [DefaultFactor].
func (m Mantel) Loads(hanging Hanging, perFoot units.Mass, hook Hook) (Loads, error) {
	const fn = "Mantel.Loads"
	h := hanging
	if err := m.checkHanging(fn, "", "/hanging", h); err != nil {
		return Loads{}, err
	}
	if err := checkPerFoot(fn, perFoot); err != nil {
		return Loads{}, err
	}
	working, err := hook.workingLoad(fn, "/hook")
	if err != nil {
		return Loads{}, err
	}
	if h.Swags > 0 && h.Sag*units.Length(100*h.Swags) < m.Length {
		return Loads{}, rangeError(fn, "/hanging/sag", exact(h.Sag), wantTaut(units.Length(divideUp(m.Length, units.Length(100*h.Swags)))))
	}

	places := m.hooks(h)
	run := m.run(h)
	garland := h.Left + run + h.Right
	loads := Loads{
		Weight:  units.Mass(mulDivNearest(uint64(garland), uint64(perFoot), uint64(units.Foot))),
		Hooks:   make([]HookLoad, len(places)),
		Spacing: m.Length / units.Length(max(1, h.Swags)),
		Working: working,
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
		pull = units.Mass(math.Round(float64(perFoot) * m.curve(h).Pull() / float64(units.Foot)))
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
		loads.Hooks[i] = load
	}
	loads.judge(hook, perFoot)
	return loads, nil
}

// judge fills in what follows from the pulls on the hooks: totals, what is overloaded
// and what would hold it, and the cautions. A perFoot of 0 is no garland.
func (l *Loads) judge(hook Hook, perFoot units.Mass) {
	between := false // two swags
	for i, h := range l.Hooks {
		h.Total = resultant(h.Down, h.Right-h.Left)
		if h.Overloaded = h.Total > l.Working; h.Overloaded {
			l.Overloaded++
		}
		l.Hooks[i] = h
		if h.Total > l.Hooks[l.Heaviest].Total {
			l.Heaviest = i
		}
		l.Hanging = max(l.Hanging, resultant(h.Down, max(h.Left, h.Right)))
		between = between || h.Left > 0 && h.Right > 0
	}
	l.Cautions = append(l.Cautions, cautionHookLabel, cautionHookHeat, cautionWeigh)
	if between {
		c := cautionHalfHung
		c.Text += ", up to " + showMass(l.Hanging) + " here"
		l.Cautions = append(l.Cautions, c)
	}
	if l.Overloaded == 0 {
		return
	}
	l.Cautions = append(l.Cautions, cautionHookShare)
	most := l.most()
	rating := "a breaking load of " + massUp(most*units.Mass(hook.factor()))
	if hook.Working {
		rating = "a working load of " + massUp(most)
	}
	l.Remedy = "hooks with " + rating + " or more"
	if perFoot == 0 {
		l.Remedy += ", or no more than " + massDown(l.Working) + " on each"
		return
	}
	length := every(l.Working, perFoot)
	l.Remedy += "; or garland of " + massDown(units.Mass(mulDiv(uint64(perFoot), uint64(l.Working), uint64(most)))) +
		" a foot or less; or these hooks " + showDown(length) + " apart or closer along an edge, with no more than " + showDown(length/2) + " falling at an end"
}

// massUp and massDown are showMass, but to the tenth of an ounce above and below, which
// is no whole number of nanograms.
func massUp(m units.Mass) string {
	tenths := (10*m + units.Ounce - 1) / units.Ounce
	return showMass((tenths*units.Ounce + 9) / 10)
}

func massDown(m units.Mass) string {
	return showMass(10 * m / units.Ounce * units.Ounce / 10)
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
