// Package plan says what is still to be measured and written down before an
// area can be judged, when, where and by whom, from the decision on it.
package plan
