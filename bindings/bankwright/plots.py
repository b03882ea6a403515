"""Pictures with matplotlib: labeled, in units, readable in gray. matplotlib is imported when a picture is drawn."""
from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from .results import Solution
    from .through_time import Course

__all__ = ["plot_course", "plot_sharing"]

Floats = NDArray[np.float64]
LINES = ("-", "--", "-.", ":")
MARKS = ("o", "s", "^", "D", "v", "P", "X", "*")


def _axes(axes: Axes | None) -> Any:
    if axes is not None:
        return axes
    import matplotlib.pyplot as plt

    return plt.subplots(figsize=(7, 4), layout="constrained")[1]


def plot_sharing(solution: Solution, axes: Axes | None = None) -> Axes:
    """One bar a battery: its current [A], with the mean as a line."""
    axes = _axes(axes)
    names = solution.battery_names
    amperes = np.array([solution["parts"][name]["current"] for name in names])
    bars = axes.bar(names, amperes, color="0.75", edgecolor="black")
    axes.bar_label(bars, [f"{value:.1f}" for value in amperes], padding=2)
    if amperes.size:
        axes.axhline(float(amperes.mean()), color="black", linestyle="--", label=f"mean {amperes.mean():.1f} A")
        axes.legend()
    axes.set(xlabel="battery", ylabel="current, positive when it discharges [A]",
             title=f"Sharing: {solution['file']} ({solution.arrangement or 'no arrangement'})")
    axes.margins(y=0.15)
    return axes


def _alike(names: list[str], values: Floats) -> list[tuple[list[str], Floats]]:
    """Batteries of one course together: of two lines on the same spot one cannot be seen."""
    groups: list[tuple[list[str], Floats]] = []
    for name, course in zip(names, values.T):
        for members, first in groups:
            if np.allclose(course, first, rtol=1e-6, atol=1e-9, equal_nan=True):
                members.append(name)
                break
        else:
            groups.append(([name], course))
    return groups


def plot_course(course: Course, what: str = "charge", axes: Axes | None = None) -> Axes:
    """Every battery's "charge" [%], "current" [A] or "voltage" [V] over time [min]; those of one course share a line.
    """
    axes = _axes(axes)
    scale, label = {"charge": (100.0, "state of charge [%]"),
                    "current": (1.0, "current, positive when it discharges [A]"),
                    "voltage": (1.0, "voltage across its posts [V]")}[what]
    groups = _alike(course.battery_names, getattr(course, what))
    for i, (names, values) in enumerate(groups):
        axes.plot(course.time / 60.0, values * scale, LINES[i % len(LINES)], marker=MARKS[i % len(MARKS)],
                  markevery=0.1, markersize=4, color=str(0.6 * i / max(1, len(groups) - 1)), label=", ".join(names))
    axes.set(xlabel="time [min]", ylabel=label)
    axes.legend(title="battery")
    axes.grid(True, color="0.9")
    return axes
