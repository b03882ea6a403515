"""One browser for all pictures, and the faults that a person would see in what it shows."""
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests/support"))
from browser import Browser  # noqa: E402

TEXTS = (Path(__file__).resolve().parent / "texts.js").read_text(encoding="utf-8")
BANKS = sorted((ROOT / "data/examples").glob("*.toml")) + sorted((ROOT / "tests/miswires/catalog").glob("*.toml"))


@pytest.fixture(scope="session")
def long_names():
    """A bank in which every id is as long as one may be, and what else may be said is long and without a blank."""
    text = (ROOT / "data/examples/bow-36v.toml").read_text()
    bank = tomllib.loads(text)
    for section in ("batteries", "jumpers", "cables", "breakers", "connectors", "motors"):
        for id in bank[section]:
            name = (id + "-" + "long" * 50)[:199] + "n"
            text = re.sub(rf"^{id}( *)=", rf"{name}\1=", text, flags=re.M)
            text = re.sub(rf'"{id}(?=[-+.])', f'"{name}', text)
    text = re.sub(r'^name = ".*"$', 'name = "' + "Heron" * 2000 + '"', text, flags=re.M)
    text = text.replace('color = "red"', f'color = "{"red" * 300}"')
    text = text.replace('interrupts = "5000 A"', 'interrupts = "1000 A"')
    return text + '\n[[accept]]\nrule = "protection/interrupting"\nreason = "' + "because" * 1000 + '"\n'


@pytest.fixture(scope="session")
def banks():
    """Every example and every bank of the catalog of miswires."""
    return BANKS


@pytest.fixture(scope="session")
def make(command):
    """make("draw", file, text=...) -> what the command prints; it must be content."""
    def made(*arguments, text=None):
        done = subprocess.run([command, *arguments], capture_output=True, input=text, timeout=60, cwd=ROOT)
        assert done.returncode == 0, done.stderr.decode()
        return done.stdout.decode()

    return made


@pytest.fixture(scope="session")
def browser(tmp_path_factory):
    with Browser(tmp_path_factory.mktemp("browser")) as started:
        yield started


@pytest.fixture(scope="session")
def text_faults():
    """text_faults(page) -> texts that leave what they stand in, or lie on another."""
    def faults(page):
        slack = 1.5  # [px] a box of text is a little higher than its letters
        lines = sorted(page.evaluate(TEXTS), key=lambda line: line[1][1])
        assert len(lines) > 20
        found = []
        for i, (words, (left, top, right, bottom), (l, t, r, b)) in enumerate(lines):
            if left < l - slack or right > r + slack or top < t - slack or bottom > b + slack:
                found.append(f"{words!r} leaves what it stands in")
            for other, (l, t, r, b), _ in lines[i + 1:]:
                if t > bottom - slack:
                    break
                if left < r - slack and l < right - slack and top < b - slack:
                    found.append(f"{words!r} lies on {other!r}")
        return found

    return faults
