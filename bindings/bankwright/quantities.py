"""Numbers with units. A quantity is a text such as "4.2 mohm", or a number times a unit: `4.2 * units.mohm`.

A bare float where a unit is needed is refused. Arrays are the exception: they are SI, and their names bear the unit.
"""
from __future__ import annotations

import re
from typing import Any

import numpy as np
from numpy.typing import NDArray

from . import _core
from .errors import BadQuantity, UnitNeeded

__all__ = ["Quantity", "QuantityLike", "SI_UNITS", "Unit", "array_in_si", "print_quantity", "quantity_in_si",
           "quantity_text", "units", "values_in_si"]

SI_UNITS: dict[str, str] = {"voltage": "V", "current": "A", "resistance": "ohm", "power": "W", "charge": "C",
                            "length": "m", "duration": "s", "mass": "kg", "force": "N", "temperature": "K",
                            "voltage_per_kelvin": "V/K", "wire_size": "m2", "fraction": "1"}
_EXAMPLES = {"voltage": '"36 V"', "current": '"60 A"', "resistance": '"4.2 mohm"', "power": '"600 W"',
             "charge": '"100 Ah"', "length": '"17 ft" or "0.3 m"', "duration": '"3 h"', "mass": '"30 kg"',
             "force": '"250 N"', "temperature": '"25 degC" or "77 degF"',
             "voltage_per_kelvin": '"-5 mV/K"', "wire_size": '"6 AWG" or "16 mm2"',
             "fraction": '"90 %"'}
_TOLERANCE = re.compile(r"±|\+/?-")  # "4 mohm +/- 10 %": the reader looks at what follows
_WORDS = {"wire_size": "a wire size", "fraction": "a percentage", "charge": "a capacity", "duration": "a time",
          "voltage_per_kelvin": "a voltage per kelvin"}


class Quantity:
    """A number, or an array of numbers, and its unit: `100 * units.Ah`. `str()` gives what a bank file would say.

    Quantities are compared, hashed and pickled by number and unit. They do no arithmetic beyond a number's multiples.
    """

    __slots__ = ("value", "unit")
    __array_ufunc__ = None  # an array times a unit is one Quantity, not an array of them

    value: Any
    unit: str

    def __init__(self, value: float | NDArray[np.float64], unit: str) -> None:
        object.__setattr__(self, "value", value)
        object.__setattr__(self, "unit", unit)

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError("a quantity does not change")

    def __reduce__(self) -> tuple[type, tuple[Any, str]]:
        return Quantity, (self.value, self.unit)

    def __mul__(self, number: float) -> Quantity:
        return Quantity(self.value * number, self.unit)

    __rmul__ = __mul__

    def __truediv__(self, number: float) -> Quantity:
        return Quantity(self.value / number, self.unit)

    def __neg__(self) -> Quantity:
        return Quantity(-self.value, self.unit)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Quantity) and self.unit == other.unit and bool(np.all(self.value == other.value))

    def __hash__(self) -> int:
        return hash((str(self.value), self.unit))

    def __str__(self) -> str:
        number = repr(float(self.value)).removesuffix(".0") if np.ndim(self.value) == 0 else str(self.value)
        return f"{number} {self.unit}"

    def __repr__(self) -> str:
        return f"<{self}>"


class Unit(Quantity):
    """One of a unit; a number or array times it is a Quantity."""

    __slots__ = ()

    def __init__(self, unit: str) -> None:
        super().__init__(1, unit)

    def __reduce__(self) -> tuple[type, Any]:
        return Unit, (self.unit,)

    def __str__(self) -> str:
        return self.unit


class units:
    """The units that a bank file knows. `units.mohm`, `units.AWG`, `units.inch` for "in", `units.pct` for "%"."""

    V, mV = Unit("V"), Unit("mV")
    A, mA, kA = Unit("A"), Unit("mA"), Unit("kA")
    ohm, mohm, uohm = Unit("ohm"), Unit("mohm"), Unit("uohm")
    W, kW = Unit("W"), Unit("kW")
    Ah, mAh, C = Unit("Ah"), Unit("mAh"), Unit("C")
    m, cm, mm, inch, ft = Unit("m"), Unit("cm"), Unit("mm"), Unit("in"), Unit("ft")
    s, minute, h = Unit("s"), Unit("min"), Unit("h")
    kg, lb = Unit("kg"), Unit("lb")
    N, lbf = Unit("N"), Unit("lbf")
    degC, degF, K = Unit("degC"), Unit("degF"), Unit("K")
    AWG, mm2 = Unit("AWG"), Unit("mm2")
    pct = Unit("%")


QuantityLike = str | Quantity


def quantity_text(value: object, kind: str, name: str) -> str:
    """What a bank file would say. UnitNeeded for a bare number, BadQuantity for a text that is no such quantity."""
    if isinstance(value, Quantity):
        text = str(value)
    elif isinstance(value, str):
        text = value
    else:
        what = _WORDS.get(kind, f"a {kind}")
        raise UnitNeeded(f"`{name}` is {what} and needs a unit, such as {_EXAMPLES[kind]}; found {value!r}")
    _, problem, _ = _core.quantity(kind, _TOLERANCE.split(text)[0].rstrip())
    if problem:
        raise BadQuantity(f"`{name}`: {problem}")
    return text


def quantity_in_si(value: QuantityLike, kind: str, name: str = "value") -> float:
    """The number of `value` in the SI unit of `kind` (SI_UNITS): 0.0042 for "4.2 mohm" as a "resistance".

    Raises UnitNeeded for a bare number, BadQuantity for another quantity's unit, UnknownName for an unknown kind.
    """
    return float(_core.quantity(kind, _TOLERANCE.split(quantity_text(value, kind, name))[0].rstrip())[0])


def array_in_si(numbers: NDArray[np.float64], unit: str, kind: str, name: str = "value") -> NDArray[np.float64]:
    """`numbers` of `unit`, of any shape, in the SI unit of `kind`.

    Raises BadQuantity for another quantity's unit, and for a gauge that there is not.
    """
    if kind == "wire_size":
        known = {size: quantity_in_si(str(Quantity(float(size), unit)), kind, name) for size in np.unique(numbers)}
        areas: NDArray[np.float64] = np.vectorize(known.__getitem__, otypes=[np.float64])(numbers)
        return areas
    scale = quantity_in_si(f"1 {unit}", kind, name)
    if kind != "temperature":
        return numbers * scale if scale != 1.0 else numbers
    step = (quantity_in_si(f"101 {unit}", kind, name) - scale) / 100.0  # a thermometer's scale has an offset
    return scale + (numbers - 1.0) * step


def values_in_si(value: object, kind: str, name: str = "value") -> float | NDArray[np.float64]:
    """A text, a number or array times a unit, a list of such, or an array in SI: all in the SI unit of `kind`.

    Raises UnitNeeded for a bare number, BadQuantity for another quantity's unit and for what is no array of numbers.
    """
    if isinstance(value, str) or (isinstance(value, Quantity) and np.ndim(value.value) == 0):
        return quantity_in_si(value, kind, name)
    if isinstance(value, Quantity):
        return array_in_si(np.asarray(value.value, dtype=np.float64), value.unit, kind, name)
    if isinstance(value, (list, tuple)) and any(isinstance(one, (str, Quantity)) for one in value):
        return np.array([values_in_si(one, kind, name) for one in value])
    if isinstance(value, (list, tuple, np.ndarray)):
        numbers = np.asarray(value)
        if numbers.dtype.kind not in "fiu":
            raise BadQuantity(f"`{name}` is no array of numbers in {SI_UNITS[kind]}, nor of quantities")
        return numbers.astype(np.float64, copy=False)
    return quantity_in_si(value, kind, name)  # type: ignore[arg-type]  # it says what is wrong with it


def print_quantity(value: float, kind: str) -> str:
    """`value` [SI unit of `kind`] as messages print it, with four digits: print_quantity(0.0042, "resistance") is "4.2
    mohm".
    """
    return str(_core.print(kind, value))
