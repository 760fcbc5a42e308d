package api

import (
	"encoding/json"
	"strings"
	"testing"
)

// Whatever the body, there is an answer in the stated form.
func FuzzCall(f *testing.F) {
	for _, body := range []string{
		string(Example().Body), `{}`, `[]`, `null`, ``, `{"trees":[{"height":"9 ft","where":"200 degrees"}]}`,
		`{"mantels":[{"length":"64 in","look":"asymmetrical"}]}`, `{"trees":[{"height":"1e99 ft"}]}`,
		strings.Repeat(`[`, 30), `{"a":1,"a":2}`, "{\"\xff\":0}", `{"trees":[{"height":"7 ft","width":"-1 in"}]}`,
	} {
		f.Add("/plan", []byte(body))
		f.Add("/places?number=2", []byte(body))
		f.Add("/picture?of=surface&number=1", []byte(body))
	}
	f.Fuzz(func(t *testing.T, target string, body []byte) {
		r := Call(target, body)
		switch {
		case r.Status == 200 && r.Type == "image/svg+xml":
		case r.Status == 200 && r.Type == "application/json":
			if !json.Valid(r.Body) {
				t.Errorf("%s %q: %s", target, body, r.Body)
			}
		case r.Type == "application/problem+json":
			var p Problem
			if err := json.Unmarshal(r.Body, &p); err != nil || p.Status != r.Status || p.Status < 400 || p.Status == 500 {
				t.Errorf("%s %q: %v, %s", target, body, err, r.Body)
			}
		default:
			t.Errorf("%s %q: status %d, %s", target, body, r.Status, r.Type)
		}
	})
}

func TestNewProblem(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("an unknown kind of problem did not panic")
		}
	}()
	NewProblem("unheard-of", "")
}
