package lights_test

import (
	"testing"

	"example.com/fircone/internal/charts"
)

// The chart in the package documentation is the output of an Example.
func TestDocIsExampleOutput(t *testing.T) { charts.InDoc(t, "Example_chart") }
