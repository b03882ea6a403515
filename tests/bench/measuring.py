"""What every group of compare.py measures with: the build, rounds in which contenders take turns, and entries for goals.

A group is a module with `goals(quick)`, which compares the answers, prints its own table and yields one entry a goal.
"""
import ctypes
import os
import statistics
import subprocess
import sys
import time
from pathlib import Path

for variable in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS"):
    os.environ[variable] = "1"  # one core for everybody; must be set before NumPy is loaded

ROOT = Path(__file__).resolve().parents[2]
BUILD = ROOT / "build/bench"


def build(*targets):
    """Configures and builds in build/bench, as a release."""
    for command in (["cmake", "-B", BUILD, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release", "-DBANKWRIGHT_BENCH=ON",
                     "-DBANKWRIGHT_BINDINGS=OFF", "-DPython_EXECUTABLE=/usr/bin/python3"],
                    ["cmake", "--build", BUILD, "--target", *targets]):
        done = subprocess.run([str(word) for word in command], cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                              text=True)
        if done.returncode:
            sys.exit(done.stdout)


def library(name):
    """A shared library of the benchmarks, by its target's name."""
    build(name)
    return ctypes.CDLL(str(BUILD / f"bin/lib{name}.so"))


def seconds_of(work, least_seconds):
    """Processor time of this thread for one call, which is repeated until it takes long enough to be measured."""
    repeats = 1
    while True:
        begin = time.thread_time()
        for _ in range(repeats):
            work()
        took = time.thread_time() - begin
        if took >= least_seconds:
            return took / repeats
        repeats *= 4


def take_turns(contenders, rounds):
    """By contender, what it returned in each round. `contenders`: by name, a function that returns its seconds."""
    times = {name: [] for name in contenders}
    for _ in range(rounds):
        for name, measure in contenders.items():
            times[name].append(measure())
    return times


def spread(times):
    """Half of what lies between the slowest and the fastest round, as a share of the middle one."""
    return (max(times) - min(times)) / statistics.median(times) / 2


def ratio(above, below):
    """Middle one of the ratios formed inside each round."""
    return statistics.median(a / b for a, b in zip(above, below))


def table(title, times, ours, unit="us", scale=1e6):
    """Prints one row a contender: its time, how far the rounds differ, and how many times as long as `ours` it takes."""
    print(f"\n{title}\n{'':<44}{unit:>12}{'spread':>9}{'x ours':>10}")
    for name, each in times.items():
        print(f"{name:<44}{statistics.median(each) * scale:>12.4g}{spread(each):>8.0%} {ratio(each, times[ours]):>9.3g}")


def entry(name, ours, theirs, goal, at_most=False):
    """How many times as long `theirs` take, at least `goal`; with `at_most`, how many times as long ours do, at most `goal`."""
    reached = ratio(ours, theirs) if at_most else ratio(theirs, ours)
    return {"name": name, "ours": statistics.median(ours), "theirs": statistics.median(theirs), "ratio": reached,
            "spread": spread([a / b for a, b in zip(theirs, ours)]), "goal": goal, "at_most": at_most,
            "met": reached <= goal if at_most else reached >= goal}


def value_entry(name, value, most):
    """A value without a contender, an error for one, that is to be `most` at the most."""
    return {"name": name, "ours": value, "theirs": None, "ratio": value, "spread": 0.0, "goal": most, "at_most": True,
            "met": value <= most}
