"""Does what a command costs grow no faster than it must with the number of parts of one kind?

Counted instructions at three sizes, each twice the one before: they repeat exactly where times do not. Of a cost a n^k the
differences between neighbors grow by 2^k whatever the start of the program costs, so that k is told from three counts. The
limits are what was counted, plus 0.15 for another compiler. A run of more than the largest size is held by seconds:
2 processor seconds with 64 parts of a kind, unless an immediate refusal says why not.
"""
import math
import re
import resource
import shutil
import subprocess

import large_banks
import pytest

SLACK = 0.15
GROWTH = {  # command, kind: sizes, exponent counted
    ("check", "parallel"): ((16, 32, 64), 2.15),
    ("check", "tied"): ((8, 16, 32), 1.99),
    ("check", "loads"): ((16, 32, 64), 1.84),
    ("short-circuit", "series"): ((32, 64, 128), 2.41),
    ("discharge", "motors"): ((6, 12, 24), 1.50),
    ("size", "loads"): ((8, 16, 32), 1.61),
}


def written(folder, kind, count):
    path = folder / f"{kind}-{count}.toml"
    path.write_text(getattr(large_banks, kind)(count), encoding="utf-8")
    return path


def instructions(command, asked, bank):
    done = subprocess.run(["valgrind", "--tool=callgrind", "--callgrind-out-file=/dev/null", command, asked, bank],
                          capture_output=True, text=True)
    assert done.returncode in (0, 1), done.stderr[-2000:]
    return int(re.search(r"Collected : (\d+)", done.stderr).group(1))


@pytest.mark.parametrize("asked, kind", GROWTH, ids=[" ".join(pair) for pair in GROWTH])
def test_instructions_grow_no_faster(command, tmp_path, asked, kind):
    if not shutil.which("valgrind"): pytest.skip("valgrind is not installed")
    sizes, reached = GROWTH[asked, kind]
    counted = [instructions(command, asked, written(tmp_path, kind, size)) for size in sizes]
    exponent = math.log2((counted[2] - counted[1]) / (counted[1] - counted[0]))
    assert exponent <= reached + SLACK, f"n^{exponent:.2f} of {counted}, n^{reached} before"


@pytest.mark.parametrize("kind", ["parallel", "tied", "series", "motors", "loads", "chargers"])
@pytest.mark.parametrize("asked", ["check", "solve", "discharge", "recharge", "short-circuit", "size", "tolerance", "draw"])
def test_64_parts_of_a_kind_take_no_two_seconds(command, tmp_path, asked, kind):
    bank = written(tmp_path, kind, 32 if kind == "tied" else 64)
    before = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime
    subprocess.run([command, asked, bank], capture_output=True, timeout=60)
    assert resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime - before <= 2.0
