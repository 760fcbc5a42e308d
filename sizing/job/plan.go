package job

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A Plan is what a request takes.
type Plan struct {
	Trees    []TreePlan       `json:"trees"`            // in the order of the request
	Mantels  []MantelPlan     `json:"mantels"`          // in the order of the request
	Colors   *palette.Reading `json:"colors,omitempty"` // nil if they are open
	Box      *palette.Sorting `json:"box,omitempty"`    // nil without a box
	Basket   *shopping.List   `json:"basket,omitempty"` // nil if there is nothing to buy from
	Cautions []units.Caution  `json:"cautions"`         // each once; one about a single room names it

	// The work, if the request has a Stand date.
	Work     []labor.Task     `json:"work,omitempty"`     // putting up, as scheduled
	Time     units.Range[int] `json:"time,omitzero"`      // minutes: Max as scheduled; no schedule takes less than Min
	TakeDown []labor.Task     `json:"takeDown,omitempty"` // if the request has a day for it, in the order of Dates; Start counts from the beginning of its date
	Dates    []labor.Day      `json:"dates,omitempty"`    // what to do when
	Quote    []labor.Option   `json:"quote,omitempty"`    // with a visit a day; a basis is for the house alone
	Cartons  []labor.Carton   `json:"cartons,omitempty"`  // next year's stock by room, the balls of a tree by size; what did not hang is in "spares"
	Stock    []shopping.Lot   `json:"stock,omitempty"`    // next year's Shop.Owned, see above; without a basket as planned
}

// Make returns the plan for a request. It sizes every tree and mantel by the rules of
// the house, shares the ornaments out, and buys what is needed at the least cost or, with
// a budget, for the fullest trees: see [shopping.Shop.Fullest].
//
// A room hangs what the basket gets it or, without a basket, what is planned. Shortages, overrun
// budgets and bad fits are no errors but part of the plan. Lights hang by whole strings: without a
// basket those of their label, or of 100. A mantel without garland is not dressed: if the shop
// sells garland but the shelves or the budget leave none, only its stockings and their hooks are
// bought.
//
// Needs name a size if every offer of the color does, as many types as can be bought, and, for
// other kinds, the type "mantel" if offered. Pieces owned without a size are used first; the
// nearest sizes replace a missing one, none over 1½ times the largest planned. Toppers and
// skirts are not planned.
func Make(request Request) (Plan, error) {
	const function = "job.Make"
	p, faults := plan(function, request)
	if len(faults) == 0 {
		return p, nil
	}
	if all := check(function, request); len(all) > 0 {
		faults = all
	}
	return Plan{}, join(faults)
}

// plan is Make, with the faults that it meets first.
func plan(function string, r Request) (Plan, []*units.Error) {
	var d draft
	faults := d.prepare(function, r)
	if len(faults) == 0 {
		faults = d.owned(place(function, d.shop(), "/shop", "needs", ""))
	}
	if len(faults) == 0 {
		d.settle()
		faults = d.labor(function, r)
	}
	if len(faults) > 0 {
		return Plan{}, faults
	}
	d.cautions()
	return d.Plan, nil
}

// A draft is a plan in the making.
type draft struct {
	Plan
	house  House
	goods  shopping.Shop // with what of the box fits
	boxed  int           // lots owned that are from the box
	budget decimal.Decimal
	stock  stock
	rooms  []dressing // of the trees, then of the mantels

	careful []units.Caution // of the work
}

var one = decimal.NewFromInt(1)

// A faulty collects the faults of a request.
type faulty struct {
	function string
	list     []*units.Error
}

// note notes the fault of a value at a place of the request, as [place] has it.
func (f *faulty) note(err error, receiver string, args ...string) bool {
	if err == nil {
		return true
	}
	f.list = append(f.list, place(f.function, err, receiver, args...)...)
	return false
}

// refuse notes a fault of our own.
func (f *faulty) refuse(pointer, value, want string, reason error) {
	f.list = append(f.list, &units.Error{Func: f.function, Field: pointer, Value: value, Want: want, Err: reason})
}

// place returns an error of the library as one of a value in the request. Args
// are pairs of a name that the library has for an argument and the place in the request that it came
// from; a field of no argument is one of the receiver.
func place(function string, err error, receiver string, args ...string) []*units.Error {
	e, ok := err.(*units.Error)
	if !ok {
		return nil // there is no error, since no other is returned
	}
	moved := *e
	moved.Func = function
	path := strings.TrimPrefix(e.Field, "/")
	first, rest, inner := strings.Cut(path, "/")
	moved.Field = receiver + "/" + path
	for i := 0; i < len(args); i += 2 {
		if args[i] == first {
			moved.Field = args[i+1]
			if inner {
				moved.Field += "/" + rest
			}
		}
	}
	moved.Field = strings.TrimSuffix(moved.Field, "/")
	return []*units.Error{&moved}
}

// owned returns faults with those of what is owned at their places: what fits of the box comes before what the shop is told.
func (d *draft) owned(faults []*units.Error) []*units.Error {
	const owned = "/shop/owned/"
	for _, f := range faults {
		if rest, ok := strings.CutPrefix(f.Field, owned); ok {
			number, rest, _ := strings.Cut(rest, "/")
			n, _ := strconv.Atoi(number) // which List and NextStock wrote
			if f.Field = owned + strconv.Itoa(n-d.boxed) + "/" + rest; n < d.boxed {
				f.Field = "/box"
			}
		}
	}
	return faults
}

// Bounds of a request.
const maxRooms = 100

// prepare makes the plan without a basket, and returns the faults that it meets, one for each value
// at most and the first of several in a value.
func (d *draft) prepare(function string, r Request) []*units.Error {
	f := &faulty{function: function}
	d.house, d.goods, d.budget = r.House, r.Shop, r.Shop.Budget
	working := r.Stand != 0 || r.Down != 0 || len(r.Lost) != 0
	switch usual := reflect.ValueOf(d.house).IsZero(); {
	case usual && !working:
		d.house = withoutWork()
	case usual:
		d.house = CommonPractice()
		f.dates(d.house.Rates, r)
	case reflect.ValueOf(d.house.Rates).IsZero() && d.house.Circuit == (lights.Circuit{}):
		f.refuse("/house", "no rates and no circuit", "a House that begins with CommonPractice", units.ErrFit)
		d.house = CommonPractice()
		f.dates(d.house.Rates, r)
	default:
		f.house(d.house)
		f.dates(d.house.Rates, r)
	}
	if n := len(r.Trees) + len(r.Mantels); n > maxRooms {
		f.refuse("/trees", strconv.Itoa(n)+" trees and mantels", "at most "+strconv.Itoa(maxRooms)+" together", units.ErrRange)
		return f.list
	}
	d.colors(f, r)
	f.odd(r.Shop)
	if r.Shop.Budget.IsNegative() {
		f.refuse("/shop/budget", r.Shop.Budget.String(), "0 to 1000000000", units.ErrRange)
	}
	d.Trees, d.Mantels = make([]TreePlan, 0, len(r.Trees)), make([]MantelPlan, 0, len(r.Mantels))
	d.rooms = make([]dressing, 0, len(r.Trees)+len(r.Mantels))
	d.stock = stockOf(d.goods, r.Colors, len(r.Mantels) != 0)
	d.stock.near = min(maxNear, allNear/max(1, len(r.Trees)))
	rooms := f.rooms(r)
	for i, t := range r.Trees {
		t.Room = rooms[i]
		d.tree(f, r.Colors, t, "/trees/"+strconv.Itoa(i))
	}
	for i, m := range r.Mantels {
		m.Room = rooms[len(r.Trees)+i]
		d.mantel(f, r.Colors, m, "/mantels/"+strconv.Itoa(i))
	}
	return f.list
}

// rooms returns the names of the rooms, those of the trees first. What shares a name is told apart: "hall, tree 1".
func (f *faulty) rooms(r Request) []string {
	given := make([]string, 0, len(r.Trees)+len(r.Mantels))
	what := func(i int) string {
		switch {
		case i < len(r.Trees):
			return "tree"
		case r.Mantels[i-len(r.Trees)].Run.given():
			return "garland"
		}
		return "mantel"
	}
	for i, t := range r.Trees {
		f.room(t.Room, "/trees/"+strconv.Itoa(i))
		given = append(given, t.Room)
	}
	for i, m := range r.Mantels {
		f.room(m.Room, "/mantels/"+strconv.Itoa(i))
		given = append(given, m.Room)
	}
	names := slices.Clone(given)
	for i, room := range given {
		shared, alike := false, false
		for k, other := range given {
			if k != i && other == room {
				shared, alike = true, alike || what(k) == what(i)
			}
		}
		if !shared {
			continue
		}
		name := what(i)
		if room != "" {
			name = room + ", " + name
		}
		for n, plain := 1, name; alike && n == 1 || slices.Contains(names, name); n++ {
			name = plain + " " + strconv.Itoa(n)
		}
		if len(name) > maxName {
			at := "/trees/" + strconv.Itoa(i)
			if i >= len(r.Trees) {
				at = "/mantels/" + strconv.Itoa(i-len(r.Trees))
			}
			f.refuse(at+"/room", room, "at most "+strconv.Itoa(maxName-len(name)+len(room))+" bytes where several share it", units.ErrSyntax)
		}
		names[i] = name
	}
	return names
}

// house notes the faults of the rules that no value of the request meets.
func (f *faulty) house(h House) {
	if _, err := h.Units.MarshalText(); err != nil {
		f.refuse("/house/units", h.Units.String(), "feet and inches, feet, inches, yards or metric", units.ErrName)
	}
	_, err := lights.Strings{Each: lights.Label{Lamps: 1, Length: units.Foot, Power: units.Watt}}.Load(h.Circuit)
	f.note(err, "/house/circuit", "c", "/house/circuit", "circuit", "/house/circuit")
	const rates = "/house/rates"
	h.Rates.Units = units.InFeetInches // those of the house have been looked at
	_, _, err = h.Rates.Tasks(nil)
	f.note(err, rates)
	_, _, err = h.Rates.Schedule(nil)
	f.note(err, rates)
	_, err = h.Rates.Quote(shopping.List{}, nil, nil, 0)
	f.note(err, rates)
	_, _, err = h.Rates.Pack(nil, h.Boxes)
	f.note(err, rates, "boxes", "/house/boxes")
}

// colors reads the colors, and sorts last year's box into them.
func (d *draft) colors(f *faulty, r Request) {
	if len(r.Colors) == 0 {
		if len(r.Box) > 0 {
			f.refuse("/box", strconv.Itoa(len(r.Box))+" entries", "colors, to sort them by", units.ErrFit)
		}
		return
	}
	reading, err := d.house.Colors.Read(r.Colors, r.On)
	if !f.note(err, "/house/colors", "palette", "/colors", "on", "/on") {
		return
	}
	d.Colors = &reading
	if len(r.Box) == 0 {
		return
	}
	sorting, err := d.house.Colors.Sort(r.Colors, r.Box)
	if !f.note(err, "/house/colors", "palette", "/colors", "box", "/box") {
		return
	}
	d.Box = &sorting
	// What fits is owned, before what the shop is told to be owned.
	var owned []shopping.Lot
	for i, s := range r.Colors {
		if n := sorting.Kept[i]; n != 0 {
			owned = append(owned, shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Color: s.Name}, Quantity: shopping.Quantity{Pieces: n}})
		}
	}
	d.boxed = len(owned)
	d.goods.Owned = append(owned, d.goods.Owned...)
}

// shop fills the basket.
func (d *draft) shop() error {
	if len(d.goods.Offers)+len(d.goods.Owned) == 0 {
		_, err := d.goods.List(nil) // which looks at the rest of the shop
		return err
	}
	if rates := d.house.Rates; d.goods.Coin.IsZero() && rates.Minutes != nil {
		d.goods.Coin = decimal.New(1, -int32(rates.Places))
	}
	buy := d.goods.List
	if !d.budget.IsZero() {
		buy = d.goods.Fullest
	}
	list, err := d.buy(buy)
	if err != nil {
		return err
	}
	d.Basket = &list
	return nil
}

// shares returns those of a room by its place among the rooms.
func (d *draft) shares(i int) *[]shopping.Share {
	if i < len(d.Trees) {
		return &d.Trees[i].Shares
	}
	return &d.Mantels[i-len(d.Trees)].Shares
}

// ofRoom are the codes of cautions that hold for one room alone, which they name.
var ofRoom = []string{
	"low shelf left", "low shelf right", "wall left", "wall right", "half hung", "half hung overload", "lifted", "hook overload", "stocking overload", "covered",
	"opening not given", "height not given", "depth not given", "thickness not given", "stocking thickness not given",
	"no hooks planned", "other garland", "no garland", "too few hooks",
}

// cautions gathers those that the job calls for.
func (d *draft) cautions() {
	d.Cautions = []units.Caution{}
	say := func(list []units.Caution) {
		d.Cautions = slices.Grow(d.Cautions, len(list))
		for _, c := range list {
			if c.Text != "" && !slices.Contains(d.Cautions, c) {
				d.Cautions = append(d.Cautions, c)
			}
		}
	}
	for i, r := range d.rooms {
		for k, c := range r.cautions {
			if slices.Contains(ofRoom, c.Code) {
				r.cautions[k].Room = r.name
			}
		}
		say(r.cautions)
		if i < len(d.Trees) && d.Trees[i].Load.Caution.Text != "" {
			say([]units.Caution{d.Trees[i].Load.Caution})
		}
	}
	say(d.careful)
	if c := d.unused(); c.Text != "" {
		say([]units.Caution{c})
	}
}
