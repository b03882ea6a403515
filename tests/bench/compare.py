#!/usr/bin/env python3
"""Our batched solver against general-purpose software: same inputs, answers compared first, then timed side by side.

Every round runs all contenders one after another, and ratios are formed inside a round: a machine that slows down slows
both. Times are processor time of one thread. `--json FILE` writes one entry a goal.
"""
import argparse
import ctypes
import json
import os
import platform
import statistics
import subprocess
import sys
import time
from pathlib import Path

for variable in ("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS"):
    os.environ[variable] = "1"  # one core for everybody; must be set before NumPy is loaded

import numpy as np  # noqa: E402
from ngspice_contender import Ngspice  # noqa: E402
from numpy_contenders import Elimination, Network, dense_batched, dense_one_by_one, scipy_sparse  # noqa: E402

ROOT = Path(__file__).resolve().parents[2]
BUILD = ROOT / "build/bench"
BANKS = {"1s1p": (1, 1), "3s1p": (3, 1), "3s4p": (3, 4), "4s4p": (4, 4), "1s16p": (1, 16)}
COMPILED = ["ours-resident", "ours", "klu-refactor", "eigen-sparse", "eigen-dense"]
GOAL_COUNT = 16384  # banks; enough for NumPy to be at its best
# theirs, goal (how many times faster we are to be), on the reference bank 3s4p, all in blocks that are filled already
GOALS = {"numpy dense batched": 100.0, "numpy elimination": 6.0, "klu-refactor": 20.0, "eigen-sparse": 20.0,
         "ngspice": 1000.0}
PEAK_GOALS = {"AVX2": 0.25, "AVX-512": 0.17}  # of the processor's peak, counting only what an LDL^T cannot do without


def build():
    for command in (["cmake", "-B", BUILD, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release", "-DBANKWRIGHT_BENCH=ON",
                     "-DBANKWRIGHT_BINDINGS=OFF", "-DPython_EXECUTABLE=/usr/bin/python3"],
                    ["cmake", "--build", BUILD, "--target", "bench_contenders"]):
        done = subprocess.run([str(word) for word in command], cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                              text=True)
        if done.returncode:
            sys.exit(done.stdout)
    lib = ctypes.CDLL(str(BUILD / "bin/libbench_contenders.so"))
    lib.bench_open.restype = lib.bench_wiring.restype = ctypes.c_void_p
    lib.bench_wiring.restype = ctypes.c_int
    lib.bench_run.restype = lib.bench_flops.restype = lib.bench_peak.restype = ctypes.c_double
    lib.bench_instructions.restype = ctypes.c_char_p
    return lib


class Case:
    """One wiring, its banks and all who can solve them."""

    def __init__(self, lib, name, count):
        self.lib, self.name = lib, name
        self.bench = ctypes.c_void_p(lib.bench_open(*BANKS[name]))
        branches = lib.bench_branches(self.bench)
        ends, emf = np.zeros((2, branches), np.int32), np.zeros(branches, np.int32)
        reference = lib.bench_wiring(self.bench, *(ctypes.c_void_p(a.ctypes.data) for a in (ends[0], ends[1], emf)))
        self.network = Network(list(zip(*ends.tolist())), emf, reference, lib.bench_load(self.bench),
                               lib.bench_parameters(self.bench), lib.bench_nodes(self.bench))
        self.rows = np.empty((count, self.network.parameters))
        lib.bench_draw(self.bench, 1, ctypes.c_size_t(count), ctypes.c_void_p(self.rows.ctypes.data))
        self.volts = np.empty((count, self.network.nodes))
        self.elimination = Elimination(self.network)
        self.compiled = [c for c in COMPILED if lib.bench_has(self.bench, c.encode())]
        self.python = {"numpy dense batched": lambda rows: dense_batched(self.network, rows),
                       "numpy elimination": self.elimination.solve,
                       "numpy dense one by one": lambda rows: dense_one_by_one(self.network, rows),
                       "scipy sparse": lambda rows: scipy_sparse(self.network, rows)}
        try:
            self.python["ngspice"] = Ngspice(self.network).solve
        except OSError as error:
            print(f"# ngspice is left out: {error}")

    def contenders(self):
        return self.compiled + list(self.python)

    def share(self, contender, count):
        """Slow ones solve a part of the banks; the rest would tell nothing new."""
        most = {"ngspice": 20, "numpy dense one by one": 500, "scipy sparse": 200, "numpy dense batched": 4096,
                "numpy elimination": 65536, "eigen-dense": 10000, "eigen-sparse": 20000, "klu-refactor": 20000}
        return min(count, most.get(contender, count))

    def run(self, contender, count, least_seconds):
        """Seconds a bank; repeated until it takes long enough to be measured."""
        count = self.share(contender, count)
        repeats = 1
        while True:
            if contender in self.compiled:
                took = self.lib.bench_run(self.bench, contender.encode(), ctypes.c_void_p(self.rows.ctypes.data),
                                          ctypes.c_size_t(count), repeats, ctypes.c_void_p(self.volts.ctypes.data))
            else:
                begin = time.thread_time()
                for _ in range(repeats):
                    self.python[contender](self.rows[:count])
                took = time.thread_time() - begin
            if took >= least_seconds:
                return took / repeats / count
            repeats *= 4

    def worst_difference(self):
        """Of each contender from the dense solve, relative to the largest voltage."""
        count = 20
        expected = dense_one_by_one(self.network, self.rows[:count])
        worst = {}
        for contender in self.contenders():
            if contender == "ours-resident":
                continue  # keeps one block
            if contender in self.compiled:
                self.run(contender, count, 0.0)
                got = self.volts[:count]
            else:
                got = np.array(self.python[contender](self.rows[:count]))
            worst[contender] = float(np.abs(got - expected).max() / np.abs(expected).max())
        return worst


def machine():
    model = next((line.split(":")[1].strip() for line in open("/proc/cpuinfo") if line.startswith("model name")), "?")
    compiler = subprocess.run(["c++", "--version"], capture_output=True, text=True).stdout.splitlines()[0]
    blas = sorted({Path(line.split()[-1]).name for line in open("/proc/self/maps") if "blas" in line.split()[-1]})
    return (f"{model}, {os.cpu_count()} cores, {platform.system()} {platform.release()}; {compiler}; "
            f"NumPy {np.__version__} on {', '.join(blas) or '?'}")


def measure(case, count, rounds, least_seconds):
    times = {c: [] for c in case.contenders()}
    for _ in range(rounds):
        for contender in case.contenders():
            times[contender].append(case.run(contender, count, least_seconds))
        times.setdefault("peak", []).append(case.lib.bench_flops(case.bench) /
                                            case.lib.bench_peak(ctypes.c_double(least_seconds)))
    return times


def show(case, count, times):
    ours, resident = times["ours"], times["ours-resident"]
    print(f"\n{case.name}, {count} bank{'s' * (count > 1)}: {case.network.nodes - 1} unknown voltages, "
          f"{case.network.parameters} parameters\n{'':<24}{'ns a bank':>12}{'spread':>9}{'x ours':>10}{'x kernel':>10}")
    for contender, each in times.items():
        middle = statistics.median(each)
        spread = (max(each) - min(each)) / middle / 2
        ratios = [statistics.median(a / b for a, b in zip(each, base)) for base in (ours, resident)]
        print(f"{contender:<24}{middle * 1e9:>12.1f}{spread:>8.0%} {ratios[0]:>9.2f} {ratios[1]:>9.2f}")


def goals(case, times):
    for theirs, goal in GOALS.items():
        if theirs not in times:
            continue
        for ours in ("ours-resident", "ours"):
            ratio = statistics.median(a / b for a, b in zip(times[theirs], times[ours]))
            yield {"name": f"{case.name}, {'kernel' if ours == 'ours-resident' else 'rows in and out'}: {theirs}",
                   "ours": statistics.median(times[ours]), "theirs": statistics.median(times[theirs]),
                   "ratio": ratio, "goal": goal, "met": ratio >= goal}
    instructions = case.lib.bench_instructions().decode()
    share = statistics.median(a / b for a, b in zip(times["peak"], times["ours-resident"]))
    goal = PEAK_GOALS.get(instructions, 0.25)
    yield {"name": f"{case.name}, kernel: share of peak, {instructions}", "ours": statistics.median(times["ours-resident"]),
           "theirs": statistics.median(times["peak"]), "ratio": share, "goal": goal, "met": share >= goal}


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true", help="the reference bank only, under two minutes")
    parser.add_argument("--json", metavar="FILE")
    options = parser.parse_args()
    lib = build()
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {max(os.sched_getaffinity(0))})
    print(machine())
    results = []
    rounds, least = (7, 0.02) if options.quick else (9, 0.05)
    for name in ["3s4p"] if options.quick else BANKS:
        for count in (1, GOAL_COUNT) if options.quick else (1, 1000, GOAL_COUNT, 1_000_000):
            case = Case(lib, name, count if count > 20 else 20)
            worst = case.worst_difference()
            for contender, difference in worst.items():
                if not difference < 1e-9:
                    sys.exit(f"{contender} differs on {name}: {difference:.1e} of the largest voltage, at most 1e-9")
            times = measure(case, count, rounds if count < 1_000_000 else 3, least)
            show(case, count, times)
            print(f"answers agree: {max(worst.values()):.1e}")
            if name == "3s4p" and count == GOAL_COUNT:
                results += goals(case, times)
    print(f"\n{'':<52}{'reached':>9}{'goal':>8}")
    for entry in results:
        print(f"{entry['name']:<52}{entry['ratio']:>9.4g}{entry['goal']:>8g}  {'met' if entry['met'] else 'NOT met'}")
    if options.json:
        Path(options.json).write_text(json.dumps(results, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
