package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/fstest"
	"time"

	"example.com/fircone/examples/service/api"
	"example.com/fircone/units"
)

// ask has the handler answer one request.
func ask(h http.Handler, method, target, media, body string) *http.Response {
	r := httptest.NewRequest(method, target, strings.NewReader(body))
	if media != "" {
		r.Header.Set("Content-Type", media)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func bodyOf(t *testing.T, r *http.Response) []byte {
	t.Helper()
	body, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return body
}

// The figures are the trade's own (common practice), worked by hand: a 9 ft tree
// takes 9 types, 7 to 11 of each, 27 picks, 81 ft of garland.
func TestPlan(t *testing.T) {
	r := ask(newHandler(nil), "POST", "/plan", "application/json; charset=utf-8",
		`{"trees":[{"room":"ticket hall","height":"9 ft"}],"mantels":[{"length":"5 ft"}]}`)
	if r.StatusCode != 200 || r.Header.Get("Content-Type") != "application/json" {
		t.Fatalf("status %d, %s: %s", r.StatusCode, r.Header.Get("Content-Type"), bodyOf(t, r))
	}
	var got struct {
		Trees []struct {
			Height  string
			Types   int
			Each    struct{ Min, Max int }
			Rule    map[string]any
			Planned map[string]any
		}
		Mantels []struct {
			Shares []struct {
				Item     string
				Quantity any
			}
		}
	}
	if err := json.Unmarshal(bodyOf(t, r), &got); err != nil {
		t.Fatal(err)
	}
	if text := fmt.Sprint(got.Trees); text != "[{9 ft 9 {7 11} map[garland:81 ft lights:900 ornaments:81 picks:27 ribbon:81 ft] map[garland:81 ft lights:900 ornaments:81]}]" {
		t.Errorf("trees %s", text)
	}
	if text := fmt.Sprint(got.Mantels[0].Shares[:2]); text != "[{base garland 7 ft} {picks, mantel 8}]" {
		t.Errorf("mantels %s", text)
	}
}

// Every picture is well-formed XML with a title, for the whole of the station.
func TestPictures(t *testing.T) {
	h := newHandler(nil)
	example := string(api.Example().Body)
	for target, title := range map[string]string{
		"/picture":                     "ticket hall",
		"/picture?of=tree&number=2":    "waiting room",
		"/picture?of=surface&number=1": "ticket hall",
		"/picture?of=mantel":           "tea room",
		"/picture?of=surface&number=2": "waiting room",
		"/picture?of=client":           "ticket hall",
	} {
		for what, body := range map[string]string{"the station": example, "two plain trees": `{"trees":[{"room":"ticket hall","height":"9 ft","accents":["picks"]},` +
			`{"room":"waiting room","height":"4 ft","accents":["ribbon"]}],"mantels":[{"room":"tea room","length":"5 ft"}]}`} {
			r := ask(h, "POST", target, "application/json", body)
			text := bodyOf(t, r)
			if r.StatusCode != 200 || r.Header.Get("Content-Type") != "image/svg+xml" {
				t.Errorf("%s of %s: status %d: %s", target, what, r.StatusCode, text)
				continue
			}
			dec := xml.NewDecoder(bytes.NewReader(text))
			found := ""
			for {
				token, err := dec.Token()
				if err == io.EOF {
					break
				}
				if err != nil {
					t.Errorf("%s of %s: %v", target, what, err)
					break
				}
				if e, ok := token.(xml.StartElement); ok && e.Name.Local == "title" && found == "" {
					if err := dec.DecodeElement(&found, &e); err != nil {
						t.Error(err)
					}
				}
			}
			if !strings.Contains(found, title) {
				t.Errorf("%s of %s: the title is %q", target, what, found)
			}
		}
	}
}

// The places of a tree are as many as its plan has ornaments, numbered in order,
// each between the floor and the tip.
func TestPlaces(t *testing.T) {
	for _, body := range []string{`{"trees":[{"height":"9 ft"}]}`, `{"trees":[{"height":"9 ft"}],"colors":"crimson,gold:metal,ivory"}`} {
		r := ask(newHandler(nil), "POST", "/places", "application/json", body)
		var got struct {
			Stations []struct {
				Number, Clock int
				Ladder        units.Length
				Steps         []struct {
					Number       int
					Type, Swatch string
					Height       units.Length
				}
			}
			Cautions []string
		}
		if err := json.Unmarshal(bodyOf(t, r), &got); err != nil {
			t.Fatal(err)
		}
		number, climb := 0, false
		for i, s := range got.Stations {
			climb = climb || s.Ladder > 0
			if s.Number != i+1 || s.Clock < 1 || s.Clock > 12 {
				t.Errorf("station %d: %+v", i+1, s)
			}
			for _, p := range s.Steps {
				if number++; p.Number != number || p.Type == "" || p.Height <= 0 || p.Height >= 9*units.Foot {
					t.Errorf("place %d: %+v", number, p)
				}
				if (p.Swatch == "") == strings.Contains(body, "colors") {
					t.Errorf("%s: swatch %q", body, p.Swatch)
				}
			}
		}
		// Nine types, nine of each: common practice.
		if number != 81 || !climb || len(got.Cautions) == 0 {
			t.Errorf("%d places, climb %v, cautions %q", number, climb, got.Cautions)
		}
	}
}

// There is a sheet for each station at least, as large as the paper that was asked for.
func TestCrew(t *testing.T) {
	for target, width := range map[string]string{"/crew": `width="816"`, "/crew?paper=letter&number=1": `width="816"`, "/crew?paper=A4": `width="793.7"`, "/crew?of=mantel&paper=A4": `width="793.7"`} {
		r := ask(newHandler(nil), "POST", target, "application/json", string(api.Example().Body))
		var got struct{ Sheets []string }
		if err := json.Unmarshal(bodyOf(t, r), &got); err != nil {
			t.Fatal(err)
		}
		if len(got.Sheets) < 3 && !strings.Contains(target, "mantel") || len(got.Sheets) == 0 {
			t.Errorf("%s: %d sheets", target, len(got.Sheets))
		}
		for _, s := range got.Sheets {
			if head, _, _ := strings.Cut(s, ">"); !strings.HasPrefix(s, "<svg") || !strings.Contains(head, width) {
				t.Errorf("%s: a sheet begins %q, want %s", target, head, width)
			}
		}
	}
}

// Every example in the description is answered.
func TestExamplesAreAnswered(t *testing.T) {
	n := 0
	for path, methods := range readDescription(t).doc["paths"].(map[string]any) {
		post, ok := methods.(map[string]any)["post"]
		if !ok {
			continue
		}
		for name, e := range readDescription(t).at(post, "requestBody", "content", "application/json", "examples") {
			body, err := json.Marshal(e.(map[string]any)["value"])
			if err != nil {
				t.Fatal(err)
			}
			if r := ask(newHandler(nil), "POST", path, "application/json", string(body)); r.StatusCode != 200 {
				t.Errorf("%s, example %s: %d %s", path, name, r.StatusCode, bodyOf(t, r))
			}
			n++
		}
	}
	if n < 4 {
		t.Errorf("only %d examples", n)
	}
}

// offers returns so many offers in JSON.
func offers(n int) string {
	var list []string
	for i := range n {
		list = append(list, fmt.Sprintf(`{"item":"picks","name":"box %d","pack":1,"price":1}`, i))
	}
	return strings.Join(list, ",")
}

// All values of a job that are to blame come back at once.
func TestAllProblems(t *testing.T) {
	r := ask(newHandler(nil), "POST", "/plan", "application/json", `{"trees":[{"height":"7","taper":"wide"},{"height":"200 ft","handle":"-1 in"}],"mantels":[{"length":"6 in"}],"shrubs":1}`)
	var got api.Problem
	if err := json.Unmarshal(bodyOf(t, r), &got); err != nil {
		t.Fatal(err)
	}
	var pointers []string
	for _, e := range got.Errors {
		pointers = append(pointers, e.Pointer)
	}
	if text := strings.Join(pointers, " "); text != "/trees/0/height /trees/0/taper /shrubs /trees/1/height /mantels/0/length /trees/1/handle" {
		t.Errorf("%s", text)
	}
}

func TestProblems(t *testing.T) {
	h := newHandler(nil)
	const media = "application/json"
	for _, test := range []struct {
		reason               string
		method, target       string
		media, body          string
		status               int
		kind                 string
		pointer, value, want string
		detail               string
	}{
		{reason: "no JSON", body: "tree", status: 400, kind: "syntax", detail: "at byte"},
		{reason: "nothing", body: "", status: 400, kind: "syntax", detail: "ends too soon"},
		{reason: "half of it", body: `{"trees":[`, status: 400, kind: "syntax", detail: "ends too soon"},
		{reason: "more than one text", body: `{} {}`, status: 400, kind: "syntax", detail: "more after its end"},
		{reason: "a name twice", body: `{"trees":[],"trees":[]}`, status: 422, kind: "value", pointer: "/trees", value: "a list", want: "each name once in an object"},
		{reason: "too deep", body: strings.Repeat(`{"a":`, 20), status: 400, kind: "syntax", detail: "16 levels deep"},
		{reason: "a list too long", body: `{"trees":[` + strings.Repeat("0,", 5000) + `0]}`, status: 400, kind: "syntax", detail: "more than 5000 values"},
		{reason: "not UTF-8", body: "{\"a\xff\":1}", status: 400, kind: "syntax", detail: "not UTF-8"},
		{reason: "too many rooms", body: `{"mantels":[` + strings.Repeat(`{"length":"5 ft"},`, 50) + `{"length":"5 ft"}]}`, status: 422, kind: "value", value: "51 trees and mantels", want: "at most 50 trees and mantels together"},
		{reason: "too many trees", body: `{"trees":[` + strings.Repeat(`{"height":"100 ft"},`, 5) + `{"height":"1 ft"}]}`, status: 422, kind: "value", pointer: "/trees", value: "501 ft of height", want: "at most 500 ft of height together"},
		{reason: "too many offers", body: `{"shop":{"offers":[` + offers(201) + `]}}`, status: 422, kind: "value", pointer: "/shop/offers", value: "201 offers", want: "at most 200 offers"},
		{reason: "a price with an absurd exponent", body: `{"shop":{"offers":[{"item":"picks","name":"b","pack":1,"price":1e999999999}]}}`, status: 422, kind: "value", pointer: "/shop/offers/0/price", value: "1e999999999", want: "a number, such as 4.75"},
		{reason: "a list", body: `[]`, status: 422, kind: "value", value: "a list", want: "an object"},
		{reason: "null", body: `null`, status: 422, kind: "value", value: "null", want: "an object"},
		{reason: "a list that is none", body: `{"trees":{}}`, status: 422, kind: "value", pointer: "/trees", value: "an object", want: "a list"},
		{reason: "a tree that is none", body: `{"trees":[7]}`, status: 422, kind: "value", pointer: "/trees/0", value: "7", want: "an object"},
		{reason: "an unknown name", body: `{"shrubs":1}`, status: 422, kind: "value", pointer: "/shrubs", value: "1", want: "one of house, trees"},
		{reason: "a name that a pointer must escape", body: `{"a/b~c":"x"}`, status: 422, kind: "value", pointer: "/a~1b~0c", value: "x", want: "one of house, trees"},
		{reason: "a bare number for a length", body: `{"trees":[{"height":7}]}`, status: 422, kind: "value", pointer: "/trees/0/height", value: "7", want: `a text, such as "7 ft 6 in"`},
		{reason: "a length without its unit", body: `{"trees":[{"height":"7"}]}`, status: 422, kind: "value", pointer: "/trees/0/height", value: "7", want: "a number and a unit, such as 7 ft 6 in"},
		{reason: "a word that is not known", body: `{"trees":[{"height":"7 ft"},{"height":"7 ft","accents":["tinsel"]}]}`, status: 422, kind: "value", pointer: "/trees/1/accents/0", value: "tinsel", want: "garland, ribbon or picks"},
		{reason: "a height out of its range", body: `{"trees":[{"height":"6 in"}]}`, status: 422, kind: "value", pointer: "/trees/0/height", value: "6 in", want: "1 ft to 100 ft"},
		{reason: "no height", body: `{"trees":[{}]}`, status: 422, kind: "value", pointer: "/trees/0/height", value: "0 ft", want: "1 ft to 100 ft"},
		{reason: "a length out of its range", body: `{"mantels":[{"length":"6 in"}]}`, status: 422, kind: "value", pointer: "/mantels/0/length", value: "6 in", want: "1 ft to 50 ft"},
		{reason: "a room that is no text", body: `{"trees":[{"height":"7 ft","room":1}]}`, status: 422, kind: "value", pointer: "/trees/0/room", value: "1", want: "a text"},
		{reason: "a tree that is not there", target: "/picture?of=tree&number=2", body: `{"trees":[{"height":"7 ft"}]}`, status: 422, kind: "picture", detail: "tree 2: the job has 1"},
		{reason: "a mantel that is not there", target: "/picture?of=mantel", body: `{"trees":[{"height":"7 ft"}]}`, status: 422, kind: "picture", detail: "mantel 1: the job has 0"},
		{reason: "places of a tree that is not there", target: "/places", body: `{}`, status: 422, kind: "picture", detail: "tree 1: the job has 0"},
		{reason: "no such paper", target: "/crew?paper=A3", body: `{"trees":[{"height":"7 ft"}]}`, status: 422, kind: "picture", detail: `paper is "A3": want letter or A4`},
		{reason: "no such sheet", target: "/sheet?of=song", body: `{"trees":[{"height":"7 ft"}]}`, status: 422, kind: "picture", detail: `of is "song": want plan, quote, quote-house, work, pack, once`},
		{reason: "a sheet and a number", target: "/sheet?number=1", body: `{}`, status: 422, kind: "picture", detail: "the query has something other than of"},
		{reason: "a quote without a day", target: "/sheet?of=quote", body: `{"trees":[{"height":"7 ft"}]}`, status: 422, kind: "value", pointer: "/stand", value: "no date", want: "the day on which it must stand, such as 2026-11-28"},
		{reason: "sheets of a mantel that is not there", target: "/crew?of=mantel", body: `{}`, status: 422, kind: "picture", detail: "mantel 1: the job has 0"},
		{reason: "sheets of a tree that is not there", target: "/crew?paper=A4", body: `{}`, status: 422, kind: "picture", detail: "tree 1: the job has 0"},
		{reason: "no such picture", target: "/picture?of=cat", body: `{}`, status: 422, kind: "picture", detail: `of is "cat"`},
		{reason: "no number", target: "/picture?number=0", body: `{}`, status: 422, kind: "picture", detail: `number is "0"`},
		{reason: "two numbers", target: "/picture?number=1&number=2", body: `{}`, status: 422, kind: "picture", detail: `"number" that is not known here, or has it twice`},
		{reason: "an unknown question", target: "/places?of=tree", body: `{}`, status: 422, kind: "picture", detail: `"of" that is not known`},
		{reason: "a query that cannot be read", target: "/picture?%zz", body: `{}`, status: 422, kind: "picture", detail: "cannot be read"},
		{reason: "too much to draw", target: "/picture", body: `{"trees":[{"height":"60 ft","sizeBy":"rule"}]}`, status: 422, kind: "picture", detail: "this tree has 3600 pieces: want at most 1000"},
		{reason: "a picture of what cannot be planned", target: "/picture", body: `{"trees":[{"height":"6 in"}]}`, status: 422, kind: "value", pointer: "/trees/0/height", value: "6 in", want: "1 ft to 100 ft"},
		{reason: "places of what cannot be read", target: "/places", body: `[`, status: 400, kind: "syntax", detail: "ends too soon"},
		{reason: "no media type", media: "-", body: `{}`, status: 415, kind: "media-type"},
		{reason: "a form", media: "application/x-www-form-urlencoded", body: `{}`, status: 415, kind: "media-type"},
		{reason: "a large body", body: strings.Repeat(" ", api.MaxBody+1), status: 413, kind: "too-large"},
		{reason: "the wrong method", method: "GET", status: 405, kind: "method"},
		{reason: "nothing there", method: "GET", target: "/nowhere", status: 404, kind: "not-found"},
		{reason: "nothing there to post to", target: "/nowhere", status: 404, kind: "not-found"},
		{reason: "no such problem", method: "GET", target: "/problems/none", status: 404, kind: "not-found"},
	} {
		method, target := test.method, test.target
		if method == "" {
			method = "POST"
		}
		if target == "" {
			target = "/plan"
		}
		announced := map[string]string{"": media, "-": ""}[test.media]
		if test.media != "" && test.media != "-" {
			announced = test.media
		}
		r := ask(h, method, target, announced, test.body)
		body := bodyOf(t, r)
		var got api.Problem
		if err := json.Unmarshal(body, &got); err != nil {
			t.Errorf("%s: %v: %s", test.reason, err, body)
			continue
		}
		if r.StatusCode != test.status || got.Status != test.status || got.Type != "/problems/"+test.kind ||
			r.Header.Get("Content-Type") != "application/problem+json" {
			t.Errorf("%s: status %d, %s: %s, want %d, %s", test.reason, r.StatusCode, r.Header.Get("Content-Type"), body, test.status, test.kind)
		}
		if got.Pointer != test.pointer || got.Value != test.value || !strings.HasPrefix(got.Want, test.want) {
			t.Errorf("%s: %q %q %q, want %q %q %q", test.reason, got.Pointer, got.Value, got.Want, test.pointer, test.value, test.want)
		}
		if got.Title == "" || !strings.Contains(got.Detail, test.detail) {
			t.Errorf("%s: says too little: %s, want %q", test.reason, body, test.detail)
		}
		if allow := r.Header.Get("Allow"); (allow == "POST") != (test.status == 405) {
			t.Errorf("%s: Allow: %q", test.reason, allow)
		}
	}
}

// The type of every problem leads to its explanation.
func TestProblemPages(t *testing.T) {
	h := newHandler(nil)
	for _, k := range api.Kinds() {
		r := ask(h, "GET", api.NewProblem(k.Name, "").Type, "", "")
		if text := string(bodyOf(t, r)); r.StatusCode != 200 || !strings.Contains(text, k.Title) || !strings.Contains(text, k.Explain) {
			t.Errorf("%s: status %d: %s", k.Name, r.StatusCode, text)
		}
	}
}

func TestFiles(t *testing.T) {
	h := newHandler(fstest.MapFS{
		"fircone.wasm":    {Data: []byte("plain")},
		"fircone.wasm.gz": {Data: []byte("packed")},
		"wasm_exec.js":    {Data: []byte("script")},
	})
	for target, media := range map[string]string{
		"/": "text/html; charset=utf-8", "/page.js": "text/javascript; charset=utf-8", "/page.css": "text/css; charset=utf-8",
		"/icon.svg": "image/svg+xml", "/openapi.json": "application/json", "/example.json": "application/json",
		"/healthz": "text/plain; charset=utf-8", "/fircone.wasm": "application/wasm", "/wasm_exec.js": "text/javascript; charset=utf-8",
	} {
		r := ask(h, "GET", target, "", "")
		if r.StatusCode != 200 || r.Header.Get("Content-Type") != media || len(bodyOf(t, r)) == 0 {
			t.Errorf("%s: status %d, %s, want 200, %s", target, r.StatusCode, r.Header.Get("Content-Type"), media)
		}
		if r.Header.Get("X-Content-Type-Options") != "nosniff" || !strings.Contains(r.Header.Get("Content-Security-Policy"), "default-src 'none'") {
			t.Errorf("%s: headers %v", target, r.Header)
		}
	}
	packed := httptest.NewRequest("GET", "/fircone.wasm", nil)
	packed.Header.Set("Accept-Encoding", "gzip, br")
	w := httptest.NewRecorder()
	h.ServeHTTP(w, packed)
	if w.Body.String() != "packed" || w.Header().Get("Content-Encoding") != "gzip" {
		t.Errorf("asked for gzip: %q, %v", w.Body, w.Header())
	}
	if r := ask(newHandler(nil), "GET", "/fircone.wasm", "", ""); r.StatusCode != 404 {
		t.Errorf("a service without the program for browsers: status %d, want 404", r.StatusCode)
	}
}

// A request that panics is answered, and what it took is given back.
func TestGuard(t *testing.T) {
	h := guard(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { panic("ouch") }))
	r := ask(h, "GET", "/", "", "")
	if r.StatusCode != 500 || !strings.Contains(string(bodyOf(t, r)), "/problems/internal") {
		t.Errorf("status %d", r.StatusCode)
	}
}

// With one place to work and one to wait, and both taken, the next request is
// turned away at once; the one that waits is answered when its turn comes.
func TestGate(t *testing.T) {
	g := newGate(1, 1)
	g.inside <- struct{}{} // one is at work
	g.working <- struct{}{}
	waiting := make(chan int)
	go func() { waiting <- ask(g, "POST", "/plan", "application/json", "{}").StatusCode }()
	for len(g.inside) < 2 {
		time.Sleep(time.Millisecond)
	}
	r := ask(g, "POST", "/plan", "application/json", "{}")
	if r.StatusCode != 503 || r.Header.Get("Retry-After") == "" {
		t.Errorf("one too many: status %d, Retry-After %q, want 503 and a time", r.StatusCode, r.Header.Get("Retry-After"))
	}
	<-g.working
	<-g.inside
	if status := <-waiting; status != 200 {
		t.Errorf("the one that waited: status %d, want 200", status)
	}
	if len(g.inside) != 0 || len(g.working) != 0 {
		t.Error("places are not given back")
	}
}

// start serves on loopback until stop is called, which returns how serving ended.
func start(t testing.TB, h http.Handler) (addr string, stop func() error) {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- serve(ctx, listener, h) }()
	t.Cleanup(cancel)
	return listener.Addr().String(), sync.OnceValue(func() error { cancel(); return <-done })
}

// Two hundred clients have sent half of their request when the service is told
// to stop. Each sends the rest and gets its whole answer; no one new is let in.
func TestGracefulStop(t *testing.T) {
	addr, stop := start(t, newHandler(nil))
	const clients = 200
	body := `{"trees":[{"height":"9 ft"}]}`
	var halfway, wg sync.WaitGroup
	var answered atomic.Int32
	goOn := make(chan struct{})
	halfway.Add(clients)
	for range clients {
		wg.Go(func() {
			conn, err := net.Dial("tcp", addr)
			if err != nil {
				t.Error(err)
				halfway.Done()
				return
			}
			defer conn.Close()
			fmt.Fprintf(conn, "POST /plan HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: %d\r\nExpect: 100-continue\r\n\r\n", len(body))
			// The service asks for the body only once the request is in its hands.
			answer := bufio.NewReader(conn)
			if line, err := answer.ReadString('\n'); err != nil || !strings.Contains(line, "100 Continue") {
				t.Errorf("%q, %v", line, err)
			}
			answer.ReadString('\n')
			io.WriteString(conn, body[:10])
			halfway.Done()
			<-goOn
			io.WriteString(conn, body[10:])
			r, err := http.ReadResponse(answer, nil)
			if err != nil {
				t.Error(err)
				return
			}
			got, err := io.ReadAll(r.Body)
			if err != nil || r.StatusCode != 200 || !bytes.Contains(got, []byte(`"81 ft"`)) {
				t.Errorf("status %d, %v: %s", r.StatusCode, err, got)
				return
			}
			answered.Add(1)
		})
	}
	halfway.Wait()
	stopped := make(chan error, 1)
	go func() { stopped <- stop() }()
	for { // until the door is shut
		conn, err := net.Dial("tcp", addr)
		if err != nil {
			break
		}
		conn.Close()
		time.Sleep(time.Millisecond)
	}
	select {
	case err := <-stopped:
		t.Fatalf("the service has ended while requests were open: %v", err)
	default:
	}
	close(goOn)
	wg.Wait()
	if err := <-stopped; err != nil {
		t.Errorf("serve: %v", err)
	}
	if n := answered.Load(); n != clients {
		t.Errorf("%d of %d requests in flight were answered", n, clients)
	}
}

// A client that stops half way is told so when its time is up.
func TestSlowBody(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	server := newServer(newHandler(nil))
	server.ReadTimeout = 50 * time.Millisecond
	go server.Serve(listener)
	defer server.Close()
	conn, err := net.Dial("tcp", listener.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	io.WriteString(conn, "POST /plan HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{")
	r, err := http.ReadResponse(bufio.NewReader(conn), nil)
	if err != nil {
		t.Fatal(err)
	}
	if body := bodyOf(t, r); r.StatusCode != 408 || !bytes.Contains(body, []byte("/problems/slow")) {
		t.Errorf("status %d: %s", r.StatusCode, body)
	}
}

func TestFlags(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	for _, test := range []struct {
		args []string
		want string
	}{
		{[]string{"-addr", taken.Addr().String()}, `service: -addr "` + taken.Addr().String() + `": want host:port that is free`},
		{[]string{"-browser", os.DevNull}, `service: -browser "/dev/null": want a folder that examples/service/offline wrote`},
		{[]string{"8080"}, `service: argument "8080": want flags only`},
		{[]string{"-port", "8080"}, "flag provided but not defined: -port"},
	} {
		var errs bytes.Buffer
		if status := run(t.Context(), test.args, &errs); status != 2 || !strings.HasPrefix(errs.String(), test.want) {
			t.Errorf("%q: status %d, %s", test.args, status, errs.String())
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	var errs bytes.Buffer
	if status := run(ctx, []string{"-addr", "127.0.0.1:0"}, &errs); status != 0 || !strings.Contains(errs.String(), "open http://127.0.0.1:") {
		t.Errorf("a service that is stopped: status %d, %s", status, errs.String())
	}
}

// The sheets of the work are those of the program, and the client's has no costs.
func TestWorkSheets(t *testing.T) {
	h := newHandler(nil)
	for of, want := range map[string]string{
		"plan": "TO BUY", "quote": "QUOTE: to stand on 2026-11-28", "quote-house": " at 45.00 an hour", "work": "PUTTING UP: 2 people", "pack": "TO PACK: ",
	} {
		r := ask(h, "POST", "/sheet?of="+of, "application/json", string(api.Example().Body))
		got := string(bodyOf(t, r))
		if r.StatusCode != http.StatusOK || !strings.Contains(got, want) || of == "quote" && strings.Contains(got, " an hour") {
			t.Errorf("%s: status %d: %s", of, r.StatusCode, got)
		}
	}
}
