"""Banks that are seldom met, in unusual/: each says in its opening comment which command must tell what about it."""
import html
import re
import subprocess
from pathlib import Path

import pytest

BANKS = sorted(Path(__file__).with_name("unusual").glob("*.toml"))
SAID = [(bank, command, phrase) for bank in BANKS
        for command, phrase in re.findall(r"^# (\w+(?: -[^:]*)?): (.+)$", bank.read_text(encoding="utf-8"), re.M)]


def test_each_bank_says_what_it_is_for():
    assert {bank for bank, _, _ in SAID} == set(BANKS)


@pytest.mark.parametrize("bank, asked, phrase", SAID, ids=[f"{bank.stem}-{asked.replace(' ', '')}" for bank, asked, _ in SAID])
def test_it_is_told(command, bank, asked, phrase):
    name, *options = asked.split()
    done = subprocess.run([command, name, bank, *options], capture_output=True, text=True, timeout=60)
    text = re.sub(r"<[^>]*>", "", html.unescape(done.stdout)) if asked == "report" else done.stdout
    assert phrase in text, done.stdout + done.stderr
