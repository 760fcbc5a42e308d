package even

import (
	"os"
	"os/exec"
	"testing"
)

// The tests of package placement, over all trees. They say which tree breaks which bar.
func TestEveryTree(t *testing.T) {
	if testing.Short() {
		t.Skip("takes a minute")
	}
	c := exec.Command("go", "test", "-count=1", "./sizing/placement")
	c.Dir = "../../.."
	c.Env = append(os.Environ(), "FIRCONE_EVERY=1")
	if out, err := c.CombinedOutput(); err != nil {
		t.Errorf("%v: %v\n%s", c, err, out)
	}
}
