"""What `hookup`, `short_circuit`, `seen_from` and `size` answer."""
from __future__ import annotations

import os
from typing import TYPE_CHECKING, Any, Iterable, Mapping, NamedTuple

from .bank_text import toml_value
from .errors import Unsuitable
from .files import read_bytes
from .results import Document
from .tables import frame_of, html_table

if TYPE_CHECKING:
    import pandas

    from .bank import Bank

__all__ = ["Hookup", "HookupLog", "ShortCircuit", "Sizing", "Source"]


class Hookup(Document):
    """In which order to connect a bank and what the meter must read: the document "hookup".

    `hookup["status"]` is "ready", or "refused" for a bank with an error: nobody is told how to put together what must
    not be.
    """

    _bank: Bank | None = None
    _meter: tuple[float | None, int | None, float | None, float | None] = (None, None, None, None)

    @property
    def steps(self) -> list[dict[str, Any]]:
        """The steps of connecting, in their order; empty if refused."""
        return list(self.get("connect") or [])

    def judge(self, readings: str | os.PathLike[str] | Iterable[Mapping[str, str]]) -> HookupLog:
        """May the next step be made, after what was read so far, and if not, which mistake explains it?

            bank.hookup().judge([{"when": "alone", "part": "A", "reads": "12.7 V"},
                                 {"when": "before", "part": "J1", "reads": "OL"}])

        `readings` are answers in the order in which they were given, with the keys of a log, or the path of a log.
        Raises OSError if there is no such file; Unreadable for answers that name no part or terminal of the bank, or
        read nothing; Unsuitable for a bank that must not be hooked up, or a Hookup that no bank made.
        """
        if self._bank is None:
            raise Unsuitable("no bank made this Hookup; ask Bank.hookup() for one")
        if isinstance(readings, (str, os.PathLike)):
            file, text = os.fspath(readings), read_bytes(readings)
        else:
            lines = ["bankwright-log = 1"]
            for entry in readings:
                lines += ["", "[[read]]", *(f"{key} = {toml_value(value)}" for key, value in entry.items())]
            file, text = "-", "\n".join(lines).encode("utf-8", "surrogateescape")
        document, printed = self._bank._read().judged(*self._meter, text, file)
        log: HookupLog = HookupLog.of(document)
        log.text = printed
        return log

    def __repr__(self) -> str:
        return f"<Hookup of {self['file']}: {self['status']}, {len(self.steps)} steps>"

    def frame(self) -> pandas.DataFrame:
        """By step: action, part, the ends, and what the meter must read before and after [V]."""
        rows = self.steps
        columns: dict[str, Any] = {"action": [row["action"] for row in rows], "part": [row["part"] for row in rows],
                                   "ends": [", ".join(row.get("ends", ())) for row in rows]}
        for when in ("before", "after"):
            columns[f"{when}: red"] = [(row.get(when) or {}).get("red") for row in rows]
            columns[f"{when}: black"] = [(row.get(when) or {}).get("black") for row in rows]
            columns[f"{when}: expected [V]"] = [(row.get(when) or {}).get("expected") for row in rows]
        return frame_of(columns)

    def _repr_html_(self) -> str:
        def reads(reading: dict[str, Any] | None) -> str:
            if reading is None:
                return ""
            leads = f"red {reading['red']}, black {reading['black']}: "
            return leads + ("floating" if reading["expected"] is None else
                            f"{reading['expected']:.2f} V ({reading['low']:.2f} to {reading['high']:.2f})")

        rows = [(number, row["action"], row["part"], ", then ".join(row.get("ends", ())), reads(row.get("before")),
                 reads(row.get("after")))
                for number, row in enumerate(self.steps, 1)]
        return html_table(("step", "do", "part", "ends", "meter before", "meter after"), rows,
                          f"{self['file']}: {self['status']}. " + "; ".join(self.get("cautions", [])))


class HookupLog(Document):
    """How a hook-up stands: the document "log". `text` is what `bankwright hookup --log` prints.

    `log["status"]` is "asking", "stopped" or "complete".
    """

    text: str

    @property
    def go(self) -> bool:
        """Nothing that was read was wrong."""
        return bool(self["status"] != "stopped")

    @property
    def causes(self) -> list[dict[str, Any]]:
        """Which mistakes explain it, the likeliest first: probability [1], and mistakes that no reading tells apart.
        """
        return list(self["causes"])

    @property
    def next_reading(self) -> dict[str, Any] | None:
        """Where to put the leads next: what the sheet asks for, or what would find the cause; None at the end."""
        asked: dict[str, Any] | None = self["read_next"] or self["at"]
        return asked

    def frame(self) -> pandas.DataFrame:
        """By answer: when, part, what was read and what is expected [V or ohm], the verdict, and the time."""
        rows = self["answers"]
        return frame_of({"when": [row["when"] for row in rows], "part": [row["part"] for row in rows],
                         "read": [row["shown"] for row in rows], "expected": [row.get("expected") for row in rows],
                         "low": [row.get("low") for row in rows], "high": [row.get("high") for row in rows],
                         "verdict": [row["verdict"] for row in rows], "time": [row["time"] for row in rows]})

    def __repr__(self) -> str:
        answered = f"{len(self['answers'])} of {self['questions']} answered"
        return f"<HookupLog of {self['file']}: {self['status']}, {answered}>"

    def _repr_html_(self) -> str:
        rows = [(row["when"], row["part"], row["shown"], row.get("expected"), row["verdict"])
                for row in self["answers"]]
        return html_table(("when", "part", "read", "expected", "verdict"), rows, f"{self['file']}: {self['status']}")


class ShortCircuit(Document):
    """What flows into a short anywhere and what ends it: the document "short-circuit"."""

    def __repr__(self) -> str:
        most = max((place["current"] for place in self["places"]), default=0.0)
        return f"<ShortCircuit of {self['file']}: {len(self['places'])} places, at most {most:.0f} A>"

    def frame(self) -> pandas.DataFrame:
        """By place: terminal, against, voltage before [V], current [A], cleared within [s] (NaN: nothing is sure to
        end it).
        """
        places = self["places"]
        return frame_of({"terminal": [p["terminal"] for p in places], "against": [p["against"] for p in places],
                         "voltage [V]": [p["voltage"] for p in places], "current [A]": [p["current"] for p in places],
                         "cleared within [s]": [p["cleared_within"] for p in places],
                         "cleared by": [", ".join(p["cleared_by"]) for p in places]})

    def device_frame(self) -> pandas.DataFrame:
        """By breaker or fuse: the most through it [A], where, what it interrupts [A], and whether that is enough."""
        devices = self["devices"]
        return frame_of({"current [A]": [d["current"] for d in devices.values()], 
                         "at": [d["at"] for d in devices.values()],
                         "interrupts [A]": [d["interrupts"] for d in devices.values()],
                         "suffices": [d["suffices"] for d in devices.values()]}, list(devices), "device")

    def _repr_html_(self) -> str:
        rows = [(p["terminal"], p["against"], p["voltage"], p["current"], p["cleared_within"],
                 ", ".join(p["cleared_by"])) for p in self["places"]]
        head = ("short between", "and", "voltage before [V]", "current [A]", "over within [s]", "ended by")
        return html_table(head, rows, self["file"])


class Source(NamedTuple):
    """What a bank amounts to between two of its terminals: a voltage behind a resistance (Thevenin's theorem)."""

    voltage: float  # [V] with nothing drawn there
    resistance: float  # [ohm] what it falls by for each ampere drawn there
    short_current: float | None  # [A] into a short there; None where the two terminals are one point


class Sizing(Document):
    """The smallest sizes with which the bank passes every rule: the document "size".

    `text` is what `bankwright size` prints, `cut_list` its CSV, `bank` the bank as sized.
    """

    text: str
    cut_list: str
    bank: Bank

    def _repr_html_(self) -> str:
        from html import escape

        return f"<pre>{escape(self.text)}</pre>"

    def __repr__(self) -> str:
        return self.text
