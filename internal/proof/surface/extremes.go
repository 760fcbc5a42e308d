package surface

import (
	"math"
	"reflect"
	"strings"

	"github.com/shopspring/decimal"
)

// hugeList is how many elements the longest list has, and hugeText how many bytes the longest text.
const (
	hugeList = 2_000
	hugeText = 1 << 16
)

// Extremes returns the values of type t at which code breaks: zero, the least and the greatest,
// NaN and the infinities, empty and huge texts and lists; and for a struct, each of these in
// each field of an otherwise ordinary one, and in all fields at once. A function that can
// refuse is given decimals of two billion digits and texts of 64 kB too; one that cannot, and prints
// what it is given, would be right to take its time over them.
func Extremes(t reflect.Type, refuses bool) []Extreme {
	lock.Lock()
	defer lock.Unlock()
	return maker{refuses}.extremes(t, 0)
}

type maker struct{ refuses bool }

// An Extreme is a value, and where in the parameter the extreme stands: "" for the whole of it,
// "Height" for a field, "Tree.Height" for a field of a field.
type Extreme struct {
	Field string
	Value reflect.Value
}

func (m maker) extremes(t reflect.Type, depth int) []Extreme {
	var es []Extreme
	add := func(xs ...any) {
		for _, x := range xs {
			es = append(es, Extreme{"", reflect.ValueOf(x).Convert(t)})
		}
	}
	if t == reflect.TypeFor[decimal.Decimal]() {
		if m.refuses {
			add(decimal.New(1, math.MaxInt32), decimal.New(1, math.MinInt32), decimal.New(-1, 1_000_000), decimal.New(1, -1_000_000))
		}
		add(decimal.Decimal{}, decimal.New(math.MinInt64, 0), decimal.New(math.MaxInt64, 0), decimal.New(math.MaxInt64, 18),
			decimal.New(-1, -2), decimal.RequireFromString(strings.Repeat("9", 5000)))
		return es
	}
	switch t.Kind() {
	case reflect.Bool:
		add(false, true)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		low := int64(math.MinInt64) >> (64 - t.Bits())
		add(low, low+1, int64(-1), int64(0), int64(1), ^low-1, ^low)
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		top := uint64(math.MaxUint64) >> (64 - t.Bits())
		add(uint64(0), uint64(1), top>>1, top>>1+1, top-1, top)
	case reflect.Float32, reflect.Float64:
		add(0.0, math.Copysign(0, -1), 1.0, -1.0, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64,
			math.SmallestNonzeroFloat64, float64(1<<63), -float64(1<<63), float64(1<<53+1), math.Nextafter(1, 2), 1e-300)
	case reflect.String:
		for _, s := range m.awkward() {
			add(s)
		}
	case reflect.Slice:
		es = append(es, Extreme{"", reflect.Zero(t)}, Extreme{"", reflect.MakeSlice(t, 0, 0)})
		if t.Elem().Kind() == reflect.Uint8 {
			for _, s := range m.awkward() {
				add([]byte(s))
			}
			break
		}
		pool := values(t.Elem(), "", "")
		for _, n := range []int{1, hugeList} {
			s := reflect.MakeSlice(t, n, n)
			for i := range n {
				s.Index(i).Set(pool[i%min(len(pool), 3)])
			}
			es = append(es, Extreme{"", s})
		}
		for _, e := range m.extremes(t.Elem(), depth+1) {
			s := reflect.MakeSlice(t, 2, 2)
			s.Index(0).Set(pool[0])
			s.Index(1).Set(e.Value)
			es = append(es, Extreme{e.Field, s})
		}
	case reflect.Array:
		for _, e := range m.extremes(t.Elem(), depth+1) {
			a := reflect.New(t).Elem()
			for i := range t.Len() {
				a.Index(i).Set(e.Value)
			}
			es = append(es, Extreme{e.Field, a})
		}
	case reflect.Struct:
		es = append(es, Extreme{"", reflect.Zero(t)})
		if !open(t) || depth > 3 {
			for _, v := range values(t, "", "") {
				es = append(es, Extreme{"", v})
			}
			break
		}
		base := values(t, "", "")
		for i := range t.NumField() {
			name := t.Field(i).Name
			for _, e := range m.extremes(t.Field(i).Type, depth+1) {
				v := reflect.New(t).Elem()
				v.Set(base[0])
				v.Field(i).Set(e.Value)
				field := name
				if e.Field != "" {
					field += "." + e.Field
				}
				es = append(es, Extreme{field, v})
			}
		}
		for k := range 12 {
			v := reflect.New(t).Elem()
			for i := range t.NumField() {
				if all := m.extremes(t.Field(i).Type, depth+1); len(all) > 0 {
					v.Field(i).Set(all[(k*7+i)%len(all)].Value)
				}
			}
			es = append(es, Extreme{"", v})
		}
	case reflect.Pointer:
		for _, e := range m.extremes(t.Elem(), depth+1) {
			p := reflect.New(t.Elem())
			p.Elem().Set(e.Value)
			es = append(es, Extreme{e.Field, p})
		}
	default:
		for _, v := range values(t, "", "") {
			es = append(es, Extreme{"", v})
		}
	}
	return es
}

// awkward returns texts that parsers fall over. A table of many rows repeats the width of its longest
// text in each, so what only prints is given shorter ones.
func (m maker) awkward() []string {
	long := hugeText
	if !m.refuses {
		long /= 64
	}
	return []string{
		"", " ", "\x00", "\xff\xfe", "\u202e7 ft", "0", "-0", "+", "-", ".", ",", "'", `"`, "/", "½", "1/0 ft", "0/0 in", "NaN", "NaN ft",
		"Inf m", "-Inf", "1e999999999 ft", "0x10 ft", "9223372036854775807 nm", "9223372036854775808 nm", "-9223372036854775808 nm",
		"99999999999999999999999999 ft", "0." + strings.Repeat("0", 40) + "1 ft", strings.Repeat("9", 64), strings.Repeat("9", 65),
		strings.Repeat("1 ft ", 12), strings.Repeat("-", 64), "7 ft\n6 in", "7\tft", "７ ft", "7 ft 6 in 7 ft 6 in", "#", "#12345", "#gggggg",
		"#ffffffff", strings.Repeat("é", 40), strings.Repeat(",", 50), "red,red,red,red,red,red,red,red,red,red", "%s%d%v", "<svg>&\"'",
		"2147483648", "-1", "1000000000000", "360.0000001 degrees", strings.Repeat("7 ft ", long/5), strings.Repeat("\x00", long),
		strings.Repeat("9", long),
	}
}
