"""Do the kernels still need as few instructions as they did? Counts repeat exactly where times do not.

Unit: instructions for one bank, divided by the floating-point operations that an LDL^T of this bank cannot do without
(760, three strings of four). `powers` are two constant powers on it, `moved` is one link on another post,
`planned` solves one bank after the other with everything that a solution holds, `map` gives the batteries' currents
under one constant power. The limits are what g++ 12 -O2 gave, plus a tenth for another compiler.
"""
import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
OPERATIONS = 760
SLACK = 1.10
REACHED = {"block-avx2": 0.855, "block-portable": 1.837, "rows-avx2": 1.541, "rows-portable": 3.035,
           "samples-avx2": 1.338, "samples-portable": 2.839, "powers-avx2": 6.020, "powers-portable": 9.967,
           "moved-avx2": 0.391, "moved-portable": 0.693, "planned": 85.49,
           "map-avx2": 0.488, "map-portable": 0.850}


@pytest.fixture(scope="module")
def program(tmp_path_factory):
    if not shutil.which("valgrind"):
        pytest.skip("valgrind is not installed")
    binary = tmp_path_factory.mktemp("counts") / "kernel_counts"
    subprocess.run(["c++", "-std=c++20", "-O2", f"-I{ROOT}/lib/include", f"-I{ROOT}/tests", "-isystem/usr/include/eigen3",
                    ROOT / "tests/bench/kernel_counts.cpp", "-o", binary, "-pthread"], check=True)
    return binary


def instructions(program, kernel, times):
    done = subprocess.run(["valgrind", "--tool=callgrind", "--callgrind-out-file=/dev/null", program, kernel, str(times)],
                          capture_output=True, text=True)
    if done.returncode == 77:
        pytest.skip("this processor does not have the instructions")
    assert done.returncode == 0, done.stderr
    return int(re.search(r"Collected : (\d+)", done.stderr).group(1)), int(done.stdout)


@pytest.mark.parametrize("kernel", REACHED)
def test_instructions_for_a_bank(program, kernel):
    few, banks_few = instructions(program, kernel, 10)
    many, banks_many = instructions(program, kernel, 110)
    ratio = (many - few) / (banks_many - banks_few) / OPERATIONS
    assert ratio <= REACHED[kernel] * SLACK, f"{kernel}: {ratio:.3f} instructions for each operation, {REACHED[kernel]} before"
    assert ratio >= REACHED[kernel] / 1.25, f"{kernel}: {ratio:.3f} instructions for each operation: lower the limit"
