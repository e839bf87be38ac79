package outlook_test

import (
	"slices"
	"strings"
	"testing"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/outlook"
)

// Every row is a check of the catalog, once and in its order, with a sentence
// of its own; the whole is marked as practice.
func TestDamagesFollowTheCatalog(t *testing.T) {
	last, seen := -1, map[string]bool{}
	for _, d := range outlook.Damages() {
		at := slices.Index(report.Order(), d.Check)
		if at <= last {
			t.Errorf("%s is unknown or out of order", d.Check)
		}
		if d.KnownFor == "" || seen[d.KnownFor] || strings.HasSuffix(d.KnownFor, ".") {
			t.Errorf("%s: %q", d.Check, d.KnownFor)
		}
		last, seen[d.KnownFor] = at, true
	}
	if outlook.DamageStanding != evidence.Practice {
		t.Error("the table has no source")
	}
	if d, ok := outlook.DamageOf("slab-rh"); !ok || !strings.Contains(d.KnownFor, "adhesive") {
		t.Errorf("slab-rh: %+v", d)
	}
	if d, ok := outlook.DamageOf("slab-holes"); ok {
		t.Errorf("a count is known for no damage: %+v", d)
	}
}
