"""What `discharge` and `recharge` answer: a run and a charge, with every battery's course."""
from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from .results import Document
from .tables import frame_of, html_table

if TYPE_CHECKING:
    import pandas
    from matplotlib.axes import Axes

__all__ = ["Course", "Discharge", "Recharge"]

Floats = NDArray[np.float64]


class Course(Document):
    """A bank through time.

    time     [s], shape (samples,); the rest after a run included
    charge   [1], shape (samples, batteries): state of charge, 0 to 1
    current  [A], shape (samples, batteries): positive when it discharges
    voltage  [V], shape (samples, batteries): across its posts
    """

    time: Floats
    charge: Floats
    current: Floats
    voltage: Floats

    @classmethod
    def from_core(cls, answer: tuple[str, Floats, Floats, Floats, Floats]) -> Any:
        """From what the compiled half gives."""
        course = cls.of(answer[0])
        _, course.time, course.charge, course.current, course.voltage = answer
        return course

    @property
    def end(self) -> str:
        """Why it ended, in the words of the JSON: "battery-empty", "load-cutoff", "full", "time"..."""
        return str(self["end"])

    @property
    def battery_names(self) -> list[str]:
        """In the order of the arrays' columns."""
        return list(self["samples"][0]["batteries"]) if self["samples"] else []

    def frame(self) -> pandas.DataFrame:
        """By sample: time [s], and "A charge [1]", "A current [A]", "A voltage [V]" of every battery A."""
        columns = {"time [s]": self.time}
        for i, name in enumerate(self.battery_names):
            columns |= {f"{name} charge [1]": self.charge[:, i], f"{name} current [A]": self.current[:, i],
                        f"{name} voltage [V]": self.voltage[:, i]}
        return frame_of(columns)

    def plot(self, what: str = "charge", axes: Axes | None = None) -> Axes:
        """Every battery's "charge" [%], "current" [A] or "voltage" [V] over time [min]. Needs matplotlib."""
        from .plots import plot_course

        return plot_course(self, what, axes)

    def _repr_html_(self) -> str:
        courses = (self.charge, self.current, self.voltage)
        rows = [(name, *(float(values[at, i]) for values in courses for at in (0, -1)))
                for i, name in enumerate(self.battery_names)]
        head = ("battery", "charge first [1]", "last", "current first [A]", "last", "voltage first [V]", "last")
        return html_table(head, rows, f"{self['file']}: {self.duration:.0f} s, {self.end}")

    @property
    def duration(self) -> float:
        """How long it took [s], without the rest afterwards."""
        return float(self.get("runtime", self.get("duration", 0.0)))

    def __repr__(self) -> str:
        return f"<{type(self).__name__} of {self['file']}: {self.duration:.0f} s, {self.end}>"


class Discharge(Course):
    """A run: the document "discharge". Peukert's law in its rated form says what a current costs in charge."""

    @property
    def runtime(self) -> float:
        """[s]"""
        return float(self["runtime"])

    @property
    def ended_by(self) -> str | None:
        """The battery, motor or load that ended the run; None where none is to blame."""
        return self["ended_by"] or None


class Recharge(Course):
    """A charge: the document "recharge"."""
