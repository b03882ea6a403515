"""What others put into their builds: apps/README.md's lines and the hook, run on an invented fleet."""
import os
import re
import shutil
import subprocess
import xml.etree.ElementTree as xml
from pathlib import Path

import pytest
import yaml

ROOT = Path(__file__).resolve().parent.parent.parent
EXAMPLES = ROOT / "data/examples"


def lines_of_the_readme():
    section = (ROOT / "apps/README.md").read_text(encoding="utf-8").partition("continuous integration\n")[2].partition("\n## ")[0]
    return re.search(r"^```sh\n(.*?)^```$", section, re.M | re.S).group(1).splitlines()


@pytest.fixture
def fleet(tmp_path):
    for name in ("bow-36v", "skiff-24v"):
        (tmp_path / "boats" / name).mkdir(parents=True)
        shutil.copy(EXAMPLES / f"{name}.toml", tmp_path / "boats" / name)
    return tmp_path


@pytest.fixture
def run(command, fleet, tmp_path_factory):
    """Runs a line as a shell does, with the command on the path."""
    folder = tmp_path_factory.mktemp("bin")
    (folder / "bankwright").symlink_to(Path(command).resolve())

    def call(line):
        return subprocess.run(["/bin/sh", "-ec", line], cwd=fleet, env=os.environ | {"PATH": f"{folder}:{os.environ['PATH']}"},
                              capture_output=True, text=True, timeout=60)

    return call


def test_there_are_lines_to_run():
    assert len(lines_of_the_readme()) == 3


@pytest.mark.parametrize("line", lines_of_the_readme())
def test_a_sound_fleet_passes_and_a_miswired_boat_stops_the_build(run, fleet, line):
    done = run(line)
    assert (done.returncode, done.stderr) == (0, "")
    shutil.copy(EXAMPLES / "bow-36v-miswired.toml", fleet / "boats/bow-36v")
    assert run(line).returncode == 1
    for report in re.findall(r"--output (\S+)", line):
        text = (fleet / report).read_text(encoding="utf-8")
        assert "wiring/reversed-battery" in text
        if report.endswith(".xml"):
            assert xml.fromstring(text).get("failures") == "1"


def test_the_hook_has_what_hooks_must_have():
    hook, = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text(encoding="utf-8"))
    assert {"id", "name", "entry", "language"} <= set(hook)
    assert re.search(hook["files"], "boats/bow.toml") and not re.search(hook["files"], "boats/toml.md")
    assert hook["pass_filenames"] is False  # a changed part list is no bank file, yet it changes banks that are not in the commit


def test_the_hook_passes_a_sound_fleet_and_stops_a_miswired_one(run, fleet):
    hook, = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text(encoding="utf-8"))
    (fleet / "pyproject.toml").write_text("[project]\nname = \"x\"\n")
    assert run(hook["entry"]).returncode == 0
    shutil.copy(EXAMPLES / "skiff-24v-closed-loop.toml", fleet / "boats")
    done = run(hook["entry"])
    assert done.returncode == 1 and "[wiring/shorted-loop]" in done.stdout
