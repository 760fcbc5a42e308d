// Package palette picks colors that hold together.
package palette
