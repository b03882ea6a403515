"""A bank file as a list of circuit elements, read from the format's description and from nothing of the library.

Its own unit parser, its own copper formula, its own motor. What a battery's chemistry gives (and the ratio of tinned to
plain wire) is the devices' business and tested there: it is handed in.
"""
import re
import tomllib
from dataclasses import dataclass, field

SECTIONS = ("batteries", "jumpers", "cables", "breakers", "fuses", "switches", "shunts", "relays", "selectors", "busbars", "connectors",
            "motors", "loads", "chargers", "converters")
UNITS = {  # to SI
    "V": 1.0, "mV": 1e-3, "A": 1.0, "mA": 1e-3, "W": 1.0, "kW": 1e3, "ohm": 1.0, "Ω": 1.0, "mohm": 1e-3, "mΩ": 1e-3,
    "uohm": 1e-6, "m": 1.0, "cm": 1e-2, "mm": 1e-3, "in": 0.0254, "ft": 0.3048, "%": 1e-2}


def quantity(text):
    number, unit = re.fullmatch(r"\s*([-+0-9.eE]+)\s*(\S+)\s*", text).groups()
    return float(number) * UNITS[unit]


def celsius(text):
    number, unit = re.fullmatch(r"\s*([-+0-9.eE]+)\s*(\S+)\s*", text).groups()
    return {"degC": float, "°C": float, "degF": lambda n: (float(n) - 32) / 1.8, "°F": lambda n: (float(n) - 32) / 1.8,
            "K": lambda n: float(n) - 273.15}[unit](number)


def square_millimeters(text):
    if found := re.fullmatch(r"\s*(\d+)(/0)?\s*AWG\s*", text):
        gauge = 1 - int(found[1]) if found[2] else int(found[1])  # 1/0 is 0, 2/0 is -1
        inches = 0.005 * 92 ** ((36 - gauge) / 39)
        return 3.141592653589793 / 4 * (inches * 25.4) ** 2
    return float(re.fullmatch(r"\s*([0-9.eE]+)\s*(?:mm2|mm²)\s*", text)[1])


@dataclass
class Elements:
    terminals: list = field(default_factory=list)
    sources: list = field(default_factory=list)    # (id, minus, plus, volts, ohms)
    resistors: list = field(default_factory=list)  # (id, from, to, ohms > 0)
    ideals: list = field(default_factory=list)     # (id, from, to)
    loads: list = field(default_factory=list)      # (id, plus, minus, law, numbers)


def read(text, from_devices):
    """`from_devices`: {"sources": {battery: [volts, ohms]}, "conductors": {id: ohms}}, used only where the file is silent."""
    data = tomllib.loads(text)
    system, models = data.get("system", {}), data.get("models", {})
    ambient = celsius(system.get("ambient", "25 degC"))
    joint = quantity(system.get("joint", "0 ohm"))
    out = Elements()

    def parts(section):
        for name, keys in data.get(section, {}).items():
            yield name, models.get(keys.get("model"), {}) | keys

    def resistive(name, a, b, ohms):
        if ohms == 0:
            out.ideals.append((name, a, b))
        else:
            out.resistors.append((name, a, b, ohms))

    for name, keys in parts("batteries"):
        out.terminals += [name + "+", name + "-"]
        volts, ohms = from_devices["sources"][name]
        volts = quantity(keys["emf"]) if "emf" in keys else volts
        ohms = quantity(keys["resistance"]) if "resistance" in keys else ohms
        out.sources.append((name, name + "-", name + "+", volts, ohms))
    for section in ("jumpers", "cables"):
        for name, keys in parts(section):
            if "resistance" in keys:
                ohms = quantity(keys["resistance"])
            elif keys.get("tinned"):
                ohms = from_devices["conductors"][name]
            else:  # annealed copper: 58 m/(ohm mm2) at 20 degC, 0.393 % a kelvin
                warm = celsius(keys["temperature"]) if "temperature" in keys else ambient
                wire = 1.02 * quantity(keys["length"]) / (58.0 * square_millimeters(keys["size"])) * (1 + 0.00393 * (warm - 20))
                ohms = wire + 2 * (quantity(keys["joint"]) if "joint" in keys else joint)
            resistive(name, keys["from"], keys["to"], ohms)
    for section, ends in (("breakers", (".line", ".load")), ("fuses", (".line", ".load")), ("switches", (".1", ".2"))):
        for name, keys in parts(section):
            out.terminals += [name + end for end in ends]
            if keys.get("state", "closed") == "closed":
                resistive(name, name + ends[0], name + ends[1], quantity(keys.get("resistance", "0 ohm")))
    for name, keys in parts("shunts"):
        out.terminals += [name + ".1", name + ".2"]
        resistive(name, name + ".1", name + ".2", quantity(keys["resistance"]) if "resistance" in keys
                  else quantity(keys["drop"]) / quantity(keys["rating"]))
    charging = max([quantity(keys["voltage"]) for _, keys in parts("chargers") if keys.get("connected")], default=0)
    for name, keys in parts("relays"):  # closed by hand, or while a charger holds its voltage
        out.terminals += [name + ".1", name + ".2"]
        holds = charging > 0 and charging >= quantity(keys.get("closes_above", "0 V"))
        if keys.get("state", "closed" if holds else "open") == "closed":
            out.ideals.append((name, name + ".1", name + ".2"))
    for name, keys in parts("selectors"):
        out.terminals += [name + ".1", name + ".2", name + ".common"]
        for side in "12":
            if keys.get("position", "1") in (side, "both"):
                out.ideals.append((f"{name} {side}", f"{name}.{side}", name + ".common"))
    for name, _ in parts("busbars"):
        out.terminals.append(name)
    for name, keys in parts("connectors"):
        out.terminals += [name + end for end in ("+", "-", ".plug+", ".plug-")]
        if keys.get("state", "mated") == "mated":
            for pole in "+-":
                resistive(name + " " + pole, name + pole, name + ".plug" + pole, quantity(keys.get("contact", "0 ohm")))
    for name, keys in parts("motors"):
        # Armature: V = k w + R I, k I = b w^2. With E = k w: I = c E^2. A chopper of duty d gives the armature d V and takes
        # d I from the bank; without one (`direct`) it is all or nothing.
        out.terminals += [name + "+", name + "-"]
        rated, winding = quantity(keys["current"]), quantity(keys.get("winding", "0 ohm"))
        duty = quantity(keys.get("throttle", "100 %"))
        if keys.get("control") == "direct":
            duty = float(duty > 0)
        c = rated / (quantity(keys["voltage"]) - rated * winding) ** 2
        out.loads.append((name, name + "+", name + "-", "motor", (c, winding, duty)))
    for name, keys in parts("loads"):
        out.terminals += [name + "+", name + "-"]
        if "resistance" in keys:
            out.resistors.append((name, name + "+", name + "-", quantity(keys["resistance"])))
        else:
            law = "current" if "current" in keys else "power"
            out.loads.append((name, name + "+", name + "-", law, (quantity(keys[law]),)))
    for name, keys in parts("chargers"):
        outputs = [f"{name}.{n}" for n in range(1, keys.get("outputs", 1) + 1)]
        for output in outputs:
            out.terminals += [output + "+", output + "-"]
            if keys.get("connected", False):
                limits = (quantity(keys["voltage"]), quantity(keys["current"]))
                out.loads.append((output, output + "+", output + "-", "charger", limits))
        if not keys.get("isolated", True):
            out.ideals += [(f"{name} negatives {output}", outputs[0] + "-", output + "-") for output in outputs[1:]]
    for name, keys in parts("converters"):  # its input takes what its output gives, over its efficiency
        out.terminals += [name + end for end in (".in+", ".in-", ".out+", ".out-")]
        volts, watts = quantity(keys["voltage"]), quantity(keys["power"])
        out.loads.append((name + ".out", name + ".out+", name + ".out-", "charger", (volts, watts / volts)))
        out.loads.append((name + " in", name + ".in+", name + ".in-", "converter",
                          (name + ".out", quantity(keys.get("efficiency", "90 %")))))
        if not keys.get("isolated", True):
            out.ideals.append((name + " negatives", name + ".in-", name + ".out-"))
    return without_unfed_loads(out)


def without_unfed_loads(elements):
    """Leaves out each load through which no ring of elements passes: nothing can flow in it."""
    wires = [(a, b) for _, a, b, *_ in elements.sources + elements.resistors + elements.ideals]
    loads = [(a, b) for _, a, b, *_ in elements.loads]

    def joined(a, b, edges):
        seen, stack = {a}, [a]
        while stack:
            here = stack.pop()
            for x, y in edges:
                for near, far in ((x, y), (y, x)):
                    if near == here and far not in seen:
                        seen.add(far)
                        stack.append(far)
        return b in seen

    elements.loads = [load for i, load in enumerate(elements.loads)
                      if joined(load[1], load[2], wires + loads[:i] + loads[i + 1:])]
    return elements


def merged(elements):
    """({terminal: one of the terminals that ideal connections make one with it}, the ideals that close no ring)."""
    leader = {name: name for name in elements.terminals}

    def find(name):
        while leader[name] != name:
            name = leader[name]
        return name

    forest = []
    for ideal in elements.ideals:
        a, b = find(ideal[1]), find(ideal[2])
        if a != b:
            leader[b] = a
            forest.append(ideal)
    return {name: find(name) for name in elements.terminals}, forest
