"""bankwright.plan and bankwright.compare answer as the commands do."""
import json
import subprocess
from pathlib import Path

import bankwright
import pytest
from bankwright import units

ROOT = Path(__file__).resolve().parents[2]
SKIFF, TENDER = (str(ROOT / "data/examples" / name) for name in ("skiff-24v.toml", "tender-12v.toml"))


def test_a_plan_is_a_bank_that_passes_every_rule():
    plan = bankwright.plan("24 V", "30 A", "15 ft", "2 h", chemistry="agm", charger="10 A")
    assert plan.bank.check().list == [] and plan.bank.arrangement == plan["banks"][0]["arrangement"]
    assert plan.bank.discharge().runtime > 2 * 3600
    assert "would not do" in plan.text and plan.file == plan.bank.text
    frame = plan.frame()
    assert len(frame) == len(plan["banks"]) and (frame["run [s]"] >= 2 * 3600).all()
    assert "AGM" in repr(plan) and "would not do" in plan._repr_html_()


def test_quantities_and_words_ask_for_the_same():
    typed = bankwright.plan("24v", "30a", "15 feet", "2", stock=["6 AWG", "4 AWG", "2 AWG"])
    counted = bankwright.plan(24 * units.V, 30 * units.A, 15 * units.ft, 2 * units.h, stock="6 AWG, 4 AWG, 2 AWG")
    assert typed == counted and typed.file == counted.file


def test_as_the_command_answers(command):
    done = subprocess.run([command, "plan", "--system", "24 V", "--motor", "30 A", "--run", "15 ft", "--runtime", "2 h", "--format", "json"],
                          capture_output=True, text=True, check=True)
    assert json.loads(done.stdout) == bankwright.plan("24 V", "30 A", "15 ft", "2 h")


def test_what_cannot_be_met_and_what_cannot_be_understood(tmp_path):
    none = bankwright.plan("24 V", "30 A", "15 ft", "95 h")
    assert none.bank is None and none["problems"][0]["part"] == "runtime" and "runtime" in repr(none)
    with pytest.raises(bankwright.Unsuitable, match="run: .*unknown unit"):
        bankwright.plan("24 V", "30 A", "15 parsecs", "2 h")
    (tmp_path / "yard.toml").write_text('bankwright-parts = 1\n[models]\nb = { capacity = "1 furlong" }\n')
    with pytest.raises(bankwright.Unreadable, match="yard.toml:3"):
        bankwright.plan("24 V", "30 A", "15 ft", "2 h", parts=tmp_path / "yard.toml")
    with pytest.raises(OSError):
        bankwright.plan("24 V", "30 A", "15 ft", "2 h", parts=tmp_path / "none.toml")


def test_banks_side_by_side():
    comparison = bankwright.compare(SKIFF, bankwright.read(TENDER))
    frame = comparison.frame()
    assert frame.index[0] in ("check", "arrangement") and list(frame["differs"]) == sorted(frame["differs"], reverse=True)
    assert frame.loc["arrangement"].tolist()[1:] == ["2S1P", "1S1P"]
    assert repr(comparison).startswith("what differs:") and "2S1P" in comparison._repr_html_()
    with pytest.raises(bankwright.Unsuitable):
        bankwright.compare(SKIFF)
