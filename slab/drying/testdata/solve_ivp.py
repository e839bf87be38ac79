"""Makes solve-ivp.csv of this folder with SciPy, and tells the time it takes.

Usage: python3 solve_ivp.py > new.csv. The drying of a slab by the diffusivity of
Bazant and Najjar 1972, one face at the humidity of the air, the other sealed or
the middle of the slab: method of lines, 800 cells finest at the face, fluxes by
Gauss quadrature of D. The last line of the standard error output is one history
of ten years on 90 cells at rtol 1e-5, as a forecast would need it by the hundred.
"""
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp

CASES = [
    ("warming", 100, 1, 40, 0.96, (0.05, 0.80, 15, 28.8), [(0, 0.60, 15), (40, 0.35, 24), (90, 0.50, 20)]),
    ("two faces", 150, 2, 30, 0.98, (0.02, 0.775, 5, 31), [(0, 0.40, 20), (30, 0.55, 26), (70, 0.30, 18)]),
    ("thick and slow", 200, 1, 80, 0.94, (0.02, 0.83, 8, 15), [(0, 0.50, 20), (60, 0.70, 12), (200, 0.45, 22)]),
]
DAYS = [10, 20, 50, 80, 100, 150, 250, 400]


def pace(temp_c):
    return np.exp(2700 * (1 / 293.15 - 1 / (273.15 + temp_c)))


def solve(layer, start, shape, air, days, cells, rtol, atol):
    a, hc, n, d1 = shape
    edges = layer * np.linspace(0, 1, cells + 1) ** 1.5
    middle, width = (edges[1:] + edges[:-1]) / 2, np.diff(edges)
    nodes, weights = np.polynomial.legendre.leggauss(8)
    nodes, weights = (nodes + 1) / 2, weights / 2

    def diffusivity(h):
        return d1 * (a + (1 - a) / (1 + (np.maximum(1 - h, 0) / (1 - hc)) ** n))

    def between(low, high):
        return (high - low) * sum(w * diffusivity(low + x * (high - low)) for x, w in zip(nodes, weights))

    h, told = np.full(cells, start), {}
    for i, (begin, rh, temp_c) in enumerate(air):
        end = air[i + 1][0] if i + 1 < len(air) else max(days)

        def change(_, h):
            into = np.concatenate([[-between(rh, h[0]) / middle[0]], -between(h[:-1], h[1:]) / np.diff(middle), [0.0]])
            return -np.diff(into) / width * pace(temp_c)

        at = sorted({d for d in days if begin < d <= end} | {end})
        run = solve_ivp(change, (begin, end), h, method="LSODA", t_eval=at, rtol=rtol, atol=atol, lband=1, uband=1)
        told.update({d: run.y[:, k] for k, d in enumerate(at)})
        h = run.y[:, -1]
    return middle, width, told


print("case,thickness_mm,faces,depth_mm,start,a,hc,n,D1_mm2_day,day,h_at_depth,mean_h")
for name, thickness, faces, depth, start, shape, air in CASES:
    layer = thickness / faces
    middle, width, told = solve(layer, start, shape, air, DAYS, 800, 1e-8, 1e-10)
    for day in DAYS:
        head = ",".join(str(x) for x in (name, thickness, faces, depth, start, *shape, day))
        print(f"{head},{np.interp(depth, middle, told[day]):.5f},{(told[day] * width).sum() / layer:.5f}")

clock = time.process_time()
middle, _, told = solve(100, 0.95, (0.05, 0.80, 15, 28.8), [(0, 0.50, 20)], list(range(1, 3651)), 90, 1e-5, 1e-7)
spent = time.process_time() - clock
depth = [np.interp(40, middle, told[d]) for d in range(1, 3651)]
day = 1 + int(np.argmax(np.array(depth) <= 0.80))
day = day - 1 + (depth[day - 2] - 0.80) / (depth[day - 2] - depth[day - 1])
print(f"one history: {1000 * spent:.0f} ms, at 80 % RH 40 mm deep on day {day:.1f}", file=sys.stderr)
