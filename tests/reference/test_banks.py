"""The same bank files by three roads: the library, ngspice, and a dense matrix in Python. They must agree."""
import json
import subprocess
from concurrent.futures import ThreadPoolExecutor
from functools import cached_property

import pytest

import bank_elements
import spice
from dense import Dense
from random_files import RandomFile

SEEDS = range(240)
SOUND = {f"random-{seed}.toml" for seed in SEEDS if not RandomFile(seed).weird}
# ngspice stops its iteration when a step is below 1e-9 of a voltage; through 0.1 milliohm that is 1e-7 of a current, and its
# numbers are printed and differenced once more.
NGSPICE = 1e-6
# Both our numbers and the dense solver's are exact but for rounding; 1e-4 to 1e2 ohm lose six of sixteen digits.
DENSE = 1e-10


class Case:
    def __init__(self, name, text, answer):
        self.name, self.answer = name, answer
        self.elements = bank_elements.read(text, answer)
        self.reference = answer["reference"]
        self.solved = answer["status"] == "solved"

    @cached_property
    def dense(self):
        return Dense(self.elements, self.reference)

    @cached_property
    def by_dense(self):
        """(volts by terminal, amperes by element, mode by charger output)"""
        return self.dense.solve()

    def deviations(self, volts, amps, skip=()):
        """{terminal or part: difference of our number from this one, of the bank's largest voltage or current}"""
        parts = {name: part["current"] for name, part in self.answer["parts"].items()}
        ours = {}
        for name in amps:
            if name in skip:
                continue
            if name.endswith(" +"):  # a connector reads its positive pole
                ours[name] = parts[name[:-2]]
            elif name in parts:
                ours[name] = parts[name]
        for charger in {name.split(".")[0] for name in amps if "." in name}:  # and a charger all its outputs
            ours[charger] = parts[charger]
            amps = amps | {charger: sum(value for name, value in amps.items() if name.startswith(charger + "."))}
        most_amps = max([abs(a) for a in amps.values()] + [1e-3])
        most_volts = max([abs(v) for v in volts.values() if v is not None] + [1e-3])
        by_current = {name: float(abs(ours[name] - amps[name]) / most_amps) for name in ours}
        known = {t: v for t, v in self.answer["terminals"].items() if v is not None}
        by_volts = {t: float(abs(v - volts[t]) / most_volts) for t, v in known.items()}
        return by_volts | by_current


@pytest.fixture(scope="module")
def cases(solve_bank, root, tmp_path_factory):
    folder = tmp_path_factory.mktemp("banks")
    paths = []
    for seed in SEEDS:
        paths.append(folder / f"random-{seed}.toml")
        paths[-1].write_text(RandomFile(seed).make(), encoding="utf-8")
    paths += sorted((root / "data/examples").glob("*.toml")) + sorted((root / "tests/reference/banks").glob("*.toml"))
    done = subprocess.run([solve_bank, *paths], capture_output=True, text=True, timeout=600)
    assert done.returncode == 0, done.stderr
    answers = [json.loads(line) for line in done.stdout.splitlines()]
    assert len(answers) == len(paths)
    return [Case(path.name, path.read_text(encoding="utf-8"), answer) for path, answer in zip(paths, answers)]


def judge(results, allowed, what):
    """Prints the worst and fails with every case above `allowed`."""
    worst = {name: max(found.items(), key=lambda item: item[1]) for name, found in results.items()}
    name = max(worst, key=lambda n: worst[n][1])
    print(f"{what}: {len(worst)} banks, worst {worst[name][1]:.1e} at `{worst[name][0]}` of {name}")
    bad = {n: w for n, w in worst.items() if not w[1] <= allowed}
    assert not bad, f"{len(bad)} of {len(worst)}: {sorted(bad.items(), key=lambda item: -item[1][1])[:10]}"


def test_every_sound_bank_is_solved_and_few_miswired_are_not(cases):
    unsolved = [case.name for case in cases if not case.solved]
    assert len(unsolved) <= len(cases) / 50, unsolved
    assert not SOUND & set(unsolved)


def test_the_sound_banks_count_from_their_first_strings_negative_end(cases):
    assert {case.reference for case in cases if case.name in SOUND} == {"B0-0-"}


def test_unknown_voltages_are_those_of_other_islands(cases):
    for case in cases:
        if case.solved:
            volts, _, _ = case.by_dense
            assert {t for t, v in volts.items() if v is None} == \
                   {t for t, v in case.answer["terminals"].items() if v is None}, case.name


def test_dense_matrix_agrees(cases):
    results = {}
    for case in cases:
        if case.solved:
            volts, amps, _ = case.by_dense
            results[case.name] = case.deviations(volts, amps)
    assert len(results) >= 200
    judge(results, DENSE, "dense matrix")


def test_ngspice_agrees(cases, tmp_path):
    def by_ngspice(case):
        _, _, modes = case.by_dense
        volts, amps = spice.solve(case.elements, case.reference, modes, case.dense.open_volts(), tmp_path / f"{case.name}.cir")
        in_forest = {name for name, *_ in case.dense.forest}
        no_ring = len(in_forest) == len(case.elements.ideals)
        return case.name, case.deviations(volts, amps, skip=() if no_ring else in_forest)

    with ThreadPoolExecutor(2) as pool:
        results = dict(pool.map(by_ngspice, [case for case in cases if case.solved]))
    assert len(results) >= 200
    judge(results, NGSPICE, "ngspice")
