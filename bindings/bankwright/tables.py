"""Tables for a notebook: HTML from rows of words, frames with the unit in the name of the column."""
from __future__ import annotations

from collections.abc import Iterable, Sequence
from html import escape
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import pandas

__all__ = ["frame_of", "html_table"]


def html_table(head: Sequence[str], rows: Iterable[Sequence[object]], caption: str = "") -> str:
    """A <table>. Every word is escaped; numbers stand to the right."""
    def cell(value: object) -> str:
        right = ' style="text-align:right"' if isinstance(value, (int, float)) else ' style="text-align:left"'
        shown = f"{value:.4g}" if isinstance(value, float) else "" if value is None else str(value)
        return f"<td{right}>{escape(shown)}</td>"

    titles = "".join(f'<th style="text-align:left">{escape(word)}</th>' for word in head)
    body = "".join("<tr>" + "".join(map(cell, row)) + "</tr>" for row in rows)
    named = f'<caption style="text-align:left">{escape(caption)}</caption>' if caption else ""
    return f"<table>{named}<thead><tr>{titles}</tr></thead><tbody>{body}</tbody></table>"


def frame_of(columns: dict[str, Any], index: list[str] | None = None, index_name: str = "") -> pandas.DataFrame:
    """A frame of named columns. Raises ImportError where pandas is not installed: nothing else needs it."""
    import pandas

    frame = pandas.DataFrame(columns, index=index, copy=False)
    if index_name:
        frame.index.name = index_name
    return frame
