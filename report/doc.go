// Package report holds a job and decides it: for each area it gathers the
// rows and the limits that govern, puts every check of the catalog, and
// folds the answers to a verdict.
//
// It is pure: no file, no clock, no spreadsheet. Reading a record and writing
// a workbook are other packages' work.
package report
