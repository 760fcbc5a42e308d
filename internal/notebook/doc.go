// Package notebook runs Go notebooks without a browser, with the standard
// library and the Go command alone, so that CI can hold the notebooks of
// examples/notebook to the outputs that were committed with them.
//
// A notebook is a Jupyter file of format 4 whose code cells are Go, in the
// dialect that compiled Go kernels share:
//
//   - top-level declarations and imports are remembered from cell to cell, and a
//     later declaration of the same name takes the place of the earlier one;
//   - a line of %% or %main begins the body of main, which is not remembered;
//   - a line that begins with !* is run by the shell in the folder of the module
//     that the cells are compiled in, where GONB_DIR names the notebook's folder;
//   - every cell is compiled with all that is remembered and runs as a process
//     of its own, so a variable starts anew in each.
//
// An import that a cell does not use is left out of its program. No other
// special line is known here, and one is an error.
//
// Source: nbformat.readthedocs.io, The Notebook file format, for the file.
package notebook
