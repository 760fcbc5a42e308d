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
	{Length: length("64 in"), Height: length("4 ft 6 in"), Depth: length("8 in"), Opening: mantel.Opening{Width: length("36 in"), Height: length("28 in"), Below: length("18 in")}},
	{Length: length("8 ft"), Height: length("5 ft"), Depth: length("6 1/2 in"), Opening: mantel.Opening{Width: length("4 ft"), Height: length("30 in"), Below: length("12 in")}},
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
	{Swags: 2, Sag: length("3 in"), Right: length("2 ft"), Look: mantel.Asymmetrical, Heavy: mantel.Right, Fall: length("20 in")},
	{Swags: 5, Sag: length("1 ft"), Left: length("18 in"), Look: mantel.Asymmetrical, Fall: length("1 ft")},
	{Swags: 4, Left: length("3 ft"), Right: length("3 ft"), Thickness: length("1 ft")},
}

func shelf(m mantel.Mantel) string {
	return fmt.Sprintf("%s high %s deep %s opening %s x %s below %s", nm(m.Length), nm(m.Height), nm(m.Depth), nm(m.Opening.Width), nm(m.Opening.Height), nm(m.Opening.Below))
}

func hanging(h mantel.Hanging) string {
	return fmt.Sprintf("%d swags sag %s left %s right %s style %d heavy %d fall %s thick %s", h.Swags, nm(h.Sag), nm(h.Left), nm(h.Right), h.Look, h.Heavy, nm(h.Fall), nm(h.Thickness))
}

// byRule returns the needs of a shelf whose garland hangs by rule.
func byRule(r mantel.Rules, l units.Length, look mantel.Look) ([]shopping.Need, error) {
	m := mantel.Mantel{Length: l}
	h, _, err := r.Hang(m, mantel.Hanging{Look: look})
	if err != nil {
		return nil, err
	}
	d, err := r.Needs(m, h)
	return d.Needs, err
}

func mantelPage(p *page) {
	styles := []struct {
		word  string
		style mantel.Look
	}{{"even", mantel.Traditional}, {"uneven", mantel.Asymmetrical}}
	r := mantel.CommonPractice()
	for _, s := range styles {
		for _, l := range []string{"11 in", "1 ft", "3 ft", "4 ft 1/4 in", "5 ft", "64 in", "6 ft 3 in", "8 ft", "2.5 m", "20 ft", "50 ft", "51 ft"} {
			p.add("rule %s %s garland = %s", s.word, l, or(feet)(r.BaseGarland(length(l), s.style)))
			p.add("rule %s %s picks = %s", s.word, l, or(whole)(r.Picks(length(l), s.style)))
			p.add("rule %s %s ornaments = %s", s.word, l, or(whole)(r.Ornaments(length(l), s.style)))
			p.add("rule %s %s needs = %s", s.word, l, or(needed)(byRule(r, length(l), s.style)))
			for _, side := range []mantel.Side{mantel.Left, mantel.Right} {
				spots, err := r.Spots(mantel.Mantel{Length: length(l)}, s.style, side)
				p.add("rule %s %s heavy %d spots = %s", s.word, l, side, or(func(spots []mantel.Spot) string {
					texts := make([]string, 0, len(spots))
					for _, x := range spots {
						texts = append(texts, fmt.Sprintf("%d %d", int64(x.Along), x.Layer))
					}
					return strings.Join(texts, ", ")
				})(spots, err))
			}
		}
		p.add("rule %s ribbon = %s, bells %s", s.word, or(feet)(r.Ribbon(s.style)), or(whole)(r.Bells(s.style)))
	}
	swags(p)
	for _, m := range shelves {
		for _, h := range hangings {
			text := "shelf " + shelf(m) + " with " + hanging(h)
			p.add("garland %s = %s", text, or(feet)(m.Garland(h)))
			p.add("hooks %s = %s", text, or(lengths)(m.Hooks(h)))
			for _, g := range []string{"3 ft", "7 ft", "9 ft 3 in", "20 ft"} {
				sag, err := m.FindSag(length(g), h)
				p.add("sag of %s on %s = %s", nm(length(g)), text, or(func(h mantel.Hanging) string { return nm(h.Sag) })(sag, err))
				for _, s := range styles {
					drops, err := m.FindDrops(length(g), s.style, h)
					p.add("drops of %s, %s, on %s = %s", nm(length(g)), s.word, text, or(func(h mantel.Hanging) string { return nm(h.Left) + " and " + nm(h.Right) })(drops, err))
				}
			}
			for _, x := range []units.Length{0, m.Length / 7, m.Length / 2, m.Length} {
				p.add("below %s at %s = %s", text, nm(x), or(nm)(m.Below(h, x)))
			}
			p.add("path of %s = %s", text, or(path)(m.AppendPath(nil, h, 8)))
			c, err := m.Clearances(h)
			p.add("clear %s = %s", text, or(clearances)(c, err))
			for _, k := range []mantel.Hook{{Rating: 5 * units.Pound}, {Rating: 8 * units.Ounce, Factor: 12}} {
				l, err := m.Loads(h, 12*units.Ounce, k)
				p.add("loads of 12 oz a foot on hooks of %s by %d, %s = %s", ng(k.Rating), k.Factor, text, or(loads)(l, err))
			}
		}
	}
	for _, k := range []mantel.Hook{{Rating: 5 * units.Pound}, {Rating: units.Ounce}, {Rating: 1000 * units.Pound, Factor: 20}, {Rating: 3 * units.Pound, Factor: 7}} {
		for _, w := range []units.Mass{units.Gram, units.Pound / 2, 12 * units.Ounce, 20 * units.Pound} {
			p.add("hook of %s by %d, %s a foot = carries %s, every %s", ng(k.Rating), k.Factor, ng(w), or(ng)(k.WorkingLoad()), or(nm)(k.Spacing(w)))
		}
	}
}

func lengths(all []units.Length) string {
	texts := make([]string, 0, len(all))
	for _, l := range all {
		texts = append(texts, fmt.Sprint(int64(l)))
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

func clearances(c mantel.Clearances) string {
	texts := make([]string, 0, len(c.Places))
	for _, x := range c.Places {
		texts = append(texts, fmt.Sprintf("%d %t %d %t", int64(x.FromOpening), x.HasOpening, int64(x.AboveHearth), x.HasHearth))
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

func loads(l mantel.Loads) string {
	s := fmt.Sprintf("weight %s, shelf %s, every %s, carries %s, heaviest %d, over %d", ng(l.Weight), ng(l.Shelf), nm(l.Spacing), ng(l.Working), l.Heaviest+1, l.Overloaded)
	for _, x := range l.Hooks {
		s += fmt.Sprintf("; at %d down %d left %d right %d total %d", int64(x.Along), int64(x.Down), int64(x.Left), int64(x.Right), int64(x.Total))
	}
	return s
}

func swags(p *page) {
	for _, span := range []string{"1 in", "1 ft", "32 in", "5 ft", "2 m", "50 ft"} {
		for _, sag := range []string{"0 in", "1 nm", "1/16 in", "1 in", "9 in", "18 in", "1 m", "20 ft"} {
			s := mantel.Swag{Span: length(span), Sag: length(sag)}
			p.add("swag %s sag %s = %s", nm(s.Span), nm(s.Sag), or(feet)(s.Length()))
			for _, part := range []units.Length{9, 4} {
				p.add("swag %s sag %s at %s = %s below", nm(s.Span), nm(s.Sag), nm(s.Span/part), or(nm)(s.Below(s.Span/part)))
			}
		}
		for _, more := range []string{"0 in", "1 nm", "1/8 in", "1 in", "6 in", "2 ft", "3 m", "100 ft"} {
			s, err := mantel.Swag{Span: length(span)}.FindSag(length(span) + length(more))
			p.add("swag %s of %s = sags %s", nm(length(span)), nm(length(span)+length(more)), or(func(s mantel.Swag) string { return feet(s.Sag) })(s, err))
		}
	}
}
