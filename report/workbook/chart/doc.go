// Package chart draws the pictures of an area as charts of a workbook, with the
// numbers behind them on a sheet of its own.
//
// What a picture shows was decided before. This package lays its numbers out,
// as formulas that refer to the cells they were typed in, and writes the chart
// parts by hand, with the values they show, so that previews draw them too.
package chart
