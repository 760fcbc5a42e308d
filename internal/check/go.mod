module example.com/fircone/internal/check

go 1.25

require (
	example.com/fircone v0.0.0
	github.com/lucasb-eyer/go-colorful v1.4.1
	github.com/shopspring/decimal v1.6.0
)

replace example.com/fircone => ../..
