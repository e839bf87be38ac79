"""Compare what a workbook's formulas store with what a spreadsheet program
recalculates: recalculate.py STORED.xlsx RECALCULATED.xlsx

Prints every cell that differs, and fails where any does, where an error value
stands, or where there is nothing to compare.
"""

import sys

import openpyxl


def cells(path, values):
    book = openpyxl.load_workbook(path, data_only=values)
    return {
        (sheet.title, cell.coordinate): cell.value
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.value is not None
    }


def same(a, b):
    if isinstance(a, (int, float)) and isinstance(b, (int, float)):
        return abs(a - b) <= 1e-9 * max(1, abs(a))
    return (a if a is not None else "") == (b if b is not None else "")


def main(stored, recalculated):
    formulas = [k for k, v in cells(stored, False).items() if isinstance(v, str) and v.startswith("=")]
    was, now = cells(stored, True), cells(recalculated, True)
    wrong = [k for k in formulas if not same(was.get(k), now.get(k))]
    errors = [k for k, v in now.items() if isinstance(v, str) and v.startswith("#")]
    for key in (wrong + errors)[:40]:
        print(key, "stored", repr(was.get(key)), "recalculated", repr(now.get(key)))
    print(f"{len(formulas)} formulas, {len(wrong)} differ, {len(errors)} errors")
    return 1 if wrong or errors or not formulas else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
