package labor_test

import (
	"encoding/json"
	"errors"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A call is all arguments that the methods take, in range.
type call struct {
	Rates  labor.Rates
	Work   []labor.Work
	Tasks  []labor.Task
	Goods  shopping.List
	Up     []labor.Task
	Off    []labor.Task
	Visits int
	Things []labor.Thing
	Boxes  []labor.Box
	Stand  labor.Date
	Down   labor.Date
	Minute int
	Needs  []shopping.Need
	Owned  []shopping.Lot
	Bought shopping.List
	Lost   []shopping.Lot
}

func ordinary() *call {
	ribbon := shopping.Item{Kind: shopping.Ribbon}
	bought := shopping.List{Purchases: []shopping.Purchase{{
		Shares: []shopping.Share{{Need: shopping.Need{Item: ribbon}}}, Cost: decimal.NewFromInt(12),
		Buys: []shopping.Buy{{Offer: shopping.Offer{Item: ribbon, Name: "5 yd roll", Pack: shopping.Quantity{Length: 5 * units.Yard}}, Packs: 2, Cost: decimal.NewFromInt(12)}},
		Cuts: []shopping.Cut{{Offer: "5 yd roll", Roll: 5 * units.Yard, Rolls: 2, Pieces: []shopping.Need{{Item: ribbon, Quantity: shopping.Quantity{Pieces: 3, Length: 54 * units.Inch}}}}},
	}}, Total: decimal.NewFromInt(12)}
	goods := bought
	goods.Purchases = slices.Clone(bought.Purchases)
	goods.Purchases[0].Buys = slices.Clone(bought.Purchases[0].Buys)
	star := shopping.Item{Kind: shopping.Ornament, Type: "star", Color: "crimson", Size: 3 * units.Inch}
	tasks := func() []labor.Task {
		return []labor.Task{{Minutes: 1, People: 1}, {Room: "ticket hall", Kind: shopping.Pick, Quantity: shopping.Quantity{Pieces: 27}, Height: 9 * units.Foot, Minutes: 45, People: 2}}
	}
	return &call{
		Rates: labor.StartingRates(),
		Work: []labor.Work{
			{Room: "tea room", Place: "mantel", Height: 54 * units.Inch},
			{Room: "ticket hall", Height: 9 * units.Foot, From: units.Foot, Place: "artificial tree", Needs: []shopping.Need{pieces(shopping.Pick, 27), pieces(shopping.Pick, 1)}},
		},
		Tasks:  tasks(),
		Up:     tasks(),
		Off:    tasks(),
		Goods:  goods,
		Visits: 2,
		Things: []labor.Thing{{Lot: shopping.Lot{Item: star, Quantity: shopping.Quantity{Pieces: 1}}}, {Lot: shopping.Lot{Item: star, Quantity: shopping.Quantity{Pieces: 14}}, Room: "ticket hall", Weight: units.Ounce}},
		Boxes:  []labor.Box{{Name: "small", Cells: 6, Cell: 4 * units.Inch}, {Name: "large", Cells: 12, Cell: 4 * units.Inch, Limit: 60 * units.Pound}},
		Stand:  739_948, Down: 739_990, Minute: 282,
		Needs:  []shopping.Need{pieces(shopping.Light, 3), pieces(shopping.Pick, 27)},
		Owned:  []shopping.Lot{{Item: star, Quantity: shopping.Quantity{Pieces: 1}}, {Item: star, Quantity: shopping.Quantity{Pieces: 14}}},
		Bought: bought,
		Lost:   []shopping.Lot{{Item: star, Quantity: shopping.Quantity{Pieces: 1}}, {Item: star, Quantity: shopping.Quantity{Pieces: 2}}},
	}
}

// methods call each method with the arguments of its names.
var methods = []struct {
	name string
	args []string // of the fields of call, with the names they have as parameters
	run  func(*call) (any, error)
}{
	{"Rates.Tasks", []string{"Rates", "Work"}, func(c *call) (any, error) {
		up, down, err := c.Rates.Tasks(c.Work)
		return append(up, down...), err
	}},
	{"Rates.Schedule", []string{"Rates", "Tasks"}, func(c *call) (any, error) {
		list, time, err := c.Rates.Schedule(c.Tasks)
		if time.Max > 0 {
			return time, err
		}
		return list, err
	}},
	{"Rates.Quote", []string{"Rates", "Goods", "Up", "Visits"}, func(c *call) (any, error) { return c.Rates.Quote(c.Goods, c.Up, c.Off, c.Visits) }},
	{"Rates.Pack", []string{"Rates", "Things", "Boxes"}, func(c *call) (any, error) {
		list, count, err := c.Rates.Pack(c.Things, c.Boxes)
		if count.Max > 0 {
			return count, err
		}
		return list, err
	}},
	{"Rates.Dates", []string{"Rates", "Stand", "Down", "Needs"}, func(c *call) (any, error) { return c.Rates.Dates(c.Stand, c.Down, c.Minute, c.Work, c.Needs) }},
	{"NextStock", []string{"Owned", "Bought", "Lost"}, func(c *call) (any, error) { return labor.NextStock(c.Owned, c.Bought, c.Lost) }},
}

// free are the fields that a method hands on, or does not look at, by their pointers without numbers.
var free = []string{
	"/work/needs/maxSize", "/work/needs/room", "/work/needs/open", "/work/needs/types", "/work/needs/each", "/work/needs/slack",
	"/work/needs/instead", "/work/needs/basis", "/work/needs/source",
	"/tasks/text", "/tasks/basis", "/tasks/start", "/tasks/who", "/up/text", "/up/basis", "/up/start", "/up/who",
	"/goods/bound", "/goods/least", "/goods/bills", "/goods/purchases/cuts", "/goods/purchases/buys/offer/pack", "/goods/purchases/buys/offer/item",
	"/bought/bound", "/bought/least", "/bought/bills", "/bought/total", "/bought/purchases/cost",
	"/bought/purchases/buys/offer/name", "/bought/purchases/cuts/offer", "/bought/purchases/cuts/pieces/maxSize", "/bought/purchases/cuts/pieces/room", "/bought/purchases/cuts/pieces/open", "/bought/purchases/cuts/pieces/types", "/bought/purchases/cuts/pieces/each", "/bought/purchases/cuts/pieces/slack", "/bought/purchases/cuts/pieces/instead", "/bought/purchases/cuts/pieces/basis", "/bought/purchases/cuts/pieces/source",
	"/goods/purchases/shares/maxSize", "/goods/purchases/shares/room", "/goods/purchases/shares/open", "/goods/purchases/shares/types", "/goods/purchases/shares/each", "/goods/purchases/shares/slack", "/goods/purchases/shares/instead", "/goods/purchases/shares/basis", "/goods/purchases/shares/source", "/goods/purchases/shares/quantity", "/goods/purchases/shares/gets", "/goods/purchases/shares/parts", "/goods/purchases/shares/replaced", "/goods/purchases/shares/for", "/goods/purchases/shares/spare",
	"/bought/purchases/shares", "/purchases/owned", "/purchases/surplus", "/purchases/left", "/purchases/bound", "/purchases/buys/cost",
	"/purchases/buys/offer/contents", "/purchases/buys/offer/price", "/purchases/buys/offer/deals", "/purchases/buys/offer/shelf", "/purchases/buys/offer/store",
	"/things/fragile",
	"/needs/maxSize", "/needs/room", "/needs/quantity", "/needs/open", "/needs/types", "/needs/each", "/needs/slack", "/needs/instead", "/needs/basis", "/needs/source",
}

// Every field of every argument and receiver, put out of its range, is named by a pointer that finds it in the JSON of
// that value, and the function is the one called. Every field of Rates is checked by some method; its tables are in TestTables.
func TestFields(t *testing.T) {
	checked := map[string]bool{}
	count := 0
	for _, m := range methods {
		if _, err := m.run(ordinary()); err != nil {
			t.Fatal(m.name, err)
		}
		for _, arg := range m.args {
			c := ordinary()
			whole := reflect.ValueOf(c).Elem().FieldByName(arg)
			root := "/" + strings.ToLower(arg)
			if arg == "Rates" {
				root = ""
			}
			walk(whole, root, func(at string, v reflect.Value) {
				was := reflect.ValueOf(v.Interface())
				defer v.Set(was)
				spoil(t, at, v)
				_, err := m.run(c)
				bare := strings.Join(slices.DeleteFunc(strings.Split(at, "/"), func(s string) bool { _, err := strconv.Atoi(s); return err == nil }), "/")
				if arg == "Rates" {
					if err == nil {
						return // for another method
					}
					checked[at] = true
				} else if slices.ContainsFunc(free, func(f string) bool {
					return strings.HasPrefix(bare+"/", f+"/") || strings.HasPrefix(f, "/purchases") && strings.Contains(bare+"/", f+"/")
				}) {
					if err != nil {
						t.Errorf("%s: %s is said to be free: %v", m.name, at, err)
					}
					return
				}
				count++
				want := at
				if v.Kind() == reflect.Int && v.Type() == whole.Type() || v.Type() == reflect.TypeFor[labor.Date]() {
					want = strings.ToLower(arg) // a plain argument
				}
				var e *units.Error
				if !errors.As(err, &e) || e.Field != want || e.Func != "labor."+m.name || e.Want == "" {
					t.Errorf("%s: %s put to %v: %v", m.name, at, v, err)
					return
				}
				v.Set(was)
				if want == at && !resolves(t, whole.Interface(), strings.TrimPrefix(at, root)) {
					t.Errorf("%s: nothing at %s of %T", m.name, at, whole.Interface())
				}
			})
		}
	}
	rates := labor.StartingRates()
	walk(reflect.ValueOf(&rates).Elem(), "", func(at string, v reflect.Value) {
		if !checked[at] {
			t.Errorf("no method checks %s", at)
		}
	})
	if count < 80 {
		t.Errorf("only %d fields", count)
	}
}

// spoil puts v out of any range.
func spoil(t *testing.T, at string, v reflect.Value) {
	switch x := v.Addr().Interface().(type) {
	case *decimal.Decimal:
		*x = decimal.NewFromInt(-1)
	case *shopping.Item:
		x.Size = -1
	case *shopping.Quantity:
		x.Pieces = -1
	case *shopping.Kind:
		*x = 99
	case *units.Style:
		*x = 99
	case *string:
		*x = "two\nlines"
	case *bool:
		*x = !*x
	default:
		if !v.CanInt() {
			t.Fatalf("%s: a %v is not looked at", at, v.Type())
		}
		v.SetInt(-1)
	}
}

// walk calls f with each field that is one value in JSON, and its pointer.
func walk(v reflect.Value, at string, f func(string, reflect.Value)) {
	switch v.Interface().(type) {
	case shopping.Item, shopping.Quantity, decimal.Decimal, shopping.Kind, labor.Date:
		f(at, v)
		return
	case shopping.Shelf, []int:
		return
	}
	switch v.Kind() {
	case reflect.Array:
		for k := 1; k < v.Len(); k++ {
			walk(v.Index(k), at+"/"+shopping.Kind(k).String(), f)
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), at+"/"+strconv.Itoa(i), f)
		}
	case reflect.Map:
	case reflect.Struct:
		for i := range v.NumField() {
			name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
			if v.Type().Field(i).Anonymous {
				walk(v.Field(i), at, f)
				continue
			}
			if name == "item" && v.Type() == reflect.TypeFor[shopping.Need]() && strings.HasPrefix(at, "/needs") {
				kind := v.Field(i).FieldByName("Kind") // of a need for dates only the kind is looked at
				f(at+"/item", kind)
				continue
			}
			walk(v.Field(i), at+"/"+name, f)
		}
	default:
		f(at, v)
	}
}

// resolves reports whether a pointer, RFC 6901, finds something in the JSON of v, or leads to a field that JSON leaves out since it is empty.
func resolves(t *testing.T, v any, pointer string) bool {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var at any
	if err := json.Unmarshal(text, &at); err != nil {
		t.Fatal(err)
	}
	names := strings.Split(pointer, "/")[1:]
	for k, name := range names {
		switch x := at.(type) {
		case map[string]any:
			next, ok := x[name]
			if !ok {
				left := []string{"room", "place", "from", "kind", "weight", "cell", "limit", "units"}
				return k == len(names)-1 && slices.Contains(left, name)
			}
			at = next
		case []any:
			i, err := strconv.Atoi(name)
			if err != nil || i < 0 || i >= len(x) {
				return false
			}
			at = x[i]
		default:
			return false
		}
	}
	return true
}

// What goes beyond a single field: lists that are too long, sums that are too large, values that do not go together.
func TestRefused(t *testing.T) {
	long := strings.Repeat("x", 65)
	rows := []struct {
		method, field string
		reason        error
		spoil         func(*call)
	}{
		{"Rates.Tasks", "/work", units.ErrRange, func(c *call) { c.Work = make([]labor.Work, 501) }},
		{"Rates.Tasks", "/work/1/needs", units.ErrRange, func(c *call) { c.Work[1].Needs = slices.Repeat(c.Work[1].Needs, 2501) }},
		{"Rates.Tasks", "/work/1/from", units.ErrFit, func(c *call) { c.Work[1].From = 10 * units.Foot }},
		{"Rates.Tasks", "/work/0/place", units.ErrName, func(c *call) { c.Work[0].Place = "sofa" }},
		{"Rates.Tasks", "/work/1/room", units.ErrSyntax, func(c *call) { c.Work[1].Room = long }},
		{"Rates.Tasks", "/work/1/room", units.ErrSyntax, func(c *call) { c.Work[1].Room = "\xff" }},
		{"Rates.Tasks", "/work/1/needs/1/item", units.ErrName, func(c *call) { c.Work[1].Needs[1].Item.Kind = 0 }},
		{"Rates.Tasks", "/work/1/needs/1/item", units.ErrSyntax, func(c *call) { c.Work[1].Needs[1].Item.Type = "a, b" }},
		{"Rates.Tasks", "/work/1/needs/0/quantity", units.ErrFit, func(c *call) { c.Work[1].Needs[0].Quantity.Length = units.Foot }},
		{"Rates.Tasks", "/work/1/needs/0/quantity", units.ErrFit, func(c *call) { c.Work[1].Needs[0].Item.Kind = shopping.Garland }},
		{"Rates.Tasks", "/work/1/needs/0/quantity", units.ErrRange, func(c *call) {
			c.Work[1].Needs[0] = shopping.Need{Item: shopping.Item{Kind: shopping.Garland}, Quantity: shopping.Quantity{Pieces: 1_000_000, Length: units.Meter + 1}}
		}},
		{"Rates.Tasks", "/work/1/needs/1/quantity", units.ErrRange, func(c *call) { c.Work[1].Needs[0].Quantity.Pieces = 1_000_000 }},
		{"Rates.Tasks", "/work/1/needs", units.ErrRange, func(c *call) {
			c.Work[1].Needs[0].Quantity.Pieces, c.Rates.Minutes["picks"] = 900_000, decimal.NewFromInt(1000)
		}},
		{"Rates.Tasks", "/pair", units.ErrFit, func(c *call) { c.Rates.Reach = 8*units.Foot + 1 }},
		{"Rates.Tasks", "/minutes/artificial tree", units.ErrRange, func(c *call) { c.Rates.Minutes["artificial tree"] = decimal.New(12345, -5) }},
		{"Rates.Tasks", "/minutes/artificial tree", units.ErrRange, func(c *call) { c.Rates.Minutes["artificial tree"] = decimal.New(1, 2_000_000_000) }},
		{"Rates.Tasks", "/minutes/mantel", units.ErrRange, func(c *call) { c.Rates.Minutes["mantel"] = decimal.RequireFromString("1000.0001") }},
		{"Rates.Schedule", "/tasks", units.ErrRange, func(c *call) { c.Tasks = make([]labor.Task, 5001) }},
		{"Rates.Schedule", "/crew", units.ErrFit, func(c *call) { c.Rates.Crew = 1 }},
		{"Rates.Schedule", "/tasks/0/quantity", units.ErrRange, func(c *call) { c.Tasks[0].Quantity.Pieces = 1 }},
		{"Rates.Schedule", "/tasks/200/minutes", units.ErrRange, func(c *call) {
			c.Tasks = slices.Repeat([]labor.Task{{Minutes: 100_000, People: 50}}, 201)
		}},
		{"Rates.Dates", "/work", units.ErrRange, func(c *call) { c.Work = make([]labor.Work, 501) }},
		{"Rates.Dates", "/work/1/needs/0/item", units.ErrName, func(c *call) { c.Work[1].Needs[0].Item.Kind = 255 }},
		{"Rates.Dates", "/work/1/place", units.ErrName, func(c *call) { c.Work[1].Place = "roof" }},
		{"Rates.Quote", "/goods/total", units.ErrFit, func(c *call) { c.Goods.Total = decimal.NewFromInt(11) }},
		{"Rates.Quote", "/goods/total", units.ErrFit, func(c *call) { c.Goods.Bills = []shopping.Bill{{Tax: decimal.New(1, -2)}} }},
		{"Rates.Quote", "/goods/bills/0/tax", units.ErrRange, func(c *call) { c.Goods.Bills = []shopping.Bill{{Tax: decimal.New(-1, -2)}} }},
		{"Rates.Quote", "/goods/purchases", units.ErrRange, func(c *call) { c.Goods.Purchases = make([]shopping.Purchase, 5001) }},
		{"Rates.Quote", "/goods/purchases/0/buys/0/offer/name", units.ErrSyntax, func(c *call) { c.Goods.Purchases[0].Buys[0].Offer.Name = "" }},
		{"Rates.Quote", "/down/1/people", units.ErrRange, func(c *call) { c.Off[1].People = 51 }},
		{"Rates.Quote", "/down", units.ErrRange, func(c *call) { c.Off = make([]labor.Task, 5001) }},
		{"Rates.Dates", "down", units.ErrRange, func(c *call) { c.Down = -1 }},
		{"Rates.Pack", "/things", units.ErrRange, func(c *call) { c.Things = make([]labor.Thing, 10_001) }},
		{"Rates.Pack", "/things/1/quantity", units.ErrRange, func(c *call) { c.Things[1].Quantity.Pieces = 100_000 }},
		{"Rates.Pack", "/things/1/weight", units.ErrRange, func(c *call) { c.Things[1].Weight = 200*units.Pound + 1 }},
		{"Rates.Pack", "/things/1/cell", units.ErrRange, func(c *call) { c.Things[1].Cell = 100*units.Foot + 1 }},
		{"Rates.Pack", "/boxes", units.ErrRange, func(c *call) { c.Boxes = make([]labor.Box, 21) }},
		{"Rates.Pack", "/boxes/1/name", units.ErrDuplicate, func(c *call) { c.Boxes[1].Name = "small" }},
		{"Rates.Pack", "/boxes/1/limit", units.ErrRange, func(c *call) { c.Boxes[1].Limit = 80*units.Pound + 1 }},
		{"Rates.Pack", "/lift", units.ErrRange, func(c *call) { c.Rates.Lift = 0 }},
		{"Rates.Dates", "down", units.ErrFit, func(c *call) { c.Down = c.Stand - 1 }},
		{"Rates.Dates", "down", units.ErrRange, func(c *call) { c.Down = c.Stand + 3651 }},
		{"Rates.Dates", "stand", units.ErrRange, func(c *call) { c.Stand, c.Down = 10, 30 }},
		{"Rates.Dates", "elapsed", units.ErrRange, func(c *call) { c.Minute = -1 }},
		{"Rates.Dates", "/needs", units.ErrRange, func(c *call) { c.Needs = make([]shopping.Need, 5001) }},
		{"NextStock", "/owned", units.ErrRange, func(c *call) { c.Owned = make([]shopping.Lot, 5001) }},
		{"NextStock", "/lost/1/quantity", units.ErrRange, func(c *call) { c.Lost[1].Quantity.Pieces = 15 }},
		{"NextStock", "/lost/1/quantity", units.ErrRange, func(c *call) { c.Lost[1].Quantity = shopping.Quantity{Length: units.Foot} }},
		{"NextStock", "/bought/purchases", units.ErrRange, func(c *call) { c.Bought.Purchases = make([]shopping.Purchase, 5001) }},
		{"NextStock", "/bought/purchases/0/buys/0/offer/contents/0/quantity", units.ErrRange, func(c *call) {
			c.Bought.Purchases[0].Buys[0].Offer.Contents = []shopping.Lot{{Item: c.Owned[0].Item, Quantity: shopping.Quantity{Pieces: -1}}}
		}},
		{"NextStock", "/bought/purchases/0/buys/0/offer/contents/1/item", units.ErrName, func(c *call) {
			c.Bought.Purchases[0].Buys[0].Offer.Contents = []shopping.Lot{{Item: c.Owned[0].Item, Quantity: shopping.Quantity{Pieces: 8}}, {}}
		}},
		{"NextStock", "/bought/purchases/0/buys/0/packs", units.ErrRange, func(c *call) {
			c.Bought.Purchases[0].Buys[0].Packs, c.Bought.Purchases[0].Buys[0].Offer.Pack.Pieces = 501, 2000
		}},
		{"NextStock", "/bought/purchases/0/cuts/0/rolls", units.ErrRange, func(c *call) { c.Bought.Purchases[0].Cuts[0].Pieces[0].Quantity.Pieces = 600_000 }},
		{"NextStock", "/bought/purchases", units.ErrRange, func(c *call) {
			b := &c.Bought.Purchases[0].Buys[0]
			b.Offer.Contents, b.Packs = []shopping.Lot{{Item: shopping.Item{Kind: shopping.Light}, Quantity: shopping.Quantity{Pieces: 100}}}, 5001
			c.Bought.Purchases[0].Cuts = nil
		}},
		{"NextStock", "/bought/purchases/0/cuts/0/rolls", units.ErrFit, func(c *call) { c.Bought.Purchases[0].Cuts[0].Rolls = 3 }},
		{"NextStock", "/bought/purchases/0/cuts/0/pieces", units.ErrRange, func(c *call) { c.Bought.Purchases[0].Cuts[0].Pieces = nil }},
		{"NextStock", "/bought/purchases/0/cuts/0/pieces/1/item", units.ErrFit, func(c *call) {
			c.Bought.Purchases[0].Cuts[0].Pieces = append(c.Bought.Purchases[0].Cuts[0].Pieces, shopping.Need{Item: shopping.Item{Kind: shopping.Garland}})
		}},
		{"NextStock", "/bought/purchases/0/cuts/0/pieces/0/quantity", units.ErrFit, func(c *call) { c.Bought.Purchases[0].Cuts[0].Pieces[0].Quantity.Pieces = 4 }},
	}
	for _, row := range rows {
		c := ordinary()
		row.spoil(c)
		i := slices.IndexFunc(methods, func(m struct {
			name string
			args []string
			run  func(*call) (any, error)
		},
		) bool {
			return m.name == row.method
		})
		out, err := methods[i].run(c)
		var e *units.Error
		if !errors.As(err, &e) || !errors.Is(err, row.reason) || e.Field != row.field || e.Func != "labor."+row.method {
			t.Errorf("%s, %s: %v", row.method, row.field, err)
		}
		if !reflect.ValueOf(out).IsZero() {
			t.Errorf("%s, %s: %v beside an error", row.method, row.field, out)
		}
	}
}

// Every name of every table is checked by a method, and a name that is none is refused.
func TestTables(t *testing.T) {
	var kinds []string
	for k := range kindTable {
		if k > 0 {
			kinds = append(kinds, shopping.Kind(k).String())
		}
	}
	percent := []string{"above", "down", "markup", "discount", "deposit", "goods tax", "work tax", "travel tax"}
	for _, row := range []struct {
		method, table string
		names         []string
	}{
		{"Rates.Tasks", "minutes", append([]string{"artificial tree", "mantel", "day"}, kinds...)},
		{"Rates.Tasks", "percent", percent},
		{"Rates.Quote", "percent", percent},
		{"Rates.Quote", "price", []string{"hour", "visit", "consultation"}},
		{"Rates.Dates", "minutes", append([]string{"artificial tree", "mantel", "day"}, kinds...)},
		{"Rates.Dates", "days", append([]string{"wiring", "cut tree"}, kinds...)},
	} {
		past := shopping.Kind(len(kindTable)).String() // of the kind past the last
		for _, name := range append([]string{"so/fa", past}, row.names...) {
			c := ordinary()
			put := func(r *labor.Rates) { // also a table that was nil, as in the zero value
				switch row.table {
				case "minutes":
					r.Minutes[name] = decimal.NewFromInt(-1)
				case "percent":
					r.Percent[name] = decimal.NewFromInt(-1)
				case "price":
					r.Price[name] = decimal.NewFromInt(-1)
				case "days":
					r.Days[name] = -1
				}
			}
			put(&c.Rates)
			for _, m := range methods {
				if m.name != row.method {
					continue
				}
				_, err := m.run(c)
				reason, field := units.ErrRange, "/"+row.table+"/"+name
				if name == "so/fa" || name == past {
					reason, field = units.ErrName, "/"+row.table+"/"+strings.ReplaceAll(name, "/", "~1")
				}
				var e *units.Error
				if !errors.As(err, &e) || !errors.Is(err, reason) || e.Field != field {
					t.Errorf("%s, %s %s: %v", row.method, row.table, name, err)
				}
			}
		}
	}
	// The most of each: 1000 %, 100 % and 1,000,000.
	for name, most := range map[string]int64{"above": 1000, "markup": 1000, "down": 100, "discount": 100, "deposit": 100, "goods tax": 100, "work tax": 100, "travel tax": 100} {
		r := labor.StartingRates()
		r.Percent[name] = decimal.NewFromInt(most)
		if _, _, err := r.Tasks(nil); err != nil {
			t.Error(err)
		}
		r.Percent[name] = decimal.NewFromInt(most + 1)
		if _, _, err := r.Tasks(nil); err == nil {
			t.Errorf("%s of %d %%", name, most+1)
		}
	}
	// Without tables nothing takes time or money.
	var none labor.Rates
	up, down, err := none.Tasks(ordinary().Work)
	if err != nil || personMinutes(up) != 0 || personMinutes(down) != 0 {
		t.Error(up, down, err)
	}
}
