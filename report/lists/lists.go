package lists

import "slices"

// Each is what f gives of each of some things, in their order.
func Each[T, S any](things []T, f func(T) S) []S {
	var all []S
	for _, x := range things {
		all = append(all, f(x))
	}
	return all
}

// Where are those of some things that a test holds of. The list given is left as
// it is.
func Where[T any](things []T, holds func(T) bool) []T {
	var all []T
	for _, x := range things {
		if holds(x) {
			all = append(all, x)
		}
	}
	return all
}

// First is the first of some things that a test holds of, a zero value where it
// holds of none.
func First[T any](things []T, holds func(T) bool) (first T, found bool) {
	at := slices.IndexFunc(things, holds)
	if at < 0 {
		return first, false
	}
	return things[at], true
}

// Try is the first error that f gives for some things, one after another.
func Try[T any](things []T, f func(T) error) error {
	for _, x := range things {
		if err := f(x); err != nil {
			return err
		}
	}
	return nil
}

// Groups are some things by a key of each: the groups in the order of their first
// things, and the things of a group in theirs.
func Groups[T any, K comparable](things []T, key func(T) K) [][]T {
	var all [][]T
	index := map[K]int{}
	for _, x := range things {
		i, known := index[key(x)]
		if !known {
			i = len(all)
			index[key(x)] = i
			all = append(all, nil)
		}
		all[i] = append(all[i], x)
	}
	return all
}

// If is the first of two things where a condition holds, else the second.
func If[T any](holds bool, yes, no T) T {
	if holds {
		return yes
	}
	return no
}

// Among are those of some things that another list holds too.
func Among[T comparable](things, list []T) []T {
	return Where(things, func(x T) bool { return slices.Contains(list, x) })
}
