package hostile

import (
	"testing"

	"example.com/fircone/internal/proof/surface"
)

// FuzzFunctions calls any exported function with any arguments: the fuzzer chooses both.
func FuzzFunctions(f *testing.F) {
	for i := range surface.Funcs {
		f.Add(uint16(i), []byte{})
		f.Add(uint16(i), []byte{1, 2, 3, 0, 1, 2, 3})
		f.Add(uint16(i), []byte{200, 200, 200, 200, 200, 200, 200, 200, 200, 255, 255, 255, 255, 255, 255, 255, 255, 127})
	}
	f.Fuzz(func(t *testing.T, i uint16, data []byte) {
		fn := surface.Funcs[int(i)%len(surface.Funcs)]
		check(t, fn, call{args: surface.Decode(fn, data), param: -1})
	})
}
