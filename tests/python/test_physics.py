"""The functions of the trade in Python: against the published values of tests/standards, in shapes, units and errors."""
import math
import tomllib
from pathlib import Path

import bankwright
import numpy as np
import pytest
from bankwright import physics, units

CASES = Path(__file__).resolve().parent.parent / "standards"
AH = 3600.0
FOOT, CIRCULAR_MIL = 0.3048, math.pi / 4 * 25.4e-6**2


def gauge(number):
    return f"{number} AWG" if number > 0 else f"{1 - number}/0 AWG"


def copper(row):
    if "gauge" in row:
        return gauge(row["gauge"])
    return row["square_millimeters"] * units.mm2 if "square_millimeters" in row else np.array(row["circular_mils"] * CIRCULAR_MIL)


def ampacity(row):
    return physics.ampacity(copper(row), row["insulation"] * units.degC, engine_space=row.get("engine_space", 0) > 0, bundle=row.get("bundle", 1))


def per_length(row, **more):
    far = 1000 * (units.m if row["unit"] == "ohm/km" else units.ft)
    return physics.wire_resistance(copper(row), far, row.get("temperature", 20) * units.degC, **more)


def peukert(row):
    return physics.capacity_at_current(row["current"] * units.A, row["capacity"] * units.Ah, hours=row["rated_hours"] * units.h, exponent=row["exponent"]) / AH


def at_least(row):
    return physics.trip_band(row["class"], row["rating"] * units.A, row["multiple"] * row["rating"] * units.A).at_least


def at_most(row):
    return physics.trip_band(row["class"], row["rating"] * units.A, row["multiple"] * row["rating"] * units.A).at_most


def in_fahrenheit(kelvin):
    return (kelvin - 273.15) * 1.8 + 32.0


ASKED = {
    "ampacity": ampacity,
    "ampacity_of_section": ampacity,
    "table_5": ampacity,
    "awg_circular_mils": lambda row: physics.area(gauge(row["gauge"])) / CIRCULAR_MIL,
    "sae_circular_mils": lambda row: physics.area(gauge(row["gauge"]).replace("AWG", "SAE")) / CIRCULAR_MIL,
    "stranded_resistance": per_length,
    "tinned_wire_resistance": lambda row: per_length(row, tinned=True),
    "wire_resistance": lambda row: physics.wire_resistance(copper(row), row["feet"] * units.ft, row["temperature"] * units.degC),
    "open_circuit_voltage": lambda row: physics.rested_voltage(row.get("chemistry", "flooded"), row["charge"] * units.pct, temperature=row["fahrenheit"] * units.degF),
    "gravity_at_80": lambda row: physics.gravity_at_80(row["gravity"], row["fahrenheit"] * units.degF),
    "specific_gravity": lambda row: physics.specific_gravity(row["charge"] * units.pct, row["fahrenheit"] * units.degF),
    "freezing_point": lambda row: in_fahrenheit(physics.freezing_point(row["gravity"])),
    "peukert_capacity": peukert,
    "peukert_hours": lambda row: peukert(row) / row["current"],
    "motor_input": lambda row: row["voltage"] * physics.motor_current(row["voltage"] * units.V, row["voltage"] * units.V, row["current"] * units.A, winding=row["winding"] * units.ohm),
    "trip_at_least": at_least,
    "trip_at_most": at_most,
}


def published():
    for path in sorted(CASES.glob("*/cases.toml")):
        book = tomllib.loads(path.read_text(encoding="utf-8"))
        for group in book["group"]:
            quantity, within = group.get("quantity"), group["within"]
            if book["kind"] != "devices" or quantity not in ASKED or (isinstance(within, dict) and "away" in within):
                continue
            for values in group["rows"]:
                row = {"unit": group["unit"], **dict(zip(group["columns"], values))}
                yield path.parent.name, quantity, row, within


def test_every_published_value_that_has_a_function_is_answered_as_in_c():
    checked = {}
    for source, quantity, row, within in published():
        answer, value = ASKED[quantity](row), float(row["value"])
        if within == "printed":
            below = above = 0.5 * 10.0 ** -len(str(row["value"]).partition(".")[2])
        elif isinstance(within, dict):
            below = within.get("relative", within.get("below", 0.0)) * abs(value)
            above = within.get("relative", within.get("above", 0.0)) * abs(value)
        else:
            below = above = within
        least, most = value - below - 1e-9 * abs(value) - 1e-12, value + above + 1e-9 * abs(value) + 1e-12
        if math.isinf(value):
            assert answer == value, (source, quantity, row)
        else:
            assert least <= answer <= most, (source, quantity, row, answer)
        checked[quantity] = checked.get(quantity, 0) + 1
    assert sum(checked.values()) >= 650
    assert set(checked) == set(ASKED)


@pytest.mark.parametrize("answer, value", [
    (lambda: physics.ampacity("6 AWG", "105 degC"), 120.0),  # 33 CFR 183.425 Table 5
    (lambda: physics.withstand("10 mm2", "70 degC"), (115.0 * 10) ** 2),  # IEC 60364-5-54: k = 115 of PVC
    (lambda: physics.withstand_time("10 mm2", "1000 A", "70 degC"), 1.32),
    (lambda: physics.time_at_current("5 A", "100 Ah", chemistry="agm"), 20 * 3600.0),  # its rating
    (lambda: physics.charge_at_voltage("flooded", "12.24 V", temperature="80 degF"), 0.5),
    (lambda: physics.motor_current("18 V", "36 V", "50 A"), 12.5),  # the law of the propeller: as V squared
    (lambda: physics.motor_current("36 V", "36 V", "50 A", throttle="50 %"), 6.25),  # and at part throttle as its cube
    (lambda: physics.wire_temperature("6 AWG", "120 A", "105 degC"), 273.15 + 105),  # what an ampacity is
    (lambda: physics.thinnest_gauge("16 mm2"), 5.0),
])
def test_single_values_give_floats(answer, value):
    got = answer()
    assert isinstance(got, float)
    assert got == pytest.approx(value, rel=3e-3)


def test_arrays_broadcast_and_lists_of_texts_are_arrays():
    charges = np.linspace(0.0, 1.0, 5)[:, None]
    volts = physics.rested_voltage("agm", charges, temperature=np.array([0.0, 25.0]) * units.degC)
    assert volts.shape == (5, 2)
    assert np.all(np.diff(volts, axis=0) > 0)
    assert volts[4, 1] == physics.rested_voltage("agm", "100 %")
    sizes = ["6 AWG", "2/0 AWG", "16 mm2"]
    together = physics.ampacity(sizes, "105 degC")
    assert together.tolist() == [physics.ampacity(size, "105 degC") for size in sizes]
    drops = physics.voltage_drop(sizes, np.array([[3.0], [6.0]]), 40 * units.A, "105 degC")
    assert drops.shape == (2, 3)
    assert drops[1] == pytest.approx(2 * drops[0])
    assert physics.ampacity(np.array([6, 4]) * units.AWG, "105 degC").tolist() == [120.0, 160.0]
    band = physics.trip_band("iso-8820-3", "30 A", np.array([30.0, 60.0, 180.0]))
    assert band.at_least.shape == band.at_most.shape == (3,)


def test_what_is_not_known_is_nan_and_stays_nan():
    assert math.isnan(physics.ampacity("22 AWG"))
    assert math.isnan(physics.thinnest_gauge("500 mm2"))
    charges = np.array([0.5, np.nan])
    assert np.isnan(physics.rested_voltage("gel", charges)).tolist() == [False, True]
    assert np.isnan(physics.motor_current(np.array([np.nan, 12.0]), "12 V", "30 A")).tolist() == [True, False]


@pytest.mark.parametrize("ask, error, words", [
    (lambda: physics.ampacity(6, "105 degC"), TypeError, "needs a unit"),
    (lambda: physics.ampacity("6 V"), ValueError, "`size`"),
    (lambda: physics.rested_voltage("agm", "150 %"), ValueError, "`charge` is 150 %; allowed is from 0 % to 100 %"),
    (lambda: physics.rested_voltage("agm", np.array([0.2, 1.5])), ValueError, "`charge` is 150 %"),
    (lambda: physics.rested_voltage("lead", "50 %"), ValueError, "`chemistry` is `lead`; allowed is one of `flooded`"),
    (lambda: physics.trip_band("slow", "30 A", "60 A"), ValueError, "`trip_class` is `slow`"),
    (lambda: physics.freezing_point(1265), ValueError, "`gravity` is 1265; allowed is from 1 to 1.4"),
    (lambda: physics.voltage_drop("6 AWG", "10 ft", "-5 A"), ValueError, "`current`"),
    (lambda: physics.capacity_at_current("20 A", "100 Ah"), ValueError, "none is given"),
    (lambda: physics.capacity_at_current("20 A", "100 Ah", exponent=3), ValueError, "`exponent` is 3; allowed is from 1 to 2"),
    (lambda: physics.rested_voltage("agm", np.zeros(3), temperature=np.full(2, 298.0)), ValueError, "do not go together"),
    (lambda: physics.motor_current("12 V", "12 V", "30 A", winding="1 ohm"), ValueError, "`winding`"),
])
def test_what_cannot_be_answered_is_refused_with_what_is_allowed(ask, error, words):
    with pytest.raises(error) as refused:
        ask()
    assert isinstance(refused.value, bankwright.errors.Error)
    assert words in str(refused.value)


def test_every_class_of_breaker_and_fuse_has_a_band():
    classes = physics.trip_classes()
    assert len(classes) >= 20
    for name in classes:
        band = physics.trip_band(name, "10 A", np.array([10.0, 100.0]))
        assert np.all(band.at_least <= band.at_most)
