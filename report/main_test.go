package report_test

import (
	"flag"
	"os"
	"testing"
)

// TestMain draws fewer records for each law than its library would, to keep the
// tests short; -rapid.checks asks for more.
func TestMain(m *testing.M) {
	if err := flag.Set("rapid.checks", "30"); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}
