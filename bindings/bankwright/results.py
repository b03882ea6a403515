"""What `check` and `solve` answer: the command's JSON document, a plain dict, that also shows itself in a notebook.

`answer["parts"]["A"]["current"]` is the document; `answer.current` the same numbers as a NumPy array in the order of
`answer.part_names`; `answer.frame()` a pandas frame. Everything is SI: volts, amperes, watts, seconds.
"""
from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from .tables import frame_of, html_table

if TYPE_CHECKING:
    import pandas
    from matplotlib.axes import Axes

__all__ = ["Document", "Findings", "Solution"]

Floats = NDArray[np.float64]
Rows = list[dict[str, Any]]


class Document(dict[str, Any]):
    """A JSON document of the command, as a dict. It pickles, compares and copies as one."""

    @classmethod
    def of(cls, text: str) -> Any:
        """From the text of the document."""
        return cls(json.loads(text))

    def _repr_html_(self) -> str:
        return html_table(("", ""), [row for row in self.items() if isinstance(row[1], (str, int, float))])


class Findings(Document):
    """What is wrong with a bank: the document "findings", of one file.

    `findings.list` are the findings, worst first; each a dict of rule, level, message, help, parts, line, column,
    found, allowed, unit, accepted. In a notebook it shows as a table.
    """

    @property
    def list(self) -> Rows:
        """Every finding as a dict, the worst first."""
        return list(self["files"][0]["findings"])

    @property
    def arrangement(self) -> str | None:
        """The trade's notation as recognized from the wiring, "3S2P"; None where the wiring is no such thing."""
        found: str | None = self["files"][0]["arrangement"]
        return found

    @property
    def counts(self) -> dict[str, int]:
        """How many errors, warnings and notes nobody has accepted."""
        return dict(self["files"][0]["counts"])

    @property
    def left_out(self) -> dict[str, Any]:
        """What `only` and `skip` left out: `rules`, ids or whole families, and `counts` of what these find.
        """
        return dict(self["files"][0]["left_out"])

    @property
    def ok(self) -> bool:
        """No error of the rules that were chosen, or none that nobody has accepted; see `left_out`."""
        return self.counts["error"] == 0

    def frame(self) -> pandas.DataFrame:
        """One row a finding: level, rule, parts, found and allowed as printed, message, help, line."""
        rows = self.list
        return frame_of({"level": [row["level"] for row in rows], "rule": [row["rule"] for row in rows],
                         "parts": [", ".join(row["parts"]) for row in rows],
                         "found": [_with_unit(row, "found") for row in rows],
                         "allowed": [_with_unit(row, "allowed") for row in rows],
                         "message": [row["message"] for row in rows], "help": [row["help"] for row in rows],
                         "line": [row.get("line") for row in rows]})

    def _repr_html_(self) -> str:
        file = self["files"][0]
        counts = ", ".join(f"{number} {word}{'s' if number != 1 else ''}"
                           for word, number in self.counts.items() if number)
        caption = f"{file['file']}: {file['arrangement'] or 'no arrangement'}, {counts or 'nothing found'}"
        signs = {"error": "✖ error", "warning": "▲ warning", "note": "● note"}  # told apart without color
        rows = [(("accepted " if row["accepted"] else "") + signs[row["level"]], ", ".join(row["parts"]),
                 row["message"], row["help"], row["rule"], row.get("line")) for row in self.list]
        return html_table(("level", "parts", "what was found", "what to do", "rule", "line"), rows, caption)

    def __repr__(self) -> str:
        return "\n".join(f"{row['level']}: {row['message']} [{row['rule']}]" for row in self.list) or "nothing found"


def _with_unit(row: dict[str, Any], key: str) -> str:
    return "" if row.get(key) is None else f"{row[key]:.4g} {row.get('unit') or ''}".strip()


class Solution(Document):
    """The operating point of a bank: the document "solution".

    terminal_voltage  [V], shape (terminals,); NaN on an island with no path to the reference
    current           [A], shape (parts,); a battery's is positive when it discharges, a conductor's from `from` to `to`
    voltage, power    [V], [W], shape (parts,)
    """

    terminal_voltage: Floats
    current: Floats
    voltage: Floats
    power: Floats

    @property
    def status(self) -> str:
        """"solved", or a word that says why not: "no-operating-point", "not-converged", "bad-circuit"."""
        return str(self["status"])

    @property
    def solved(self) -> bool:
        """There is an operating point."""
        return self.status == "solved"

    @property
    def arrangement(self) -> str | None:
        """"3S2P" as recognized from the wiring, or None."""
        found: str | None = self["arrangement"]
        return found

    @property
    def terminal_names(self) -> list[str]:
        """In the order of `terminal_voltage`."""
        return list(self["terminals"])

    @property
    def part_names(self) -> list[str]:
        """In the order of `current`, `voltage` and `power`."""
        return list(self["parts"])

    @property
    def battery_names(self) -> list[str]:
        """Of the parts, those that are batteries."""
        return [name for name, part in self["parts"].items() if part["kind"] == "battery"]

    def frame(self) -> pandas.DataFrame:
        """By part: kind, current [A], voltage [V], power [W]."""
        return frame_of({"kind": [part["kind"] for part in self["parts"].values()], "current [A]": self.current,
                         "voltage [V]": self.voltage, "power [W]": self.power}, self.part_names, "part")

    def terminal_frame(self) -> pandas.DataFrame:
        """By terminal: voltage [V] against the reference."""
        return frame_of({"voltage [V]": self.terminal_voltage}, self.terminal_names, "terminal")

    def plot_sharing(self, axes: Axes | None = None) -> Axes:
        """How the batteries share the current, as bars [A]. Raises ImportError without matplotlib."""
        from .plots import plot_sharing

        return plot_sharing(self, axes)

    def _repr_html_(self) -> str:
        rows = [(name, part["kind"], *(float(values[i]) for values in (self.current, self.voltage, self.power)))
                for i, (name, part) in enumerate(self["parts"].items())]
        caption = f"{self['file']}: {self.arrangement or 'no arrangement'}, {self.status}"
        return html_table(("part", "kind", "current [A]", "voltage [V]", "power [W]"), rows, caption)

    def __repr__(self) -> str:
        return f"<Solution of {self['file']}: {self.arrangement}, {self.status}>"
