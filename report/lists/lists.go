package lists

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
