// Package hostile calls every exported function and method of the packages that ship with one value after
// another out of its range: each argument, and each field of each argument, negative, huge, NaN, an unknown
// name, an awkward text. Nothing panics, no result holds NaN or an infinity, beside an error every result is
// zero, and every error is a units.Error that names the function that was called and, by the
// argument's name or a JSON Pointer, the value that was wrong.
//
// The functions are found by the source, methods by reflection. What is listed by hand are ordinary values of
// the types that hold parameters, and the package-level functions.
package hostile
