#!/usr/bin/env python3
"""A sweep in Python against the same sweep in C++: same banks, answers compared first, then timed side by side.

Every round runs all three one after another, and ratios are formed inside a round. Times are processor time of one thread.
`PYTHONPATH=build/release/python tests/bench/python_sweep.py [BANKS] [ROUNDS]`; it builds what it needs in build/bench.
"""
import ctypes
import os
import statistics
import subprocess
import sys
import time
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[2]
BUILD = ROOT / "build/bench"
sys.path.insert(0, str(ROOT / "build/release/python"))
import bankwright  # noqa: E402

GOAL = 0.8  # of the throughput of either
BANKS = {"bow-36v": ("A", "troll"), "launch-36v-diagonal": ("A1", "drive")}  # the swept battery, the load that is measured


def build():
    for command in (["cmake", "-B", BUILD, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release", "-DBANKWRIGHT_BENCH=ON",
                     "-DBANKWRIGHT_BINDINGS=OFF", "-DPython_EXECUTABLE=/usr/bin/python3"],
                    ["cmake", "--build", BUILD, "--target", "bench_sweep"]):
        subprocess.run([str(word) for word in command], cwd=ROOT, check=True, stdout=subprocess.DEVNULL)
    lib = ctypes.CDLL(str(BUILD / "bin/libbench_sweep.so"))
    lib.sweep_open.restype = ctypes.c_void_p
    return lib


def pointer(array):
    return ctypes.c_void_p(array.ctypes.data)


def compare(lib, name, count, rounds):
    """Prints banks a second by contender; the least of Python's ratios to the others, each formed inside a round."""
    text = (ROOT / f"data/examples/{name}.toml").read_text(encoding="utf-8")
    battery, load = BANKS[name]
    bank = bankwright.Bank.from_text(text)
    ohms = np.random.default_rng(1).uniform(3e-3, 9e-3, count)
    handle = ctypes.c_void_p(lib.sweep_open(text.encode(), battery.encode(), load.encode(), pointer(ohms),
                                            ctypes.c_size_t(count)))
    answers = {"C++, solve_rows": np.empty(count), "C++, a loop over Block": np.empty(count)}

    def python():
        return bank.sweep({f"{battery}.resistance": ohms}, [f"{load}.voltage"])[f"{load}.voltage"]

    contenders = {
        "Python": python,
        "C++, solve_rows": lambda: lib.sweep_rows(handle, ctypes.c_size_t(count), pointer(answers["C++, solve_rows"])),
        "C++, a loop over Block": lambda: lib.sweep_blocks(handle, pointer(ohms), ctypes.c_size_t(count),
                                                           pointer(answers["C++, a loop over Block"])),
    }
    seconds = {who: [] for who in contenders}
    for _ in range(rounds):
        for who, work in contenders.items():
            begin = time.process_time()
            answer = work()
            seconds[who].append(time.process_time() - begin)
            if who == "Python":
                ours = answer
    for who, theirs in answers.items():
        np.testing.assert_allclose(ours, theirs, rtol=1e-12, err_msg=who)
    lib.sweep_close(handle)
    print(f"{name}: {count} banks, {rounds} rounds, load {os.getloadavg()[0]:.1f}")
    ratios = []
    for who, times in seconds.items():
        ratio = statistics.median(theirs / mine for theirs, mine in zip(times, seconds["Python"]))
        ratios.append(ratio)
        print(f"  {who:<24}{count / statistics.median(times) / 1e6:6.2f} million banks a second; Python has {ratio:4.2f} of it")
    return min(ratios)


if __name__ == "__main__":
    asked = [int(word) for word in sys.argv[1:3]]
    library = build()
    ratios = [compare(library, name, *(asked + [1_000_000, 9][len(asked):])) for name in BANKS]
    sys.exit(0 if min(ratios) >= GOAL else 1)
