package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/examples/plan/demo"
	"example.com/fircone/internal/spelling"
	"example.com/fircone/mantel"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Options are what the flags say.
type options struct {
	tree    job.Tree
	shelf   job.Mantel
	front   opening
	label   label
	accents accents
	colors  string
	budget  string
	units   units.Style
	file    string
	json    bool
	why     bool
	quote   bool
	work    bool
	pack    bool
	stand   labor.Date
	down    labor.Date
	prices  prices

	set   *flag.FlagSet
	given map[string]bool // the flags that were given
}

// places says where in a request the value of a flag stands, so that a fault can be
// told as one of the flag.
var places = map[string]string{
	"tree":           "/trees/0/height",
	"width":          "/trees/0/base",
	"taper":          "/trees/0/taper",
	"where":          "/trees/0/exposure",
	"tree-kind":      "/trees/0/kind",
	"ceiling":        "/trees/0/space/ceiling",
	"accent":         "/trees/0/accents",
	"size-by":        "/trees/0/sizeBy",
	"string":         "/trees/0/lights",
	"mantel":         "/mantels/0/length",
	"look":           "/mantels/0/hanging/look",
	"ribbon-fall":    "/mantels/0/hanging/fall",
	"mantel-height":  "/mantels/0/height",
	"mantel-depth":   "/mantels/0/depth",
	"opening":        "/mantels/0/opening",
	"swags":          "/mantels/0/hanging/swags",
	"sag":            "/mantels/0/hanging/sag",
	"garland-weight": "/mantels/0/perFoot",
	"garland-thick":  "/mantels/0/hanging/thickness",
	"hook-rating":    "/mantels/0/hook/rating",
	"colors":         "/colors",
	"budget":         "/shop/budget",
	"units":          "/house/units",
	"stand":          "/stand",
	"down":           "/down",
	"prices":         "/house/rates/price",
}

// define returns options whose flags change a tree and a mantel.
func define(tree job.Tree, shelf job.Mantel) *options {
	o := &options{
		tree: tree, shelf: shelf, front: opening(shelf.Opening), label: label(tree.Lights), accents: tree.Accents,
		given: map[string]bool{},
	}
	o.set = flag.NewFlagSet("plan", flag.ContinueOnError)
	o.set.SetOutput(io.Discard) // run prints the lines itself
	text := o.set.TextVar
	text(&o.tree.Height, "tree", tree.Height, "height of the tree from floor to tip, a `LENGTH` from 1 ft to 100 ft")
	text(&o.tree.Base, "width", tree.Base, "widest diameter of the tree, a `LENGTH`; if not given, the usual one for -taper")
	text(&o.tree.Taper, "taper", tree.Taper, "its `SHAPE`: full, slim or pencil")
	text(&o.tree.Exposure, "where", tree.Exposure, "the `PLACE` where it stands: all round, wall, corner, half, or an arc such as \"200 degrees\"")
	text(&o.tree.Kind, "tree-kind", tree.Kind, "what it is made of, a `KIND`: cut, artificial, pre-lit or metal")
	text(&o.tree.Space.Ceiling, "ceiling", tree.Space.Ceiling, "height of the room, a `LENGTH`, to see whether the tree fits")
	text(&o.accents, "accent", o.accents, "the `KIND` of accent through the branches: garland, picks or ribbon, or two with a comma between")
	o.set.StringVar(&o.tree.SizeBy, "size-by", tree.SizeBy, "the `WAY` to size the tree: rule, shape or auto, which is by rule from 4 ft to 15 ft if no more than the height is given")
	text(&o.label, "string", o.label, "the `LABEL` of one string of lights, such as \"100 lamps, 33 ft, 5 W\"")
	text(&o.shelf.Length, "mantel", shelf.Length, "length of the mantel shelf, a `LENGTH` from 1 ft to 50 ft")
	text(&o.shelf.Hanging.Look, "look", shelf.Hanging.Look, "the `LOOK` of the mantel: traditional, asymmetrical left or asymmetrical right")
	text(&o.shelf.Hanging.Fall, "ribbon-fall", shelf.Hanging.Fall, "how far the ribbon of the mantel falls, a `LENGTH`; if not given, it is tied in a bow")
	text(&o.shelf.Height, "mantel-height", shelf.Height, "height of the shelf above the hearth, a `LENGTH`")
	text(&o.shelf.Depth, "mantel-depth", shelf.Depth, "depth of the shelf from the wall, a `LENGTH`")
	text(&o.front, "opening", o.front, "the firebox `OPENING`: width x height @ distance below the shelf, such as \"36 in x 30 in @ 14 in\"")
	o.set.IntVar(&o.shelf.Hanging.Swags, "swags", shelf.Hanging.Swags, "hang the mantel garland in `N` swags; 0 is straight along the shelf")
	text(&o.shelf.Hanging.Sag, "sag", shelf.Hanging.Sag, "how deep each swag hangs, a `LENGTH`; if not given, a sixth of its width, down to half an inch")
	text(&o.shelf.PerFoot, "garland-weight", shelf.PerFoot, "the `WEIGHT` of a foot of mantel garland: weigh yours")
	text(&o.shelf.Hanging.Thickness, "garland-thick", shelf.Hanging.Thickness, "the mantel garland across its branches, a `LENGTH`")
	text(&o.shelf.Hook.Rating, "hook-rating", shelf.Hook.Rating, "the `WEIGHT` that the label of one hook says it holds")
	o.set.StringVar(&o.colors, "colors", "", "up to four `COLORS`, the leading one first, such as \"crimson,forestgreen,gold:metal,ivory\"")
	o.set.StringVar(&o.budget, "budget", "", "spend at most this much `MONEY`; 0 is no budget, just what is needed at the least cost")
	text(&o.units, "units", units.InFeetInches, "print in these `UNITS`: feet and inches, feet, inches, yards or metric")
	o.set.StringVar(&o.file, "request", "", "read the whole job from a JSON `FILE`; examples/plan/demo/station.json is one")
	o.set.BoolVar(&o.quote, "quote", false, "print the quote; with -why the one for the house")
	o.set.BoolVar(&o.work, "work", false, "print the sheet for the crew: dates, who does what and when")
	o.set.BoolVar(&o.pack, "pack", false, "print the labels of the cartons, and what there is next year")
	text(&o.stand, "stand", labor.Date(0), "the `DAY` on which it must stand, such as 2026-11-28")
	text(&o.down, "down", labor.Date(0), "the `DAY` on which you take it down; if not given, you do not")
	text(&o.prices, "prices", prices(nil), "your `PRICES`, such as \"hour 45, visit 25, consultation 80\"; if not given, the request's")
	o.set.BoolVar(&o.json, "json", false, "print one JSON object")
	o.set.BoolVar(&o.why, "why", false, "print the reason and the source of every figure")
	return o
}

// parse reads the flags, and returns what they ask for, and everything that is wrong with them.
func parse(args []string) (*options, job.Request, error) {
	o := define(job.Tree{}, job.Mantel{})
	wrong := o.read(args)
	if errors.Is(wrong, flag.ErrHelp) {
		return o, job.Request{}, wrong
	}
	var r job.Request
	switch {
	case o.given["request"]:
		for _, name := range slices.Sorted(maps.Keys(places)) {
			if o.given[name] && (strings.HasPrefix(places[name], "/trees") || strings.HasPrefix(places[name], "/mantels")) {
				return o, r, fmt.Errorf("flags -request and -%s: the file has the trees and mantels", name)
			}
		}
		data, err := os.ReadFile(o.file)
		if err == nil {
			r, err = job.ParseRequest(data)
		}
		if err != nil {
			return o, r, errors.Join(wrong, err)
		}
	case !o.given["tree"] && !o.given["mantel"] && wrong == nil:
		r = demo.Station()
		o = define(r.Trees[0], r.Mantels[0])
		if err := o.read(args); err != nil {
			return o, r, err
		}
		r.Trees[0], r.Mantels[0] = o.tree, o.shelf
	default:
		if wrong == nil {
			wrong = o.about()
		}
		if o.given["tree"] {
			o.tree.Room = "your tree"
			r.Trees = []job.Tree{o.tree}
		}
		if o.given["mantel"] {
			o.shelf.Room = "your mantel"
			r.Mantels = []job.Mantel{o.shelf}
		}
	}
	return o, r, errors.Join(wrong, o.change(&r))
}

// change sets what flags say of the whole job.
func (o *options) change(r *job.Request) error {
	var wrong []error
	if o.given["colors"] {
		var err error
		if r.Colors, err = job.CommonPractice().Colors.ParsePalette(o.colors); err != nil {
			wrong = append(wrong, o.plain(fmt.Errorf("invalid value %q for flag -colors: %w", o.colors, err)))
		}
	}
	if o.given["budget"] {
		var err error
		if r.Shop.Budget, err = decimal.NewFromString(o.budget); err != nil {
			wrong = append(wrong, fmt.Errorf("invalid value %q for flag -budget: want an amount of money, such as 120.00", o.budget))
		}
	}
	if o.given["budget"] && len(r.Shop.Offers) == 0 && len(wrong) == 0 && (o.given["tree"] || o.given["mantel"] || o.given["request"]) {
		wrong = append(wrong, errors.New("flag -budget is about a shop: give -request too, of a file that says what there is to buy"))
	}
	if o.given["units"] {
		if r.House.Circuit.Volts == 0 {
			r.House = job.CommonPractice()
		}
		r.House.Units = o.units
	}
	if o.given["stand"] {
		r.Stand = o.stand
	}
	if o.given["down"] {
		r.Down = o.down
	}
	if o.given["prices"] {
		if r.House.Circuit.Volts == 0 {
			r.House = job.CommonPractice()
		}
		maps.Copy(r.House.Rates.Price, o.prices)
	}
	if name := o.dated(); name != "" && r.Stand == 0 {
		wrong = append(wrong, fmt.Errorf("flag -%s needs the day on which it must stand: give -stand too, such as -stand 2026-11-28", name))
	}
	return errors.Join(wrong...)
}

// dated returns the first flag given that is about the work.
func (o *options) dated() string {
	for _, name := range []string{"quote", "work", "pack", "down", "prices"} {
		if o.given[name] {
			return name
		}
	}
	return ""
}

// read parses the flags, to the last of them whatever is wrong with the others.
func (o *options) read(args []string) error {
	var wrong []error
	for {
		err := o.set.Parse(args)
		if err == nil {
			break
		}
		if errors.Is(err, flag.ErrHelp) {
			return err
		}
		err, args = o.plain(err), o.set.Args()
		words := 0 // the value of a flag that there is not, or the rest of one with spaces
		for words < len(args) && !strings.HasPrefix(args[words], "-") {
			words++
		}
		if words > 0 && strings.HasPrefix(err.Error(), "invalid value") {
			err = fmt.Errorf("%w; a value with spaces needs quotes, as in -tree \"11 ft\"", err)
		}
		wrong, args = append(wrong, err), args[words:]
	}
	if o.set.NArg() > 0 {
		wrong = append(wrong, fmt.Errorf("unexpected argument %q: only flags are taken, and a value with spaces needs quotes, as in -tree \"11 ft\"", o.set.Arg(0)))
	}
	o.set.Visit(func(f *flag.Flag) {
		o.given[f.Name] = true
		switch f.Name {
		case "width", "ceiling", "mantel-height", "mantel-depth", "sag", "garland-weight", "garland-thick", "hook-rating":
			if text := f.Value.String(); strings.HasPrefix(text, "0 ") {
				wrong = append(wrong, fmt.Errorf("invalid value %q for flag -%s: want more than zero, or leave it out if it was not measured", text, f.Name))
			}
		}
	})
	o.shelf.Opening, o.tree.Lights, o.tree.Accents = mantel.Rectangle(o.front), lights.Label(o.label), o.accents
	return errors.Join(wrong...)
}

// notDefined begins what package flag says of a flag that there is not.
const notDefined = "flag provided but not defined: -"

// plain says what package flag, or the library, has to say, without the names of functions.
func (o *options) plain(err error) error {
	text := err.Error()
	if name, found := strings.CutPrefix(text, notDefined); found {
		if near := o.nearest(name); near != "" {
			return fmt.Errorf("no flag -%s: did you mean %s?", name, near)
		}
		return fmt.Errorf("no flag -%s: -help lists them", name)
	}
	head, rest, _ := strings.Cut(text, ": ")
	if k := strings.LastIndex(rest, "want "); k >= 0 {
		rest = rest[k:]
	}
	if rest == "parse error" {
		rest = "want a whole number"
	}
	return errors.New(head + ": " + rest)
}

// nearest returns the flags that a name stands for in a request, or the one that is spelled most like it.
func (o *options) nearest(name string) string {
	bare := func(s string) string { return strings.ToLower(strings.ReplaceAll(s, "-", "")) }
	var same []string
	best, least := "", 1+len(name)/3
	o.set.VisitAll(func(f *flag.Flag) {
		place := places[f.Name]
		if bare(place[strings.LastIndex(place, "/")+1:]) == bare(name) {
			same = append(same, "-"+f.Name)
		}
		if d := spelling.Distance(name, f.Name); d < least {
			best, least = "-"+f.Name, d
		}
	})
	if len(same) > 0 {
		return strings.Join(same, " or ")
	}
	return best
}

// about refuses a flag that is about something that is not there.
func (o *options) about() error {
	for name, place := range places {
		about := ""
		switch {
		case strings.HasPrefix(place, "/trees/"):
			about = "tree"
		case strings.HasPrefix(place, "/mantels/"):
			about = "mantel"
		}
		if about != "" && o.given[name] && !o.given[about] {
			return fmt.Errorf("flag -%s is about a %s: give -%s too", name, about, about)
		}
	}
	if o.given["garland-weight"] != o.given["hook-rating"] {
		return errors.New("flags -garland-weight and -hook-rating go together: whether a hook holds takes both")
	}
	if o.given["sag"] && o.shelf.Hanging.Swags == 0 {
		return errors.New("flag -sag is about swags: give -swags too")
	}
	if o.given["ribbon-fall"] && o.shelf.Hanging.Look == mantel.Traditional {
		return errors.New("flag -ribbon-fall is about a look with a ribbon: give -look asymmetrical too")
	}
	return nil
}

// explain returns a line for each fault: of the flag that gave the value, or of its
// place in the file.
func (o *options) explain(err error) []string {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		var lines []string
		for _, e := range joined.Unwrap() {
			lines = append(lines, o.explain(e)...)
		}
		return lines
	}
	var f *units.Error
	if !errors.As(err, &f) || f.Field != "" && f.Field != "data" && !strings.HasPrefix(f.Field, "/") {
		return []string{err.Error()}
	}
	switch f.Field { // no place in the file, but all of it
	case "":
		return []string{fmt.Sprintf("%s: want %s, not %s", o.file, f.Want, f.Value)}
	case "data":
		return []string{fmt.Sprintf("%s: want %s", o.file, f.Want)}
	}
	if name := o.flagOf(f); name != "" {
		return []string{fmt.Sprintf("invalid value %q for flag -%s: want %s", f.Value, name, f.Want)}
	}
	return []string{fmt.Sprintf("%s %q: want %s", f.Field, f.Value, f.Want)}
}

// flagOf returns the flag that gave the value of a fault, if one did.
func (o *options) flagOf(f *units.Error) string {
	for name, place := range places {
		if o.given[name] && (f.Field == place || strings.HasPrefix(f.Field, place+"/")) {
			return name
		}
	}
	return ""
}

// help prints what the flags are.
func (o *options) help(w io.Writer) {
	fmt.Fprintln(w, "Plan prints what to take to the shop for trees and mantels.")
	fmt.Fprintln(w, "With neither -tree, -mantel nor -request it plans a small-town railway station.")
	fmt.Fprintln(w)
	o.set.SetOutput(w)
	o.set.PrintDefaults()
}

// Accents are kinds as a flag has them.
type accents []shopping.Kind

// MarshalText returns the kinds with commas between, and garland for none said.
func (a accents) MarshalText() ([]byte, error) {
	if a == nil {
		return []byte("garland"), nil
	}
	var names []string
	for _, k := range a {
		names = append(names, k.String())
	}
	return []byte(strings.Join(names, ",")), nil
}

// UnmarshalText reads what MarshalText writes.
func (a *accents) UnmarshalText(text []byte) error {
	read := accents{}
	for name := range strings.SplitSeq(string(text), ",") {
		var k shopping.Kind
		if err := k.UnmarshalText([]byte(name)); err != nil || k != shopping.Garland && k != shopping.Pick && k != shopping.Ribbon {
			return errors.New("want garland, picks or ribbon, or two with a comma between")
		}
		read = append(read, k)
	}
	*a = read
	return nil
}

// Prices are what an hour, a visit and a consultation cost, as a flag has them.
type prices map[string]decimal.Decimal

// MarshalText returns the prices with commas between.
func (p prices) MarshalText() ([]byte, error) {
	var list []string
	for _, name := range slices.Sorted(maps.Keys(p)) {
		list = append(list, name+" "+p[name].String())
	}
	return []byte(strings.Join(list, ", ")), nil
}

// UnmarshalText reads what MarshalText writes.
func (p *prices) UnmarshalText(text []byte) error {
	read := prices{}
	for part := range strings.SplitSeq(string(text), ",") {
		name, amount, _ := strings.Cut(strings.TrimSpace(part), " ")
		price, err := decimal.NewFromString(amount)
		if _, twice := read[name]; err != nil || twice || name != "hour" && name != "visit" && name != "consultation" {
			return errors.New(`want prices of an hour, a visit and a consultation, such as "hour 45, visit 25"`)
		}
		read[name] = price
	}
	*p = read
	return nil
}

// An opening is the opening of a firebox as a flag has it.
type opening mantel.Rectangle

// MarshalText returns a text such as "3 ft x 2 ft 6 in @ 1 ft 2 in", or an empty
// one if there is no opening.
func (o opening) MarshalText() ([]byte, error) {
	if o == (opening{}) {
		return nil, nil
	}
	return fmt.Appendf(nil, "%v x %v @ %v", o.Width, o.Height, o.Gap), nil
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
	}{{&read.Width, width}, {&read.Height, height}, {&read.Gap, below}} {
		if err := part.to.UnmarshalText([]byte(part.text)); err != nil {
			return err
		}
	}
	*o = read
	return nil
}

// A label is the label of a string of lights as a flag has it.
type label lights.Label

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
