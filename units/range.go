package units

import "fmt"

// A Range is a count or a quantity from Min to Max, both included.
type Range[T int | Length | Area | Mass | Power] struct {
	Min T `json:"min"`
	Max T `json:"max"`
}

// String returns "7 to 11", or "7" if both ends are the same. Quantities are exact.
func (r Range[T]) String() string {
	if r.Min == r.Max {
		return fmt.Sprint(r.Min)
	}
	return fmt.Sprint(r.Min) + " to " + fmt.Sprint(r.Max)
}
