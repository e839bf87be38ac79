"""Change a decision workbook and compare the verdicts that a spreadsheet program
recalculates with those firstboard gives of the same record:
changes.py FIRSTBOARD DECISIONS WORK-FOLDER PROFILE [DRAWS]

DECISIONS is a folder with a workbook for each area, in which the cells below are
changed and the rows below are added, one at a time. With DRAWS it is one
workbook, of which so many cells are drawn, each blanked or moved.

A recalculated GO where firstboard says NO-GO always fails. A recalculated NO-GO
where it says GO fails for a listed cell; for added rows and drawn cells, which no
formula may follow, it is counted: the workbook asks to be judged again.
"""

import datetime
import json
import pathlib
import random
import subprocess
import sys

import openpyxl

TABLES = [
    "Areas", "Products", "Climates", "Instruments", "Instrument checks", "Slab RH",
    "Slab pH", "Other tests", "Air", "Surface", "Wood", "Events", "Job",
]


def day(text):
    return datetime.datetime.fromisoformat(text)


# of what is changed outside its own rows, the area to look at
AREA = {"GLUE-W": "A2", "SHEET": "A1", "PLANK": "A4", "STRIP": "A1", "C1": "A1", "RP1": "A1"}

# sheet, the row's first cells, column, new value
LISTED = [
    ("Slab RH", ("A1", "H1"), "RH (%)", 80.1),
    ("Slab RH", ("A3", "H2"), "RH (%)", 75),
    ("Slab RH", ("A3", "H2"), "RH (%)", 75.1),
    ("Slab RH", ("A1", "H2"), "RH (%)", None),
    ("Slab RH", ("A3", "H1"), "Read at", None),
    ("Slab RH", ("A3", "H1"), "Sealed at", day("2026-03-02 08:00")),
    ("Slab RH", ("A1", "H1"), "Depth (in)", 3),
    ("Slab RH", ("A3", "H3"), "Temp (F)", 96),
    ("Slab pH", ("A3",), "pH", 10.1),
    ("Slab pH", ("A3",), "pH", None),
    ("Other tests", ("A3",), "Result", None),
    ("Products", ("GLUE-W",), "Slab RH max (%)", 90),
    ("Products", ("SHEET",), "Slab RH max (%)", 70),
    ("Products", ("PLANK",), "Difference max (points)", 3),
    ("Products", ("STRIP",), "Flooring MC max (%)", 8),
    ("Products", ("STRIP",), "Difference max (points)", 1.2),
    ("Climates", ("C1", "winter"), "Temp (F)", 79),
    ("Climates", ("C1", "winter"), "Temp (F)", 81),
    ("Areas", ("A1",), "Lay on", day("2026-03-20")),
    ("Areas", ("A3",), "Lay on", day("2026-03-06")),
    ("Areas", ("A3",), "Lay on", day("2026-03-07")),
    ("Areas", ("A3",), "Size (ft2)", 2100),
    ("Areas", ("A1",), "Size (ft2)", 1000),
    ("Areas", ("A5",), "Heat run from", day("2026-02-20 08:00")),
    ("Instruments", ("RP1",), "Calibrated on", None),
    ("Instruments", ("RP1",), "Due on", day("2026-02-01")),
    ("Wood", ("A1", "flooring"), "Reading (%)", None),
    ("Wood", ("A1", "subfloor"), "Reading (%)", 12.5),
    ("Wood", ("A1", "flooring"), "Reading (%)", 31),
    ("Instrument checks", ("RP1",), "Read", 60),
    ("Surface", ("A5",), "Temp (F)", 90),
]

# rows that are added below a table: the area, its sheet, the entries
ADDED = [
    ("A1", "Air", {"Read at": day("2026-03-04 18:00"), "Temp (F)": 95, "RH (%)": 70, "Instrument": "AL1"}),
    ("A3", "Slab RH", {"Area": "A3", "Hole": "H9", "Read at": day("2026-03-02 09:00"), "RH (%)": 99, "Instrument": "RP1"}),
    ("A1", "Wood", {"Area": "A1", "Of": "subfloor", "Piece": "S99", "Read at": day("2026-03-03 09:00"), "Method": "pin", "Reading (%)": 20, "Instrument": "PM1"}),
    ("A3", "Surface", {"Area": "A3", "Spot": "S9", "Read at": day("2026-03-04 16:00"), "Temp (F)": 40, "Instrument": "IR1"}),
    ("A3", "Events", {"Area": "A3", "At": day("2026-03-04 12:00"), "What": "wetted"}),
]


def columns(sheet):
    return {str(c.value): c.column for c in sheet[1] if c.value is not None}


def find(book, change):
    sheet, key, column, value = change
    s = book[sheet]
    for row in s.iter_rows(min_row=2):
        if all(str(row[i].value) == k for i, k in enumerate(key)):
            return s.cell(row[0].row, columns(s)[column]), value
    raise SystemExit(f"{change}: there is no such row")


def add(book, sheet, entries):
    s = book[sheet]
    row = s.max_row + 1
    for header, value in entries.items():
        s.cell(row, columns(s)[header]).value = value


def drawn(book, rng):
    while True:
        s = book[rng.choice([t for t in TABLES if t in book.sheetnames])]
        cell = s.cell(rng.randint(2, s.max_row), rng.randint(1, s.max_column))
        if isinstance(cell.value, datetime.datetime):
            moved = cell.value + datetime.timedelta(days=rng.choice([-400, -40, -8, -1, 0, 1, 3, 40]), hours=rng.choice([0, 0, 1, -5]))
            return cell, rng.choice([None, moved, moved])
        if isinstance(cell.value, (int, float)):
            moved = round(cell.value * rng.choice([0.5, 0.9, 0.99, 1.01, 1.1, 2]), 2)
            return cell, rng.choice([None, moved, moved])


def verdicts(path):
    book = openpyxl.load_workbook(path, data_only=True)
    return {s.title[5:]: s["A2"].value for s in book if s.title.startswith("Area ")}


def main(firstboard, decision, work, profile, draws=None):
    work = pathlib.Path(work)
    made, rng = [], random.Random(1)
    for i in range(int(draws) if draws else len(LISTED)):
        book = openpyxl.load_workbook(decision if draws else f"{decision}/{AREA.get(LISTED[i][1][0], LISTED[i][1][0])}.xlsx")
        cell, value = drawn(book, rng) if draws else find(book, LISTED[i])
        what = f"{cell.parent.title} {cell.coordinate}: {cell.value} -> {value}"
        cell.value = value
        path = work / f"change{i}.xlsx"
        book.save(path)
        made.append((path, what))
    for i, (area, sheet, entries) in enumerate([] if draws else ADDED):
        book = openpyxl.load_workbook(f"{decision}/{area}.xlsx")
        add(book, sheet, entries)
        path = work / f"added{i}.xlsx"
        book.save(path)
        made.append((path, f"{sheet}: a row is added for {area}"))
    out = work / "recalculated"
    for start in range(0, len(made), 60):
        paths = [str(p) for p, _ in made[start:start + 60]]
        subprocess.run(["soffice", "--headless", f"-env:UserInstallation=file://{profile}", "--convert-to", "xlsx", "--outdir", str(out)] + paths, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    wrong = asked = unusable = 0
    moved = set()
    for path, what in made:
        run = subprocess.run([firstboard, "check", str(path), "--json", "-"], capture_output=True, text=True)
        if run.returncode == 2:
            unusable += 1
            if not draws:
                print(what, "is no record:", run.stderr[:200])
                wrong += 1
            continue
        judged = {}
        for a in json.loads(run.stdout)["areas"]:
            judged[a["id"]] = a["verdict"] if a["verdict"] == "GO" else a["verdict"] + ", " + a["why"]
        shown = verdicts(out / path.name)
        for area, said in judged.items():
            got = shown.get(area)
            if got == said:
                continue
            if (draws or path.name.startswith("added")) and str(got).startswith("NO-GO"):
                asked += 1
                print("asks:", what, area, "shows", repr(got), "judged", repr(said))
                continue
            wrong += 1
            print("WRONG:", what, area, "shows", repr(got), "judged", repr(said))
        moved.add(tuple(sorted(judged.items())))
    print(f"{len(made)} changes ({unusable} no record), {len(moved)} different sets of verdicts, {wrong} wrong, {asked} ask to be judged again")
    return 1 if wrong or len(moved) < 2 else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
