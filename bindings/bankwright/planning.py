"""From a wish to a bank: `bankwright.plan`."""
from __future__ import annotations

import os
from collections.abc import Sequence
from html import escape
from typing import TYPE_CHECKING

from . import _core
from .bank import Bank
from .files import read_bytes
from .quantities import Quantity
from .results import Document
from .tables import frame_of

if TYPE_CHECKING:
    import pandas

__all__ = ["Plan", "plan"]

WishLike = str | Quantity | float


class Plan(Document):
    """The banks that a wish comes to: the document "plan".

    `text` is what `bankwright plan` prints, `file` the commented bank file of the proposed bank, `bank` that bank.
    Where no bank will do, `bank` is None and plan["problems"] says which part of the wish stands in the way.
    """

    text: str
    file: str
    bank: Bank | None

    def __repr__(self) -> str:
        if not self["banks"]:
            problem = self["problems"][0]
            return f"<Plan: none; {problem['part']} {problem['message']}>"
        first = self["banks"][0]
        return f"<Plan: {first['arrangement']} of {first['battery']}, {len(self['banks'])} that will do>"

    def frame(self) -> pandas.DataFrame:
        """By bank that will do, the proposed one first: arrangement, battery, run to its reserve [s], mass [kg] and
        the current of the battery that works hardest [A].
        """
        banks = self["banks"]
        return frame_of({"arrangement": [bank["arrangement"] for bank in banks],
                         "battery": [bank["battery"] for bank in banks], "model": [bank["model"] for bank in banks],
                         "run [s]": [bank["to_reserve"] for bank in banks],
                         "mass [kg]": [bank["mass"] for bank in banks],
                         "current of each [A]": [bank["current_of_each"] for bank in banks]})

    def _repr_html_(self) -> str:
        return f"<pre>{escape(self.text or repr(self))}</pre>"


def plan(system: WishLike, motor: WishLike, run: WishLike, runtime: WishLike, *, throttle: WishLike | None = None,
         battery: str | None = None, chemistry: str | None = None, charger: WishLike | None = None,
         drop: WishLike | None = None, stock: Sequence[str] | str | None = None,
         parts: str | os.PathLike[str] | None = None) -> Plan:
    """From a wish to a bank that passes every rule.

        plan = bankwright.plan("36 V", "45 A", "20 ft", "4 h", battery="12 V AGM 100 Ah")
        plan.bank.save("boat.toml")

    system     nominal voltage
    motor      what it takes at full throttle, in amperes or watts, or its thrust in pounds or newtons
    run        from the battery box to the receptacle, one way
    runtime    how long it shall run, down to the reserve
    throttle   at which throttle; full if not given
    battery    what is on the batteries' label; any of the part list if not given
    chemistry  flooded, agm, gel or lithium; any if not given
    charger    what a charger for the whole bank gives; none if not given
    drop       voltage that may be lost; 3 % if not given
    stock      sizes of conductors to choose from
    parts      path of a part list to choose from, in place of the usual parts

    Each may be typed as people do: a bare number is volts, amperes, feet, hours or percent. Raises Unsuitable for what
    cannot be understood, Unreadable for a part list with errors, OSError if there is no such list.
    """
    given = {"system": system, "motor": motor, "run": run, "runtime": runtime, "throttle": throttle, "battery": battery,
             "chemistry": chemistry, "charger": charger, "drop": drop,
             "stock": stock if stock is None or isinstance(stock, str) else ", ".join(stock)}
    wish = {key: str(value) for key, value in given.items() if value is not None}
    listed = "" if parts is None else read_bytes(parts).decode("utf-8", "surrogateescape")
    document, text, file = _core.plan(wish, listed, "" if parts is None else os.fspath(parts))
    answer: Plan = Plan.of(document)
    answer.text, answer.file = text, file
    answer.bank = Bank.from_text(file) if file else None
    return answer
