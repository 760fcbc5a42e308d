module example.com/fircone/internal/bench

go 1.25

require (
	example.com/fircone v0.0.0
	gonum.org/v1/gonum v0.16.0
)

require github.com/shopspring/decimal v1.6.0

replace example.com/fircone => ../..
