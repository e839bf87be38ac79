// Package forms describes the tables of a record as forms to fill in: what goes
// into each column, with an example, and what it takes. The columns are those
// that package record reads by, so what is asked for is what is read.
package forms
