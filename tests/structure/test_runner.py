"""Does the runner count what happened, and can it fail? A green line from a runner that cannot fail is worth nothing."""
import importlib.util
import stat

import pytest
from project import ROOT

spec = importlib.util.spec_from_file_location("run_all", ROOT / "tests/run_all.py")
run_all = importlib.util.module_from_spec(spec)
spec.loader.exec_module(run_all)


def counts(outcome):
    return outcome.passed, len(outcome.failures), len(outcome.skips)


@pytest.fixture
def binary(tmp_path):
    """Something that prints what a doctest binary would and ends with a status."""
    def make(printed, status=0):
        path = tmp_path / "test_binary"
        path.write_text(f"#!/bin/sh\ncat <<'end'\n{printed}\nend\nexit {status}\n")
        path.chmod(path.stat().st_mode | stat.S_IXUSR)
        return path
    return make


@pytest.mark.parametrize("printed, status, expected", [
    ("[doctest] test cases: 5 | 5 passed | 0 failed | 0 skipped", 0, (5, 0, 0)),
    ("[doctest] test cases: 5 | 3 passed | 2 failed | 1 skipped", 1, (3, 2, 1)),
    ("x.cpp:3: MESSAGE: skipped: no ngspice\n[doctest] test cases: 5 | 5 passed | 0 failed | 0 skipped", 0, (4, 0, 1)),
    ("[doctest] test cases: 0 | 0 passed | 0 failed | 0 skipped", 0, (0, 1, 0)),
    ("ERROR: AddressSanitizer: heap-buffer-overflow", 1, (0, 1, 0)),
    ("[doctest] test cases: 5 | 5 passed | 0 failed | 0 skipped\nERROR: LeakSanitizer", 23, (5, 1, 0)),
])
def test_doctest_binaries(binary, printed, status, expected):
    assert counts(run_all.run_doctest("unit/x", binary(printed, status))) == expected


@pytest.mark.parametrize("text, expected", [
    ("def test_a(): pass\ndef test_b(): assert False\n", (1, 1, 0)),
    ("import pytest\n@pytest.mark.skip(reason='why')\ndef test_a(): pass\n", (0, 0, 1)),
    ("import pytest\n@pytest.fixture\ndef f(): raise OSError\ndef test_a(f): pass\n", (0, 1, 0)),
])
def test_pytest_files(tmp_path, monkeypatch, text, expected):
    monkeypatch.setattr(run_all, "ROOT", tmp_path)
    monkeypatch.setattr(run_all, "RESULTS", tmp_path)
    file = tmp_path / "test_x.py"
    file.write_text(text)
    assert counts(run_all.run_pytest("x", [file])) == expected


@pytest.mark.parametrize("text", ["", "import nothing_of_that_name\n"])
def test_a_file_in_which_nothing_runs_is_a_failure(tmp_path, monkeypatch, text):
    monkeypatch.setattr(run_all, "ROOT", tmp_path)
    monkeypatch.setattr(run_all, "RESULTS", tmp_path)
    (tmp_path / "test_x.py").write_text(text)
    passed, failed, skipped = counts(run_all.run_pytest("x", [tmp_path / "test_x.py"]))
    assert passed == skipped == 0 and failed > 0


@pytest.mark.parametrize("status, expected", [(0, (1, 0, 0)), (77, (0, 0, 1)), (1, (0, 1, 0))])
def test_scripts(binary, status, expected):
    assert counts(run_all.run_script("x", [binary("a reason", status)])) == expected


def test_long_steps_begin_first_and_the_slowest_are_named(tmp_path, monkeypatch):
    monkeypatch.setattr(run_all, "LASTED", tmp_path / "seconds.json")
    jobs = [("short", None, None), ("long", None, None), ("new", None, None)]
    assert [job[0] for job in run_all.longest_first(jobs)] == ["short", "long", "new"], "nothing is known: as they were found"
    run_all.LASTED.write_text('{"short": 1.0, "long": 60.0}')
    assert [job[0] for job in run_all.longest_first(jobs)] == ["new", "long", "short"]
    outcomes = [run_all.Outcome(f"step {number}", seconds=float(number)) for number in range(12)]
    named = run_all.slowest(outcomes).splitlines()
    assert len(named) == 10 and named[0].endswith("11.0 s  step 11") and named[-1].endswith("2.0 s  step 2")
