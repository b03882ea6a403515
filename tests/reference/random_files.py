"""Seeded bank files (invented): series, parallel, cross-tied, through busbars, fused, plugged, charged, some of it miswired."""
import random

GAUGES = ["4/0 AWG", "2/0 AWG", "1/0 AWG", "2 AWG", "4 AWG", "6 AWG", "8 AWG", "10 AWG", "16 mm2", "35 mm²", "50 mm2", "6 mm2"]


class RandomFile:
    def __init__(self, seed):
        self.random = random.Random(seed)
        self.sections = {}
        self.weird = seed % 3 == 2

    def chance(self, probability):
        return self.random.random() < probability

    def log_uniform(self, low, high):
        return low * (high / low) ** self.random.random()

    def ohms(self, low, high):
        value = self.log_uniform(low, high)
        return self.random.choice([f"{value:.6g} ohm", f"{value * 1e3:.6g} mohm", f"{value * 1e3:.5g} mΩ"])

    def add(self, section, name, **keys):
        self.sections.setdefault(section, {})[name] = keys

    def wire(self, section, a, b, ideal=0.15):
        name = f"w{sum(len(self.sections.get(s, {})) for s in ('jumpers', 'cables'))}-{a[0]}"
        if self.chance(ideal):
            self.add(section, name, **{"from": a, "to": b, "resistance": "0 ohm"})
        elif self.chance(0.4):
            self.add(section, name, **{"from": a, "to": b, "resistance": self.ohms(1e-4, 1e-2)})
        else:
            meters = self.random.uniform(0.1, 4)
            keys = {"from": a, "to": b, "size": self.random.choice(GAUGES),
                    "length": self.random.choice([f"{meters:.3f} m", f"{meters / 0.0254:.2f} in", f"{meters / 0.3048:.3f} ft"])}
            if self.chance(0.3):
                keys["joint"] = self.ohms(1e-5, 5e-4)
            if self.chance(0.3):
                keys["temperature"] = self.random.choice(["-10 degC", "41.5 °C", "122 degF"])
            self.add(section, name, **keys)

    def device(self, section, name):
        keys = {"rating": "100 A"}
        if self.chance(0.6):
            keys["resistance"] = self.ohms(1e-4, 5e-3)
        if self.weird and self.chance(0.1):
            keys["state"] = "open"
        self.add(section, name, **keys)

    def make(self):
        self.series, self.parallel = self.random.randint(1, 4), self.random.randint(1, 4)
        posts = [[f"B{s}-{i}" for i in range(self.series)] for s in range(self.parallel)]
        for string in posts:
            for name in string:
                self.add("batteries", name, voltage="12 V", emf=f"{self.random.uniform(12.2, 12.9):.4f} V",
                         resistance=self.ohms(3e-3, 2e-2))
            for below, above in zip(string, string[1:]):
                self.wire("jumpers", below + "+", above + "-")
        plus, minus = self.paralleled(posts)
        for one, other in zip(posts, posts[1:]):
            for i in range(self.series - 1):
                if self.chance(0.3):
                    self.wire("jumpers", one[i] + "+", other[i] + "+")
        self.motor(plus, minus)
        self.loads(posts, plus, minus)
        if self.chance(0.4):
            self.charger(posts, plus, minus)
        if self.chance(0.3):
            self.doubled_wire()
        if self.weird:
            self.miswire(posts)
        return self.text()

    def paralleled(self, posts):
        if self.parallel > 1 and self.chance(0.4):
            self.add("busbars", "POS")
            self.add("busbars", "NEG", rating="250 A")
            for string in posts:
                self.wire("cables", string[-1] + "+", "POS")
                self.wire("cables", "NEG", string[0] + "-")
            return "POS", "NEG"
        for one, other in zip(posts, posts[1:]):
            self.wire("jumpers", one[-1] + "+", other[-1] + "+")
            self.wire("jumpers", one[0] + "-", other[0] + "-")
        return posts[0][-1] + "+", self.random.choice([posts[0], posts[-1]])[0] + "-"

    def motor(self, plus, minus):
        self.device("breakers", "CB")
        self.wire("cables", plus, "CB.line")
        contact = {"contact": self.ohms(1e-4, 1e-3)} if self.chance(0.7) else {}
        apart = {"state": "apart"} if self.weird and self.chance(0.1) else {}
        self.add("connectors", "bow", rating="60 A", **contact, **apart)
        self.wire("cables", "CB.load", "bow+")
        self.wire("cables", "bow-", minus)
        keys = {"voltage": f"{12 * self.series} V", "current": f"{self.random.uniform(10, 60):.2f} A"}
        if self.chance(0.5):
            keys["winding"] = self.ohms(1e-3, 3e-2)
        if self.chance(0.6):
            keys["throttle"] = f"{self.random.randint(0, 100)} %"
        if self.chance(0.2):
            keys["control"] = "direct"
        self.add("motors", "troll", **keys)
        self.wire("cables", "bow.plug+", "troll+")
        self.wire("cables", "troll-", "bow.plug-")

    def loads(self, posts, plus, minus):
        volts = 12 * self.series
        for n in range(self.random.randint(0, 3)):
            law = self.random.choice(["current", "power", "resistance"])
            size = self.random.uniform(0.2, 8)
            value = {"current": f"{size:.3f} A", "power": f"{size * 12:.2f} W", "resistance": f"{volts / size:.4f} ohm"}[law]
            self.add("loads", f"L{n}", **{law: value})
            self.device("fuses", f"F{n}")
            self.wire("cables", self.random.choice([plus, posts[0][0] + "+"]), f"F{n}.line")
            self.wire("cables", f"F{n}.load", f"L{n}+")
            self.wire("cables", f"L{n}-", self.random.choice([minus, posts[0][0] + "-"]))
        if self.chance(0.3):
            self.add("switches", "SW", rating="50 A", resistance=self.ohms(1e-4, 1e-3),
                     state=self.random.choice(["open", "closed"]))
            self.wire("cables", plus, "SW.1")
            self.wire("cables", "SW.2", "troll+")

    def charger(self, posts, plus, minus):
        one_each = self.chance(0.5)
        lands = [(name + "+", name + "-") for name in posts[0]] if one_each else [(plus, minus)]
        # high above the bank it gives all it can, near it it holds its volts, below it it gives nothing
        volts = self.random.choice([14.4, 13.3, 12.7, 12.0]) * (1 if one_each else self.series)
        self.add("chargers", "shore", outputs=len(lands), isolated=len(lands) > 1 or self.chance(0.5), voltage=f"{volts:.2f} V",
                 current=f"{self.random.uniform(5, 60):.1f} A", connected=True)
        for n, (positive, negative) in enumerate(lands, 1):
            self.wire("cables", f"shore.{n}+", positive, ideal=0)
            self.wire("cables", negative, f"shore.{n}-", ideal=0)

    def doubled_wire(self):
        """A second, ideal conductor beside one: where both are ideal they are a ring."""
        section = self.random.choice([s for s in ("jumpers", "cables") if self.sections.get(s)])
        keys = dict(self.random.choice(list(self.sections[section].values())))
        if self.chance(0.8):
            ideal = [w for w in self.sections[section].values() if w.get("resistance") == "0 ohm"]
            keys = dict(self.random.choice(ideal)) if ideal else keys
        self.add(section, "twin", **{"from": keys["to"], "to": keys["from"], "resistance": "0 ohm"})

    def miswire(self, posts):
        if self.chance(0.25):  # a battery the wrong way around
            turned = self.random.choice(self.random.choice(posts))
            swap = {turned + "+": turned + "-", turned + "-": turned + "+"}
            for section in ("jumpers", "cables"):
                for keys in self.sections.get(section, {}).values():
                    keys |= {end: swap.get(keys[end], keys[end]) for end in ("from", "to")}
        everything = [name for string in posts for name in string]
        for _ in range(self.random.randint(0, 2)):  # posts that nobody should join, through a thin wire
            a, b = self.random.sample([name + sign for name in everything for sign in "+-"], 2)
            self.add("jumpers", f"odd{len(self.sections.get('jumpers', {}))}",
                     **{"from": a, "to": b, "resistance": self.ohms(5e-2, 5.0)})
        if self.chance(0.4):
            self.add("batteries", "spare", voltage="12 V", emf="12.55 V", resistance="5 mohm")
            if self.chance(0.5):
                self.wire("jumpers", "spare+", everything[0] + "+")
        if self.chance(0.3):
            lost = self.random.choice(list(self.sections["cables"]))
            del self.sections["cables"][lost]

    def text(self):
        def value(v):
            return str(v).lower() if isinstance(v, bool) else str(v) if isinstance(v, int) else f'"{v}"'

        lines = ["bankwright = 1", 'name = "random bank (invented)"', "[system]", f'voltage = "{12 * self.series} V"',
                 'ambient = "30 degC"', 'joint = "0.1 mohm"']
        for section, parts in self.sections.items():
            lines.append(f"[{section}]")
            for name, keys in parts.items():
                lines.append(f"{name} = {{ " + ", ".join(f"{key} = {value(v)}" for key, v in keys.items()) + " }")
        return "\n".join(lines) + "\n"

