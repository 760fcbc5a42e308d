package sizing

import "strconv"

// A Band is a count from Min to Max, both included. The zero value is none at
// all. Bands are equal if == says so.
type Band struct {
	Min int `json:"min"`
	Max int `json:"max"`
}

// String returns "7 to 11", or "7" where Min and Max are the same.
func (b Band) String() string {
	if b.Min == b.Max {
		return strconv.Itoa(b.Min)
	}
	return strconv.Itoa(b.Min) + " to " + strconv.Itoa(b.Max)
}

// Contains reports whether n lies in b, its ends included.
func (b Band) Contains(n int) bool { return b.Min <= n && n <= b.Max }
