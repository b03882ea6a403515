"""How a bank is built part by part.

Written by tests/structure/make_python_parts.py from the library's table of keys.
"""
from __future__ import annotations

import datetime
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from .quantities import QuantityLike

if TYPE_CHECKING:
    from .bank import Bank

__all__ = ["PartMethods"]


class PartMethods:
    """One method for each kind of part. Each checks its keys, adds the part and returns the bank."""

    def _add(self, section: str, part: str, keys: dict[str, Any]) -> Bank:
        raise NotImplementedError

    def battery(self, id: str, *, model: str | None = None, chemistry: str | None = None,
                voltage: QuantityLike | None = None, cells: int | None = None, capacity: QuantityLike | None = None,
                capacity_hours: QuantityLike | None = None, reserve: QuantityLike | None = None,
                cranking: QuantityLike | None = None, resistance: QuantityLike | None = None,
                charge: QuantityLike | None = None, health: QuantityLike | None = None,
                emf: QuantityLike | None = None, temperature: QuantityLike | None = None,
                made: datetime.date | None = None, dead_cells: int | None = None, weak_cells: int | None = None,
                weak_capacity: QuantityLike | None = None, max_discharge: QuantityLike | None = None,
                max_charge: QuantityLike | None = None, max_series: int | None = None,
                max_parallel: int | None = None, low_cutoff: QuantityLike | None = None,
                high_cutoff: QuantityLike | None = None, mass: QuantityLike | None = None, place: str | None = None,
                role: str | None = None, price: str | None = None, size: str | None = None) -> Bank:
        """One more in the section `batteries`: the batteries, each with its own two posts. Terminals of X: X+ X-.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        chemistry       family of battery: flooded, agm, gel, lifepo4, nmc
        voltage         nominal voltage, as on the label, such as 12 V; if not given: from chemistry and cells
        cells           cells in series inside, such as 6; if not given: from chemistry and voltage
        capacity        rated capacity at 25 degC over capacity_hours, such as 100 Ah
        capacity_hours  duration of the discharge that the capacity is rated for, such as 20 h; if not given: 20 h
        reserve         reserve capacity: time at 25 A and 27 degC, such as 185 min
        cranking        cold cranking amperes, such as 650 A
        resistance      internal resistance of the whole battery, such as 4.0 mohm; if not given: from cranking, else
                        from chemistry and capacity
        charge          state of charge, such as 98 %; if not given: 100 %
        health          usable capacity over rated, such as 90 %; if not given: 100 %
        emf             measured open-circuit voltage, such as 12.71 V; if not given: from chemistry, charge and
                        temperature
        temperature     temperature of the battery, such as 25 degC; if not given: system.ambient
        made            date of manufacture, such as 2024-03-01
        dead_cells      cells that give no voltage, such as 1; if not given: 0
        weak_cells      cells that hold less than the others, such as 1; if not given: 0
        weak_capacity   what a weak cell holds, over what a sound one does, such as 60 %
        max_discharge   largest continuous discharge current, such as 100 A
        max_charge      largest charge current, such as 30 A
        max_series      most of them in series, such as 4
        max_parallel    most of them in parallel, such as 4
        low_cutoff      where its protective disconnect, or its owner, ends a discharge, such as 10.5 V
        high_cutoff     where its protective disconnect ends a charge, such as 14.8 V
        mass            mass of the battery, such as 30 kg
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        role            start: it cranks an engine for seconds; house: everything else: start, house
        price           what one costs, with the currency, such as "189.50 USD"
        size            length, width and height of the battery, such as "330 x 173 x 240 mm"

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("batteries", id, {"model": model, "chemistry": chemistry, "voltage": voltage, "cells": cells,
            "capacity": capacity, "capacity_hours": capacity_hours, "reserve": reserve, "cranking": cranking,
            "resistance": resistance, "charge": charge, "health": health, "emf": emf, "temperature": temperature,
            "made": made, "dead_cells": dead_cells, "weak_cells": weak_cells, "weak_capacity": weak_capacity,
            "max_discharge": max_discharge, "max_charge": max_charge, "max_series": max_series,
            "max_parallel": max_parallel, "low_cutoff": low_cutoff, "high_cutoff": high_cutoff, "mass": mass,
            "place": place, "role": role, "price": price, "size": size})

    def jumper(self, id: str, from_: str, to: str, *, model: str | None = None, size: QuantityLike | None = None,
               length: QuantityLike | None = None, resistance: QuantityLike | None = None,
               insulation: QuantityLike | None = None, tinned: bool | None = None, color: str | None = None,
               joint: QuantityLike | None = None, bundle: int | None = None, enclosed: bool | None = None,
               engine_space: bool | None = None, temperature: QuantityLike | None = None, place: str | None = None,
               fixed: bool | None = None) -> Bank:
        """One more in the section `jumpers`: short conductors between posts.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        from_           terminal at one end; its current is positive from here, such as "A+"
        to              terminal at the other end, such as "B-"
        size            gauge or cross-section of the copper, such as 6 AWG
        length          length of the conductor, such as 17 ft
        resistance      the whole conductor with its joints; overrides size, length and joint, such as 6.7 mohm; if
                        not given: from size, length, temperature and joint
        insulation      temperature rating of the insulation, such as 105 degC
        tinned          tinned copper, such as true; if not given: false
        color           color of the insulation, such as "red"
        joint           one of its two joints, such as 0.1 mohm; if not given: system.joint
        bundle          current-carrying conductors bundled together, this one included, such as 3; if not given: 1
        enclosed        in a sheath, conduit or box all the way, such as true; if not given: false
        engine_space    runs through an engine space, such as true; if not given: false
        temperature     temperature of the copper, such as 30 degC; if not given: system.ambient
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        fixed           `size` leaves it as it is, such as true; if not given: false

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("jumpers", id, {"model": model, "from": from_, "to": to, "size": size, "length": length,
            "resistance": resistance, "insulation": insulation, "tinned": tinned, "color": color, "joint": joint,
            "bundle": bundle, "enclosed": enclosed, "engine_space": engine_space, "temperature": temperature,
            "place": place, "fixed": fixed})

    def cable(self, id: str, from_: str, to: str, *, model: str | None = None, size: QuantityLike | None = None,
              length: QuantityLike | None = None, resistance: QuantityLike | None = None,
              insulation: QuantityLike | None = None, tinned: bool | None = None, color: str | None = None,
              joint: QuantityLike | None = None, bundle: int | None = None, enclosed: bool | None = None,
              engine_space: bool | None = None, temperature: QuantityLike | None = None, place: str | None = None,
              fixed: bool | None = None) -> Bank:
        """One more in the section `cables`: longer conductors.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        from_           terminal at one end; its current is positive from here, such as "A+"
        to              terminal at the other end, such as "B-"
        size            gauge or cross-section of the copper, such as 6 AWG
        length          length of the conductor, such as 17 ft
        resistance      the whole conductor with its joints; overrides size, length and joint, such as 6.7 mohm; if
                        not given: from size, length, temperature and joint
        insulation      temperature rating of the insulation, such as 105 degC
        tinned          tinned copper, such as true; if not given: false
        color           color of the insulation, such as "red"
        joint           one of its two joints, such as 0.1 mohm; if not given: system.joint
        bundle          current-carrying conductors bundled together, this one included, such as 3; if not given: 1
        enclosed        in a sheath, conduit or box all the way, such as true; if not given: false
        engine_space    runs through an engine space, such as true; if not given: false
        temperature     temperature of the copper, such as 30 degC; if not given: system.ambient
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        fixed           `size` leaves it as it is, such as true; if not given: false

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("cables", id, {"model": model, "from": from_, "to": to, "size": size, "length": length,
            "resistance": resistance, "insulation": insulation, "tinned": tinned, "color": color, "joint": joint,
            "bundle": bundle, "enclosed": enclosed, "engine_space": engine_space, "temperature": temperature,
            "place": place, "fixed": fixed})

    def breaker(self, id: str, *, model: str | None = None, rating: QuantityLike | None = None,
                interrupts: QuantityLike | None = None, voltage: QuantityLike | None = None,
                resistance: QuantityLike | None = None, state: str | None = None, class_: str | None = None,
                trips: Sequence[Sequence[str]] | None = None, place: str | None = None, fixed: bool | None = None,
                price: str | None = None, on: str | None = None) -> Bank:
        """One more in the section `breakers`: resettable breakers. Terminals of X: X.line X.load.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        rating          rated current, such as 60 A
        interrupts      largest fault current that it can break, such as 3000 A
        voltage         largest voltage that it can break, such as 48 V
        resistance      resistance from line to load, such as 1.0 mohm; if not given: 0 ohm
        state           closed, or open: tripped, switched off, blown: closed, open; if not given: closed
        class_          the standard that its time-current band comes from; of a standard that is not listed no band
                        is known, such as "iso-8820-3"
        trips           the maker's own time-current band: at a multiple of the rating it opens between two times,
                        such as [["200 %", "10 s", "60 s"]]; if not given: from `class`
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        fixed           `size` leaves it as it is, such as true; if not given: false
        price           what one costs, with the currency, such as "189.50 USD"
        on              sits straight on that post, which is then its line terminal, such as "A+"

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("breakers", id, {"model": model, "rating": rating, "interrupts": interrupts,
            "voltage": voltage, "resistance": resistance, "state": state, "class": class_, "trips": trips,
            "place": place, "fixed": fixed, "price": price, "on": on})

    def fuse(self, id: str, *, model: str | None = None, rating: QuantityLike | None = None,
             interrupts: QuantityLike | None = None, voltage: QuantityLike | None = None,
             resistance: QuantityLike | None = None, state: str | None = None, class_: str | None = None,
             trips: Sequence[Sequence[str]] | None = None, place: str | None = None, fixed: bool | None = None,
             price: str | None = None, on: str | None = None) -> Bank:
        """One more in the section `fuses`: fuses. Terminals of X: X.line X.load.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        rating          rated current, such as 60 A
        interrupts      largest fault current that it can break, such as 3000 A
        voltage         largest voltage that it can break, such as 48 V
        resistance      resistance from line to load, such as 1.0 mohm; if not given: 0 ohm
        state           closed, or open: tripped, switched off, blown: closed, open; if not given: closed
        class_          the standard that its time-current band comes from; of a standard that is not listed no band
                        is known, such as "iso-8820-3"
        trips           the maker's own time-current band: at a multiple of the rating it opens between two times,
                        such as [["200 %", "10 s", "60 s"]]; if not given: from `class`
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        fixed           `size` leaves it as it is, such as true; if not given: false
        price           what one costs, with the currency, such as "189.50 USD"
        on              sits straight on that post, which is then its line terminal, such as "A+"

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("fuses", id, {"model": model, "rating": rating, "interrupts": interrupts, "voltage": voltage,
            "resistance": resistance, "state": state, "class": class_, "trips": trips, "place": place, "fixed": fixed,
            "price": price, "on": on})

    def switch(self, id: str, *, model: str | None = None, rating: QuantityLike | None = None,
               resistance: QuantityLike | None = None, state: str | None = None, place: str | None = None,
               price: str | None = None) -> Bank:
        """One more in the section `switches`: switches. Terminals of X: X.1 X.2.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        rating          rated continuous current, such as 100 A
        resistance      resistance when closed, such as 0.2 mohm; if not given: 0 ohm
        state           closed or open: closed, open; if not given: closed
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        price           what one costs, with the currency, such as "189.50 USD"

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("switches", id, {"model": model, "rating": rating, "resistance": resistance, "state": state,
            "place": place, "price": price})

    def shunt(self, id: str, *, model: str | None = None, rating: QuantityLike | None = None,
              drop: QuantityLike | None = None, resistance: QuantityLike | None = None,
              place: str | None = None) -> Bank:
        """One more in the section `shunts`: shunts, in the negative, for a meter. Terminals of X: X.1 X.2.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        rating          rated continuous current, such as 500 A
        drop            voltage across it at its rating, such as 50 mV
        resistance      resistance; overrides rating and drop, such as 0.1 mohm; if not given: from rating and drop
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("shunts", id, {"model": model, "rating": rating, "drop": drop, "resistance": resistance,
            "place": place})

    def relay(self, id: str, *, model: str | None = None, closes_above: QuantityLike | None = None,
              opens_below: QuantityLike | None = None, rating: QuantityLike | None = None, state: str | None = None,
              place: str | None = None) -> Bank:
        """One more in the section `relays`: relays that combine two banks while charging. Terminals of X: X.1 X.2.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        closes_above    combines two banks when one is charged above this, such as 13.3 V; if not given: whenever a
                        charger works
        opens_below     parts them again below this, such as 12.8 V
        rating          rated continuous current, such as 140 A
        state           closed or open, by hand: closed, open; if not given: closed while a charger holds closes_above
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("relays", id, {"model": model, "closes_above": closes_above, "opens_below": opens_below,
            "rating": rating, "state": state, "place": place})

    def selector(self, id: str, *, model: str | None = None, position: str | None = None,
                 rating: QuantityLike | None = None, place: str | None = None) -> Bank:
        """One more in the section `selectors`: battery selectors. Terminals of X: X.1 X.2 X.common.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        position        what its common is joined to: off, 1, 2, both; if not given: 1
        rating          rated continuous current, such as 200 A
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("selectors", id, {"model": model, "position": position, "rating": rating, "place": place})

    def busbar(self, id: str, *, model: str | None = None, studs: int | None = None,
               rating: QuantityLike | None = None, place: str | None = None, price: str | None = None) -> Bank:
        """One more in the section `busbars`: busbars, one node each. Terminals of X: X.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        studs           studs on it, such as 4
        rating          rated continuous current, such as 150 A
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        price           what one costs, with the currency, such as "189.50 USD"

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("busbars", id, {"model": model, "studs": studs, "rating": rating, "place": place,
            "price": price})

    def connector(self, id: str, *, model: str | None = None, rating: QuantityLike | None = None,
                  contact: QuantityLike | None = None, state: str | None = None, place: str | None = None,
                  max_size: QuantityLike | None = None, price: str | None = None) -> Bank:
        """One more in the section `connectors`: receptacles with their plugs. Terminals of X: X+ X- X.plug+ X.plug-.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        rating          rated continuous current, such as 60 A
        contact         contact resistance of one pole, such as 0.5 mohm; if not given: 0 ohm
        state           mated, or apart: the plug is out: mated, apart; if not given: mated
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        max_size        thickest conductor that its terminals take, such as 6 AWG; if not given: about 6 AWG
        price           what one costs, with the currency, such as "189.50 USD"

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("connectors", id, {"model": model, "rating": rating, "contact": contact, "state": state,
            "place": place, "max_size": max_size, "price": price})

    def motor(self, id: str, *, model: str | None = None, voltage: QuantityLike | None = None,
              current: QuantityLike | None = None, throttle: QuantityLike | None = None,
              winding: QuantityLike | None = None, control: str | None = None, thrust: QuantityLike | None = None,
              min_voltage: QuantityLike | None = None, place: str | None = None,
              max_current: QuantityLike | None = None) -> Bank:
        """One more in the section `motors`: DC motors with a propeller. Terminals of X: X+ X-.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        voltage         nameplate voltage, such as 36 V
        current         nameplate current, at that voltage and full throttle, such as 50 A; if not given: taken from
                        thrust and voltage
        throttle        duty cycle of its speed control, such as 100 %; if not given: 100 %
        winding         armature, brushes and leads inside, such as 80 mohm; if not given: 0 ohm
        control         speed control: pwm chops; direct is off or full: pwm, direct; if not given: pwm
        thrust          nameplate static thrust at full throttle; `lb` is read as pounds of force, such as 445 N
        min_voltage     below this its speed control stops, such as 30 V
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        max_current     most that its control lets through; ratings go by it in place of the nameplate current, such
                        as 50 A; if not given: no limit

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("motors", id, {"model": model, "voltage": voltage, "current": current, "throttle": throttle,
            "winding": winding, "control": control, "thrust": thrust, "min_voltage": min_voltage, "place": place,
            "max_current": max_current})

    def load(self, id: str, *, model: str | None = None, current: QuantityLike | None = None,
             power: QuantityLike | None = None, resistance: QuantityLike | None = None,
             min_voltage: QuantityLike | None = None, max_voltage: QuantityLike | None = None,
             place: str | None = None, role: str | None = None) -> Bank:
        """One more in the section `loads`: anything else that draws from the bank. Terminals of X: X+ X-.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        current         draws this current at any voltage, such as 4 A
        power           draws this power at any voltage, such as 60 W
        resistance      is ohmic, such as 3 ohm
        min_voltage     lowest voltage that it works at, such as 10.8 V
        max_voltage     largest voltage that it survives, such as 15 V
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        role            start: it cranks an engine for seconds; house: everything else: start, house

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("loads", id, {"model": model, "current": current, "power": power, "resistance": resistance,
            "min_voltage": min_voltage, "max_voltage": max_voltage, "place": place, "role": role})

    def charger(self, id: str, *, model: str | None = None, outputs: int | None = None, isolated: bool | None = None,
                voltage: QuantityLike | None = None, current: QuantityLike | None = None,
                connected: bool | None = None, place: str | None = None, kind: str | None = None,
                fused: bool | None = None, price: str | None = None,
                compensation: QuantityLike | None = None) -> Bank:
        """One more in the section `chargers`: chargers, on shore or on board. Terminals of X: X.1+ X.1- ... per output.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        outputs         number of outputs, such as 3; if not given: 1
        isolated        its outputs share nothing; if false they share their negative, such as true; if not given:
                        true
        voltage         voltage that each output holds, such as 14.4 V
        current         most that each output gives, such as 10 A
        connected       charging: plugged in, the engine running, the sun out, such as false; if not given: false
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors
        kind            what it takes its power from: shore, alternator, solar, converter; if not given: shore
        fused           its maker has put a fuse into its leads at the battery, such as true; if not given: false
        price           what one costs, with the currency, such as "189.50 USD"
        compensation    what it adds to its voltage for each kelvin of the batteries above 25 degC and each lead-acid
                        cell, such as -5 mV/K; if not given: 0 mV/K

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("chargers", id, {"model": model, "outputs": outputs, "isolated": isolated,
            "voltage": voltage, "current": current, "connected": connected, "place": place, "kind": kind,
            "fused": fused, "price": price, "compensation": compensation})

    def converter(self, id: str, *, model: str | None = None, isolated: bool | None = None,
                  efficiency: QuantityLike | None = None, voltage: QuantityLike | None = None,
                  power: QuantityLike | None = None, place: str | None = None) -> Bank:
        """One more in the section `converters`: DC-to-DC converters. Terminals of X: X.in+ X.in- X.out+ X.out-.

        model           a set of keys in [models]; the part's own keys win, such as "deck-agm"
        isolated        its input and output share nothing; if false they share their negative, such as true; if not
                        given: true
        efficiency      what its output gives over what its input takes, such as 90 %; if not given: 90 %
        voltage         voltage that its output holds, such as 14.4 V
        power           most that its output gives, such as 360 W
        place           where on the boat it is; parts that a short conductor joins are in one place unless said, such
                        as "bow"; if not given: from the lengths of conductors

        Raises UnitNeeded, BadQuantity, Unsuitable.
        """
        return self._add("converters", id, {"model": model, "isolated": isolated, "efficiency": efficiency,
            "voltage": voltage, "power": power, "place": place})
