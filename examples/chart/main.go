// Chart prints the quick chart for trees: what each height takes by the usual
// rules of thumb, for a shelf sign, a web page or a spreadsheet.
//
//	go run ./examples/chart
//	go run ./examples/chart -heights "5 ft, 1.8 m, 7'6\"" -strand "6 ft"
//	go run ./examples/chart -format markdown
//	go run ./examples/chart -format page > charts.html
//
// The formats are text, markdown, csv, json and page. With -strand it adds how many
// strands of that length make up the garland. The page is one sheet of charts for the
// shop, for trees of 4 to 15 ft, to open in a browser and print; it leaves -heights and
// -strand aside.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.com/fircone/units"
)

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// usualHeights are the heights that the handbook's own chart shows.
const usualHeights = "6 ft, 7 ft, 7 1/2 ft, 9 ft, 12 ft, 15 ft"

// run is the program: it returns the exit status, 2 for a wrong flag.
func run(args []string, stdout, stderr io.Writer) int {
	var (
		list   heights
		strand strandLength
		format format
	)
	if err := list.Set(usualHeights); err != nil {
		fmt.Fprintln(stderr, "chart:", err)
		return 1
	}
	format = text
	flags := flag.NewFlagSet("chart", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.Var(&list, "heights", "the heights of the trees, with commas between")
	flags.Var(&strand, "strand", "length of one strand of garland, to count them")
	flags.Var(&format, "format", "text, markdown, csv, json, or page for one sheet to print")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		flags.SetOutput(stdout)
		fmt.Fprintln(stdout, "Usage of chart:")
		flags.PrintDefaults()
		return 0
	case err != nil:
		fmt.Fprintln(stderr, "chart:", flagError(err))
		return 2
	case flags.NArg() > 0:
		fmt.Fprintf(stderr, "chart: argument %q: want flags only, such as -heights \"6 ft, 7 ft\"\n", flags.Arg(0))
		return 2
	}
	rows, err := makeRows(list, units.Length(strand))
	if err == nil {
		err = format.write(stdout, chart{Rows: rows, Strand: units.Length(strand)})
	}
	if err != nil {
		fmt.Fprintln(stderr, "chart:", err)
		return 1
	}
	return 0
}

// flagError returns the message of a failed flag as one line. A value that was
// refused names its flag itself.
func flagError(err error) string {
	line := strings.ReplaceAll(err.Error(), "\n", " ")
	if i := strings.Index(line, ": -"); strings.HasPrefix(line, "invalid value ") && i >= 0 {
		return line[i+2:]
	}
	return line + ": want -heights, -strand or -format"
}

// refuse returns an error that names a flag, its value and what is accepted.
func refuse(flag, value, want string) error {
	return fmt.Errorf("-%s %q: want %s", flag, clip(value), want)
}

// clip shortens a value that is too long to repeat.
func clip(s string) string {
	if len(s) > 64 {
		return strings.ToValidUTF8(s[:64], "") + "..."
	}
	return s
}

// heights is a flag: lengths with commas between.
type heights []units.Length

const maxHeights = 1000

func (h *heights) String() string {
	if h == nil || len(*h) == 0 {
		return ""
	}
	var texts []string
	for _, l := range *h {
		texts = append(texts, l.String())
	}
	return strings.Join(texts, ", ")
}

func (h *heights) Set(s string) error {
	parts := strings.Split(s, ",")
	if len(parts) > maxHeights {
		return refuse("heights", s, fmt.Sprintf("at most %d heights", maxHeights))
	}
	var list heights
	for _, part := range parts {
		l, err := units.ParseLength(part)
		var refused *units.Error
		switch {
		case errors.As(err, &refused):
			return refuse("heights", part, refused.Want)
		case err != nil:
			return refuse("heights", part, err.Error())
		case l < units.Foot || l > 100*units.Foot:
			return refuse("heights", part, "1 ft to 100 ft")
		}
		list = append(list, l)
	}
	*h = list
	return nil
}

// strandLength is a flag: the length of one strand, zero for none.
type strandLength units.Length

func (s *strandLength) String() string {
	if s == nil || *s == 0 {
		return ""
	}
	return units.Length(*s).String()
}

func (s *strandLength) Set(v string) error {
	l, err := units.ParseLength(v)
	var refused *units.Error
	if errors.As(err, &refused) {
		return refuse("strand", v, refused.Want)
	}
	if l < units.Inch || l > 1000*units.Foot {
		return refuse("strand", v, "1 in to 1000 ft")
	}
	*s = strandLength(l)
	return nil
}
