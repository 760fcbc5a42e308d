package job_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// A garland that is not as long as planned hangs, weighs and comes near the fire by its own length.
func TestOtherGarland(t *testing.T) {
	const in, oz = units.Inch, units.Ounce
	base := shopping.Item{Kind: shopping.BaseGarland}
	shop := func(strand units.Length, shelf shopping.Shelf, uncut bool) shopping.Shop {
		return shopping.Shop{
			Offers: []shopping.Offer{
				{Item: base, Name: "strand", Pack: shopping.Quantity{Length: strand}, Price: decimal.NewFromInt(40), Shelf: shelf},
				{Item: shopping.Item{Kind: shopping.Hook}, Name: "hook", Pack: shopping.Quantity{Pieces: 1}, Price: decimal.NewFromInt(2)},
			},
			Joins: map[shopping.Item]shopping.Join{base: {Uncut: uncut}},
		}
	}
	make := func(m job.Mantel, s shopping.Shop) (job.MantelPlan, string) {
		t.Helper()
		plan, err := job.Make(job.Request{Mantels: []job.Mantel{m}, Shop: s})
		if err != nil {
			t.Fatal(err)
		}
		told := ""
		for _, c := range plan.Cautions {
			if c.Code == "other garland" {
				told += c.Text
			}
		}
		return plan.Mantels[0], told
	}
	says := func(name, told, want string) {
		t.Helper()
		if want == "" && told != "" || !strings.Contains(told, want) {
			t.Errorf("%s: %q, want %q", name, told, want)
		}
	}
	steps := func(m job.MantelPlan) (text string) {
		for _, step := range m.Steps {
			text += step.Do + " "
		}
		return text
	}
	fireplace := job.Mantel{
		Mantel:    mantel.Mantel{Length: 60 * in, Height: 54 * in, Depth: 7 * in, Opening: mantel.Rectangle{Width: 56 * in, Height: 30 * in, Gap: 20 * in}},
		PerFoot:   8 * oz,
		Hook:      mantel.Hook{Rating: 3 * units.Pound},
		Stockings: mantel.Stockings{Count: 2, Length: 18 * in, Weight: 4 * oz},
	}

	// Cut to 7 ft, 12 in falls at each end and weighs 8 oz.
	m, told := make(fireplace, shop(12*ft, 0, false))
	says("cut", told, "")
	if m.Hanging.Left != 12*in || m.Loads[shopping.Garland].Hooks[0].Total != 8*oz {
		t.Errorf("cut: %v, %v", m.Hanging, m.Loads[shopping.Garland])
	}
	// Whole, 144 - 60 in are 42 in at each end, which weigh 3 1/2 times 8 oz, and a hook of 3 lb carries a fifth of them.
	m, told = make(fireplace, shop(12*ft, 0, true))
	says("whole", told, "there is 12 ft of base garland where 7 ft was planned: 3 ft 6 in falls at each end")
	loads := m.Loads[shopping.Garland]
	if m.Hanging.Left != 42*in || m.Hanging.Right != 42*in || loads.Hooks[0].Total != 28*oz || !slices.ContainsFunc(loads.Cautions, func(c units.Caution) bool { return c.Code == "hook overload" }) {
		t.Errorf("whole: %v, %v", m.Hanging, loads)
	}
	near, err := fireplace.Mantel.Clearances(m.Hanging, units.InFeetInches)
	if err != nil {
		t.Fatal(err)
	}
	_, near, err = fireplace.Mantel.Stockings(fireplace.Stockings, fireplace.Hook, near, units.InFeetInches)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := m.Clearances.String(), near.String(); got != want {
		t.Errorf("whole: clearances\n%s\nwant\n%s", got, want)
	}
	// With nothing known of a hook, nothing is weighed, and stockings are looked at all the same.
	bare := fireplace
	bare.PerFoot, bare.Hook = 0, mantel.Hook{}
	if m, _ = make(bare, shop(12*ft, 0, true)); len(m.Loads) != 0 || m.Clearances.String() != near.String() {
		t.Errorf("no hook: %v, %v", m.Loads, m.Clearances)
	}
	// The left end lies at a wall: all of what is left falls at the right.
	wall := job.Mantel{Room: "tea room", Mantel: mantel.Mantel{Length: 60 * in, LeftWall: true}}
	_, told = make(wall, shop(9*ft, 0, true))
	says("wall", told, "of base garland where 6 ft was planned: 0 ft falls at the left end and 4 ft at the right")
	both, err := job.Make(job.Request{Mantels: []job.Mantel{{Room: "hall", Mantel: wall.Mantel}, wall}, Shop: shop(9*ft, 0, true)})
	if err != nil {
		t.Fatal(err)
	}
	says("two rooms", both.String(), "tea room: there is 9 ft of base garland where 6 ft was planned: 0 ft falls at the left end and 4 ft at the right")
	house := job.CommonPractice()
	house.Units = units.InMetric
	plan, err := job.Make(job.Request{House: house, Mantels: []job.Mantel{{Mantel: mantel.Mantel{Length: 150 * units.Centimeter}}}, Shop: shop(270*units.Centimeter, 0, true)})
	if err != nil {
		t.Fatal(err)
	}
	says("metric", plan.String(), "there is 2.7 m of base garland where 2.11 m was planned: 60 cm falls at each end")
	// 5 ft do not reach along 64 in; 20 ft would lie on the hearth.
	wide := job.Mantel{Mantel: mantel.Mantel{Length: 64 * in, Height: 54 * in}}
	m, told = make(wide, shop(5*ft, 1, false))
	says("short", told, "it does not reach from end to end: do not hang it")
	says("short", steps(m), "Do not hang the garland")
	once := func(name, text string) {
		t.Helper()
		for _, step := range m.Steps {
			if strings.Contains(step.Do, text) != (step.Code == "hang") {
				t.Errorf("%s: %q says %q", name, step.Code, step.Do)
			}
		}
	}
	once("short", "Do not hang the garland")
	if m.Hanging.Left != 0 || m.Hanging.Right != 0 {
		t.Errorf("short: %v", m.Hanging)
	}
	m, told = make(wide, shop(20*ft, 0, true))
	says("long", told, "it is too long to hang here")
	says("long", steps(m), "Fasten up what is too much")
	once("long", "Fasten up what is too much")

	// Stairs in swags take a whole strand up in their sag: the swags together are as long as it.
	stairs := job.Mantel{Run: job.Run{To: mantel.Point{Along: 12 * ft, Below: -8 * ft}, Balusters: 23, Swags: 4}}
	m, told = make(stairs, shop(18*ft, 0, true))
	says("stairs", told, "there is 18 ft of base garland where 15 ft was planned: each swag hangs 1 ft 4 in deep")
	if long, err := m.Run.Run.Garland(); err != nil || long-18*ft > 10 || 18*ft-long > 10 {
		t.Errorf("stairs: %v, %v", long, err)
	}
	// Tied close to a rail, nothing takes it up.
	stairs.Run.Swags = 0
	_, told = make(stairs, shop(18*ft, 0, true))
	says("rail", told, "it is too long to hang here")

	// Round a door of 3 ft and 6 ft 8 in, 16 ft 4 in are planned; of 18 ft each side has 10 in more.
	door := job.Mantel{Run: job.Run{To: mantel.Point{Along: 3 * ft, Below: 80 * in}}}
	m, told = make(door, shop(18*ft, 0, true))
	says("door", told, "7 ft 6 in falls at each end")
	// Over two hooks 4 ft apart with one end of 2 ft, a strand of 9 ft leaves 5 ft for it.
	hooks := job.Mantel{Run: job.Run{Run: mantel.Run{Hooks: []mantel.Point{{}, {Along: 4 * ft}}, Right: 2 * ft}}}
	m, told = make(hooks, shop(9*ft, 0, true))
	says("one end", told, "0 ft falls at the left end and 5 ft at the right")
	_, told = make(hooks, shop(3*ft, 1, false))
	says("one end short", told, "it does not reach")
	// The ends of 1 ft and 4 ft have 1 ft too little: the shorter keeps what half leaves it.
	hooks.Run.Left, hooks.Run.Right = 1*ft, 4*ft
	m, _ = make(hooks, shop(8*ft, 1, false))
	if m.Run.Left != 6*in || m.Run.Right != 42*in {
		t.Errorf("two ends: %v and %v", m.Run.Left, m.Run.Right)
	}
	m, _ = make(hooks, shop(6*ft, 1, false))
	if m.Run.Left != 0 || m.Run.Right != 2*ft {
		t.Errorf("two ends of 2 ft: %v and %v", m.Run.Left, m.Run.Right)
	}
}
