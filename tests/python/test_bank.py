"""Is a bank the same whether it is read, built or given as a dict, and does it refuse what it must?"""
import base64
import copy
import pickle
import re
import sys
import threading
import time

import bankwright
import numpy as np
import pytest
from bankwright import Bank, units

EXAMPLES = ["bow-36v", "ferry-48v-lithium", "houseboat-12v", "launch-36v-diagonal", "skiff-24v", "tender-12v"]


@pytest.fixture(params=EXAMPLES)
def example(request, root):
    return bankwright.read(root / f"data/examples/{request.param}.toml")


@pytest.fixture
def bow(root):
    return bankwright.read(root / "data/examples/bow-36v.toml")


def two_in_series():
    bank = Bank("two in series", voltage=24 * units.V, joint="0.1 mohm")
    for name in "AB":
        bank.battery(name, chemistry="agm", voltage="12 V", capacity=100 * units.Ah)
    bank.jumper("J1", "A+", "B-", size=6 * units.AWG, length=12 * units.inch)
    bank.cable("plus", "B+", "lamp+", size="16 mm2", length=2.0 * units.m)
    bank.cable("minus", "lamp-", "A-", size="16 mm2", length="2 m")
    return bank.load("lamp", power="240 W")


TWO_IN_SERIES = """
bankwright = 1
[system]
voltage = "24 V"
joint = "0.1 mohm"
[models]
deck = { chemistry = "agm", voltage = "12 V", capacity = "100 Ah" }
[batteries]
A = { model = "deck" }
B = { model = "deck" }
[jumpers]
J1 = { from = "A+", to = "B-", size = "6 AWG", length = "1 ft" }
[cables]
plus = { from = "B+", to = "lamp+", size = "16 mm2", length = "2 m" }
minus = { from = "lamp-", to = "A-", size = "16 mm2", length = "200 cm" }
[loads]
lamp = { power = "0.24 kW" }
"""


def test_a_built_bank_answers_as_the_one_that_is_read():
    built, read = two_in_series(), Bank.from_text(TWO_IN_SERIES)
    assert built.arrangement == read.arrangement == "2S1P"
    np.testing.assert_allclose(built.solve().current, read.solve().current, rtol=1e-14)


def test_a_bank_survives_its_dict_its_canonical_text_and_pickling(example):
    assert Bank.from_dict(example.to_dict()) == example
    assert Bank.from_text(example.written()) == example
    assert pickle.loads(pickle.dumps(example)) == example
    assert copy.deepcopy(example) == example
    assert hash(Bank.from_text(example.written())) == hash(example)


def test_every_answer_pickles_and_compares(example):
    for answer in (example.check(), example.solve(), example.short_circuit(), example.hookup(), example.discharge()):
        other = pickle.loads(pickle.dumps(answer))
        assert type(other) is type(answer) and other == answer
        assert other.__dict__.keys() == answer.__dict__.keys()


def test_a_changed_bank_leaves_the_first_as_it_was(bow):
    half = bow.changed({"troll.throttle": "50 %", "A.charge": "80 %", "system.ambient": "5 degC"})
    assert half.part("troll")["throttle"] == "50 %" and bow.part("troll")["throttle"] == "100 %"
    assert half != bow and half.changed({"troll.throttle": "100 %", "A.charge": "100 %", "system.ambient": "25 degC"}) == bow


@pytest.mark.parametrize("keys, named", [
    ({"voltage": 12.0}, r'`C.voltage` is a voltage and needs a unit, such as "36 V"; found 12.0'),
    ({"capacity": 100}, r'`C.capacity` is a capacity and needs a unit, such as "100 Ah"'),
    ({"charge": 0.9}, r'`C.charge` is a percentage and needs a unit, such as "90 %"'),
    ({"temperature": 25}, r'needs a unit, such as "25 degC"'),
])
def test_a_bare_number_is_refused_and_the_unit_named(keys, named):
    with pytest.raises(bankwright.UnitNeeded, match=named):
        two_in_series().battery("C", **keys)


def test_mistakes_of_the_caller_are_told_apart(bow):
    bank = two_in_series()
    with pytest.raises(bankwright.BadQuantity, match="`x.power`: .*`5 A`"):
        bank.load("x", power="5 A")
    with pytest.raises(bankwright.UnknownName, match="did you mean `voltage`"):
        bank.changed({"A.voltge": "3 V"})
    with pytest.raises(bankwright.UnknownName, match="no part `Z`"):
        bank.changed({"Z.voltage": "3 V"})
    with pytest.raises(bankwright.Unsuitable, match="a part `A` already"):
        bank.battery("A", voltage="12 V")
    with pytest.raises(bankwright.Unsuitable, match="one of flooded, agm"):
        bank.battery("C", chemistry="agn")
    with pytest.raises(bankwright.Unsuitable, match="a whole number"):
        bank.battery("C", cells=True)
    with pytest.raises(bankwright.Unsuitable, match="at most one of"):
        bank.solve(throttle="50 %", current="3 A")
    with pytest.raises(bankwright.Unsuitable, match="charger"):
        bow.recharge()
    with pytest.raises(bankwright.Unreadable) as refused:
        bankwright.solve_text("no bank")
    assert pickle.loads(pickle.dumps(refused.value)).findings == refused.value.findings
    for name in ("BadQuantity", "TooLarge", "UnitNeeded", "UnknownName", "Unreadable", "Unsuitable"):
        assert issubclass(getattr(bankwright, name), bankwright.Error)


def test_a_refused_part_leaves_the_bank_as_it_was():
    bank = two_in_series()
    before = bank.text
    with pytest.raises(bankwright.Error):
        bank.battery("C", voltage=12)
    assert bank.text == before


def test_arrays_are_the_documents_numbers_are_not_copied_and_not_to_be_written(bow):
    solution, run = bow.solve(), bow.discharge()
    assert list(solution.current) == [part["current"] for part in solution["parts"].values()]
    assert list(solution.terminal_voltage) == list(solution["terminals"].values())
    assert run.time.shape == (len(run["samples"]),) and run.charge.shape == (len(run["samples"]), 3)
    assert run.voltage[5, 1] == run["samples"][5]["batteries"]["B"]["voltage"]
    for array in (solution.current, run.charge, run.time):
        assert not array.flags.owndata and not array.flags.writeable  # the library's own memory
        with pytest.raises(ValueError):
            array[0] = 1.0


def test_an_array_outlives_the_bank_and_the_answer(root):
    current = bankwright.read(root / "data/examples/bow-36v.toml").solve().current
    assert current.sum() == pytest.approx(bankwright.solve(root / "data/examples/bow-36v.toml").current.sum())


def test_frames_bear_the_unit_in_the_column_name(example):
    assert list(example.solve().frame()) == ["kind", "current [A]", "voltage [V]", "power [W]"]
    assert "time [s]" in example.discharge().frame()
    for frame in (example.check().frame(), example.hookup().frame(), example.short_circuit().frame(),
                  example.short_circuit().device_frame(), example.solve().terminal_frame()):
        assert len(frame.columns)


def test_a_bank_draws_itself_and_a_broken_one_says_why(bow, root):
    image = re.fullmatch(r'<img alt="[^"]+" style="max-width:100%" src="data:image/svg\+xml;base64,([\w+/=]+)">', bow._repr_html_())
    assert base64.b64decode(image[1]).startswith(b"<svg")
    broken = Bank.from_text('bankwright = 1\n[batteries]\nA = { voltage = "<b>12</b> parsecs" }\n')
    assert "<table>" in broken._repr_html_() and "<b>12" not in broken._repr_html_()
    miswired = bankwright.read(root / "data/examples/bow-36v-miswired.toml")
    assert "wrong way around" in miswired.check()._repr_html_()


def test_part_lists_in_the_folder_are_read_and_no_others(tmp_path):
    (tmp_path / "boat").mkdir()
    (tmp_path / "boat/parts.toml").write_text(
        'bankwright-parts = 1\n[models]\ndeck = { chemistry = "agm", voltage = "12 V", capacity = "100 Ah" }\n')
    text = 'bankwright = 1\nparts = ["%s"]\n[batteries]\nA = { model = "deck" }\n'
    (tmp_path / "boat/in.toml").write_text(text % "parts.toml")
    (tmp_path / "boat/out.toml").write_text(text % "../boat/../outside.toml")
    (tmp_path / "outside.toml").write_text((tmp_path / "boat/parts.toml").read_text())
    inside = bankwright.read(tmp_path / "boat/in.toml")
    assert not [f for f in inside.check().list if f["rule"].startswith("file/")]
    assert pickle.loads(pickle.dumps(inside)).check() == inside.check()
    assert "file/no-part-list" in {f["rule"] for f in bankwright.check(tmp_path / "boat/out.toml").list}


def test_other_threads_run_while_a_bank_is_solved(root):
    """The interpreter's lock is given back: a thread counts on while another runs a bank down.

    The interpreter is told not to take the lock away by itself, so that the thread counts only where
    it is given back. Solving is so short that a busy machine may not wake the thread in time: try again.
    """
    bank = bankwright.read(root / "data/examples/houseboat-12v.toml")
    assert counted_meanwhile(lambda: (bank.short_circuit(), bank.discharge())) > 0


def test_a_thread_does_not_count_while_the_lock_is_kept():
    """What the test above leans on."""
    assert counted_meanwhile(lambda: sum(range(1000)), seconds=0.5) == 0


def counted_meanwhile(work, seconds=60.0):
    """How far a thread counted while `work` ran, run again until it did or the seconds were over."""
    counted, done = [0], threading.Event()

    def count():
        while not done.is_set():
            counted[0] += 1
            time.sleep(0)

    interval = sys.getswitchinterval()
    sys.setswitchinterval(1000.0)
    counter = threading.Thread(target=count)
    counter.start()
    try:
        until = time.monotonic() + seconds
        started = counted[0]
        while counted[0] == started and time.monotonic() < until:
            work()
        return counted[0] - started
    finally:
        done.set()
        counter.join()
        sys.setswitchinterval(interval)


def test_six_lines_of_the_readme_lead_from_a_file_to_two_pictures(root, tmp_path, monkeypatch):
    block = re.search(r"six lines lead to.*?```python\n(.*?)```", (root / "README.md").read_text(encoding="utf-8"), re.S)[1]
    assert len(block.strip().splitlines()) == 6
    monkeypatch.chdir(tmp_path)
    (tmp_path / "data").symlink_to(root / "data")
    told = {}
    exec(block, told)
    assert (tmp_path / "bank.svg").read_text(encoding="utf-8").startswith("<svg")
    assert (tmp_path / "sharing.png").read_bytes().startswith(b"\x89PNG")
