"""The program that solves bank files through the library; BANKWRIGHT_SOLVE_BANK names another build of it."""
import os
from pathlib import Path

import pytest


@pytest.fixture(scope="session")
def solve_bank(root):
    path = Path(os.environ.get("BANKWRIGHT_SOLVE_BANK", root / "build/dev/bin/solve_bank"))
    assert path.exists(), f"{path} is not built; tests/run.sh builds it"
    return path
