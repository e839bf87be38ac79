package evidence

// Outcome is a check's answer. Its zero value is NotShown: an answer that was
// forgotten is never a pass.
type Outcome int

// The outcomes.
const (
	NotShown  Outcome = iota // evidence missing or unusable
	Met                      // the evidence meets the rule
	NotMet                   // the evidence breaks the rule
	NotNeeded                // the rule does not apply here
)

// String is the outcome in words.
func (o Outcome) String() string {
	switch o {
	case Met:
		return "met"
	case NotMet:
		return "not met"
	case NotNeeded:
		return "not needed"
	}
	return "not shown"
}

// Check is one question put to a subject. Default is the limit in words where
// nobody states one. Deciding checks can stop an area; Advises, where given,
// names the subjects for which this one only advises.
type Check[T any] struct {
	ID       string
	Asks     string
	Default  string
	Cite     Cite
	Deciding bool
	Advises  func(T) bool
	Judge    func(T) Finding
}

// Find puts the question and signs the answer with the check's own words.
func (c Check[T]) Find(subject T) Finding {
	f := c.Judge(subject)
	f.ID, f.Asks = c.ID, c.Asks
	f.Deciding = c.Deciding && (c.Advises == nil || !c.Advises(subject))
	if f.Cite == (Cite{}) {
		f.Cite = c.Cite
	}
	return f
}

// Over is the same check put to a subject that holds this one's.
func Over[T, S any](c Check[T], part func(S) T) Check[S] {
	over := Check[S]{ID: c.ID, Asks: c.Asks, Default: c.Default, Cite: c.Cite, Deciding: c.Deciding}
	over.Judge = func(s S) Finding { return c.Judge(part(s)) }
	if c.Advises != nil {
		over.Advises = func(s S) bool { return c.Advises(part(s)) }
	}
	return over
}
