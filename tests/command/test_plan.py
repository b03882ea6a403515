"""`plan`: from a wish to a file that `check` has nothing against; and question by question, at a terminal."""
import json
import os
import pty
import re
import select
import subprocess
import time
import tomllib

import pytest

WISH = ["--system", "36 V", "--motor", "45 A", "--run", "20 ft", "--runtime", "2 h"]


@pytest.fixture
def call(command, tmp_path):
    """call(*arguments) -> exit status, standard output, standard error, in an empty folder."""
    def run(*arguments, **more):
        done = subprocess.run([command, *arguments], cwd=tmp_path, capture_output=True, text=True, timeout=60,
                              stdin=subprocess.DEVNULL, **more)
        return done.returncode, done.stdout, done.stderr

    return run


class Terminal:
    """A command at a pseudo-terminal: what it shows, and what is typed."""

    def __init__(self, words, folder):
        self.child, self.end = pty.fork()
        if self.child == 0:
            os.chdir(folder)
            os.execv(words[0], words)
        self.shown = ""

    def until(self, text, seconds=30):
        """Reads until the text has been shown; what came with it."""
        start, deadline = len(self.shown), time.monotonic() + seconds
        while text not in self.shown[start:]:
            ready, _, _ = select.select([self.end], [], [], max(0, deadline - time.monotonic()))
            assert ready, f"waited for {text!r}; shown: {self.shown[start:]!r}"
            try:
                got = os.read(self.end, 4096).decode()
            except OSError:  # the other side has gone
                got = ""
            assert got, f"ended before {text!r}; shown: {self.shown[start:]!r}"
            self.shown += got
        return self.shown[start:]

    def answer(self, question, typed):
        shown = self.until(question)
        os.write(self.end, (typed + "\n").encode())
        return shown

    def leave(self):
        """Reads to the end; the exit status."""
        while True:
            try:
                got = os.read(self.end, 4096).decode()
            except OSError:
                break
            if not got:
                break
            self.shown += got
        _, status = os.waitpid(self.child, 0)
        os.close(self.end)
        return os.waitstatus_to_exitcode(status)


def test_the_file_goes_to_standard_output_and_passes_check(call, tmp_path):
    status, out, err = call("plan", *WISH, "--battery", "12 V AGM 100 Ah", "--charger", "10 A")
    assert status == 0
    bank = tomllib.loads(out)
    assert bank["system"]["voltage"] == "36 V" and bank["motors"]["motor"]["current"] == "45 A"
    assert "would not do" in err and "to cut and to buy" in err
    comments = [line for line in out.splitlines() if line.startswith("#")]
    assert any("strings in parallel" in line for line in comments) and any("would not do" in line for line in comments)
    (tmp_path / "boat.toml").write_text(out)
    assert call("check", "boat.toml") == (0, f"boat.toml: 3S{len(bank['batteries']) // 3}P, nothing wrong\n", "")


def test_with_a_file_named_the_words_go_to_standard_output(call, tmp_path):
    status, out, err = call("plan", *WISH, "-o", "boat.toml")
    assert (status, err) == (0, "") and "why, and why no less" in out and "banks that will do" in out
    assert "nothing wrong" in call("check", "boat.toml")[1]
    assert call("plan", *WISH, "--system", "24 V", "-o", "boat.toml")[0] == 2  # said twice


def test_as_json(call):
    status, out, _ = call("plan", *WISH, "--format", "json")
    plan = json.loads(out)
    assert status == 0 and plan["bankwright"] == "plan" and plan["version"] == 1
    assert plan["problems"] == [] and len(plan["banks"]) > 1
    assert tomllib.loads(plan["file"])["system"]["runtime"] == "2 h"
    for bank in plan["banks"]:
        assert bank["to_reserve"] >= 2 * 3600 and bank["mass"] > 0 and bank["prices"] == []


def test_a_wish_that_cannot_be_met_says_which_part_of_it(call):
    status, out, err = call("plan", *WISH[:-1], "90 h")
    assert (status, out) == (1, "") and "\nruntime of " in err
    status, out, err = call("plan", *WISH[:-1], "90 h", "--format", "json")
    assert status == 1 and json.loads(out)["problems"][0]["part"] == "runtime"


def test_what_cannot_be_understood_is_told_at_once(call):
    status, out, err = call("plan", "--system", "fish", "--motor", "45 A", "--run", "20 parsecs")
    assert (status, out) == (2, "")
    assert "--system: `fish`" in err and "unknown unit, `parsecs`" in err and "--runtime: is not stated" in err


def test_without_a_terminal_nothing_is_asked(call):
    status, out, err = call("plan")
    assert (status, out) == (2, "") and "--system: is not stated" in err


def test_prices_of_a_part_list_are_summed_up(call, tmp_path):
    (tmp_path / "yard.toml").write_text(
        'bankwright-parts = 1\n[models]\n'
        'deep = { chemistry = "agm", voltage = "12 V", capacity = "100 Ah", resistance = "4 mohm", mass = "31.8 kg", price = "210.50 USD" }\n'
        'large = { chemistry = "agm", voltage = "12 V", capacity = "200 Ah", resistance = "2 mohm", mass = "60 kg", price = "480 USD" }\n')
    status, out, err = call("plan", *WISH, "--parts", "yard.toml")
    assert status == 0 and "price" in err
    bank = tomllib.loads(out)
    count = len(bank["batteries"])
    price = bank["models"]["battery"]["price"]
    mass = float(bank["models"]["battery"]["mass"].removesuffix(" kg"))
    assert f"{mass:g} kg a battery, {count * mass:g} kg in all" in err
    total = count * {"210.50 USD": 210.5, "480 USD": 480}[price]
    assert f"{total:.2f}".removesuffix(".00") + " USD in all, without the conductors and" in err
    assert call("plan", *WISH, "--parts", "yard.toml", "-o", "yard.toml")[0] == 2
    (tmp_path / "yard.toml").write_text('bankwright-parts = 1\n[models]\ndeep = { capacity = "100 furlongs" }\n')
    status, out, err = call("plan", *WISH, "--parts", "yard.toml")
    assert (status, out) == (2, "") and "yard.toml:3" in err
    assert call("plan", *WISH, "--parts", "none.toml")[0] == 2


@pytest.mark.parametrize("wish", [
    ["--system", "12", "--motor", "55 lb", "--run", "12", "--runtime", "3", "--throttle", "50"],
    ["--system", "24v", "--motor", "80lb", "--run", "20 feet", "--runtime", "1:30", "--charger", "15a"],
    ["--system", "48 V", "--motor", "5 kW", "--run", "3 m", "--runtime", "1 h", "--chemistry", "lithium"],
    ["--system", "36", "--motor", "45", "--run", "20ft", "--runtime", "8 h"]])
def test_any_wish_is_answered_within_two_seconds(call, wish):
    began = time.monotonic()
    status, *_ = call("plan", *wish)
    assert status in (0, 1) and time.monotonic() - began < 2.0


def test_question_by_question_to_a_sheet_for_the_dock(command, call, tmp_path):
    """Somebody who never saw a bank file, at a terminal: answers as people type them."""
    terminal = Terminal([command, "plan"], tmp_path)
    terminal.answer("System voltage [36 V]: ", "?")
    assert "12, 24, 36 or 48 V" in terminal.answer("System voltage [36 V]: ", "fish")
    assert "does not begin with a number" in terminal.answer("System voltage [36 V]: ", "36v")
    terminal.answer("Motor at full throttle [45 A]: ", "50")
    terminal.answer("one way [20 ft]: ", "20 feet")
    terminal.answer("How long must it run [2 h]: ", "back")
    assert "20 ft" in terminal.answer("one way [20 ft]: ", "25ft")
    terminal.answer("How long must it run [2 h]: ", "4")
    terminal.answer("must it run that long [100 %]: ", "50")
    terminal.answer("Chemistry: flooded, agm, gel or lithium [any]: ", "agm")
    terminal.answer("by their label [none]: ", "")
    terminal.answer("in amperes [none]: ", "10a")
    shown = terminal.answer("Which one [1]: ", "1")
    assert "runs about" in shown and "12 V AGM" in shown
    (tmp_path / "mine.toml").write_text("kept")
    terminal.answer("Name of the file [bank.toml]: ", "mine.toml")
    terminal.answer("exists; type yes to replace it, or another name: ", "heron.toml")
    terminal.answer("Name of the file [heron.toml]: ", "")
    assert terminal.leave() == 0, terminal.shown
    assert "next: bankwright hookup heron.toml" in terminal.shown
    assert (tmp_path / "mine.toml").read_text() == "kept"
    bank = tomllib.loads((tmp_path / "heron.toml").read_text())
    assert bank["system"]["voltage"] == "36 V" and bank["motors"]["motor"]["current"] == "50 A"
    assert bank["cables"]["main"]["length"] == "25 ft" and bank["system"]["runtime"] == "4 h"
    assert "nothing wrong" in call("check", "heron.toml")[1]
    status, sheet, _ = call("hookup", "heron.toml")
    assert status == 0 and re.search(r"^ +1\. ", sheet, re.M) and "expect" in sheet


def test_a_part_that_cannot_be_met_is_asked_again(command, tmp_path):
    terminal = Terminal([command, "plan"], tmp_path)
    for question, typed in (("[36 V]: ", ""), ("[45 A]: ", ""), ("[20 ft]: ", ""), ("[2 h]: ", "90"), ("[100 %]: ", ""),
                            ("[any]: ", "flooded"), ("[none]: ", ""), ("in amperes [none]: ", "")):
        terminal.answer(question, typed)
    assert "no bank can be planned from this: runtime" in terminal.answer("How long must it run [90 h]: ", "quit")
    assert terminal.leave() == 0 and "nothing was planned" in terminal.shown
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("typed", ["quit", "q", "\x04"])
def test_quit_at_any_question(command, tmp_path, typed):
    terminal = Terminal([command, "plan"], tmp_path)
    terminal.answer("[36 V]: ", "24")
    terminal.until("[45 A]: ")
    os.write(terminal.end, typed.encode() + (b"" if typed == "\x04" else b"\n"))
    assert terminal.leave() == 0 and "nothing was planned" in terminal.shown
