"""What every Python test may ask for: the project's folder and the command, as tests/run.sh built them.

BANKWRIGHT_COMMAND and BANKWRIGHT_SANITIZED_COMMAND name others.
"""
import os
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent

# The Python module, also for the kernels that run the notebooks.
os.environ.setdefault("PYTHONPATH", str(ROOT / "build/release/python"))
sys.path[:0] = os.environ["PYTHONPATH"].split(os.pathsep)


def built(variable, default):
    path = Path(os.environ.get(variable, ROOT / default))
    assert path.exists(), f"{path} is not built; tests/run.sh builds it"
    return path


@pytest.fixture(scope="session")
def root():
    return ROOT


@pytest.fixture(scope="session")
def command():
    """The command as a user has it."""
    return built("BANKWRIGHT_COMMAND", "build/release/bin/bankwright")


@pytest.fixture(scope="session")
def sanitized_command():
    """The command under AddressSanitizer and UndefinedBehaviorSanitizer."""
    return built("BANKWRIGHT_SANITIZED_COMMAND", "build/dev/bin/bankwright")


@pytest.fixture
def write(tmp_path):
    """write(name, text): a file in the test's own folder."""
    def put(name, text):
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")

    return put
