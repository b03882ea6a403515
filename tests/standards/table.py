#!/usr/bin/env python3
"""Prints the table of published values: source, values checked, worst deviation from the value, share of the tolerance used.

    table.py [BINARY]    BINARY is test_standards as built; without it the newest build is taken
"""
import pathlib
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]


def newest():
    found = sorted(ROOT.glob("build/*/bin/test_standards"), key=lambda path: path.stat().st_mtime)
    if not found:
        sys.exit("test_standards is not built; tests/run.sh builds it")
    return found[-1]


def main(arguments):
    binary = pathlib.Path(arguments[0]) if arguments else newest()
    run = subprocess.run([binary, "--no-colors", "--test-case=the table of *"], capture_output=True, text=True)
    rows = [line for line in run.stdout.splitlines() if line.startswith("|")]
    print(f"| {'source':<22} | {'cases':>5} | {'deviation':>10} | {'tolerance':>10} |")
    print(f"| {'-' * 22} | {'-' * 5} | {'-' * 10} | {'-' * 10} |")
    print("\n".join(rows))
    print(f"\n{sum(int(row.split('|')[2]) for row in rows)} published values from {len(rows)} sources")
    if run.returncode != 0:
        print("\nsome are not met:\n" + run.stdout, file=sys.stderr)
    return run.returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
