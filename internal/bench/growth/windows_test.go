package growth

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"example.com/fircone/palette"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// windows returns the jobs of the windows of a chain of stores, a tree in each. All have the same three colors and one
// shelf of seven offers: the chain reads its catalog once.
func windows(b *testing.B, stores int) []job.Request {
	b.Helper()
	colors, err := palette.CommonPractice().ParsePalette("navy,silver:metal,ivory")
	if err != nil {
		b.Fatal(err)
	}
	var shelf shopping.Shop
	offer := func(item shopping.Item, pack shopping.Quantity, cents int64) {
		shelf.Offers = append(shelf.Offers, shopping.Offer{Item: item, Name: "pack of " + pack.String(), Pack: pack, Price: decimal.New(cents, -2)})
	}
	for _, s := range colors {
		offer(shopping.Item{Kind: shopping.Ornament, Color: s.Name}, shopping.Quantity{Pieces: 12}, 1400)
		offer(shopping.Item{Kind: shopping.Ornament, Color: s.Name}, shopping.Quantity{Pieces: 4}, 550)
	}
	offer(shopping.Item{Kind: shopping.Garland}, shopping.Quantity{Length: 9 * ft}, 690)
	requests := make([]job.Request, stores)
	for i := range requests {
		tree := job.Tree{Tree: sizing.Tree{Height: 4*ft + units.Length(i%60)*in}, Room: "store " + strconv.Itoa(i)}
		requests[i] = job.Request{Colors: colors, Trees: []job.Tree{tree}, Shop: shelf}
	}
	return requests
}

// BenchmarkWindows plans the windows of a chain of stores, one job each, on one processor or on two; and the parts of one.
// With one worker there is one processor too, or the other one would collect its garbage for nothing.
func BenchmarkWindows(b *testing.B) {
	requests := windows(b, 10_000)
	plan := func(list []job.Request) {
		for i := range list {
			if _, err := job.Make(list[i]); err != nil {
				panic(err)
			}
		}
	}
	// Who is free takes the next one: with a fixed half each, one would wait whenever the collector stops the other.
	share := func(list []job.Request, workers int) {
		var next atomic.Int64
		var wg sync.WaitGroup
		for range workers {
			wg.Go(func() {
				for i := next.Add(1); int(i) <= len(list); i = next.Add(1) {
					plan(list[i-1 : i])
				}
			})
		}
		wg.Wait()
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, n := range []int{1, 10, 100, 1_000} {
		for _, workers := range []int{1, 2} {
			if workers > 1 && n <= 10 {
				continue // they are all taken at once
			}
			b.Run(fmt.Sprintf("windows=%d/workers=%d", n, workers), func(b *testing.B) {
				runtime.GOMAXPROCS(workers)
				for b.Loop() {
					share(requests[:n], workers)
				}
			})
		}
	}
	// All of them take so long that other work on the machine comes between. So they go 5,000 at a time, on one processor and on
	// two in turn, and of each 5,000 the quickest round counts. Their garbage is collected within the time: whenever the heap has
	// doubled or, with memory to spare, once at the end.
	inTurn := func(spare bool) (sum [3]time.Duration) {
		if spare {
			defer debug.SetGCPercent(debug.SetGCPercent(-1))
		}
		for chunk := range slices.Chunk(requests, 5_000) {
			var least [3]time.Duration
			for range 8 {
				for workers := 1; workers <= 2; workers++ {
					runtime.GOMAXPROCS(workers)
					runtime.GC()
					begun := time.Now()
					share(chunk, workers)
					if spare {
						runtime.GC()
					}
					if took := time.Since(begun); least[workers] == 0 || took < least[workers] {
						least[workers] = took
					}
				}
			}
			sum[1], sum[2] = sum[1]+least[1], sum[2]+least[2]
		}
		return sum
	}
	// The collector's cycles stop and start both processors, so that two of them gain less the more cycles there are. A program that
	// plans a whole chain has memory to spare for fewer: some 90 MB for 5,000 windows.
	usual := sync.OnceValue(func() [3]time.Duration { return inTurn(false) })
	spare := sync.OnceValue(func() [3]time.Duration { return inTurn(true) })
	for workers := 1; workers <= 2; workers++ {
		timed := func(name string, took func() [3]time.Duration) {
			b.Run(fmt.Sprintf("%s=%d/workers=%d", name, len(requests), workers), func(b *testing.B) {
				ns := float64(took()[workers].Nanoseconds())
				for b.Loop() {
				}
				b.ReportMetric(ns, "ns/op")
			})
		}
		timed("windows", usual)
		timed("roomy", spare)
	}
	runtime.GOMAXPROCS(1) // for the parts of a plan
	// The parts of a thousand windows, each measured by itself.
	const n = 1_000
	rules := palette.CommonPractice()
	b.Run("part=colors", func(b *testing.B) {
		for b.Loop() {
			for i := range n {
				if _, err := rules.Read(requests[i].Colors, palette.Swatch{}); err != nil {
					b.Fatal(err)
				}
			}
		}
	})
	b.Run("part=shopping", func(b *testing.B) {
		needs := make([][]shopping.Need, n)
		for i := range needs {
			p, err := job.Make(requests[i])
			if err != nil {
				b.Fatal(err)
			}
			for _, s := range p.Trees[0].Shares {
				needs[i] = append(needs[i], s.Need)
			}
		}
		for b.Loop() {
			for i := range n {
				if _, err := requests[i].Shop.List(needs[i]); err != nil {
					b.Fatal(err)
				}
			}
		}
	})
	b.Run("part=rooms", func(b *testing.B) {
		open := make([]job.Request, n)
		for i := range open {
			open[i] = job.Request{Trees: requests[i].Trees}
		}
		for b.Loop() {
			plan(open)
		}
	})
}
