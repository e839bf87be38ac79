// Package writer writes pages of cells as the sheets of a workbook, each set up
// for print, and lays tables out as such pages.
package writer
