"""Many banks of one wiring at once: some keys as arrays, the answers as arrays of the same shape."""
from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from . import _core
from .errors import BadQuantity, UnknownName, Unsuitable
from .keys import sections
from .quantities import Quantity, array_in_si
from .tables import frame_of, html_table

if TYPE_CHECKING:
    import pandas

    from .bank import Bank

__all__ = ["Sweep", "SweepValue", "Swept", "measures_of", "run_sweep", "swept_values"]

Floats = NDArray[np.float64]
Mask = NDArray[np.bool_]
masked: Any = np.ma  # has no types
SweepValue = ArrayLike | Quantity
_UNITS = {"terminal": "V", "voltage": "V", "current": "A"}


class Sweep:
    """The answers of many banks. Arrays have the shape that NumPy's broadcasting gives the swept values.

    sweep["A.current"]     [A], sweep["troll.voltage"] [V], sweep["troll+"] [V] against the reference: what was measured
    sweep.values           the swept arrays by name, SI, each of that shape
    NaN                    that bank has no operating point: its loads ask for more than it can give
    masked                 that bank's values were: where a swept array is masked, so are the answers
    """

    def __init__(self, values: dict[str, Floats], units: dict[str, str], measures: list[tuple[str, str]],
                 answers: Floats, shape: tuple[int, ...], mask: Mask | None = None) -> None:
        self.units = units
        self.shape = shape
        self.answers = answers
        self.measures = measures
        self.mask = None if mask is None else mask.reshape(shape)
        self.values = {name: self._shaped(array) for name, array in values.items()}

    def _shaped(self, flat: Floats) -> Floats:
        shaped: Floats = flat.reshape(self.shape)
        if self.mask is None:
            return shaped
        with_mask: Floats = masked.masked_array(shaped, self.mask)
        return with_mask

    def __getitem__(self, name: str) -> Floats:
        for row, (kind, part) in enumerate(self.measures):
            if name == (part if kind == "terminal" else f"{part}.{kind}"):
                return self._shaped(self.answers[row])
        raise UnknownName(f"`{name}` was not measured; measured are " + ", ".join(f"`{one}`" for one in self.names))

    def __array__(self, dtype: object = None) -> Floats:
        told = ", ".join(f'sweep["{one}"]' for one in self.names)
        raise Unsuitable(f"a sweep is several arrays, one by name: {told}; sweep.frame() has them side by side")

    @property
    def names(self) -> list[str]:
        """What was measured: "A.current", "troll.voltage", "troll+"."""
        return [part if kind == "terminal" else f"{part}.{kind}" for kind, part in self.measures]

    @property
    def unanswered(self) -> int:
        """How many of the banks have no operating point. What is masked is not counted."""
        missing = np.isnan(self.answers).any(axis=0) if len(self.measures) else np.zeros(len(self), dtype=bool)
        return int(missing.sum() if self.mask is None else (missing & ~self.mask.ravel()).sum())

    def __len__(self) -> int:
        return int(self.answers.shape[1])

    def frame(self) -> pandas.DataFrame:
        """One row a bank: the swept values and what was measured, "A.resistance [ohm]", "A.current [A]".

        NaN where it is masked.
        """
        columns = {f"{name} [{self.units[name]}]": self._unmasked(array) for name, array in self.values.items()}
        columns |= {f"{name} [{_UNITS[kind]}]": self._unmasked(self[name])
                    for name, (kind, _) in zip(self.names, self.measures)}
        return frame_of(columns)

    def _unmasked(self, array: Floats) -> Floats:
        flat: Floats = array.ravel() if self.mask is None else masked.filled(array, np.nan).ravel()
        return flat

    def _repr_html_(self) -> str:
        rows = []
        for name, (kind, _) in zip(self.names, self.measures):
            found = masked.compressed(masked.masked_invalid(self[name]))
            if found.size:
                rows.append((name, _UNITS[kind], float(found.min()), float(found.mean()), float(found.max())))
        return html_table(("measured", "unit", "least", "mean", "most"), rows,
                          f"{len(self)} banks, {self.unanswered} without an operating point")

    def __repr__(self) -> str:
        return f"<Sweep of {len(self)} banks over {', '.join(self.values)}: {', '.join(self.names)}>"


def _spec(bank: Bank, part: str, key: str) -> tuple[str, str]:
    """Kind and SI unit of a part's key."""
    document = bank.to_dict()
    section = part if part == "system" else next(
        (name for name, parts in document.items()
         if name in sections() and isinstance(parts, dict) and part in parts), "")
    if not section:
        raise UnknownName(f"the bank has no part `{part}`")
    spec = sections()[section].key(key)
    if not spec.is_quantity:
        raise Unsuitable(f"`{part}.{key}` is not a quantity: it cannot be swept")
    return spec.kind, spec.unit


class Swept(NamedTuple):
    """What is swept, ready for the library."""

    arrays: dict[str, Floats]  # by name, SI, flat and of one length; masked values are ones that stand beside them
    units: dict[str, str]  # by name, SI
    shape: tuple[int, ...]  # that broadcasting gives
    mask: Mask | None  # flat; None where nothing is masked


def swept_values(bank: Bank, values: Mapping[str, SweepValue]) -> Swept:
    """See Bank.sweep. BadQuantity for what is no array of numbers, Unsuitable for shapes that do not go together."""
    arrays: dict[str, Floats] = {}
    units: dict[str, str] = {}
    masks: list[Mask] = []
    for written, value in values.items():
        name, _, bracket = written.partition(" [")
        part, _, key = name.rpartition(".")
        kind, si = _spec(bank, part, key)
        unit: str | None = bracket.rstrip("]") or None
        if isinstance(value, Quantity):
            unit, value = value.unit, value.value
        numbers = np.asarray(value)
        if numbers.dtype.kind not in "fiu":
            raise BadQuantity(f"`{name}` is swept over an array of numbers in {si}, or over an array times a unit")
        numbers = numbers.astype(np.float64, copy=False)
        mask: Mask | None = masked.getmaskarray(value) if masked.isMaskedArray(value) else None
        if mask is not None and mask.any():
            if mask.all():
                raise Unsuitable(f"every value of `{name}` is masked")
            numbers = np.where(mask, numbers[~mask][0], numbers)
            masks.append(mask)
        arrays[name] = numbers if unit is None or unit == si else array_in_si(numbers, unit, kind, name)
        units[name] = si
    shape = _common_shape(arrays)
    flat = {name: np.ascontiguousarray(np.broadcast_to(array, shape)).ravel() for name, array in arrays.items()}
    return Swept(flat, units, shape, _joined(masks, shape))


def _common_shape(arrays: dict[str, Floats]) -> tuple[int, ...]:
    try:
        return np.broadcast_shapes(*(array.shape for array in arrays.values())) if arrays else ()
    except ValueError:
        told = ", ".join(f"`{name}` {array.shape}" for name, array in arrays.items())
        raise Unsuitable(f"the swept arrays' shapes cannot be broadcast together: {told}") from None


def _joined(masks: list[Mask], shape: tuple[int, ...]) -> Mask | None:
    if not masks:
        return None
    joined = np.zeros(shape, dtype=np.bool_)
    for mask in masks:
        joined |= mask
    return joined.ravel()


def measures_of(bank: Bank, measure: Sequence[str] | None) -> list[tuple[str, str]]:
    """("current", "A") for "A.current", ("terminal", "troll+") for "troll+"; what is usual if nothing is asked for."""
    if measure is None:
        document = bank.to_dict()
        return ([("current", name) for name in document.get("batteries", {})] +
                [("voltage", name) for section in ("motors", "loads") for name in document.get(section, {})])
    parts = set(bank.part_names)
    found = []
    for name in measure:
        part, _, kind = name.rpartition(".")
        found.append((kind, part) if kind in ("current", "voltage") and part in parts else ("terminal", name))
    return found


def run_sweep(bank: Bank, core: _core.ReadBank, values: Mapping[str, SweepValue], measure: Sequence[str] | None,
              moment: tuple[float | None, float | None, bool], threads: int) -> Sweep:
    """See Bank.sweep."""
    arrays, units, shape, mask = swept_values(bank, values)
    measures = measures_of(bank, measure)
    banks = math.prod(shape)
    keys: list[tuple[str, str, Any]] = []
    for name, array in arrays.items():
        part, _, key = name.rpartition(".")
        keys.append((part, key, array))
    return Sweep(arrays, units, measures, core.sweep(keys, measures, banks, *moment, threads), shape, mask)
