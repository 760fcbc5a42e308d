// Service answers over HTTP how much of everything a tree or a mantel takes,
// with a small page to try it.
//
//	go run -C examples/service .
//
// listens on 127.0.0.1:8080. POST a job to /plan and get the plan, to /picture
// and get a drawing of it; /openapi.json describes both. The page at / asks the
// service, or works without one: see the README of this folder.
//
// An interrupt stops it: no new connection is taken, and what is being answered
// is answered to the end.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/http"
	"os"
	"os/signal"
	"syscall"
	"time"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	status := run(ctx, os.Args[1:], os.Stderr)
	stop()
	os.Exit(status)
}

// run is the program: it returns the exit status, 2 for a wrong flag.
func run(ctx context.Context, args []string, stderr io.Writer) int {
	flags := flag.NewFlagSet("service", flag.ContinueOnError)
	flags.SetOutput(stderr)
	addr := flags.String("addr", "127.0.0.1:8080", "the `address` to listen on")
	browser := flags.String("browser", "", "the `folder` that examples/service/offline wrote, for a page that computes by itself")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return 0
	case err != nil:
		return 2
	case flags.NArg() > 0:
		fmt.Fprintf(stderr, "service: argument %q: want flags only\n", flags.Arg(0))
		return 2
	}
	var extra fs.FS
	if *browser != "" {
		extra = os.DirFS(*browser)
		if _, err := fs.Stat(extra, "fircone.wasm"); err != nil {
			fmt.Fprintf(stderr, "service: -browser %q: want a folder that examples/service/offline wrote: %v\n", *browser, err)
			return 2
		}
	}
	listener, err := net.Listen("tcp", *addr)
	if err != nil {
		fmt.Fprintf(stderr, "service: -addr %q: want host:port that is free: %v\n", *addr, err)
		return 2
	}
	fmt.Fprintf(stderr, "service: open http://%s/\n", listener.Addr())
	if err := serve(ctx, listener, newHandler(extra)); err != nil {
		fmt.Fprintln(stderr, "service:", err)
		return 1
	}
	return 0
}

// The time that a client has and gives.
const (
	headerTime = 5 * time.Second  // to send the header
	readTime   = 10 * time.Second // to send header and body
	writeTime  = 30 * time.Second // from the end of the header to the end of the answer
	idleTime   = 60 * time.Second // between two requests
	stopTime   = 35 * time.Second // for what is being answered when the service stops
)

// newServer returns a server with the times above.
func newServer(handler http.Handler) *http.Server {
	return &http.Server{
		Handler:           handler,
		ReadHeaderTimeout: headerTime,
		ReadTimeout:       readTime,
		WriteTimeout:      writeTime,
		IdleTimeout:       idleTime,
		MaxHeaderBytes:    16 << 10,
	}
}

// serve serves until ctx is done, and then answers what has come in.
func serve(ctx context.Context, listener net.Listener, handler http.Handler) error {
	server := newServer(handler)
	stopped := make(chan error, 1)
	serving, cancel := context.WithCancel(ctx)
	go func() {
		<-serving.Done()
		last, cancel := context.WithTimeout(context.WithoutCancel(ctx), stopTime)
		defer cancel()
		stopped <- server.Shutdown(last)
	}()
	err := server.Serve(listener)
	cancel()
	if stopping := <-stopped; errors.Is(err, http.ErrServerClosed) {
		err = stopping
	}
	return err
}
