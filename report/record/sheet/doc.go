// Package sheet reads the files of a record, a workbook or a folder of CSV
// files, into named tables of cells, and writes such files; what the cells mean
// it leaves to the decoder.
//
// A workbook is read from its stored cells in one pass over the XML of each
// table's sheet, because a sheet that is cut short may lack just the row that
// fails; whatever is damaged refuses the file with one clear error.
package sheet
