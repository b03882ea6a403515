"""Folders, patterns and many files in one run: what is found, in which order, what is passed over, and what is said of it."""
import json
import os
import pty
import subprocess
import threading
import time
from pathlib import Path

import pytest

HERE = Path(__file__).resolve().parent
SOUND = (HERE / "banks/sound.toml").read_text(encoding="utf-8")
WARNED = (HERE / "banks/warned.toml").read_text(encoding="utf-8")
PART_LIST = "bankwright-parts = 1\n[models]\nno6 = { size = \"6 AWG\" }\n"


@pytest.fixture
def yard(tmp_path):
    """Bank files among what else a repository holds."""
    for name, text in {"b.toml": SOUND, "a.toml": WARNED, "Z.toml": SOUND, "deep/er/c.toml": SOUND, "deep/d.toml": SOUND,
                       "parts.toml": PART_LIST, "bankwright-settings.toml": "fail-on = \"error\"\n",
                       "tool.toml": "[tool]\nname = \"x\"\n", "notes.md": "# notes\n", ".git/x.toml": SOUND,
                       "deep/.hidden.toml": SOUND}.items():
        path = tmp_path / "boats" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return tmp_path


@pytest.fixture
def check(command, yard):
    """check(*arguments) -> exit status, names of the files checked in order, standard error."""
    def call(*arguments, cwd="."):
        done = subprocess.run([command, "check", *arguments, "--format", "json"], cwd=yard / cwd, capture_output=True, text=True,
                              timeout=60)
        names = [file["file"] for file in json.loads(done.stdout)["files"]] if done.stdout else []
        return done.returncode, names, done.stderr

    return call


IN_ORDER = ["boats/Z.toml", "boats/a.toml", "boats/b.toml", "boats/deep/d.toml", "boats/deep/er/c.toml"]


@pytest.mark.parametrize("argument", ["boats", "boats/", "./boats"])
def test_a_folder_means_every_bank_file_below_it_in_the_order_of_their_names(check, argument):
    assert check(argument)[:2] == (0, IN_ORDER)


def test_the_current_folder_is_a_folder(check):
    assert check(".", cwd="boats")[1] == [name.removeprefix("boats/") for name in IN_ORDER]


def test_what_is_no_bank_file_is_passed_over_and_only_strangers_are_named(check):
    _, _, err = check("boats")
    assert err == "bankwright: ignored 1 file that is not a bank file: boats/tool.toml\n"


@pytest.mark.parametrize("name, rule", [("parts.toml", "file/not-a-bank"), ("bankwright-settings.toml", "file/not-a-bank"),
                                        ("tool.toml", "file/unknown-key")])
def test_the_same_files_named_by_themselves_are_findings(command, yard, name, rule):
    done = subprocess.run([command, "check", f"boats/{name}"], cwd=yard, capture_output=True, text=True, timeout=60)
    assert done.returncode in (1, 2) and f"boats/{name}:1:1: error: " in done.stdout and f"[{rule}]" in done.stdout


def test_the_ending_of_a_bank_file_may_be_in_capitals(check, yard):
    (yard / "boats/UP.TOML").write_text(SOUND)
    assert "boats/UP.TOML" in check("boats")[1]


def test_what_cannot_be_looked_at_is_said_and_is_no_success(check, yard):
    """A path longer than the system takes: whoever runs this, the file in the last folder can be listed and no more."""
    longest, length, here = os.pathconf("/", "PC_PATH_MAX"), len("boats"), os.getcwd()
    os.chdir(yard / "boats")
    try:
        while length < longest - 13:
            os.mkdir(name := "d" * min(200, longest - 12 - length))
            os.chdir(name)
            length += 1 + len(name)
        Path("unseen-bank.toml").write_text(SOUND)
    finally:
        os.chdir(here)
    status, names, err = check("boats")
    assert status == 2 and names == IN_ORDER and "unseen-bank.toml: File name too long" in err


@pytest.mark.parametrize("pattern, names", [
    ("boats/*.toml", IN_ORDER[:3]),
    ("boats/**/*.toml", IN_ORDER),
    ("boats/**/er/*.toml", IN_ORDER[4:]),
    ("boats/[ab].toml", IN_ORDER[1:3]),
    ("boats/?.toml", IN_ORDER[:3]),
    ("**/d.toml", IN_ORDER[3:4]),
    ("bo*/deep/*", IN_ORDER[3:4]),
])
def test_a_pattern_that_the_shell_left_alone(check, pattern, names):
    assert check(pattern)[:2] == (0, names)


def test_a_file_may_be_called_like_a_pattern(check, yard):
    (yard / "boats/[ab].toml").write_text(SOUND)
    assert check("boats/[ab].toml")[1] == ["boats/[ab].toml"]


def test_a_file_is_checked_once_however_often_it_is_meant(check):
    assert check("boats/b.toml", "boats", "boats/*.toml", "./boats/b.toml")[1] == [IN_ORDER[2], *IN_ORDER[:2], *IN_ORDER[3:]]


@pytest.mark.parametrize("argument, says", [("boats/none*.toml", "matches no file"), ("nowhere", "No such file"),
                                            ("boats/deep/er/c.toml/x", "Not a directory")])
def test_an_argument_that_leads_nowhere_is_said_and_the_others_are_checked(check, argument, says):
    status, names, err = check(argument, "boats/b.toml")
    assert (status, names) == (2, ["boats/b.toml"]) and says in err and argument in err


@pytest.mark.parametrize("text, says", [(None, "holds no .toml file"), ("[tool]\n", "none of what was found is a bank file")])
def test_checking_nothing_is_no_success(check, yard, text, says):
    (yard / "empty").mkdir()
    if text:
        (yard / "empty/x.toml").write_text(text)
    status, names, err = check("empty")
    assert (status, names) == (2, []) and says in err


@pytest.mark.parametrize("text", [SOUND.replace("bankwright = 1", "bankwrigth = 1"), "bankwright = \n", "bankwright = 1\nx = [",
                                  "\ufeffbankwright = 1\n"])
def test_a_broken_bank_file_in_a_folder_is_not_passed_over(check, yard, text):
    (yard / "broken").mkdir()
    (yard / "broken/x.toml").write_text(text, encoding="utf-8")
    assert check("broken")[1] == ["broken/x.toml"]


def test_utf_16_in_a_folder_is_not_passed_over(check, yard):
    (yard / "broken").mkdir()
    (yard / "broken/x.toml").write_text(SOUND, encoding="utf-16")
    assert check("broken")[:2] == (2, ["broken/x.toml"])


def test_links_in_a_folder_are_not_followed(check, yard):
    (yard / "outside").mkdir()
    (yard / "outside/o.toml").write_text(WARNED)
    (yard / "boats/deep/up").symlink_to("..")
    (yard / "boats/out").symlink_to(yard / "outside")
    (yard / "boats/o.toml").symlink_to(yard / "outside/o.toml")
    os.mkfifo(yard / "boats/pipe.toml")  # opening it would wait for ever
    assert check("boats")[:2] == (0, IN_ORDER)


def test_a_folder_that_may_not_be_read_is_said(command, yard):
    (yard / "boats/deep").chmod(0)
    yard.chmod(0o755)
    nobody = {"user": 65534} if os.geteuid() == 0 else {}
    try:
        done = subprocess.run([command, "check", "boats"], cwd=yard, capture_output=True, text=True, timeout=60, **nobody)
    except PermissionError:
        pytest.skip("another user may not run this command here")
    finally:
        (yard / "boats/deep").chmod(0o755)
    assert done.returncode == 2 and "boats/deep: Permission denied" in done.stderr


def test_one_summary_for_all(command, yard):
    out = subprocess.run([command, "check", "boats"], cwd=yard, capture_output=True, text=True, timeout=60).stdout
    assert out.splitlines()[-6:] == [f"{name}: 2S1P, {'1 warning' if name.endswith('a.toml') else 'nothing wrong'}"
                                     for name in IN_ORDER] + ["5 files: 1 warning"]


def slow_run(command, yard, stderr, environment=None):
    """A run that waits a second for its first file, which is a named pipe. (standard output, exit status)"""
    os.mkfifo(yard / "slow")
    process = subprocess.Popen([command, "check", "slow", "boats"], cwd=yard, stdout=subprocess.PIPE, stderr=stderr,
                               env=os.environ | {"TERM": "xterm"} | (environment or {}))

    def feed():
        with open(yard / "slow", "wb") as pipe:
            time.sleep(1)
            pipe.write(SOUND.encode())

    feeder = threading.Thread(target=feed)
    feeder.start()
    out = process.communicate(timeout=60)[0]
    feeder.join()
    return out.decode(), process.returncode


def test_a_long_run_tells_a_terminal_how_far_it_is_and_takes_that_away(command, yard):
    ours, theirs = pty.openpty()
    out, status = slow_run(command, yard, theirs)
    os.close(theirs)
    seen = os.read(ours, 65536).decode()
    os.close(ours)
    assert status == 0 and "6 files: 1 warning" in out and "\r" not in out and "\x1b" not in out
    assert seen.startswith("\r2 of 9 files") and "\r\x1b[K" in seen
    assert seen.index("\r\x1b[K") < seen.index("ignored")


@pytest.mark.parametrize("environment, is_terminal", [({}, False), ({"TERM": "dumb"}, True)])
def test_nobody_else_is_told(command, yard, environment, is_terminal):
    ours, theirs = pty.openpty() if is_terminal else os.pipe()
    _, status = slow_run(command, yard, theirs, environment)
    os.close(theirs)
    seen = os.read(ours, 65536).decode()
    os.close(ours)
    assert status == 0 and " of " not in seen and "\x1b" not in seen
