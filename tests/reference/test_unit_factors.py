"""Every unit that is read, against GNU units: another program with its own table of factors."""
import os
import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PROGRAM = Path(os.environ.get("BANKWRIGHT_UNIT_FACTORS", ROOT / "build/dev/bin/unit_factors"))

SI = {"a voltage": "V", "a current": "A", "a resistance": "ohm", "a power": "W", "an energy": "J", "a charge": "C",
      "a length": "m", "a cross-section": "m^2", "a duration": "s", "a mass": "kg", "a force": "N", "a torque": "N m",
      "a rotational speed": "radian/s", "a let-through I2t": "A^2 s", "a resistance per length": "ohm/m",
      "a voltage per kelvin": "V/K", "a temperature difference": "K", "a percentage": "1"}

# Only spelling, never a factor: GNU units has its own names, and h and d are other things there.
OTHER_NAMES = {"h": "hour", "d": "day", "Ah": "A hour", "mAh": "mA hour", "Wh": "W hour", "kWh": "kW hour", "%": "percent",
               "Nm": "N m", "r/min": "revolution/min", "rpm": "revolution/min", "C": "coulomb", "kcmil": "1000 circularmil",
               "cmil": "circularmil", "rad/s": "radian/s"}


def gnu_name(spelling):
    name = spelling
    for here, there in (("\u03a9", "ohm"), ("\u2126", "ohm"), ("\u00b5", "u"), ("\u03bc", "u"), ("\u00b7", " "), ("\u00b2", "2")):
        name = name.replace(here, there)
    name = OTHER_NAMES.get(name, name)
    return re.sub(r"(?<=[A-Za-z])2(?![0-9])", "^2 ", name).strip()


def gnu(have, want):
    run = subprocess.run(["units", "--terse", "--output-format", "%.17g", have, want], capture_output=True, text=True,
                         env=os.environ | {"LC_ALL": "C.UTF-8"})
    text = run.stdout.strip()
    assert run.returncode == 0 and re.fullmatch(r"[-+0-9.e]+", text), f"units {have!r} {want!r}: {text} {run.stderr}"
    return float(text)


def gnu_gauge(gauge):
    number = "0" if gauge == "1/0" else "g" + "0" * int(gauge[0]) if "/0" in gauge else gauge
    return gnu(f"circlearea(0.5 wiregauge({number}))", "m^2")


def gnu_kelvin(text):
    degrees, scale = text.split(" ")
    scale = {"degC": "C", "\u00b0C": "C", "\u2103": "C", "degF": "F", "\u00b0F": "F", "\u2109": "F", "K": "K"}[scale]
    return gnu(f"{degrees} K" if scale == "K" else f"temp{scale}({degrees})", "K")


@pytest.fixture(scope="module")
def readings():
    assert PROGRAM.exists(), f"{PROGRAM} is not built; tests/run.sh builds it"
    lines = subprocess.run([PROGRAM], capture_output=True, text=True, check=True, encoding="utf-8").stdout.splitlines()
    return [(noun, spelling, float(value)) for noun, spelling, value in (line.split("\t") for line in lines)]


def test_the_program_lists_every_quantity(readings):
    assert {noun for noun, _, _ in readings} == set(SI) | {"a temperature", "a wire gauge"}
    assert len(readings) > 120
    assert sum(noun == "a wire gauge" for noun, _, _ in readings) == 34


def test_every_unit_has_the_factor_that_gnu_units_gives_it(readings):
    wrong = []
    for noun, spelling, value in readings:
        if noun in SI:
            other = gnu(f"1 {gnu_name(spelling)}", SI[noun])
            if abs(value - other) > 1e-12 * abs(other):
                wrong.append(f"{spelling}: {value!r}, GNU units {other!r}")
    assert not wrong, "\n".join(wrong)


def test_every_temperature_scale_is_that_of_gnu_units(readings):
    points = [(spelling, value) for noun, spelling, value in readings if noun == "a temperature"]
    assert len(points) == 14
    for spelling, value in points:
        assert value == pytest.approx(gnu_kelvin(spelling), rel=1e-12), spelling


def test_every_gauge_has_the_area_that_gnu_units_gives_it(readings):
    for noun, gauge, value in readings:
        if noun == "a wire gauge":
            assert value == pytest.approx(gnu_gauge(gauge), rel=1e-12), gauge
