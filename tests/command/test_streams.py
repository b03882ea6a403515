"""What reaches the terminal, a pipe that closes, a disk that is full? Color only for people, one write, no crash."""
import os
import pty
import re
import signal
import subprocess
from pathlib import Path

import pytest

HERE = Path(__file__).resolve().parent
SEQUENCE = re.compile(r"\x1b\[[0-9;]*m")


def environment(**more):
    return {name: value for name, value in os.environ.items() if name not in ("NO_COLOR", "TERM")} | {"TERM": "xterm"} | more


def on_a_terminal(command, *arguments, **more):
    """(exit status, what the terminal saw)."""
    ours, theirs = pty.openpty()
    process = subprocess.Popen([command, *arguments], cwd=HERE, env=environment(**more), stdin=subprocess.DEVNULL,
                               stdout=theirs, stderr=theirs)
    os.close(theirs)
    seen = b""
    try:
        while chunk := os.read(ours, 65536):
            seen += chunk
    except OSError:  # the other end is closed
        pass
    os.close(ours)
    return process.wait(timeout=60), seen.decode().replace("\r\n", "\n")


def on_a_pipe(command, *arguments, **more):
    done = subprocess.run([command, *arguments], cwd=HERE, env=environment(**more), capture_output=True, timeout=60)
    return done.returncode, done.stdout.decode()


def test_a_terminal_gets_color_and_the_same_words(command):
    status, seen = on_a_terminal(command, "check", "banks/warned.toml")
    assert status == 0
    assert "\x1b[1;33mwarning:\x1b[0m" in seen
    assert SEQUENCE.sub("", seen) == on_a_pipe(command, "check", "banks/warned.toml")[1]


@pytest.mark.parametrize("more", [{"NO_COLOR": "1"}, {"TERM": "dumb"}])
def test_a_terminal_that_wants_no_color_gets_none(command, more):
    _, seen = on_a_terminal(command, "check", "banks/warned.toml", **more)
    assert "warning:" in seen and "\x1b" not in seen


def test_an_empty_no_color_asks_for_nothing(command):
    assert "\x1b" in on_a_terminal(command, "check", "banks/warned.toml", NO_COLOR="")[1]


def test_a_pipe_gets_no_color(command):
    assert "\x1b" not in on_a_pipe(command, "check", "banks/warned.toml")[1]


@pytest.mark.parametrize("form", ["json", "sarif", "junit"])
def test_formats_for_programs_have_no_color_even_on_a_terminal(command, form):
    assert "\x1b" not in on_a_terminal(command, "check", "banks/warned.toml", "--format", form)[1]


@pytest.mark.parametrize("arguments", [["schema"], ["check", "../../data/examples/bow-36v-miswired.toml", "--format", "sarif"]])
def test_a_reader_that_goes_away_is_no_crash(command, arguments):
    reading, writing = os.pipe()
    os.close(reading)
    process = subprocess.Popen([command, *arguments], cwd=HERE, stdout=writing, stderr=subprocess.PIPE, stdin=subprocess.DEVNULL,
                               preexec_fn=lambda: signal.signal(signal.SIGPIPE, signal.SIG_DFL))
    os.close(writing)
    err = process.communicate(timeout=60)[1]
    assert process.returncode in (0, 1) and err == b""


@pytest.mark.parametrize("arguments", [["check", "../../data/examples/bow-36v-miswired.toml"], ["schema"], ["--help"]])
def test_a_full_disk_is_said_and_is_not_success(command, arguments):
    if not os.path.exists("/dev/full"):
        pytest.skip("this system has no /dev/full")
    with open("/dev/full", "wb") as full:
        done = subprocess.run([command, *arguments], cwd=HERE, stdout=full, stderr=subprocess.PIPE, timeout=60)
    assert done.returncode == 2  # no fault of the program
    assert b"standard output: No space left on device" in done.stderr


def test_a_closed_standard_output_is_said(command):
    done = subprocess.run(["/bin/sh", "-c", '"$0" check banks/warned.toml >&-', command], cwd=HERE, stderr=subprocess.PIPE,
                          timeout=60)
    assert done.returncode == 2 and b"standard output: is closed" in done.stderr


def test_a_closed_standard_input_is_said(command):
    done = subprocess.run(["/bin/sh", "-c", '"$0" check - <&-', command], cwd=HERE, capture_output=True, timeout=60)
    assert done.returncode == 2 and done.stdout == b"" and b"bankwright: -: " in done.stderr


def test_a_named_pipe_is_read_like_a_file(command, tmp_path):
    fifo = tmp_path / "bank.toml"
    os.mkfifo(fifo)
    process = subprocess.Popen([command, "check", str(fifo)], stdout=subprocess.PIPE)
    fifo.write_bytes((HERE / "banks/warned.toml").read_bytes())
    assert b"2S1P, 1 warning" in process.communicate(timeout=60)[0]
