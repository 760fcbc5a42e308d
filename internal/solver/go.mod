module example.com/fircone/internal/solver

go 1.25

require (
	example.com/fircone v0.0.0
	github.com/shopspring/decimal v1.6.0
)

replace example.com/fircone => ../..
