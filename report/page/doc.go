// Package page writes what was decided as one web page for people who never
// open a workbook: verdicts first, then each area with its findings and
// pictures, limits, instruments, photos, lines to sign, cautions and the seal.
//
// The page needs no network and no script, prints well, and escapes every text
// of the record. It judges nothing: all it says comes from the decisions.
package page
