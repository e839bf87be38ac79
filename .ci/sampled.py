"""Hold many decision workbooks against what a spreadsheet program recalculates,
and count how often each check is met, not met and not shown as a formula.

sampled.py STORED RECALCULATED: two folders with files of the same names.

Fails where a stored result differs, where an error value stands, and where a
check that must be a formula is never seen with one of the three outcomes.
"""

import collections
import glob
import os
import sys

import openpyxl
from recalculate import same

MUST = """slab-rh slab-depth slab-wait mver-rate slab-ph slab-cm subfloor-mc flooring-mc flooring-target flooring-spread
wood-difference slab-holes mver-dishes subfloor-count flooring-count reading-age slab-age calibration""".split()
OUTCOMES = ("met", "not met", "not shown")


def differences(stored, recalculated, formulas):
    """The cells with a formula, and those that differ or hold an error."""
    count, wrong = 0, []
    for sheet in formulas:
        was, now = stored[sheet.title], recalculated[sheet.title]
        for row in sheet.iter_rows():
            for cell in row:
                if isinstance(cell.value, str) and cell.value.startswith("="):
                    count += 1
                    a, b = was[cell.coordinate].value, now[cell.coordinate].value
                    if not same(a, b) or isinstance(b, str) and b.startswith("#"):
                        wrong.append(f"{sheet.title}!{cell.coordinate} stored {a!r} recalculated {b!r}")
    return count, wrong


def outcomes(stored):
    """What each check of each area came to, and whether a formula says so."""
    for sheet in stored:
        if not sheet.title.startswith("Area "):
            continue
        for row in sheet.iter_rows(max_col=10, values_only=True):
            if row[1] in OUTCOMES and row[2] in ("deciding", "advice"):
                yield row[0], row[1], row[9] == "yes"


def main(folder, recalculated):
    cells, wrong = 0, []
    by_formula, by_value = collections.Counter(), collections.Counter()
    books = sorted(glob.glob(f"{folder}/*.xlsx"))
    for path in books:
        name = os.path.basename(path)
        stored = openpyxl.load_workbook(path, data_only=True)
        count, differ = differences(stored, openpyxl.load_workbook(f"{recalculated}/{name}", data_only=True), openpyxl.load_workbook(path))
        cells += count
        wrong += [f"{name} {d}" for d in differ]
        for check, outcome, follows in outcomes(stored):
            (by_formula if follows else by_value)[check, outcome] += 1
    print("\n".join(wrong[:40]))
    checks = sorted({c for c, _ in by_formula})
    print(f"{'check':20}" + "".join(f"{o:>12}" for o in OUTCOMES) + "   (as values)")
    for check in checks:
        print(f"{check:20}" + "".join(f"{by_formula[check, o]:12}" for o in OUTCOMES)
              + "   " + " ".join(str(by_value[check, o]) for o in OUTCOMES))
    unseen = [f"{c} {o}" for c in sorted(set(checks) | set(MUST)) for o in OUTCOMES
              if not by_formula[c, o] and (c in MUST and o != "not shown" or not by_value[c, o])]
    print(f"{len(books)} workbooks, {cells} formulas, {len(wrong)} differ, never seen: {', '.join(unseen) or 'none'}")
    return 1 if wrong or unseen or not cells else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
