// Package fill writes workbooks that a person types into: an empty record, and
// a record to be filled in further, with field sheets to print and write on.
package fill
