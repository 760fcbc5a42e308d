package sheet

import (
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/palette"
	"example.com/fircone/units"
)

// subjects are what cautions are about, by their codes, in the order of the sheet; those of other
// codes come last.
var subjects = []struct {
	name  string
	codes []string
}{
	{"Tree", []string{"cut", "exits", "label", "own height", "heat", "trunk", "water", "metal", "prelit", "overfull", "tie", "marshal", "clear", "ladder", "lift", "deep", "floor", "load", "overload", "other strings", "days", "off"}},
	{"Mantel", []string{
		"take down before a fire", "not trim", "local code", "candles", "dry greens", "screen", "mirror", "covered", "no hooks planned", "hook label", "hook heat",
		"hooks side by side", "weigh yours", "lifted", "half hung", "half hung overload", "berries", "reach", "cords", "not measured", "height not given",
		"depth not given", "thickness not given", "stocking thickness not given", "opening not given", "low shelf left", "low shelf right", "wall left", "wall right", "above",
		"stairs", "door",
	}},
}

// sizesUnsaid is the code of the caution that offers do not state the sizes of ornaments.
const sizesUnsaid = "sizes not stated"

// overloads are the codes of the cautions of hooks that may not carry what hangs on them.
var overloads = []string{"hook overload", "stocking overload"}

// cautions writes what to mind, by subject.
func (s *sheet) cautions() {
	if len(s.plan.Cautions) == 0 {
		return
	}
	s.heading("Take care")
	var order, last []string
	texts := map[string][]string{}
	seen := map[string]bool{} // the codes that are told, or texts of one room
	for _, c := range s.plan.Cautions {
		if seen[c.Code] || slices.Contains(workCodes, c.Code) || slices.Contains(overloads, c.Code) || c.Code == sizesUnsaid {
			continue // those of the work are on its own sheets, an overload is on the page of its room, and sizes are in the heading of the list
		}
		var text string
		switch {
		case c.Room == "":
			seen[c.Code] = true
			text = s.alike(c)
		case seen[c.Text]:
			continue
		default:
			seen[c.Text] = true
			text = strings.ToUpper(c.Text[:1]) + c.Text[1:] + s.rooms(c) + "."
		}
		switch {
		case c.Code == "ladder":
			text = "Ladder: " + c.Text + "."
		case c.Code == "floor" && s.cautioned("ladder"):
			text = "Do not stand on chairs."
		}
		if s.why && c.Source != "" {
			text = strings.TrimSuffix(text, ".") + " (" + c.Source + ")."
		}
		texts[c.Code] = append(texts[c.Code], text)
		order = append(order, c.Code)
	}
	for _, subject := range subjects {
		var list []string
		for _, code := range subject.codes {
			list = append(list, texts[code]...)
			delete(texts, code)
		}
		if subject.name == "Tree" && len(s.plan.Trees) == 0 {
			subject.name = "Lights"
		}
		if len(list) > 0 {
			s.line(subject.name+": "+strings.Join(list, " "), -1, "")
		}
	}
	for _, code := range order {
		last = append(last, texts[code]...)
		delete(texts, code)
	}
	if len(last) > 0 {
		s.line("Also: "+strings.Join(last, " "), -1, "")
	}
}

// rooms lists the rooms of cautions that say the same, " (tea room, parlor)", where there is more than one room.
func (s *sheet) rooms(caution units.Caution) string {
	if len(s.plan.Trees)+len(s.plan.Mantels) == 1 {
		return ""
	}
	var rooms []string
	for _, c := range s.plan.Cautions {
		if c.Code == caution.Code && c.Text == caution.Text {
			rooms = append(rooms, c.Room)
		}
	}
	return " (" + strings.Join(rooms, ", ") + ")"
}

// cautioned reports whether there is a caution of that code.
func (s *sheet) cautioned(code string) bool {
	return slices.ContainsFunc(s.plan.Cautions, func(c units.Caution) bool { return c.Code == code })
}

// alike returns the sentence of a caution, with the figures of all that have its code: "keep it 9 ft or
// 4 ft 6 in away".
func (s *sheet) alike(c units.Caution) string {
	words := strings.Fields(c.Text)
	var others [][]string
	head, tail := len(words), len(words)
	for _, o := range s.plan.Cautions {
		if o.Code != c.Code || o.Text == c.Text {
			continue // a code has one sentence, but for its figures
		}
		other := strings.Fields(o.Text)
		same := 0
		for same < min(len(words), len(other)) && words[same] == other[same] {
			same++
		}
		head, same = min(head, same), 0
		for same < min(len(words), len(other)) && words[len(words)-1-same] == other[len(other)-1-same] {
			same++
		}
		tail = min(tail, same)
		others = append(others, other)
	}
	text := c.Text
	if others != nil {
		if len(words)-head-tail > 1 && tail > 0 && !strings.HasSuffix(words[len(words)-tail-1], ",") {
			tail-- // the unit belongs to the figure
		}
		middle := func(w []string) string { return strings.Join(w[min(head, len(w)-tail):len(w)-tail], " ") }
		variants := []string{strings.TrimSuffix(middle(words), ",")}
		comma := strings.TrimPrefix(middle(words), variants[0])
		for _, o := range others {
			if v := strings.TrimSuffix(middle(o), ","); v != "" && !slices.Contains(variants, v) {
				variants = append(variants, v)
			}
		}
		text = strings.Join(slices.Concat(words[:head], []string{strings.Join(variants, " or ") + comma}, words[len(words)-tail:]), " ")
	}
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

// colors says which colors are taken for one by some, and what parts them.
func (s *sheet) colors(r palette.Reading) {
	var names []string
	for _, swatch := range r.Palette {
		name := swatch.Name
		if swatch.Finish != 0 {
			name += " (" + swatch.Finish.String() + ")"
		}
		names = append(names, name)
	}
	s.heading("Colors: " + strings.Join(names, ", "))
	if s.why {
		s.b.WriteString(r.String() + "\n")
		s.line("Differences as they are seen by most, and by people with red-green (protan, deutan) or blue-yellow (tritan) color blindness: under "+strconv.FormatFloat(r.Apart, 'g', -1, 64)+" two look alike.", -1, "")
		return
	}
	apart := true
	for _, p := range r.Pairs {
		var who []string
		for v := palette.Daylight; v <= palette.WarmTritan; v++ {
			if text := viewer(v); p.Difference[v] < r.Apart && !slices.Contains(who, text) {
				who = append(who, text)
			}
		}
		if len(who) == 0 {
			continue
		}
		apart = false
		if slices.Contains(who, "everybody") {
			who = []string{"everybody"}
		}
		text := "look alike to " + strings.Join(who, " and ")
		if p.Mend != (palette.Swatch{}) {
			was := p.A
			if p.Mend.Name == p.B.Name {
				was = p.B
			}
			shade := "darker "
			if light(p.Mend.Color) > light(was.Color) {
				shade = "lighter "
			}
			text += "; a " + shade + p.Mend.Name + " (" + p.Mend.Color.String() + ") parts them"
		}
		s.line(p.A.Name+" and "+p.B.Name, 0, text)
	}
	switch {
	case apart && len(names) == 1:
		s.line("it", 0, "holds apart for everybody")
	case apart:
		s.line("they", 0, "hold apart for everybody")
	}
}

// light returns how light a color is, to tell a lighter one from a darker one: its channels weighed as the eye does, about.
func light(c palette.Color) int { return 2*int(c[0]) + 5*int(c[1]) + int(c[2]) }

// viewer says who looks in a view, as anybody would.
func viewer(v palette.View) string {
	switch name := v.String(); {
	case strings.HasSuffix(name, "protan"), strings.HasSuffix(name, "deutan"):
		return "people with red-green color blindness"
	case strings.HasSuffix(name, "tritan"):
		return "people with blue-yellow color blindness"
	case v >= palette.WarmLight:
		return "everybody by warm light"
	}
	return "everybody"
}
