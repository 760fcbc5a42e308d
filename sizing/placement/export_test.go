package placement

import "os"

// Every has the tests take all trees, shapes and counts. That takes minutes, and is for the stage nested of .ci/run; see
// internal/check/even. Without it they take some, the worst among them.
var Every = os.Getenv("FIRCONE_EVERY") != ""
