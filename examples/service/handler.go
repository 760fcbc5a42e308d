package main

import (
	_ "embed"
	"errors"
	"io"
	"io/fs"
	"log/slog"
	"mime"
	"net/http"
	"os"
	"runtime"
	"strconv"
	"strings"

	"example.com/fircone/examples/service/api"
	"example.com/fircone/examples/service/page"
)

//go:embed openapi.json
var openAPI []byte

// newHandler returns the whole service. Files of extra, which may be nil, are
// what the page needs to compute without the service.
func newHandler(extra fs.FS) http.Handler {
	mux := http.NewServeMux()
	gate := newGate(runtime.GOMAXPROCS(0), 500)
	for _, path := range []string{"/plan", "/places", "/crew", "/sheet", "/picture"} {
		mux.Handle("POST "+path, gate)
		mux.HandleFunc(path, onlyPost)
	}
	mux.HandleFunc("GET /example.json", func(w http.ResponseWriter, _ *http.Request) { write(w, api.Example()) })
	mux.HandleFunc("GET /openapi.json", func(w http.ResponseWriter, _ *http.Request) {
		write(w, api.Reply{Status: http.StatusOK, Type: "application/json", Body: openAPI})
	})
	mux.HandleFunc("GET /healthz", func(w http.ResponseWriter, _ *http.Request) {
		write(w, api.Reply{Status: http.StatusOK, Type: "text/plain; charset=utf-8", Body: []byte("ok\n")})
	})
	mux.HandleFunc("GET /problems/{name}", explain)
	mux.Handle("GET /{$}", file(page.Files, "index.html"))
	for _, name := range []string{"page.js", "page.css", "icon.svg"} {
		mux.Handle("GET /"+name, file(page.Files, name))
	}
	if extra != nil {
		mux.Handle("GET /fircone.wasm", file(extra, "fircone.wasm"))
		mux.Handle("GET /wasm_exec.js", file(extra, "wasm_exec.js"))
	}
	mux.HandleFunc("/", func(w http.ResponseWriter, _ *http.Request) {
		write(w, api.NewProblem("not-found", "").Reply())
	})
	return guard(mux)
}

func onlyPost(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Allow", "POST")
	write(w, api.NewProblem("method", "").Reply())
}

// explain tells what a kind of problem means.
func explain(w http.ResponseWriter, r *http.Request) {
	for _, k := range api.Kinds() {
		if k.Name == r.PathValue("name") {
			text := k.Title + " (HTTP status " + strconv.Itoa(k.Status) + ")\n\n" + k.Explain + "\n"
			write(w, api.Reply{Status: http.StatusOK, Type: "text/plain; charset=utf-8", Body: []byte(text)})
			return
		}
	}
	write(w, api.NewProblem("not-found", "").Reply())
}

// write sends an answer.
func write(w http.ResponseWriter, r api.Reply) {
	header := w.Header()
	header.Set("Content-Type", r.Type)
	header.Set("Content-Length", strconv.Itoa(len(r.Body)))
	header.Set("Cache-Control", "no-store")
	if r.Status == http.StatusServiceUnavailable {
		header.Set("Retry-After", "2")
	}
	w.WriteHeader(r.Status)
	_, _ = w.Write(r.Body) // a client that has gone needs no answer
}

// file serves one file, compressed if the client takes it so.
func file(files fs.FS, name string) http.Handler {
	kind := map[string]string{
		"html": "text/html; charset=utf-8",
		"js":   "text/javascript; charset=utf-8",
		"css":  "text/css; charset=utf-8",
		"svg":  "image/svg+xml",
		"wasm": "application/wasm",
	}[name[strings.LastIndexByte(name, '.')+1:]]
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		body, err := fs.ReadFile(files, name)
		if err != nil {
			write(w, api.NewProblem("not-found", "").Reply())
			return
		}
		w.Header().Set("Vary", "Accept-Encoding")
		if strings.Contains(r.Header.Get("Accept-Encoding"), "gzip") {
			if packed, err := fs.ReadFile(files, name+".gz"); err == nil {
				w.Header().Set("Content-Encoding", "gzip")
				body = packed
			}
		}
		write(w, api.Reply{Status: http.StatusOK, Type: kind, Body: body})
	})
}

// guard sets what every answer carries, and answers for a handler that panics.
func guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		header := w.Header()
		header.Set("X-Content-Type-Options", "nosniff")
		header.Set("Referrer-Policy", "no-referrer")
		header.Set("Content-Security-Policy", "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; "+
			"img-src 'self' blob:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
		defer func() {
			v := recover()
			if v == nil {
				return
			}
			if v == http.ErrAbortHandler {
				panic(v)
			}
			slog.Error("panic", "path", r.URL.Path, "value", v)
			write(w, api.NewProblem("internal", "").Reply())
		}()
		next.ServeHTTP(w, r)
	})
}

// A gate answers requests: it works on so many at a time and lets so many more
// send their body or wait. Others are turned away at once.
type gate struct {
	working chan struct{}
	inside  chan struct{}
}

func newGate(working, waiting int) *gate {
	return &gate{working: make(chan struct{}, working), inside: make(chan struct{}, working+waiting)}
}

func (g *gate) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	select {
	case g.inside <- struct{}{}:
		defer func() { <-g.inside }()
	default:
		write(w, api.NewProblem("busy", "").Reply())
		return
	}
	if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || kind != "application/json" {
		write(w, api.NewProblem("media-type", "").Reply())
		return
	}
	body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, api.MaxBody))
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		write(w, api.NewProblem("too-large", "").Reply())
		return
	case errors.Is(err, os.ErrDeadlineExceeded):
		write(w, api.NewProblem("slow", "").Reply())
		return
	case err != nil:
		write(w, api.NewProblem("syntax", "the body broke off").Reply())
		return
	}
	// Only now, so that a slow client keeps no one from working.
	select {
	case g.working <- struct{}{}:
		defer func() { <-g.working }()
		write(w, api.Call(r.URL.RequestURI(), body))
	case <-r.Context().Done(): // the client has gone
	}
}
