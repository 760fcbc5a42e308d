package sizing

import (
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// Short names for the tables of the tests.
type (
	counts      = units.Range[int]
	lengthRange = units.Range[units.Length]
	lengths     = shopping.ByKind[units.Length]
	areas       = shopping.ByKind[units.Area]
)
