// Package labor says what the work takes and costs.
package labor
