"""Edit decision workbooks as people do, in one office process, and see that no
edit leaves a GO that firstboard does not give of the edited record.

edits.py FIRSTBOARD FOLDER SEED COUNT RECORD...

Of each record a decision workbook is written into FOLDER and its charts are
taken out. COUNT random edits of the cells of its tables follow, one at a time:
numbers, blanks, texts, errors, headers, rows and columns added, moved, sorted
and removed, sheets renamed, copied and removed. Where a sheet still says GO
the edited workbook is judged by firstboard, which must say GO too.
"""

import json
import os
import random
import subprocess
import sys
import time

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.sheet.CellDeleteMode import UP
from com.sun.star.table import CellAddress, CellRangeAddress

OURS = ("Decision", "Limits", "Cautions", "Sign-off", "Checks", "Plotted", "Figures")


def prop(name, value):
    p = PropertyValue()
    p.Name, p.Value = name, value
    return p


def connect(folder):
    pipe = f"edits{os.getpid()}"
    office = subprocess.Popen(
        ["soffice", "--headless", "--norestore", f"-env:UserInstallation=file://{folder}/office",
         f"--accept=pipe,name={pipe};urp;"],
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
    for _ in range(120):
        try:
            context = resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
            return office, context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
        except Exception:  # the office is not up yet
            time.sleep(0.5)
    sys.exit("the office does not answer")


def load(desktop, path):
    return desktop.loadComponentFromURL(f"file://{path}", "_blank", 0, (prop("Hidden", True),))


def store(doc, path):
    doc.storeToURL(f"file://{path}", (prop("FilterName", "Calc MS Excel 2007 XML"),))


def verdicts(doc):
    """What the sheets of the areas say, by area, and the sheet Decision."""
    said = {}
    for sheet in doc.Sheets:
        title = sheet.getCellByPosition(0, 0).String
        if sheet.Name.startswith("Area ") and title.startswith("Area "):
            said[sheet.Name] = sheet.getCellByPosition(0, 1).String
    page = doc.Sheets.getByName("Decision")
    cells = page.getCellRangeByPosition(0, 0, 11, 60).getDataArray()
    return said, [str(c) for row in cells for c in row]


def says_go(doc):
    said, page = verdicts(doc)
    return [a for a, v in said.items() if v == "GO"] + [c for c in page if c == "GO"]


def judged_go(firstboard, path):
    done = subprocess.run([firstboard, "check", path, "--json", "-"], capture_output=True, text=True)
    if done.returncode not in (0, 1):
        return [], done.stderr
    areas = json.loads(done.stdout)["areas"]
    return [a["id"] for a in areas if a["verdict"] == "GO"], ""


class Editor:
    """One random edit of a record's table."""

    def __init__(self, doc, seed):
        self.doc, self.rnd = doc, random.Random(seed)
        tables = [s for s in doc.Sheets if s.IsVisible and s.Name not in OURS and not s.getCellByPosition(0, 0).String.startswith("Area ")]
        self.sheet = self.rnd.choice(tables)
        cursor = self.sheet.createCursor()
        cursor.gotoEndOfUsedArea(False)
        at = cursor.RangeAddress
        self.columns, self.rows = at.EndColumn + 1, at.EndRow + 1

    def cell(self, header=False):
        """A cell that holds something, in the header or below it."""
        for _ in range(300):
            x = self.rnd.randrange(self.columns)
            y = 0 if header or self.rows < 2 else self.rnd.randrange(1, self.rows)
            c = self.sheet.getCellByPosition(x, y)
            if c.Type.value != "EMPTY":
                return c
        return self.sheet.getCellByPosition(0, 0)

    def number(self):
        for _ in range(300):
            c = self.cell()
            if c.Type.value == "VALUE":
                return c
        return self.cell()

    def raised(self):
        c = self.number()
        c.Value += self.rnd.choice([0.1, 1, -1, 5, 17, -10, 40, 400])

    def blank(self):
        self.cell().String = ""

    def text(self):
        self.cell().String = self.rnd.choice(["noon", "dry", "2026-03-04", "n/a", "ok", " "])

    def as_text(self):
        c = self.number()
        c.String = c.String

    def fraction(self):
        c = self.number()
        c.Value /= 100

    def error(self):
        self.cell().Formula = self.rnd.choice(["=NA()", "=1/0", "=A1+\"x\""])

    def gives(self):
        self.cell().Formula = self.rnd.choice(["=1=1", "=\"\"", "=1/3"])

    def header(self):
        c = self.cell(header=True)
        c.String = self.rnd.choice([c.String + " (mm)", c.String.upper() + "x", "Depth (mm)", "Size (sq m)", "", c.String.replace("(F)", "(C)")])

    def swapped(self):
        a, b = self.cell(header=True), self.cell(header=True)
        a.String, b.String = b.String, a.String

    def row_added(self):
        self.sheet.Rows.insertByIndex(self.rnd.choice([0, 1, self.rnd.randrange(self.rows)]), 1)

    def row_removed(self):
        self.sheet.Rows.removeByIndex(self.rnd.randrange(self.rows), 1)

    def row_repeated(self):
        y = self.rnd.randrange(max(self.rows - 1, 1)) + min(1, self.rows - 1)
        source = self.sheet.getCellRangeByPosition(0, y, self.columns - 1, y).getDataArray()
        self.sheet.getCellRangeByPosition(0, self.rows, self.columns - 1, self.rows).setDataArray(source)

    def column_added(self):
        self.sheet.Columns.insertByIndex(self.rnd.randrange(self.columns), 1)

    def column_removed(self):
        self.sheet.Columns.removeByIndex(self.rnd.randrange(self.columns), 1)

    def moved(self):
        x, y = self.rnd.randrange(self.columns), self.rnd.randrange(self.rows)
        at = self.sheet.RangeAddress.Sheet
        self.sheet.moveRange(CellAddress(at, x, y + self.rnd.randrange(1, 3)), CellRangeAddress(at, x, y, x, min(y + 2, self.rows - 1)))

    def shifted(self):
        x, y = self.rnd.randrange(self.columns), self.rnd.randrange(self.rows)
        self.sheet.removeRange(CellRangeAddress(self.sheet.RangeAddress.Sheet, x, y, x, y), UP)

    def sorted(self):
        if self.rows < 3:
            return self.row_removed()
        cells = self.sheet.getCellRangeByPosition(0, 1, self.columns - 1, self.rows - 1)
        cells.setDataArray(tuple(reversed(cells.getDataArray())))

    def all_raised(self):
        x = self.rnd.randrange(self.columns)
        for y in range(1, self.rows):
            c = self.sheet.getCellByPosition(x, y)
            if c.Type.value == "VALUE":
                c.Value += self.rnd.choice([17, -10])

    def beyond(self):
        self.sheet.getCellByPosition(self.columns + self.rnd.randrange(5), self.rnd.randrange(self.rows + 200)).String = "x"

    def renamed(self):
        self.sheet.Name += " 2"

    def copied(self):
        self.doc.Sheets.copyByName(self.sheet.Name, self.sheet.Name + " (2)", 1)

    def removed(self):
        self.doc.Sheets.removeByName(self.sheet.Name)

    def make(self):
        kinds = [self.raised] * 4 + [self.blank] * 4 + [self.text] * 3 + [self.sorted, self.header] * 2 + [
            self.as_text, self.fraction, self.error, self.error, self.gives, self.swapped, self.row_added, self.row_removed,
            self.row_repeated, self.column_added, self.column_removed, self.moved, self.shifted, self.all_raised,
            self.beyond, self.renamed, self.copied, self.removed]
        kind = self.rnd.choice(kinds)
        where = self.sheet.Name
        kind()
        return f"{kind.__name__} on {where}"


def plain(desktop, firstboard, record, folder):
    """A decision workbook of a record, without its charts."""
    out = f"{folder}/{os.path.basename(record)}.xlsx"
    subprocess.run([firstboard, "check", record, "-o", out, "--force"], stdout=subprocess.DEVNULL, check=False)
    doc = load(desktop, out)
    for sheet in doc.Sheets:
        for name in sheet.Charts.ElementNames:
            sheet.Charts.removeByName(name)
    store(doc, out)
    doc.close(True)
    return out


def main(firstboard, folder, seed, count, *records):
    office, desktop = connect(folder)
    false, kept, edits = [], 0, 0
    try:
        books = [plain(desktop, firstboard, r, folder) for r in records]
        for book in books:
            doc = load(desktop, book)
            if bool(says_go(doc)) != bool(judged_go(firstboard, book)[0]):
                false.append(f"{book}: unedited it says {verdicts(doc)[0]}")
            doc.close(True)
        for n in range(int(count)):
            book = books[n % len(books)]
            doc = load(desktop, book)
            what = Editor(doc, f"{seed}-{n}").make()
            doc.calculate()
            edits += 1
            if says_go(doc):
                edited = f"{folder}/edited.xlsx"
                store(doc, edited)
                go, fault = judged_go(firstboard, edited)
                kept += 1
                if not go:
                    false.append(f"edit {n} of {os.path.basename(book)}: {what}: the workbook says GO, firstboard does not {fault}")
            doc.close(True)
    finally:
        try:
            desktop.terminate()
        except Exception:  # it is gone already
            pass
        office.wait(60)
    print("\n".join(false))
    print(f"{edits} edits, {kept} left a GO that stands, {len(false)} a false one")
    return 1 if false else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
