package report_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// allowed are the packages of the project that each may import: one way, from
// evidence up to the command.
func allowed() map[string][]string {
	domain := []string{"report/lists", "report/evidence", "slab", "wood", "acclimate"}
	outer := append(slices.Clone(domain), "report/limits", "report/instruments", "report/grid", "report/ahead", "report")
	return map[string][]string{
		"report/lists":     {},
		"report/evidence":  {},
		"report/untrusted": {},

		"testdata/published":   {},
		"slab":                 {"report/evidence"},
		"slab/drying":          {"report/evidence"},
		"wood":                 {"report/evidence"},
		"acclimate":            {"report/evidence", "slab", "wood"},
		"acclimate/settling":   {"report/evidence", "wood"},
		"report/limits":        domain,
		"report/instruments":   domain,
		"report/hints":         append(slices.Clone(domain), "report/instruments"),
		"report/grid":          {"report/lists", "report/evidence"},
		"report/ahead":         {"report/lists", "report/evidence"},
		"report":               append(slices.Clone(domain), "report/limits", "report/instruments", "report/hints", "report/ahead"),
		"report/record/sheet":  {"report/lists", "report/evidence", "report/grid", "report/untrusted"},
		"report/record/cell":   {"report/evidence", "report/grid", "report/record/sheet", "report/record/faults"},
		"report/record/alike":  {"report/lists", "report/evidence", "report/record/sheet"},
		"report/record/faults": {"report/lists", "report/evidence", "report/record/sheet"},
		"report/record": append(slices.Clone(outer), "report/record/sheet", "report/record/faults", "report/record/alike",
			"report/record/cell"),
		"report/record/forms": append(slices.Clone(outer), "report/record", "report/record/sheet"),
		"report/record/intake": append(slices.Clone(outer), "report/record", "report/record/sheet", "report/record/faults",
			"report/record/alike", "report/untrusted"),
		"report/record/weather": append(slices.Clone(outer), "report/record/sheet", "report/untrusted"),
		"report/workbook": append(slices.Clone(outer), "report/pictures", "report/workbook/formula", "report/workbook/chart",
			"report/workbook/names", "report/workbook/said", "report/workbook/style",
			"report/workbook/writer"),

		"report/workbook/style":   {},
		"report/workbook/writer":  append(slices.Clone(outer), "report/workbook/formula", "report/workbook/style"),
		"report/workbook/formula": append(slices.Clone(domain), "report/grid"),
		"report/workbook/names":   {"report/lists", "report/evidence", "report/grid", "report/workbook/formula"},
		"report/workbook/said":    append(slices.Clone(outer), "report/workbook/names"),
		"report/workbook/prompts": {"report/lists", "report/grid", "report/workbook/names"},
		"report/workbook/fill": append(slices.Clone(outer), "report/workbook/formula", "report/workbook/prompts",
			"report/workbook/style", "report/workbook/writer"),
		"report/workbook/chart": append(slices.Clone(outer), "report/pictures", "report/workbook/formula",
			"report/workbook/style", "report/workbook/writer"),

		"report/page":     append(slices.Clone(outer), "report/pictures"),
		"report/pictures": outer,
		"report/gather":   outer,
		"report/plan":     outer,
		"report/seal":     append(slices.Clone(outer), "report/untrusted"),
		"report/outlook":  append(slices.Clone(outer), "report/plan", "slab/drying", "acclimate/settling"),
		"cmd/firstboard": append(slices.Clone(outer), "report/untrusted", "report/record", "report/record/sheet",
			"report/record/cell", "report/record/faults", "report/record/forms", "report/record/intake",
			"report/record/weather", "report/workbook", "report/workbook/fill", "report/page", "report/plan", "report/seal",
			"report/outlook", "report/gather"),
	}
}

// homes are the only folders in which some packages may be imported.
func homes() map[string][]string {
	return map[string][]string{
		"github.com/xuri/excelize/v2": {
			"report/record/sheet", "report/workbook", "report/workbook/prompts",
			"report/workbook/style", "report/workbook/writer",
		},
		"github.com/urfave/cli/v2": {"cmd/firstboard"},
		"os":                       {"report/untrusted", "report/record/sheet", "cmd/firstboard", "testdata/published"},
	}
}

func TestImportsPointOneWay(t *testing.T) {
	rules, places := allowed(), homes()
	files := 0
	for _, file := range goFiles(t, "..") {
		folder := filepath.ToSlash(filepath.Dir(strings.TrimPrefix(file, "../")))
		may, known := rules[folder]
		if !known {
			t.Errorf("%s: folder %s has no place in the order of imports", file, folder)
		}
		files++
		for _, path := range imports(t, file) {
			own, isOwn := strings.CutPrefix(path, "firstboard/")
			if isOwn && !slices.Contains(may, own) {
				t.Errorf("%s imports %s, which points the wrong way", file, own)
			}
			if homes, bound := places[path]; bound && !slices.Contains(homes, folder) {
				t.Errorf("%s imports %s, which only %v may", file, path, homes)
			}
		}
	}
	if files < 30 {
		t.Fatalf("only %d source files were found: the test looks in the wrong place", files)
	}
}

// Every package that others import says what it does in a file of its own.
func TestPackagesSayWhatTheyDo(t *testing.T) {
	for folder := range allowed() {
		if folder == "cmd/firstboard" || strings.HasPrefix(folder, "testdata") {
			continue
		}
		tree, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", folder, "doc.go"), nil, parser.ParseComments)
		if err != nil {
			t.Error(err)
			continue
		}
		if says := tree.Doc.Text(); !strings.HasPrefix(says, "Package "+tree.Name.Name+" ") {
			t.Errorf("%s/doc.go says %q", folder, says)
		}
	}
}

func goFiles(t *testing.T, root string) []string {
	t.Helper()
	var files []string
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go") {
			files = append(files, filepath.ToSlash(path))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func imports(t *testing.T, file string) []string {
	t.Helper()
	tree, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, spec := range tree.Imports {
		path, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	return paths
}
