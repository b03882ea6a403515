"""bankwright: small-boat battery banks as nodal networks, solved and checked.

    import bankwright
    bank = bankwright.read("boat.toml")    # or Bank("name").battery("A", ...), Bank.from_text(...), Bank.from_dict(...)
    bank                                   # in a notebook: draws itself
    bank.check()                           # what is wrong with it
    bank.solve().frame()                   # volts, amperes, watts of every part
    bank.discharge().runtime               # [s]
    bankwright.physics.ampacity("6 AWG", "105 degC")  # [A]: functions of the trade, without a bank

Quantities go in as texts ("4.2 mohm") or as numbers times a unit (4.2 * units.mohm). Every number that comes out is SI:
volts, amperes, watts, seconds, charge from 0 to 1; columns of frames bear the unit in their names. Signs: a battery's
current is positive when it discharges, a conductor's from `from` to `to`, a breaker's from `line` to `load`; terminal
voltages are against the terminal that `reference` names.

Batteries bite: bankwright computes from what it is told. Local codes, the makers' instructions and a licensed or
certified electrician decide.
"""
import json
import os
from typing import Any

from . import _core, physics
from .answers import Hookup, HookupLog, ShortCircuit, Sizing, Source
from .bank import Bank, read
from .comparing import Comparison, compare
from .errors import BadQuantity, Error, TooLarge, Unreadable, Unsuitable, UnitNeeded, UnknownName
from .planning import Plan, plan
from .quantities import Quantity, units
from .results import Findings, Solution
from .sweep import Sweep
from .through_time import Discharge, Recharge
from .tolerances import Tolerance
from .tracing import Readings, Trace

__version__: str = _core.version
__all__ = ["BadQuantity", "Bank", "Comparison", "Discharge", "Error", "Findings", "Hookup", "HookupLog", "Plan",
           "Quantity", "Readings", "Recharge", "ShortCircuit", "Sizing", "Solution", "Source", "Sweep", "Tolerance",
           "TooLarge", "Trace", "UnitNeeded", "UnknownName", "Unreadable", "Unsuitable", "check", "check_text",
           "compare", "physics", "plan", "read", "rules", "solve", "solve_text", "units"]

BankLike = str | os.PathLike[str] | Bank


def _bank(bank: BankLike) -> Bank:
    return bank if isinstance(bank, Bank) else read(bank)


def check_text(text: str | bytes, file: str = "-") -> Findings:
    """What is wrong with the bank that `text` describes. `file` is the name that the answer bears."""
    return Bank.from_text(text, file).check()


def solve_text(text: str | bytes, file: str = "-") -> Solution:
    """The operating point of the bank that `text` describes; see Bank.solve.

    Unreadable if it cannot be solved as written.
    """
    return Bank.from_text(text, file).solve()


def check(bank: BankLike) -> Findings:
    """What is wrong with a bank, or with the bank in a file. OSError if there is no such file."""
    return _bank(bank).check()


def rules() -> list[dict[str, Any]]:
    """Every rule there is, as `bankwright rules` prints it: id, level, what it looks for, why, what to do, source."""
    known: list[dict[str, Any]] = json.loads(_core.rules())["rules"]
    return known


def solve(bank: BankLike) -> Solution:
    """The operating point of a bank, or of the bank in a file; see Bank.solve. OSError if there is no such file."""
    return _bank(bank).solve()
