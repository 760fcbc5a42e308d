package surface

import (
	"bytes"
	"io"
	"reflect"
	"strings"
	"sync"

	"github.com/shopspring/decimal"

	"example.com/fircone/units"
)

// variants is how many values of a struct, and how many lists, are made of those of their parts.
const variants = 24

// texts are what the parsers are given: each kind of text that one of them reads, and some that none does.
var texts = []string{
	"7 ft 6 in", "7ft6in", `7'6"`, "7′6″", "7.5 ft", "7 1/2 ft", "7½ ft", "7-1/2 in", "90in", "2 yd 1 ft", "2.3 m",
	"230 cm", "64 inches", "-4 ft", "0 ft", "1/64 in", "12 sq ft", "1.5 m2", "40 sq in", "3 lb 4 oz", "1.25 kg", "250 g",
	"1/16 oz", "4.8 W", "1.2 kW", "40 mW", "full", "slim", "pencil", "all round", "wall", "corner", "half", "200 degrees",
	"garland", "picks", "both", "ribbon", "traditional", "asymmetrical", "left", "right", "matte", "shiny", "glitter",
	"navy", "Dark Green", "#b22222", "#0f0", "rgb(178, 34, 34)", "burgundy matte, gold shiny, ivory", "gold", "red, green",
	"24", "24 pieces", "3 of 6 ft", "27 picks", "81 ft", "", "7", "6 in 7 ft", "7 ft 14 in", "1e3 m", "seven feet", "12,5 m",
	"ft", "9223372036 m", "tinsel", "7 ft 6", "--1 m",
}

// ordinary lists values by type, for types whose parts say too little of what they mean. The lists
// by name, of a parameter or a field in lower case, come before those for any name, "".
var ordinary = map[reflect.Type]map[string][]any{
	reflect.TypeFor[units.Length](): {
		"": list(7*units.Foot+6*units.Inch, 9*units.Foot, 6*units.Inch, 64*units.Inch, 4*units.Foot+6*units.Inch, 12*units.Foot,
			1*units.Foot, 10*units.Inch, 18*units.Inch, 2300*units.Millimeter, 3*units.Foot, 5*units.Foot, 30*units.Foot,
			4*units.Inch, 25*units.Foot+1, 1*units.Inch+units.Inch/3, 81*units.Foot, 14*units.Foot+units.Inch/8, 0, -2*units.Foot, 99*units.Foot),
		"unit":    list(units.Foot, units.Inch, units.Yard, units.Millimeter, units.Centimeter, units.Meter, units.Nanometer, 7*units.Foot),
		"step":    list(units.Inch/16, units.Inch, units.Centimeter, units.Foot, units.Nanometer, units.Inch/2, 7*units.Millimeter, 3*units.Yard, 0),
		"height":  heights,
		"ceiling": list(8*units.Foot, 9*units.Foot, 10*units.Foot, 12*units.Foot, 2400*units.Millimeter, 16*units.Foot),
		"spacing": list(10*units.Inch, 4*units.Inch, 6*units.Inch, 12*units.Inch, 18*units.Inch, 1*units.Inch, 25*units.Centimeter, 3*units.Foot),
	},
	reflect.TypeFor[units.Area](): {
		"": list(units.SquareFoot, 40*units.SquareFoot, units.SquareMeter, units.SquareInch, 3*units.SquareMeter+7, 0, 144*units.SquareInch-1,
			250*units.SquareCentimeter, -units.SquareFoot, 12*units.SquareYard),
		"unit": list(units.SquareFoot, units.SquareInch, units.SquareMeter, units.SquareMicrometer, 2*units.SquareYard),
	},
	reflect.TypeFor[units.Mass](): {
		"":     list(units.Pound, 3*units.Pound+4*units.Ounce, units.Kilogram, 250*units.Gram, units.Ounce/16, 0, 7*units.Gram+1, -units.Ounce, 40*units.Pound),
		"unit": list(units.Pound, units.Ounce, units.Kilogram, units.Gram, units.Nanogram),
	},
	reflect.TypeFor[units.Power](): {
		"":     list(units.Watt, 4800*units.Milliwatt, 1200*units.Watt, units.Kilowatt, 0, 40*units.Milliwatt, 7*units.Watt+1, -units.Watt, 15*units.Watt),
		"unit": list(units.Watt, units.Kilowatt, units.Milliwatt, 7*units.Watt),
	},
	reflect.TypeFor[decimal.Decimal](): {
		"": list(money("12.50"), money("3.99"), money("0"), money("7.5"), money("0.125"), money("19.95"), money("100"), money("-4"), money("0.0001")),
	},
	reflect.TypeFor[string](): {
		"item": list("garland", "picks", "lights", "ribbon", "ornaments"),
		"room": list("ticket hall", "waiting room", "tea room"),
		"name": list("gold", "ivory", "house stock", "roll of 25 ft"),
	},
	reflect.TypeFor[[]byte](): {"b": list([]byte(nil), []byte("width="))},
}

var heights = list(7*units.Foot, 9*units.Foot, 4*units.Foot+6*units.Inch, 7*units.Foot+6*units.Inch, 12*units.Foot, 2*units.Foot, 6*units.Foot+6*units.Inch,
	2300*units.Millimeter, 15*units.Foot+1, 32*units.Foot, 99*units.Foot+11*units.Inch, 1*units.Foot, 6*units.Inch)

func list[T any](values ...T) []any {
	l := make([]any, len(values))
	for i, v := range values {
		l[i] = v
	}
	return l
}

func money(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// A request is for values of a type, for the parameter or field of a name that an owner, a function
// or a struct type, has.
type request struct {
	t           reflect.Type
	owner, name string
}

var (
	memo   = map[request][]reflect.Value{}
	making = map[reflect.Type]bool{} // the struct types whose values are being made
	again  bool                      // one was asked for while it was being made
	lock   sync.Mutex
)

// Ordinary returns values for parameter i of f, most of which it should take, and a few which it
// should refuse. Callers share them.
func Ordinary(f Func, i int) []reflect.Value {
	lock.Lock()
	defer lock.Unlock()
	return parameter(f, i)
}

func parameter(f Func, i int) []reflect.Value {
	if _, ok := fields[f.Name+"."+f.Params[i]]; f.Method && i == 0 && !ok {
		return values(f.Type().In(i), "", "")
	}
	return values(f.Type().In(i), f.Name, f.Params[i])
}

func values(t reflect.Type, owner, name string) []reflect.Value {
	key := request{t, owner, name}
	if have, ok := memo[key]; ok {
		return have
	}
	if l, ok := fields[owner+"."+name]; ok {
		var vs []reflect.Value
		for _, x := range l {
			vs = append(vs, reflect.ValueOf(x).Convert(t))
		}
		memo[key] = vs
		return vs
	}
	before := again
	again = false
	made := produce(t, strings.ToLower(name))
	if !again || len(making) == 0 {
		memo[key] = made // it does not lack what is still being made
	}
	again = again || before
	return made
}

func produce(t reflect.Type, name string) []reflect.Value {
	var vs []reflect.Value
	add := func(xs ...any) {
		for _, x := range xs {
			vs = append(vs, reflect.ValueOf(x).Convert(t))
		}
	}
	if byName := ordinary[t]; byName != nil {
		if l := byName[name]; l != nil {
			add(l...)
			return vs
		}
		if l := byName[""]; l != nil {
			add(l...)
			return vs
		}
	}
	if t.PkgPath() != "" {
		for _, c := range consts {
			if reflect.TypeOf(c) == t {
				add(c)
			}
		}
		if len(vs) > 1 {
			return vs
		}
		vs = nil
	}
	switch t.Kind() {
	case reflect.Bool:
		add(false, true)
	case reflect.Int, reflect.Int16, reflect.Int32, reflect.Int64, reflect.Uint, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		add(1, 2, 3, 4, 0, 6, 8, 12, 24, 60, 100, 250)
	case reflect.Int8, reflect.Uint8:
		add(0, 1, 2, 3, 4, 12, 100)
	case reflect.Float32, reflect.Float64:
		add(1.0, 0.5, 2.0, 0.0, 0.25, 7.5, 10.0, 60.0, 100.0, 1/3.0, 359.5, 0.9999999, 20.125, -1.0)
	case reflect.String:
		for _, s := range texts {
			add(s)
		}
	case reflect.Slice:
		if t.Elem().Kind() == reflect.Uint8 {
			for _, s := range texts {
				add([]byte(s))
			}
			break
		}
		elems := values(t.Elem(), "", strings.TrimSuffix(name, "s"))
		vs = append(vs, reflect.Zero(t))
		for k := 0; k < variants && len(elems) > 0; k++ {
			n := 1 + k%6
			s := reflect.MakeSlice(t, n, n)
			for i := range n {
				s.Index(i).Set(elems[Mix(t.String(), k, i)%uint64(len(elems))])
			}
			vs = append(vs, s)
		}
	case reflect.Array:
		elems := values(t.Elem(), "", name)
		for k := range variants {
			a := reflect.New(t).Elem()
			for i := range t.Len() {
				a.Index(i).Set(elems[Mix(t.String(), k, i)%uint64(len(elems))])
			}
			vs = append(vs, a)
		}
	case reflect.Struct:
		vs = structs(t)
	case reflect.Pointer:
		for _, e := range values(t.Elem(), "", name) {
			p := reflect.New(t.Elem())
			p.Elem().Set(e)
			vs = append(vs, p)
		}
	case reflect.Map:
		keys, elems := values(t.Key(), "", "item"), values(t.Elem(), "", "step")
		vs = append(vs, reflect.Zero(t))
		for k := range 4 {
			m := reflect.MakeMap(t)
			for i := range k {
				m.SetMapIndex(keys[(k+i)%len(keys)], elems[(k+2*i)%len(elems)])
			}
			vs = append(vs, m)
		}
	case reflect.Interface:
		switch {
		case t == reflect.TypeFor[io.Writer]():
			vs = append(vs, reflect.ValueOf(&bytes.Buffer{}))
		case t == reflect.TypeFor[error]():
			vs = append(vs, reflect.ValueOf(io.ErrUnexpectedEOF))
		case t.NumMethod() == 0:
			for _, x := range []any{nil, "7 ft", []byte("7 ft"), int64(7), 7.5, true} {
				v := reflect.New(t).Elem()
				if x != nil {
					v.Set(reflect.ValueOf(x))
				}
				vs = append(vs, v)
			}
		default:
			vs = append(vs, reflect.Zero(t))
		}
	case reflect.Func:
		// A function that always returns zero values: false ends an iteration, and sorts nothing.
		vs = append(vs, reflect.MakeFunc(t, func([]reflect.Value) []reflect.Value {
			out := make([]reflect.Value, t.NumOut())
			for i := range out {
				out[i] = reflect.Zero(t.Out(i))
			}
			return out
		}))
	}
	return vs
}

// structs makes values of a struct type: those that functions return, and, if every field can be
// set, combinations of values for the fields.
func structs(t reflect.Type) []reflect.Value {
	if making[t] {
		again = true
		return []reflect.Value{reflect.Zero(t)}
	}
	making[t] = true
	defer delete(making, t)
	vs := produced(t)
	if open(t) {
		for k := range variants {
			v := reflect.New(t).Elem()
			for i := range t.NumField() {
				f := t.Field(i)
				if pool := values(f.Type, t.String(), f.Name); len(pool) > 0 {
					// The first values of a pool are the most usual, and half of the draws are from the first three.
					n := uint64(len(pool))
					if k%2 == 0 {
						n = min(n, 3)
					}
					v.Field(i).Set(pool[Mix(t.String()+f.Name, k, i)%n])
				}
			}
			vs = append(vs, v)
		}
	}
	return append(vs, reflect.Zero(t))
}

// open reports whether all fields of t are exported.
func open(t reflect.Type) bool {
	for i := range t.NumField() {
		if !t.Field(i).IsExported() {
			return false
		}
	}
	return true
}

// produced returns up to variants different values of type t that exported functions return without an error.
func produced(t reflect.Type) []reflect.Value {
	var vs []reflect.Value
	seen := map[string]bool{}
	for _, f := range Funcs {
		ft := f.Type()
		if ft.NumOut() == 0 || ft.Out(0) != t || f.Must() {
			continue
		}
		ready := true
		pools := make([][]reflect.Value, ft.NumIn())
		for i := range pools {
			pools[i] = parameter(f, i)
			ready = ready && len(pools[i]) > 0
		}
		got := 0
		for k := 0; ready && k < 4*variants && got < variants/2; k++ {
			args := make([]reflect.Value, len(pools))
			for i, pool := range pools {
				n := uint64(len(pool))
				if len(pools) > 1 {
					n = min(n, 8)
				}
				args[i] = pool[Mix(f.Name, k, i)%n]
				if len(pools) == 1 {
					args[i] = pool[k%len(pool)]
				}
			}
			out := f.Call(args)
			if err, _ := f.Err(out); err != nil {
				continue
			}
			if s := Encode(out[:1]); !seen[s] {
				seen[s] = true
				vs = append(vs, out[0])
				got++
			}
		}
	}
	return vs
}
