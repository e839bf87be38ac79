// Package lists makes lists out of lists: of what each thing gives, and of those
// that a test holds of.
package lists
