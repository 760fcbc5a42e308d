package main

import (
	"encoding/csv"
	"encoding/json"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/fircone/sizing"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A chart is a row for each height.
type chart struct {
	Rows   []row        `json:"trees"`
	Strand units.Length `json:"strand,omitzero"` // of how long a strand the rows count, if any
}

// A row is what one height takes, under the names that examples/plan uses.
type row struct {
	Height           units.Length `json:"height"`
	OrnamentTypes    int          `json:"ornamentTypes"`
	OrnamentsPerType band         `json:"ornamentsPerType"`
	Ornaments        band         `json:"ornaments"`
	Picks            int          `json:"picks"`
	Garland          units.Length `json:"garland"`
	Strands          int          `json:"strands,omitzero"`
	Lights           int          `json:"lights"`
}

// A band is a range with names for JSON.
type band struct {
	Min int `json:"min"`
	Max int `json:"max"`
}

func (b band) String() string { return units.Range[int](b).String() }

// makeRows asks the library what each height takes.
func makeRows(heights []units.Length, strand units.Length) ([]row, error) {
	rules := sizing.CommonPractice()
	rows := make([]row, 0, len(heights))
	for _, height := range heights {
		r := row{Height: height}
		var err error
		if r.OrnamentTypes, err = rules.Types(height); err != nil {
			return nil, err
		}
		each, err := rules.Each(height)
		if err != nil {
			return nil, err
		}
		r.OrnamentsPerType, r.Ornaments = band(each), band{r.OrnamentTypes * each.Min, r.OrnamentTypes * each.Max}
		picks, err := rules.Supply(shopping.Pick, height)
		if err != nil {
			return nil, err
		}
		garland, err := rules.Supply(shopping.Garland, height)
		if err != nil {
			return nil, err
		}
		lights, err := rules.Supply(shopping.Light, height)
		if err != nil {
			return nil, err
		}
		r.Picks, r.Garland, r.Lights = picks.Pieces, garland.Length, lights.Pieces
		if strand > 0 {
			r.Strands = int((r.Garland + strand - 1) / strand)
		}
		rows = append(rows, r)
	}
	return rows, nil
}

// A format is a flag: how the chart is written.
type format string

const (
	text     format = "text"
	markdown format = "markdown"
	csvText  format = "csv"
	jsonText format = "json"
	onePage  format = "page"
)

func (f *format) String() string { return string(*f) }

func (f *format) Set(s string) error {
	switch v := format(strings.ToLower(s)); v {
	case text, markdown, csvText, jsonText, onePage:
		*f = v
		return nil
	}
	return refuse("format", s, "text, markdown, csv, json or page")
}

// write writes the chart in the format.
func (f format) write(w io.Writer, c chart) error {
	switch f {
	case markdown:
		return c.markdown(w)
	case csvText:
		return c.csv(w)
	case onePage:
		return page(w)
	case jsonText:
		enc := json.NewEncoder(w)
		enc.SetIndent("", "  ")
		return enc.Encode(c)
	default:
		return c.text(w)
	}
}

// table returns the chart as cells of text, the headings first.
func (c chart) table() [][]string {
	head := []string{"tree", "ornament types", "of each", "ornaments", "picks", "or garland"}
	if c.Strand > 0 {
		head = append(head, c.Strand.String()+" strands")
	}
	table := [][]string{append(head, "lights")}
	for _, r := range c.Rows {
		cells := []string{
			r.Height.String(), strconv.Itoa(r.OrnamentTypes), r.OrnamentsPerType.String(),
			r.Ornaments.String(), strconv.Itoa(r.Picks), r.Garland.String(),
		}
		if c.Strand > 0 {
			cells = append(cells, strconv.Itoa(r.Strands))
		}
		table = append(table, append(cells, strconv.Itoa(r.Lights)))
	}
	return table
}

// widths returns how wide each column of a table is.
func widths(table [][]string) []int {
	wide := make([]int, len(table[0]))
	for _, cells := range table {
		for i, cell := range cells {
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
		}
	}
	return wide
}

// pad returns cell with space before it to be so wide.
func pad(cell string, wide int) string {
	return strings.Repeat(" ", wide-utf8.RuneCountInString(cell)) + cell
}

// note stands below the chart where people read it.
const note = "Rules of thumb (common practice) for a full tree seen from all sides. " +
	"Picks or garland: one or the other."

func (c chart) text(w io.Writer) error {
	table := c.table()
	wide := widths(table)
	var b strings.Builder
	for _, cells := range table {
		line := ""
		for i, cell := range cells {
			line += "  " + pad(cell, wide[i])
		}
		b.WriteString(line[2:] + "\n")
	}
	b.WriteString("\n" + strings.ReplaceAll(note, "sides. ", "sides.\n") + "\n")
	_, err := io.WriteString(w, b.String())
	return err
}

func (c chart) markdown(w io.Writer) error {
	table := c.table()
	wide := widths(table)
	var b strings.Builder
	for n, cells := range table {
		for i, cell := range cells {
			b.WriteString("| " + pad(cell, wide[i]) + " ")
		}
		b.WriteString("|\n")
		if n == 0 {
			for _, width := range wide {
				b.WriteString("|" + strings.Repeat("-", width+1) + ":")
			}
			b.WriteString("|\n")
		}
	}
	b.WriteString("\n" + note + "\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// csv writes a column for each number, under the names that the JSON has.
func (c chart) csv(w io.Writer) error {
	head := []string{
		"height", "ornamentTypes", "ornamentsPerType.min", "ornamentsPerType.max",
		"ornaments.min", "ornaments.max", "picks", "garland",
	}
	if c.Strand > 0 {
		head = append(head, "strand", "strands")
	}
	out := csv.NewWriter(w)
	if err := out.Write(append(head, "lights")); err != nil {
		return err
	}
	for _, r := range c.Rows {
		cells := []string{
			r.Height.String(), strconv.Itoa(r.OrnamentTypes),
			strconv.Itoa(r.OrnamentsPerType.Min), strconv.Itoa(r.OrnamentsPerType.Max),
			strconv.Itoa(r.Ornaments.Min), strconv.Itoa(r.Ornaments.Max),
			strconv.Itoa(r.Picks), r.Garland.String(),
		}
		if c.Strand > 0 {
			cells = append(cells, c.Strand.String(), strconv.Itoa(r.Strands))
		}
		if err := out.Write(append(cells, strconv.Itoa(r.Lights))); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
