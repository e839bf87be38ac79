package report_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

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
			ast.Inspect(file, func(n ast.Node) bool {
				pair, is := n.(*ast.KeyValueExpr)
				if !is {
					return true
				}
				if key, is := pair.Key.(*ast.Ident); !is || key.Name != "Asks" && key.Name != "Default" {
					return true
				}
				words++
				ast.Inspect(pair.Value, func(n ast.Node) bool {
					typed, is := n.(*ast.BasicLit)
					if !is || typed.Kind != token.STRING {
						return true
					}
					if text, err := strconv.Unquote(typed.Value); err != nil || number.MatchString(text) {
						t.Errorf("%s: %s", set.Position(typed.Pos()), typed.Value)
					}
					return true
				})
				return true
			})
		}
	}
	const least = 60
	if words < least {
		t.Errorf("%d words of checks were looked at, fewer than %d", words, least)
	}
}
