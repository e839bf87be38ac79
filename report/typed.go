package report

import "slices"

// TypedSince is what somebody typed into a sealed workbook since it was sealed,
// and what a record of these tables would lose: changed cells, and sign-offs
// that it does not hold.
func (s Sealed) TypedSince(tables []Table) []string {
	v := verifier{Sealed: s}
	v.wasWhole = tablesSum(s.Was.Tables) == s.Parts.Tables
	v.nowWhole = tablesSum(s.Now.Tables) == s.Parts.Tables
	v.readings()
	was, kept := signOffs(s.Was.Tables), signOffs(tables)
	for _, r := range signOffs(s.Now.Tables) {
		if !slices.ContainsFunc(was, r.alike) && !slices.ContainsFunc(kept, r.alike) {
			v.broken("signed since: %s (Sign-off row %d)", r, r.number)
		}
	}
	return v.Broken
}
