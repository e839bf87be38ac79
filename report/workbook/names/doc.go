// Package names gives the sheets of a workbook their names, and tells the cells
// of the record by them.
package names
