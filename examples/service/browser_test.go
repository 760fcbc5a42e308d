package main

import (
	"bytes"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"
)

// A browser is a real one, driven as the W3C WebDriver recommendation says.
type browser struct {
	t       *testing.T
	session string // the URL of the session
}

// needBrowser skips a test unless FIRCONE_BROWSER is set, as it is in CI; there it
// is a failure if there is no browser.
func needBrowser(t *testing.T) {
	t.Helper()
	if os.Getenv("FIRCONE_BROWSER") == "" {
		t.Skip("NOT TESTED IN A BROWSER: set FIRCONE_BROWSER=1 to do so")
	}
}

// openBrowser starts Chromium without a window, as wide as a phone or a desk.
func openBrowser(t *testing.T, phone bool) *browser {
	t.Helper()
	needBrowser(t)
	driver, err := exec.LookPath("chromedriver")
	if err != nil {
		t.Fatal("no chromedriver; Debian has it in the package chromium-driver: ", err)
	}
	profile, err := os.MkdirTemp("", "browser")
	if err != nil {
		t.Fatal(err)
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	_, port, _ := net.SplitHostPort(listener.Addr().String())
	listener.Close()
	cmd := exec.Command(driver, "--port="+port)
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	b := &browser{t: t, session: "http://127.0.0.1:" + port + "/session"}
	t.Cleanup(func() {
		b.command("DELETE", "", nil, nil)
		cmd.Process.Kill()
		cmd.Wait()
		// The browser may write for a moment longer than its driver lives.
		for range 50 {
			if os.RemoveAll(profile) == nil {
				break
			}
			time.Sleep(100 * time.Millisecond)
		}
	})
	for begin := time.Now(); time.Since(begin) < 20*time.Second; time.Sleep(20 * time.Millisecond) {
		if r, err := http.Get("http://127.0.0.1:" + port + "/status"); err == nil {
			r.Body.Close()
			break
		}
	}
	options := map[string]any{"args": []string{
		"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
		"--disable-component-update", "--disable-sync", "--disable-dev-shm-usage", "--window-size=1280,900", "--user-data-dir=" + profile,
	}}
	if phone {
		options["mobileEmulation"] = map[string]any{"deviceMetrics": map[string]any{"width": 390, "height": 844, "pixelRatio": 2}}
	}
	var opened struct{ SessionID string }
	b.must("POST", "", map[string]any{"capabilities": map[string]any{"alwaysMatch": map[string]any{
		"timeouts":           map[string]any{"script": 180_000},
		"goog:chromeOptions": options,
		"goog:loggingPrefs":  map[string]any{"browser": "ALL"},
	}}}, &opened)
	b.session += "/" + opened.SessionID
	return b
}

func (b *browser) command(method, path string, send, receive any) error {
	var body io.Reader
	if method == "POST" {
		text, err := json.Marshal(send)
		if err != nil {
			return err
		}
		body = bytes.NewReader(text)
	}
	request, err := http.NewRequest(method, b.session+path, body)
	if err != nil {
		return err
	}
	client := http.Client{Timeout: time.Minute}
	r, err := client.Do(request)
	if err != nil {
		return err
	}
	defer r.Body.Close()
	text, err := io.ReadAll(r.Body)
	if err != nil {
		return err
	}
	if r.StatusCode != 200 {
		return errors.New(string(text))
	}
	if receive == nil {
		return nil
	}
	return json.Unmarshal(text, &struct{ Value any }{receive})
}

func (b *browser) must(method, path string, send, receive any) {
	b.t.Helper()
	if err := b.command(method, path, send, receive); err != nil {
		b.t.Fatalf("%s %s: %v", method, path, err)
	}
}

func (b *browser) open(url string) {
	b.t.Helper()
	b.must("POST", "/url", map[string]any{"url": url}, nil)
}

// eval runs a script in the page; await may stand in it.
func (b *browser) eval(script string, receive any) {
	b.t.Helper()
	script = "const done = arguments[arguments.length-1]; (async () => {" + script + "})().then(done, (e) => done('failed: ' + e))"
	b.must("POST", "/execute/async", map[string]any{"script": script, "args": []any{}}, receive)
}

// wait waits until an expression is true in the page.
func (b *browser) wait(expression string) {
	b.t.Helper()
	for begin := time.Now(); ; time.Sleep(20 * time.Millisecond) {
		var ok any
		b.eval("return !!("+expression+")", &ok)
		if ok == true {
			return
		}
		if time.Since(begin) > 30*time.Second {
			b.shot("failed")
			var text string
			b.eval("return document.body.innerText", &text)
			b.t.Fatalf("not so after 30 s: %s\n%s\n%s", expression, text, b.log())
		}
	}
}

// fill types into the first element that a selector finds, as a person would.
func (b *browser) fill(selector, text string) {
	b.t.Helper()
	var found map[string]string
	b.must("POST", "/element", map[string]any{"using": "css selector", "value": selector}, &found)
	for _, id := range found {
		b.must("POST", "/element/"+id+"/clear", map[string]any{}, nil)
		b.must("POST", "/element/"+id+"/value", map[string]any{"text": text}, nil)
	}
}

func (b *browser) click(selector string) {
	b.t.Helper()
	var found map[string]string
	b.must("POST", "/element", map[string]any{"using": "css selector", "value": selector}, &found)
	for _, id := range found {
		b.must("POST", "/element/"+id+"/click", map[string]any{}, nil)
	}
}

// log returns what the page wrote to the console as an error, without the lines
// about answers that are no success, which are what the test is about.
func (b *browser) log() string {
	var entries []struct{ Level, Message string }
	b.must("POST", "/se/log", map[string]any{"type": "browser"}, &entries)
	var bad []string
	for _, e := range entries {
		if e.Level == "SEVERE" && !strings.Contains(e.Message, "Failed to load resource") {
			bad = append(bad, e.Message)
		}
	}
	return strings.Join(bad, "\n")
}

// shot saves a picture of the whole page in the folder FIRCONE_SHOTS, if set.
func (b *browser) shot(name string) {
	b.t.Helper()
	dir := os.Getenv("FIRCONE_SHOTS")
	if dir == "" {
		return
	}
	var png struct{ Data string }
	b.must("POST", "/goog/cdp/execute", map[string]any{
		"cmd": "Page.captureScreenshot", "params": map[string]any{"captureBeyondViewport": true},
	}, &png)
	data, err := base64.StdEncoding.DecodeString(png.Data)
	if err != nil {
		b.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, name+".png"), data, 0o644); err != nil {
		b.t.Fatal(err)
	}
}

// offline is a folder that examples/service/offline wrote, made once.
var offline = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "offline")
	if err != nil {
		return "", err
	}
	if out, err := exec.Command("go", "run", "./offline", "-o", dir).CombinedOutput(); err != nil {
		return dir, fmt.Errorf("%w: %s", err, out)
	}
	return dir, nil
})

func offlineFolder(t *testing.T) string {
	t.Helper()
	dir, err := offline()
	if err != nil {
		t.Fatal(err)
	}
	return dir
}

func TestMain(m *testing.M) {
	status := m.Run()
	if os.Getenv("FIRCONE_BROWSER") != "" {
		if dir, _ := offline(); dir != "" {
			os.RemoveAll(dir)
		}
	}
	os.Exit(status)
}

const (
	shown   = `document.getElementById('result').getAttribute('aria-busy') === 'false'`
	drawn   = `[...document.querySelectorAll('.picture img')].filter((i) => i.complete && i.naturalWidth > 100 && i.alt.length > 20).length === %d`
	planHas = `document.getElementById('plan').innerText.includes(%q)`
)

// The page shows the plan, follows a change, and marks the field that holds a
// value which cannot be used; at the width of a phone and of a desk.
func TestBrowserPage(t *testing.T) {
	needBrowser(t)
	for _, phone := range []bool{false, true} {
		t.Run(map[bool]string{false: "desk", true: "phone"}[phone], func(t *testing.T) {
			b := openBrowser(t, phone)
			addr, stop := start(t, newHandler(nil))
			defer stop()
			b.open("http://" + addr + "/")
			b.wait(shown + " && " + fmt.Sprintf(planHas, "81 ft") + " && " + fmt.Sprintf(drawn, 3))
			b.shot(filepath.Base(t.Name()))

			b.fill("[data-list=trees] > fieldset:nth-of-type(1) [data-name=height]", "8 ft")
			b.wait(fmt.Sprintf(planHas, "72 ft"))

			b.fill("[data-list=trees] > fieldset:nth-of-type(2) [data-name=height]", "6 in")
			b.wait(`document.querySelectorAll('[aria-invalid=true]').length === 1 &&
				document.querySelector('[data-list=trees] > fieldset:nth-of-type(2) [data-name=height][aria-invalid=true]') &&
				document.querySelector('.problem').innerText.includes('1 ft to 100 ft')`)
			b.shot(filepath.Base(t.Name()) + "-problem")
			b.fill("[data-list=trees] > fieldset:nth-of-type(2) [data-name=height]", "6 ft")
			b.wait(`!document.querySelector('[aria-invalid]')`)

			b.fill("[data-name='shop/budget']", "twelve")
			b.wait(`document.querySelector("[data-name='shop/budget'][aria-invalid=true]") &&
				document.querySelector('.problem').innerText.includes('a number')`)
			b.fill("[data-name='shop/budget']", "400")
			b.wait(`!document.querySelector('[aria-invalid]')`)

			b.click("[data-add=mantels]")
			b.wait(`document.querySelectorAll('[data-list=mantels] > fieldset').length === 2`)
			b.fill("[data-list=mantels] > fieldset:nth-of-type(2) [data-name=length]", "8 ft")
			b.wait(`document.querySelectorAll('#plan .room').length === 4`)
			b.click("[data-list=mantels] > fieldset:nth-of-type(2) .remove")
			b.wait(`document.querySelectorAll('#plan .room').length === 3`)
			focusIs(b, "Remove mantel 1")

			// What has just been added is not wrong before a key is pressed; sent as it is, it is.
			b.click("[data-add=trees]")
			focusIs(b, "Room, tree 3")
			b.eval("await new Promise((r) => setTimeout(r, 600))", nil)
			b.wait(shown + ` && !document.querySelector('[aria-invalid]') && document.getElementById('status').textContent === ''`)
			b.click("button[type=submit]")
			b.wait(`document.querySelector("[data-list=trees] > fieldset:nth-of-type(3) [data-name=height][aria-invalid=true]")`)
			b.click("[data-list=trees] > fieldset:nth-of-type(3) .remove")
			b.wait(`!document.querySelector('[aria-invalid]')`)
			focusIs(b, "Remove tree 2")

			// An offer that cannot be is marked where it stands.
			b.eval(`for (const d of document.querySelectorAll('form > details')) d.open = true`, nil)
			b.fill("[data-list='shop/offers'] > fieldset:nth-of-type(2) [data-name=item]", "tinsel rope")
			b.wait(`document.querySelector("[data-list='shop/offers'] > fieldset:nth-of-type(2) [data-name=item][aria-invalid=true]")`)
			b.shot(filepath.Base(t.Name()) + "-offer")
			b.fill("[data-list='shop/offers'] > fieldset:nth-of-type(2) [data-name=item]", "picks")
			b.wait(`!document.querySelector('[aria-invalid]')`)

			// No two controls have one name.
			var twice []string
			b.eval(`const names = [...document.querySelectorAll('input, select, button, summary')].filter((e) => e.checkVisibility()).map((e) =>
				e.getAttribute('aria-label') ?? e.closest('label')?.innerText ?? e.innerText);
				return names.filter((n, i) => names.indexOf(n) !== i)`, &twice)
			if len(twice) > 0 {
				t.Errorf("controls with one name: %q", twice)
			}

			// The stations are there.
			b.click("#plan .room details:nth-of-type(2) summary")
			b.wait(`document.querySelectorAll('#plan .room h3').length >= 3 && document.getElementById('plan').innerText.includes('stepladder, at')`)
			b.shot(filepath.Base(t.Name()) + "-stations")

			var over float64
			b.eval("return document.documentElement.scrollWidth - window.innerWidth", &over)
			if over > 0 {
				t.Errorf("the page is %g pixels wider than the window", over)
			}
			if bad := b.log(); bad != "" {
				t.Errorf("errors on the console:\n%s", bad)
			}
		})
	}
}

func focusIs(b *browser, name string) {
	b.t.Helper()
	var got string
	b.eval("return document.activeElement.getAttribute('aria-label') ?? document.activeElement.outerHTML", &got)
	if got != name {
		b.t.Errorf("the focus is on %q, want %q", got, name)
	}
}

// printed returns how many pages the page prints, and the PDF.
func (b *browser) printed() (int, []byte) {
	b.t.Helper()
	var pdf struct{ Data string }
	b.must("POST", "/goog/cdp/execute", map[string]any{"cmd": "Page.printToPDF", "params": map[string]any{"preferCSSPageSize": true, "printBackground": false}}, &pdf)
	data, err := base64.StdEncoding.DecodeString(pdf.Data)
	if err != nil {
		b.t.Fatal(err)
	}
	if dir := os.Getenv("FIRCONE_SHOTS"); dir != "" {
		os.WriteFile(filepath.Join(dir, filepath.Base(b.t.Name())+".pdf"), data, 0o644)
	}
	return len(pdfPage.FindAll(data, -1)), data
}

var pdfPage = regexp.MustCompile(`/Type\s*/Page\b[^s]`)

// The station prints on three pages at most, and the sheets to hang a tree from on
// one page each.
func TestBrowserPrint(t *testing.T) {
	b := openBrowser(t, false)
	addr, stop := start(t, newHandler(nil))
	defer stop()
	b.open("http://" + addr + "/")
	b.wait(shown + " && " + fmt.Sprintf(drawn, 3))
	if pages, _ := b.printed(); pages < 1 || pages > 3 {
		t.Errorf("the station prints on %d pages, want 1 to 3", pages)
	}
	// The dialog of the browser would wait for a person.
	b.eval(`window.print = () => { window.asked = true }`, nil)
	b.click("#plan .room > button")
	b.wait(`window.asked`)
	var sheets int
	b.eval(`return document.querySelectorAll('#sheets img').length`, &sheets)
	t.Run("sheets", func(t *testing.T) {
		b.t = t
		if pages, _ := b.printed(); sheets < 3 || pages != sheets {
			t.Errorf("%d sheets print on %d pages", sheets, pages)
		}
	})
}

// A tool that knows the rules of WCAG 2 finds nothing to object to: on a narrow
// phone, a phone and a desk, in light and in dark. FIRCONE_AXE is its file,
// axe.min.js of the package axe-core, which .ci/run gets.
func TestBrowserAxe(t *testing.T) {
	needBrowser(t)
	axe, err := os.ReadFile(os.Getenv("FIRCONE_AXE"))
	if err != nil {
		t.Skip("NOT TESTED WITH AXE: FIRCONE_AXE names no axe.min.js")
	}
	b := openBrowser(t, false)
	addr, stop := start(t, newHandler(nil))
	defer stop()
	for _, width := range []int{320, 390, 1280} {
		for _, scheme := range []string{"light", "dark"} {
			cdp := func(cmd string, params map[string]any) {
				b.must("POST", "/goog/cdp/execute", map[string]any{"cmd": cmd, "params": params}, nil)
			}
			cdp("Emulation.setDeviceMetricsOverride", map[string]any{"width": width, "height": 900, "deviceScaleFactor": 1, "mobile": false})
			cdp("Emulation.setEmulatedMedia", map[string]any{"features": []map[string]string{{"name": "prefers-color-scheme", "value": scheme}}})
			if scheme == "light" {
				b.open("http://" + addr + "/")
				b.wait(shown + " && " + fmt.Sprintf(drawn, 3))
			}
			b.eval(`for (const d of document.querySelectorAll('details')) d.open = true`, nil)
			b.wait(`document.querySelectorAll('#plan .room h3').length >= 3`)
			b.fill("[data-list=trees] > fieldset:nth-of-type(2) [data-name=height]", "6 in") // an error is part of the page
			b.wait(`document.querySelector('[aria-invalid]') && ` + shown)
			b.eval(string(axe), nil)
			var found []string
			b.eval(`const r = await axe.run(document, {resultTypes: ['violations']});
				return r.violations.flatMap((v) => v.nodes.map((n) => v.id + ': ' + n.target + ': ' + n.failureSummary))`, &found)
			for _, f := range found {
				t.Errorf("%d px, %s: %s", width, scheme, f)
			}
			var over float64
			b.eval("return document.documentElement.scrollWidth - window.innerWidth", &over)
			if over > 0 {
				var who []string
				b.eval(`return [...document.querySelectorAll('body *')].filter((e) => e.getBoundingClientRect().right > window.innerWidth && !e.closest('.scroll, .away')).map((e) => e.tagName + ' ' + e.className + ' ' + e.innerText?.slice(0, 40))`, &who)
				t.Errorf("%d px, %s: the page is %g pixels wider than the window: %q", width, scheme, over, who)
			}
			b.shot(fmt.Sprintf("axe-%d-%s", width, scheme))
		}
	}
}

// The page goes on by itself when the service has gone, and gives the same
// answers to the byte, refusals included.
func TestBrowserWithoutServer(t *testing.T) {
	b := openBrowser(t, false)
	dir := offlineFolder(t)
	addr, stop := start(t, newHandler(os.DirFS(dir)))
	defer stop()
	b.open("http://" + addr + "/")
	b.wait(shown + " && " + fmt.Sprintf(planHas, "81 ft"))
	b.click("#here")
	b.wait("globalThis.fircone")

	var differ []string
	b.eval(`
		const example = await (await fetch('example.json')).text();
		const bad = [];
		for (const [target, body] of [
			['/plan', example], ['/places?number=2', example], ['/picture?number=2', example], ['/picture?of=surface', example],
			['/picture?of=mantel', example], ['/picture?of=cat', example], ['/plan', '{}'], ['/plan', '{"trees":[{"height":"2 in"}]}'], ['/plan', '['], ['/nowhere', ''],
		]) {
			const there = await fetch(target, {method: 'POST', headers: {'Content-Type': 'application/json'}, body});
			const here = fircone(target, body);
			if (here.status !== there.status || here.body !== await there.text() || here.type !== there.headers.get('Content-Type'))
				bad.push(target + ' ' + body + ': ' + here.status + ' ' + there.status);
		}
		return bad`, &differ)
	if len(differ) > 0 {
		t.Errorf("answers differ between the service and the browser: %q", differ)
	}

	if err := stop(); err != nil {
		t.Fatal(err)
	}
	b.fill("[data-list=trees] [data-name=height]", "8 ft")
	b.wait(fmt.Sprintf(planHas, "72 ft") + " && " + fmt.Sprintf(drawn, 3))
	if bad := b.log(); bad != "" {
		t.Errorf("errors on the console:\n%s", bad)
	}
}

// The folder works on a server that knows nothing of it.
func TestBrowserPlainFiles(t *testing.T) {
	b := openBrowser(t, true)
	addr, stop := start(t, http.FileServer(http.Dir(offlineFolder(t))))
	defer stop()
	b.open("http://" + addr + "/")
	b.wait(shown + " && " + fmt.Sprintf(planHas, "81 ft"))
	b.fill("[data-list=trees] [data-name=height]", "8 ft")
	b.wait(fmt.Sprintf(planHas, "72 ft") + " && " + fmt.Sprintf(drawn, 3))
	if bad := b.log(); bad != "" {
		t.Errorf("errors on the console:\n%s", bad)
	}
}
