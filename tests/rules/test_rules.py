"""Does every rule fire where it must, and nowhere else? What is expected stands in the banks themselves; see README.md."""
import json
import re
import subprocess
from pathlib import Path

import pytest

HERE = Path(__file__).resolve().parent
BANKS = sorted(HERE.glob("*/*.toml"))
CATALOGUE = sorted((HERE.parent / "miswires/catalogue").glob("*.toml"))
EXPECTED = re.compile(r"# (expect|accepted): ([a-z]+/[a-z-]+)(?: (error|warning|note))?")


def expected(bank, usual_level):
    """(line, rule, level, whether it is accepted) of every finding that the bank says it has."""
    return sorted((number, rule, level or usual_level[rule], word == "accepted")
                  for number, line in enumerate(bank.read_text(encoding="utf-8").splitlines(), 1)
                  for word, rule, level in EXPECTED.findall(line))


@pytest.fixture(scope="session")
def usual_level(command):
    done = subprocess.run([command, "rules", "--format", "json"], capture_output=True, check=True, timeout=60)
    return {rule["id"]: rule["level"] for rule in json.loads(done.stdout)["rules"]}


@pytest.fixture(scope="session")
def found(command):
    """The same of what the command finds, by bank; asked of all of them at once."""
    banks = [*BANKS, *CATALOGUE]
    done = subprocess.run([command, "check", *banks, "--format", "json"], capture_output=True, timeout=600)
    assert done.returncode in (0, 1, 2), done.stderr.decode()
    files = json.loads(done.stdout)["files"]
    assert [Path(file["file"]) for file in files] == banks
    return {bank: sorted((f["line"] or 0, f["rule"], f["level"], f["accepted"]) for f in file["findings"])
            for bank, file in zip(banks, files)}


@pytest.mark.parametrize("bank", BANKS, ids=lambda bank: f"{bank.parent.name}/{bank.stem}")
def test_a_bank_gives_what_it_says_and_nothing_else(found, usual_level, bank):
    assert found[bank] == expected(bank, usual_level)


@pytest.mark.parametrize("bank", CATALOGUE, ids=lambda bank: bank.stem)
def test_a_mistake_of_the_dock_is_found(found, usual_level, bank):
    findings = expected(bank, usual_level)
    assert findings and found[bank] == findings
