package palette

import (
	"encoding/csv"
	"errors"
	"os"
	"strconv"
	"testing"

	"example.com/fircone/units"

	"pgregory.net/rapid"
)

// readCSV returns the rows of a file of testdata as maps from the names in its head.
func readCSV(t testing.TB, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, head := range records[0] {
			row[head] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func number(t testing.TB, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// checkError fails the test unless err is an *units.Error with this text and sentinel.
func checkError(t *testing.T, err error, sentinel error, text string) {
	t.Helper()
	var e *units.Error
	if !errors.As(err, &e) || !errors.Is(err, sentinel) || err.Error() != text {
		t.Errorf("error\n got %v\nwant %s (%v)", err, text, sentinel)
	}
}

func colors() *rapid.Generator[Color] {
	return rapid.Custom(func(t *rapid.T) Color {
		b := rapid.SliceOfN(rapid.Byte(), 3, 3).Draw(t, "rgb")
		return Color{b[0], b[1], b[2]}
	})
}

func swatches(colors ...string) []Swatch {
	var s []Swatch
	for _, c := range colors {
		sw, err := ParseSwatch(c)
		if err != nil {
			panic(err)
		}
		s = append(s, sw)
	}
	return s
}

func mustPalette(t testing.TB, text string) Palette {
	t.Helper()
	p, err := CommonPractice().ParsePalette(text)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func mustColor(text string) Color { return units.Must(ParseColor(text)) }

// lab returns c in L*a*b* by daylight.
func (c Color) lab() cielab { return Daylight.lab(c) }

// matchOf sorts one piece.
func matchOf(r Rules, p Palette, piece Piece) (Match, error) {
	s, err := r.Sort(p, []Piece{piece})
	if err != nil {
		return Match{}, err
	}
	return s.Matches[0], nil
}

// holds says in which views a pair is two colors to the rules.
func (p Pair) holds(r Rules) [views]bool { return r.holds(p.differences()) }
