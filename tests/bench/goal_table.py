#!/usr/bin/env python3
"""Writes tests/bench/README.md's table of what compare.py reached: tests/bench/goal_table.py FILE, as `compare.py --json FILE` wrote it."""
import json
import re
import sys
from pathlib import Path

README = Path(__file__).resolve().with_name("README.md")
BETWEEN = re.compile(r"(?<=<!-- made by tests/bench/goal_table.py -->\n).*?(?=<!-- end -->)", re.S)
WORDS = {"batch": "many banks of one wiring", "monte-carlo": "tolerances by drawing", "hypotheses": "variants of one wiring",
         "accuracy": "accuracy, against quadruple precision", "packs": "packs of cells",
         "discharge": "discharge", "start": "one process for one file"}


def table(run):
    lines = [f"{run['date']}, {'the quick run' if run['quick'] else 'the whole run'}, load {run['load']}; {run['machine']}.", "",
             "| | | reached | goal | |", "|---|---|---|---|---|"]
    before = None
    for found in run["goals"]:
        group = "" if found["group"] == before else WORDS.get(found["group"], found["group"])
        before = found["group"]
        bound = "at most" if found.get("at_most") else "at least"
        lines.append(f"| {group} | {found['name'].replace('|', '')} | {found['ratio']:.3g} | {bound} {found['goal']:g} "
                     f"| {'' if found['met'] else '**not met**'} |")
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    run = json.loads(Path(sys.argv[1]).read_text(encoding="utf-8"))
    text, count = BETWEEN.subn(lambda _: table(run), README.read_text(encoding="utf-8"))
    if count != 1:
        sys.exit("README.md has no place for the table")
    README.write_text(text, encoding="utf-8")
