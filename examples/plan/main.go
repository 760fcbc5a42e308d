// Plan prints what to take to the shop for a tree and a mantel: what, how many,
// why, and the cautions that apply.
//
//	go run ./examples/plan
//	go run ./examples/plan -tree "11 ft" -mantel "62 in" -look asymmetrical -accent picks
//
// With neither -tree nor -mantel it plans a small-town railway station: a 9 ft
// tree in the ticket hall, a 4 ft 6 in tree in the waiting room and a 64 in
// mantel in the tea room; the other flags are then about the ticket hall and the
// tea room. With -json it prints one JSON object for an app. A wrong flag is one
// line on standard error and exit status 2.
package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"example.com/fircone/examples/plan/job"
)

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// run is the program, and returns its exit status.
func run(args []string, stdout, stderr io.Writer) int {
	o, request, err := parse(args)
	if errors.Is(err, flag.ErrHelp) {
		o.help(stdout)
		return 0
	}
	if err != nil {
		fmt.Fprintln(stderr, "plan:", err)
		return 2
	}
	p, err := job.Make(request)
	if err != nil {
		fmt.Fprintln(stderr, "plan:", explain(err))
		return 2
	}
	if err := write(stdout, p, o.json); err != nil {
		fmt.Fprintln(stderr, "plan:", err)
		return 1
	}
	return 0
}

// write prints the plan as a sheet, or as one JSON object.
func write(w io.Writer, p job.Plan, asJSON bool) error {
	if !asJSON {
		_, err := io.WriteString(w, p.String())
		return err
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	return enc.Encode(p)
}
