package job

import (
	"errors"
	"reflect"
	"strconv"
	"strings"

	"example.com/fircone/internal/spelling"
	"example.com/fircone/internal/strictjson"
	"example.com/fircone/mantel"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// ParseRequest reads a request from JSON, as in
//
//	{
//	  "trees": [{"room": "hall", "height": "7 ft 6 in", "exposure": "corner", "accents": ["picks"]}],
//	  "mantels": [{"length": "5 ft", "hanging": {"look": "asymmetrical left"}}],
//	  "colors": "crimson,forestgreen,gold:metal,ivory",
//	  "shop": {"offers": [{"item": "picks", "name": "bunch of 6", "pack": 6, "price": "5.40"}], "budget": "90.00"}
//	}
//
// Anything a house omits is as in [CommonPractice]. The text has at most 4 MiB, 16 levels, and
// 5,000 values in a list. No name may be unknown or repeated.
//
// It returns all faults at once, those of [Make] too: see [Faults].
func ParseRequest(data []byte) (Request, error) {
	const function = "job.ParseRequest"
	r := Request{House: CommonPractice()}
	err := strictjson.Unmarshal(function, data, &r)
	list := Faults(err)
	if len(list) == 1 && list[0].Field == "data" {
		return Request{}, err
	}
	for _, f := range list {
		if strings.HasPrefix(f.Field, "/trees/") && strings.Contains(f.Field, "/accents/") && f.Err == units.ErrName {
			f.Want = accents(f.Value)
		}
	}
	// What could not be read has a zero in its place, of which nothing is said again.
	for _, f := range check(function, r) {
		told := false
		for _, known := range list {
			told = told || f.Field == known.Field || f.Field == "/box" && known.Field == "/colors" || strings.HasPrefix(known.Field, f.Field+"/") || strings.HasPrefix(f.Field, known.Field+"/") ||
				errors.Is(known, units.ErrName) && nothing(f.Value) && parent(f.Field) == parent(known.Field) // the name that is missing was misspelled
		}
		if !told {
			list = append(list, f)
		}
	}
	if len(list) == 0 && r.Stand != 0 {
		_, list = plan(function, r) // since only the plan says how long the work takes, and what there is to lose
	}
	if len(list) > 0 {
		return Request{}, join(list)
	}
	return r, nil
}

// accents returns the kinds that are accents of a tree, and which of them a name that is no kind may stand for.
func accents(name string) string {
	var names []string
	var refused *units.Error // which lists them
	for kind := range shopping.Kind(len(shopping.ByKind[bool]{})) {
		if _, err := (sizing.Comparison{}).Needs(units.InFeetInches, kind); !errors.As(err, &refused) {
			names = append(names, kind.String())
		}
	}
	return refused.Want + spelling.DidYouMean(strings.Trim(name, `"`), names...)
}

// parent returns the pointer to what has the field of a pointer.
func parent(pointer string) string { return pointer[:max(0, strings.LastIndexByte(pointer, '/'))] }

// nothing reports whether a value is that of a field that was left out.
func nothing(value string) bool { return value == "" || value == "0" || strings.HasPrefix(value, "0 ") }

// Faults returns the errors that [ParseRequest] and [Make] have joined, one for each
// value that is to blame. Field is its JSON Pointer (RFC 6901) in the request,
// "/trees/0/height", or "data" for text that is not JSON. Any other error gives nil.
func Faults(err error) []*units.Error {
	var list []*units.Error
	joined, ok := err.(interface{ Unwrap() []error })
	if !ok {
		return nil
	}
	for _, e := range joined.Unwrap() {
		var fault *units.Error
		if errors.As(e, &fault) {
			list = append(list, fault)
		}
	}
	return list
}

// join is the reverse of Faults.
func join(list []*units.Error) error {
	errs := make([]error, len(list))
	for i, f := range list {
		errs[i] = f
	}
	return errors.Join(errs...)
}

// check returns all faults of a request. A package of the library stops at the
// first that it meets; so each value that is to blame is replaced by one that will do, and the
// rest is looked at again.
func check(function string, r Request) []*units.Error {
	var list []*units.Error
	seen := map[string]bool{}
	for len(list) < strictjson.MaxFaults {
		faults := new(draft).prepare(function, r)
		if _, err := r.Shop.List(nil); err != nil {
			faults = append(faults, place(function, err, "/shop")...)
		}
		mended := false
		for _, f := range faults {
			if !seen[f.Field] {
				seen[f.Field] = true
				list = append(list, f)
				mended = mend(&r, f.Field) || mended
			}
		}
		if !mended {
			break
		}
	}
	return list
}

// mend replaces the value at a pointer by one that will do, in a copy of the lists on the
// way to it, and reports whether it could.
func mend(r *Request, pointer string) bool {
	names := strings.Split(pointer, "/")[1:]
	if len(names) > 2 && names[0] == "house" && names[1] == "rates" {
		mendRates(r, names[2:])
		return true
	}
	v := reflect.ValueOf(r).Elem()
	for i, name := range names {
		if i == 3 && names[0] == "mantels" {
			switch p := v.Addr().Interface().(type) { // fields that go together
			case *Run:
				*p = Run{Run: mantel.Run{Hooks: []mantel.Point{{}, {Along: units.Foot}}}}
				return true
			case *mantel.Rectangle, *mantel.Stockings, *lights.Label, *mantel.Point:
				v.SetZero()
				return true
			}
		}
		switch v.Kind() {
		case reflect.Slice:
			n, err := strconv.Atoi(name)
			if err != nil || n < 0 || n >= v.Len() {
				return false
			}
			copied := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
			reflect.Copy(copied, v)
			v.Set(copied)
			v = v.Index(n)
			if harmless := harmless(v.Type(), n); harmless.IsValid() {
				v.Set(harmless)
				return true
			}
		case reflect.Struct:
			field, ok := strictjson.Field(v, name)
			if !ok {
				return false
			}
			v = field
		default:
			v.SetZero()
			return true
		}
	}
	switch p := v.Addr().Interface().(type) {
	case *units.Length:
		*p = 0
		if names[len(names)-1] == "height" && names[0] == "trees" || names[len(names)-1] == "length" {
			*p = 7 * units.Foot
		}
	default:
		v.SetZero()
	}
	return true
}

// harmless returns a value for the place n of a list of which single fields cannot be
// mended.
func harmless(t reflect.Type, n int) reflect.Value {
	item := shopping.Item{Kind: shopping.Tie, Type: "fault " + strconv.Itoa(n)}
	switch t {
	case reflect.TypeFor[shopping.Offer]():
		return reflect.ValueOf(shopping.Offer{Item: item, Name: item.Type, Pack: shopping.Quantity{Pieces: 1}, Price: one})
	case reflect.TypeFor[shopping.Lot]():
		return reflect.ValueOf(shopping.Lot{Item: item, Quantity: shopping.Quantity{Pieces: 1}})
	case reflect.TypeFor[labor.Box]():
		return reflect.ValueOf(labor.Box{Name: item.Type, Cells: 1})
	}
	return reflect.Value{}
}
