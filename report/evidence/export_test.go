package evidence

// Small says whether a number is kept as two whole numbers.
func (e Exact) Small() bool { return e.big == nil }
