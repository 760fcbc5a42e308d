package api

import (
	"errors"
	"math"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/examples/drawing/draw"
	"example.com/fircone/palette"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A pictureError says why there is no such picture.
type pictureError struct{ detail string }

func (e *pictureError) Error() string { return e.detail }

// A question is what the query of a target asks for.
type question struct {
	of     string // tree, surface or mantel
	number int    // which of them, from 1
}

// ask reads a query. Without of it is about a tree, without number about the first.
func ask(query string, of ...string) (question, error) {
	values, err := url.ParseQuery(query)
	if err != nil {
		return question{}, &pictureError{"the query cannot be read"}
	}
	q := question{of: "tree", number: 1}
	for name, list := range values {
		switch {
		case len(list) == 1 && name == "of" && slices.Contains(of, list[0]):
			q.of = list[0]
		case len(list) == 1 && name == "number":
			if q.number, err = strconv.Atoi(list[0]); err != nil || q.number < 1 {
				return question{}, &pictureError{"number is " + strconv.Quote(clip(list[0])) + ": want 1, 2, ..."}
			}
		case name == "of" && len(of) > 0:
			return question{}, &pictureError{"of is " + strconv.Quote(clip(list[0])) + ": want tree, surface or mantel, once"}
		default:
			return question{}, &pictureError{"the query has a " + strconv.Quote(clip(name)) + " that is not known here, or has it twice"}
		}
	}
	return q, nil
}

// picture draws a part of the plan for the job in body.
func picture(query string, body []byte) Reply {
	q, err := ask(query, "tree", "surface", "mantel")
	if err != nil {
		return problemOf(err).Reply()
	}
	p, colors, err := makePlan(body)
	if err != nil {
		return problemOf(err).Reply()
	}
	svg, err := drawing(p, colors, q)
	if err != nil {
		return problemOf(err).Reply()
	}
	return Reply{Status: 200, Type: "image/svg+xml", Body: []byte(svg)}
}

func drawing(p job.Plan, colors palette.Palette, q question) (string, error) {
	if q.of == "mantel" {
		if q.number > len(p.Mantels) {
			return "", missing("mantel", q.number, len(p.Mantels))
		}
		m := p.Mantels[q.number-1]
		return draw.Mantel{
			Title:  title(m.Room, "Mantel"),
			Mantel: m.Mantel.Mantel, Spots: m.Spots, Look: m.Hanging.Look, Hanging: m.Hanging, Palette: colors,
		}.Front()
	}
	if q.number > len(p.Trees) {
		return "", missing("tree", q.number, len(p.Trees))
	}
	t, err := dress(p.Trees[q.number-1], colors)
	if err != nil {
		return "", err
	}
	if q.of == "surface" {
		return t.Unrolled()
	}
	return t.Front()
}

func missing(what string, number, there int) error {
	return &pictureError{what + " " + strconv.Itoa(number) + ": the job has " + strconv.Itoa(there)}
}

// title returns a name or, if there is none, what to say otherwise.
func title(name, otherwise string) string {
	if name == "" {
		return otherwise
	}
	return name
}

// dress returns a tree with all that the plan puts on it.
func dress(t job.TreePlan, colors palette.Palette) (draw.Tree, error) {
	d := draw.Tree{
		Title:   title(t.Room, "Tree"),
		Layout:  placement.Layout{Tree: t.Tree.Tree},
		Palette: colors,
		Pieces:  t.Pieces,
	}
	count := 0
	for _, piece := range d.Pieces {
		count += piece.Count
	}
	if count > maxPlaces {
		return draw.Tree{}, &pictureError{"this tree has " + strconv.Itoa(count) + " pieces: want at most " + strconv.Itoa(maxPlaces) + " to place"}
	}
	for _, kind := range []shopping.Kind{shopping.Garland, shopping.Ribbon} {
		if t.Planned[kind].Length > 0 {
			d.Garland = placement.Winding{Spacing: t.Look.Spacing[kind], Step: units.Inch}
		}
	}
	// The lamps are as far apart on the string as its turns are, which is what
	// shares the surface among them.
	if each := t.Look.Each[shopping.Light].In(units.SquareInch); each > 0 && t.Planned[shopping.Light].Pieces > 0 {
		apart := units.Length(math.Round(math.Sqrt(each) * float64(units.Inch)))
		d.Lights = placement.Winding{Spacing: max(apart, units.Inch/4), Step: max(apart, units.Inch/4)}
	}
	return d, nil
}

// clip returns text cut to what an answer may carry.
func clip(text string) string {
	const most = 120
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "…"
}

// The JSON of where each piece goes.
type (
	placesJSON struct {
		Sections []sectionJSON `json:"sections"`
		Cautions []string      `json:"cautions"`
	}
	sectionJSON struct {
		Level  int          `json:"level"`
		From   units.Length `json:"from"`
		To     units.Length `json:"to"`
		Clock  int          `json:"clock"`
		Climb  bool         `json:"climb"`
		Places []placeJSON  `json:"places"`
	}
	placeJSON struct {
		Number  int          `json:"number"`
		Type    string       `json:"type"`
		Swatch  string       `json:"swatch,omitempty"`
		Size    units.Length `json:"size,omitzero"`
		Height  units.Length `json:"height"`
		Degrees float64      `json:"degrees"`
		Depth   units.Length `json:"depth"`
		X       units.Length `json:"x"`
		Y       units.Length `json:"y"`
	}
)

// placeStep is what places are rounded to: nobody hangs a ball to the nanometer.
const placeStep = units.Inch / 8

// places answers where each piece of a tree goes, in hanging order.
func places(query string, body []byte) Reply {
	q, err := ask(query)
	if err != nil {
		return problemOf(err).Reply()
	}
	p, colors, err := makePlan(body)
	if err != nil {
		return problemOf(err).Reply()
	}
	if q.number > len(p.Trees) {
		return problemOf(missing("tree", q.number, len(p.Trees))).Reply()
	}
	answer, err := hanging(p.Trees[q.number-1], colors)
	if err != nil {
		return problemOf(err).Reply()
	}
	return reply(answer)
}

func hanging(t job.TreePlan, colors palette.Palette) (placesJSON, error) {
	d, err := dress(t, colors)
	if err != nil {
		return placesJSON{}, err
	}
	all, err := d.Layout.Places(d.Pieces)
	if err != nil {
		return placesJSON{}, err
	}
	stations, err := placement.Order{}.Stations(all)
	if err != nil {
		return placesJSON{}, err
	}
	answer := placesJSON{Sections: []sectionJSON{}, Cautions: []string{}}
	number := 0
	var failed error
	round := func(l units.Length) units.Length {
		r, err := units.Round(l, placeStep)
		failed = errors.Join(failed, err)
		return r
	}
	for _, s := range stations {
		section := sectionJSON{Level: s.Number, From: s.From, To: s.To, Clock: s.Clock, Climb: s.Ladder > 0 || s.Lift}
		for _, at := range s.Steps {
			number++
			what := at.Item.Type
			if what == "" {
				what = at.Item.Kind.String()
			}
			section.Places = append(section.Places, placeJSON{
				Number: number, Type: what, Swatch: at.Item.Color, Size: at.Item.Size,
				Height: round(at.Height), Degrees: at.Azimuth.Degrees(), Depth: round(at.Depth),
				X: round(at.At.X), Y: round(at.At.Y),
			})
		}
		if section.Climb && len(answer.Cautions) == 0 {
			answer.Cautions = append(answer.Cautions, placement.LadderCaution)
		}
		answer.Sections = append(answer.Sections, section)
	}
	return answer, failed
}
