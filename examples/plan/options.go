package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"example.com/fircone/examples/plan/job"
	"example.com/fircone/palette"
	"example.com/fircone/units"
)

// Options are what the flags say.
type options struct {
	tree   job.Tree
	shelf  job.Mantel
	front  opening
	label  label
	colors palette.Palette
	stock  string
	json   bool

	set   *flag.FlagSet
	given map[string]bool // the flags that were given
}

// places says where in a request the value of a flag stands, so that a refusal
// can be told as one of the flag.
var places = map[string]string{
	"tree":           "trees/0/height",
	"width":          "trees/0/width",
	"taper":          "trees/0/taper",
	"where":          "trees/0/where",
	"ceiling":        "trees/0/ceiling",
	"accent":         "trees/0/accent",
	"size-by":        "trees/0/sizeBy",
	"tree-kind":      "trees/0/kind",
	"setting":        "trees/0/setting",
	"string":         "trees/0/string",
	"mantel":         "mantels/0/length",
	"look":           "mantels/0/look",
	"heavy":          "mantels/0/heavySide",
	"ribbon-falls":   "mantels/0/ribbonFalls",
	"mantel-height":  "mantels/0/height",
	"mantel-depth":   "mantels/0/depth",
	"opening":        "mantels/0/opening",
	"swags":          "mantels/0/swags",
	"sag":            "mantels/0/sag",
	"garland-weight": "mantels/0/garlandWeight",
	"garland-thick":  "mantels/0/garlandThickness",
	"hook-rating":    "mantels/0/hookRating",
	"stock":          "stock",
}

// define returns options whose flags change a tree and a mantel.
func define(tree job.Tree, shelf job.Mantel) *options {
	o := &options{tree: tree, shelf: shelf, front: opening(shelf.Opening), label: label(tree.Label), given: map[string]bool{}}
	o.set = flag.NewFlagSet("plan", flag.ContinueOnError)
	o.set.SetOutput(io.Discard) // run prints the one line itself
	text := o.set.TextVar
	text(&o.tree.Height, "tree", tree.Height, "`height` of the tree from floor to tip, 1 ft to 100 ft")
	text(&o.tree.Width, "width", tree.Width, "its widest `diameter` as measured; if not given, the usual one for -taper")
	text(&o.tree.Taper, "taper", tree.Taper, "its `shape`: full, slim or pencil")
	text(&o.tree.Where, "where", tree.Where, "how much of it is `seen`: all round, wall, corner, half, or an arc such as \"200 degrees\"")
	text(&o.tree.Ceiling, "ceiling", tree.Ceiling, "`height` of the room, to see whether the tree fits")
	text(&o.tree.Accent, "accent", tree.Accent, "what goes `through` the branches: garland, picks, ribbon or both")
	text(&o.tree.SizeBy, "size-by", tree.SizeBy, "size by `what`: rule, which knows only the height, shape, or auto, which is shape once more than the height is given")
	text(&o.tree.Kind, "tree-kind", tree.Kind, "what the tree is `made` of: cut, artificial, pre-lit or metal")
	text(&o.tree.Setting, "setting", tree.Setting, "who uses the `room`: home or public")
	text(&o.label, "string", o.label, "what the `label` of a string of lights says, such as \"100 lamps, 33 ft, 5 W\"")
	text(&o.shelf.Length, "mantel", shelf.Length, "`length` of the mantel shelf, 1 ft to 50 ft")
	text(&o.shelf.Look, "look", shelf.Look, "how the mantel is `dressed`: traditional or asymmetrical")
	text(&o.shelf.Heavy, "heavy", shelf.Heavy, "the heavy `side` of an asymmetrical mantel: left or right")
	o.set.BoolVar(&o.shelf.Falls, "ribbon-falls", shelf.Falls, "hang the ribbon of the mantel by its middle, in place of a bow")
	text(&o.shelf.Height, "mantel-height", shelf.Height, "`height` of the shelf above the hearth")
	text(&o.shelf.Depth, "mantel-depth", shelf.Depth, "`depth` of the shelf from the wall")
	text(&o.front, "opening", o.front, "firebox `opening`: width x height @ distance below the shelf, such as \"36 in x 30 in @ 14 in\"")
	o.set.IntVar(&o.shelf.Swags, "swags", shelf.Swags, "how `many` swags the mantel garland hangs in, 0 for straight along the shelf")
	text(&o.shelf.Sag, "sag", shelf.Sag, "how `deep` each swag hangs; if not given, a sixth of its width")
	text(&o.shelf.Weight, "garland-weight", shelf.Weight, "`weight` of each foot of mantel garland: weigh yours")
	text(&o.shelf.Thick, "garland-thick", shelf.Thick, "how `thick` the mantel garland is across its branches")
	text(&o.shelf.Hooks, "hook-rating", shelf.Hooks, "`weight` that the label of one hook says it holds")
	text(&o.colors, "colors", o.colors, "up to four `colors`, the leading one first, such as \"crimson,forestgreen,gold:metal,ivory\"")
	o.set.StringVar(&o.stock, "stock", "", "JSON `file` with offers, owned stock, boxes and budget; examples/plan/job/stock.json is one")
	o.set.BoolVar(&o.json, "json", false, "print one JSON object")
	return o
}

// parse reads the flags, and returns what they ask for.
func parse(args []string) (*options, job.Request, error) {
	o := define(job.Tree{}, job.Mantel{})
	if err := o.read(args); err != nil {
		return o, job.Request{}, err
	}
	var r job.Request
	if !o.given["tree"] && !o.given["mantel"] {
		r = job.Station()
		o = define(r.Trees[0], r.Mantels[0])
		if err := o.read(args); err != nil {
			return o, job.Request{}, err
		}
		r.Trees[0], r.Mantels[0] = o.tree, o.shelf
	} else if err := o.about(); err != nil {
		return o, job.Request{}, err
	}
	if o.given["tree"] {
		o.tree.Room = "your tree"
		r.Trees = []job.Tree{o.tree}
	}
	if o.given["mantel"] {
		o.shelf.Room = "your mantel"
		r.Mantels = []job.Mantel{o.shelf}
	}
	if o.given["colors"] {
		r.Colors = o.colors
	}
	if o.given["stock"] {
		var err error
		if r.Stock, err = readStock(o.stock); err != nil {
			return o, job.Request{}, fmt.Errorf("invalid value %q for flag -stock: %w", o.stock, err)
		}
	}
	return o, r, nil
}

// read parses the flags.
func (o *options) read(args []string) error {
	if err := o.set.Parse(args); err != nil {
		return err
	}
	if o.set.NArg() > 0 {
		return fmt.Errorf("unexpected argument %q: only flags are taken, and a value with spaces needs quotes, as in -tree \"11 ft\"", o.set.Arg(0))
	}
	var zero error
	o.set.Visit(func(f *flag.Flag) {
		o.given[f.Name] = true
		switch f.Name {
		case "width", "ceiling", "mantel-height", "mantel-depth", "sag", "garland-weight", "garland-thick", "hook-rating":
			if text := f.Value.String(); strings.HasPrefix(text, "0 ") {
				zero = fmt.Errorf("invalid value %q for flag -%s: want more than zero, or leave it out if it was not measured", text, f.Name)
			}
		}
	})
	if zero != nil {
		return zero
	}
	o.shelf.Opening, o.tree.Label = job.Opening(o.front), job.Label(o.label)
	return nil
}

// about refuses a flag that is about something that is not there.
func (o *options) about() error {
	for name, place := range places {
		about, _, _ := strings.Cut(place, "s/")
		if o.given[name] && about != "stock" && !o.given[about] {
			return fmt.Errorf("flag -%s is about a %s: give -%s too", name, about, about)
		}
	}
	if o.given["garland-weight"] != o.given["hook-rating"] {
		return errors.New("flags -garland-weight and -hook-rating go together: whether a hook holds takes both")
	}
	if o.given["sag"] && o.shelf.Swags == 0 {
		return errors.New("flag -sag is about swags: give -swags too")
	}
	return nil
}

// readStock reads the file of -stock.
func readStock(name string) (job.Stock, error) {
	f, err := os.Open(name)
	if err != nil {
		return job.Stock{}, err
	}
	defer f.Close()
	return job.ReadStock(f)
}

// explain returns a refusal of the plan as one of the flag that gave the value.
func explain(err error) error {
	var r *job.Refusal
	if errors.As(err, &r) {
		path := strings.Join(r.Path, "/")
		for name, place := range places {
			if path == place || strings.HasPrefix(path, place+"/") {
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

// An opening is the opening of a firebox as a flag has it.
type opening job.Opening

// MarshalText returns a text such as "3 ft x 2 ft 6 in @ 1 ft 2 in", or an empty
// one if there is no opening.
func (o opening) MarshalText() ([]byte, error) {
	if o == (opening{}) {
		return nil, nil
	}
	return fmt.Appendf(nil, "%v x %v @ %v", o.Width, o.Height, o.Below), nil
}

// UnmarshalText reads what MarshalText writes.
func (o *opening) UnmarshalText(text []byte) error {
	size, below, found := strings.Cut(string(text), "@")
	width, height, found2 := strings.Cut(size, "x")
	if !found || !found2 {
		return errors.New(`want width x height @ distance below the shelf, such as "36 in x 30 in @ 14 in"`)
	}
	var read opening
	for _, part := range []struct {
		to   *units.Length
		text string
	}{{&read.Width, width}, {&read.Height, height}, {&read.Below, below}} {
		if err := part.to.UnmarshalText([]byte(part.text)); err != nil {
			return err
		}
	}
	*o = read
	return nil
}

// A label is the label of a string of lights as a flag has it.
type label job.Label

// MarshalText returns a text such as "100 lamps, 33 ft, 5 W", or an empty one if
// the label is not known.
func (l label) MarshalText() ([]byte, error) {
	if l == (label{}) {
		return nil, nil
	}
	return fmt.Appendf(nil, "%d lamps, %v, %v", l.Lamps, l.Length, l.Power), nil
}

// UnmarshalText reads what MarshalText writes.
func (l *label) UnmarshalText(text []byte) error {
	parts := strings.Split(string(text), ",")
	if len(parts) != 3 {
		return errors.New(`want lamps, length and power, such as "100 lamps, 33 ft, 5 W"`)
	}
	read := *l
	lamps, _ := strings.CutSuffix(strings.TrimSpace(parts[0]), "lamps")
	var err error
	if read.Lamps, err = strconv.Atoi(strings.TrimSpace(lamps)); err != nil {
		return fmt.Errorf(`want a number of lamps, such as "100 lamps", not %q`, parts[0])
	}
	if err := read.Length.UnmarshalText([]byte(parts[1])); err != nil {
		return err
	}
	if err := read.Power.UnmarshalText([]byte(parts[2])); err != nil {
		return err
	}
	*l = read
	return nil
}
