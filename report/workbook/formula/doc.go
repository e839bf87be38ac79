// Package formula writes spreadsheet formulas together with what they give, so
// that a workbook shows its figures before any program recalculates it.
//
// An Expr is a piece of a formula and its value, worked out while it is put
// together. It knows the few functions that every usual spreadsheet has. It
// judges nothing and knows no sheet: references come with their values.
package formula
