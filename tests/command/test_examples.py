"""Does `check` pass the sound banks of data/examples, and name in each of the others the one mistake that it shows?"""
import json
import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent.parent
EXAMPLES = ROOT / "data/examples"

# The sound banks; what the others show, said by their first lines.
SOUND = ["bow-36v", "ferry-48v-lithium", "houseboat-12v", "launch-36v-diagonal", "skiff-24v", "tender-12v"]
SHOWN = {
    "bow-36v-crossed-leads": "wiring/reversed-load",
    "bow-36v-miswired": "wiring/reversed-battery",
    "ferry-48v-missing-jumper": "wiring/open-circuit",
    "houseboat-12v-six-volt": "matching/mixed-voltage",
    "launch-36v-one-lithium": "matching/mixed-chemistry",
    "skiff-24v-closed-loop": "wiring/shorted-loop",
    "skiff-24v-tapped-off": "wiring/mid-string-tap",
    "tender-12v-negative-breaker": "protection/negative-side",
}


def check(command, name):
    ran = subprocess.run([command, "check", "--format", "json", EXAMPLES / f"{name}.toml"], capture_output=True, text=True,
                         timeout=60)
    assert ran.returncode in (0, 1), ran.stderr
    return [(finding["rule"], finding["level"]) for finding in json.loads(ran.stdout)["files"][0]["findings"]]


def test_every_example_is_one_or_the_other():
    assert sorted([*SOUND, *SHOWN]) == sorted(path.stem for path in EXAMPLES.glob("*.toml"))


@pytest.mark.parametrize("name", SOUND)
def test_a_sound_bank_has_nothing(command, name):
    assert check(command, name) == []


@pytest.mark.parametrize("name, rule", SHOWN.items())
def test_a_miswired_bank_shows_its_mistake(command, name, rule):
    assert [found for found, _ in check(command, name)] == [rule], "one mistake gives one finding that names the cause"


def whole_banks():
    """Every bank that a document shows whole, as somebody would paste it: a file, or what `plan` prints."""
    for document in sorted((*ROOT.glob("*.md"), *ROOT.glob("*/README.md"))):
        for block in re.findall(r"^```(?:toml\n|console\n\$ bankwright plan [^\n]*\n)(.*?)^```", document.read_text(encoding="utf-8"), re.M | re.S):
            if re.search(r"^\[batteries\]", block, re.M) and re.search(r"^\[(jumpers|cables)\]", block, re.M):
                yield pytest.param(block, id=f"{document.relative_to(ROOT)}:{block.splitlines()[0]}")


@pytest.mark.parametrize("bank", whole_banks())
def test_a_bank_pasted_from_a_document_is_accepted_as_it_stands(command, bank):
    ran = subprocess.run([command, "check", "-"], input=bank, capture_output=True, text=True, timeout=60)
    assert ran.returncode == 0, ran.stdout + ran.stderr


def test_there_is_such_a_bank():
    assert list(whole_banks())


def test_a_bank_without_its_version_is_checked_and_told_what_to_write(command):
    text = (EXAMPLES / "bow-36v-miswired.toml").read_text(encoding="utf-8").replace("bankwright = 1\n", "")
    ran = subprocess.run([command, "check", "-", "--format", "json"], input=text, capture_output=True, text=True, timeout=60)
    findings = json.loads(ran.stdout)["files"][0]["findings"]
    assert ran.returncode == 1
    assert {(finding["rule"], finding["level"]) for finding in findings} == {("file/no-version", "note"), ("wiring/reversed-battery", "error")}
    assert any("write `bankwright = 1` as its first line" in finding["help"] for finding in findings)


@pytest.mark.parametrize("text", ["", "name = \"Heron\"\n", "[motors]\ntroll = { voltage = \"12 V\", current = \"30 A\" }\n"])
def test_what_holds_no_battery_either_is_no_bank(command, text):
    ran = subprocess.run([command, "check", "-"], input=text, capture_output=True, text=True, timeout=60)
    assert ran.returncode == 1 and "the file lacks `bankwright` [file/missing-key]" in ran.stdout


def test_a_reading_that_says_read_is_asked_whether_it_means_reads(command, tmp_path):
    (tmp_path / "readings.toml").write_text('bankwright-readings = 1\n[[volts]]\nred = "C+"\nblack = "A-"\nread = "12.8 V"\n')
    ran = subprocess.run([command, "trace", EXAMPLES / "bow-36v.toml", tmp_path / "readings.toml"], capture_output=True, text=True,
                         timeout=60)
    assert ran.returncode == 2 and "did you mean `reads`?" in ran.stdout
