"""What a trace says on boats as a rigger meets them, in boats/: each file of readings says in its opening comment which boat it
was taken on, what is right and why, what must be said and what must never be. The facts are common practice, no source.

`says` stands anywhere in the answer; `never` in no diagnosis that is not among `others`.
"""
import re
import subprocess
from pathlib import Path

import pytest

BOATS = Path(__file__).with_name("boats")
READINGS = sorted(BOATS.glob("*.readings.toml"))


def opening(text, word):
    return re.findall(rf"^# {word}: (.+)$", text, re.M)


@pytest.mark.parametrize("readings", READINGS, ids=[one.name.split(".")[0] for one in READINGS])
def test_a_rigger_would_say_so(command, readings):
    text = readings.read_text(encoding="utf-8")
    boat = BOATS / re.search(r"(\w+\.toml)\.", text)[1]
    assert len(opening(text, "right")) == 1
    done = subprocess.run([command, "trace", boat, readings], capture_output=True, text=True, timeout=60)
    assert done.returncode in (0, 1), done.stderr
    for phrase in opening(text, "says"):
        assert phrase in done.stdout, done.stdout
    diagnoses = done.stdout.partition("\nread ")[0]
    for phrase in opening(text, "never"):
        assert phrase not in diagnoses, done.stdout


@pytest.mark.parametrize("readings", READINGS, ids=[one.name.split(".")[0] for one in READINGS])
def test_both_leads_lie_in_one_place(command, readings):
    """Or the answer says that they do not."""
    text = readings.read_text(encoding="utf-8")
    boat = BOATS / re.search(r"(\w+\.toml)\.", text)[1]
    said = subprocess.run([command, "trace", boat, readings], capture_output=True, text=True, timeout=60).stdout
    for red, black in re.findall(r"read next, [^:]*: red on ([^,]+), black on (\S+)", said):
        of_bow = [lead.startswith(("bow", "troll")) for lead in (red, black)]
        assert of_bow[0] == of_bow[1] or "lengthen one of them" in said, said
