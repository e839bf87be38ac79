"""Fill an empty record's workbook with the rows of a folder of CSV files, as a
person would: numbers as numbers, days as days, names as texts.
fill.py BLANK.xlsx FOLDER OUT.xlsx
"""

import csv
import datetime
import pathlib
import sys

import openpyxl


def entry(text, header):
    if text == "":
        return None
    if header.endswith((" on", " at", " from")):
        try:
            return datetime.datetime.fromisoformat(text)
        except ValueError:
            return text
    if header.endswith(")") or header in ("pH", "Expected", "Read", "Uncertainty", "Result", "At least", "At most", "Drying faces", "pH min", "pH max", "Across coefficient", "Reading"):
        try:
            return float(text)
        except ValueError:
            return text
    return text


def main(blank, folder, out):
    book = openpyxl.load_workbook(blank)
    rows = 0
    for sheet in book:
        path = pathlib.Path(folder) / (sheet.title.lower().replace(" ", "-") + ".csv")
        if not path.exists():
            continue
        at = {c.value: c.column for c in sheet[1] if c.value}
        with path.open(newline="") as f:
            for n, row in enumerate(csv.DictReader(f), start=2):
                rows += 1
                for header, text in row.items():
                    cell = sheet.cell(n, at[header])
                    cell.value = entry(text, header)
                    if isinstance(cell.value, float) and text.endswith("0") and "." in text:
                        cell.number_format = "0." + "0" * len(text.split(".")[1])  # 85.0 stays 85.0
    book.save(out)
    print(f"{rows} rows filled in")


if __name__ == "__main__":
    main(*sys.argv[1:])
