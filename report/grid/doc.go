// Package grid holds the tables of a record as they stand, cell by cell, and the
// forms in which a person fills them in.
package grid
