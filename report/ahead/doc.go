// Package ahead says what lies ahead of an area, for programs and in words: when
// it will be ready, what to do next, and whether its verdict holds.
//
// It changes no verdict. [firstboard/report/outlook] works it out.
package ahead
