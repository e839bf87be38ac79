// Package style tells how a cell of a workbook stands on paper: its letters,
// ground, frame and number format, and the room that its text takes.
package style
