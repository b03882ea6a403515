"""Start: one whole process that checks one bank file, against processes that do nothing or load other software. Processor time."""
import os
import subprocess
import sys
import tempfile
from pathlib import Path

from measuring import BUILD, build, entry, table, take_turns

SERIES, PARALLEL = 3, 4
# A release is linked statically where that works; loading a C++ library takes as long again as everything else.
TRUE_GOALS = {"static": 1.2, "dynamic": 2.5}


def bank():
    """An invented bank of strings side by side, linked at every rank, as a bank file."""
    strings, link, lead = "ABCD"[:PARALLEL], 'size = "2/0 AWG", length = "12 in"', 'size = "2/0 AWG", length = "4 ft"'
    near = 'size = "2/0 AWG", length = "6 in"'
    lines = ["bankwright = 1", "[batteries]"]
    lines += [f'{s}{rank} = {{ chemistry = "agm", voltage = "12 V", capacity = "100 Ah" }}'
              for s in strings for rank in range(1, SERIES + 1)]
    lines.append("[jumpers]")
    lines += [f'{s}{r}{r + 1} = {{ from = "{s}{r}+", to = "{s}{r + 1}-", {link} }}' for s in strings for r in range(1, SERIES)]
    lines += [f'{a}{b}{rank}{word} = {{ from = "{a}{rank}{post}", to = "{b}{rank}{post}", {link} }}'
              for a, b in zip(strings, strings[1:]) for rank in range(1, SERIES + 1) for post, word in (("+", "p"), ("-", "n"))]
    lines += ["[cables]", f'plus = {{ from = "{strings[-1]}{SERIES}+", to = "main.line", {near} }}',
              f'feed = {{ from = "main.load", to = "drive+", {lead} }}', f'minus = {{ from = "A1-", to = "drive-", {lead} }}',
              '[breakers]', 'main = { rating = "150 A", interrupts = "20 kA", voltage = "65 V" }',
              '[loads]', 'drive = { current = "100 A" }']
    return "\n".join(lines) + "\n"


def netlist():
    """The same wiring as resistances and sources."""
    lines, count = ["the same bank"], iter(range(1, 10**6))

    def between(a, b, ohms):
        lines.append(f"R{next(count)} {a} {b} {ohms}")
    for p in range(PARALLEL):
        for s in range(SERIES):
            between(f"n{s}_{p}", f"m{s}_{p}", 0.005)
            lines.append(f"V{s}_{p} p{s}_{p} m{s}_{p} 12.8")
            if p + 1 < PARALLEL:
                between(f"p{s}_{p}", f"p{s}_{p + 1}", 0.0001)
                between(f"n{s}_{p}", f"n{s}_{p + 1}", 0.0001)
            if s + 1 < SERIES:
                between(f"p{s}_{p}", f"n{s + 1}_{p}", 0.0001)
    between(f"p{SERIES - 1}_0", "a", 0.0003)
    between("a", "b", 0.0005)
    between("b", "c", 0.0003)
    between(f"n0_{PARALLEL - 1}", "0", 0.0003)
    return "\n".join([*lines, "I0 c 0 100", ".op", ".end", ""])


def seconds(words):
    """Processor time of the process from its making to its end, which other work disturbs less than the clock."""
    child = os.posix_spawn(words[0], words, os.environ, file_actions=[(os.POSIX_SPAWN_OPEN, 1, "/dev/null", os.O_WRONLY, 0)])
    _, status, used = os.wait4(child, 0)
    assert os.waitstatus_to_exitcode(status) == 0, words
    return used.ru_utime + used.ru_stime


def goals(quick):
    build("bankwright_command")
    ours = str(BUILD / "bin/bankwright")
    linked = "dynamic" if b"/ld-linux" in Path(ours).read_bytes() else "static"
    with tempfile.TemporaryDirectory() as folder:
        file, circuit = Path(folder, "bank.toml"), Path(folder, "bank.cir")
        file.write_text(bank(), encoding="utf-8")
        circuit.write_text(netlist(), encoding="utf-8")
        done = subprocess.run([ours, "check", file], capture_output=True, text=True)
        if f"{SERIES}S{PARALLEL}P" not in done.stdout or "error" in done.stdout:
            sys.exit("the bank of this comparison is not as it was meant:\n" + done.stdout + done.stderr)
        processes = {"/bin/true": ["/bin/true"], "bankwright check": [ours, "check", str(file)],
                     "ngspice -b": ["/usr/bin/ngspice", "-b", str(circuit)],
                     "python3 -c 'import numpy'": ["/usr/bin/python3", "-c", "import numpy"]}
        processes = {name: words for name, words in processes.items() if Path(words[0]).exists()}
        for words in processes.values():
            seconds(words)  # into the page cache
        times = take_turns({name: lambda words=words: seconds(words) for name, words in processes.items()},
                           15 if quick else 101)
    check = times["bankwright check"]
    table(f"one process that checks a bank of {SERIES}S{PARALLEL}P, linked {linked}, processor time", times, "bankwright check", "ms", 1e3)
    yield entry("check one file: /bin/true", check, times["/bin/true"], TRUE_GOALS[linked], at_most=True)
    for name, goal in (("ngspice -b", 7.0), ("python3 -c 'import numpy'", 50.0)):
        if name in times:
            yield entry(f"check one file: {name}", check, times[name], goal)
