"""Every short circuit that the command lists, against the same bank with a wire of no resistance laid there: by a dense matrix,
and for the examples by ngspice too."""
import json
import subprocess
import tomllib

import pytest

import bank_elements
import spice
from dense import Dense
from random_files import RandomFile

SEEDS = [seed for seed in range(40) if not RandomFile(seed).weird]
EXAMPLES = ["bow-36v", "ferry-48v-lithium", "houseboat-12v", "launch-36v-diagonal", "skiff-24v", "tender-12v"]
DENSE = 1e-9    # of a current; 1e-4 to 1e2 ohm lose six of sixteen digits, and a short's current is a difference of others
NGSPICE = 1e-6  # see test_banks.py


def all_closed(text):
    return text.replace('state = "open"', 'state = "closed"').replace('state = "apart"', 'state = "mated"')


def with_short(text, answer, terminal, against):
    """The elements of the bank with loads and chargers off and the short in place, which comes last."""
    elements = bank_elements.read(text, answer)
    off = set(tomllib.loads(text).get("loads", {}))
    elements.loads = []
    elements.resistors = [resistor for resistor in elements.resistors if resistor[0] not in off]
    elements.ideals.append(("the short", terminal, against))
    return elements


def faults(command, solve_bank, path):
    """(the command's document, what the devices give where the file is silent)"""
    ran = subprocess.run([command, "short-circuit", "--format", "json", path], capture_output=True, text=True, timeout=60)
    assert ran.returncode == 0, ran.stderr
    solved = subprocess.run([solve_bank, path], capture_output=True, text=True, timeout=60)
    return json.loads(ran.stdout), json.loads(solved.stdout)


def check(document, text, answer, currents, allowed):
    assert document["places"]
    for place in document["places"]:
        elements = with_short(text, answer, place["terminal"], place["against"])
        amps = currents(elements, place["against"])
        assert place["current"] == pytest.approx(abs(amps["the short"]), rel=allowed), place["terminal"]
        ideal = {name for name, *_ in elements.ideals}  # what a ring of these shares out has no physical answer
        for device, seen in place["devices"].items():
            if device not in ideal:
                assert seen["current"] == pytest.approx(abs(amps[device]), rel=allowed, abs=allowed * place["current"])
        for device in set(document["devices"]) - set(place["devices"]) - ideal:
            assert abs(amps[device]) <= 2e-6 * place["current"], device  # it carries nothing


def by_dense(elements, reference):
    return {name: float(current) for name, current in Dense(elements, reference).solve()[1].items()}


@pytest.mark.parametrize("seed", SEEDS)
def test_a_dense_matrix_gives_the_same_fault_currents(command, solve_bank, tmp_path, seed):
    text = all_closed(RandomFile(seed).make())
    path = tmp_path / "bank.toml"
    path.write_text(text, encoding="utf-8")
    check(*with_text(faults(command, solve_bank, path), text), by_dense, DENSE)


@pytest.mark.parametrize("name", EXAMPLES)
def test_ngspice_gives_the_same_fault_currents(command, solve_bank, root, tmp_path, name):
    path = root / f"data/examples/{name}.toml"
    text = all_closed(path.read_text(encoding="utf-8"))

    def by_ngspice(elements, reference):
        return spice.solve(elements, reference, {}, {}, tmp_path / "bank.cir")[1]

    found = faults(command, solve_bank, path)
    check(*with_text(found, text), by_dense, DENSE)
    check(*with_text(found, text), by_ngspice, NGSPICE)


def with_text(found, text):
    return found[0], text, found[1]
