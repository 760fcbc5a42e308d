package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"example.com/fircone/examples/plan/job"
)

// Options are what the flags say.
type options struct {
	request job.Request
	json    bool
	set     *flag.FlagSet
}

// places says where in a request the value of a flag stands, so that a refusal
// can be told as one of the flag.
var places = map[string]string{
	"tree":   "trees/0/height",
	"accent": "trees/0/accent",
	"mantel": "mantels/0/length",
	"look":   "mantels/0/look",
}

// parse reads the flags.
func parse(args []string) (*options, error) {
	o := &options{set: flag.NewFlagSet("plan", flag.ContinueOnError)}
	o.set.SetOutput(io.Discard) // run prints the one line itself
	station := job.Station()
	tree, shelf := station.Trees[0], station.Mantels[0]

	o.set.TextVar(&tree.Height, "tree", tree.Height, "the `height` of the tree, 1 ft to 100 ft")
	o.set.TextVar(&tree.Accent, "accent", tree.Accent, "what goes through the branches: garland, picks, ribbon or both")
	o.set.TextVar(&shelf.Length, "mantel", shelf.Length, "the `length` of the mantel shelf, 1 ft to 50 ft")
	o.set.TextVar(&shelf.Look, "look", shelf.Look, "how the mantel is dressed: traditional or asymmetrical")
	o.set.BoolVar(&o.json, "json", false, "print one JSON object")
	if err := o.set.Parse(args); err != nil {
		return o, err
	}
	if o.set.NArg() > 0 {
		return o, fmt.Errorf("unexpected argument %q: only flags are taken, and a value with spaces needs quotes, as in -tree \"11 ft\"", o.set.Arg(0))
	}

	given := map[string]bool{}
	o.set.Visit(func(f *flag.Flag) { given[f.Name] = true })
	if !given["tree"] && !given["mantel"] {
		station.Trees[0], station.Mantels[0] = tree, shelf
		o.request = station
		return o, nil
	}
	if given["tree"] {
		tree.Room = "your tree"
		o.request.Trees = []job.Tree{tree}
	}
	if given["mantel"] {
		shelf.Room = "your mantel"
		o.request.Mantels = []job.Mantel{shelf}
	}
	for name, place := range places {
		about, _, _ := strings.Cut(place, "s/")
		if given[name] && !given[about] {
			return o, fmt.Errorf("flag -%s is about a %s: give -%s too", name, about, about)
		}
	}
	return o, nil
}

// explain returns a refusal of the plan as one of the flag that gave the value.
func (o *options) explain(err error) error {
	var r *job.Refusal
	if errors.As(err, &r) {
		for name, place := range places {
			if place == strings.Join(r.Path, "/") {
				return fmt.Errorf("invalid value %q for flag -%s: want %s", r.Value, name, r.Want)
			}
		}
	}
	return err
}

// help prints what the flags are.
func (o *options) help(w io.Writer) {
	fmt.Fprintln(w, "Plan prints what to take to the shop for a tree and a mantel.")
	fmt.Fprintln(w, "With neither -tree nor -mantel it plans a small-town railway station.")
	fmt.Fprintln(w)
	o.set.SetOutput(w)
	o.set.PrintDefaults()
}
