"""Is a file read by the library's reader alone, within its limits, and is a bank safe that several threads build?"""
import os
import signal
import subprocess
import sys
import threading
import time

import bankwright
import numpy as np
import pytest
from bankwright import Bank, units

LIMIT = 1 << 20  # bytes of a bank file, as the library has it


def seconds_of(work):
    started = time.process_time()
    work()
    return time.process_time() - started


@pytest.mark.parametrize("text", [
    "bankwright = 1\n[" + ".".join("a" * 40_000) + "]\n",                      # 80 kB: many names in one header
    "bankwright = 1\n" + ".".join("a" * 40_000) + " = 1\n",                    # in one dotted key
    "bankwright = 1\nparts = " + "[" * 40_000 + "]" * 40_000 + "\n",
    "bankwright = 1\n" + "".join(f"[a.b{n}.c]\n" for n in range(6000)),
])
def test_what_takes_others_minutes_is_refused_at_once(tmp_path, text):
    (tmp_path / "boat.toml").write_text(text)
    bank = None

    def ask():
        nonlocal bank
        bank = bankwright.read(tmp_path / "boat.toml")
        assert not bank.check().ok
        with pytest.raises(bankwright.Unreadable):
            bank.solve()

    assert seconds_of(ask) < 2.0  # s; ten milliseconds here


def test_no_more_of_a_file_is_read_than_the_reader_takes(tmp_path):
    assert {row["rule"] for row in bankwright.check("/dev/zero").list} == {"file/too-large"}
    (tmp_path / "boat.toml").write_text('bankwright = 1\nparts = ["zero.toml", "large.toml"]\n')
    (tmp_path / "zero.toml").symlink_to("/dev/zero")
    with (tmp_path / "large.toml").open("wb") as large:
        large.truncate(1 << 30)
    found = bankwright.check(tmp_path / "boat.toml").list
    assert {"file/no-part-list", "file/too-large"} <= {row["rule"] for row in found}
    with pytest.raises(bankwright.Unreadable, match="file/too-large"):
        Bank.from_text("#" * LIMIT + "\n").to_dict()


def test_a_dict_is_the_file_s_and_a_broken_file_s_is_refused(root):
    bank = bankwright.read(root / "data/examples/bow-36v.toml")
    assert bank.to_dict()["motors"]["troll"]["voltage"] == "36 V"
    assert list(bank.to_dict())[0] == "bankwright" and bank.to_dict()["bankwright"] == 1
    for broken in ("[", "a = 1\na = 2\n", "bankwright = 1\n[batteries]\n[batteries]\n"):
        with pytest.raises(bankwright.Unreadable):
            Bank.from_text(broken).to_dict()


def test_a_part_costs_the_same_in_a_bank_of_many():
    """Twice as many parts take about twice as long, not four times."""
    def build(parts):
        bank = Bank()
        for number in range(parts):
            bank.load(f"l{number}", current="1 A")

    build(100)
    few, many = (min(seconds_of(lambda: build(parts)) for _ in range(3)) for parts in (250, 1000))
    assert many < 8.0 * few  # 4 if linear, 16 if quadratic


def test_several_threads_build_one_bank():
    bank = Bank("shared")
    wrong = []

    def build(first):
        for number in range(50):
            bank.load(f"l{first}-{number}", current="1 A").model(f"m{first}-{number}", power="1 W")
            try:
                bank.load("once", current="1 A")
            except bankwright.Unsuitable:
                wrong.append(first)
            if number % 10 == 0:
                bank.check()

    threads = [threading.Thread(target=build, args=(first,)) for first in range(6)]
    interval = sys.getswitchinterval()
    sys.setswitchinterval(1e-6)
    try:
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
    finally:
        sys.setswitchinterval(interval)
    assert len(bank.part_names) == 6 * 50 + 1 and len(wrong) == 6 * 50 - 1
    assert len(bank.to_dict()["models"]) == 6 * 50
    assert bank.check() == Bank.from_text(bank.text, bank.file).check()  # of what it is, not of what it was


def test_a_mask_is_kept(root):
    bank = bankwright.read(root / "data/examples/bow-36v.toml")
    ohms = np.ma.masked_array([4e-3, 1e30, 6e-3, np.nan], [False, True, False, True])
    sweep = bank.sweep({"A.resistance": ohms}, ["troll.voltage"])
    np.testing.assert_array_equal(sweep["troll.voltage"].mask, ohms.mask)
    np.testing.assert_array_equal(sweep.values["A.resistance"].mask, ohms.mask)
    plain = bank.sweep({"A.resistance": [4e-3, 6e-3]}, ["troll.voltage"])["troll.voltage"]
    np.testing.assert_array_equal(sweep["troll.voltage"].compressed(), plain)
    assert sweep.unanswered == 0 and np.isnan(sweep.frame()["troll.voltage [V]"].to_numpy(dtype=float, na_value=np.nan)[1])
    grid = bank.sweep({"A.resistance": ohms * units.ohm, "B.resistance": np.full((3, 1), 5e-3)}, ["troll.voltage"])
    assert grid["troll.voltage"].mask.sum() == 6
    with pytest.raises(bankwright.Unsuitable, match="every value of `A.resistance` is masked"):
        bank.sweep({"A.resistance": np.ma.masked_all(3)})


def test_a_sweep_says_what_it_is_and_which_shapes_do_not_go_together(root):
    bank = bankwright.read(root / "data/examples/bow-36v.toml")
    with pytest.raises(bankwright.Unsuitable, match=r'sweep\["troll.voltage"\]'):
        np.asarray(bank.sweep({"A.resistance": [4e-3]}, ["troll.voltage"]))
    with pytest.raises(bankwright.Unsuitable, match=r"`A.resistance` \(3,\), `B.resistance` \(4,\)"):
        bank.sweep({"A.resistance": np.full(3, 4e-3), "B.resistance": np.full(4, 4e-3)})


LONG = """
import signal, sys, time
import bankwright, numpy as np
bank = bankwright.read(sys.argv[1])
sheet = bankwright.Readings().volts("A+", "A-", "11 V").volts("B+", "B-", "1 V").volts("C+", "C-", "-3 V")
work = {
    "tolerance": lambda: bank.tolerance(samples=200_000_000),
    "checked": lambda: bank.tolerance(samples=10, checked=100_000),
    "sweep": lambda: bank.sweep({"A.charge": np.full(10_000_000, 0.5)}),
    "discharge": lambda: [bank.discharge(legs=[("1 %", "1 s"), ("50 %", "1 s")], repeat=True) for _ in range(1000)],
    "trace": lambda: [bank.trace(sheet) for _ in range(1000)],
    "size": lambda: [bank.size() for _ in range(1000)],
}[sys.argv[2]]
print("begun", flush=True)
try:
    work()
except KeyboardInterrupt:
    print("interrupted", flush=True)
    import os
    os._exit(0)
print("done", flush=True)
"""


@pytest.mark.parametrize("work", ["tolerance", "checked", "sweep", "discharge", "trace", "size"])
def test_ctrl_c_ends_a_long_call(root, work):
    asked = subprocess.Popen([sys.executable, "-c", LONG, root / "data/examples/bow-36v.toml", work],
                             stdout=subprocess.PIPE, text=True)
    try:
        assert asked.stdout.readline() == "begun\n"
        time.sleep(0.5)
        started = time.monotonic()
        os.kill(asked.pid, signal.SIGINT)
        assert asked.stdout.readline() == "interrupted\n"
        # 0.02 s apart it looks for signals; a machine that has much else to do wakes it later
        assert time.monotonic() - started < 0.2 * max(1.0, os.getloadavg()[0])
    finally:
        asked.kill()
        asked.wait()
