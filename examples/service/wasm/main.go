//go:build !js

// Wasm gives a page in a browser the functions of the service; it is built for
// js/wasm by examples/service/offline.
package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "wasm: this program runs in a browser: go run -C examples/service ./offline builds it")
	os.Exit(2)
}
