"""Asks Python everything about odd banks FIRST to LAST: says each one's number before it is asked, then what went wrong with it.

A process of its own, because what crashes takes the interpreter along.
"""
import json
import math
import sys

import bankwright
from bankwright import Bank, Readings
from odd_banks import odd_bank


def numbers_of(value):
    if isinstance(value, dict):
        value = list(value.values())
    if isinstance(value, list):
        for one in value:
            yield from numbers_of(one)
    elif isinstance(value, float):
        yield value


def questions(bank, terminals):
    """(name, what it asks) of every public call that answers."""
    yield "check", bank.check
    yield "check alone", lambda: bank.check(only=["wiring", "solve"])
    for moment in ({}, {"rest": True}, {"current": "10 A"}, {"throttle": "30 %"}):
        yield f"solve {moment}", lambda moment=moment: bank.solve(**moment)
    yield "discharge", bank.discharge
    yield "discharge and rest", lambda: bank.discharge(rest="1 h", longest="2 h")
    yield "legs", lambda: bank.discharge(legs=[("60 %", "20 min"), ("0 %", "10 min")], repeat=True)
    yield "recharge", lambda: bank.recharge(charge="20 %")
    yield "hookup", bank.hookup
    yield "short circuit", bank.short_circuit
    yield "size", bank.size
    yield "tolerance", lambda: bank.tolerance(samples=10, checked=1)
    yield "tolerance at rest", lambda: bank.tolerance(samples=10, rest=True)
    yield "drawing", bank.drawing
    yield "report", bank.report
    yield "written", bank.written
    yield "html", bank._repr_html_
    for other in terminals[-2:]:
        yield f"seen from {other}", lambda other=other: bank.seen_from(terminals[0], other)
    if len(terminals) > 1:
        sheet = Readings().volts(terminals[0], terminals[-1], "3 V")
        yield "trace", lambda: bank.trace(sheet)
    for part in bank.part_names[:1]:
        for key in ("resistance", "charge"):
            yield f"sweep {part}.{key}", lambda part=part, key=key: bank.sweep({f"{part}.{key}": [0.001, 0.5]})


def trouble_with(name, ask):
    try:
        answer = ask()
    except bankwright.Error:
        return None
    except Exception as other:  # whatever else it is, no caller expects it
        return f"{name}: {type(other).__name__}: {other}"
    if isinstance(answer, dict) and not all(map(math.isfinite, numbers_of(answer))):
        return f"{name}: a number that is none"
    repr(answer)
    if hasattr(answer, "_repr_html_"):
        answer._repr_html_()
    return None


if __name__ == "__main__":
    for number in range(int(sys.argv[1]), int(sys.argv[2])):
        print(number, flush=True)
        kind, text, terminals = odd_bank(number)
        bank = Bank.from_text(text)
        found = [wrong for name, ask in questions(bank, terminals) if (wrong := trouble_with(name, ask))]
        if found:
            print(json.dumps([kind, *found]), flush=True)
