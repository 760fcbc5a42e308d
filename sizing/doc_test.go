package sizing_test

import (
	"testing"

	"example.com/fircone/internal/charts"
)

// Every chart in the package documentation is the output of an Example.
func TestDocIsExampleOutput(t *testing.T) {
	charts.InDoc(t, "Example_quickChart", "Example_chartByShape", "Example_chartOfWidths", "Example_chartOfSpacings", "Example_howSure")
}
