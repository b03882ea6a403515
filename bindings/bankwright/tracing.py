"""From what a meter showed on a bank to what is most likely wrong with it."""
from __future__ import annotations

import os
from html import escape
from typing import TYPE_CHECKING, Any

from .bank_text import toml_value
from .files import read_bytes
from .quantities import QuantityLike, quantity_text
from .results import Document
from .tables import frame_of, html_table

if TYPE_CHECKING:
    import pandas

__all__ = ["Readings", "Trace"]


class Readings:
    """What was read on a bank, and how good the meter is. Every method that adds a reading returns the sheet.

        readings = Readings(accuracy="0.5 % + 2 digits", resolution="10 mV")
        readings.volts("C+", "A-", "12.82 V").amps("J1", "23 A", throttle="60 %")

    accuracy, resolution              of the meter; "0.5 % + 2 digits" of "10 mV" if not given
    clamp_accuracy, clamp_resolution  of the clamp that measures currents; "2 % + 5 digits" of "0.1 A" if not given
    clamp                             True: one is at hand, and currents may be asked for
    since                             "it ran" or "work on the bank": what happened since all was well

    A reading is taken with every load off, unless it names a `throttle` of every motor, a `current` through the motor,
    or says `rest=False`: as the bank has the loads. Raises UnitNeeded for a bare number, BadQuantity for a text that is
    no such quantity.
    """

    def __init__(self, *, accuracy: str | None = None, resolution: QuantityLike | None = None,
                 clamp_accuracy: str | None = None, clamp_resolution: QuantityLike | None = None,
                 clamp: bool = False, since: str | None = None) -> None:
        lines = ["bankwright-readings = 1"]
        for section, kind, stated, digit in (("meter", "voltage", accuracy, resolution),
                                             ("clamp", "current", clamp_accuracy, clamp_resolution)):
            resolution_text = None if digit is None else quantity_text(digit, kind, f"{section}.resolution")
            keys = {"accuracy": stated, "resolution": resolution_text}
            stated_keys = [f"{key} = {toml_value(value)}" for key, value in keys.items() if value is not None]
            if stated_keys or section == "meter" or clamp:
                lines += ["", f"[{section}]", *stated_keys]
        if since is not None:
            lines += ["", "[state]", f"since = {toml_value(since)}"]
        self.text = "\n".join(lines) + "\n"
        self.file = "-"

    @classmethod
    def from_text(cls, text: str | bytes, file: str = "-") -> Readings:
        """From the text of a file of readings. What is wrong with it, `Bank.trace` says: it needs the bank to tell."""
        readings = cls()
        readings.text = text if isinstance(text, str) else text.decode("utf-8", "surrogateescape")
        readings.file = file
        return readings

    @classmethod
    def from_file(cls, path: str | os.PathLike[str]) -> Readings:
        """From a file of readings. OSError if there is no such file."""
        return cls.from_text(read_bytes(path), os.fspath(path))

    def volts(self, red: str, black: str, reads: QuantityLike, *, throttle: QuantityLike | None = None,
              current: QuantityLike | None = None, rest: bool | None = None) -> Readings:
        """The meter read `reads` [V] with the red lead on terminal `red` and the black one on `black`."""
        return self._add("volts", {"red": red, "black": black, "reads": quantity_text(reads, "voltage", "reads")},
                         throttle, current, rest)

    def amps(self, part: str, reads: QuantityLike, *, throttle: QuantityLike | None = None,
             current: QuantityLike | None = None, rest: bool | None = None) -> Readings:
        """The clamp around `part` read `reads` [A]; the sign is the part's, as in Bank.solve."""
        return self._add("amps", {"part": part, "reads": quantity_text(reads, "current", "reads")}, throttle, current,
                         rest)

    def _add(self, section: str, keys: dict[str, Any], throttle: QuantityLike | None, current: QuantityLike | None,
             rest: bool | None) -> Readings:
        keys["throttle"] = None if throttle is None else quantity_text(throttle, "fraction", "throttle")
        keys["current"] = None if current is None else quantity_text(current, "current", "current")
        keys["rest"] = rest
        self.text += f"\n[[{section}]]\n" + "".join(f"{key} = {toml_value(value)}\n" for key, value in keys.items()
                                                   if value is not None)
        return self

    def __repr__(self) -> str:
        return self.text

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Readings) and self.text == other.text

    def __hash__(self) -> int:
        return hash(self.text)


class Trace(Document):
    """What is most likely wrong, and which reading to take next: the document "trace".

    `text` is what `bankwright trace` prints.
    """

    text: str

    @property
    def hypotheses(self) -> list[dict[str, Any]]:
        """The likeliest first: faults, probability [1], misfit [standard deviations], and what no reading tells apart
        from it.
        """
        return list(self["hypotheses"])

    @property
    def faults(self) -> list[dict[str, Any]]:
        """Those of the likeliest hypothesis: kind, part, detail. Empty where all is most likely as described."""
        return list(self.hypotheses[0]["faults"])

    @property
    def doubtful(self) -> list[dict[str, Any]]:
        """Readings that are more likely a slip than what the bank showed: reading (from 0, volts before amps), why,
        message.
        """
        return list(self["doubtful"])

    @property
    def next_reading(self) -> dict[str, Any] | None:
        """Where to put the leads next (`red`, `black`), or the clamp (`part`), and what each hypothesis expects there,
        V or A; None where no reading would tell more.
        """
        asked: dict[str, Any] | None = self["next"]
        return asked

    def frame(self) -> pandas.DataFrame:
        """One row a hypothesis: faults, what is like it, probability [1], misfit [standard deviations]."""
        return frame_of({"faults": [_named(one["faults"]) for one in self.hypotheses],
                         "alike": ["; ".join(_named(other["faults"]) for other in one["alike"])
                                   for one in self.hypotheses],
                         "probability [1]": [one["probability"] for one in self.hypotheses],
                         "misfit [standard deviations]": [one["misfit"] for one in self.hypotheses]})

    def _repr_html_(self) -> str:
        asked = self.next_reading
        rows = [(_named(one["faults"]), f"{one['probability']:.1%}", one["misfit"], _expected(asked, one["faults"]))
                for one in self.hypotheses]
        where = f"clamp around {asked['part']}" if asked and "part" in asked else ""
        if asked and "red" in asked:
            where = f"red on {asked['red']}, black on {asked['black']}"
        then = f"; read next: {where}" if where else ""
        head = ("most likely wrong", "probability", "misfit [standard deviations]", "expected next [V]")
        table = html_table(head, rows, f"{self['file']}: {self['readings']} readings{then}")
        return f"{table}<pre>{escape(self._cautions())}</pre>"

    def _cautions(self) -> str:
        return self.text[at:] if (at := self.text.find("before you touch the bank")) >= 0 else ""

    def __repr__(self) -> str:
        return self.text


def _named(faults: list[dict[str, Any]]) -> str:
    return " and ".join(f"{one['part']} {one['kind']}" + (f" ({one['detail']})" if one["detail"] else "")
                        for one in faults) or "all is as described"


def _expected(asked: dict[str, Any] | None, faults: list[dict[str, Any]]) -> float | None:
    return next((one["reads"] for one in (asked or {}).get("expected", ()) if one["faults"] == faults), None)
