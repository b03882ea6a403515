"""Are a sweep's answers those of the banks one by one, whatever is swept, and those of the closed forms?"""
import pickle

import bankwright
import numpy as np
import pytest
from bankwright import Bank, units
from hypothesis import given, settings
from hypothesis import strategies as st


@pytest.fixture(scope="module")
def bow():
    from pathlib import Path

    return bankwright.read(Path(__file__).resolve().parent.parent.parent / "data/examples/bow-36v.toml")


def one_by_one(bank, name, texts, measure):
    part, _, what = measure.rpartition(".")
    return [bank.changed({name: text}).solve()["parts"][part][what] for text in texts]


@pytest.mark.parametrize("name, texts", [
    ("A.resistance", ["3 mohm", "4 mohm", "30 mohm"]),
    ("A.charge", ["20 %", "60 %", "100 %"]),           # through the chemistry
    ("A.emf", ["0 V", "12 V", "12.9 V"]),
    ("main.length", ["1 ft", "10 ft", "40 ft"]),
    ("main.size", ["6 AWG", "2 AWG", "16 mm2"]),
    ("troll.throttle", ["30 %", "50 %", "100 %"]),
    ("CB.resistance", ["0.5 mohm", "1 mohm", "9 mohm"]),
    ("bow.contact", ["0.2 mohm", "1 mohm", "2 mohm"]),
    ("system.ambient", ["-10 degC", "20 degC", "40 degC"]),
])
def test_a_sweep_is_its_banks_one_by_one(bow, name, texts):
    part, _, key = name.rpartition(".")
    section = next(s for s in bankwright.keys.sections().values() if key in s.keys and (
        s.name == "system" if part == "system" else part in bow.to_dict().get(s.name, {})))
    kind = section.keys[key].kind
    si = np.array([bankwright.quantities.quantity_in_si(text, kind) for text in texts])
    measured = ["A.current", "troll.voltage", "main.current", "troll.current"]
    sweep = bow.sweep({name: si}, measured)
    for measure in measured:
        np.testing.assert_allclose(sweep[measure], one_by_one(bow, name, texts, measure), rtol=1e-9)


def test_units_may_stand_in_the_name_or_with_the_array(bow):
    milliohms = np.array([2.0, 4.0, 8.0])
    plain = bow.sweep({"A.resistance": milliohms / 1e3})["troll.voltage"]
    np.testing.assert_allclose(bow.sweep({"A.resistance [mohm]": milliohms})["troll.voltage"], plain, rtol=1e-15)
    np.testing.assert_allclose(bow.sweep({"A.resistance": milliohms * units.mohm})["troll.voltage"], plain, rtol=1e-15)
    warm = bow.sweep({"system.ambient [degF]": [14.0, 77.0]})
    np.testing.assert_allclose(warm.values["system.ambient"], [263.15, 298.15], rtol=1e-14)
    with pytest.raises(bankwright.BadQuantity):
        bow.sweep({"A.resistance [V]": milliohms})
    with pytest.raises(bankwright.BadQuantity):
        bow.sweep({"A.resistance": ["4 mohm"]})


def test_shapes_are_broadcast_and_nothing_is_copied(bow):
    grid = bow.sweep({"A.resistance": np.linspace(3e-3, 5e-3, 4)[:, None], "B.resistance": np.linspace(3e-3, 5e-3, 5)})
    assert grid["A.current"].shape == (4, 5) and len(grid) == 20
    assert grid["A.current"].base is not None and not grid.answers.flags.writeable
    assert grid["A.current"][1, 2] == bow.sweep({"A.resistance": [grid.values["A.resistance"][1, 2]],
                                                 "B.resistance": [grid.values["B.resistance"][1, 2]]})["A.current"][0]
    frame = grid.frame()
    assert list(frame)[:3] == ["A.resistance [ohm]", "B.resistance [ohm]", "A.current [A]"] and len(frame) == 20
    assert pickle.loads(pickle.dumps(grid)).frame().equals(frame)


@pytest.mark.parametrize("example", ["houseboat-12v", "bow-36v"])
def test_an_answer_does_not_hang_on_where_in_a_sweep_it_is_asked_for(root, example):
    bank = bankwright.read(root / f"data/examples/{example}.toml")
    values = np.linspace(2e-3, 9e-3, 200)
    whole = bank.sweep({f"{bank.solve().battery_names[0]}.resistance": values}).answers
    for first in range(1, 17):  # a bank goes through the solver beside others, here by one place further each time
        rest = bank.sweep({f"{bank.solve().battery_names[0]}.resistance": values[first:]}).answers
        np.testing.assert_array_equal(rest, whole[:, first:])  # to the last bit


def test_threads_change_nothing(bow):
    ohms = np.linspace(1e-3, 20e-3, 5001)
    one = bow.sweep({"A.resistance": ohms}, threads=1)
    np.testing.assert_array_equal(one.answers, bow.sweep({"A.resistance": ohms}, threads=3).answers)


def test_no_operating_point_is_no_number():
    bank = Bank().battery("A", voltage="12 V", emf="12 V", resistance="10 mohm")
    bank.load("big", power="100 W").cable("p", "A+", "big+", resistance="10 mohm").cable("n", "big-", "A-", resistance="10 mohm")
    watts = np.array([100.0, 1199.0, 1201.0])  # most power: 12^2 / (4 x 0.03) = 1200 W
    sweep = bank.sweep({"big.power": watts})
    assert list(np.isnan(sweep["big.voltage"])) == [False, False, True] and sweep.unanswered == 1


@pytest.mark.parametrize("values, error, told", [
    ({"Z.resistance": [1.0]}, bankwright.UnknownName, "no part `Z`"),
    ({"A.resistanse": [1.0]}, bankwright.UnknownName, "did you mean `resistance`"),
    ({"A.chemistry": [1.0]}, bankwright.Unsuitable, "not a quantity"),
    ({"A.charge": [0.5, 1.5]}, bankwright.Unsuitable, "out of its range in bank 1"),
    ({"A.resistance": [0.004, np.nan]}, bankwright.Unsuitable, "out of its range in bank 1"),
    ({"main.resistance": [0.004, 0.0]}, bankwright.Unsuitable, "above 0 ohm"),
])
def test_what_cannot_be_swept_is_refused(bow, values, error, told):
    with pytest.raises(error, match=told):
        bow.sweep(values)
    with pytest.raises(bankwright.UnknownName):
        bow.sweep({"A.resistance": [1e-3]}, ["nobody"])


@settings(max_examples=60, deadline=None)
@given(st.lists(st.floats(1e-3, 0.1), min_size=2, max_size=6), st.floats(5.0, 100.0), st.floats(11.0, 14.0))
def test_unlike_batteries_in_parallel_share_by_their_conductances(ohms, amperes, emf):
    """Kirchhoff: equal voltages behind unlike resistances, no links between: I_k = I (1 / R_k) / sum(1 / R)."""
    bank = Bank()
    for i, ohm in enumerate(ohms):
        bank.battery(f"B{i}", voltage="12 V", emf=emf * units.V, resistance=ohm * units.ohm)
        if i:
            bank.jumper(f"p{i}", "B0+", f"B{i}+", resistance="0 ohm").jumper(f"n{i}", "B0-", f"B{i}-", resistance="0 ohm")
    bank.load("all", current=amperes * units.A)
    bank.cable("plus", "B0+", "all+", resistance="1 mohm").cable("minus", "all-", "B0-", resistance="1 mohm")
    siemens = 1.0 / np.array(ohms)
    expected = amperes * siemens / siemens.sum()
    # Rounding of the emf against the differences of voltage that it is subtracted from.
    atol = 4e-16 * emf / min(ohms) * len(ohms)
    np.testing.assert_allclose([bank.solve()["parts"][f"B{i}"]["current"] for i in range(len(ohms))], expected, rtol=1e-9,
                               atol=atol * 10)
    sweep = bank.sweep({"B0.resistance": [ohms[0]]})
    np.testing.assert_allclose([sweep[f"B{i}.current"][0] for i in range(len(ohms))], expected, rtol=1e-9, atol=atol * 100)


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=20), st.floats(1e-3, 1e3), st.sampled_from(["agm", "gel", "flooded", "lifepo4"]), st.integers(1, 30))
def test_a_bank_of_any_name_and_size_survives_its_text(name, hours, chemistry, charge):
    bank = Bank(name, voltage="12 V").battery("A", chemistry=chemistry, voltage="12 V", capacity=hours * units.Ah,
                                              charge=charge * units.pct)
    try:
        text = bank.written()
    except bankwright.Unreadable as refused:  # a name that a bank file refuses
        assert "file/" in str(refused)
        return
    assert Bank.from_text(text) == bank and Bank.from_dict(bank.to_dict()) == bank


def test_a_tolerance_study_is_the_commands_and_does_not_depend_on_threads(bow):
    study = bow.tolerance(samples=20_000, threads=2)
    assert study == bow.tolerance(samples=20_000, threads=1)
    volts = study.answers[0]
    assert volts["part"] == "troll" and volts["worst_least"] <= volts["least"] <= volts["mean"] <= volts["most"]
    assert list(study.frame())[0] == "unit" and len(study.influences("troll"))
    assert pickle.loads(pickle.dumps(study)) == study


def test_drawn_arrays_spread_as_the_tolerance_study_says():
    """Two ways to the same spread: NumPy samples the resistances, or the library does."""
    bank = Bank().battery("A", voltage="12 V", emf="12.6 V", resistance="5 mohm +/- 20 %")
    bank.load("one", current="100 A").cable("p", "A+", "one+", resistance="1 mohm +/- 0.01 %")
    bank.cable("n", "one-", "A-", resistance="1 mohm +/- 0.01 %")
    drawn = bank.sweep({"A.resistance": np.random.default_rng(7).uniform(4e-3, 6e-3, 200_000)})["one.voltage"]
    answer = bank.tolerance(samples=200_000).answers[0]
    # Uniform +-1 mohm times 100 A: a deviation of 0.1 V / sqrt(3), known to 0.1 % from so many samples.
    assert drawn.std() == pytest.approx(0.1 / 3**0.5, rel=5e-3)
    assert answer["deviation"] == pytest.approx(0.1 / 3**0.5, rel=5e-3)
    assert answer["mean"] == pytest.approx(drawn.mean(), abs=1e-3)
