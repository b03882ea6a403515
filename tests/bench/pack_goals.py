"""Packs: rows of very many cells with bus-bars from cell to cell, all node voltages from all resistances and voltages."""
import ctypes
import math
import multiprocessing
import os
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

from measuring import entry, library, ratio, spread, take_turns, value_entry

import numpy as np

CONTENDERS = ["ours", "ours iterated", "eigen", "cholmod", "klu"]
QUICK = [(32, 32), (100, 100), (316, 316)]
FULL = [(10, 10), *QUICK, (100, 1000), (1000, 1000), (100, 10000)]
SLOW_FROM = 500_000  # nodes; from here on KLU takes the better part of a minute and is left out
NGSPICE = (64, 64)  # cells; the largest that ends within a minute


class Packs:
    def __init__(self):
        self.lib = library("bench_packs")
        self.lib.pack_open.restype = ctypes.c_void_p
        self.lib.pack_run.restype = ctypes.c_double

    def open(self, series, parallel):
        return ctypes.c_void_p(self.lib.pack_open(series, parallel, 1))

    def run(self, pack, who, volts):
        return self.lib.pack_run(pack, who.encode(), ctypes.c_void_p(volts.ctypes.data))


def compare(packs, pack, title, rounds):
    """Times by contender, and the worst error of each, relative to the largest voltage."""
    volts = np.empty(packs.lib.pack_nodes(pack))
    expected = np.empty_like(volts)
    packs.run(pack, "reference", expected)
    errors = {}

    def seconds(who):
        took = packs.run(pack, who, volts)
        errors[who] = float(np.abs(volts - expected).max() / np.abs(expected).max())
        if not errors[who] < 1e-7:  # a factorization that is not refined has no more digits at a million cells
            sys.exit(f"{who} differs on {title}: {errors[who]:.1e} of the largest voltage, at most 1e-7")
        return took
    known = [who for who in CONTENDERS if packs.lib.pack_has(who.encode()) and (who != "klu" or len(volts) < SLOW_FROM)]
    times = take_turns({who: lambda who=who: seconds(who) for who in known}, rounds)
    print(f"\n{title}: {len(volts)} nodes\n{'':<20}{'ms':>10}{'spread':>9}{'x ours':>10}{'worst error':>14}")
    for who, each in times.items():
        print(f"{who:<20}{statistics.median(each) * 1e3:>10.4g}{spread(each):>8.0%} {ratio(each, times['ours']):>9.3g}"
              f"{errors[who]:>14.1e}")
    return times, errors


def resident(series, parallel, answer):
    """Puts onto `answer` by how many bytes the process grew at the most while ours solved."""
    def peak():
        return int(re.search(r"VmHWM:\s*(\d+) kB", Path("/proc/self/status").read_text()).group(1)) * 1024
    packs = Packs()
    pack = packs.open(series, parallel)
    volts = np.empty(packs.lib.pack_nodes(pack))
    volts.fill(0.0)
    Path("/proc/self/clear_refs").write_text("5")  # the peak starts anew from here
    before = peak()
    packs.run(pack, "ours", volts)
    answer.put(peak() - before)


def bytes_of_ours(series, parallel):
    spawn = multiprocessing.get_context("spawn")
    answer = spawn.Queue()
    process = spawn.Process(target=resident, args=(series, parallel, answer))
    process.start()
    grown = answer.get(timeout=600)
    process.join()
    return grown


def ngspice_seconds(packs, series, parallel):
    """Processor time of one process that solves the pack; its last node's voltage is compared."""
    pack = packs.open(series, parallel)
    count = packs.lib.pack_lines(pack, None, None, None, None)
    ends, values = np.empty((2, count), np.int32), np.empty((2, count))
    packs.lib.pack_lines(pack, *(ctypes.c_void_p(row.ctypes.data) for row in (*ends, *values)))
    volts = np.empty(packs.lib.pack_nodes(pack))
    ours = statistics.median(packs.run(pack, "ours", volts) for _ in range(5))
    lines = ["a pack"]
    for i, (start, end, siemens, amps) in enumerate(zip(*ends.tolist(), *values.tolist())):
        if siemens > 0.0:
            lines.append(f"R{i} {start} {end} {1.0 / siemens!r}")
        if amps != 0.0:
            lines.append(f"I{i} {start} {end} {amps!r}")
    last = len(volts) - 1
    lines += [".options reltol=1e-9", ".control", "op", "set numdgt=15", f"print v({last})", ".endc", ".end", ""]
    with tempfile.TemporaryDirectory() as folder:
        netlist = Path(folder, "pack.cir")
        netlist.write_text("\n".join(lines), encoding="utf-8")
        process = subprocess.Popen(["ngspice", "-b", netlist], stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
        printed = process.stdout.read()
        _, _, used = os.wait4(process.pid, 0)
    found = float(re.search(rf"v\({last}\) = (\S+)", printed).group(1))
    if abs(found - volts[last]) > 1e-6 * abs(volts[last]):
        sys.exit(f"ngspice differs: {found} V for {volts[last]} V")
    packs.lib.pack_close(pack)
    return ours, used.ru_utime + used.ru_stime


def goals(quick):
    packs = Packs()
    totals, cells = {}, {}
    for series, parallel in QUICK if quick else FULL:
        pack = packs.open(series, parallel)
        name = f"{series}s{parallel}p"
        cells[name] = series * parallel
        rounds = 7 if cells[name] <= 20_000 else 3
        totals[name], errors = compare(packs, pack, name, rounds)
        if (series, parallel) == (316, 316):
            took, more = ctypes.c_double(), ctypes.c_double()
            pairs = []
            for _ in range(3):
                packs.lib.pack_refinement(pack, ctypes.byref(took), ctypes.byref(more))
                pairs.append((took.value, more.value))
        packs.lib.pack_close(pack)
    square, small = ("316s316p" if quick else "1000s1000p"), "100s100p"
    times = totals[square]
    for theirs, goal in (("cholmod", 1.0), ("eigen", 1.0 if quick else 2.5)):
        if theirs in times:
            yield entry(f"{square}: {theirs}", times["ours"], times[theirs], goal)
    growth = math.log(statistics.median(times["ours iterated"]) / statistics.median(totals[small]["ours iterated"]))
    yield value_entry(f"{small} to {square}: exponent of the time", growth / math.log(cells[square] / cells[small]), 1.15)
    yield value_entry(f"{square}: KB a cell", bytes_of_ours(*map(int, square[:-1].split("s"))) / 1000 / cells[square], 0.8)
    yield value_entry(f"{square}: worst error", errors["ours"], 1e-12)
    yield value_entry("316s316p factored: one refinement, share of the time", statistics.median(b / a for a, b in pairs), 0.05)
    if not quick and shutil.which("ngspice"):
        ours, theirs = ngspice_seconds(packs, *NGSPICE)
        yield entry(f"{NGSPICE[0]}s{NGSPICE[1]}p: ngspice -b", [ours], [theirs], 1000.0)
