"""Discharge: a bank of 3S4P run down by 3 kW for two hours, step by step and whole, against other ways to do it."""
import ctypes
import re
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from measuring import ROOT, entry, library, spread, table, take_turns

import numpy as np
from scipy.integrate import solve_ivp

STEPS, SECONDS = 720, 10.0
OURS, ONCE, EACH, SPICE = "ours", "eigen, factored once", "eigen, factored each step", "ngspice .tran"
STEP_GOALS = {SPICE: 300.0, EACH: 50.0, ONCE: 9.0}
WHOLE_GOALS = {"RK45": 150.0, "LSODA": 100.0}
BATTERIES, COULOMBS, WATTS = 12, 360e3, 3000.0  # as in discharge_contenders.cpp
VOLTS = (11.6, 12.0, 12.3, 12.6, 12.9)


def pointer(array):
    return ctypes.c_void_p(array.ctypes.data)


def netlist(lib):
    """Each battery's charge is the voltage of a capacitor of a farad a coulomb."""
    count = lib.discharge_branches()
    ends, ohms = np.empty((2, count), np.int32), np.empty(count)
    plus = lib.discharge_wiring(pointer(ends[0]), pointer(ends[1]), pointer(ohms))
    node = lambda n: "0" if n == ends.max() else f"n{n}"
    curve = ",".join(f"{i / 4},{volts}" for i, volts in enumerate(VOLTS))
    lines = ["a bank run down"]
    for b, (start, end) in enumerate(ends.T):
        if b >= BATTERIES:
            lines.append(f"R{b} {node(start)} {node(end)} {ohms[b]!r}")
            continue
        lines += [f"R{b} {node(start)} m{b} {ohms[b]!r}", f"Vi{b} m{b} k{b} 0", f"Be{b} {node(end)} k{b} V=pwl(v(s{b}),{curve})",
                  f"C{b} s{b} 0 {COULOMBS!r} ic={1 - 0.004 * b!r}", f"F{b} s{b} 0 Vi{b} 1", f".ic v(s{b})={1 - 0.004 * b!r}"]
    lines += [f"Bl n{plus} 0 I={WATTS}/max(v(n{plus}),18)", ".control", f"tran {SECONDS} {STEPS * SECONDS} 0 {SECONDS}",
              "rusage tranpoints trantime", "set numdgt=12"]
    lines += [f"let end{b} = v(s{b})[length(v(s{b}))-1]\nprint end{b}" for b in range(BATTERIES)]
    return "\n".join([*lines, ".endc", ".end", ""])


class Spice:
    def __init__(self, lib, folder):
        self.file = Path(folder, "discharge.cir")
        self.file.write_text(netlist(lib), encoding="utf-8")

    def run(self):
        """Seconds a point of its own transient analysis, without the start of the process; charges at the end."""
        text = subprocess.run(["ngspice", "-b", self.file], capture_output=True, text=True).stdout
        points = int(re.search(r"timepoints = (\d+)", text).group(1))
        seconds = float(re.search(r"ransient.*time = ([\d.e+-]+)", text).group(1))
        charges = [float(re.search(rf"end{b} = (\S+)", text).group(1)) for b in range(BATTERIES)]
        return seconds / points, np.array(charges)


def steps(lib, quick):
    charges, expected = np.empty(BATTERIES), np.empty(BATTERIES)

    def run(name, into, repeats=1):
        return min(lib.discharge_run(name.encode(), STEPS, ctypes.c_double(SECONDS), pointer(into)) for _ in range(repeats)) / STEPS
    run(EACH, expected)
    contenders = {name: lambda name=name: run(name, charges, 5) for name in (OURS, ONCE, EACH)}
    for name in contenders:
        run(name, charges)
        if not np.abs(charges - expected).max() < 1e-9:
            sys.exit(f"{name} differs: charges by {np.abs(charges - expected).max():.1e}, at most 1e-9")
    with tempfile.TemporaryDirectory() as folder:
        if shutil.which("ngspice"):
            spice = Spice(lib, folder)
            _, found = spice.run()
            if not np.abs(found - expected).max() < 1e-3:  # Euler in steps of 10 s is some 1e-5 off
                sys.exit(f"ngspice differs: charges by {np.abs(found - expected).max():.1e}, at most 1e-3")
            contenders[SPICE] = lambda: spice.run()[0]
        times = take_turns(contenders, 7 if quick else 15)
    table("3s4p, 3 kW: a step", times, OURS)
    for theirs, goal in STEP_GOALS.items():
        if theirs in times:
            yield entry(f"3s4p, a step: {theirs}", times[OURS], times[theirs], goal)


def star():
    """The bank of tests/reference/test_discharge.py, four strings of three agm batteries, and its rates over arrays."""
    sys.path.insert(0, str(ROOT / "tests/reference"))
    from test_discharge import AMBIENT, Star
    from test_voltage_curve import reference
    draw = np.random.default_rng(1)
    bank = Star.__new__(Star)
    bank.series, bank.strings, bank.chemistry, bank.weak = 3, 4, "agm", {}
    bank.power, bank.load, bank.curve = True, WATTS, reference("agm", AMBIENT)
    for name, low, high in (("capacity", 80, 120), ("health", 0.9, 1.0), ("charge", 0.97, 1.0), ("ohms", 2e-3, 6e-3)):
        setattr(bank, name, draw.uniform(low, high, 12).tolist())
    bank.leads = draw.uniform(1e-3, 4e-3, 4).tolist()
    bank.reserve = [60 * share * ampere_hours / 25 for share, ampere_hours in zip(draw.uniform(0.85, 1.0, 12), bank.capacity)]
    ohms = np.reshape(bank.ohms, (4, 3)).sum(1) + np.array(bank.leads)
    conductance, capacity = 1 / ohms, np.array(bank.capacity)
    there = capacity * np.array(bank.health)
    exponent = np.log(20 * 60 / np.array(bank.reserve)) / np.log(25 / (capacity / 0.98 / 20))

    recovery, deep = 1 / 3600, 0.1

    def rates(_, state):
        charge, lag = state[:12], state[12:]
        at_hand = charge - lag
        emf = 6 * bank.curve(np.clip(at_hand, 0, 1))
        if at_hand.min() < 0:
            return np.array(bank.rates(0, state))  # the slow way, which knows the end and charging
        emf = emf.reshape(4, 3).sum(1)
        open_volts = (emf * conductance).sum() / conductance.sum()
        volts = open_volts / 2 + np.sqrt(open_volts**2 / 4 - bank.load / conductance.sum())
        amperes = np.repeat((emf - volts) * conductance, 3)
        if amperes.min() <= 0:
            return np.array(bank.rates(0, state))
        at = np.maximum(amperes, there / 20)
        time = 72000 * (there / 20 / at) ** exponent
        growth = (1 - at * time / (there * 3600) + deep) * recovery / -np.expm1(-recovery * time) * amperes / at
        return np.concatenate([-amperes / (there * 3600), growth - recovery * lag])
    return bank, rates


def whole(lib, quick):
    """Both sides run from what they made of the bank before: we from network, map and curves, they from arrays and splines."""
    star()  # imports
    begin = time.thread_time()
    bank, rates = star()
    their_making = time.thread_time() - begin
    text, span = bank.toml().encode(), STEPS * SECONDS
    start = np.concatenate([bank.charge, np.zeros(BATTERIES)])
    exact = solve_ivp(rates, (0, span), start, method="DOP853", rtol=1e-12, atol=1e-14, max_step=20).y[:BATTERIES, -1]
    charges, made = np.empty(BATTERIES), np.empty(1)

    def ours(tolerance):
        seconds = lib.discharge_whole(text, ctypes.c_double(span), ctypes.c_double(tolerance), pointer(charges), pointer(made))
        return seconds, float(np.abs(charges - exact).max())

    def theirs(method, rtol):
        begin = time.thread_time()
        found = solve_ivp(rates, (0, span), start, method=method, rtol=rtol, atol=rtol * 1e-2)
        return time.thread_time() - begin, float(np.abs(found.y[:BATTERIES, -1] - exact).max())
    tolerances = [10.0 ** (-k / 2) for k in range(6, 24)]
    errors = {tolerance: ours(tolerance)[1] for tolerance in tolerances}
    print(f"\n3s4p, 3 kW: two hours\n{'':<22}{'ms':>10}{'spread':>9}{'worst charge':>14}{'ours, ms':>10}{'worst charge':>14}{'x ours':>10}{'x, with making':>16}")
    for method, goal in WHOLE_GOALS.items():
        for rtol in (1e-4, 1e-6) if quick else (1e-3, 1e-4, 1e-5, 1e-6, 1e-7):
            _, error = theirs(method, rtol)
            mine = next((t for t in tolerances if errors[t] <= error), tolerances[-1])
            times = take_turns({OURS: lambda: min(ours(mine)[0] for _ in range(3)), method: lambda: min(theirs(method, rtol)[0] for _ in range(3))},
                               5 if quick else 9)
            reached = entry(f"3s4p, two hours at {error:.0e}, made ready: {method}", times[OURS], times[method], goal)
            with_making = (reached["theirs"] + their_making) / (reached["ours"] + made[0])
            reached["name"] += f" (making included: {with_making:.0f})"
            print(f"{f'{method}, rtol {rtol:.0e}':<22}{reached['theirs'] * 1e3:>10.4g}{spread(times[method]):>8.0%}{error:>15.1e}"
                  f"{reached['ours'] * 1e3:>10.4g}{errors[mine]:>14.1e}{reached['ratio']:>10.4g}{with_making:>16.4g}")
            if rtol == 1e-6:
                yield reached
    print(f"making, ms: ours {made[0] * 1e3:.4g} (network by names, map, curves), theirs {their_making * 1e3:.4g} (a spline, arrays)")


def goals(quick):
    lib = library("bench_discharge")
    lib.discharge_run.restype = lib.discharge_whole.restype = ctypes.c_double
    yield from steps(lib, quick)
    yield from whole(lib, quick)
