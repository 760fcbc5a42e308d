package hostile

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/fircone/internal/proof/surface"
)

// The bounds that every call keeps, whatever its arguments.
const (
	mostTime  = time.Second
	mostBytes = 64 << 20
)

// mixed is how many calls of each function have several parameters at an extreme at once.
const mixed = 200

// longer lists the functions that take longer for the most that they accept, in bounded work: placing
// 100,000 pieces, and a search for the cheapest packs that stops at a stated effort.
var longer = map[string]time.Duration{
	"placement.Layout.Places": 5 * time.Second, "placement.Layout.AppendPlaces": 5 * time.Second,
	"shopping.Shop.Cheapest": 5 * time.Second, "shopping.Shop.List": 5 * time.Second,
	"shopping.Shop.Filled": 5 * time.Second, "shopping.Shop.Fullest": 5 * time.Second,
}

// documented lists the panics that the documentation states, on a programmer's fault, as division by zero is.
var documented = map[string]string{
	"units.Length.In": "unit", "units.Area.In": "unit", "units.Mass.In": "unit", "units.Power.In": "unit",
}

// overflows lists the functions that are documented to give an infinity where the true result is past the
// largest float.
var overflows = map[string]bool{"palette.Lab.Chroma": true}

// A call is one call to make: the arguments, and which parameter and field of it are extreme.
type call struct {
	args  []reflect.Value
	param int    // -1 if several are
	field string // "" if the whole parameter is
}

func calls(f surface.Func) []call {
	t := f.Type()
	_, refuses := f.Err(make([]reflect.Value, t.NumOut()))
	var cs []call
	base := make([]reflect.Value, t.NumIn())
	for i := range base {
		base[i] = surface.Ordinary(f, i)[0]
	}
	for _, args := range surface.Cases(f, mixed) {
		if out, panicked := try(f, args); panicked == nil {
			if err, _ := f.Err(out); err == nil {
				base = args // the first call that is not refused
				break
			}
		}
	}
	all := make([][]surface.Extreme, t.NumIn())
	for i := range all {
		all[i] = surface.Extremes(t.In(i), refuses)
		for _, e := range all[i] {
			args := slices.Clone(base)
			args[i] = e.Value
			cs = append(cs, call{args, i, e.Field})
		}
	}
	for k := 0; k < mixed && t.NumIn() > 1; k++ {
		args := slices.Clone(base)
		for i := range args {
			// Three parameters in four are extreme.
			if r := surface.Mix(f.Name, k, i); r%4 != 0 {
				args[i] = all[i][r/4%uint64(len(all[i]))].Value
			}
		}
		cs = append(cs, call{args, -1, ""})
	}
	return cs
}

func TestNothingBreaks(t *testing.T) {
	n := 0
	for _, f := range surface.Funcs {
		t.Run(f.Name, func(t *testing.T) {
			for _, c := range calls(f) {
				n++
				check(t, f, c)
				if t.Failed() {
					return // one is enough to mend
				}
			}
		})
	}
	t.Logf("%d functions, %d calls; %d with one extreme parameter were refused, and %d named it", len(surface.Funcs), n, refused, exact)
}

func check(t *testing.T, f surface.Func, c call) {
	t.Helper()
	where := func() string {
		s := surface.Encode(c.args)
		return f.Name + "(" + s + ")"
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	start := spent()
	out, panicked := try(f, c.args)
	took := spent() - start
	runtime.ReadMemStats(&after)
	surface.Drain(out) // runs what is lazy; a panic there ends the test, which is as well
	if panicked != nil {
		if p := documented[f.Name]; f.Must() || p != "" && c.args[slices.Index(f.Params, p)].IsZero() {
			return
		}
		if e, ok := c.args[0].Interface().(error); ok && errors.Unwrap(e) == nil {
			return // an Error that says nothing is wrong, which no function returns; fs.PathError panics too
		}
		t.Errorf("%s panics: %v", where(), panicked)
		return
	}
	// Short tests are those under an emulator, which is slow for everybody, as the race detector is.
	if limit := max(mostTime, longer[f.Name]); took > limit && !testing.Short() && !raced {
		t.Errorf("%s takes %v", where(), took)
	}
	if bytes := after.TotalAlloc - before.TotalAlloc; bytes > mostBytes {
		t.Errorf("%s allocates %d bytes", where(), bytes)
	}
	err, fails := f.Err(out)
	if !fails || err == nil {
		if !fromNaN(c.args) && !overflows[f.Name] {
			for _, v := range out {
				if hasNaN(v) {
					t.Errorf("%s returns NaN or an infinity: %s", where(), surface.Encode(out))
				}
			}
		}
		return
	}
	results := f.Type().NumOut() - 1
	for _, v := range out[:results] {
		if !v.IsZero() && !(v.Kind() == reflect.Slice && keeps(f)) {
			t.Errorf("%s returns %s beside an error", where(), surface.Encode(out))
		}
	}
	if p := complain(f, c, err); p != "" && !strings.HasSuffix(f.Name, ".Error.Unwrap") {
		t.Errorf("%s: %s: %v", where(), p, err)
	}
}

// keeps reports whether f returns, beside an error, the slice that it was to append to.
func keeps(f surface.Func) bool { return strings.Contains(f.Name, ".Append") }

// complain says what is wrong with an error, if something is: it is of the package's own type,
// names the function and the field that is wrong, says what is accepted, wraps a reason, and reads
// as "package.Func: ..." in a line of at most 600 bytes.
func complain(f surface.Func, c call, err error) string {
	text := err.Error()
	if len(text) > 600 || strings.ContainsAny(text, "\n\x00") {
		return fmt.Sprintf("the text has %d bytes, or more than one line", len(text))
	}
	v, ok := asError(err)
	if !ok {
		return fmt.Sprintf("a %T is not an Error of a package of ours", err)
	}
	// The package is f's, or that of a parameter which f has checked there.
	if pkg := v.Type().String(); !strings.HasPrefix(text, strings.TrimSuffix(pkg, "Error")) {
		return "the text does not begin with the package of " + pkg
	}
	for _, name := range []string{"Func", "Field", "Want"} {
		if v.FieldByName(name).String() == "" && !(name == "Want" && f.Package() == "units") {
			return name + " is empty"
		}
	}
	if errors.Unwrap(err) == nil {
		return "no reason is wrapped"
	}
	field := strings.ToLower(v.FieldByName("Field").String())
	parts := strings.FieldsFunc(field, func(r rune) bool { return strings.ContainsRune(".[] 0123456789", r) })
	named := func(names []string) bool {
		return slices.ContainsFunc(names, func(n string) bool {
			return len(n) > 1 && strings.Contains(field, strings.ToLower(n)) || slices.Contains(parts, strings.ToLower(n))
		})
	}
	all := []string{"text", "value"} // what is parsed, and a receiver that is one number
	for i, name := range f.Params {
		all = append(all, name)
		all = append(all, names(f.Type().In(i), 0)...)
	}
	if !named(all) && !strings.Contains(strings.ToLower(f.Name), field) && !parses(f) {
		return fmt.Sprintf("the field is %q, and there are only %q", field, all)
	}
	if c.param >= 0 {
		refused++
		if named(append(strings.Split(c.field, "."), f.Params[c.param])) || named(names(f.Type().In(c.param), 0)) || c.args[c.param].Kind() == reflect.String {
			exact++
		}
	}
	return ""
}

// parses reports whether f reads a text, whose parts its errors may name.
func parses(f surface.Func) bool {
	return strings.Contains(f.Name, ".Parse") || strings.Contains(f.Name, ".Unmarshal")
}

// refused counts the calls with one extreme parameter that were refused, and exact those whose
// error names that parameter, or a field of it; the others name one that does not fit it.
var refused, exact int

// names returns the names of t and of the fields in it.
func names(t reflect.Type, depth int) []string {
	list := []string{t.Name()}
	switch t.Kind() {
	case reflect.Slice, reflect.Array, reflect.Pointer:
		list = append(list, names(t.Elem(), depth+1)...)
	case reflect.Struct:
		for i := 0; i < t.NumField() && depth < 4; i++ {
			list = append(list, t.Field(i).Name)
			list = append(list, names(t.Field(i).Type, depth+1)...)
		}
	}
	return list
}

// asError returns the struct of the *Error that err is or wraps.
func asError(err error) (reflect.Value, bool) {
	for ; err != nil; err = errors.Unwrap(err) {
		v := reflect.ValueOf(err)
		if v.Kind() == reflect.Pointer && v.Elem().Kind() == reflect.Struct && v.Elem().Type().Name() == "Error" &&
			strings.HasPrefix(v.Elem().Type().PkgPath(), "example.com/fircone/") {
			return v.Elem(), true
		}
	}
	return reflect.Value{}, false
}

func try(f surface.Func, args []reflect.Value) (out []reflect.Value, panicked any) {
	defer func() { panicked = recover() }()
	return f.Call(args), nil
}

// hasNaN reports whether v holds a float that is not a number or is infinite.
func hasNaN(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Float32, reflect.Float64:
		return math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0)
	case reflect.Struct:
		for i := range v.NumField() {
			if hasNaN(v.Field(i)) {
				return true
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if hasNaN(v.Index(i)) {
				return true
			}
		}
	case reflect.Pointer, reflect.Interface:
		return !v.IsNil() && hasNaN(v.Elem())
	}
	return false
}

// fromNaN reports whether an argument holds such a float already: results are not of our making then.
func fromNaN(args []reflect.Value) bool { return slices.ContainsFunc(args, hasNaN) }
