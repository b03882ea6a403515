"""Does Python answer what books and tables print? The cases are those of tests/standards, each with its source there."""
import tomllib
from pathlib import Path

import pytest
from bankwright import Bank, units

CASES = Path(__file__).resolve().parent.parent / "standards"


def rows_of(source, quantity):
    """Every row under `quantity` as a dict, with what it may be off by; a value in quotes holds to half its last digit."""
    found = []
    for group in tomllib.loads((CASES / source / "cases.toml").read_text(encoding="utf-8"))["group"]:
        if group["quantity"] != quantity or (isinstance(group["within"], dict) and "away" in group["within"]):
            continue  # a misprint is of no use here
        for values in group["rows"]:
            row = dict(zip(group["columns"], values))
            if group["within"] == "printed":
                within = 0.5 * 10.0 ** -len(row["value"].partition(".")[2])
            elif isinstance(group["within"], dict):
                within = group["within"]["relative"] * abs(float(row["value"]))
            else:
                within = group["within"]
            found.append(row | {"value": float(row["value"]), "within": within * (1 + 1e-9)})
    assert found, f"{source} has no {quantity}"
    return found


def currents_of_row(batteries, link, main_leads, load):
    """Batteries of 20 mohm in a row, linked by `link` of that; battery 1 is the farthest from a main lead at one end."""
    bank = Bank()
    for k in range(1, batteries + 1):
        bank.battery(f"B{k}", voltage="12 V", emf="12.6 V", resistance="20 mohm")
    for k in range(1, batteries):
        for name, sign in (("p", "+"), ("n", "-")):
            bank.jumper(f"{name}{k}", f"B{k}{sign}", f"B{k + 1}{sign}", resistance=20.0 * link * units.mohm)
    bank.load("all", current=load * units.A)
    bank.cable("plus", f"B{batteries}+", "all+", resistance="1 mohm")
    bank.cable("minus", "all-", f"B{batteries if main_leads == 'one end' else 1}-", resistance="1 mohm")
    parts = bank.solve()["parts"]
    return [parts[f"B{k}"]["current"] for k in range(1, batteries + 1)]


@pytest.mark.parametrize("quantity", ["share", "current"])
def test_batteries_in_parallel_share_as_is_published(quantity):
    solved = {}
    for row in rows_of("parallel_sharing", quantity):
        wiring = (row["batteries"], row["link"], row["main_leads"], row.get("load", 100))
        if wiring not in solved:
            solved[wiring] = currents_of_row(*wiring)
        assert solved[wiring][row["battery"] - 1] == pytest.approx(row["value"], rel=0, abs=row["within"]), row


@pytest.mark.parametrize("source", ["other_voltage_tables", "state_of_charge_sheet"])
def test_a_rested_battery_stands_at_the_published_voltage(source):
    for row in rows_of(source, "open_circuit_voltage"):
        bank = Bank(ambient=row["fahrenheit"] * units.degF)
        bank.battery("A", chemistry=row["chemistry"], voltage="12 V", capacity="100 Ah", charge=row["charge"] * units.pct)
        assert bank.solve(rest=True)["parts"]["A"]["voltage"] == pytest.approx(row["value"], rel=0, abs=row["within"]), row


def test_a_thousand_feet_of_copper_resist_as_the_code_prints():
    for row in rows_of("nec_chapter_9", "stranded_resistance"):
        gauge = row["gauge"] if row["gauge"] > 0 else f"{1 - row['gauge']}/0"
        bank = Bank(ambient=row["temperature"] * units.degC).battery("A", voltage="12 V", emf="12 V", resistance="1 mohm")
        bank.load("lamp", current="1 A").cable("return", "lamp-", "A-", resistance="1 mohm")
        bank.cable("copper", "A+", "lamp+", size=f"{gauge} AWG", length="1000 ft")
        assert bank.solve()["parts"]["copper"]["voltage"] == pytest.approx(row["value"], rel=0, abs=row["within"]), row


def circuits_of_books():
    """(id, circuit, every row asked of it): those of tests/standards that a bank can be, with a battery in them."""
    for folder in ("lessons_in_electric_circuits", "openstax_circuits", "circuit_exercises"):
        book = tomllib.loads((CASES / folder / "cases.toml").read_text(encoding="utf-8"))
        asked = {}
        for group in book["group"]:
            if isinstance(group["within"], dict) and "away" in group["within"]:
                continue
            for values in group["rows"]:
                row = {"quantity": group.get("quantity"), "circuit": group.get("circuit"), "unit": group.get("unit"), **dict(zip(group["columns"], values))}
                if row["quantity"] not in ("current", "voltage", "heat") or not {"value", "of"} <= row.keys():
                    continue
                within = group["within"]
                if within == "printed":
                    within = 0.5 * 10.0 ** -len(str(row["value"]).partition(".")[2])
                elif isinstance(within, dict):
                    within = within["relative"] * abs(float(row["value"]))
                asked.setdefault(row["circuit"], []).append(row | {"value": float(row["value"]), "within": within * (1 + 1e-6) + 1e-9})
        for name, rows in asked.items():
            circuit = book["circuits"][name]
            if any(len(branch) > 4 for branch in circuit["branches"]):
                yield pytest.param(circuit, rows, id=f"{folder}-{name}")


def total(ohms):
    return sum(ohms) if isinstance(ohms, list) else ohms


def combined(of, value_of):
    """The sum that `a + b - c` stands for."""
    signs, names = [1], [[]]
    for word in of.split():
        if word in "+-":
            signs.append(1 if word == "+" else -1)
            names.append([])
        else:
            names[-1].append(word)
    return sum(sign * value_of(" ".join(name)) for sign, name in zip(signs, names))


@pytest.mark.parametrize("circuit, rows", circuits_of_books())
def test_a_circuit_of_a_book_is_a_bank(circuit, rows):
    """Nodes as busbars, a source as a battery, a resistor as a cable, a source of current as a load."""
    bank, ids, nodes = Bank(), {}, {}
    sources = [branch + [None] * (5 - len(branch)) for branch in circuit["branches"]]
    for name in dict.fromkeys(node for branch in sources + circuit.get("current_sources", []) for node in branch[1:3]):
        nodes[name] = f"node{len(nodes)}"
        bank.busbar(nodes[name])
    for number, (name, begin, end, ohms, emf) in enumerate(sources):
        ids[name] = part = f"part{number}"
        if emf is None:
            bank.cable(part, nodes[begin], nodes[end], resistance=total(ohms) * units.ohm)
            continue
        minus, plus = (begin, end) if total(emf) >= 0 else (end, begin)
        bank.battery(part, voltage="12 V", emf=abs(total(emf)) * units.V, resistance=total(ohms) * units.ohm)
        bank.jumper(f"{part}minus", nodes[minus], f"{part}-", resistance="0 ohm")
        bank.jumper(f"{part}plus", f"{part}+", nodes[plus], resistance="0 ohm")
        ids[name] = part if total(emf) >= 0 else f"-{part}"
    for number, (name, begin, end, amperes) in enumerate(circuit.get("current_sources", [])):
        ids[name] = part = f"drawn{number}"
        bank.load(part, current=amperes * units.A)
        bank.jumper(f"{part}plus", nodes[begin], f"{part}+", resistance="0 ohm")
        bank.jumper(f"{part}minus", f"{part}-", nodes[end], resistance="0 ohm")
    solution = bank.solve()
    parts, volts = solution["parts"], solution["terminals"]
    ohms_of = {branch[0]: total(branch[3]) for branch in sources}
    ground = volts[nodes[next(iter(nodes))]]

    def current(name):
        part = ids[name]
        return -parts[part[1:]]["current"] if part.startswith("-") else parts[part]["current"]

    for row in rows:
        answers = {"current": current,
                   "voltage": lambda name: volts[nodes[name]] - ground,
                   "heat": lambda name: current(name) ** 2 * row.get("ohms", ohms_of.get(name))}
        printed_in = 1e3 if row["unit"].startswith("m") else 1.0  # mA, mV, mW
        assert printed_in * combined(row["of"], answers[row["quantity"]]) == pytest.approx(row["value"], rel=0, abs=row["within"]), row
