// Nbrun runs Go notebooks without a browser; see package notebook for the
// dialect.
//
//	nbrun FILE.ipynb ...          run each and write its outputs back into it
//	nbrun -check FILE.ipynb ...   run each and compare with the outputs in it
//	nbrun -serve DIR              run cells as they come, for a Jupyter kernel
//
// It exits with status 1 if a cell fails or an output differs, and with status 2
// if it is called wrongly.
//
// With -serve, each line of standard input is a JSON object {"code": source} and
// each is answered by one line, {"outputs": [...], "ok": true or false}.
package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"time"

	"example.com/fircone/internal/notebook"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	status := run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	stop()
	os.Exit(status)
}

func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("nbrun", flag.ContinueOnError)
	flags.SetOutput(stderr)
	check := flags.Bool("check", false, "compare with the outputs in the file and write nothing")
	serve := flags.Bool("serve", false, "run cells from standard input in the folder given")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() == 0 || *serve && (flags.NArg() != 1 || *check) {
		fmt.Fprintln(stderr, "usage: nbrun [-check] FILE.ipynb ...\n       nbrun -serve DIR")
		return 2
	}
	if *serve {
		if err := serveCells(ctx, flags.Arg(0), stdin, stdout); err != nil {
			fmt.Fprintln(stderr, "nbrun:", err)
			return 1
		}
		return 0
	}
	status := 0
	for _, name := range flags.Args() {
		start := time.Now()
		if err := runFile(ctx, name, *check, stdout); err != nil {
			fmt.Fprintf(stderr, "nbrun: %s: %v\n", name, err)
			status = 1
			continue
		}
		fmt.Fprintf(stdout, "ok\t%s\t%.1fs\n", name, time.Since(start).Seconds())
	}
	return status
}

func runFile(ctx context.Context, name string, check bool, w io.Writer) error {
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	nb, err := notebook.Read(bytes.NewReader(text))
	if err != nil {
		return err
	}
	if check {
		diffs, err := nb.Check(ctx, filepath.Dir(name))
		if err != nil {
			return err
		}
		for _, d := range diffs {
			fmt.Fprintf(w, "code cell %d gives other outputs than the file holds:\n%s", d.Cell, d)
		}
		if len(diffs) > 0 {
			return fmt.Errorf("outputs of %d cells differ", len(diffs))
		}
		return nil
	}
	failed := nb.Run(ctx, filepath.Dir(name))
	// The outputs up to a cell that failed are written too: they help to mend it.
	var buf bytes.Buffer
	if _, err := nb.WriteTo(&buf); err != nil {
		return err
	}
	if err := os.WriteFile(name, buf.Bytes(), 0o644); err != nil {
		return err
	}
	return failed
}

func serveCells(ctx context.Context, dir string, r io.Reader, w io.Writer) (err error) {
	s, err := notebook.NewSession(ctx, dir)
	if err != nil {
		return err
	}
	defer func() {
		if closing := s.Close(); err == nil {
			err = closing
		}
	}()
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, 1<<20)
	enc := json.NewEncoder(w)
	for lines.Scan() {
		var request struct{ Code string }
		if err := json.Unmarshal(lines.Bytes(), &request); err != nil {
			return err
		}
		outs := s.Run(ctx, request.Code)
		if err := enc.Encode(map[string]any{"outputs": outs, "ok": !notebook.Failed(outs)}); err != nil {
			return err
		}
	}
	return lines.Err()
}
