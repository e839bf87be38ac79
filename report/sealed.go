package report

import "fmt"

// Sealed is what a decision workbook holds: its seal, the record as it was
// judged and as it stands now, and what its sheets show.
type Sealed struct {
	Name    string   // of the file
	Written string   // the seal, as the sheet of the seal carries it
	Parts   Seal     // of it, as that sheet carries them
	Shown   string   // the seal that the decision shows
	Was     Copy     // the tables as they were sealed
	Now     Copy     // the tables themselves
	Head    []string // what the decision says above its areas
	Rules   []Rule   // the catalog it was judged by
	Areas   []ShownArea
	Strange []string // areas that the decision shows and the seal does not name
}

// Copy is a record's tables and the job they make, or what keeps them from
// making one.
type Copy struct {
	Tables []Table
	Job    func() (Job, error)
}

// ShownArea is one area as the decision and its own sheet show it.
type ShownArea struct {
	ID       string
	Sheet    string
	Row      []ShownDecision // on the sheet Decision; one, unless that was changed
	Lacking  bool            // its sheet is gone
	Head     []string        // what its sheet says above the findings
	Findings []ShownFinding
}

// ShownDecision is a row of the sheet Decision.
type ShownDecision struct{ Verdict, GoodUntil string }

// ShownFinding is a row of an area's sheet by the headers of its columns.
type ShownFinding map[string]string

// Verification says what no longer holds of a sealed workbook, and what is
// worth knowing of it.
type Verification struct {
	Broken []string
	Notes  []string
}

// Verify holds a sealed workbook against itself, and against a seal known from
// elsewhere where one is given. Tool and rules are those of the program that
// verifies. An error says that nothing was changed, and that the tables still
// do not read.
func Verify(s Sealed, known, tool string, rules []Rule) (Verification, error) {
	v := verifier{Sealed: s, tool: tool, rules: rules}
	v.wasWhole = tablesSum(s.Was.Tables) == s.Parts.Tables
	v.nowWhole = tablesSum(s.Now.Tables) == s.Parts.Tables
	v.seal(known)
	v.catalog()
	v.readings()
	v.findings()
	v.asItStands()
	v.signedSince()
	v.note("seal: %s", shortly(v.Written))
	if _, err := s.Now.Job(); err != nil && len(v.Broken) == 0 {
		return Verification{}, err
	}
	return v.Verification, nil
}

type verifier struct {
	Sealed
	Verification
	tool  string
	rules []Rule

	decisions          []Decision // on the tables that were sealed
	wasWhole, nowWhole bool       // whether these are the tables that were sealed
}

func (v *verifier) broken(format string, args ...any) {
	v.Broken = append(v.Broken, fmt.Sprintf(format, args...))
}

func (v *verifier) note(format string, args ...any) {
	v.Notes = append(v.Notes, fmt.Sprintf(format, args...))
}

// mostTold is how many things of one kind are told.
const mostTold = 20

// brokenAll tells the first of many things, and how many more there are.
func (v *verifier) brokenAll(kind string, all []string) {
	for _, s := range all[:min(len(all), mostTold)] {
		v.broken("%s: %s", kind, s)
	}
	if n := len(all) - mostTold; n > 0 {
		v.broken("%s: and %d more", kind, n)
	}
}

// seal holds the seal against its parts, and against where else it is written.
func (v *verifier) seal(known string) {
	if sum := v.Parts.String(); v.Written != sum {
		v.broken("seal altered: the sheet Sealed carries %s, and its parts make %s", shortly(v.Written), sum)
	}
	if v.Shown != v.Written {
		v.broken("seal altered: the sheet Decision shows %s, and the sheet Sealed carries %s", shortly(v.Shown), shortly(v.Written))
	}
	if known != "" && known != v.Written {
		v.broken("another seal: the workbook carries %s, and %s was given", shortly(v.Written), known)
	}
}

// sameCatalog says whether the workbook was judged by the catalog in hand.
func (v *verifier) sameCatalog() bool { return v.Parts.Catalog == CatalogSum(v.rules) }

// catalog tells what the catalog it was judged by and the one in hand ask
// differently, or where the sheet that lists it was altered.
func (v *verifier) catalog() {
	listed := CatalogSum(v.Rules)
	switch differ := ruleDifferences(v.Rules, v.rules); {
	case v.sameCatalog() && listed != v.Parts.Catalog:
		v.brokenAll("catalog altered", differ)
	case listed != v.Parts.Catalog:
		v.broken("catalog altered: the sheet Checks does not list the catalog that was sealed")
	case !v.sameCatalog():
		v.broken("judged by another version of the catalog, with %s; this is %s", shortly(v.Parts.Tool), v.tool)
		v.brokenAll("catalog", differ)
	}
	if v.sameCatalog() && v.Parts.Tool != v.tool {
		v.note("it was judged with %s; this is %s, and its catalog is the same", shortly(v.Parts.Tool), v.tool)
	}
}

// ruleDifferences are the checks that two catalogs ask differently.
func ruleDifferences(listed, ours []Rule) []string {
	var all []string
	byID := map[string]Rule{}
	for _, r := range listed {
		byID[r.ID] = r
	}
	for _, r := range ours {
		was, asked := byID[r.ID]
		delete(byID, r.ID)
		if !asked {
			all = append(all, r.ID+": the workbook does not list it")
			continue
		}
		for i, what := range []string{"asks", "default", "source", "standing", "counts as"} {
			if a, b := tidied(was.words()[i]), tidied(r.words()[i]); a != b {
				all = append(all, fmt.Sprintf("%s, %s: the workbook says %s, and this version %s", r.ID, what, shortly(a), shortly(b)))
			}
		}
	}
	for _, r := range listed {
		if _, left := byID[r.ID]; left {
			all = append(all, shortly(r.ID)+": this version does not ask it")
		}
	}
	return all
}
