// Package intake reads the files that loggers and meters export and brings
// their rows into a table of a record; what it guesses of a file it tells, and
// what it cannot tell it refuses with the flag that settles it.
package intake
