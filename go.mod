module example.com/fircone

go 1.25

require (
	github.com/google/go-cmp v0.7.0
	github.com/lucasb-eyer/go-colorful v1.4.1
	github.com/shopspring/decimal v1.6.0
	pgregory.net/rapid v1.3.0
)
