package check

import (
	"encoding/json"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// topLevel lists what may stand at the top of the repository, dot-files apart.
var topLevel = []string{
	"DEVELOPERS.md", "README.md", "doc.go", "examples", "go.mod", "go.sum",
	"internal", "mantel", "palette", "sizing", "units",
}

// requirements lists the modules that go.mod may name, and all that it must.
var requirements = []string{
	"github.com/google/go-cmp",           // tests
	"github.com/lucasb-eyer/go-colorful", // palette
	"github.com/shopspring/decimal",      // money and exact decimals
	"pgregory.net/rapid",                 // tests
}

func TestTopLevel(t *testing.T) {
	m := load(t)
	c := exec.Command("git", "ls-files", "-co", "--exclude-standard")
	c.Dir = m.Root
	out, err := c.Output()
	if err != nil {
		t.Fatal(err)
	}
	have := map[string]bool{}
	for path := range strings.Lines(string(out)) {
		name, _, _ := strings.Cut(strings.TrimSpace(path), "/")
		if !strings.HasPrefix(name, ".") {
			have[name] = true
		}
	}
	if got := slices.Sorted(maps.Keys(have)); !slices.Equal(got, topLevel) {
		t.Errorf("the top level holds\n%q\nand the design says\n%q", got, topLevel)
	}
}

// go.mod names the four modules of the design and no other, each directly, with the floor
// of the language and no tool, toolchain, replacement or exclusion.
func TestRequirements(t *testing.T) {
	m := load(t)
	// The go command keeps the result of a test until a file changes that the test itself has read.
	if _, err := os.ReadFile(filepath.Join(m.Root, "go.mod")); err != nil {
		t.Fatal(err)
	}
	c := exec.Command("go", "mod", "edit", "-json")
	c.Dir = m.Root
	out, err := c.Output()
	if err != nil {
		t.Fatal(err)
	}
	var mod struct {
		Go, Toolchain string
		Require       []struct {
			Path, Version string
			Indirect      bool
		}
		Exclude, Replace, Retract, Tool, Ignore, Godebug []any
	}
	if err := json.Unmarshal(out, &mod); err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, r := range mod.Require {
		if r.Indirect {
			t.Errorf("go.mod: %s is marked indirect", r.Path)
		}
		paths = append(paths, r.Path)
	}
	slices.Sort(paths)
	if !slices.Equal(paths, requirements) {
		t.Errorf("go.mod requires %q, and the design allows %q", paths, requirements)
	}
	if mod.Go != "1.25" {
		t.Errorf("go.mod says go %s, want 1.25", mod.Go)
	}
	if n := len(mod.Exclude) + len(mod.Replace) + len(mod.Retract) + len(mod.Tool) + len(mod.Ignore) + len(mod.Godebug); n > 0 || mod.Toolchain != "" {
		t.Errorf("go.mod has more than module, go and require: %s", out)
	}
}

// A program that imports only units downloads decimal and no other code: not the colors,
// not the test libraries, and nothing that only measures. It is built against a copy of
// the module in a new module, from an empty module cache that is filled from this
// machine's own.
func TestUnitsDownloadsLittle(t *testing.T) {
	if testing.Short() {
		t.Skip("builds with an empty module cache")
	}
	m := load(t)
	env, err := exec.Command("go", "env", "GOMODCACHE").Output()
	if err != nil {
		t.Fatal(err)
	}
	cache := strings.TrimSpace(string(env))
	dir := t.TempDir()
	empty := filepath.Join(dir, "cache")
	for name, text := range map[string]string{
		"go.mod":  "module importer\n\ngo 1.25\n",
		"main.go": "package main\n\nimport \"example.com/fircone/units\"\n\nfunc main() { println(units.Foot.String()) }\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	run := func(args ...string) {
		t.Helper()
		c := exec.Command("go", args...)
		c.Dir = dir
		c.Env = append(os.Environ(), "GOMODCACHE="+empty, "GOPROXY=file://"+cache+"/cache/download", "GONOSUMDB=*",
			"GOFLAGS=-modcacherw", "GOWORK=off")
		if out, err := c.CombinedOutput(); err != nil {
			t.Fatalf("go %v: %v\n%s", args, err, out)
		}
	}
	run("mod", "edit", "-require=example.com/fircone@v0.0.0", "-replace=example.com/fircone="+m.Root)
	run("get", "example.com/fircone/units")
	run("build", "-o", filepath.Join(dir, "importer"), ".")
	zips, err := filepath.Glob(filepath.Join(empty, "cache", "download", "*", "*", "*", "@v", "*.zip"))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, z := range zips {
		rel, err := filepath.Rel(filepath.Join(empty, "cache", "download"), z)
		if err != nil {
			t.Fatal(err)
		}
		path, _, _ := strings.Cut(rel, "/@v/")
		got = append(got, path)
	}
	if want := []string{"github.com/shopspring/decimal"}; !slices.Equal(got, want) {
		t.Errorf("importing units downloads %q, want %q", got, want)
	}
}
