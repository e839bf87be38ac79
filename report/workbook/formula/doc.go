// Package formula prints a working as the formula of a spreadsheet: over the
// cells that it was worked out from, with a cell of its own, on one sheet, for
// every step that is too long for one.
//
// It knows no check: whatever a working is made of has its form here, and a
// check that is added brings its working alone. Figures are compared at 9
// decimal places, because a spreadsheet reckons in floats.
package formula
