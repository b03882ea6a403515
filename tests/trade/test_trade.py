"""Boats as a working rigger meets them: each says in its opening comment what is right, and what every command must tell of it."""
import json
import re
import subprocess
from pathlib import Path
from typing import NamedTuple

import pytest

HERE = Path(__file__).resolve().parent
BOATS = sorted(HERE.glob("*.toml"))
COMMANDS = ["check", "solve", "size", "hookup", "discharge", "recharge", "short-circuit", "tolerance", "draw", "report"]
SAID = re.compile(r"^# (?P<command>[a-z-]+(?: --[^:,]*)?)(?P<never>, never)?: (?P<phrase>.+)$")


class Case(NamedTuple):
    boat: Path
    changes: tuple[tuple[str, str], ...]  # made in its text, one after the other
    command: str
    never: bool
    phrase: str

    def __str__(self):
        return f"{self.boat.stem}-{len(self.changes)}-{self.command}-{'never ' if self.never else ''}{self.phrase[:30]}"


def cases(boat):
    changes = ()
    for line in boat.read_text(encoding="utf-8").splitlines():
        if not line.startswith("# "):
            return
        if line.startswith("# instead: "):
            old, new = (part.replace("\\n", "\n") for part in line.removeprefix("# instead: ").split(" -> "))
            changes += ((old, new),)
        elif (said := SAID.match(line)) and said["command"] != "right":
            yield Case(boat, changes, said["command"], bool(said["never"]), said["phrase"])


CASES = [case for boat in BOATS for case in cases(boat)]


def changed(case, folder):
    head, text = re.split(r"^(?=bankwright = 1$)", case.boat.read_text(encoding="utf-8"), maxsplit=1, flags=re.M)
    for old, new in case.changes:
        assert text.count(old) == 1, f"`{old}` stands {text.count(old)} times in {case.boat.name}"
        text = text.replace(old, new)
    file = folder / case.boat.name
    file.write_text("\n" * head.count("\n") + text, encoding="utf-8")
    return file


@pytest.mark.parametrize("case", CASES, ids=str)
def test_what_is_right_is_said(command, tmp_path, case):
    name, *options = case.command.split()
    done = subprocess.run([command, name, changed(case, tmp_path), *options], capture_output=True, text=True, timeout=60)
    assert done.returncode in (0, 1, 2), done.stderr
    assert (case.phrase in done.stdout) != case.never, done.stdout + done.stderr


@pytest.mark.parametrize("name", COMMANDS)
@pytest.mark.parametrize("boat", BOATS, ids=lambda boat: boat.stem)
def test_every_command_answers(command, boat, name):
    done = subprocess.run([command, name, boat], capture_output=True, text=True, timeout=120)
    assert done.returncode in (0, 1, 2), done.stderr
    assert done.stdout or done.stderr


@pytest.mark.parametrize("boat", [*BOATS, *sorted((HERE.parents[1] / "data/examples").glob("*.toml"))], ids=lambda boat: boat.stem)
def test_the_sheet_names_every_part_and_keeps_the_order_of_work(command, boat):
    done = subprocess.run([command, "hookup", boat, "--format", "json"], capture_output=True, text=True, timeout=60)
    sheet = json.loads(done.stdout)
    if sheet["status"] == "refused":
        return
    text = subprocess.run([command, "hookup", boat], capture_output=True, text=True, timeout=60).stdout
    parts = subprocess.run([command, "solve", boat, "--format", "json"], capture_output=True, text=True, timeout=60)
    for part in json.loads(parts.stdout)["parts"]:
        assert re.search(rf"(?<![\w-]){re.escape(part if isinstance(part, str) else part['id'])}(?![\w-])", text), part
    for one in [*sheet["connect"], *sheet["disconnect"]]:
        assert one["places"]
    landed = {step["part"]: step["ends"] for step in sheet["connect"] if "ends" in step}
    posts = {battery[side] for battery in sheet["batteries"] for side in ("red", "black")}
    for first, last in landed.values():  # a battery's post is the last to be landed on, and the first to come off
        assert not (first in posts and last not in posts)
    apart = [step for step in sheet["disconnect"] if step["undoes"] == "land"]
    for step in apart:
        assert not (step["ends"][1] in posts and step["ends"][0] not in posts)


def test_the_table_lists_every_boat_and_every_class():
    table = HERE.joinpath("README.md").read_text(encoding="utf-8")
    rows = [[cell.strip() for cell in line.strip("|").split("|")] for line in table.splitlines() if line.startswith("| ")][1:]
    assert {int(row[0].split(".")[0]) for row in rows} == set(range(1, 9)), "a class of the trade has no boat"
    named = {name for row in rows for name in re.findall(r"`([^`]+\.toml)`", row[1])}
    assert {boat.name for boat in BOATS} <= {Path(name).name for name in named}
    for name in named:
        assert (HERE / name).is_file(), name
    for boat in BOATS:
        head = boat.read_text(encoding="utf-8").splitlines()
        assert head[0].startswith("# Invented.") and any(line.startswith("# right: ") for line in head), boat.name
    assert {case.boat for case in CASES} == set(BOATS)
