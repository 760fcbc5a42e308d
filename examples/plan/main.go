// Plan prints what to take to the shop for trees and mantels: what to buy, what each
// room gets in the order of work, and what to mind.
//
//	go run ./examples/plan
//	go run ./examples/plan -tree "11 ft" -mantel "62 in" -look asymmetrical -accent picks
//	go run ./examples/plan -request examples/plan/demo/station.json -why
//	go run ./examples/plan -quote -work -pack
//
// With neither -tree, -mantel nor -request it plans a small-town railway station: a
// 9 ft tree in the ticket hall, a 4 ft 6 in tree in the waiting room and a 64 in
// mantel in the tea room; the other flags are then about the ticket hall and the
// tea room. With -quote, -work or -pack it prints these sheets instead: for the client,
// for the crew, and for the day on which it comes down. With -json it prints one JSON object for an app. Every wrong value is
// one line on standard error, and the exit status is then 2.
package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.com/fircone/examples/plan/sheet"
	"example.com/fircone/sizing/job"
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
	var p job.Plan
	if err == nil {
		p, err = job.Make(request)
	} else if _, also := job.Make(request); also != nil { // whatever else is wrong with a flag
		for _, f := range job.Faults(also) {
			if name := o.flagOf(f); name != "" && !strings.Contains(err.Error(), "-"+name) {
				err = errors.Join(err, f)
			}
		}
	}
	if err != nil {
		for _, line := range o.explain(err) {
			fmt.Fprintln(stderr, "plan:", line)
		}
		return 2
	}
	if err := write(stdout, request, p, o); err != nil {
		fmt.Fprintln(stderr, "plan:", err)
		return 1
	}
	return 0
}

// write prints the plan as a sheet, or as one JSON object.
func write(w io.Writer, r job.Request, p job.Plan, o *options) error {
	if !o.json {
		text := ""
		for _, one := range []struct {
			asked bool
			sheet func(job.Request, job.Plan, bool) string
		}{{o.quote, sheet.Quote}, {o.work, sheet.Work}, {o.pack, sheet.Pack}} {
			if one.asked && text != "" {
				text += "\n"
			}
			if one.asked {
				text += one.sheet(r, p, o.why)
			}
		}
		if text == "" {
			text = sheet.Text(r, p, o.why)
		}
		_, err := io.WriteString(w, text)
		return err
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	return enc.Encode(p)
}
