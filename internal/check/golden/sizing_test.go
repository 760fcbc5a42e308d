package golden

import (
	"fmt"
	"math"
	"strings"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// heights are those of the trees.
var heights = []string{
	"1 ft", "2 ft", "25 in", "3 ft", "4 ft 6 in", "5 ft", "5 ft 11 in", "6 ft", "6 ft 6 in", "7 ft", "7 ft 6 in", "2.3 m", "8 ft", "9 ft", "10 ft",
	"12 ft", "15 ft", "20 ft 1/64 in", "32 ft", "50 ft", "99 ft 11 in", "100 ft",
}

// tapers and exposures are the classes of shape, and how much of the way round is dressed.
var (
	tapers = []struct {
		word  string
		taper sizing.Taper
	}{{"full", sizing.Full}, {"slim", sizing.Slim}, {"pencil", sizing.Pencil}}

	exposures = []struct {
		word     string
		exposure sizing.Exposure
	}{{"all round", sizing.AllRound}, {"wall", sizing.AgainstWall}, {"corner", sizing.InCorner}, {"half", sizing.HalfTree}, {"200 degrees", arc(200)}, {"37.5 degrees", arc(37.5)}}
)

func arc(degrees float64) sizing.Exposure { return sizing.Exposure(degrees * 1000) }

// measured are trees with every measure taken.
var measured = []sizing.Tree{
	{Height: length("9 ft"), Base: length("5 ft 10 in"), BareTip: length("10 in")},
	{Height: length("7 ft 6 in"), Base: length("4 ft"), Handle: length("9 in"), Exposure: sizing.InCorner},
	{Height: length("4 ft 6 in"), Base: length("38 in"), BareTip: length("3 in"), Handle: length("4 1/2 in"), Exposure: sizing.AgainstWall},
	{Height: length("12 ft"), Taper: sizing.Slim, Handle: length("1 ft"), BareTip: length("1 ft 2 in")},
	{Height: length("2.3 m"), Base: length("140 cm"), Handle: length("20 cm"), Exposure: sizing.HalfTree},
}

// trees are the trees of the table: every height with a taper and an exposure, every taper and exposure on a
// few heights, and the measured ones.
func trees() []sizing.Tree {
	var all []sizing.Tree
	for i, h := range heights {
		all = append(all, sizing.Tree{Height: length(h)}, sizing.Tree{Height: length(h), Taper: tapers[1+i%2].taper, Exposure: exposures[1+i%5].exposure})
	}
	for _, h := range []string{"7 ft", "9 ft"} {
		for _, t := range tapers {
			for _, e := range exposures {
				all = append(all, sizing.Tree{Height: length(h), Taper: t.taper, Exposure: e.exposure})
			}
		}
	}
	return append(all, measured...)
}

// said writes a tree: its height and base in nanometers, its taper if it has no base, the rest.
func said(t sizing.Tree) string {
	s := "height " + nm(t.Height)
	if t.Base != 0 {
		s += " base " + nm(t.Base)
	} else {
		s += " " + tapers[t.Taper].word
	}
	for _, e := range exposures {
		if e.exposure == t.Exposure {
			s += " " + e.word
		}
	}
	if t.BareTip != 0 {
		s += " tip " + nm(t.BareTip)
	}
	if t.Handle != 0 {
		s += " handle " + nm(t.Handle)
	}
	return s
}

func amounts(a shopping.ByKind[shopping.Quantity]) string {
	return fmt.Sprintf("ornaments %d, garland %s, ribbon %s, picks %d, lights %d",
		a[shopping.Ornament].Pieces, nm(a[shopping.Garland].Length), nm(a[shopping.Ribbon].Length), a[shopping.Pick].Pieces, a[shopping.Light].Pieces)
}

func look(l sizing.Look) string {
	return fmt.Sprintf("garland every %s, ribbon every %s, cover %s, surface to a pick %s, a light %s",
		nm(l.Spacing[shopping.Garland]), nm(l.Spacing[shopping.Ribbon]), num(l.Cover), um2(l.Each[shopping.Pick]), um2(l.Each[shopping.Light]))
}

// supplied writes a supply: a length, or pieces.
func supplied(q shopping.Quantity) string {
	if q.Length != 0 {
		return feet(q.Length)
	}
	return whole(q.Pieces)
}

func fromTo(b units.Range[int]) string            { return fmt.Sprintf("%d to %d", b.Min, b.Max) }
func reaching(s units.Range[units.Length]) string { return nm(s.Min) + " to " + nm(s.Max) }

func sizingPage(p *page) {
	house := sizing.Rules{TypesPerFoot: 2, EachSpread: 1, PerFoot: shopping.ByKind[shopping.Quantity]{
		shopping.Pick: {Pieces: 5}, shopping.Garland: {Length: length("7 ft 6 in")}, shopping.Ribbon: {Length: length("2 m")}, shopping.Light: {Pieces: 150},
	}}
	for _, r := range []struct {
		word  string
		rules sizing.Rules
	}{{"usual", sizing.CommonPractice()}, {"house", house}} {
		for _, h := range append([]string{"11 in", "101 ft"}, heights...) {
			l := length(h)
			types, err := r.rules.Types(l)
			each, err2 := r.rules.Each(l)
			p.add("rule %s %s types = %s", r.word, h, or(whole)(types, err))
			p.add("rule %s %s each = %s", r.word, h, or(fromTo)(each, err2))
			p.add("rule %s %s ornaments = %s", r.word, h, or(fromTo)(units.Range[int]{Min: types * each.Min, Max: types * each.Max}, err))
			for _, kind := range []shopping.Kind{shopping.Pick, shopping.Garland, shopping.Ribbon, shopping.Light} {
				q, err := r.rules.Supply(kind, l)
				p.add("rule %s %s %v = %s", r.word, h, kind, or(supplied)(q, err))
			}
		}
	}
	for _, h := range heights {
		l := length(h)
		for _, t := range tapers {
			m, err := sizing.Tree{Height: l, Taper: t.taper}.Measured()
			p.add("base %s %s = %s", h, t.word, or(feet)(m.Base, err))
		}
		p.add("topper %s = %s", h, or(reaching)(sizing.Topper(l)))
		for _, n := range []int{0, 1, 25, 49, 81, 1000} {
			for public, setting := range []string{"home", "public"} {
				m, err := sizing.CommonPractice().Mix(sizing.Tree{Height: l, Public: public == 1}, n)
				p.add("sizes %s %s of %d = %s", setting, h, n, or(func(m []shopping.Lot) string {
					text := ""
					for _, s := range m {
						text += fmt.Sprintf("%d of %s, ", s.Quantity.Pieces, nm(s.Item.Size))
					}
					return text + "cover " + or(num)(sizing.Cover(m, 50*units.SquareFoot))
				})(m, err))
			}
		}
	}
	for _, e := range exposures {
		p.add("exposure %s = %s degrees, %q", e.word, or(num)(e.exposure.Degrees()), e.exposure)
	}
	rooms(p)
	cones(p)
	for i, t := range trees() {
		p.add("surface of %s = %s", said(t), or(um2)(t.DressedArea()))
		p.add("skirt of %s = %s", said(t), or(reaching)(t.Skirt()))
		c, err := sizing.CommonPractice().Compare(sizing.CommonLook(), t)
		own, err2 := house.Compare(sizing.Look{}, t)
		p.add("by rule %s = %s", said(t), or(amounts)(c.Rule, err))
		p.add("by rule, house %s = %s", said(t), or(amounts)(own.Rule, err2))
		p.add("to match %s = %s", said(t), or(amounts)(c.Shape, err))
		p.add("look of %s = %s", said(t), or(look)(c.RuleLook, err))
		for _, g := range []string{"10 ft", "25 ft", "63 ft", "81 ft", "150 ft"} {
			p.add("spacing of %s on %s = %s", nm(length(g)), said(t), or(feet)(t.Spacing(length(g))))
		}
		accent := [][]shopping.Kind{{shopping.Garland}, {shopping.Pick}, {shopping.Ribbon}, {shopping.Garland, shopping.Pick}}[i%4]
		p.add("needs by rule, accent %d, %s = %s", i%4, said(t), or(needed)(compared(t, false).Needs(units.InFeetInches, accent...)))
		p.add("needs to match, accent %d, %s = %s", i%4, said(t), or(needed)(compared(t, true).Needs(units.InFeetInches, accent...)))
	}
	p.add("usual look = %s", look(sizing.CommonLook()))
}

func compared(t sizing.Tree, byShape bool) sizing.Comparison {
	c, err := sizing.CommonPractice().Compare(sizing.CommonLook(), t)
	if err != nil {
		panic(err)
	}
	c.ByShape = byShape
	return c
}

// needed writes the amounts of needs, in their order.
func needed(needs []shopping.Need) string {
	texts := make([]string, 0, len(needs))
	for _, n := range needs {
		texts = append(texts, held(n.Quantity))
	}
	return strings.Join(texts, ", ")
}

// held writes a quantity: pieces, a length, or so many whole pieces of a length.
func held(q shopping.Quantity) string {
	switch {
	case q.Length == 0:
		return whole(q.Pieces)
	case q.Pieces == 0:
		return nm(q.Length)
	}
	return whole(q.Pieces) + " of " + nm(q.Length)
}

func cones(p *page) {
	shapes := []sizing.Tree{
		{Height: length("7 ft"), Base: length("4 ft 6 in")},
		{Height: length("9 ft"), Base: length("5 ft 10 in"), BareTip: length("10 in")},
		{Height: length("7 ft 6 in"), Base: length("3 ft 5 in"), BareBase: length("9 in")},
		{Height: length("4 ft 6 in"), Base: length("1 ft 4 in"), BareTip: length("3 in"), BareBase: length("2 in")},
		{Height: length("12 ft"), Base: length("8 ft"), BareTip: length("6 ft")},
		{Height: length("100 ft"), Base: length("150 ft")},
		{Height: length("1 ft"), Base: length("1 1/2 in")},
		{Height: length("6 ft"), Base: length("9 in")},
		{Height: length("15 ft"), Base: length("9 ft 9 in"), BareTip: length("13 ft"), BareBase: length("1 ft 11 in")},
	}
	for _, c := range shapes {
		text := fmt.Sprintf("height %s base %s tip %s foot %s", nm(c.Height), nm(c.Base), nm(c.BareTip), nm(c.BareBase))
		p.add("cone %s slant = %s", text, or(feet)(c.Slant()))
		p.add("cone %s surface = %s", text, or(um2)(c.DressedArea()))
		p.add("cone %s grade = %s", text, or(func(g string) string { return g })(c.Grade()))
		for _, s := range []string{"1/4 in", "1 in", "2 1/2 in", "4 in", "6 in", "8 in", "10 in", "25 cm", "1 ft", "18 in", "3 ft", "100 ft"} {
			p.add("cone %s every %s spiral = %s", text, nm(length(s)), or(feet)(c.SpiralLength(length(s))))
		}
		for _, g := range []string{"1 ft", "10 ft", "25 ft", "50 ft", "63 ft", "100 ft", "81.5 m", "1000 ft"} {
			p.add("cone %s garland %s spacing = %s", text, nm(length(g)), or(feet)(c.Spacing(length(g))))
		}
	}
	for _, span := range []string{"1 in", "6 in", "1 ft", "18 in", "10 ft"} {
		for _, sag := range []string{"0 in", "1 nm", "1/8 in", "1 in", "6 in", "1 ft"} {
			d := sizing.Drape{Span: length(span), Sag: length(sag)}
			stretch, err := d.Stretch()
			p.add("drape %s sag %s = %s, a run of %s takes %s", nm(d.Span), nm(d.Sag), or(num)(stretch, err), nm(length("63 ft")), or(feet)(units.Length(math.Round(stretch*float64(length("63 ft")))), err))
		}
	}
}

func rooms(p *page) {
	for _, r := range []sizing.Room{
		{Ceiling: length("8 ft")},
		{Ceiling: length("9 ft"), Topper: length("10 in")},
		{Ceiling: length("14 ft"), Topper: length("1 ft"), Stand: length("4 in")},
		{Ceiling: length("10 ft 1 in"), Clearance: length("6 in"), Topper: length("1 ft 3 in")},
		{Ceiling: length("2.6 m"), Clearance: length("10 cm"), Stand: length("15 cm")},
		{Ceiling: length("40 ft"), Topper: length("3 ft")},
	} {
		text := fmt.Sprintf("ceiling %s clear %s topper %s stand %s", nm(r.Ceiling), nm(r.Clearance), nm(r.Topper), nm(r.Stand))
		for _, h := range heights {
			t := sizing.Tree{Height: length(h)}
			f, err := r.Fit(t)
			p.add("room %s tree %s = %s", text, nm(t.Height), or(func(f sizing.Fit) string {
				return fmt.Sprintf("%s, tallest %s, spare %s", f.Verdict, nm(f.Tallest), nm(f.Spare))
			})(f, err))
			l, err := r.Ladder(t)
			p.add("ladder %s tree %s = %s", text, nm(t.Height), or(func(l sizing.Ladder) string {
				return fmt.Sprintf("size %s, lift %t, in %s", nm(l.Size), l.Lift, nm(l.In))
			})(l, err))
		}
	}
}
