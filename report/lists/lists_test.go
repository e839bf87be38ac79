package lists_test

import (
	"errors"
	"slices"
	"strconv"
	"testing"

	"firstboard/report/lists"
)

func TestEachKeepsTheOrder(t *testing.T) {
	if got := lists.Each([]int{3, 1, 2}, strconv.Itoa); !slices.Equal(got, []string{"3", "1", "2"}) {
		t.Errorf("got %q", got)
	}
	if got := lists.Each(nil, strconv.Itoa); got != nil {
		t.Errorf("of nothing: %q, want no list", got)
	}
}

func TestWhereLeavesTheListAsItIs(t *testing.T) {
	all := []int{1, 2, 3, 4}
	even := func(n int) bool { return n%2 == 0 }
	if got := lists.Where(all, even); !slices.Equal(got, []int{2, 4}) {
		t.Errorf("got %v", got)
	}
	if !slices.Equal(all, []int{1, 2, 3, 4}) {
		t.Errorf("the list became %v", all)
	}
	if got := lists.Where([]int{1, 3}, even); got != nil {
		t.Errorf("where none is: %v, want no list", got)
	}
}

func TestGroupsKeepTheOrder(t *testing.T) {
	got := lists.Groups([]string{"b1", "a1", "b2", "c1", "a2"}, func(s string) byte { return s[0] })
	want := [][]string{{"b1", "b2"}, {"a1", "a2"}, {"c1"}}
	if !slices.EqualFunc(got, want, slices.Equal) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestAmongKeepsTheOrder(t *testing.T) {
	if got := lists.Among([]string{"c", "a", "b"}, []string{"a", "c", "d"}); !slices.Equal(got, []string{"c", "a"}) {
		t.Errorf("got %q", got)
	}
}

func TestFirstTellsWhetherThereIsOne(t *testing.T) {
	over := func(least int) func(int) bool { return func(n int) bool { return n > least } }
	if got, found := lists.First([]int{1, 3, 2, 4}, over(1)); got != 3 || !found {
		t.Errorf("got %d, %t", got, found)
	}
	if got, found := lists.First([]int{1, 3}, over(3)); got != 0 || found {
		t.Errorf("where none is: %d, %t", got, found)
	}
}

func TestIfPicksByTheCondition(t *testing.T) {
	if yes, no := lists.If(true, "a", "b"), lists.If(false, "a", "b"); yes != "a" || no != "b" {
		t.Errorf("got %q and %q", yes, no)
	}
}

func TestTryStopsAtTheFirstError(t *testing.T) {
	seen, broken := 0, errors.New("two is broken")
	err := lists.Try([]int{1, 2, 3}, func(n int) error {
		seen = n
		return lists.If(n == 2, broken, nil)
	})
	if !errors.Is(err, broken) || seen != 2 {
		t.Errorf("got %v after %d", err, seen)
	}
	if err := lists.Try(nil, func(int) error { return broken }); err != nil {
		t.Errorf("of nothing: %v", err)
	}
}
