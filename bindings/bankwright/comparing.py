"""Banks side by side: `bankwright.compare`."""
from __future__ import annotations

import os
from html import escape
from typing import TYPE_CHECKING

from . import _core
from .bank import Bank, read
from .errors import Unsuitable
from .results import Document
from .tables import frame_of, html_table

if TYPE_CHECKING:
    import pandas

__all__ = ["Comparison", "compare"]


class Comparison(Document):
    """Banks side by side: the document "comparison". `text` is what `bankwright compare` prints."""

    text: str

    def __repr__(self) -> str:
        return self.text

    def frame(self) -> pandas.DataFrame:
        """By figure, what differs first: whether it differs, and its words in each bank."""
        rows = self["rows"]
        columns: dict[str, object] = {"differs": [row["differs"] for row in rows]}
        for place, bank in enumerate(self["banks"]):
            name = bank["file"] if bank["file"] not in columns else f"{bank['file']} ({place + 1})"
            columns[name] = [row["values"][place] for row in rows]
        return frame_of(columns, [row["what"] for row in rows], "figure")

    def _repr_html_(self) -> str:
        head = ("", *(escape(bank["file"]) for bank in self["banks"]))
        return html_table(head, [(row["what"], *row["values"]) for row in self["rows"]])


def compare(*banks: str | os.PathLike[str] | Bank) -> Comparison:
    """Two banks or more side by side: findings, run time, voltages, sharing, short circuits, copper, mass and price.

    Each is a bank or the path of its file. Raises Unsuitable for fewer than two, Unreadable for one that cannot be read
    whole, OSError if there is no such file.
    """
    if len(banks) < 2:
        raise Unsuitable("two banks or more are compared")
    held = [bank if isinstance(bank, Bank) else read(bank) for bank in banks]
    document, text = _core.compare([bank._read() for bank in held])
    comparison: Comparison = Comparison.of(document)
    comparison.text = text
    return comparison
