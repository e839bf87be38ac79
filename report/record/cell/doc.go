// Package cell reads what stands in one cell of a record, a number, a fraction,
// a day or a time, and tells what to write instead where it cannot.
package cell
