"""Does a cluster give what one process gives, and does it survive the loss of a worker in the middle?"""
import os
import signal
import threading
import time

import bankwright
import numpy as np
import pytest
from bankwright import distributed

dask = pytest.importorskip("dask")
from distributed import Client, LocalCluster  # noqa: E402


@pytest.fixture(scope="module")
def cluster():
    with dask.config.set({"distributed.comm.timeouts.connect": "60s", "distributed.worker.daemon": True}):
        with LocalCluster(n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None, host="127.0.0.1") as two:
            with Client(two) as client:
                yield two, client


@pytest.fixture
def bank(root):
    return bankwright.read(root / "data/examples/houseboat-12v.toml")


def test_one_process_and_two_give_the_same_to_the_last_bit(cluster, bank, capfd):
    _, client = cluster
    battery = bank.solve().battery_names[0]
    values = {f"{battery}.resistance": np.linspace(2e-3, 9e-3, 10_001)}
    alone = bank.sweep(values)
    spread = distributed.sweep(bank, values, client=client, chunk=1000, progress=True)
    np.testing.assert_array_equal(spread.answers, alone.answers)
    assert "11 of 11 chunks" in capfd.readouterr().err
    here = distributed.tolerance(bank, samples=50_000, chunk=7_000, seed=5)
    assert here == distributed.tolerance(bank, samples=50_000, chunk=7_000, seed=5, client=client)
    assert here["samples"] == 50_000


def test_joined_chunks_are_the_spread_of_all_draws(bank):
    whole, joined = bank.tolerance(samples=400_000), distributed.tolerance(bank, samples=400_000, chunk=50_000)
    for one, other in zip(whole.answers, joined.answers):
        # Two independent samples of 400 000: their means differ by 0.0022 deviations, 5 times that is never seen.
        assert other["mean"] == pytest.approx(one["mean"], abs=0.011 * one["deviation"])
        assert other["deviation"] == pytest.approx(one["deviation"], rel=0.01)
        assert other["worst_least"] == one["worst_least"]


def test_a_worker_that_dies_in_the_middle_costs_nothing_but_time(cluster, bank):
    two, client = cluster
    battery = bank.solve().battery_names[0]
    values = {f"{battery}.charge": np.linspace(0.2, 0.9, 6_000)}  # through the chemistry: slow enough to be hit
    first = next(iter(two.workers.values()))
    pids = client.run(os.getpid)
    victim = pids[first.worker_address]
    killed = []

    def kill():
        time.sleep(0.3)
        os.kill(victim, signal.SIGKILL)
        killed.append(victim)

    killer = threading.Thread(target=kill)
    killer.start()
    spread = distributed.sweep(bank, values, client=client, chunk=60)
    still_running = not killed
    killer.join()
    assert not still_running, "the sweep was over before the worker died"
    np.testing.assert_array_equal(spread.answers, bank.sweep(values).answers)
    deadline = time.monotonic() + 60
    while time.monotonic() < deadline:  # the cluster has started another in its place
        try:
            if victim not in client.run(os.getpid).values():
                break
        except OSError:
            pass
        time.sleep(0.2)
    assert victim not in client.run(os.getpid).values()
