#!/usr/bin/env python3
"""The table of published values: source, values checked, worst deviation, and why as much as that is allowed.

    table.py [--write] [BINARY]    BINARY is test_standards as built; without it the newest build is taken

Prints the table, with the share of its tolerance that each source uses; --write puts it into the README.md beside this instead.
"""
import re
import subprocess
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
README = ROOT / "tests/standards/README.md"
IN_README = re.compile(r"^\| source \|.*?(?=\n\n)", re.M | re.S)
BELOW_NOTICE = 0.005  # %


def newest():
    found = sorted(ROOT.glob("build/*/bin/test_standards"), key=lambda path: path.stat().st_mtime)
    if not found:
        sys.exit("test_standards is not built; tests/run.sh builds it")
    return found[-1]


def measured(binary):
    """(folder, values, worst deviation, share of the tolerance, why) of each source, as the binary finds them."""
    run = subprocess.run([binary, "--no-colors", "--test-case=the table of *"], capture_output=True, text=True, cwd=ROOT)
    if run.returncode != 0:
        sys.exit(run.stdout)
    return [[cell.strip() for cell in line.split("|")[1:-1]] for line in run.stdout.splitlines() if line.startswith("| ")]


def title(folder):
    with open(ROOT / "tests/standards" / folder / "cases.toml", "rb") as file:
        return tomllib.load(file)["source"]["document"]


def for_readme(rows):
    """Markdown; a reason only where there is a deviation to explain."""
    lines = ["| source | values checked | worst deviation | why it may be as much |", "|---|---|---|---|"]
    for folder, values, deviation, _, why in rows:
        seen = float(deviation.split()[0]) >= BELOW_NOTICE
        lines.append(f"| [{title(folder)}]({folder}) | {values} | {deviation if seen else 'none'} | {why if seen else ''} |")
    return "\n".join(lines)


def put_into(readme, rows):
    return IN_README.sub(lambda _: for_readme(rows), readme, count=1)


def main(arguments):
    write = "--write" in arguments
    names = [word for word in arguments if word != "--write"]
    rows = measured(names[0] if names else newest())
    if write:
        README.write_text(put_into(README.read_text(encoding="utf-8"), rows), encoding="utf-8")
        return
    for folder, values, deviation, tolerance, why in rows:
        print(f"{folder:<22} {values:>5} values  off by {deviation:>8}, {tolerance:>5} of what is allowed: {why}")
    print(f"\n{sum(int(row[1]) for row in rows)} published values from {len(rows)} sources")


if __name__ == "__main__":
    main(sys.argv[1:])
