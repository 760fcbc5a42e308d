// Package strictjson reads JSON that people and their programs write by hand: it
// takes no unknown and no repeated name, refuses what is of the wrong form, and
// reports every fault at once, each at its JSON Pointer.
package strictjson

import (
	"bytes"
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/fircone/internal/spelling"
	"example.com/fircone/palette"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Limits on a text.
const (
	MaxBytes  = 4 << 20 // the longest text
	MaxDepth  = 16      // levels of lists and objects in each other
	MaxList   = 5000    // values in a list, names in an object
	MaxFaults = 100     // the most faults that are reported
)

// Unmarshal reads a JSON text into v, a pointer to a struct. What the text does
// not name stays as it is in v, inside structs and in a [shopping.ByKind] too.
//
// It returns all faults, up to MaxFaults, joined by [errors.Join]: each is a
// *units.Error of function with the JSON Pointer (RFC 6901) of the value as its
// Field. A text that is no JSON has one fault, with the Field "data". After an
// error the contents of v mean nothing.
func Unmarshal(function string, data []byte, v any) error {
	r := reader{function: function}
	tree, err := r.read(data)
	if err != nil {
		return errors.Join(err)
	}
	r.fill(reflect.ValueOf(v).Elem(), tree, "")
	return errors.Join(r.faults...)
}

// A reader collects the faults of one text.
type reader struct {
	function string
	faults   []error
}

// fault notes one.
func (r *reader) fault(pointer, value, want string, reason error) {
	if len(r.faults) < MaxFaults {
		r.faults = append(r.faults, &units.Error{Func: r.function, Field: clip(pointer), Value: clip(value), Want: want, Err: reason})
	}
}

// read reads the whole text.
func (r *reader) read(data []byte) (any, error) {
	refuse := func(what string) error {
		return &units.Error{Func: r.function, Field: "data", Value: clip(string(data)), Want: "one JSON object: " + what, Err: units.ErrSyntax}
	}
	if len(data) > MaxBytes {
		return nil, &units.Error{Func: r.function, Field: "data", Value: strconv.Itoa(len(data)) + " bytes", Want: "at most " + strconv.Itoa(MaxBytes) + " bytes", Err: units.ErrRange}
	}
	if !utf8.Valid(data) {
		return nil, refuse("this is not UTF-8")
	}
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.UseNumber()
	tree, err := r.value(dec, "", 0)
	if err == nil {
		if _, err = dec.Token(); err == nil {
			err = errors.New("there is more after its end")
		} else if err == io.EOF {
			err = nil
		}
	}
	var syntax *json.SyntaxError
	switch {
	case err == nil:
		return tree, nil
	case errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF):
		return nil, refuse("the text ends too soon")
	case errors.As(err, &syntax):
		return nil, refuse(fmt.Sprintf("at byte %d: %v", syntax.Offset, err))
	}
	return nil, refuse(err.Error())
}

// An object is a JSON object in the order it was written.
type object struct {
	names  []string
	values []any
}

// value reads one value: a *object, a []any, a string, a json.Number, a bool or nil.
func (r *reader) value(dec *json.Decoder, pointer string, depth int) (any, error) {
	if depth > MaxDepth {
		return nil, fmt.Errorf("more than %d levels deep at %s", MaxDepth, clip(pointer))
	}
	token, err := dec.Token()
	if err != nil {
		return nil, err
	}
	switch token {
	case json.Delim('{'):
		o, seen := new(object), map[string]bool{}
		for dec.More() {
			token, err := dec.Token()
			if err != nil {
				return nil, err
			}
			name := token.(string) // the decoder lets nothing else through here
			at := pointer + "/" + escape(name)
			if len(o.names) == MaxList {
				return nil, fmt.Errorf("more than %d names in %q", MaxList, clip(pointer))
			}
			v, err := r.value(dec, at, depth+1)
			if err != nil {
				return nil, err
			}
			if seen[name] {
				r.fault(at, show(v), "each name once in an object", units.ErrDuplicate)
				continue
			}
			seen[name] = true
			o.names, o.values = append(o.names, name), append(o.values, v)
		}
		_, err := dec.Token()
		return o, err
	case json.Delim('['):
		list := []any{}
		for dec.More() {
			if len(list) == MaxList {
				return nil, fmt.Errorf("more than %d values in %q", MaxList, clip(pointer))
			}
			v, err := r.value(dec, pointer+"/"+strconv.Itoa(len(list)), depth+1)
			if err != nil {
				return nil, err
			}
			list = append(list, v)
		}
		_, err := dec.Token()
		return list, err
	}
	return token, nil
}

// escape returns a name as a part of a JSON Pointer (RFC 6901).
func escape(name string) string {
	return strings.NewReplacer("~", "~0", "/", "~1").Replace(name)
}

// clip returns text cut to what an answer may carry.
func clip(text string) string {
	const most = 120
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "…"
}

// show returns a value that was read, as an answer shows it: a text as it is.
func show(v any) string {
	switch v.(type) {
	case *object:
		return "an object"
	case []any:
		return "a list"
	case nil:
		return "null"
	}
	return fmt.Sprint(v)
}

// fill sets v to what was read at pointer, and notes what is wrong.
func (r *reader) fill(v reflect.Value, from any, pointer string) {
	refuse := func(want string) { r.fault(pointer, show(from), want, units.ErrSyntax) }
	if byKind(v.Type()) {
		r.kinds(v, from, pointer)
		return
	}
	switch p := v.Addr().Interface().(type) {
	case json.Unmarshaler: // a number, a text, or true or false
		_, nullable := p.(*shopping.Shelf)
		_, isText := from.(string)
		_, isNumber := from.(json.Number)
		var data []byte
		switch {
		case isText, isNumber, from == nil && nullable:
			data, _ = json.Marshal(from) // a string or a number that was read can be written
		default:
			refuse("a number or a text" + example(p))
			return
		}
		if err := p.UnmarshalJSON(data); err != nil {
			r.inner(err, from, pointer, "a number"+example(p))
		}
		return
	case encoding.TextUnmarshaler:
		text, ok := from.(string)
		if !ok {
			refuse("a text" + example(p))
			return
		}
		if err := p.UnmarshalText([]byte(text)); err != nil {
			r.inner(err, from, pointer, "a text"+example(p))
		}
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		r.members(v, from, pointer)
	case reflect.Slice:
		list, ok := from.([]any)
		if !ok {
			refuse("a list")
			return
		}
		out := reflect.MakeSlice(v.Type(), len(list), len(list))
		for i := range list {
			r.fill(out.Index(i), list[i], pointer+"/"+strconv.Itoa(i))
		}
		v.Set(out)
	case reflect.Map:
		r.table(v, from, pointer)
	case reflect.String:
		text, ok := from.(string)
		if !ok {
			refuse("a text")
		}
		v.SetString(text)
	case reflect.Bool:
		b, ok := from.(bool)
		if !ok {
			refuse("true or false")
		}
		v.SetBool(b)
	case reflect.Float64:
		number, _ := from.(json.Number)
		f, err := strconv.ParseFloat(number.String(), 64)
		if err != nil {
			refuse("a number")
		}
		v.SetFloat(f)
	default: // whole numbers; anything else in a request is a fault of its author, and panics
		number, _ := from.(json.Number)
		n, err := strconv.ParseInt(number.String(), 10, v.Type().Bits())
		if err != nil {
			refuse("a whole number")
		}
		v.SetInt(n)
	}
}

// members fills a struct from an object.
func (r *reader) members(v reflect.Value, from any, pointer string) {
	o, ok := from.(*object)
	if !ok {
		r.fault(pointer, show(from), "an object", units.ErrSyntax)
		return
	}
	fields, names := fieldsOf(v)
	for i, name := range o.names {
		at := pointer + "/" + escape(name)
		field, ok := fields[name]
		if !ok {
			r.fault(at, show(o.values[i]), "one of "+strings.Join(nearest(name, names), ", "), units.ErrName)
			continue
		}
		r.fill(field, o.values[i], at)
	}
}

// nearest returns names, those there are, with the one first that a name is spelled most like, if it is like one.
func nearest(name string, names []string) []string {
	best, least := -1, 2+min(len(name), maxName)/4 // as many letters may be wrong
	for i, n := range names {
		if len(name) <= maxName {
			if d := spelling.Distance(strings.ToLower(name), strings.ToLower(n)); d < least {
				best, least = i, d
			}
		}
	}
	if best < 0 {
		return names
	}
	return slices.Insert(slices.Delete(slices.Clone(names), best, best+1), 0, names[best]+" (did you mean that?)")
}

// maxName is the longest name in bytes for which a like one is looked for.
const maxName = 32

// table fills a map from an object.
func (r *reader) table(v reflect.Value, from any, pointer string) {
	o, ok := from.(*object)
	if !ok {
		r.fault(pointer, show(from), "an object", units.ErrSyntax)
		return
	}
	out, seen := reflect.MakeMapWithSize(v.Type(), len(o.names)), reflect.MakeMapWithSize(v.Type(), len(o.names))
	for known := v.MapRange(); known.Next(); { // what is not named stays as it is
		out.SetMapIndex(known.Key(), known.Value())
	}
	for i, name := range o.names {
		at := pointer + "/" + escape(name)
		key, item := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
		before := len(r.faults)
		r.fill(key, name, at)
		r.fill(item, o.values[i], at)
		if len(r.faults) == before && seen.MapIndex(key).IsValid() {
			r.fault(at, name, "each key once, however it is written", units.ErrDuplicate)
		}
		out.SetMapIndex(key, item)
		seen.SetMapIndex(key, item)
	}
	v.Set(out)
}

// byKind reports whether t is a [shopping.ByKind].
func byKind(t reflect.Type) bool {
	return t.Kind() == reflect.Array && strings.HasPrefix(t.Name(), "ByKind[")
}

// kinds fills a [shopping.ByKind] from an object, and leaves the other kinds as they are.
func (r *reader) kinds(v reflect.Value, from any, pointer string) {
	o, ok := from.(*object)
	if !ok {
		r.fault(pointer, show(from), "an object", units.ErrSyntax)
		return
	}
	seen := map[shopping.Kind]bool{}
	for i, name := range o.names {
		at := pointer + "/" + escape(name)
		var kind shopping.Kind
		err := kind.UnmarshalText([]byte(name))
		switch {
		case err != nil:
			r.inner(err, name, at, "")
		case seen[kind]:
			r.fault(at, name, "each kind once, however it is written", units.ErrDuplicate)
		default:
			seen[kind] = true
			r.fill(v.Index(int(kind)), o.values[i], at)
		}
	}
}

// fieldsOf returns the fields of a struct by their names in JSON, those of the
// structs that it embeds among them, and the names in order.
func fieldsOf(v reflect.Value) (map[string]reflect.Value, []string) {
	fields := map[string]reflect.Value{}
	var names []string
	for i := range v.NumField() {
		f := v.Type().Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case f.Anonymous && name == "":
			inner, more := fieldsOf(v.Field(i))
			for name, field := range inner {
				fields[name] = field
			}
			names = append(names, more...)
		case name != "" && name != "-":
			fields[name] = v.Field(i)
			names = append(names, name)
		}
	}
	return fields, names
}

// example returns the end of a sentence with what p would read.
func example(p any) string {
	switch p.(type) {
	case *units.Length:
		return `, such as "7 ft 6 in"`
	case *units.Mass:
		return `, such as "6 oz"`
	case *units.Power:
		return `, such as "4.8 W"`
	case *shopping.Quantity:
		return `, such as 12 or "9 ft"`
	case *palette.Palette:
		return `, such as "crimson,gold:metal"`
	case *decimal.Decimal:
		return ", such as 4.75"
	}
	return ""
}

// inner notes what an error of the library says of a value, or otherwise what is
// accepted.
func (r *reader) inner(err error, from any, pointer, otherwise string) {
	var e *units.Error
	if errors.As(err, &e) {
		r.fault(pointer, show(from), e.Want, e.Err)
		return
	}
	r.fault(pointer, show(from), otherwise, units.ErrSyntax)
}

// Field returns the field of a struct that has a name in JSON.
func Field(v reflect.Value, name string) (reflect.Value, bool) {
	fields, _ := fieldsOf(v)
	field, ok := fields[name]
	return field, ok
}
