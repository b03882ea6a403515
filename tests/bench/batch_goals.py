"""Batch: many banks of one wiring, every parameter of every bank drawn anew, all voltages wanted."""
import ctypes
import statistics
import sys
import time

from measuring import entry, library, ratio, spread, take_turns

import numpy as np  # after measuring, which sets the number of its threads
from ngspice_contender import Ngspice
from numpy_contenders import Elimination, Network, dense_batched, dense_one_by_one, scipy_sparse

BANKS = {"1s1p": (1, 1), "3s1p": (3, 1), "3s4p": (3, 4), "4s4p": (4, 4), "1s16p": (1, 16)}
COMPILED = ["ours-resident", "ours", "klu-refactor", "eigen-sparse", "eigen-dense"]
GOAL_COUNT = 16384  # banks; enough for NumPy to be at its best
# theirs, goal (how many times faster we are to be), on the reference bank 3s4p, all in blocks that are filled already
GOALS = {"numpy dense batched": 100.0, "numpy elimination": 6.0, "klu-refactor": 20.0, "eigen-sparse": 20.0,
         "ngspice": 1000.0}
PEAK_GOALS = {"AVX2": 0.25, "AVX-512": 0.17}  # of the processor's peak, counting only what an LDL^T cannot do without


def open_library():
    lib = library("bench_contenders")
    lib.bench_open.restype = ctypes.c_void_p
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


def measure(case, count, rounds, least_seconds):
    contenders = {c: (lambda c=c: case.run(c, count, least_seconds)) for c in case.contenders()}
    contenders["peak"] = lambda: case.lib.bench_flops(case.bench) / case.lib.bench_peak(ctypes.c_double(least_seconds))
    return take_turns(contenders, rounds)


def show(case, count, times):
    print(f"\n{case.name}, {count} bank{'s' * (count > 1)}: {case.network.nodes - 1} unknown voltages, "
          f"{case.network.parameters} parameters\n{'':<24}{'ns a bank':>12}{'spread':>9}{'x ours':>10}{'x kernel':>10}")
    for contender, each in times.items():
        print(f"{contender:<24}{statistics.median(each) * 1e9:>12.1f}{spread(each):>8.0%} "
              f"{ratio(each, times['ours']):>9.2f} {ratio(each, times['ours-resident']):>9.2f}")


def entries(case, times):
    for theirs, goal in GOALS.items():
        if theirs not in times:
            continue
        for ours, way in (("ours-resident", "kernel"), ("ours", "rows in and out")):
            yield entry(f"{case.name}, {way}: {theirs}", times[ours], times[theirs], goal)
    instructions = case.lib.bench_instructions().decode()
    yield entry(f"{case.name}, kernel: share of peak, {instructions}", times["ours-resident"], times["peak"],
                PEAK_GOALS.get(instructions, 0.25))


def goals(quick):
    lib = open_library()
    rounds, least = (7, 0.01) if quick else (9, 0.05)
    for name in ["3s4p"] if quick else BANKS:
        for count in (1, GOAL_COUNT) if quick else (1, 1000, GOAL_COUNT, 1_000_000):
            case = Case(lib, name, max(count, 20))
            worst = case.worst_difference()
            for contender, difference in worst.items():
                if not difference < 1e-9:
                    sys.exit(f"{contender} differs on {name}: {difference:.1e} of the largest voltage, at most 1e-9")
            times = measure(case, count, rounds if count < 1_000_000 else 3, least)
            show(case, count, times)
            print(f"answers agree: {max(worst.values()):.1e}")
            if name == "3s4p" and count == GOAL_COUNT:
                yield from entries(case, times)
