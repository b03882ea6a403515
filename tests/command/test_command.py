"""Does the command keep its promises to a shell: exit statuses, streams, what is said?"""
import os
import shlex
import subprocess
import tomllib
from pathlib import Path

import pytest

HERE = Path(__file__).resolve().parent
CASES = tomllib.loads((HERE / "cases.toml").read_text(encoding="utf-8"))["case"]


@pytest.fixture(scope="session")
def run(command):
    """run(*arguments, stdin=b"") -> exit status, standard output, standard error, run in this folder."""
    environment = {name: value for name, value in os.environ.items() if name != "NO_COLOR"} | {"LC_ALL": "C"}

    def call(*arguments, stdin=b"", **more):
        done = subprocess.run([command, *arguments], cwd=HERE, env=environment | more, input=stdin, capture_output=True,
                              timeout=60)
        return done.returncode, done.stdout.decode(), done.stderr.decode()

    return call


def stdin_of(case):
    if "stdin_file" in case:
        return (HERE / case["stdin_file"]).read_bytes()
    if "stdin_hex" in case:
        return bytes.fromhex(case["stdin_hex"])
    return case.get("stdin", "").encode()


def assert_in_order(pieces, text):
    if pieces == [""]:
        assert text == ""
    at = 0
    for piece in pieces:
        found = text.find(piece, at)
        assert found >= 0, f"{piece!r} is not in\n{text[at:]}"
        at = found + len(piece)


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_case(run, case):
    status, out, err = run(*shlex.split(case["args"]), stdin=stdin_of(case))
    assert status == case["status"], out + err
    assert_in_order(case.get("out", []), out)
    assert_in_order(case.get("err", []), err)
    for piece in case.get("none", []):
        assert piece not in out + err


def test_version_is_the_librarys(run, root):
    header = (root / "lib/include/bankwright/version.hpp").read_text(encoding="utf-8")
    version = header.split('BANKWRIGHT_VERSION "')[1].split('"')[0]
    assert run("--version") == (0, f"bankwright {version}\n", "")


def test_a_file_that_may_not_be_read_is_no_crash(command, tmp_path):
    secret = tmp_path / "secret.toml"
    secret.write_text("bankwright = 1\n")
    secret.chmod(0)
    nobody = {"user": 65534} if os.geteuid() == 0 else {}  # root may read every file
    try:
        done = subprocess.run([command, "check", "secret.toml"], cwd=tmp_path, capture_output=True, timeout=60, **nobody)
    except PermissionError:
        pytest.skip("another user may not run this command")
    assert (done.returncode, done.stdout) == (2, b"") and b"Permission denied" in done.stderr


def test_a_name_cannot_steer_the_terminal(run):
    status, out, err = run("check", "\x1b[2Jno.toml")
    assert (status, out) == (2, "")
    assert "\x1b" not in err


def test_solve_takes_a_current_that_the_meter_then_reads(run):
    status, out, _ = run("solve", "banks/warned.toml", "--current", "40 A")
    assert status == 0
    assert [line.split()[2:4] for line in out.splitlines() if line.startswith("lamp  ")] == [["40", "A"]]


def test_a_drawing_goes_into_the_file_that_is_named(run, tmp_path):
    picture = tmp_path / "bank.svg"
    assert run("draw", "banks/sound.toml", "-o", picture) == (0, "", "")
    assert picture.read_text(encoding="utf-8") == run("draw", "banks/sound.toml")[1]
