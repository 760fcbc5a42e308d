package main

import (
	"bytes"
	"io"
	"net/http"
	"slices"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"example.com/fircone/examples/service/api"
)

// The load of a real client on loopback: connections that stay open, each with
// one request after the other. It is bounded by b.N:
//
//	go test -run '^$' -bench Load -benchtime 5000x    # in this folder
func BenchmarkLoad(b *testing.B) {
	small := []byte(`{"trees":[{"height":"9 ft"}]}`)
	for _, load := range []struct {
		name    string
		target  string
		body    []byte
		clients int
	}{
		{"one tree, 1 client", "/plan", small, 1},
		{"one tree, 50 clients", "/plan", small, 50},
		{"station, 1 client", "/plan", api.Example().Body, 1},
		{"station, 50 clients", "/plan", api.Example().Body, 50},
	} {
		b.Run(load.name, func(b *testing.B) {
			addr, stop := start(b, newHandler(nil))
			defer stop()
			client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: load.clients}}
			times := make([]time.Duration, b.N)
			var next atomic.Int64
			var wg sync.WaitGroup
			b.ResetTimer()
			for range load.clients {
				wg.Go(func() {
					for {
						i := int(next.Add(1)) - 1
						if i >= b.N {
							return
						}
						begin := time.Now()
						r, err := client.Post("http://"+addr+load.target, "application/json", bytes.NewReader(load.body))
						if err != nil {
							b.Error(err)
							return
						}
						_, err = io.Copy(io.Discard, r.Body)
						r.Body.Close()
						if err != nil || r.StatusCode != 200 {
							b.Errorf("status %d, %v", r.StatusCode, err)
							return
						}
						times[i] = time.Since(begin)
					}
				})
			}
			wg.Wait()
			b.StopTimer()
			slices.Sort(times)
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "req/s")
			b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, "p50-ms")
			b.ReportMetric(float64(times[len(times)*99/100].Microseconds())/1000, "p99-ms")
		})
	}
}

// With far more clients than may wait, each is answered, with the plan or with
// the word that there is too much to do; none is left hanging or cut off.
func TestOverload(t *testing.T) {
	addr, stop := start(t, guard(newGate(1, 5)))
	defer stop()
	client := &http.Client{Timeout: 20 * time.Second, Transport: &http.Transport{MaxIdleConnsPerHost: 60}}
	var planned, turnedAway atomic.Int32
	var wg sync.WaitGroup
	for range 60 {
		wg.Go(func() {
			r, err := client.Post("http://"+addr+"/plan", "application/json", bytes.NewReader(api.Example().Body))
			if err != nil {
				t.Error(err)
				return
			}
			defer r.Body.Close()
			body, err := io.ReadAll(r.Body)
			switch {
			case err != nil:
				t.Error(err)
			case r.StatusCode == 200 && bytes.Contains(body, []byte(`"ticket hall"`)):
				planned.Add(1)
			case r.StatusCode == 503 && bytes.Contains(body, []byte("/problems/busy")):
				turnedAway.Add(1)
			default:
				t.Errorf("status %d: %s", r.StatusCode, body)
			}
		})
	}
	wg.Wait()
	if planned.Load() == 0 || planned.Load()+turnedAway.Load() != 60 {
		t.Errorf("%d planned, %d turned away, of 60", planned.Load(), turnedAway.Load())
	}
	// And then there is room again.
	r, err := client.Post("http://"+addr+"/plan", "application/json", bytes.NewReader([]byte("{}")))
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	if r.StatusCode != 200 {
		t.Errorf("after the rush: status %d", r.StatusCode)
	}
}
