"""Does a further reading cost little, and does a tracer hold no more after many? Instructions, which repeat exactly where times do
not: three strings of four with one bad joint, read until it is found (trace_counts.cpp)."""
import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def program(tmp_path_factory):
    binary = tmp_path_factory.mktemp("counts") / "trace_counts"
    subprocess.run(["c++", "-std=c++20", "-O2", "-DFMT_HEADER_ONLY=1", f"-I{ROOT}/lib/include", f"-I{ROOT}/tests",
                    "-isystem/usr/include/eigen3", ROOT / "tests/bench/trace_counts.cpp", "-o", binary, "-pthread"], check=True)
    return binary


def instructions(program, first, further):
    if not shutil.which("valgrind"):
        pytest.skip("valgrind is not installed")
    done = subprocess.run(["valgrind", "--tool=callgrind", "--callgrind-out-file=/dev/null", program, str(first), str(further)],
                          capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return int(re.search(r"Collected : (\d+)", done.stderr).group(1))


def test_a_further_reading_costs_a_tenth_of_the_first_call(program):
    nothing, first, both = (instructions(program, *asked) for asked in ((0, 0), (5, 0), (5, 1)))
    assert (both - first) <= (first - nothing) / 10


def test_a_tracer_does_not_grow_with_use(program):
    done = subprocess.run([program, "held"], capture_output=True, text=True, check=True)
    few, many = map(int, done.stdout.split())
    assert many <= 1.1 * few
