// Package surface lists every exported function, method and typed constant of the
// packages that ship, and makes arguments to call them with: ordinary ones, over which
// results are recorded, and extreme ones, which must do no harm. What it knows of a
// function it reads from its type, so a new function is called by every test that
// ranges over [Funcs] as soon as funcs.go is generated anew.
package surface

import (
	"encoding/binary"
	"fmt"
	"hash/fnv"
	"reflect"
	"strings"
)

//go:generate go run ./gen

// A Func is an exported function, or a method as a function of its receiver.
type Func struct {
	Name   string   // "units.ParseLength", "sizing.Rules.Picks"
	Params []string // the names of its parameters, the receiver's first
	Method bool     // whether the first parameter is the receiver
	Value  any      // the function itself
}

// Package returns the name of the package that f is in.
func (f Func) Package() string {
	p, _, _ := strings.Cut(f.Name, ".")
	return p
}

// Type returns the type of f.
func (f Func) Type() reflect.Type { return reflect.TypeOf(f.Value) }

// Must reports whether f is documented to panic on wrong input, as its name says.
func (f Func) Must() bool {
	return strings.HasPrefix(f.Name[strings.LastIndexByte(f.Name, '.')+1:], "Must")
}

// Call calls f. Pointers among the arguments are given a fresh copy of what they point to,
// so that a call cannot change the arguments of the next; the copies stand behind the
// results in what is returned, since what a method left there is a result of it.
func (f Func) Call(args []reflect.Value) []reflect.Value {
	fresh := make([]reflect.Value, len(args))
	var changed []reflect.Value
	for i, a := range args {
		if a.Kind() == reflect.Pointer && !a.IsNil() {
			p := reflect.New(a.Type().Elem())
			p.Elem().Set(a.Elem())
			a = p
			changed = append(changed, p.Elem())
		}
		fresh[i] = a
	}
	var out []reflect.Value
	if v := reflect.ValueOf(f.Value); v.Type().IsVariadic() {
		out = v.CallSlice(fresh)
	} else {
		out = v.Call(fresh)
	}
	return append(out, changed...)
}

// Err returns the error among the results of a call, and whether the function returns one.
func (f Func) Err(results []reflect.Value) (error, bool) {
	t := f.Type()
	if n := t.NumOut(); n > 0 && t.Out(n-1) == reflect.TypeFor[error]() {
		if !results[n-1].IsValid() {
			return nil, true
		}
		err, _ := results[n-1].Interface().(error)
		return err, true
	}
	return nil, false
}

// Cases returns up to limit lists of ordinary arguments for f: every combination of the
// values of its parameters if there are so few, and otherwise a choice of them that is the
// same on every machine.
func Cases(f Func, limit int) [][]reflect.Value {
	t := f.Type()
	pools := make([][]reflect.Value, t.NumIn())
	all := 1
	for i := range pools {
		pools[i] = Ordinary(f, i)
		if len(pools[i]) == 0 {
			panic(fmt.Sprintf("surface: no value of type %v for %s of %s", t.In(i), f.Params[i], f.Name))
		}
		if all <= limit {
			all *= len(pools[i])
		}
	}
	var cases [][]reflect.Value
	for k := range min(all, limit) {
		args := make([]reflect.Value, len(pools))
		rest := k
		for i, pool := range pools {
			if all <= limit {
				args[i] = pool[rest%len(pool)]
				rest /= len(pool)
			} else {
				args[i] = pool[Mix(f.Name, k, i)%uint64(len(pool))]
			}
		}
		cases = append(cases, args)
	}
	return cases
}

// Mix returns a number made of a name and two numbers, spread evenly and the same everywhere.
func Mix(name string, a, b int) uint64 {
	h := fnv.New64a()
	h.Write([]byte(name))
	var buf [16]byte
	binary.LittleEndian.PutUint64(buf[:], uint64(a))
	binary.LittleEndian.PutUint64(buf[8:], uint64(b))
	h.Write(buf[:])
	// FNV's low bits are weak; finish as splitmix64 does.
	x := h.Sum64()
	x ^= x >> 30
	x *= 0xbf58476d1ce4e5b9
	x ^= x >> 27
	x *= 0x94d049bb133111eb
	return x ^ x>>31
}
