// Package record reads a field record, a workbook or a folder of CSV files
// with the same tables, into a report.Job. It is the only reader.
//
// Reading is apart from judging. Both sources yield the same thing, named
// tables of cells; one schema, written as data, says which columns a table
// has, which units they carry and where each goes; one decoder follows it and
// gathers every fault, so that a person can mend a record in one go. What the
// readings mean is not asked here: a missing reading is no fault.
//
// A record is read whole or not at all. A workbook is read from its stored
// cells in one pass over the XML of each table's sheet, because a sheet that
// is cut short may lack just the row that fails; whatever is damaged refuses
// the file with one clear error.
//
// It reads two more kinds of file on the way to a record: the export of a
// logger or meter, and an open weather file. And it writes a record's tables
// as CSV.
package record
