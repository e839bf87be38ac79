"""Lay the reports of a vulnerability database out as govulncheck reads them.

python3 vulndb.py FOLDER-OF-REPORTS NEW-FOLDER
"""

import json
import pathlib
import sys


def fixed(affected):
    """The version that mends it, the last one told; empty where none does."""
    events = [e for r in affected.get("ranges", []) for e in r.get("events", [])]
    return ([""] + [e["fixed"] for e in events if "fixed" in e])[-1]


def main(reports, out):
    modules, latest = {}, ""
    (out / "ID").mkdir(parents=True)
    (out / "index").mkdir()
    for path in sorted(reports.glob("*.json")):
        report = json.loads(path.read_text())
        latest = max(latest, report["modified"])
        for affected in report["affected"]:
            told = {"id": report["id"], "modified": report["modified"]}
            if fixed(affected):
                told["fixed"] = fixed(affected)
            modules.setdefault(affected["package"]["name"], {})[report["id"]] = told
        (out / "ID" / path.name).write_text(json.dumps(report))
    if not modules:
        sys.exit(f"{reports}: no report is there")
    index = [{"path": m, "vulns": list(v.values())} for m, v in sorted(modules.items())]
    (out / "index" / "modules.json").write_text(json.dumps(index))
    (out / "index" / "db.json").write_text(json.dumps({"modified": latest}))
    print(f"{len(list(out.glob('ID/*')))} reports, the latest of {latest}")


main(pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]))
