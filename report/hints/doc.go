// Package hints says what the readings of an area hint at and no check judges: a
// slip in writing, rows that an honest record seldom shows, and what two kinds of
// meter say together.
package hints
