module github.com/janpfeifer/gonb

go 1.25
