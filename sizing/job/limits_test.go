package job_test

import (
	"errors"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/units"
)

// A hundred rooms are planned, trees and mantels counted together, and one more is not.
func TestAtTheLimits(t *testing.T) {
	for _, row := range []struct {
		trees, mantels int
		refused        string
	}{
		{60, 40, ""},
		{0, 100, ""},
		{61, 40, "101 trees and mantels"},
		{1, 100, "101 trees and mantels"},
	} {
		var r job.Request
		for range row.trees {
			r.Trees = append(r.Trees, job.Tree{Tree: sizing.Tree{Height: 7 * units.Foot}})
		}
		for range row.mantels {
			r.Mantels = append(r.Mantels, job.Mantel{Mantel: mantel.Mantel{Length: 5 * units.Foot}})
		}
		p, err := job.Make(r)
		if row.refused != "" {
			list := job.Faults(err)
			if len(list) != 1 || list[0].Field != "/trees" || list[0].Value != row.refused || list[0].Want != "at most 100 together" || !errors.Is(err, units.ErrRange) {
				t.Errorf("%d trees and %d mantels: %v", row.trees, row.mantels, err)
			}
			continue
		}
		if err != nil || len(p.Trees) != row.trees || len(p.Mantels) != row.mantels {
			t.Errorf("%d trees and %d mantels: %d and %d, %v", row.trees, row.mantels, len(p.Trees), len(p.Mantels), err)
		}
	}
}
