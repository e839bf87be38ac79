// Package alike knows a table, a column or a word by another name: the one of
// the first edition, or its own with something added or misspelt.
package alike
