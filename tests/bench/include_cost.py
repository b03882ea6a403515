#!/usr/bin/env python3
"""What does it cost to include us? Processor seconds that a compiler takes to read each door and the umbrella (-fsyntax-only), as a
multiple of what it takes for a program that includes <vector>, <string> and <map>. `include_cost.py [--header-only] [DOOR...]`
prints the table, dearest first, and ends with 1 if a ceiling is broken."""
import argparse
import os
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
sys.path.insert(0, str(ROOT / "tests/structure"))
from project import doors, road  # noqa: E402

BASE = "#include <map>\n#include <string>\n#include <vector>\n"
UMBRELLA = "bankwright/bankwright.hpp"
DOOR_CEILING, UMBRELLA_CEILING = 4, 8
HEADER_ONLY_CEILINGS = {"bankwright/solver/solve.hpp": 12, "bankwright/rules/inspect.hpp": 30}
OPTIONS = ["-std=c++20", "-fsyntax-only", "-w", f"-I{ROOT / 'lib/include'}", "-isystem", "/usr/include/eigen3", "-DFMT_HEADER_ONLY=1"]


def all_doors():
    return [f"bankwright/{folder}/{name}.hpp" for folder in road() for name in sorted(doors(folder))]


def ceiling(header, header_only=False):
    """The most that this header may cost, or None."""
    if header_only:
        return HEADER_ONLY_CEILINGS.get(header)
    return UMBRELLA_CEILING if header == UMBRELLA else DOOR_CEILING


def seconds(text, header_only=False, repeats=3):
    """[s] of the compiler's processor time, the least of a few."""
    compiled = [] if header_only else ["-DBANKWRIGHT_COMPILED"]
    with tempfile.NamedTemporaryFile("w", suffix=".cpp") as source:
        source.write(text)
        source.flush()

        def once():
            before = resource.getrusage(resource.RUSAGE_CHILDREN)
            subprocess.run([os.environ.get("CXX", "g++"), *OPTIONS, *compiled, source.name], check=True)
            after = resource.getrusage(resource.RUSAGE_CHILDREN)
            return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime

        return min(once() for _ in range(repeats))


def ratios(headers, header_only=False, repeats=3):
    """header -> how many times as long as the small program, which is measured beside each, for the machine's pace changes."""
    return {header: seconds(f'#include "{header}"\n', header_only, repeats) / seconds(BASE, repeats=repeats) for header in headers}


def main():
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--header-only", action="store_true", help="without the compiled library")
    asked.add_argument("--repeats", type=int, default=3)
    asked.add_argument("doors", nargs="*", help="such as bankwright/rules/inspect.hpp; all of them, and the umbrella, without any")
    options = asked.parse_args()
    wanted = options.doors or (list(HEADER_ONLY_CEILINGS) if options.header_only else [UMBRELLA, *all_doors()])
    found = ratios(wanted, options.header_only, options.repeats)
    broken = 0
    for header, ratio in sorted(found.items(), key=lambda item: -item[1]):
        most = ceiling(header, options.header_only)
        over = most is not None and ratio > most
        broken += over
        print(f"{header:<52} {ratio:6.2f}{f'  of {most}' if most else ''}{'  over' if over else ''}")
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())
