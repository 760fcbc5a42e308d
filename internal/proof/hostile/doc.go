// Package hostile calls every exported function with each of its parameters at the
// values at which code breaks, and shows that nothing does: no panic, no call over a
// second, no allocation over a bound, no NaN in a result, and every refusal an error of
// the package's own type that names the function and the field.
package hostile
