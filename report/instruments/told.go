package instruments

import "iter"

// Told are the comparisons that were told already, by a name for each instrument.
type Told map[string][]int

// fresh gives the numbers of a span, of all below n, that it did not give under a
// name before. What was given costs nothing: each number leads towards the next one
// that was not.
func (told Told) fresh(name string, n int, s span) iter.Seq[int] {
	return func(yield func(int) bool) {
		if s.from >= s.to {
			return
		}
		next := told[name]
		if next == nil {
			next = make([]int, n+1)
			for i := range next {
				next[i] = i
			}
			told[name] = next
		}
		for i := untold(next, s.from); i < s.to; i = untold(next, i) {
			next[i] = i + 1
			if !yield(i) {
				return
			}
		}
	}
}

// untold is the first number from i on that was not told.
func untold(next []int, i int) int {
	for next[i] != i {
		next[i] = next[next[i]]
		i = next[i]
	}
	return i
}
