package units

import "strconv"

// String is a stand-in until the exact form is written.
func (l Length) String() string {
	return strconv.FormatFloat(float64(l)/float64(Inch), 'f', -1, 64) + " in"
}
