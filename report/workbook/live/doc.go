// Package live works an area's findings out again as spreadsheet formulas over
// the record's own sheets, so that a changed reading or limit changes outcome
// and verdict in any spreadsheet.
//
// It is a second telling of the rules, next to the judge's: what a formula
// gives is shown only where it gives what the judge said of the record as it
// is; a finding it cannot tell so is left a value, judged by firstboard and not
// recalculated. What the formulas take for granted (names, fixed words, the
// number of rows, the air log) is listed, and where any of it is changed the
// outcome is "judge again", which is never a GO.
package live
