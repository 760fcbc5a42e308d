package surface

import (
	"encoding/binary"
	"math"
	"reflect"

	"github.com/shopspring/decimal"
)

// Decode makes arguments for f out of bytes, for a fuzzer to drive: for each parameter, and each
// field of a struct that can be set, a byte chooses an ordinary value or says that the next bytes are the value.
// Bytes that are missing are zero.
func Decode(f Func, data []byte) []reflect.Value {
	d := decoder{data}
	t := f.Type()
	args := make([]reflect.Value, t.NumIn())
	for i := range args {
		args[i] = d.value(t.In(i), Ordinary(f, i), 0)
	}
	return args
}

type decoder struct{ data []byte }

func (d *decoder) byte() byte {
	if len(d.data) == 0 {
		return 0
	}
	b := d.data[0]
	d.data = d.data[1:]
	return b
}

func (d *decoder) uint64() uint64 {
	var b [8]byte
	d.data = d.data[copy(b[:], d.data):]
	return binary.LittleEndian.Uint64(b[:])
}

func (d *decoder) text() string {
	n := min(int(d.byte()), len(d.data))
	s := string(d.data[:n])
	d.data = d.data[n:]
	return s
}

func (d *decoder) value(t reflect.Type, pool []reflect.Value, depth int) reflect.Value {
	b := d.byte()
	if b < 128 && len(pool) > 0 {
		return pool[int(b)%len(pool)]
	}
	v := reflect.New(t).Elem()
	if t == reflect.TypeFor[decimal.Decimal]() {
		// Exponents of every size, but those that only printing minds.
		v.Set(reflect.ValueOf(decimal.New(int64(d.uint64()), int32(int16(d.uint64())))))
		return v
	}
	switch t.Kind() {
	case reflect.Bool:
		v.SetBool(b&1 != 0)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		// Half of the numbers are small: 64 bits at random are out of nearly every range.
		v.SetInt(int64(d.uint64()) >> (uint(b) % 64) >> (64 - t.Bits()))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		v.SetUint(d.uint64() >> (uint(b) % 64) >> (64 - t.Bits()))
	case reflect.Float32, reflect.Float64:
		v.SetFloat(math.Float64frombits(d.uint64()))
	case reflect.String:
		v.SetString(d.text())
	case reflect.Slice:
		if t.Elem().Kind() == reflect.Uint8 {
			v.SetBytes([]byte(d.text()))
			break
		}
		v.Set(reflect.MakeSlice(t, int(d.byte()%8), 8))
		for i := range v.Len() {
			v.Index(i).Set(d.value(t.Elem(), pooled(t.Elem(), "", ""), depth+1))
		}
	case reflect.Array:
		for i := range v.Len() {
			v.Index(i).Set(d.value(t.Elem(), pooled(t.Elem(), "", ""), depth+1))
		}
	case reflect.Struct:
		if !open(t) || depth > 4 {
			return pool[int(b)%len(pool)]
		}
		for i := range t.NumField() {
			f := t.Field(i)
			v.Field(i).Set(d.value(f.Type, pooled(f.Type, t.String(), f.Name), depth+1))
		}
	case reflect.Pointer:
		v.Set(reflect.New(t.Elem()))
		v.Elem().Set(d.value(t.Elem(), pooled(t.Elem(), "", ""), depth+1))
	default:
		if len(pool) > 0 {
			return pool[int(b)%len(pool)]
		}
	}
	return v
}

func pooled(t reflect.Type, owner, name string) []reflect.Value {
	lock.Lock()
	defer lock.Unlock()
	return values(t, owner, name)
}
