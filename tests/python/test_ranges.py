"""Does Python refuse what the command refuses, in its words?"""
import subprocess

import bankwright
import pytest
from bankwright import units


@pytest.fixture(scope="module")
def bow(root):
    return bankwright.read(root / "data/examples/bow-36v.toml")


@pytest.fixture(scope="module")
def charged(root):
    return bankwright.read(root / "data/examples/ferry-48v-lithium.toml")


MOMENTS = [{"throttle": "150 %"}, {"throttle": "-20 %"}, {"current": "-40 A"}]


@pytest.mark.parametrize("moment", MOMENTS)
@pytest.mark.parametrize("ask", ["solve", "discharge", "tolerance", "drawing", "report"])
def test_a_moment_out_of_its_range_is_refused(bow, ask, moment):
    with pytest.raises(ValueError, match="is out of range|is negative"):
        getattr(bow, ask)(**moment)


@pytest.mark.parametrize("moment", MOMENTS)
def test_a_sweep_at_such_a_moment_is_refused(bow, moment):
    with pytest.raises(ValueError, match="is out of range|is negative"):
        bow.sweep({"A.resistance": [0.004, 0.005]}, **moment)


@pytest.mark.parametrize("ask, options", [
    ("discharge", {"longest": "-1 h"}), ("discharge", {"longest": "0 s"}), ("discharge", {"rest": "-1 h"}),
    ("discharge", {"legs": [("150 %", "1 h")]}), ("discharge", {"legs": [("50 %", "0 s")]}),
    ("discharge", {"legs": [("50 %", "-1 min")]}),
    ("hookup", {"of_reading": "-50 %"}), ("hookup", {"of_reading": "50 %"}), ("hookup", {"digits": -1}),
    ("hookup", {"digits": 1000}), ("hookup", {"resolution": "0 V"}), ("hookup", {"resolution": "11 V"}),
    ("hookup", {"charge_within": "120 %"}),
    ("size", {"runtime": "-1 h"}), ("size", {"ambient": "500 degC"}),
    ("tolerance", {"samples": 0}), ("tolerance", {"threads": 0}), ("tolerance", {"threads": 5000}),
])
def test_an_option_out_of_its_range_is_refused(bow, ask, options):
    with pytest.raises(bankwright.Unsuitable, match="is out of range|must be above 0"):
        getattr(bow, ask)(**options)


@pytest.mark.parametrize("options", [{"charge": "150 %"}, {"charge": "500 %"}, {"charge": "-1 %"}, {"longest": "0 s"}])
def test_a_recharge_from_nowhere_is_refused(charged, options):
    with pytest.raises(bankwright.Unsuitable, match="is out of range|must be above 0"):
        charged.recharge(**options)


@pytest.mark.parametrize("words, ask, options", [
    (["solve", "--throttle", "150 %"], "solve", {"throttle": "150 %"}),
    (["solve", "--current=-40 A"], "solve", {"current": -40.0 * units.A}),
    (["discharge", "--for", "0 s"], "discharge", {"longest": "0 s"}),
    (["hookup", "--resolution", "11 V"], "hookup", {"resolution": "11 V"}),
    (["hookup", "--charge-within", "120 %"], "hookup", {"charge_within": "120 %"}),
    (["size", "--ambient", "500 degC"], "size", {"ambient": "500 degC"}),
])
def test_the_words_are_the_command_s(command, bow, words, ask, options):
    refused = subprocess.run([command, words[0], bow.file, *words[1:]], capture_output=True, text=True)
    assert refused.returncode == 2
    with pytest.raises(bankwright.Unsuitable) as raised:
        getattr(bow, ask)(**options)
    said = str(raised.value).split(": ", 1)[1]
    assert said in refused.stderr
