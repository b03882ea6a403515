"""`bankwright discharge` against SciPy's solve_ivp, on a model of the bank written here a second time.

The bank is a star: strings of batteries, each through a lead of its own to two busbars, one load between them. So the currents
follow from one node equation. Charge goes by what flows; what is at hand lags behind it, by the kinetic battery model fitted to
Peukert's law in its rated form; voltage is test_voltage_curve's interpolation, and below nothing Shepherd's hyperbola.
"""
import json
import math
import random
import subprocess

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from test_voltage_curve import reference

AMBIENT = 25.0  # degC, at which capacity is the rated one and an explicit resistance is what it says

LEAD_RATIO = [0.0, 0.25, 0.5, 0.75, 1.0], [2.5, 1.6, 1.25, 1.1, 1.0]  # data/tables/internal_resistance.toml, lead_charge
DEEP, BEND, RECOVERY = 0.1, 1.25, 1 / 3600  # devices/battery_recovery.hpp, battery_voltage.hpp: 1, 1, 1/s
COULOMBIC = {"flooded": 0.85, "agm": 0.95, "gel": 0.95}  # data/tables/chemistries.toml, losses


class Star:
    def __init__(self, seed):
        draw = random.Random(seed)
        self.chemistry = draw.choice(["flooded", "agm", "gel"])
        self.series, self.strings = draw.choice([1, 2, 3]), draw.choice([1, 2, 3])
        count = self.series * self.strings
        self.capacity = [draw.uniform(60, 140) for _ in range(count)]  # [Ah]
        self.health = [draw.uniform(0.7, 1.0) for _ in range(count)]
        self.charge = [draw.uniform(0.8, 1.0) for _ in range(count)]
        self.ohms = [draw.uniform(2e-3, 6e-3) for _ in range(count)]
        self.leads = [draw.uniform(1e-3, 4e-3) for _ in range(self.strings)]
        self.reserve = [60 * draw.uniform(0.85, 1.0) * capacity / 25 for capacity in self.capacity]  # [min]
        self.power = draw.random() < 0.5
        self.load = draw.uniform(60, 300) * count if self.power else draw.uniform(5, 30) * self.strings  # [W] or [A]
        self.curve = reference(self.chemistry, AMBIENT)
        self.weak = {}  # battery -> what one of its cells holds, over what the others do

    def toml(self):
        lines = ["bankwright = 1", "[batteries]"]
        for b in range(len(self.capacity)):
            lines.append(f'B{b} = {{ chemistry = "{self.chemistry}", voltage = "12 V", capacity = "{self.capacity[b]!r} Ah", '
                         f'health = "{100 * self.health[b]!r} %", charge = "{100 * self.charge[b]!r} %", '
                         f'reserve = "{self.reserve[b]!r} min", resistance = "{self.ohms[b]!r} ohm", low_cutoff = "1 V"'
                         + (f', weak_cells = 1, weak_capacity = "{100 * self.weak[b]!r} %"' if b in self.weak else "") + " }")
        lines += ["[busbars]", "plus = {}", "minus = {}", "[cables]"]
        for s in range(self.strings):
            first, last = s * self.series, (s + 1) * self.series - 1
            lines.append(f'n{s} = {{ from = "minus", to = "B{first}-", resistance = "0 ohm" }}')
            lines.append(f'p{s} = {{ from = "B{last}+", to = "plus", resistance = "{self.leads[s]!r} ohm" }}')
            lines += [f'j{b} = {{ from = "B{b}+", to = "B{b + 1}-", resistance = "0 ohm" }}' for b in range(first, last)]
        lines += ['lp = { from = "plus", to = "L+", resistance = "0 ohm" }', 'ln = { from = "L-", to = "minus", resistance = "0 ohm" }']
        quantity = f'power = "{self.load!r} W"' if self.power else f'current = "{self.load!r} A"'
        return "\n".join(lines + ["[loads]", f"L = {{ {quantity} }}", ""])

    def cell(self, charge):
        """At rest, and while it discharges by what is at hand: volts."""
        if charge >= 0:
            return float(self.curve(min(charge, 1.0)))
        depth = min(-charge / DEEP, 1.0)
        return float(self.curve(0.0)) - (float(self.curve(0.0)) - 1.75) * (BEND - 1) * depth / (BEND - depth)

    def emf(self, b, charge):
        if b not in self.weak:
            return 6 * self.cell(charge)
        return 5 * self.cell(charge) + self.weak_cell(b, max(charge, 0.0))

    def weak_cell(self, b, charge):
        """At rest: what the others have given it has given too, out of less; its voltage goes with its last hundredth."""
        own = max(1 - (1 - min(charge, 1.0)) / self.weak[b], 0.0)
        return float(self.curve(own)) * min(1.0, own / 0.01)

    def weak_cell_turns(self, b, state):
        """Across the weak cell of b, volts: its own, less the drop over its part of the six cells' resistance."""
        charge, lag = state.reshape(2, -1)
        ratio = lambda at: float(np.interp(at, *LEAD_RATIO))
        at_hand = min(max(charge[b] - lag[b], 0.0), 1.0)
        own, sound = ratio(max(1 - (1 - at_hand) / self.weak[b], 0.0)), ratio(at_hand)
        amperes = self.string_currents(charge - lag)[b // self.series]
        return self.weak_cell(b, at_hand) - amperes * self.ohms[b] * own / (own + 5 * sound)

    def string_currents(self, charge):  # of what is at hand
        conductance, source = 0.0, 0.0
        strings = []
        for s in range(self.strings):
            members = range(s * self.series, (s + 1) * self.series)
            emf = sum(self.emf(b, charge[b]) for b in members)
            ohm = sum(self.ohms[b] for b in members) + self.leads[s]
            strings.append((emf, ohm))
            conductance, source = conductance + 1 / ohm, source + emf / ohm
        open_volts = source / conductance
        if self.power:
            volts = open_volts / 2 + math.sqrt(open_volts**2 / 4 - self.load / conductance)
        else:
            volts = open_volts - self.load / conductance
        return [(emf - volts) / ohm for emf, ohm in strings]

    def growth(self, b, amperes):
        """Of the lag, 1/s: what is at hand from full, 1 - I t / C - lag, is down to -DEEP at Peukert's time."""
        there, rated = self.capacity[b] * self.health[b] * 3600, self.capacity[b] * self.health[b] / 20  # [C], [A]
        exponent = math.log(20 * 60 / self.reserve[b]) / math.log(25 / (self.capacity[b] / 0.98 / 20))  # stated at 80 degF (IEEE 485)
        at = max(amperes, rated)
        time = 20 * 3600 * (rated / at) ** exponent
        return (1 - at * time / there + DEEP) * RECOVERY / (1 - math.exp(-RECOVERY * time)) * amperes / at

    def rates(self, _, state):
        charge, lag = state.reshape(2, -1)
        flows, falls = [], []
        for s, amperes in enumerate(self.string_currents(charge - lag)):
            for b in range(s * self.series, (s + 1) * self.series):
                there = self.capacity[b] * self.health[b] * 3600  # [C]
                flows.append(-amperes / there * (COULOMBIC[self.chemistry] if amperes <= 0 else 1))
                falls.append((self.growth(b, amperes) if amperes > 0 else 0) - RECOVERY * lag[b])
        return flows + falls

    def at_rest(self):
        return np.array(self.charge + [0.0] * len(self.charge))

    def left(self, state):
        """Of each battery until it is empty: its charge, or what is at hand above the least."""
        charge, lag = state.reshape(2, -1)
        return np.minimum(charge, charge - lag + DEEP)

    def run(self, *events):
        def empty(_, state):
            return self.left(state).min()

        empty.terminal = True
        return solve_ivp(self.rates, (0, 200 * 3600), self.at_rest(), method="DOP853", rtol=1e-11, atol=1e-13, max_step=60,
                         events=(empty, *events))


def discharge(command, text, *options):
    ran = subprocess.run([command, "discharge", "-", "--format", "json", *options], input=text, capture_output=True, text=True, timeout=60)
    assert ran.returncode == 0, ran.stdout + ran.stderr
    return json.loads(ran.stdout)


@pytest.mark.parametrize("seed", range(12))
def test_the_run_is_scipys(command, seed):
    star = Star(seed)
    ours, theirs = discharge(command, star.toml()), star.run()
    assert ours["end"] == "battery-empty"
    runtime = theirs.t_events[0][0]
    assert ours["runtime"] == pytest.approx(runtime, rel=1e-6)
    assert ours["ended_by"] == f"B{int(np.argmin(star.left(theirs.y_events[0][0])))}"
    last = ours["samples"][-1]["batteries"]
    for b, charge in enumerate(theirs.y_events[0][0][: len(star.charge)]):
        assert last[f"B{b}"]["charge"] == pytest.approx(charge, abs=1e-6)


@pytest.mark.parametrize("seed", range(3))
def test_the_energy_that_leaves_the_batteries_is_what_the_load_and_the_leads_take(command, seed):
    star = Star(100 + seed)
    star.power = False
    star.load = 10.0 * star.strings
    for sample in discharge(command, star.toml())["samples"]:
        batteries = sample["batteries"]
        amperes = [batteries[f"B{s * star.series}"]["current"] for s in range(star.strings)]
        assert sum(amperes) == pytest.approx(star.load, rel=1e-9)
        tops = [sum(batteries[f"B{s * star.series + k}"]["voltage"] for k in range(star.series)) - amperes[s] * star.leads[s]
                for s in range(star.strings)]
        assert tops == pytest.approx([tops[0]] * star.strings, rel=1e-9)


@pytest.mark.parametrize("seed", range(4))
def test_the_rest_is_scipys(command, seed):
    star = Star(200 + seed)
    star.strings = max(star.strings, 2)
    while len(star.capacity) < star.series * star.strings:
        for values in (star.capacity, star.health, star.charge, star.ohms, star.reserve):
            values.append(values[0] * 0.9)
    star.leads = (star.leads * star.strings)[: star.strings]
    ours = discharge(command, star.toml(), "--for", "20 min", "--rest", "5 h")
    ran = solve_ivp(star.rates, (0, 1200), star.at_rest(), method="DOP853", rtol=1e-11, atol=1e-13, max_step=60)
    star.power, star.load = False, 0.0
    rested = solve_ivp(star.rates, (0, 5 * 3600), ran.y[:, -1], method="DOP853", rtol=1e-11, atol=1e-13, max_step=60)
    last = ours["rest"][-1]["batteries"]
    for b, charge in enumerate(rested.y[: len(star.charge), -1]):
        assert last[f"B{b}"]["charge"] == pytest.approx(charge, abs=1e-6)


@pytest.mark.parametrize("seed", range(12))
def test_what_the_cells_give_is_what_is_used_and_lost_over_the_whole_run(command, seed):
    star = Star(300 + seed)
    ours = discharge(command, star.toml())
    energy = ours["energy"]
    assert energy["given"] == pytest.approx(energy["used"] + energy["wiring_heat"] + energy["battery_heat"], rel=1e-9)
    given = ours["given"]
    sums = [given[f"B{s * star.series}"] for s in range(star.strings)]
    for s in range(star.strings):  # one current through a string, so one charge
        for k in range(star.series):
            assert given[f"B{s * star.series + k}"] == pytest.approx(sums[s], rel=1e-9)
    if not star.power:
        assert sum(sums) == pytest.approx(star.load * ours["runtime"], rel=1e-9)
    else:
        assert energy["used"] == pytest.approx(star.load * ours["runtime"], rel=1e-9)


@pytest.mark.parametrize("seed", range(6))
def test_a_weak_cell_turns_when_scipys_does(command, seed):
    star = Star(300 + seed)
    # One string: beside others, its neighbors would take the load over from it before the cell turns.
    star.load, star.strings = star.load / star.strings, 1
    for values in (star.capacity, star.health, star.charge, star.ohms, star.reserve):
        del values[star.series :]
    star.weak = {0: random.Random(seed).uniform(0.25, 0.45)}

    def turns(_, state):
        return star.weak_cell_turns(0, state)

    turns.direction = -1
    theirs = star.run(turns)
    ours = discharge(command, star.toml())
    assert ours["runtime"] == pytest.approx(theirs.t_events[0][0], rel=1e-6)
    assert len(theirs.t_events[1]) == len(ours["reversed_cells"]) == 1
    cell = ours["reversed_cells"][0]
    assert cell["battery"] == "B0"
    assert cell["time"] == pytest.approx(theirs.t_events[1][0], rel=1e-6)
    after = theirs.y[:, theirs.t >= theirs.t_events[1][0]].T
    assert cell["deepest"] == pytest.approx(min(star.weak_cell_turns(0, state) for state in after), rel=1e-3)
