package shared

import (
	"reflect"
	"sync"
	"testing"

	"example.com/fircone/internal/proof/surface"
)

const (
	goroutines = 8
	perFunc    = 12 // calls of each function
)

// A call is a function with arguments, and what it gives when nothing else runs.
type call struct {
	f    surface.Func
	args []reflect.Value
	want string
}

func do(f surface.Func, args []reflect.Value) (got string) {
	defer func() {
		if recover() != nil {
			got = "panic"
		}
	}()
	return surface.Encode(f.Call(args))
}

// The arguments are the same after the calls as before: no function keeps or changes a list
// that it was given. This runs first, since the lists are handed to every call again.
func TestArgumentsAreLeftAlone(t *testing.T) {
	for _, f := range surface.Funcs {
		for _, args := range surface.Cases(f, perFunc) {
			before := surface.Encode(args)
			do(f, args)
			if after := surface.Encode(args); after != before {
				t.Errorf("%s(%s) leaves %s", f.Name, before, after)
			}
		}
	}
}

func TestManyGoroutines(t *testing.T) {
	var calls []call
	for _, f := range surface.Funcs {
		for _, args := range surface.Cases(f, perFunc) {
			calls = append(calls, call{f, args, do(f, args)})
		}
	}
	var all sync.WaitGroup
	for g := range goroutines {
		all.Go(func() {
			// Each goroutine starts at another place, so that different functions meet, and every
			// second one goes backward.
			for k := range calls {
				c := calls[(k+g*len(calls)/goroutines)%len(calls)]
				if g%2 == 1 {
					c = calls[(2*len(calls)-1-k-g*len(calls)/goroutines)%len(calls)]
				}
				if got := do(c.f, c.args); got != c.want {
					t.Errorf("%s(%s) gives %s among others and %s alone", c.f.Name, surface.Encode(c.args), got, c.want)
					return
				}
			}
		})
	}
	all.Wait()
	t.Logf("%d functions, %d calls from each of %d goroutines", len(surface.Funcs), len(calls), goroutines)
}
