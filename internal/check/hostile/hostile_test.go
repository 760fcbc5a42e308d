package hostile

import (
	"encoding/json"
	"errors"
	"fmt"
	"go/types"
	"math"
	"reflect"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"

	"example.com/fircone/internal/check/source"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A function is one exported function or method: its name as errors have it, the names of its parameters, a
// receiver first, named "", and an ordinary argument for each.
type function struct {
	name     string
	params   []string
	call     reflect.Value
	ordinary []reflect.Value
}

// signature returns the names of the parameters of every exported function, by name, from the source.
func signatures(t *testing.T) map[string][]string {
	t.Helper()
	m, err := source.Load()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string][]string{}
	add := func(name string, sig *types.Signature) {
		var params []string
		if sig.Recv() != nil {
			params = append(params, "")
		}
		for v := range sig.Params().Variables() {
			params = append(params, v.Name())
		}
		all[name] = params
	}
	for _, p := range m.Shipped() {
		for _, name := range p.Types.Scope().Names() {
			obj := p.Types.Scope().Lookup(name)
			if !obj.Exported() {
				continue
			}
			switch obj := obj.(type) {
			case *types.Func:
				add(p.Name+"."+name, obj.Signature())
			case *types.TypeName:
				if named, ok := obj.Type().(*types.Named); ok {
					for method := range named.Methods() {
						if method.Exported() {
							add(p.Name+"."+name+"."+method.Name(), method.Signature())
						}
					}
				}
			}
		}
	}
	return all
}

// functionsOf returns the functions with an ordinary argument for each parameter: those listed, and the methods of the types
// of the samples and of what the functions return.
func functionsOf(t *testing.T) []function {
	t.Helper()
	names := signatures(t)
	pool := map[reflect.Type]reflect.Value{}
	var queue []reflect.Type
	learn := func(v reflect.Value) {
		if _, ok := pool[v.Type()]; !ok {
			pool[v.Type()] = v
			queue = append(queue, v.Type())
		}
	}
	for _, s := range samples {
		learn(reflect.ValueOf(s))
	}
	ready := func(f *function) bool {
		f.ordinary = nil
		for i := range f.call.Type().NumIn() {
			param := f.params[min(i, len(f.params)-1)]
			v, ok := pool[f.call.Type().In(i)]
			for _, key := range []string{f.name + "." + param, f.name, param} {
				if s, special := usual[key]; special && reflect.TypeOf(s).AssignableTo(f.call.Type().In(i)) {
					v, ok = reflect.ValueOf(s), true
					break
				}
			}
			if !ok {
				return false
			}
			f.ordinary = append(f.ordinary, v)
		}
		return true
	}
	var all, waiting []function
	for _, f := range packageFunctions {
		v := reflect.ValueOf(f)
		name, _, _ := strings.Cut(runtime.FuncForPC(v.Pointer()).Name(), "[")
		name = name[strings.LastIndexByte(name, '/')+1:]
		if names[name] == nil && v.Type().NumIn() > 0 {
			t.Errorf("%s is no exported function", name)
			continue
		}
		waiting = append(waiting, function{name: name, params: names[name], call: v})
	}
	for progress := true; progress; {
		progress = false
		for _, typ := range queue {
			for _, recv := range []reflect.Type{typ, reflect.PointerTo(typ)} {
				for i := range recv.NumMethod() {
					m := recv.Method(i)
					name, _, _ := strings.Cut(strings.TrimPrefix(typ.String(), "*"), "[")
					name += "." + m.Name
					if names[name] == nil || slices.ContainsFunc(slices.Concat(all, waiting), func(f function) bool { return f.name == name }) {
						continue
					}
					if recv != typ { // only what needs a pointer
						p := reflect.New(typ)
						p.Elem().Set(pool[typ])
						pool[recv] = p
					}
					waiting = append(waiting, function{name: name, params: names[name], call: m.Func})
				}
			}
		}
		queue = nil
		var still []function
		for _, f := range waiting {
			if !ready(&f) {
				still = append(still, f)
				continue
			}
			progress = true
			all = append(all, f)
			out, _ := try(f, f.ordinary)
			if err := errorOf(out); err != nil {
				if !refuse[f.name] {
					t.Errorf("%s refuses an ordinary call: %v", f.name, err)
				}
				continue
			}
			for _, v := range out {
				if v.Kind() != reflect.Interface && v.Type().PkgPath() != "" {
					learn(v)
				}
				if v.Kind() == reflect.Slice && v.Len() > 0 {
					learn(v.Index(0))
				}
			}
		}
		waiting = still
	}
	for _, f := range waiting {
		t.Errorf("no ordinary argument for %s %v", f.name, f.call.Type())
	}
	for name := range names {
		if !wholeJobs[name] && name != "units.Must" && // which panics, as its doc says
			!slices.ContainsFunc(slices.Concat(all, waiting), func(f function) bool { return f.name == name }) {
			t.Errorf("%s is not tried: list it, or a value of its type", name)
		}
	}
	slices.SortFunc(all, func(a, b function) int { return strings.Compare(a.name, b.name) })
	return all
}

// try calls f, and returns what it gave or what it panicked with.
func try(f function, args []reflect.Value) (out []reflect.Value, panicked any) {
	defer func() { panicked = recover() }()
	if f.call.Type().IsVariadic() {
		out = f.call.CallSlice(args)
	} else {
		out = f.call.Call(args)
	}
	for _, v := range out {
		if v.Kind() == reflect.Func && !v.IsNil() && v.Type().CanSeq() {
			n := 0
			for range v.Seq() {
				if n++; n > 1000 {
					break
				}
			}
		}
	}
	return out, nil
}

// errorOf returns the error among results.
func errorOf(out []reflect.Value) error {
	if len(out) == 0 || out[len(out)-1].Type() != reflect.TypeFor[error]() {
		return nil
	}
	err, _ := out[len(out)-1].Interface().(error)
	return err
}

// An extreme is an argument with one value in it out of range, and the JSON Pointer of that value within the argument.
type extreme struct {
	pointer string
	value   reflect.Value
}

// leaf reports whether a value of the type is one value in JSON, as a text is.
func leaf(t reflect.Type) bool {
	if t.Kind() != reflect.Struct && t.Kind() != reflect.Slice && t.Kind() != reflect.Array && t.Kind() != reflect.Map {
		return true
	}
	marshaler := reflect.TypeFor[interface{ MarshalText() ([]byte, error) }]()
	jsoner := reflect.TypeFor[interface{ MarshalJSON() ([]byte, error) }]()
	if t.Kind() == reflect.Struct && t.Implements(jsoner) {
		if text, err := json.Marshal(reflect.Zero(t).Interface()); err == nil && text[0] == '{' {
			return false // it writes its fields after all
		}
	}
	return t.Implements(marshaler) || t.Implements(jsoner)
}

// member returns the name of a field in JSON, "" if it has none.
func member(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	if !f.IsExported() || name == "-" {
		return ""
	}
	if name == "" {
		return f.Name
	}
	return name
}

// inlined reports whether JSON has the fields of an embedded struct among those around it.
func inlined(f reflect.StructField) bool {
	return f.Anonymous && f.Tag.Get("json") == "" && f.Type.Kind() == reflect.Struct && !leaf(f.Type)
}

// extremes returns v with each value in it at its extremes, in turn.
//
// What can refuse its arguments is given decimals of two billion digits and texts of 64 kB too; what cannot, and prints what it is
// given, would be right to take its time over them.
func extremes(v reflect.Value, refuses bool) []extreme {
	var all []extreme
	t := v.Type()
	add := func(xs ...any) {
		for _, x := range xs {
			all = append(all, extreme{"", reflect.ValueOf(x).Convert(t)})
		}
	}
	// within puts what is wrong inside a copy of v.
	within := func(name string, inner reflect.Value, set func(whole, inner reflect.Value)) {
		for _, e := range extremes(inner, refuses) {
			whole := reflect.New(t).Elem()
			whole.Set(v)
			set(whole, e.value)
			all = append(all, extreme{name + e.pointer, whole})
		}
	}
	if t == reflect.TypeFor[decimal.Decimal]() {
		add(decimal.New(-1, 0), decimal.New(1, 40), decimal.New(1, -40))
		if refuses {
			add(decimal.New(1, math.MaxInt32), decimal.New(1, math.MinInt32))
		}
		return all
	}
	switch t.Kind() {
	case reflect.Bool:
		add(!v.Bool())
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		low := int64(math.MinInt64) >> (64 - t.Bits())
		add(low, int64(-1), int64(0), int64(1), ^low)
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		add(uint64(0), uint64(math.MaxUint64)>>(64-t.Bits()))
	case reflect.Float32, reflect.Float64:
		add(0.0, -1.0, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64)
	case reflect.String:
		for _, s := range texts(refuses) {
			add(s)
		}
	case reflect.Struct:
		all = append(all, extreme{"", reflect.Zero(t)})
		for i := range t.NumField() {
			name := member(t.Field(i))
			if !t.Field(i).IsExported() {
				continue
			}
			if leaf(t) {
				name = "" // its text is one value
			} else if inlined(t.Field(i)) {
				name = ""
			} else {
				name = "/" + name
			}
			within(name, v.Field(i), func(whole, inner reflect.Value) { whole.Field(i).Set(inner) })
		}
	case reflect.Slice:
		all = append(all, extreme{"", reflect.Zero(t)}, extreme{"", reflect.MakeSlice(t, 0, 0)})
		if t.Elem() == reflect.TypeFor[byte]() {
			for _, s := range texts(refuses) {
				add([]byte(s))
			}
			break
		}
		for i := range min(v.Len(), 2) {
			within("/"+strconv.Itoa(i), v.Index(i), func(whole, inner reflect.Value) {
				whole.Set(reflect.MakeSlice(t, v.Len(), v.Len()))
				reflect.Copy(whole, v)
				whole.Index(i).Set(inner)
			})
		}
		if v.Len() > 0 {
			many := reflect.MakeSlice(t, 300, 300)
			for i := range 300 {
				many.Index(i).Set(v.Index(i % v.Len()))
			}
			all = append(all, extreme{"", many})
		}
	case reflect.Array:
		for i := range v.Len() {
			name := "/" + strconv.Itoa(i)
			if leaf(t) { // a table by kind
				if i == 0 {
					continue
				}
				name = "/" + shopping.Kind(i).String()
			}
			within(name, v.Index(i), func(whole, inner reflect.Value) { whole.Index(i).Set(inner) })
		}
	case reflect.Map:
		all = append(all, extreme{"", reflect.Zero(t)})
		for k, inner := range v.Seq2() {
			within("/"+fmt.Sprint(k), inner, func(whole, inner reflect.Value) {
				whole.Set(reflect.MakeMap(t))
				whole.SetMapIndex(k, inner)
			})
		}
	case reflect.Pointer:
		for _, e := range extremes(v.Elem(), refuses) {
			p := reflect.New(t.Elem())
			p.Elem().Set(e.value)
			all = append(all, extreme{e.pointer, p})
		}
	}
	return all
}

// texts are those that parsers fall over.
func texts(refuses bool) []string {
	all := []string{
		"", " ", "\x00", "\xff\xfe", "\u202e7 ft", "-0", "+", ".", ",", "'", "/", "½", "1/0 ft", "NaN ft", "Inf m", "1e999999999 ft", "0x10 ft",
		"9223372036854775808 nm", "0." + strings.Repeat("0", 40) + "1 ft", strings.Repeat("9", 65), strings.Repeat("1 ft ", 12), "7 ft\n6 in", "７ ft", "#gggggg",
		"#ffffffff", strings.Repeat(",", 50), "red,red", "%s%d%v", "2147483648", "-1", "360.0000001 degrees",
	}
	if refuses {
		all = append(all, strings.Repeat("7 ft ", 13_000), strings.Repeat("\x00", 65_000))
	}
	return all
}

// wholeJobs take or list a whole request, whose faults are pointers into the request and come all at once: see TestWholeJobs,
// and FuzzParseRequest of sizing/job.
var wholeJobs = map[string]bool{"job.Make": true, "job.ParseRequest": true, "job.Faults": true}

// wrongs is how many faults of one function are told.
const wrongs = 3

func TestNothingBreaks(t *testing.T) {
	if testing.Short() {
		t.Skip("reads the source with the go command; the machine makes no difference")
	}
	all := functionsOf(t)
	var n tally
	for _, f := range all {
		t.Run(f.name, func(t *testing.T) {
			start := time.Now()
			out := f.call.Type()
			refuses := out.NumOut() > 0 && out.Out(out.NumOut()-1) == reflect.TypeFor[error]()
			told := 0
			for i := range f.ordinary {
				for _, e := range extremes(f.ordinary[i], refuses) {
					args := slices.Clone(f.ordinary)
					args[i] = e.value
					wrong, note := n.check(f, args, i, e.pointer)
					if wrong != "" {
						if told++; told <= wrongs {
							t.Errorf("%s at %s%s: %s", shorten(e.value), f.params[i], e.pointer, wrong)
						}
					} else if note != "" {
						t.Logf("%s at %s%s: %s", shorten(e.value), f.params[i], e.pointer, note)
					}
				}
			}
			if told > wrongs {
				t.Errorf("%d faults in all", told)
			}
			if d := time.Since(start); d > 2*time.Second {
				t.Logf("takes %v", d)
			}
		})
	}
	t.Logf("%d functions, %d calls, of which %d were refused; %d errors name the very value", len(all), n.calls, n.refused, n.exact)
}

// A tally counts calls, those refused, and the errors that name the value which was out of range.
type tally struct{ calls, refused, exact int }

// check calls f and returns what is wrong with what it does, and what else there is to say.
func (n *tally) check(f function, args []reflect.Value, i int, pointer string) (wrong, note string) {
	n.calls++
	before := fmt.Sprintf("%#v", untouched(f, args))
	out, panicked := try(f, args)
	if panicked != nil {
		if panics[f.name] || strings.Contains(f.name, ".Must") {
			return "", ""
		}
		return fmt.Sprintf("panic: %v", panicked), ""
	}
	if after := fmt.Sprintf("%#v", untouched(f, args)); after != before {
		return "an argument is changed", ""
	}
	err := errorOf(out)
	if err == nil {
		if v := slices.IndexFunc(out, hasNaN); v >= 0 && !slices.ContainsFunc(args, hasNaN) && !infinite[f.name] {
			return fmt.Sprintf("a result is %v", out[v]), ""
		}
		return "", ""
	}
	n.refused++
	for _, v := range out[:len(out)-1] {
		if !v.IsZero() && !strings.Contains(f.name, ".Append") {
			return fmt.Sprintf("%v beside an error", v), ""
		}
	}
	if f.name == "units.Error.Unwrap" {
		return "", ""
	}
	got, wrong := judge(f, args, err)
	want := pointer
	if f.params[i] != "" {
		want = "/" + f.params[i] + pointer
	}
	switch {
	case wrong != "":
		return wrong + ": " + err.Error(), ""
	case got == want || strings.HasPrefix(got, want+"/") || strings.HasPrefix(want, got+"/"):
		n.exact++
		return "", ""
	}
	return "", "the error names " + got + ": " + err.Error()
}

// judge returns the value that an error names as a pointer that begins with the argument's name, or in the receiver; and what
// is wrong with the error.
func judge(f function, args []reflect.Value, err error) (pointer, wrong string) {
	var e *units.Error
	switch text := err.Error(); {
	case strings.HasSuffix(f.name, ".UnmarshalJSON") && strings.Contains(fmt.Sprintf("%T", err), "json"):
		return "/data", "" // what is no JSON at all
	case !errors.As(err, &e):
		return "", fmt.Sprintf("a %T is no *units.Error", err)
	case len(text) > 600 || strings.ContainsAny(text, "\n\x00"):
		return "", fmt.Sprintf("a text of %d bytes, or of several lines", len(text))
	case e.Func != f.name && !delegates(f.name):
		return "", fmt.Sprintf("names the function %q", e.Func)
	case e.Err == nil || e.Want == "" && !errors.Is(err, units.ErrSyntax):
		return "", "says no reason, or not what is wanted"
	}
	if delegates(f.name) {
		return "/" + f.params[len(f.params)-1], ""
	}
	if !strings.HasPrefix(e.Field, "/") {
		if i := slices.Index(f.params, e.Field); i < 0 || e.Field == "" {
			if len(f.params) > 0 && f.params[0] == "" && leaf(args[0].Type()) && !strings.Contains(e.Field, " ") {
				return "", "" // a receiver that is one value goes by a name of its own
			}
			return "", fmt.Sprintf("the field %q is none of %q", e.Field, f.params)
		}
		return "/" + e.Field, ""
	}
	name, rest, nested := strings.Cut(e.Field[1:], "/")
	if i := slices.Index(f.params, name); i >= 0 {
		if nested {
			rest = "/" + rest
		}
		if !resolves(args[i], rest) {
			return e.Field, fmt.Sprintf("nothing in %s is at %q", args[i].Type(), rest)
		}
		return e.Field, ""
	}
	if len(f.params) == 0 || f.params[0] != "" || !resolves(args[0], e.Field) {
		return e.Field, fmt.Sprintf("the field %q leads nowhere", e.Field)
	}
	return e.Field, ""
}

// delegates reports whether a method only hands on to a parser or to MarshalText, whose errors it returns.
func delegates(name string) bool {
	return strings.Contains(name, ".Unmarshal") || strings.HasSuffix(name, ".Scan") || strings.HasSuffix(name, ".Value") || name == "shopping.Offer.MarshalJSON"
}

// resolves reports whether a JSON Pointer leads to a value in the JSON of v.
//
// Source: RFC 6901.
func resolves(v reflect.Value, pointer string) bool {
	if v.Kind() == reflect.Pointer {
		v = v.Elem()
	}
	if pointer == "" {
		return true
	}
	if leaf(v.Type()) && v.Kind() != reflect.Map && v.Kind() != reflect.Array {
		return false
	}
	token, rest, nested := strings.Cut(pointer[1:], "/")
	if nested {
		rest = "/" + rest
	}
	token = strings.ReplaceAll(strings.ReplaceAll(token, "~1", "/"), "~0", "~")
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); inlined(f) && resolves(v.Field(i), pointer) {
				return true
			} else if member(f) == token {
				return resolves(v.Field(i), rest)
			}
		}
	case reflect.Slice, reflect.Array:
		if err := new(shopping.Kind).UnmarshalText([]byte(token)); err == nil && v.Kind() == reflect.Array {
			return true
		}
		if i, err := strconv.Atoi(token); err == nil && i >= 0 && i < v.Len() && strconv.Itoa(i) == token {
			return resolves(v.Index(i), rest)
		}
	case reflect.Map:
		for k, inner := range v.Seq2() {
			if fmt.Sprint(k) == token {
				return resolves(inner, rest)
			}
		}
		return v.Type().Key().Kind() == reflect.String // a table that has to have a row of that name
	}
	return false
}

// untouched returns the arguments that a call must leave as they are: all but the receiver that Unmarshal sets and what Append
// appends to.
func untouched(f function, args []reflect.Value) []any {
	var all []any
	for i, v := range args {
		if v.Kind() != reflect.Pointer && !(strings.Contains(f.name, ".Append") && i == 1) {
			all = append(all, v.Interface())
		}
	}
	return all
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
	}
	return false
}

func shorten(v reflect.Value) string {
	s := fmt.Sprintf("%#v", v)
	if len(s) > 200 {
		s = strings.ToValidUTF8(s[:200], "") + "..."
	}
	return s
}
