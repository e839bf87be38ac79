package sheet

import "testing"

// FuzzEntries: a text comes back from a CSV file as it was, and stands there as no
// formula unless it is a number.
func FuzzEntries(f *testing.F) {
	for _, text := range []string{"=1+1", "'=1", "''", "-5", "-5-5", "+5", "@A1", "'quoted'", "", "\t=1", "84.7"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		entry := toCSV(text)
		if got := fromCSV(entry); got != text {
			t.Errorf("%q became %q", text, got)
		}
		if _, number := meant(entry); formulaLike(entry) && !number {
			t.Errorf("%q stands there as %q", text, entry)
		}
	})
}
