"""Does anything that stands in a file crash `check`, hang it, fool its exit status or reach the terminal? Is the finding where the
damage is? BREAKAGES=all looks at every breakage, and measures each run by itself; else a sample is looked at.
"""
import json
import os
import random
import re
import subprocess
import sys
import tomllib
import xml.etree.ElementTree as xml
from pathlib import Path

import pytest
from breakages import LARGE, NASTY, ORDINARY_TEXT, everything, sort_of

ALL = os.environ.get("BREAKAGES") == "all"
CONTROL = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]")
MOST_SECONDS, MOST_BYTES = 1.0, 200 << 20  # of one run, on an ordinary machine: measured in full runs
HANGS = 60  # s
MEASURE = Path(__file__).resolve().parent / "measure.py"
OTHER_100_MB = {f"100 MB of {what}" for what in ("line ends", "a comment", "tabs", "quotes")}

# Texts that no key takes but those of ORDINARY_TEXT.
NEVER = {"empty", "blank", "no unit", "only a unit", "wrong unit", "two units", "beyond huge", "nan text", "inf text", "hexadecimal",
         "comma", "thousands", "two points", "letters", "NUL", "escape", "bell", "bidi", "isolate", "C1", "no character", "zalgo", "10 kB",
         "10 kB of digits", "many lines", "script"}


def sample(breakages, count):
    breakages = list(breakages)
    return breakages if ALL else random.Random(2).sample(breakages, count)


def refuse(word):
    raise ValueError(f"{word} is no JSON")


def check(command, names, form, folder):
    done = subprocess.run([command, "check", "--format", form, *names], cwd=folder, capture_output=True, timeout=HANGS + len(names))  # s
    assert done.returncode in (0, 1, 2), (done.returncode, done.stderr[-500:])
    return done.returncode, done.stdout.decode("utf-8"), done.stderr.decode("utf-8")


def in_bunches(names, size=500):
    return (names[at:at + size] for at in range(0, len(names), size))


@pytest.fixture(scope="module")
def corpus(tmp_path_factory):
    """(folder, {file name: breakage})"""
    folder = tmp_path_factory.mktemp("broken")
    broken = {f"{number}.toml": breakage for number, breakage in enumerate(sample(everything(), 1300))}
    for name, breakage in broken.items():
        (folder / name).write_bytes(breakage.data)
    return folder, broken


@pytest.fixture(scope="module")
def found(command, corpus):
    """{file name: its entry in the JSON document}"""
    folder, broken = corpus
    entries = {}
    for names in in_bunches(list(broken)):
        document = json.loads(check(command, names, "json", folder)[1], parse_constant=refuse)
        entries |= {entry["file"]: entry for entry in document["files"]}
    assert list(entries) == list(broken)
    return entries


def overlaps(finding, breakage):
    first, last = (breakage.line, breakage.column), (breakage.line + breakage.lines - 1, breakage.end_column if breakage.lines == 1 else 10**9)
    return (finding["line"], finding["column"]) < last and first < (finding["end_line"], finding["end_column"])


def complaints(breakage, entry):
    """What is wrong with the answer; nothing where all is well."""
    findings = entry["findings"]
    of_file = [finding for finding in findings if finding["rule"].startswith("file/")]
    lines = breakage.data.count(b"\n") + 1
    for finding in findings:
        if finding["line"] is not None and not (1 <= finding["line"] <= lines and finding["column"] >= 1
                                                and (finding["line"], finding["column"]) <= (finding["end_line"], finding["end_column"])):
            yield f"is at {finding['line']}:{finding['column']}"
    if any(finding["line"] is None for finding in of_file):
        yield "has a finding about the file without a place in it"
    document = breakage.document()
    rules = [finding["rule"] for finding in of_file]
    if document is None and not {"file/syntax", "file/too-large", "file/duplicate-id"} & set(rules):
        yield "is no TOML, and that is not said"
    if document is not None and "file/syntax" in rules and not TOO_LARGE.search(breakage.data):
        yield "is TOML, and is called a syntax error"
    if not breakage.line:
        return
    if document is None:
        place = of_file[0]["line"] if of_file else 0
        if not breakage.line <= place <= breakage.line + breakage.lines + 1:  # an open array goes on over a blank line
            yield f"is broken on line {breakage.line}, the finding is on line {place}"
        return
    nasty = breakage.name.split(": ", 1)[1]
    new = sort_of(value_of(nasty))
    must = new != breakage.sort or (new == "text" and nasty in NEVER and breakage.key not in ORDINARY_TEXT)
    if must and not any(overlaps(finding, breakage) for finding in of_file):
        yield "is not complained of where it is"
    # Two values that do not go together may be shown at either, if the other is named.
    far = [finding for finding in of_file if not overlaps(finding, breakage) and f"`{breakage.key}`" not in finding["message"]
           and "its voltage" not in finding["message"] and finding["rule"] in ("file/bad-value", "file/bad-unit", "file/syntax")]
    if far:
        yield f"is complained of elsewhere: {far[0]['line']}:{far[0]['column']} {far[0]['message']}"


# Python's reader takes any number; ours takes, as TOML asks, integers of 64 bits, and floats that are some.
TOO_LARGE = re.compile(rb"[0-9]{19}|e400")


def value_of(nasty):
    return tomllib.loads(f"x = {NASTY[nasty]}")["x"]


def test_findings_lie_on_the_damage(corpus, found):
    wrong = [f"{breakage.name} {said}" for name, breakage in corpus[1].items() for said in complaints(breakage, found[name])]
    assert not wrong, f"{len(wrong)}: " + "\n".join(wrong[:40])


@pytest.fixture(scope="module")
def measured(command):
    """measured(file, form) -> exit status, seconds of processor, bytes of one run."""
    runner = subprocess.Popen([sys.executable, MEASURE], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)

    def call(file, form):
        print(json.dumps([str(command), "check", "--format", form, str(file)]), file=runner.stdin, flush=True)
        return json.loads(runner.stdout.readline())

    yield call
    runner.communicate()


def assert_cheap(name, seconds, size):
    """A time is no test where others use the machine too: it is held in full runs alone."""
    assert size <= MOST_BYTES, f"{name}: {size >> 20} MB"
    assert not ALL or seconds <= MOST_SECONDS, f"{name}: {seconds:.2f} s"


def test_the_exit_status_of_each_is_what_was_found_in_it(measured, corpus, found):
    folder, broken = corpus
    slowest = largest = 0
    for name in broken if ALL else list(broken)[:250]:
        status, seconds, size = measured(folder / name, "json")
        rules = {finding["rule"] for finding in found[name]["findings"]}
        unreadable = "file/syntax" in rules
        may_be = {2} if unreadable else {1, 2} if rules & {"file/too-large", "file/not-a-bank", "file/bad-value", "file/duplicate-id"} else {1}
        assert status in (may_be if found[name]["counts"]["error"] else {0}), (broken[name].name, status, rules)
        assert_cheap(broken[name].name, seconds, size)
        slowest, largest = max(slowest, seconds), max(largest, size)
    print(f"slowest {slowest:.3f} s, largest {largest >> 20} MB")


@pytest.mark.parametrize("form", ["text", "sarif", "junit"])
def test_no_control_character_is_printed_and_documents_are_whole(command, corpus, form):
    folder, broken = corpus
    for names in in_bunches(list(broken)):
        _, out, err = check(command, names, form, folder)
        if form == "sarif":  # data may hold any character, what is said of it may not
            results = json.loads(out, parse_constant=refuse)["runs"][0]["results"]
            out = "\n".join(result["message"]["text"] for result in results)
        if form == "junit":
            assert len(xml.fromstring(out)) == len(names)
        for text in (out, err):
            assert not (seen := CONTROL.search(text)), ascii(text[max(0, seen.start() - 200):seen.end() + 20])


def test_a_share_of_them_under_the_sanitizers(sanitized_command, corpus):
    """Status and sane streams: what these report would be on standard error, with a status of its own."""
    folder, broken = corpus
    for names in in_bunches(list(broken) if ALL else list(broken)[::5]):
        _, _, err = check(sanitized_command, names, "text", folder)
        assert "runtime error" not in err and "Sanitizer" not in err, err[-3000:]


@pytest.mark.parametrize("name, data", LARGE.items() if ALL else [large for large in LARGE.items() if large[0] not in OTHER_100_MB],
                         ids=lambda value: value if isinstance(value, str) else "")
def test_a_large_file_costs_little(measured, tmp_path, name, data):
    file = tmp_path / "large.toml"
    file.write_bytes(data())
    for form in ("text", "json"):
        status, seconds, size = measured(file, form)
        assert status in (0, 1, 2)
        assert_cheap(name, seconds, size)
        print(f"{form}: exit {status}, {seconds:.2f} s, {size >> 20} MB")
    assert status == 2 or file.stat().st_size <= 1 << 20
    file.unlink()
