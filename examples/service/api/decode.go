package api

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

	"example.com/fircone/units"
)

// Limits on what one request may hold.
const (
	// MaxBody is the largest body that is read, in bytes.
	MaxBody = 256 << 10

	maxDepth = 16   // levels of lists and objects in each other
	maxList  = 1000 // values in a list, names in an object

	maxRooms  = 50               // trees and mantels in a job
	maxTotal  = 500 * units.Foot // height of its trees together
	maxOffers = 200
	maxPlaces = 1000 // pieces on a tree that is drawn
)

// A valueError says which value of a body cannot be used.
type valueError struct {
	pointer string // where it stands in the body, as RFC 6901 writes it
	value   string // the value, as it was given
	want    string // what is accepted
	err     error  // what the library said, if it was asked
}

func (e *valueError) Error() string {
	return e.pointer + " is " + e.value + ": want " + e.want
}

func (e *valueError) Unwrap() error { return e.err }

// decode reads a JSON object into v, a pointer to a struct. Unlike
// json.Unmarshal it takes no unknown and no repeated name, and says where in the
// body a value is that cannot be used.
func decode(body []byte, v any) error {
	if !utf8.Valid(body) {
		return &syntaxError{"the body is not UTF-8"}
	}
	dec := json.NewDecoder(bytes.NewReader(body))
	dec.UseNumber()
	tree, err := readValue(dec, "", 0)
	if err == nil {
		if _, err = dec.Token(); err == nil {
			err = &syntaxError{"there is more after the end of the JSON text"}
		} else if err == io.EOF {
			err = nil
		}
	}
	if err != nil {
		var own *syntaxError
		if errors.As(err, &own) {
			return err
		}
		if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
			return &syntaxError{"the JSON text ends too soon"}
		}
		var syntax *json.SyntaxError
		if errors.As(err, &syntax) {
			return &syntaxError{fmt.Sprintf("at byte %d: %v", syntax.Offset, err)}
		}
		return &syntaxError{err.Error()}
	}
	return fill(reflect.ValueOf(v).Elem(), tree, "")
}

// A syntaxError says why a body is no JSON text that can be read.
type syntaxError struct{ what string }

func (e *syntaxError) Error() string { return e.what }

// An object is a JSON object in the order it was written.
type object struct {
	names  []string
	values []any
}

// readValue reads one value: a *object, a []any, a string, a json.Number, a bool or nil.
func readValue(dec *json.Decoder, pointer string, depth int) (any, error) {
	if depth > maxDepth {
		return nil, &syntaxError{fmt.Sprintf("more than %d levels deep at %s", maxDepth, clip(pointer))}
	}
	token, err := dec.Token()
	if err != nil {
		return nil, err
	}
	switch token {
	case json.Delim('{'):
		o := new(object)
		for dec.More() {
			token, err := dec.Token()
			if err != nil {
				return nil, err
			}
			name := token.(string) // the decoder lets nothing else through here
			at := pointer + "/" + escape(name)
			if slices.Contains(o.names, name) {
				return nil, &syntaxError{"the same name twice: " + clip(at)}
			}
			if len(o.names) == maxList {
				return nil, &syntaxError{fmt.Sprintf("more than %d names in %q", maxList, clip(pointer))}
			}
			v, err := readValue(dec, at, depth+1)
			if err != nil {
				return nil, err
			}
			o.names, o.values = append(o.names, name), append(o.values, v)
		}
		_, err := dec.Token()
		return o, err
	case json.Delim('['):
		list := []any{}
		for dec.More() {
			if len(list) == maxList {
				return nil, &syntaxError{fmt.Sprintf("more than %d values in %q", maxList, clip(pointer))}
			}
			v, err := readValue(dec, pointer+"/"+strconv.Itoa(len(list)), depth+1)
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

// escape writes a name as a part of a JSON pointer.
func escape(name string) string {
	return strings.NewReplacer("~", "~0", "/", "~1").Replace(name)
}

// clip shortens a text to what a problem may show.
func clip(s string) string {
	if len(s) > 64 {
		return strings.ToValidUTF8(s[:64], "") + "..."
	}
	return s
}

// show returns a value as a problem shows it.
func show(v any) string {
	switch v := v.(type) {
	case *object:
		return "an object"
	case []any:
		return "a list"
	case string:
		return strconv.Quote(clip(v))
	case nil:
		return "null"
	}
	return clip(fmt.Sprint(v))
}

// fill sets v to what was read at pointer.
func fill(v reflect.Value, from any, pointer string) error {
	refuse := func(want string, err error) error {
		return &valueError{pointer: pointer, value: show(from), want: want, err: err}
	}
	switch p := v.Addr().Interface().(type) {
	case json.Unmarshaler: // a number, a text, or true or false
		text, err := json.Marshal(from)
		if err != nil {
			return err
		}
		switch from.(type) {
		case *object, []any, nil:
			return refuse("a number or a text", nil)
		}
		if err := p.UnmarshalJSON(text); err != nil {
			return refuse(wanted(err, "a number, such as 4.75"), err)
		}
		return nil
	case encoding.TextUnmarshaler:
		text, ok := from.(string)
		if !ok {
			return refuse("a text"+example(p), nil)
		}
		if err := p.UnmarshalText([]byte(text)); err != nil {
			return refuse(wanted(err, "a text"+example(p)), err)
		}
		return nil
	}
	switch v.Kind() {
	case reflect.Pointer:
		target := reflect.New(v.Type().Elem())
		if err := fill(target.Elem(), from, pointer); err != nil {
			return err
		}
		v.Set(target)
		return nil
	case reflect.Struct:
		o, ok := from.(*object)
		if !ok {
			return refuse("an object", nil)
		}
		fields, names := fieldsOf(v)
		for i, name := range o.names {
			at := pointer + "/" + escape(name)
			field, ok := fields[name]
			if !ok {
				return &valueError{pointer: clip(at), value: show(o.values[i]), want: "no such name; here there are " + strings.Join(names, ", ")}
			}
			if err := fill(field, o.values[i], at); err != nil {
				return err
			}
		}
		return nil
	case reflect.Slice:
		list, ok := from.([]any)
		if !ok {
			return refuse("a list", nil)
		}
		out := reflect.MakeSlice(v.Type(), len(list), len(list))
		for i := range list {
			if err := fill(out.Index(i), list[i], pointer+"/"+strconv.Itoa(i)); err != nil {
				return err
			}
		}
		v.Set(out)
		return nil
	case reflect.Map:
		o, ok := from.(*object)
		if !ok {
			return refuse("an object", nil)
		}
		out := reflect.MakeMapWithSize(v.Type(), len(o.names))
		for i, name := range o.names {
			key := reflect.New(v.Type().Key()).Elem()
			if err := fill(key, name, pointer); err != nil {
				return err
			}
			item := reflect.New(v.Type().Elem()).Elem()
			if err := fill(item, o.values[i], pointer+"/"+escape(name)); err != nil {
				return err
			}
			out.SetMapIndex(key, item)
		}
		v.Set(out)
		return nil
	case reflect.String:
		text, ok := from.(string)
		if !ok {
			return refuse("a text", nil)
		}
		v.SetString(text)
		return nil
	case reflect.Bool:
		b, ok := from.(bool)
		if !ok {
			return refuse("true or false", nil)
		}
		v.SetBool(b)
		return nil
	case reflect.Int, reflect.Int64, reflect.Int32:
		number, _ := from.(json.Number)
		n, err := strconv.ParseInt(number.String(), 10, v.Type().Bits())
		if err != nil {
			return refuse("a whole number", nil)
		}
		v.SetInt(n)
		return nil
	case reflect.Float64:
		number, _ := from.(json.Number)
		f, err := strconv.ParseFloat(number.String(), 64)
		if err != nil {
			return refuse("a number", nil)
		}
		v.SetFloat(f)
		return nil
	}
	return fmt.Errorf("no way to read a %s at %s", v.Type(), pointer)
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
		case f.Anonymous && name == "" && f.Type.Kind() == reflect.Struct:
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

// example returns the end of a sentence with a text that p would read.
func example(p encoding.TextUnmarshaler) string {
	switch p.(type) {
	case *units.Length:
		return `, such as "7 ft 6 in"`
	case *units.Mass:
		return `, such as "6 oz"`
	}
	return ""
}

// wanted returns what an error of the library says is accepted, or otherwise
// what it is given.
func wanted(err error, otherwise string) string {
	var (
		length *units.Error
		tree   *units.Error
		shelf  *units.Error
		color  *units.Error
		buying *units.Error
	)
	switch {
	case errors.As(err, &length):
		return length.Want
	case errors.As(err, &tree):
		return tree.Want
	case errors.As(err, &shelf):
		return shelf.Want
	case errors.As(err, &color):
		return color.Want
	case errors.As(err, &buying):
		return buying.Want
	}
	if want, ok := strings.CutPrefix(err.Error(), "want "); ok {
		return want
	}
	return otherwise
}
