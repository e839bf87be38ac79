// Package evidence holds the words that all of firstboard shares: a reading
// and the place it was typed in, a limit and whose it is, a check, and the
// finding that answers it.
//
// It judges nothing of the trade by itself. It keeps what people typed as
// exact decimals, compares without rounding, and folds findings to a verdict.
// It knows no file, no clock and no other package of the project.
package evidence
