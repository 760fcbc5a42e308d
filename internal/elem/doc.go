// Package elem has the few elementary functions that fircone needs, written so
// that they give the same bits on every architecture.
//
// Package math promises no such thing. Some architectures have assembly of
// their own for it, and a compiler may fuse a product with the sum that it
// feeds, which rounds once where the source rounds twice; so the last digits of
// [math.Log] or [math.Sin] depend on the machine. Here every function is plain
// Go over + - * /, [math.Sqrt] and exact operations on bits, each correctly
// rounded by IEEE 754, and every product that feeds a sum is written
// float64(x*y), which the language specification says stops fusing.
//
// The names, the signatures and the special cases are those of package math.
// Each function states its error bound in ulps, units in the last place of the
// exact result: 0.5 is the least possible. The tests measure every bound
// against math/big and fail if a result strays past it. A bound holds where the
// result is a normal number; below 2**-1022 a result may be one more unit of
// 2**-1074 off.
//
// Method: arguments are reduced with constants of more than double precision,
// what is left is summed by its Taylor series, and the leading part is carried
// in two floating-point numbers until the last addition.
package elem
