package placement_test

import (
	"testing"

	"example.com/fircone/internal/charts"
)

// Every chart in the package documentation is the output of an Example. The table of
// evenness is that of BenchmarkTable, which TestTable holds.
func TestDocIsExampleOutput(t *testing.T) {
	charts.InDoc(t, "Example_ticketHall", "ExampleOrder_Stations")
}
