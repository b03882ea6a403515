#!/usr/bin/env python3
"""Do the tests notice one wrong sign? Builds a copy of the project with mutants of solver/, network/ and rules/ in it (mutants.py), each
behind a switch, runs the tests on every one and prints how many are killed; those that survive are listed, with the reason that survivors.md
gives, if it knows them.

    tests/mutation/run.py [--count 240] [--seed 1] [--only NUMBER]

A mutant is killed by the first test that fails, crashes or takes ten times the processor time that it should. Needs python3-clang-14 (Debian).
"""
import argparse
import os
import re
import resource
import signal
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import mutants

ROOT = Path(__file__).resolve().parents[2]
WORK = ROOT / "build/mutation"
COPY, BUILD = WORK / "source", WORK / "build"
FOLDERS = {"solver": "solver.cpp", "network": "network.cpp", "rules": "rules.cpp"}
BINARIES = ["unit_solver", "unit_network", "unit_rules", "laws", "unit_analyses", "unit_sizing", "standards", "golden", "reference", "miswires"]
UNTOUCHED = {"rules": {"unit_solver", "unit_network", "laws", "reference", "banks"}}  # suites that never ask what is in a folder
SWITCH = """#pragma once
#include <cstdlib>
inline int const bankwright_mutant_chosen = std::getenv("BANKWRIGHT_MUTANT") ? std::atoi(std::getenv("BANKWRIGHT_MUTANT")) : 0;
inline bool bankwright_mutant(int number) { return number == bankwright_mutant_chosen; }
"""


def explained():
    """What survivors.md says, by the mutant in its words."""
    return dict(re.findall(r"^\* (.* becomes `[^`]*`): (.*)$", (ROOT / "tests/mutation/survivors.md").read_text(encoding="utf-8"), re.M))


def call(command, **options):
    return subprocess.run([str(word) for word in command], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, errors="replace",
                          **options)


def copy_project(chosen):
    """What has not changed is left as it is, so that it is not built again."""
    listed = subprocess.run(["git", "ls-files", "-co", "--exclude-standard"], cwd=ROOT, capture_output=True, text=True, check=True)
    names = {name for name in listed.stdout.splitlines() if (ROOT / name).is_file()}
    for path in COPY.rglob("*"):
        if path.is_file() and str(path.relative_to(COPY)) not in names:
            path.unlink()
    for name in names:
        source, copy = ROOT / name, COPY / name
        text = mutants.mutated(source, chosen)
        if copy.is_file() and copy.read_bytes() == text:
            continue
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_bytes(text)
        copy.chmod(source.stat().st_mode)
    switch = WORK / "switch.hpp"
    if not switch.exists() or switch.read_text() != SWITCH:
        switch.write_text(SWITCH)


def build(chosen):
    """Mutants that do not compile are left out, and what is left is built again."""
    while True:
        copy_project(chosen)
        call(["cmake", "-S", COPY, "-B", BUILD, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Mutation", "-DBANKWRIGHT_TESTS=ON", "-DBANKWRIGHT_BINDINGS=OFF",
              f"-DCMAKE_CXX_FLAGS=-O1 -w -D_GLIBCXX_ASSERTIONS -include {WORK}/switch.hpp", "-DPython_EXECUTABLE=/usr/bin/python3"])
        done = call(["cmake", "--build", BUILD, "--target", "bankwright", "solve_bank", *(f"test_{name}" for name in BINARIES), "--", "-k", "0"])
        if done.returncode == 0:
            return chosen
        wrong = {((BUILD / file).resolve(), int(line))
                 for file, line in re.findall(r"^(?:In file included from )?(\S+?):(\d+):\d+: error", done.stdout, re.M)}
        left = [m for m in chosen if not any((COPY / m.file.relative_to(ROOT)).resolve() == file and m.line <= line <= m.line + m.was.count("\n")
                                             for file, line in wrong)]
        if len(left) == len(chosen):
            sys.exit(done.stdout[-4000:])
        print(f"{len(chosen) - len(left)} do not compile and are left out", flush=True)
        chosen = left


def suites():
    tests = [(name, [BUILD / f"bin/test_{name}", "--abort-after=1"]) for name in BINARIES]
    tests.append(("rules", ["/usr/bin/python3", "-m", "pytest", "-xq", "-p", "no:cacheprovider", COPY / "tests/rules"]))
    others = ["test_banks", "test_short_circuit", "test_tolerance"]
    tests.append(("banks", ["/usr/bin/python3", "-m", "pytest", "-xq", "-p", "no:cacheprovider",
                            *(COPY / f"tests/reference/{name}.py" for name in others)]))
    tests.append(("command", ["/usr/bin/python3", "-m", "pytest", "-xq", "-p", "no:cacheprovider", COPY / "tests/command"]))
    return tests


def passes(command, number, processor_seconds):
    """Processor time is limited, so that a busy machine kills no mutant. The other limit is for what waits for ever."""
    environment = os.environ | {"BANKWRIGHT_MUTANT": str(number), "BANKWRIGHT_COMMAND": str(BUILD / "bin/bankwright"),
                                "BANKWRIGHT_SOLVE_BANK": str(BUILD / "bin/solve_bank"), "PYTHONDONTWRITEBYTECODE": "1"}
    limit = int(processor_seconds) + 1
    test = subprocess.Popen([str(word) for word in command], cwd=COPY, env=environment, start_new_session=True, stdin=subprocess.DEVNULL,
                            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                            preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_CPU, (limit, limit)))
    try:
        return test.wait(3600) == 0
    except subprocess.TimeoutExpired:
        os.killpg(test.pid, signal.SIGKILL)  # and what it started
        test.wait()
        return False


def processor_time_of_tests():
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=240)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", type=int, nargs="+", metavar="NUMBER", help="these mutants alone")
    options = parser.parse_args()
    flags = ["-isystem", "/usr/include/eigen3", "-DFMT_HEADER_ONLY=1"]
    everywhere = mutants.find(ROOT, list(FOLDERS), [ROOT / "lib/src" / name for name in FOLDERS.values()], flags)
    chosen = mutants.draw(everywhere, options.count, options.seed)
    print(f"{len(chosen)} of {len(everywhere)} mutants, seed {options.seed}", flush=True)
    chosen = build(chosen)
    timed = []
    for name, command in suites():
        begin = processor_time_of_tests()
        if not passes(command, 0, 1800):
            sys.exit(f"{name} fails without any mutant")
        timed.append((processor_time_of_tests() - begin, name, command))
    timed.sort(key=lambda each: each[0])
    print("without a mutant: " + ", ".join(f"{name} {seconds:.1f} s" for seconds, name, _ in timed), flush=True)

    reasons = explained()

    def killer(mutant):
        spared = UNTOUCHED.get(mutant.file.parent.name, set())
        by = next((name for seconds, name, command in timed if name not in spared and not passes(command, mutant.number, 10 * seconds + 20)), None)
        if by is None:
            print(f"survives: {mutant.number:>4} {mutant.describe(ROOT)}: {reasons.get(mutant.words(ROOT), 'not explained')}", flush=True)
        return by

    tried = [m for m in chosen if not options.only or m.number in options.only]
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        killers = list(pool.map(killer, tried))
    for folder in FOLDERS:
        of_folder = [k for m, k in zip(tried, killers) if m.file.parent.name == folder]
        print(f"{folder:<8} {sum(k is not None for k in of_folder):>4} of {len(of_folder):>4} killed")
    for name in dict.fromkeys(killers):
        if name:
            print(f"    by {name}: {killers.count(name)}")
    killed = sum(k is not None for k in killers)
    print(f"{killed} of {len(tried)} mutants killed, {100 * killed / max(1, len(tried)):.1f} %")


if __name__ == "__main__":
    main()
