"""Lines that no test runs and mutants that no test kills are explained by what the code says: does it still say so?"""
import re

from project import ROOT, read

LIBRARY = ROOT / "lib/include/bankwright"
REASONS = {"tests/uncovered.md": r"^\* (\S+): `(.+?)`: ", "tests/mutation/survivors.md": r"^\* (\S+): `(.+?)` becomes `"}


def everywhere():
    return "\n".join(path.read_text(encoding="utf-8") for path in sorted(LIBRARY.rglob("*.hpp")))


def test_every_reason_is_for_something_that_stands_there():
    stale, count = [], 0
    for document, pattern in REASONS.items():
        for name, piece in re.findall(pattern, read(document), re.M):
            count += 1
            text = everywhere() if name == "*" else (LIBRARY / name).read_text(encoding="utf-8")
            if re.sub(r"\s+", "", piece) not in re.sub(r"\s+", "", text):
                stale.append(f"{document}: {name}: {piece}")
    assert count > 80
    assert not stale
