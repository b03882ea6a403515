"""Does a trace in Python give what the command prints, from a file and from a sheet filled in part by part?"""
import json
import pickle
import subprocess

import bankwright
import pytest
from bankwright import Readings, units

REVERSED = "data/examples/readings/bow-36v-reversed.toml"


@pytest.fixture
def bow(root, monkeypatch):
    monkeypatch.chdir(root)
    return bankwright.read("data/examples/bow-36v.toml")


def sheet():
    return Readings(accuracy="0.5 % + 2 digits", resolution=10 * units.mV).volts("C+", "A-", "12.82 V")


def test_a_trace_is_the_commands_document_and_text(bow, command, root):
    words = [command, "trace", "data/examples/bow-36v.toml", REVERSED]
    printed, text = (subprocess.run(words + more, cwd=root, capture_output=True, text=True).stdout
                     for more in (["--format", "json"], []))
    trace = bow.trace(REVERSED)
    assert trace == json.loads(printed) and str(trace) == text
    assert pickle.loads(pickle.dumps(trace)).text == trace.text


def test_a_sheet_filled_in_is_the_file_and_one_reading_more_decides(bow):
    two = sheet().volts("A+", "A-", 12.86 * units.V)
    assert bow.trace(two) == bow.trace(REVERSED) == bow.trace(pickle.loads(pickle.dumps(two)))
    asked = bow.trace(two).next_reading
    assert (asked["red"], asked["black"]) == ("A+", "B+") and asked["places"] == ["by A"]
    decided = bow.trace(two.volts("A+", "B+", "0.01 V"))
    assert decided.faults == [{"kind": "reversed", "part": "B", "detail": ""}]
    assert decided.hypotheses[0]["probability"] > 0.99
    frame = decided.frame()
    assert frame["faults"][0] == "B reversed" and "probability [1]" in frame
    assert "B reversed" in decided._repr_html_() and "what you measure is live" in decided._repr_html_()


def test_what_the_solver_says_is_traced_to_no_fault(bow):
    """Readings made up from the bank's own operating points, at rest and under way, in volts and amperes."""
    rest, half = bow.solve(rest=True)["terminals"], bow.solve(throttle="50 %")
    readings = Readings().volts("C+", "A-", (rest["C+"] - rest["A-"]) * units.V)
    readings.volts("troll+", "troll-", half["parts"]["troll"]["voltage"] * units.V, throttle=50 * units.pct)
    readings.amps("main", half["parts"]["main"]["current"] * units.A, throttle="50 %")
    trace = bow.trace(readings)
    assert trace.faults == [] and trace["explained"] and trace["readings"] == 3


def test_readings_that_do_not_fit_are_refused(bow, tmp_path):
    with pytest.raises(bankwright.UnitNeeded, match="`reads` is a voltage and needs a unit"):
        sheet().volts("A+", "A-", 12.86)
    with pytest.raises(bankwright.BadQuantity):
        sheet().amps("J1", "23 V")
    with pytest.raises(bankwright.Unreadable, match="file/unknown-terminal"):
        bow.trace(sheet().volts("Z+", "A-", "12 V"))
    with pytest.raises(bankwright.Unreadable, match="more than one of"):
        bow.trace(sheet().volts("A+", "A-", "12 V", throttle="50 %", rest=True))
    with pytest.raises(bankwright.Unreadable, match="boat.toml"):
        bow.trace(Readings.from_text(b"\xff", "boat.toml"))
    with pytest.raises(bankwright.Unsuitable, match="no trace"):
        bankwright.Bank().trace(sheet())
    with pytest.raises(FileNotFoundError):
        bow.trace(tmp_path / "none.toml")
