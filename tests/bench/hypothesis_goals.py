"""Hypotheses: one wiring with one link on another post, for every link and post; all voltages of each wanted."""
import ctypes
import sys

from measuring import entry, library, take_turns, table

import numpy as np


def doubles(address, rows, width):
    return np.ctypeslib.as_array(ctypes.cast(address, ctypes.POINTER(ctypes.c_double)), (rows, width)).copy()


class Contenders:
    """Ours and Eigen, both with the same hypotheses in memory."""

    def __init__(self):
        self.ours, self.eigen = library("bench_hypotheses"), library("bench_hypotheses_eigen")
        for lib, names in ((self.ours, "open rows run error"), (self.eigen, "open rows run")):
            prefix = "hypotheses" if lib is self.ours else "eigen"
            for name in names.split():
                restype = ctypes.c_double if name in ("run", "error") else ctypes.c_void_p
                getattr(lib, f"{prefix}_{name}").restype = restype
        self.our_handle = ctypes.c_void_p(self.ours.hypotheses_open())
        self.eigen_handle = ctypes.c_void_p(self.eigen.eigen_open())
        self.count = self.ours.hypotheses_count(self.our_handle)
        self.runs = {name: (self.ours.hypotheses_run, self.our_handle, name) for name in
                     ("update", "one by one")}
        self.runs |= {f"Eigen {name} LDLT": (self.eigen.eigen_run, self.eigen_handle, name) for name in
                      ("dense", "sparse")}

    def run(self, name, least_seconds):
        """Seconds a hypothesis."""
        run, handle, what = self.runs[name]
        repeats = 1
        while (took := run(handle, what.encode(), repeats)) < least_seconds:
            repeats *= 4
        return took / repeats / self.count

    def volts(self, name):
        self.run(name, 0.0)
        nodes = self.ours.hypotheses_nodes(self.our_handle)
        if name.startswith("Eigen"):
            return doubles(self.eigen.eigen_rows(self.eigen_handle), self.count, nodes)
        width = self.ours.hypotheses_width(self.our_handle)
        return doubles(self.ours.hypotheses_rows(self.our_handle), self.count, width)[:, :nodes]


def goals(quick):
    contenders = Contenders()
    expected = contenders.volts("Eigen dense LDLT")
    worst = {name: np.abs(contenders.volts(name) - expected).max() / np.abs(expected).max() for name in contenders.runs}
    for name, difference in worst.items():
        if not difference < 1e-9:
            sys.exit(f"{name} differs: {difference:.1e} of the largest voltage, at most 1e-9")
    contenders.run("update", 0.0)
    updated = contenders.ours.hypotheses_updated(contenders.our_handle)
    base = min(contenders.ours.hypotheses_run(contenders.our_handle, b"base", 1) for _ in range(7))
    times = take_turns({name: (lambda name=name: contenders.run(name, 0.01 if quick else 0.05))
                        for name in contenders.runs}, 7 if quick else 15)
    table(f"3s4p, {contenders.count} hypotheses, each a link on another post: 28 unknown voltages", times, "update",
          "ns each", 1e9)
    bound = contenders.ours.hypotheses_error(contenders.our_handle)
    print(f"answers agree: {max(worst.values()):.1e}; {updated} of {contenders.count} by an update, bound of their errors "
          f"{bound:.1e} V; the base itself takes {base * 1e6:.0f} us")
    yield entry("3s4p, one link moved, update: Eigen dense LDLT afresh", times["update"], times["Eigen dense LDLT"], 200.0)
