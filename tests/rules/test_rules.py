"""Does every rule fire where it must, and nowhere else, and say the right thing? What is expected stands in the banks; see README.md."""
import json
import math
import re
import subprocess
from pathlib import Path
from typing import NamedTuple

import pytest

HERE = Path(__file__).resolve().parent
BANKS = sorted(HERE.glob("*/*.toml"))
CATALOG = sorted((HERE.parent / "miswires/catalog").glob("*.toml"))
EXPECTED = re.compile(r"# (?P<word>expect|accepted): (?P<rule>[a-z]+/[a-z-]+)(?: (?P<level>error|warning|note))?"
                      r"(?: at (?P<at>[^\s,]+))?(?:, found (?P<found>[^,]+), allowed (?P<allowed>[^,]+))?$")
ARRANGEMENT = re.compile(r"^# arrangement: (\S+)$", re.M)
NAMES = re.compile(r"# names: (.+)$")
SAYS = re.compile(r"# says: (.+)$")
KEY = re.compile(r'"[^"]*"|[^\s=]+')


class Expected(NamedTuple):
    line: int
    rule: str
    level: str
    accepted: bool
    at: str | None
    numbers: tuple[str, str] | None
    names: list[str]
    says: list[str]


def expected(bank, usual_level):
    """What the bank says of itself, in the order of its lines."""
    expectations, at = [], 0
    for number, line in enumerate(bank.read_text(encoding="utf-8").splitlines(), 1):
        at = at if line.startswith("#") else number
        if said := EXPECTED.search(line):
            numbers = (said["found"], said["allowed"]) if said["found"] else None
            expectations.append(Expected(at, said["rule"], said["level"] or usual_level[said["rule"]],
                                         said["word"] == "accepted", said["at"], numbers, [], []))
        elif said := NAMES.match(line):
            expectations[-1].names.extend(said[1].split(", "))
        elif said := SAYS.match(line):
            expectations[-1].says.append(said[1])
        else:
            assert "# expect" not in line and "# accepted" not in line, f"line {number} is not written as README.md says"
    return expectations


@pytest.fixture(scope="session")
def usual_level(command):
    done = subprocess.run([command, "rules", "--format", "json"], capture_output=True, check=True, timeout=60)
    return {rule["id"]: rule["level"] for rule in json.loads(done.stdout)["rules"]}


@pytest.fixture(scope="session")
def checked(command):
    """What the command says of every bank; asked of all of them at once."""
    banks = [*BANKS, *CATALOG]
    done = subprocess.run([command, "check", *banks, "--format", "json"], capture_output=True, timeout=600)
    assert done.returncode in (0, 1, 2), done.stderr.decode()
    files = json.loads(done.stdout)["files"]
    assert [Path(file["file"]) for file in files] == banks
    return dict(zip(banks, files))


@pytest.fixture(scope="session")
def found(checked):
    """The findings, by bank, in the order of its lines."""
    return {bank: sorted(file["findings"], key=identity) for bank, file in checked.items()}


def identity(finding):
    return finding["line"] or 0, finding["rule"], finding["level"], finding["accepted"]


def is_as_written(value, unit, written):
    """Whether a number is the written one, to the last digit that is written."""
    digits, _, its_unit = written.partition(" ")
    places = len(digits.partition(".")[2])
    if not places:  # 44100 stands for three digits, 31 for two
        places = -(len(digits) - len(digits.rstrip("0"))) if len(digits) > 3 else 0
    return unit == (its_unit or None) and math.isclose(value, float(digits), rel_tol=1e-9, abs_tol=0.5001 * 10.0**-places)


def compare(bank, findings, expectations):
    assert [identity(finding) for finding in findings] == sorted(expectation[:4] for expectation in expectations)
    return zip(findings, sorted(expectations, key=lambda expectation: expectation[:4]))


@pytest.mark.parametrize("bank", BANKS, ids=lambda bank: f"{bank.parent.name}/{bank.stem}")
def test_a_bank_gives_what_it_says_and_nothing_else(found, usual_level, bank):
    lines = bank.read_text(encoding="utf-8").splitlines()
    for finding, wanted in compare(bank, found[bank], expected(bank, usual_level)):
        pointed_at = KEY.match(lines[finding["line"] - 1], finding["column"] - 1)[0]
        assert pointed_at == (wanted.at or KEY.match(lines[finding["line"] - 1])[0]), finding
        assert (finding["found"] is None) == (wanted.numbers is None), finding
        assert finding["unit"] is None or wanted.numbers, finding
        for name, written in zip(("found", "allowed"), wanted.numbers or ()):
            assert is_as_written(finding[name], finding["unit"], written), finding
        assert finding["parts"] == wanted.names or not wanted.names and len(finding["parts"]) < 2, finding
        assert not re.search(r"\b(nan|inf)\b", finding["message"] + finding["help"]), finding
        for text in wanted.says:
            assert any(text in finding.get(word, "") for word in ("message", "help", "accepted_because")), finding


@pytest.mark.parametrize("bank", CATALOG, ids=lambda bank: bank.stem)
def test_a_mistake_of_the_dock_is_found(found, usual_level, bank):
    findings = expected(bank, usual_level)
    assert findings
    compare(bank, found[bank], findings)


def test_what_is_worst_comes_first(checked):
    for file in checked.values():
        levels = [("error", "warning", "note").index(f["level"]) for f in file["findings"] if not f["rule"].startswith("file/")]
        assert levels == sorted(levels), file


def test_an_arrangement_is_recognized_where_there_is_one(checked):
    stated = {bank: ARRANGEMENT.findall(bank.read_text(encoding="utf-8")) for bank in BANKS}
    assert sum(map(len, stated.values())) > 10
    for bank, words in stated.items():
        assert not words or [checked[bank]["arrangement"] or "none"] == words, bank


@pytest.mark.parametrize("form", ["text", "sarif", "junit"])
def test_a_reason_to_accept_a_finding_is_handed_on(command, found, form):
    bank, reason = next((bank, finding["accepted_because"]) for bank in BANKS for finding in found[bank] if finding["accepted"])
    done = subprocess.run([command, "check", bank, "--all", "--format", form], capture_output=True, text=True, timeout=60)
    assert reason and reason in done.stdout
