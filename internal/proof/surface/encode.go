package surface

import (
	"crypto/sha256"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// long is how much of an encoded value is written out; what is longer is cut and followed by its SHA-256.
const long = 300

// Encode writes values so that two that differ in any bit read differently: numbers as stored,
// floats with all their digits, texts quoted, structs with their unexported fields.
func Encode(values []reflect.Value) string {
	var b strings.Builder
	for i, v := range values {
		if i > 0 {
			b.WriteString(", ")
		}
		encode(&b, v)
	}
	s := b.String()
	if len(s) <= long {
		return s
	}
	return fmt.Sprintf("%s… sha256:%x", strings.ToValidUTF8(s[:long/2], ""), sha256.Sum256([]byte(s)))
}

// Drain takes all that the iterators among the values yield.
func Drain(values []reflect.Value) {
	for _, v := range values {
		if v.Kind() == reflect.Func {
			sequence(new(strings.Builder), v)
		}
	}
}

func encode(b *strings.Builder, v reflect.Value) {
	if !v.IsValid() {
		b.WriteString("nil")
		return
	}
	if v.CanInterface() {
		if d, ok := v.Interface().(decimal.Decimal); ok {
			fmt.Fprintf(b, "%se%d", d.Coefficient(), d.Exponent())
			return
		}
		if err, ok := v.Interface().(error); ok && v.Type() == reflect.TypeFor[error]() {
			b.WriteString("error " + strconv.Quote(err.Error()))
			return
		}
	}
	switch v.Kind() {
	case reflect.Bool:
		b.WriteString(strconv.FormatBool(v.Bool()))
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		b.WriteString(strconv.FormatInt(v.Int(), 10))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64, reflect.Uintptr:
		b.WriteString(strconv.FormatUint(v.Uint(), 10))
	case reflect.Float32, reflect.Float64:
		b.WriteString(strconv.FormatFloat(v.Float(), 'g', -1, 64))
	case reflect.String:
		b.WriteString(strconv.Quote(v.String()))
	case reflect.Interface, reflect.Pointer:
		if v.IsNil() {
			b.WriteString("nil")
			return
		}
		encode(b, v.Elem())
	case reflect.Struct:
		b.WriteByte('{')
		for i := range v.NumField() {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(v.Type().Field(i).Name + ":")
			encode(b, v.Field(i))
		}
		b.WriteByte('}')
	case reflect.Slice:
		if v.Type().Elem().Kind() == reflect.Uint8 {
			b.WriteString(strconv.Quote(string(v.Bytes())))
			return
		}
		fallthrough
	case reflect.Array:
		b.WriteByte('[')
		for i := range v.Len() {
			if i > 0 {
				b.WriteByte(' ')
			}
			encode(b, v.Index(i))
		}
		b.WriteByte(']')
	case reflect.Map:
		entries := map[string]string{}
		for k, e := range v.Seq2() {
			entries[Encode([]reflect.Value{k})] = Encode([]reflect.Value{e})
		}
		for _, k := range slices.Sorted(maps.Keys(entries)) {
			b.WriteString(k + ":" + entries[k] + " ")
		}
	case reflect.Func:
		sequence(b, v)
	default:
		panic(fmt.Sprintf("surface: cannot encode a %v", v.Type()))
	}
}

// sequence writes what an iterator yields, up to 100,000 values; of another function it writes that there is one.
func sequence(b *strings.Builder, v reflect.Value) {
	t := v.Type()
	if v.IsNil() || !t.CanSeq() && !t.CanSeq2() {
		b.WriteString("func")
		return
	}
	b.WriteString("seq(")
	n := 0
	if t.CanSeq() {
		for e := range v.Seq() {
			encode(b, e)
			b.WriteByte(' ')
			if n++; n == 100_000 {
				break
			}
		}
	} else {
		for k, e := range v.Seq2() {
			encode(b, k)
			b.WriteByte(':')
			encode(b, e)
			b.WriteByte(' ')
			if n++; n == 100_000 {
				break
			}
		}
	}
	b.WriteByte(')')
}
