"""Does `check` pass the sound banks of data/examples, and name in each of the others the one mistake that it shows?"""
import json
import subprocess
from pathlib import Path

import pytest

EXAMPLES = Path(__file__).resolve().parent.parent.parent / "data/examples"

# The sound banks; what the others show, said by their first lines.
SOUND = ["bow-36v", "ferry-48v-lithium", "houseboat-12v", "launch-36v-diagonal", "skiff-24v", "tender-12v"]
SHOWN = {
    "bow-36v-crossed-leads": "wiring/reversed-load",
    "bow-36v-miswired": "wiring/reversed-battery",
    "ferry-48v-missing-jumper": "wiring/open-circuit",
    "houseboat-12v-six-volt": "matching/mixed-voltage",
    "launch-36v-one-lithium": "matching/mixed-chemistry",
    "skiff-24v-closed-loop": "wiring/short-loop",
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
