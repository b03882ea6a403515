"""`bankwright tolerance` against samples made and solved in NumPy: two batteries in parallel, a load of constant current."""
import json
import subprocess

import numpy as np
import pytest

BANK = """bankwright = 1
[batteries]
A = { voltage = "12 V", emf = "12.75 V +/- 0.4 %", resistance = "4 mohm +/- 20 %" }
B = { voltage = "12 V", emf = "12.70 V +/- 0.4 %", resistance = "5 mohm +/- 30 %" }
[cables]
ab = { from = "A+", to = "B+", resistance = "1.5 mohm +/- 40 %" }
ba = { from = "A-", to = "B-", resistance = "0 ohm" }
p = { from = "A+", to = "L+", resistance = "2 mohm +/- 10 %" }
n = { from = "L-", to = "A-", resistance = "0 ohm" }
[loads]
L = { current = "60 A" }
"""


def test_mean_and_deviation_are_numpys(command):
    ran = subprocess.run([command, "tolerance", "-", "--samples", "1000000", "--check", "0", "--format", "json"], input=BANK,
                         capture_output=True, text=True, timeout=60)
    assert ran.returncode == 0, ran.stderr
    answers = {(one["part"], one["unit"]): one for one in json.loads(ran.stdout)["answers"]}

    draw = np.random.default_rng(12345)
    size = 1_000_000

    def even(center, share):
        return center * (1 + share * draw.uniform(-1, 1, size))

    ea, eb = even(12.75, 0.004), even(12.70, 0.004)
    ra, rb = even(4e-3, 0.2), even(5e-3, 0.3) + even(1.5e-3, 0.4)
    lead = even(2e-3, 0.1)
    post = (ea / ra + eb / rb - 60) / (1 / ra + 1 / rb)  # Millman
    expected = {("L", "V"): post - 60 * lead, ("A", "A"): (ea - post) / ra, ("B", "A"): (eb - post) / rb}
    for key, values in expected.items():
        ours = answers[key]
        # Both are estimates from a million samples: a mean is known to 1/1000 of the deviation, a deviation to 1/1400.
        assert ours["mean"] == pytest.approx(values.mean(), abs=6e-3 * values.std())
        assert ours["deviation"] == pytest.approx(values.std(), rel=6e-3)
        assert ours["least"] == pytest.approx(values.min(), abs=0.5 * values.std())
