// Package lists makes lists out of lists: of what each thing gives, of those that
// a test holds of, and of those that belong together; and it picks one of two things, and the first error of many.
package lists
