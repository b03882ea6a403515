"""What must not compile and cannot be asked for in C++ itself: Boost.Units fails hard on sums of absolute temperatures."""
import os
import subprocess
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
HEAD = """#include "bankwright/units/literals.hpp"
using namespace bankwright;
using namespace bankwright::literals;
"""

COMPILES = ["Temperature t = 25_degC + 10_K;", "TemperatureDifference d = 25_degC - 20_degC;", "Temperature t = celsius(-5);",
            "WireSize s = 6_AWG;", "Health h = 98_pct;"]
DOES_NOT = ["auto t = 25_degC + 25_degC;",  # 596 K is no sum of anything
            "auto t = -25_degC;",           # -298.15 K; -25 degC is celsius(-25)
            "auto t = 10_K - 25_degC;",
            "auto v = 12_V + 1_A;",
            "Voltage v = 12.0;",
            "StateOfCharge c = 0.9;",
            "WireSize s = 16.0;"]


def compiles(statement):
    command = [os.environ.get("CXX", "c++"), "-std=c++20", "-fsyntax-only", "-I", ROOT / "lib/include", "-x", "c++", "-"]
    source = HEAD + f"void f() {{ {statement} }}\n"
    return subprocess.run(command, input=source, text=True, capture_output=True).returncode == 0


@pytest.fixture(scope="module")
def outcome():
    with ThreadPoolExecutor(2) as pool:
        statements = COMPILES + DOES_NOT
        return dict(zip(statements, pool.map(compiles, statements)))


@pytest.mark.parametrize("statement", COMPILES)
def test_it_compiles(outcome, statement):
    assert outcome[statement]


@pytest.mark.parametrize("statement", DOES_NOT)
def test_it_does_not_compile(outcome, statement):
    assert not outcome[statement]
