"""Does every mistake of the catalog show, on a meter, what its story says? The readings were calculated by hand.

    # meter: red B+ black A- reads 12.7 V              with nothing switched on
    # clamp: J1 reads 2.82 kA                          whichever way the clamp is held
    # meter: red B+ black A- reads 12.54 V under way   with everything drawing what the file says
    # meter: red C+ black A- reads nothing             the two are not joined by anything

A reading is right if it rounds to what is written. That the mistake is found is tests/rules/test_rules.py's to see.
"""
import json
import re
import subprocess
from pathlib import Path

import pytest

CATALOG = sorted((Path(__file__).resolve().parent / "catalog").glob("*.toml"))
READING = re.compile(r"# (?:meter: red (\S+) black (\S+)|clamp: (\S+)) reads (?:(nothing)|(-?[\d.]+) (k?)(V|A))( under way)?$")


def readings(bank):
    """(how to measure, what is read or None, half a unit of the last digit, whether everything draws) of every reading."""
    lines = [line for line in bank.read_text(encoding="utf-8").splitlines() if line.startswith(("# meter:", "# clamp:"))]
    for line in lines:
        match = READING.match(line)
        assert match, f"{line}: not a reading"
        red, black, clamped, nothing, digits, kilo, unit, under_way = match.groups()
        assert nothing or unit == ("A" if clamped else "V"), line
        scale = 1000 if kilo else 1
        decimals = len(digits.partition(".")[2]) if digits else 0
        yield (red, black, clamped), None if nothing else float(digits) * scale, 0.5 * scale / 10**decimals, bool(under_way)


def solve(command, bank, under_way):
    done = subprocess.run([command, "solve", bank, "--format", "json", *([] if under_way else ["--rest"])],
                          capture_output=True, timeout=60)
    assert done.returncode == 0, done.stdout.decode() + done.stderr.decode()
    return json.loads(done.stdout)


def measured(solution, red, black, clamped):
    if clamped:
        return abs(solution["parts"][clamped]["current"])
    ends = solution["terminals"][red], solution["terminals"][black]
    return None if None in ends else ends[0] - ends[1]


@pytest.mark.parametrize("bank", CATALOG, ids=lambda bank: bank.stem)
def test_a_meter_shows_what_was_calculated_by_hand(command, bank):
    text = bank.read_text(encoding="utf-8")
    assert text.startswith("# Invented. ") and "# by hand: " in text
    wanted = list(readings(bank))
    assert wanted
    solutions = {under_way: solve(command, bank, under_way) for under_way in {reading[-1] for reading in wanted}}
    for where, value, rounding, under_way in wanted:
        shown = measured(solutions[under_way], *where)
        if value is None:
            assert shown is None, where
        else:
            assert shown == pytest.approx(value, abs=rounding, rel=0), where
