"""The table of keys of a bank file, the library's own: which section takes which keys, of what kind, in what unit."""
from __future__ import annotations

import difflib
from dataclasses import dataclass

from . import _core
from .errors import UnknownName

__all__ = ["Key", "Section", "sections"]


@dataclass(frozen=True)
class Key:
    """One key: its kind ("voltage", "choice", "integer", ...), SI unit, an example as a file has it, and its
    meaning.
    """

    name: str
    kind: str
    unit: str
    example: str
    meaning: str
    if_absent: str
    choices: tuple[str, ...]

    @property
    def is_quantity(self) -> bool:
        """It takes a number with a unit."""
        return bool(self.unit)


@dataclass(frozen=True)
class Section:
    """One section of a bank file; `part` is the word for one of its parts, `terminals` those of a part X."""

    name: str
    part: str
    meaning: str
    terminals: str
    keys: dict[str, Key]

    def key(self, name: str) -> Key:
        """The key of that name. UnknownName, with what was probably meant, if there is none."""
        if name in self.keys:
            return self.keys[name]
        near = difflib.get_close_matches(name, self.keys, 1)
        told = f"did you mean `{near[0]}`?" if near else "it has " + ", ".join(f"`{key}`" for key in self.keys)
        raise UnknownName(f"a {self.part or self.name} has no key `{name}`; {told}")


def _read() -> dict[str, Section]:
    return {name: Section(name, part, meaning, terminals, {key[0]: Key(*key) for key in keys})
            for name, part, meaning, terminals, keys in _core.sections()}


_SECTIONS = _read()


def sections() -> dict[str, Section]:
    """Every section by its name: "system", "batteries", "jumpers", ..., "accept"."""
    return dict(_SECTIONS)
