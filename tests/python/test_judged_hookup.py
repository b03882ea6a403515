"""`Hookup.judge`: the same judgment as the command's, from Python."""
import copy
import json
import pickle
import subprocess
from pathlib import Path

import pytest

import bankwright

ROOT = Path(__file__).resolve().parents[2]
HERON = ROOT / "data/examples/bow-36v.toml"


@pytest.fixture(scope="module")
def heron():
    return bankwright.Bank.from_file(HERON)


def test_answers_are_judged(heron):
    log = heron.hookup().judge([{"when": "alone", "part": "A", "reads": "12.82 V"}, {"when": "alone", "part": "B", "reads": "12.8 V"}])
    assert log.go and log["status"] == "asking" and log.next_reading["part"] == "C" and log.causes == []
    assert list(log.frame()["verdict"]) == ["go", "go"]
    assert "2 of" in repr(log) and "not finished" in log.text


def test_a_battery_the_wrong_way_around_is_named(heron):
    log = heron.hookup().judge([{"when": "alone", "part": "A", "reads": "-12.82 V"}])
    assert not log.go and log.causes[0]["mistakes"][0] == {"mistake": "battery-turned", "part": "A"}
    assert "wrong way around" in log.text


def test_it_is_the_document_of_the_command(heron, command, tmp_path):
    path = tmp_path / "log.toml"
    path.write_text('bankwright-log = 1\n[[read]]\nwhen = "alone"\npart = "A"\nreads = "12.2 V"\n')
    printed = json.loads(subprocess.run([command, "hookup", HERON, "--log", path, "--format", "json"], capture_output=True).stdout)
    ours = dict(heron.hookup().judge(path))
    assert {**ours, "file": "", "log": ""} == {**printed, "file": "", "log": ""}


def test_a_hookup_and_its_log_pickle_and_copy(heron):
    steps = pickle.loads(pickle.dumps(heron.hookup()))
    log = steps.judge([])
    assert copy.deepcopy(log) == log and pickle.loads(pickle.dumps(log)) == log


def test_what_is_wrong_is_raised(heron):
    with pytest.raises(bankwright.Error):
        heron.hookup().judge([{"when": "alone", "part": "Z", "reads": "12 V"}])
    with pytest.raises(bankwright.Error):
        heron.hookup().judge([{"when": "alone", "part": "A", "reads": "3 ohm"}])
    with pytest.raises(bankwright.Unsuitable):
        bankwright.Hookup({"status": "ready"}).judge([])
    with pytest.raises(OSError):
        heron.hookup().judge("no such file")
