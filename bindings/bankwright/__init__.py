"""bankwright: small-boat battery banks as nodal networks.

    import bankwright
    bankwright.check("boat.toml")["files"][0]["findings"]
    bankwright.solve("boat.toml")["parts"]["A"]["current"]    # [A]

Answers are plain dictionaries and lists, equal to what `bankwright check --format json` and `bankwright solve --format json`
print. Every number is SI: volts, amperes, watts. Signs: a battery's current is positive when it discharges, a conductor's from
`from` to `to`, a breaker's from `line` to `load`; terminal voltages are against the terminal that `reference` names.
"""
import json
import os
from pathlib import Path
from typing import Any, Dict, Union

from . import _core

__version__: str = _core.version
__all__ = ["Unreadable", "check", "check_text", "solve", "solve_text"]


class Unreadable(ValueError):
    """The bank file cannot be solved as written; `findings` says why, in the form that `check` gives."""

    def __init__(self, findings: Dict[str, Any]) -> None:
        self.findings = findings
        super().__init__("\n".join(f"{file['file']}:{found['line']}: {found['message']} [{found['rule']}]"
                                   for file in findings["files"] for found in file["findings"] if found["level"] == "error"))


def check_text(text: Union[str, bytes], file: str = "-") -> Dict[str, Any]:
    """What is wrong with the bank that `text` describes. `file` is the name that the answer bears."""
    return json.loads(_core.check(text, file))


def solve_text(text: Union[str, bytes], file: str = "-") -> Dict[str, Any]:
    """Terminal voltages [V], and current [A], voltage [V] and power [W] of each part, at the operating point of `text`.

    Raises Unreadable if the text does not describe a bank that can be solved.
    """
    answer = json.loads(_core.solve(text, file))
    if answer["bankwright"] == "findings":
        raise Unreadable(answer)
    return answer


def check(path: Union[str, "os.PathLike[str]"]) -> Dict[str, Any]:
    """What is wrong with the bank in the file `path`; see check_text. Raises OSError if there is no such file."""
    return check_text(Path(path).read_bytes(), os.fspath(path))


def solve(path: Union[str, "os.PathLike[str]"]) -> Dict[str, Any]:
    """The operating point of the bank in the file `path`; see solve_text. Raises OSError if there is no such file."""
    return solve_text(Path(path).read_bytes(), os.fspath(path))
