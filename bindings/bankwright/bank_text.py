"""From a dict to the text of a bank file, with every value looked at on the way."""
from __future__ import annotations

import datetime
import json
import re
from collections.abc import Mapping
from typing import Any

from .errors import UnknownName, Unsuitable
from .keys import Key, Section, sections
from .quantities import Quantity, quantity_text

__all__ = ["bank_text", "checked", "toml_value"]

_BARE = re.compile(r"[A-Za-z0-9_-]+\Z")


def checked(section: Section, part: str, key: str, value: object) -> Any:
    """`value` as a bank file holds it. UnitNeeded, BadQuantity, Unsuitable or UnknownName if it is no such thing."""
    spec = section.key(key)
    name = f"{part}.{key}" if part else key
    if spec.is_quantity:
        return quantity_text(value, spec.kind, name)
    if not _fits(spec, value):
        raise Unsuitable(f"`{name}` is {_noun(spec)}, such as {spec.example}; found {value!r}")
    return value


def _fits(spec: Key, value: object) -> bool:
    if spec.kind == "integer":
        return isinstance(value, int) and not isinstance(value, bool)
    if spec.kind == "boolean":
        return isinstance(value, bool)
    if spec.kind == "date":
        return isinstance(value, datetime.date)
    if spec.kind == "choice":
        return isinstance(value, str) and value in spec.choices
    if spec.kind == "texts":
        return isinstance(value, (list, tuple)) and len(value) > 0 and all(isinstance(word, str) for word in value)
    if spec.kind == "trips":
        return isinstance(value, (list, tuple)) and len(value) > 0 and all(
            isinstance(one, (list, tuple)) and len(one) == 3 and all(isinstance(word, str) for word in one)
            for one in value)
    return isinstance(value, str)


def _noun(spec: Key) -> str:
    if spec.kind == "choice":
        return "one of " + ", ".join(spec.choices)
    return {"integer": "a whole number", "boolean": "true or false", "date": "a date",
            "texts": "a list of texts",
            "trips": "a list of points, each a multiple of the rating and two times as texts",
            "terminal": "the name of a terminal", "model": "the name of a model"}.get(spec.kind, "a text")


def toml_value(value: object) -> str:
    """`value` as a TOML file has it. Unsuitable for what no bank file holds."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, (int, float)):
        return repr(value)
    if isinstance(value, datetime.date):
        return value.isoformat()
    if isinstance(value, Mapping):
        return "{ " + ", ".join(f"{_name(key)} = {toml_value(one)}" for key, one in value.items()) + " }"
    if isinstance(value, (list, tuple)):
        return "[" + ", ".join(map(toml_value, value)) + "]"
    if isinstance(value, (str, Quantity)):
        return json.dumps(str(value), ensure_ascii=False).replace("\x7f", "\\u007f")
    raise Unsuitable(f"a bank file holds texts, whole numbers, dates, true and false; found {value!r}")


def _name(key: str) -> str:
    return key if _BARE.match(key) else json.dumps(key, ensure_ascii=False)


def _looked_at(section: Section, part: str, keys: Mapping[str, Any]) -> dict[str, Any]:
    return {key: checked(section, part, key, value) for key, value in keys.items()}


def bank_text(document: Mapping[str, Any]) -> str:
    """The text of the bank file that `document` describes: sections of parts of keys, as a file has them.

    `bankwright = 1` may be left out. Raises what `checked` does, and UnknownName for a section that there is none of.
    """
    known = sections()
    head: list[str] = [f"bankwright = {document.get('bankwright', 1)}"]
    tables: list[str] = []
    for name, content in document.items():
        if name == "bankwright":
            continue
        if name in ("name", "parts"):
            head.append(f"{name} = {toml_value(content)}")
        elif name == "models":
            tables += ["", "[models]", *(f"{_name(part)} = {toml_value(keys)}" for part, keys in content.items())]
        elif name == "accept":
            for one in content:
                tables += ["", "[[accept]]", *(f"{key} = {toml_value(value)}" for key, value in
                                               _looked_at(known["accept"], "accept", one).items())]
        elif name == "system":
            tables += ["", "[system]", *(f"{key} = {toml_value(value)}" for key, value in
                                         _looked_at(known["system"], "system", content).items())]
        elif name in known:
            tables += ["", f"[{name}]", *(f"{_name(part)} = {toml_value(_looked_at(known[name], part, keys))}"
                                          for part, keys in content.items())]
        else:
            raise UnknownName(f"a bank has no section `{name}`; it has " + ", ".join(f"`{one}`" for one in known))
    return "\n".join(head + tables) + "\n"
