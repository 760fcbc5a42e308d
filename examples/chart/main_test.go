package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func runChart(t *testing.T, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if status := run(args, &out, &errs); status != 0 {
		t.Fatalf("chart %q: status %d: %s", args, status, errs.String())
	}
	return out.String()
}

// The rows are the trade's own figures (common practice): types one a foot, the
// height less and plus two of each, picks three a foot, garland nine feet a foot,
// lights a hundred a foot; worked by hand.
var want = [][]string{
	{"height", "ornamentTypes", "ornamentsPerType.min", "ornamentsPerType.max", "ornaments.min", "ornaments.max", "picks", "garland", "strand", "strands", "lights"},
	{"2 ft", "2", "1", "4", "2", "8", "6", "18 ft", "6 ft", "3", "200"},
	{"7 ft", "7", "5", "9", "35", "63", "21", "63 ft", "6 ft", "11", "700"},
	{"7 ft 6 in", "7", "5", "9", "35", "63", "23", "67 ft 6 in", "6 ft", "12", "750"},
	{"9 ft", "9", "7", "11", "63", "99", "27", "81 ft", "6 ft", "14", "900"},
	{"12 ft", "12", "10", "14", "120", "168", "36", "108 ft", "6 ft", "18", "1200"},
	{"2.3 m", "7", "5", "9", "35", "63", "23", "20.7 m", "6 ft", "12", "755"},
}

const wantHeights = "2 ft, 7ft,7 1/2 ft , 9', 12 ft, 230 cm"

func TestCSV(t *testing.T) {
	got, err := csv.NewReader(strings.NewReader(runChart(t, "-heights", wantHeights, "-strand", "6 ft", "-format", "csv"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// The other formats say the same as the CSV.
func TestJSON(t *testing.T) {
	var got struct {
		Trees []struct {
			Height, Garland             string
			OrnamentTypes               int
			OrnamentsPerType, Ornaments struct{ Min, Max int }
			Picks, Strands, Lights      int
		}
		Strand string
	}
	if err := json.Unmarshal([]byte(runChart(t, "-heights", wantHeights, "-strand", "6 ft", "-format", "json")), &got); err != nil {
		t.Fatal(err)
	}
	table := [][]string{want[0]}
	for _, r := range got.Trees {
		cells := []string{r.Height}
		for _, n := range []int{r.OrnamentTypes, r.OrnamentsPerType.Min, r.OrnamentsPerType.Max, r.Ornaments.Min, r.Ornaments.Max, r.Picks} {
			cells = append(cells, strconv.Itoa(n))
		}
		table = append(table, append(cells, r.Garland, got.Strand, strconv.Itoa(r.Strands), strconv.Itoa(r.Lights)))
	}
	if diff := cmp.Diff(want, table); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if text := runChart(t, "-format", "json"); strings.Contains(text, "strand") {
		t.Errorf("strands that nobody asked for:\n%s", text)
	}
}

func TestTextAndMarkdown(t *testing.T) {
	const asText = `     tree  ornament types  of each  ornaments  picks  or garland  6 ft strands  lights
     2 ft               2   1 to 4     2 to 8      6       18 ft             3     200
7 ft 6 in               7   5 to 9   35 to 63     23  67 ft 6 in            12     750

Rules of thumb (common practice) for a full tree seen from all sides.
Picks or garland: one or the other.
`
	const asMarkdown = `|      tree | ornament types | of each | ornaments | picks | or garland | 6 ft strands | lights |
|----------:|---------------:|--------:|----------:|------:|-----------:|-------------:|-------:|
|      2 ft |              2 |  1 to 4 |    2 to 8 |     6 |      18 ft |            3 |    200 |
| 7 ft 6 in |              7 |  5 to 9 |  35 to 63 |    23 | 67 ft 6 in |           12 |    750 |

Rules of thumb (common practice) for a full tree seen from all sides. Picks or garland: one or the other.
`
	for format, want := range map[string]string{"text": asText, "Markdown": asMarkdown} {
		got := runChart(t, "-heights", `2 ft, 7'6"`, "-strand", "72 in", "-format", format)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", format, diff)
		}
	}
	if got := strings.Count(runChart(t), "\n"); got != 1+6+3 {
		t.Errorf("with no flags: %d lines, want a heading, six heights and the note", got)
	}
}

func TestRefusals(t *testing.T) {
	for _, test := range []struct {
		reason string
		args   []string
		want   string
	}{
		{"no unit", []string{"-heights", "6 ft, 7"}, `chart: -heights " 7": want a number and a unit, such as 7 ft 6 in`},
		{"an empty place in the list", []string{"-heights", "6 ft,,7 ft"}, `chart: -heights "": want a number and a unit, such as 7 ft 6 in`},
		{"too low", []string{"-heights", "11 in"}, `chart: -heights "11 in": want 1 ft to 100 ft`},
		{"too high", []string{"-heights", "100 ft 1 in"}, `chart: -heights "100 ft 1 in": want 1 ft to 100 ft`},
		{"too many", []string{"-heights", strings.Repeat("6 ft,", 1000) + "6 ft"}, `chart: -heights "` + strings.Repeat("6 ft,", 13)[:64] + `...": want at most 1000 heights`},
		{"no strand", []string{"-strand", "0 ft"}, `chart: -strand "0 ft": want 1 in to 1000 ft`},
		{"no length", []string{"-strand", "long"}, `chart: -strand "long": want a number and a unit, such as 7 ft 6 in`},
		{"an unknown format", []string{"-format", "xml"}, `chart: -format "xml": want text, markdown, csv, json or page`},
		{"an unknown flag", []string{"-depth", "1"}, `chart: flag provided but not defined: -depth: want -heights, -strand or -format`},
		{"a stray argument", []string{"6 ft"}, `chart: argument "6 ft": want flags only, such as -heights "6 ft, 7 ft"`},
	} {
		var out, errs bytes.Buffer
		status := run(test.args, &out, &errs)
		if got := strings.TrimSuffix(errs.String(), "\n"); status != 2 || got != test.want || out.Len() > 0 {
			t.Errorf("%s: status %d, %q, want 2, %q", test.reason, status, got, test.want)
		}
	}
	var out, errs bytes.Buffer
	if status := run([]string{"-help"}, &out, &errs); status != 0 || !strings.Contains(out.String(), "-strand") || errs.Len() > 0 {
		t.Errorf("-help: status %d: %s%s", status, out.String(), errs.String())
	}
}

// The page has the charts of the documentation of package sizing: rows and figures that were worked out by
// hand there, and every table is as wide as its head.
func TestPage(t *testing.T) {
	got := runChart(t, "-format", "page")
	for _, want := range []string{
		"<td>9</td><td>9</td><td>7 to 11</td><td>27</td><td>81</td><td>17</td><td>14</td><td>9</td><td>9</td><td>13</td><td>104</td><td>87</td>",
		"<td>12</td><td>144 / 184</td><td>96 / 124</td><td>72 / 93</td><td>97 / 125</td><td>109 / 83</td>",
		"<td>4</td><td>17</td><td>25</td><td>34</td><td>45</td><td>57</td><td>–</td><td>–</td>",
		"<td>7</td><td>27</td><td>13</td><td>9</td><td>6</td><td>4</td>",
		"<td>40</td><td>36</td><td>48</td>", // NEC 210.20(A), quoted: 1440 and 1920 W
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no row %s", want)
		}
	}
	if n := strings.Count(got, "<table>"); n != 5 {
		t.Errorf("%d charts", n)
	}
	for _, table := range strings.Split(got, "<table>")[1:] {
		table, _, _ = strings.Cut(table, "</table>")
		for _, row := range strings.Split(table, "<tr>")[2:] {
			if heads := strings.Count(table, "<th>"); strings.Count(row, "<td>") != heads {
				t.Errorf("%d heads, but %s", heads, row)
			}
		}
	}
}
