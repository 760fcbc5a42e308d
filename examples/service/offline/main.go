// Offline writes a folder with the page of the service and all that it needs to
// compute by itself, for any web server, a kiosk or an app's web view.
//
//	go run -C examples/service ./offline -o FOLDER
//
// The service offers the same page if it is given the folder:
//
//	go run -C examples/service . -browser FOLDER
package main

import (
	"bytes"
	"compress/gzip"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"example.com/fircone/examples/service/api"
	"example.com/fircone/examples/service/page"
)

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("offline", flag.ContinueOnError)
	flags.SetOutput(stderr)
	dir := flags.String("o", "", "the `folder` to write, made if it is not there")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return 0
	case err != nil:
		return 2
	case *dir == "" || flags.NArg() > 0:
		fmt.Fprintln(stderr, `offline: -o "": want the folder to write, and nothing else`)
		return 2
	}
	if err := build(*dir, stdout); err != nil {
		fmt.Fprintln(stderr, "offline:", err)
		return 1
	}
	return 0
}

// build writes the folder and prints the size of what a browser loads.
func build(dir string, stdout io.Writer) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	program := filepath.Join(dir, "fircone.wasm")
	abs, err := filepath.Abs(program)
	if err != nil {
		return err
	}
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", abs, "example.com/fircone/examples/service/wasm")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("%w: %s", err, out)
	}
	// The script that starts a Go program in a browser comes with the compiler.
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	script, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(dir, "wasm_exec.js"), script, 0o644); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(dir, "example.json"), api.Example().Body, 0o644); err != nil {
		return err
	}
	err = fs.WalkDir(page.Files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := page.Files.ReadFile(name)
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(dir, name), text, 0o644)
	})
	if err != nil {
		return err
	}
	return pack(program, stdout)
}

// pack writes a compressed copy beside a file, for servers that offer one.
func pack(name string, stdout io.Writer) error {
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	var buf bytes.Buffer
	packer, err := gzip.NewWriterLevel(&buf, gzip.BestCompression)
	if err != nil {
		return err
	}
	if _, err := packer.Write(text); err != nil {
		return err
	}
	if err := packer.Close(); err != nil {
		return err
	}
	fmt.Fprintf(stdout, "%s: %.1f MB, %.1f MB compressed\n", filepath.Base(name), float64(len(text))/1e6, float64(buf.Len())/1e6)
	return os.WriteFile(name+".gz", buf.Bytes(), 0o644)
}
