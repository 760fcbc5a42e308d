package check

import (
	"slices"
	"strings"
	"sync"
	"testing"

	"example.com/fircone/internal/check/source"
)

var (
	read = sync.OnceValues(source.Load)
	told sync.Once
)

func load(t *testing.T) *source.Module {
	t.Helper()
	m, err := read()
	if err != nil {
		told.Do(func() { t.Error(err) })
		t.Fatal("the module's source cannot be read")
	}
	return m
}

// arrows says what each package that ships may import of the module's own, besides
// internal/. It is the picture in the design:
//
//	units  <-  palette
//	units  <-  shopping  <-  sizing  <-  lights, placement
//	units  <-  shopping  <-  mantel
//	all of them  <-  labor  <-  job
var arrows = map[string][]string{
	".":                {},
	"units":            {},
	"palette":          {"units"},
	"sizing/shopping":  {"units"},
	"sizing":           {"units", "sizing/shopping"},
	"sizing/lights":    {"units", "sizing/shopping", "sizing"},
	"sizing/placement": {"units", "sizing/shopping", "sizing"},
	"mantel":           {"units", "sizing/shopping"},
	"sizing/labor":     {"units", "palette", "sizing/shopping", "sizing", "sizing/lights", "sizing/placement", "mantel"},
	"sizing/job":       {"units", "palette", "sizing/shopping", "sizing", "sizing/lights", "sizing/placement", "mantel", "sizing/labor"},
}

// planned lists packages of the design that may not be there yet.
var planned = []string{"sizing/lights", "sizing/labor", "sizing/job"}

// standard lists the packages of Go's own that may ship. None does I/O for us, reads a
// clock, makes random numbers, starts a goroutine or goes round the type system.
var standard = []string{
	"bytes", "cmp", "container/heap", "database/sql/driver", "encoding", "encoding/csv", "encoding/json", "encoding/xml", "errors", "fmt", "html", "io", "iter", "maps",
	"math", "math/big", "math/bits", "reflect", "slices", "sort", "strconv", "strings", "unicode", "unicode/utf8",
}

// outside lists the modules that may ship, each with the packages that may import it.
var outside = map[string][]string{
	"github.com/shopspring/decimal":      {"units", "palette", "sizing/shopping", "sizing", "sizing/lights", "sizing/placement", "mantel", "sizing/labor", "sizing/job"},
	"github.com/lucasb-eyer/go-colorful": {"palette"},
}

func TestImportsRunOneWay(t *testing.T) {
	for _, p := range load(t).Shipped() {
		allowed, ok := arrows[p.Rel()]
		if !ok {
			t.Errorf("%s is not in the design; if it should be, add it to arrows", p.Rel())
			continue
		}
		for _, path := range p.Imports {
			rel, own := strings.CutPrefix(path, source.Path+"/")
			switch {
			case p.Rel() == ".": // for the links of its documentation
			case path == source.Path:
				t.Errorf("%s imports the root, which is docs only", p.Rel())
			case own && strings.HasPrefix(rel, "internal/"):
			case own && !slices.Contains(allowed, rel):
				t.Errorf("%s imports %s, and may import only %v", p.Rel(), rel, allowed)
			}
		}
	}
}

// Nothing that ships, and nothing internal that it imports, imports an example, a test
// library or a package of Go's own outside the list.
func TestImportsArePure(t *testing.T) {
	for _, p := range load(t).Checked() {
		for _, path := range p.Imports {
			rel, own := strings.CutPrefix(path, source.Path+"/")
			switch by := outside[path]; {
			case own:
				if strings.HasPrefix(rel, "examples/") || strings.HasPrefix(rel, "internal/check") {
					t.Errorf("%s imports %s", p.Rel(), rel)
				}
			case strings.Contains(path, "."):
				if p.Shipped() && !slices.Contains(by, p.Rel()) || !p.Shipped() && by == nil {
					t.Errorf("%s imports %s; the design lets it be imported by %v", p.Rel(), path, by)
				}
			case !slices.Contains(standard, path):
				t.Errorf("%s imports %s, which is not on the list of pure packages", p.Rel(), path)
			}
		}
	}
}

// The packages of the design are all there.
func TestHouseIsWhole(t *testing.T) {
	var have []string
	for _, p := range load(t).Shipped() {
		have = append(have, p.Rel())
	}
	for rel := range arrows {
		if !slices.Contains(have, rel) && !slices.Contains(planned, rel) {
			t.Errorf("the design has a package %s, and there is none", rel)
		}
	}
}
