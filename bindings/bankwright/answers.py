"""What `hookup`, `short_circuit`, `seen_from` and `size` answer."""
from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from .results import Document
from .tables import frame_of, html_table

if TYPE_CHECKING:
    import pandas

    from .bank import Bank

__all__ = ["Hookup", "ShortCircuit", "Sizing", "Source"]


class Hookup(Document):
    """In which order to connect a bank and what the meter must read: the document "hookup".

    `hookup["status"]` is "ready", or "refused" for a bank with an error: nobody is told how to put together what must
    not be.
    """

    @property
    def steps(self) -> list[dict[str, Any]]:
        """The steps of connecting, in their order; empty if refused."""
        return list(self.get("connect") or [])

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
