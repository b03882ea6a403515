#!/usr/bin/env python3
"""How many bank files does one run of `check` get through in a second, on one core? Prints the figure; nothing passes or fails by it.

    tests/bench/check_speed.py [COMMAND]      build/release/bin/bankwright unless said otherwise

A thousand files, made of the examples in turn, checked in one run; the best of some runs, by the processor time of the command, which
other work on the machine disturbs less than the clock.
"""
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
FILES = 1000
RUNS = 7


def fill(folder):
    examples = sorted((ROOT / "data/examples").glob("*.toml"))
    for number in range(FILES):
        shutil.copyfile(examples[number % len(examples)], folder / f"bank-{number:04}.toml")


def processor_seconds(command, folder):
    process = subprocess.Popen([command, "check", folder], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    assert process.returncode == 1, "some of the examples are miswired"
    return used.ru_utime + used.ru_stime


if __name__ == "__main__":
    command = sys.argv[1] if len(sys.argv) > 1 else ROOT / "build/release/bin/bankwright"
    with tempfile.TemporaryDirectory() as folder:
        fill(Path(folder))
        seconds = sorted(processor_seconds(command, folder) for _ in range(RUNS))
    print(f"{FILES} files in {seconds[0]:.3f} s of one core: {FILES / seconds[0]:.0f} files/s "
          f"(best of {RUNS} runs; the middle one {FILES / seconds[RUNS // 2]:.0f} files/s)")
