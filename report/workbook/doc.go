// Package workbook writes decisions as one workbook: a page to act on, a sheet
// for each area with every check behind its verdict, and the record's own
// tables, cell for cell and row for row, so that the workbook is a record too.
//
// It judges nothing and reads nothing. What it shows was decided before; it
// only chooses words, order and room on the page. Equal books give equal
// bytes: it knows no clock, and the parts of the file stand in one order.
package workbook
