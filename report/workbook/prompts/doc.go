// Package prompts says what a spreadsheet asks of an entry as it is typed: the
// check that it makes and the words that it shows, for every field of a form.
package prompts
