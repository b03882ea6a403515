#!/usr/bin/env python3
"""Builds, runs every test there is, and counts: the last line is `N passed, N failed, N skipped`.

A test joins by existing: tests/**/*_test.cpp (doctest, one binary a folder, under ASan and UBSan), tests/**/test_*.py (pytest),
tests/**/*_test.sh and *_test.mjs (a script counts one; exit status 77 skips, its last line says why). A file in which no test
ran is a failure. A doctest case that cannot run says MESSAGE("skipped: why") and counts as skipped.
"""
import json
import os
import re
import subprocess
import sys
import time
import xml.etree.ElementTree as xml
from concurrent.futures import ThreadPoolExecutor, as_completed
from dataclasses import dataclass, field
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
TESTS = ROOT / "tests"
DEV, RELEASE = ROOT / "build/dev", ROOT / "build/release"
RESULTS = ROOT / "build/test-results"
LASTED = RESULTS / "seconds.json"  # how long each step took last time
ALONE = ("package",)  # these use every core
ONE_PROCESS = ("package", "pictures")  # the files of a folder share what is dear to set up
TIMEOUT = 1500  # s, for one binary, folder or script
SKIP_STATUS = 77

ENVIRONMENT = os.environ | {
    "BANKWRIGHT_COMMAND": str(RELEASE / "bin/bankwright"),
    "BANKWRIGHT_SANITIZED_COMMAND": str(DEV / "bin/bankwright"),
    "PYTHONPATH": str(RELEASE / "python"),
    "PYTHONDONTWRITEBYTECODE": "1",
    "MPLBACKEND": "agg",
    "UBSAN_OPTIONS": "print_stacktrace=1",
    "ASAN_OPTIONS": "malloc_context_size=6",  # where memory came from is told six calls deep: a fifth of the time less
}


@dataclass
class Outcome:
    name: str
    passed: int = 0
    failures: list[str] = field(default_factory=list)
    skips: list[str] = field(default_factory=list)
    output: str = ""  # shown if something failed
    seconds: float = 0.0

    def show(self):
        print(f"{self.name:<28} {self.passed:>5} passed {len(self.failures):>4} failed {len(self.skips):>4} skipped "
              f"{self.seconds:>8.1f} s")
        for reason in self.skips:
            print(f"    skipped: {reason}")
        if self.failures:
            print("".join(f"    {line}\n" for line in self.output.rstrip().splitlines()[-150:]), end="")
        for failure in self.failures:
            print(f"    FAILED: {failure}")
    

def run(command):
    """Exit status and everything printed; a hang is a status of its own."""
    try:
        done = subprocess.run([str(word) for word in command], cwd=ROOT, env=ENVIRONMENT, timeout=TIMEOUT, text=True,
                              errors="replace", stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
        return done.returncode, done.stdout
    except subprocess.TimeoutExpired as late:
        printed = late.stdout or b""
        printed = printed.decode(errors="replace") if isinstance(printed, bytes) else printed
        return "timeout", f"{printed}\nstopped after {TIMEOUT} s"


def build(preset):
    outcome = Outcome(f"build {preset}")
    status, outcome.output = run(["cmake", "--preset", preset])
    if status == 0:
        status, outcome.output = run(["cmake", "--build", "--preset", preset, "--", "-k", "0"])
    if status != 0:
        outcome.failures.append(f"the {preset} preset does not build")
    return outcome


def run_doctest(name, binary):
    outcome = Outcome(name)
    status, outcome.output = run([binary, "--no-colors"])
    cases = re.search(r"test cases: *(\d+) \| *(\d+) passed \| *(\d+) failed \| *(\d+) skipped", outcome.output)
    if not cases:
        outcome.failures.append(f"{name} stopped before its summary, status {status}")
        return outcome
    total, outcome.passed, failed, marked = map(int, cases.groups())
    outcome.skips = re.findall(r"MESSAGE: skipped: (.*)", outcome.output)
    outcome.passed -= len(outcome.skips)
    outcome.skips += ["marked so in the source"] * marked
    outcome.failures = [f"{name}: see above"] * failed
    if status != 0 and not failed:
        outcome.failures.append(f"{name} ended with status {status}")
    if total == 0:
        outcome.failures.append(f"{name} has no test")
    return outcome


def run_pytest(name, files):
    outcome = Outcome(name)
    report = RESULTS / f"{name.replace('/', '_')}.xml"
    report.unlink(missing_ok=True)
    status, outcome.output = run(["/usr/bin/python3", "-m", "pytest", "-q", "--no-header", "-p", "no:cacheprovider",
                                  f"--rootdir={ROOT}", f"--junitxml={report}", "-o", "junit_family=xunit1", *files])
    ran = set()
    for case in xml.parse(report).iter("testcase") if report.exists() else ():
        ran.add(ROOT / case.get("file", ""))
        label = f"{case.get('file')}: {case.get('name')}"
        if case.find("failure") is not None or case.find("error") is not None:
            outcome.failures.append(label)
        elif (skip := case.find("skipped")) is not None:
            outcome.skips.append(f"{label}: {skip.get('message')}")
        else:
            outcome.passed += 1
    if status not in (0, 1) or (status == 1 and not outcome.failures):
        outcome.failures.append(f"{name} ended with status {status}")
    outcome.failures += [f"{file.relative_to(ROOT)} ran no test" for file in files if file not in ran]
    return outcome


def run_script(name, command):
    outcome = Outcome(name)
    status, outcome.output = run(command)
    if status == 0:
        outcome.passed = 1
    elif status == SKIP_STATUS:
        outcome.skips.append((outcome.output.strip().splitlines() or ["no reason given"])[-1])
    else:
        outcome.failures.append(f"{name} ended with status {status}")
    return outcome


def files_without_a_case(binaries):
    """A *_test.cpp of which no case is in a binary would be left out in silence."""
    outcome = Outcome("every *_test.cpp has a case")
    listed = set()
    for binary in binaries:
        _, text = run([binary, "--list-test-cases", "--reporters=xml"])
        listed |= {Path(name).resolve() for name in re.findall(r'filename="([^"]+)"', text)}
    for file in sorted(TESTS.rglob("*_test.cpp")):
        if file in listed:
            outcome.passed = 1
        else:
            outcome.failures.append(f"{file.relative_to(ROOT)} has no case in any test binary")
    return outcome


def folder_of(path):
    return str(path.parent.relative_to(TESTS))


def find_jobs(wanted):
    """(name, function, argument) of every runner, from what CTest knows and what lies under tests/."""
    jobs = []
    status, text = run(["ctest", "--test-dir", DEV, "--show-only=json-v1"])
    for test in json.loads(text)["tests"] if status == 0 else ():
        command = test.get("command", [f"missing: {test['name']}"])
        is_doctest = Path(command[0]).parent == DEV / "bin" and len(command) == 1
        jobs.append((test["name"].replace("_", "/", 1), run_doctest if is_doctest else run_script,
                     command[0] if is_doctest else command))
    folders = {}
    for file in sorted(TESTS.rglob("test_*.py")):
        folders.setdefault(folder_of(file), []).append(file)
    for folder, files in folders.items():
        if folder.split("/")[0] in ONE_PROCESS:
            jobs.append((folder, run_pytest, files))
        else:
            jobs += [(f"{folder}/{file.stem}", run_pytest, [file]) for file in files]
    for pattern, interpreter in (("*_test.sh", "bash"), ("*_test.mjs", "node")):
        for file in sorted(TESTS.rglob(pattern)):
            if "node_modules" not in file.parts:
                jobs.append((str(file.relative_to(TESTS)), run_script, [interpreter, file]))
    if wanted:
        jobs = [job for job in jobs if job[0].split("/")[0] in wanted]
    return jobs


def longest_first(jobs):
    """So that no core waits at the end for one long step: by what each took last time, what is new before all others."""
    try:
        lasted = json.loads(LASTED.read_text())
    except (OSError, ValueError):
        lasted = {}
    return sorted(jobs, key=lambda job: -lasted.get(job[0], float("inf")))


def slowest(outcomes, count=10):
    return "\n".join(f"{outcome.seconds:>8.1f} s  {outcome.name}"
                     for outcome in sorted(outcomes, key=lambda outcome: -outcome.seconds)[:count])


def perform(job):
    name, function, argument = job
    begin = time.monotonic()
    try:
        outcome = function(name, argument)
    except OSError as error:
        outcome = Outcome(name, failures=[f"{name} cannot be run: {error}"])
    outcome.seconds = time.monotonic() - begin
    return outcome


def main(wanted):
    sys.stdout.reconfigure(line_buffering=True)  # also when it goes into a file
    begun = time.monotonic()
    RESULTS.mkdir(parents=True, exist_ok=True)
    outcomes = []

    def note(outcome):
        outcome.show()
        outcomes.append(outcome)

    print("\n== build")
    for preset in ("dev", "release", "clang"):  # the last is built only: what another compiler refuses
        print(f"building {preset} ...")
        begin = time.monotonic()
        outcome = build(preset)
        outcome.seconds = time.monotonic() - begin
        note(outcome)

    print("\n== tests")
    jobs = find_jobs(wanted)
    if not wanted:
        note(files_without_a_case([job[2] for job in jobs if job[1] is run_doctest]))
    together = longest_first([job for job in jobs if job[0].split("/")[0] not in ALONE])
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        for done in as_completed([pool.submit(perform, job) for job in together]):
            note(done.result())
    for job in jobs:
        if job not in together:
            note(perform(job))
    if not jobs:
        note(Outcome("nothing", failures=[f"no test in {' '.join(wanted) or 'tests/'}"]))

    failures = [failure for outcome in outcomes for failure in outcome.failures]
    if failures:
        print("\n== failed")
        print("\n".join(failures))
    if not wanted:
        LASTED.write_text(json.dumps({outcome.name: round(outcome.seconds, 1) for outcome in outcomes}))
    print(f"\n== the slowest steps, of {time.monotonic() - begun:.0f} s in all\n{slowest(outcomes)}")
    passed = sum(outcome.passed for outcome in outcomes)
    skipped = sum(len(outcome.skips) for outcome in outcomes)
    print(f"\n{passed} passed, {len(failures)} failed, {skipped} skipped")
    return 1 if failures or not passed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
