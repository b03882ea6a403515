"""Sweeps and tolerance studies of any size, on as many machines as a Dask cluster has.

    from dask.distributed import Client
    from bankwright import distributed
    distributed.sweep(bank, {"A.resistance": array}, client=Client("scheduler:8786"))

The work goes in chunks, each with its own seed. What comes back depends on the chunks alone: it is the same to the last
bit without a client, in this process, as on a thousand. Chunks of a worker that is lost are done again by another. Dask
is only needed where a client is given; the workers need bankwright.
"""
from __future__ import annotations

import math
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from .bank import Bank
from .errors import Unsuitable
from .quantities import QuantityLike
from .sweep import Sweep, SweepValue, measures_of, swept_values
from .tolerances import Tolerance

if TYPE_CHECKING:
    from distributed import Client

__all__ = ["sweep", "tolerance"]

Floats = NDArray[np.float64]
IN_FLIGHT = 4  # chunks a worker that are handed out at once, so that memory does not grow with their number


def _swept(bank: Bank, arrays: dict[str, Floats], measure: list[str], options: dict[str, Any]) -> Floats:
    return bank.sweep(arrays, measure, **options).answers


def _spread(bank: Bank, samples: int, seed: int, options: dict[str, Any]) -> Tolerance:
    return bank.tolerance(samples=samples, seed=seed, **options)


def _told(done: int, chunks: int) -> None:
    print(f"\r{done} of {chunks} chunks", end="\n" if done == chunks else "", file=sys.stderr, flush=True)


def _run(work: Callable[..., Any], tasks: Iterator[tuple[Any, ...]], chunks: int, client: Client | None,
         progress: bool) -> list[Any]:
    """The answers of work(*task) in the order of the tasks."""
    if client is not None:
        return _run_on(client, work, tasks, chunks, progress)
    answers = []
    for number, task in enumerate(tasks, 1):
        answers.append(work(*task))
        if progress:
            _told(number, chunks)
    return answers


def _run_on(client: Any, work: Callable[..., Any], tasks: Iterator[tuple[Any, ...]], chunks: int,
            progress: bool) -> list[Any]:
    import distributed

    answers: list[Any] = [None] * chunks
    numbered = enumerate(tasks)
    places: dict[str, int] = {}

    def hand_out() -> Any:
        for number, task in numbered:
            future = client.submit(work, *task, pure=False, retries=3)
            places[future.key] = number
            return future
        return None

    workers = max(1, len(client.scheduler_info()["workers"]))
    first = [future for future in (hand_out() for _ in range(min(chunks, IN_FLIGHT * workers))) if future is not None]
    completed: Any = distributed.as_completed  # Dask's functions have no types
    running = completed(first)
    for done, future in enumerate(running, 1):
        answers[places.pop(future.key)] = future.result()
        future.release()
        further = hand_out()
        if further is not None:
            running.add(further)
        if progress:
            _told(done, chunks)
    return answers


def sweep(bank: Bank, values: Mapping[str, SweepValue], measure: Sequence[str] | None = None, *,
          client: Client | None = None, chunk: int = 1 << 16, progress: bool = False,
          throttle: QuantityLike | None = None, current: QuantityLike | None = None, rest: bool = False,
          threads: int = 1) -> Sweep:
    """Bank.sweep in chunks of `chunk` banks, on the workers of `client`; in this process without one.

    `threads` are those of each chunk. `progress` tells on standard error how far it is. Raises what Bank.sweep raises,
    and `distributed.KilledWorker` where one chunk has cost three workers.
    """
    arrays, units, shape, mask = swept_values(bank, values)
    measures = measures_of(bank, measure)
    names = [part if kind == "terminal" else f"{part}.{kind}" for kind, part in measures]
    banks = math.prod(shape)
    if chunk < 1:
        raise Unsuitable(f"`chunk` is a number of banks, at least 1; found {chunk}")
    options = {"throttle": throttle, "current": current, "rest": rest, "threads": threads}
    chunks = max(1, math.ceil(banks / chunk))
    tasks = ((bank, {name: array[at * chunk:(at + 1) * chunk] for name, array in arrays.items()}, names, options)
             for at in range(chunks))
    answers = np.concatenate(_run(_swept, tasks, chunks, client, progress), axis=1)
    return Sweep(arrays, units, measures, answers, shape, mask)


def tolerance(bank: Bank, *, client: Client | None = None, samples: int = 1_000_000, seed: int = 1,
              chunk: int = 1 << 20, progress: bool = False, throttle: QuantityLike | None = None,
              current: QuantityLike | None = None, rest: bool = False, threads: int = 1) -> Tolerance:
    """Bank.tolerance in chunks of `chunk` samples, each seeded from `seed` and its number, on the workers of `client`.

    Without a client it runs in this process and gives the same answer. Means and deviations are joined by the formula
    of Chan, Golub and LeVeque (1979, from memory); worst corners and influences do not depend on the samples. Raises
    what Bank.tolerance raises, and `distributed.KilledWorker` where one chunk has cost three workers.
    """
    if chunk < 1 or samples < 1:
        raise Unsuitable(f"`chunk` and `samples` are at least 1; found {chunk} and {samples}")
    options = {"throttle": throttle, "current": current, "rest": rest, "threads": threads}
    chunks = math.ceil(samples / chunk)
    tasks = ((bank, min(chunk, samples - at * chunk), _seed(seed, at), options) for at in range(chunks))
    return _joined(_run(_spread, tasks, chunks, client, progress), seed)


def _seed(seed: int, number: int) -> int:
    return int(np.random.SeedSequence([seed, number]).generate_state(1, np.uint64)[0] >> np.uint64(1))


def _joined(parts: list[Tolerance], seed: int) -> Tolerance:
    all_of = Tolerance(parts[0])
    all_of["seed"], all_of["answers"] = seed, [dict(answer) for answer in parts[0]["answers"]]
    for part in parts[1:]:
        n, m = (one["samples"] - one["unanswered"] for one in (all_of, part))
        for mine, its in zip(all_of["answers"], part["answers"]):
            if m > 0 and n > 0:
                apart = its["mean"] - mine["mean"]
                squares = (mine["deviation"] ** 2 * (n - 1) + its["deviation"] ** 2 * (m - 1) +
                           apart ** 2 * n * m / (n + m))
                mine["mean"] += apart * m / (n + m)
                mine["deviation"] = math.sqrt(squares / (n + m - 1))
                mine["least"], mine["most"] = min(mine["least"], its["least"]), max(mine["most"], its["most"])
            elif m > 0:
                mine.update({key: its[key] for key in ("mean", "deviation", "least", "most")})
        all_of["samples"] += part["samples"]
        all_of["unanswered"] += part["unanswered"]
    return all_of
