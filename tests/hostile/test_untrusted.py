"""What somebody else's folder and file names can do: nothing outside the folder is read, nothing waits for ever, nothing steers a
terminal or a page, and no input is ever written over.
"""
import os
import re
import resource
import signal
import socket
import subprocess
import xml.etree.ElementTree as xml
from pathlib import Path

import pytest
from test_breakages import ALL, CONTROL

EXAMPLE = (Path(__file__).resolve().parent / "rich.toml").read_text(encoding="utf-8")
LIST = 'bankwright-parts = 1\n[models]\nno8 = { size = "8 AWG" }\n'
NAMES = ["a\nerror: b.toml", "a\x1b[2Jb.toml", "a\rb.toml", "a\u202eb.toml", "a\u2066b\u2069.toml", "a\u009b31mb.toml", "a\x7fb.toml",
         "a\u2028b.toml", "<script>alert(1)<&\"'.toml", b"a\xff\xfeb.toml", "%s%n{}$(id).toml", "a\tb.toml", "-", "--help", "a" * 240 + ".toml"]


@pytest.fixture
def run(command, tmp_path):
    """run(*words) -> exit status, standard output, standard error, in a folder of its own, ended if it waits."""
    def call(*words, **more):
        done = subprocess.run([command, *words], cwd=tmp_path, stdin=subprocess.DEVNULL, capture_output=True, timeout=60, **more)
        return done.returncode, done.stdout.decode("utf-8"), done.stderr.decode("utf-8")

    return call


def with_parts(*lists):
    return EXAMPLE.replace("parts = []", "parts = [" + ", ".join(f"'{name}'" for name in lists) + "]")


COMMANDS = [["check"], ["check", "--format", "junit"], ["solve"], ["hookup"], ["discharge"], ["draw"], ["report"], ["short-circuit"], ["size"],
            ["trace", "--read", "A+ A- 12 V"], ["tolerance", "--samples", "10"]]
# Every command with every name where BREAKAGES=all; else each with a few.
PAIRS = [(words, name) for i, words in enumerate(COMMANDS) for j, name in enumerate(NAMES) if ALL or i == 0 or i % 5 == j % 5]
MARKUP = ("draw", "report", "junit")  # in which line ends and tabs are blanks


@pytest.mark.parametrize("words, name", PAIRS, ids=lambda value: " ".join(value) if isinstance(value, list) else ascii(value))
def test_no_name_of_a_file_steers_a_terminal_or_a_page(run, tmp_path, words, name):
    file = tmp_path / os.fsdecode(name)
    is_markup = words[-1] in MARKUP
    for text in (EXAMPLE, EXAMPLE.replace("batteries]", "batteries\u00a7")):
        file.write_text(text, encoding="utf-8")
        _, out, err = run(*words, os.path.join(b"." if isinstance(name, bytes) else ".", name))
        for printed in (out.replace("\t", " ") if is_markup else out, err):
            assert not (seen := CONTROL.search(printed)), ascii(printed[max(0, seen.start() - 100):seen.end() + 20])
            assert is_markup or "\nerror: b.toml" not in printed
        assert not is_markup or "<script>alert" not in out
        if out.startswith(("<?xml", "<svg")):
            xml.fromstring(out)


HOSTILE = ["\\u001b[2J", "\\n\\nerror: b", "\\u202e", "\\u2066x", "\\u009b31m", "\\u007f", "<script>alert(1)</script>", "]]>", "--><b>", "&#27;&lt;", "\\\"'`$(id)"]


@pytest.mark.parametrize("words", [["check", "--all"], ["check", "--format", "junit"], ["solve"], ["hookup"], ["draw"], ["report"], ["size"]],
                         ids=lambda words: " ".join(words))
@pytest.mark.parametrize("value", HOSTILE, ids=ascii)
def test_no_text_of_a_file_steers_a_terminal_or_a_page(run, tmp_path, words, value):
    text = re.sub(r'(name = |reason = |color = |class = )"[^"]*"', lambda found: f'{found[1]}"{value}"', EXAMPLE)
    (tmp_path / "x.toml").write_text(text + f'[[accept]]\nrule = "{value}"\npart = "{value}"\nreason = "{value}"\n', encoding="utf-8")
    _, out, err = run(*words, "x.toml")
    is_markup = words[-1] in MARKUP
    for printed in (out, err):
        assert not (seen := CONTROL.search(printed)), ascii(printed[max(0, seen.start() - 100):seen.end() + 20])
        assert is_markup or "\nerror: b" not in printed
    assert not is_markup or ("<script>alert" not in out and "--><b>" not in out)
    if out.startswith(("<?xml", "<svg")):
        xml.fromstring(out)


def test_what_is_in_a_folder_is_no_trap(run, tmp_path):
    """Links out, links in circles, pipes, sockets, folders with a file's name: passed over, and nobody waits for them."""
    tree, outside = tmp_path / "tree", tmp_path / "outside"
    (tree / "folder.toml").mkdir(parents=True)
    outside.mkdir()
    (outside / "secret.toml").write_text("bankwright = 1\nsecret = 1\n")
    (tree / "link.toml").symlink_to(outside / "secret.toml")
    (tree / "linked").symlink_to(outside)
    (tree / "round").symlink_to(tree)
    (tree / "itself.toml").symlink_to("itself.toml")
    (tree / "dangling.toml").symlink_to("nowhere")
    os.mkfifo(tree / "pipe.toml")
    os.mkfifo(tree / "bankwright-settings.toml")
    with socket.socket(socket.AF_UNIX) as end:
        end.bind(str(tree / "socket.toml"))
        (tree / "boat.toml").write_text(EXAMPLE, encoding="utf-8")
        status, out, err = run("check", "tree")
    assert "tree/boat.toml: 2S1P" in out and "secret" not in out + err and status == 2
    assert "bankwright-settings.toml: not a regular file" in err


@pytest.mark.parametrize("path, says", [
    ("loop.toml", "behind a link"), ("round/round/parts.toml", "behind a link"), ("x/linked/../parts.toml", "is not there"),
    ("folder", "not a regular file"), ("pipe", "not a regular file"), ("socket", "cannot be read"), ("parts.toml/", "is a folder"),
    ("parts.toml/x", "behind a link"), ("./../tree/../../outside/secret.toml", "lies outside"), ("~/parts.toml", "is not there"),
    ("x/linked/secret.toml", "behind a link"), ("device", "not a regular file"), ("a/" * 2000 + "parts.toml", "is not there"),
    ("x" * 300, "cannot be read"), ("%2e%2e/outside/secret.toml", "is not there"), ("...", "is not there")], ids=lambda value: value[:40])
def test_a_part_list_comes_from_the_folder_or_not_at_all(run, tmp_path, path, says):
    tree, outside = tmp_path / "tree", tmp_path / "outside"
    (tree / "x").mkdir(parents=True)
    (tree / "folder").mkdir()
    outside.mkdir()
    (outside / "secret.toml").write_text(LIST.replace("no8", "secret"))
    (tree / "parts.toml").write_text(LIST)
    (tree / "loop.toml").symlink_to("loop.toml")
    (tree / "round").symlink_to(".")
    (tree / "x/linked").symlink_to(outside)
    os.mkfifo(tree / "pipe")
    if path == "device":
        try:
            os.mknod(tree / "device", 0o666 | 0o020000, os.makedev(1, 5))  # /dev/zero: would never end
        except PermissionError:
            pytest.skip("only root makes devices")
    (tree / "boat.toml").write_text(with_parts(path), encoding="utf-8")
    with socket.socket(socket.AF_UNIX) as end:
        end.bind(str(tree / "socket"))
        status, out, err = run("check", "tree")
    assert status == 1 and "file/no-part-list" in out and "secret = {" not in out
    assert says in out, out


@pytest.mark.parametrize("words", [["check"], ["draw"], ["report"]], ids=lambda words: words[0])
@pytest.mark.parametrize("output", ["boat.toml", "sub/../boat.toml", "link.toml", "hard.toml", "parts.toml", "./parts.toml", "hard-parts.toml"])
def test_nothing_that_was_read_is_written_over(run, tmp_path, words, output):
    (tmp_path / "sub").mkdir()
    (tmp_path / "boat.toml").write_text(with_parts("parts.toml"), encoding="utf-8")
    (tmp_path / "parts.toml").write_text(LIST)
    (tmp_path / "link.toml").symlink_to("boat.toml")
    os.link(tmp_path / "boat.toml", tmp_path / "hard.toml")
    os.link(tmp_path / "parts.toml", tmp_path / "hard-parts.toml")
    before = sorted(path.name for path in tmp_path.iterdir())
    status, out, err = run(*words, "boat.toml", "-o", output)
    assert (status, out) == (2, "") and output.split("/")[-1] in err or "boat.toml" in err
    assert (tmp_path / "boat.toml").read_text(encoding="utf-8") == with_parts("parts.toml") and (tmp_path / "parts.toml").read_text() == LIST
    assert sorted(path.name for path in tmp_path.iterdir()) == before


@pytest.mark.parametrize("words", [["draw"], ["report"], ["check", "--format", "json"]], ids=lambda words: words[0])
def test_where_there_is_no_room_the_old_file_stays_and_nothing_else(run, tmp_path, words):
    (tmp_path / "boat.toml").write_text(EXAMPLE, encoding="utf-8")
    (tmp_path / "old.out").write_text("old")
    (tmp_path / "old.out").chmod(0o600)

    def little_room():
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (64, 64))

    for output in ("old.out", "new.out"):
        status, _, err = run(*words, "boat.toml", "-o", output, preexec_fn=little_room)
        assert status == 2 and f"{output}: " in err
    assert (tmp_path / "old.out").read_text() == "old" and sorted(path.name for path in tmp_path.iterdir()) == ["boat.toml", "old.out"]
    assert run(*words, "boat.toml", "-o", "old.out")[0] == 0 and (tmp_path / "old.out").stat().st_mode & 0o777 == 0o600
