"""Writes a bank's elements as a SPICE netlist and has ngspice, a program of its own, find the operating point.

Ideal connections are sources of 0 V (ngspice turns a resistance of 0 into 1 milliohm without a word); one that would close a
ring of such sources is left out, and with it the currents of that ring, which have no physical answer. A load of constant
power is a conductance below half of its open-circuit voltage, so that only the upper of its two operating points is left.
No load takes current backwards.
"""
import re
import subprocess

from bank_elements import merged


def netlist(elements, reference, charger_modes, open_volts):
    """(text, {element id: vector of its current}, {terminal: vector of its voltage})."""
    leader, forest = merged(elements)
    nodes = {terminal: f"n{i}" for i, terminal in enumerate(elements.terminals)} | {reference: "0"}
    lines, currents = ["bank"], {}

    def through_meter(name, kind, a, b, value):
        """An element in series with a source of 0 V, whose current is the element's from a to b."""
        k = len(currents)
        currents[name] = f"i(vm{k})"
        lines.append(f"vm{k} {nodes[a]} s{k} 0")
        lines.append(f"{kind}{k} s{k} {nodes[b]} {value}")

    for name, a, b, ohms in elements.resistors:
        through_meter(name, "r", a, b, f"{ohms!r}")
    for name, minus, plus, volts, ohms in elements.sources:
        k = len(currents)
        currents[name] = f"i(vm{k})"
        lines += [f"vm{k} {nodes[minus]} s{k} 0", f"ve{k} t{k} s{k} {volts!r}", f"r{k} t{k} {nodes[plus]} {ohms!r}"]
    for name, a, b in forest:
        k = len(currents)
        currents[name] = f"i(vm{k})"
        lines.append(f"vm{k} {nodes[a]} {nodes[b]} 0")
    for name, plus, minus, law, numbers in elements.loads:
        v = f"v(s{len(currents)},{nodes[minus]})"
        if law == "current":
            through_meter(name, "i", plus, minus, f"{numbers[0]!r}")
        elif law == "power":
            low = max(open_volts[name] / 2, 0.1)
            through_meter(name, "b", plus, minus,
                          f"i = {v} > {low!r} ? {numbers[0]!r}/{v} : max({v},0)*{numbers[0] / low**2!r}")
        elif law == "converter":  # the power of its output, whose meter stands before
            given, share = numbers
            _, high, low = next(load for load in elements.loads if load[0] == given)[:3]
            power = f"(0-v({nodes[high]},{nodes[low]})*{currents[given]}/{share!r})" if given in currents else "0"
            through_meter(name, "b", plus, minus, f"i = {v} > 0.1 ? {power}/{v} : 0")
        elif law == "motor":
            c, ohms, duty = numbers
            e = f"({2 * duty!r}*{v}/(1+sqrt(1+{4 * c * ohms * duty!r}*max({v},0))))"
            through_meter(name, "b", plus, minus, f"i = {v} > 0 ? {duty * c!r}*{e}*{e} : 0")
        elif charger_modes[name] == "amperes":
            through_meter(name, "i", plus, minus, f"{-numbers[1]!r}")
        elif charger_modes[name] == "volts":
            through_meter(name, "v", plus, minus, f"{numbers[0]!r}")
    # A node without a path to ground would make the matrix singular. No current can flow in a single tie.
    lines += [f"rt{i} {nodes[t]} 0 1" for i, t in enumerate(one_terminal_an_island(elements, leader, reference))]
    voltages = {t: f"v({node})" for t, node in nodes.items() if node != "0"}
    lines += [".options reltol=1e-9 abstol=1e-12 vntol=1e-10 itl1=1000 gmin=1e-20", ".control", "set numdgt=15", "op"]
    lines += [f"print {vector}" for vector in [*currents.values(), *voltages.values()]]
    return "\n".join(lines + ["quit", ".endc", ".end", ""]), currents, voltages


def one_terminal_an_island(elements, leader, reference):
    label = {name: name for name in leader.values()}
    wires = [e[1:3] for e in elements.sources + elements.resistors]
    for _ in label:
        for a, b in wires:
            a, b = leader[a], leader[b]
            label[a] = label[b] = min(label[a], label[b])
    return sorted(set(label.values()) - {label[leader[reference]]})


def solve(elements, reference, charger_modes, open_volts, path):
    """Volts by terminal and amperes by element. ngspice exits 0 on most failures, so every vector is required."""
    text, currents, voltages = netlist(elements, reference, charger_modes, open_volts)
    path.write_text(text)
    done = subprocess.run(["ngspice", "-b", str(path)], capture_output=True, text=True, timeout=60)
    found = dict(re.findall(r"^([iv]\([a-z0-9]+\)) = (\S+)$", done.stdout, re.M))
    missing = [vector for vector in [*currents.values(), *voltages.values()] if vector not in found]
    assert not missing, f"ngspice gave no {missing[:3]}\n{done.stdout}\n{done.stderr}\n{text}"
    volts = {t: float(found[vector]) for t, vector in voltages.items()} | {reference: 0.0}
    return volts, {name: float(found[vector]) for name, vector in currents.items()}
