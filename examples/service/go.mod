module example.com/fircone/examples/service

go 1.25

require example.com/fircone v0.0.0

require github.com/shopspring/decimal v1.6.0 // indirect

replace example.com/fircone => ../..
