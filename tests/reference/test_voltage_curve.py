"""Open-circuit voltage and its inverse against SciPy: monotone cubic, straight lines and Brent's root finding.

The points come from data/tables as published; everything between them is computed here a second time.
"""
import csv
import pathlib
import subprocess
import tomllib

import numpy as np
import pytest
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

ROOT = pathlib.Path(__file__).resolve().parents[2]
TABLES = {table["name"]: table for table in
          tomllib.loads((ROOT / "data/tables/open_circuit_voltage.toml").read_text(encoding="utf-8"))["table"]}
CHARGES = [0.0, 0.25, 0.5, 0.75, 1.0]


def lead_points(name, celsius):
    rows = np.array(TABLES[name]["rows"], dtype=float)
    return np.array([np.interp(celsius * 1.8 + 32, rows[:, 0], rows[:, 1 + k]) for k in range(5)])


def reference(chemistry, celsius):
    """Volts of one cell over charge, as a function."""
    if chemistry in ("flooded", "gel"):
        return PchipInterpolator(CHARGES, lead_points(chemistry, celsius) / 6)
    if chemistry == "agm":
        rows = np.array(TABLES["agm"]["rows"], dtype=float)
        moved = lead_points("flooded", celsius)[4] - lead_points("flooded", 25.0)[4]
        return PchipInterpolator(CHARGES, ((rows[:, 1] + rows[:, 2]) / 2 + moved) / 6)
    rows = np.array(TABLES[chemistry]["rows"], dtype=float)
    if chemistry == "lifepo4":  # the end of a charge is not rest: the last row but one is full
        rows = rows[:-1]
        rows[-1, 0] = 1.0
    return lambda charge: np.interp(charge, rows[:, 0], rows[:, 1])


def printed():
    found = sorted(ROOT.glob("build/*/bin/test_reference"), key=lambda path: path.stat().st_mtime)
    assert found, "test_reference is not built; tests/run.sh builds it"
    run = subprocess.run([found[-1], "--no-colors", "--test-case=voltage curve as comma-separated values"],
                         capture_output=True, text=True, check=True)
    rows = [row for row in csv.reader(run.stdout.splitlines()) if row and row[0] == "curve"]
    assert len(rows) == 5025
    return rows


@pytest.fixture(scope="module")
def rows():
    return printed()


@pytest.mark.parametrize("chemistry", ["flooded", "agm", "gel", "lifepo4", "nmc"])
def test_the_curve_is_scipys(rows, chemistry):
    worst = 0.0
    for _, _, celsius, charge, volts, _, _ in (row for row in rows if row[1] == chemistry):
        worst = max(worst, abs(float(reference(chemistry, float(celsius))(float(charge))) - float(volts)))
    assert worst < 1e-12  # [V] rounding of a few operations on about 2 V


@pytest.mark.parametrize("chemistry", ["flooded", "agm", "gel", "lifepo4", "nmc"])
def test_the_inverse_is_brents(rows, chemistry):
    worst, compared = 0.0, 0
    for _, _, celsius, _, _, reading, found in (row for row in rows if row[1] == chemistry):
        curve = reference(chemistry, float(celsius))
        if not float(curve(0.0)) < float(reading) < float(curve(1.0)):
            assert float(found) in (0.0, 1.0)
            continue
        root = brentq(lambda charge: float(curve(charge)) - float(reading), 0.0, 1.0, xtol=1e-14)
        worst, compared = max(worst, abs(root - float(found))), compared + 1
    assert compared > 900
    assert worst < 1e-11  # the flattest curve turns 1e-13 V of rounding into 1e-12 of charge
