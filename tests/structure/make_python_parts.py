#!/usr/bin/env python3
"""Writes bindings/bankwright/part_methods.py from the library's table of keys. Run it after adding a key, with the module built
(PYTHONPATH=build/release/python); a test keeps it fresh."""
import keyword
import os
import sys
import textwrap
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
TARGET = ROOT / "bindings/bankwright/part_methods.py"
TYPES = {"integer": "int", "boolean": "bool", "date": "datetime.date", "trips": "Sequence[Sequence[str]]"}
KEPT = "\u00a0"  # a blank at which no line is broken
HEAD = '''"""How a bank is built part by part.

Written by tests/structure/make_python_parts.py from the library's table of keys.
"""
from __future__ import annotations

import datetime
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from .quantities import QuantityLike

if TYPE_CHECKING:
    from .bank import Bank

__all__ = ["PartMethods"]


class PartMethods:
    """One method for each kind of part. Each checks its keys, adds the part and returns the bank."""

    def _add(self, section: str, part: str, keys: dict[str, Any]) -> Bank:
        raise NotImplementedError
'''


def sections():
    """From the compiled half alone: the package itself may be what is being written."""
    folder = os.environ.get("PYTHONPATH", str(ROOT / "build/release/python")).split(os.pathsep)[0]
    sys.path.insert(0, str(Path(folder) / "bankwright"))
    import _core

    sys.path.pop(0)
    key = ("name", "kind", "unit", "example", "meaning", "if_absent", "choices")
    return [{"name": name, "part": part, "meaning": meaning, "terminals": terminals, "keys": [dict(zip(key, one)) for one in keys]}
            for name, part, meaning, terminals, keys in _core.sections()]


def python_name(key):
    return key + "_" if keyword.iskeyword(key) else key


def wrapped(text, indent, first=None):
    return textwrap.fill(text, 118, initial_indent=first or indent, subsequent_indent=indent, break_on_hyphens=False)


def method(section):
    keys, part = section["keys"], section["part"]
    placed = [key for key in keys if key["name"] in ("from", "to")]  # a conductor has both
    named = [key for key in keys if key not in placed]

    def typed(key):
        kind = "QuantityLike" if key["unit"] else TYPES.get(key["kind"], "str")
        return f"{python_name(key['name'])}: {kind} | None = None"

    words = ["self", "id: str", *(f"{python_name(key['name'])}: str" for key in placed), "*", *map(typed, named)]
    name = python_name(part)
    words = [word.replace(" ", KEPT) for word in words]
    lines = [wrapped(", ".join(words) + f'){KEPT}->{KEPT}Bank:', " " * (len(name) + 9), f"    def {name}(")]
    terminals = f" Terminals of X: {section['terminals']}." if section["terminals"] else ""
    lines.append(f'        """One more in the section `{section["name"]}`: {section["meaning"]}.{terminals}')
    lines.append("")
    for key in keys:
        example = key["example"].strip('"') if key["unit"] else key["example"]
        told = f"{key['meaning']}, such as {example}"
        if key["choices"] and key["kind"] == "choice":
            told = f"{key['meaning']}: " + ", ".join(key["choices"])
        if key["if_absent"]:
            told += f"; if not given: {key['if_absent']}"
        lines.append(wrapped(told, " " * 24, f"        {python_name(key['name']):<15} "))
    lines += ["", "        Raises UnitNeeded, BadQuantity, Unsuitable.", '        """']
    pairs = ", ".join(f'"{key["name"]}":{KEPT}{python_name(key["name"])}' for key in keys)
    lines.append(wrapped(pairs + "})", " " * 12, f'        return self._add("{section["name"]}", id, {{'))
    return "\n".join(lines).replace(KEPT, " ") + "\n"


def text():
    return HEAD + "".join("\n" + method(section) for section in sections() if section["part"])


if __name__ == "__main__":
    if "--print" in sys.argv:
        sys.stdout.write(text())
    else:
        TARGET.write_text(text(), encoding="utf-8")
