"""Is it still cheap to include us? The quick form of include_cost.py: the umbrella and the five dearest doors, with slack for a busy
machine. All doors: `/usr/bin/python3 tests/bench/include_cost.py`."""
import pytest
from include_cost import UMBRELLA, ceiling, ratios

SLACK = 1.25
DEAREST = [f"bankwright/{door}.hpp" for door in ("reports/traced", "reports/trace_text", "analyses/trace",
                                                 "analyses/prospective_current", "rules/settings")]


@pytest.mark.parametrize("header", [UMBRELLA, *DEAREST])
def test_a_door_costs_a_few_times_what_the_standard_library_does(header):
    ratio = ratios([header], repeats=2)[header]
    assert ratio <= ceiling(header) * SLACK, f"{header}: {ratio:.2f} times a program with <vector>, <string> and <map>"
