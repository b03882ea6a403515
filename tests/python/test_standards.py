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


def currents_of_row(batteries, link, take_off, load):
    """Batteries of 20 mohm in a row, linked by `link` of that; battery 1 is the farthest from a take-off at one end."""
    bank = Bank()
    for k in range(1, batteries + 1):
        bank.battery(f"B{k}", voltage="12 V", emf="12.6 V", resistance="20 mohm")
    for k in range(1, batteries):
        for name, sign in (("p", "+"), ("n", "-")):
            bank.jumper(f"{name}{k}", f"B{k}{sign}", f"B{k + 1}{sign}", resistance=20.0 * link * units.mohm)
    bank.load("all", current=load * units.A)
    bank.cable("plus", f"B{batteries}+", "all+", resistance="1 mohm")
    bank.cable("minus", "all-", f"B{batteries if take_off == 'one end' else 1}-", resistance="1 mohm")
    parts = bank.solve()["parts"]
    return [parts[f"B{k}"]["current"] for k in range(1, batteries + 1)]


@pytest.mark.parametrize("quantity", ["share", "current"])
def test_batteries_in_parallel_share_as_is_published(quantity):
    solved = {}
    for row in rows_of("parallel_sharing", quantity):
        wiring = (row["batteries"], row["link"], row["take_off"], row.get("load", 100))
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
    for row in rows_of("nec_chapter_9", "copper_resistance"):
        gauge = row["gauge"] if row["gauge"] > 0 else f"{1 - row['gauge']}/0"
        bank = Bank(ambient=row["temperature"] * units.degC).battery("A", voltage="12 V", emf="12 V", resistance="1 mohm")
        bank.load("lamp", current="1 A").cable("return", "lamp-", "A-", resistance="1 mohm")
        bank.cable("copper", "A+", "lamp+", size=f"{gauge} AWG", length="1000 ft")
        assert bank.solve()["parts"]["copper"]["voltage"] == pytest.approx(row["value"], rel=0, abs=row["within"]), row
