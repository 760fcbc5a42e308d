// Package proof holds the module to its own design. Its tests read the source and fail
// if an import runs the wrong way, a package variable changes after init, an exported
// name has no documentation or no Example, the README names something that is not
// there, or the compiler could give other bits on another architecture.
//
// Beside it stand the tests that call the whole public surface: [golden] (the same
// results everywhere), [hostile] (no input breaks it) and [shared] (safe from many
// goroutines), with the programs that measure: evidence, mutants, campaign, breaks.
//
// [golden]: https://pkg.go.dev/example.com/fircone/internal/proof/golden
// [hostile]: https://pkg.go.dev/example.com/fircone/internal/proof/hostile
// [shared]: https://pkg.go.dev/example.com/fircone/internal/proof/shared
package proof
