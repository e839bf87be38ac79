"""Fills an empty workbook from a folder of CSV tables, as a person would.

Usage: fill.py BLANK.xlsx FOLDER OUT.xlsx. Entries go below the headers that
the workbook has, numbers as numbers and days and times as such, but where the
column is text. An entry that has no column, or that its list refuses, fails.
"""
import csv
import datetime
import pathlib
import re
import sys

import openpyxl

blank, folder, out = sys.argv[1:]
book = openpyxl.load_workbook(blank)
sheets = {s.title.lower().replace(" ", "-"): s for s in book}


def entry(text, cell):
    if cell.number_format == "@":
        return text
    if re.fullmatch(r"-?\d+(\.\d+)?", text):
        places = len(text.partition(".")[2])
        if places:
            cell.number_format = "0." + "0" * places
        return float(text) if places else int(text)
    for form in ("%Y-%m-%d %H:%M", "%Y-%m-%d"):
        try:
            return datetime.datetime.strptime(text, form)
        except ValueError:
            pass
    return text


def lists(sheet):
    """The fixed words of each column."""
    return {
        check.sqref.ranges[0].min_col: check.formula1.strip('"').split(",")
        for check in sheet.data_validations.dataValidation
        if check.type == "list" and check.formula1.startswith('"')
    }


for path in sorted(pathlib.Path(folder).glob("*.csv")):
    sheet = sheets[path.stem]
    columns = {c.value: c.column for c in sheet[1]}
    words = {} if path.stem == "job" else lists(sheet)
    rows = list(csv.reader(path.open(encoding="utf-8", newline="")))
    items = {sheet.cell(r, 1).value: r for r in range(2, sheet.max_row + 1)}
    for number, row in enumerate(rows[1:], start=2):
        if path.stem == "job":
            number = items[row[0]]
        for header, text in zip(rows[0], row):
            column = columns[header]
            if not text:
                continue
            if text not in words.get(column, [text]):
                sys.exit(f"{path.name}: {text!r} is not in the list of {header}")
            cell = sheet.cell(number, column)
            cell.value = entry(text, cell)
book.save(out)
