package drying

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"firstboard/report/evidence"
	"firstboard/testdata/published"
)

// dried is a layer after a time under air of one humidity.
func dried(l *layer, time, air float64, each func()) *layer {
	now, dt := 0.0, 1e-6
	for now < time {
		try := min(dt, time-now)
		wrong := l.step(try, air, stepError)
		if wrong <= stepError {
			now += try
			each()
		}
		dt = try * min(max(0.9*math.Sqrt(stepError/max(wrong, 1e-9)), 0.2), 2)
	}
	return l
}

func number(t *testing.T, cells []string) []float64 {
	t.Helper()
	all := make([]float64, len(cells))
	for i, cell := range cells {
		all[i] = published.Number(t, cell)
	}
	return all
}

// Crank's series for a plane sheet, one face at zero and the other sealed, D
// constant: every depth and the mean within 0.0005.
func TestLayerAgainstCranksSeries(t *testing.T) {
	for _, row := range published.Rows(t, "crank-slab.csv") {
		t.Run("Fo "+row[0], func(t *testing.T) {
			v := number(t, row)
			l := dried(newLayer(Shape{Floor: 1, Middle: 0.8, Power: 1}.potential(), 1), v[0], 0, func() {})
			if got := 1 - l.lost; math.Abs(got-v[1]) > 0.0005 {
				t.Errorf("mean %.5f, series %.5f", got, v[1])
			}
			for i, depth := range []float64{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1} {
				if got := l.reader(depth).rh(l); math.Abs(got-v[3+i]) > 0.0005 {
					t.Errorf("at depth %v: %.5f, series %.5f", depth, got, v[3+i])
				}
			}
		})
	}
}

// The converged nonlinear solution of another program: every depth and the
// mean within 0.002, by the very traces that a forecast reads.
func TestTraceAgainstNonlinearTable(t *testing.T) {
	for _, row := range published.Rows(t, "bazant-najjar-slab.csv") {
		t.Run(row[0]+" "+row[1]+" mm day "+row[8], func(t *testing.T) {
			v := number(t, row[1:])
			wet := Shape{Floor: v[4], Middle: v[5], Power: v[6]}.potential()
			log := math.Log(v[7] * v[3] / (v[0] * v[0]))
			for i, depth := range []float64{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1} {
				told := dry(wet, v[1], depth, []surface{{rh: v[2]}})
				if got := read(&told.hole, log); math.Abs(got-v[8+i]) > 0.002 {
					t.Errorf("at depth %v: %.4f, table %.4f", depth, got, v[8+i])
				}
				if got := read(&told.mean, log); math.Abs(got-v[16]) > 0.002 {
					t.Errorf("mean %.4f, table %.4f", got, v[16])
				}
			}
		})
	}
}

// airs are the logs of the committed table's cases, a state a day.
func airs(name string) (log []evidence.AirState) {
	parts := map[string][3][3]float64{
		"warming":        {{0, 60, 15}, {40, 35, 24}, {90, 50, 20}},
		"two faces":      {{0, 40, 20}, {30, 55, 26}, {70, 30, 18}},
		"thick and slow": {{0, 50, 20}, {60, 70, 12}, {200, 45, 22}},
	}[name]
	for day := range 401 {
		now := parts[0]
		for _, p := range parts[1:] {
			if float64(day) >= p[0] {
				now = p
			}
		}
		log = append(log, evidence.AirState{Day: float64(day), RHPct: now[1], TempC: now[2]})
	}
	return log
}

// Air that changes in humidity and temperature, one face and two: compared
// with a committed table that SciPy's solve_ivp made (testdata/solve_ivp.py).
func TestTraceUnderChangingAirAgainstSolveIVP(t *testing.T) {
	file, err := os.Open("testdata/solve-ivp.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		t.Run(row[0]+" day "+row[9], func(t *testing.T) {
			v := number(t, row[1:])
			h := Hole{ThicknessMM: v[0], Faces: int(v[1]), DepthMM: v[2]}
			thickness, depth := h.layerMM()
			c := courseFrom(0, airs(row[0]))
			rate := v[7] / (thickness * thickness)
			told := dry(Shape{Floor: v[4], Middle: v[5], Power: v[6]}.potential(), v[3], depth, c.surfaces(rate))
			log := math.Log(c.lived(v[8]) * rate)
			hole, mean := read(&told.hole, log), read(&told.mean, log)
			if math.Abs(hole-v[9]) > 0.002 || math.Abs(mean-v[10]) > 0.002 {
				t.Errorf("hole %.4f, mean %.4f; solve_ivp %.4f and %.4f", hole, mean, v[9], v[10])
			}
		})
	}
}

// What left by the face is what the cells lack, to 1e-6, at every step; the
// humidity never rises in time, never falls with depth, and stays between the
// air's and the start's, to 0.01 % RH.
func TestLayerConservesAndKeepsOrder(t *testing.T) {
	for i, s := range likelyShapes() {
		t.Run(strconv.Itoa(i), func(t *testing.T) {
			const start, air = 0.98, 0.4
			l := newLayer(s.potential(), start)
			before := l.h
			dried(l, 300, air, func() {
				held, above := 0.0, air
				for i, h := range l.h {
					held += l.width[i] * h
					if h < above-1e-4 || h > start+1e-4 || h > before[i]+1e-4 {
						t.Fatalf("cell %d at %.5f: above it %.5f, before %.5f", i, h, above, before[i])
					}
					above = h
				}
				if math.Abs(start-l.lost-held) > 1e-6 {
					t.Fatalf("%.7f left and %.7f stayed of %.7f", l.lost, held, start)
				}
				before = l.h
			})
			if end := l.h[cells-1]; math.Abs(end-air) > 0.02 {
				t.Errorf("after long it is at %.3f, the air at %.3f", end, air)
			}
		})
	}
}

// solvedHistory is the one that testdata/solve_ivp.py times: 100 mm, one face, 95 %
// RH, air at 50 %, Model Code values with D1 28.8 mm2/day, 40 mm deep.
func solvedHistory() *trace {
	return dry(Shape{Floor: 0.05, Middle: 0.8, Power: 15}.potential(), 0.95, 0.4, []surface{{rh: 0.5}})
}

// That script's run of SciPy's solve_ivp is at 80 % RH on day 267.5.
func TestTraceReachesItsLimitWithSolveIVP(t *testing.T) {
	log, ok := solvedHistory().reaches(0.80, firstLog)
	if day := math.Exp(log) * 100 * 100 / 28.8; !ok || math.Abs(day-267.5) > 2 {
		t.Errorf("on day %.1f, solve_ivp says 267.5", day)
	}
}

func BenchmarkTrace(b *testing.B) {
	for b.Loop() {
		solvedHistory()
	}
}
