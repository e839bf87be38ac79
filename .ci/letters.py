"""Fail where a page of a PDF that a spreadsheet program printed has letters under
8 points.

letters.py PDF
"""

import collections
import re
import sys
import zlib

LEAST = 7.95  # the program sets letters on whole dots: 8 points come out at 7.99

sizes = collections.Counter()
with open(sys.argv[1], "rb") as f:
    for stream in re.findall(rb"stream\r?\n(.*?)endstream", f.read(), re.S):
        try:
            text = zlib.decompress(stream)
        except zlib.error:  # a font or a picture of another kind
            continue
        if b"BT" in text:
            sizes.update(float(size) for size in re.findall(rb"/F\d+ ([\d.]+) Tf", text))

if sum(sizes.values()) < 100:
    sys.exit("hardly a letter was found")
small = {size: n for size, n in sizes.items() if size < LEAST}
if small:
    sys.exit(f"letters under 8 points: {small}")
print(f"the smallest of {sum(sizes.values())} stretches of letters has {min(sizes)} points")
