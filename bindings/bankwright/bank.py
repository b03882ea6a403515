"""A bank: read from a file, a text or a dict, or built part by part; then asked."""
from __future__ import annotations

import base64
import contextlib
import copy
import os
import threading
from collections.abc import Iterator, Mapping, Sequence
from html import escape
from pathlib import Path
from typing import Any

from . import _core
from .answers import Hookup, ShortCircuit, Sizing, Source
from .bank_text import bank_text, checked
from .errors import UnknownName, Unsuitable
from .files import read_bytes
from .keys import sections
from .part_methods import PartMethods
from .quantities import QuantityLike, quantity_in_si
from .results import Findings, Solution
from .sweep import Sweep, SweepValue, run_sweep
from .through_time import Discharge, Recharge
from .tolerances import Tolerance
from .tracing import Readings, Trace

__all__ = ["Bank", "read"]

Leg = tuple[QuantityLike, QuantityLike]


def _si(value: QuantityLike | None, kind: str, name: str) -> float | None:
    return None if value is None else quantity_in_si(value, kind, name)


def _moment(throttle: QuantityLike | None, current: QuantityLike | None,
            rest: bool) -> tuple[float | None, float | None, bool]:
    return _si(throttle, "fraction", "throttle"), _si(current, "current", "current"), rest


def _words(given: str | Sequence[str]) -> list[str]:
    return [given] if isinstance(given, str) else list(given)


def _lies_in(folder: Path, entry: str) -> bool:
    """Is it a file in that folder, wherever its links and dots lead?"""
    try:
        path = (folder / entry).resolve()
        return path.is_relative_to(folder) and path.is_file()
    except (OSError, ValueError):  # a name that is too long, or with a NUL in it
        return False


class Bank(PartMethods):
    """The battery bank of a small boat: its parts and what each conductor is landed on.

        bank = Bank("two in series", voltage="24 V")
        bank.battery("A", chemistry="agm", voltage="12 V", capacity="100 Ah")
        bank.battery("B", chemistry="agm", voltage="12 V", capacity="100 Ah")
        bank.jumper("J1", "A+", "B-", size="6 AWG", length="12 in")
        bank.load("lamp", power=60 * units.W)

    name      what the bank is, for people
    voltage   nominal voltage of the system, such as "36 V"
    ambient   temperature of batteries and conductors unless they say otherwise; "25 degC" if not given
    runtime   wanted run at the motor's throttle, such as "3 h"
    reserve   charge of a battery at which a run is over, such as "50 %"; 20 % for lithium, else 50 % if not given
    joint     resistance of one bolted or crimped joint; none if not given
    drop      wanted voltage drop, such as "3 %"; 3 % if not given
    stock     sizes of conductors that can be had, such as ["6 AWG", "4 AWG"]; those usually sold if not given

    In a notebook a bank draws itself, with its operating point and its findings. Two banks are equal if they describe
    the same parts. A bank pickles by its text.

    An option out of its range raises Unsuitable, in the words of the command. Ctrl-C ends every long call at once: what
    such a call had begun then ends by itself, on a thread of its own. Several threads may build and ask one bank.

    Raises UnitNeeded for a bare number where a unit is needed, BadQuantity for a text that is no such quantity. What is
    wrong with the bank as a whole is never raised here: `check` finds it.
    """

    def __init__(self, name: str = "", *, voltage: QuantityLike | None = None, ambient: QuantityLike | None = None,
                 runtime: QuantityLike | None = None, reserve: QuantityLike | None = None,
                 joint: QuantityLike | None = None, drop: QuantityLike | None = None,
                 stock: Sequence[str] | None = None) -> None:
        given = {"voltage": voltage, "ambient": ambient, "runtime": runtime, "reserve": reserve, "joint": joint,
                 "drop": drop, "stock": None if stock is None else list(stock)}
        system = {key: checked(sections()["system"], "", key, value)
                  for key, value in given.items() if value is not None}
        self._document: dict[str, Any] | None = {"name": name} if name else {}
        if system:
            self._document["system"] = system
        self._ids: set[str] | None = set()  # of its parts; None: not looked up yet
        self._text: str | None = None
        self._file = name or "-"
        self._part_lists: dict[str, str] = {}
        self._handle: _core.ReadBank | None = None
        self._lock = threading.RLock()  # several threads may build one bank, and ask it meanwhile

    @classmethod
    def from_text(cls, text: str | bytes, file: str = "-", part_lists: Mapping[str, str] | None = None) -> Bank:
        """From the text of a bank file. `file` is the name that answers bear, `part_lists` the texts that its `parts`
        names.

        Never raises for what the text holds: `check` says what is wrong with it.
        """
        bank = cls()
        bank._document, bank._ids, bank._file, bank._part_lists = None, None, file, dict(part_lists or {})
        bank._text = text if isinstance(text, str) else text.decode("utf-8", "surrogateescape")
        return bank

    @classmethod
    def from_file(cls, path: str | os.PathLike[str]) -> Bank:
        """From a bank file, and the part lists in its folder that it names. OSError if there is no such file.

        No more is read than the reader takes (1 MiB a file): what is longer is a finding.
        """
        path = Path(path)
        content = read_bytes(path)
        bank = cls.from_text(content, os.fspath(path))
        try:
            named = _core.document(content, bank._file).get("parts", [])
        except ValueError:  # `check` says what is wrong with it
            named = []
        folder = path.resolve().parent
        for entry in named if isinstance(named, list) else []:
            if isinstance(entry, str) and _lies_in(folder, entry):
                bank._part_lists[entry] = read_bytes(folder / entry).decode("utf-8", "surrogateescape")
        return bank

    @classmethod
    def from_dict(cls, document: Mapping[str, Any], file: str = "-") -> Bank:
        """From a dict of sections: {"batteries": {"A": {"voltage": "12 V", ...}}, "jumpers": {...}, ...}.

        Values are texts as in a file, or quantities. Raises what the builder raises, and UnknownName for an unknown
        section or key.
        """
        return cls.from_text(bank_text(document), file)

    # --- what it is

    @property
    def text(self) -> str:
        """The text of its bank file: as it was read, or as it was built."""
        with self._lock:
            if self._text is None:
                self._text = bank_text(self._document or {})
            return self._text

    @property
    def file(self) -> str:
        """The name that answers bear: the path it was read from, or the bank's name."""
        return self._file

    @property
    def arrangement(self) -> str | None:
        """The trade's notation, "3S2P", as recognized from the wiring; None where the wiring is no such thing."""
        return self._read().arrangement

    def to_dict(self) -> dict[str, Any]:
        """Sections of parts of keys, as in its file. Unreadable if its text is no bank file."""
        with self._lock:
            return copy.deepcopy(self._own())

    def _own(self) -> dict[str, Any]:
        """Its own document: whoever changes it holds the lock, and says so with _changes."""
        if self._document is None:
            self._document = _core.document(self._bytes(), self._file)
        return self._document

    def written(self) -> str:
        """The canonical text: models resolved, comments gone, the same for every text of the same bank.

        Unreadable if it is none.
        """
        return self._read().written()

    def save(self, path: str | os.PathLike[str]) -> None:
        """Writes its text into a file."""
        Path(path).write_bytes(self._bytes())

    def part(self, name: str) -> dict[str, Any]:
        """The keys of the part of that name. UnknownName if the bank has none."""
        for section, parts in self.to_dict().items():
            if section in sections() and isinstance(parts, dict) and isinstance(parts.get(name), dict):
                return dict(parts[name])
        raise UnknownName(f"the bank has no part `{name}`")

    def changed(self, changes: Mapping[str, Any]) -> Bank:
        """A copy with some keys changed: bank.changed({"A.charge": "80 %", "troll.throttle": "60 %"}). None takes a key
        away.

        Raises UnknownName for an unknown part or key, UnitNeeded and BadQuantity as the builder does.
        """
        document = self.to_dict()
        for name, value in changes.items():
            part, _, key = name.rpartition(".")
            section = next((one for one, parts in document.items()
                            if one in sections() and isinstance(parts, dict) and part in parts), None)
            if part == "system":
                keys, spec = document.setdefault("system", {}), sections()["system"]
            elif section is None:
                raise UnknownName(f"the bank has no part `{part}`")
            else:
                keys, spec = document[section][part], sections()[section]
            spec.key(key)
            if value is None:
                keys.pop(key, None)
            else:
                keys[key] = checked(spec, part, key, value)
        bank = Bank.from_dict(document, self._file)
        bank._part_lists = dict(self._part_lists)
        return bank

    @contextlib.contextmanager
    def _changes(self) -> Iterator[dict[str, Any]]:
        with self._lock:
            yield self._own()
            self._text = self._handle = None

    def _add(self, section: str, part: str, keys: dict[str, Any]) -> Bank:
        spec = sections()[section]
        kept = {key: checked(spec, part, key, value) for key, value in keys.items() if value is not None}
        with self._changes() as document:
            if self._ids is None:
                self._ids = {one for name, parts in document.items() if name in sections() and isinstance(parts, dict)
                             for one in parts}
            if part in self._ids:
                raise Unsuitable(f"the bank has a part `{part}` already")
            document.setdefault(section, {})[part] = kept
            self._ids.add(part)
        return self

    def model(self, name: str, **keys: Any) -> Bank:
        """A named set of keys that parts take over with `model=name`; a part's own keys win. Returns the bank."""
        told = {key: str(value) if not isinstance(value, (int, str)) and hasattr(value, "unit") else value
                for key, value in keys.items()}
        with self._changes() as document:
            document.setdefault("models", {})[name] = told
        return self

    def accept(self, rule: str, reason: str, part: str = "") -> Bank:
        """Says that somebody has looked at the findings of `rule` (of `part`) and why they are safe here.

        Returns the bank.
        """
        one = {"rule": rule, "reason": reason} | ({"part": part} if part else {})
        with self._changes() as document:
            document.setdefault("accept", []).append(one)
        return self

    # --- what it answers

    def check(self, only: str | Sequence[str] = (), skip: str | Sequence[str] = ()) -> Findings:
        """Everything that is wrong with it. `only` and `skip` are ids of rules or families, such as "wiring" or
        ["wiring", "matching/mixed-age"].

        Raises Unsuitable for a word that is neither a rule nor a family, with the nearest that is.
        """
        found: Findings = Findings.of(self._read().check(_words(only), _words(skip)))
        return found

    def solve(self, *, throttle: QuantityLike | None = None, current: QuantityLike | None = None,
              rest: bool = False) -> Solution:
        """Voltages [V], currents [A] and powers [W] at one moment: as the bank describes it, with the motors at a
        `throttle` such as "60 %", with a constant `current` such as "40 A" at every motor (or load), or at `rest` with
        every load off.

        Raises Unreadable if the bank cannot be read whole, Unsuitable for more than one of the three. Where there is no
        operating point the answer's `status` says so.
        """
        answer = self._read().solve(*_moment(throttle, current, rest))
        solution: Solution = Solution.of(answer[0])
        _, solution.terminal_voltage, solution.current, solution.voltage, solution.power = answer
        return solution

    def discharge(self, *, throttle: QuantityLike | None = None, current: QuantityLike | None = None,
                  longest: QuantityLike | None = None, rest: QuantityLike | None = None,
                  legs: Sequence[Leg] = (), repeat: bool = False) -> Discharge:
        """How long it runs, which battery ends the run, and every battery's course.

        throttle, current  as for `solve`; longest: give up after "200 h"; rest: how long to look on afterwards, with
                           every load off
        legs               of a trip: [("60 %", "20 min"), ("0 %", "1 h")], throttle and duration; repeat: start over
                           until it is done

        Raises Unreadable; Unsuitable where a battery states no capacity or chemistry.
        """
        spelled = [(quantity_in_si(throttle, "fraction", "throttle"), quantity_in_si(long, "duration", "leg"))
                   for throttle, long in legs]
        run: Discharge = Discharge.from_core(self._read().discharge(
            _si(throttle, "fraction", "throttle"), _si(current, "current", "current"),
            _si(longest, "duration", "longest"), _si(rest, "duration", "rest"), spelled, repeat))
        return run

    def recharge(self, *, charge: QuantityLike | None = None, longest: QuantityLike | None = None) -> Recharge:
        """How long its chargers take, stage by stage. `charge` is every battery's at the start instead of its own.

        Raises Unreadable; Unsuitable where a battery states no capacity or chemistry, or there is no charger that says
        what it gives.
        """
        run: Recharge = Recharge.from_core(self._read().recharge(_si(charge, "fraction", "charge"),
                                                                 _si(longest, "duration", "longest")))
        return run

    def hookup(self, *, of_reading: QuantityLike | None = None, digits: int | None = None,
               resolution: QuantityLike | None = None, charge_within: QuantityLike | None = None) -> Hookup:
        """In which order to connect it, and what the meter must read before and after each step.

        The meter errs by `of_reading` ("0.5 %" if not given) and `digits` (2) of its `resolution`; the batteries'
        charge is what the bank says within `charge_within` ("5 %"). A bank with an error is refused: the answer's
        status says so. Raises Unreadable; Unsuitable for a bank without a battery or with a short in it.
        """
        meter = (_si(of_reading, "fraction", "of_reading"), digits, _si(resolution, "voltage", "resolution"),
                 _si(charge_within, "fraction", "charge_within"))
        steps: Hookup = Hookup.of(self._read().hookup(*meter))
        steps._bank, steps._meter = self, meter
        return steps

    def short_circuit(self) -> ShortCircuit:
        """What flows into a short anywhere [A], what ends it and by when [s], and whether devices and copper bear it.

        Raises Unreadable.
        """
        shorts: ShortCircuit = ShortCircuit.of(self._read().short_circuit())
        return shorts

    def seen_from(self, plus: str, minus: str) -> Source | None:
        """What source the bank is between two terminals such as "CB.load" and "A-", every load and charger off: its
        voltage [V], its resistance [ohm] and the current into a short there [A]. None where no closed path joins the
        two.

        Raises Unreadable, UnknownName for a terminal that it does not have, Unsuitable for a bank without a battery.
        """
        seen = self._read().seen_from(plus, minus)
        return None if seen is None else Source(*seen)

    def size(self, *, runtime: QuantityLike | None = None, ambient: QuantityLike | None = None, metric: bool = False,
             keep_strings: bool = False) -> Sizing:
        """The smallest conductors, breakers and number of strings with which every rule is passed, and the cut list.

        `runtime` and `ambient` take the place of the bank's own; `metric` asks for mm2 instead of AWG. Raises
        Unreadable, also for a bank with an error that no size cures.
        """
        document, text, cut_list, bank = self._read().size(_si(runtime, "duration", "runtime"),
                                                           _si(ambient, "temperature", "ambient"), metric, keep_strings)
        sizing: Sizing = Sizing.of(document)
        sizing.text, sizing.cut_list, sizing.bank = text, cut_list, Bank.from_text(bank, self._file)
        return sizing

    def trace(self, readings: Readings | str | os.PathLike[str]) -> Trace:
        """What is most likely wrong with a bank that does not read as described, and which reading to take next.

        `readings` are a sheet of them or the path of a file. Raises OSError if there is no such file; Unreadable, also
        for readings that name no terminal or part of the bank; Unsuitable for a bank without a battery, or of so many
        parts that it would take minutes.
        """
        sheet = readings if isinstance(readings, Readings) else Readings.from_file(readings)
        document, text = self._read().trace(sheet.text.encode("utf-8", "surrogateescape"), sheet.file)
        trace: Trace = Trace.of(document)
        trace.text = text
        return trace

    def sweep(self, values: Mapping[str, SweepValue], measure: Sequence[str] | None = None, *,
              throttle: QuantityLike | None = None, current: QuantityLike | None = None, rest: bool = False,
              threads: int = 1) -> Sweep:
        """The operating points of many banks that differ in some values.

            sweep = bank.sweep({"A.resistance": np.linspace(3e-3, 9e-3, 1000)})          # [ohm]
            sweep = bank.sweep({"A.charge [%]": np.arange(50.0, 100.0)[:, None],          # a grid, 50 x 6
                                "main.length": np.arange(1.0, 7.0) * units.ft}, ["troll.voltage"])

        values    by "part.key": an array of numbers in SI, or with the unit in the name, or times a unit.
                  "system.ambient" and "system.joint" too. Shapes are broadcast as NumPy's are.
        measure   "A.current" [A], "troll.voltage" [V] across a part, or the name of a terminal [V] against the
                  reference; every battery's current and every motor's and load's voltage if not given
        threads   how many; the answers do not depend on it

        A resistance, an emf, a load's current or power goes straight into the solver, more than ten million small banks
        a second and core (`tests/bench/python_sweep.py` prints how many); any other key is worked out bank by bank.
        Raises Unreadable; UnknownName; BadQuantity for a unit of another quantity; Unsuitable for what is no quantity,
        for a value out of its key's range, and for one that would change the wiring.
        """
        return run_sweep(self, self._read(), values, measure,
                         _moment(throttle, current, rest), threads)

    def tolerance(self, *, throttle: QuantityLike | None = None, current: QuantityLike | None = None,
                  rest: bool = False, samples: int = 100_000, seed: int = 1, threads: int = 1,
                  checked: int = 0) -> Tolerance:
        """How far the answers spread when every value lies within its tolerance, how bad it can get, and what matters
        most.

        `samples` banks are solved; `checked` of them are also held against every rule and run down. The same seed gives
        the same answer on any number of threads. A value states its own tolerance as "4 mohm +/- 10 %". Raises
        Unreadable.
        """
        spread: Tolerance = Tolerance.of(self._read().tolerance(
            *_moment(throttle, current, rest), samples, seed, threads, checked))
        return spread

    def drawing(self, *, throttle: QuantityLike | None = None, current: QuantityLike | None = None, rest: bool = False,
                readings: bool = True, findings: bool = True, prefix: str = "bankwright") -> str:
        """Its wiring diagram as SVG, with the readings of a moment (see `solve`) and the findings.

        `prefix` starts every id, so that several drawings can share a page. Raises Unreadable; TooLarge above 600
        parts.
        """
        return self._read().draw(*_moment(throttle, current, rest), readings,
                                 findings, prefix)

    def draw(self, path: str | os.PathLike[str], *, throttle: QuantityLike | None = None,
             current: QuantityLike | None = None, rest: bool = False) -> None:
        """Writes its `drawing` into a file such as "bank.svg"."""
        Path(path).write_text(self.drawing(throttle=throttle, current=current, rest=rest), encoding="utf-8")

    def report(self, *, throttle: QuantityLike | None = None, current: QuantityLike | None = None,
               rest: bool = False) -> str:
        """All of it on one page of HTML that needs no network and no script. Raises Unreadable."""
        return self._read().report(*_moment(throttle, current, rest))

    # --- how Python sees it

    def _bytes(self) -> bytes:
        return self.text.encode("utf-8", "surrogateescape")

    def _read(self) -> _core.ReadBank:
        with self._lock:
            if self._handle is None:
                lists = {path: text.encode("utf-8", "surrogateescape") for path, text in self._part_lists.items()}
                self._handle = _core.ReadBank(self._bytes(), self._file, lists)
            return self._handle

    def _repr_html_(self) -> str:
        """The drawing as an image: what turns notebooks into pages drops an SVG that stands there by itself."""
        if not self._read().as_written:
            return self.check()._repr_html_()
        encoded = base64.b64encode(self.drawing().encode()).decode("ascii")
        arranged = f", {self.arrangement}" if self.arrangement else ""
        return (f'<img alt="{escape(f"the wiring of {self._file}{arranged}")}" style="max-width:100%" '
                f'src="data:image/svg+xml;base64,{encoded}">')

    def __repr__(self) -> str:
        return f"<Bank {self._file}: {self.arrangement or 'no arrangement'}>"

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Bank):
            return NotImplemented
        mine, its = self._read(), other._read()
        return mine.written() == its.written() if mine.as_written and its.as_written else self.text == other.text

    def __hash__(self) -> int:
        return hash(self.written() if self._read().as_written else self.text)

    def __getstate__(self) -> dict[str, Any]:
        with self._lock:
            return {name: value for name, value in self.__dict__.items() if name != "_lock"} | {"_handle": None}

    def __setstate__(self, state: dict[str, Any]) -> None:
        self.__dict__.update(state)
        self._lock = threading.RLock()

    def __copy__(self) -> Bank:
        other = Bank.__new__(Bank)
        other.__setstate__(copy.deepcopy(self.__getstate__()))
        return other

    def __deepcopy__(self, memo: dict[int, Any]) -> Bank:
        return self.__copy__()

    @property
    def part_names(self) -> list[str]:
        """Ids of its parts, section by section in the author's order."""
        document = self.to_dict()
        return [part for name in sections() if name not in ("system", "accept") for part in document.get(name, {})]


def read(path: str | os.PathLike[str]) -> Bank:
    """The bank in the file `path`. OSError if there is no such file; what is wrong with its text, `check` says."""
    return Bank.from_file(path)
