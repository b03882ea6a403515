"""The functions of the trade, without a bank: copper, breakers, batteries, motors, each as the library computes it.

    from bankwright import physics, units
    physics.ampacity("6 AWG", "105 degC")                       # 120.0 [A]
    physics.rested_voltage("agm", np.linspace(0, 1, 101))       # an array of 101 voltages [V]

Every argument that has a unit is a text ("20 A"), a number or an array times a unit (20 * units.A), a list of texts, or
an array in SI (its unit stands in brackets below); a bare number is refused, as elsewhere. Arguments broadcast against
each other as NumPy's do, and the answer has their common shape: a float where all are single values. Answers are SI.
NaN in gives NaN out, and NaN also stands where a table ends and there is no answer. All raise UnitNeeded (a TypeError)
for a bare number; BadQuantity (a ValueError) for another quantity's unit; Unsuitable (a ValueError) for a value out of
its range, with what was found and what is allowed, for an unknown word, and for shapes that do not go together.

Sources are given in short; the C++ headers under `bankwright/devices/` have them at length.
"""
from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from . import _core
from .errors import Unsuitable
from .quantities import Quantity, values_in_si

__all__ = ["Band", "Values", "ampacity", "area", "capacity_at_current", "charge_at_voltage", "freezing_point",
           "gravity_at_80", "motor_current", "rested_voltage", "specific_gravity", "thinnest_gauge", "time_at_current",
           "trip_band", "trip_classes", "voltage_drop", "wire_resistance", "wire_temperature", "withstand",
           "withstand_time"]

Values = str | Quantity | Sequence[str | Quantity] | NDArray[np.float64]
Answer = Any  # a float, or an array of the common shape: mypy need not be told which at every call


class Band(NamedTuple):
    """Between which times a device opens [s]; infinite where it holds, or where its standard promises nothing."""

    at_least: Answer
    at_most: Answer


def _ask(function: Callable[..., Any], *arguments: Any) -> Answer:
    try:
        return function(*arguments)
    except (RuntimeError, TypeError) as refused:  # what pybind11 says of shapes that do not broadcast
        shapes = [str(np.shape(one)) for one in arguments if np.ndim(one) > 0]
        raise Unsuitable(f"arrays of the shapes {', '.join(shapes)} do not go together") from refused


def _plain(value: ArrayLike) -> NDArray[np.float64]:
    return np.asarray(value, dtype=np.float64)


def area(size: Values) -> Answer:
    """Copper of a conductor's `size` [m2]: "6 AWG", "2/0 AWG", "6 SAE", "16 mm2" -> [m2], in the shape of `size`.

    Source: ASTM B258 for AWG; SAE J1127 and J1128, least areas, for SAE.
    """
    return values_in_si(size, "wire_size", "size")


def thinnest_gauge(size: Values) -> Answer:
    """The thinnest AWG that holds at least the copper of `size` [m2], in its shape: 6.0 is 6 AWG, 0.0 is 1/0, -3.0 is
    4/0, NaN is thicker than that.

    Source: ASTM B258.
    """
    return _ask(_core.thinnest_gauge, area(size))


def ampacity(size: Values, insulation: Values = "60 degC", *, ambient: Values = "30 degC", engine_space: bool = False,
             bundle: int = 1) -> Answer:
    """What a conductor may carry for good [A], in the common shape of `size` [m2], `insulation` [K] and `ambient` [K].

    insulation   its temperature rating; between two columns of the table the lower one counts
    engine_space note 1 of the table, for 50 degC
    bundle       current-carrying conductors bundled together, this one included

    NaN below 18 AWG, and below 60 degC insulation. Source: 33 CFR 183.425 Table 5; UL 1426 for bundles.
    """
    return _ask(_core.ampacity, area(size), values_in_si(insulation, "temperature", "insulation"),
                values_in_si(ambient, "temperature", "ambient"), engine_space, bundle)


def wire_resistance(size: Values, length: Values, temperature: Values = "20 degC", *, tinned: bool = False) -> Answer:
    """Resistance of a stranded copper conductor without its ends [ohm], in the common shape of `size` [m2], `length`
    [m] and `temperature` of the copper [K].

    Source: IEC 60028; ASTM B8 for the lay of strands; IEC 60228 for tin.
    """
    return _ask(_core.wire_resistance, area(size), values_in_si(length, "length", "length"),
                values_in_si(temperature, "temperature", "temperature"), tinned)


def wire_temperature(size: Values, current: Values, insulation: Values = "60 degC", *, ambient: Values = "30 degC",
                     engine_space: bool = False, bundle: int = 1) -> Answer:
    """How warm the copper gets at a steady current [K], in the common shape of `size` [m2], `current` [A], `insulation`
    [K] and `ambient` [K].

    NaN where there is no ampacity. Source: derived; at the ampacity it is as warm as its insulation may get.
    """
    return _ask(_core.wire_temperature, area(size), values_in_si(current, "current", "current"),
                values_in_si(insulation, "temperature", "insulation"), values_in_si(ambient, "temperature", "ambient"),
                engine_space, bundle)


def voltage_drop(size: Values, length: Values, current: Values, insulation: Values = "60 degC", *,
                 ambient: Values = "30 degC", tinned: bool = False) -> Answer:
    """What a conductor loses at work [V], warm as it then is, in the common shape of `size` [m2], `length` out and back
    [m], `current` [A], `insulation` [K] and `ambient` [K]. Joints are not in it.

    Source: wire_resistance at wire_temperature, no warmer than the insulation's rating.
    """
    return _ask(_core.voltage_drop, area(size), values_in_si(length, "length", "length"),
                values_in_si(current, "current", "current"), values_in_si(insulation, "temperature", "insulation"),
                values_in_si(ambient, "temperature", "ambient"), tinned)


def withstand(size: Values, insulation: Values = "60 degC") -> Answer:
    """I2t that a conductor's insulation survives [A2 s], as hot as its rating at the start, in the common shape of
    `size` [m2] and `insulation` [K]. For no more than 5 s.

    Source: IEC 60364-5-54.
    """
    return _ask(_core.withstand, area(size), values_in_si(insulation, "temperature", "insulation"))


def withstand_time(size: Values, current: Values, insulation: Values = "60 degC") -> Answer:
    """How long it survives a short-circuit `current` [A]: [s], in the common shape of all three; see withstand()."""
    return _ask(_core.withstand_time, area(size), values_in_si(current, "current", "current"),
                values_in_si(insulation, "temperature", "insulation"))


def trip_classes() -> list[str]:
    """Every class of breaker and fuse whose time-current band is known, as the key `class` of a bank file has it."""
    return _core.trip_classes()


def trip_band(trip_class: str, rating: Values, current: Values) -> Band:
    """Between which times a breaker or fuse of a class opens: two answers [s], each in the common shape of `rating` [A]
    and `current` [A].

    Source: the standard that `trip_class` names; see trip_classes().
    """
    asked = (trip_class, values_in_si(rating, "current", "rating"), values_in_si(current, "current", "current"))
    return Band(_ask(_core.trip_at_least, *asked), _ask(_core.trip_at_most, *asked))


def rested_voltage(chemistry: str, charge: Values, *, nominal: Values = "12 V",
                   temperature: Values = "25 degC") -> Answer:
    """What a battery shows across its posts after hours of rest [V], in the common shape of `charge` [1], `nominal` [V]
    and `temperature` [K].

    chemistry    "flooded", "agm", "gel", "lifepo4" or "nmc"
    nominal      the voltage on its label

    Source: tables of data/tables/open_circuit_voltage.toml, each with how sure it is.
    """
    return _ask(_core.rested_voltage, chemistry, values_in_si(charge, "fraction", "charge"),
                values_in_si(nominal, "voltage", "nominal"), values_in_si(temperature, "temperature", "temperature"))


def charge_at_voltage(chemistry: str, voltage: Values, *, nominal: Values = "12 V",
                      temperature: Values = "25 degC") -> Answer:
    """The state of charge that a rested `voltage` [V] stands for [1], in the common shape of `voltage`, `nominal` [V]
    and `temperature` [K]. The inverse of rested_voltage, 0 below it and 1 above."""
    return _ask(_core.charge_at_voltage, chemistry, values_in_si(voltage, "voltage", "voltage"),
                values_in_si(nominal, "voltage", "nominal"), values_in_si(temperature, "temperature", "temperature"))


def specific_gravity(charge: Values, temperature: Values = "80 degF") -> Answer:
    """What a hydrometer shows in a flooded cell [1], in the common shape of `charge` [1] and `temperature` [K].

    Source: data/tables/specific_gravity.toml (quoted, low: a data sheet that pages attribute to the BCI).
    """
    return _ask(_core.specific_gravity, values_in_si(charge, "fraction", "charge"),
                values_in_si(temperature, "temperature", "temperature"))


def gravity_at_80(gravity: ArrayLike, temperature: Values) -> Answer:
    """A hydrometer's reading, a bare number such as 1.265, as it would be at 80 degF [1], in the common shape of
    `gravity` and `temperature` of the acid [K].

    Source: US Army TM 5-3820: 0.004 for every 10 degF.
    """
    return _ask(_core.gravity_at_80, _plain(gravity), values_in_si(temperature, "temperature", "temperature"))


def freezing_point(gravity: ArrayLike) -> Answer:
    """Where acid of a specific gravity at 80 degF, a bare number such as 1.265, freezes [K], in the shape of `gravity`.

    Source: US Army TM 5-1185.
    """
    return _ask(_core.freezing_point, _plain(gravity))


def capacity_at_current(current: Values, capacity: Values, *, hours: Values = "20 h", chemistry: str | None = None,
                        exponent: ArrayLike | None = None, reserve: Values | None = None,
                        temperature: Values = "25 degC") -> Answer:
    """What a full battery gives at a steady current until it is empty [C], 3600 to the ampere-hour, in the common shape
    of `current` [A], `capacity` [C], `hours` [s] and of the others that are given.

    hours        in which it gives its rated capacity
    exponent     of Peukert's law, a bare number; else from `reserve` (at 25 A [s]), else the usual of `chemistry`
    temperature  of the battery [K]; it counts where the chemistry is given

    Raises Unsuitable without one of `exponent`, `reserve` and `chemistry`, too. Below the rated current it is the rated
    capacity. Source: Peukert 1897; SAE J537; IEEE 485 Table 1.
    """
    rated, time = values_in_si(capacity, "charge", "capacity"), values_in_si(hours, "duration", "hours")
    if exponent is not None:
        bent: Answer = _plain(exponent)
    elif reserve is not None:
        bent = np.clip(_ask(_core.exponent, rated, time, values_in_si(reserve, "duration", "reserve")), 1.0, 2.0)
    elif chemistry is not None:
        bent = _core.usual_exponent(chemistry)
    else:
        raise Unsuitable("`exponent`, `reserve` or `chemistry` tells what a higher current costs; none is given")
    share = 1.0 if chemistry is None else _ask(_core.capacity_ratio, chemistry,
                                               values_in_si(temperature, "temperature", "temperature"))
    return _ask(_core.usable_capacity, values_in_si(current, "current", "current"), rated, time, bent, share)


def time_at_current(current: Values, capacity: Values, **known: Any) -> Answer:
    """How long a full battery lasts at a steady current [s]: capacity_at_current(), asked alike, over it."""
    return capacity_at_current(current, capacity, **known) / values_in_si(current, "current", "current")


def motor_current(voltage: Values, rated_voltage: Values, rated_current: Values, *, winding: Values = "0 ohm",
                  throttle: Values = "100 %") -> Answer:
    """What a direct-current motor with a propeller draws [A] at a `voltage` [V] across it, in the common shape of all.

    rated_voltage, rated_current  of its nameplate, at full throttle
    winding                       armature, brushes and leads inside [ohm]
    throttle                      duty of its speed control [1]

    Source: V = E + I R, and a propeller whose torque goes as the square of its speed.
    """
    return _ask(_core.motor_current, values_in_si(voltage, "voltage", "voltage"),
                values_in_si(rated_voltage, "voltage", "rated_voltage"),
                values_in_si(rated_current, "current", "rated_current"), values_in_si(winding, "resistance", "winding"),
                values_in_si(throttle, "fraction", "throttle"))
