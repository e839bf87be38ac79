// Package gather turns the decisions on many records into one table of verdicts,
// a row an area, with what falls due and a summary of both: pure, and nothing of
// a record is kept beyond its rows.
package gather
