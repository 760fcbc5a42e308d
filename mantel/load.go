package mantel

import (
	"math"
	"math/bits"
	"strconv"
	"strings"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// The design factor of a hook that names none, and the largest.
//
// Source: 29 CFR 1919.33, for lifting gear: an analogy.
const (
	usualFactor = 5
	maxFactor   = 20
)

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

// A Hook is the kind of hook or holder that carries a garland or a stocking. Treat a
// rating as a breaking load unless its label says otherwise.
type Hook struct {
	Rating units.Mass `json:"rating"` // on the label, for one hook, 1 oz to 1000 lb
	Factor int        `json:"factor"` // the design factor: 5 to 20 for a breaking load, 1 for a working load; 0 is 5
}

// WorkingLoad returns Rating/Factor, rounded down to the nanogram.
//
// Source: see the package.
func (k Hook) WorkingLoad() (units.Mass, error) { return k.workingLoad("Hook.WorkingLoad", "") }

// workingLoad checks k, which is at a pointer.
func (k Hook) workingLoad(fn, at string) (units.Mass, error) {
	if err := checkMass(fn, at+"/rating", k.Rating, minRating, maxRating, wantRating); err != nil {
		return 0, err
	}
	if k.Factor != 0 && k.Factor != 1 && (k.Factor < usualFactor || k.Factor > maxFactor) {
		return 0, rangeError(fn, at+"/factor", strconv.Itoa(k.Factor), "5 to 20, or 1 for a label that states a working load")
	}
	return k.Rating / units.Mass(k.factor()), nil
}

// factor returns the design factor of a hook that is known to be good.
func (k Hook) factor() int {
	if k.Factor == 0 {
		return usualFactor
	}
	return k.Factor
}

// Count returns how many hooks hold garland of this length (1 in to 150 ft) and weight a
// foot (1 g to 20 lb) along an edge, and their widest spacing:
//
//	spacing = working load/perFoot, in feet, rounded down to the nanometer
//	hooks   = length/spacing, rounded up, + 1
func (k Hook) Count(length units.Length, perFoot units.Mass) (hooks int, spacing units.Length, err error) {
	const fn = "Hook.Count"
	if err := checkLength(fn, "length", length, units.Inch, maxSwagLength, "1 in to 150 ft"); err != nil {
		return 0, 0, err
	}
	working, err := k.workingLoad(fn, "")
	if err != nil {
		return 0, 0, err
	}
	if err := checkPerFoot(fn, perFoot); err != nil {
		return 0, 0, err
	}
	spacing = every(working, perFoot)
	return divideUp(length, spacing) + 1, spacing, nil
}

// every returns the garland that weighs as much as a hook may carry.
func every(working, perFoot units.Mass) units.Length {
	return units.Length(mulDiv(uint64(working), uint64(units.Foot), uint64(perFoot)))
}

// A HookLoad is what hangs on one hook and how hard it is pulled, each as a weight.
type HookLoad struct {
	At    Point      `json:"at"`    // where the hook is
	Down  units.Mass `json:"down"`  // what hangs here; negative if the garland lifts the hook
	Left  units.Mass `json:"left"`  // the sideways pull of the swag at the left
	Right units.Mass `json:"right"` // the sideways pull of the swag at the right
	Total units.Mass `json:"total"` // √(Down² + (Right - Left)²), rounded up, within a nanogram
}

// String returns a text such as "at 5 ft 4 in: 1 lb down, 8.4 oz to the left".
func (l HookLoad) String() string {
	text := "at " + show(l.At.Along, units.InFeetInches) + ": "
	if l.Down < 0 {
		text += showMass(-l.Down, units.InFeetInches) + " up, LIFTED: tie it down"
	} else {
		text += showMass(l.Down, units.InFeetInches) + " down"
	}
	switch pull := l.Right - l.Left; {
	case pull > 0:
		text += ", " + showMass(pull, units.InFeetInches) + " to the right"
	case pull < 0:
		text += ", " + showMass(-pull, units.InFeetInches) + " to the left"
	}
	return text
}

// Loads is what a garland, or a row of stockings, weighs and what holds it.
type Loads struct {
	Weight   units.Mass      `json:"weight"`   // of the whole
	Hooks    []HookLoad      `json:"hooks"`    // from the left
	Working  units.Mass      `json:"working"`  // the working load of a hook; a greater Total overloads it
	Needs    []shopping.Need `json:"needs"`    // stockings, and a hook at each place
	Cautions []units.Caution `json:"cautions"` // with what would hold an overload, and the most on a hook while only one side hangs
}

// String returns weight, hooks and what would hold an overload. Without hooks it is "nothing was checked".
func (l Loads) String() string {
	if len(l.Hooks) == 0 {
		return unchecked
	}
	var b strings.Builder
	b.WriteString("weight " + showMass(l.Weight, units.InFeetInches) + ", ")
	if apart := l.apart(); apart > 0 {
		b.WriteString("hooks up to " + showUp(apart, units.InFeetInches) + " apart, ")
	}
	b.WriteString("each good for " + massDown(l.Working, units.InFeetInches))
	for _, h := range l.Hooks {
		b.WriteString("\n" + h.String())
		if h.Total > l.Working {
			b.WriteString(", OVERLOADED")
		}
	}
	for _, c := range l.Cautions {
		if c.Code == overloaded || c.Code == overloadedStockings {
			b.WriteString("\n" + c.Text)
		}
	}
	return b.String()
}

// apart returns the widest gap between neighbors.
func (l Loads) apart() (widest units.Length) {
	for i := range len(l.Hooks) - 1 {
		widest = max(widest, l.Hooks[i+1].At.Along-l.Hooks[i].At.Along)
	}
	return widest
}

// need returns the hooks as a need, for stockings if there is no garland.
func (l Loads) need(over int, stockings bool, style units.Style) shopping.Need {
	where := "at each of " + plural(len(l.Hooks), "place")
	if stockings {
		where = "for each of " + plural(len(l.Hooks), "stocking")
	}
	basis := "1 " + where + ", up to " + massUp(l.most(), style) + " on a working load of " + massDown(l.Working, style)
	if over > 0 {
		basis += ": overloaded at " + strconv.Itoa(over)
	}
	return shopping.Need{Item: itemHooks, Quantity: shopping.Quantity{Pieces: len(l.Hooks)}, Basis: basis, Source: "statics; design factor by analogy, 29 CFR 1919.33"}
}

func (l Loads) most() (most units.Mass) {
	for _, h := range l.Hooks {
		most = max(most, h.Total)
	}
	return most
}

// judge fills in what follows from the pulls on the hooks: totals, what would hold an
// overload, needs and cautions. A perFoot of 0 is stockings.
func (l *Loads) judge(hook Hook, perFoot units.Mass, style units.Style) {
	between := false // two swags
	over, hanging := 0, units.Mass(0)
	for i, h := range l.Hooks {
		h.Total = resultant(h.Down, h.Right-h.Left)
		if h.Total > l.Working {
			over++
		}
		l.Hooks[i] = h
		hanging = max(hanging, resultant(h.Down, max(h.Left, h.Right)))
		between = between || h.Left > 0 && h.Right > 0
	}
	l.Cautions = append(l.Cautions, cautionHookLabel, cautionHookHeat, weigh(style))
	lifted := ""
	for _, h := range l.Hooks {
		if h.Down < 0 {
			lifted += ", " + show(h.At.Along, style)
		}
	}
	if lifted != "" {
		c := cautionLifted
		c.Text += ": here " + lifted[2:] + " from the left"
		l.Cautions = append(l.Cautions, c)
	}
	if between {
		c := cautionHalfHung
		c.Text += ", up to " + massUp(hanging, style) + " here"
		if hanging > l.Working {
			c.Code = "half hung overload"
			c.Text += ", more than it may carry: hold each swag until the next one hangs"
		}
		l.Cautions = append(l.Cautions, c)
	}
	if over > 0 {
		c := units.Caution{Code: overloaded, Text: "more than a hook may carry at " + plural(over, "place") + ": use " + l.remedy(hook, perFoot, style), Source: "statics"}
		if perFoot == 0 {
			c.Code = overloadedStockings
		}
		l.Cautions = append(l.Cautions, c, cautionHookShare)
	}
	l.Needs = append(l.Needs, l.need(over, perFoot == 0, style))
}

// remedy returns what would hold an overload.
func (l *Loads) remedy(hook Hook, perFoot units.Mass, style units.Style) string {
	most := l.most()
	rating := "a breaking load of " + massUp(most*units.Mass(hook.factor()), style)
	if hook.Factor == 1 {
		rating = "a working load of " + massUp(most, style)
	}
	text := "hooks with " + rating + " or more"
	if perFoot == 0 {
		return text + ", or no more than " + massDown(l.Working, style) + " on each"
	}
	length := every(l.Working, perFoot)
	return text + "; or garland of " + perFootDown(units.Mass(mulDiv(uint64(perFoot), uint64(l.Working), uint64(most))), style) +
		" or less; or these hooks " + showDown(length, style) + " apart or closer along an edge, with no more than " + showDown(length/2, style) + " falling at an end"
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
