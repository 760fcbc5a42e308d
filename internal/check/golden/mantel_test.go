package golden

import (
	"fmt"
	"strings"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// shelves are mantels, from a bare shelf to one over a firebox.
var shelves = []mantel.Mantel{
	{Length: length("64 in")},
	{Length: length("64 in"), Height: length("4 ft 6 in"), Depth: length("8 in"), Opening: mantel.Rectangle{Width: length("36 in"), Height: length("28 in"), Gap: length("18 in")}},
	{Length: length("8 ft"), Height: length("5 ft"), Depth: length("6 1/2 in"), Opening: mantel.Rectangle{Width: length("4 ft"), Height: length("30 in"), Gap: length("12 in")}},
	{Length: length("1.5 m"), Height: length("130 cm")},
	{Length: length("50 ft"), Depth: length("1 ft")},
	{Length: length("13 in")},
}

// hangings are ways for a garland to hang.
var hangings = []mantel.Hanging{
	{},
	{Left: length("1 ft"), Right: length("1 ft")},
	{Swags: 1, Sag: length("6 in")},
	{Swags: 3, Sag: length("9 in"), Left: length("1 ft"), Right: length("1 ft 6 in"), Thickness: length("4 in")},
	{Swags: 2, Sag: length("3 in"), Right: length("2 ft"), Look: mantel.AsymmetricalRight, Fall: length("20 in")},
	{Swags: 5, Sag: length("1 ft"), Left: length("18 in"), Look: mantel.AsymmetricalLeft, Fall: length("1 ft")},
	{Swags: 4, Left: length("3 ft"), Right: length("3 ft"), Thickness: length("1 ft")},
}

func shelf(m mantel.Mantel) string {
	return fmt.Sprintf("%s high %s deep %s opening %s x %s below %s", nm(m.Length), nm(m.Height), nm(m.Depth), nm(m.Opening.Width), nm(m.Opening.Height), nm(m.Opening.Gap))
}

func hanging(h mantel.Hanging) string {
	return fmt.Sprintf("%d swags sag %s left %s right %s style %d heavy %d fall %s thick %s", h.Swags, nm(h.Sag), nm(h.Left), nm(h.Right), min(h.Look, 1), h.Look/2, nm(h.Fall), nm(h.Thickness))
}

// byRule returns the needs of a shelf whose garland hangs by rule.
func byRule(r mantel.Rules, l units.Length, look mantel.Look) ([]shopping.Need, error) {
	m := mantel.Mantel{Length: l}
	h, _, err := r.Hang(m, mantel.Hanging{Look: look}, units.InFeetInches)
	if err != nil {
		return nil, err
	}
	return r.Needs(m, h, units.InFeetInches)
}

// of returns how much of a kind there is among needs.
func of(kind shopping.Kind) func(needs []shopping.Need, err error) (shopping.Quantity, error) {
	return func(needs []shopping.Need, err error) (shopping.Quantity, error) {
		for _, n := range needs {
			if n.Item.Kind == kind {
				return n.Quantity, err
			}
		}
		return shopping.Quantity{}, err
	}
}

func mantelPage(p *page) {
	styles := []struct {
		word string
		look [2]mantel.Look // by the heavy side
	}{{"even", [2]mantel.Look{}}, {"uneven", [2]mantel.Look{mantel.AsymmetricalLeft, mantel.AsymmetricalRight}}}
	r := mantel.CommonPractice()
	long := func(q shopping.Quantity) string { return feet(q.Length) }
	many := func(q shopping.Quantity) string { return whole(q.Pieces) }
	for _, s := range styles {
		for _, l := range []string{"11 in", "1 ft", "3 ft", "4 ft 1/4 in", "5 ft", "64 in", "6 ft 3 in", "8 ft", "2.5 m", "20 ft", "50 ft", "51 ft"} {
			needs, err := byRule(r, length(l), s.look[0])
			p.add("rule %s %s garland = %s", s.word, l, or(long)(of(shopping.BaseGarland)(needs, err)))
			p.add("rule %s %s picks = %s", s.word, l, or(many)(of(shopping.Pick)(needs, err)))
			p.add("rule %s %s ornaments = %s", s.word, l, or(many)(of(shopping.Ornament)(needs, err)))
			p.add("rule %s %s needs = %s", s.word, l, or(needed)(needs, err))
			for side, look := range s.look {
				spots, err := r.Spots(mantel.Mantel{Length: length(l)}, look)
				p.add("rule %s %s heavy %d spots = %s", s.word, l, side, or(func(spots []mantel.Spot) string {
					texts := make([]string, 0, len(spots))
					for _, x := range spots {
						texts = append(texts, fmt.Sprintf("%d %d", int64(x.Along), x.Layer))
					}
					return strings.Join(texts, ", ")
				})(spots, err))
			}
		}
		needs, err := byRule(r, length("5 ft"), s.look[0])
		p.add("rule %s ribbon = %s, bells %s", s.word, or(long)(of(shopping.Ribbon)(needs, err)), or(many)(of(shopping.Bell)(needs, err)))
	}
	swags(p)
	slopes(p)
	for _, m := range shelves {
		for _, h := range hangings {
			text := "shelf " + shelf(m) + " with " + hanging(h)
			run, err := m.Hang(h)
			hung := func(x units.Length, failed error) (units.Length, error) { return x, firstError(err, failed) }
			p.add("garland %s = %s", text, or(feet)(hung(run.Garland())))
			p.add("hooks %s = %s", text, or(hooks)(run, err))
			for _, g := range []string{"3 ft", "7 ft", "9 ft 3 in", "20 ft"} {
				sag, err := sagOf(m, h, length(g))
				p.add("sag of %s on %s = %s", nm(length(g)), text, or(func(h mantel.Hanging) string { return nm(h.Sag) })(sag, err))
				for _, s := range styles {
					look := h
					if look.Look = s.look[0]; h.Look == mantel.AsymmetricalRight {
						look.Look = s.look[1]
					}
					drops, err := m.FindDrops(length(g), look)
					p.add("drops of %s, %s, on %s = %s", nm(length(g)), s.word, text, or(func(h mantel.Hanging) string { return nm(h.Left) + " and " + nm(h.Right) })(drops, err))
				}
			}
			for _, x := range []units.Length{0, m.Length / 7, m.Length / 2, m.Length} {
				p.add("below %s at %s = %s", text, nm(x), or(nm)(hung(run.Below(x))))
			}
			line, failed := run.AppendPath(nil, 8)
			p.add("path of %s = %s", text, or(path)(line, firstError(err, failed)))
			c, failed := m.Clearances(h, units.InFeetInches)
			p.add("clear %s = %s", text, or(func(c mantel.Clearances) string { return clearances(m, c) })(c, failed))
			for _, k := range []mantel.Hook{{Rating: 5 * units.Pound}, {Rating: 8 * units.Ounce, Factor: 12}} {
				l, failed := run.Loads(12*units.Ounce, k, units.InFeetInches)
				p.add("loads of 12 oz a foot on hooks of %s by %d, %s = %s", ng(k.Rating), k.Factor, text, or(loads)(l, firstError(err, failed)))
			}
		}
	}
	for _, k := range []mantel.Hook{{Rating: 5 * units.Pound}, {Rating: units.Ounce}, {Rating: 1000 * units.Pound, Factor: 20}, {Rating: 3 * units.Pound, Factor: 7}} {
		for _, w := range []units.Mass{units.Gram, units.Pound / 2, 12 * units.Ounce, 20 * units.Pound} {
			p.add("hook of %s by %d, %s a foot = carries %s, every %s", ng(k.Rating), k.Factor, ng(w), or(ng)(k.WorkingLoad()), or(nm)(spacing(k, w)))
		}
	}
}

// firstError returns the first error that there is.
func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// sagOf returns h with the sag that a garland has on m, if it stays above the hearth.
func sagOf(m mantel.Mantel, h mantel.Hanging, garland units.Length) (mantel.Hanging, error) {
	h.Sag = 0
	run, err := m.Hang(h)
	if err == nil {
		run, err = run.FindSag(garland)
		h.Sag = run.Sag
	}
	if err == nil {
		_, err = m.Hang(h)
	}
	return h, err
}

// spacing returns how far apart such hooks may be.
func spacing(k mantel.Hook, perFoot units.Mass) (units.Length, error) {
	_, apart, err := k.Count(units.Foot, perFoot)
	return apart, err
}

func hooks(r mantel.Run) string {
	texts := make([]string, 0, len(r.Hooks))
	for _, h := range r.Hooks {
		texts = append(texts, fmt.Sprint(int64(h.Along)))
	}
	return strings.Join(texts, " ") + " nm"
}

func path(points []mantel.Point) string {
	texts := make([]string, 0, len(points))
	for _, x := range points {
		texts = append(texts, fmt.Sprintf("%d %d", int64(x.Along), int64(x.Below)))
	}
	return strings.Join(texts, ", ") + " nm"
}

// clearances prints the places, an opening and a hearth to each where the mantel has them.
func clearances(m mantel.Mantel, c mantel.Clearances) string {
	opening, hearth := m.Opening != (mantel.Rectangle{}), m.Height != 0
	texts := []string{}
	if !opening && !hearth {
		return "not measured"
	}
	for i := 0; i < len(c.Places); {
		var near, above units.Length
		if opening {
			near, i = c.Places[i].Measured, i+1
		}
		if hearth {
			above, i = c.Places[i].Measured, i+1
		}
		texts = append(texts, fmt.Sprintf("%d %t %d %t", int64(near), opening, int64(above), hearth))
	}
	s := strings.Join(texts, ", ")
	all := c.Violations
	if c.Fire.Allowed != 0 {
		all = append(all, c.Fire)
	}
	for _, v := range all {
		s += fmt.Sprintf("; %d for %d %t", int64(v.Measured), int64(v.Allowed), v.AtLeast)
	}
	return s
}

// loads prints what a hook carries, and what follows from it: what lies on the shelf, the gaps, the heaviest
// and how many are overloaded.
func loads(l mantel.Loads) string {
	shelf, heaviest, over := l.Weight, 0, 0
	last := len(l.Hooks) - 1
	apart := (l.Hooks[last].At.Along - l.Hooks[0].At.Along) / units.Length(last)
	for i, x := range l.Hooks {
		shelf -= x.Down
		if x.Total > l.Hooks[heaviest].Total {
			heaviest = i
		}
		if x.Total > l.Working {
			over++
		}
	}
	s := fmt.Sprintf("weight %s, shelf %s, every %s, carries %s, heaviest %d, over %d", ng(l.Weight), ng(shelf), nm(apart), ng(l.Working), heaviest+1, over)
	for _, x := range l.Hooks {
		s += fmt.Sprintf("; at %d down %d left %d right %d total %d", int64(x.At.Along), int64(x.Down), int64(x.Left), int64(x.Right), int64(x.Total))
	}
	return s
}

func swags(p *page) {
	for _, span := range []string{"1 in", "1 ft", "32 in", "5 ft", "2 m", "50 ft"} {
		for _, sag := range []string{"0 in", "1 nm", "1/16 in", "1 in", "9 in", "18 in", "1 m", "20 ft"} {
			across := length(span)
			s := mantel.Run{Hooks: []mantel.Point{{}, {Along: across}}, Sag: length(sag)}
			p.add("swag %s sag %s = %s", nm(across), nm(s.Sag), or(feet)(s.Garland()))
			for _, part := range []units.Length{9, 4} {
				p.add("swag %s sag %s at %s = %s below", nm(across), nm(s.Sag), nm(across/part), or(nm)(s.Below(across/part)))
			}
		}
		for _, more := range []string{"0 in", "1 nm", "1/8 in", "1 in", "6 in", "2 ft", "3 m", "100 ft"} {
			s, err := mantel.Run{Hooks: []mantel.Point{{}, {Along: length(span)}}}.FindSag(length(span) + length(more))
			p.add("swag %s of %s = sags %s", nm(length(span)), nm(length(span)+length(more)), or(func(s mantel.Run) string { return feet(s.Sag) })(s, err))
		}
	}
}

// slopes are swags between hooks at two heights: their garland, what they do to their hooks, and the sag that a garland has.
func slopes(p *page) {
	for _, across := range []string{"1 in", "20 in", "5 ft", "50 ft"} {
		for _, rise := range []string{"1 nm", "3 in", "14 in", "-40 in", "50 ft"} {
			for _, sag := range []string{"1 in", "9 in", "6 ft"} {
				r := mantel.Run{Hooks: []mantel.Point{{}, {Along: length(across), Below: -length(rise)}}, Sag: length(sag)}
				text := fmt.Sprintf("slope %s rise %s sag %s", nm(length(across)), nm(length(rise)), nm(r.Sag))
				garland, err := r.Garland()
				p.add("%s = %s", text, or(nm)(garland, err))
				l, err := r.Loads(12*units.Ounce, mantel.Hook{Rating: units.Pound}, units.InFeetInches)
				p.add("%s loads = %s", text, or(func(l mantel.Loads) string {
					return fmt.Sprintf("%d and %d down, %d level", int64(l.Hooks[0].Down), int64(l.Hooks[1].Down), int64(l.Hooks[0].Right))
				})(l, err))
				back, err := r.FindSag(garland + units.Inch)
				p.add("%s and an inch more = %s", text, or(func(r mantel.Run) string { return nm(r.Sag) })(back, err))
			}
		}
	}
}
