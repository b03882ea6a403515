"""--output: a report arrives whole or not at all, and never over a file that was read for it."""
import json
import os
import resource
import stat
import subprocess
from pathlib import Path

import pytest

WARNED = (Path(__file__).resolve().parent / "banks/warned.toml").read_text(encoding="utf-8")


@pytest.fixture
def check(command, tmp_path):
    """check(*arguments) -> exit status, standard output, standard error, in a folder that holds boat.toml."""
    (tmp_path / "boat.toml").write_text(WARNED, encoding="utf-8")

    def call(*arguments, **more):
        done = subprocess.run([command, "check", *arguments], cwd=tmp_path, capture_output=True, text=True, timeout=60, **more)
        return done.returncode, done.stdout, done.stderr

    return call


def left_over(folder):
    return sorted(path.name for path in folder.iterdir() if path.name.startswith(".bankwright"))


@pytest.mark.parametrize("option", [["-o", "report.sarif"], ["--output", "report.sarif"], ["--output=report.sarif"]])
def test_findings_go_into_the_file_and_nowhere_else(check, tmp_path, option):
    assert check("boat.toml", "--format", "sarif", *option, "--fail-on", "warning") == (1, "", "")
    direct = check("boat.toml", "--format", "sarif")[1]
    assert (tmp_path / "report.sarif").read_text(encoding="utf-8") == direct and left_over(tmp_path) == []


def test_a_new_file_is_as_readable_as_any_other_and_an_old_one_stays_as_it_was(check, tmp_path):
    mask = os.umask(0o022)
    try:
        check("boat.toml", "-o", "new.txt")
        (tmp_path / "old.txt").write_text("old")
        (tmp_path / "old.txt").chmod(0o640)
        check("boat.toml", "-o", "old.txt")
    finally:
        os.umask(mask)
    assert stat.S_IMODE((tmp_path / "new.txt").stat().st_mode) == 0o644
    assert stat.S_IMODE((tmp_path / "old.txt").stat().st_mode) == 0o640
    assert "1 warning" in (tmp_path / "old.txt").read_text()


@pytest.mark.parametrize("output", ["boat.toml", "./boat.toml", "link.toml", "hard.toml", "sub/../boat.toml"])
@pytest.mark.parametrize("argument", ["boat.toml", "."])
def test_an_input_is_never_written_over_under_whatever_name(check, tmp_path, output, argument):
    (tmp_path / "sub").mkdir()
    (tmp_path / "link.toml").symlink_to("boat.toml")
    os.link(tmp_path / "boat.toml", tmp_path / "hard.toml")
    status, out, err = check(argument, "-o", output)
    assert (status, out) == (2, "") and "is one of the files to check" in err
    assert (tmp_path / "boat.toml").read_text(encoding="utf-8") == WARNED and left_over(tmp_path) == []


@pytest.mark.parametrize("what", ["draw", "report"])
def test_a_picture_is_not_written_over_its_bank_either(command, tmp_path, what):
    (tmp_path / "boat.toml").write_text(WARNED, encoding="utf-8")
    done = subprocess.run([command, what, "boat.toml", "-o", "./boat.toml"], cwd=tmp_path, capture_output=True, timeout=60)
    assert done.returncode == 2 and b"is the bank file" in done.stderr
    assert (tmp_path / "boat.toml").read_text(encoding="utf-8") == WARNED and left_over(tmp_path) == []


@pytest.mark.parametrize("what", ["draw", "report"])
def test_a_picture_goes_into_its_file_whole_and_nowhere_else(command, tmp_path, what):
    (tmp_path / "boat.toml").write_text(WARNED, encoding="utf-8")
    done = subprocess.run([command, what, "boat.toml", "-o", "boat.out"], cwd=tmp_path, capture_output=True, timeout=60)
    direct = subprocess.run([command, what, "boat.toml"], cwd=tmp_path, capture_output=True, timeout=60)
    assert (done.returncode, done.stdout, done.stderr) == (0, b"", b"")
    assert (tmp_path / "boat.out").read_bytes() == direct.stdout and left_over(tmp_path) == []


def test_a_link_stays_a_link_and_nothing_goes_through_it_unasked(check, tmp_path):
    (tmp_path / "sub").mkdir()
    (tmp_path / "sub/real.txt").write_text("old")
    (tmp_path / "latest.txt").symlink_to("sub/real.txt")
    status, out, err = check("boat.toml", "-o", "latest.txt")
    assert (status, out) == (2, "") and "latest.txt: is a link to `sub/real.txt`; nothing was written" in err
    assert (tmp_path / "sub/real.txt").read_text() == "old"
    assert check("boat.toml", "-o", "latest.txt", "--force")[0] == 0
    assert (tmp_path / "latest.txt").is_symlink() and "1 warning" in (tmp_path / "sub/real.txt").read_text()


def test_a_full_disk_leaves_the_old_file_whole(check, tmp_path):
    (tmp_path / "report.txt").write_text("old")

    def little_room():  # a file may not grow beyond 16 bytes
        import signal
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (16, 16))

    status, _, err = check("boat.toml", "-o", "report.txt", preexec_fn=little_room)
    assert status == 2 and "report.txt: File too large" in err
    assert (tmp_path / "report.txt").read_text() == "old" and left_over(tmp_path) == []


def test_a_read_only_file_is_replaced_only_by_force(check, tmp_path):
    (tmp_path / "kept.txt").write_text("old")
    (tmp_path / "kept.txt").chmod(0o444)
    status, out, err = check("boat.toml", "-o", "kept.txt")
    assert (status, out) == (2, "") and "kept.txt: is read-only; nothing was written" in err
    assert (tmp_path / "kept.txt").read_text() == "old" and left_over(tmp_path) == []
    assert check("boat.toml", "-o", "kept.txt", "--force")[0] == 0
    assert "1 warning" in (tmp_path / "kept.txt").read_text() and stat.S_IMODE((tmp_path / "kept.txt").stat().st_mode) == 0o444


@pytest.mark.parametrize("words", [["check", "boat.toml", "-o", ""], ["draw", "boat.toml", "--output", ""], ["report", "boat.toml", "-o", ""],
                                   ["discharge", "boat.toml", "--duty", ""]], ids=lambda words: words[0])
def test_a_file_without_a_name_is_wrong_usage(command, tmp_path, words):
    (tmp_path / "boat.toml").write_text(WARNED, encoding="utf-8")
    done = subprocess.run([command, *words], cwd=tmp_path, capture_output=True, text=True, timeout=60)
    assert (done.returncode, done.stdout) == (2, "") and "a file needs a name" in done.stderr


@pytest.mark.parametrize("output, says", [("nowhere/report.txt", "No such file"), (".", "is a folder")])
def test_where_nothing_can_be_written_is_wrong_usage(check, output, says):
    status, out, err = check("boat.toml", "-o", output)
    assert (status, out) == (2, "") and f"{output}: {says}" in err


def test_what_is_no_ordinary_file_is_written_to_as_it_is(check):
    assert check("boat.toml", "-o", "/dev/null")[0] == 0
    assert Path("/dev/null").is_char_device()
    assert check("boat.toml", "-o", "/dev/full")[0] == 2


def test_programs_get_a_document_even_when_nothing_could_be_read(check, tmp_path):
    assert check("nowhere.toml", "--format", "json", "-o", "report.json")[0] == 2
    assert json.loads((tmp_path / "report.json").read_text())["files"] == []
