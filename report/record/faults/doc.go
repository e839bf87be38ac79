// Package faults tells what a person has to mend in a record: where, what is
// wrong there, and what to write instead.
package faults
