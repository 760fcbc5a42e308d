package units

import (
	"testing"

	"example.com/fircone/internal/charts"
)

func TestDocCharts(t *testing.T) {
	charts.InDoc(t, "Example_forms", "Example_refusals", "Example_conversions")
}
