#!/usr/bin/env python3
"""Which lines of lib/ did no test run, and why? From gcovr's JSON; the reasons stand in uncovered.md, by file and by what the line says.

    tests/uncovered.py LINES.json
"""
import json
import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
INCLUDE = "lib/include/bankwright/"


def reasons():
    """{(file, a piece of the line): reason}; the file `*` is any."""
    text = (ROOT / "tests/uncovered.md").read_text(encoding="utf-8")
    return {(file, piece): reason for file, piece, reason in re.findall(r"^\* (\S+): `(.+?)`: (.*)$", text, re.M)}


def main():
    known, said, silent, used = reasons(), {}, [], set()
    for file in json.loads(Path(sys.argv[1]).read_text(encoding="utf-8"))["files"]:
        name = file["file"].removeprefix(INCLUDE)
        lines = (ROOT / file["file"]).read_text(encoding="utf-8").splitlines()
        for line in file["lines"]:
            if line["count"] or line.get("gcovr/noncode"):
                continue
            code = lines[line["line_number"] - 1].strip()
            which = next(((of, piece) for of, piece in known if of in ("*", name) and piece in code), None)
            if which:
                used.add(which)
                why = known[which]
                said[why] = said.get(why, 0) + 1
            else:
                silent.append(f"{name}:{line['line_number']}: {code}")
    for why, count in sorted(said.items(), key=lambda one: -one[1]):
        print(f"{count:>4} lines: {why}")
    print("\n".join(silent))
    for file, piece in known:
        if (file, piece) not in used:
            print(f"no longer needed, or run on this machine: {file}: {piece}")
    print(f"{sum(said.values())} lines that nothing runs have a reason, {len(silent)} have none")


if __name__ == "__main__":
    main()
