"""Does any bank that a file may describe, however odd, crash a command or a call, or get a number out of them that is none?

ODD_BANKS=10000 looks at so many; else a sample of them is looked at.
"""
import json
import os
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from odd_banks import odd_bank

COUNT = int(os.environ.get("ODD_BANKS", "200"))
HANGS = 120  # s of one command
NO_NUMBER = re.compile(r"(?<![\w.-])[-+]?(nan|inf|infinity)(?![\w-])", re.IGNORECASE)
JSON = ["--format", "json"]
COMMANDS = [["check", *JSON], ["solve", *JSON], ["solve", "--rest"], ["solve", "--current", "10 A", *JSON], ["discharge", *JSON],
            ["discharge", "--rest", "1 h"], ["recharge", *JSON], ["hookup", *JSON], ["short-circuit", *JSON], ["size", *JSON],
            ["tolerance", "--samples", "20", "--check", "1", *JSON], ["draw"], ["report"]]


def refuse(word):
    raise ValueError(f"{word} is no JSON")


def wrong_with(command, words, file, more=()):
    asked = subprocess.run([command, words[0], file, *more, *words[1:]], capture_output=True, text=True, timeout=HANGS)
    if asked.returncode not in (0, 1, 2):
        return f"{words}: status {asked.returncode}, {asked.stderr[-300:]}"
    if "json" in words and asked.stdout:
        json.loads(asked.stdout, parse_constant=refuse)
    if found := NO_NUMBER.search(asked.stdout):
        return f"{words}: prints {found[0]}: {asked.stdout[max(0, found.start() - 100):found.end() + 20]}"
    return None


@pytest.fixture(scope="module")
def banks(tmp_path_factory):
    """(number, what it is, its file, its readings' file or none)"""
    folder = tmp_path_factory.mktemp("odd")
    made = []
    for number in range(COUNT):
        kind, text, terminals = odd_bank(number)
        file, readings = folder / f"{number}.toml", None
        file.write_text(text, encoding="utf-8")
        if len(terminals) > 1:
            readings = folder / f"{number}-readings.toml"
            readings.write_text(f'bankwright-readings = 1\n[[volts]]\nred = "{terminals[0]}"\nblack = "{terminals[-1]}"\n'
                                'reads = "3 V"\n', encoding="utf-8")
        made.append((number, kind, file, readings))
    return made


def test_what_is_made_is_what_a_file_may_say(command, banks):
    """Else nothing below would be tried."""
    listed = json.loads(subprocess.run([command, "check", *JSON, *(file for _, _, file, _ in banks)], capture_output=True,
                                       text=True).stdout)["files"]
    refused = [one["file"] for one in listed if any(found["rule"].startswith("file/") for found in one["findings"])]
    assert len(listed) == len(banks) and not refused


def test_no_odd_bank_breaks_a_command(command, banks):
    def ask(bank):
        number, kind, file, readings = bank
        found = [wrong_with(command, words, file) for words in COMMANDS]
        if readings:
            found.append(wrong_with(command, ["trace", *JSON], file, [readings]))
        return [(number, kind, one) for one in found if one]

    with ThreadPoolExecutor(os.cpu_count()) as pool:
        assert not [one for found in pool.map(ask, banks) for one in found]


def test_no_odd_bank_breaks_a_call_from_python():
    wrong, first = [], 0
    while first < COUNT:
        asked = subprocess.run([sys.executable, Path(__file__).with_name("ask_python.py"), str(first), str(COUNT)],
                               capture_output=True, text=True)
        lines = asked.stdout.splitlines()
        wrong += [(lines[at - 1], line) for at, line in enumerate(lines) if line.startswith("[")]
        if asked.returncode == 0:
            break
        last = int([line for line in lines if line.isdigit()][-1])
        wrong.append((last, f"ended with {asked.returncode}: {asked.stderr[-300:]}"))
        first = last + 1
    assert not wrong


@pytest.mark.parametrize("text", ["bankwright = 1\n", 'bankwright = 1\nname = "nothing"\n', "bankwright = 1\n[system]\n",
                                  'bankwright = 1\n[loads]\nL = { current = "1 A" }\n'])
def test_where_there_is_nothing_to_vary_nothing_varies(command, text):
    """The first was once a division by zero."""
    asked = subprocess.run([command, "tolerance", "-", *JSON], input=text, capture_output=True, text=True)
    assert asked.returncode == 0, asked.stderr
    for answer in json.loads(asked.stdout)["answers"]:  # 0, or no voltage where the terminal floats
        assert answer["mean"] == answer["least"] == answer["most"] == answer["as_stated"] and answer["mean"] in (0.0, None)
