// Package seal holds a decision workbook against what was judged: the
// canonical form of a record, the seal over it, and the comparison of all that
// can be seen in a workbook with what firstboard would write again.
//
// It reads parts of a workbook as they are stored and knows no spreadsheet
// library; the record's cells are read and judged elsewhere.
package seal
