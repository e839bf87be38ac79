package wood

import "firstboard/report/evidence"

// The grid of the temperature correction: wood temperatures from -20 to 50 C
// in steps of 5, indicated moisture contents from 6 to 25 % in steps of 1.
const (
	coldest, hottest, tempStep = -20, 50, 5
	driest, wettest            = 6, 25
)

// temperatureGrid gives tenths of a point to add to the reading of a
// resistance meter set at 70 F (21 C). James 1988, FPL-GTR-6, Figure 5, as
// digitized by a third party (stated rms under 0.15 point).
func temperatureGrid() [15][20]int {
	return [15][20]int{
		{47, 51, 55, 61, 68, 73, 81, 81, 82, 86, 91, 97, 107, 117, 127, 137, 147, 157, 167, 177},             // -20 C
		{39, 43, 46, 49, 55, 60, 65, 72, 71, 72, 77, 81, 85, 92, 98, 105, 111, 118, 124, 131},                // -15 C
		{32, 35, 38, 41, 44, 49, 52, 57, 62, 62, 62, 67, 70, 73, 78, 83, 87, 92, 96, 101},                    // -10 C
		{25, 29, 31, 33, 35, 38, 41, 44, 48, 52, 52, 52, 57, 59, 61, 65, 68, 72, 75, 79},                     // -5 C
		{19, 22, 24, 25, 27, 29, 31, 34, 36, 39, 43, 42, 42, 46, 48, 49, 52, 54, 57, 60},                     // 0 C
		{13, 16, 18, 19, 20, 21, 22, 24, 26, 27, 30, 33, 32, 32, 35, 36, 37, 39, 41, 43},                     // 5 C
		{9, 10, 11, 13, 13, 14, 15, 16, 17, 18, 19, 21, 22, 22, 22, 24, 25, 26, 27, 28},                      // 10 C
		{5, 5, 6, 7, 7, 7, 8, 8, 9, 10, 10, 11, 12, 12, 12, 12, 13, 14, 14, 14},                              // 15 C
		{1, 1, 1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2},                                         // 20 C
		{-3, -3, -3, -4, -4, -5, -5, -5, -5, -5, -6, -6, -6, -7, -7, -8, -8, -8, -8, -9},                     // 25 C
		{-7, -7, -8, -8, -9, -10, -11, -11, -12, -12, -13, -14, -14, -15, -16, -17, -18, -18, -18, -19},      // 30 C
		{-10, -11, -12, -13, -14, -15, -16, -17, -18, -18, -19, -20, -21, -22, -24, -25, -26, -28, -28, -28}, // 35 C
		{-14, -15, -16, -17, -18, -20, -22, -23, -24, -25, -26, -27, -28, -29, -31, -32, -34, -36, -37, -38}, // 40 C
		{-18, -19, -20, -22, -23, -25, -27, -28, -29, -30, -32, -33, -34, -36, -37, -39, -41, -43, -45, -47}, // 45 C
		{-21, -23, -24, -26, -27, -29, -31, -33, -35, -36, -38, -39, -41, -42, -44, -46, -48, -51, -52, -54}, // 50 C
	}
}

// forTemperature corrects what a resistance meter set at 70 F (21 C) shows, in
// % MC, for the temperature of the wood, linear between the points of the
// grid. ok is false off the grid.
//
// Source: James 1988, Electric Moisture Meters for Wood, FPL-GTR-6, Figure 5.
func forTemperature(shown, tempC evidence.Exact) (line, bool) {
	i, di, okT := cell(tempC, coldest, hottest, tempStep)
	j, dj, okM := cell(shown, driest, wettest, 1)
	if !okT || !okM {
		return line{at: shown}, false
	}
	grid := temperatureGrid()
	add := func(i, j int) evidence.Exact { return evidence.Ratio(int64(grid[i][j]), 10) }
	left, right := between(add(i, j), add(i+1, j), di), between(add(i, j+1), add(i+1, j+1), di)
	return line{
		at:    shown.Add(between(left, right, dj)),
		slope: evidence.Whole(1).Add(right.Sub(left)),
	}, true
}

// cell finds the interval of a grid axis that holds x, and how far along x
// lies in it, from 0 to 1.
func cell(x evidence.Exact, first, last, step int) (i int, along evidence.Exact, ok bool) {
	if x.Cmp(evidence.Whole(first)) < 0 || x.Cmp(evidence.Whole(last)) > 0 {
		return 0, along, false
	}
	steps := x.Sub(evidence.Whole(first)).Over(evidence.Whole(step))
	i = max(0, steps.Ceil()-1)
	return i, steps.Sub(evidence.Whole(i)), true
}

func between(a, b, along evidence.Exact) evidence.Exact {
	return a.Add(b.Sub(a).Mul(along))
}
