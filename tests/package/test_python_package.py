"""Does a wheel of the Python package build and install offline, and can it be used from anywhere?"""
import os
import shutil
import subprocess
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent.parent
# Compiled once, as fast as can be: what the optimizer makes of it, the module in the build tree shows.
CHEAP = os.environ | {"CFLAGS": "-O0 -g0", "PIP_NO_INDEX": "1", "PIP_DISABLE_PIP_VERSION_CHECK": "1"}


def said(command, **options):
    done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, env=CHEAP, **options)
    assert done.returncode == 0, done.stdout[-6000:]
    return done.stdout


@pytest.fixture(scope="module")
def python(tmp_path_factory):
    """The interpreter of a fresh environment."""
    folder = tmp_path_factory.mktemp("venv")
    said(["/usr/bin/python3", "-m", "venv", "--system-site-packages", folder])
    return folder / "bin/python"


@pytest.fixture(scope="module")
def wheel(python, tmp_path_factory):
    copy = tmp_path_factory.mktemp("project")  # pip builds where the sources lie: not in the project itself
    for folder in ("bindings", "lib"):
        shutil.copytree(ROOT / folder, copy / folder, ignore=shutil.ignore_patterns("build", "*.egg-info", "__pycache__"))
    said([python, "-m", "pip", "wheel", "--no-build-isolation", "--no-deps", "-w", copy / "wheels", copy / "bindings"])
    built = list((copy / "wheels").glob("*.whl"))
    assert len(built) == 1
    return built[0]


def test_a_wheel_holds_the_package_its_types_and_the_module(wheel):
    held = {Path(name).name for name in zipfile.ZipFile(wheel).namelist() if name.startswith("bankwright/")}
    module = next(name for name in held if name.startswith("_core.") and name.endswith(".so"))
    assert held - {module} == {path.name for path in (ROOT / "bindings/bankwright").iterdir() if path.is_file()}


def test_pip_installs_it_without_a_network(wheel, python, tmp_path):
    said([python, "-m", "pip", "install", wheel])
    program = f"import bankwright; print(bankwright.__file__, bankwright.solve({str(ROOT / 'data/examples/bow-36v.toml')!r}).status)"
    used = said([python, "-I", "-c", program], cwd=tmp_path).split()
    assert used[1] == "solved" and Path(used[0]).is_relative_to(python.parent.parent)
