#!/usr/bin/env python3
"""Ours against general-purpose software: same inputs, answers compared first, then timed side by side.

Every round runs all contenders one after another, and ratios are formed inside a round: a machine that slows down slows
both. Times are processor time of one thread unless a table says otherwise. `--json FILE` writes one entry a goal.
"""
import argparse
import json
import os
import platform
import subprocess
import time
from pathlib import Path

import measuring  # noqa: F401  first: it sets the number of NumPy's threads
import accuracy_goals
import batch_goals
import discharge_goals
import hypothesis_goals
import monte_carlo_goals
import numpy as np
import pack_goals
import start_goals

GROUPS = {"batch": batch_goals.goals, "monte-carlo": monte_carlo_goals.goals, "hypotheses": hypothesis_goals.goals,
          "accuracy": accuracy_goals.goals, "packs": pack_goals.goals, "discharge": discharge_goals.goals,
          "start": start_goals.goals}


def machine():
    """What a ratio may hang on, and no more: whose processor and which kernel it was is nobody's business."""
    flags = next((line.split() for line in open("/proc/cpuinfo") if line.startswith("flags")), [])
    lanes = next((name for flag, name in (("avx512f", "AVX-512"), ("avx2", "AVX2")) if flag in flags), "no AVX2")
    compiler = "c++ " + subprocess.run(["c++", "-dumpversion"], capture_output=True, text=True).stdout.strip()
    blas = sorted({Path(line.split()[-1]).name for line in open("/proc/self/maps") if "/lib" in line.split()[-1] and "blas.so" in line})
    return (f"{os.cpu_count()}-core {platform.machine()} server with {lanes}; {compiler}; "
            f"NumPy {np.__version__} on {', '.join(blas) or '?'}")


def line(found):
    bound = ("<= " if found.get("at_most") else ">= ") + f"{found['goal']:g}"
    spread = f"{found['spread']:.0%}" if "spread" in found else ""
    return (f"{found['group'] + ': ' + found['name']:<68}{found['ratio']:>10.4g}{spread:>7}{bound:>10}  "
            f"{'met' if found['met'] else 'NOT met'}")


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("groups", nargs="*", metavar="GROUP", help=f"some of {', '.join(GROUPS)}; all unless said otherwise")
    parser.add_argument("--quick", action="store_true", help="reference cases only, under two minutes in all")
    parser.add_argument("--json", metavar="FILE")
    options = parser.parse_args()
    if unknown := set(options.groups) - set(GROUPS):
        parser.error(f"no group {', '.join(sorted(unknown))}; there are {', '.join(GROUPS)}")
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {max(os.sched_getaffinity(0))})
    about = {"machine": machine(), "date": time.strftime("%Y-%m-%d"), "load": round(os.getloadavg()[0], 2),
             "quick": options.quick}
    print(f"{about['date']}; {about['machine']}; load {about['load']}")
    results = []
    for group in options.groups or GROUPS:
        begin = time.monotonic()
        results += [{"group": group, **found} for found in GROUPS[group](options.quick)]
        print(f"# {group}: {time.monotonic() - begin:.0f} s")
    print(f"\n{'':<68}{'reached':>10}{'spread':>7}{'goal':>10}")
    for found in results:
        print(line(found))
    if options.json:
        Path(options.json).write_text(json.dumps(about | {"goals": results}, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
