"""Does every command answer every bank that the project has, right or wrong, in words that a person can read and documents that a program can?"""
import json
import re
import subprocess
import xml.etree.ElementTree
from concurrent.futures import ThreadPoolExecutor
from html.parser import HTMLParser
from pathlib import Path

import pytest

TESTS = Path(__file__).resolve().parents[1]
BANKS = sorted([*TESTS.glob("rules/*/*.toml"), *TESTS.glob("command/unusual/*.toml"), *TESTS.glob("miswires/catalog/*.toml"), *TESTS.parent.glob("data/examples/*.toml")])
INLINE = re.compile(r"^([\w-]+\s*=\s*\{)(.*)(\}.*)$")
KEY = re.compile(r'([\w-]+) = (?:"[^"]*"|\[[^\]]*\]|[^,}\s]+)')
WITH_JSON = ["solve", "solve --rest", "discharge", "discharge --rest 1h", "recharge", "hookup", "short-circuit", "size",
             "tolerance --samples 200 --check 3", "labels", f"compare {TESTS.parent}/data/examples/bow-36v.toml"]
VOID = {"area", "base", "br", "col", "hr", "img", "input", "link", "meta", "wbr"}
NO_NUMBER = re.compile(r"(?<![\w`-])-?(nan|inf)\b|\{:?[^}` ]{0,8}\}")


def answers(command, words):
    """(bank, exit status, output) of every bank."""
    def ask(bank):
        done = subprocess.run([command, words[0], bank, *words[1:]], capture_output=True, timeout=120)
        return bank, done.returncode, done.stdout.decode(), done.stderr.decode()

    with ThreadPoolExecutor(2) as pool:
        return list(pool.map(ask, BANKS))


def left_out():
    """Every bank with one key of one part left out; (section, key, text)."""
    for bank in BANKS:
        lines = bank.read_text(encoding="utf-8").splitlines()
        section = ""
        for number, line in enumerate(lines):
            if line.startswith("["):
                section = line
            if not (part := INLINE.match(line)):
                continue
            keys = list(KEY.finditer(part[2]))
            for one in keys:
                rest = ", ".join(key[0] for key in keys if key != one)
                yield section, one[1], "\n".join([*lines[:number], f"{part[1]} {rest} {part[3]}", *lines[number + 1:]]) + "\n"


def test_a_key_left_out_is_no_fault_of_the_program(command, tmp_path):
    for number, (_, _, text) in enumerate(left_out()):
        (tmp_path / f"{number}.toml").write_text(text, encoding="utf-8")
    assert number > 5000
    done = subprocess.run([command, "check", tmp_path, "--format", "json"], capture_output=True, timeout=1800)
    assert done.returncode in (1, 2), done.stderr.decode()[-1000:]
    assert len(json.loads(done.stdout)["files"]) > 0.99 * number  # one that no longer says what it is may be anything


@pytest.mark.parametrize("words", ["recharge", "size", "tolerance --samples 50 --check 2", "report"])
def test_nor_is_it_one_for_whoever_asks_more(command, tmp_path, words):
    some = {(section, key): text for section, key, text in left_out()}
    for number, ((section, key), text) in enumerate(some.items()):
        (tmp_path / f"{number}.toml").write_text(text, encoding="utf-8")
        name, *options = words.split()
        done = subprocess.run([command, name, tmp_path / f"{number}.toml", *options], capture_output=True, timeout=120)
        assert done.returncode in (0, 1, 2), (section, key, done.stderr.decode())


@pytest.mark.parametrize("words", WITH_JSON)
def test_text_is_for_people(command, words):
    for bank, status, text, said in answers(command, words.split()):
        assert status in (0, 1, 2), (bank, said)
        assert text.strip() or said.strip(), bank
        assert not NO_NUMBER.search(text + said), (bank, text, said)
        assert "``" not in text, (bank, text)


@pytest.mark.parametrize("words", WITH_JSON)
def test_documents_are_for_programs(command, words):
    def no_constant(word):
        raise AssertionError(word)

    for bank, status, text, said in answers(command, [*words.split(), "--format", "json"]):
        assert status in (0, 1, 2), (bank, said)
        if status == 2 and not text:
            continue
        document = json.loads(text, parse_constant=no_constant)
        assert document["version"] == 1, bank


def test_drawings_are_xml(command):
    for bank, status, text, said in answers(command, ["draw"]):
        assert status in (0, 1, 2), (bank, said)
        if text:
            assert xml.etree.ElementTree.fromstring(text).tag.endswith("svg"), bank
            assert not re.search(r'="[^"]*\b(nan|inf)\b', text), bank


class Balance(HTMLParser):
    def __init__(self):
        super().__init__()
        self.open, self.text = [], []

    def handle_starttag(self, tag, attrs):
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):  # <meta />, and what is drawn
        pass

    def handle_endtag(self, tag):
        assert self.open and self.open.pop() == tag, (tag, self.getpos())

    def handle_data(self, data):
        if not self.open or self.open[-1] not in ("style", "script"):
            self.text.append(data)


def test_reports_are_whole(command):
    for bank, status, text, said in answers(command, ["report"]):
        assert status in (0, 1, 2), (bank, said)
        if not text:
            continue
        page = Balance()
        page.feed(text)
        page.close()
        assert not page.open, bank
        words = " ".join(page.text)
        assert not NO_NUMBER.search(words), (bank, NO_NUMBER.search(words))
