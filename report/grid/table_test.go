package grid_test

import (
	"slices"
	"testing"

	"firstboard/report/grid"
)

// Put puts a table in the place of the one of its name, a new one behind the
// others, and leaves the list it is given as it is.
func TestPut(t *testing.T) {
	tables := []grid.Table{{Name: "Job"}, {Name: "Areas"}, {Name: "Spare"}}[:2]
	job := grid.Table{Name: "Job", Header: []string{"Item"}}
	for _, c := range []struct {
		put  grid.Table
		want []string
	}{
		{job, []string{"Job 1", "Areas 0"}},
		{grid.Table{Name: "Air", Header: []string{"Area", "Read at"}}, []string{"Job 0", "Areas 0", "Air 2"}},
	} {
		var got []string
		for _, table := range grid.Put(tables, c.put) {
			got = append(got, table.Name+" "+string(rune('0'+len(table.Header))))
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
	if len(tables[0].Header) > 0 || tables[:3][2].Name != "Spare" {
		t.Errorf("the list given became %v", tables[:3])
	}
}

func TestNamed(t *testing.T) {
	tables := []grid.Table{{Name: "Job", Header: []string{"Item"}}}
	if got := grid.Named(tables, "Job"); len(got.Header) != 1 {
		t.Errorf("got %v", got)
	}
	if got := grid.Named(tables, "Air"); got.Name != "Air" || got.Header != nil {
		t.Errorf("of a table that is not there: %v", got)
	}
}
