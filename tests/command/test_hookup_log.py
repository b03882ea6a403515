"""A hook-up as it happens, at a real terminal: answers as people type them, go or stop in one line, the cause named; the log on the disk
before the next question, whatever kills the program; and logs that somebody else has written."""
import json
import os
import pty
import re
import select
import signal
import subprocess
import time
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
HERON = ROOT / "data/examples/bow-36v.toml"
# What a meter shows on Heron when nothing is wrong, by what is asked: the sheet's own words say where.
TYPED = {"A alone": "12,82", "B alone": "12.81v", "C alone": "12.8 V"}


class Terminal:
    """The command at a pseudo-terminal."""

    def __init__(self, command, *arguments):
        self.child, self.end = pty.fork()
        if self.child == 0:
            os.environ.update(TERM="xterm", NO_COLOR="1")
            os.execv(command, [str(command), *map(str, arguments)])
        self.seen = ""
        self.wait()

    def wait(self):
        """Until it asks, or is gone; what was said meanwhile."""
        begin, end = len(self.seen), time.monotonic() + 30
        while time.monotonic() < end and not self.seen[begin:].endswith("> "):
            if not select.select([self.end], [], [], 1)[0]:
                continue
            try:
                chunk = os.read(self.end, 65536)
            except OSError:  # it has gone
                break
            if not chunk:
                break
            self.seen += chunk.decode().replace("\r\n", "\n")
        return self.seen[begin:]

    def type(self, text):
        os.write(self.end, (text + "\n").encode())
        return self.wait()

    def status(self):
        os.close(self.end)
        return os.waitstatus_to_exitcode(os.waitpid(self.child, 0)[1])


def right_answer(question):
    """Somebody who reads what is expected, and types it in one way or another."""
    if "done? > " in question.splitlines()[-1]:
        return ""
    if named := next((typed for named, typed in TYPED.items() if named in question), None):
        return named
    if "no continuity" in question:
        return "OL"
    if "less than 1 ohm" in question:
        return "0.3"
    expected = re.findall(r"expect (-?[\d.]+) V", question)
    return f"{expected[-1]}v" if expected else "0"


def last_question(said):
    return said[said.rstrip().rfind("\n\n") + 2:] if "\n\n" in said else said


def judged(command, log, bank=HERON, *more):
    done = subprocess.run([command, "hookup", bank, "--log", log, "--format", "json", *more], capture_output=True, timeout=60)
    return done.returncode, json.loads(done.stdout) if done.stdout else None, done.stderr.decode()


def test_a_sound_bank_is_hooked_up_in_one_sitting(command, tmp_path):
    log = tmp_path / "heron.toml"
    terminal = Terminal(command, "hookup", HERON, "--log", log)
    said = terminal.seen
    for _ in range(60):
        if "all read, all right" in said:
            break
        said = terminal.type(right_answer(last_question(said)))
        assert "stop" not in said and "no reading" not in said, terminal.seen[-800:]
    assert "all read, all right" in said and terminal.status() == 0
    status, document, _ = judged(command, log)
    assert (status, document["status"], document["at"], document["left_out"]) == (0, "complete", None, [])
    assert len(document["answers"]) == document["questions"]
    assert all(re.fullmatch(r"\d{4}-\d\d-\d\d \d\d:\d\d", answer["time"]) for answer in document["answers"])


def test_a_jumper_on_the_wrong_post_is_stopped_before_it_closes_and_named(command, tmp_path):
    log = tmp_path / "heron.toml"
    terminal = Terminal(command, "hookup", HERON, "--log", log)
    said = terminal.seen
    while "before you land J1" not in last_question(said):
        said = terminal.type(right_answer(last_question(said)))
    said = terminal.type("12.81")  # J1's end is held to B+ instead of A+: across the gap stands battery B
    assert "stop: 12.81 V; expected is floating" in said
    for _ in range(8):  # read by the names of the posts, all is right: it is the end in the hand
        if "to find out" not in said and not re.search(r"\n  red on \S+, black on \S+\n> $", said):
            break
        red, black = re.findall(r"red on (\S+), black on (\S+)", said)[-1]
        own = red[0] == black[0] and {red[1:], black[1:]} == {"+", "-"} and red[0] in "ABC"
        said = terminal.type(("" if red.endswith("+") else "-") + "12.81" if own else "0")
    assert re.search(r"J1 is on (B\+|A-), not on (A\+|B-)", said), said
    assert "correct it, then read again" in said
    status, document, _ = judged(command, log)
    assert status == 1 and document["status"] == "stopped" and document["at"]["part"] == "J1"
    assert document["causes"][0]["mistakes"][0]["part"] == "J1"
    said = terminal.type("OL")  # it is corrected
    assert "go" in said and "land J1" in said
    terminal.type("quit")
    assert terminal.status() == 0


def test_what_is_typed_wrong_is_asked_again_and_back_takes_an_answer_back(command, tmp_path):
    log = tmp_path / "heron.toml"
    terminal = Terminal(command, "hookup", HERON, "--log", log)
    assert "`12.x` is no reading" in terminal.type("12.x")
    assert "that is a resistance" in terminal.type("3 ohm")
    assert "is the wrong way around" in terminal.type("?")
    assert "go: 12.82 V" in terminal.type("12.82")
    assert "A alone" in terminal.type("back")
    assert not tomllib.loads(log.read_text())["read"] if "read" in tomllib.loads(log.read_text()) else True
    assert "stop: -12.82 V" in terminal.type("-12,82 v")
    assert "the wrong way around" in terminal.seen
    terminal.type("quit")
    assert terminal.status() == 1


def test_kill_9_loses_nothing_and_the_log_goes_on(command, tmp_path):
    log = tmp_path / "heron.toml"
    answered = 0
    for _ in range(4):
        terminal = Terminal(command, "hookup", HERON, "--log", log)
        said = terminal.seen
        for _ in range(5):
            said = terminal.type(right_answer(last_question(said)))
            answered += 1
            assert len(tomllib.loads(log.read_text())["read"]) == answered  # before the next question
        os.kill(terminal.child, signal.SIGKILL)
        assert terminal.status() == -signal.SIGKILL
        assert sorted(path.name for path in tmp_path.iterdir()) == ["heron.toml"]
    status, document, _ = judged(command, log)
    assert status == 0 and len(document["answers"]) == answered == 20


HAND = 'bankwright-log = 1\nname = "by hand"\n'


def entry(when, part, reads):
    return f'[[read]]\nwhen = "{when}"\npart = "{part}"\nreads = "{reads}"\n'


def test_a_log_by_hand_is_judged_without_asking(command, tmp_path):
    log = tmp_path / "hand.toml"
    log.write_text(HAND + entry("alone", "A", "12.82 V") + entry("alone", "B", "ok") + entry("alone", "C", "-12.8 V"))
    status, document, _ = judged(command, log)
    assert status == 1 and document["bankwright"] == "log" and document["version"] == 1 and document["changed"] == []
    assert [answer["verdict"] for answer in document["answers"]] == ["go", "go", "stop"]
    assert document["causes"][0]["mistakes"][0] == {"mistake": "battery-turned", "part": "C"}
    text = subprocess.run([command, "hookup", HERON, "--log", log], stdin=subprocess.DEVNULL, capture_output=True, timeout=60)
    assert text.returncode == 1 and b"C is the wrong way around" in text.stdout


def test_one_that_skips_a_line_is_told_which(command, tmp_path):
    log = tmp_path / "hand.toml"
    log.write_text(HAND + entry("alone", "A", "12.82 V") + entry("alone", "C", "12.82 V") + entry("done", "troll", "ok"))
    status, document, _ = judged(command, log)
    assert status == 0 and document["status"] == "asking" and document["at"]["part"] == "B"
    assert [one["part"] for one in document["left_out"]] == ["B"]
    assert [one["part"] for one in document["strays"]] == ["troll"]


@pytest.mark.parametrize("text, line, says", [
    ('[[read]]\nwhen = "alone"\npart = "Z"\nreads = "12 V"\n', 5, "the bank does not have"),
    ('[[read]]\nwhen = "allone"\npart = "A"\nreads = "12 V"\n', 4, "did you mean `alone`"),
    ('[[read]]\nwhen = "alone"\npart = "A"\nreads = "12 parsecs"\n', 6, "volts, ohms"),
    ('[[read]]\nwhen = "alone"\npart = "A"\nreads = "3 ohm"\n', 3, "a voltmeter is asked for"),
    ('[[read]]\nwhen = "run"\npart = "main"\nreads = "3 V"\n', 3, "an ohmmeter is asked for"),
    ('[[read]]\nwhen = "also"\nred = "A+"\nblack = "A+"\nreads = "3 V"\n', 6, "both leads on one terminal"),
    ('[[read]]\nwhen = "also"\nred = "A+"\nblack = "Q"\nreads = "3 V"\n', 6, "Q"),
    ('[[read]]\npart = "A"\nreads = "3 V"\n', 3, "lacks `when`"),
    ('[[reed]]\npart = "A"\n', 3, "did you mean `read`"),
    ('[marks]\nA = 3\n', 4, "expected a text"),
], ids=lambda value: str(value)[:24])
def test_a_bad_log_is_refused_at_its_place(command, tmp_path, text, line, says):
    log = tmp_path / "bad.toml"
    log.write_text(HAND + text)
    status, document, _ = judged(command, log)
    found = document["files"][0]["findings"]
    assert status == 2 and found[0]["line"] == line, found
    assert says in found[0]["message"] + found[0]["help"]


def test_a_log_knows_its_bank_again(command, tmp_path):
    bank = tmp_path / "heron.toml"
    bank.write_text(HERON.read_text())
    log = tmp_path / "log.toml"
    terminal = Terminal(command, "hookup", bank, "--log", log)
    terminal.type("12.8")
    terminal.type("quit")
    terminal.status()
    assert judged(command, log, bank)[1]["changed"] == []
    bank.write_text(HERON.read_text().replace('length = "17 ft", color = "red"', 'length = "19 ft", color = "red"'))
    assert judged(command, log, bank)[1]["changed"] == ["main"]
    text = subprocess.run([command, "hookup", bank, "--log", log], stdin=subprocess.DEVNULL, capture_output=True, timeout=60).stdout.decode()
    assert "the bank file has changed since this log was begun: main" in text


def test_neither_the_bank_nor_a_file_of_another_kind_is_written_over(command, tmp_path):
    bank = tmp_path / "heron.toml"
    bank.write_text(HERON.read_text())
    for other in (bank, ROOT / "data/examples/readings/bow-36v-reversed.toml"):
        before = other.read_text()
        status, _, said = judged(command, other, bank)
        assert status == 2 and other.read_text() == before
    assert judged(command, tmp_path / "none.toml", bank)[0] == 2  # nobody can answer, and there is nothing to judge


def test_a_bank_that_hurts_is_not_hooked_up(command, tmp_path):
    bad = ROOT / "data/examples/bow-36v-miswired.toml"
    status, document, _ = judged(command, tmp_path / "log.toml", bad)
    assert status == 1 and document["status"] == "refused" and not (tmp_path / "log.toml").exists()
