"""What `tolerance` answers: how far the answers spread, the worst corners, and what matters most."""
from __future__ import annotations

from typing import TYPE_CHECKING, Any

from .results import Document
from .tables import frame_of, html_table

if TYPE_CHECKING:
    import pandas

__all__ = ["Tolerance"]


class Tolerance(Document):
    """A tolerance study: the document "tolerance".

    Values are sampled evenly from their tolerances, apart from each other.
    """

    def __repr__(self) -> str:
        answers = len(self.answers)
        return f"<Tolerance of {self['file']}: {self['status']}, {self['samples']} samples, {answers} answers>"

    @property
    def answers(self) -> list[dict[str, Any]]:
        """By motor and load [V], then by battery [A]: as_stated, mean, deviation, least, most of the samples, and the
        worst corners. None throughout where a terminal of a motor or load floats.
        """
        return list(self["answers"])

    def frame(self) -> pandas.DataFrame:
        """One row an answer; all of a row is in its `unit`."""
        columns = ("unit", "as_stated", "mean", "deviation", "least", "most", "worst_least", "worst_most")
        return frame_of({key: [one[key] for one in self.answers] for key in columns},
                        [one["part"] for one in self.answers], "part")

    def influences(self, part: str) -> pandas.DataFrame:
        """What matters most to the answer at `part`: by varied value, the swing and its share of the variance.

        KeyError if unknown.
        """
        one = {answer["part"]: answer for answer in self.answers}[part]
        rows = one["influences"]
        columns = {f"swing [{one['unit']}]": [row["swing"] for row in rows],
                   "share [1]": [row["share"] for row in rows]}
        return frame_of(columns, [f"{row['part']}.{row['key']}" for row in rows], "varied")

    def _repr_html_(self) -> str:
        columns = ("as_stated", "mean", "deviation", "least", "most", "worst_least", "worst_most")
        shown = [["floating" if one[key] is None else float(one[key]) for key in columns] for one in self.answers]
        rows = [(one["part"], one["unit"], *cells) for one, cells in zip(self.answers, shown)]
        return html_table(("part", "unit", *(key.replace("_", " ") for key in columns)), rows,
                          f"{self['file']}: {self['samples']} samples, {self['unanswered']} without an operating point")
