"""Monte Carlo: what drawing every parameter and gathering statistics costs beside the bare solve of a block that stays in place."""
import ctypes
import sys

from measuring import entry, library, table, take_turns

SETS = {"AVX2": (1, 1.7), "AVX-512": (2, 1.4)}  # number, goal: at most so many times the bare kernel
SAMPLES = 65536


def open_library():
    lib = library("bench_monte_carlo")
    lib.monte_carlo_open.restype = ctypes.c_void_p
    for name in ("bare", "drawn", "mean", "deviation", "center"):
        getattr(lib, f"monte_carlo_{name}").restype = ctypes.c_double
    return lib


def measure(lib, handle, quick):
    samples = ctypes.c_size_t(SAMPLES if quick else 4 * SAMPLES)
    return take_turns({name: (lambda run=run: run(handle, samples) / samples.value) for name, run in
                       (("bare kernel", lib.monte_carlo_bare), ("drawn and gathered", lib.monte_carlo_drawn))},
                      15 if quick else 41)


def goals(quick):
    lib = open_library()
    for label, (number, goal) in SETS.items():
        opened = lib.monte_carlo_open(3, 4, number)
        if not opened:
            print(f"\n# {label} is not here")
            continue
        handle = ctypes.c_void_p(opened)
        times = measure(lib, handle, quick)
        table(f"3s4p, {label}: 56 parameters drawn, mean and deviation of the load's voltage", times, "bare kernel",
              "ns a sample", 1e9)
        mean, deviation, center = (getattr(lib, f"monte_carlo_{name}")(handle) for name in ("mean", "deviation", "center"))
        # The mean lies by the center, but for what the curvature of 1/R does and for a few deviations over root n.
        if not (0.0 < deviation < 0.1 * center and abs(mean - center) < 0.2 * deviation):
            sys.exit(f"the samples' mean is {mean} V beside {center} V, their deviation {deviation} V")
        yield entry(f"3s4p, {label}: drawn and gathered beside the bare kernel", times["drawn and gathered"],
                    times["bare kernel"], goal, at_most=True)
