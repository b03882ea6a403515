"""Solves a bank's elements by the schoolbook's nodal equations: one dense matrix, Newton, 64 bits of mantissa.

Returns currents by element id and volts by terminal. Shares nothing with the library: no merging trick, no reduction to
ports, no sparse order. Where ideal connections close a ring their currents are the least in the sum of squares, which is the
limit of equal small resistances.
"""
import numpy as np

from bank_elements import merged

FINE = np.longdouble


def eliminate(matrix, right):
    """Gauss with row pivots; numpy.linalg has no longdouble."""
    a = np.concatenate([matrix, right[:, None]], axis=1)
    n = len(right)
    for k in range(n):
        p = k + int(np.argmax(abs(a[k:, k])))
        a[[k, p]] = a[[p, k]]
        a[k] /= a[k, k]
        rest = [i for i in range(n) if i != k]
        a[rest] -= np.outer(a[rest, k], a[k])
    return a[:, -1]


def motor(numbers, volts):
    """Current from the bank and its slope: E + R c E^2 = d V, I = d c E^2, nothing when fed backwards."""
    c, ohms, duty = (FINE(x) for x in numbers)
    if volts <= 0 or duty == 0:
        return FINE(0), FINE(0)
    q = 1 + 4 * c * ohms * duty * volts
    e = 2 * duty * volts / (1 + np.sqrt(q))
    return duty * c * e * e, duty * c * 2 * e * duty / np.sqrt(q)


def constant_power(numbers, volts):
    """Current and its slope: I = P / V, nothing when fed backwards."""
    return (numbers[0] / volts, -numbers[0] / (volts * volts)) if volts > 0 else (FINE(0), FINE(0))


class Dense:
    def __init__(self, elements, reference):
        self.elements = elements
        self.leader, self.forest = merged(elements)
        names = list(dict.fromkeys(self.leader.values()))
        edges = [e[1:3] for e in elements.sources + elements.resistors]
        self.island = {name: name for name in names}
        for _ in names:  # labels spread until they stand still
            for a, b in edges:
                a, b = self.leader[a], self.leader[b]
                self.island[a] = self.island[b] = min(self.island[a], self.island[b])
        grounded = {label: label for label in self.island.values()}
        grounded[self.island[self.leader[reference]]] = self.leader[reference]
        self.grounds = set(grounded.values())
        unknown = [name for name in names if name not in self.grounds]
        self.index = {name: i for i, name in enumerate(unknown)}
        self.reference = reference
        self.taken = {}  # [W] by a converter's input: what its output gives, over its efficiency

    def node(self, terminal):
        return self.index.get(self.leader[terminal])

    def open_volts(self):
        """The voltage at each load with every load off."""
        loads, self.elements.loads = self.elements.loads, []
        try:
            _, _, _, x = self.solve_in({})
        finally:
            self.elements.loads = loads
        return {name: float(self.volts(x, plus) - self.volts(x, minus)) for name, plus, minus, *_ in loads}

    def volts(self, x, terminal):
        i = self.node(terminal)
        return FINE(0) if i is None else x[i]

    def stamp(self, matrix, right, a, b, conductance, current):
        """An element whose current from a to b is conductance * (Va - Vb) + current."""
        i, j = self.node(a), self.node(b)
        for here, there, sign in ((i, j, 1), (j, i, -1)):
            if here is None:
                continue
            matrix[here, here] += conductance
            if there is not None:
                matrix[here, there] -= conductance
            right[here] -= sign * current

    def solve(self):
        """(volts by terminal, amperes by element, {charger output: "volts" | "amperes" | "off"}).

        Each output's mode is tried until none contradicts itself: it gives its amperes below its volts, holds its volts with
        less than its amperes, or is off above its volts.
        """
        modes = {name: "amperes" for name, _, _, law, _ in self.elements.loads if law == "charger"}
        self.taken = {name: FINE(0) for name, _, _, law, _ in self.elements.loads if law == "converter"}  # [W]
        for _ in range(200):
            volts, amps, drop, _ = self.solve_in(modes)
            before, taken = dict(modes), dict(self.taken)
            for name, _, _, law, numbers in self.elements.loads:
                if law == "converter" and numbers[0] in drop:
                    self.taken[name] = max(FINE(0), -drop[numbers[0]] * amps[numbers[0]] / FINE(numbers[1]))
            still = all(abs(self.taken[name] - taken[name]) <= 1e-15 * (1 + taken[name]) for name in taken)
            for name, _, _, law, (level, limit, *_) in (load for load in self.elements.loads if load[3] == "charger"):
                if modes[name] != "volts":
                    below = drop[name] < level
                    modes[name] = ("amperes" if below else "volts") if modes[name] == "amperes" or below else "off"
                elif amps[name] > 0:
                    modes[name] = "off"
                elif amps[name] < -limit:
                    modes[name] = "amperes"
            if modes == before and still:
                return volts, amps, modes
        raise AssertionError(f"the chargers find no rest: {modes}")

    def power(self, name, numbers):
        return (self.taken[name],) if name in self.taken else numbers

    def solve_in(self, charger_modes):
        e, n = self.elements, len(self.index)
        x = None
        for _ in range(60):
            matrix, right = np.zeros((n, n), FINE), np.zeros(n, FINE)
            for _, a, b, ohms in e.resistors:
                self.stamp(matrix, right, a, b, 1 / FINE(ohms), FINE(0))
            for _, minus, plus, emf, ohms in e.sources:
                self.stamp(matrix, right, minus, plus, 1 / FINE(ohms), FINE(emf) / FINE(ohms))
            held = []
            for name, plus, minus, law, numbers in e.loads:
                if law == "current":
                    self.stamp(matrix, right, plus, minus, FINE(0), FINE(numbers[0]))
                elif law == "charger":
                    if charger_modes[name] == "amperes":
                        self.stamp(matrix, right, plus, minus, FINE(0), -FINE(numbers[1]))
                    elif charger_modes[name] == "volts":
                        held.append((name, plus, minus, FINE(numbers[0])))
                elif x is not None:  # the first round is without them: the voltages from which Newton comes down
                    v = self.volts(x, plus) - self.volts(x, minus)
                    current, slope = motor(numbers, v) if law == "motor" else constant_power(self.power(name, numbers), v)
                    self.stamp(matrix, right, plus, minus, slope, current - slope * v)
            matrix = np.pad(matrix, (0, len(held)))
            right = np.concatenate([right, np.zeros(len(held), FINE)])
            for k, (_, plus, minus, volts) in enumerate(held, n):
                for terminal, sign in ((plus, 1), (minus, -1)):
                    if (i := self.node(terminal)) is not None:
                        matrix[i, k] += sign
                        matrix[k, i] += sign
                right[k] = volts
            last, x = x, eliminate(matrix, right)
            if last is not None and np.max(abs(x - last), initial=0) <= 1e-16 * (1 + np.max(abs(x), initial=0)):
                break
        else:
            raise AssertionError("Newton did not converge")
        return self.results(x, {name: x[k] for k, (name, *_) in enumerate(held, n)}, charger_modes)

    def results(self, x, held, charger_modes):
        e = self.elements
        drop = {name: self.volts(x, a) - self.volts(x, b) for name, a, b, *_ in e.sources + e.resistors + e.loads}
        amps = {name: drop[name] / FINE(ohms) for name, _, _, ohms in e.resistors}
        amps |= {name: (drop[name] + FINE(emf)) / FINE(ohms) for name, _, _, emf, ohms in e.sources}
        for name, _, _, law, numbers in e.loads:
            if law == "current":
                amps[name] = FINE(numbers[0])
            elif law in ("power", "converter"):
                amps[name] = constant_power(self.power(name, numbers), drop[name])[0]
            elif law == "motor":
                amps[name] = motor(numbers, drop[name])[0]
            else:
                amps[name] = {"amperes": -FINE(numbers[1]), "volts": held.get(name), "off": FINE(0)}[charger_modes[name]]
        home = self.island[self.leader[self.reference]]
        volts = {t: self.volts(x, t) if self.island[self.leader[t]] == home else None for t in e.terminals}
        return volts, amps | self.ideal_currents(amps), drop, x

    def ideal_currents(self, amps):
        e = self.elements
        if not e.ideals:
            return {}
        row = {t: i for i, t in enumerate(e.terminals)}
        leaving = np.zeros(len(row), FINE)
        for name, a, b, *_ in e.sources + e.resistors + e.loads:
            leaving[row[a]] += amps[name]
            leaving[row[b]] -= amps[name]
        incidence = np.zeros((len(row), len(e.ideals)))
        for k, (_, a, b) in enumerate(e.ideals):
            incidence[row[a], k] += 1
            incidence[row[b], k] -= 1
        least = np.linalg.lstsq(incidence, -leaving.astype(float), rcond=None)[0]
        return {name: least[k] for k, (name, _, _) in enumerate(e.ideals)}
