"""Banks that nobody would draw and that a file may describe all the same, made at random from a seed.

Nothing here knows the library: sections, terminals and the ends of the ranges are those of `bankwright schema --keys`. A bank is
odd in one way or several: empty, one part alone, islands, only chargers, everything open, batteries against each other, conductors
from one side of a part to its other, values at the ends of what a key may hold.
"""
import random

TERMINALS = {"batteries": "+ -", "breakers": ".line .load", "fuses": ".line .load", "switches": ".1 .2", "busbars": "",
             "connectors": "+ - .plug+ .plug-", "motors": "+ -", "loads": "+ -", "chargers": ""}
CHEMISTRIES = ["flooded", "agm", "gel", "lifepo4", "nmc"]
CLASSES = ["ul-489", "iec-60898-b", "iec-60898-c", "iec-60898-d", "iso-8820-3", "iso-8820-5", "sae-j554", "nobody's"]


def text(value):
    return f'"{value}"'


class Maker:
    """One bank. `extreme` is how often a value lies at an end of its range instead of where a boat has it."""

    def __init__(self, seed):
        self.random = random.Random(seed)
        self.extreme = self.random.choice([0.0, 0.0, 0.1, 0.4, 1.0])
        self.opened = self.random.choice([0.0, 0.1, 1.0])  # how many contacts are open
        self.sections = {name: {} for name in ("batteries", "jumpers", "cables", "breakers", "fuses", "switches", "busbars",
                                              "connectors", "motors", "loads", "chargers")}
        self.terminals = []

    def pick(self, usual, ends):
        return text(self.random.choice(ends if self.random.random() < self.extreme else usual))

    def maybe(self, keys, name, value, chance=0.3):
        if self.random.random() < chance:
            keys[name] = value

    def volts(self):
        return self.pick(["6 V", "12 V", "24 V", "36 V", "48 V"], ["1 uV", "1000 V", "0.1 V"])

    def amperes(self):
        return self.pick(["1 A", "20 A", "60 A", "200 A"], ["1 uA", "1000000 A"])

    def ohms(self):
        return self.pick(["1 mohm", "5 mohm", "20 mohm"], ["1e-9 ohm", "1000000 ohm", "1 uohm"])

    def ohms_or_none(self):
        return self.pick(["0.1 mohm", "1 mohm"], ["0 ohm", "1000000 ohm", "1e-9 ohm"])

    def degrees(self):
        return self.pick(["5 degC", "25 degC", "40 degC"], ["-60 degC", "100 degC"])

    def share(self):
        return self.pick(["50 %", "80 %", "100 %"], ["0 %", "100 %", "0.0001 %"])

    def battery(self):
        keys = {}
        if self.random.random() < 0.7:
            keys["chemistry"] = text(self.random.choice(CHEMISTRIES))
            keys["voltage"] = self.volts() if self.random.random() < 0.2 else text("12 V")
        else:
            keys |= {"voltage": self.volts(), "emf": self.pick(["12.7 V", "12 V"], ["0 V", "1000 V"]), "resistance": self.ohms()}
        if "resistance" not in keys or self.random.random() < 0.5:
            keys["capacity"] = self.pick(["7 Ah", "100 Ah", "200 Ah"], ["1 mAh", "100000 Ah", "0.5 Ah"])
        self.maybe(keys, "resistance", self.ohms())
        self.maybe(keys, "charge", self.share())
        self.maybe(keys, "health", self.pick(["80 %", "100 %"], ["0.1 %", "150 %"]), 0.1)
        self.maybe(keys, "emf", self.pick(["12.7 V"], ["0 V", "1000 V"]), 0.1)
        self.maybe(keys, "temperature", self.degrees(), 0.2)
        self.maybe(keys, "cranking", self.amperes(), 0.1)
        self.maybe(keys, "dead_cells", str(self.random.choice([0, 1, 2])), 0.1)
        self.maybe(keys, "low_cutoff", self.pick(["10.5 V"], ["1 uV", "11.9 V"]), 0.1)
        self.maybe(keys, "high_cutoff", self.pick(["14.8 V"], ["12 V", "1000 V"]), 0.1)
        self.maybe(keys, "max_charge", self.amperes(), 0.1)
        self.maybe(keys, "max_discharge", self.amperes(), 0.1)
        return keys

    def run(self):
        ends = self.random.sample(self.terminals, 2)
        keys = {"from": text(ends[0]), "to": text(ends[1])}
        if self.random.random() < 0.5:
            keys["resistance"] = self.ohms_or_none()
        else:
            keys["size"] = self.pick(["6 AWG", "16 mm2", "2 AWG"], ["0.01 mm2", "2000 mm2"])
            keys["length"] = self.pick(["1 ft", "3 m"], ["0.001 mm", "1000 m"])
        self.maybe(keys, "joint", self.ohms_or_none(), 0.2)
        self.maybe(keys, "insulation", self.pick(["105 degC", "75 degC"], ["-60 degC", "250 degC"]))
        self.maybe(keys, "temperature", self.pick(["30 degC"], ["-60 degC", "250 degC"]), 0.1)
        self.maybe(keys, "bundle", str(self.random.choice([1, 3, 1000])), 0.2)
        return keys

    def protection(self):
        keys = {"rating": self.amperes()}
        self.maybe(keys, "interrupts", self.amperes())
        self.maybe(keys, "voltage", self.volts())
        self.maybe(keys, "resistance", self.ohms_or_none())
        self.maybe(keys, "class", text(self.random.choice(CLASSES)))
        self.maybe(keys, "state", text("open"), self.opened)
        return keys

    def switch(self):
        keys = {}
        self.maybe(keys, "rating", self.amperes())
        self.maybe(keys, "resistance", self.ohms_or_none())
        self.maybe(keys, "state", text("open"), self.opened)
        return keys

    def busbar(self):
        keys = {}
        self.maybe(keys, "studs", str(self.random.choice([1, 4, 1000])))
        return keys

    def connector(self):
        keys = {}
        self.maybe(keys, "contact", self.ohms_or_none())
        self.maybe(keys, "rating", self.amperes())
        self.maybe(keys, "state", text("apart"), self.opened)
        return keys

    def motor(self):
        keys = {"voltage": self.volts(), "current": self.amperes()}
        self.maybe(keys, "throttle", self.share())
        self.maybe(keys, "winding", text(self.random.choice(["0 ohm", "1e-15 ohm"])), 0.2)
        self.maybe(keys, "control", text(self.random.choice(["pwm", "direct"])))
        self.maybe(keys, "min_voltage", self.volts(), 0.2)
        return keys

    def load(self):
        kind = self.random.choice(["current", "power", "resistance"])
        value = {"current": self.pick(["4 A", "40 A"], ["0 A", "1000000 A"]),
                 "power": self.pick(["60 W", "500 W"], ["0 W", "10000000 W"]),
                 "resistance": self.pick(["3 ohm"], ["1e-9 ohm", "1000000 ohm"])}[kind]
        keys = {kind: value}
        self.maybe(keys, "min_voltage", self.pick(["10 V"], ["1 uV"]), 0.2)
        self.maybe(keys, "max_voltage", self.pick(["15 V"], ["11 V", "1000 V"]), 0.2)
        return keys

    def charger(self):
        keys = {}
        self.maybe(keys, "outputs", str(self.random.choice([1, 2, 3, 12])))
        self.maybe(keys, "isolated", self.random.choice(["true", "false"]))
        self.maybe(keys, "voltage", self.pick(["14.4 V", "28.8 V"], ["1 uV", "1000 V"]), 0.8)
        self.maybe(keys, "current", self.amperes(), 0.8)
        self.maybe(keys, "connected", "true", 0.5)
        return keys

    def add(self, section, count=1):
        make = {"batteries": self.battery, "breakers": self.protection, "fuses": self.protection, "switches": self.switch,
                "busbars": self.busbar, "connectors": self.connector, "motors": self.motor, "loads": self.load,
                "chargers": self.charger}[section]
        for _ in range(count):
            part = f"{section[0]}{section[1]}{len(self.sections[section]) + 1}"
            keys = self.sections[section][part] = make()
            if section == "chargers":
                outputs = int(keys.get("outputs", "1"))
                for number in range(1, outputs + 1):
                    self.terminals += [f"{part}.{number}+", f"{part}.{number}-"]
            else:
                self.terminals += [part + end for end in TERMINALS[section].split()] or [part]

    def join(self, count):
        for number in range(count if len(self.terminals) > 1 else 0):
            section = self.random.choice(["jumpers", "cables"])
            self.sections[section][f"{section[0]}{number}"] = self.run()

    def wire(self, one, other):
        section = self.random.choice(["jumpers", "cables"])
        keys = self.run() | {"from": text(one), "to": text(other)}
        self.sections[section][f"w{len(self.sections['jumpers']) + len(self.sections['cables'])}"] = keys

    def string(self, length, turned=()):
        """Batteries one behind the other, those in `turned` the wrong way around; its two ends."""
        first = len(self.sections["batteries"])
        self.add("batteries", length)
        names = list(self.sections["batteries"])[first:]
        posts = [(n + "+", n + "-") if i in turned else (n + "-", n + "+") for i, n in enumerate(names)]
        for below, above in zip(posts, posts[1:]):
            self.wire(below[1], above[0])
        return posts[0][0], posts[-1][1]

    def text(self):
        lines = ["bankwright = 1"]
        if self.random.random() < 0.5:
            system = {}
            self.maybe(system, "voltage", self.volts(), 0.7)
            self.maybe(system, "ambient", self.degrees())
            self.maybe(system, "joint", self.ohms_or_none())
            self.maybe(system, "runtime", self.pick(["1 h", "3 h"], ["1 ms", "8000 h"]))
            lines += ["[system]", *(f"{key} = {value}" for key, value in system.items())]
        for section, parts in self.sections.items():
            if parts:
                lines.append(f"[{section}]")
                lines += [f"{part} = {{ " + ", ".join(f"{key} = {value}" for key, value in keys.items()) + " }"
                          for part, keys in parts.items()]
        return "\n".join(lines) + "\n"


def alone(maker):
    maker.add(maker.random.choice(list(TERMINALS)))
    maker.join(maker.random.choice([0, 0, 1, 2]))


def several_of_one_kind(maker):
    maker.add(maker.random.choice(list(TERMINALS)), maker.random.randint(2, 4))
    maker.join(maker.random.randint(0, 6))


def only_chargers(maker):
    maker.add("chargers", maker.random.randint(1, 3))
    maker.join(maker.random.randint(0, 4))


def thrown_together(maker):
    for section in TERMINALS:
        maker.add(section, maker.random.choice([0, 0, 1, 1, 2]))
    maker.join(maker.random.randint(0, 12))


def against_each_other(maker):
    one, other = maker.string(maker.random.randint(1, 2)), maker.string(maker.random.randint(1, 2))
    ends = other if maker.random.random() < 0.3 else other[::-1]
    maker.wire(one[0], ends[0])
    maker.wire(one[1], ends[1])
    maker.join(maker.random.choice([0, 0, 1]))


def a_bank_with_one_thing_odd(maker):
    """Strings in parallel that feed something through a breaker, and then a few conductors wherever they land."""
    length = maker.random.randint(1, 4)
    turned = {maker.random.randrange(length)} if maker.random.random() < 0.2 else ()
    strings = [maker.string(length, turned if number == 0 else ()) for number in range(maker.random.randint(1, 3))]
    for string in strings[1:]:
        maker.wire(strings[0][0], string[0])
        maker.wire(strings[0][1], string[1])
    maker.add(maker.random.choice(["breakers", "fuses"]))
    device = list(maker.sections["breakers"] | maker.sections["fuses"])[0]
    user = maker.random.choice(["motors", "loads", "chargers"])
    maker.add(user)
    plus = next(terminal for terminal in maker.terminals if terminal.startswith(user[:2]) and terminal.endswith("+"))
    maker.wire(strings[0][1], device + ".line")
    maker.wire(device + ".load", plus)
    maker.wire(plus[:-1] + "-", strings[-1][0])
    maker.join(maker.random.choice([0, 0, 0, 1, 2]))


def islands(maker):
    for _ in range(maker.random.randint(2, 3)):
        low, high = maker.string(maker.random.randint(1, 2))
        maker.add("loads")
        load = list(maker.sections["loads"])[-1]
        maker.wire(high, load + "+")
        if maker.random.random() < 0.7:
            maker.wire(load + "-", low)


def nothing(_):
    pass


KINDS = {nothing: 1, alone: 4, several_of_one_kind: 4, only_chargers: 3, thrown_together: 8, against_each_other: 5,
         a_bank_with_one_thing_odd: 10, islands: 4}  # how often each


def odd_bank(number):
    """(what it is, its text, its terminals); the same for the same number. The first are one of each kind."""
    maker = Maker(number)
    first = list(KINDS)
    kind = first[number] if number < len(first) else maker.random.choices(first, list(KINDS.values()))[0]
    kind(maker)
    return kind.__name__, maker.text(), maker.terminals
