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
	of     string // what to draw
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
			return question{}, &pictureError{"of is " + strconv.Quote(clip(list[0])) + ": want " + strings.Join(of, ", ") + ", once"}
		default:
			return question{}, &pictureError{"the query has a " + strconv.Quote(clip(name)) + " that is not known here, or has it twice"}
		}
	}
	return q, nil
}

// pictures are what there is to draw.
var pictures = []string{"tree", "client", "surface", "mantel"}

// picture draws a part of the plan for the job in body.
func picture(query string, body []byte) Reply {
	q, err := ask(query, pictures...)
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
		return shelf(p.Mantels[q.number-1], colors).Front()
	}
	if q.number > len(p.Trees) {
		return "", missing("tree", q.number, len(p.Trees))
	}
	t, err := dress(p.Trees[q.number-1], colors)
	if err != nil {
		return "", err
	}
	switch q.of {
	case "surface":
		return t.Unrolled()
	case "client":
		return t.Client() // its ground is clear: it stands on white and on dark
	}
	return t.Front()
}

// shelf returns a mantel with what the plan puts on it.
func shelf(m job.MantelPlan, colors palette.Palette) draw.Mantel {
	return draw.Mantel{
		Title:  title(m.Room, "Mantel"),
		Mantel: m.Mantel.Mantel, Spots: m.Spots, Hanging: m.Hanging, Palette: colors,
	}
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
		count += piece.Quantity.Pieces
	}
	if count > maxPlaces {
		return draw.Tree{}, &pictureError{"this tree has " + strconv.Itoa(count) + " pieces: want at most " + strconv.Itoa(maxPlaces) + " to place"}
	}
	look := t.RuleLook
	if t.ByShape {
		look = t.Look
	}
	if kind := shopping.Garland; t.Planned[kind].Length > 0 {
		d.Garland = placement.Winding{Spacing: look.Spacing[kind], Step: units.Inch}
	}
	if kind := shopping.Ribbon; t.Planned[kind].Length > 0 {
		d.Ribbon.Winding = placement.Winding{Spacing: look.Spacing[kind], Step: units.Inch}
	}
	// The lamps are as far apart on the string as its turns are, which is what
	// shares the surface among them.
	if each := look.Each[shopping.Light].In(units.SquareInch); each > 0 && t.Planned[shopping.Light].Pieces > 0 {
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

// The JSON of where each piece goes: the stations of package placement, with
// lengths rounded.
type (
	placesJSON struct {
		Stations []stationJSON `json:"stations"`
		Cautions []string      `json:"cautions"`
	}
	stationJSON struct {
		Number int          `json:"number"`
		Clock  int          `json:"clock"`
		Ladder units.Length `json:"ladder,omitzero"`
		Lift   bool         `json:"lift,omitempty"`
		From   units.Length `json:"from"`
		To     units.Length `json:"to"`
		Steps  []stepJSON   `json:"steps"`
	}
	stepJSON struct {
		Number  int          `json:"number"`
		Type    string       `json:"type"`
		Swatch  string       `json:"swatch,omitempty"`
		Size    units.Length `json:"size,omitzero"`
		Clock   int          `json:"clock"`
		Height  units.Length `json:"height"`
		Left    units.Length `json:"left"`
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
	answer := placesJSON{Stations: []stationJSON{}, Cautions: []string{}}
	var failed error
	round := func(l units.Length) units.Length {
		r, err := units.Round(l, placeStep)
		failed = errors.Join(failed, err)
		return r
	}
	for i, s := range stations {
		station := stationJSON{Number: i + 1, Clock: s.Clock, Ladder: s.Ladder.Size, Lift: s.Ladder.Lift, From: round(s.From), To: round(s.To)}
		for k, at := range s.Places {
			what := at.Item.Type
			if what == "" {
				what = at.Item.Kind.String()
			}
			station.Steps = append(station.Steps, stepJSON{
				Number: s.First + k, Type: what, Swatch: at.Item.Color, Size: at.Item.Size, Clock: at.Azimuth.Clock(),
				Height: round(at.Height), Left: round(at.Left), Degrees: at.Azimuth.Degrees(), Depth: round(at.Depth),
				X: round(at.At.X), Y: round(at.At.Y),
			})
		}
		for _, c := range s.Ladder.Cautions {
			if !slices.Contains(answer.Cautions, c.Text) {
				answer.Cautions = append(answer.Cautions, c.Text)
			}
		}
		answer.Stations = append(answer.Stations, station)
	}
	return answer, failed
}

// crew answers the sheets to hang a tree from, or to dress a mantel, one SVG a page.
func crew(query string, body []byte) Reply {
	paper := draw.Letter
	values, err := url.ParseQuery(query)
	if list, ok := values["paper"]; err == nil && ok {
		switch {
		case slices.Equal(list, []string{"A4"}):
			paper = draw.A4
		case !slices.Equal(list, []string{"letter"}):
			return problemOf(&pictureError{"paper is " + strconv.Quote(clip(strings.Join(list, " "))) + ": want letter or A4, once"}).Reply()
		}
		delete(values, "paper")
		query = values.Encode()
	}
	q, err := ask(query, "tree", "mantel")
	if err != nil {
		return problemOf(err).Reply()
	}
	p, colors, err := makePlan(body)
	if err != nil {
		return problemOf(err).Reply()
	}
	sheets, err := crewSheets(p, colors, q, paper)
	if err != nil {
		return problemOf(err).Reply()
	}
	return reply(struct {
		Sheets []string `json:"sheets"`
	}{append([]string{}, sheets...)})
}

func crewSheets(p job.Plan, colors palette.Palette, q question, paper draw.Paper) ([]string, error) {
	if q.of == "mantel" {
		if q.number > len(p.Mantels) {
			return nil, missing("mantel", q.number, len(p.Mantels))
		}
		m := p.Mantels[q.number-1]
		var needs []shopping.Need
		for _, s := range m.Shares {
			needs = append(needs, s.Need)
		}
		return shelf(m, colors).Crew(paper, needs)
	}
	if q.number > len(p.Trees) {
		return nil, missing("tree", q.number, len(p.Trees))
	}
	t, err := dress(p.Trees[q.number-1], colors)
	if err != nil {
		return nil, err
	}
	return t.Crew(paper)
}
