package report_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// typedWords are the texts that stand in what checks ask and in their defaults.
func typedWords(file *ast.File) []*ast.BasicLit {
	var all []*ast.BasicLit
	ast.Inspect(file, func(n ast.Node) bool {
		pair, ok := n.(*ast.KeyValueExpr)
		if !ok {
			return true
		}
		if key, ok := pair.Key.(*ast.Ident); !ok || key.Name != "Asks" && key.Name != "Default" {
			return true
		}
		ast.Inspect(pair.Value, func(n ast.Node) bool {
			if text, ok := n.(*ast.BasicLit); ok && text.Kind == token.STRING {
				all = append(all, text)
			}
			return true
		})
		return false
	})
	return all
}

// The numbers in the words of a check are those of its rule: none is typed into
// what it asks, nor into its default, but for the 1 of a share.
func TestNumbersInWordsComeFromRules(t *testing.T) {
	number := regexp.MustCompile(`(^|[^A-Za-z0-9.%\[])([02-9]|[0-9]{2,})`) // no unit as ft2, no verb as %[2]s
	words := 0
	for _, folder := range []string{"../slab", "../wood", "../acclimate", ".", "instruments"} {
		files, err := filepath.Glob(filepath.Join(folder, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, path := range files {
			if strings.HasSuffix(path, "_test.go") {
				continue
			}
			set := token.NewFileSet()
			file, err := parser.ParseFile(set, path, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			for _, text := range typedWords(file) {
				words++
				if number.MatchString(text.Value) {
					t.Errorf("%s: %s", set.Position(text.Pos()), text.Value)
				}
			}
		}
	}
	const least = 60
	if words < least {
		t.Errorf("%d texts of checks were looked at, fewer than %d", words, least)
	}
}
