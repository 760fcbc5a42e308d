package main

import (
	"os"
	"testing"

	"example.com/fircone/internal/proof/source"
)

// funcs.go holds the surface as it is now, so nothing exported escapes the tests that call it all.
func TestFuncsAreCurrent(t *testing.T) {
	m, err := source.Load()
	if err != nil {
		t.Fatal(err)
	}
	want, err := generate(m)
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(file(m))
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != string(want) {
		t.Error("the exported surface changed; run: go generate ./internal/proof/surface")
	}
}
